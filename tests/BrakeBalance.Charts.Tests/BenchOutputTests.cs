using System.Globalization;
using System.Xml.Linq;
using BrakeBalance.Bench;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

public class BenchOutputTests
{
    private static readonly BenchSheet Sheet = BenchInput.Example;

    private static readonly PlumbingGraph Sound = Sheet.Plumbing!.Return.Plumbing;

    private static IEnumerable<Drawing> Drawings(UnitSystem units) =>
        [PlumbingDrawing.Of(Sound, units), PlumbingDrawing.Of(Crossed(), units, "plumbing-wrong"),
            .. Sheet.Hoses.Select(hose => HoseDrawing.Of(hose.Assembly, units))];

    private static IEnumerable<Figure> Figures(UnitSystem units) =>
        [BenchFigures.Bends("EN 853 2SN", Sheet.Hoses[0].Assembly, units),
            BenchFigures.BackPressure(Sheet.Plumbing!.Return, [-20, 0, 60], Pressure.FromBars(2.6), units: units)];

    // Pump to gear, gear to booster: the way that gives the booster no pressure.
    private static PlumbingGraph Crossed() => Sound with
    {
        Lines = [Sound.Lines[0] with { To = "box.pressure" }, Sound.Lines[1] with { From = "box.return", To = "booster.pressure" },
            Sound.Lines[2] with { From = "booster.gear" }, .. Sound.Lines.Skip(3)],
    };

    private static string[] Texts(string svg) =>
        [.. XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => e.Value)];

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void Drawings_are_well_formed_with_unique_ids_and_words(UnitSystem units)
    {
        foreach (Drawing drawing in Drawings(units))
        {
            Assert.InRange(drawing.AltText.Length, 20, Figure.AltTextLimit);
            Assert.InRange(drawing.Title.Length, 20, 160);
            foreach (bool narrow in new[] { false, true })
            {
                XElement svg = XDocument.Parse(drawing.ToSvg(narrow)).Root!;
                string[] ids = [.. svg.DescendantsAndSelf().Select(e => (string?)e.Attribute("id")).OfType<string>()];
                Assert.Equal(ids.Length, ids.Distinct().Count());
                Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName is "script" or "image" or "foreignObject");
                Assert.Contains(drawing.AltText, svg.Elements().First(e => e.Name.LocalName == "title").Value, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void Nothing_is_drawn_outside_the_picture()
    {
        foreach (Drawing drawing in Drawings(UnitSystem.Si))
        {
            foreach (bool narrow in new[] { false, true })
            {
                XElement svg = XDocument.Parse(drawing.ToSvg(narrow)).Root!;
                double width = double.Parse(svg.Attribute("width")!.Value, CultureInfo.InvariantCulture),
                    height = double.Parse(svg.Attribute("height")!.Value, CultureInfo.InvariantCulture);
                foreach (XElement path in svg.Descendants()
                    .Where(e => e.Name.LocalName == "path" && !e.Attribute("d")!.Value.Any(c => char.IsLower(c) || c is 'A' or 'H' or 'V')))
                {
                    foreach (string corner in path.Attribute("d")!.Value.Split('M', 'L', 'Z').Where(text => text.Length > 0))
                    {
                        double[] at = [.. corner.Split(' ').Select(number => double.Parse(number, CultureInfo.InvariantCulture))];
                        Assert.InRange(at[0], 0, width);
                        Assert.InRange(at[1], 0, height);
                    }
                }
            }
        }
    }

    [Fact]
    public void Every_line_of_the_plumbing_carries_its_number_and_every_part_its_name()
    {
        string[] texts = Texts(PlumbingDrawing.Of(Sound).ToSvg());
        Assert.All(Sound.Lines.Select((_, i) => (i + 1).ToString(CultureInfo.InvariantCulture)), number =>
            Assert.Single(texts, text => text == number));
        Assert.All(Sound.Nodes, node => Assert.Contains(node.Name, texts));
        Assert.DoesNotContain("wrong", texts);
    }

    [Fact]
    public void A_wrong_plumbing_says_so_in_title_caption_table_and_drawing()
    {
        Drawing drawing = PlumbingDrawing.Of(Crossed());
        int wrong = PlumbingCheck.Of(Crossed()).Count(finding => finding.Severity == BenchSeverity.Wrong);
        Assert.StartsWith(wrong.ToString(CultureInfo.InvariantCulture), drawing.Title, StringComparison.Ordinal);
        Assert.Contains("The booster comes first", drawing.Caption, StringComparison.Ordinal);
        Assert.Contains("wrong", Texts(drawing.ToSvg()));
        Assert.Contains("not to booster.pressure", drawing.Table.ToCsv(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_plumbing_that_names_nothing_known_is_still_drawn()
    {
        PlumbingGraph odd = Sound with
        {
            Nodes = [.. Sound.Nodes, Sound.Nodes[1]],
            Lines = [Sound.Lines[0] with { To = "nowhere" }, Sound.Lines[1] with { From = "boster.gear" }]
        };
        Assert.Contains("wrong", PlumbingDrawing.Of(odd).Title, StringComparison.Ordinal);
        XDocument.Parse(PlumbingDrawing.Of(odd).ToSvg());
    }

    [Fact]
    public void The_hose_sketch_shows_the_lengths_of_the_assembly()
    {
        HoseAssembly hose = Sheet.Hoses[1].Assembly;
        string[] texts = Texts(HoseDrawing.Of(hose, UnitSystem.Us).ToSvg());
        Assert.Contains("overall 24\u00a0in", texts);
        Assert.Contains("cut 21.55\u00a0in", texts);
        Assert.Contains("1.1\u00a0in", texts);
        Assert.Contains("1.35\u00a0in", texts);
        Assert.Contains("90°", texts);
        Assert.Contains("547.4\u00a0mm", HoseDrawing.Of(hose, UnitSystem.Si).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void The_bend_figure_ends_at_radius_times_pi()
    {
        FigureTable table = BenchFigures.Bends("EN 853 2SN").Table;
        string[] last = [.. Enumerable.Range(0, (int)table.Frame.Rows.Count).Select(row => table.Row(row)).Last(row => row[0] == "-6")];
        Assert.Equal(130 * Math.PI, double.Parse(last[2], CultureInfo.InvariantCulture), 0.01);
        Assert.Contains("EN 854", Assert.Throws<ArgumentException>(() => BenchFigures.Bends("EN 854")).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Each_label_of_the_bend_figure_stands_nearest_to_the_end_of_its_own_line()
    {
        Figure figure = BenchFigures.Bends("EN 853 1SN", units: UnitSystem.Si);
        foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.PrintSingle, FigureSize.Own("88mm")! })
        {
            FigureLayout layout = FigureLayout.Of(figure, size);
            Assert.Equal(["-12", "-4, -5", "-6", "-8, -10"], layout.Labels.Select(label => label.Lines[0]).Order(StringComparer.Ordinal));
            Assert.All(layout.Labels, label =>
            {
                int nearest = Enumerable.Range(0, figure.Layers.Count).MinBy(i =>
                    Math.Abs(label.Box.Centre.Y - layout.At(Math.PI, ((LineLayer)figure.Layers[i]).Y[^1]).Y));
                Assert.Contains(figure.Layers[nearest].Name, label.Lines[0].Split(", "));
                Assert.True(label.Box.Right > layout.At(0.85 * Math.PI, 0).X, label.Lines[0]);
            });
        }
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void Figures_and_tables_carry_units(UnitSystem units)
    {
        BenchReport report = BenchReport.Of(Sheet);
        IEnumerable<FigureTable> tables =
        [
            .. Figures(units).Select(figure => figure.Table), BenchTables.CutList(report, units).Table,
                BenchTables.Purchase(report, units).Table,
            BenchTables.Threads(ThreadFact.Search("inverted"), units).Table,
            BenchTables.Releases(report, units).Table, BenchTables.Changes(report, units).Table,
        ];
        string[] foreign = units == UnitSystem.Us ? [" bar", "[bar]", "[mm]", " mm", " N\""] : ["psi", "[in]", "lbf", " in\""];
        foreach (FigureTable table in tables)
        {
            Assert.All(table.Columns.Where((_, i) => table.IsNumeric(i)), column => Assert.Matches(@"\[.+\]$", column));
            Assert.DoesNotContain(table.Columns, column => foreign.Any(column.Contains));
        }

        FigureTable change = BenchTables.Changes(report, units).Table;
        string changes = change.ToCsv();
        string[][] told = [.. Enumerable.Range(0, (int)change.Frame.Rows.Count).Select(row => change.Row(row).ToArray())
            .Where(row => row[4].EndsWith(" %).", StringComparison.Ordinal))];
        Assert.True(told.Length > 3, changes);
        Assert.All(told, row => Assert.Equal((100 * Shown(row[2]) / Shown(row[1])) - 100, Shown(row[4].Split('(')[^1]), 0.51));
        Assert.DoesNotContain("points", changes, StringComparison.Ordinal);
        Assert.Contains(units == UnitSystem.Us ? "\u00a0lbf" : "\u00a0N", changes, StringComparison.Ordinal);
    }

    private static double Shown(string text) => double.Parse(
        text.Split('\u00a0', ' ')[0].Trim('±', '+').Replace('−', '-'), CultureInfo.InvariantCulture);

    [Fact]
    public void The_same_input_gives_the_same_bytes_in_any_culture()
    {
        string Everything() => string.Concat(Drawings(UnitSystem.Us).Select(drawing => drawing.ToHtml())
            .Concat(Figures(UnitSystem.Us).Select(figure => figure.ToHtml()))
            .Append(BenchPrintSheet.Html(BenchReport.Of(BenchInput.Example), UnitSystem.Us))
                .Append(new TickLists([.. Checklist.All]).ToHtml()));
        string expected = Everything();
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(expected, Everything());
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void The_explorable_of_the_return_shows_what_the_assembly_says()
    {
        ReleaseJob job = Sheet.Plumbing!.Release!;
        Exploring.Explorable explorable = BenchExplorables.Return(Sheet.Plumbing.Return, job, Length.FromMeters(1), UnitSystem.Si);
        Assert.Equal(2 * 5 * 12, explorable.Frames().Count);

        // The first state of the tee: 5 mm bore, −20 °C.
        ReturnFlow flow = Sheet.Plumbing.Return with
        {
            Plumbing = UsualPlumbing.JoinedReturns(Length.FromMillimeters(5), Length.FromMeters(1), job.Booster.ReliefPressure),
            Temperature = Temperature.FromDegreesCelsius(-20),
        };
        ReleaseEffect effect = ReleaseEffect.Of(flow, job.Booster, job.Master, job.RodTravel);
        Exploring.Frame frame = explorable.Frames()[5 * 12];
        Assert.Equal(BenchMeasures.BackPressure.Text(effect.Standing, UnitSystem.Si), frame.Readouts[0].Value);
        Assert.Equal("not by springs", frame.Readouts[2].Value);
        Assert.Equal(Exploring.VerdictKind.Caution, frame.Verdict!.Kind);
        Assert.All(
            BenchExplorables.Return(Sheet.Plumbing.Return, job, Length.FromMeters(1), UnitSystem.Us).Frames().Skip((5 * 12) + 12),
            one => Assert.Contains(
                one.Readouts[0].Value.Replace('\u00a0', ' '), one.Verdict!.Text.Replace('\u00a0', ' '), StringComparison.Ordinal));
        Assert.All(explorable.Frames().Take(5 * 12), own => Assert.StartsWith("0\u00a0", own.Readouts[0].Value, StringComparison.Ordinal));
    }

    [Fact]
    public void Open_findings_stand_before_those_that_are_as_wanted()
    {
        string html = new FindingList(
            [new(BenchSeverity.Pass, "hose", "is <fine>.", "Go on."), new(BenchSeverity.Wrong, "rod", "is too long.", "Shorten it.")])
            .ToHtml();
        Assert.True(html.IndexOf("WRONG: rod: is too long.", StringComparison.Ordinal) < html.IndexOf("hose: is &lt;fine&gt;.",
            StringComparison.Ordinal));
        Assert.Contains("Nothing was found wrong", new FindingList([]).ToHtml(), StringComparison.Ordinal);
        string one = new FindingList(
            [new(BenchSeverity.Pass, "hose", "0.3 bar (4.4 psi), 0.43 ± 0.20 mm (0.017 ± 0.008 in).", "")]).ToHtml();
        Assert.Contains("0.3 bar, 0.43 ± 0.20 mm.", one, StringComparison.Ordinal);
    }

    [Fact]
    public void The_sheet_holds_the_job_and_the_checklists_and_fetches_nothing()
    {
        BenchReport report = BenchReport.Of(Sheet);
        string html = BenchPrintSheet.Html(report, UnitSystem.Si);
        Assert.All(report.Changes, row =>
            Assert.Contains(InBoth.Only(row.Meaning, customary: false).TrimEnd('.').Replace("&", "&amp;", StringComparison.Ordinal), html,
                StringComparison.Ordinal));
        Assert.All(Checklist.All.SelectMany(list => list.Steps), step =>
            Assert.Contains($"<li>{InBoth.Only(step, customary: false)}</li>", html, StringComparison.Ordinal));
        Assert.Contains("A calculation is no approval", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("href=\"http", html, StringComparison.Ordinal);
        Assert.DoesNotContain("src=", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_of_parts_on_a_car_with_ranges_says_that_they_stand_at_their_middles()
    {
        string text = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));
        Vehicle plain = VehicleFile.Read(text, "test").Vehicle;
        Vehicle ranged = VehicleFile.Read(text, "test", new ValueOverride("wheelbase", "2.80 m .. 2.95 m")).Vehicle;
        string Caption(Vehicle before, Vehicle after)
        {
            var plan = new ChangePlan { Before = before, After = after };
            return BenchTables.Changes(plan, plan.Rows(), UnitSystem.Si).Caption;
        }

        Assert.DoesNotContain("middles", Caption(plain, plain), StringComparison.Ordinal);
        Assert.Contains("stand at their middles", Caption(plain, ranged), StringComparison.Ordinal);
    }

    [Fact]
    public void A_sheet_of_hoses_alone_has_no_empty_parts()
    {
        string html = BenchPrintSheet.Html(BenchReport.Of(new BenchSheet { Name = "Hoses <only>", Hoses = Sheet.Hoses }));
        Assert.Contains("Hoses &lt;only&gt;", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<h2>Plumbing", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<h2>Old parts", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<h2>Push rod", html, StringComparison.Ordinal);
    }
}
