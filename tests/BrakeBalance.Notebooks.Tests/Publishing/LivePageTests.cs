using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Bench.Files;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Live;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Tests.Vehicles;
using Xunit.Abstractions;
using static BrakeBalance.Notebooks.Tests.Publishing.LiveDriving;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class LivePageTests(BrowserFixture browser, ITestOutputHelper output) : IClassFixture<BrowserFixture>
{
    private const string Bar = "document.querySelector('#live-bar').innerText";

    private const string SomeTargets = """{ "pedalForceFull": "310 N", "rearMargin": 0.15 }""";

    private const string Knees = "hydraulics.rearValves[0].knee = 15 bar .. 21 bar step 3 bar";

    private const string SomeParts =
        $"""
        part,name,sets,price [money],mass [kg],rating [bar]
        master cylinder,invented tandem,masterCylinder.bore = inch series 1 in .. 1-1/16 in,95,1.9,170
        pedal,drilled pedal,pedal.ratio = 4.5 .. 5 step 0.5,40,1.1,
        front pads,invented fast road pad,front.brake.friction = 0.42,70,1.2,
        rear valve,invented one with bypass,"hydraulics.rearValves[0].bypassWhenFrontLost = true; {Knees}",110,0.6,170

        """;

    private static readonly string CoupeFile = RepositoryRoot.File("data/vehicles/coupe-1960s.json");
    private static readonly Lazy<string> Html = new(() => HtmlOf(File.ReadAllText(CoupeFile)));

    [Fact]
    public void It_is_one_file_of_at_most_5_MB_that_lets_only_its_own_scripts_run()
    {
        Assert.InRange(System.Text.Encoding.UTF8.GetByteCount(Html.Value), 1_000_000, 5_000_000);
        string policy = Html.Value.Split("Content-Security-Policy\" content=\"")[1].Split('"')[0];
        Assert.DoesNotContain("unsafe-inline", policy.Split("style-src")[0], StringComparison.Ordinal);
        Assert.Contains("wasm-unsafe-eval", policy, StringComparison.Ordinal);
        Assert.DoesNotContain("unsafe-eval'", policy.Replace("wasm-unsafe-eval'", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_command_writes_it_for_any_car_and_refuses_a_file_with_problems()
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync("your-car", CoupeFile, "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        Assert.True(File.Exists(folder.File(LivePage.FileName)));
        File.WriteAllText(folder.File("bad.json"), "{ }");
        Assert.Equal(2, (await Shell.RunAsync("your-car", folder.File("bad.json"), "--output", folder.Path, "--force")).Code);
    }

    [SkippableFact]
    public async Task It_opens_in_the_units_it_was_written_in_until_its_reader_chooses_others()
    {
        await using WatchedPage page = await OpenLiveAsync(browser, "us.html",
            LivePage.Render(File.ReadAllText(CoupeFile), system: BrakeBalance.Answers.UnitSystem.Us).Html, 390);
        Assert.Equal("us", await TextAsync(page, "document.querySelector('#live-units').value"));
        Assert.Contains("psi", await TextAsync(page, Bar), StringComparison.Ordinal);
        Assert.DoesNotContain("bar", await TextAsync(page, Bar), StringComparison.Ordinal);
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task It_answers_fits_and_moves_by_keyboard(int width)
    {
        await using WatchedPage page = await OpenAsync(width);
        var desk = new LiveDesk();
        string expected = Reply(desk, new() { ["do"] = "car", ["text"] = File.ReadAllText(CoupeFile) })["sentence"]!.ToString();
        string recommended = expected.Split("Recommended setting ")[1].Split(';')[0];
        Assert.Contains(recommended, await TextAsync(page, Bar), StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();

        await ClickAsync(page, "[data-tab=car]");
        await ClickAsync(page, "[data-part=hydraulics] > summary");
        await page.Page.EvaluateExpressionAsync("document.querySelector('[data-slide$=\".knee\"]').focus()");
        await page.Page.Keyboard.PressAsync("Enter");
        Assert.Equal("", await TextAsync(page, "document.querySelector('#live-dock').innerText"));
        await page.Page.Keyboard.PressAsync("Enter");
        await ClickAsync(page, "[data-tab=balance]");
        await page.Page.WaitForSelectorAsync("figure[data-figure=brake-forces] svg", new() { Timeout = 60_000 });
        string before = await TextAsync(page, "document.querySelector('figure[data-figure=brake-forces] svg').outerHTML");
        string answer = await TextAsync(page, Bar);
        await page.Page.FocusAsync("#live-dock input");
        await page.Page.Keyboard.PressAsync("PageUp");
        await page.Page.WaitForFunctionAsync(
            "was => document.querySelector('figure[data-figure=brake-forces] svg').outerHTML !== was", new() { Timeout = 60_000 }, before);
        await page.Page.WaitForFunctionAsync($"was => {Bar} !== was", new() { Timeout = 60_000 }, answer);
        Assert.Equal("INPUT", await TextAsync(page, "document.activeElement.tagName"));
        await page.AssertNoSidewaysScrollAsync();
        foreach (string tab in (string[])["pedal", "measure", "compare", "choose", "paper", "car", "balance"])
        {
            await ClickAsync(page, $"[data-tab={tab}]");
            await page.Page.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(one => { one.open = true; })");
            await page.AssertNoSidewaysScrollAsync();
            await page.AssertAccessibleAsync();
        }

        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData("coupe-1960s", 1280, 900)]
    [InlineData("coupe-1960s", 390, 844)]
    [InlineData("track-coupe", 1280, 900)]
    [InlineData("track-coupe", 390, 844)]
    public async Task It_opens_with_its_finding_its_picture_and_the_adjusters_slider(string car, int width, int height)
    {
        const string Seen =
            """
            (() => {
              const faults = [], shown = element => element.checkVisibility() && element.getBoundingClientRect().height > 10;
              const box = selector => {
                const found = [...document.querySelectorAll(selector)].find(shown)?.getBoundingClientRect();
                if (!found || found.top < 0 || found.bottom > innerHeight) faults.push(`${selector} at ${found?.top} to ${found?.bottom}`);
                return found || {};
              };
              const figure = "#live-balance figure:first-of-type ", dock = box("#live-dock"), drawing = box(figure + "svg");
              const title = box(figure + ".bb-title");
              if (title.bottom > drawing.top) faults.push("the finding stands below the picture");
              if (dock.top < drawing.bottom && dock.left < drawing.right) faults.push("the slider covers the picture");
              for (const one of ["#live-bar", "#live-own", "#live-dock input"]) box(one);
              return faults.join("; ");
            })()
            """;
        string html = HtmlOf(File.ReadAllText(RepositoryRoot.File($"data/vehicles/{car}.json")));
        await using WatchedPage page = await OpenLiveAsync(browser, "first.html", html, width, height);
        Assert.Equal("", await TextAsync(page, Seen));
        Assert.EndsWith(".\nEnter your own: Car", await TextAsync(page, "document.querySelector('#live-whose').innerText"),
            StringComparison.Ordinal);
        // The marks on the track are the signs of the words under it.
        foreach (string place in (string[])[".bb-ticks i", "small i"])
        {
            Assert.Equal("bb-tick-safe ▲,bb-tick-recommended ●", await TextAsync(page,
                $"[...document.querySelectorAll('#live-dock {place}')].map(one => one.className + ' ' + "
                    + "JSON.parse(getComputedStyle(one, '::after').content)).join()"));
        }

        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();

        // Where nothing follows it while it moves, it covers nothing.
        foreach ((string tab, string held) in new[] { ("choose", "static"), ("paper", "static"), ("pedal", "sticky") })
        {
            await ClickAsync(page, $"[data-tab={tab}]");
            Assert.Equal(width < 1088 ? held : "sticky",
                await TextAsync(page, "getComputedStyle(document.querySelector('#live-dock')).position"));
        }

        await ClickAsync(page, "[data-tab=balance]");
        await ClickAsync(page, "#live-own");
        Assert.Equal("car", await TextAsync(page, "document.querySelector('#live-tabs [aria-current=true]').dataset.tab"));
        await ClickAsync(page, "[data-slide][aria-pressed=true]");
        await ClickAsync(page, "[data-tab=balance]");
        await page.Page.WaitForExpressionAsync("!('stale' in document.querySelector('#live-balance figure').dataset)",
            new() { Timeout = 60_000 });
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('#live-dock').hidden)"));

        // What was worked out when the page was written stands there before anything can be worked out in it.
        await page.Page.EvaluateExpressionOnNewDocumentAsync(
            "globalThis.Worker = class { postMessage() {} addEventListener() {} terminate() {} };");
        await page.Page.ReloadAsync();
        await page.Page.WaitForSelectorAsync("#live-balance figure svg", new() { Timeout = 60_000 });
        Assert.Equal("", await TextAsync(page, Seen));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_bars_share_stands_beside_its_slider_as_in_the_answer()
    {
        string html = HtmlOf(File.ReadAllText(RepositoryRoot.File("data/vehicles/track-coupe.json")));
        await using WatchedPage page = await OpenLiveAsync(browser, "share.html", html, 1280, 900);
        await page.Page.WaitForSelectorAsync("#live-dock input", new() { Timeout = 60_000 });
        // Halves of the last digit: the slider's number and the file's would round apart.
        foreach (string share in new[] { "0.7525", "0.6635", "0.5745" })
        {
            await page.Page.EvaluateFunctionAsync(
                "to => { const track = document.querySelector('#live-dock input'); track.value = to; "
                    + "track.dispatchEvent(new Event('input')); }", share);
            await page.Page.WaitForExpressionAsync(
                "document.querySelector('#live-bar').innerText.includes(document.querySelector('#live-dock output').innerText + ' front')",
                new() { Timeout = 60_000 });
        }
    }

    [SkippableFact]
    public async Task A_car_that_lacks_entries_opens_on_its_form_and_ones_own_is_nobodys_invented_car()
    {
        const string Tab = "document.querySelector('#live-tabs [aria-current=true]').dataset.tab";
        await using WatchedPage page = await OpenLiveAsync(browser, "lacks.html", LivePage.Render("{ \"name\": \"Mine\" }").Html, 390);
        Assert.Equal("car", await TextAsync(page, Tab));
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('#live-dock').hidden)"));
        await page.Page.EvaluateFunctionAsync(
            "text => { document.querySelector('#live-text').value = text; document.querySelector('#live-paste').click(); }",
            File.ReadAllText(CoupeFile));
        await page.Page.WaitForExpressionAsync("document.title.includes('1960s coupe')", new() { Timeout = 60_000 });
        Assert.Equal("car", await TextAsync(page, Tab));
        await ClickAsync(page, "[data-tab=balance]");
        await page.Page.WaitForSelectorAsync("#live-dock .bb-ticks i", new() { Timeout = 60_000 });
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('#live-whose').hidden)"));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task On_a_phone_answer_and_sliders_leave_room_and_what_has_the_focus_is_clear_of_them()
    {
        await using WatchedPage page = await LiveDriving.OpenLiveAsync(browser, "room.html", Html.Value, 390, 844);
        await ClickAsync(page, "[data-tab=car]");
        await page.Page.EvaluateExpressionAsync(
            "[...document.querySelectorAll('[data-slide$=\"].mass\"], [data-slide=wheelbase]')]"
                + ".forEach(button => button.click())");
        await page.Page.WaitForExpressionAsync("document.querySelectorAll('.bb-slider').length > 3", new() { Timeout = 60_000 });
        Assert.Contains("Load case 2, two up: mass", await TextAsync(page,
            "[...document.querySelectorAll('.bb-slider label')].map(label => label.textContent).join()"), StringComparison.Ordinal);
        double[] heights = await page.Page.EvaluateExpressionAsync<double[]>(
            "[document.querySelector('#live-bar').offsetHeight, document.querySelector('#live-dock').offsetHeight]");
        Assert.InRange(heights[0], 50, 844 / 4);
        Assert.InRange(heights[1], 50, (0.35 * 844) + 1);
        await page.Page.EvaluateExpressionAsync("document.documentElement.style.scrollBehavior = 'auto'; "
            + "document.querySelectorAll('.bb-part').forEach(part => part.open = true); [...document.querySelectorAll('#live-form input')]"
            + ".at(-1).focus()");
        for (int i = 0; i < 40; i++)
        {
            await page.Page.Keyboard.DownAsync("Shift");
            await page.Page.Keyboard.PressAsync("Tab");
            await page.Page.Keyboard.UpAsync("Shift");
            Assert.Equal("", await TextAsync(page,
                """
                (() => {
                  const box = element => element.getBoundingClientRect(), one = document.activeElement, at = box(one);
                  return !one.closest("#live-panels") || at.top >= box(document.querySelector("#live-bar")).bottom - 1
                    && at.bottom <= box(document.querySelector("#live-dock")).top + 1 ? "" : one.id + one.textContent.slice(0, 30);
                })()
                """));
        }
    }

    [SkippableFact]
    public async Task Whatever_moved_meanwhile_every_figure_is_of_the_state_that_the_page_rests_in()
    {
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second !== undefined", new() { Timeout = 60_000 });
        const string Figures = "[...document.querySelectorAll('#live-balance figure')].filter(figure => !figure.hidden)";
        for (int round = 0; round < 3; round++)
        {
            await page.Page.EvaluateFunctionAsync(
                """
                async () => {
                  const wait = time => new Promise(resolve => setTimeout(resolve, time));
                  const range = document.querySelector("#live-dock input"), low = Number(range.min), reach = Number(range.max) - low;
                  for (const [share, time, figure] of [[0.3, 300, 2], [0.5, 60, 4], [0.7, 0, 2]]) {
                    range.value = low + share * reach;
                    range.dispatchEvent(new Event("input"));
                    await wait(time);
                    document.querySelectorAll("#live-balance figure")[figure].scrollIntoView();
                  }
                  const units = document.querySelector("#live-units");
                  for (const system of ["us", "si", "us", "si"]) {
                    units.value = system;
                    units.dispatchEvent(new Event("change"));
                    await wait(250);
                  }
                }
                """);
            await page.Page.WaitForExpressionAsync(
                $"(figures => new Set(figures.map(one => one.of)).size === 1 && figures[0].of.includes('units\":\"si') "
                    + $"&& figures.every(one => !('stale' in one.dataset)))({Figures})", new() { Timeout = 60_000 });
            Assert.Equal("", await TextAsync(page, Figures + ".map(one => one.textContent).filter(text => text.includes('psi')).join()"));
        }

        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Printed_by_the_browser_every_figure_of_a_part_is_there_and_no_empty_box()
    {
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second !== undefined", new() { Timeout = 60_000 });
        await ClickAsync(page, "[data-tab=balance]");
        await page.Page.WaitForExpressionAsync(
            "[...document.querySelectorAll('#live-balance figure')].every(figure => figure.hidden || figure.querySelector('svg'))",
            new() { Timeout = 120_000 });
        await page.Page.EmulateMediaTypeAsync(PuppeteerSharp.Media.MediaType.Print);
        foreach (string tab in (string[])["measure", "paper", "choose"])
        {
            await ClickAsync(page, $"[data-tab={tab}]");
            Assert.Equal("", await TextAsync(page,
                "[...document.querySelectorAll('textarea, input, select, iframe, .bb-field')].filter(one => one.offsetHeight > 0)"
                    + ".map(one => one.outerHTML).join()"));
        }
    }

    [SkippableFact]
    public async Task The_place_of_a_figure_says_that_it_is_being_drawn_until_it_is()
    {
        await using WatchedPage page = await OpenAsync(390);
        string[] empty = await page.Page.EvaluateExpressionAsync<string[]>(
            """
            (() => {
              document.querySelector("[data-tab=stops]").click();
              return [...document.querySelectorAll("#live-stops figure")].map(one =>
                getComputedStyle(one, "::before").content + one.ariaBusy + one.childElementCount);
            })()
            """);
        Assert.True(empty.Length > 3);
        Assert.All(empty, one => Assert.Equal("\"Drawing …\"true0", one));
        await page.Page.WaitForExpressionAsync(
            "[...document.querySelectorAll('#live-stops figure')].every(one => !one.ariaBusy && (one.hidden || one.childElementCount > 0))",
            new() { Timeout = 120_000 });
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task On_a_desk_the_sliders_stand_beside_the_picture()
    {
        await using WatchedPage page = await OpenAsync(1280);
        double[] edges = await page.Page.EvaluateExpressionAsync<double[]>(
            """
            (() => {
              const box = selector => document.querySelector(selector).getBoundingClientRect();
              const picture = box("figure[data-figure=brake-forces] svg"), dock = box("#live-dock");
              return [picture.right, dock.left, dock.top, dock.bottom];
            })()
            """);
        Assert.True(edges[0] <= edges[1], $"The sliders begin at {edges[1]:0}, the picture ends at {edges[0]:0}.");
        Assert.InRange(edges[2], 0, 300);
        Assert.InRange(edges[3], edges[2] + 50, 900);
    }

    [SkippableFact]
    public async Task A_page_written_for_another_car_opens_with_that_car_and_keeps_the_set_ups_of_before_beside_it()
    {
        const string Names =
            "[...document.querySelectorAll('#live-setups [aria-pressed]')].map(one => one.textContent + one.ariaPressed).join()";
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.EvaluateFunctionAsync(
            "text => localStorage.setItem('bb-cars', "
                + "JSON.stringify({ page: 'another', units: 'si', at: 0, cars: [{ name: 'A', text, logs: {} }] }))",
            File.ReadAllText(RepositoryRoot.File("data/vehicles/track-coupe.json")));
        await page.Page.ReloadAsync();
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.live !== undefined", new() { Timeout = 120_000 });
        Assert.Equal("Btrue,Afalse", await TextAsync(page, Names));
        Assert.Contains("1960s coupe", await TextAsync(page, "document.title"), StringComparison.Ordinal);
        Assert.Contains("written anew", await TextAsync(page, "document.querySelector('#live-status').innerText"),
            StringComparison.Ordinal);
        await ClickAsync(page, "#live-setups [aria-pressed=false]");
        await page.Page.WaitForExpressionAsync("document.title.includes('track coupe')", new() { Timeout = 60_000 });
        await page.Page.ReloadAsync();
        await page.Page.WaitForExpressionAsync("document.title.includes('track coupe')", new() { Timeout = 120_000 });
        Assert.Equal("Bfalse,Atrue", await TextAsync(page, Names));
        await page.Page.EvaluateExpressionAsync("localStorage.removeItem('bb-cars')");
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Two_hundred_random_cars_and_every_demo_car_get_the_numbers_of_the_program()
    {
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.WaitForExpressionAsync("globalThis.bbLive !== undefined", new() { Timeout = 60_000 });
        var desk = new LiveDesk();
        string[] cars = [.. OrdinaryCar.Measured(200),
            .. Directory.GetFiles(RepositoryRoot.File("data/vehicles"), "*.json").Select(File.ReadAllText)];
        Assert.InRange(cars.Length, 204, 220);
        List<string> differ = [];
        foreach (string text in cars)
        {
            var request = new JsonObject { ["do"] = "summary", ["text"] = text, ["draws"] = 1000 };
            string here = Reply(desk, request)["json"]!.ToString();
            string there = await page.Page.EvaluateFunctionAsync<string>(
                "async request => (await bbLive.ask('test', JSON.parse(request))).json", request.ToJsonString());
            if (Differences(JsonNode.Parse(here), JsonNode.Parse(there), "").Take(3).ToArray() is { Length: > 0 } found)
            {
                differ.Add(string.Join("; ", found));
            }
        }

        Assert.True(differ.Count == 0, $"{differ.Count} of {cars.Length} cars differ: {string.Join("\n", differ.Take(5))}");
    }

    [Fact]
    public async Task A_search_among_parts_gives_the_sets_and_numbers_of_the_program()
    {
        using var folder = new TemporaryFolder();
        string car = RepositoryRoot.File("data/vehicles/big-cam-saloon.json");
        folder.Write("parts.csv", SomeParts);
        folder.Write("targets.json", SomeTargets);
        (int code, string output, string error) = await Shell.RunAsync(
            "choose", car, "--parts", folder.File("parts.csv"), "--targets", folder.File("targets.json"), "--write", folder.File("sets"));
        Assert.True(code == 0, error);
        var desk = new LiveDesk();
        JsonObject asked = new()
        {
            ["do"] = "choose",
            ["text"] = File.ReadAllText(car),
            ["parts"] = SomeParts,
            ["targets"] = SomeTargets,
            ["some"] = 25,
        };
        List<long> done = [];
        JsonObject reply = Reply(desk, asked);
        for (; reply["html"] is null; reply = Reply(desk, asked))
        {
            done.Add(reply["done"]!.GetValue<long>());
            Assert.True(done.Count < 20, reply.ToJsonString());
        }

        Assert.Equal([25, 50, 72], done);
        string[] sets = [.. reply["sets"]!.AsArray().Select(set => set!.ToString())];
        Assert.Equal(Directory.GetFiles(folder.File("sets"), "*.json").Length, sets.Length);
        Assert.All(sets.Index(), set =>
            Assert.Equal(File.ReadAllText(folder.File(FormattableString.Invariant($"sets/set-{set.Index + 1}.json"))), set.Item));
        static string Words(string text) => string.Join(' ', text.Split([' ', '\n', '\u00a0'], StringSplitOptions.RemoveEmptyEntries));
        string html = Words(System.Net.WebUtility.HtmlDecode(reply["html"]!.ToString()));
        string answer = Words(output).Split("Answer ")[1].Split(" Conditions ")[0];
        Assert.Contains(answer, html, StringComparison.Ordinal);
        JsonNode numbers = JsonNode.Parse((await Shell.RunAsync("choose", car, "--parts", folder.File("parts.csv"),
            "--targets", folder.File("targets.json"), "--json")).Output)!;
        double force = numbers["sets"]![0]!["answers"]!["pedal_force_full"]!.GetValue<double>();
        Assert.Contains(FormattableString.Invariant($"{force:0} N"), html, StringComparison.Ordinal);
        Assert.Contains("competent person", html, StringComparison.Ordinal);
        asked["parts"] = "part,name,sets\nbore,a,masterCylinder.boar = 1 in\n";
        Assert.Contains("line 2", Reply(desk, asked)["problems"]!.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task With_ranges_the_sets_come_first_and_then_for_how_many_drawn_cars_each_holds_as_the_program_says()
    {
        using var folder = new TemporaryFolder();
        string car = File.ReadAllText(RepositoryRoot.File("data/vehicles/big-cam-saloon.json"))
            .Replace("\"ratio\": 4.1", "\"ratio\": \"3.9 .. 4.3\"", StringComparison.Ordinal);
        string file = folder.Write("car.json", car);
        string parts = folder.Write("parts.csv", "part,name,sets\npads,fast,front.brake.friction = 0.40\n");
        string targets = folder.Write("targets.json", """{ "failures": false, "pedalForceFull": "305 N", "pedalForceHalf": "155 N" }""");
        (int code, string output, string error) = await Shell.RunAsync("choose", file, "--parts", parts, "--targets", targets, "--json");
        Assert.True(code == 0, error);
        var desk = new LiveDesk();
        JsonObject asked = new()
        {
            ["do"] = "choose",
            ["text"] = car,
            ["parts"] = File.ReadAllText(parts),
            ["targets"] = File.ReadAllText(targets),
            ["some"] = 50,
        };
        Reply(desk, asked);
        JsonObject reply = Reply(desk, asked);
        Assert.DoesNotContain("Holds for", reply["html"]!.ToString(), StringComparison.Ordinal);
        Assert.Equal(0, reply["asked"]!.GetValue<int>());
        for (int i = 0; reply["cars"] is not null; i++)
        {
            Assert.True(i < 100);
            reply = Reply(desk, asked);
        }

        JsonNode holds = JsonNode.Parse(output)!["sets"]![0]!["holds_for_drawn_cars"]!;
        (int meet, int of) = (holds["meet"]!.GetValue<int>(), holds["of"]!.GetValue<int>());
        Assert.InRange(meet, 1, of - 1);
        Assert.Contains(FormattableString.Invariant($"{meet} of {of} cars of the file's ranges"),
            System.Net.WebUtility.HtmlDecode(reply["html"]!.ToString()), StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task Parts_are_searched_stopped_and_taken_as_a_set_up_in_the_page()
    {
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second === 'yes'", new() { Timeout = 60_000 });
        await ClickAsync(page, "[data-tab=choose]");
        await page.Page.WaitForExpressionAsync("document.querySelector('#t-pedalForceFull')", new() { Timeout = 60_000 });
        await ClickAsync(page, "#parts-begin");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#parts-text').value.includes('1960s coupe')", new() { Timeout = 60_000 });
        await ClickAsync(page, "#parts-go");
        await page.Page.WaitForExpressionAsync("document.querySelector('#live-status').innerText.includes(' combinations tried')",
            new() { Timeout = 120_000 });
        await ClickAsync(page, "#parts-stop");
        await page.Page.WaitForExpressionAsync("document.querySelector('#live-status').innerText === 'Stopped.'",
            new() { Timeout = 60_000 });
        await page.Page.EvaluateExpressionAsync(
            """
            (() => {
              const put = (id, value) => { const one = document.querySelector(id); one.value = value;
                one.dispatchEvent(new Event("change", { bubbles: true })); };
              put("#parts-text", "part,name,sets,price [money]\nratio,long lever,pedal.ratio = 5 .. 6 step 0.5,40\n");
              put("#t-pedalForceFull", "2000 N");
              put("#t-pedalForceHalf", "1000 N");
              put("#t-failures", "false");
            })()
            """);
        await ClickAsync(page, "#parts-go");
        await page.Page.WaitForExpressionAsync("document.querySelector('#parts-found').innerText.includes('4 combinations tried')",
            new() { Timeout = 120_000 });
        await page.AssertAccessibleAsync();
        await ClickAsync(page, "#parts-found .bb-row button:last-child");
        await page.Page.WaitForExpressionAsync("document.querySelectorAll('#live-setups [aria-pressed]').length === 2",
            new() { Timeout = 60_000 });
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Figures_are_saved_by_keyboard_as_the_program_writes_them()
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync(
            "figures", CoupeFile, "--figure", "brake-forces", "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        await using WatchedPage page = await OpenAsync(390, 844);
        await WatchSavingAsync(page);
        await ClickAsync(page, "[data-tab=balance]");
        await page.Page.WaitForSelectorAsync("[data-name=brake-forces]", new() { Timeout = 60_000 });
        async Task<string> SavedAsync(string kind)
        {
            string button = $"[data-name=brake-forces][data-save={kind}]";
            string label = await TextAsync(page, $"document.querySelector('{button}').ariaLabel");
            Assert.StartsWith(kind + ": ", label, StringComparison.Ordinal);
            await page.Page.FocusAsync(button);
            await page.Page.Keyboard.PressAsync("Enter");
            await page.Page.WaitForExpressionAsync("saved.length > 0", new() { Timeout = 60_000 });
            return await TextAsync(page, "saved[0].name");
        }

        Assert.Equal("invented-1960s-coupe-brake-forces-column-si.svg", await SavedAsync("SVG"));
        string svg = await TextAsync(page, "saved.shift().blob.text()");
        Assert.Equal(File.ReadAllText(folder.File("coupe-1960s-brake-forces-column-si.svg")), svg);
        Assert.Equal("svg", System.Xml.Linq.XDocument.Parse(svg).Root!.Name.LocalName);

        Assert.Equal("invented-1960s-coupe-brake-forces-si.csv", await SavedAsync("CSV"));
        Assert.Equal(File.ReadAllText(folder.File("coupe-1960s-brake-forces-si.csv")),
            await TextAsync(page, "saved.shift().blob.text()"));

        Assert.Equal("invented-1960s-coupe-brake-forces-column-si-2x.png", await SavedAsync("PNG"));
        double[] picture = await page.Page.EvaluateExpressionAsync<double[]>(
            """
            createImageBitmap(saved.shift().blob).then(image => {
              const canvas = new OffscreenCanvas(image.width, image.height), context = canvas.getContext("2d");
              context.drawImage(image, 0, 0);
              const { data } = context.getImageData(0, 0, image.width, image.height), corner = [...data.slice(0, 4)];
              let marks = 0;
              for (let i = 0; i < data.length; i += 4) if (data[i] + data[i + 1] + data[i + 2] < 700) marks++;
              return [image.width, image.height, ...corner, marks / (image.width * image.height)];
            })
            """);
        Assert.Equal([2400, 1600, 255, 255, 255, 255], picture[..6]);
        Assert.InRange(picture[6], 0.02, 0.6);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Card_and_bench_sheet_stand_in_frames_that_print_alone_and_are_saved_as_the_program_writes_them()
    {
        using var folder = new TemporaryFolder();
        string job = RepositoryRoot.File(BenchInput.Default);
        Assert.Equal(0, (await Shell.RunAsync("card", CoupeFile, "--paper", "half-letter", "--output", folder.Path)).Code);
        Assert.Equal(0, (await Shell.RunAsync("bench", job, "--sheet", folder.File("bench.html"))).Code);
        await using WatchedPage page = await OpenAsync(1280);
        await WatchSavingAsync(page);
        await ClickAsync(page, "[data-tab=paper]");
        await page.Page.WaitForExpressionAsync("document.querySelector('#card-sheet').contentDocument?.querySelector('.own')",
            new() { Timeout = 60_000 });
        Assert.Equal("true", await TextAsync(page, "String(document.querySelector('[data-print=bench]').disabled)"));
        await page.Page.SelectAsync("#card-paper", "half-letter");
        await page.Page.WaitForExpressionAsync("document.querySelector('#card-sheet').dataset.name.includes('half-letter')",
            new() { Timeout = 60_000 });

        await page.Page.EvaluateFunctionAsync(
            "text => { document.querySelector('#bench-text').value = text; document.querySelector('#bench-make').click(); }", "{");
        await page.Page.WaitForExpressionAsync("document.querySelector('#bench-problems').innerText !== ''", new() { Timeout = 60_000 });
        Assert.Equal(Assert.Throws<BenchFileException>(() => BenchFile.Read("{", "x", "")).Problems.Single().ToString(),
            await TextAsync(page, "document.querySelector('#bench-problems').innerText"));
        await page.Page.EvaluateFunctionAsync(
            """
            text => {
              const files = new DataTransfer(), input = document.querySelector("#bench-open");
              files.items.add(new File([text], "job.json"));
              input.files = files.files;
              input.dispatchEvent(new Event("change"));
            }
            """, File.ReadAllText(job));
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('#bench-sheet').contentDocument?.body?.innerText.includes('booster in the invented coupe')",
            new() { Timeout = 60_000 });
        Assert.Contains("Invented 1960s coupe", await TextAsync(page, "document.querySelector('#bench-said').innerText"),
            StringComparison.Ordinal);

        foreach ((string kind, string file) in new[] { ("card", "coupe-1960s-card-half-letter-si.html"), ("bench", "bench.html") })
        {
            await page.Page.EvaluateFunctionAsync(
                "kind => { document.querySelector(`#${kind}-sheet`).contentWindow.print = () => { globalThis.printed = kind; }; }",
                kind);
            await page.Page.FocusAsync($"[data-print={kind}]");
            await page.Page.Keyboard.PressAsync("Enter");
            await page.Page.WaitForFunctionAsync("kind => globalThis.printed === kind", new(), kind);
            await ClickAsync(page, $"[data-keep={kind}]");
            Assert.Equal(File.ReadAllText(folder.File(file)), await TextAsync(page, "saved.shift().blob.text()"));
        }

        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task It_opens_within_seconds_and_follows_the_slider()
    {
        await using WatchedPage page = await OpenAsync(1280);
        await page.Page.WaitForExpressionAsync("document.documentElement.dataset.second === 'yes'", new() { Timeout = 60_000 });
        double[] took = await page.Page.EvaluateExpressionAsync<double[]>(
            """
            (async () => {
              const range = document.querySelector("#live-dock input"), figure = document.querySelector("figure[data-figure=brake-forces]");
              const took = [];
              for (let i = 0; i < 40; i++) {
                const was = figure.querySelector("svg"), began = performance.now();
                range.value = Number(range.min) + (Number(range.max) - Number(range.min)) * (0.1 + 0.02 * i);
                range.dispatchEvent(new Event("input"));
                while (figure.querySelector("svg") === was) await new Promise(resolve => setTimeout(resolve, 1));
                took.push(performance.now() - began);
              }
              return took.slice(5);
            })()
            """);
        string live = await TextAsync(page, "document.documentElement.dataset.live");
        double slow = took.Order().ElementAt((int)(took.Length * 0.95));
        output.WriteLine($"live after {live} ms; slider to picture: median {took.Order().ElementAt(took.Length / 2):0} ms, 95th "
            + $"percentile {slow:0} ms");
        Assert.InRange(double.Parse(live, System.Globalization.CultureInfo.InvariantCulture), 100, 20_000);
        Assert.InRange(slow, 1, 1_000);
    }

    [SkippableFact]
    public async Task Too_long_a_file_and_a_hostile_one_do_no_harm()
    {
        await using WatchedPage page = await OpenAsync(1280);
        string deep = string.Concat(Enumerable.Repeat("[", 5000));
        foreach ((string text, string said) in new[]
        {
            (new string(' ', 1_000_001), "characters are too many"),
            (deep, "not JSON"),
            ("{ \"name\": \"<script>document.title = 'run'</script><img src=x onerror=\\\"document.title='run'\\\">\", \"carClass\": "
                + "\"track coupe\" }", ""),
            ("{ \"name\": \"x\", \"carClass\": \"track coupe\", \"wheelbase\": \"1e308 m\" }", "no number of a car"),
        })
        {
            await page.Page.EvaluateFunctionAsync(
                "text => { document.querySelector('#live-text').value = text; if (!text.trim()) "
                    + "document.querySelector('#live-text').value = 'x'.repeat(1000001); document.querySelector('#live-paste').click(); }",
                text);
            await page.Page.WaitForFunctionAsync(
                "said => document.querySelector('main').innerText.includes(said)", new() { Timeout = 60_000 }, said);
            Assert.NotEqual("run", await page.Page.GetTitleAsync());
        }

        page.AssertQuiet();
    }

    private static IEnumerable<string> Differences(JsonNode? here, JsonNode? there, string path)
    {
        switch (here, there)
        {
            case (JsonObject a, JsonObject b):
                return a.Select(entry => entry.Key).Union(b.Select(entry => entry.Key))
                    .SelectMany(key => Differences(a[key], b[key], $"{path}.{key}"));
            case (JsonArray a, JsonArray b) when a.Count == b.Count:
                return a.Zip(b).SelectMany((pair, i) => Differences(pair.First, pair.Second, $"{path}[{i}]"));
            case (JsonValue a, JsonValue b) when a.GetValueKind() == JsonValueKind.Number && b.GetValueKind() == JsonValueKind.Number:
                (double x, double y) = (a.GetValue<double>(), b.GetValue<double>());
                return Math.Abs(x - y) <= 1e-9 * Math.Max(Math.Abs(x), Math.Abs(y)) ? [] : [$"{path}: {x:R} here, {y:R} in the page"];
            default:
                return JsonNode.DeepEquals(here, there) ? []
                    : [$"{path}: {here?.ToJsonString()} here, {there?.ToJsonString()} in the page"];
        }
    }

    [Fact]
    public void The_page_is_written_in_ASCII_which_a_browser_reads_fastest() => Assert.True(System.Text.Ascii.IsValid(Html.Value));

    [Fact]
    public void A_vehicle_file_may_go_beside_the_question()
    {
        string file = File.ReadAllText(CoupeFile);
        JsonObject within = new() { ["do"] = "car", ["text"] = file, ["units"] = "us" };
        JsonObject beside = new() { ["do"] = "car", ["units"] = "us" };
        string expected = new LiveDesk().Answer(within.ToJsonString());
        Assert.Contains("psi", expected, StringComparison.Ordinal);
        Assert.Equal(expected, new LiveDesk().Answer(beside.ToJsonString(), file));
    }

    private static JsonObject Reply(LiveDesk desk, JsonObject request) => (JsonObject)JsonNode.Parse(desk.Answer(request.ToJsonString()))!;

    private Task<WatchedPage> OpenAsync(int width, int height = 900) =>
        OpenLiveAsync(browser, LivePage.FileName, Html.Value, width, height);
}
