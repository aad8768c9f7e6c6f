using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>One line of a test plan.</summary>
public sealed record PlannedStop
{
    /// <summary>Number in the order of the day, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What it is for.</summary>
    public required string Purpose { get; init; }

    /// <summary>Speed at which the pedal is applied.</summary>
    public required Speed Speed { get; init; }

    /// <summary>Front line pressure to build up to over about a second, gauge.</summary>
    public required Pressure TargetPressure { get; init; }

    /// <summary>Load case.</summary>
    public required string LoadCase { get; init; }

    /// <summary>Surface.</summary>
    public required string Surface { get; init; }

    /// <summary>Turns of the adjuster from fully out; null when there is no adjuster.</summary>
    public double? Turns { get; init; }

    /// <summary>Deceleration expected, with its 90 % interval [–].</summary>
    public required Interval<double> BrakingRate { get; init; }

    /// <summary>Chance that the rear locks first [–].</summary>
    public required double RearFirst { get; init; }

    /// <summary>Whether the stop is meant to end in the first lock-up.</summary>
    public required bool ToLockUp { get; init; }

    /// <summary>When to break off the stop, or the day.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Words without a full stop.</returns>
    public string AbortIf(UnitSystem units) => AbortIf(ToLockUp, TargetPressure, units);

    internal static string AbortIf(bool toLockUp, Pressure target, UnitSystem units) => toLockUp
        ? "release at the first call of any lock-up; end the day at a rear call"
        : $"any wheel locks, the car pulls, or the gauge passes {Measure.LinePressure.Text(target + Pressure.FromBars(10), units)}";
}
