using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Invariants;

/// <summary>What must hold for any pedal, booster and cylinder.</summary>
public sealed class FootInvariants
{
    private static VacuumBooster Booster(double share, double vacuumKilopascals) => new()
    {
        Supply = new VacuumSupply { Vacuum = Pressure.FromKilopascals(vacuumKilopascals) },
        DiaphragmDiameter = Length.FromMillimeters(150 + (150 * share)),
        BoostRatio = 1.5 + (8 * share),
        CutInForce = Force.FromNewtons(80 * share),
        JumpIn = Force.FromNewtons(400 * (1 - share)),
        ReturnSpringForce = Force.FromNewtons(150 * share),
    };

    [Property]
    public void More_vacuum_never_raises_the_effort(byte shape, byte less, byte more, ushort wanted)
    {
        double low = Math.Min(less, more) / 255.0 * 90;
        double high = Math.Max(less, more) / 255.0 * 90;
        Force output = Force.FromNewtons(wanted / 10.0);
        Assert.True(Booster(shape / 255.0, high).InputForce(output).Newtons <= Booster(shape / 255.0, low).InputForce(output).Newtons
            + 1e-9);
    }

    [Property]
    public void More_force_on_the_input_never_lowers_the_output(byte shape, byte vacuum, ushort first, ushort second)
    {
        VacuumBooster booster = Booster(shape / 255.0, vacuum / 255.0 * 90);
        double low = booster.OutputForce(Force.FromNewtons(Math.Min(first, second) / 20.0)).Newtons;
        double high = booster.OutputForce(Force.FromNewtons(Math.Max(first, second) / 20.0)).Newtons;
        Assert.True(low <= high);
    }

    [Property]
    public void The_input_for_an_output_gives_that_output_and_a_little_less_does_not(byte shape, byte vacuum, ushort wanted)
    {
        VacuumBooster booster = Booster(shape / 255.0, vacuum / 255.0 * 90);
        double output = wanted / 10.0;
        Force input = booster.InputForce(Force.FromNewtons(output));
        Assert.True(booster.OutputForce(input + Force.FromNewtons(1e-6)).Newtons >= output - 1e-4);
        if (input.Newtons > 0.01)
        {
            Assert.True(booster.OutputForce(input - Force.FromNewtons(0.01)).Newtons < output);
        }
    }

    [Property]
    public void Assist_never_gives_less_than_the_dead_booster(byte shape, byte vacuum, ushort force)
    {
        VacuumBooster booster = Booster(shape / 255.0, vacuum / 255.0 * 90);
        Force input = Force.FromNewtons(force / 20.0);
        Assert.True(booster.OutputForce(input).Newtons >= booster.WithoutEnergy().OutputForce(input).Newtons - 1e-9);
    }

    [Property]
    public void A_bigger_bore_never_raises_the_pressure_for_an_effort_without_assist(byte first, byte second, ushort foot, byte ratio)
    {
        var pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 3 + (ratio / 64.0) } };
        var assist = new NoAssist();
        TandemMasterCylinder Of(byte size) => new()
        {
            Bore = Length.FromMillimeters(12 + (size / 10.0)),
            Stroke = Length.FromMillimeters(35),
        };
        Force rod = assist.OutputForce(pedal.InputRodForce(Force.FromNewtons(foot / 50.0)));
        double small = Of(Math.Min(first, second)).OutletPressures(rod).Front.Pascals;
        double big = Of(Math.Max(first, second)).OutletPressures(rod).Front.Pascals;
        Assert.True(big <= small);
    }

    [Property]
    public void The_volume_the_cylinder_sends_is_the_volume_the_circuits_take(byte bore, byte frontBar, byte rearBar, byte air)
    {
        var fluid = new BrakeFluid { TrappedAir = air / 255.0 * 0.05 };
        CircuitVolume Circuit(double square, double clearance, double hose) => new()
        {
            PistonArea = Area.FromSquareCentimeters(square),
            Clearance = Length.FromMillimeters(clearance),
            Hose = new BrakeHose { Length = Length.FromMillimeters(hose) },
            Compliance = Volume.FromCubicCentimeters(1.5),
            FluidVolume = Volume.FromCubicCentimeters(120),
            Fluid = fluid,
        };
        PerAxle<CircuitVolume> circuits = new(Circuit(60, 0.35, 800), Circuit(12, 1.1, 400));
        PerAxle<Pressure> pressures = new(Pressure.FromBars(frontBar / 2.0), Pressure.FromBars(rearBar / 2.0));
        var master = new TandemMasterCylinder { Bore = Length.FromMillimeters(15 + (bore / 15.0)), Stroke = Length.FromMillimeters(60) };
        var pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 4 }, AvailableTravel = Length.FromMeters(1) };
        PedalTravel travel = PedalTravel.At(pedal, master, circuits, pressures);
        double sent = (travel.RodTravel - master.CompensatingPortTravel).Meters * master.PistonAreas.Front.SquareMeters;
        double taken = circuits.Front.Demand(pressures.Front).Total.CubicMeters + circuits.Rear.Demand(pressures.Rear).Total.CubicMeters;
        Assert.Equal(taken, sent, 1e-12);
        Assert.Equal(travel.Pad!.Value.Meters, travel.Parts.Sum(part => part.Travel.Meters), 1e-9);
    }

    [Property]
    public void Gas_let_into_a_vacuum_chamber_is_conserved(byte vacuum, byte travel)
    {
        // The mass of air, p V at one temperature, in both chambers after a release equals what was trapped plus what was let in.
        VacuumBooster booster = Booster(0.5, 20 + (vacuum / 5.0)) with
        {
            VacuumChamberVolume = UnitsNet.Volume.FromLiters(3),
            ApplyChamberVolume = UnitsNet.Volume.FromLiters(0.5),
        };
        Length stroke = Length.FromMillimeters(1 + (travel / 20.0));
        var reserve = booster.Reserve([stroke, Length.Zero]);
        double air = booster.Supply.AirPressure.Pascals;
        double before = booster.Supply.ChamberPressure.Pascals;
        double after = air - reserve[1].WorkingPressure.Pascals;
        double swept = booster.EffectiveArea.CubicMetresFor(stroke);

        // All 3 l of trapped air stay behind the shut check valve, swept or not; taking off p A x, as was done here before, loses air.
        double trapped = Math.Min(before * 3e-3, air * (3e-3 - swept));
        Assert.Equal(trapped + (air * (0.5e-3 + swept)), after * 3.5e-3, 1e-6);
        Assert.Equal(trapped, (air - reserve[0].WorkingPressure.Pascals) * (3e-3 - swept), 1e-6);
    }
}

/// <summary>Area times travel, for the test above.</summary>
internal static class Swept
{
    public static double CubicMetresFor(this Area area, Length travel) => area.SquareMeters * travel.Meters;
}
