using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Vehicles;

/// <summary>Lengths as a workshop reads them off a rule or a part.</summary>
public class FractionalInchTests
{
    private static readonly string Starter = StarterFile.Text();

    [Theory]
    [InlineData("1-1/8 in", 1.125)]
    [InlineData("1 1/8 in", 1.125)]
    [InlineData("1 - 1/8 in", 1.125)]
    [InlineData("7/8 in", 0.875)]
    [InlineData("7/8in", 0.875)]
    [InlineData(" 15/16 in ", 0.9375)]
    [InlineData("1-1/8\"", 1.125)]
    [InlineData("7/8″", 0.875)]
    [InlineData("7/8”", 0.875)]
    [InlineData("1.125\"", 1.125)]
    [InlineData("9\"", 9)]
    [InlineData("2-61/64 in", 2.953125)]
    [InlineData("-1/128 in", -0.0078125)]
    [InlineData("-1-1/2 in", -1.5)]
    public void Fractions_of_an_inch_are_read(string text, double inches) =>
        Assert.Equal(inches, QuantityOption.Read<Length>(text).Value!.Value.Inches, 12);

    [Theory]
    [InlineData("1-1/8", "has no unit")]
    [InlineData("1-9/8 in", "is no fraction of an inch")]
    [InlineData("8/8 in", "is no fraction of an inch")]
    [InlineData("0/8 in", "is no fraction of an inch")]
    [InlineData("1/3 in", "is no fraction of an inch")]
    [InlineData("1/0 in", "is no fraction of an inch")]
    [InlineData("1/1000 in", "is no fraction of an inch")]
    [InlineData("1-1/8 mm", "fractions are read of inches only")]
    [InlineData("1/2 m", "fractions are read of inches only")]
    [InlineData("1/2 ft", "fractions are read of inches only")]
    [InlineData("1-1-1/8 in", "is no fraction of an inch")]
    [InlineData("1/8/2 in", "is no fraction of an inch")]
    [InlineData("1-/8 in", "is no fraction of an inch")]
    [InlineData("1.5/8 in", "is no fraction of an inch")]
    [InlineData("1\"1/8", "is no fraction of an inch")]
    [InlineData("99999999999999999999-1/2 in", "is no number of a car")]
    public void Malformed_fractions_are_told(string text, string said)
    {
        (Length? value, string? fault) = QuantityOption.Read<Length>(text);
        Assert.Null(value);
        Assert.Contains(said, fault);
        Assert.Contains(text, fault);
    }

    [Theory]
    [InlineData("1/2 bar")]
    [InlineData("1/2\"")]
    public void Other_quantities_have_no_fractions(string text) => Assert.NotNull(QuantityOption.Read<Pressure>(text).Fault);

    [Theory]
    [InlineData("7/8 .. 1-1/8 in")]
    [InlineData("7/8 in .. 1.125 in")]
    [InlineData("0.875 .. 1-1/8\"")]
    public void Both_ends_of_a_range_may_be_fractions(string text)
    {
        Assert.Null(QuantityText.Read(text, typeof(Length), out IQuantity? low, out IQuantity? high));
        Assert.Equal((0.875, 1.125), (low!.As(UnitsNet.Units.LengthUnit.Inch), high!.As(UnitsNet.Units.LengthUnit.Inch)));
    }

    [Theory]
    [InlineData("1-1/8 in")]
    [InlineData("1 1/8 in")]
    [InlineData("15/16 in")]
    [InlineData("1-1/8\\\"")]
    [InlineData("7/8 .. 1-1/8 in")]
    public void A_vehicle_file_and_its_schema_take_a_bore_as_a_fraction(string bore)
    {
        string text = Starter.Replace("\"bore\": \"19.05 mm\"", $"\"bore\": \"{bore}\"", StringComparison.Ordinal);
        Assert.NotEqual(Starter, text);
        Assert.Empty(VehicleFile.TryRead(text).Problems);
        Assert.Empty(StarterAndSchemaTests.Faults(text));
    }

    [Theory]
    [InlineData("3-1/8 in", "outside the range accepted")]
    [InlineData("1/4 in", "outside the range accepted")]
    [InlineData("1-1/8", "has no unit")]
    [InlineData("1-9/8 in", "is no fraction of an inch")]
    public void A_fraction_is_checked_against_the_range_of_its_entry(string bore, string said)
    {
        Problem problem = Assert.Single(
            VehicleFile.TryRead(Starter.Replace("\"bore\": \"19.05 mm\"", $"\"bore\": \"{bore}\"", StringComparison.Ordinal)).Problems);
        Assert.Equal("masterCylinder.bore", problem.Path);
        Assert.Contains(said, problem.What);
    }

    [Fact]
    public void An_override_takes_a_fraction() => Assert.Equal(
        28.575,
        VehicleFile.Read(Starter, "starter",
            new ValueOverride("rear.brake.pistonDiameters[0]", "1-1/8 in")).Vehicle.Brakes.Rear.PistonArea.SquareMillimeters is var area
            ? Math.Sqrt(area * 4 / Math.PI) : 0, 9);
}
