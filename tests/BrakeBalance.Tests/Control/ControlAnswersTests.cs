using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace BrakeBalance.Tests.Control;

/// <summary>
/// What a vehicle file's checks accept is answered, or null with a reason: never an exception, never a number that is none.
/// </summary>
public sealed class ControlAnswersTests
{
    private static readonly JsonDocumentOptions Comments = new() { CommentHandling = JsonCommentHandling.Skip };

    private static JsonObject File(string car) =>
        (JsonObject)JsonNode.Parse(System.IO.File.ReadAllText(Path.Combine(ControlForceTests.Root(), "data", "vehicles", car + ".json")),
            documentOptions: Comments)!;

    private static string Linkage(FormattableString geometry, string more = "") =>
        $$"""{ "geometry": { {{FormattableString.Invariant(geometry)}} }{{more}} }""";

    private static Gen<JsonObject> Cars =>
        from pad in Between(150, 500)
        from pin in Between(25, 120)
        from link in Between(25, 300)
        from axis in Between(20, 150)
        from angle in Between(-60, 60)
        from travel in Between(40, 200)
        from linked in Gen.Elements(true, true, true, false)
        from ratio in Between(1, 12)
        from springRate in Gen.Elements("0 N/mm", "0.3 N/mm", "3 N/mm")
        from bore in Between(9, 51)
        from rearBore in Between(9, 51)
        from kind in Gen.Choose(0, 4)
        from stroke in Between(10, 80)
        from share in Between(0.2, 0.8)
        from clearance in Between(0, 10)
        from hose in Gen.Elements("3.2 mm", "4.5 mm", "7 mm")
        select Changed(
            linked
                ? Linkage(
                    $$"""
                    "pivotToPad": "{{pad}} mm", "pivotToPin": "{{pin}} mm", "linkLength": "{{link}} mm",
                    "rodAxisDepth": "{{axis}} mm", "pinAngleAtRest": "{{angle}} °"
                    """,
                    FormattableString.Invariant($", \"travel\": \"{travel} mm\", \"returnSpringRate\": \"{springRate}\""))
                : FormattableString.Invariant(
                    $$"""{ "ratio": {{ratio}}, "travel": "{{travel}} mm", "returnSpringRate": "{{springRate}}" }"""),
            kind, bore, rearBore, stroke, share, clearance, hose);

    private static JsonObject Changed(string pedal, int kind, double bore, double rearBore, double stroke, double share, double clearance,
        string hose)
    {
        bool bar = kind == 0;
        JsonObject car = File(bar ? "track-coupe" : "coupe-1960s");
        car["pedal"] = JsonNode.Parse(pedal);
        FormattableString cylinder = kind switch
        {
            0 => (FormattableString)$$"""{ "type": "balance bar", "stroke": "{{stroke}} mm" }""",
            1 => $$"""{ "type": "tandem", "bore": "{{bore}} mm", "stroke": "{{stroke}} mm", "frontStrokeShare": {{share}} }""",
            2 => $$"""{ "type": "tandem", "bore": "{{bore}} mm", "rearBore": "{{rearBore}} mm", "stroke": "{{stroke}} mm" }""",
            3 => $$"""
                { "type": "tandem", "bore": "{{bore}} mm", "quickTakeUpBore": "{{bore + 5}} mm", "stroke": "{{stroke}} mm",
                  "circuits": "diagonal" }
                """,
            _ => $$"""{ "type": "single", "bore": "{{bore}} mm", "stroke": "{{stroke}} mm" }""",
        };
        car["masterCylinder"] = JsonNode.Parse(FormattableString.Invariant(cylinder));
        if (bar)
        {
            double front = Math.Clamp(bore, 10, 40);
            double rear = Math.Clamp(rearBore, 10, 40);
            car["hydraulics"]!["split"] = JsonNode.Parse(FormattableString.Invariant(
                $$"""{ "type": "balance bar", "frontBore": "{{front}} mm", "rearBore": "{{rear}} mm", "frontForceShare": {{share}} }"""));
        }

        car["fluid"]!["rear"]!["clearance"] = FormattableString.Invariant($"{clearance} mm");
        car["fluid"]!["front"]!["hoseBore"] = hose;
        return car;
    }

    [Theory]
    [InlineData("18 inHg", 3)]
    [InlineData("19 inHg", 3)]
    [InlineData("14 inHg", 4)]
    public void An_engine_of_about_the_usual_vacuum_is_not_set_beside_one_more(string vacuum, int variants)
    {
        Vehicle car = VehicleFile.Read(StarterFile.Text("vacuum", "disc", "none"), "starter").Vehicle;
        var booster = (VacuumBooster)car.Control!.Assist;
        double inches = double.Parse(vacuum.Split(' ')[0], System.Globalization.CultureInfo.InvariantCulture);
        Assert.Equal(variants, ControlVariants.Assists(car.Control with
        {
            Assist = booster with { Supply = booster.Supply with { Vacuum = Pressure.FromInchesOfMercury(inches) } },
        }).Count);
    }

    private static Gen<double> Between(double low, double high) =>
        Gen.Choose(0, 1000).Select(n => Math.Round(low + ((high - low) * n / 1000), 3));

    private static int Answer(JsonObject file)
    {
        if (VehicleFile.TryRead(file.ToJsonString()).Reading?.Vehicle is not { } car)
        {
            return 0;
        }

        ControlSummary summary = ControlSummary.Of(car)!;
        foreach (LoadCase load in car.LoadCases.Take(1))
        {
            var model = new BalanceModel(car, load);
            foreach ((string _, BrakeControl control) in ControlVariants.Assists(car.Control!))
            {
                var force = new ControlForce(model, control);
                foreach (double rate in new[] { 0.1, 0.8 })
                {
                    Assert.Equal(force.AtRate(rate) is null, force.WhyNotAtRate(rate) is not null);
                }

                double last = -1;
                for (int newtons = 0; newtons <= 2000; newtons += 500)
                {
                    double reached = force.At(Force.FromNewtons(newtons)).Balance.MasterPressure.Pascals;
                    Assert.True(double.IsFinite(reached) && reached >= last - 10, $"{newtons} N: {reached} Pa after {last} Pa");
                    last = reached;
                }

                _ = force.RunOut();
                Assert.NotNull(force.TravelAt(Pressure.Zero));
            }
        }

        Assert.All(summary.LoadCases, part =>
        {
            Assert.All(part.Rates, rate =>
                Assert.True(double.IsFinite(rate.Point?.PedalForce.Newtons ?? 0) && double.IsFinite(rate.Travel?.Pad?.Meters ?? 0)));
            Assert.All(part.Failures, failure =>
                Assert.True(double.IsFinite(failure.RateAtForce) && double.IsFinite(failure.ForceUsed.Newtons)));
            Assert.All(part.Failures, failure => Assert.True(failure.PedalForceForRate is null == failure.WhyNot is not null));
        });
        Assert.All(summary.Choices, choice => Assert.False(choice.Fits && choice.NotPossible is not null));
        return 1;
    }

    [Fact]
    public void Every_accepted_pedal_and_cylinder_is_answered()
    {
        int answered = 0;
        Prop.ForAll(Cars.ToArbitrary(), car => { answered += Answer(car); })
            .Check(Config.QuickThrowOnFailure.WithMaxTest(100).WithReplay(20_260_101, 7));
        Assert.True(answered > 25, $"only {answered} of the random files were accepted");
    }

    [Theory]
    [InlineData("""
        "pivotToPad": "250 mm", "pivotToPin": "50 mm", "linkLength": "120 mm", "rodAxisDepth": "50 mm", "pinAngleAtRest": "20 °"
        """)]
    [InlineData("""
        "pivotToPad": "250 mm", "pivotToPin": "50 mm", "linkLength": "200 mm", "rodAxisDepth": "40 mm", "pinAngleAtRest": "20 °"
        """)]
    [InlineData("""
        "pivotToPad": "320 mm", "pivotToPin": "60 mm", "linkLength": "60 mm", "rodAxisDepth": "60 mm", "pinAngleAtRest": "30 °"
        """)]
    public void A_linkage_that_ends_early_is_answered(string geometry)
    {
        JsonObject car = File("coupe-1960s");
        car["pedal"] = JsonNode.Parse($$"""{ "geometry": { {{geometry}} } }""");
        Assert.Equal(1, Answer(car));
    }

    [Fact]
    public void A_rate_beyond_the_linkages_end_is_refused_with_the_reason()
    {
        JsonObject file = File("coupe-1960s");
        file["pedal"] = JsonNode.Parse(Linkage(
            $"""
            "pivotToPad": "320 mm", "pivotToPin": "60 mm", "linkLength": "60 mm", "rodAxisDepth": "60 mm", "pinAngleAtRest": "30 °"
            """));
        Vehicle car = VehicleFile.TryRead(file.ToJsonString()).Reading!.Vehicle;
        var force = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
        Assert.Null(force.AtRate(0.8));
        Assert.Contains("linkage ends", force.WhyNotAtRate(0.8), StringComparison.Ordinal);
        // The hardest push stops where the linkage ends.
        Pressure most = force.At(Force.FromKilonewtons(5)).Balance.MasterPressure;
        Assert.Equal(force.Reach!.Value.Bars, most.Bars, 1e-6);
        FailureOutcome sound = FailureAnalysis.Of(car, car.LoadCases[0], new FailureConditions { PedalForce = Force.FromKilonewtons(3) })[
            0];
        Assert.Equal(RateBound.Travel, sound.Bound);
    }

    [Fact]
    public void A_bar_whose_other_bore_would_leave_the_range_is_named_in_the_choice()
    {
        JsonObject file = File("track-coupe");
        file["hydraulics"]!["split"]!["frontBore"] = "0.625 in";
        file["hydraulics"]!["split"]!["rearBore"] = "0.5 in";
        Vehicle car = VehicleFile.TryRead(file.ToJsonString()).Reading!.Vehicle;
        ControlSummary summary = ControlSummary.Of(car)!;
        Assert.Contains(summary.Choices, choice =>
            choice.NotPossible is not null && !choice.Fits && choice.Describe().Contains("9 to 51 mm", StringComparison.Ordinal));
        Assert.Contains(summary.Choices, choice => choice.NotPossible is null && choice.PedalForce is not null);
    }

    [Fact]
    public void A_linkage_that_cannot_follow_the_pedal_to_the_floor_is_a_named_problem()
    {
        JsonObject file = File("coupe-1960s");
        file["pedal"] = JsonNode.Parse(Linkage(
            $"""
            "pivotToPad": "250 mm", "pivotToPin": "60 mm", "linkLength": "40 mm", "rodAxisDepth": "70 mm", "pinAngleAtRest": "20 °"
            """,
            ", \"travel\": \"150 mm\""));
        Problem problem = Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems);
        Assert.Equal("pedal.geometry", problem.Path);
        Assert.Contains("before the floor at 150 mm", problem.What, StringComparison.Ordinal);
        Assert.Contains("longer link", problem.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Free_play_beyond_the_pedals_travel_is_a_named_problem()
    {
        JsonObject file = File("coupe-1960s");
        file["pedal"] = JsonNode.Parse("""{ "ratio": 4, "freePlay": "40 mm", "travel": "30 mm" }""");
        Assert.Equal("pedal.freePlay", Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems).Path);
    }

    [Fact]
    public void A_measured_drum_needs_no_caliper_but_says_that_it_is_a_drum()
    {
        JsonObject file = File("coupe-1960s");
        JsonNode Brake(string more) => JsonNode.Parse(
            $$"""
            { "type": "measured", "friction": 0.38, "torque": "600 N·m", "torquePressure": "50 bar",
              "pistonDiameters": ["0.875 in"], "effectiveRadius": "127 mm"{{more}} }
            """)!;
        file["rear"]!["brake"] = Brake("");
        Problem missing = Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems);
        Assert.Equal("rear.brake.construction", missing.Path);
        Assert.Contains("\"drum\"", missing.Accepted, StringComparison.Ordinal);

        file["rear"]!["brake"] = Brake(", \"construction\": \"drum\"");
        CircuitVolume rear = VehicleFile.TryRead(file.ToJsonString()).Reading!.Vehicle.Control!.Circuits!.Value.Rear;
        // Two wheels, two pistons of a wheel cylinder each.
        Assert.Equal(4 * Math.PI / 4 * 0.875 * 0.875, rear.PistonArea.SquareInches, 9);
        Assert.NotNull(rear.Drum);

        // A file that gave a caliper meant a disc, and reads as before.
        file["rear"]!["brake"] = Brake("");
        file["rear"]!.Root["fluid"]!["rear"]!["caliper"] = "sliding";
        CircuitVolume disc = VehicleFile.TryRead(file.ToJsonString()).Reading!.Vehicle.Control!.Circuits!.Value.Rear;
        Assert.Equal(2 * Math.PI / 4 * 0.875 * 0.875, disc.PistonArea.SquareInches, 9);
        Assert.Null(disc.Drum);

        file["rear"]!["brake"] = Brake(", \"construction\": \"drum\"");
        Assert.Equal("fluid.rear.caliper", Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems).Path);
        file["rear"]!["brake"] = Brake(", \"construction\": \"hub\"");
        Assert.Equal("rear.brake.construction", Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems).Path);
    }

    [Fact]
    public void A_measured_brake_without_a_fluid_section_need_not_say_what_it_is()
    {
        JsonObject file = File("coupe-1960s");
        file["rear"]!["brake"] = JsonNode.Parse(
            """
            { "type": "measured", "friction": 0.38, "torque": "600 N·m", "torquePressure": "50 bar",
              "pistonDiameters": ["0.875 in"], "effectiveRadius": "127 mm" }
            """);
        file.Remove("fluid");
        Assert.Empty(VehicleFile.TryRead(file.ToJsonString()).Problems);
    }

    [Theory]
    [InlineData("\"quickTakeUpBore\": \"20 mm\"", "masterCylinder.quickTakeUpBore", "above bore")]
    [InlineData("\"quickTakeUpBore\": \"34 mm\", \"rearBore\": \"22 mm\"", "masterCylinder.quickTakeUpBore", "one of")]
    [InlineData("\"quickTakeUpPressure\": \"6 bar\"", "masterCylinder.quickTakeUpPressure", "quickTakeUpBore")]
    public void A_quick_take_up_cylinder_that_is_none_is_a_named_problem(string entry, string path, string accepted)
    {
        JsonObject file = File("coupe-1960s");
        file["masterCylinder"] = JsonNode.Parse($$"""{ "type": "tandem", "bore": "25 mm", "stroke": "36 mm", {{entry}} }""");
        Problem problem = Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems);
        Assert.Equal(path, problem.Path);
        Assert.Contains(accepted, problem.Accepted, StringComparison.Ordinal);
    }

    [Fact]
    public void Stepped_bores_reach_the_balance_and_the_cylinder_alike()
    {
        JsonObject file = File("coupe-1960s");
        file["masterCylinder"]!["rearBore"] = "1 in";
        file["hydraulics"]!["rearValves"] = new JsonArray();
        file["hydraulics"]!["frontValves"] = new JsonArray();
        Vehicle car = VehicleFile.TryRead(file.ToJsonString()).Reading!.Vehicle;
        Assert.Equal(1.125 * 1.125, car.Hydraulics.Split.RearToFrontPressureRatio, 1e-12);
        var force = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
        ControlForcePoint point = force.AtRate(0.5)!;
        Assert.Equal(point.OutletPressures.Front.Pascals, point.Balance.LinePressures.Front.Pascals, 1.0);
        Assert.Equal(point.OutletPressures.Rear.Pascals, point.Balance.LinePressures.Rear.Pascals, 1.0);
        Assert.Equal(0.5, force.At(point.PedalForce).Balance.BrakingRate, 1e-6);
    }

    [Fact]
    public void A_drum_entry_on_a_disc_is_a_named_problem()
    {
        JsonObject file = File("coupe-1960s");
        file["fluid"]!["front"]!["drumTemperature"] = "300 °C";
        Assert.Equal("fluid.front.drumTemperature", Assert.Single(VehicleFile.TryRead(file.ToJsonString()).Problems).Path);
    }
}
