using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

public sealed class FluidVolumeTests
{
    private static readonly CircuitVolume Front = new()
    {
        PistonArea = Area.FromSquareCentimeters(88),
        Clearance = Length.FromMillimeters(0.3),
        Hose = new BrakeHose { Length = Length.FromMillimeters(800) },
        Compliance = Volume.FromCubicCentimeters(2.5),
        FluidVolume = Volume.FromCubicCentimeters(150),
    };

    private static readonly CircuitVolume Rear = new()
    {
        PistonArea = Area.FromSquareCentimeters(15.5),
        Clearance = Length.FromMillimeters(1.2),
        Hose = new BrakeHose { Length = Length.FromMillimeters(400) },
        Compliance = Volume.FromCubicCentimeters(1.0),
        FluidVolume = Volume.FromCubicCentimeters(100),
    };

    private static readonly Pedal Pedal = new() { Lever = new FixedRatioLever { Ratio = 4 } };

    private static readonly TandemMasterCylinder Tandem = new() { Bore = Length.FromInches(1), Stroke = Length.FromMillimeters(36) };

    private static readonly PerAxle<Pressure> Pressures = new(Pressure.FromBars(60), Pressure.FromBars(40));

    [Fact]
    public void At_no_pressure_only_the_clearance_is_taken_up()
    {
        VolumeDemand none = Front.Demand(Pressure.Zero);
        Assert.Equal(88 * 0.03, none.Clearance.CubicCentimeters, 9);
        Assert.Equal(none.Clearance.CubicCentimeters, none.Total.CubicCentimeters, 12);
    }

    [Fact]
    public void Trapped_air_is_nearly_all_travel()
    {
        CircuitVolume airy = Front with { Fluid = new BrakeFluid { TrappedAir = 0.02 } };
        double air = airy.Demand(Pressure.FromBars(60)).Air.CubicCentimeters;
        Assert.InRange(air, 0.97 * 3, 3.0);
    }

    [Fact]
    public void The_bulk_modulus_is_the_slope_of_the_volume_with_pressure()
    {
        // Against a numerical derivative of the volumes themselves; the gas at constant temperature.
        var fluid = new BrakeFluid { TrappedAir = 0.01 };
        Volume circuit = Volume.FromLiters(1);
        Pressure at = Pressure.FromBars(30);
        double Left(double pascals) => 1e-3
            - fluid.Compression(circuit, Pressure.FromPascals(pascals)).CubicMeters
            - fluid.AirCompression(circuit, Pressure.FromPascals(pascals)).CubicMeters;
        double slope = (Left(at.Pascals + 100) - Left(at.Pascals - 100)) / 200;
        Assert.Equal(1, -Left(at.Pascals) / slope / fluid.BulkModulus(at).Pascals, 0.02);
    }

    [Fact]
    public void What_one_axle_alone_has_no_number_for_is_not_counted_there()
    {
        string[] Of(CircuitVolume front, CircuitVolume rear) => [.. PedalTravel.At(Pedal, Tandem, new(front, rear), Pressures).NotCounted];
        CircuitVolume stiff = Rear with { Compliance = Volume.Zero };
        Assert.Empty(Of(Front, Rear));
        Assert.Equal(["rear calipers or drums"], Of(Front, stiff));
        Assert.Equal(["front hoses", "rear calipers or drums", "front fluid"],
            Of(Front with { Hose = new() { Length = Length.Zero }, FluidVolume = Volume.Zero }, stiff));
        Assert.Equal(["calipers or drums"], Of(Front with { Compliance = Volume.Zero }, stiff));
    }

    [Fact]
    public void The_parts_of_the_pedals_travel_add_up_to_the_pad()
    {
        PedalTravel travel = PedalTravel.At(Pedal, Tandem, new(Front, Rear), Pressures, Length.FromMillimeters(0.4));
        Assert.Equal(travel.Pad!.Value.Millimeters, travel.Parts.Sum(part => part.Travel.Millimeters), 9);
        Assert.True(travel.Reaches);
        Assert.Null(travel.Warning);
    }

    [Fact]
    public void The_same_volume_through_a_smaller_bore_takes_more_travel()
    {
        PedalTravel wide = PedalTravel.At(Pedal, Tandem, new(Front, Rear), Pressures);
        PedalTravel narrow = PedalTravel.At(Pedal, Tandem with { Bore = Length.FromMillimeters(19.05) }, new(Front, Rear), Pressures);
        Assert.True(narrow.Pad > wide.Pad);
    }

    [Fact]
    public void Too_small_a_bore_comes_to_the_end_of_its_stroke_and_says_so()
    {
        PedalTravel travel = PedalTravel.At(Pedal, Tandem with { Bore = Length.FromMillimeters(14) }, new(Front, Rear), Pressures);
        Assert.False(travel.Reaches);
        Assert.Contains("end of its stroke", travel.Warning, StringComparison.Ordinal);
    }

    [Fact]
    public void A_long_pedal_is_warned_of_before_it_reaches_the_floor()
    {
        Pedal shallow = Pedal with { AvailableTravel = Length.FromMillimeters(110) };
        PedalTravel travel = PedalTravel.At(shallow, Tandem, new(Front, Rear), Pressures);
        Assert.True(travel.Reaches);
        Assert.Contains("Long pedal", travel.Warning, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lost_circuit_costs_its_chambers_whole_stroke_first()
    {
        PerAxle<Volume> volumes = new(Front.Demand(Pressures.Front).Total, Rear.Demand(Pressures.Rear).Total);
        PedalTravel? lost = PedalTravel.WithCircuitLost(Pedal, Tandem, Axle.Front, volumes);
        Assert.NotNull(lost);
        double expected = 1.2 + 18 + (volumes.Rear / Tandem.PistonAreas.Rear).Millimeters;
        Assert.Equal(expected, lost.RodTravel.Millimeters, 9);
        var single = new SingleMasterCylinder { Bore = Length.FromInches(1), Stroke = Length.FromMillimeters(36) };
        Assert.Null(PedalTravel.WithCircuitLost(Pedal, single, Axle.Front, volumes));
    }

    [Fact]
    public void A_balance_bars_bearing_moves_by_the_weighted_mean_of_the_two_rods()
    {
        var twin = new TwinMasterCylinders
        {
            FrontBore = Length.FromMillimeters(19.05),
            RearBore = Length.FromMillimeters(20.64),
            FrontForceShare = 0.5,
            Stroke = Length.FromMillimeters(30),
            CompensatingPortTravel = Length.Zero,
        };
        PerAxle<Volume> volumes = new(Volume.FromCubicCentimeters(3), Volume.FromCubicCentimeters(2));
        double mean = ((volumes.Front / twin.PistonAreas.Front).Millimeters + (volumes.Rear / twin.PistonAreas.Rear).Millimeters) / 2;
        Assert.Equal(mean, twin.RodTravel(volumes).Millimeters, 9);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(76.2)]
    public void An_implausible_bore_is_refused_with_the_range(double millimetres)
    {
        ArgumentOutOfRangeException fault =
            Assert.Throws<ArgumentOutOfRangeException>(() => Tandem with { Bore = Length.FromMillimeters(millimetres) });
        Assert.Equal("Bore", fault.ParamName);
        Assert.Contains("between 9 mm and 51 mm", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_residual_valve_holds_little() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => new ResidualPressureValve { Held = Pressure.FromBars(10) });

    [Fact]
    public void A_hose_is_not_extrapolated_beyond_the_standards_table()
    {
        var big = new BrakeHose { Length = Length.FromMeters(1), Bore = HoseBore.QuarterInch };
        ArgumentOutOfRangeException fault = Assert.Throws<ArgumentOutOfRangeException>(() => big.Expansion(Pressure.FromBars(150)));
        Assert.Contains("1500 psi", fault.Message, StringComparison.Ordinal);
    }
}
