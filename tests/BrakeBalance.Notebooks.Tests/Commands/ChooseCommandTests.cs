using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>Parts from targets, and set-ups side by side.</summary>
public sealed class ChooseCommandTests : IDisposable
{
    private static readonly string Car = RepositoryRoot.File("data/vehicles/big-cam-saloon.json");
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");
    private readonly string _folder = Directory.CreateTempSubdirectory("choose").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task The_starters_choose_for_the_demo_car_and_what_is_written_fits_and_is_checked()
    {
        (string parts, string targets, string sets) = (In("parts.csv"), In("targets.json"), In("sets"));
        Assert.Equal(0, (await Shell.RunAsync("choose", "starter", "parts", parts)).Code);
        Assert.Equal(0, (await Shell.RunAsync("choose", "starter", "targets", targets)).Code);
        (int code, string output, string error) = await Shell.RunAsync(
            "choose", Car, "--targets", targets, "--parts", parts, "--show", "1", "--write", sets, "--json");
        Assert.True(code == 0, error);
        JsonNode answer = JsonNode.Parse(output)!;
        JsonNode smallest = answer["sets"]![0]!;
        Assert.Equal(6 * 5 * 3 * 2 * 2 * 2 * 19, answer["combinations"]!.GetValue<long>());
        Assert.True(smallest["fits"]!.GetValue<bool>(), output);
        Assert.Equal("smallest change that works", smallest["shown_for"]![0]!.GetValue<string>());
        string written = Path.Combine(sets, "set-1.json");
        Assert.Equal(0, (await Shell.RunAsync("check", written)).Code);
        JsonNode summary = JsonNode.Parse((await Shell.RunAsync("summary", written, "--json", "--braking-rate", "1.0")).Output)!;
        Assert.Contains("pedal", summary.ToJsonString(), StringComparison.Ordinal);
        (code, string report, error) = await Shell.RunAsync(
            "choose", Car, "--targets", targets, "--parts", parts, "--show", "1", "--report", "1");
        Assert.True(code == 0, error);
        foreach (string part in (string[])["Old parts against new", "Shopping list", "First application", "Local law", "On the bench"])
        {
            Assert.Contains(part, report, StringComparison.Ordinal);
        }

        string page = File.ReadAllText(Path.Combine(sets, "set-1.html"));
        foreach (string part in (string[])["Old against new", "set-ups-forces", "set-ups-effort", "On the bench", "Shopping list",
            "First application", "The first test stops", "Local law", "competent person", "rating of every part"])
        {
            Assert.Contains(part, page, StringComparison.Ordinal);
        }

        Assert.Equal(3, answer["cautions"]!.AsArray().Count);
        (code, _, error) = await Shell.RunAsync("choose", Car, "--parts", parts, "--targets", targets, "--show", "1", "--write", sets);
        Assert.Equal(2, code);
        Assert.Contains("--force writes over it", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_shown_says_its_conditions_and_tells_one_number_once()
    {
        File.WriteAllText(In("p.csv"), "part,name,sets,price,mass [kg]\npedal,long,pedal.ratio = 5,40,0.6\n");
        File.WriteAllText(In("t.json"), """{ "loadCase": "laden", "pedalForceHalf": "40 N" }""");
        (int code, string output, string error) = await Shell.RunAsync("choose", Car, "--parts", In("p.csv"), "--targets", In("t.json"));
        Assert.True(code == 0, error);
        string words = Words(output);
        Assert.Contains("Nothing fits", words, StringComparison.Ordinal);
        Assert.Contains("load case laden", words, StringComparison.Ordinal);
        Assert.DoesNotContain("the file's numbers", words, StringComparison.Ordinal);
        Assert.Contains("0.6 kg", words, StringComparison.Ordinal);

        string report = (await Shell.RunAsync("choose", Car, "--parts", In("p.csv"), "--targets", In("t.json"), "--report", "1")).Output;
        string[] limits =
            [.. Regex.Matches(Words(report), @"Safe limit\D*(?<first>[\d.]+ bar)").Select(match => match.Groups["first"].Value)];
        Assert.Equal(2, limits.Length);
        Assert.Equal(limits[0], limits[1]);
    }

    [Fact]
    public async Task Problems_of_all_files_come_at_once()
    {
        File.WriteAllText(In("t.json"), """{ "pedalForceFull": "5 bar" }""");
        File.WriteAllText(In("p.csv"), "part,name,sets\nbore,a,masterCylinder.boar = 1 in\n");
        (int code, string output, string error) = await Shell.RunAsync("choose", Car, "--targets", In("t.json"), "--parts", In("p.csv"),
            "--show", "0");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("t.json: pedalForceFull", error, StringComparison.Ordinal);
        Assert.Contains("p.csv: line 2", error, StringComparison.Ordinal);
        Assert.Contains("--show", error, StringComparison.Ordinal);
        (code, _, error) = await Shell.RunAsync("choose", In("no.json"));
        Assert.Equal(2, code);
        Assert.Contains("no such file", error, StringComparison.Ordinal);
        Assert.Contains("No list of parts is named", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_wrong_with_a_row_in_each_of_its_sizes_is_said_once()
    {
        File.WriteAllText(In("p.csv"), "part,name,sets\nvalve,a,hydraulics.rearValves[7].knee = 20 bar .. 36 bar step 2 bar\n"
            + "pedal,b,pedal.ratio = 4 .. 300 step 100\n");
        (int code, _, string error) = await Shell.RunAsync("choose", Car, "--parts", In("p.csv"));
        Assert.Equal(2, code);
        Assert.Single(error.Split('\n'), line => line.Contains("rearValves[7].knee is no single value", StringComparison.Ordinal));
        Assert.Equal(error.Split('\n').Distinct(), error.Split('\n'));
        Assert.Contains("204", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_search_that_is_stopped_ends_with_130()
    {
        File.WriteAllText(In("p.csv"), "part,name,sets\nratio,a,pedal.ratio = 3 .. 9 step 0.01\nvalve,b,"
            + "hydraulics.rearValves[0].knee = 10 bar .. 60 bar step 0.1 bar\n");
        using var source = new CancellationTokenSource();
        source.CancelAfter(TimeSpan.FromSeconds(1));
        using var output = new StringWriter();
        using var error = new StringWriter();
        var terminal = new Terminal(output, error, IsInteractive: false);
        Assert.Equal(130, await CommandLine.RunAsync(["choose", Car, "--parts", In("p.csv")], terminal, source.Token));
        Assert.Equal("", output.ToString());
    }

    [Fact]
    public async Task Compare_says_what_the_bench_says_of_the_same_change()
    {
        File.WriteAllText(In("bench.json"), $$"""
            { "name": "x", "change": { "vehicle": {{System.Text.Json.JsonSerializer.Serialize(Coupe)}},
              "newParts": { "masterCylinder": { "bore": "1 in" } } } }
            """);
        JsonNode bench = JsonNode.Parse((await Shell.RunAsync("bench", In("bench.json"), "--json")).Output)!;
        (int code, string output, string error) = await Shell.RunAsync("compare", Coupe, "--set", "masterCylinder.bore=1 in", "--json");
        Assert.True(code == 0, error);
        JsonArray rows = JsonNode.Parse(output)!["rows"]!.AsArray();
        int same = 0;
        foreach (JsonNode change in bench["changes"]!.AsArray().OfType<JsonNode>())
        {
            JsonNode? row = rows.FirstOrDefault(row => row!["name"]!.ToString() == change["name"]!.ToString());
            same += row is not null && row["values"]![0]?.ToJsonString() == change["before"]?.ToJsonString()
                && row["values"]![1]?.ToJsonString() == change["after"]?.ToJsonString() ? 1 : 0;
        }

        Assert.True(same >= 7, output);
        Assert.Contains(rows, row => row!["key"]!.ToString() == "safe_limit" && !row["differs"]!.GetValue<bool>());
        Assert.Contains(rows, row => row!["key"]!.ToString() == "pedal_force" && row["differs"]!.GetValue<bool>());
    }

    [Fact]
    public async Task Compare_writes_its_rows_and_the_figures_of_six_set_ups_as_a_page()
    {
        string[] sets = [.. new[] { "7/8 in", "15/16 in", "1 in", "1-1/16 in", "1-1/8 in" }.SelectMany(bore =>
            (string[])["--set", $"masterCylinder.bore={bore}"])];
        (int code, string output, string error) = await Shell.RunAsync(["compare", Coupe, .. sets, "--json", "--page", In("c.html")]);
        Assert.True(code == 0, error);
        string page = System.Net.WebUtility.HtmlDecode(File.ReadAllText(In("c.html")));
        Assert.All(JsonNode.Parse(output)!["rows"]!.AsArray(), row => Assert.All(row!["texts"]!.AsArray(), text =>
            Assert.Contains(text!.ToString(), page, StringComparison.Ordinal)));
        foreach (string figure in (string[])["set-ups-forces", "set-ups-effort", "id=\"set-ups\""])
        {
            Assert.Contains(figure, page, StringComparison.Ordinal);
        }

        Assert.Equal(2, (await Shell.RunAsync("compare", Coupe, Car, "--page", Coupe)).Code);
    }

    [Fact]
    public async Task Compare_takes_two_to_six_set_ups_and_shows_the_bands_of_a_range()
    {
        Assert.Equal(2, (await Shell.RunAsync("compare", Coupe)).Code);
        Assert.Equal(2, (await Shell.RunAsync("compare", Coupe, Coupe, Coupe, Coupe, Coupe, Coupe, Coupe)).Code);
        Assert.Equal(2, (await Shell.RunAsync("compare", Coupe, Car, "--load-case", "nobody")).Code);
        const string Ranged = "front.brake.friction = 0.36 .. 0.40; pedal.ratio=5";
        (int code, string output, string error) = await Shell.RunAsync("compare", Coupe, "--set", Ranged);
        Assert.True(code == 0, error);
        string words = Words(output);
        Assert.Contains("a dozen cars drawn from the file's ranges", words, StringComparison.Ordinal);
        JsonNode row = JsonNode.Parse((await Shell.RunAsync("compare", Coupe, "--set", Ranged, "--json")).Output)!["rows"]!.AsArray()
            .First(row => row!["key"]!.ToString() == "pedal_force")!;
        Assert.Matches(@"^\d+ N \(\d+–\d+\)$", row["texts"]![1]!.ToString().Replace('\u00a0', ' '));
        Assert.Null(row["values_low"]![0]);
        Assert.InRange(row["values"]![1]!.GetValue<double>(), row["values_low"]![1]!.GetValue<double>(),
            row["values_high"]![1]!.GetValue<double>());
    }

    private static string Words(string output) =>
        string.Join(' ', output.Split([' ', '\n', '\u00a0'], StringSplitOptions.RemoveEmptyEntries));

    private string In(string name) => Path.Combine(_folder, name);
}
