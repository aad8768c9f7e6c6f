using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>One thing has one name in every answer: the other names are refused.</summary>
public class WordingTests
{
    // Keys of files and names of entries may still hold such a word, with a point or a quotation mark beside it.
    private const string Refused =
        @"first to lock|go back to|as set now|as in the file|greatest safe|greatest knee|hold-off|(?<!\.)\bknob\b|\bkept:"
        + @"|\bbroken:|\bpanic\b|just past first lock|out of line|nine chances|nine tenths|nine in ten|break off|\bgive of\b"
        + @"|(?<!quick-)\btake-?up\b|part of all|boils dry|ends apart|lost in cuts|telephone|in a holder|nowhere|leg work|\(es\)"
        + @"|(?<!\\mu)\(s\)|best setting|put right|as wanted|(assist|booster) (is )?(dead|lost|failed)|dead booster"
        + @"|utilised in front|\[(m|ft)/s²\]|(?<![\d.,])1 (turns|elements|stops|hoses)\b|belongs? (to|in) competent"
        + @"|the driver can answer|held back at the road|pushes on at|helps itself on|drag each other|makes braking|changed twin"
        + @"|swallow|leg is alone|get no say|foretell|(?<!against )\ba wall\b|\bjams\b|turned down|how great (is|are)|parted by"
        + @"|rings? warm|stands? in the return|hanging and on|valve can go in|one call is|(?<!of )an inch\b|taken for it\b"
        + @"|what they give|tried today|growth a second|\d%";

    // Plain words have the grip of the road for its adhesion; the rules call the deceleration a braking rate.
    private const string RefusedOfTrade = @"|grip used|share of grip|part of the road";
    private const string RefusedButInRules = @"|braking rate";

    private static readonly string Data = RepositoryRoot.File("data");

    public static TheoryData<string> Answers =>
    [
        "summary vehicles/coupe-1960s.json --all", "summary vehicles/track-coupe.json --units us",
            "summary vehicles/rear-engined-sports-car.json",
        "stops vehicles/coupe-1960s.json", "stops vehicles/track-coupe.json", "measure questions vehicles/coupe-1960s.json",
        "measure questions vehicles/track-coupe.json", "measure bands vehicles/coupe-1960s.json", "measure plan vehicles/coupe-1960s.json",
        "measure gauges logs/invented-gauges.csv", "measure series logs/invented-phone.csv",
        "measure setting vehicles/coupe-1960s.json --draws 2000 --stops logs/invented-stops.csv --gauges logs/invented-gauges.csv",
        "bench bench/booster-swap.json", "bench bench/booster-swap.json --json", "bench --threads inverted", "summary --keys",
        "stops --keys",
        "schema", "bench --schema", "choose --schema", "choose --help", "compare --help", "choose starter parts", "choose starter targets",
        "compare vehicles/coupe-1960s.json vehicles/track-coupe.json",
        "compare vehicles/coupe-1960s.json vehicles/track-coupe.json --json",
        "stops --help", "measure --help", "bench --help", "summary --help", "figures --help", "card --help",
    ];

    /// <summary>Commands that write files to read or print, FOLDER standing for where they go.</summary>
    public static TheoryData<string> Writers =>
    [
        "card vehicles/coupe-1960s.json --output FOLDER", "card vehicles/track-coupe.json --output FOLDER --units us",
        "class sheets --secret brass-keys --students 1-2 --output FOLDER", "bench bench/booster-swap.json --sheet FOLDER/bench.html",
        "measure plan vehicles/coupe-1960s.json --sheet FOLDER/plan.html", "story vehicles/coupe-1960s.json --output FOLDER",
        "starter FOLDER/car.json", "bench starter FOLDER/bench.json",
        "figures vehicles/coupe-1960s.json --output FOLDER --format svg",
        "figures vehicles/track-coupe.json --output FOLDER --format svg --units us",
        "figures vehicles/coupe-1960s.json --output FOLDER --format svg --plain",
    ];

    public static TheoryData<string> Notebooks =>
        [.. Directory.EnumerateFiles(RepositoryRoot.File("notebooks"), "*.ipynb", SearchOption.AllDirectories)
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task An_answer_holds_no_other_name(string command)
    {
        (int code, string output, string error) = await Shell.RunAsync(Arguments(command, ""));
        Assert.True(code == 0, error);
        Holds(output, RefusedOfTrade + (command.StartsWith("summary", StringComparison.Ordinal) ? "" : RefusedButInRules));
    }

    [Theory]
    [MemberData(nameof(Writers))]
    public async Task A_file_to_read_holds_no_other_name(string command)
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync(Arguments(command, folder.Path));
        Assert.True(code == 0, error);
        string[] files = [.. folder.Names.Where(name => Path.GetExtension(name) is ".html" or ".svg" or ".txt" or ".csv" or ".json")];
        Assert.NotEmpty(files);
        bool plain = command.Contains("--plain", StringComparison.Ordinal) || command.StartsWith("story", StringComparison.Ordinal);
        Assert.All(files, name => Holds(Words(File.ReadAllText(folder.File(name))), (plain ? "" : RefusedOfTrade) + RefusedButInRules));
    }

    [Fact]
    public void The_page_of_questions_holds_no_other_name()
    {
        VehicleReading car = VehicleFile.Load(RepositoryRoot.File("data/vehicles/track-coupe.json"));
        Holds(Words(QuestionsPage.Render(car, UnitSystem.Us, [], [new("Units", "US customary")]).Html), RefusedOfTrade + RefusedButInRules);
    }

    [Theory]
    [MemberData(nameof(Notebooks))]
    public void Prose_of_a_notebook_holds_no_other_name(string path) => Holds(
        string.Join('\n', JsonNode.Parse(File.ReadAllText(path))!["cells"]!.AsArray()
            .Where(cell => (string)cell!["cell_type"]! == "markdown")
            .SelectMany(cell => cell!["source"]!.AsArray().Select(line => (string)line!))), RefusedOfTrade);

    [Fact]
    public void The_readme_holds_no_other_name() =>
        Holds(File.ReadAllText(RepositoryRoot.File("README.md")), RefusedOfTrade + RefusedButInRules);

    private static string[] Arguments(string command, string folder) => [.. command.Split(' ')
        .Select(word => word.StartsWith("FOLDER", StringComparison.Ordinal) ? Path.Join(folder, word["FOLDER".Length..])
            : word.Contains('/', StringComparison.Ordinal) ? Path.Combine(Data, word) : word)];

    // What a reader of the page sees or is read: the text, names and alternative texts.
    private static string Words(string html)
    {
        string shown = Regex.Replace(html, @"<(script|style)\b.*?</\1>", " ", RegexOptions.Singleline | RegexOptions.IgnoreCase);
        IEnumerable<string> said = Regex.Matches(shown, "(?:alt|aria-label|title)=\"([^\"]*)\"").Select(match => match.Groups[1].Value);
        return WebUtility.HtmlDecode(Regex.Replace(shown, "<[^>]*>", " ") + string.Join(' ', said));
    }

    // The words around are cut out afterwards: sought with them, each place of a long text would be tried forty times.
    private static void Holds(string text, string more)
    {
        string line = Regex.Replace(text, @"(\s|\\u00A0)+", " ");
        Assert.Equal("", string.Join(" | ", Regex.Matches(line, Refused + more, RegexOptions.IgnoreCase)
            .Select(match => line[Math.Max(0, match.Index - 40)..Math.Min(line.Length, match.Index + match.Length + 20)])));
    }
}
