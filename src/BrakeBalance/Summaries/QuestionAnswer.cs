namespace BrakeBalance.Summaries;

/// <summary>One common question with the answer for a car, or the number that is lacking.</summary>
/// <param name="Number">Number of the question, from 1.</param>
/// <param name="Topic">What the question is about; questions of one topic follow one another.</param>
/// <param name="Question">The question.</param>
/// <param name="Answer">The answer for this car; null when a number is lacking.</param>
/// <param name="Lacking">Numbers that are lacking, each with how it is found; empty when the question is answered.</param>
/// <param name="Vague">Paths of values that the answer rests on and that are ranges or only typical of the class.</param>
public sealed record QuestionAnswer(
    int Number, QuestionTopic Topic, string Question, string? Answer, IReadOnlyList<string> Lacking, IReadOnlyList<string> Vague);

/// <summary>What a common question is about.</summary>
public enum QuestionTopic
{
    /// <summary>Booster and effort.</summary>
    Effort,

    /// <summary>Master cylinder and pedal.</summary>
    Pedal,

    /// <summary>Valves and balance.</summary>
    Balance,

    /// <summary>Tyres, load, heat and the wet.</summary>
    Road,
}
