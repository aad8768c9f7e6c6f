using System.Globalization;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>
/// Reading vehicle files: good ones become cars, and every kind of fault is told with its place and with what would be accepted.
/// </summary>
public class VehicleFileTests
{
    internal const string Good = """
        {
          // Invented for the tests.
          "name": "Test coupe",
          "wheelbase": "2.50 m",
          "loadCases": [
            { "name": "driver only", "mass": "1200 kg", "frontShare": 0.54, "centreOfGravityHeight": "0.50 m" },
            { "name": "laden", "frontAxleMass": "700 kg", "rearAxleMass": "800 kg", "centreOfGravityHeight": "0.52 m" },
          ],
          "front": {
            "tyre": { "loadedRadius": "300 mm" },
            "brake": { "type": "disc", "pistonDiameters": ["54 mm"], "effectiveRadius": "110 mm", "friction": 0.40 }
          },
          "rear": {
            "tyre": { "loadedRadius": "300 mm" },
            "brake": { "type": "drum", "shoes": "leading-trailing", "drumRadius": "115 mm", "wheelCylinderDiameter": "19 mm",
              "friction": 0.38, "brakeFactor": 2.1 }
          },
          "hydraulics": {
            "frontValves": [{ "type": "metering", "openingPressure": "6 bar", "blendPressure": "20 bar" }],
            "rearValves": [{ "type": "proportioning", "knee": "35 bar", "slope": 0.4, "adjuster": { "kneeBackedOff": "7 bar",
              "kneePerTurn": "10 bar", "turns": 6 } }],
            "maximumPressure": "140 bar"
          },
          "aerodynamics": { "dragArea": "0.7 m²" },
          "rollingResistance": 0.015,
          "engineBraking": { "drivenAxle": "rear", "brakingForce": "300 N" }
        }
        """;

    public static TheoryData<string, string, string, string, string> Faults => new()
    {
        // What is replaced, by what, the path told, a part of what is wrong, a part of what is accepted.
        { "\"2.50 m\"", "\"2,50 m\"", "wheelbase", "decimal comma", "from 1 m to 6 m" },
        { "\"2.50 m\"", "\"2.50\"", "wheelbase", "has no unit", "mm, cm, m, in, ft" },
        { "\"2.50 m\"", "2.50", "wheelbase", "2.50 has no unit", "such as \"2.60 m\"" },
        { "\"2.50 m\"", "\"2.50 kg\"", "wheelbase", "\"kg\" is not a unit of length", "mm, cm" },
        { "\"2.50 m\"", "\"2.50 furrow\"", "wheelbase", "\"furrow\" is not a unit of length", "mm, cm" },
        { "\"2.50 m\"", "\"long\"", "wheelbase", "is not a number followed by a unit", "a length" },
        { "\"2.50 m\"", "\"25 m\"", "wheelbase", "outside the range", "from 1 m to 6 m" },
        { "\"2.50 m\"", "\"-2.5 m\"", "wheelbase", "outside the range", "from 1 m to 6 m" },
        { "\"2.50 m\"", "\"2.6 m .. 2.4 m\"", "wheelbase", "runs downwards", "a length" },
        { "\"2.50 m\"", "\"2.4 m .. 2.5 m .. 2.6 m\"", "wheelbase", "is no range: one \"..\"", "a length" },
        { "\"2.50 m\"", "\"2.4 m ..\"", "wheelbase", "\"2.4 m ..\" is no range", "a length" },
        { "\"2.50 m\"", "\"2.4 m .. 9 m\"", "wheelbase", "outside the range", "from 1 m to 6 m" },
        { "\"2.50 m\"", "null", "wheelbase", "null does not fit", "a length" },
        { "\"2.50 m\"", "[\"2.50 m\"]", "wheelbase", "a list does not fit", "a length" },
        { "\"1200 kg\"", "\"-1200 kg\"", "loadCases[0].mass", "outside the range", "from 200 kg to 7500 kg" },
        { "\"wheelbase\"", "\"wheelbas\"", "wheelbas", "Did you mean \"wheelbase\"?", "name, note, carClass, wheelbase" },
        { "\"effectiveRadius\"", "\"effectivRadius\"", "front.brake.effectivRadius", "Did you mean \"effectiveRadius\"?",
            "pistonDiameters" },
        { "\"name\": \"Test coupe\"", "\"name\": \"  \"", "name", "does not fit", "text" },
        { "\"name\": \"Test coupe\"", "\"name\": 17", "name", "17 does not fit", "text" },
        { "\"name\": \"Test coupe\",", "", "name", "is missing", "text" },
        { "0.54", "\"54 %\"", "loadCases[0].frontShare", "does not fit", "a number from 0.15 to 0.85" },
        { "0.54", "1.2", "loadCases[0].frontShare", "1.2 is outside the range", "from 0.15 to 0.85" },
        { "0.54", "\"0.9 .. 0.5\"", "loadCases[0].frontShare", "does not fit", "a number" },
        { "0.54", "\"0.5 .. 0.95\"", "loadCases[0].frontShare", "outside the range", "from 0.15 to 0.85" },
        { "0.54", "1e999", "loadCases[0].frontShare", "1e999 is outside the range", "from 0.15 to 0.85" },
        { "\"frontShare\": 0.54, ", "", "loadCases[0]", "does not say where the centre of gravity lies", "frontAxleToCentreOfGravity" },
        { "\"frontShare\": 0.54", "\"frontShare\": 0.54, \"frontAxleToCentreOfGravity\": \"1.1 m\"", "loadCases[0]",
            "says twice where the centre of gravity lies", "one of frontShare" },
        { "\"frontShare\": 0.54", "\"frontAxleToCentreOfGravity\": \"2.6 m\"", "loadCases[0].frontAxleToCentreOfGravity",
            "outside the wheelbase: 2.6 m behind the front axle, wheelbase 2.5 m", "below 2.5 m" },
        { "\"mass\": \"1200 kg\", ", "", "loadCases[0].mass", "is missing", "frontAxleMass and rearAxleMass" },
        { "\"frontAxleMass\": \"700 kg\", ", "", "loadCases[1]", "on one axle only", "together" },
        { "\"frontAxleMass\": \"700 kg\"", "\"mass\": \"1500 kg\", \"frontAxleMass\": \"700 kg\"", "loadCases[1]", "as well as mass",
            "either" },
        { "\"name\": \"laden\"", "\"name\": \"Driver Only\"", "loadCases", "is used 2 times", "a name of its own" },
        { "\"type\": \"disc\", ", "", "front.brake.type", "is missing", "\"disc\", \"drum\", \"measured\"" },
        { "\"type\": \"disc\"", "\"type\": \"discs\"", "front.brake.type", "\"discs\" is not known", "\"disc\", \"drum\", \"measured\"" },
        { "[\"54 mm\"]", "[]", "front.brake.pistonDiameters", "has 0 elements", "at least 1" },
        { "[\"54 mm\"]", "\"54 mm\"", "front.brake.pistonDiameters", "is not a list", "square brackets" },
        { "[\"54 mm\"]", "[\"54 mm\", \"54\"]", "front.brake.pistonDiameters[1]", "has no unit", "from 10 mm to 120 mm" },
        { "\"effectiveRadius\": \"110 mm\", ", "", "front.brake", "does not say at which radius", "effectiveRadius, or padInnerRadius" },
        { "\"effectiveRadius\": \"110 mm\"",
            "\"effectiveRadius\": \"110 mm\", \"padInnerRadius\": \"90 mm\", \"padOuterRadius\": \"130 mm\"", "front.brake",
            "says twice at which radius", "effectiveRadius, or" },
        { "\"effectiveRadius\": \"110 mm\"", "\"padInnerRadius\": \"130 mm\", \"padOuterRadius\": \"90 mm\"", "front.brake.padInnerRadius",
            "is not below padOuterRadius", "smaller radius" },
        { "\"leading-trailing\"", "\"simplex\"", "rear.brake.shoes", "\"simplex\" is not known", "\"duo-servo\"" },
        { "\"brakeFactor\": 2.1", "\"frictionSensitivity\": 2.1", "rear.brake.frictionSensitivity", "says nothing without brakeFactor",
            "brakeFactor beside it" },
        { "\"brakeFactor\": 2.1",
            "\"brakeFactor\": 2.1, \"geometry\": { \"pivotDistance\": \"90 mm\", \"actuatingArm\": \"160 mm\", \"liningStart\": "
                + "\"20 °\", \"liningEnd\": \"130 °\" }", "rear.brake", "more than once", "one of brakeFactor, geometry" },
        { "\"brakeFactor\": 2.1",
            "\"geometry\": { \"pivotDistance\": \"90 mm\", \"actuatingArm\": "
                + "\"160 mm\", \"liningStart\": \"130 °\", \"liningEnd\": \"20 °\" }", "rear.brake", "must end further", "" },
        { "\"brakeFactor\": 2.1",
            "\"geometry\": { \"pivotDistance\": \"90 mm\", \"actuatingArm\": "
                + "\"160 mm\", \"liningStart\": \"20 °\", \"liningEnd\": \"130 °\", \"support\": \"floating\" }",
                "rear.brake.geometry.support", "\"floating\" is not known", "\"pivoted\", \"sliding\"" },
        { "\"shoes\": \"leading-trailing\"",
            "\"geometry\": { \"pivotDistance\": \"90 mm\", \"actuatingArm\": \"160 mm\", \"liningStart\": "
                + "\"20 °\", \"liningEnd\": \"130 °\" }, \"shoes\": \"duo-servo\"", "rear.brake", "more than once", "" },
        { "\"friction\": 0.38, \"brakeFactor\": 2.1",
            "\"friction\": 1.0, \"brakeFactor\": 2.1, \"brakeFactorFriction\": 0.38, \"frictionSensitivity\": 3", "rear.brake", "lock",
            "" },
        { "\"blendPressure\": \"20 bar\"", "\"blendPressure\": \"5 bar\"", "hydraulics.frontValves[0].blendPressure",
            "is not above openingPressure", "above openingPressure" },
        { "\"knee\": \"35 bar\"", "\"knee\": \"80 bar\"", "hydraulics.rearValves[0].knee", "80 bar cannot be set with the adjuster",
            "from 7 bar to 67 bar" },
        { "\"knee\": \"35 bar\"", "\"knee\": \"-5 bar\"", "hydraulics.rearValves[0].knee", "outside the range", "from 0 bar to 300 bar" },
        { "\"slope\": 0.4", "\"slope\": 1.4", "hydraulics.rearValves[0].slope", "1.4 is outside the range", "from 0 to 1" },
        { "\"type\": \"proportioning\"", "\"type\": \"magic\"", "hydraulics.rearValves[0].type", "\"magic\" is not known",
            "\"proportioning\", \"limiting\", \"load-sensing\", \"metering\"" },
        { "\"drivenAxle\": \"rear\"", "\"drivenAxle\": \"both\"", "engineBraking.drivenAxle", "\"both\" is not known",
            "\"front\", \"rear\"" },
        { "{ \"dragArea\": \"0.7 m²\" }", "\"0.7 m²\"", "aerodynamics", "is not an object", "entries between braces" },
        { "\"0.7 m²\"", "\"0.7\"", "aerodynamics.dragArea", "has no unit", "an area" },
        { "{ \"dragArea\": \"0.7 m²\" }", "{ \"dragArea\": \"0.7 m²\", \"airDensity\": \"9 kg/m³\" }", "aerodynamics.airDensity",
            "outside the range", "from 0.5 kg/m³ to 2 kg/m³" },
    };

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_is_told_with_path_reason_and_accepted_form(string replaced, string by, string path, string what, string accepted)
    {
        Assert.Contains(replaced, Good);
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(Replace(Good, replaced, by));
        Assert.Null(reading);
        Problem problem = problems.FirstOrDefault(candidate => candidate.Path == path && candidate.What.Contains(what))
            ?? throw new Xunit.Sdk.XunitException($"No problem at {path} says \"{what}\". There are:\n{string.Join('\n', problems)}");
        Assert.Contains(accepted, problem.Accepted);
        Assert.StartsWith(path + ": ", problem.ToString());
    }

    [Theory]
    [MemberData(nameof(Faults))]
    public void Each_fault_is_told_in_the_same_words_where_a_comma_is_usual(string replaced, string by, string path, string what,
        string accepted) =>
        Under("de-DE", () => Each_fault_is_told_with_path_reason_and_accepted_form(replaced, by, path, what, accepted));

    [Theory]
    [InlineData("Must rise. (Parameter 'points')")]
    [InlineData("Must rise. Arg_ParamName_Name, points")]
    [InlineData("Must rise. Arg_ParamName_Name, points\nArgumentOutOfRange_ActualValue, 3")]
    public void What_a_fault_says_is_kept_without_the_names_of_the_code(string message) =>
        Assert.Equal("Must rise.", Problem.WordsOf(new ArgumentException(message)));

    [Fact]
    public void Good_file_becomes_the_car_it_describes()
    {
        Vehicle car = VehicleFile.Read(Good, "test").Vehicle;
        Assert.Equal("Test coupe", car.Name);
        Assert.Equal(1.15, car.LoadCase("driver only").FrontAxleToCentreOfGravity.Meters, 1e-12);
        Assert.Equal(1500, car.LoadCase("LADEN").Mass.Kilograms, 1e-9);
        Assert.Equal(2.5 * 8 / 15, car.LoadCase("laden").FrontAxleToCentreOfGravity.Meters, 1e-12);
        Assert.Equal(0.8, Assert.IsType<DiscBrake>(car.Brakes.Front).BrakeFactor, 1e-12);
        Assert.Equal(2.1, Assert.IsType<DrumBrake>(car.Brakes.Rear).BrakeFactor, 1e-12);
        Assert.Equal(35, car.Hydraulics.RearProportioningValve!.Knee.Bars, 1e-12);
        Assert.Equal(2.8, car.Hydraulics.RearProportioningValve.Adjustment!.TurnsFor(car.Hydraulics.RearProportioningValve.Knee)!.Value,
            1e-9);
        Assert.IsType<MeteringValve>(Assert.Single(car.Hydraulics.FrontValves));
        Assert.Equal(Axle.Rear, car.EngineBraking!.DrivenAxle);
        Assert.Equal(0.015, car.RollingResistanceCoefficient);
        Assert.Equal(0.7, car.Aerodynamics!.DragArea.SquareMeters, 1e-12);
    }

    [Fact]
    public void Every_kind_of_part_can_be_read()
    {
        string text = Good
            .Replace("{ \"type\": \"disc\", \"pistonDiameters\": [\"54 mm\"], \"effectiveRadius\": \"110 mm\", \"friction\": 0.40 }",
                "{ \"type\": \"measured\", \"torque\": \"620 N·m\", \"torquePressure\": "
                    + "\"50 bar\", \"pistonDiameters\": [\"54 mm\"], \"effectiveRadius\": \"110 mm\", \"friction\": 0.40 }")
            .Replace("\"shoes\": \"leading-trailing\"", "\"shoes\": \"duo-servo\"")
            .Replace("\"brakeFactor\": 2.1",
                "\"duoServoGeometry\": { \"cylinderDistance\": "
                    + "\"90 mm\", \"anchorDistance\": \"95 mm\", \"linkDistance\": \"90 mm\", \"primaryStart\": "
                    + "\"40 °\", \"primaryEnd\": \"130 °\", \"secondaryStart\": \"30 °\", \"secondaryEnd\": \"140 °\" }")
            .Replace("\"frontValves\": [",
                "\"split\": { \"type\": \"balance bar\", \"frontBore\": "
                    + "\"19.05 mm\", \"rearBore\": \"20.64 mm\", \"frontForceShare\": 0.55 }, \"frontValves\": [")
            .Replace("\"rearValves\": [",
                "\"rearValves\": [{ \"type\": \"limiting\", \"limit\": \"60 bar\" }, { \"type\": \"load-sensing\", \"kneeAtReference\": "
                    + "\"30 bar\", \"referenceLoad\": \"6 kN\", \"kneePerKilonewton\": \"8 bar\", \"slope\": 0.35 }, ");
        Vehicle car = VehicleFile.Read(text, "test").Vehicle;
        Assert.Equal(12.4, Assert.IsType<MeasuredBrake>(car.Brakes.Front).MeasuredNewtonMetresPerBar, 1e-9);
        Assert.IsType<DuoServoGeometry>(Assert.IsType<DrumBrake>(car.Brakes.Rear).Shoes);
        Assert.IsType<BalanceBarSplit>(car.Hydraulics.Split);
        Assert.Equal([typeof(LimitingValve), typeof(LoadSensingValve), typeof(ProportioningValve)],
            car.Hydraulics.RearValves.Select(valve => valve.GetType()));
    }

    [Fact]
    public void All_problems_are_told_at_once()
    {
        string text = Good
            .Replace("\"2.50 m\"", "\"2,50 m\"")
            .Replace("\"1200 kg\"", "\"1200\"")
            .Replace("\"leading-trailing\"", "\"simplex\"")
            .Replace("\"slope\": 0.4", "\"slope\": 4")
            .Replace("\"blendPressure\": \"20 bar\"", "\"blendPressure\": \"5 bar\"")
            .Replace("\"drivenAxle\": \"rear\"", "\"drivenAxle\": \"both\"")
            .Replace("\"rearAxleMass\": \"800 kg\", ", "");
        string[] paths = [.. VehicleFile.TryRead(text).Problems.Select(problem => problem.Path)];
        Assert.Equal(
            ["engineBraking.drivenAxle", "hydraulics.frontValves[0].blendPressure", "hydraulics.rearValves[0].slope", "loadCases[0].mass",
                "loadCases[1]", "rear.brake.shoes", "wheelbase"],
            paths.Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Part_that_cannot_be_read_does_not_shift_the_places_of_the_others()
    {
        string text = Good.Replace("{ \"name\": \"driver only\",", "7, { \"name\": \"driver only\",")
            .Replace("\"frontShare\": 0.54", "\"frontAxleToCentreOfGravity\": \"2.6 m\"");
        string[] paths = [.. VehicleFile.TryRead(text).Problems.Select(problem => problem.Path)];
        Assert.Equal(["loadCases[0]", "loadCases[1].frontAxleToCentreOfGravity"], paths);
    }

    [Fact]
    public void Exception_lists_every_problem_after_the_files_name()
    {
        var fault = Assert.Throws<VehicleFileException>(() =>
            VehicleFile.Read(Good.Replace("\"2.50 m\"", "\"2.50\"").Replace("0.40", "4"), "car.json"));
        Assert.Equal(2, fault.Problems.Count);
        Assert.All(fault.Message.Split('\n'), line => Assert.StartsWith("car.json: ", line));
    }

    [Theory]
    [InlineData("{ \"name\": \"x\" ", 1)]
    [InlineData("{\n  \"name\": \"x\"\n  \"wheelbase\": \"2 m\"\n}", 3)]
    [InlineData("", 1)]
    [InlineData("wheelbase = 2.5 m", 1)]
    public void Text_that_is_not_JSON_is_told_with_line_and_column(string text, int line)
    {
        Problem problem = Assert.Single(VehicleFile.TryRead(text).Problems);
        Assert.Equal("", problem.Path);
        Assert.StartsWith($"Line {line}, column ", problem.What);
        Assert.Contains("this is not JSON", problem.What);
        Assert.Contains("comments and trailing commas may stay", problem.Accepted);
    }

    [Theory]
    [InlineData("")]
    [InlineData("{ \"name\": \n")]
    public void A_file_that_ends_too_early_is_told_to(string text) =>
        Assert.EndsWith("this is not JSON: the file ends too early.", Assert.Single(VehicleFile.TryRead(text).Problems).What);

    [Fact]
    public void A_number_with_a_decimal_comma_is_told_what_is_wrong_with_it()
    {
        string car = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"))
            .Replace("\"boostRatio\": 4.2", "\"boostRatio\": \"4,2\"", StringComparison.Ordinal);
        Problem problem = Assert.Single(VehicleFile.TryRead(car).Problems);
        Assert.Equal(("assist.boostRatio", "\"4,2\" has a decimal comma; write a point."), (problem.Path, problem.What));
    }

    [Theory]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("12")]
    public void JSON_that_is_no_object_is_refused(string text) =>
        Assert.Contains("is not an object", Assert.Single(VehicleFile.TryRead(text).Problems).What);

    [Fact]
    public void Every_entry_that_is_there_twice_is_told_with_its_line()
    {
        string text = Good
            .Replace("\"rollingResistance\": 0.015", "\"rollingResistance\": 0.015, \"rollingResistance\": 0.02")
            .Replace("\"friction\": 0.40", "\"friction\": 0.40,\n\"friction\": 0.41");
        IReadOnlyList<Problem> problems = VehicleFile.TryRead(text).Problems;
        Assert.Equal(["friction", "rollingResistance"], problems.Select(problem => problem.Path));
        Assert.Contains("twice, the second time in line 12", problems[0].What);
        Assert.NotNull(VehicleFile.TryRead(Good).Reading);
    }

    [Fact]
    public void File_that_is_not_there_is_told_by_its_path()
    {
        var fault = Assert.Throws<VehicleFileException>(() => VehicleFile.Load("no-such-car.json"));
        Assert.Equal("no-such-car.json: There is no such file. Accepted: the path of a vehicle file (JSON).", fault.Message);
    }

    [Fact]
    public void Range_stands_at_its_middle_and_is_told()
    {
        VehicleReading reading =
            VehicleFile.Read(Good.Replace("\"1200 kg\"", "\"1150 kg .. 1250 kg\"").Replace("0.40", "\"0.36 .. 0.44\"")
            .Replace("\"knee\": \"35 bar\"", "\"knee\": \"30 .. 40 bar\""), "test");
        Assert.Equal(1200, reading.Vehicle.LoadCases[0].Mass.Kilograms, 1e-9);
        Assert.Equal(0.40, reading.Vehicle.Brakes.Front.FrictionCoefficient, 1e-12);
        Assert.Equal(35, reading.Vehicle.Hydraulics.RearProportioningValve!.Knee.Bars, 1e-9);
        Assert.Equal(
            [("loadCases[0].mass", "1150 kg", "1250 kg"), ("front.brake.friction", "0.36", "0.44"),
                ("hydraulics.rearValves[0].knee", "30 bar", "40 bar")],
            reading.Ranges.Select(range => (range.Path, range.Low, range.High)));
    }

    [Fact]
    public void Ends_of_a_range_may_have_units_of_their_own()
    {
        VehicleReading reading = VehicleFile.Read(Good.Replace("\"2.50 m\"", "\"98 in .. 2.51 m\""), "test");
        Assert.Equal((98 * 0.0254 + 2.51) / 2, reading.Vehicle.Wheelbase.Meters, 1e-12);
    }

    [Theory]
    [InlineData("98.425196850393700787 in")]
    [InlineData("8.2020997375328083989 ft")]
    [InlineData("250cm")]
    [InlineData(" +2500 mm ")]
    [InlineData("25e-1 m")]
    public void Same_length_can_be_written_in_many_ways(string text) =>
        Assert.Equal(2.5, VehicleFile.Read(Good.Replace("2.50 m", text), "test").Vehicle.Wheelbase.Meters, 1e-12);

    [Theory]
    [InlineData("600 cm")]
    [InlineData("6000 mm")]
    [InlineData("19.6850393700787 ft")]
    [InlineData("1000 mm")]
    public void Limits_themselves_are_accepted_in_any_unit(string text) =>
        Assert.NotNull(VehicleFile.TryRead(Good.Replace("2.50 m", text)).Reading);

    [Theory]
    [InlineData("0.7 m^2")]
    [InlineData("0.7 m2")]
    [InlineData("7000 cm²")]
    [InlineData("1085.0021700043400087 in²")]
    public void Areas_may_be_written_without_raised_digits(string text) =>
        Assert.Equal(0.7, VehicleFile.Read(Good.Replace("0.7 m²", text), "test").Vehicle.Aerodynamics!.DragArea.SquareMeters, 1e-9);

    [Fact]
    public void Everything_is_read_the_same_where_a_comma_is_usual() => Under("de-DE", () =>
    {
        Good_file_becomes_the_car_it_describes();
        Range_stands_at_its_middle_and_is_told();
        All_problems_are_told_at_once();
    });

    internal static void Under(string culture, Action action)
    {
        CultureInfo before = CultureInfo.CurrentCulture;
        CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
        try
        {
            action();
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static string Replace(string text, string replaced, string by)
    {
        int at = text.IndexOf(replaced, StringComparison.Ordinal);
        return text[..at] + by + text[(at + replaced.Length)..];
    }

    [Fact]
    public void A_file_as_long_as_may_be_is_read_in_no_time_and_a_longer_one_is_refused()
    {
        string head = "{\n  \"name\": \"long\",\n  \"other\": [\n", foot = "    1\n  ]\n}\n", row = "    [1, 2, 3],\n";
        string longest = head + string.Concat(Enumerable.Repeat(row,
            (DocumentFile.MostCharacters - head.Length - foot.Length) / row.Length)) + foot;
        Assert.InRange(longest.Length, DocumentFile.MostCharacters - 100, DocumentFile.MostCharacters);

        var watch = System.Diagnostics.Stopwatch.StartNew();
        Assert.DoesNotContain(VehicleFile.TryRead(longest).Problems, problem => problem.What.Contains("characters",
            StringComparison.Ordinal));
        Assert.InRange(watch.Elapsed.TotalSeconds, 0, 2);
        Assert.Equal("The file has 1000100 characters.",
            Assert.Single(VehicleFile.TryRead(longest.PadRight(DocumentFile.MostCharacters + 100)).Problems).What);
    }
}
