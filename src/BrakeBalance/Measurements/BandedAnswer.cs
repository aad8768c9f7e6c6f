namespace BrakeBalance.Measurements;

/// <summary>One answer as a band, because not all of the car is known.</summary>
public sealed record BandedAnswer
{
    /// <summary>Short name for scripts, such as "rear_force_margin".</summary>
    public required string Key { get; init; }

    /// <summary>What is answered, in words.</summary>
    public required string Question { get; init; }

    /// <summary>Unit of the values; empty for a dimensionless number.</summary>
    public required string Unit { get; init; }

    /// <summary>Middle value with the band that holds nine tenths of the cars within the ranges.</summary>
    public required Interval<double> Band { get; init; }

    /// <summary>Share of the cars within the ranges for which there is an answer [–].</summary>
    public required double Answered { get; init; }

    /// <summary>What to measure next for this answer, the number that narrows it most first.</summary>
    public required IReadOnlyList<MeasuringAdvice> MeasureNext { get; init; }
}
