using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Tests.Tyres;

/// <summary>The adhesion of an axle's tyres against the surface's own.</summary>
public class TyreTests
{
    private static readonly Tyre Sensitive = new()
    {
        LoadedRadius = Length.FromMeters(0.3),
        LoadSensitivity = 0.1,
        ReferenceLoad = Force.FromKilonewtons(4),
        AdhesionFactor = 1.2,
    };

    [Theory]
    [InlineData(4, 0.96)]
    [InlineData(8, 0.864)]
    [InlineData(2, 1.008)]
    [InlineData(0, 1.056)]
    public void Adhesion_falls_in_a_straight_line_with_load(double kilonewtons, double adhesion) =>
        Assert.Equal(adhesion, Sensitive.AdhesionOn(0.8, Force.FromKilonewtons(kilonewtons)), 1e-12);

    [Fact]
    public void Adhesion_never_falls_below_a_tenth() =>
        Assert.Equal(0.8 * 1.2 * 0.1, Sensitive.AdhesionOn(0.8, Force.FromKilonewtons(400)), 1e-12);

    [Fact]
    public void Plain_tyre_has_the_adhesion_of_the_surface() =>
        Assert.Equal(0.7, TestCars.Tyre.AdhesionOn(0.7, Force.FromKilonewtons(9)), 1e-12);

    [Fact]
    public void Values_out_of_range_are_refused()
    {
        Assert.Equal("LoadedRadius",
            Assert.Throws<ArgumentOutOfRangeException>(() => Sensitive with { LoadedRadius = Length.Zero }).ParamName);
        Assert.Equal("AdhesionFactor", Assert.Throws<ArgumentOutOfRangeException>(() => Sensitive with { AdhesionFactor = 0.2 }).ParamName);
        Assert.Equal("LoadSensitivity",
            Assert.Throws<ArgumentOutOfRangeException>(() => Sensitive with { LoadSensitivity = 0.5 }).ParamName);
        Assert.Equal("ReferenceLoad",
            Assert.Throws<ArgumentOutOfRangeException>(() => Sensitive with { ReferenceLoad = Force.Zero }).ParamName);
    }
}
