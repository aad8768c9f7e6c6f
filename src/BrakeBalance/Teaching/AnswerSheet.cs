using System.Globalization;
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
    /// <summary>Reads answers: a header <c>student,exercise,answer</c>, then a line an answer; lines that begin with # are passed over.</summary>
    /// <param name="reader">The text.</param>
    /// <returns>The answers and the faults.</returns>
    public static AnswerSheet Read(TextReader reader)
    {
        List<GivenAnswer> answers = [];
        List<string> faults = [];
        LogTable table = LogTable.Read(reader);
        faults.AddRange(table.Problems.Select(problem => Line(problem.Line, problem.Reason + ".")));
        HashSet<string> known = [.. Lesson.All.SelectMany(lesson => Enumerable.Range(1, 3).Select(level => string.Create(CultureInfo.InvariantCulture, $"{lesson.Id}-{level}")))];
        int student = Column(table, "student");
        int exercise = Column(table, "exercise");
        int answer = Column(table, "answer");
        if (student < 0 || exercise < 0 || answer < 0)
        {
            faults.Add(Line(Math.Max(1, table.HeaderLine), "the header must name the columns student, exercise and answer."));
            return new([], faults);
        }

        HashSet<(int, string)> seen = [];
        foreach ((int line, string[] cells) in table.Rows)
        {
            string who = Cell(cells, student);
            string which = Cell(cells, exercise);
            if (!int.TryParse(who, NumberStyles.None, CultureInfo.InvariantCulture, out int number) || number is < 1 or > 9999)
            {
                faults.Add(Line(line, $"\"{who}\" is not a student number. Accepted: 1 to 9999."));
            }
            else if (!known.Contains(which))
            {
                string near = Nearest.Of(which, known) is { } guess ? $" Did you mean \"{guess}\"?" : "";
                faults.Add(Line(line, $"\"{which}\" is not an exercise.{near}"));
            }
            else if (!seen.Add((number, which)))
            {
                faults.Add(Line(line, string.Create(CultureInfo.InvariantCulture, $"student {number} has answered {which} already; the first answer counts.")));
            }
            else
            {
                answers.Add(new(line, number, which, Cell(cells, answer)));
            }
        }

        return new(answers, faults);
    }

    private static int Column(LogTable table, string name) => Array.FindIndex(table.Header, title => string.Equals(title, name, StringComparison.OrdinalIgnoreCase));

    private static string Cell(string[] cells, int index) => index < cells.Length ? cells[index] : "";

    private static string Line(int line, string what) => string.Create(CultureInfo.InvariantCulture, $"Line {line}: {what}");
}
