using System.Globalization;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Rendering;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

/// <summary>What a figure says is what it draws, also for a car whose file leaves much out.</summary>
public class ClaimTests
{
    private static readonly Vehicle Bare = Car("""{ "type": "none" }""");
    private static readonly Vehicle Pump =
        Car("""{ "type": "hydraulic", "boostRatio": 3.5, "reliefPressure": "85 bar", "pumpFlow": "6 l/min", "powerPiston": "34 mm" }""");

    private static Vehicle Car(string assist, double friction = 0.4) => VehicleFile.Read(FormattableString.Invariant($$"""
        {
          "name": "x", "wheelbase": "2.45 m",
          "loadCases": [
            { "name": "driver only", "mass": "1000 kg", "frontShare": 0.53, "centreOfGravityHeight": "0.5 m" },
            { "name": "laden", "mass": "1250 kg", "frontShare": 0.48, "centreOfGravityHeight": "0.53 m" }
          ],
          "front": { "tyre": { "loadedRadius": "290 mm" },
            "brake": { "type": "disc", "friction": 0.4, "pistonDiameters": ["48 mm"], "effectiveRadius": "110 mm" }, "track": "1.38 m" },
          "rear": { "tyre": { "loadedRadius": "290 mm" },
            "brake": { "type": "disc", "friction": {{friction}}, "pistonDiameters": ["35 mm"], "effectiveRadius": "112 mm" },
            "track": "1.36 m" },
          "hydraulics": { "rearValves": [{ "type": "proportioning", "knee": "30 bar", "slope": 0.4 }] },
          "pedal": { "ratio": 5 }, "assist": {{assist}},
          "masterCylinder": { "type": "tandem", "stroke": "34 mm", "bore": "7/8 in" },
          "fluid": { "front": { "caliper": "fixed", "clearance": "0.3 mm" }, "rear": { "caliper": "fixed", "clearance": "0.3 mm" } },
          "dynamics": { "maximumSpeed": "150 km/h" }
        }
        """), "test").Vehicle;

    private static CatalogueEntry Entry(string name) => FigureCatalogue.All.Single(one => one.Name == name);

    [Fact]
    public void A_car_that_stores_no_help_has_no_figure_of_a_reserve_and_the_catalogue_says_what_it_needs()
    {
        Assert.All(new[] { Bare, Pump }, car => Assert.Null(Entry("reserve").For(car, UnitSystem.Si)));
        Assert.NotNull(Entry("reserve").For(Cars.Load("coupe-1960s"), UnitSystem.Si));
        Assert.Contains("stores help", Entry("reserve").Needs, StringComparison.Ordinal);
        Assert.StartsWith("No help is stored", FootFigures.Reserve(new ControlForce(Cars.Model(Bare))).Title, StringComparison.Ordinal);
    }

    [Fact]
    public void A_caption_says_once_that_ranges_are_at_their_middle_and_only_of_a_car_that_has_some()
    {
        Vehicle ranged = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json"),
            [new("rear.brake.friction", "0.35 .. 0.41")]).Vehicle;
        foreach ((Vehicle car, int times) in ((Vehicle, int)[])[(ranged, 1), (Cars.Load("coupe-1960s"), 0)])
        {
            BalanceModel light = new(car, car.LoadCases[0]), laden = new(car, car.LoadCases[^1]);
            var setting = Setting.Of(car);
            Figure[] drawn =
            [
                BalanceFigures.BrakeForces(light), BalanceFigures.LoadCases(light, laden), BalanceFigures.LinePressures(light),
                KneeFigure.Of(setting), SettingFigures.SafeSettings(SettingMap.Of(setting), setting),
                .. KneeStory.Screens(car).SelectMany(screen =>
                    KneeStory.Of(screen, car, () => setting, UnitSystem.Si).Start.Figures),
                .. new[] { "knee-setting", "brake-forces", "before-after", "safe-limits", "adhesion-utilisation" }
                    .Select(name => Entry(name).Marked(Entry(name).For(car, UnitSystem.Si)!, car)),
            ];
            Assert.All(drawn, figure => Assert.Equal(times, figure.Caption.Split(FigureBuilder.Middles).Length - 1));
            Assert.All(
                (Exploring.Explorable[])[BalanceExplorables.SettingAndLoad(setting), SettingExplorer.Of(setting)],
                moved => Assert.Equal(times, moved.ToHtml().Split("<dt>Ranges of the file</dt><dd>each at its middle").Length - 1));
            CatalogueEntry bends = Entry("hose-bends");
            string caption = bends.Marked(bends.For(car, UnitSystem.Si)!, car).Caption;
            Assert.DoesNotContain(FigureBuilder.Middles, caption, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("0.38", "")]
    [InlineData("0.33 .. 0.43", " Grey hatching: beyond the safe limit over the file's ranges.")]
    [InlineData("0.30 .. 0.46", " Grey hatching: not safe over the file's ranges.")]
    public void Settings_beyond_a_limit_over_the_ranges_are_hatched_and_named_and_only_then(string friction, string said)
    {
        bool ranged = said.Length > 0;
        Vehicle car = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json"),
            [new("rear.brake.friction", friction)]).Vehicle;
        var setting = Setting.Of(car);
        IReadOnlyList<SettingOutcome> outcomes = SettingMap.Of(setting);
        const string beyond = "front first at the ranges' middle only";
        double limit = setting.SafeLimit?.Knee?.Pascals ?? -1;
        Figure map = SettingFigures.SafeSettings(outcomes, setting, UnitSystem.Si);
        Figure efficiency = SettingFigures.EfficiencyOfSettings(outcomes, setting, units: UnitSystem.Si);
        foreach (Figure figure in new[] { map, efficiency })
        {
            MapLayer[] layers = [.. figure.Layers.OfType<MapLayer>()];
            (int X, int Class)[] cells = [.. layers.SelectMany(layer => layer.Cells.SelectMany(row => row.Index()
                .Where(cell => cell.Item >= 0 && layer.Classes[cell.Item].Label == beyond)))];
            Assert.Equal(ranged, cells.Length > 0);
            Assert.All(cells, cell => Assert.True(layers[0].X[cell.X] > limit));
            Assert.Contains(said, figure.Caption, StringComparison.Ordinal);
            Assert.Equal(ranged, figure.Caption.Contains("Grey hatching", StringComparison.Ordinal));
        }

        SettingOutcome[] safe = [.. outcomes.Where(one => one.FrontFirstEverywhere && (!ranged || one.Knee.Pascals <= limit * 1.001))];
        Assert.Contains(safe.Length == 0 ? "No setting tried keeps the front axle first"
            : $"to {Measure.Percent.Text(safe.Max(one => one.MeanEfficiency), UnitSystem.Si)}", efficiency.Title, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("big-cam-saloon")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("track-coupe")]
    public void The_efficiencies_that_the_maps_title_names_are_those_of_cells_that_it_shows(string name)
    {
        Figure figure = SettingFigures.EfficiencyOfSettings(new CarStudy(Cars.Load(name)).Settings, units: UnitSystem.Si);
        double[] shown = [.. Assert.Single(figure.Layers.OfType<HeatLayer>()).Values.SelectMany(row => row).OfType<double>()];
        string Percent(double share) => Measure.Percent.Text(share, UnitSystem.Si);
        Assert.Contains($"runs from {Percent(shown.Min())} to {Percent(shown.Max())}", figure.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_the_lines_cross_is_one_answer_in_every_figure_that_tells_it()
    {
        int crossing = 0;
        foreach (double friction in new[] { 0.26, 0.28, 0.30, 0.32, 0.34, 0.36 })
        {
            Vehicle car = Car("""{ "type": "none" }""", friction);
            BalanceModel model = new(car, car.LoadCases[0]);
            string order = BalanceFigures.BrakeForces(model, units: UnitSystem.Si).Title;
            string alike = BalanceFigures.BrakingEfficiency(model, units: UnitSystem.Si).LongDescription;
            bool rearFirst = alike.Contains("The rear axle locks first at adhesions", StringComparison.Ordinal);

            // The plane reaches a little further than the roads that the other looks at.
            Assert.Equal(rearFirst, model.FirstRearLedRate(0.1, model.GreatestRate(1.2)) is not null);
            Assert.True(!rearFirst || order.Contains("rear axle", StringComparison.Ordinal), order);
            crossing += rearFirst ? 1 : 0;
        }

        Assert.InRange(crossing, 1, 6);
    }

    [Fact]
    public void A_car_of_one_load_case_is_drawn_once_and_has_no_figure_of_its_load()
    {
        Vehicle alone = Bare with { LoadCases = [Bare.LoadCases[0]] };
        var model = new BalanceModel(alone, alone.LoadCases[0]);
        Figure figure = BalanceFigures.LoadCases(model, model);
        Assert.EndsWith(" g driver only", figure.Title, StringComparison.Ordinal);
        Assert.DoesNotContain(", ", figure.Title, StringComparison.Ordinal);
        Assert.DoesNotContain("and driver only", figure.Caption, StringComparison.Ordinal);
        Assert.Single(figure.Layers.OfType<LineLayer>(), line => line.Name.StartsWith("ideal", StringComparison.Ordinal));
        Assert.All(new[] { "load-cases", "brake-forces-laden" }, name => Assert.Null(Entry(name).For(alone, UnitSystem.Si)));
    }

    [Fact]
    public void A_setting_beyond_the_safe_limit_is_no_good_news_where_the_picture_has_no_such_road()
    {
        var setting = Setting.Of(Cars.Load("track-coupe").WithFrontForceShare(0.6));
        Assert.True(setting.PresentIsBeyond);
        Charts.Exploring.Frame frame = SettingExplorer.Of(setting).At([0, 3, 3]);
        Assert.Equal(Charts.Exploring.VerdictKind.Caution, frame.Verdict!.Kind);
        Assert.Contains(frame.Figures[0].Layers, layer => layer.Name == "present setting");
    }

    [Fact]
    public void A_load_case_whose_name_has_a_comma_does_not_break_the_list_in_which_it_stands()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        car = car with { LoadCases = [car.LoadCases[0] with { Name = "driver, half tank" }, car.LoadCases[^1] with { Name = "laden" }] };
        var setting = Setting.Of(car);
        Assert.Contains("\"driver, half tank\", adhesion ", setting.Binding!.Words(UnitSystem.Si), StringComparison.Ordinal);
        Assert.Matches("g \"driver, half tank\", 0\\.\\d\\d g laden$", BalanceFigures.LoadCases(
            new BalanceModel(car, car.LoadCases[0]), new BalanceModel(car, car.LoadCases[1]), units: UnitSystem.Si).Title);
        Assert.StartsWith("driver only, adhesion", Cars.Answer("coupe-1960s").Binding!.Words(UnitSystem.Si), StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_without_a_valve_to_set_is_first_shown_as_it_is()
    {
        Vehicle[] bare = [.. Cars.Starters.Where(car => SettingSearch.VariableOf(car) == SettingVariable.AddedKnee).Take(4)];
        Assert.Contains(bare, car => car.Hydraulics.SensesLoad);
        Assert.All(bare, car =>
        {
            var setting = Setting.Of(car);
            Charts.Exploring.Explorable moved = BalanceExplorables.SettingAndLoad(setting, units: UnitSystem.Si);
            LockUp dry = new BalanceModel(car, car.LoadCases[0]).FirstLockUp(0.9)!;
            Assert.Equal($"{dry.At.BrakingRate.ToString("0.00", CultureInfo.InvariantCulture)} g", moved.Start.Readouts[1].Value);
            Assert.Equal("none", moved.Controls[0].Settings[moved.Controls[0].Start]);
            Assert.True(!setting.IsBuiltBeyond || moved.Start.Verdict!.Kind == Charts.Exploring.VerdictKind.Caution);
        });
    }

    [Fact]
    public void A_picture_with_roads_on_which_the_rear_locks_first_speaks_of_no_knee_as_any_setting()
    {
        // Where the search finds any setting good with every number at its middle, weaker fronts still make a limit.
        Charts.Exploring.Frame[] limited = [.. Cars.Starters.Where(car => car.Hydraulics.SensesLoad)
            .Select(car => SettingExplorer.Of(Setting.Of(car), units: UnitSystem.Si))
            .SelectMany(shown => new[] { shown.Start, shown.At([0, 0, 6]) })
            .Where(frame => frame.Figures[0].Layers.Any(layer => layer.Name == "rear first"))];
        Assert.NotEmpty(limited);
        Assert.All(limited, frame =>
        {
            Assert.DoesNotContain("a knee of any setting", frame.Figures[0].Title, StringComparison.Ordinal);
            Assert.NotEqual("any setting", frame.Readouts[1].Value);
        });
    }

    [Fact]
    public void A_balance_bars_explorer_moves_the_bar_and_finds_what_the_search_finds()
    {
        Vehicle car = Cars.Load("track-coupe");
        var setting = Setting.Of(car);
        Charts.Exploring.Frame frame = SettingExplorer.Of(setting, units: UnitSystem.Si).At([0, 3, 3]);
        Figure figure = frame.Figures[0];
        Assert.DoesNotContain("knee", $"{figure.Title} {figure.Caption} {figure.YAxis.Quantity} {frame.Readouts[1].Label}",
            StringComparison.OrdinalIgnoreCase);
        LineLayer line = figure.Layers.OfType<LineLayer>().Single(layer => layer.Name == "front first down to here");
        Assert.All(line.X.Zip(line.Y).Where(at => at.Second is > 0.21 and < 0.79), at =>
        {
            Axle? First(double share) =>
                new BalanceModel(car.WithFrontForceShare(share), car.LoadCases[0]).FirstLockUp(at.First)?.First;
            Assert.NotEqual(Axle.Rear, First(at.Second));
            Assert.Equal(Axle.Rear, First(at.Second - 0.0006));
        });
        Assert.Contains("% front", frame.Readouts[1].Value, StringComparison.Ordinal);
    }

    [Fact]
    public void Before_and_after_reach_to_the_grippiest_road_of_the_conditions()
    {
        Vehicle grip = Bare with { Conditions = Bare.Conditions with { HighestAdhesion = 1.3 } };
        var model = new BalanceModel(grip, grip.LoadCases[0]);
        Assert.Contains("to 1.30)", ComparisonFigures.BeforeAfter(model, model).Title, StringComparison.Ordinal);
        Assert.DoesNotContain("Triangles", ComparisonFigures.BeforeAfter(model, model, [0.3]).Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void Hot_brakes_are_called_what_they_are_and_stops_are_counted_whole()
    {
        Figure stops = Entry("heat-stops").For(Cars.Load("coupe-1960s"), UnitSystem.Si)!;
        Assert.Equal(["front disc", "rear drum"], stops.Layers.OfType<LineLayer>().Take(2).Select(line => line.Name));
        Assert.All(FigureLayout.Of(stops, FigureSize.Phone).XTicks, tick => Assert.Equal(Math.Round(tick.Value), tick.Value));
    }

    [Fact]
    public void The_choice_of_a_bore_speaks_of_assist_only_where_there_is_one()
    {
        Assert.StartsWith("Without assist ", Entry("bore-ratio").For(Bare, UnitSystem.Si)!.Title, StringComparison.Ordinal);
        Assert.StartsWith("With the present assist ", Entry("bore-ratio").For(Pump, UnitSystem.Si)!.Title, StringComparison.Ordinal);
    }

    [Fact]
    public void Travel_names_what_the_file_has_no_number_for_and_is_then_at_most_what_it_says()
    {
        Figure bare = Entry("travel").For(Bare, UnitSystem.Si)!, full = Entry("travel").For(Cars.Load("coupe-1960s"), UnitSystem.Si)!;
        Assert.StartsWith("At most ", bare.Title, StringComparison.Ordinal);
        Assert.Contains("hoses, calipers or drums, fluid", bare.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("swelling", bare.Caption, StringComparison.Ordinal);
        Assert.Contains("swelling", full.Caption, StringComparison.Ordinal);
        Assert.DoesNotContain("Not counted", full.Caption, StringComparison.Ordinal);
        Assert.Contains(Sheets.PocketCard.Of(Bare, Bare.LoadCases[0], UnitSystem.Si).Pedal, line =>
            line.Name == "Pedal left to the floor at 0.8\u00a0g, at most: hoses, calipers or drums, fluid not counted");
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.4)]
    [InlineData(0.5)]
    public void All_of_a_cell_in_which_the_front_is_first_lies_within_the_safe_limit(double friction)
    {
        var setting = Setting.Of(Car("""{ "type": "none" }""", friction));
        MapLayer map = SettingFigures.SafeSettings(SettingMap.Of(setting), setting, UnitSystem.Si).Layers.OfType<MapLayer>().Single();
        (double limit, double slope) = (setting.SafeLimit!.Knee!.Value.Pascals, setting.Middle.Slope!.Value);
        (double knee, double rise) = (map.X[1] - map.X[0], map.Y[1] - map.Y[0]);
        int row = map.Y.Index().Last(at => at.Item + (0.5 * rise) <= slope + 1e-6).Index;
        double[] green = [.. map.X.Where((_, column) => map.Cells[row][column] == 0).Select(middle => middle + (0.5 * knee))];
        Assert.Equal(limit, green.Max(), 1e3);
        Assert.Equal(0, map.X[0] - (0.5 * knee), 1);
    }

    [Fact]
    public void The_limit_in_bends_is_drawn_as_a_step_where_beyond_it_any_knee_does()
    {
        int steps = 0;
        foreach (double friction in new[] { 0.3, 0.35, 0.4 })
        {
            Vehicle car = Car("""{ "type": "none" }""", friction);
            BendMap map = TrailBraking.Map(car, car.LoadCases[0], CarStudy.Dry, CarStudy.From);
            Figure figure = BendFigures.SafeKnee(map, UnitSystem.Si);
            BendPoint[] free = [.. map.Points.Where(map.AnyKnee)];
            steps += free.Length > 0 && free.Length < map.Points.Count ? 1 : 0;
            double[] limits = [.. map.Points.Where(point => !map.AnyKnee(point)).Select(point => point.SafeKnee?.Pascals ?? 0)];
            Assert.All(figure.Layers.OfType<LineLayer>().SelectMany(line => line.Y), knee => Assert.Contains(knee, limits));
            double[] sideways = [.. free.Select(point => point.Course.LateralAcceleration.StandardGravity)];
            foreach (RegionLayer region in figure.Layers.OfType<RegionLayer>())
            {
                bool any = region.Name == "any knee";
                Assert.All(map.Points.Select(point => point.Course.LateralAcceleration.StandardGravity)
                    .Where(at => at >= region.X.Min() && at <= region.X.Max()), at => Assert.Equal(any, sideways.Contains(at)));
            }

            Assert.Equal(free.Length > 0 && limits.Length > 0, figure.LongDescription.Contains("any knee does:", StringComparison.Ordinal));
        }

        Assert.True(steps > 0);
    }

    [Fact]
    public void Each_bend_is_drawn_as_the_title_says_also_a_lone_one_at_the_end()
    {
        BendMap map = TrailBraking.Map(Bare, Bare.LoadCases[0], CarStudy.Dry, CarStudy.From);
        BendPoint[] points = [.. map.Points.Select((point, i) => point with
        {
            Course = point.Course with
            {
                FirstAxle = point.Course.FirstAxle! with { Axle = i % 5 == 3 || i == map.Points.Count - 1 ? Axle.Rear : Axle.Front },
            },
        })];
        Assert.False(points[^2].RearLetsGo);
        Figure figure = BendFigures.Braking(map with { Points = points }, UnitSystem.Si);
        LineLayer[] lines = [.. figure.Layers.OfType<LineLayer>().Where(line => line.Name.Contains("lets go", StringComparison.Ordinal))];
        foreach (BendPoint point in points)
        {
            double at = point.Course.LateralAcceleration.StandardGravity;
            LineLayer line = Assert.Single(lines, one => one.X[0] <= at && at <= one.X[^1]);
            Assert.Equal(point.RearLetsGo, line.Name.StartsWith("rear", StringComparison.Ordinal));
            Assert.True(line.X.Count > 1);
        }

        Assert.Equal(["front lets go: runs wide", "rear lets go: spins"], lines.Select(line => line.LabelText)
            .Where(label => label.Length > 0).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Set_ups_beyond_their_safe_limit_are_named_under_their_figure()
    {
        Vehicle beyond = Bare.WithRearKnee(Pressure.FromBars(Setting.Of(Bare).SafeLimit!.Knee!.Value.Bars + 2));
        (string, BalanceModel)[] both =
            [("as it is", Cars.Model(Bare.WithRearKnee(Pressure.FromBars(5)))), ("turned in", Cars.Model(beyond))];
        Setting[] settings = [.. both.Select(one => Setting.Of(one.Item2.Vehicle))];
        Figure figure = ComparisonFigures.SetUps(both, UnitSystem.Si, settings: settings)!;
        Assert.Contains("nominal friction", figure.Caption, StringComparison.Ordinal);
        Assert.Contains("Beyond what is safe, so that the rear can lock first in other conditions: turned in.", figure.Caption,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_line_along_the_upper_edge_has_its_name_at_every_width()
    {
        Figure figure = new FigureBuilder("edge", UnitSystem.Si).Title("Edge").Describe("Lines.", "Lines.")
            .X("A", "a", Measure.Number, 0, 1).Y("B", "b", Measure.Number, 0, 1)
            .Line("top", new[] { 0.0, 1 }, new[] { 1 + 1e-9, 1 + 1e-9 }).Line("middle", new[] { 0.0, 1 }, new[] { 0.5, 0.5 }).Build();
        Assert.All(new[] { FigureSize.Page, FigureSize.Phone, FigureSize.Slide }, size =>
            Assert.Equal(["middle", "top"], FigureLayout.Of(figure, size).Labels.Select(label => label.Lines[0]).Order()));
    }

    [Fact]
    public void The_name_of_a_point_does_not_stand_beside_another_point()
    {
        Figure figure = new FigureBuilder("pair", UnitSystem.Si).Title("Pair").Describe("Points.", "Points.")
            .X("A", "a", Measure.Number, 0, 1).Y("B", "b", Measure.Number, 0, 1)
            .Points("one of them", new[] { 0.5 }, new[] { 0.5 })
            .Points("the other", new[] { 0.53 }, new[] { 0.5 }, shape: Marker.Ring).Build();
        foreach (FigureSize size in new[] { FigureSize.Page, FigureSize.Phone, FigureSize.Slide })
        {
            FigureLayout layout = FigureLayout.Of(figure, size);
            Dot[] dots = [layout.At(0.5, 0.5), layout.At(0.53, 0.5)];
            Assert.All(layout.Labels, label => Assert.True(label.Leader is not null
                || Geometry.Distance(label.Box.Centre, dots[label.Owner]) < Geometry.Distance(label.Box.Centre, dots[1 - label.Owner])));
        }
    }

    [Fact]
    public void No_picture_marks_the_end_of_the_scale_as_a_safe_limit()
    {
        Vehicle car = VehicleFile.Read(StarterFile.Text("vacuum", "drum", "adjustable"), "starter").Vehicle;
        Figure[] figures = [Entry("safe-settings").For(car, UnitSystem.Si)!, SettingExplorer.Of(Setting.Of(car)).Start.Figures[0]];
        Assert.EndsWith("locks first everywhere at any knee", figures[0].Title, StringComparison.Ordinal);
        Assert.EndsWith("safe limit in all conditions any setting", figures[1].Title, StringComparison.Ordinal);
        Assert.All(figures, figure => Assert.DoesNotContain(figure.Layers, layer => layer.Name == "safe limit"));
    }
}
