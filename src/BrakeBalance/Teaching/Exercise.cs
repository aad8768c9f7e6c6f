namespace BrakeBalance.Teaching;

/// <summary>One exercise of one student: the question, and apart from it the answer with its steps.</summary>
/// <param name="Id">Lesson and level, such as <c>load-transfer-2</c>.</param>
/// <param name="Lesson">The lesson it belongs to.</param>
/// <param name="Level">1 easy, 2 middling, 3 hard; also its marks.</param>
/// <param name="Question">The question in Markdown, with every number needed beyond the car's data.</param>
/// <param name="Answer">The answer: for the key only.</param>
/// <param name="Steps">The way to it in Markdown with typeset formulas: for the key only.</param>
public sealed record Exercise(string Id, Lesson Lesson, int Level, string Question, ExerciseAnswer Answer, IReadOnlyList<string> Steps)
{
    /// <summary>The exercise whose answer this one starts from; null when it stands by itself.</summary>
    public string? StartsFrom { get; private init; }

    /// <summary>This answer from the earlier one, both in SI or as a fraction [–]; null when it stands by itself.</summary>
    internal Func<double, double>? Carried { get; private init; }

    /// <summary>The level, and so the marks, that an exercise's short name ends with.</summary>
    internal static int LevelOf(string id) => id[^1] - '0';

    /// <summary>The exercise as one that starts from the answer to another.</summary>
    internal Exercise From(string earlier, Func<double, double> carried) => this with { StartsFrom = earlier, Carried = carried };
}
