namespace BrakeBalance.Measurements;

/// <summary>A stop that could be made next, with what it would probably show and tell.</summary>
public sealed record CandidateStop
{
    /// <summary>The stop: load case, surface, front line pressure aimed at, initial speed, turns.</summary>
    public required TestStop Stop { get; init; }

    /// <summary>Deceleration expected, with its 90 % interval [–].</summary>
    public required Interval<double> BrakingRate { get; init; }

    /// <summary>Chance that an axle locks [–].</summary>
    public required double Lock { get; init; }

    /// <summary>Whether it may well end in a lock-up: released at the first call.</summary>
    public bool IsToLockUp => Lock > MostWithout;

    internal const double MostWithout = 0.1;

    /// <summary>When to break off the stop, or the day.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns>Words without a full stop.</returns>
    public string AbortIf(UnitSystem units) => PlannedStop.AbortIf(IsToLockUp, Stop.FrontPressure!.Value, units);

    /// <summary>Chance that the rear locks first [–], at the speed of the stop where it is highest.</summary>
    public required double RearFirst { get; init; }

    /// <summary>Width of the setting's interval expected after this stop, over its width now [–], 0 to 1.</summary>
    public required double WidthLeft { get; init; }
}

/// <summary>What the stops so far leave open of the setting, and the safe stops that would tell most of it.</summary>
public sealed record NextStops
{
    /// <summary>
    /// Knee at which both axles lock together in the condition that holds the setting back, with its 90 % interval, gauge; what an
    /// adjuster reaches is left aside. Null for a balance bar.
    /// </summary>
    public Interval<Pressure>? Knee { get; init; }

    /// <summary>The same as the front cylinder's share of the rod force [–]; null unless a balance bar is set.</summary>
    public Interval<double>? FrontForceShare { get; init; }

    /// <summary>Highest chance of a rear-first lock-up of a stop that is offered [–]: the level of the car's conditions.</summary>
    public required double Level { get; init; }

    /// <summary>The safe stops, the one to make next first; empty when none is safe enough.</summary>
    public required IReadOnlyList<CandidateStop> Candidates { get; init; }

    /// <summary>How many stops were used so far.</summary>
    public required int StopsUsed { get; init; }
}
