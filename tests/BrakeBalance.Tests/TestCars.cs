using System.Collections.Immutable;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests;

/// <summary>Cars for tests: geometry as a source gives it, brakes whose force at the road per line pressure is exact.</summary>
internal static class TestCars
{
    /// <summary>
    /// A car whose axles share the braking force in one fixed ratio (front share above 0, below 1); 100 bar brake it with its own
    /// weight.
    /// </summary>
    public static Vehicle FixedShare(
        double frontShare, double wheelbaseMetres, double frontAxleToCgMetres, double cgHeightMetres, double weightNewtons = 10_000,
            double rolling = 0) =>
        With(
            weightNewtons * frontShare / 100,
            weightNewtons * (1 - frontShare) / 100,
            wheelbaseMetres,
            frontAxleToCgMetres,
            cgHeightMetres,
            weightNewtons) with
        { RollingResistanceCoefficient = rolling };

    /// <summary>A car whose axles brake with a given force at the road per bar of line pressure.</summary>
    public static Vehicle With(
        double frontNewtonsPerBar, double rearNewtonsPerBar, double wheelbaseMetres, double frontAxleToCgMetres, double cgHeightMetres,
            double weightNewtons) => new()
            {
                Name = "test car",
                Wheelbase = Length.FromMeters(wheelbaseMetres),
                LoadCases = [Load("only", weightNewtons, frontAxleToCgMetres, cgHeightMetres)],
                Tyres = new(Tyre, Tyre),
                Brakes = new(AxleBrake(frontNewtonsPerBar), AxleBrake(rearNewtonsPerBar)),
                Hydraulics = new BrakeHydraulics { MaximumPressure = Pressure.FromBars(250) },
            };

    /// <summary>A load case of a given weight: sources with a g of their own give weights this way.</summary>
    public static LoadCase Load(string name, double weightNewtons, double frontAxleToCgMetres, double cgHeightMetres) => new()
    {
        Name = name,
        Mass = Mass.FromKilograms(weightNewtons / Gravity.StandardMetresPerSecondSquared),
        FrontAxleToCentreOfGravity = Length.FromMeters(frontAxleToCgMetres),
        CentreOfGravityHeight = Length.FromMeters(cgHeightMetres),
    };

    /// <summary>A brake such that both wheels of an axle on <see cref="Tyre"/> give that force per bar.</summary>
    public static MeasuredBrake AxleBrake(double newtonsPerBar, double loadedRadiusMetres = 0.3) => new()
    {
        FrictionCoefficient = 0.4,
        FrictionWhenMeasured = 0.4,
        MeasuredNewtonMetresPerBar = newtonsPerBar * loadedRadiusMetres / 2,
        Pistons = PistonSet.OneSideOf(1, Length.FromMillimeters(54)),
        EffectiveRadius = Length.FromMillimeters(120),
    };

    /// <summary>A tyre of 0.3 m.</summary>
    public static Tyre Tyre { get; } = new() { LoadedRadius = Length.FromMeters(0.3) };

    /// <summary>The same car with a circuit lost: no pressure arrives at that axle.</summary>
    public static Vehicle WithoutCircuit(this Vehicle car, Axle lost)
    {
        ImmutableArray<PressureValve> nothing = [new LimitingValve { Limit = Pressure.Zero }];
        return car with
        {
            Hydraulics = lost == Axle.Front ? car.Hydraulics with { FrontValves = nothing } : car.Hydraulics with { RearValves = nothing },
        };
    }

    /// <summary>The same car with valves in the rear line.</summary>
    public static Vehicle WithRearValves(this Vehicle car, params ImmutableArray<PressureValve> valves) =>
        car with { Hydraulics = car.Hydraulics with { RearValves = valves } };

    /// <summary>The same car with valves in the front line.</summary>
    public static Vehicle WithFrontValves(this Vehicle car, params ImmutableArray<PressureValve> valves) =>
        car with { Hydraulics = car.Hydraulics with { FrontValves = valves } };

    /// <summary>The balance of a car in its first load case.</summary>
    public static BalanceModel Model(this Vehicle car, Speed speed = default) => new(car, car.LoadCases[0], speed);
}
