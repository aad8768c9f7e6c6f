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
        var cells = new LogCells(LogTable.Read(reader));
        HashSet<string> known =
        [
            .. Lesson.All.SelectMany(lesson =>
                Enumerable.Range(1, 3).Select(level => string.Create(CultureInfo.InvariantCulture, $"{lesson.Id}-{level}"))),
        ];
        (int student, int exercise, int answer) = (cells.Find("student"), cells.Find("exercise"), cells.Find("answer"));
        if (student < 0 || exercise < 0 || answer < 0)
        {
            cells.Problems.Add(new LogProblem
            {
                Line = cells.HeaderLine,
                Reason = "the header must name the columns student, exercise and answer"
            });
            return Of(cells.Nothing<GivenAnswer>());
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
                cells.Fault(string.Create(CultureInfo.InvariantCulture,
                    $"student {number} has answered {which} already; the first answer counts."));
            }

            return new GivenAnswer(line, number, which, text);
        }));
    }

    private static AnswerSheet Of(LogReading<GivenAnswer> reading) => new(
        reading.Rows,
        [.. reading.Problems.Select(p =>
            string.Create(CultureInfo.InvariantCulture, $"Line {p.Line}: {p.Reason}{(p.Reason[^1] is '.' or '?' ? "" : ".")}"))]);
}
