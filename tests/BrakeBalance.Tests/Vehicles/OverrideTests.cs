using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Single values set from outside by their path.</summary>
public class OverrideTests
{
    [Theory]
    [InlineData("hydraulics.rearValves[0].knee", "40 bar")]
    [InlineData("hydraulics.rearValves[0].knee", "580.15094984 psi")]
    public void Element_of_a_list_is_named_by_its_number(string path, string value) =>
        Assert.Equal(40, Read(new ValueOverride(path, value)).Hydraulics.RearProportioningValve!.Knee.Bars, 1e-6);

    [Theory]
    [InlineData("loadCases[driver only].mass")]
    [InlineData("loadCases[Driver Only].mass")]
    [InlineData("loadCases[0].mass")]
    public void Element_of_a_list_may_be_named_by_its_name(string path) =>
        Assert.Equal(1333, Read(new ValueOverride(path, "1333 kg")).LoadCases[0].Mass.Kilograms, 1e-9);

    [Fact]
    public void Name_may_hold_a_point()
    {
        string text = VehicleFileTests.Good.Replace("\"driver only\"", "\"tank 0.5 full\"");
        Assert.Equal(1333, VehicleFile.Read(text, "test", new ValueOverride("loadCases[tank 0.5 full].mass", "1333 kg")).Vehicle.LoadCases[
            0].Mass.Kilograms, 1e-9);
    }

    [Fact]
    public void Number_text_and_range_can_be_set()
    {
        Vehicle car = Read(new("front.brake.friction", "0.44"), new("name", "1960"), new("rear.brake.shoes", "two-leading"),
            new("front.brake.pistonDiameters[0]", "57 mm"));
        Assert.Equal(0.44, car.Brakes.Front.FrictionCoefficient);
        Assert.Equal("1960", car.Name);
        Assert.Equal(57, ((BrakeBalance.Brakes.DiscBrake)car.Brakes.Front).Pistons.Diameters[0].Millimeters, 1e-9);
        VehicleReading ranged = VehicleFile.Read(VehicleFileTests.Good, "test", new ValueOverride("front.brake.friction", "0.3 .. 0.5"));
        Assert.Equal(0.4, ranged.Vehicle.Brakes.Front.FrictionCoefficient, 1e-12);
        Assert.Single(ranged.Ranges);
        string withRange = VehicleFileTests.Good.Replace("0.40", "\"0.36 .. 0.44\"");
        Assert.Equal(0.5, VehicleFile.Read(withRange, "test",
            new ValueOverride("front.brake.friction", "0.5")).Vehicle.Brakes.Front.FrictionCoefficient);
    }

    [Fact]
    public void Entry_that_the_file_leaves_out_can_be_set() =>
        Assert.Equal(3, Read(new ValueOverride("front.brake.thresholdPressure", "3 bar")).Brakes.Front.ThresholdPressure.Bars, 1e-9);

    [Theory]
    [InlineData("hydraulics.rearValvs[0].knee", "40 bar", "Did you mean \"rearValves\"?")]
    [InlineData("hydralics.rearValves[0].knee", "40 bar", "Did you mean \"hydraulics\"?")]
    [InlineData("hydraulics.rearValves[3].knee", "40 bar", "has no element [3]")]
    [InlineData("loadCases[empty].mass", "900 kg", "has no element [empty]")]
    [InlineData("hydraulics", "40 bar", "is not a single value")]
    [InlineData("hydraulics.rearValves", "40 bar", "is not a single value")]
    [InlineData("hydraulics.rearValves[0]", "40 bar", "is not a single value")]
    [InlineData("wheelbase.metres", "2.4", "has no entries")]
    [InlineData("wheelbase[0]", "2.4 m", "is not a list")]
    [InlineData("loadCases[0", "2.4 m", "cannot be read as part of a path")]
    [InlineData("loadCases..mass", "2.4 m", "cannot be read as part of a path")]
    [InlineData("", "2.4 m", "cannot be read as part of a path")]
    [InlineData("wheelbas", "2.4 m", "Did you mean \"wheelbase\"?")]
    [InlineData("wheelbase", "2,4 m", "decimal comma")]
    [InlineData("wheelbase", "2.4", "has no unit")]
    [InlineData("wheelbase", "NaN", "is not a number followed by a unit")]
    [InlineData("front.brake.friction", "NaN", "does not fit")]
    [InlineData("front.brake.friction", "Infinity", "does not fit")]
    [InlineData("front.brake.friction", "sticky", "does not fit")]
    [InlineData("front.brake.friction", "true", "does not fit")]
    public void Faulty_override_is_told_with_its_path(string path, string value, string what)
    {
        (VehicleReading? reading, IReadOnlyList<Problem> problems) =
            VehicleFile.TryRead(VehicleFileTests.Good, new ValueOverride(path, value));
        Assert.Null(reading);
        Assert.Contains(problems, problem => problem.Path == path && problem.What.Contains(what));
        Assert.All(problems, problem => Assert.NotEqual("", problem.Accepted));
    }

    [Theory]
    [InlineData("0.37", "0.48", 0.37)]
    [InlineData("\"0.34 .. 0.40\"", "0.48", 0.37)]
    [InlineData("0.37", "0.46 .. 0.50", 0.37)]
    public void Another_friction_makes_another_brake_factor_though_the_file_gives_one_without_its_friction(
        string given, string set, double holdsAt)
    {
        string text = $$"""
            { "name": "x", "carClass": "1960s coupe", "rear": { "brake": { "type": "drum", "shoes": "leading-trailing",
              "drumRadius": "114 mm", "wheelCylinderDiameter": "17.5 mm", "friction": {{given}}, "brakeFactor": 2.1 } } }
            """;
        Brake file = VehicleFile.Read(text, "test").Vehicle.Brakes.Rear;
        Assert.Equal(2.1, file.BrakeFactor, 9);
        Brake other = VehicleFile.Read(text, "test", new ValueOverride("rear.brake.friction", set)).Vehicle.Brakes.Rear;
        Assert.Equal(file.BrakeFactorAt(0.48), other.BrakeFactor, 9);
        Assert.Equal(2.1, other.BrakeFactorAt(holdsAt), 9);

        // Whoever sets the brake factor says it of the friction that stands beside it.
        Assert.Equal(2.5, VehicleFile.Read(text, "test", new("rear.brake.friction", set), new("rear.brake.brakeFactor", "2.5"))
            .Vehicle.Brakes.Rear.BrakeFactor, 9);
    }

    [Fact]
    public void A_friction_that_cannot_be_holds_for_no_brake_factor_when_another_is_set()
    {
        const string Text = """
            { "name": "x", "carClass": "1960s coupe", "rear": { "brake": { "type": "drum", "shoes": "leading-trailing",
              "drumRadius": "114 mm", "wheelCylinderDiameter": "17.5 mm", "friction": 5, "brakeFactor": 2.1 } } }
            """;
        Brake set = VehicleFile.Read(Text, "test", new ValueOverride("rear.brake.friction", "0.40")).Vehicle.Brakes.Rear;
        Assert.Equal(2.1, set.BrakeFactorAt(0.40), 9);
    }

    [Fact]
    public void A_range_of_friction_reaches_the_brake_factor()
    {
        Vehicle car = VehicleFile.Read("""
            { "name": "x", "carClass": "1960s coupe", "rear": { "brake": { "type": "drum", "shoes": "leading-trailing",
              "drumRadius": "114 mm", "wheelCylinderDiameter": "17.5 mm", "friction": "0.34 .. 0.40", "brakeFactor": 2.1 } } }
            """, "test").Vehicle;
        double[] at = [.. car.Uncertainty!.Ranges.Select(range => range.Path == "rear.brake.friction" ? 1 : 0.5)];
        Assert.Equal(car.Brakes.Rear.BrakeFactorAt(0.40), car.Uncertainty.Draw(at)!.Brakes.Rear.BrakeFactor, 9);
        Assert.True(car.Brakes.Rear.BrakeFactorAt(0.40) > 2.2);
    }

    [Theory]
    [InlineData("hydraulics.rearValves[0].knee=40 bar", "hydraulics.rearValves[0].knee", "40 bar")]
    [InlineData(" note = a = b ", "note", "a = b")]
    public void Override_is_written_with_an_equals_sign(string text, string path, string value) =>
        Assert.Equal(new ValueOverride(path, value), ValueOverride.Parse(text));

    [Theory]
    [InlineData("knee 40 bar")]
    [InlineData("=40 bar")]
    [InlineData("knee=")]
    [InlineData("knee= ")]
    [InlineData("")]
    public void Override_needs_something_on_both_sides(string text) => Assert.Null(ValueOverride.Parse(text));

    private static Vehicle Read(params ValueOverride[] overrides) => VehicleFile.Read(VehicleFileTests.Good, "test", overrides).Vehicle;
}
