using System.Collections.Concurrent;
using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Publishing;

public partial class FigureCatalogueTests
{
    /// <summary>Words of the trade, symbols and code that readers of the plain variants should not have to know.</summary>
    private static readonly string[] Jargon =
    [
        "adhesion", "utilis", "braking rate", "efficiency", "knee", "slope", "lock-up", "line pressure", "load case", ", gauge",
            "installed", "ideal", "run-out", "threshold", "R13",
        "FMVSS", "CFR", "lateral", "torque", "coefficient", "normal reaction", "T₁", "T₂", "p₁", "p₂", "ψ", "μ", "a_y", "[–]",
            "bound", "slip ", " slip,", "bore", "distribution", " hat ",
        "null", "{", "}", "json", "C#",
    ];

    private static readonly ConcurrentDictionary<(string, UnitSystem), IReadOnlyList<(CatalogueEntry Entry, Figure Figure)>> Made = new();

    private static readonly ConcurrentDictionary<(string, UnitSystem), Dictionary<string, Figure>> MadePlain = new();

    public static TheoryData<string, UnitSystem> EveryCar => EveryFigureTests.EveryCar;

    [Fact]
    public void Every_entry_makes_its_figure_for_some_car()
    {
        string[] made = [.. Cars.Names.SelectMany(car => Of(car, UnitSystem.Si)).Select(item => item.Entry.Name)];
        Assert.All(FigureCatalogue.All, entry => Assert.Contains(entry.Name, made));
        Assert.Equal(FigureCatalogue.All.Count, FigureCatalogue.All.Select(entry => entry.Name).Distinct().Count());
        Assert.InRange(FigureCatalogue.All.Count, 20, 60);
        Assert.All(FigureCatalogue.All.Where(entry => entry.Needs is null), entry =>
            Assert.Equal(Cars.Names.Count, made.Count(name => name == entry.Name)));
    }

    [Fact]
    public void Every_caption_names_the_car_and_every_deceleration_in_words_has_its_unit()
    {
        foreach ((string car, (CatalogueEntry entry, Figure figure)) in Cars.Names.SelectMany(car =>
            Of(car, UnitSystem.Si).Where(item => item.Entry is { IsMeasured: false, Name: not ("slip-curves" or "hose-bends") })
                .Select(item => (car, item))))
        {
            Assert.Contains(Cars.Load(car).Name, figure.Caption, StringComparison.Ordinal);
            Assert.DoesNotMatch(@"run-out at [^;.]* and \d\.\d\d[;.]|\d\.\d\d without assist", figure.LongDescription);
        }
    }

    [Fact]
    public void A_car_that_needs_no_valve_has_no_figures_of_settings()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        car = car.WithFrictionFactors(1, 0.5) with { Hydraulics = car.Hydraulics.WithoutRearProportioning() };
        Assert.Equal(SettingReach.NotNeeded, new CarStudy(car).Answer.Reach);
        Assert.All(FigureCatalogue.For(car, UnitSystem.Si).Where(one =>
            one.Entry.Name is "safe-settings" or "setting-efficiency" or "safe-limits" or "knee-setting"), one => Assert.Null(one.Make()));
    }

    [Fact]
    public void A_spread_that_moves_no_limit_is_said_to_cost_nothing()
    {
        (double, IReadOnlyList<(double, Pressure?)>)[] same =
            [.. new[] { 0, 0.15 }.Select(spread => (spread,
                (IReadOnlyList<(double, Pressure?)>)[(0, Pressure.FromBars(140)), (0.3, Pressure.FromBars(140))]))];
        Assert.Equal("Friction off by up to 15 % instead of 0 % leaves the safe limit of the knee at 140 bar at a slope of 0.30",
            SettingFigures.SafeLimits(same, UnitSystem.Si).Title.Replace('\u00a0', ' '));
        // The same of a car whose brakes see no more pressure than that: any knee does.
        Vehicle car = Cars.Load("coupe-1960s");
        car = car with { Hydraulics = car.Hydraulics with { MaximumPressure = Pressure.FromBars(140) } };
        Figure any = SettingFigures.SafeLimits(same, UnitSystem.Si, car: car);
        Assert.EndsWith("leaves any knee safe at a slope of 0.30", any.Title, StringComparison.Ordinal);
        Assert.Contains("first with any knee at a slope of 0.00 and with any knee at a slope of 0.30.", any.LongDescription,
            StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Captions_and_alt_texts_keep_their_limits_in_both_variants(string car, UnitSystem units)
    {
        foreach ((CatalogueEntry entry, Figure figure) in Of(car, units))
        {
            Assert.Equal(entry.Name, figure.Id);
            foreach (Figure variant in new[] { figure, Plain(car, units, entry) }.Select(variant =>
                entry.Marked(variant, Cars.Measured(car))))
            {
                Assert.Equal(entry.IsMeasured, variant.Caption.EndsWith(" Invented measurements.", StringComparison.Ordinal));
                Assert.True(variant.Caption.Split(' ').Length is >= 3 and <= 40, $"{entry.Name}: {variant.Caption}");
                Assert.InRange(variant.AltText.Length, 20, Figure.AltTextLimit);
                Assert.Matches(@"^(Plan|Bar chart|Map|Line chart|Chart of points)[,:] ", variant.AltText);
                Assert.EndsWith($"{variant.Title}.", variant.AltText, StringComparison.Ordinal);
                Assert.Matches(@"\d", variant.Title);
                Assert.InRange(variant.LongDescription.Length, 40, 900);
                Assert.InRange(variant.Title.Length, 15, 160);
            }
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Plain_variants_are_free_of_the_words_of_the_trade(string car, UnitSystem units)
    {
        List<string> faults = [];
        foreach ((CatalogueEntry entry, Figure figure) in Of(car, units))
        {
            Figure plain = Plain(car, units, entry);
            string[] texts =
            [
                plain.Title, plain.Caption, plain.AltText, plain.LongDescription, plain.XAxis.Title(units), plain.YAxis.Title(units),
                    plain.Table.ToCsv(), .. Texts(plain.ToSvg(FigureSize.Column)),
            ];
            foreach (string text in texts)
            {
                faults.AddRange(Jargon.Where(word => text.Contains(word, StringComparison.OrdinalIgnoreCase))
                    .Select(word => $"{entry.Name}: \"{word}\" in \"{text}\""));
            }

            Assert.InRange(Names(plain), 0, PlainText.MostLabels);
            Assert.True(Names(plain) <= Math.Max(Names(figure), 1), entry.Name);
            Assert.All(plain.Layers.OfType<MarkerLayer>().Where(_ => entry.Name == "safe-settings"),
                mark => Assert.NotEmpty(mark.LabelText));
        }

        Assert.True(faults.Count == 0, string.Join('\n', faults));

        static int Names(Figure figure) => figure.Layers.Sum(layer => layer switch
        {
            MapLayer map => map.Classes.Count(c => c.Label.Length > 0),
            MarkerLayer { PointLabels: { } labels } => labels.Count,
            _ => layer.LabelText.Length > 0 ? 1 : 0,
        });
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Labels_overlap_neither_each_other_nor_the_edge_at_any_published_size(string car, UnitSystem units)
    {
        Parallel.ForEach(Of(car, units), item =>
        {
            foreach (Figure figure in new[] { item.Figure,
                Plain(car, units, item.Entry) with { Credit = "A credit line for the test" } })
            {
                foreach (FigureSize size in FigureSize.Published)
                {
                    var layout = FigureLayout.Of(figure, size);
                    for (int i = 0; i < layout.Labels.Count; i++)
                    {
                        Assert.True(layout.Plot.Contains(layout.Labels[i].Box), $"{figure.Id} {size.Name}: {layout.Labels[i]}");
                        for (int j = 0; j < i; j++)
                        {
                            Assert.False(layout.Labels[i].Box.Overlaps(layout.Labels[j].Box),
                                $"{figure.Id} {size.Name}: {layout.Labels[i]} {layout.Labels[j]}");
                        }
                    }

                    Assert.True(layout.Plot.Width > size.Width * 0.6
                        && layout.Plot.Height > size.Height * 0.35, $"{figure.Id} {size.Name}: plot {layout.Plot}");
                }
            }
        });
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Without_colour_every_line_and_area_is_still_told_apart(string car, UnitSystem units)
    {
        foreach ((CatalogueEntry _, Figure figure) in Of(car, units))
        {
            foreach (FigureSize size in FigureSize.Published)
            {
                var layout = FigureLayout.Of(figure, size);
                int[] keyed = [.. layout.Keyed.Select(key => key.Owner).Distinct()];

                // A line is told by the name beside it; lines named in the key must differ by their dashes, bars and areas by their hatch.
                object[] marks = [.. keyed.Select(owner => Mark(figure.Layers[owner]))];
                Assert.True(marks.Distinct()
                    .Count() == marks.Length,
                    $"{figure.Id} {size.Name}: {string.Join(", ", keyed.Select(owner => figure.Layers[owner].Name))}");
            }
        }

        static object Mark(Layer layer) => layer switch
        {
            LineLayer line => ("line", line.Dash, line.Width),
            ReferenceLayer line => ("line", line.Dash, 0.0),
            BarLayer bars => ("bars", bars.Hatch),
            RegionLayer region => ("region", region.Hatch),
            MarkerLayer points => ("points", points.Shape),
            _ => layer.Name,
        };
    }

    [Fact]
    public void Every_figure_of_every_starter_file_is_drawn_full_and_plain_with_its_locks_named()
    {
        Assert.Equal(30, Cars.Starters.Count);
        HashSet<string> classes = [];
        foreach (BrakeBalance.Vehicles.Vehicle car in Cars.Starters)
        {
            (CatalogueEntry Entry, Figure Figure)[] full = [.. Figures(car, UnitSystem.Si)];
            var plain = Figures(car, UnitSystem.Us, plain: true).ToDictionary(one => one.Entry.Name, one => one.Figure);
            Assert.Equal(full.Select(one => one.Entry.Name), plain.Keys);
            Assert.All(full.Select(one => one.Figure).Concat(plain.Values), figure => Assert.NotEmpty(figure.ToSvg(FigureSize.Column)));
            var map = (MapLayer)plain["bore-ratio"].Layers[0];
            classes.UnionWith(map.Cells.SelectMany(row => row).Select(cell => map.Classes[cell].Label));
            Assert.All(((string[])["stop-speed", "stop-loads"]).SelectMany(name => plain[name].Layers.OfType<ReferenceLayer>()), line =>
                Assert.EndsWith("lock", line.LabelText, StringComparison.Ordinal));
        }

        Assert.Superset(new HashSet<string>(["fits", "pedal too long or too light", "pedal too hard, or so without help"]), classes);
        Figure loads = Plain(Cars.Names[0], UnitSystem.Si, FigureCatalogue.All.Single(entry => entry.Name == "load-cases"));
        Assert.All(loads.Layers.OfType<MarkerLayer>(), mark => Assert.Contains("wheels lock, ", mark.LabelText, StringComparison.Ordinal));
        Assert.Equal(2, loads.Layers.OfType<MarkerLayer>().Count());
    }

    [Fact]
    public void Two_runs_give_the_same_bytes_under_any_culture()
    {
        string first = All();
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(first, All());
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }

        string All() => string.Concat(Figures(Cars.Load(Cars.Names[0]), UnitSystem.Us).Select(item =>
            item.Figure.ToSvg(FigureSize.Slide, Theme.Print)
                + Plain(Cars.Names[0], UnitSystem.Us, item.Entry).ToSvg(FigureSize.Square, Theme.Transparent) + item.Figure.Table.ToCsv()));
    }

    [Theory]
    [InlineData("column", 1200, 800)]
    [InlineData("full-width", 1600, 900)]
    [InlineData("slide", 1920, 1080)]
    [InlineData("square", 1080, 1080)]
    [InlineData("upright", 1080, 1350)]
    [InlineData("card", 1200, 630)]
    [InlineData("print-single", 1039, 831)] // 88 mm at 300 dots an inch
    [InlineData("print-double", 2102, 1328)] // 178 mm
    public void Published_sizes_are_those_of_web_and_print(string name, int width, int height) =>
        Assert.Equal((width, height), FigureSize.Published.Single(size => size.Name == name).Pixels());

    [Fact]
    public void A_transparent_drawing_has_no_background()
    {
        string svg = Of(Cars.Names[0], UnitSystem.Si)[0].Figure.ToSvg(FigureSize.Column, Theme.Transparent);
        Assert.DoesNotContain("#ffffff", svg, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_whose_pedal_ends_before_any_pressure_has_every_figure_but_those_that_press_the_pedal()
    {
        BrakeBalance.Vehicles.Vehicle car = Cars.Load("coupe-1960s");
        BrakeBalance.Vehicles.BrakeControl control = car.Control!;
        var taken = control.Circuits!.Value.Select(circuit => circuit with { Clearance = UnitsNet.Length.FromMillimeters(10) });
        string[] whole = [.. Figures(car, UnitSystem.Si).Select(item => item.Entry.Name)];
        string[] left = [.. Figures(car with { Control = control with { Circuits = taken } }, UnitSystem.Si)
            .Select(item => item.Entry.Name)];
        CatalogueEntry[] gone = [.. whole.Except(left).Select(name => FigureCatalogue.All.Single(entry => entry.Name == name))];
        Assert.Contains("stop-speed", gone.Select(entry => entry.Name));
        Assert.Contains("effort", left);
        Assert.All(gone, entry => Assert.StartsWith("a foot that brings pressure", entry.Needs, StringComparison.Ordinal));
    }

    private static IReadOnlyList<(CatalogueEntry Entry, Figure Figure)> Of(string car, UnitSystem units) =>
        Made.GetOrAdd((car, units), key => [.. Figures(Cars.Measured(key.Item1), key.Item2)]);

    private static Figure Plain(string car, UnitSystem units, CatalogueEntry entry) => MadePlain.GetOrAdd((car, units), key =>
        Figures(Cars.Measured(key.Item1), key.Item2, plain: true).ToDictionary(one => one.Entry.Name, one => one.Figure))[entry.Name];

    private static IEnumerable<(CatalogueEntry Entry, Figure Figure)> Figures(BrakeBalance.Vehicles.Vehicle car, UnitSystem units,
        bool plain = false) =>
        FigureCatalogue.For(car, units, plain).Select(item => (item.Entry, Figure: item.Make())).Where(item => item.Figure is not null)
            .Select(item => (item.Entry, item.Figure!));

    private static IEnumerable<string> Texts(string svg) =>
        XDocument.Parse(svg).Descendants().Where(e => e.Name.LocalName == "text").Select(e => Spaces().Replace(e.Value, " "));

    [GeneratedRegex(@"\s")]
    private static partial Regex Spaces();
}
