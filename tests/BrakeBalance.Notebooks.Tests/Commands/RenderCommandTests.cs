using System.Text.RegularExpressions;
using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>Renders in processes of their own, each in a folder that looks like the repository.</summary>
public sealed class RenderCommandTests : IDisposable
{
    private static readonly string[] Cars = ["data/vehicles/big-cam-saloon.json", "data/vehicles/track-coupe.json"];
    private readonly TemporaryFolder _folder = new();
    private readonly string _gauges = File.ReadAllText(RepositoryRoot.File("data/logs/invented-gauges.csv"));

    public RenderCommandTests()
    {
        foreach (string folder in new[] { "notebooks/lessons", "data/vehicles", "data/bench" })
        {
            Directory.CreateDirectory(_folder.File(folder));
        }

        _folder.Write("Notebooks.sln", "");
        string setup = File.ReadAllText(RepositoryRoot.File("notebooks/_setup.csx"));
        File.Copy(RepositoryRoot.File(NotebookInput.DefaultVehicle), _folder.File(NotebookInput.DefaultVehicle));
        File.Copy(RepositoryRoot.File(BenchInput.Default), _folder.File(BenchInput.Default));
        foreach (string car in Cars)
        {
            File.Copy(RepositoryRoot.File(car), _folder.File(car));
        }

        _folder.Write("notebooks/_setup.csx", setup);
        _folder.Write("notebooks/01-good.ipynb",
            SampleNotebook.Json("# Good", "#load \"_setup.csx\"", "NotebookInput.Current.Load().Vehicle.Wheelbase",
            "$\"units {Display.Units}\""));
        _folder.Write("notebooks/02-bad.ipynb",
            SampleNotebook.Json("# Bad", "1", "var load = 2;\nthrow new InvalidOperationException(\"no vacuum\");", "3"));
        _folder.Write("notebooks/lessons/a-lesson.ipynb",
            SampleNotebook.Json("# Lesson", "#load \"../_setup.csx\"", "Force.FromNewtons(7)"));
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("interactive")]
    [InlineData("script")]
    public async Task A_failing_cell_is_named_and_the_other_notebooks_still_become_pages(string engine)
    {
        (int code, string output, string error) = await RunAsync("render", "--engine", engine);

        Assert.Equal(1, code);
        Assert.Equal("02-bad, cell c2, line 2: no vacuum\n    throw new InvalidOperationException(\"no vacuum\");\n", error);
        Assert.Contains("2 of 3 notebooks ran to their end", output);
        Assert.Equal(
            ["01-good.html", "02-bad.html", "a-lesson.html", "index.html", "questions.html", "what-the-knee-does.html", "your-car.html"],
            Pages());
        Assert.Contains("7 N", Page("a-lesson"));
        Assert.Contains("no vacuum", Page("02-bad"));
    }

    [Fact]
    public async Task Notebooks_that_would_become_one_page_are_refused_before_any_runs()
    {
        _folder.Write("notebooks/lessons/01-good.ipynb", SampleNotebook.Json("# Again", "1"));
        _folder.Write("notebooks/index.ipynb", SampleNotebook.Json("# Index", "1"));
        (int code, string output, string error) = await RunAsync("render");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("01-good.html", error);
        Assert.Contains("index.html", error);
        Assert.False(Directory.Exists(_folder.File("out")));
    }

    [Fact]
    public async Task Several_vehicles_get_a_page_side_by_side_and_the_others_show_the_first()
    {
        File.Delete(_folder.File("notebooks/02-bad.ipynb"));
        string[] vehicles = [.. Cars.Select(_folder.File)];
        (int code, string _, string error) = await RunAsync(
            "render", "--engine", "script", "--vehicle", vehicles[0], "--vehicle", vehicles[1]);
        Assert.True(code == 0, error);
        Assert.Contains("compare.html", Pages());
        Assert.Contains("href=\"compare.html\"", Page("index"), StringComparison.Ordinal);
        Assert.Contains("2.71", Page("01-good"), StringComparison.Ordinal);
        string page = System.Net.WebUtility.HtmlDecode(Page("compare"));
        Assert.Contains("big-cam-saloon, track-coupe", page, StringComparison.Ordinal);
        string summary = (await RunAsync("compare", vehicles[0], vehicles[1], "--json")).Output;
        Assert.All(System.Text.Json.Nodes.JsonNode.Parse(summary)!["rows"]!.AsArray(), row => Assert.All(row!["texts"]!.AsArray(), text =>
            Assert.Contains(text!.ToString(), page, StringComparison.Ordinal)));
        (code, _, error) = await RunAsync(
            ["render", "--force", .. Enumerable.Range(0, 7).SelectMany(_ => (string[])["--vehicle", vehicles[0]])]);
        Assert.Equal(2, code);
        Assert.Contains("1 to 6", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_page_that_somebody_else_wrote_is_kept()
    {
        Directory.CreateDirectory(_folder.File("out"));
        _folder.Write("out/what-the-knee-does.html", "mine");
        (int code, string output, string error) = await RunAsync("render");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("what-the-knee-does.html: there is a file already", error);
        Assert.Equal("mine", File.ReadAllText(_folder.File("out/what-the-knee-does.html")));
    }

    [Fact]
    public async Task A_cell_that_ends_the_process_fails_its_notebook_and_the_others_become_pages()
    {
        _folder.Write("notebooks/02-bad.ipynb", SampleNotebook.Json("# Bad", "1", "Environment.Exit(0);"));
        (int code, string output, string error) = await RunAsync("render");
        Assert.Equal(1, code);
        Assert.StartsWith("02-bad, cell c2: The process that runs the cells ended: something in a cell ended it (exit code 0)", error,
            StringComparison.Ordinal);
        Assert.Contains("2 of 3 notebooks ran to their end", output);
        Assert.Equal(
            ["01-good.html", "02-bad.html", "a-lesson.html", "index.html", "questions.html", "what-the-knee-does.html", "your-car.html"],
            Pages());
    }

    [Fact]
    public async Task Progress_comes_as_a_line_for_each_cell_when_nobody_watches()
    {
        (int _, string output, string _) = await RunAsync("render", "--notebook", "01");
        Assert.StartsWith("01-good: Good\n01-good: cell 1 of 3 (c1), ", output);
        Assert.DoesNotContain('\u001b', output);
    }

    [Theory]
    [InlineData("01")]
    [InlineData("01-good")]
    [InlineData("01-GOOD.ipynb")]
    public async Task One_notebook_can_be_chosen_by_name_or_number(string name)
    {
        Assert.Equal(0, (await RunAsync("render", "--notebook", name)).Code);
        Assert.Equal(["01-good.html", "index.html"], Pages());
    }

    [Fact]
    public async Task A_number_means_a_main_notebook_and_a_lesson_has_its_folder_before_it()
    {
        File.Move(_folder.File("notebooks/lessons/a-lesson.ipynb"), _folder.File("notebooks/lessons/01-lesson.ipynb"));
        await RunAsync("render", "--notebook", "01", "--output", "main");
        await RunAsync("render", "--notebook", "lessons/01", "--output", "lesson");
        await RunAsync("render", "--notebook", "01-lesson", "--output", "name");

        Assert.False(File.Exists(_folder.File("main/01-lesson.html")));
        Assert.True(File.Exists(_folder.File("lesson/01-lesson.html")));
        Assert.False(File.Exists(_folder.File("lesson/01-good.html")));
        Assert.True(File.Exists(_folder.File("name/01-lesson.html")));
    }

    [Fact]
    public async Task The_notebook_sees_the_car_the_override_and_the_units()
    {
        _folder.Write("mine.json", File.ReadAllText(_folder.File(NotebookInput.DefaultVehicle)));
        (int code, string _, string error) = await RunAsync(
            "render", "--notebook", "01", "--vehicle", "mine.json", "--set", "wheelbase=3.1 m", "--units", "us", "--output", "pages");

        Assert.Equal((0, ""), (code, error));
        string page = File.ReadAllText(_folder.File("pages/01-good.html"));
        Assert.Contains("3.1 m", page);
        Assert.Contains("units Us", page);
        Assert.Contains("mine.json", page);
        Assert.Contains("wheelbase=3.1 m", page);
        Assert.False(Directory.Exists(_folder.File("out")));
    }

    [Fact]
    public async Task A_page_that_shows_the_example_names_it_and_not_the_reader_s_car()
    {
        _folder.Write("notebooks/08-bench.ipynb", SampleNotebook.Json("# Bench", "#load \"_setup.csx\"", "BenchInput.Whose"));
        _folder.Write("mine.json", File.ReadAllText(_folder.File(NotebookInput.DefaultVehicle))
            .Replace("Invented 1960s coupe", "Green coupe", StringComparison.Ordinal));
        (int code, string _, string error) =
            await RunAsync("render", "--notebook", "08", "--vehicle", "mine.json", "--output", "pages");

        Assert.Equal((0, ""), (code, error));
        string page = File.ReadAllText(_folder.File("pages/08-bench.html"));
        Assert.Contains("nothing on this page is said of the Green coupe", page);
        Assert.Contains("booster-swap.json, an invented job", page);

        // Cells that a reader edits would find the car's file; nothing that is shown comes from it.
        Assert.DoesNotContain("mine.json", Regex.Replace(page, "<script type=\"application/json\" id=\"bb-notebook\">.*?</script>", ""));
    }

    [Fact]
    public async Task Two_renders_of_the_same_input_give_the_same_bytes()
    {
        await RunAsync("render", "--notebook", "01");
        string first = Page("01-good");
        (int _, string output, string _) = await RunAsync("render", "--notebook", "01", "--again");
        Assert.Contains("cell 3 of 3", output);
        Assert.Equal(first, Page("01-good"));
    }

    [Fact]
    public async Task Only_what_changed_runs_again_and_every_other_page_keeps_its_bytes()
    {
        File.Delete(_folder.File("notebooks/02-bad.ipynb"));
        Assert.Equal(0, (await RunAsync("render")).Code);
        Dictionary<string, string> first = Bytes();

        (int code, string output, string _) = await RunAsync("render");
        Assert.Equal(0, code);
        Assert.StartsWith("Nothing has changed: the pages of 2 notebooks", output);
        Assert.Equal(first, Bytes());

        // A page that somebody spoiled is made again, from what its notebook put out before.
        File.AppendAllText(_folder.File("out/01-good.html"), "spoiled");
        (_, output, _) = await RunAsync("render");
        Assert.DoesNotContain("cell 1 of", output);
        Assert.Contains("2 of 2 notebooks ran to their end; 2 of them as they ran before", output);
        Assert.Equal(first, Bytes());

        _folder.Write("notebooks/lessons/a-lesson.ipynb",
            SampleNotebook.Json("# Lesson", "#load \"../_setup.csx\"", "Force.FromNewtons(8)"));
        (_, output, _) = await RunAsync("render");
        Assert.Contains("a-lesson: cell 2 of 2", output);
        Assert.DoesNotContain("01-good: cell", output);
        Dictionary<string, string> second = Bytes();
        Assert.Contains("8 N", Page("a-lesson"));
        Assert.Equal(first["01-good.html"], second["01-good.html"]);

        await RunAsync("render", "--again");
        Assert.Equal(second, Bytes());
    }

    [Theory]
    [InlineData("vehicle")]
    [InlineData("data")]
    [InlineData("units")]
    [InlineData("set-up")]
    public async Task What_a_notebook_could_read_makes_it_run_again(string changed)
    {
        await RunAsync("render", "--notebook", "01");
        string[] more = changed == "units" ? ["--units", "us"] : [];
        if (changed != "units")
        {
            string file = _folder.File(changed switch
            {
                "vehicle" => NotebookInput.DefaultVehicle,
                "data" => "data/bench/own.json",
                _ => "notebooks/_setup.csx",
            });
            File.AppendAllText(file, changed == "data" ? "{}" : "\n// changed\n");
        }

        (int code, string output, string _) = await RunAsync(["render", "--notebook", "01", .. more]);
        Assert.Equal(0, code);
        Assert.Contains("01-good: cell 3 of 3", output);
    }

    [Fact]
    public async Task A_log_of_a_car_that_is_only_compared_makes_the_comparison_again_and_no_notebook_runs()
    {
        File.Delete(_folder.File("notebooks/02-bad.ipynb"));
        string car = File.ReadAllText(_folder.File(NotebookInput.DefaultVehicle));
        _folder.Write("one.json", car);
        _folder.Write("two.json", car[..car.LastIndexOf('}')].TrimEnd().TrimEnd(',') + ", \"measurements\": { \"gauges\": \"g.csv\" } }");
        _folder.Write("g.csv", _gauges);
        string[] words = ["render", "--vehicle", "one.json", "--vehicle", "two.json"];
        Assert.Equal((0, ""), Ended(await RunAsync(words)));
        Assert.StartsWith("Nothing has changed", (await RunAsync(words)).Output);

        File.AppendAllText(_folder.File("g.csv"), "# read again\n");
        (int code, string output, string _) = await RunAsync(words);
        Assert.Equal(0, code);
        Assert.Contains("2 of them as they ran before", output);
        Assert.DoesNotContain("cell 1 of", output);

        static (int, string) Ended((int Code, string Output, string Error) run) => (run.Code, run.Error);
    }

    [Fact]
    public async Task A_notebook_that_failed_runs_again()
    {
        await RunAsync("render", "--notebook", "02");
        (int code, string output, string _) = await RunAsync("render", "--notebook", "02");
        Assert.Equal(1, code);
        Assert.Contains("02-bad: cell 2 of 3", output);
    }

    [Fact]
    public async Task One_notebook_leaves_index_and_other_pages_as_they_are_and_keeps_its_place_among_them()
    {
        File.Delete(_folder.File("notebooks/02-bad.ipynb"));
        await RunAsync("render");
        Dictionary<string, string> whole = Bytes();
        await RunAsync("render", "--notebook", "a-lesson", "--again");
        Assert.Equal(whole, Bytes());
    }

    [Fact]
    public async Task A_watch_renders_again_what_changes_and_its_pages_look_for_themselves()
    {
        string page = _folder.File("out/a-lesson.html"), stamps = _folder.File("out/assets/stamps.js");
        using Program watch = Program.Start(_folder.Path, "render", "--notebook", "a-lesson", "--watch");
        await UntilAsync(() => watch.Output.Contains("Waiting for a change", StringComparison.Ordinal));
        string before = File.ReadAllText(stamps);
        Assert.Contains("assets/stamps.js", File.ReadAllText(page));

        _folder.Write("notebooks/lessons/a-lesson.ipynb",
            SampleNotebook.Json("# Lesson", "#load \"../_setup.csx\"", "Force.FromNewtons(9)"));
        await UntilAsync(() => File.ReadAllText(page).Contains("9 N", StringComparison.Ordinal) && File.ReadAllText(stamps) != before);

        // What changes while a render runs is rendered after it.
        _folder.Write("notebooks/lessons/a-lesson.ipynb", SampleNotebook.Json(
            "# Lesson", "#load \"../_setup.csx\"", "System.Threading.Thread.Sleep(3000);", "Force.FromNewtons(11)"));
        await UntilAsync(() => watch.Output.Contains("cell 1 of 3", StringComparison.Ordinal));
        _folder.Write("notebooks/lessons/a-lesson.ipynb",
            SampleNotebook.Json("# Lesson", "#load \"../_setup.csx\"", "Force.FromNewtons(13)"));
        await UntilAsync(() => File.ReadAllText(page).Contains("13 N", StringComparison.Ordinal));
        watch.Signal("INT");
        Assert.Equal(130, await watch.ExitAsync());
    }

    private static async Task UntilAsync(Func<bool> met)
    {
        for (var waited = System.Diagnostics.Stopwatch.StartNew(); !met(); await Task.Delay(100))
        {
            Assert.True(waited.Elapsed < TimeSpan.FromSeconds(90), "waited in vain");
        }
    }

    private Dictionary<string, string> Bytes() => Directory.EnumerateFiles(_folder.File("out"), "*", SearchOption.AllDirectories)
        .Where(path => !path.Contains(".kept", StringComparison.Ordinal))
        .ToDictionary(path => Path.GetRelativePath(_folder.File("out"), path), path => Convert.ToBase64String(File.ReadAllBytes(path)));

    [Fact]
    public async Task All_bad_input_is_listed_at_once_and_nothing_is_written()
    {
        _folder.Write("broken.json", "{ \"wheelbase\": 3 }");
        _folder.Write("taken", "");
        _folder.Write("notebooks/03-torn.ipynb", "{ \"cells\": ");
        string[] before = [.. _folder.Names];
        (int code, string output, string error) = await RunAsync(
            "render", "--notebook", "77", "--notebook", "03", "--vehicle", "broken.json", "--set", "what", "--output", "taken");

        Assert.Equal((2, ""), (code, output));
        foreach (string expected in new[] { "--notebook 77: there is no such notebook. There are: 01-good, 02-bad", "03-torn.ipynb",
            "wheelbase: 3 has no unit", "name: is missing", "--set what", "--output" })
        {
            Assert.Contains(expected, error);
        }

        Assert.DoesNotContain("   at ", error);
        Assert.Equal(before, _folder.Names);
    }

    [Fact]
    public async Task An_override_of_an_unknown_path_is_bad_input()
    {
        (int code, string _, string error) = await RunAsync("render", "--set", "front.brake.colour=red");
        Assert.Equal(2, code);
        Assert.Contains("colour", error);
        Assert.False(Directory.Exists(_folder.File("out")));
    }

    [Fact]
    public async Task Other_files_in_the_output_folder_stay()
    {
        Directory.CreateDirectory(_folder.File("out"));
        _folder.Write("out/mine.txt", "mine");
        await RunAsync("render", "--notebook", "01");
        Assert.Equal("mine", File.ReadAllText(_folder.File("out/mine.txt")));
        Assert.DoesNotContain(_folder.Names, name => name.EndsWith(".tmp", StringComparison.Ordinal));
    }

    private async Task<(int Code, string Output, string Error)> RunAsync(params string[] words)
    {
        using Program program = Program.Start(_folder.Path, words);
        return (await program.ExitAsync(), program.Output, program.Error);
    }

    private string[] Pages() => [.. Directory.EnumerateFiles(_folder.File("out"), "*.html").Select(path => Path.GetFileName(path)).Order()];

    private string Page(string name) => File.ReadAllText(_folder.File($"out/{name}.html"));
}
