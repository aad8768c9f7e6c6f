using BrakeBalance.Balance;
using BrakeBalance.Bench;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Rendering;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Teaching;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>Labels stand beside what they name, or a line joins them, in every state of every explorable.</summary>
public class LabelPlacementTests
{
    private const int MostStates = 500;
    private const double Nearest = 25;
    private const string Coupe = "coupe-1960s";

    /// <summary>The explorables of the notebooks, the story and the lessons.</summary>
    private static readonly Dictionary<string, Func<Explorable>> Made = new()
    {
        ["explore"] = () => BalanceExplorables.SettingAndLoad(Cars.Answer(Coupe), settings: 13, units: UnitSystem.Si),
        ["explore-setting"] = () => SettingExplorer.Of(Cars.Answer(Coupe), units: UnitSystem.Si),
        ["explore-effort"] = () => FootExplorables.Effort(Cars.Load(Coupe), units: UnitSystem.Si),
        ["explore-travel"] = () => FootExplorables.Travel(Cars.Load(Coupe), UnitSystem.Si),
        ["second"] = () => SecondBySecond(),
        ["above"] = () => StopExplorables.FromAbove(StopFigureTests.Cases(StopFigureTests.Setup(Coupe)), Cars.Load(Coupe).Wheelbase),
        ["pads"] = () => StopExplorables.PadsAndHeat(Cars.Load(Coupe), Cars.Load(Coupe).LoadCases[0].Name),
        ["explore-return"] = () => Return(),
        ["story-stop"] = () => Story("stop"),
        ["story-above"] = () => Story("above"),
        ["story-split"] = () => Story("split"),
        ["story-straight"] = () => Story("straight"),
        ["story-knee"] = () => Story("knee"),
        ["story-metering"] = () => Story("metering"),
        ["story-all"] = () => Story("all"),
    };

    public static TheoryData<string> Explorables => [.. Made.Keys, .. Lesson.All.Select(lesson => lesson.Id)];

    [Theory]
    [MemberData(nameof(Explorables))]
    public void Every_label_is_near_its_mark_or_joined_to_it_in_every_state(string name)
    {
        Explorable explorable = Made.TryGetValue(name, out Func<Explorable>? make) ? make() : LessonSheet.Of(name, 2026).Figure;
        IReadOnlyList<Frame> frames = explorable.Frames();
        int step = Math.Max(1, (frames.Count + MostStates - 1) / MostStates), labels = 0;
        List<string> far = [];
        foreach (int index in Enumerable.Range(0, frames.Count).Where(index => index % step == 0))
        {
            foreach (Figure figure in frames[index].Figures)
            {
                foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.Phone })
                {
                    FigureLayout layout = FigureLayout.Of(figure, size);
                    labels += layout.Labels.Count;
                    far.AddRange(layout.Labels.Where(label => !IsNear(layout, label)).Select(label =>
                        FormattableString.Invariant($"state {index}, {figure.Id} {layout.Size.Name}: {string.Join(' ', label.Lines)}")));
                }
            }
        }

        Assert.True(labels > 0 || explorable.Start.Figures.All(figure => figure.Layers.All(layer => layer is BarLayer)), "no labels");
        Assert.True(far.Count == 0, FormattableString.Invariant($"{far.Count} of {labels}:\n{string.Join('\n', far.Take(12))}"));
    }

    [Fact]
    public void A_label_driven_far_from_its_mark_is_joined_to_it_in_the_drawing_and_in_the_chart()
    {
        FigureBuilder builder = new FigureBuilder("crowd", UnitSystem.Si).Title("Crowded").Describe("Points.", "Points.")
            .X("A", "a", Measure.Number, 0, 1).Y("B", "b", Measure.Number, 0, 1);
        foreach (int i in Enumerable.Range(0, 14))
        {
            builder.Note($"a name of point {i}", 0.5 + (i * 1e-3), 0.5);
        }

        Figure figure = builder.Build();
        FigureLayout layout = FigureLayout.Of(figure, FigureSize.Page);
        PlacedLabel[] joined = [.. layout.Labels.Where(label => label.Leader is not null)];
        Assert.NotEmpty(joined);
        Assert.All(layout.Labels, label => Assert.True(IsNear(layout, label)));
        string[] lines = figure.ToSvg().Split("-labels\"")[1].Split("</g>")[0].Split("<line ")[1..];
        Assert.Equal(joined.Length, lines.Length);
        // Without a width of its own a line would have that of the letters' halo, thicker than any curve.
        Assert.All(lines, line => Assert.Contains(" stroke-width=\"1\"", line.Split('>')[0], StringComparison.Ordinal));
        var annotations = System.Text.Json.Nodes.JsonNode.Parse(figure.ToPlotlyJson())!["layout"]!["annotations"]!.AsArray();
        Assert.Equal(joined.Length, annotations.Count(note => note!["ax"] is { } ax
            && Math.Abs(ax.GetValue<double>()) + Math.Abs(note["ay"]!.GetValue<double>()) > 1));
    }

    [Fact]
    public void A_name_beside_a_line_of_its_tone_that_is_not_its_own_is_joined_to_its_own()
    {
        OwnMeasurements own = new CarStudy(Cars.Measured(Coupe)).Own!;
        Figure figure = GaugeFigures.Readings(own.Gauges!.Rows, own.Valve!, UnitSystem.Si);
        int joined = 0;
        foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.Phone, FigureSize.Phone with { Width = 333, Height = 223 } })
        {
            FigureLayout layout = FigureLayout.Of(figure, size);
            double Away(PlacedLabel label, int layer) => layout.Drawn((LineLayer)figure.Layers[layer]) is var path
                && Geometry.Between(label.Box, [.. path.Zip(path.Skip(1))]) is var (from, to) ? Geometry.Distance(from, to) : double.NaN;
            int[] black = [.. figure.Layers.Index()
                .Where(layer => layer.Item is LineLayer { Tone: Tone.Main }).Select(layer => layer.Index)];
            Assert.Equal(5, black.Length);
            foreach (PlacedLabel label in layout.Labels.Where(label => black.Contains(label.Owner)))
            {
                bool isAlone = black.All(other => Away(label, other) >= Away(label, label.Owner) - 1e-9);
                Assert.True(isAlone || label.Leader is not null || Away(label, label.Owner) <= PlacedLabel.Beside,
                    $"{size.Width}: {string.Join(' ', label.Lines)}");
                joined += label.Leader is null ? 0 : 1;
            }
        }

        Assert.True(joined > 0);
    }

    [Fact]
    public void Where_two_loads_crowd_a_picture_the_key_has_what_would_cover_a_point_or_be_cut_and_the_caption_says_what_is_drawn()
    {
        int keyed = 0;
        foreach (Vehicle car in Cars.Starters)
        {
            LoadCase light = car.LoadCases[0];
            LoadCase laden = light with { Name = "two up, luggage in front", Mass = 1.16 * light.Mass };
            Figure figure = BalanceFigures.LoadCases(new(car, light), new(car, laden), units: UnitSystem.Us);
            int installed = figure.Layers.OfType<LineLayer>().Count(line => line.Name.StartsWith("installed", StringComparison.Ordinal));
            Assert.Contains(installed == 2 ? "through the valve that feels it the installed line." : "the installed line stays.",
                figure.Caption, StringComparison.Ordinal);
            foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.Phone, FigureSize.Phone with { Width = 400, Height = 268 } })
            {
                FigureLayout layout = FigureLayout.Of(figure, size);
                keyed += layout.Keyed.Count;
                PlacedLabel[] names = [.. layout.Labels.Where(label => layout.Figure.Layers[label.Owner] is not MarkerLayer
                {
                    PointLabels: not null
                })];
                Dot[] points = [.. figure.Layers.OfType<MarkerLayer>().SelectMany(mark => mark.X.Zip(mark.Y, layout.At))];
                Assert.All(names, label =>
                {
                    Assert.DoesNotContain(points, label.Box.Contains);
                    Assert.True(label.Leader is not var (from, to)
                        || layout.Labels.All(other => other == label || Geometry.Clip(from, to, other.Box) is null),
                        $"{car.Name} {size.Name}: {string.Join(' ', label.Lines)}");
                });
            }
        }

        Assert.True(keyed > 0);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(2.5)]
    public void A_plan_has_one_scale_at_every_size(double moment)
    {
        Figure plan = StopFigures.PlanView(
            StopFigureTests.Cases(StopFigureTests.Setup(Coupe)), Cars.Load(Coupe).Wheelbase, moment, UnitSystem.Si);
        foreach (FigureSize size in FigureSize.Published.Concat([FigureSize.Page, FigureSize.Phone]))
        {
            FigureLayout layout = FigureLayout.Of(plan, size);
            double along = layout.AtX(50) - layout.AtX(0), across = layout.AtY(0) - layout.AtY(50);
            Assert.Equal(1, across / along, 1e-6);
            Assert.True(layout.XLow <= -4 && layout.YLow <= 0);
        }
    }

    /// <summary>Worked out from the layers alone: the placer's own geometry is not asked.</summary>
    private static bool IsNear(FigureLayout layout, PlacedLabel label)
    {
        IEnumerable<Dot> mark = layout.Figure.Layers[label.Owner] switch
        {
            LineLayer line => Dense(layout, [.. line.X.Zip(line.Y, layout.At)]),
            ReferenceLayer { Vertical: true } reference => Dense(layout,
                [new(layout.AtX(reference.Value), layout.Plot.Top), new(layout.AtX(reference.Value), layout.Plot.Bottom)]),
            ReferenceLayer reference => Dense(layout,
                [new(layout.Plot.Left, layout.AtY(reference.Value)), new(layout.Plot.Right, layout.AtY(reference.Value))]),
            MarkerLayer markers => markers.X.Zip(markers.Y, layout.At),
            NoteLayer note => [layout.At(note.X, note.Y)],
            BandLayer band => Dense(layout, [.. band.X.Zip(band.Upper, layout.At), .. band.X.Zip(band.Lower, layout.At).Reverse()]),
            RegionLayer region => Dense(layout, [.. region.X.Zip(region.Y, layout.At)]),
            _ => [label.Box.Centre],
        };
        Dot[] near = [.. mark];
        return label.Leader is var (from, to)
            ? near.Min(dot => Geometry.Distance(dot, to)) < 3 && Away(from, label.Box) < 1
            : near.Min(dot => Away(dot, label.Box)) <= Nearest
                || (layout.Figure.Layers[label.Owner] is RegionLayer or BandLayer && Geometry.Inside(label.Box.Centre, near));
    }

    private static double Away(Dot dot, Box box) => Geometry.Distance(
        dot, new(Math.Clamp(dot.X, box.Left, box.Right), Math.Clamp(dot.Y, box.Top, box.Bottom)));

    /// <summary>Points along a path, at most two units apart, as far as they lie in the plot.</summary>
    private static IEnumerable<Dot> Dense(FigureLayout layout, IReadOnlyList<Dot> path) =>
        path.Zip(path.Skip(1)).SelectMany(part =>
        {
            int count = (int)Math.Ceiling(Math.Min(4000, Geometry.Distance(part.First, part.Second)) / 2) + 1;
            return Enumerable.Range(0, count + 1).Select(i => Geometry.Along(part.First, part.Second, i / (double)count));
        }).Where(layout.Plot.Grown(2).Contains);

    private static Explorable SecondBySecond()
    {
        Vehicle car = Cars.Load(Coupe);
        StopSetup setup = StopFigureTests.Setup(Coupe);
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Speed.FromKilometersPerHour(100));
        return StopExplorables.SecondBySecond(new BalanceModel(car, car.LoadCases[0]), stop, 0.9);
    }

    private static Explorable Story(string screen) =>
        KneeStory.Of(screen, Cars.Load(Coupe), () => Cars.Answer(Coupe), UnitSystem.Si);

    private static Explorable Return()
    {
        BenchSheet sheet = BenchInput.Example;
        return BenchExplorables.Return(sheet.Plumbing!.Return, sheet.Plumbing.Release!, Length.FromMeters(1), UnitSystem.Si);
    }
}
