using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests;

/// <summary>Short ways to say what tests say often.</summary>
internal static class ShortWays
{
    extension(LiningArc)
    {
        public static LiningArc FromDegrees(double start, double end) =>
            new() { Start = Angle.FromDegrees(start), End = Angle.FromDegrees(end) };
    }

    extension(PistonSet)
    {
        public static PistonSet OneSideOf(int count, Length diameter) => PistonSet.OneSide(Enumerable.Repeat(diameter, count));
    }

    extension(SettingSearch)
    {
        public static SettingOutcome Evaluate(Vehicle vehicle, Conditions conditions, Pressure knee, double slope) =>
            Assert.Single(SettingSearch.Sweep(vehicle, conditions, [knee], [slope]));
    }

    public static Pressure KneeAt(this LoadSensingValve valve, Force rearAxleLoad) =>
        Pressure.FromPascals(Math.Max(valve.LowestKnee.Pascals,
            valve.KneeAtReference.Pascals + valve.KneePerKilonewton.Pascals * (rearAxleLoad - valve.ReferenceLoad).Kilonewtons));

    public static Interval<double>? AdhesionOn(this CarEstimate estimate, string surface) => estimate.Parameters
        .FirstOrDefault(p => string.Equals(p.Name, "adhesion, " + surface, StringComparison.OrdinalIgnoreCase))?.Posterior;
}
