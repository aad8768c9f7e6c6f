using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>One answer as a band, because not all of the car is known.</summary>
/// <param name="Key">Short name for scripts, such as "rear_force_margin"; the unit is not in it.</param>
/// <param name="Question">What is answered, in words.</param>
/// <param name="Measure">What kind of quantity it is.</param>
/// <param name="Band">Middle value with the band that holds nine tenths of the cars within the ranges, in the measure's SI unit.</param>
/// <param name="Answered">Share of the cars within the ranges for which there is an answer [–].</param>
/// <param name="MeasureNext">What to measure next for this answer, the number that narrows it most first.</param>
public sealed record BandedAnswer(
    string Key, string Question, Measure Measure, Interval<double> Band, double Answered, IReadOnlyList<MeasuringAdvice> MeasureNext);
