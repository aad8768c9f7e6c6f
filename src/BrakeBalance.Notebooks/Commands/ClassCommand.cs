using System.CommandLine;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Publishing;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>class</c>: sheets for a class, the teacher's key, and marking.</summary>
internal static class ClassCommand
{
    private const string Marks = "marks.csv", Items = "items.csv", Totals = "totals.csv";
    private const int ShortestSecret = 8, MostNamed = 6;

    public static Command Create(Terminal terminal) => new("class", "Print exercise sheets and a key for a class, and mark its answers.")
    {
        Sheets(terminal),
        MarkAnswers(terminal),
    };

    private static Command Sheets(Terminal terminal)
    {
        Option<string> secret = Secret();
        var students = Options.Of<string>("--students", "Student numbers, such as 1-30 or 1,4,7-9", "NUMBERS", "1-30");
        var lessons = Options.Of<string[]>("--lesson", "One lesson only, by its short name; may be given several times", "NAME", []);
        Option<string> units = VehicleOptions.Units();
        Option<string> output = Options.Folder("out/class");
        var pdf = Options.Of<bool>("--pdf", "All of them as PDF too, on A4, or Letter with US units; needs Chromium");
        Option<bool> force = OutputFiles.Force();
        var command = new Command("sheets", "Write sheets.html for the students, key.html, booklet.html and slides.html for the teacher "
            + "and answers.csv to fill in.")
        {
            secret, students, lessons, units, pdf, output, force,
        };
        command.SetAction(async (parsed, _) =>
        {
            List<string> problems = [];
            Check(parsed.GetRequiredValue(secret), problems);
            string numbers = parsed.GetRequiredValue(students);
            IReadOnlyList<int>? who = ClassPlan.ReadStudents(numbers);
            if (who is null)
            {
                problems.Add($"--students {numbers}: these are no student numbers. "
                    + "Accepted: numbers from 1 to 9999 such as 1-30 or 1,4,7-9.");
            }

            string[] asked = parsed.GetRequiredValue(lessons);
            problems.AddRange(asked.Where(name => Lesson.All.All(lesson => lesson.Id != name)).Select(name =>
                $"--lesson {name}: there is no such lesson. Accepted: {string.Join(", ", Lesson.All.Select(known => known.Id))}."));
            string folder = parsed.GetRequiredValue(output);
            var files = new OutputFiles(problems, parsed.GetValue(force));
            bool print = parsed.GetValue(pdf);
            string[] names = ["sheets.html", "key.html", "answers.csv", "booklet.html", "slides.html",
                .. print ? (string[])["sheets.pdf", "key.pdf", "booklet.pdf", "slides.pdf"] : []];
            string[] targets = [.. names.Select(name => files.File(Path.Combine(folder, name), "--output"))];
            BadInputException.ThrowIfAny(problems);
            var plan = new ClassPlan
            {
                Secret = parsed.GetRequiredValue(secret),
                Students = who!,
                Lessons = [.. asked.Select(name => Lesson.All.First(lesson => lesson.Id == name))],
                Units = VehicleOptions.UnitsOf(parsed, units),
            };
            SortedDictionary<int, Exception> failed = [];
            string[] papers = terminal.Work.Do("writing sheets and key", 2 * plan.Students.Count, progress =>
            {
                int begun = 0;
                return (string[])
                [
                    ClassSheets.Students(plan, (student, fault) => failed[student] = fault, () => progress.Report(begun++)),
                    ClassSheets.Key(plan, (student, fault) => failed[student] = fault, () => progress.Report(begun++)),
                ];
            });
            ClassPlan done = plan with { Students = [.. plan.Students.Where(student => !failed.ContainsKey(student))] };
            AtomicFile.Write(targets[0], papers[0]);
            AtomicFile.Write(targets[1], papers[1]);
            AtomicFile.Write(targets[2], ClassReport.Blank(done));
            (string booklet, string slides) = terminal.Work.Do("writing booklet and slides", _ =>
                (ClassSheets.Booklet(done), ClassSheets.Slides(done)));
            AtomicFile.Write(targets[3], booklet);
            AtomicFile.Write(targets[4], slides);
            string? missing = null;
            await using (Chromium? browser = print
                ? await Chromium.TryStartAsync(reason => missing = reason).ConfigureAwait(false) : null)
            {
                if (browser is not null)
                {
                    foreach ((string page, string target) in papers.Concat([booklet, slides]).Zip(targets[^4..]))
                    {
                        AtomicFile.Write(target, await browser.PrintAsync(page, plan.Units == UnitSystem.Us).ConfigureAwait(false));
                    }
                }
            }

            terminal.Output.WriteLine(
                Invariant.Text($"{folder}: sheets.html for {done.Students.Count} {(done.Students.Count == 1 ? "student" : "students")}, "
                    + $"key.html, booklet.html and slides.html for the teacher, answers.csv to fill in. The sheets say class {done.Code}, "
                    + $"which draws their cars and opens no key; keep secret, key and booklet away from the class."));
            if (missing is not null)
            {
                terminal.Error.WriteLine(missing + " The pages were written.");
                return ExitCode.Failed;
            }

            return Left(terminal, failed, parsed);
        });
        return command;
    }

    private static Command MarkAnswers(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The answers: CSV with the columns student, exercise, answer" };
        Option<string> secret = Secret();
        Option<string> units = VehicleOptions.Units();
        Option<string> output = Options.Folder("out/class");
        var command = new Command("mark", "Mark a class's answers: marks.csv, totals.csv for a gradebook, and items.csv.")
        {
            file, secret, units, output,
        };
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            string folder = parsed.GetRequiredValue(output);
            string words = parsed.GetRequiredValue(secret);
            List<string> problems = [];
            Check(words, problems);
            new OutputFiles(problems, force: false).Folder(folder);
            if (new[] { Marks, Items, Totals }.Any(name => Path.GetFullPath(path) == Path.GetFullPath(Path.Combine(folder, name))))
            {
                problems.Add($"{path}: the marks would be written over it. Accepted: answers of another name, or another --output.");
            }

            if (!File.Exists(path))
            {
                problems.Add($"{path}: there is no such file. Accepted: a CSV file with the columns student, exercise, answer.");
            }

            BadInputException.ThrowIfAny(problems);

            AnswerSheet sheet;
            using (TextReader reader = LogText.Open(path))
            {
                sheet = AnswerSheet.Read(reader);
            }

            if (sheet.Code is { } code && code != ClassNumber.CodeOf(words))
            {
                throw new BadInputException($"{path}: its answers are of class {code}, and the secret given is that of class "
                    + $"{ClassNumber.CodeOf(words)}. Accepted: the secret with which the sheets of that class were made.");
            }

            if (sheet.Answers.Count == 0)
            {
                throw new BadInputException([.. sheet.Faults.Select(fault => $"{path}: {fault}"), $"{path}: there is no answer to mark."]);
            }

            SortedDictionary<int, Exception> failed = [];
            bool us = sheet.Us ?? VehicleOptions.UnitsOf(parsed, units) == UnitSystem.Us;
            ClassResults results = terminal.Work.Do("marking", 2 * sheet.Answers.DistinctBy(answer => answer.Student).Count(),
                progress => Results(words, sheet, us, failed, progress));
            AtomicFile.Write(Path.Combine(folder, Marks), ClassReport.Marks(results));
            AtomicFile.Write(Path.Combine(folder, Items), ClassReport.Items(results));
            AtomicFile.Write(Path.Combine(folder, Totals), ClassReport.Totals(results));
            Show(terminal, results);
            foreach (string fault in sheet.Faults)
            {
                terminal.Error.WriteLine($"{path}: {fault}");
            }

            if (sheet.Code is null)
            {
                terminal.Error.WriteLine($"{path}: no line says its class, so it could not be checked that the secret is that of these "
                    + $"sheets. Accepted: the line \"# Class code …\" that answers.csv begins with.");
            }

            bool whole = Compare(terminal, path, sheet) && sheet.Code is not null;
            terminal.Output.WriteLine(
                Invariant.Text(
                    $"{results.Marks.Count} answers marked, {sheet.Faults.Count} lines left out. {folder}: {Marks}, {Totals}, {Items}."));
            return Math.Max(Left(terminal, failed, parsed), sheet.Faults.Count == 0 && whole ? ExitCode.Success : ExitCode.Failed);
        });
        return command;
    }

    /// <summary>Marks a class; a student who cannot be marked stops no other.</summary>
    internal static ClassResults Results(string secret, AnswerSheet sheet, bool us, IDictionary<int, Exception> failed,
        IProgress<int>? progress = null)
    {
        int begun = 0;
        ClassNumber Number(int student)
        {
            progress?.Report(begun++);
            return new() { Secret = secret, Student = student };
        }

        foreach (IGrouping<int, GivenAnswer> student in sheet.Answers.GroupBy(answer => answer.Student))
        {
            try
            {
                ClassResults.Of(Number, [.. student], us);
            }
            catch (Exception exception)
            {
                failed[student.Key] = exception;
            }
        }

        return ClassResults.Of(Number, [.. sheet.Answers.Where(answer => !failed.ContainsKey(answer.Student))], us, Roster(sheet),
            sheet.Exercises);
    }

    private static int Left(Terminal terminal, SortedDictionary<int, Exception> failed, ParseResult parsed)
    {
        foreach ((int student, Exception fault) in failed)
        {
            terminal.Error.WriteLine(Invariant.Text($"Student {student}: left out; {PartFault.Words(fault, parsed)}"));
        }

        return failed.Count == 0 ? ExitCode.Success : ExitCode.Failed;
    }

    private static Option<string> Secret() => new("--secret")
    {
        Description = "The teacher's secret words: the same secret gives the same sheets and the same key",
        HelpName = "WORDS",
        Required = true,
    };

    private static void Check(string secret, List<string> problems)
    {
        if (secret.Length < ShortestSecret)
        {
            problems.Add(Invariant.Text($"--secret {secret}: too short to be one. "
                + $"Accepted: at least {ShortestSecret} letters, digits or signs that the class cannot guess."));
        }
    }

    private static IReadOnlyList<int>? Roster(AnswerSheet sheet) =>
        sheet.Students is { } students ? ClassPlan.ReadStudents(students) : null;

    /// <summary>Says whose lines lack, and which students are not of the class; false when there is anything to say.</summary>
    private static bool Compare(Terminal terminal, string path, AnswerSheet sheet)
    {
        var (missing, unknown) = sheet.Against(Roster(sheet));
        foreach ((int student, IReadOnlyList<string> exercises) in missing)
        {
            string named = string.Join(", ", exercises.Take(MostNamed)) + (exercises.Count > MostNamed ? " …" : "");
            terminal.Error.WriteLine(Invariant.Text(
                $"{path}: student {student} has no line for {exercises.Count} of the exercises: {named}."));
        }

        foreach (int student in unknown)
        {
            terminal.Error.WriteLine(Invariant.Text($"{path}: student {student} is not of this class, "
                + $"whose numbers are {sheet.Students}; marked all the same, and counted in no exercise."));
        }

        return missing.Count == 0 && unknown.Count == 0;
    }

    private static void Show(Terminal terminal, ClassResults results)
    {
        var table = new TextTable("Exercise", "Answers", "Facility", "Discrimination", "Most frequent comment");
        foreach (ItemAnalysis item in results.Items)
        {
            table.Row(
                item.ExerciseId,
                item.Answers.ToString(CultureInfo.InvariantCulture),
                item.Facility.ToString("0.00", CultureInfo.InvariantCulture),
                item.Discrimination?.ToString("0.00", CultureInfo.InvariantCulture) ?? "–",
                item.Comments.Count > 0 ? $"{item.Comments[0].Comment} ({item.Comments[0].Count})" : "");
        }

        IAnsiConsole console = terminal.Rich();
        table.Write(console);
        console.WriteLine("Facility: mean share of the marks, 0 to 1. Discrimination: facility among the best 27 % of the class less that "
            + "among the weakest 27 %; below zero the weak did better.\n");
    }
}
