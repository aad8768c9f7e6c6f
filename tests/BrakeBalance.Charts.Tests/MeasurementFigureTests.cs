using System.Xml.Linq;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests;

public class MeasurementFigureTests
{
    private static readonly Vehicle Coupe = VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle;
    private static readonly IReadOnlyList<GaugePair> Pairs =
        LogReader.ReadGaugePairs(new StreamReader(RepositoryRoot.File("data/logs/invented-gauges.csv"))).Rows;
    private static readonly IReadOnlyList<TestStop> Stops =
        LogReader.ReadTestStops(new StreamReader(RepositoryRoot.File("data/logs/invented-stops.csv"))).Rows;
    private static readonly GaugeAnalysis Gauges = ValveFitting.Analyse(Pairs);
    private static readonly CarEstimate Estimate = CarEstimation.Estimate(Coupe, Stops);
    private static readonly Setting Answer = Setting.Of(Coupe, Estimate, draws: 10_000);

    private static IEnumerable<Figure> All(UnitSystem units)
    {
        Vehicle unknown = VehicleFile.Read("""{ "name": "x", "carClass": "1960s coupe" }""", "test").Vehicle;
        return
        [
            GaugeFigures.Readings(Pairs, Gauges, units),
            GaugeFigures.Adjuster(Gauges, units),
            MeasuredCarFigures.BrakingRates(Estimate, Stops, Coupe.LoadCases[0], units),
            MeasuredCarFigures.LockEvents(Estimate, Coupe, Stops, Coupe.LoadCases[0], 1, units),
            RobustSettingFigures.TradeOff(Answer, units),
            BandFigures.BrakeForces(unknown, units),
            BandFigures.BrakeForces(VehicleFile.Load(RepositoryRoot.File("data/vehicles/coupe-1960s.json")).Vehicle, units),
            RobustSettingFigures.MeasureNext(MeasuringOrder.Bands(unknown, samples: 32)[0], units),
        ];
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void Every_figure_is_drawn_with_words_units_and_no_gap(UnitSystem units)
    {
        foreach (Figure figure in All(units))
        {
            Assert.InRange(figure.AltText.Length, 20, Figure.AltTextLimit);
            Assert.InRange(figure.Caption.Split(' ').Length, 5, 40);
            Assert.InRange(figure.Title.Length, 20, 160);
            Assert.InRange(figure.LongDescription.Length, 40, 900);
            Assert.DoesNotContain("NaN", figure.ToPlainText(), StringComparison.Ordinal);
            Assert.True(XDocument.Parse(figure.ToSvg()).Descendants().Count(e => e.Name.LocalName == "text") > 5);
            Assert.Equal(figure.ToSvg(), figure.ToSvg());
            string[] foreign = units == UnitSystem.Us ? ["[bar]", "[kN]"] : ["[psi]", "[lbf]"];
            Assert.DoesNotContain(figure.Table.Columns, text => foreign.Any(text.Contains));
        }
    }

    [Fact]
    public void A_position_of_the_adjuster_without_a_knee_is_named_beside_its_readings_and_in_the_description()
    {
        GaugePair Pair(double turns, double front, double rear) => new()
        {
            Line = 1,
            Front = Pressure.FromBars(front),
            Rear = Pressure.FromBars(rear),
            Turns = turns,
            Phase = PressurePhase.Apply,
        };
        double[] fronts = [.. Enumerable.Range(1, 12).Select(i => 5.0 * i)];
        double Wobble(double front) => 0.2 * Math.Sin(7 * front);
        GaugePair[] pairs = [.. fronts.Select(p => Pair(0, p, Math.Min(p, 15 + 0.4 * (p - 15)) + Wobble(p))),
            .. fronts.Select(p => Pair(6, p, p + Wobble(p + 1)))];
        Figure figure = GaugeFigures.Readings(pairs, ValveFitting.Analyse(pairs), UnitSystem.Si);
        Assert.EndsWith("6 turns: no knee up to 60\u00a0bar in front.", figure.LongDescription, StringComparison.Ordinal);
        Assert.Equal(["", "6 turns: no knee"], figure.Layers.OfType<MarkerLayer>().Select(layer => layer.Label));
        Assert.All(GaugeFigures.Readings(Pairs, Gauges, UnitSystem.Si).Layers.OfType<MarkerLayer>(), layer =>
            Assert.DoesNotContain("no knee", layer.Label ?? "", StringComparison.Ordinal));
    }

    [Fact]
    public void The_trade_off_marks_the_setting_the_answer_recommends()
    {
        Figure figure = RobustSettingFigures.TradeOff(Answer, UnitSystem.Si);
        Assert.Contains(SettingWords.Number(Answer.Middle with { Knee = Answer.Chance.Recommended!.Knee }, UnitSystem.Si), figure.Title);
        Assert.Contains(SettingWords.Sentence(Answer, UnitSystem.Si), figure.LongDescription);
        Assert.StartsWith($"Example, {Answer.Vehicle.Name}: ", RobustSettingFigures.TradeOff(Answer, UnitSystem.Si, isExample: true).Title,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_tables_hold_a_row_for_each_thing()
    {
        Assert.Equal(Coupe.LoadCases.Length * 5 * 4, MeasurementTables.Conditions(Answer.Chance).Table.Frame.Rows.Count);
        Assert.Equal(Estimate.Parameters.Count, MeasurementTables.Estimate(Estimate).Table.Frame.Rows.Count);
        Assert.Contains(MeasurementTables.Knees(Gauges, UnitSystem.Us).Table.Columns, c => c.Contains("[psi]", StringComparison.Ordinal));
        Assert.Matches(@"\s\d+\.\d ± 0\.\d\s", MeasurementTables.Knees(Gauges, UnitSystem.Si).ToPlainText());
        Assert.DoesNotMatch(@"\d\.\d{4}|\d{5}", MeasurementTables.Knees(Gauges, UnitSystem.Us).ToPlainText());
        Assert.Contains("nothing was left out", MeasurementTables.LeftOut([]).ToPlainText());
    }

    [Fact]
    public void Estimate_and_conditions_stand_in_the_units_asked_for_and_in_no_more_digits_than_a_gauge_has()
    {
        string estimate = MeasurementTables.Estimate(Estimate, UnitSystem.Us).ToPlainText();
        Assert.Matches(@"height of the centre of gravity\s+\d+\.\d+.in \(", estimate);
        Assert.Matches(@"height of the centre of gravity\s+\d+.mm \(", MeasurementTables.Estimate(Estimate, UnitSystem.Si).ToPlainText());
        NamedTable conditions = MeasurementTables.Conditions(Answer.Chance, UnitSystem.Us);
        Assert.Contains(" psi,", conditions.Title, StringComparison.Ordinal);
        Assert.Contains("Worst speed [mph]", conditions.Table.Columns);
    }

    [Fact]
    public void Hysteresis_is_spoken_of_only_where_readings_fall()
    {
        GaugePair[] rising = [.. Pairs.Where(pair => pair.Phase != PressurePhase.Release)];
        Assert.True(rising.Length < Pairs.Count);
        Assert.Contains("hysteresis", GaugeFigures.Readings(Pairs, Gauges).LongDescription, StringComparison.Ordinal);
        Assert.DoesNotContain("hysteresis", GaugeFigures.Readings(rising, ValveFitting.Analyse(rising)).LongDescription,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Plan_and_its_sheet_name_the_same_speeds_and_pressures()
    {
        TestPlan plan = TestPlanner.Make(Estimate);
        string[] sheet = [.. plan.ToCsv(UnitSystem.Us).Split('\n').Where(line => char.IsAsciiDigit(line.FirstOrDefault()))];
        string[] table = MeasurementTables.Plan(plan, UnitSystem.Us).Table.ToCsv().Split('\n')[1..];
        Assert.NotEmpty(sheet);
        Assert.All(sheet.Zip(table), pair => Assert.Contains("," + string.Join(',', pair.First.Split(';')[1..3]) + ",", pair.Second,
            StringComparison.Ordinal));
    }

    [Fact]
    public void A_stop_that_was_found_is_shown_no_more_exactly_than_it_is_known()
    {
        var stop = new MeasuredStop(
            Start: Duration.FromSeconds(12.6462),
            End: Duration.FromSeconds(16.1),
            InitialSpeed: Speed.FromKilometersPerHour(73.994),
            InitialSpeedWithin: Speed.FromKilometersPerHour(0.5211),
            Deceleration: Acceleration.FromStandardGravity(0.55813),
            DecelerationWithin: Acceleration.FromStandardGravity(0.0045584),
            Peak: Acceleration.FromStandardGravity(0.6),
            PeakWithin: Acceleration.FromStandardGravity(0.0264),
            Distance: Length.FromMeters(35.241),
            DistanceWithin: Length.FromMeters(0.42461),
            DistanceFromPedal: Length.FromMeters(38.514),
            DistanceFromPedalWithin: Length.FromMeters(1.1312),
            RiseTime: Duration.FromSeconds(0.31981),
            RiseTimeWithin: Duration.FromSeconds(0.0963),
            FoundBy: "front pressure",
            FrontPressure: Pressure.FromBars(44.968),
            FrontSlip: 0.033253,
            FrontLockedAt: Duration.FromSeconds(13.00481),
            IsTrusted: true,
            Cautions: []);
        var search = new StopSearch([stop], Frequency.FromHertz(100), ["As logged."]);
        NamedTable si = MeasurementTables.Stops(search, UnitSystem.Si), us = MeasurementTables.Stops(search, UnitSystem.Us);
        Assert.Equal(["12.65", "front pressure", "74.0 ± 0.5", "0.558 ± 0.005", "0.600 ± 0.026", "0.32 ± 0.10", "35.2 ± 0.4",
            "38.5 ± 1.1"],
            si.Table.Row(0).Take(8));
        Assert.Equal(["46.0 ± 0.3", "115.6 ± 1.4"], (string[])[us.Table.Row(0)[2], us.Table.Row(0)[6]]);
        Assert.Equal("As logged. Behind ± stands half of a 90 % interval. The distance counts from the change of slope, in the middle of "
            + "the rise.", si.Caption);
        Assert.Equal(["12.65", "45", "", "3", "", "not logged", "13", "", ""],
            MeasurementTables.Wheels(search, UnitSystem.Si)!.Table.Row(0));
        MeasuredStop snub = stop with { Deceleration = null, DecelerationWithin = null };
        Assert.Equal("", MeasurementTables.Stops(search with { Stops = [snub] }, UnitSystem.Si).Table.Row(0)[3]);
    }

    [Fact]
    public void The_sheet_holds_every_stop_and_every_caution_and_asks_for_nothing_from_outside()
    {
        TestPlan plan = TestPlanner.Make(
            CarEstimation.Estimate(Coupe, [],
            new EstimationOptions
            {
                Surfaces = [SurfaceCondition.Typical("dry")],
                Prior = new ParameterSpread { RearFriction = 0.03, FrontFriction = 0.04 }
            }));
        string html = TestPlanSheet.Html(plan, UnitSystem.Us);
        Assert.All(plan.Stops, stop => Assert.Contains($"<td>{stop.Number}</td>", html));
        Assert.Contains("Closed ground only", html);
        Assert.Contains("[psi]", html);
        Assert.DoesNotContain("://", html);
    }

    [Fact]
    public void Stops_at_other_turns_than_the_line_are_drawn_beside_what_the_car_makes_at_their_own()
    {
        Figure figure = MeasuredCarFigures.BrakingRates(Estimate, Stops, Coupe.LoadCases[0], UnitSystem.Si);
        MarkerLayer measured = figure.Layers.OfType<MarkerLayer>().Single(layer => layer.Name == "measured stops"),
            own = figure.Layers.OfType<MarkerLayer>().Single(layer => layer.Name == "estimated, own turns");
        double worst = measured.Y.Zip(own.Y, (a, b) => Math.Abs((a / b) - 1)).Max();
        Assert.Contains("at each stop's own turns, to within " + Measure.Percent.Text(worst, UnitSystem.Si), figure.Title,
            StringComparison.Ordinal);
        Assert.Contains("rings: the estimated car at each stop's own turns", figure.Caption, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_that_lacks_the_logs_load_case_has_its_stops_named_as_left_out_and_every_figure_drawn()
    {
        Vehicle renamed = Coupe with { LoadCases = [Coupe.LoadCases[0] with { Name = "only the driver" }, .. Coupe.LoadCases.Skip(1)] };
        CarEstimate estimate = CarEstimation.Estimate(renamed, Stops);
        Assert.Contains(estimate.NotUsed, problem =>
            problem.Reason.Contains("no load case \"driver only\"; it has \"only the driver\"", StringComparison.Ordinal));
        Assert.Contains("No stop without lock-up",
            MeasuredCarFigures.BrakingRates(estimate, Stops, renamed.LoadCases[0], UnitSystem.Si).Title, StringComparison.Ordinal);
        Assert.NotEmpty(MeasuredCarFigures.LockEvents(estimate, renamed, Stops, renamed.LoadCases[0], 1, UnitSystem.Si).Title);
    }

    [Fact]
    public void A_car_whose_rear_brakes_lock_at_a_breath_still_has_a_line_in_the_picture_of_its_stops()
    {
        string text = System.Text.RegularExpressions.Regex.Replace(
            File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json")),
            @"""brake"": \{\s*""type"": ""drum""[^}]*\}",
            @"""brake"": { ""type"": ""measured"", ""construction"": ""drum"", ""torque"": ""3000 N·m"", ""torquePressure"": ""1 bar"", "
                + @"""pistonDiameters"": [""60 mm""], ""effectiveRadius"": ""92 mm"", ""friction"": 0.4 }");
        Vehicle car = VehicleFile.Read(text, "test").Vehicle;
        Figure figure = MeasuredCarFigures.LockEvents(CarEstimation.Estimate(car, Stops), car, Stops, car.LoadCases[0], 1, UnitSystem.Si);
        Assert.True(figure.Table.Frame.Rows.Count >= 2);
        Assert.DoesNotContain("NaN", figure.ToSvg(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_linkage_that_ends_before_the_brakes_give_their_all_has_its_effort_drawn_as_far_as_it_goes()
    {
        string text = System.Text.RegularExpressions.Regex.Replace(
            File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json")),
            @"""pedal"": \{[^}]*\}",
            """
            "pedal": { "geometry": { "pivotToPad": "320 mm", "pivotToPin": "60 mm",
              "linkLength": "60 mm", "rodAxisDepth": "60 mm", "pinAngleAtRest": "30 °" } }
            """);
        Vehicle car = VehicleFile.Read(text, "test").Vehicle;
        Figure figure = BrakeBalance.Charts.Publishing.FigureCatalogue.For(car, UnitSystem.Si)
            .Single(item => item.Entry.Name == "effort").Make()!;
        Assert.DoesNotContain("NaN", figure.ToPlainText(), StringComparison.Ordinal);
    }

    [Fact]
    public void Safe_limits_of_a_measured_car_say_that_its_own_stops_are_not_in_them()
    {
        (double, IReadOnlyList<(double, Pressure?)>)[] curves = [(0.08, [(0.2, Pressure.FromBars(20)), (0.3, Pressure.FromBars(18))])];
        string Caption(Vehicle car) => SettingFigures.SafeLimits(curves, car: car).Caption;
        const string said = "without the car's own stops";
        Assert.Contains(said, Caption(Cars.Measured("coupe-1960s")), StringComparison.Ordinal);
        Assert.DoesNotContain(said, Caption(Cars.Load("coupe-1960s")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("knee-against-turns")]
    [InlineData("gauge-readings")]
    public void Plain_titles_of_what_gauges_read_tell_the_numbers_of_the_full_ones(string name)
    {
        var study = new CarStudy(Cars.Measured("coupe-1960s"));
        CatalogueEntry entry = FigureCatalogue.All.Single(one => one.Name == name);
        Figure full = entry.Make(study, UnitSystem.Si)!;
        string[] Numbers(string title) => [.. System.Text.RegularExpressions.Regex.Matches(title, @"\d+\.\d+").Select(m => m.Value)];
        Assert.NotEmpty(Numbers(full.Title));
        Assert.Equal(Numbers(full.Title), Numbers(entry.Plain.Of(full, study).Title));
    }
}
