using System.CommandLine;
using System.Globalization;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Teaching;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>class</c>: sheets for a class, the teacher's key, and marking.</summary>
internal static class ClassCommand
{
    public static Command Create(Terminal terminal) => new("class", "Print exercise sheets and a key for a class, and mark its answers.")
    {
        Sheets(terminal),
        MarkAnswers(terminal),
    };

    private static Command Sheets(Terminal terminal)
    {
        Option<int> seed = Seed();
        var students = new Option<string>("--students") { Description = "Student numbers, such as 1-30 or 1,4,7-9", HelpName = "NUMBERS", DefaultValueFactory = _ => "1-30" };
        var lessons = new Option<string[]>("--lesson") { Description = "One lesson only, by its short name; may be given several times", HelpName = "NAME", DefaultValueFactory = _ => [] };
        Option<string> units = VehicleOptions.Units();
        var output = new Option<string>("--output") { Description = "The folder to write into", HelpName = "FOLDER", DefaultValueFactory = _ => "out/class" };
        Option<bool> force = OutputFiles.Force();
        var command = new Command("sheets", "Write sheets.html for the students, key.html for the teacher and answers.csv to fill in.") { seed, students, lessons, units, output, force };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string numbers = parsed.GetRequiredValue(students);
            IReadOnlyList<int>? who = ClassPlan.ReadStudents(numbers);
            if (who is null)
            {
                problems.Add($"--students {numbers}: these are no student numbers. Accepted: numbers from 1 to 9999 such as 1-30 or 1,4,7-9.");
            }

            List<Lesson> chosen = [];
            foreach (string name in parsed.GetRequiredValue(lessons))
            {
                if (Lesson.All.FirstOrDefault(lesson => lesson.Id == name) is { } lesson)
                {
                    chosen.Add(lesson);
                }
                else
                {
                    problems.Add($"--lesson {name}: there is no such lesson. Accepted: {string.Join(", ", Lesson.All.Select(known => known.Id))}.");
                }
            }

            string folder = parsed.GetRequiredValue(output);
            var files = new OutputFiles(problems, parsed.GetValue(force));
            string[] targets = [.. new[] { "sheets.html", "key.html", "answers.csv" }.Select(name => files.File(Path.Combine(folder, name), "--output"))];
            BadInputException.ThrowIfAny(problems);
            var plan = new ClassPlan { Seed = parsed.GetRequiredValue(seed), Students = who!, Lessons = chosen, Units = Display.Parse(parsed.GetRequiredValue(units)) ?? UnitSystem.Si };
            AtomicFile.Write(targets[0], ClassSheets.Students(plan));
            AtomicFile.Write(targets[1], ClassSheets.Key(plan));
            AtomicFile.Write(targets[2], ClassReport.Blank(plan));
            terminal.Output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{folder}: sheets.html for {who!.Count} students, key.html for the teacher, answers.csv to fill in. Keep seed and key away from the class."));
            return ExitCode.Success;
        });
        return command;
    }

    private static Command MarkAnswers(Terminal terminal)
    {
        var file = new Argument<string>("FILE") { Description = "The answers: CSV with the columns student, exercise, answer" };
        Option<int> seed = Seed();
        Option<string> units = VehicleOptions.Units();
        var output = new Option<string>("--output") { Description = "The folder to write into", HelpName = "FOLDER", DefaultValueFactory = _ => "out/class" };
        var command = new Command("mark", "Mark a class's answers: marks.csv and items.csv.") { file, seed, units, output };
        command.SetAction(parsed =>
        {
            string path = parsed.GetRequiredValue(file);
            string folder = parsed.GetRequiredValue(output);
            List<string> problems = [];
            new OutputFiles(problems, force: false).Folder(folder);
            if (!File.Exists(path))
            {
                problems.Add($"{path}: there is no such file. Accepted: a CSV file with the columns student, exercise, answer.");
            }

            BadInputException.ThrowIfAny(problems);

            AnswerSheet sheet;
            using (StreamReader reader = File.OpenText(path))
            {
                sheet = AnswerSheet.Read(reader);
            }

            if (sheet.Answers.Count == 0)
            {
                throw new BadInputException([.. sheet.Faults.Select(fault => $"{path}: {fault}"), $"{path}: there is no answer to mark."]);
            }

            ClassResults results = ClassResults.Of(parsed.GetRequiredValue(seed), sheet.Answers, Display.Parse(parsed.GetRequiredValue(units)) == UnitSystem.Us);
            AtomicFile.Write(Path.Combine(folder, "marks.csv"), ClassReport.Marks(results));
            AtomicFile.Write(Path.Combine(folder, "items.csv"), ClassReport.Items(results));
            Show(terminal, results);
            foreach (string fault in sheet.Faults)
            {
                terminal.Error.WriteLine($"{path}: {fault}");
            }

            terminal.Output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{results.Marks.Count} answers marked, {sheet.Faults.Count} lines left out. {folder}: marks.csv, items.csv."));
            return sheet.Faults.Count == 0 ? ExitCode.Success : ExitCode.Failed;
        });
        return command;
    }

    private static Option<int> Seed() => new("--seed") { Description = "The class seed: the same seed gives the same sheets", HelpName = "NUMBER", Required = true };

    private static void Show(Terminal terminal, ClassResults results)
    {
        Table table = new Table().AddColumns("Exercise", "Answers", "Facility", "Discrimination", "Most frequent comment");
        foreach (ItemAnalysis item in results.Items)
        {
            table.AddRow(
                item.ExerciseId,
                item.Answers.ToString(CultureInfo.InvariantCulture),
                item.Facility.ToString("0.00", CultureInfo.InvariantCulture),
                item.Discrimination?.ToString("0.00", CultureInfo.InvariantCulture) ?? "–",
                Markup.Escape(item.Comments.Count > 0 ? $"{item.Comments[0].Comment} ({item.Comments[0].Count})" : ""));
        }

        terminal.Rich().Write(table);
    }
}
