namespace BrakeBalance.Measurements;

/// <summary>A stop that could be made next, with what it would probably show and tell.</summary>
/// <param name="Stop">The stop: load case, surface, front line pressure aimed at, initial speed, turns.</param>
/// <param name="BrakingRate">Deceleration expected, with its 90 % interval [–].</param>
/// <param name="Lock">Chance that an axle locks [–].</param>
/// <param name="RearFirst">Chance that the rear locks first [–], at the speed of the stop where it is highest.</param>
/// <param name="WidthLeft">Width of the setting's interval expected after this stop, over its width now [–], 0 to 1.</param>
public sealed record CandidateStop(TestStop Stop, Interval<double> BrakingRate, double Lock, double RearFirst, double WidthLeft)
{
    /// <summary>Whether it may well end in a lock-up: released at the first call.</summary>
    public bool IsToLockUp => Lock > MostWithout;

    internal const double MostWithout = 0.1;

    /// <summary>When to break off the stop, or the day.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Words without a full stop.</returns>
    public string AbortIf(UnitSystem units) => PlannedStop.AbortIf(IsToLockUp, Stop.FrontPressure!.Value, units);
}

/// <summary>What the stops so far leave open of the setting, and the safe stops that would tell most of it.</summary>
/// <param name="Knee">
/// Knee at which both axles lock together in the condition that holds the setting back, with its 90 % interval, gauge; what an adjuster
/// reaches is left aside. Null for a balance bar.
/// </param>
/// <param name="FrontForceShare">The same as the front cylinder's share of the rod force [–]; null unless a balance bar is set.</param>
/// <param name="Level">Highest chance of a rear-first lock-up of a stop that is offered [–]: the level of the car's conditions.</param>
/// <param name="Candidates">The safe stops, the one to make next first; empty when none is safe enough.</param>
/// <param name="StopsUsed">How many stops were used so far.</param>
public sealed record NextStops(
    Interval<Pressure>? Knee, Interval<double>? FrontForceShare, double Level, IReadOnlyList<CandidateStop> Candidates, int StopsUsed);
