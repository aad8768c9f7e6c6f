namespace BrakeBalance.Measurements;

/// <summary>One number worth measuring.</summary>
public sealed record MeasuringAdvice
{
    /// <summary>Path of the entry in the vehicle file.</summary>
    public required string Path { get; init; }

    /// <summary>What it is, in words.</summary>
    public required string What { get; init; }

    /// <summary>The tool, and how to take the number.</summary>
    public required string How { get; init; }

    /// <summary>The range it stands at now, as text.</summary>
    public required string Range { get; init; }

    /// <summary>Whether that range is only what is typical of the car class.</summary>
    public required bool IsTypical { get; init; }

    /// <summary>
    /// Share of the answer's variance that goes when this number alone is known [–]: first-order Sobol index, not below zero.
    /// </summary>
    public required double Alone { get; init; }

    /// <summary>Share of the answer's variance in which this number has a hand [–]: total Sobol index.</summary>
    public required double InAll { get; init; }

    /// <summary>Width of the band that would be left on average, over the present one [–].</summary>
    public double BandLeft => Math.Sqrt(Math.Clamp(1 - Alone, 0, 1));
}
