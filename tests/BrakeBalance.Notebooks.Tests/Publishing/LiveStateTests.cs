using System.Text.Json.Nodes;
using BrakeBalance.Charts;
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

    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));

    private static readonly string Measured = Coupe.Replace(
        "// \"measurements\": { \"gauges\": \"../logs/invented-gauges.csv\", \"stops\": \"../logs/invented-stops.csv\"",
        "\"measurements\": { \"gauges\": \"gauges.csv\", \"stops\": \"stops.csv\"", StringComparison.Ordinal);

    [SkippableFact]
    public async Task Whatever_is_typed_while_logs_are_fitted_is_kept_in_its_set_up_and_the_head_says_that_it_is_of_an_earlier_state()
    {
        await using WatchedPage page = await OpenAsync(LivePage.Render(Coupe).Html, 390);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second === 'yes'", new() { Timeout = 120_000 });
        await page.Page.EvaluateFunctionAsync(
            """
            logs => {
              for (const [kind, text] of Object.entries(logs)) document.querySelector("#log-" + kind).value = text;
              document.querySelector("#live-fit").click();
            }
            """, Logs());
        string before = await TextAsync(page, Said);
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
            await page.Page.EvaluateFunctionAsync(
                """
                (path, value) => {
                  const field = document.querySelector(`#live-form [data-path="${path}"]`);
                  field.value = value;
                  for (const kind of ["input", "change"]) field.dispatchEvent(new Event(kind, { bubbles: true }));
                }
                """, path, value);
        }

        await page.Page.WaitForExpressionAsync(IsEarlier, new() { Timeout = 20_000 });
        Assert.Contains("from before the change", await TextAsync(page, "document.querySelector('#live-bar').innerText"),
            StringComparison.Ordinal);
        Assert.Equal(before, await TextAsync(page, Said));
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
        await using WatchedPage page = await OpenAsync(LivePage.Render(Coupe).Html, 1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second === 'yes'", new() { Timeout = 120_000 });
        string before = await TextAsync(page, Said);
        await ClickAsync(page, "[data-tab=measure]");
        await page.Page.EvaluateFunctionAsync(
            "logs => { document.querySelector('#log-stops').value = logs.stops; document.querySelector('#live-fit').click(); }", Logs());
        await page.Page.WaitForExpressionAsync(IsEarlier, new() { Timeout = 20_000 });
        await ClickAsync(page, "#live-cancel");
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
        await using WatchedPage page = await OpenAsync(LivePage.Render(Coupe).Html, 1280);
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

        await page.Page.EvaluateFunctionAsync(
            "text => { document.querySelector('#live-text').value = text; document.querySelector('#live-paste').click(); }", Measured);
        await page.Page.WaitForExpressionAsync(Said + ".includes('gauges.csv and stops.csv: not read here')", new() { Timeout = 60_000 });
        Assert.Contains(Line(plain), Line(await TextAsync(page, Said)), StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    private static Dictionary<string, string> Logs() => new[] { "gauges", "stops" }
        .ToDictionary(kind => kind, kind => File.ReadAllText(RepositoryRoot.File($"data/logs/invented-{kind}.csv")));

    private static JsonNode Json(string text) => JsonNode.Parse(text, null, new()
    {
        CommentHandling = System.Text.Json.JsonCommentHandling.Skip,
        AllowTrailingCommas = true,
    })!;

    private Task<WatchedPage> OpenAsync(string html, int width) => OpenLiveAsync(browser, "state.html", html, width, 844);
}
