namespace BrakeBalance.Summaries;

/// <summary>One common question with the answer for a car, or the number that is lacking.</summary>
public sealed record QuestionAnswer
{
    /// <summary>Number of the question, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>What the question is about; questions of one topic follow one another.</summary>
    public required QuestionTopic Topic { get; init; }

    /// <summary>The question.</summary>
    public required string Question { get; init; }

    /// <summary>The answer for this car; null when a number is lacking.</summary>
    public string? Answer { get; init; }

    /// <summary>Numbers that are lacking, each with how it is found; empty when the question is answered.</summary>
    public required IReadOnlyList<string> Lacking { get; init; }

    /// <summary>Paths of values that the answer rests on and that are ranges or only typical of the class.</summary>
    public required IReadOnlyList<string> Vague { get; init; }
}

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
