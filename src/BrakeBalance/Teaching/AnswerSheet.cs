using BrakeBalance.Measurements;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Teaching;

/// <summary>One line of a class's answers.</summary>
/// <param name="Line">Line in the file, counted from 1.</param>
/// <param name="Student">The student's number.</param>
/// <param name="ExerciseId">The exercise.</param>
/// <param name="Text">What was written.</param>
public sealed record GivenAnswer(int Line, int Student, string ExerciseId, string Text);

/// <summary>A class's answers as read from CSV: those that can be marked, and the lines that cannot, with the reason.</summary>
/// <param name="Answers">The answers.</param>
/// <param name="Faults">Lines left out, each said with its number and reason.</param>
public sealed record AnswerSheet(IReadOnlyList<GivenAnswer> Answers, IReadOnlyList<string> Faults)
{
    /// <summary>
    /// Reads answers: a header <c>student,exercise,answer</c>, then a line an answer; lines that begin with # are passed over.
    /// </summary>
    /// <param name="reader">The text.</param>
    /// <returns>The answers and the faults.</returns>
    public static AnswerSheet Read(TextReader reader)
    {
        LogTable table = LogTable.Read(reader);
        JoinDecimals(table);
        var cells = new LogCells(table);
        HashSet<string> known = [.. IdsOf(Lesson.All)];
        (int student, int exercise, int answer) = (cells.Find("student"), cells.Find("exercise"), cells.Find("answer"));
        if (student < 0 || exercise < 0 || answer < 0)
        {
            cells.Problems.Add(new LogProblem(cells.HeaderLine,
                "the header must name the columns student, exercise and answer"));
            return Of(cells.Nothing<GivenAnswer>(), table);
        }

        HashSet<(int, string)> seen = [];
        return Of(cells.ReadRows(line =>
        {
            (string who, string which, string text) = (cells.Word(student), cells.Word(exercise), cells.Word(answer));
            if (!int.TryParse(who, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number is < 1 or > 9999)
            {
                cells.Fault($"\"{who}\" is not a student number. Accepted: 1 to 9999.");
            }
            else if (!known.Contains(which))
            {
                string near = Nearest.Of(which, known) is { } guess ? $" Did you mean \"{guess}\"?" : "";
                cells.Fault($"\"{which}\" is not an exercise.{near}");
            }
            else if (!seen.Add((number, which)))
            {
                cells.Fault(Invariant.Text($"student {number} has answered {which} already; the first answer counts."));
            }

            return new GivenAnswer(line, number, which, text);
        }), table);
    }

    private const string CodeWord = "Class code ", StudentsWord = "; students ", UnitsWord = "; units ", LessonsWord = "; lessons ";

    /// <summary>The class that the file says it is of; null when it says none.</summary>
    public string? Code => Told(CodeWord);

    /// <summary>The student numbers that the file says it is of, as they were asked for; null when it says none.</summary>
    public string? Students => Told(StudentsWord);

    /// <summary>Whether the sheets lead with US units; null when the file does not say.</summary>
    public bool? Us => Told(UnitsWord) is { } units ? units == "us" : null;

    /// <summary>The exercises on the sheets; those with a line when the file does not say.</summary>
    public IReadOnlyList<string> Exercises => Told(LessonsWord) is { } lessons
        ? [.. IdsOf(Lesson.All.Where(lesson => lessons.Split(' ').Contains(lesson.Id)))]
        : [.. Answers.Select(answer => answer.ExerciseId).Distinct()];

    private string Class { get; init; } = "";

    private string? Told(string word) => Class.IndexOf(word, StringComparison.Ordinal) is >= 0 and var at
        ? Class[(at + word.Length)..].Split(';')[0].Trim() : null;

    private static IEnumerable<string> IdsOf(IEnumerable<Lesson> lessons) => lessons.SelectMany(lesson =>
        Enumerable.Range(1, 3).Select(level => Invariant.Text($"{lesson.Id}-{level}")));

    /// <summary>The line by which <see cref="Read"/> knows the class.</summary>
    public static string ClassLine(string code, string students, bool us, IEnumerable<Lesson> lessons) =>
        $"# {CodeWord}{code}{StudentsWord}{students}{UnitsWord}{(us ? "us" : "si")}"
            + $"{LessonsWord}{string.Join(' ', lessons.Select(lesson => lesson.Id))}";

    /// <summary>Students and exercises of the class without a line, a student at a time; the numbers that are not of the class.</summary>
    /// <param name="roster">The students of the class; null for those with a line.</param>
    public (IReadOnlyList<(int Student, IReadOnlyList<string> Exercises)> Missing, IReadOnlyList<int> Unknown) Against(
        IReadOnlyList<int>? roster)
    {
        ILookup<int, string> given = Answers.ToLookup(answer => answer.Student, answer => answer.ExerciseId);
        int[] present = [.. given.Select(student => student.Key).Order()];
        return (
            [.. (roster ?? present).Select(student => (student, (IReadOnlyList<string>)[.. Exercises.Except(given[student])]))
                .Where(student => student.Item2.Count > 0)],
            roster is null ? [] : [.. present.Except(roster)]);
    }

    // A decimal comma parts an answer in a file parted by commas; the answer is the last column, so its parts are neighbours.
    private static void JoinDecimals(LogTable table)
    {
        if (table.Delimiter != ',' || table.Header.Length == 0
            || !table.Header[^1].Trim().Equals("answer", StringComparison.OrdinalIgnoreCase))
        {
            return;
        }

        for (int i = 0; i < table.Rows.Count; i++)
        {
            (int line, string[] row) = table.Rows[i];
            int last = table.Header.Length - 1;
            if (row.Length > table.Header.Length && Enumerable.Range(last, row.Length - last - 1).All(at =>
                row[at].Length > 0 && char.IsAsciiDigit(row[at][^1]) && row[at + 1].Length > 0 && char.IsAsciiDigit(row[at + 1][0])))
            {
                table.Rows[i] = (line, [.. row[..last], string.Join(',', row[last..])]);
            }
        }
    }

    private static AnswerSheet Of(LogReading<GivenAnswer> reading, LogTable table) => new(
        reading.Rows,
        [.. reading.Problems.Select(p => Invariant.Text($"Line {p.Line}: {p.Reason}{(p.Reason[^1] is '.' or '?' ? "" : ".")}"))])
    {
        Class = table.Remarks.FirstOrDefault(remark => remark.StartsWith(CodeWord, StringComparison.Ordinal)) ?? "",
    };
}
