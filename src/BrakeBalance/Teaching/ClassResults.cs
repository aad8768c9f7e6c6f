namespace BrakeBalance.Teaching;

/// <summary>A class's marks, and what each exercise showed.</summary>
/// <param name="Marks">One entry for each answer.</param>
/// <param name="Items">One entry for each exercise that anybody answered.</param>
public sealed record ClassResults(IReadOnlyList<StudentMark> Marks, IReadOnlyList<ItemAnalysis> Items)
{
    /// <summary>Marks a class.</summary>
    /// <param name="seed">The class seed that the sheets were made with.</param>
    /// <param name="answers">The answers.</param>
    /// <param name="us">Whether the sheets lead with US units.</param>
    /// <returns>The results.</returns>
    /// <remarks>
    /// Facility is the mean share of the points; discrimination is the difference of facility between the upper and the lower 27 % of
    /// the class by total.
    /// Source: classical item analysis (Kelley's 27 % groups), from memory.
    /// </remarks>
    public static ClassResults Of(int seed, IReadOnlyList<GivenAnswer> answers, bool us = false)
    {
        Dictionary<int, IReadOnlyDictionary<string, Exercise>> sheets = answers.Select(answer => answer.Student).Distinct()
            .ToDictionary(student =>
                student, student => (IReadOnlyDictionary<string, Exercise>)Exercises.For(new ClassNumber { Seed = seed, Student = student })
                .ToDictionary(exercise => exercise.Id));
        List<StudentMark> marks = [.. answers.Select(answer =>
        {
            Exercise exercise = sheets[answer.Student][answer.ExerciseId];
            return new StudentMark(answer.Student, exercise, answer.Text, Marking.Check(exercise, answer.Text, us));
        })];
        Dictionary<int, double> totals = marks.GroupBy(mark => mark.Student)
            .ToDictionary(group => group.Key, group => group.Sum(mark => mark.Marked.Points));
        int[] ranked = [.. totals.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).Select(pair => pair.Key)];
        int group = Math.Max(1, (int)Math.Round(0.27 * ranked.Length));
        HashSet<int> upper = [.. ranked.Take(group)];
        HashSet<int> lower = [.. ranked.TakeLast(group)];
        List<ItemAnalysis> items = [.. marks.GroupBy(mark => mark.Exercise.Id)
            .OrderBy(item => item.First().Exercise.Lesson.Number).ThenBy(item => item.First().Exercise.Level)
            .Select(item => new ItemAnalysis(
                item.Key,
                item.Count(),
                Facility(item),
                ranked.Length >= 4 && item.Any(mark => upper.Contains(mark.Student)) && item.Any(mark => lower.Contains(mark.Student))
                    ? Facility(item.Where(mark => upper.Contains(mark.Student))) - Facility(
                        item.Where(mark => lower.Contains(mark.Student)))
                    : null,
                [.. item.Where(mark => mark.Marked.Mark is not Mark.Right).GroupBy(mark => mark.Marked.Comment)
                    .OrderByDescending(same => same.Count()).ThenBy(same => same.Key, StringComparer.Ordinal)
                        .Select(same => (same.Key, same.Count()))]))];
        return new(marks, items);
    }

    private static double Facility(IEnumerable<StudentMark> marks) => marks.Average(mark => mark.Marked.Points / mark.Exercise.Level);
}

/// <summary>One student's mark in one exercise.</summary>
/// <param name="Student">The student's number.</param>
/// <param name="Exercise">The exercise.</param>
/// <param name="Text">What was written.</param>
/// <param name="Marked">The mark.</param>
public sealed record StudentMark(int Student, Exercise Exercise, string Text, MarkedAnswer Marked);

/// <summary>What one exercise showed.</summary>
/// <param name="ExerciseId">The exercise.</param>
/// <param name="Answers">How many answered.</param>
/// <param name="Facility">Mean share of the points [–]; 0 to 1.</param>
/// <param name="Discrimination">Facility of the upper 27 % less that of the lower 27 % [–]; null for fewer than four students.</param>
/// <param name="Comments">What went wrong, most frequent first, with counts.</param>
public sealed record ItemAnalysis(string ExerciseId, int Answers, double Facility, double? Discrimination,
    IReadOnlyList<(string Comment, int Count)> Comments);
