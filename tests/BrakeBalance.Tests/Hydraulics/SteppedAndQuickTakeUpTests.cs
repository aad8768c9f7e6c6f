using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

/// <summary>Laws of stepped and quick-take-up tandem cylinders, each against the equilibrium written out plainly.</summary>
public sealed class SteppedAndQuickTakeUpTests
{
    private static Length Millimetres(double value) => Length.FromMillimeters(value);

    private static double Square(Length bore) => Math.PI / 4 * bore.Meters * bore.Meters;

    private static TandemMasterCylinder Plain(byte bore) => new()
    {
        Bore = Millimetres(15 + (bore / 10.0)),
        Stroke = Millimetres(40),
        ReturnSpringForce = Force.Zero,
    };

    private static CircuitVolume Circuit(double square, double clearance) => new()
    {
        PistonArea = Area.FromSquareCentimeters(square),
        Clearance = Millimetres(clearance),
        Compliance = Volume.FromCubicCentimeters(1.5),
        Hose = new BrakeHose { Length = Length.FromMeters(0.6) },
        FluidVolume = Volume.FromCubicCentimeters(120),
    };

    private static PedalTravel Travel(MasterCylinder master, double bar, byte clearance)
    {
        var pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 4 }, AvailableTravel = Length.FromMeters(2) };
        PerAxle<Pressure> lines = new(Pressure.FromBars(bar), Pressure.FromBars(bar));
        return PedalTravel.At(pedal, master, new(Circuit(60, 0.1 + (clearance / 200.0)), Circuit(12, 1.1)), lines);
    }

    [Property]
    public void Equal_bores_are_the_plain_tandem(byte bore, ushort force, byte front, byte rear)
    {
        TandemMasterCylinder plain = Plain(bore);
        TandemMasterCylinder stepped = plain with { RearBore = plain.Bore };
        PerAxle<Volume> volumes = new(Volume.FromCubicCentimeters(front / 50.0), Volume.FromCubicCentimeters(rear / 50.0));
        Force rod = Force.FromNewtons(force / 10.0);
        Assert.Equal(plain.OutletPressures(rod).Front.Pascals, stepped.OutletPressures(rod).Rear.Pascals, 1e-6);
        Assert.Equal(plain.RodTravel(volumes).Meters, stepped.RodTravel(volumes).Meters, 1e-12);
        Assert.Equal(plain.RodTravelWithout(Axle.Front, volumes)!.Value.Meters, stepped.RodTravelWithout(Axle.Front, volumes)!.Value.Meters,
            1e-12);
        Assert.Equal(1, new TandemSplit().RearToFrontPressureRatio);
    }

    [Property]
    public void A_stepped_cylinder_obeys_the_floating_pistons_equilibrium_and_loses_no_work(byte bore, byte other, ushort force, byte front,
        byte rear)
    {
        TandemMasterCylinder stepped = Plain(bore) with { RearBore = Millimetres(15 + (other / 10.0)) };
        double first = Square(stepped.Bore);
        double second = Square(stepped.RearBore!.Value);
        Force rod = Force.FromNewtons(10 + (force / 10.0));
        PerAxle<Pressure> pressures = stepped.OutletPressures(rod);
        // Rod on the first piston; both ends of the floating one.
        Assert.Equal(rod.Newtons, pressures.Front.Pascals * first, 1e-6);
        Assert.Equal(pressures.Front.Pascals * first, pressures.Rear.Pascals * second, 1e-6);
        // Continuity: the floating piston's travel takes room from the first chamber.
        PerAxle<Volume> volumes = new(Volume.FromCubicCentimeters(0.5 + (front / 50.0)), Volume.FromCubicCentimeters(0.5 + (rear / 50.0)));
        double floating = volumes.Rear.CubicMeters / second;
        double rodTravel = (volumes.Front.CubicMeters + (first * floating)) / first;
        double travel = (stepped.RodTravel(volumes) - stepped.CompensatingPortTravel).Meters;
        Assert.Equal(rodTravel, travel, 1e-12);
        double work = (pressures.Front.Pascals * volumes.Front.CubicMeters) + (pressures.Rear.Pascals * volumes.Rear.CubicMeters);
        Assert.Equal(work, rod.Newtons * travel, 1e-6);
        Assert.Equal(rod.Newtons, stepped.RodForce(Axle.Rear, pressures.Rear).Newtons, 1e-6);
    }

    [Property]
    public void A_large_bore_equal_to_the_small_one_changes_nothing(byte bore, byte bar, byte clearance)
    {
        TandemMasterCylinder plain = Plain(bore);
        TandemMasterCylinder same = plain with { QuickTakeUp = new QuickTakeUp { LargeBore = plain.Bore } };
        Assert.Equal(Travel(plain, bar / 2.0, clearance).RodTravel.Meters, Travel(same, bar / 2.0, clearance).RodTravel.Meters, 1e-12);
        Assert.Equal(plain.RodForce(Axle.Front, Pressure.FromBars(bar)).Newtons, same.RodForce(Axle.Front, Pressure.FromBars(bar)).Newtons,
            1e-9);
    }

    [Property]
    public void Quick_take_up_never_needs_more_travel_nor_less_force_and_lies_between_its_two_bores(byte bore, byte more, byte blowOff,
        byte bar, byte clearance)
    {
        TandemMasterCylinder small = Plain(bore);
        Length largeBore = small.Bore + Millimetres(0.5 + (more / 25.0));
        TandemMasterCylinder fast =
            small with
            {
                QuickTakeUp = new QuickTakeUp
                {
                    LargeBore = largeBore,
                    BlowOffPressure = Pressure.FromBars(1 + (blowOff / 20.0))
                }
            };
        TandemMasterCylinder large = small with { Bore = largeBore };
        double pressure = bar / 2.0;
        double travel = Travel(fast, pressure, clearance).RodTravel.Meters;
        Assert.True(travel < Travel(small, pressure, clearance).RodTravel.Meters);
        Assert.True(travel >= Travel(large, pressure, clearance).RodTravel.Meters - 1e-12);
        Pressure line = Pressure.FromBars(pressure);
        double force = fast.RodForce(Axle.Front, line).Newtons;
        Assert.True(force >= small.RodForce(Axle.Front, line).Newtons - 1e-9);
        Assert.True(force <= large.RodForce(Axle.Front, line).Newtons + 1e-9);
        Assert.Equal(line.Pascals, fast.OutletPressures(Force.FromNewtons(force)).Front.Pascals, 1.0);
        PedalTravel budget = Travel(fast, pressure, clearance);
        Assert.Equal(budget.Pad!.Value.Meters, budget.Parts.Sum(part => part.Travel.Meters), 1e-9);
    }

    [Property]
    public void More_rod_force_never_lowers_the_pressure_of_a_quick_take_up_cylinder(byte bore, byte more, ushort first, ushort second)
    {
        TandemMasterCylinder small = Plain(bore);
        TandemMasterCylinder fast =
            small with { QuickTakeUp = new QuickTakeUp { LargeBore = small.Bore + Millimetres(1 + (more / 25.0)) } };
        double At(ushort force) => fast.OutletPressures(Force.FromNewtons(force / 10.0)).Front.Pascals;
        Assert.True(At(Math.Min(first, second)) <= At(Math.Max(first, second)));
    }

    [Fact]
    public void Quick_take_up_by_hand()
    {
        // 24 mm pressing, 34 mm filling, 6 bar. 0.55 MPa: F = p A_L. 5 MPa: F = p A + p_b (A_L − A).
        var master = new TandemMasterCylinder
        {
            Bore = Millimetres(24),
            Stroke = Millimetres(36),
            ReturnSpringForce = Force.Zero,
            QuickTakeUp = new QuickTakeUp { LargeBore = Millimetres(34) },
        };
        Assert.Equal(0.55 * 907.92, master.RodForce(Axle.Front, Pressure.FromMegapascals(0.55)).Newtons, 0.05);
        Assert.Equal((5 * 452.389) + (0.6 * (907.920 - 452.389)), master.RodForce(Axle.Front, Pressure.FromMegapascals(5)).Newtons, 0.05);
        // 3 cm³ sent by the large bore of 9.0792 cm² instead of the small one of 4.52389 cm².
        Assert.Equal((3 / 4.52389 - 3 / 9.07920) * 10,
            master.TravelSaved(new(Volume.FromCubicCentimeters(2), Volume.FromCubicCentimeters(1))).Millimeters, 0.001);
    }

    [Property]
    public void With_a_circuit_lost_a_quick_take_up_cylinder_claims_no_fast_filling(byte bore, byte front)
    {
        TandemMasterCylinder plain = Plain(bore);
        TandemMasterCylinder fast = plain with { QuickTakeUp = new QuickTakeUp { LargeBore = plain.Bore + Millimetres(8) } };
        PerAxle<Volume> volumes = new(Volume.FromCubicCentimeters(front / 50.0), Volume.FromCubicCentimeters(1));
        Assert.Equal(plain.RodTravelWithout(Axle.Rear, volumes)!.Value.Meters, fast.RodTravelWithout(Axle.Rear, volumes)!.Value.Meters,
            1e-12);
    }

    [Property]
    public void Hot_drums_never_shorten_the_pedals_travel_and_grow_it_by_area_times_growth(byte celsius, byte bar)
    {
        var growth = new DrumGrowth { DrumRadius = Millimetres(127), HotTemperature = Temperature.FromDegreesCelsius(20 + (2 * celsius)) };
        TandemMasterCylinder master = Plain(80);
        CircuitVolume rear = Circuit(15, 1.3) with { Drum = growth };
        var pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 4 }, AvailableTravel = Length.FromMeters(1) };
        PerAxle<Pressure> lines = new(Pressure.FromBars(bar / 3.0), Pressure.FromBars(bar / 4.0));
        PedalTravel At(bool hot) => PedalTravel.At(pedal, master, new(Circuit(60, 0.3), rear with { DrumHot = hot }), lines);
        double expected = 15e-4 * 2 * 0.127 * 11e-6 * 2 * celsius / Square(master.Bore);
        Assert.Equal(expected, (At(true).RodTravel - At(false).RodTravel).Meters, 1e-12);
        Assert.Equal(At(true).Pad!.Value.Meters, At(true).Parts.Sum(part => part.Travel.Meters), 1e-9);
    }

    [Fact]
    public void A_300_degree_drum_of_10_in_grows_by_0_39_mm()
    {
        // 127 mm · 11e-6 /K · 280 K = 0.391 mm of radius; the tip of a shoe pivoted opposite follows with twice that.
        var growth = new DrumGrowth { DrumRadius = Millimetres(127) };
        Assert.Equal(0.3912, growth.RadiusGrowth.Millimeters, 0.00005);
        Assert.Equal(0.7823, growth.PistonTravel.Millimeters, 0.0001);
    }

    [Fact]
    public void Silicone_fluid_takes_more_volume_than_glycol_at_every_temperature()
    {
        foreach (int celsius in Enumerable.Range(0, 21).Select(i => 10 * i))
        {
            double Loss(string grade) => new BrakeFluid
            {
                Grade = BrakeFluidGrade.Named(grade)!,
                Temperature = Temperature.FromDegreesCelsius(celsius),
            }
                .Compression(Volume.FromCubicCentimeters(300), Pressure.FromBars(80)).CubicCentimeters;
            Assert.True(Loss("DOT 5") > 1.3 * Loss("DOT 4"));
            Assert.Equal(Loss("DOT 4"), Loss("DOT 5.1"), 1e-12);
            Assert.Equal(Loss("DOT 4"), Loss("DOT 3"), 1e-12);
        }
    }
}
