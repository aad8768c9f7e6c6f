namespace BrakeBalance.Teaching;

/// <summary>A class's marks, and what each exercise showed.</summary>
/// <param name="Marks">One entry for each answer.</param>
/// <param name="Items">One entry for each exercise that anybody answered.</param>
public sealed record ClassResults(IReadOnlyList<StudentMark> Marks, IReadOnlyList<ItemAnalysis> Items)
{
    /// <summary>One entry for each student of the class and each who answered anything, by number.</summary>
    public IReadOnlyList<StudentTotal> Totals
    {
        get
        {
            int all = (Exercises ?? [.. Marks.Select(mark => mark.Exercise.Id).Distinct()]).Sum(Exercise.LevelOf);
            ILookup<int, StudentMark> of = Marks.ToLookup(mark => mark.Student);
            return
            [
                .. of.Select(student => student.Key).Union(Roster ?? []).Order().Select(student => new StudentTotal(
                    student, of[student].Sum(mark => mark.Marked.Points), all, of[student].Count(),
                    of[student].Count(mark => mark.Marked.Mark is Mark.Right or Mark.CarriedForward),
                    of[student].Count(mark => mark.Marked.Mark is Mark.Blank))),
            ];
        }
    }

    private IReadOnlyList<int>? Roster { get; init; }

    private IReadOnlyList<string>? Exercises { get; init; }

    /// <summary>Marks a class.</summary>
    /// <param name="number">What a student's sheet was made with, by the student's number.</param>
    /// <param name="answers">The answers.</param>
    /// <param name="us">Whether the sheets lead with US units.</param>
    /// <param name="roster">The students of the class; null for those who answered. Others count in no item.</param>
    /// <param name="exercises">The exercises on the sheets; null for those that anybody answered.</param>
    /// <remarks>
    /// Facility is the mean share of the points; discrimination is the difference of facility between the upper and the lower 27 % of the
    /// class by total. Source: classical item analysis (Kelley's 27 % groups), from memory.
    /// </remarks>
    public static ClassResults Of(Func<int, ClassNumber> number, IReadOnlyList<GivenAnswer> answers, bool us = false,
        IReadOnlyList<int>? roster = null, IReadOnlyList<string>? exercises = null)
    {
        Dictionary<int, IReadOnlyDictionary<string, Exercise>> sheets = answers.Select(answer => answer.Student).Distinct()
            .ToDictionary(student => student, student =>
                (IReadOnlyDictionary<string, Exercise>)Teaching.Exercises.For(number(student), us ? UnitSystem.Us : UnitSystem.Si)
                    .ToDictionary(exercise => exercise.Id));
        Dictionary<(int, string), string> written = answers.GroupBy(answer => (answer.Student, answer.ExerciseId))
            .ToDictionary(same => same.Key, same => same.First().Text);
        Dictionary<int, char?> signs = answers.GroupBy(answer => answer.Student)
            .ToDictionary(student => student.Key, student => AnswerText.DecimalSign(student.Select(answer => answer.Text)));
        List<StudentMark> marks = [.. answers.Select(answer =>
        {
            Exercise exercise = sheets[answer.Student][answer.ExerciseId];
            (Exercise, string)? earlier = exercise.StartsFrom is { } from && written.TryGetValue((answer.Student, from), out string? text)
                ? (sheets[answer.Student][from], text) : null;
            return new StudentMark(answer.Student, exercise, answer.Text,
                Marking.Check(exercise, answer.Text, us, earlier, signs[answer.Student]));
        })];
        StudentMark[] ofClass = [.. marks.Where(mark => roster?.Contains(mark.Student) ?? true)];
        Dictionary<int, double> totals = ofClass.GroupBy(mark => mark.Student)
            .ToDictionary(group => group.Key, group => group.Sum(mark => mark.Marked.Points));
        int[] ranked = [.. totals.OrderByDescending(pair => pair.Value).ThenBy(pair => pair.Key).Select(pair => pair.Key)];
        int group = Math.Max(1, (int)Math.Round(0.27 * ranked.Length));
        HashSet<int> upper = [.. ranked.Take(group)];
        HashSet<int> lower = [.. ranked.TakeLast(group)];
        List<ItemAnalysis> items = [.. ofClass.GroupBy(mark => mark.Exercise.Id)
            .OrderBy(item => item.First().Exercise.Lesson.Number).ThenBy(item => item.First().Exercise.Level)
            .Select(item => new ItemAnalysis(
                item.Key,
                item.Count(),
                Facility(item),
                ranked.Length >= 4 && item.Any(mark => upper.Contains(mark.Student)) && item.Any(mark => lower.Contains(mark.Student))
                    ? Facility(item.Where(mark => upper.Contains(mark.Student))) - Facility(
                        item.Where(mark => lower.Contains(mark.Student)))
                    : null,
                [.. item.Where(mark => mark.Marked.Mark is not (Mark.Right or Mark.CarriedForward)).GroupBy(mark => mark.Marked.Comment)
                    .OrderByDescending(same => same.Count()).ThenBy(same => same.Key, StringComparer.Ordinal)
                        .Select(same => (same.Key, same.Count()))]))];
        return new(marks, items) { Roster = roster, Exercises = exercises };
    }

    private static double Facility(IEnumerable<StudentMark> marks) => marks.Average(mark => mark.Marked.Points / mark.Exercise.Level);
}

/// <summary>One student's mark in one exercise.</summary>
/// <param name="Student">The student's number.</param>
/// <param name="Exercise">The exercise.</param>
/// <param name="Text">What was written.</param>
/// <param name="Marked">The mark.</param>
public sealed record StudentMark(int Student, Exercise Exercise, string Text, MarkedAnswer Marked);

/// <summary>What one student has in all.</summary>
/// <param name="Student">The student's number.</param>
/// <param name="Points">Points given [–].</param>
/// <param name="Of">Points that all exercises of the class are worth [–], with a line of this student or without.</param>
/// <param name="Answers">Exercises with a line in the file.</param>
/// <param name="Right">Answers that are right, or right from an earlier wrong one.</param>
/// <param name="Blank">Exercises left blank.</param>
public sealed record StudentTotal(int Student, double Points, int Of, int Answers, int Right, int Blank);

/// <summary>What one exercise showed.</summary>
/// <param name="ExerciseId">The exercise.</param>
/// <param name="Answers">How many answered.</param>
/// <param name="Facility">Mean share of the points [–]; 0 to 1.</param>
/// <param name="Discrimination">Facility of the upper 27 % less that of the lower 27 % [–]; null for fewer than four students.</param>
/// <param name="Comments">What went wrong, most frequent first, with counts.</param>
public sealed record ItemAnalysis(string ExerciseId, int Answers, double Facility, double? Discrimination,
    IReadOnlyList<(string Comment, int Count)> Comments);
