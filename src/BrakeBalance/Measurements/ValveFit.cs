namespace BrakeBalance.Measurements;

/// <summary>Knee and slope of a proportioning valve at one position of its adjuster, from gauge readings in one direction.</summary>
public sealed record ValveFit
{
    /// <summary>Whether the readings were taken while pressure rose or fell.</summary>
    public required PressurePhase Phase { get; init; }

    /// <summary>Knee with its 90 % interval, gauge, front line pressure; null when the readings show no knee.</summary>
    public Interval<Pressure>? Knee { get; init; }

    /// <summary>Highest front line pressure read, gauge; without a visible knee, the knee lies above it or there is no valve.</summary>
    public required Pressure HighestFront { get; init; }

    /// <summary>
    /// Slope above the knee with its 90 % interval [–], the one that all positions of the adjuster share in this direction unless they
    /// clearly differ; null when the readings show no knee.
    /// </summary>
    public Interval<double>? Slope { get; init; }

    /// <summary>Standard deviation of one gauge's reading about the fit.</summary>
    public required Pressure Scatter { get; init; }

    /// <summary>How many readings had a say.</summary>
    public required int Readings { get; init; }

    /// <summary>Log lines of readings that can only be mistakes; they had no say. Others are weighed by how far off they lie.</summary>
    public required IReadOnlyList<int> LeftOut { get; init; }

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
