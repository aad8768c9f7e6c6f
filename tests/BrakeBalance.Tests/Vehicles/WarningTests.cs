using System.Text.Json.Nodes;
using BrakeBalance.Teaching;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Warnings of the implausible: none for sound files, one for each slip.</summary>
public class WarningTests
{
    private const string Coupe = "coupe-1960s", Track = "track-coupe", RearEngined = "rear-engined-sports-car";

    private static string Text(string car) => File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", car + ".json"));

    private static IReadOnlyList<Warning> Warnings(string text, params (string Path, string Value)[] changes)
    {
        (VehicleReading? reading, IReadOnlyList<Problem> problems) =
            VehicleFile.TryRead(text, changes.Select(change => new ValueOverride(change.Path, change.Value)));
        Assert.True(problems.Count == 0, string.Join('\n', problems));
        return reading!.Warnings;
    }

    private static Warning Only(IReadOnlyList<Warning> warnings, string path, string slip)
    {
        Assert.True(warnings.Count == 1, string.Join('\n', warnings));
        Assert.Equal(path, warnings[0].Path);
        Assert.Contains(slip, warnings[0].Slip, StringComparison.Ordinal);
        Assert.NotEmpty(warnings[0].Usual);
        return warnings[0];
    }

    [Fact]
    public void Demo_cars_and_starter_give_no_warning()
    {
        Assert.All(RepositoryFiles.Vehicles, path => Assert.Empty(Warnings(File.ReadAllText(path))));
        Assert.Empty(Warnings(StarterFile.Text()));
    }

    [Theory]
    [MemberData(nameof(StarterAndSchemaTests.Combinations), MemberType = typeof(StarterAndSchemaTests))]
    public void No_starter_with_all_entries_taken_in_gives_a_warning(string assist, string rear, string valve) =>
        Assert.Empty(Warnings(string.Join('\n', StarterFile.Text(assist, rear, valve).Split('\n').Select(StarterAndSchemaTests.TakenIn))));

    [Theory]
    [InlineData("1960s coupe")]
    [InlineData("track coupe")]
    [InlineData("small sports car")]
    [InlineData("rear-engined car")]
    [InlineData("pickup")]
    public void A_file_filled_from_its_class_gives_no_warning(string carClass)
    {
        Assert.Empty(Warnings(OrdinaryCar.OfClass(carClass, valve: true).ToJsonString()));
        Assert.Empty(Warnings(OrdinaryCar.OfClass(carClass, valve: false).ToJsonString()));
    }

    [Fact]
    public void Of_three_hundred_ordinary_cars_few_give_a_warning()
    {
        string[] warned = [.. OrdinaryCar.Measured(300).Select(car => string.Join(' ', Warnings(car))).Where(text => text.Length > 0)];
        Assert.True(warned.Length <= 9, $"{warned.Length}\n{string.Join('\n', warned)}");
    }

    [Fact]
    public void Of_three_hundred_exercise_cars_none_gives_a_warning() =>
        Assert.All(
            Enumerable.Range(1, 300),
            student => Assert.Empty(
                Plausibility.OfBrakes(ExerciseCar.For(new ClassNumber { Seed = 2026, Student = student }).Vehicle, null)));

    [Theory]
    [InlineData(Coupe, "front")]
    [InlineData(RearEngined, "front")]
    [InlineData(Track, "front")]
    [InlineData(Track, "rear")]
    [InlineData(RearEngined, "rear")]
    public void Pistons_counted_twice_give_one_warning(string car, string axle) =>
        Only(Warnings(Twice(Text(car), axle)), axle + ".brake.pistonDiameters", "counted twice");

    // Two of 51 mm at 104 mm would span 56 degrees of the disc; a caliper that slides may have two pistons.
    [Fact]
    public void A_big_piston_counted_twice_is_found_by_its_room_on_the_disc() =>
        Only(Warnings(Twice(Text(Coupe), "front"), ("front.brake.pistonDiameters[0]", "51 mm"), ("front.brake.pistonDiameters[1]", "51 mm"),
            ("front.brake.effectiveRadius", "104 mm")), "front.brake.pistonDiameters", "counted twice");

    [Fact]
    public void What_the_brakes_say_together_is_told_in_both_systems_of_units()
    {
        Warning area = Only(Warnings(Text(Track), ("front.brake.pistonDiameters[0]", "51 mm"), ("front.brake.pistonDiameters[1]", "51 mm")),
            "front.brake.pistonDiameters", "counted twice");
        Assert.Matches(@" mm²/kg \(0\.00\d\d in²/lb\) on the axle\.$", area.What);
        Assert.Equal("up to 7.0 mm²/kg (0.0049 in²/lb)", area.Usual); // 7 × 0.45359237/645.16
        Warning weaker = Only(Warnings(Text(Coupe), ("front.brake.effectiveRadius", "92 mm"), ("front.brake.pistonDiameters[0]", "33 mm")),
            "front.brake", "swapped");
        Assert.Contains("N·m per bar (", weaker.What, StringComparison.Ordinal);
        Assert.Contains("lb·ft per 100 psi)", weaker.What, StringComparison.Ordinal);
    }

    // One warning an axle, because each list has to be put right.
    [Theory]
    [InlineData(Track)]
    [InlineData(RearEngined)]
    public void Pistons_counted_twice_all_round_are_found(string car)
    {
        IReadOnlyList<Warning> warnings = Warnings(Twice(Twice(Text(car), "front"), "rear"));
        Assert.Equal(["front.brake.pistonDiameters", "rear.brake.pistonDiameters"], warnings.Select(warning => warning.Path));
        Assert.All(warnings, warning => Assert.Contains("counted twice", warning.Slip, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(Coupe, "front.brake.effectiveRadius", "284 mm")]
    [InlineData(Coupe, "front.brake.effectiveRadius", "11.2 in")]
    [InlineData(RearEngined, "front.brake.effectiveRadius", "276 mm")]
    [InlineData(RearEngined, "rear.brake.effectiveRadius", "280 mm")]
    [InlineData(Track, "rear.brake.padOuterRadius", "276 mm")]
    [InlineData(Coupe, "rear.brake.drumRadius", "228 mm")]
    public void A_diameter_given_for_a_radius_gives_one_warning(string car, string path, string diameter) =>
        Only(Warnings(Text(car), (path, diameter)), path, "diameter");

    [Theory]
    [InlineData(Coupe)]
    [InlineData(RearEngined)]
    [InlineData(Track)]
    public void Axles_swapped_give_one_warning(string car)
    {
        JsonObject swapped = Json(Text(car));
        Swap(swapped);
        Swap((JsonObject)swapped["fluid"]!);
        Only(Warnings(swapped.ToJsonString()), "front.brake", "front and rear swapped");
    }

    [Fact]
    public void Axle_loads_swapped_give_one_warning_where_brakes_class_or_drive_tell_them()
    {
        // Nearly even brakes, as a car with its engine behind has them.
        (string, string) even = ("rear.brake.pistonDiameters[0]", "44 mm");
        Assert.Empty(Warnings(Text(RearEngined), even));
        Only(Warnings(WithShares(Text(RearEngined), share => 1 - share), even), "loadCases[0]", "axle loads swapped");
        foreach ((string car, string carClass) in ((string, string)[])[(Coupe, "1960s coupe"), (RearEngined, "rear-engined car")])
        {
            JsonObject swapped = Json(WithShares(Text(car), share => 1 - share));
            swapped["carClass"] = carClass;
            Warning warning = Only(Warnings(swapped.ToJsonString()), "loadCases[0]", "axle loads swapped");
            Assert.EndsWith($" for the class \"{carClass}\"", warning.Usual, StringComparison.Ordinal);
        }

        JsonObject driven = Json(WithShares(Text(Track), share => 1 - share));
        driven["engineBraking"] = new JsonObject { ["drivenAxle"] = "front", ["brakingForce"] = "300 N" };
        Only(Warnings(driven.ToJsonString()), "loadCases[0]", "axle loads swapped");
    }

    [Theory]
    [InlineData(Coupe)]
    [InlineData(RearEngined)]
    public void A_reduction_given_for_a_slope_gives_one_warning_with_the_usual_range(string car)
    {
        const string Slope = "hydraulics.rearValves[0].slope";
        Warning warning = Only(Warnings(Text(car), (Slope, "0.57")), Slope, "percent reduction given for slope");
        Assert.Equal("0.2 to 0.5", warning.Usual);
        Assert.Contains("0.57 is above", warning.What, StringComparison.Ordinal);
        Assert.Empty(Warnings(Text(car), (Slope, "0.43")));
    }

    [Theory]
    [InlineData(RearEngined, "hydraulics.rearValves[0].knee", "45 psi", "psi given for bar")]
    [InlineData(RearEngined, "hydraulics.rearValves[0].knee", "250 bar", "bar given for psi")]
    [InlineData(Coupe, "hydraulics.frontValves[0].openingPressure", "6 psi", "psi given for bar")]
    [InlineData(Coupe, "rear.brake.thresholdPressure", "20 bar", "psi")]
    [InlineData(Coupe, "assist.vacuum", "10 kPa", "kPa")]
    [InlineData(Coupe, "front.tyre.loadedRadius", "600 mm", "diameter given for radius")]
    [InlineData(Track, "rear.tyre.loadedRadius", "580 mm", "diameter given for radius")]
    [InlineData(Coupe, "loadCases[0].centreOfGravityHeight", "1.3 m", "roof")]
    [InlineData(Coupe, "loadCases[0].centreOfGravityHeight", "0.25 m", "sill")]
    [InlineData(Coupe, "loadCases[0].mass", "3750 kg", "pounds given for kilograms")]
    [InlineData(Coupe, "wheelbase", "5.1 m", "overall length")]
    [InlineData(Track, "wheelbase", "1.46 m", "track width")]
    [InlineData(Coupe, "pedal.ratio", "1.4", "pivot to pad")]
    [InlineData(Track, "pedal.ratio", "11", "booster")]
    [InlineData(Coupe, "front.brake.friction", "0.76", "both pads")]
    [InlineData(Coupe, "front.brake.friction", "0.12", "glazed")]
    [InlineData(Coupe, "assist.boostRatio", "14", "pedal ratio")]
    [InlineData(RearEngined, "assist.diaphragmDiameter", "110 mm", "radius given for diameter")]
    [InlineData(Coupe, "masterCylinder.bore", "11.1 mm", "radius given for diameter")]
    public void A_value_outside_its_usual_range_gives_one_warning_with_its_slip(string car, string path, string value, string slip) =>
        Only(Warnings(Text(car), (path, value)), path, slip);

    [Fact]
    public void The_usual_range_is_told_in_the_unit_of_the_file()
    {
        Assert.Equal("200 psi to 900 psi", Warnings(Text(RearEngined), ("hydraulics.rearValves[0].knee", "24 psi"))[0].Usual);
        Assert.Equal("14 bar to 62 bar", Warnings(Text(RearEngined), ("hydraulics.rearValves[0].knee", "250 bar"))[0].Usual);
    }

    [Fact]
    public void A_turn_of_the_adjuster_in_the_wrong_unit_gives_one_warning()
    {
        const string PerTurn = "hydraulics.rearValves[0].adjuster.kneePerTurn";
        Only(Warnings(Text(Coupe), (PerTurn, "10 psi"), ("hydraulics.rearValves[0].knee", "11 bar")), PerTurn, "psi given for bar");
    }

    [Fact]
    public void Torque_at_a_pressure_in_the_wrong_unit_gives_one_warning()
    {
        JsonObject car = Json(Text(RearEngined));
        foreach ((string axle, double torque) in ((string, double)[])[("front", 790), ("rear", 510)])
        {
            car[axle]!["brake"] = JsonNode.Parse(FormattableString.Invariant($$"""
                { "type": "measured", "construction": "disc", "friction": 0.38, "torque": "{{torque}} N·m", "torquePressure": "50 bar",
                  "pistonDiameters": ["48 mm"], "effectiveRadius": "116 mm" }
                """));
        }

        Assert.Empty(Warnings(car.ToJsonString()));
        (string, string)[] slip = [("front.brake.torquePressure", "50 psi"), ("rear.brake.torquePressure", "50 psi")];
        Only(Warnings(car.ToJsonString(), slip), "front.brake", "psi and bar mixed");
    }

    private static JsonObject Json(string text) =>
        (JsonObject)JsonNode.Parse(text, documentOptions: new() { CommentHandling = System.Text.Json.JsonCommentHandling.Skip })!;

    private static string Twice(string text, string axle)
    {
        JsonObject car = Json(text);
        JsonNode brake = car[axle]!["brake"]!;
        string[] once = [.. ((JsonArray)brake["pistonDiameters"]!).Select(piston => piston!.ToString())];
        brake["pistonDiameters"] = new JsonArray([.. once.Concat(once).Select(piston => JsonValue.Create(piston))]);
        return car.ToJsonString();
    }

    private static void Swap(JsonObject json)
    {
        (JsonNode front, JsonNode rear) = (json["front"]!.DeepClone(), json["rear"]!.DeepClone());
        (json["front"], json["rear"]) = (rear, front);
    }

    private static string WithShares(string text, Func<double, double> change)
    {
        JsonObject car = Json(text);
        foreach (JsonNode? load in (JsonArray)car["loadCases"]!)
        {
            load!["frontShare"] = Math.Round(change(load["frontShare"]!.GetValue<double>()), 4);
        }

        return car.ToJsonString();
    }
}
