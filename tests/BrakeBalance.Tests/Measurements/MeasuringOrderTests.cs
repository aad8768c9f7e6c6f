using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Measurements;

public class MeasuringOrderTests
{
    private const string Bare = """{ "name": "What a forum asker has", "carClass": "1960s coupe" }""";

    private static Vehicle Read(string text, params ValueOverride[] set) => VehicleFile.Read(text, "test", set).Vehicle;

    private static double Width(IReadOnlyList<BandedAnswer> answers, string key)
    {
        Interval<double> band = answers.Single(a => a.Key == key).Band;
        return band.High - band.Low;
    }

    [Theory]
    [InlineData("1960s coupe")]
    [InlineData("track coupe")]
    [InlineData("small sports car")]
    [InlineData("rear-engined car")]
    [InlineData("pickup")]
    public void A_class_alone_makes_a_car_with_every_number_marked_as_typical(string name)
    {
        Vehicle car = Read($$"""{ "name": "x", "carClass": "{{name}}" }""");
        Assert.All(car.Uncertainty!.Ranges, range => Assert.True(range.IsTypical));
        Assert.Contains(car.Uncertainty!.Ranges, range =>
            range.Path == "loadCases[0].centreOfGravityHeight" && range.HowToMeasure.Contains("raised"));
        Assert.Contains("rear.brake.type", VehicleFile.Read($$"""{ "name": "x", "carClass": "{{name}}" }""", "test").FromCarClass);
        Assert.True(car.Uncertainty!.Ranges.Count >= 10);
        Assert.All(MeasuringOrder.Bands(car, samples: 16), answer => Assert.True(answer.Band.High > answer.Band.Low));
    }

    [Fact]
    public void The_band_narrows_as_values_arrive()
    {
        double bare = Width(MeasuringOrder.Bands(Read(Bare)), "rear_force_margin");
        double braked = Width(MeasuringOrder.Bands(Read("""
            { "name": "x", "carClass": "1960s coupe", "rear": { "brake": { "type": "drum", "shoes": "duo-servo",
              "drumRadius": "127 mm", "wheelCylinderDiameter": "22.2 mm", "friction": 0.38 } } }
            """)), "rear_force_margin");
        double known = Width(MeasuringOrder.Bands(VehicleFile.Load(RepositoryFile("data/vehicles/coupe-1960s.json")).Vehicle),
            "rear_force_margin");
        Assert.True(bare > 1.3 * braked, $"{bare} {braked}");
        Assert.Equal(0, known);
    }

    [Fact]
    public void The_rear_linings_of_a_duo_servo_drum_are_the_first_thing_to_measure()
    {
        BandedAnswer margin = MeasuringOrder.Bands(Read(Bare))[0];
        Assert.Equal("rear.brake.friction", margin.MeasureNext[0].Path);
        Assert.Contains("Torque wrench", margin.MeasureNext[0].How);
        Assert.True(margin.MeasureNext[0].BandLeft < 0.9);
    }

    [Fact]
    public void Measuring_the_first_advice_narrows_the_band_as_foretold()
    {
        IReadOnlyList<BandedAnswer> before = MeasuringOrder.Bands(Read(Bare));
        MeasuringAdvice advice = before[0].MeasureNext[0];
        // Averaged over what the measurement might give.
        double after = new[] { 0.342, 0.366, 0.39, 0.408 }.Average(mu =>
            Width(MeasuringOrder.Bands(
            Read(Bare, new ValueOverride(advice.Path, mu.ToString(System.Globalization.CultureInfo.InvariantCulture)))),
            "rear_force_margin"));
        Assert.Equal(advice.BandLeft, after / Width(before, "rear_force_margin"), 0.15);
    }

    [Fact]
    public void Nothing_of_the_band_is_left_once_the_only_range_is_measured()
    {
        string file = File.ReadAllText(RepositoryFile("data/vehicles/coupe-1960s.json"));
        Vehicle car = Read(file, new ValueOverride("wheelbase", "2.74 m .. 2.78 m"));
        MeasuringAdvice[] advice = [.. MeasuringOrder.Bands(car).Where(answer => answer.Band.High > answer.Band.Low)
            .Select(answer => Assert.Single(answer.MeasureNext))];
        Assert.NotEmpty(advice);
        Assert.All(advice, one => Assert.Equal(0, one.BandLeft, 9));
    }

    [Fact]
    public void A_range_in_the_file_is_the_files_own()
    {
        Vehicle car = Read("""
            { "name": "x", "carClass": "pickup", "loadCases": [{ "name": "empty", "mass": "1900 kg .. 1950 kg", "frontShare": 0.57 }] }
            """);
        Assert.False(car.Uncertainty!.Ranges.Single(r => r.Path == "loadCases[0].mass").IsTypical);
        Assert.True(car.Uncertainty!.Ranges.Single(r => r.Path == "loadCases[0].centreOfGravityHeight").IsTypical);
        Assert.DoesNotContain(car.Uncertainty!.Ranges, r => r.Path.Contains("frontShare"));
    }

    [Fact]
    public void Values_that_are_given_are_kept_and_axle_masses_keep_the_class_from_adding_a_mass()
    {
        Vehicle car = Read("""
            { "name": "x", "carClass": "small sports car", "wheelbase": "2.28 m",
              "loadCases": [{ "name": "me", "frontAxleMass": "500 kg", "rearAxleMass": "480 kg" }],
              "rear": { "brake": { "type": "disc", "pistonDiameters": ["34 mm"], "effectiveRadius": "110 mm" } } }
            """);
        Assert.Equal(980, car.LoadCases[0].Mass.Kilograms, 6);
        Assert.Contains(car.Uncertainty!.Ranges, r => r.Path == "rear.brake.friction");
        Assert.DoesNotContain(car.Uncertainty!.Ranges, r => r.Path.StartsWith("rear.brake.drum", StringComparison.Ordinal));
    }

    [Fact]
    public void An_unknown_class_is_refused_with_the_classes_there_are()
    {
        var fault = Assert.Throws<VehicleFileException>(() => Read("""{ "name": "x", "carClass": "hovercraft" }"""));
        Assert.Contains(fault.Problems, p => p.Path == "carClass" && p.Accepted.Contains("pickup"));
    }

    [Fact]
    public void Draws_lie_within_the_ranges_and_the_middle_is_the_middle()
    {
        Vehicle car = Read("""{ "name": "x", "carClass": "track coupe", "wheelbase": "2.50 m .. 2.60 m" }""");
        int i = car.Uncertainty!.Ranges.ToList().FindIndex(r => r.Path == "wheelbase");
        double[] fractions = [.. car.Uncertainty!.Ranges.Select(_ => 0.5)];
        Assert.Equal(2.55, car.Uncertainty!.Draw(fractions)!.Wheelbase.Meters, 9);
        fractions[i] = 1;
        Assert.Equal(2.60, car.Uncertainty!.Draw(fractions)!.Wheelbase.Meters, 9);
        fractions[i] = 0;
        Assert.Equal(2.50, car.Uncertainty!.Draw(fractions)!.Wheelbase.Meters, 9);
        Assert.Throws<ArgumentException>(() => car.Uncertainty!.Draw([0.5]));
    }

    [Fact]
    public void The_spread_of_friction_follows_the_ranges_of_the_file()
    {
        ParameterSpread spread = ParameterSpread.From(Read("""
            { "name": "x", "carClass": "track coupe", "front": { "brake": { "type": "disc", "friction": "0.40 .. 0.44",
              "pistonDiameters": ["54 mm"], "effectiveRadius": "130 mm" } } }
            """));
        Assert.Equal(0.02 / 0.42 / Math.Sqrt(3), spread.FrontFriction, 6);
    }

    private static string RepositoryFile(string path)
    {
        string folder = AppContext.BaseDirectory;
        while (!File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder)!;
        }

        return Path.Combine(folder, path);
    }
}
