using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Bench.Files;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class BenchCommandTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly string Example = RepositoryRoot.File("data/bench/booster-swap.json");

    [Fact]
    public async Task The_tables_say_what_to_cut_to_buy_and_to_put_right()
    {
        (int code, string output, string error) = await Shell.RunAsync("bench", Example);
        Assert.Equal((0, ""), (code, error));
        Assert.Matches(@"booster to steering\s[^─]*box", output);
        Assert.Contains("547.4", output);
        Assert.Contains("Old parts against new", output);
        Assert.Contains("caution", output);
        Assert.Contains("A calculation is no approval", output);
    }

    [Fact]
    public async Task Other_units_are_the_same_quantities()
    {
        JsonNode si = await JsonAsync(), us = await JsonAsync("--units", "us");
        Assert.Equal((double)si["hoses"]![1]!["cut_length_m"]! / 0.0254, (double)us["hoses"]![1]!["cut_length_in"]!, 1e-3);
        Assert.Equal(21.55, (double)us["hoses"]![1]!["cut_length_in"]!, 0.005);
        JsonNode Row(JsonNode report) =>
            report["changes"]!.AsArray().First(row => ((string)row!["name"]!).StartsWith("Pedal force", StringComparison.Ordinal))!;
        Assert.Equal(("N", "lbf"), ((string)Row(si)["unit"]!, (string)Row(us)["unit"]!));
        Assert.Equal((double)Row(si)["before"]!, (double)Row(us)["before"]! * 4.4482216, 0.01);
    }

    [Theory]
    [InlineData("us", @"\d (mm|m|bar|N|kg|km/h|°C|cm³)(?![\w·/²³])", @"\d psi")]
    [InlineData("si", @"\d (in|ft|psi|lbf|lb|mph|°F|in³)(?![\w·/²³])", @"\d bar")]
    public async Task Tables_sheet_and_words_of_the_JSON_stand_in_the_units_asked_for_alone(string units, string others, string own)
    {
        using var folder = new TemporaryFolder();
        string[] with = [Example, "--units", units];
        string tables = Regex.Replace((await Shell.RunAsync(["bench", .. with])).Output, @"\s+", " ");
        string json = Regex.Replace((await Shell.RunAsync(["bench", .. with, "--json"])).Output, "\"name\": .*", "");
        Assert.Equal(0, (await Shell.RunAsync(["bench", .. with, "--sheet", folder.File("sheet.html")])).Code);
        string sheet = Regex.Replace(File.ReadAllText(folder.File("sheet.html")), "<(style|svg)[ >].*?</\\1>", "", RegexOptions.Singleline);
        Assert.All([tables, json, sheet], told => Assert.Matches(own, told));
        Assert.All([tables, json, sheet], told => Assert.DoesNotMatch(others, told));
    }

    [Fact]
    public async Task A_wrong_connection_is_an_answer_that_says_why()
    {
        (int code, string output, string _) =
            await Shell.RunAsync("bench", Example, "--set", "plumbing.lines[0].to=box.pressure", "--set",
            "plumbing.lines[1].to=booster.pressure");
        Assert.Equal(0, code); // bad news for the car is an answer; 1 means that a part of the work failed
        Assert.Contains("WRONG", output);
        Assert.Contains("leads to box.pressure", output);
    }

    [Fact]
    public async Task All_problems_are_listed_at_once_and_nothing_is_written()
    {
        using var folder = new TemporaryFolder();
        string sheet = Path.Combine(folder.Path, "sheet.html");
        (int code, string output, string error) =
            await Shell.RunAsync("bench", Example, "--sheet", sheet, "--set", "hoses[0].overallLength=90 mm", "--set", "hoses[1].dash=-7",
            "--set", "what");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("hoses[0].overallLength: 90 mm leave no hose", error);
        Assert.Contains("hoses[1].dash: \"-7\" is not in the table", error);
        Assert.Contains("--set what", error);
        Assert.False(File.Exists(sheet));
        (code, _, error) = await Shell.RunAsync("bench");
        Assert.Equal(2, code);
        Assert.Contains("No bench file is named", error);
    }

    [Fact]
    public async Task Threads_are_looked_up_by_words()
    {
        (int code, string output, string _) = await Shell.RunAsync("bench", "--threads", "inverted 1/4");
        Assert.Equal(0, code);
        Assert.Contains("7/16-24", output);
        Assert.Contains("[mm]", output);
        (_, output, _) = await Shell.RunAsync("bench", "--threads", "inverted 1/4", "--units", "us");
        Assert.Contains("[in]", output);
        Assert.DoesNotContain("[mm]", output);
        (code, _, string error) = await Shell.RunAsync("bench", "--threads", "bayonet");
        Assert.Equal(2, code);
        Assert.Contains("bubble flare", error);
    }

    [Fact]
    public async Task The_schema_is_printed()
    {
        (int code, string output, string _) = await Shell.RunAsync("bench", "--schema");
        Assert.Equal((0, BenchFile.Schema().TrimEnd()), (code, output.TrimEnd()));
    }

    [Fact]
    public async Task Rendering_with_a_bad_bench_file_is_refused()
    {
        (int code, string _, string error) = await Shell.RunAsync("render", "--notebook", "08", "--bench", "nowhere.json");
        Assert.Equal(2, code);
        Assert.Contains("nowhere.json: There is no such file.", error);
    }

    private static readonly string[] Faces = ["Arial", "sans-serif", "serif", "'DejaVu Sans'", "'Liberation Sans'"];

    /// <summary>
    /// The sheet is one sheet of paper: one page in front, one behind, on A4 and on Letter, whatever face the machine has.
    /// </summary>
    [SkippableFact]
    public async Task The_sheet_prints_on_two_pages_and_reads_on_a_phone()
    {
        string sheet = Path.Combine(browser.Folder, "bench-sheet.html");
        Assert.Equal(0, (await Shell.RunAsync("bench", Example, "--sheet", sheet)).Code);
        foreach ((PaperFormat paper, string face) in from paper in new[] { PaperFormat.A4, PaperFormat.Letter }
                                                     from face in Faces
                                                     select (
            paper, face))
        {
            await using WatchedPage page = await browser.OpenAsync(sheet);
            // Two hundredths of an em more for every letter: no face that the page asks for is wider.
            await page.Page.AddStyleTagAsync(new AddTagOptions { Content = $"body {{ font-family: {face}; letter-spacing: 0.02em; }}" });
            string pdf = System.Text.Encoding.Latin1.GetString(await page.PrintAsync(paper));
            Assert.Equal(2, System.Text.RegularExpressions.Regex.Count(pdf, @"/Type\s*/Page\b"));
            page.AssertQuiet();
        }

        await using WatchedPage phone = await browser.OpenAsync(sheet, width: 390, height: 844);
        foreach (string face in Faces)
        {
            await phone.Page.AddStyleTagAsync(new AddTagOptions { Content = $"body {{ font-family: {face}; }}" });
            await phone.AssertNoSidewaysScrollAsync();
        }

        await phone.AssertAccessibleAsync();
        phone.AssertQuiet();
    }

    private static async Task<JsonNode> JsonAsync(params string[] more)
    {
        (int code, string output, string error) = await Shell.RunAsync(["bench", Example, "--json", .. more]);
        Assert.Equal((0, ""), (code, error));
        return JsonNode.Parse(output)!;
    }
}
