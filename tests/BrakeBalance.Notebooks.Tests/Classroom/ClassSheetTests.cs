using System.Text.RegularExpressions;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Teaching;

namespace BrakeBalance.Notebooks.Tests.Classroom;

public class ClassSheetTests
{
    private static readonly ClassPlan Plan = new() { Secret = "seven copper keys", Students = [1, 2, 3, 4, 5, 6] };

    [Fact]
    public void No_answer_no_step_and_no_tolerance_is_in_the_students_file()
    {
        string html = ClassSheets.Students(Plan);
        foreach (int student in Plan.Students)
        {
            foreach (Exercise exercise in Exercises.For(Plan.Number(student)))
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
            Plan.Students.SelectMany(student => Exercises.For(Plan.Number(student))),
            exercise => Assert.Contains(exercise.Answer.Text(us: false), html, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void Each_lesson_of_a_sheet_has_a_frame_to_draw_into_and_the_key_the_whole_figure(UnitSystem units)
    {
        foreach (bool isKey in new[] { false, true })
        {
            string html = isKey ? ClassSheets.Key(Plan with { Units = units }) : ClassSheets.Students(Plan with { Units = units });
            string[] ids = [.. Regex.Matches(html, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
            Assert.Equal(ids.Length, ids.Distinct().Count());
            foreach (int student in Plan.Students)
            {
                string[] parts = Paper(html, student, isKey ? "Teacher's key" : "Exercise sheet").Split("<div class=\"bb-part\">")[1..];
                Assert.Equal(Lesson.All.Count, parts.Length);
                Assert.All(parts.Zip(Lesson.All), one =>
                {
                    Assert.Equal(3, Regex.Count(one.First, $@"\({one.Second.Id}-\d, "));
                    Assert.Equal(1, Regex.Count(one.First, "<svg "));
                    Assert.Equal(isKey, !one.First.Contains("To draw into", StringComparison.Ordinal));
                    Assert.True(!isKey || Regex.IsMatch(one.First, "(?s)-layers\">.*<(path|circle)"), one.Second.Id);
                });
            }
        }
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void A_unit_is_no_word_and_a_wrong_answer_stands_once(UnitSystem units)
    {
        ClassPlan plan = Plan with { Students = [.. Enumerable.Range(1, 30)], Units = units };
        string sheets = ClassSheets.Students(plan);
        Assert.Contains($"for example “{(units == UnitSystem.Us ? "in" : "mm")}”", sheets, StringComparison.Ordinal);
        Assert.DoesNotContain("for example in ", sheets, StringComparison.Ordinal);
        MatchCollection wrong = Regex.Matches(System.Net.WebUtility.HtmlDecode(ClassSheets.Key(plan)), "Common wrong answers: ([^<]+)");
        Assert.Contains(wrong, one => one.Value.Contains(", or ", StringComparison.Ordinal));
        Assert.All(wrong, one =>
        {
            string[] values = [.. one.Groups[1].Value.Split("; ").Select(part => part[..part.IndexOf(" (", StringComparison.Ordinal)])];
            Assert.Equal(values.Distinct(), values);
            Assert.All(values, value => Assert.DoesNotContain("-", value, StringComparison.Ordinal));
        });
    }

    [Fact]
    public void The_booklet_has_ninety_minutes_a_figure_and_all_answers_for_each_lesson()
    {
        string[] lessons = ClassSheets.Booklet(Plan).Split("<h2>Lesson ")[1..];
        Assert.Equal(Lesson.All.Count, lessons.Length);
        foreach ((string html, Lesson lesson) in lessons.Zip(Lesson.All))
        {
            string plan = html[..html.IndexOf("</table>", StringComparison.Ordinal)];
            Assert.Equal(90, Regex.Matches(plan, @"<td>(\d+)</td>")
                .Sum(cell => int.Parse(cell.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture)));
            Assert.Contains("<svg", html, StringComparison.Ordinal);
            Assert.All(Plan.Students.SelectMany(student => Exercises.For(Plan.Number(student))).Where(one => one.Lesson == lesson),
                exercise => Assert.Contains(exercise.Answer.Text(us: false), html, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_slides_show_each_figure_of_each_lesson_once_and_no_answer_of_the_class()
    {
        string html = ClassSheets.Slides(Plan);
        string[] ids = [.. Regex.Matches(html, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.All(Lesson.All, lesson => Assert.True(Regex.Count(html, $"<h2>Lesson {lesson.Number}: ") >= 2));
        Assert.DoesNotContain(Plan.Code, html, StringComparison.Ordinal);
        Assert.Contains("Marks for the way", ClassSheets.Booklet(Plan), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Answers_to_sheets_in_us_units_are_marked_in_them_and_any_encoding_is_read()
    {
        string folder = Directory.CreateTempSubdirectory("class").FullName;
        try
        {
            await Shell.RunAsync("class", "sheets", "--secret", Plan.Secret, "--students", "1", "--lesson", "heat", "--units", "us",
                "--output", folder);
            string answers = Path.Combine(folder, "answers.csv");
            Exercise[] heat = [.. Exercises.For(Plan.Number(1)).Where(exercise => exercise.Lesson.Id == "heat")];
            string[] lines = File.ReadAllLines(answers);
            (lines[3], lines[4]) = (lines[3] + heat[0].Answer.Text(us: true).Split(' ')[0], lines[4] + heat[1].Answer.Text(us: true));
            File.WriteAllText(answers, string.Join('\n', lines), System.Text.Encoding.Latin1);
            string shown = (await Shell.RunAsync("class", "mark", answers, "--secret", Plan.Secret, "--output", folder)).Output;
            Assert.Contains("Facility: mean share of the marks", shown, StringComparison.Ordinal);
            string[] marks = File.ReadAllLines(Path.Combine(folder, "marks.csv"));
            Assert.Contains(",unit missing,0.5,", marks[1], StringComparison.Ordinal);
            Assert.Contains(",right,2,", marks[2], StringComparison.Ordinal);
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Sheets_are_written_and_their_answers_marked()
    {
        string folder = Directory.CreateTempSubdirectory("class").FullName;
        try
        {
            (int code, string output, string error) =
                await Shell.RunAsync(
                    "class", "sheets", "--secret", Plan.Secret, "--students", "1-4", "--lesson", "knee", "--output", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("4 students", output, StringComparison.Ordinal);
            string answers = Path.Combine(folder, "answers.csv");
            List<string> lines = [.. File.ReadAllLines(answers)];
            Assert.Equal(3 + 4 * 3, lines.Count);
            for (int i = 3; i < lines.Count; i++)
            {
                string[] cells = lines[i].Split(',');
                Exercise exercise = Exercises.For(
                    Plan.Number(int.Parse(cells[0], System.Globalization.CultureInfo.InvariantCulture)))
                    .First(e => e.Id == cells[1]);
                lines[i] += exercise.Answer.Text(us: false).Split(" (")[0];
            }

            File.WriteAllLines(answers, lines);
            (code, output, error) = await Shell.RunAsync("class", "mark", answers, "--secret", "seven copper keys", "--output", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Contains("12 answers marked, 0 lines left out", output, StringComparison.Ordinal);
            Assert.All(File.ReadAllLines(Path.Combine(folder, "marks.csv")).Skip(1), line =>
                Assert.Contains(",right,", line, StringComparison.Ordinal));
            Assert.Equal(1 + 3, File.ReadAllLines(Path.Combine(folder, "items.csv")).Length);
            Assert.Equal(["student,points,of,percent,answers,right,blank", "1,6,6,100.0,3,3,0", "2,6,6,100.0,3,3,0", "3,6,6,100.0,3,3,0",
                "4,6,6,100.0,3,3,0"], File.ReadAllLines(Path.Combine(folder, "totals.csv")));

            (code, _, error) = await Shell.RunAsync("class", "mark", answers, "--secret", "seven iron keys", "--output", folder);
            Assert.Equal(2, code);
            Assert.Contains($"its answers are of class {Plan.Code}", error, StringComparison.Ordinal);

            // A student without lines, a line that lacks, a student of another class.
            File.WriteAllLines(answers, [.. lines.Where(line => !line.StartsWith("4,", StringComparison.Ordinal)
                && !line.StartsWith("2,knee-3", StringComparison.Ordinal)), "9,knee-1,1 bar"]);
            (code, _, error) = await Shell.RunAsync("class", "mark", answers, "--secret", Plan.Secret, "--output", folder);
            Assert.Equal(1, code);
            Assert.Contains("student 2 has no line for 1 of the exercises: knee-3.", error, StringComparison.Ordinal);
            Assert.Contains("student 4 has no line for 3 of the exercises: knee-1, knee-2, knee-3.", error, StringComparison.Ordinal);
            Assert.Contains("student 9 is not of this class, whose numbers are 1-4; marked all the same, and counted in no",
                error, StringComparison.Ordinal);
            string totals = File.ReadAllText(Path.Combine(folder, "totals.csv"));
            Assert.Contains("\n2,3,6,50.0,2,2,0\n", totals, StringComparison.Ordinal);
            Assert.Contains("\n4,0,6,0.0,0,0,0\n9,", totals, StringComparison.Ordinal);
            Assert.StartsWith("knee-1,3,1.000,", File.ReadAllLines(Path.Combine(folder, "items.csv"))[1], StringComparison.Ordinal);

            // An exercise without a line for anybody; a file that does not say its class.
            File.WriteAllLines(answers, lines.Where(line => !line.Contains(",knee-3,", StringComparison.Ordinal)));
            (code, _, error) = await Shell.RunAsync("class", "mark", answers, "--secret", Plan.Secret, "--output", folder);
            Assert.Contains("student 1 has no line for 1 of the exercises: knee-3.", error, StringComparison.Ordinal);
            Assert.Contains("1,3,6,50.0,2,2,0", File.ReadAllLines(Path.Combine(folder, "totals.csv")));
            File.WriteAllLines(answers, lines.Skip(1));
            (code, _, error) = await Shell.RunAsync("class", "mark", answers, "--secret", "seven iron keys", "--output", folder);
            Assert.Equal(1, code);
            Assert.Contains("no line says its class", error, StringComparison.Ordinal);
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
            await Shell.RunAsync("class", "sheets", "--secret", "short", "--students", "0-3", "--lesson", "kne", "--output", folder);
        Assert.Equal(2, code);
        Assert.Contains("--students 0-3", error, StringComparison.Ordinal);
        Assert.Contains("--lesson kne", error, StringComparison.Ordinal);
        Assert.Contains("--secret short: too short to be one. Accepted: at least 8", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public void The_sheet_names_its_class_by_a_code_and_neither_secret_nor_code_opens_as_a_lesson_or_as_another_secret()
    {
        string html = ClassSheets.Students(Plan);
        Assert.Contains($"Class {Plan.Code}, student number 1.", html, StringComparison.Ordinal);
        Assert.DoesNotContain(Plan.Secret, html, StringComparison.Ordinal);
        Assert.DoesNotContain(Plan.Secret, ClassReport.Blank(Plan), StringComparison.Ordinal);
        string own = Numbers(Plan.Number(1));
        Assert.NotEqual(own, Numbers(Plan.Number(2)));
        Assert.NotEqual(own, Numbers(new ClassNumber { Secret = Plan.Code, Student = 1 }));
        Assert.DoesNotContain(own, Enumerable.Range(0, 3000).Select(seed => Numbers(new ClassNumber { Seed = seed, Student = 1 })));

        static string Numbers(ClassNumber number) => Exercises.For(number)[0].Question + Exercises.For(number)[0].Answer.Text(us: false)
            + Exercises.For(number)[28].Answer.Text(us: false);
    }

    private static string Paper(string html, int student, string title = "Exercise sheet")
    {
        int start = html.IndexOf($"<h2>{title} {student}</h2>", StringComparison.Ordinal);
        return html[start..html.IndexOf("</section>", start, StringComparison.Ordinal)];
    }

    private static string CarDataOf(string paper) =>
        paper[paper.IndexOf("<table>", StringComparison.Ordinal)..paper.IndexOf("</table>", StringComparison.Ordinal)];
}
