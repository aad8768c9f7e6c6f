using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Publishing;

public class FiguresCommandTests
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    [Fact]
    public async Task A_drawing_comes_with_its_words_and_numbers_in_both_systems()
    {
        using var folder = new TemporaryFolder();
        (int code, string output, string error) =
            await Shell.RunAsync("figures", Coupe, "--figure", "line-pressures", "--size", "slide", "--size", "square", "--units", "both",
            "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("4 drawings, 10 files. The figures are of invented cars.", output, StringComparison.Ordinal);
        Assert.Equal(
            [
                "coupe-1960s-figures.html", "coupe-1960s-line-pressures-si.csv",
                    "coupe-1960s-line-pressures-si.json", "coupe-1960s-line-pressures-si.txt",
                    "coupe-1960s-line-pressures-slide-si.svg",
                "coupe-1960s-line-pressures-slide-us.svg", "coupe-1960s-line-pressures-square-si.svg",
                    "coupe-1960s-line-pressures-square-us.svg", "coupe-1960s-line-pressures-us.csv",
                "coupe-1960s-line-pressures-us.json", "coupe-1960s-line-pressures-us.txt",
            ],
            folder.Names.Order(StringComparer.Ordinal));
        Assert.Contains("[psi]", File.ReadAllText(folder.File("coupe-1960s-line-pressures-us.csv")), StringComparison.Ordinal);
        string words = File.ReadAllText(folder.File("coupe-1960s-line-pressures-si.txt"));
        Assert.All(new[] { "Title:", "Caption:", "Alt text:", "Long description:", "Credit:", "Method:", "Note:", "Licence:" }, part =>
            Assert.Contains(part, words, StringComparison.Ordinal));
        JsonNode json = JsonNode.Parse(File.ReadAllText(folder.File("coupe-1960s-line-pressures-si.json")))!;
        Assert.Equal("The figures are of invented cars.", (string)json["note"]!);
        Assert.InRange(((string)json["alt_text"]!).Length, 20, Figure.AltTextLimit);
    }

    [Fact]
    public async Task The_same_command_gives_the_same_bytes_and_the_licence_is_in_the_drawing()
    {
        using TemporaryFolder first = new(), second = new();
        foreach (TemporaryFolder folder in new[] { first, second })
        {
            Assert.Equal(0, (await Shell.RunAsync("figures", Coupe, "--figure", "brake-forces", "--figure", "effort", "--theme", "print",
                "--plain", "--output", folder.Path)).Code);
        }

        Assert.Equal(9, first.Names.Count());
        Assert.Equal(first.Names, second.Names);
        Assert.All(first.Names, name => Assert.Equal(File.ReadAllBytes(first.File(name)), File.ReadAllBytes(second.File(name))));
        var svg = XDocument.Load(first.File("coupe-1960s-effort-column-si-plain-print.svg"));
        string metadata = svg.Descendants().Single(e => e.Name.LocalName == "metadata").Value;
        Assert.Contains("MIT License", metadata, StringComparison.Ordinal);
        Assert.Contains("invented cars", metadata, StringComparison.Ordinal);
        Assert.True(svg.Descendants().Count(e => e.Name.LocalName == "g" && e.Attribute("id") is not null) > 2);
    }

    [Fact]
    public async Task Every_bad_option_is_told_at_once_and_nothing_is_written()
    {
        string folder = Path.Combine(Path.GetTempPath(), "figures-not-written");
        (int code, string output, string error) = await Shell.RunAsync(
            "figures", Path.Combine(folder, "no.json"), "--figure", "brake-force", "--size", "huge", "--format", "gif", "--theme", "pink",
                "--scale", "4", "--output", folder);
        Assert.Equal((2, ""), (code, output));
        Assert.All(new[] { "no.json", "--figure brake-force", "--size huge", "--format gif", "--theme pink", "--scale 4" }, part =>
            Assert.Contains(part, error, StringComparison.Ordinal));
        Assert.False(Directory.Exists(folder));
    }

    [Fact]
    public async Task Without_a_browser_drawings_are_written_and_the_rest_is_told()
    {
        using var folder = new TemporaryFolder();
        using var program = Commands.Program.Start(folder.Path, new Dictionary<string, string> { [Chromium.Variable] = "/no/such/browser" },
            "figures", Coupe, "--figure", "line-pressures", "--format", "png", "--output", folder.Path);
        Assert.Equal(1, await program.ExitAsync());
        Assert.Contains("Chromium", program.Error, StringComparison.Ordinal);
        Assert.Equal(5, folder.Names.Count());
    }

    [Fact]
    public async Task A_figure_the_car_cannot_have_is_told()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("own.json",
            Regex.Replace(File.ReadAllText(RepositoryRoot.File("data/vehicles/track-coupe.json")), "(?s)\"pedal\".*?\"aerodynamics\"",
            "\"aerodynamics\""));
        (int code, string _, string error) =
            await Shell.RunAsync("figures", file, "--figure", "effort", "--output", folder.File("figures"));
        Assert.Equal(1, code);
        Assert.Contains("effort: not made; it needs a pedal and master cylinder", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_house_style_gives_font_colours_credit_and_size_and_leaves_the_title_out()
    {
        using var folder = new TemporaryFolder();
        string style = folder.Write("house.json", """
            { "font": "Some Serif", "title": false, "credit": "Our desk", "front": "#004488", "rear": "#BB5566", "ideal": "#117733" }
            """);
        (int code, string output, string error) = await Shell.RunAsync("figures", Coupe, "--figure", "brake-forces", "--size", "88x60mm",
            "--size", "640px", "--style", style, "--title", "Ours alone", "--output", folder.File("out"));
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("all of them on one page", output, StringComparison.Ordinal);
        string svg = File.ReadAllText(folder.File("out/coupe-1960s-brake-forces-88x60mm-si.svg"));
        var drawing = XDocument.Parse(svg);
        double[] box = [.. drawing.Root!.Attribute("viewBox")!.Value.Split(' ')
            .Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
        Assert.Equal("88mm", drawing.Root.Attribute("width")!.Value);
        Assert.Equal(60.0 / 88, box[3] / box[2], 1e-3);
        Assert.Contains("'Some Serif', ", drawing.Root.Attribute("font-family")!.Value, StringComparison.Ordinal);
        Assert.All(new[] { "#004488", "#BB5566", "#117733", ">Our desk<" }, part => Assert.Contains(part, svg, StringComparison.Ordinal));
        Assert.DoesNotContain(
            drawing.Descendants(), e => e.Name.LocalName == "text" && e.Value.Contains("Ours", StringComparison.Ordinal));
        string words = File.ReadAllText(folder.File("out/coupe-1960s-brake-forces-si.txt"));
        Assert.Contains("Title:\nOurs alone\n", words, StringComparison.Ordinal);
        string finding = FigureCatalogue.All[0].For(BrakeBalance.Vehicles.Files.VehicleFile.Load(Coupe).Vehicle, UnitSystem.Si)!.AltText;
        Assert.Contains($"Alt text:\n{finding}\n", words, StringComparison.Ordinal);
        Assert.Equal(finding, drawing.Root.Elements().First(e => e.Name.LocalName == "title").Value);
        Assert.Contains("Credit:\nOur desk\n", words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_are_outlined_unless_they_shall_stay_text_and_numbers_are_written_as_the_house_writes_them()
    {
        using var folder = new TemporaryFolder();
        string style = folder.Write("house.json", """{ "number": "12 345,6" }""");
        string[][] runs = [["--output", folder.File("a")], ["--text", "--style", style, "--output", folder.File("b")]];
        foreach (string[] more in runs)
        {
            Assert.Equal((0, ""), await Shell.RunAsync(["figures", Coupe, "--plain", "--units", "us", .. more]) is var (code, _, error)
                ? (code, error) : default);
        }

        string[] drawn = [.. Directory.GetFiles(folder.File("a"), "*.svg").Select(File.ReadAllText)];
        string[] ids = [.. drawn.SelectMany(svg => Regex.Matches(svg, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value))];
        Assert.True(drawn.Length > 25);
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.All(drawn, svg =>
        {
            Assert.DoesNotContain("<text", svg, StringComparison.Ordinal);
            Assert.All(Regex.Matches(svg, " href=\"#([^\"]+)\"").Select(match => match.Groups[1].Value), id => Assert.Contains(id, ids));
        });
        string[] texts = [.. Directory.GetFiles(folder.File("b"), "*.svg").SelectMany(path =>
            XDocument.Load(path).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value))];
        Assert.Contains(texts, text => Regex.IsMatch(text, @"\d,\d"));
        Assert.DoesNotContain(texts, text => Regex.IsMatch(text, @"\d\.\d"));
        Assert.Contains("0,80 g takes", File.ReadAllText(folder.File("b/coupe-1960s-effort-us-plain.txt")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12345.6", "0.42 g, 12000 N, CFR 571.116, R13-H, 1960s, 3.6.2", "0.42 g, 12000 N, CFR 571.116, R13-H, 1960s, 3.6.2")]
    [InlineData("12.345,6", "0.42 g, 12000 N, CFR 571.116, R13-H, 1960s, 3.6.2", "0,42 g, 12.000 N, CFR 571.116, R13-H, 1960s, 3.6.2")]
    [InlineData("12’345.6", "−1234567.25 N to 1234 N.", "−1’234’567.25 N to 1234 N.")]
    public void A_house_writes_numbers_its_way(string number, string text, string written)
    {
        (HouseStyle? style, IReadOnlyList<BrakeBalance.Vehicles.Files.Problem> problems) =
            HouseStyle.Read($$"""{ "number": "{{number}}" }""", [Theme.Light]);
        Assert.Empty(problems);
        Assert.Equal(written, style!.Numbers(text));
    }

    [Theory]
    [InlineData("""{ "number": "12a345.6" }""", "number", "12345,6")]
    [InlineData("""{ "number": "12.345.6" }""", "number", "12345,6")]
    [InlineData("""{ "front": "blue" }""", "front", "#0072b2")]
    [InlineData("""{ "front": "#FFEE88" }""", "front", "contrast")]
    [InlineData("""{ "front": "#AA3300", "ideal": "#338800" }""", "ideal", "look alike to people with")]
    [InlineData("""{ "font": "x'; y" }""", "font", "letters")]
    [InlineData("""{ "colour": "#000000" }""", "colour", "")]
    public async Task A_style_that_cannot_be_read_or_seen_is_refused(string text, string entry, string words)
    {
        using var folder = new TemporaryFolder();
        string style = folder.Write("house.json", text);
        (int code, _, string error) = await Shell.RunAsync(
            "figures", Coupe, "--figure", "brake-forces", "--style", style, "--output", folder.File("out"));
        Assert.Equal(2, code);
        Assert.Contains($"house.json: {entry}", error, StringComparison.Ordinal);
        Assert.Contains(words, error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public async Task Hundreds_of_drawings_are_written_only_when_asked_for()
    {
        using var folder = new TemporaryFolder();
        (int code, _, string error) = await Shell.RunAsync("figures", Coupe, "--size", "all", "--output", folder.File("out"));
        Assert.Equal(2, code);
        Assert.Contains("--many", error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.File("out")));
    }

    [Fact]
    public async Task The_page_of_a_run_says_of_each_figure_what_its_own_files_say()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("own.json", File.ReadAllText(RepositoryRoot.File("data/vehicles/big-cam-saloon.json"))
            .Replace("\"ratio\": 4.1", "\"ratio\": \"3.9 .. 4.3\"", StringComparison.Ordinal));
        Assert.Equal(0, (await Shell.RunAsync("figures", file, "--figure", "brake-forces", "--figure", "effort", "--units", "both",
            "--plain", "--output", folder.File("out"))).Code);
        string gallery = System.Net.WebUtility.HtmlDecode(File.ReadAllText(folder.File("out/own-figures.html")));
        foreach (string words in Directory.GetFiles(folder.File("out"), "*.json"))
        {
            JsonNode json = JsonNode.Parse(File.ReadAllText(words))!;
            Assert.Contains("range", (string)json["caption"]!, StringComparison.Ordinal);
            Assert.All(["title", "caption", "alt_text"], part => Assert.Contains((string)json[part]!, gallery, StringComparison.Ordinal));
        }

        Assert.Contains("SI, US customary", gallery, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_drawings_of_a_run_may_stand_in_one_page()
    {
        using var folder = new TemporaryFolder();
        string[] figures = ["--figure", "brake-forces", "--figure", "line-pressures", "--figure", "effort"];
        Assert.Equal(0, (await Shell.RunAsync(
            ["figures", Coupe, .. figures, "--theme", "white", "--theme", "dark", "--units", "both", "--output", folder.Path])).Code);
        string[] ids = [.. Directory.GetFiles(folder.Path, "*.svg").SelectMany(file => XDocument.Load(file).Descendants())
            .Select(e => e.Attribute("id")?.Value).OfType<string>()];
        Assert.True(ids.Length > 200);
        Assert.Equal(ids.Length, ids.Distinct().Count());
        string gallery = File.ReadAllText(folder.File("coupe-1960s-figures.html"));
        Assert.All(folder.Names.Where(name => name != "coupe-1960s-figures.html"), name =>
            Assert.Contains($"<a href=\"{name}\">", gallery, StringComparison.Ordinal));
        Assert.Equal(6, Regex.Count(gallery, "<svg [^>]*role=\"img\""));
    }

    [Fact]
    public async Task The_page_asks_for_a_whole_address_only_where_a_line_lacks_one()
    {
        using var folder = new TemporaryFolder();
        string[] asks = new string[2];
        foreach ((int at, string[] more) in new string[][] { ["--address", "https://example.org/cars"], [] }.Index())
        {
            await Shell.RunAsync(["figures", Coupe, "--figure", "effort", "--format", "embed", .. more, "--output", folder.File($"{at}")]);
            Assert.Equal(0, (await Shell.RunAsync("figures", Coupe, "--figure", "travel", "--output", folder.File($"{at}"))).Code);
            asks[at] = File.ReadAllText(folder.File($"{at}/coupe-1960s-figures.html"));
        }

        Assert.DoesNotContain("--address URL makes it so", asks[0], StringComparison.Ordinal);
        Assert.Contains("--address URL makes it so", asks[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_page_keeps_what_earlier_runs_wrote_into_the_folder_as_long_as_it_is_there()
    {
        using var folder = new TemporaryFolder();
        string style = folder.Write("house.json", """{ "number": "12.345,6" }""");
        string[][] runs =
        [
            ["--figure", "brake-forces", "--figure", "effort", "--format", "embed"], ["--figure", "line-pressures", "--plain"],
            ["--figure", "line-pressures"], ["--figure", "brake-forces", "--size", "square", "--style", style, "--units", "both",
                "--format", "html"],
        ];
        foreach (string[] run in runs)
        {
            (int code, _, string error) = await Shell.RunAsync(["figures", Coupe, .. run, "--output", folder.File("out")]);
            Assert.True(code == 0 || error.Contains("The pictures of shared links were not made.", StringComparison.Ordinal), error);
        }

        string page = folder.File("out/coupe-1960s-figures.html"), gallery = File.ReadAllText(page);
        Assert.Equal(5, Regex.Count(gallery, "<svg [^>]*role=\"img\""));
        Assert.Contains("5 figures, each", gallery, StringComparison.Ordinal);
        Assert.Contains("SI, US customary", gallery, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(gallery, "&lt;iframe src="));
        string[] ids = [.. Regex.Matches(gallery, " id=\"([^\"]+)\"").Select(id => id.Groups[1].Value)];
        Assert.Equal(ids.Length, ids.Distinct().Count());
        Assert.Equal(Directory.GetFiles(folder.File("out")).Select(Path.GetFileName).Where(name => name != Path.GetFileName(page)).Order(),
            Regex.Matches(gallery, "<a href=\"([^\"]+)\">").Select(link => link.Groups[1].Value).Order());

        // Its own numbers stand in the drawing of the figure that has them, and nowhere twice.
        string item = gallery[gallery.IndexOf("<li data-words=\"coupe-1960s-brake-forces-si\"", StringComparison.Ordinal)..];
        item = item[..item.IndexOf("</li>", StringComparison.Ordinal)];
        Assert.DoesNotMatch(@">[^<]*\d\.\d(?!\d\d)", item[..item.IndexOf("<textarea", StringComparison.Ordinal)]);

        string chart = File.ReadAllText(folder.File("out/coupe-1960s-brake-forces-si.html"));
        Assert.Contains("chart.layout.separators=\",.\";", chart, StringComparison.Ordinal);
        Assert.Contains(@"""z\u00A0=\u00A00,4""", chart, StringComparison.Ordinal);

        // What was deleted is no longer listed.
        foreach (string file in Directory.GetFiles(folder.File("out"), "*-effort-*"))
        {
            File.Delete(file);
        }

        Assert.Equal(0, (await Shell.RunAsync("figures", Coupe, "--figure", "travel", "--output", folder.File("out"))).Code);
        gallery = File.ReadAllText(page);
        Assert.DoesNotContain("-effort-", gallery, StringComparison.Ordinal);
        Assert.Contains("-travel-", gallery, StringComparison.Ordinal);
        Assert.Equal(5, Regex.Count(gallery, "<svg [^>]*role=\"img\""));
    }

    [Fact]
    public async Task The_list_names_every_figure_and_size()
    {
        (int code, string output, string _) = await Shell.RunAsync("figures", "--list");
        Assert.Equal(ExitCode.Success, code);
        Assert.All(new[] { "brake-forces", "heat-time", "slide                 1920 × 1080 px", "print-single          1039 × 831 px" },
            part => Assert.Contains(part, output, StringComparison.Ordinal));
    }

    [SkippableFact]
    public async Task Pictures_have_exactly_their_size_and_sheets_one_page()
    {
        Skip.If(Chromium.Executable is null && Environment.GetEnvironmentVariable("CI") != "true", Chromium.Missing);
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync(
            "figures", Coupe, "--figure", "line-pressures", "--size", "column", "--size", "print-single", "--size", "slide", "--format",
                "png", "--format", "pdf", "--scale", "1", "--scale", "3",
            "--theme", "transparent", "--output", folder.Path);
        Assert.Equal((0, ""), (code, error));
        foreach ((string size, int width, int height) in new[] { ("column", 1200, 800), ("print-single", 1039, 831),
            ("slide", 1920, 1080) })
        {
            string name = $"coupe-1960s-line-pressures-{size}-si-transparent";
            Assert.Equal((width, height), PngSize(File.ReadAllBytes(folder.File(name + ".png"))));
            Assert.Equal((3 * width, 3 * height), PngSize(File.ReadAllBytes(folder.File(name + "-3x.png"))));
            PdfFacts pdf = PdfFacts.Of(File.ReadAllBytes(folder.File(name + ".pdf")));
            (double wide, double high) = FigureSize.Published.First(s => s.Name == size).Inches();
            Assert.Equal(1, pdf.Pages);
            Assert.Equal(wide * 72, pdf.WidthPoints, 1.0);
            Assert.Equal(high * 72, pdf.HeightPoints, 1.0);
        }
    }

    /// <summary>Width and height of a PNG, which stand in its first chunk (ISO/IEC 15948, IHDR).</summary>
    private static (int Width, int Height) PngSize(byte[] data)
    {
        Assert.Equal("IHDR"u8.ToArray(), data[12..16]);
        return (Number(16), Number(20));

        int Number(int at) => System.Buffers.Binary.BinaryPrimitives.ReadInt32BigEndian(data.AsSpan(at, 4));
    }
}
