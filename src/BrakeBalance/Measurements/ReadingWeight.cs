namespace BrakeBalance.Measurements;

/// <summary>How much say a line of a log has.</summary>
/// <param name="Line">Line of the log, from 1; 0 when it came from elsewhere.</param>
/// <param name="Weight">1 for a full say, towards 0 for a reading that cannot be believed [–].</param>
public sealed record ReadingWeight(int Line, double Weight);

/// <summary>What one test stop says, beside what the fitted car foretells, and how much say it has.</summary>
/// <param name="Number">Its number among the stops given, from 1.</param>
/// <param name="Line">Line of the log, from 1; 0 when it came from elsewhere.</param>
/// <param name="Deceleration">The deceleration read; null when it had no say.</param>
/// <param name="Foretold">The deceleration that the fitted car has at the stop's pressures; null when none was read.</param>
/// <param name="DecelerationWeight">Weight of the deceleration [–], 1 in full; null when none was read.</param>
/// <param name="Locked">Which axle locked first; null when nobody watched.</param>
/// <param name="LockWeight">Weight of the lock-up or its absence [–], 1 in full; null when nobody watched.</param>
public sealed record StopWeight(
    int Number, int Line, Acceleration? Deceleration, Acceleration? Foretold, double? DecelerationWeight, FirstLock? Locked,
    double? LockWeight);
