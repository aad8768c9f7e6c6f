using System.Text;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Classroom;
using BrakeBalance.Notebooks.Commands;
using BrakeBalance.Notebooks.Documents;
using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Jupyter;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Teaching;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>Rough use of the commands: nothing lost, nothing silent, no stack trace.</summary>
[Collection(EnginesCollection.Name)]
public sealed partial class FaultTests : IDisposable
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json"),
        Bench = RepositoryRoot.File("data/bench/booster-swap.json");
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Running_again_keeps_what_a_person_filled_in_and_names_the_file()
    {
        string car = _folder.Write("my-car.json", File.ReadAllText(Coupe));
        (string[] Words, string File)[] again =
        [
            (["class", "sheets", "--secret", "a test secret", "--students", "1-2", "--output", _folder.File("class")],
                _folder.File("class/answers.csv")),
            (["measure", "plan", car, "--csv", _folder.File("plan.csv")], _folder.File("plan.csv")),
            (["measure", "invent", _folder.File("logs")], _folder.File("logs/invented-stops.csv")),
            (["bench", Bench, "--sheet", car], car),
            (["starter", car], car),
            (["card", car, "--output", _folder.File("card")], _folder.File("card/my-car-card-a5-si.html")),
            (["story", "--output", _folder.File("story")], _folder.File("story/what-the-knee-does.html")),
        ];
        foreach ((string[] words, string file) in again)
        {
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            string mine = file == car ? File.ReadAllText(car) : "filled in by hand";
            File.WriteAllText(file, mine);
            (int code, string output, string error) = await Shell.RunAsync(words);
            Assert.Equal((2, ""), (code, output));
            Assert.Contains(file, error, StringComparison.Ordinal);
            Assert.Contains("--force", error, StringComparison.Ordinal);
            Assert.Equal(mine, File.ReadAllText(file));
        }

        Assert.Equal(0, (await Shell.RunAsync([.. again[0].Words, "--force"])).Code);
        Assert.StartsWith("#", File.ReadAllText(again[0].File), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_this_program_wrote_is_written_over_without_asking()
    {
        string[] words = ["card", Coupe, "--output", _folder.Path];
        Assert.Equal(0, (await Shell.RunAsync(words)).Code);
        (int code, _, string error) = await Shell.RunAsync(words);
        Assert.Equal((0, ""), (code, error));
    }

    [Fact]
    public async Task Marks_are_not_written_over_the_answers()
    {
        string answers = _folder.Write("marks.csv", "student,exercise,answer\n1,knee-1,40 bar\n");
        (int code, _, string error) = await Shell.RunAsync("class", "mark", answers, "--secret", "a test secret", "--output", _folder.Path);
        Assert.Equal(2, code);
        Assert.Contains(answers, error, StringComparison.Ordinal);
        Assert.Equal(["marks.csv"], _folder.Names);
    }

    [Theory]
    [InlineData("1e999 N")]
    [InlineData("４５２０ N")]
    [InlineData("-1e308 kN")]
    [InlineData("=cmd()")]
    public async Task One_cell_of_answers_does_not_stop_the_class(string cell)
    {
        string answers = _folder.Write("answers.csv", $"# Class code {ClassNumber.CodeOf("a test secret")}; students 1-2\n"
            + $"student,exercise,answer\n1,knee-1,{cell}\n2,knee-1,40 bar\n");
        (int code, string output, string error) =
            await Shell.RunAsync("class", "mark", answers, "--secret", "a test secret", "--output", _folder.File("marked"));
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("2 answers marked", output, StringComparison.Ordinal);
        string marks = File.ReadAllText(_folder.File("marked/marks.csv"));
        Assert.Contains("1,knee-1,", marks, StringComparison.Ordinal);
        Assert.Contains("unreadable", marks, StringComparison.Ordinal);
        Assert.DoesNotContain(",=", marks, StringComparison.Ordinal);
    }

    [Fact]
    public void A_student_who_cannot_be_marked_stops_no_other()
    {
        Dictionary<int, Exception> failed = [];
        ClassResults results = ClassCommand.Results("a test secret",
            new AnswerSheet([new(2, 1, "knee-1", "40 bar"), new(3, 2, "no-such-exercise", "1"), new(4, 3, "knee-1", "1")], []),
            us: false, failed);
        Assert.Equal([1, 3], results.Marks.Select(mark => mark.Student));
        Assert.Equal([2], failed.Keys);
    }

    [Fact]
    public void A_student_whose_sheet_cannot_be_made_stops_no_other()
    {
        List<int> failed = [];
        var plan = new ClassPlan { Secret = "a test secret", Students = [1, -7, 3] };
        string html = ClassSheets.Students(plan, (student, _) => failed.Add(student));
        Assert.Equal([-7], failed);
        Assert.Contains("<h2>Exercise sheet 3</h2>", html, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(html, "<h2>Exercise sheet "));
        Assert.ThrowsAny<ArgumentException>(() => ClassSheets.Students(plan));
    }

    [Theory]
    [InlineData("Word 2 of the command is empty", "check", "")]
    [InlineData("is empty", "story", "--output", "")]
    [InlineData("is empty", "check", " ")]
    [InlineData("\\uD800", "check", "HALF")]
    [InlineData("\\u0000", "check", "a\0b.json")]
    [InlineData("\\u001B", "check", "\u001b[31mcar.json")]
    [InlineData("--speed", "stops", "COUPE", "--speed", "NaN km/h")]
    [InlineData("--speed", "stops", "COUPE", "--speed", "∞ km/h")]
    [InlineData("--speed", "stops", "COUPE", "--speed", "1e308 km/h")]
    [InlineData("--speed", "stops", "COUPE", "--speed", "１００ km/h")]
    [InlineData("--speed", "summary", "COUPE", "--speed", "NaN km/h")]
    [InlineData("--speed", "summary", "COUPE", "--speed", "-5 km/h")]
    [InlineData("--adhesion", "summary", "COUPE", "--adhesion", "NaN")]
    [InlineData("--adhesion", "measure", "bands", "COUPE", "--adhesion", "NaN")]
    [InlineData("--level", "measure", "setting", "COUPE", "--level", "NaN")]
    [InlineData("--below-knee", "measure", "gauges", "GAUGES", "--below-knee", "NaN")]
    [InlineData("--below-knee", "measure", "gauges", "GAUGES", "--below-knee", "Infinity")]
    [InlineData("--cell-limit", "render", "--cell-limit", "0")]
    [InlineData("there is no such file", "class", "mark", "nowhere.csv", "--secret", "a test secret")]
    [InlineData("The file cannot be opened", "check", "/dev")]
    [InlineData("cannot be opened", "measure", "gauges", "/dev")]
    [InlineData("cannot be opened", "stops", "COUPE", "--lap", "nowhere.csv")]
    public async Task Words_that_cannot_be_used_are_refused_and_named(string named, params string[] words)
    {
        string gauges = RepositoryRoot.File("data/logs/invented-gauges.csv");
        (int code, string output, string error) = await Shell.RunAsync([.. words.Select(word => word switch
        {
            "COUPE" => Coupe,
            "GAUGES" => gauges,
            "HALF" => "a\ud800.json", // no attribute can hold half a character
            _ => word,
        })]);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(named, error, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"   at |\(Parameter|Object reference|\u001b|\.tmp", error);
    }

    [Theory]
    [InlineData("front pressure [bar];rear pressure [bar]\n", "gauges")]
    [InlineData("", "gauges")]
    [InlineData("time [s];speed [km/h]\n", "series")]
    public async Task A_log_without_rows_is_refused_with_the_reason(string text, string command)
    {
        string log = _folder.Write("empty.csv", text);
        (int code, _, string error) = await Shell.RunAsync("measure", command, log);
        Assert.Equal(2, code);
        Assert.Contains(log, error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refusal_without_a_reason_is_a_fault_of_ours()
    {
        // Every path of the program gives a reason; what is tested is the place where commands end.
        var blank = new BadInputException([" "]);
        (int code, string error) = await FailingAsync(blank);
        Assert.Equal(70, code);
        Assert.NotEqual("", error);
    }

    [Fact]
    public async Task A_fault_of_ours_is_one_sentence_and_its_details_are_in_a_file()
    {
        (int code, string error) = await FailingAsync(new NotSupportedException("inner detail"));
        Assert.Equal(70, code);
        Assert.Single(error.TrimEnd().Split('\n'));
        Assert.DoesNotContain("inner detail", error, StringComparison.Ordinal);
        string file = ReportPath().Match(error).Groups[1].Value;
        string report = File.ReadAllText(file);
        File.Delete(file);
        Assert.Contains("inner detail", report, StringComparison.Ordinal);
        Assert.Contains("   at ", report, StringComparison.Ordinal);
        Assert.Contains("\"schema\"", report, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_half_answer_is_shown_when_a_command_fails()
    {
        string broken = _folder.Write("broken.json", "{ \"wheelbase\": 3 }");
        foreach (string[] words in new[] { (string[])["summary", broken], ["stops", broken], ["measure", "bands", broken],
            ["render", "--vehicle", broken] })
        {
            (int code, string output, string error) = await Shell.RunAsync(words);
            Assert.Equal((2, ""), (code, output));
            Assert.NotEqual("", error);
        }
    }

    [Theory]
    [InlineData("figures", "COUPE", "--output")]
    [InlineData("card", "COUPE", "--output")]
    [InlineData("story", "--output")]
    [InlineData("render", "--output")]
    [InlineData("class", "sheets", "--secret", "a test secret", "--output")]
    [InlineData("measure", "invent")]
    [InlineData("measure", "plan", "COUPE", "--csv")]
    public async Task A_place_that_cannot_be_written_is_found_before_work_starts_and_named_as_the_user_wrote_it(params string[] words)
    {
        string file = _folder.Write("taken", "");
        string target = Path.Combine(file, "deeper.csv");
        (int code, string output, string error) = await Shell.RunAsync([.. words.Select(word => word == "COUPE" ? Coupe : word), target]);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(target, error, StringComparison.Ordinal);
        Assert.DoesNotContain(".tmp", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_cannot_be_written_after_all_is_named_by_its_own_name()
    {
        string path = _folder.File(new string('x', 300)); // longer than file names may be
        BadInputException thrown = Assert.Throws<BadInputException>(() => AtomicFile.Write(path, ""));
        Assert.Contains(path + ": cannot be written", thrown.Problems.Single(), StringComparison.Ordinal);
        Assert.DoesNotContain(".tmp", thrown.Problems.Single(), StringComparison.Ordinal);
    }

    [Fact]
    public void Every_name_that_the_system_takes_can_be_written()
    {
        string name = new('x', 255);
        AtomicFile.Write(_folder.File(name), "");
        Assert.Equal([name], _folder.Names);
    }

    [Fact]
    public async Task A_figure_that_fails_is_named_and_the_others_are_written()
    {
        Vehicle car = VehicleFile.Load(Coupe).Vehicle;
        var plan = new FigurePlan { CarName = "car" };
        (CatalogueEntry Entry, Func<Figure?> Make)[] all =
            [.. FigureCatalogue.For(car, UnitSystem.Si).Where(item => item.Entry.Name is "brake-forces" or "line-pressures" or "effort")];
        all[1].Make = () => throw new NullReferenceException();
        FigureExportResult result = await FigureExport.WriteAsync(car, plan, _folder.Path, null, _ => all, default);
        Assert.Equal("line-pressures", result.Failed.Single().Name);
        Assert.Equal(8, result.Files.Count);
        Assert.Equal(result.Files.Append(result.Gallery).Order(StringComparer.Ordinal), _folder.Names.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_page_that_cannot_be_made_is_named_and_the_others_are_written()
    {
        var broken = new ExecutedNotebook("broken", "Broken", [new ExecutedCodeCell("c1", "1", [], [new CellOutput(null!)], null)]);
        var good = new ExecutedNotebook("good", "Good", [new ExecutedMarkdownCell("c1", "# Good")]);
        SiteResult site = Site.Write([new SiteEntry(broken), new SiteEntry(good)], _folder.Path, new SiteOptions());
        Assert.Equal("broken", site.Faults.Single().Page);
        Assert.Equal(["broken.html", "good.html", "index.html"], _folder.Names.Order(StringComparer.Ordinal));
        Assert.Contains("could not be made", File.ReadAllText(_folder.File("broken.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void Formulas_in_cells_are_words_in_every_csv()
    {
        var frame = new DataFrame(new StringDataFrameColumn("=cmd()", ["@a", "-3.5", "+1"]),
            new StringDataFrameColumn("b", ["-x;y", "\tz", "plain"]));
        string[] files = [new FigureTable(frame).ToCsv(), new Charts.Outputs.FrameTable(frame).ToCsv()];
        Assert.All(files, csv => Assert.Equal("'=cmd(),b\n'@a,\"'-x;y\"\n-3.5,'\tz\n+1,plain\n", csv));
    }

    [Fact]
    public async Task A_plan_of_stops_holds_no_formula()
    {
        string csv = _folder.File("plan.csv");
        Assert.Equal(0, (await Shell.RunAsync("measure", "plan", Coupe, "--surfaces", "=cmd(),wet", "--csv", csv)).Code);
        Assert.Contains(";'=cmd();", File.ReadAllText(csv), StringComparison.Ordinal);
        Assert.DoesNotContain(";=", File.ReadAllText(csv), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Codes_in_names_reach_no_terminal()
    {
        string stops = _folder.Write("stops.csv", File.ReadAllText(RepositoryRoot.File("data/logs/invented-stops.csv"))
            .Replace(";dry;", ";d\u001b]0;x\u0007ry;", StringComparison.Ordinal).Replace("x\u0007", "x\u009b", StringComparison.Ordinal));
        (_, string output, string error) = await Shell.RunAsync("measure", "setting", Coupe, "--stops", stops, "--draws", "1000");
        Assert.DoesNotMatch("[\u0000-\u0008\u000b-\u001f\u007f-\u009f]", output + error);
    }

    [Theory]
    [InlineData(false, "a\\u001B[31mb\\u009B\\u202E\n")]
    [InlineData(true, "a\u001b[31mb\\u009B\\u202E\n")]
    public void A_watched_terminal_keeps_colours_only(bool colours, string expected) =>
        Assert.Equal(expected, VisibleText.Of("a\u001b[31mb\u009b\u202e\n", colours));

    [Theory]
    [InlineData("""{"nbformat":4,"metadata":{"language_info":{"name":"python"}},"cells":[]}""", "python")]
    [InlineData("""{"nbformat":4,"metadata":{"kernelspec":{"language":"julia"}},"cells":[]}""", "julia")]
    [InlineData("""{"nbformat":4,"cells":[{"cell_type":"code","source":"1","metadata":{"tags":[5]}}]}""", "tag")]
    [InlineData("""{"nbformat":4,"cells":[5]}""", "not a notebook")]
    [InlineData("""{"nbformat":4,"cells":[null]}""", "not a notebook")]
    [InlineData("""{"nbformat":"4","cells":[]}""", "not a notebook")]
    [InlineData("[]", "not a notebook")]
    public void A_notebook_that_is_none_of_ours_is_refused_in_words(string json, string named)
    {
        NotebookFormatException thrown = Assert.Throws<NotebookFormatException>(() => NotebookFile.Parse(json, "/nowhere/x.ipynb"));
        Assert.Contains(named, thrown.Message, StringComparison.Ordinal);
        Assert.DoesNotMatch("Object reference|System\\.|\\(Parameter", thrown.Message);
    }

    [Fact]
    public void The_kernel_is_named_by_a_whole_path_wherever_the_data_folder_counts_from()
    {
        string before = Environment.CurrentDirectory;
        try
        {
            Environment.CurrentDirectory = _folder.Path;
            Assert.True(Path.IsPathRooted(new KernelSetup("relative/jupyter").Folder));
        }
        finally
        {
            Environment.CurrentDirectory = before;
        }
    }

    [Fact]
    public async Task The_help_and_the_readme_say_what_the_exit_codes_mean()
    {
        string help = (await Shell.RunAsync("--help")).Output, readme = File.ReadAllText(RepositoryRoot.File("README.md"));
        foreach (int code in new[] { ExitCode.Success, ExitCode.Failed, ExitCode.BadInput, ExitCode.Fault, ExitCode.Stopped })
        {
            Assert.Matches($@"\b{code}\s+[a-z]", help);
            Assert.Matches($@"\| {code} \|", readme);
        }

        Assert.Contains("run only those you trust", Regex.Replace((await Shell.RunAsync("render", "--help")).Output, @"\s+", " "),
            StringComparison.Ordinal);
        Assert.Contains("run only those you trust", readme, StringComparison.Ordinal);
        Assert.Contains("run only those you trust", File.ReadAllText(RepositoryRoot.File("DEVELOPERS.md")), StringComparison.Ordinal);
    }

    /// <summary>Runs a command whose answer cannot be written: the terminal's output throws.</summary>
    private static async Task<(int Code, string Error)> FailingAsync(Exception fault)
    {
        using var error = new StringWriter();
        int code = await CommandLine.RunAsync(["schema"], new Terminal(new ThrowingWriter(fault), error, IsInteractive: false));
        return (code, error.ToString());
    }

    [GeneratedRegex(@"details are in (\S+)\.$", RegexOptions.Multiline)]
    private static partial Regex ReportPath();

    private sealed class ThrowingWriter(Exception fault) : StringWriter
    {
        public override Encoding Encoding => Encoding.UTF8;

        public override void Write(string? value) => throw fault;
    }
}
