using System.Net;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using PuppeteerSharp;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class EmbedTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    [Theory]
    [InlineData("coupe-1960s", UnitSystem.Si, false)]
    [InlineData("track-coupe", UnitSystem.Us, true)]
    public async Task Pieces_to_paste_need_nothing_and_disturb_nothing(string car, UnitSystem units, bool dark)
    {
        using var folder = new TemporaryFolder();
        Vehicle vehicle = VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{car}.json")).Vehicle;
        Theme[] themes = dark ? [Theme.Light, Theme.Dark] : [Theme.Light];
        var plan = new FigurePlan { CarName = car, Units = [units], Themes = themes, Embed = true };
        FigureExportResult result = await FigureExport.WriteAsync(vehicle, plan, folder.Path, browser: null);
        Assert.Empty(result.Failed);
        string[] pieces = [.. result.Files.Where(name => name.EndsWith("-embed.html", StringComparison.Ordinal))
            .Select(name => File.ReadAllText(folder.File(name)))];
        Assert.InRange(pieces.Length, 25 * (dark ? 2 : 1), 40 * (dark ? 2 : 1));
        foreach (string piece in pieces)
        {
            XElement figure = XDocument.Parse(piece).Root!;
            Assert.Equal("figure", figure.Name);
            Assert.DoesNotMatch("(?i)<(script|style|link|iframe|image)|://|\\son[a-z]+=|\\ssrc=|\\shref=.[^#]|@import", piece);
            XElement svg = figure.Element("svg")!;
            Assert.Equal(
                ("img", "100%", null), ((string?)svg.Attribute("role"), (string?)svg.Attribute("width"), (string?)svg.Attribute("height")));
            Assert.NotNull(svg.Attribute("viewBox"));
            string[] named = ((string)svg.Attribute("aria-labelledby")!).Split(' ');
            Assert.Equal(["title", "desc"],
                named.Select(id => svg.Descendants().Single(e => (string?)e.Attribute("id") == id).Name.LocalName));
            Assert.All(Regex.Matches(piece, @"url\(#([^)]+)\)"), use =>
                Assert.Contains($"id=\"{use.Groups[1].Value}\"", piece, StringComparison.Ordinal));
            string words = figure.Element("figcaption")!.Value;
            Assert.Contains(FigureText.Licence, words, StringComparison.Ordinal);
            Assert.Contains("the car is invented", words, StringComparison.Ordinal);
        }

        string[] ids = [.. pieces.SelectMany(piece => Regex.Matches(piece, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value))];
        Assert.True(ids.Length > 300);
        Assert.Equal(ids.Length, ids.Distinct().Count());
    }

    [Fact]
    public async Task Live_pages_say_what_a_shared_link_shows_and_share_one_calculation()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("own.json", Regex.Replace(File.ReadAllText(RepositoryRoot.File("data/vehicles/big-cam-saloon.json"))
            .Replace("\"ratio\": 4.1", "\"ratio\": \"3.9 .. 4.3\"", StringComparison.Ordinal), "\"invented\": true,?", ""));
        string style = folder.Write("house.json", """{ "font": "Some Serif", "credit": "Our desk", "front": "#004488" }""");
        (int code, string _, string error) = await Shell.RunAsync("figures", file, "--figure", "brake-forces", "--figure",
            "slip-curves", "--format", "embed", "--style", style, "--units", "us", "--theme", "white", "--address", "https://example.org/f",
            "--output", folder.File("out"));
        bool pictures = Chromium.Executable is not null;
        Assert.Equal(pictures ? 0 : 1, code);
        Assert.Equal(!pictures, error.Contains("The pictures of shared links were not made.", StringComparison.Ordinal));
        string live = File.ReadAllText(folder.File("out/own-brake-forces-us-live.html"));
        string still = File.ReadAllText(folder.File("out/own-slip-curves-us-live.html"));
        foreach (string page in new[] { live, still })
        {
            string title = Regex.Match(page, "<title>([^<]+)</title>").Groups[1].Value;
            Assert.Equal(title, Meta(page, "property=\"og:title\""));
            Assert.Equal(Meta(page, "name=\"description\""), Meta(page, "property=\"og:description\""));
            Assert.Matches(@"^https://example\.org/f/own-[a-z-]+-us-live\.html$", Meta(page, "property=\"og:url\""));
            Assert.Equal(pictures, page.Contains("og:image", StringComparison.Ordinal));
            Assert.Contains("Our desk", page, StringComparison.Ordinal);
            Assert.Contains("\"#0072b2\"] { stroke: #004488; }", page, StringComparison.Ordinal);
            Assert.Contains("no approval", page, StringComparison.Ordinal);
            Assert.DoesNotContain("bb-top\"", page, StringComparison.Ordinal);
            Assert.InRange(page.Length, 20_000, 200_000);
        }

        Assert.Contains("range", Meta(live, "name=\"description\""), StringComparison.Ordinal);
        Assert.Contains("class=\"bb-ask\"", live, StringComparison.Ordinal);
        Assert.DoesNotContain(PageNames.SharedScript, still, StringComparison.Ordinal);
        Assert.True(new FileInfo(folder.File("out/" + PageNames.SharedScript)).Length > 1_000_000);
        Assert.True(File.Exists(folder.File("out/" + PageNames.Notices)));
        string gallery = WebUtility.HtmlDecode(File.ReadAllText(folder.File("out/own-figures.html")));
        Assert.Equal(2, Regex.Count(gallery, "<textarea readonly><iframe src=\"https://example.org/f/own-[a-z-]+-us-live.html\""));
        if (pictures)
        {
            Assert.Equal("https://example.org/f/own-brake-forces-us-share.png", Meta(live, "property=\"og:image\""));
            byte[] png = File.ReadAllBytes(folder.File("out/own-brake-forces-us-share.png"));
            Assert.Equal((1200, 630), (png[18] * 256 + png[19], png[22] * 256 + png[23]));
        }

        static string Meta(string page, string which) => Regex.Match(page, $"<meta {which} content=\"([^\"]+)\">").Groups[1].Value;
    }

    [Fact]
    public async Task Bad_addresses_and_formats_are_told_and_many_files_want_to_be_asked_for()
    {
        using var folder = new TemporaryFolder();
        (int code, _, string error) = await Shell.RunAsync("figures", Coupe, "--format", "video", "--address", "example.org/f",
            "--output", folder.File("out"));
        Assert.Equal(2, code);
        Assert.Contains("Accepted: svg, png, pdf, html, embed, animation.", error, StringComparison.Ordinal);
        Assert.Contains("--address example.org/f: this is no address of a folder.", error, StringComparison.Ordinal);
        (code, _, error) = await Shell.RunAsync("figures", Coupe, "--format", "embed", "--format", "animation", "--units", "both",
            "--output", folder.File("out"));
        Assert.Equal(2, code);
        Assert.Contains("--many", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Theory]
    [InlineData("coupe-1960s", "adhesion-utilisation")]
    [InlineData("coupe-1960s", "plan")]
    [InlineData("track-coupe", "brake-forces")]
    [InlineData("rear-engined-sports-car", "travel")]
    public void An_animation_shows_each_picture_whole_and_nothing_of_the_others(string car, string name)
    {
        MovingDrawing moving = Moving(car, name, Theme.Dark);
        string text = AnimatedSvg.Of(moving);
        XElement root = XElement.Parse(text);
        Assert.DoesNotMatch("(?i)<script|://(?!www.w3.org|purl.org)", text);
        Assert.True(text.Length < 0.6 * moving.Drawings.Sum(drawing => drawing.Length), "What pictures share stands in it once.");
        string[] ids = [.. root.DescendantsAndSelf().Attributes("id").Select(id => id.Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string rules = root.Descendants().Single(e => e.Name.LocalName == "style").Value;
        int slots = moving.Drawings.Count + (moving.ThereAndBack ? 0 : 8);
        var steps = Regex.Matches(rules, @"@keyframes (\S+?)\{(.*)\}\n").ToDictionary(rule => rule.Groups[1].Value, rule =>
            Regex.Matches(rule.Groups[2].Value, @"([\d.]+)%\{visibility:(\w+)\}").Select(step =>
                (From: double.Parse(step.Groups[1].Value, System.Globalization.CultureInfo.InvariantCulture),
                    Shown: step.Groups[2].Value == "visible")).ToArray());
        for (int picture = 0; picture < moving.Drawings.Count; picture++)
        {
            double now = 100 * (picture + 0.5) / slots;
            Assert.Equal(Drawn(XElement.Parse(moving.Drawings[picture]), _ => true),
                Drawn(root, one => steps[one].Last(step => step.From <= now).Shown));
        }

        // Without the rules it is the picture at the start.
        Assert.Equal(Drawn(XElement.Parse(moving.Drawings[moving.Start]), _ => true), Drawn(root, shown: null));
        Assert.Contains("(prefers-reduced-motion:no-preference)", rules, StringComparison.Ordinal);

        // What is seen: every mark and word with its own attributes, however deep it lies.
        static string[] Drawn(XElement root, Func<string, bool>? shown) => [.. root.Descendants()
            .Where(e => !e.HasElements && e.Name.LocalName is not ("title" or "desc" or "style")
                && !e.Ancestors().Any(a => a.Name.LocalName is "defs" or "metadata"))
            .Where(e => e.AncestorsAndSelf().FirstOrDefault(a => a.Attribute("class") is not null) is not { } switched
                || (shown is null ? (string?)switched.Attribute("visibility") == "visible" : shown((string)switched.Attribute("class")!)))
            .Select(e => string.Join(' ', e.Attributes().Where(a => a.Name.LocalName is not ("class" or "visibility" or "id"))
                .Select(a => $"{a.Name.LocalName}={(a.Value.StartsWith("url(", StringComparison.Ordinal) ? "url" : a.Value)}")
                .Prepend(e.Name.LocalName).Append(e.Value)))
            .Order(StringComparer.Ordinal)];
    }

    [SkippableFact]
    public async Task An_animation_moves_only_for_those_who_want_motion()
    {
        string file = Path.Combine(browser.Folder, "moving.svg");
        await File.WriteAllTextAsync(file, AnimatedSvg.Of(Moving("coupe-1960s", "brake-forces", Theme.Light)));
        await using WatchedPage page = await browser.OpenAsync(file, 1200, 800);
        Assert.True(await DiffersAsync("no-preference"));
        Assert.False(await DiffersAsync("reduce"));
        page.AssertQuiet();

        async Task<bool> DiffersAsync(string motion)
        {
            await page.Page.EmulateMediaFeaturesAsync(
                [new MediaFeatureValue { MediaFeature = MediaFeature.PrefersReducedMotion, Value = motion }]);
            await page.Page.ReloadAsync();
            byte[] first = await page.Page.ScreenshotDataAsync();
            await Task.Delay(1200);
            return !Enumerable.SequenceEqual(first, await page.Page.ScreenshotDataAsync());
        }
    }

    [SkippableFact]
    public async Task A_film_is_made_where_the_system_can_and_else_one_line_says_what_is_missing()
    {
        Skip.If(Chromium.Executable is null, Chromium.Missing);
        using var folder = new TemporaryFolder();
        (int code, string output, string error) = await Shell.RunAsync("figures", Coupe, "--figure", "travel", "--figure", "hose-bends",
            "--size", "133x77mm", "--format", "animation", "--theme", "transparent", "--output", folder.Path);
        Assert.Contains("No animation, for no slider moves them: hose-bends.", output, StringComparison.Ordinal);
        Assert.True(File.Exists(folder.File("coupe-1960s-travel-133x77mm-si-transparent-animated.svg")));
        string film = folder.File("coupe-1960s-travel-133x77mm-si-transparent.mp4");
        if (Film.Executable is null)
        {
            Assert.Equal(1, code);
            Assert.Contains(Film.Missing, error, StringComparison.Ordinal);
            Assert.False(File.Exists(film));
            return;
        }

        Assert.Equal((0, ""), (code, error));
        byte[] data = File.ReadAllBytes(film);
        Assert.Equal("ftyp"u8.ToArray(), data[4..8]);
        int track = data.AsSpan().IndexOf("tkhd"u8);

        // Width and height are the last two numbers of the track header, 16.16 (ISO/IEC 14496-12, from memory).
        int Number(int at) => (data[at] << 8) | data[at + 1];
        (int width, int height) = FigureSize.Own("133x77mm")!.Pixels();
        Assert.True(width % 2 + height % 2 > 0, "The case is a size that a film cannot have.");
        Assert.Equal((width + width % 2, height + height % 2), (Number(track + 4 + 76), Number(track + 4 + 80)));
    }

    [SkippableTheory]
    [InlineData(1280, "white")]
    [InlineData(390, "dark")]
    [InlineData(280, "transparent")]
    public async Task A_live_page_moves_its_figure_fits_and_asks_nobody(int width, string theme)
    {
        Skip.If(Chromium.Executable is null && Environment.GetEnvironmentVariable("CI") != "true", Chromium.Missing);
        string folder = Path.Combine(browser.Folder, "embed");
        Assert.Equal(0, (await Shell.RunAsync("figures", Coupe, "--figure", "brake-forces", "--format", "embed", "--theme", theme,
            "--output", folder)).Code);
        string name = $"coupe-1960s-brake-forces-si{(theme == "white" ? "" : "-" + theme)}-live.html";
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, name), width);
        await page.AssertNoSidewaysScrollAsync();
        const string Picture = "[...document.querySelectorAll('.bb-shown svg')].find(one => one.clientHeight > 0).outerHTML";
        const string Title = "document.querySelector('.bb-title').textContent";
        (string before, string title) =
            (await page.Page.EvaluateExpressionAsync<string>(Picture), await page.Page.EvaluateExpressionAsync<string>(Title));
        await page.Page.FocusAsync("#moving-setting");
        await page.Page.Keyboard.PressAsync("End");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-explorable').dataset.moved === '1'",
            new() { Timeout = 90_000 });
        Assert.NotEqual(before, await page.Page.EvaluateExpressionAsync<string>(Picture));
        Assert.NotEqual(title, await page.Page.EvaluateExpressionAsync<string>(Title));
        Assert.Contains("rear axle above", await page.Page.EvaluateExpressionAsync<string>(Title), StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();

        // The ground is that of the theme, whatever the reader's system prefers.
        string ground = await page.Page.EvaluateExpressionAsync<string>("getComputedStyle(document.documentElement).backgroundColor");
        Assert.Equal(theme switch { "dark" => "rgb(21, 25, 29)", "white" => "rgb(255, 255, 255)", _ => "rgba(0, 0, 0, 0)" }, ground);
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task The_frames_are_as_high_as_their_pages()
    {
        using var folder = new TemporaryFolder();
        Vehicle vehicle = VehicleFile.Load(Coupe).Vehicle;
        FigureExportResult result = await FigureExport.WriteAsync(vehicle, new FigurePlan { CarName = "coupe", Embed = true }, folder.Path,
            browser: null);
        string gallery = WebUtility.HtmlDecode(File.ReadAllText(folder.File(result.Gallery)));
        foreach (string name in result.Files.Where(file => file.EndsWith("-live.html", StringComparison.Ordinal)))
        {
            int height = int.Parse(Regex.Match(gallery, $"<iframe src=\"{name}\"[^>]* height=\"(\\d+)\"").Groups[1].Value,
                System.Globalization.CultureInfo.InvariantCulture);
            foreach (int width in new[] { 360, 720, 1200 })
            {
                await using WatchedPage page = await browser.OpenAsync(folder.File(name), width, 200, far: true);
                double high = await page.Page.EvaluateExpressionAsync<double>("document.body.getBoundingClientRect().height");
                Assert.True(high <= height && (width != 360 || high > height - 170), $"{name} is {high} of {height} px high at {width}.");
            }
        }
    }

    private static MovingDrawing Moving(string car, string name, Theme theme)
    {
        Vehicle vehicle = VehicleFile.Load(RepositoryRoot.File($"data/vehicles/{car}.json")).Vehicle;
        CatalogueEntry entry = FigureCatalogue.All.Single(one => one.Name == name);
        Explorable moving = MovingFigure.Of(entry, vehicle, UnitSystem.Si)!;
        return MovingDrawing.Of(moving, FigureSize.Column, theme, vehicle)!;
    }
}
