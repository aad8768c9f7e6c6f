namespace BrakeBalance.Teaching;

/// <summary>A lesson of the course.</summary>
/// <param name="Number">Its place in the course, from 1.</param>
/// <param name="Id">Its short name, such as <c>load-transfer</c>.</param>
/// <param name="Title">Its title.</param>
public sealed record Lesson(int Number, string Id, string Title)
{
    /// <summary>The course in its order.</summary>
    public static IReadOnlyList<Lesson> All { get; } =
    [
        new(1, "static-load", "Static axle load"),
        new(2, "load-transfer", "Load transfer"),
        new(3, "ideal-curve", "The ideal curve"),
        new(4, "fixed-ratio", "A fixed ratio"),
        new(5, "knee", "The knee of the valve"),
        new(6, "adhesion-utilisation", "Adhesion utilisation"),
        new(7, "effort", "Effort at the pedal"),
        new(8, "failed-assist", "When the assist fails"),
        new(9, "rear-lock", "Which axle locks first"),
        new(10, "heat", "Where the energy goes"),
    ];

    /// <summary>The lesson of a short name.</summary>
    /// <param name="id">The short name.</param>
    /// <returns>The lesson.</returns>
    /// <exception cref="ArgumentException">There is none; the message lists those there are.</exception>
    public static Lesson Of(string id) => All.FirstOrDefault(lesson => lesson.Id == id)
        ?? throw new ArgumentException($"There is no lesson \"{id}\". Accepted: {string.Join(", ", All.Select(lesson => lesson.Id))}.",
            nameof(id));
}
