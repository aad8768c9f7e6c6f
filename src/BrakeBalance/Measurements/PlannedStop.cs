using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>One line of a test plan.</summary>
/// <param name="Number">Number in the order of the day, from 1.</param>
/// <param name="Purpose">What it is for.</param>
/// <param name="Speed">Speed at which the pedal is applied.</param>
/// <param name="TargetPressure">Front line pressure to build up to over about a second, gauge.</param>
/// <param name="LoadCase">Load case.</param>
/// <param name="Surface">Surface.</param>
/// <param name="Turns">Turns of the adjuster from fully out; null when there is no adjuster.</param>
/// <param name="BrakingRate">Deceleration expected, with its 90 % interval [–].</param>
/// <param name="RearFirst">Chance that the rear locks first [–].</param>
/// <param name="ToLockUp">Whether the stop is meant to end in the first lock-up.</param>
public sealed record PlannedStop(
    int Number, string Purpose, Speed Speed, Pressure TargetPressure, string LoadCase, string Surface, double? Turns,
    Interval<double> BrakingRate, double RearFirst, bool ToLockUp)
{
    /// <summary>When to break off the stop, or the day.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Words without a full stop.</returns>
    public string AbortIf(UnitSystem units) => AbortIf(ToLockUp, TargetPressure, units);

    internal static string AbortIf(bool toLockUp, Pressure target, UnitSystem units) => toLockUp
        ? "release at the first call of any lock-up; end the day at a rear call"
        : $"any wheel locks, the car pulls, or the gauge passes {Measure.LinePressure.Text(target + Beyond, units)}";

    internal static Pressure Beyond => Pressure.FromBars(10);
}
