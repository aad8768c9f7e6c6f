using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Teaching;

namespace BrakeBalance.Notebooks.Tests.Classroom;

public class ClassSheetTests
{
    private static readonly ClassPlan Plan = new() { Seed = 77, Students = [1, 2, 3, 4, 5, 6] };

    [Fact]
    public void No_answer_no_step_and_no_tolerance_is_in_the_students_file()
    {
        string html = ClassSheets.Students(Plan);
        foreach (int student in Plan.Students)
        {
            foreach (Exercise exercise in Exercises.For(new ClassNumber { Seed = Plan.Seed, Student = student }))
            {
                string paper = Paper(html, student).Replace(CarDataOf(Paper(html, student)), "", StringComparison.Ordinal);
                Assert.DoesNotContain(exercise.Answer.Text(us: false), paper, StringComparison.Ordinal);
                Assert.DoesNotContain(exercise.Answer.Text(us: true), paper, StringComparison.Ordinal);
                Assert.All(exercise.Answer.Mistakes, mistake => Assert.DoesNotContain(mistake.Name, paper, StringComparison.Ordinal));
            }
        }

        Assert.DoesNotContain("<math", html, StringComparison.Ordinal);
        Assert.DoesNotContain("±", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_key_has_every_answer()
    {
        string html = ClassSheets.Key(Plan);
        Assert.All(
            Plan.Students.SelectMany(student => Exercises.For(new ClassNumber { Seed = Plan.Seed, Student = student })),
            exercise => Assert.Contains(exercise.Answer.Text(us: false), html, StringComparison.Ordinal));
    }

    [Fact]
    public async Task Sheets_are_written_and_their_answers_marked()
    {
        string folder = Directory.CreateTempSubdirectory("class").FullName;
        try
        {
            (int code, string output, string error) =
                await Shell.RunAsync("class", "sheets", "--seed", "77", "--students", "1-4", "--lesson", "knee", "--output", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("4 students", output, StringComparison.Ordinal);
            string answers = Path.Combine(folder, "answers.csv");
            List<string> lines = [.. File.ReadAllLines(answers)];
            Assert.Equal(2 + 4 * 3, lines.Count);
            for (int i = 2; i < lines.Count; i++)
            {
                string[] cells = lines[i].Split(',');
                Exercise exercise = Exercises.For(
                    new ClassNumber { Seed = 77, Student = int.Parse(cells[0], System.Globalization.CultureInfo.InvariantCulture) })
                    .First(e => e.Id == cells[1]);
                lines[i] += exercise.Answer.Text(us: false).Split(" (")[0];
            }

            File.WriteAllLines(answers, lines);
            (code, output, error) = await Shell.RunAsync("class", "mark", answers, "--seed", "77", "--output", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("12 answers marked, 0 lines left out", output, StringComparison.Ordinal);
            Assert.All(File.ReadAllLines(Path.Combine(folder, "marks.csv")).Skip(1), line =>
                Assert.Contains(",right,", line, StringComparison.Ordinal));
            Assert.Equal(1 + 3, File.ReadAllLines(Path.Combine(folder, "items.csv")).Length);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Every_bad_option_is_told_at_once_and_nothing_is_written()
    {
        string folder = Path.Combine(Path.GetTempPath(), "class-not-written");
        (int code, _, string error) =
            await Shell.RunAsync("class", "sheets", "--seed", "1", "--students", "0-3", "--lesson", "kne", "--output", folder);
        Assert.Equal(2, code);
        Assert.Contains("--students 0-3", error, StringComparison.Ordinal);
        Assert.Contains("--lesson kne", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    private static string Paper(string html, int student)
    {
        int start = html.IndexOf($"<h2>Exercise sheet {student}</h2>", StringComparison.Ordinal);
        return html[start..html.IndexOf("</section>", start, StringComparison.Ordinal)];
    }

    private static string CarDataOf(string paper) =>
        paper[paper.IndexOf("<table>", StringComparison.Ordinal)..paper.IndexOf("</table>", StringComparison.Ordinal)];
}
