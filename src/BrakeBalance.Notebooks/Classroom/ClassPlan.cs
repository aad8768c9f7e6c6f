namespace BrakeBalance.Notebooks.Classroom;

/// <summary>Which exercises a class gets, and who is in it.</summary>
internal sealed record ClassPlan
{
    /// <summary>The teacher's secret, from which the sheets and their key come.</summary>
    public required string Secret { get; init; }

    /// <summary>What stands on the sheets: it tells the class and opens nothing.</summary>
    public string Code => ClassNumber.CodeOf(Secret);

    /// <summary>The students' numbers.</summary>
    public required IReadOnlyList<int> Students { get; init; }

    /// <summary>The lessons; all when empty.</summary>
    public IReadOnlyList<Lesson> Lessons { get; init; } = [];

    public UnitSystem Units { get; init; } = UnitSystem.Si;

    /// <summary>What a student's sheet is made with.</summary>
    public ClassNumber Number(int student) => new() { Secret = Secret, Student = student };

    /// <summary>The exercises on a car.</summary>
    /// <returns>Those of the plan's lessons, in the order of the course.</returns>
    public IReadOnlyList<Exercise> Exercises(ExerciseCar car) =>
        [.. Teaching.Exercises.For(car, Units).Where(exercise => Covers(exercise.Lesson))];

    /// <summary>Whether a lesson is among those of the plan.</summary>
    public bool Covers(Lesson lesson) => Lessons.Count == 0 || Lessons.Contains(lesson);

    /// <summary>Student numbers as <see cref="ReadStudents"/> reads them, runs drawn together.</summary>
    public static string Write(IReadOnlyList<int> students)
    {
        IEnumerable<IGrouping<int, int>> runs = students.Index().GroupBy(one => one.Item - one.Index, one => one.Item);
        return string.Join(',', runs.Select(run => run.Count() == 1
            ? Invariant.Text($"{run.First()}") : Invariant.Text($"{run.First()}-{run.Last()}")));
    }

    /// <summary>Reads "1-30" or "1,4,7-9".</summary>
    /// <returns>The numbers, rising, each once; null when the text cannot be read or a number lies outside 1 to 9999.</returns>
    public static IReadOnlyList<int>? ReadStudents(string text)
    {
        SortedSet<int> numbers = [];
        foreach (string part in text.Split(',', StringSplitOptions.TrimEntries))
        {
            string[] ends = part.Split('-', StringSplitOptions.TrimEntries);
            if (ends.Length > 2
                || !int.TryParse(ends[0], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture,
                    out int first)
                || !int.TryParse(ends[^1], System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture,
                    out int last)
                || first < 1 || last > 9999 || last < first)
            {
                return null;
            }

            numbers.UnionWith(Enumerable.Range(first, last - first + 1));
        }

        return [.. numbers];
    }
}
