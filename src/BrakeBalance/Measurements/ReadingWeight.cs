namespace BrakeBalance.Measurements;

/// <summary>How much say a line of a log has.</summary>
/// <param name="Line">Line of the log, from 1; 0 when it came from elsewhere.</param>
/// <param name="Weight">1 for a full say, towards 0 for a reading that cannot be believed [–].</param>
public sealed record ReadingWeight(int Line, double Weight);

/// <summary>What one test stop says, beside what the fitted car foretells, and how much say it has.</summary>
public sealed record StopWeight
{
    /// <summary>Its number among the stops given, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Line of the log, from 1; 0 when it came from elsewhere.</summary>
    public required int Line { get; init; }

    /// <summary>The deceleration read; null when it had no say.</summary>
    public Acceleration? Deceleration { get; init; }

    /// <summary>The deceleration that the fitted car has at the stop's pressures; null when none was read.</summary>
    public Acceleration? Foretold { get; init; }

    /// <summary>Weight of the deceleration [–], 1 in full; null when none was read.</summary>
    public double? DecelerationWeight { get; init; }

    /// <summary>Which axle locked first; null when nobody watched.</summary>
    public FirstLock? Locked { get; init; }

    /// <summary>Weight of the lock-up or its absence [–], 1 in full; null when nobody watched.</summary>
    public double? LockWeight { get; init; }
}
