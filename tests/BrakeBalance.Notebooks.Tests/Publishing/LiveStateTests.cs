using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Live;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles.Files;
using Xunit.Abstractions;
using static BrakeBalance.Notebooks.Tests.Publishing.LiveDriving;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>What the page of one's own car shows, keeps and saves while an answer is still being worked out.</summary>
public class LiveStateTests(BrowserFixture browser, ITestOutputHelper output) : IClassFixture<BrowserFixture>
{
    private const string Said = "document.querySelector('#live-said').innerText";

    private const string IsEarlier = "!document.querySelector('#live-earlier').hidden";

    private const string SetUps = "[...document.querySelectorAll('#live-setups [aria-pressed]')]"
        + ".map(one => one.innerText + (one.ariaPressed === 'true' ? '*' : '')).join()";

    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));

    private static readonly string Measured = Coupe.Replace(
        "// \"measurements\": { \"gauges\": \"../logs/invented-gauges.csv\", \"stops\": \"../logs/invented-stops.csv\"",
        "\"measurements\": { \"gauges\": \"gauges.csv\", \"stops\": \"stops.csv\"", StringComparison.Ordinal);

    [SkippableFact]
    public async Task Whatever_is_typed_while_logs_are_fitted_is_kept_in_its_set_up_and_the_head_says_that_it_is_of_an_earlier_state()
    {
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 390);
        await page.Page.WaitForExpressionAsync(
            "document.documentElement.dataset.second === 'yes' && !(" + IsEarlier + ")", new() { Timeout = 120_000 });
        string before = await TextAsync(page, Said);
        await page.Page.EvaluateFunctionAsync(
            """
            logs => {
              for (const [kind, text] of Object.entries(logs)) document.querySelector("#log-" + kind).value = text;
              document.querySelector("#live-fit").click();
            }
            """, Logs());
        (string, string)[] typed =
            [("loadCases[0].mass", "1711 kg"), ("hydraulics.rearValves[0].knee", "22.2 bar"), ("pedal.ratio", "4.2")];
        foreach ((int at, (string path, string value)) in typed.Index())
        {
            if (at > 0)
            {
                await page.Page.EvaluateExpressionAsync(
                    "[...document.querySelectorAll('#live-setups button')].find(one => one.innerText.startsWith('Copy')).click()");
                await page.Page.WaitForExpressionAsync(
                    $"document.querySelectorAll('#live-setups [aria-pressed]').length === {at + 1}", new() { Timeout = 20_000 });
            }

            // No wait between typing and what comes next.
            await TypeAsync(page, path, value);
        }

        string head = await (await page.Page.WaitForExpressionAsync(
            IsEarlier + " && document.querySelector('#live-bar').innerText.includes('from before the change') && " + Said,
            new() { Timeout = 20_000 })).EvaluateFunctionAsync<string>("text => text");
        Assert.StartsWith(head, before, StringComparison.Ordinal); // the last lines give way to what it says
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        output.WriteLine(await page.Page.EvaluateExpressionAsync<string>("document.querySelector('#live-bar').innerText"));

        await WatchSavingAsync(page);
        await ClickAsync(page, "#live-save");
        await page.Page.WaitForExpressionAsync("saved.length === 3", new() { Timeout = 20_000 });
        JsonNode file = Json(await TextAsync(page, "saved[0].blob.text()"));
        Assert.Equal("1711 kg", file["loadCases"]![0]!["mass"]!.ToString());
        Assert.Equal("22.2 bar", file["hydraulics"]!["rearValves"]![0]!["knee"]!.ToString());
        Assert.Equal("4.2", file["pedal"]!["ratio"]!.ToString());
        JsonArray kept = JsonNode.Parse(await TextAsync(page, "localStorage.getItem('bb-cars')"))!["cars"]!.AsArray();
        Assert.Equal(["4.2", "4.0", "4.0"], kept.Reverse().Select(one => Json(one!["text"]!.ToString())["pedal"]!["ratio"]!.ToString()));

        await page.Page.WaitForExpressionAsync("!(" + IsEarlier + ") && " + Said + ".includes('22.2 bar')", new() { Timeout = 240_000 });
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_fit_that_is_stopped_leaves_car_and_answer_as_they_were_and_the_log_where_it_was_typed()
    {
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second === 'yes'", new() { Timeout = 120_000 });
        string before = await TextAsync(page, Said);
        await ClickAsync(page, "[data-tab=measure]");
        await page.Page.EvaluateFunctionAsync(
            "logs => { document.querySelector('#log-stops').value = logs.stops; document.querySelector('#live-fit').click(); }", Logs());
        await page.Page.WaitForExpressionAsync(IsEarlier, new() { Timeout = 20_000 });
        foreach (string seconds in (string[])["1", "2"])
        {
            await page.Page.WaitForExpressionAsync(
                $"document.querySelector('#live-progress').innerText === 'Fitting the car to its measurements: {seconds} s'",
                new() { Timeout = 20_000 });
        }

        await ClickAsync(page, "#live-cancel");
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('#live-progress').hidden)"));
        await page.Page.WaitForExpressionAsync("!(" + IsEarlier + ")", new() { Timeout = 60_000 });
        Assert.Equal(before, await TextAsync(page, Said));
        await ClickAsync(page, "[data-tab=car]");
        await ClickAsync(page, "[data-tab=measure]");
        Assert.StartsWith(Logs()["stops"][..40], await TextAsync(page, "document.querySelector('#log-stops').value"),
            StringComparison.Ordinal);
        await WatchSavingAsync(page);
        await ClickAsync(page, "#live-save");
        await page.Page.WaitForExpressionAsync("saved.length > 0", new() { Timeout = 20_000 });
        Assert.Equal("my-car.json", await TextAsync(page, "saved.map(one => one.name).join()"));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_card_can_be_saved_only_when_it_is_there()
    {
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 1280);
        await WatchSavingAsync(page);
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('[data-keep=card]').disabled)"));
        await page.Page.EvaluateExpressionAsync(
            "document.querySelector('[data-tab=paper]').click(); document.querySelector('[data-keep=card]').click()");
        await page.Page.WaitForExpressionAsync("!document.querySelector('[data-keep=card]').disabled", new() { Timeout = 60_000 });
        Assert.Equal("0", await TextAsync(page, "String(saved.length)"));
        await page.Page.EvaluateExpressionAsync(
            """
            (() => {
              const paper = document.querySelector("#card-paper");
              paper.value = "half-letter";
              paper.dispatchEvent(new Event("change", { bubbles: true }));
              document.querySelector("[data-keep=card]").click();
            })()
            """);
        await page.Page.WaitForExpressionAsync("!document.querySelector('[data-keep=card]').disabled", new() { Timeout = 60_000 });
        await ClickAsync(page, "[data-keep=card]");
        Assert.Equal("invented-1960s-coupe-card-half-letter-si.html", await TextAsync(page, "saved.map(one => one.name).join()"));
        Assert.Contains("1960s coupe", await TextAsync(page, "saved[0].blob.text()"), StringComparison.Ordinal);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_page_written_for_a_file_with_logs_begins_with_their_answer_and_an_opened_file_says_that_its_logs_are_not_read()
    {
        using var folder = new TemporaryFolder();
        string car = folder.Write("car.json", Measured);
        foreach ((string kind, string text) in Logs())
        {
            folder.Write(kind + ".csv", text);
        }

        (int code, string _, string error) = await Shell.RunAsync("your-car", car, "--output", folder.Path);
        Assert.True(code == 0, error);
        string limit = SettingWords.SafeLimit(Setting.Of(OwnMeasurements.Attach(VehicleFile.Load(car)).Reading!.Vehicle), UnitSystem.Si);
        string plain = SettingWords.SafeLimit(Setting.Of(VehicleFile.Load(car).Vehicle), UnitSystem.Si);
        Assert.NotEqual(plain, limit);

        await using WatchedPage page = await OpenAsync(File.ReadAllText(folder.File(LivePage.FileName)), 390);
        static string Line(string words) => words.Replace('\u00a0', ' ');
        string said = Line(await TextAsync(page, Said));
        Assert.Contains(Line(limit), said, StringComparison.Ordinal);
        Assert.DoesNotContain("not read here", said, StringComparison.Ordinal);
        await ClickAsync(page, "[data-tab=measure]");
        Assert.Equal(Logs()["gauges"].ReplaceLineEndings("\n"), await TextAsync(page, "document.querySelector('#log-gauges').value"));

        // What is entered after the fit is a change of the car, until it is fitted again.
        const string Changed = "'made before it was changed'";
        await TypeAsync(page, "rear.brake.friction", "0.42");
        await page.Page.WaitForExpressionAsync(Said + $".includes({Changed})", new() { Timeout = 60_000 });
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#live-measured').innerText.includes('The car was changed since')", new() { Timeout = 60_000 });
        await ClickAsync(page, "#live-fit");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#live-status').innerText === 'Fitted.' && !" + Said + $".includes({Changed})",
            new() { Timeout = 120_000 });

        await page.Page.EvaluateFunctionAsync(
            "text => { document.querySelector('#live-text').value = text; document.querySelector('#live-paste').click(); }", Measured);
        await page.Page.WaitForExpressionAsync(Said + ".includes('gauges.csv and stops.csv: not read here')", new() { Timeout = 60_000 });
        Assert.Contains(Line(plain), Line(await TextAsync(page, Said)), StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_link_comes_beside_the_set_ups_of_the_device_and_what_is_changed_in_it_stays()
    {
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 390);
        await SetAsync(page, "loadCases[0].mass", "1222 kg");
        var ask = new JsonObject { ["do"] = "link", ["text"] = Measured, ["logs"] = JsonSerializer.SerializeToNode(Logs()) };
        string words = JsonNode.Parse(new LiveDesk().Answer(ask.ToJsonString()))!["words"]!.ToString();
        string address = page.Page.Url;
        await page.Page.GoToAsync("about:blank");
        await page.Page.GoToAsync($"{address}#{words}");
        await LiveAsync(page);
        Assert.Equal("B*,A", await TextAsync(page, SetUps));
        Assert.Contains("by the link: it comes first", await TextAsync(page, "document.querySelector('#live-status').innerText"),
            StringComparison.Ordinal);
        Assert.Equal(Logs()["stops"], await TextAsync(page, "JSON.parse(localStorage.getItem('bb-cars')).cars[0].logs.stops"));
        await SetAsync(page, "name", "Linked and changed");
        await page.Page.ReloadAsync();
        await LiveAsync(page);
        Assert.Equal("B*,A", await TextAsync(page, SetUps));
        Assert.Equal("Linked and changed", await FieldAsync(page, "name"));
        await PressAsync(page, "A");
        await page.Page.WaitForExpressionAsync(SetUps + " === 'B,A*'", new() { Timeout = 20_000 });
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('[data-path=\"loadCases[0].mass\"]').value === '1222 kg'", new() { Timeout = 20_000 });
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task What_is_typed_and_moved_stays_with_its_set_up_and_what_is_removed_comes_back()
    {
        const string Knee = "hydraulics.rearValves[0].knee", Moved = "(document.querySelector('#live-dock input')?.value ?? '')";
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 1280);
        await ClickAsync(page, "[data-tab=car]");
        Assert.Equal("true", await TextAsync(page, $"document.querySelector(\"[data-slide='{Knee}']\").ariaPressed"));
        await page.Page.WaitForExpressionAsync("!!document.querySelector('#live-dock input')", new() { Timeout = 20_000 });
        await page.Page.EvaluateExpressionAsync(
            """
            (() => {
              const range = document.querySelector("#live-dock input");
              range.value = 22;
              range.dispatchEvent(new Event("input", { bubbles: true }));
              const log = document.querySelector("#log-stops");
              log.value = "half a log";
              log.dispatchEvent(new Event("input", { bubbles: true }));
            })()
            """);
        await page.Page.WaitForExpressionAsync(Said + ".includes('22.0 bar')", new() { Timeout = 60_000 });
        await PressAsync(page, "Copy");
        await page.Page.WaitForExpressionAsync(SetUps + " === 'A,B*'", new() { Timeout = 20_000 });
        Assert.Equal("", await TextAsync(page, Moved));
        await PressAsync(page, "A");
        await page.Page.WaitForExpressionAsync(Moved + " === '22'", new() { Timeout = 20_000 });
        await WatchSavingAsync(page);
        await ClickAsync(page, "#live-save");
        await page.Page.WaitForExpressionAsync("saved.length === 1", new() { Timeout = 20_000 });
        UnitsNet.Pressure saved = VehicleFile.Read(await TextAsync(page, "saved[0].blob.text()"), "saved").Vehicle.Hydraulics
            .RearProportioningValve!.Knee;
        Assert.Equal(22, saved.Bars, 0.01);
        await PressAsync(page, "Remove");
        await page.Page.WaitForExpressionAsync(SetUps + " === 'B*'", new() { Timeout = 20_000 });
        await ClickAsync(page, "#live-undo");
        await page.Page.WaitForExpressionAsync(SetUps + " === 'A*,B' && " + Moved + " === '22'", new() { Timeout = 20_000 });
        await page.Page.ReloadAsync();
        await LiveAsync(page);
        await ClickAsync(page, "[data-tab=measure]");
        await page.Page.WaitForExpressionAsync("document.querySelector('#log-stops').value === 'half a log'", new() { Timeout = 20_000 });
        await ClickAsync(page, "#live-fit");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#live-status').innerText.startsWith('Nothing was fitted')", new() { Timeout = 60_000 });
        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData("hydraulics.rearValves", "[data-field='hydraulics.rearValves[1].type'] .bb-wrong", "is missing")]
    [InlineData("front.heat.frictionPoints", "[data-part='front.heat.frictionPoints'] > .bb-wrong", "at least 2")]
    [InlineData("loadCases", "[data-field='loadCases[3].name'] .bb-wrong", "is missing")]
    public async Task What_a_part_lacks_that_was_just_added_is_said_at_the_part(string part, string place, string said)
    {
        await using WatchedPage page = await OpenAsync(HtmlOf(Coupe), 390);
        await ClickAsync(page, "[data-tab=car]");
        await ClickAsync(page, $"[data-how=add][data-at='{part}']");
        await page.Page.WaitForFunctionAsync("(place, said) => document.querySelector(place)?.textContent.includes(said)",
            new() { Timeout = 60_000 }, place, said);
        Assert.Equal("", await TextAsync(page, "document.querySelector('#live-loose').textContent"));
        Assert.Equal("true", await TextAsync(page,
            $"String(!!document.querySelector(\"{place}\").closest('.bb-part').querySelector('.bb-badge'))"));
        await page.AssertAccessibleAsync();
        await ClickAsync(page, "#live-undo");
        await page.Page.WaitForExpressionAsync("!document.querySelector('#live-form .bb-of-part, #live-form .bb-badge')",
            new() { Timeout = 60_000 });
        page.AssertQuiet();
    }

    private static Task PressAsync(WatchedPage page, string name) => page.Page.EvaluateFunctionAsync(
        "name => [...document.querySelectorAll('#live-setups button')].find(one => one.innerText.startsWith(name)).click()", name);

    private static Task<string> FieldAsync(WatchedPage page, string path) =>
        TextAsync(page, $"document.querySelector('#live-form [data-path=\"{path}\"]').value");

    private static Task TypeAsync(WatchedPage page, string path, string value) => page.Page.EvaluateFunctionAsync(
        """
        (path, value) => {
          const field = document.querySelector(`#live-form [data-path="${path}"]`);
          field.value = value;
          for (const kind of ["input", "change"]) field.dispatchEvent(new Event(kind, { bubbles: true }));
        }
        """, path, value);

    private static async Task SetAsync(WatchedPage page, string path, string value)
    {
        await TypeAsync(page, path, value);
        await page.Page.WaitForFunctionAsync("value => (localStorage.getItem('bb-cars') || '').includes(value)",
            new() { Timeout = 20_000 }, value);
    }

    private static Dictionary<string, string> Logs() => new[] { "gauges", "stops" }
        .ToDictionary(kind => kind, kind => File.ReadAllText(RepositoryRoot.File($"data/logs/invented-{kind}.csv")));

    private static JsonNode Json(string text) => JsonNode.Parse(text, null, new()
    {
        CommentHandling = JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
    })!;

    private Task<WatchedPage> OpenAsync(string html, int width) => OpenLiveAsync(browser, "state.html", html, width, 844);
}
