using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
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

public class StoryTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly Vehicle Coupe = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle;
    private static readonly Lazy<RenderedPage> Page =
        new(() => StoryPage.Render(Coupe, UnitSystem.Si, [new("Vehicle file", "coupe-1960s.json")]));

    private static readonly string[] Jargon =
        ["adhesion", "utilis", "braking rate", "efficiency", "slope", "lock-up", "line pressure", "load case", "gauge", "lateral", "torque",
            "coefficient", "[–]", "k =", "z ="];

    private static readonly string[] Screens =
        ["story-stop", "story-above", "story-split", "story-straight", "story-knee", "story-metering", "story-all"];

    public static TheoryData<string> EveryCar =>
        [.. Directory.GetFiles(RepositoryRoot.File("data/vehicles"), "*.json").Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void What_there_is_to_try_answers_as_the_car_does(string file)
    {
        Vehicle car = VehicleFile.Load(file).Vehicle;
        var setting = Setting.Of(car);
        (string Task, string Answer)[] trials = [.. new BalanceTrials(setting, UnitSystem.Si).All];
        Assert.Equal(4, trials.Length);
        (IReadOnlyList<Pressure> knees, int start) = KneeStory.Knees(setting, UnitSystem.Si);
        double slope = KneeStory.SlopesOf(setting) is var (slopes, own) ? slopes[own] : 0;
        LoadCase heavy = car.LoadCases.MaxBy(load => load.Mass)!;
        LockUp now = Lock(knees[start], slope, 0.9), careful = Lock(knees[0], 0, 0.9), ice = Lock(knees[start], slope, 0.3);
        LockUp laden = Lock(knees[start], slope, 0.9, heavy);
        Assert.Equal($"on a dry road {Words(Lock(knees[start], 1, 0.9))}. With the valve as at the start {Words(now)}.", trials[0].Answer);
        Assert.Equal($"set the lowest knee and let nothing more through. Now {Words(careful)}, with {careful.Efficiency:0 %} of the road's "
            + $"grip used; at the start it was {now.Efficiency:0 %}."
            + (careful.At.BrakingRate < now.At.BrakingRate ? " The car cannot brake as hard before a wheel slides." : ""),
            trials[1].Answer.Replace('\u00a0', ' '));
        double held = (ice.At.MasterPressure.Bars * car.Hydraulics.Split.RearToFrontPressureRatio) - ice.At.LinePressures.Rear.Bars;
        Assert.StartsWith(Words(ice) + ". There the valve holds " + (held > 1e-4 ? "" : "nothing back: the pressure is below the knee."),
            trials[2].Answer, StringComparison.Ordinal);
        Assert.True(held < 1e-4 || Math.Abs(held - double.Parse(Regex.Match(trials[2].Answer, @"holds ([\d.]+) bar back").Groups[1].Value,
            CultureInfo.InvariantCulture)) < 0.26);
        Assert.Equal($"{Words(laden)}, with {laden.Efficiency:0 %} of the grip used; without the load it was {now.Efficiency:0 %}. "
            + "The valve knows nothing of the load.", trials[3].Answer.Replace('\u00a0', ' '));

        LockUp Lock(Pressure knee, double slope, double adhesion, LoadCase? load = null) =>
            new BalanceModel(car.WithRearKnee(knee, slope), load ?? car.LoadCases[0]).FirstLockUp(adhesion)!;

        static string Words(LockUp lockUp)
        {
            string first = lockUp.First is { } axle
                ? $"the {(axle == Axle.Front ? "front" : "rear")} wheels lock first" : "all wheels lock together";
            return string.Create(CultureInfo.InvariantCulture, $"{first}, at {lockUp.At.BrakingRate:0.00} g");
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

    [Theory]
    [InlineData("coupe-1960s", true)]
    [InlineData("track-coupe", false)]
    public void A_metering_valve_is_explained_where_it_appears_and_nowhere_without_one(string name, bool has)
    {
        string html = StoryPage.Render(VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{name}.json")).Vehicle, UnitSystem.Si, []).Html;
        string words = Regex.Replace(Regex.Replace(html, "(?s)<(script|style).*?</\\1>", ""), "<[^>]+>", " ");
        Assert.Equal(has, words.Contains("metering valve", StringComparison.Ordinal));
        Assert.DoesNotContain("cell above", words, StringComparison.Ordinal);
        Assert.Contains("need scripts", words, StringComparison.Ordinal);
        Assert.Equal(has, html.Contains("id=\"story-metering\"", StringComparison.Ordinal));
        if (has)
        {
            int first = words.IndexOf("metering valve", StringComparison.Ordinal);
            Assert.Contains("a second valve, in the pipe to the front brakes: the metering valve", words[(first - 60)..(first + 20)],
                StringComparison.Ordinal);
            Assert.True(html.IndexOf("metering valve", html.IndexOf("<main", StringComparison.Ordinal), StringComparison.Ordinal)
                > html.IndexOf("id=\"story-knee\"", StringComparison.Ordinal));
        }
    }

    [SkippableTheory]
    [InlineData(1280, 900)]
    [InlineData(390, 844)]
    public async Task Each_screen_has_its_picture_and_its_first_control_in_sight_together_and_moves_both_picture_and_sentence(
        int width, int height)
    {
        await using WatchedPage page = await browser.OpenAsync(Write(), width, height, reducedMotion: true);
        await page.Page.WaitForSelectorAsync("html[data-live]", new() { Timeout = 60_000 });
        await page.AssertNoSidewaysScrollAsync();
        Assert.Equal(Screens, await page.Page.EvaluateExpressionAsync<string[]>(
            "[...document.querySelectorAll('.bb-explorable')].map(one => one.id)"));
        foreach (string screen in Screens)
        {
            double[] places = await page.Page.EvaluateFunctionAsync<double[]>(
                """
                async id => {
                  document.documentElement.style.scrollBehavior = "auto";
                  const box = one => one.getBoundingClientRect(), root = document.getElementById(id);
                  const drawing = [...root.querySelectorAll("svg")].find(one => one.clientHeight > 0);
                  // Under the bar at the top, as a reader scrolls; what stands above the picture may be out of sight.
                  scrollTo(0, scrollY + box(drawing).top - box(document.querySelector(".bb-top")).bottom - 60);
                  await new Promise(requestAnimationFrame);
                  const control = root.querySelector(".bb-control"), form = box(control.closest("form")), seen = box(drawing);
                  const below = form.top > seen.top + 40 && form.left < seen.right;
                  const end = below ? Math.min(form.top, innerHeight) : innerHeight;
                  return [box(control).top, box(control).bottom, seen.top, end, seen.bottom];
                }
                """, screen);
            Assert.InRange(places[0], 0, height);
            Assert.InRange(places[1], 0, height);
            Assert.InRange(places[2], 0, height);
            Assert.True(places[4] <= places[3] + 1, $"{screen} at {width}: the picture ends at {places[4]}, in sight to {places[3]}.");
            string before = await StateAsync(), control = $"#{screen} .bb-control :is(input, select)";
            await page.Page.FocusAsync(control);
            await page.Page.Keyboard.PressAsync(await page.Page.EvaluateExpressionAsync<bool>(
                $"document.querySelector('{control}').matches('select')") ? "ArrowUp" : "Home");
            await page.Page.WaitForExpressionAsync($"document.getElementById('{screen}').dataset.moved", new() { Timeout = 60_000 });
            string[] parts = before.Split('\n'), after = (await StateAsync()).Split('\n');
            Assert.All(parts.Zip(after), pair => Assert.NotEqual(pair.First, pair.Second));

            Task<string> StateAsync() => page.Page.EvaluateExpressionAsync<string>(
                $$"""
                (root => [root.querySelector(".bb-title").textContent, root.querySelector(".bb-shown .bb-verdict").textContent,
                  [...root.querySelectorAll("svg")].find(one => one.clientHeight > 0).querySelector("[id$=-layers]").textContent.length
                    + [...root.querySelectorAll("svg")].find(one => one.clientHeight > 0).innerHTML.replaceAll("\n", "")].join("\n"))
                (document.getElementById("{{screen}}"))
                """);
        }

        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData(390, false)]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task It_opens_with_a_car_that_moves_by_itself_unless_less_motion_is_wanted(int width, bool reduced)
    {
        await using WatchedPage page = await browser.OpenAsync(Write(), width, width == 390 ? 844 : 900, reducedMotion: reduced);
        double[] edges = await page.Page.EvaluateExpressionAsync<double[]>(
            "[...document.querySelectorAll('#story-stop svg')].filter(one => one.clientHeight > 0).map(one => one.getBoundingClientRect())"
                + ".concat([document.querySelector('#story-stop .bb-control').getBoundingClientRect()]).map(one => one.bottom)");
        Assert.All(edges, edge => Assert.InRange(edge, 1, width == 390 ? 844 : 900));
        Assert.True(width > 390 || edges[0] < edges[1] - 80, $"The picture ends at {edges[0]}, the control at {edges[1]}.");
        await page.Page.WaitForSelectorAsync("html[data-live]", new() { Timeout = 60_000 });
        const string Moved = "Number(document.getElementById('story-stop').dataset.moved || 0)";
        if (reduced)
        {
            await Task.Delay(1500);
            Assert.Equal(0, await page.Page.EvaluateExpressionAsync<int>(Moved));
            return;
        }

        // Waiting and pressing are one step: on a busy machine the car may have come to its end between the two, and starts again.
        await page.Page.WaitForExpressionAsync($"{Moved} >= 5 && document.querySelector('#story-stop button').textContent === 'Pause'"
            + $" && (document.querySelector('#story-stop button').click(), window.at = {Moved}, true)", new() { Timeout = 60_000 });
        int now = await page.Page.EvaluateExpressionAsync<int>("window.at");
        await Task.Delay(1500);
        Assert.InRange(await page.Page.EvaluateExpressionAsync<int>(Moved), now, now + 1);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Paper_shows_the_state_of_the_screen()
    {
        await using WatchedPage page = await browser.OpenAsync(Write());
        await page.Page.FocusAsync("#story-all-slope");
        await page.Page.Keyboard.PressAsync("End");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#story-all .bb-state').textContent.includes('all of it')", new() { Timeout = 60_000 });
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.True(await page.Page.EvaluateExpressionAsync<bool>(
            "document.querySelector('#story-all-valve .bb-static').offsetHeight > 100"));
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
