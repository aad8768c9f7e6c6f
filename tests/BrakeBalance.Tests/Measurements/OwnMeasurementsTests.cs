using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Brakes;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Measurements;

[Collection(SpeedCollection.Name)]
public class OwnMeasurementsTests
{
    private const int Draws = 20_000;

    private static Vehicle Attached(OwnCar own)
    {
        (VehicleReading? reading, IReadOnlyList<string> problems) = OwnMeasurements.Attach(VehicleFile.Load(own.File));
        Assert.Empty(problems);
        return reading!.Vehicle;
    }

    [Fact]
    public void Named_logs_are_found_from_the_files_folder_and_give_the_setting_of_their_estimate()
    {
        using var car = OwnCar.Measured();
        Vehicle vehicle = Attached(car);
        OwnMeasurements own = OwnMeasurements.Of(vehicle)!;
        Assert.Equal(car.At("stops.csv"), own.Logs.Stops);
        Assert.Empty(own.Doubts);
        var setting = Setting.Of(vehicle, draws: Draws);
        Assert.Equal(SettingRule.Chance, setting.Rule);
        var given = Setting.Of(own.Car, own.Estimate, draws: Draws);
        Assert.Equal(given.Recommended!.Knee, setting.Recommended!.Knee);
        Assert.Equal(given.SafeLimit!.Knee, setting.SafeLimit!.Knee);
        Assert.Equal(SettingRule.Corners, Setting.Of(OwnCar.Plain, draws: Draws).Rule);
        Assert.False(own.AreInvented);
    }

    [Fact]
    public void The_slope_of_the_own_gauges_is_that_of_the_car()
    {
        using var car = OwnCar.Measured();
        Vehicle vehicle = Attached(car);
        double slope = OwnMeasurements.Of(vehicle)!.Valve!.Slope!.Value.Estimate;
        Assert.Equal(slope, vehicle.Hydraulics.RearProportioningValve!.Slope, 1e-12);
        Assert.InRange(slope, 0.30, 0.40);

        // The invented gauges were read on a valve that stands 3 bar higher on release.
        Assert.InRange(vehicle.Hydraulics.RearProportioningValve.Hysteresis.Bars, 2, 4);
    }

    [Fact]
    public void Stops_count_for_the_car_they_were_made_with_and_for_no_other()
    {
        using var car = OwnCar.Measured();
        Vehicle vehicle = Attached(car);
        Assert.NotNull(OwnMeasurements.Of(vehicle.WithRearKnee(UnitsNet.Pressure.FromBars(30))));
        Assert.Null(OwnMeasurements.Of(vehicle.WithFrictionFactors(1, 1.2)));
        Assert.Null(OwnMeasurements.Of(vehicle with { LoadCases = [vehicle.LoadCases[1]] }));
        var changed = Setting.Of(vehicle.WithFrictionFactors(1, 1.2), draws: Draws);
        Assert.Equal(SettingRule.Chance, changed.Rule);
        Assert.Equal("by this car's own stops, made before it was changed", SettingWords.HowSure(changed, Answers.UnitSystem.Si));
        Assert.Contains("made before the car was changed", SettingWords.Rule(changed, Answers.UnitSystem.Si), StringComparison.Ordinal);
    }

    // The stops were made with the brakes that the file tells of: fitted to other ones they would make up for the difference.
    [Fact]
    public void Other_values_asked_for_are_of_the_measured_car_changed_and_its_stops_are_not_fitted_to_them()
    {
        using var car = OwnCar.Measured();
        Vehicle measured = Attached(car);
        Setting Asked(string path, string value) =>
            Setting.Of(OwnMeasurements.Attach(VehicleFile.Load(car.File, [new(path, value)])).Reading!.Vehicle, draws: Draws);
        double friction = measured.Brakes.Rear.FrictionCoefficient;
        foreach (double factor in (double[])[0.9, 1.1, 1.3])
        {
            Setting asked = Asked("rear.brake.friction", FormattableString.Invariant($"{factor * friction}"));
            Setting changed = Setting.Of(measured.WithFrictionFactors(1, factor), draws: Draws);
            Assert.Empty(asked.Doubts);
            Assert.Equal(changed.SafeLimit?.Knee?.Bars ?? -1, asked.SafeLimit?.Knee?.Bars ?? -1, 0.01);
        }

        Assert.Empty(Asked("hydraulics.rearValves[0].slope", "0.8").Doubts);
        Assert.Equal(Setting.Of(measured, draws: Draws).SafeLimit!.Knee!.Value.Bars,
            Asked("hydraulics.rearValves[0].knee", "31 bar").SafeLimit!.Knee!.Value.Bars, 1e-9);
    }

    [Fact]
    public void A_car_and_its_modified_copy_are_answered_by_one_rule()
    {
        using var car = OwnCar.Measured();
        string source = File.ReadAllText(car.File);
        Vehicle measured = Attached(car);
        car.Write("saloon.json", FittedFile.Write(source, OwnMeasurements.Of(measured), car.Folder, null).Text);
        foreach (Vehicle vehicle in (Vehicle[])[measured, Attached(car), OwnCar.Plain])
        {
            (Setting before, Setting same) = Setting.OfBoth(vehicle, of => of.WithFrictionFactors(1, 1 + 1e-9));
            Assert.Equal(before.Rule, same.Rule);
            Assert.Equal(before.SafeLimit!.Knee!.Value.Bars, same.SafeLimit!.Knee!.Value.Bars, 0.01);
            Setting after = Setting.OfBoth(vehicle, of => of.WithFrictionFactors(1, 1.1)).After;
            Assert.Equal(before.Rule, after.Rule);
            Assert.True(Setting.Beyond(before.SafeLimit, after.SafeLimit!));
        }
    }

    [Fact]
    public void Every_problem_of_every_log_is_told_with_its_file_and_line()
    {
        using var car = OwnCar.Measured();
        car.Write("gauges.csv", "front pressure [bar];rear pressure [bar]\n10;10\n20;thirty\n30;25\n");
        car.Named(stops: "nowhere.csv");
        (VehicleReading? reading, IReadOnlyList<string> problems) = OwnMeasurements.Attach(VehicleFile.Load(car.File));
        Assert.Null(reading);
        Assert.Contains(problems, problem =>
            problem.Contains("gauges.csv: line 3: ", StringComparison.Ordinal) && problem.Contains("'thirty'", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Contains("1 of 3 rows cannot be read, more than 2 %", StringComparison.Ordinal));
        Assert.Contains(problems, problem => problem.Contains("nowhere.csv: the log cannot be opened", StringComparison.Ordinal));
    }

    [Fact]
    public void More_turns_than_the_adjuster_has_are_told_with_their_line()
    {
        using var car = OwnCar.Measured();
        car.Write("gauges.csv", "turns;front pressure [bar];rear pressure [bar]\n6;10;10\n9;20;20\n6;30;25\n");
        IReadOnlyList<string> problems = OwnMeasurements.Attach(VehicleFile.Load(car.File)).Problems;
        Assert.Contains("gauges.csv: line 3: turns: 9 is more than the file's adjuster has. Accepted: up to 6", Assert.Single(problems));
    }

    [Fact]
    public void A_load_case_that_the_car_has_not_is_refused_once_with_its_file_its_lines_and_those_there_are()
    {
        using var car = OwnCar.Measured();
        car.Write("stops.csv", "load case;surface;front pressure [bar];deceleration [g];locked first\n"
            + "passenger;dry;30;0.5;none\nDriver only;dry;30;0.5;none\npassenger;dry;31;0.5;none\nfull boot;dry;32;0.5;none\n");
        VehicleReading reading = VehicleFile.Load(car.File);
        string known = string.Join(", ", reading.Vehicle.LoadCases.Select(load => $"\"{load.Name}\""));
        IReadOnlyList<string> problems = OwnMeasurements.Attach(reading).Problems;
        Assert.Equal(2, problems.Count);
        Assert.EndsWith($"stops.csv: load case \"passenger\" (lines 2, 4) is none of the car's. Accepted: {known}.", problems[0]);
        Assert.EndsWith($"stops.csv: load case \"full boot\" (line 5) is none of the car's. Accepted: {known}.", problems[1]);
        Assert.Empty(OwnMeasurements.Attach(reading, allowLostRows: true).Problems);
    }

    [Theory]
    [InlineData(LogSlip.BarUnderPsi, "bar under [psi]")]
    [InlineData(LogSlip.GUnderMetres, "g under [m/s2]")]
    [InlineData(LogSlip.SwappedGauges, "swapped")]
    public void Stops_written_wrongly_are_named_and_give_no_recommendation(LogSlip slip, string named)
    {
        foreach (int seed in (int[])[1, 2, 3])
        {
            using var car = new OwnCar();
            car.Write("stops.csv", OwnCar.Stops(seed, slip));
            Vehicle vehicle = Attached(car.Named(gauges: null));
            var setting = Setting.Of(vehicle, draws: Draws);
            Assert.Contains(named, string.Join('\n', setting.Doubts), StringComparison.Ordinal);
            Assert.Null(setting.Recommended);
            Assert.Equal((SettingReach.Withheld, SettingRule.Corners), (setting.Reach, setting.Rule));
            Assert.Contains(SettingWords.Lines(setting, BrakeBalance.Answers.UnitSystem.Si), line =>
                line.Label == "Recommended setting" && line.Text.Contains(named, StringComparison.Ordinal));

            // The estimate by itself, as a notebook has it, withholds it too.
            Assert.Null(Setting.Of(vehicle, OwnMeasurements.Of(vehicle)!.Estimate, draws: Draws).Recommended);
        }
    }

    [Theory]
    [InlineData(LogSlip.BarUnderPsi, "bar under [psi]")]
    [InlineData(LogSlip.SwappedGauges, "swapped")]
    public void Gauge_readings_written_wrongly_are_named_and_give_no_recommendation(LogSlip slip, string named)
    {
        using var car = new OwnCar();
        car.Write("gauges.csv", OwnCar.Gauges(1, slip));
        var setting = Setting.Of(Attached(car.Named(stops: null)), draws: Draws);
        Assert.Contains(named, string.Join('\n', setting.Doubts), StringComparison.Ordinal);
        Assert.Null(setting.Recommended);
        Assert.NotNull(Setting.Of(OwnCar.Plain, draws: Draws).Recommended);
    }

    [Fact]
    public void Ordinary_days_are_never_in_doubt()
    {
        for (int seed = 1; seed <= 12; seed++)
        {
            using var car = OwnCar.Measured(seed);
            Assert.Empty(OwnMeasurements.Of(Attached(car))!.Doubts);
        }
    }

    [Fact]
    public void A_friction_far_outside_what_the_file_allows_is_doubted()
    {
        using var car = new OwnCar();
        car.Write("stops.csv", OwnCar.Stops(1));
        car.Named(gauges: null);
        File.WriteAllText(car.File, File.ReadAllText(car.File)
            .Replace("\"friction\": 0.40 }", "\"friction\": \"0.63 .. 0.65\" }", StringComparison.Ordinal));
        var setting = Setting.Of(Attached(car), draws: Draws);
        Assert.NotEmpty(setting.Doubts);
        Assert.Null(setting.Recommended);
    }

    [Fact]
    public void A_number_that_a_file_in_inches_did_not_have_is_written_in_its_units()
    {
        using var car = OwnCar.Measured();
        string source = System.Text.RegularExpressions.Regex.Replace(
            File.ReadAllText(car.File), "\"wheelbase\": \"[^\"]*\"", "\"wheelbase\": \"102 in\"");
        car.Write("saloon.json", source);
        Vehicle measured = Attached(car);
        string text = FittedFile.Write(source, OwnMeasurements.Of(measured), car.Folder, null).Text;
        Assert.Matches("\"safeKnee\": \"[0-9.]+ psi\"", text);
        Assert.Matches("\"hysteresis\": \"[0-9.]+ psi .. [0-9.]+ psi\"", text);
        double psi = VehicleFile.Read(text, "fitted").Logs!.SafeKnee!.Value.PoundsForcePerSquareInch;
        Assert.InRange(Setting.Of(measured).SafeLimit!.Knee!.Value.PoundsForcePerSquareInch - psi, 0, 0.011);
    }

    [Fact]
    public void A_fitted_file_holds_the_fit_as_ranges_beside_untouched_comments_and_does_not_count_its_logs_again()
    {
        using var car = OwnCar.Measured();
        string source = File.ReadAllText(car.File);
        OwnMeasurements own = OwnMeasurements.Of(Attached(car))!;
        Directory.CreateDirectory(car.At("deeper"));
        (string text, IReadOnlyList<string> written) = FittedFile.Write(source, own, car.At("deeper"), new DateOnly(2026, 5, 12));
        Assert.Equal(
            [
                "front.brake.friction", "rear.brake.friction", "conditions", "loadCases[0].centreOfGravityHeight",
                "loadCases[1].centreOfGravityHeight", "hydraulics.rearValves[0].slope", "hydraulics.rearValves[0].hysteresis",
                "hydraulics.rearValves[0].adjuster.kneeBackedOff", "hydraulics.rearValves[0].adjuster.kneePerTurn",
                "measurements.safeKnee",
            ],
            written);
        string file = car.Write("deeper/fitted.json", text);
        Assert.All(new[] { "// My car. Weighed in May.", "// tape measure", "/* new pads */", "// maker's word", "// my own" }, comment =>
            Assert.Contains(comment, text, StringComparison.Ordinal));
        Assert.Equal(source.Split('\n').Length + 1, text.Split('\n').Length); // the conditions
        Assert.Contains("fitted to 20 test stops, 2026-05-12: 0.", text, StringComparison.Ordinal);
        Assert.Contains(" in .. ", text, StringComparison.Ordinal);

        VehicleReading fitted = OwnMeasurements.Attach(VehicleFile.Load(file)).Reading!;
        Assert.True(fitted.Logs!.Fitted);
        Assert.Equal(car.At("stops.csv"), fitted.Logs.Stops);
        Assert.Null(OwnMeasurements.Of(fitted.Vehicle)!.Estimate);
        Interval<double> front = own.Estimate!.Parameters[0].Posterior, rear = own.Estimate.Parameters[1].Posterior;
        Assert.Equal((front.Low + front.High) / 2, fitted.Vehicle.Brakes.Front.FrictionCoefficient, 2e-3);
        Assert.Equal((rear.Low + rear.High) / 2, fitted.Vehicle.Brakes.Rear.FrictionCoefficient, 2e-3);
        Assert.Equal(own.Estimate.CentreOfGravityHeight.Estimate.Meters, fitted.Vehicle.LoadCases[0].CentreOfGravityHeight.Meters, 5e-3);
        Assert.Equal(own.Valve!.Calibration!.KneePerTurn.Estimate.Bars,
            fitted.Vehicle.Hydraulics.RearProportioningValve!.Adjustment!.KneePerTurn.Bars, 0.02);
        Assert.Equal(own.Valve.Calibration.KneeAt(0).Estimate.Bars,
            fitted.Vehicle.Hydraulics.RearProportioningValve.Adjustment.KneeBackedOff.Bars, 0.5);
        Assert.Equal(own.File.Conditions.FrictionSpread.Rear, fitted.Vehicle.Conditions.FrictionSpread.Rear, 5e-4);
        Assert.Equal(8, fitted.Ranges.Count);
        Assert.InRange(fitted.Vehicle.Hydraulics.RearProportioningValve!.Hysteresis.Bars, 2, 4);

        // Without a day there is none, and nothing can be written twice.
        Assert.DoesNotContain("2026", FittedFile.Write(source, own, car.Folder, null).Text, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => FittedFile.Write(text, OwnMeasurements.Of(fitted.Vehicle)!, car.Folder, null));
    }

    [Theory]
    [InlineData("knee", true)]
    [InlineData("knee", false)]
    [InlineData("bar", false)]
    [InlineData("none", false)]
    public void A_fitted_file_allows_no_more_than_the_stops_did_and_says_so(string variable, bool named)
    {
        (int held, List<double> limits) = (0, []);
        for (int seed = 1; seed <= 7; seed++)
        {
            using var car = OwnCar.Measured(seed);
            string valves = OwnCar.Text[OwnCar.Text.IndexOf("\"rearValves\"", StringComparison.Ordinal)..^3];
            string file = (named ? File.ReadAllText(car.File) : OwnCar.Text).Replace(valves, variable switch
            {
                "bar" => """
                    "split": { "type": "balance bar", "frontBore": "19 mm", "rearBore": "21 mm", "frontForceShare": 0.6 }
                    """,
                "none" => "",
                _ => valves,
            }, StringComparison.Ordinal);
            Vehicle plain = VehicleFile.Read(file, "saloon").Vehicle;
            car.Write("stops.csv", OwnCar.Stops(seed, plain: variable == "knee" ? null : plain));
            OwnMeasurements own =
                OwnMeasurements.Read(plain, new(variable == "knee" ? car.At("gauges.csv") : null, car.At("stops.csv"), null)).Own!;
            Assert.Empty(own.Doubts);
            var logs = Setting.Of(own.Attached(), draws: Draws);
            Assert.Equal(SettingRule.Chance, logs.Rule);
            string path = car.Write("fitted.json", FittedFile.Write(file, own, car.Folder, null, logs).Text);

            if (!named)
            {
                File.Delete(car.At("stops.csv")); // the file keeps what they allowed
            }

            Vehicle vehicle = OwnMeasurements.Attach(VehicleFile.Load(path)).Reading!.Vehicle;
            var fitted = Setting.Of(vehicle, draws: Draws);
            double allowed = logs.SafeLimit?.Knee?.Bars ?? -logs.SafeLimit?.FrontForceShare ?? -1;
            double kept = fitted.SafeLimit?.Knee?.Bars ?? -fitted.SafeLimit?.FrontForceShare ?? -1;
            Assert.InRange(kept, -1, allowed + 1e-9);
            Assert.Equal(logs.SafeLimit is null, fitted.SafeLimit is null);
            Assert.Equal(logs.Present?.Turns ?? -1, fitted.Present?.Turns ?? -1, 0.01);
            Assert.False(fitted.Recommended is { } best && Setting.Beyond(best, logs.SafeLimit!));
            limits.Add(allowed);
            string rule = SettingWords.Rule(fitted, BrakeBalance.Answers.UnitSystem.Si);
            if (fitted.Rule == SettingRule.Chance)
            {
                held++;
                Assert.Equal(allowed, kept, 0.011);
                Assert.Contains("fitted and kept in the file", rule, StringComparison.Ordinal);
                Assert.Equal("this car's own stops allow no more", SettingWords.Why(fitted, BrakeBalance.Answers.UnitSystem.Si));
                Assert.Contains("this car's own stops allow no more",
                    SettingWords.Sentence(fitted, BrakeBalance.Answers.UnitSystem.Si), StringComparison.Ordinal);
                Assert.True(Setting.Amount(fitted.OtherRule) > (allowed < 0 ? 1 + allowed : 1e5 * allowed) - 1e-9);
            }
            else
            {
                Assert.Contains("The fit of this car's tests stands in its file", rule, StringComparison.Ordinal);
                Assert.Equal(allowed, fitted.OtherRule.Knee?.Bars ?? -fitted.OtherRule.FrontForceShare ?? -1, 0.011);
            }

            // Of a car with other pads the stops say nothing.
            Assert.Equal(SettingRule.Corners, Setting.Of(vehicle.WithFrictionFactors(1, 0.8), draws: Draws).Rule);
        }

        Assert.True(held > 0 || variable == "none", string.Join(' ', limits));
    }

    [Fact]
    public void A_file_that_leaves_its_friction_to_its_class_gets_the_fitted_one()
    {
        using var car = OwnCar.Measured();
        string text = OwnCar.Text
            .Replace("\"name\": \"Green saloon\",", "\"name\": \"Green saloon\", \"carClass\": \"1960s coupe\",", StringComparison.Ordinal)
            .Replace(", \"friction\": 0.40 }", " }", StringComparison.Ordinal);
        Vehicle vehicle = VehicleFile.Read(text, "class").Vehicle;
        OwnMeasurements own = OwnMeasurements.Read(vehicle, new(null, car.At("stops.csv"), null)).Own!;
        Assert.Empty(own.Doubts);
        (string fitted, _) = FittedFile.Write(text, own, car.Folder, null);
        VehicleReading read = VehicleFile.Read(fitted, "fitted");
        Assert.DoesNotContain("front.brake.friction", read.FromCarClass);
        Assert.Contains(read.Ranges, range => range.Path == "front.brake.friction" && !range.IsTypical);
    }

    [Fact]
    public void A_drum_s_fitted_friction_and_a_measured_brake_s_fitted_torque_reach_the_brake()
    {
        using var car = OwnCar.Measured();
        foreach (string brake in new[]
        {
            "{ \"type\": \"drum\", \"friction\": 0.37, \"shoes\": \"leading-trailing\", \"drumRadius\": \"114 mm\", "
                + "\"wheelCylinderDiameter\": \"17.5 mm\", \"brakeFactor\": 2.2 }",
            "{ \"type\": \"measured\", \"friction\": 0.37, \"torque\": \"300 N·m .. 320 N·m\", \"torquePressure\": \"50 bar\", "
                + "\"pistonDiameters\": [\"38 mm\"], \"effectiveRadius\": \"125 mm\" }",
        })
        {
            JsonNode file = JsonNode.Parse(File.ReadAllText(car.File), null, new JsonDocumentOptions
            {
                CommentHandling = JsonCommentHandling.Skip,
                AllowTrailingCommas = true,
            })!;
            file["rear"]!["brake"] = JsonNode.Parse(brake);
            Vehicle before = VehicleFile.Read(file.ToJsonString(), "before").Vehicle;
            OwnMeasurements of = OwnMeasurements.Read(before, new(null, car.At("stops.csv"), null)).Own!;
            Interval<double> posterior = of.Estimate!.Parameters[1].Posterior;
            double fitted = (posterior.Low + posterior.High) / 2;
            (string text, _) = FittedFile.Write(file.ToJsonString(), of, car.Folder, null);
            Brake after = VehicleFile.Read(text, "after").Vehicle.Brakes.Rear;
            Assert.Equal(before.Brakes.Rear.BrakeFactorAt(fitted) / before.Brakes.Rear.BrakeFactor,
                after.BrakeFactor / before.Brakes.Rear.BrakeFactor, 0.03);
            Assert.NotEqual(1, after.BrakeFactor / before.Brakes.Rear.BrakeFactor, 0.03);
        }
    }

    /// <summary>Two entries that go into an empty part need a comma between them.</summary>
    [Theory]
    [InlineData("{}")]
    [InlineData("{ }")]
    [InlineData("{\n    // nothing yet\n  }")]
    public void A_fit_goes_into_empty_parts_of_a_file(string empty)
    {
        using var car = OwnCar.Measured();
        string text = OwnCar.Text.TrimEnd()[..^1].TrimEnd() + $",\n  \"conditions\": {empty},\n  \"measurements\": {empty}\n}}\n";
        OwnMeasurements own = OwnMeasurements.Read(OwnCar.Plain, new(car.At("gauges.csv"), car.At("stops.csv"), null)).Own!;
        string fitted = FittedFile.Write(text, own, car.Folder, null).Text;
        VehicleReading reading = VehicleFile.Load(car.Write("fitted.json", fitted));
        Assert.True(reading.Logs!.Fitted);
        Assert.Equal(own.File.Conditions.FrictionSpread.Rear, reading.Vehicle.Conditions.FrictionSpread.Rear, 5e-4);
        Assert.Equal(own.File.Conditions.FrictionSpread.Front, reading.Vehicle.Conditions.FrictionSpread.Front, 5e-4);
    }

    [Fact]
    public void A_corner_beyond_the_roads_of_the_stops_that_decides_is_told()
    {
        using var car = OwnCar.Measured();
        Vehicle vehicle = Attached(car);
        var seen = Setting.Of(vehicle, draws: Draws);
        Assert.Equal((SettingRule.Chance, null), (seen.Rule, seen.Binding));
        Setting beyond = seen with { Binding = new("laden", 1.2, UnitsNet.Speed.Zero, "normal", new(0.08, 0.08)) };
        const string told = "On roads of more adhesion than they reached every corner of their fit counts; one there decides.";
        Assert.DoesNotContain(told, SettingWords.Rule(seen, BrakeBalance.Answers.UnitSystem.Si), StringComparison.Ordinal);
        Assert.Contains(told, SettingWords.Rule(beyond, BrakeBalance.Answers.UnitSystem.Si), StringComparison.Ordinal);
        Assert.Equal("by this car's own stops", SettingWords.HowSure(seen, BrakeBalance.Answers.UnitSystem.Si));
        Assert.EndsWith("by every corner of their fit beyond the adhesion they reached",
            SettingWords.HowSure(beyond, BrakeBalance.Answers.UnitSystem.Si), StringComparison.Ordinal);
    }
}
