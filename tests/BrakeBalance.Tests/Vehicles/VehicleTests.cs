using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>A vehicle built in code: what it refuses, and its changed copies.</summary>
public class VehicleTests
{
    private static readonly Vehicle Car = TestCars.FixedShare(0.7, 2.5, 1.1, 0.5);

    [Fact]
    public void Load_case_is_found_by_name_in_any_capitals_and_a_wrong_name_tells_the_right_ones()
    {
        Assert.Same(Car.LoadCases[0], Car.LoadCase("ONLY"));
        string message = Assert.Throws<ArgumentException>(() => Car.LoadCase("laden")).Message;
        Assert.Contains("\"laden\"", message);
        Assert.Contains("\"only\"", message);
    }

    [Fact]
    public void Impossible_load_cases_are_refused_by_name()
    {
        LoadCase load = Car.LoadCases[0];
        Assert.Equal("Mass", Assert.Throws<ArgumentOutOfRangeException>(() => load with { Mass = Mass.FromKilograms(-1) }).ParamName);
        Assert.Equal("FrontAxleToCentreOfGravity",
            Assert.Throws<ArgumentOutOfRangeException>(() => load with { FrontAxleToCentreOfGravity = Length.Zero }).ParamName);
        Assert.Equal("CentreOfGravityHeight",
            Assert.Throws<ArgumentOutOfRangeException>(() => load with { CentreOfGravityHeight = Length.Zero }).ParamName);
    }

    [Fact]
    public void Impossible_cars_are_refused_by_name()
    {
        Assert.Equal("Wheelbase", Assert.Throws<ArgumentOutOfRangeException>(() => Car with { Wheelbase = Length.Zero }).ParamName);
        Assert.Equal("RollingResistanceCoefficient",
            Assert.Throws<ArgumentOutOfRangeException>(() => Car with { RollingResistanceCoefficient = -0.01 }).ParamName);
        Assert.Equal("BrakingForce",
            Assert.Throws<ArgumentOutOfRangeException>(() =>
            new EngineBraking { DrivenAxle = Axle.Rear, BrakingForce = Force.FromNewtons(-1) }).ParamName);
        Assert.Equal("DragArea",
            Assert.Throws<ArgumentOutOfRangeException>(() => new Aerodynamics { DragArea = Area.FromSquareMeters(-1) }).ParamName);
        Assert.Equal("AirDensity",
            Assert.Throws<ArgumentOutOfRangeException>(() =>
            new Aerodynamics { DragArea = Area.Zero, AirDensity = Density.Zero }).ParamName);
    }

    [Fact]
    public void Friction_factors_change_the_forces_in_proportion_for_discs_and_leave_the_original_alone()
    {
        Vehicle changed = Car.WithFrictionFactors(0.9, 1.1);
        PerAxle<Force> before = Car.Model().At(Pressure.FromBars(50)).BrakingForces;
        PerAxle<Force> after = changed.Model().At(Pressure.FromBars(50)).BrakingForces;
        Assert.Equal(0.9, after.Front / before.Front, 1e-12);
        Assert.Equal(1.1, after.Rear / before.Rear, 1e-12);
        Assert.Equal(before.Front.Newtons, Car.Model().At(Pressure.FromBars(50)).BrakingForces.Front.Newtons);
    }

    [Fact]
    public void Per_axle_value_is_found_by_axle()
    {
        var pair = new PerAxle<int>(3, 4);
        Assert.Equal(3, pair[Axle.Front]);
        Assert.Equal(4, pair[Axle.Rear]);
        Assert.Equal(new PerAxle<string>("3", "4"), pair.Select(value => value.ToString()));
    }
}
