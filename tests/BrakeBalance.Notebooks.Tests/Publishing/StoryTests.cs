using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using PuppeteerSharp.Media;
using UnitsNet;

namespace BrakeBalance.Notebooks.Tests.Publishing;

[Collection(BrowserTests.Name)]
public class StoryTests(BrowserFixture browser)
{
    private static readonly Vehicle Coupe = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle;
    private static readonly Lazy<Setting> Answer = new(() => Setting.Of(Coupe));
    private static readonly Lazy<RenderedPage> Page =
        new(() => StoryPage.Render(Coupe, UnitSystem.Si, [new("Vehicle file", "coupe-1960s.json")]));

    private static readonly string[] Jargon =
        ["adhesion", "utilis", "braking rate", "efficiency", "slope", "lock-up", "line pressure", "load case", "gauge", "lateral", "torque",
            "coefficient", "[–]", "k =", "z ="];

    [Fact]
    public void Four_controls_and_every_state_agrees_with_the_calculation()
    {
        Explorable story = KneeStory.Of(Answer.Value, UnitSystem.Si);
        Assert.Equal(4, story.Controls.Count);
        int[] sizes = [.. story.Controls.Select(control => control.Settings.Count)];
        foreach (int index in Enumerable.Range(0, sizes.Aggregate(1, (a, b) => a * b)).Where(i => i % 7 == 0))
        {
            int rest = index;
            int[] at = new int[4];
            for (int c = 3; c >= 0; c--)
            {
                (rest, at[c]) = Math.DivRem(rest, sizes[c]);
            }

            Frame frame = story.At(at);
            Pressure knee = KneeStory.Knees(Answer.Value, UnitSystem.Si).Knees[at[0]];
            Assert.Equal(knee.Bars, double.Parse(story.Controls[0].Settings[at[0]].Split('\u00a0')[0],
                CultureInfo.InvariantCulture), 0.051);
            Assert.True(Coupe.Hydraulics.RearProportioningValve!.Adjustment!.TurnsFor(knee)
                is not null, "The story offers only what the adjuster reaches.");
            LockUp? expected = new BalanceModel(Coupe.WithRearKnee(knee, KneeStory.Slopes[at[1]]), Coupe.LoadCases[at[2]])
                .FirstLockUp(KneeStory.Roads[at[3]].Adhesion);
            Assert.Equal(expected is null
                ? "–" : expected.At.BrakingRate.ToString("0.00", CultureInfo.InvariantCulture)
                + " g", frame.Readouts[1].Value);
            Assert.Equal(expected?.First == Axle.Rear, frame.Readouts[0].Value == "rear wheels");
        }
    }

    [Fact]
    public void The_page_is_one_file_says_who_works_it_out_and_speaks_plainly()
    {
        string html = Page.Value.Html;
        Assert.Contains("The page itself works out every position of the controls", html, StringComparison.Ordinal);
        Assert.DoesNotContain(" src=\"", Regex.Replace(html, "(?s)<script.*?</script>", ""), StringComparison.Ordinal);
        string words = Regex.Replace(Regex.Replace(Regex.Replace(html, "(?s)<(script|style).*?</\\1>", ""), "<[^>]+>", " "), @"\s+", " ");
        Assert.All(Jargon, word => Assert.DoesNotContain(word, words, StringComparison.OrdinalIgnoreCase));
        Assert.Contains("invented", words, StringComparison.Ordinal);
        Assert.InRange(html.Length, 100_000, 5_000_000);
    }

    [Fact]
    public async Task The_command_writes_it_for_any_car_and_the_index_links_it()
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) =
            await Shell.RunAsync("story", RepositoryRoot.File("data/vehicles/track-coupe.json"), "--units", "us", "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("Invented track coupe", File.ReadAllText(folder.File(StoryPage.FileName)), StringComparison.Ordinal);
        Site.Write([], folder.Path, new SiteOptions { Stories = [Page.Value] });
        Assert.Contains($"href=\"{StoryPage.FileName}\"", File.ReadAllText(folder.File("index.html")), StringComparison.Ordinal);
        Assert.Equal(2, (await Shell.RunAsync("story", folder.File("none.json"), "--output", folder.Path)).Code);
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task It_opens_offline_fits_and_moves_by_keyboard(int width)
    {
        await using WatchedPage page = await browser.OpenAsync(Write(), width);
        await page.Page.WaitForSelectorAsync("#story-valve", new() { Timeout = 30_000 });
        await page.AssertNoSidewaysScrollAsync();
        const string Verdict = "document.querySelector('.bb-shown .bb-verdict').textContent";
        string before = await page.Page.EvaluateExpressionAsync<string>(Verdict);
        await page.Page.FocusAsync("#story-slope");
        await page.Page.Keyboard.PressAsync("End");
        await page.Page.WaitForExpressionAsync($"{Verdict} !== {System.Text.Json.JsonSerializer.Serialize(before)}",
            new() { Timeout = 60_000 });
        Assert.StartsWith("The front wheels lock first", before, StringComparison.Ordinal);
        Assert.StartsWith("Danger: the rear wheels lock first", await page.Page.EvaluateExpressionAsync<string>(Verdict),
            StringComparison.Ordinal);
        Assert.Equal("all of it (no valve)",
            await page.Page.EvaluateExpressionAsync<string>("document.querySelector('#story-slope').getAttribute('aria-valuetext')"));
        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData(1280, 900)]
    [InlineData(390, 844)]
    public async Task The_slider_stays_in_reach_of_every_picture(int width, int height)
    {
        await using WatchedPage page = await browser.OpenAsync(Write(), width, height);
        await page.Page.WaitForSelectorAsync(".bb-controls:not([hidden])", new() { Timeout = 30_000 });
        double[][] places = await page.Page.EvaluateExpressionAsync<double[][]>(
            """
            (async () => {
              document.documentElement.style.scrollBehavior = "auto";
              const places = [], knee = document.querySelector("#story-knee"), box = one => one.getBoundingClientRect();
              for (const drawing of [...document.querySelectorAll(".bb-explorable svg")].filter(one => one.clientHeight > 0)) {
                drawing.scrollIntoView({ block: "center" });
                await new Promise(requestAnimationFrame);
                const slider = box(knee), form = box(knee.form), top = box(document.querySelector(".bb-top")), seen = box(drawing);
                const from = form.top < innerHeight / 2 ? Math.max(top.bottom, form.bottom) : top.bottom;
                const to = form.top < innerHeight / 2 ? innerHeight : form.top;
                places.push([slider.top, slider.bottom, (Math.min(seen.bottom, to) - Math.max(seen.top, from)) / seen.height]);
              }
              return places;
            })()
            """);
        Assert.Equal(3, places.Length);
        Assert.All(places, place =>
        {
            Assert.InRange(place[0], 0, height);
            Assert.InRange(place[1], 0, height);
            Assert.InRange(place[2], 0.95, 1.0001);
        });
    }

    [SkippableFact]
    public async Task Paper_shows_the_state_of_the_screen()
    {
        await using WatchedPage page = await browser.OpenAsync(Write());
        await page.Page.FocusAsync("#story-slope");
        await page.Page.Keyboard.PressAsync("End");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#story .bb-state').textContent.includes('all of it')", new() { Timeout = 60_000 });
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.True(await page.Page.EvaluateExpressionAsync<bool>(
            "document.querySelector('#story-valve .bb-static').offsetHeight > 100"));
        Assert.InRange(PdfFacts.Of(await page.PrintAsync(PaperFormat.A4)).Pages, 2, 8);
        page.AssertQuiet();
    }

    private string Write()
    {
        string file = Path.Combine(browser.Folder, StoryPage.FileName);
        AtomicFile.Write(file, Page.Value.Html);
        return file;
    }
}
