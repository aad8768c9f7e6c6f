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

    /// <summary>Chance that the rear locks first [–].</summary>
    public required double RearFirst { get; init; }

    /// <summary>Expected information about the unknown quantities, in bits [–].</summary>
    public required double Bits { get; init; }

    /// <summary>Part by which the variance of the knee for equal lock-up is expected to shrink [–], 0 to 1.</summary>
    public required double KneeNarrowed { get; init; }
}
