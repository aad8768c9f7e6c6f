using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;
using Xunit.Abstractions;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The one answer to where the valve or the balance bar is set.</summary>
public class SettingTests(ITestOutputHelper output)
{
    private static Vehicle Load(string name, params ValueOverride[] set) =>
        VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", name + ".json"), set).Vehicle;

    private static Vehicle Ranged => VehicleFile.Read(
        File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"))
            .Replace("\"mass\": \"1700 kg\"", "\"mass\": \"1600 kg .. 1800 kg\"", StringComparison.Ordinal),
        "coupe with a range").Vehicle;

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("big-cam-saloon")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("track-coupe")]
    public void The_recommended_setting_never_lies_beyond_the_safe_limit_and_keeps_the_front_first(string name)
    {
        var setting = Setting.Of(Load(name));
        Assert.NotNull(setting.SafeLimit);
        Assert.NotNull(setting.Recommended);
        Assert.False(Setting.Beyond(setting.Recommended, setting.SafeLimit));
        Assert.Null(setting.Recommended.RearFirst);
        Assert.InRange(setting.Recommended.MeanEfficiency, 0.5, setting.SafeLimit.MeanEfficiency + 1e-9);
        Assert.True(setting.Recommended.FrictionMargin >= setting.SafeLimit.FrictionMargin - 1e-3);
        Assert.Equal(setting.PresentIsBeyond, setting.Present!.RearFirst is not null);
        Assert.Empty(setting.Changes);
    }

    [Fact]
    public void The_answer_is_the_same_every_time()
    {
        Vehicle car = Load("coupe-1960s");
        Assert.Equal(SettingWords.Lines(Setting.Of(car), UnitSystem.Us), SettingWords.Lines(Setting.Of(car), UnitSystem.Us));
    }

    [Fact]
    public void A_recommended_knee_stands_on_a_quarter_turn_of_the_adjuster_and_half_a_bar_without_one()
    {
        Vehicle car = Load("coupe-1960s");
        double turns = Setting.Of(car).Recommended!.Turns!.Value;
        Assert.Equal(Math.Round(4 * turns), 4 * turns, 1e-9);
        var valve = (ProportioningValve)car.Hydraulics.RearValves[0];
        Vehicle bare = car with { Hydraulics = car.Hydraulics with { RearValves = [valve with { Adjustment = null }] } };
        double knee = Setting.Of(bare).Recommended!.Knee!.Value.Bars;
        Assert.Equal(Math.Round(2 * knee), 2 * knee, 1e-6);
        Assert.Null(Setting.Of(bare).Recommended!.Turns);
    }

    // A valve that begins at 40 bar cannot be set to the limit of this car, about 10 bar; one that ends at 8 bar is safe all the way in.
    [Fact]
    public void A_limit_outside_the_adjusters_travel_is_said_with_what_would_help()
    {
        Vehicle car = Load("coupe-1960s");
        var valve = (ProportioningValve)car.Hydraulics.RearValves[0];
        Vehicle With(double out_, double perTurn, double turns) => car with
        {
            Hydraulics = car.Hydraulics with
            {
                RearValves =
                [
                    valve with
                    {
                        Knee = Pressure.FromBars(out_),
                        Adjustment = new KneeAdjustment
                        {
                            KneeBackedOff = Pressure.FromBars(out_),
                            KneePerTurn = Pressure.FromBars(perTurn),
                            Turns = turns,
                        },
                    },
                ],
            },
        };
        var below = Setting.Of(With(40, 5, 4));
        Assert.Equal(SettingReach.Below, below.Reach);
        Assert.Null(below.Recommended);
        Assert.NotEmpty(below.Changes);
        Assert.Contains("fully out is still too much", SettingWords.OutOfReach(below)[0], StringComparison.Ordinal);
        Assert.Equal("none in reach: fully out is still too much rear braking",
            SettingWords.InSight(below, UnitSystem.Si).Single(line => line.Label == "Recommended setting").Text);
        SettingChange weaker = below.Changes.First(change => change.Kind == SettingChangeKind.WeakerRear);
        Vehicle changed = With(40, 5, 4);
        changed = changed with
        {
            Tyres = new(changed.Tyres.Front,
            changed.Tyres.Rear with { LoadedRadius = changed.Tyres.Rear.LoadedRadius / weaker.Amount })
        };
        Assert.NotEqual(SettingReach.Below, Setting.Of(changed).Reach);

        var above = Setting.Of(With(2, 1, 4));
        Assert.Equal(SettingReach.Above, above.Reach);
        Assert.Equal(6, above.Recommended!.Knee!.Value.Bars, 1e-9);
    }

    [Fact]
    public void Conditions_come_from_the_file_and_change_the_answer()
    {
        Vehicle usual = Load("coupe-1960s");
        Vehicle mild = Load("coupe-1960s", new ValueOverride("conditions.rearFrictionSpread", "0.02"),
            new ValueOverride("conditions.frontFrictionSpread", "0.02"));
        Assert.Equal(0.02, mild.Conditions.FrictionSpread.Rear);
        Assert.True(Setting.Of(mild).SafeLimit!.Knee > Setting.Of(usual).SafeLimit!.Knee);
        Assert.Contains("± 2 %", SettingWords.Conditions(mild, UnitSystem.Si), StringComparison.Ordinal);
        Vehicle track = Load("coupe-1960s", new ValueOverride("conditions.closedTrack", "true"));
        Assert.Equal((0.3, 1.3, 0.05),
            (track.Conditions.LowestAdhesion, track.Conditions.HighestAdhesion, track.Conditions.RearFirstChance));
    }

    [Theory]
    [InlineData("conditions.lowestAdhesion", "1.5", "conditions.lowestAdhesion")]
    [InlineData("conditions.frontFrictionSpread", "2", "conditions.frontFrictionSpread")]
    [InlineData("conditions.nothing", "2", "conditions.nothing")]
    public void Conditions_that_cannot_be_are_named(string path, string value, string named)
    {
        string text = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"));
        Assert.Equal(named, VehicleFile.TryRead(text, new ValueOverride(path, value)).Problems[0].Path);
    }

    [Fact]
    public void Ranges_of_the_file_give_a_band_whose_low_end_is_the_safe_limit()
    {
        Vehicle car = Ranged;
        Assert.NotNull(car.Uncertainty);
        var setting = Setting.Of(car);
        Assert.NotNull(setting.Band);
        Assert.True(setting.Band.Value.Low.Knee < setting.Band.Value.High.Knee);
        Assert.Equal(setting.Band.Value.Low.Knee!.Value.Bars, setting.SafeLimit!.Knee!.Value.Bars, 1e-9);
        int holds = car.Uncertainty.DrawsOf(car)
            .Count(draw => SettingSearch.RearFirst(draw.Vehicle.WithRearKnee(setting.SafeLimit.Knee!.Value), car.Conditions) is null);
        Assert.True(holds >= 0.9 * car.Uncertainty.DrawsOf(car).Count, $"{holds}");
        Assert.Contains("over the file's ranges", SettingWords.HowSure(setting, UnitSystem.Si), StringComparison.Ordinal);
        Setting narrow = setting with { Band = new(setting.Middle, setting.Band.Value.Low, setting.Band.Value.Low) };
        string low = SettingWords.Number(setting.Band.Value.Low, UnitSystem.Si);
        Assert.StartsWith($"{low} over the file's ranges", SettingWords.HowSure(narrow, UnitSystem.Si), StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_changed_in_anything_but_its_setting_no_longer_has_the_files_ranges()
    {
        Vehicle car = Ranged;
        Assert.NotEmpty(car.Uncertainty!.DrawsOf(car.WithRearKnee(Pressure.FromBars(8))));
        Assert.Empty(car.Uncertainty.DrawsOf(car.WithFrictionFactors(1, 1.1)));
    }

    [Theory]
    [InlineData("1960s coupe")]
    [InlineData("track coupe")]
    [InlineData("small sports car")]
    [InlineData("rear-engined car")]
    [InlineData("pickup")]
    public void A_class_alone_is_answered_with_a_band_and_marked_as_typical(string name)
    {
        var setting = Setting.Of(VehicleFile.Read($$"""{ "name": "x", "carClass": "{{name}}" }""", "test").Vehicle);
        Assert.NotNull(setting.Band);
        Assert.Contains("typical of the class", SettingWords.HowSure(setting, UnitSystem.Si), StringComparison.Ordinal);
        Assert.True(setting.Recommended is not null || setting.Changes.Count > 0);
        output.WriteLine($"{name}: {SettingWords.Text(setting.SafeLimit, UnitSystem.Si)}, {setting.Reach}");
    }

    [Fact]
    public void Own_stops_turn_the_rule_to_chance_and_the_answer_says_what_the_other_would_give()
    {
        Vehicle car = CarEstimationTests.Coupe;
        var track = new InventedTrack(car, 3);
        CarEstimate estimate = CarEstimation.Estimate(car,
            CarEstimationTests.Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        Setting before = Setting.Of(car), after = Setting.Of(car, estimate, draws: 30_000);
        Assert.Equal((SettingRule.Corners, SettingRule.Chance), (before.Rule, after.Rule));
        Assert.Equal(before.SafeLimit!.Knee!.Value.Bars, after.OtherRule.Knee!.Value.Bars, 1e-9);
        Assert.InRange(after.MostRearFirst!.RearFirst, 0, car.Conditions.RearFirstChance);
        Assert.Contains("Own test stops", SettingWords.Rule(after, UnitSystem.Si), StringComparison.Ordinal);
        Assert.Contains("Nothing measured", SettingWords.Rule(before, UnitSystem.Si), StringComparison.Ordinal);
    }

    // On roads that no stop reached the corners decide, about the brakes that the stops found, not about those of the file.
    [Theory]
    [InlineData(0.85)]
    [InlineData(1.15)]
    public void Beyond_the_roads_of_the_stops_the_corners_of_what_they_found_decide(double rearOfFile)
    {
        Vehicle coupe = CarEstimationTests.Coupe;
        Vehicle car = coupe.WithFrictionFactors(1, rearOfFile);
        CarEstimate estimate = CarEstimation.Estimate(car,
            CarEstimationTests.Day(new InventedTrack(coupe, 3), SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        var setting = Setting.Of(car, estimate, draws: 30_000);
        double Limit(Vehicle of) => SettingSearch.Limit(
            of, car.Conditions with { LowestAdhesion = 1.1 * estimate.HighestAdhesionSeen }).Knee?.Bars ?? -1;
        Assert.Equal(Math.Min(Limit(estimate.Apply()), setting.ByChance.Knee?.Bars ?? -1), setting.SafeLimit?.Knee?.Bars ?? -1, 1e-9);
        Assert.True(Math.Abs(Limit(estimate.Apply()) - Limit(coupe)) < Math.Abs(Limit(car) - Limit(coupe)));
    }

    // Of a car without a valve the file says one thing and the stops another: the stops decide.
    [Theory]
    [InlineData(0.67, 0.9, 1, true)]
    [InlineData(1.1, 0.6, 0.5, false)]
    public void A_measured_car_without_a_valve_needs_one_where_its_own_stops_say_so(
        double rearOfFile, double rearOfStops, double highest, bool needs)
    {
        Vehicle coupe = CarEstimationTests.Coupe;
        Vehicle bare = coupe with { Hydraulics = coupe.Hydraulics.WithoutRearProportioning() };
        Vehicle car = bare.WithFrictionFactors(1, rearOfFile) with { Conditions = bare.Conditions with { HighestAdhesion = highest } };
        var track = new InventedTrack(bare.WithFrictionFactors(1, rearOfStops), 3);
        CarEstimate estimate = CarEstimation.Estimate(car,
            CarEstimationTests.Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        var setting = Setting.Of(car, estimate, draws: 30_000);
        Assert.Equal(!needs, SettingSearch.RearFirst(car, car.Conditions) is not null);
        Assert.Equal(SettingRule.Chance, setting.Rule);
        Assert.Equal(needs, setting.IsBuiltBeyond);
        Assert.Contains(needs ? "front everywhere by the file" : "rear by the file in driver only",
            SettingWords.Lines(setting, UnitSystem.Si)[0].Text, StringComparison.Ordinal);
        Assert.Equal(needs, setting.Reach != SettingReach.NotNeeded);
        Assert.Equal(needs, SettingWords.Recommended(setting, UnitSystem.Si).Contains("to be fitted", StringComparison.Ordinal));
        Assert.Equal(needs ? -1 : 0, SettingWords.Sentence(setting, UnitSystem.Si)
            .IndexOf("No valve is needed: without one the car stays within the chance", StringComparison.Ordinal));
        Assert.Equal(needs, Assert.Single(
            setting.Compare([("as built", car)], car.LoadCases[0].Name, 0.5, Speed.FromKilometersPerHour(100))).IsBeyondOwnStops);
    }

    [Fact]
    public void Without_own_stops_the_corners_would_give_what_they_gave_before_them()
    {
        var track = new InventedTrack(Ranged, 3);
        CarEstimate estimate = CarEstimation.Estimate(Ranged,
            CarEstimationTests.Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        Assert.Equal(Setting.Of(Ranged).SafeLimit!.Knee!.Value.Bars,
            Setting.Of(Ranged, estimate, draws: 30_000).OtherRule.Knee!.Value.Bars, 1e-9);
    }

    // Wheelbase, loads, brakes and valve as ordinary cars have them (common practice): the rear 5 to 40 % too strong at 0.8 g without
    // the valve.
    [Fact]
    public void Nearly_every_ordinary_car_has_an_answer_under_the_usual_conditions()
    {
        const int cars = 300;
        var random = new Random(20_260_101);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        int answered = 0;
        for (int i = 0; i < cars; i++)
        {
            double wheelbase = Between(2.2, 2.9), front = Between(0.47, 0.6), height = Between(0.45, 0.6), mass = Between(800, 1800);
            double ideal = (1 - front - 0.8 * height / wheelbase) / (front + 0.8 * height / wheelbase);
            var car = TestCars.FixedShare(1 / (1 + ideal * Between(1.05, 1.4)), wheelbase, wheelbase * (1 - front), height) with
            {
                LoadCases =
                [
                    TestCars.Load("driver only", mass * 9.80665, wheelbase * (1 - front), height),
                    TestCars.Load("laden", (mass + 250) * 9.80665, wheelbase * (1 - front + 0.04), height + 0.02),
                ],
            };
            car = car.WithRearValves(new ProportioningValve { Knee = Pressure.FromBars(Between(15, 40)), Slope = Between(0.27, 0.43) });
            answered += SettingSearch.Limit(car, car.Conditions).Exists ? 1 : 0;
        }

        output.WriteLine($"{answered} of {cars} ordinary cars have an answer");
        Assert.InRange(answered, 0.9 * cars, cars);
    }

    [Theory]
    [InlineData("0.30 .. 0.36")]
    [InlineData("0.26 .. 0.34")]
    public void What_the_ranges_leave_is_set_on_the_valve_that_the_car_has(string slope)
    {
        Vehicle car = Load("coupe-1960s", new ValueOverride("hydraulics.rearValves[0].slope", slope));
        var setting = Setting.Of(car);
        Assert.NotNull(setting.Band);
        double own = car.Hydraulics.RearProportioningValve!.Slope;
        Assert.Equal(own, setting.RecommendedVehicle.Hydraulics.RearProportioningValve!.Slope);
        Assert.Equal(own, setting.SafeLimit!.Vehicle.Hydraulics.RearProportioningValve!.Slope);
    }

    [Fact]
    public void Few_cars_drawn_from_the_ranges_reach_all_parts_of_each()
    {
        Vehicle car = VehicleFile.Read("""{ "name": "x", "carClass": "small sports car" }""", "test").Vehicle;
        IReadOnlyList<DrawnVehicle> drawn = car.Uncertainty!.DrawsOf(car);
        for (int i = 0; i < car.Uncertainty.Ranges.Count; i++)
        {
            double[] at = [.. drawn.Select(draw => draw.Fractions[i]).Where(at => at != 0.5)];
            Assert.True(at.Length == 0 || (at.Min() < 0.05 && at.Max() > 0.95 && at.Average() is > 0.45 and < 0.55),
                car.Uncertainty.Ranges[i].Path);
        }
    }

    // Nothing measured: the chance is drawn with the friction spread of the conditions, not with one of its own.
    [Fact]
    public void The_rule_of_chance_draws_friction_from_the_conditions()
    {
        double Knee(string spread) => Setting.Of(Load("coupe-1960s",
            new ValueOverride("conditions.frontFrictionSpread", spread),
                new ValueOverride("conditions.rearFrictionSpread", spread))).OtherRule.Knee!.Value.Bars;
        Assert.True(Knee("0.02") > Knee("0.08") + 1);
        PerAxle<double> said = new(0.03, 0.06);
        ParameterSpread drawn = ParameterSpread.Under(Load("coupe-1960s") with { Conditions = new() { FrictionSpread = said } });
        Assert.Equal((said.Front / Math.Sqrt(3), said.Rear / Math.Sqrt(3)), (drawn.FrontFriction, drawn.RearFriction));
    }

    [Fact]
    public void What_holds_at_any_setting_names_no_limit()
    {
        var setting = Setting.Of(VehicleFile.Read(BrakeBalance.Vehicles.Files.StarterFile.Text(), "starter").Vehicle);
        SettingFinding ice = setting.Findings.First(finding => finding.Kind == SettingFindingKind.Ice);
        Setting drums = Setting.Of(VehicleFile.Read(StarterFile.Text("vacuum", "drum", "adjustable"), "starter").Vehicle);
        Assert.Null(drums.Binding);
        Assert.Equal("any setting", SettingWords.SafeLimit(drums, UnitSystem.Si));
        Assert.EndsWith("any setting keeps the front first in all conditions.", SettingWords.Sentence(drums, UnitSystem.Si),
            StringComparison.Ordinal);
        string json = BrakeBalance.Summaries.SettingJson.Node(drums, new(UnitSystem.Si)).ToJsonString();
        Assert.Contains("\"safe_limit\":{\"knee_bar\":null", json, StringComparison.Ordinal);
        Vehicle low = drums.Vehicle.WithRearKnee(Pressure.FromBars(65));
        low = low with { Hydraulics = low.Hydraulics with { MaximumPressure = Pressure.FromBars(60) } };
        Assert.True(Setting.Of(low).HoldsAtAnySetting && !Setting.Of(low).PresentIsBeyond && !Setting.Of(low).IsBeyond(low));
        Assert.True(ice.FrontFirst && ice.AtAnySetting(setting.Vehicle));
        Assert.Contains("(at any setting)", SettingWords.Findings(setting, UnitSystem.Si)[0], StringComparison.Ordinal);
        Assert.DoesNotContain(SettingWords.Findings(setting, UnitSystem.Si),
            words => words.Contains("140.0 bar", StringComparison.Ordinal));
    }

    [Fact]
    public void A_car_with_a_limiter_is_not_told_that_nothing_is_fitted_and_no_end_of_the_scale_is_called_a_limit()
    {
        var car = VehicleFile.Read(StarterFile.Text("none", "drum", "limiting"), "starter").Vehicle;
        Setting setting = Setting.Of(car.WithFrictionFactors(1, 0.9));
        Assert.Equal("no adjustable valve", SettingWords.Present(setting, UnitSystem.Si));
        Assert.Null(setting.Middle.Binding);
        Assert.DoesNotContain(SettingWords.Behind(setting, UnitSystem.Si),
            line => line.Text.Contains("lock together", StringComparison.Ordinal));
        Assert.All(setting.Costs.Where(cost => cost.Limit.Binding is null),
            cost => Assert.Equal("any setting", SettingWords.Number(cost.Limit, UnitSystem.Si)));
        Assert.All(setting.Gains.Where(gain => gain.Ends),
            gain => Assert.Contains("no valve needed then", SettingWords.Gain(gain, UnitSystem.Si), StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("Track coupe", "the Track coupe")]
    [InlineData("My coupe", "My coupe")]
    [InlineData("Elsa's estate", "Elsa's estate")]
    public void A_sentence_takes_a_name_with_its_article_or_without(string name, string inText) =>
        Assert.Equal(inText, (TestCars.FixedShare(0.85, 2.5, 1.1, 0.5) with { Name = name }).InText);

    [Fact]
    public void A_car_that_needs_no_valve_is_told_so_in_the_same_words_everywhere()
    {
        Vehicle car = TestCars.FixedShare(0.85, 2.5, 1.1, 0.5);
        var setting = Setting.Of(car);
        Assert.Equal(SettingReach.NotNeeded, setting.Reach);
        Assert.Equal(("none fitted", "none needed", "no valve needed"),
            (SettingWords.Present(setting, UnitSystem.Si),
                SettingWords.SafeLimit(setting, UnitSystem.Si), SettingWords.Recommended(setting, UnitSystem.Si)));

        // The highest knee tried stood in the JSON as if it were a limit.
        string json = BrakeBalance.Summaries.SettingJson.Node(setting, new(UnitSystem.Si)).ToJsonString();
        Assert.DoesNotContain("\"knee_bar\":140", json, StringComparison.Ordinal);
        Assert.Contains("\"safe_limit\":{\"knee_bar\":null", json, StringComparison.Ordinal);
        Assert.Contains("\"shown\":\"none needed\"}", json, StringComparison.Ordinal);
        Assert.Contains("{\"knee_bar\":null,\"front_force_share\":null,\"shown\":\"any setting\"}", json, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(UnitSystem.Si)]
    [InlineData(UnitSystem.Us)]
    public void Shown_limits_are_rounded_to_the_safe_side_in_either_system(UnitSystem units)
    {
        Vehicle car = Load("coupe-1960s");
        foreach (double bars in new[] { 9.999, 12.345, 34.1999 })
        {
            var limit = new SettingLimit(SettingVariable.Knee, Pressure.FromBars(bars), null, 0.3, null);
            string[] shown = SettingWords.Number(limit, units).Split(' ');
            double number = double.Parse(shown[0], System.Globalization.CultureInfo.InvariantCulture);
            double exact = units == UnitSystem.Us ? limit.Knee!.Value.PoundsForcePerSquareInch : bars;
            Assert.InRange(exact - number, 0, units == UnitSystem.Us ? 1 : 0.1);
        }

        Assert.Equal("61.3 % front",
            SettingWords.Number(new SettingLimit(SettingVariable.BalanceBar, null, 0.6125, null, null), units));
        Assert.NotEmpty(car.Name);
    }
}
