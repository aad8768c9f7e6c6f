namespace BrakeBalance.Measurements;

/// <summary>One answer as a band, because not all of the car is known.</summary>
/// <param name="Key">Short name for scripts, such as "rear_force_margin".</param>
/// <param name="Question">What is answered, in words.</param>
/// <param name="Unit">Unit of the values; empty for a dimensionless number.</param>
/// <param name="Band">Middle value with the band that holds nine tenths of the cars within the ranges.</param>
/// <param name="Answered">Share of the cars within the ranges for which there is an answer [–].</param>
/// <param name="MeasureNext">What to measure next for this answer, the number that narrows it most first.</param>
public sealed record BandedAnswer(
    string Key, string Question, string Unit, Interval<double> Band, double Answered, IReadOnlyList<MeasuringAdvice> MeasureNext);
