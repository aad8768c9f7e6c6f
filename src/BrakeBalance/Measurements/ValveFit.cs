namespace BrakeBalance.Measurements;

/// <summary>Knee and slope of a proportioning valve at one position of its adjuster, from gauge readings in one direction.</summary>
/// <param name="Phase">Whether the readings were taken while pressure rose or fell.</param>
/// <param name="HighestFront">
/// Highest front line pressure read, gauge; without a visible knee, the knee lies above it or there is no valve.
/// </param>
/// <param name="Scatter">Standard deviation of one gauge's reading about the fit.</param>
/// <param name="Readings">How many readings had a say.</param>
/// <param name="LeftOut">
/// Log lines of readings that can only be mistakes; they had no say. Others are weighed by how far off they lie.
/// </param>
/// <param name="Knee">Knee with its 90 % interval, gauge, at the valve's inlet; null when the readings show no knee.</param>
/// <param name="Slope">
/// Slope above the knee with its 90 % interval [–], the one that all positions of the adjuster share in this direction unless they
/// clearly differ; null when the readings show no knee.
/// </param>
public sealed record ValveFit(
    PressurePhase Phase, Pressure HighestFront, Pressure Scatter, int Readings, IReadOnlyList<int> LeftOut,
    Interval<Pressure>? Knee = null, Interval<double>? Slope = null)
{
    /// <summary>The readings by line, each with the chance that it is honest [–].</summary>
    public IReadOnlyList<ReadingWeight> Weights { get; init; } = [];

    /// <summary>Rear line pressure the fit gives for a front line pressure.</summary>
    /// <param name="front">Front line pressure, gauge; not negative.</param>
    /// <param name="belowKnee">Rear over front line pressure below the knee [–].</param>
    /// <returns>Rear line pressure, gauge.</returns>
    public Pressure RearAt(Pressure front, double belowKnee = 1) => Knee is not { } knee || Slope is not { } slope || front <= knee.Estimate
        ? belowKnee * front
        : belowKnee * knee.Estimate + slope.Estimate * (front - knee.Estimate);
}
