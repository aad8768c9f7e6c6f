using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

/// <summary>Invented cars for the tests of stops.</summary>
internal static class Cars
{
    /// <summary>A coupe whose front brakes lock first; 100 bar gives 5000 N·m front and 1400 N·m rear.</summary>
    public static BrakedCar Coupe(SlipCurve? tyre = null, double frontTorque = 5000, double rearTorque = 1400) => new()
    {
        Name = "invented coupe",
        Mass = Mass.FromKilograms(1700),
        Wheelbase = Length.FromMeters(2.9),
        CentreOfGravityHeight = Length.FromMeters(0.55),
        StaticFrontShare = 0.56,
        Axles = new(Axle(tyre, frontTorque), Axle(tyre, rearTorque)),
    };

    /// <summary>The same coupe with brakes that lock the rear axle first.</summary>
    public static BrakedCar RearFirst(SlipCurve? tyre = null) => Coupe(tyre, 4200, 2600);

    public static BrakedAxle Axle(SlipCurve? tyre, double torqueAt100Bar) => new()
    {
        LoadedRadius = Length.FromMeters(0.32),
        Tyre = tyre ?? PublishedSlipCurves.DryAsphalt.ScaledToPeak(0.9, Force.FromKilonewtons(4)),
        Brakes = TorqueCurve.Proportional(Pressure.FromBars(100), Torque.FromNewtonMeters(torqueAt100Bar)),
    };

    /// <summary>A tyre whose adhesion is the same at every slip above a few thousandths.</summary>
    public static SlipCurve ConstantAdhesion(double adhesion) =>
        new BurckhardtCurve { Name = "constant", C1 = adhesion, C2 = 3000, C3 = 0 };

    public static EmergencyDriver Emergency(double bars = 120) => new() { HeldPressure = Pressure.FromBars(bars) };

    public static Speed Kmh(double value) => Speed.FromKilometersPerHour(value);
}
