namespace BrakeBalance.Measurements;

/// <summary>One number worth measuring.</summary>
/// <param name="Path">Path of the entry in the vehicle file.</param>
/// <param name="What">What it is, in words.</param>
/// <param name="How">The tool, and how to take the number.</param>
/// <param name="Range">The range it stands at now, as text.</param>
/// <param name="IsTypical">Whether that range is only what is typical of the car class.</param>
/// <param name="Alone">
/// Share of the answer's variance that goes when this number alone is known [–]: first-order Sobol index, not below zero.
/// </param>
/// <param name="InAll">Share of the answer's variance in which this number has a hand [–]: total Sobol index.</param>
public sealed record MeasuringAdvice(string Path, string What, string How, string Range, bool IsTypical, double Alone, double InAll)
{
    /// <summary>Width of the band that would be left on average, over the present one [–].</summary>
    public double BandLeft => Math.Sqrt(Math.Clamp(1 - Alone, 0, 1));
}
