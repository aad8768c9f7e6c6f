using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Notebooks.Tests.Pages;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>Every place that shows a setting shows the same three, as <see cref="SettingWords"/> writes them.</summary>
public partial class OneSettingEverywhereTests
{
    private const string Coupe = "coupe-1960s", Track = "track-coupe";
    private static readonly Dictionary<string, Lazy<Setting>> Answers =
        new[] { Coupe, Track }.ToDictionary(name =>
            name, name => new Lazy<Setting>(() => Setting.Of(VehicleFile.Load(Path(name)).Vehicle)));

    [Theory]
    [InlineData(Coupe, UnitSystem.Si)]
    [InlineData(Coupe, UnitSystem.Us)]
    [InlineData(Track, UnitSystem.Si)]
    public async Task Summary_card_measure_story_and_figures_show_the_same_three_settings(string car, UnitSystem units)
    {
        Setting setting = Answers[car].Value;
        using var folder = new TemporaryFolder();
        string system = units == UnitSystem.Us ? "us" : "si";

        Three(setting, units, "summary", await OutputAsync("summary", Path(car), "--units", system));
        Three(setting, UnitSystem.Si, "measure questions", await OutputAsync("measure", "questions", Path(car)));
        Three(setting, units, "measure setting", await OutputAsync("measure", "setting", Path(car), "--units", system, "--draws", "2000"));
        JsonNode summary = JsonNode.Parse(await OutputAsync("summary", Path(car), "--units", system, "--json"))!;
        JsonNode measured = JsonNode.Parse(
            await OutputAsync("measure", "setting", Path(car), "--units", system, "--json", "--draws", "2000"))!;
        foreach (JsonNode node in new[] { summary["setting"]!, measured["setting"]! })
        {
            Assert.Equal(SettingWords.Present(setting, units), node["present"]!["shown"]!.GetValue<string>());
            Assert.Equal(SettingWords.Text(setting.SafeLimit, units), node["safe_limit"]!["shown"]!.GetValue<string>());
            Assert.Equal(SettingWords.Text(setting.Recommended, units), node["recommended"]!["shown"]!.GetValue<string>());
        }

        await OutputAsync("card", Path(car), "--units", system, "--output", folder.Path);
        Three(setting, units, "card", Words(File.ReadAllText(Directory.GetFiles(folder.Path, "*card*.html").Single())));
        Three(setting, units, "story", Words(StoryPage.Render(setting.Vehicle, units, []).Html));

        foreach (Figure figure in FigureCatalogue.For(setting.Vehicle, units)
            .Where(entry => entry.Entry.Name is "knee-setting" or "safe-settings").Select(entry => entry.Make()).OfType<Figure>()
            .Append(RobustSettingFigures.TradeOff(setting, units)))
        {
            Three(setting, units, figure.Id, figure.LongDescription);
            Assert.True(figure.Id != "safe-settings" || setting.Recommended?.Knee is null
                || figure.Layers.Any(layer => layer.Name == "recommended setting"));
        }
    }

    [Fact]
    public async Task The_pages_of_the_coupe_show_them()
    {
        foreach (string page in new[] { "01-brake-balance", "02-choosing-the-setting" })
        {
            Three(Answers[Coupe].Value, UnitSystem.Si, page, Words(await File.ReadAllTextAsync(await RenderedNotebooks.PageAsync(page))));
        }

        // Notebook 05 measures the car, so its answer is another: that of the invented logs.
        Vehicle file = Answers[Coupe].Value.Vehicle;
        OwnMeasurements own = OwnMeasurements.Read(file, new(
            RepositoryRoot.File("data/logs/invented-gauges.csv"), RepositoryRoot.File("data/logs/invented-stops.csv"), null)).Own!;
        var measured = Setting.Of(own.Attached());
        Three(measured, UnitSystem.Si, "05",
            Words(await File.ReadAllTextAsync(await RenderedNotebooks.PageAsync("05-from-test-stops-to-a-setting"))));
    }

    [Fact]
    public async Task The_pages_of_a_car_with_a_balance_bar_show_them()
    {
        using var folder = new TemporaryFolder();
        using var render = Commands.Program.Start(
            RepositoryRoot.File("."), "render", "--notebook", "01", "--notebook", "02", "--vehicle", Path(Track), "--output", folder.Path);
        Assert.True(await render.ExitAsync() == 0, render.Error);
        foreach (string page in new[] { "01-brake-balance.html", "02-choosing-the-setting.html" })
        {
            // Notebook 02 also sets the car with other linings beside it.
            Vehicle track = Answers[Track].Value.Vehicle;
            Setting changed = Setting.OfBoth(track, car => car.WithFrictionFactors(front: 1, rear: 1.10)).After;
            string other = Spaces().Replace(SettingWords.Sentence(changed, UnitSystem.Si), " ");
            string text = Spaces().Replace(Words(File.ReadAllText(folder.File(page))), " ");
            Assert.Equal(page.StartsWith("02", StringComparison.Ordinal), text.Contains(other, StringComparison.Ordinal));
            Three(Answers[Track].Value, UnitSystem.Si, page, text.Replace(other, "", StringComparison.Ordinal));
        }
    }

    /// <summary>Its gauges have no knee to draw against turns, and what changes is its bar.</summary>
    [Fact]
    public async Task Page_05_of_a_bar_with_its_own_logs_runs_to_its_end_and_shows_the_bar_before_and_after()
    {
        using var folder = new TemporaryFolder();
        string text = File.ReadAllText(Path(Track));
        string car = folder.Write("bar.json", text[..text.LastIndexOf('}')]
            + """, "measurements": { "gauges": "gauges.csv", "stops": "stops.csv" } }""");
        Vehicle track = Answers[Track].Value.Vehicle;
        var model = new BalanceModel(track, track.LoadCases[0]);
        BalancePoint[] points = [.. Enumerable.Range(1, 8).Select(i => model.At(Pressure.FromBars(6 * i)))];
        folder.Write("gauges.csv", "turns;front pressure [bar];rear pressure [bar];phase\n" + string.Concat(points.Select(at =>
            FormattableString.Invariant($";{at.LinePressures.Front.Bars:0.0};{at.LinePressures.Rear.Bars:0.0};apply\n"))));
        folder.Write("stops.csv", "stop;speed [km/h];load case;surface;front pressure [bar];deceleration [g];locked first\n"
            + string.Concat(points[..6].Select((at, i) => FormattableString.Invariant(
                $"{i + 1};50;{track.LoadCases[0].Name};dry;{at.LinePressures.Front.Bars:0.0};{at.BrakingRate:0.000};none\n"))));
        using var render = Commands.Program.Start(
            RepositoryRoot.File("."), "render", "--notebook", "05", "--vehicle", car, "--output", folder.File("out"));
        Assert.True(await render.ExitAsync() == 0, render.Error);
        string page = Spaces().Replace(Words(File.ReadAllText(folder.File("out/05-from-test-stops-to-a-setting.html"))), " ");
        Assert.DoesNotContain("The gauges show a knee", page, StringComparison.Ordinal);
        Assert.DoesNotContain("The line bends where the valve", page, StringComparison.Ordinal);
        string recommended = Setting.Of(OwnMeasurements.Attach(VehicleFile.Load(car)).Reading!.Vehicle).Recommended!.FrontForceShare!.Value
            .ToString("0.0 %", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Contains($"bar 65.0 % front before, {recommended} after.", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_is_at_most_at_its_safe_limit_unless_its_note_says_why()
    {
        foreach (string path in Directory.GetFiles(RepositoryRoot.File("data/vehicles"), "*.json"))
        {
            Vehicle car = VehicleFile.Load(path).Vehicle;
            var setting = Setting.Of(car);
            Assert.True(
                !setting.PresentIsBeyond || car.Note!.Contains("beyond its safe limit", StringComparison.Ordinal),
                $"{path}: {SettingWords.Sentence(setting, UnitSystem.Si)}");
        }
    }

    private static void Three(Setting setting, UnitSystem units, string place, string text)
    {
        string words = Spaces().Replace(text, " ");
        foreach (string shown in new[]
        {
            SettingWords.Present(setting, units),
            SettingWords.Number(setting.SafeLimit!, units),
            setting.Recommended is null ? SettingWords.OutOfReach(setting)[0] : SettingWords.Text(setting.Recommended, units),
        })
        {
            Assert.True(words.Contains(shown, StringComparison.Ordinal),
                $"{place} of the {setting.Vehicle.Name} does not show \"{shown}\".");
        }

        // Whatever is said of the three is said with their own numbers.
        foreach (Match match in Said().Matches(words))
        {
            string[] allowed = match.Groups["what"].Value.ToUpperInvariant() switch
            {
                "PRESENT SETTING" => [SettingWords.Present(setting, units)],
                "SAFE LIMIT" => [SettingWords.Number(setting.SafeLimit!, units)],
                _ => [setting.Recommended is null ? SettingWords.None : SettingWords.Number(setting.Recommended, units)],
            };
            Assert.True(
                allowed.Any(number => number.StartsWith(match.Groups["number"].Value, StringComparison.Ordinal)),
                    $"{place}: \"{match.Value}\"");
        }
    }

    private static string Words(string html) =>
        WebUtility.HtmlDecode(Tags().Replace(Scripts().Replace(html, " "), " ")).Replace('\u00a0', ' ');

    private static async Task<string> OutputAsync(params string[] arguments)
    {
        (int code, string output, string error) = await Shell.RunAsync(arguments);
        Assert.True(code == 0, error);
        return output;
    }

    private static string Path(string car) => RepositoryRoot.File($"data/vehicles/{car}.json");

    [GeneratedRegex(@"\s+")]
    private static partial Regex Spaces();

    [GeneratedRegex("(?s)<(script|style|svg).*?</\\1>")]
    private static partial Regex Scripts();

    [GeneratedRegex("<[^>]+>")]
    private static partial Regex Tags();

    [GeneratedRegex(@"(?<what>present setting|safe limit|recommended setting):? (?<number>\d+(\.\d+)? (bar|psi|% front))",
        RegexOptions.IgnoreCase)]
    private static partial Regex Said();
}
