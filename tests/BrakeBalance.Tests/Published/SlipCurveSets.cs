using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Peaks and locked values of published slip-curve constants. Burckhardt's constants (Fahrwerktechnik: Radschlupf-Regelsysteme, 1993)
/// and the simple
/// Magic Formula sets are second hand: several public copies agree, neither book nor paper was read. b0 to b8 were seen in
/// n-jokic/Vehicle_MPC_control, pacajeka_init.m. The expected peaks are recomputed from the constants outside this project, to the
/// digits given.
/// </summary>
[Source("Burckhardt (1993) and Magic Formula sets in public copies", Reading.SecondHand)]
public class SlipCurveSets
{
    private static readonly Force Load = Force.FromKilonewtons(4);

    public static TheoryData<string, double, double, double> Burckhardt => new()
    {
        { "dry asphalt", 0.170, 1.170, 0.760 },
        { "wet asphalt", 0.131, 0.801, 0.510 },
        { "dry concrete", 0.160, 1.090, 0.660 },
        { "dry cobblestones", 0.400, 1.000, 0.700 },
        { "wet cobblestones", 0.140, 0.380, 0.280 },
        { "snow", 0.060, 0.190, 0.130 },
        { "dry road", 0.180, 1.000, 0.915 },
        { "wet road", 0.088, 0.820, 0.637 },
        { "snowy road", 0.3115, 0.300, 0.2855 },
        { "icy road", 0.389, 0.100, 0.0962 },
    };

    [Theory]
    [MemberData(nameof(Burckhardt))]
    public void Peak_slip_peak_and_locked_adhesion(string name, double peakSlip, double peak, double locked)
    {
        SlipCurve curve = PublishedSlipCurves.All.Single(c => c.Name == name);
        Assert.Equal(peakSlip, curve.PeakSlip(Load), 0.00051);
        Assert.Equal(peak, curve.PeakAdhesion(Load), 0.00051);
        Assert.Equal(locked, curve.LockedAdhesion(Load), 0.00051);
    }

    [Fact]
    public void Ice_has_no_peak_and_does_not_divide_by_zero()
    {
        SlipCurve ice = PublishedSlipCurves.Ice;
        Assert.Equal(1, ice.PeakSlip(Load));
        Assert.Equal(0.050, ice.PeakAdhesion(Load), 0.00051);
        Assert.Equal(0.050, ice.AdhesionCoefficient(0.5, Load), 0.00051);
    }

    [Theory]
    [InlineData(2, 1.101, 11.9, 0.765)]
    [InlineData(4, 1.059, 10.3, 0.725)]
    [InlineData(6, 1.016, 9.2, 0.679)]
    public void Magic_formula_89_loses_adhesion_with_load(double kilonewtons, double peak, double peakSlipPercent, double locked)
    {
        Force load = Force.FromKilonewtons(kilonewtons);
        SlipCurve curve = PublishedSlipCurves.PassengerCarTyre;
        Assert.Equal(peak, curve.PeakAdhesion(load), 0.00051);
        Assert.Equal(peakSlipPercent, 100 * curve.PeakSlip(load), 0.051);
        Assert.Equal(locked, curve.LockedAdhesion(load), 0.00051);
    }
}
