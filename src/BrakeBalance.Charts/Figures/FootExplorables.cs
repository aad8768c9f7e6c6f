using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of pedal and assist with sliders.</summary>
public static class FootExplorables
{
    private const double SixteenthInchMetres = 0.0254 / 16;

    /// <summary>
    /// Effort with sliders for the booster's supply (vacuum or pump pressure; the pedal ratio of a car without booster) and the bore.
    /// </summary>
    /// <param name="vehicle">The car; it must say what lies between foot and line pressure.</param>
    /// <param name="assist">The booster; the car's own unless said.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    /// <exception cref="ArgumentException">The car does not say what lies between foot and line pressure.</exception>
    public static Explorable Effort(Vehicle vehicle, BrakeAssist? assist = null, UnitSystem? units = null, string id = "explore-effort")
    {
        UnitSystem shown = units ?? Display.Units;
        BrakeControl own = vehicle.Control
            ?? throw new ArgumentException($"\"{vehicle.Name}\" does not say what lies between foot and line pressure.", nameof(vehicle));
        BrakeControl basis = own with { Assist = assist ?? own.Assist };
        (Exploring.Control supply, IReadOnlyList<BrakeControl> supplies) = Supplies(basis, shown);
        (Exploring.Control bore, IReadOnlyList<Vehicle> cars, IReadOnlyList<Func<BrakeControl, BrakeControl>> bores) =
            Bores(vehicle, basis, shown);
        LoadCase load = vehicle.LoadCases[0];
        BalanceModel[] models = [.. cars.Select(car => new BalanceModel(car, load))];
        double greatest = bores.Max(change =>
            new ControlForce(models[0], change(basis with { Assist = basis.Assist.WithoutEnergy() })).AtRate(0.9)?.PedalForce.Newtons ?? 0);
        Force top = Force.FromNewtons(Math.Clamp(Math.Ceiling(greatest / 100) * 100, 300, 1500));
        var explorable = Explorable.Of(id, [supply, bore], state =>
        {
            BrakeControl control = bores[state["bore"]](supplies[state["supply"]]);
            var force = new ControlForce(models[state["bore"]], control);
            var bare = new ControlForce(force.Model, control with { Assist = control.Assist.WithoutEnergy() });
            (string, BrakeControl)[] cases = control.Assist is PoweredAssist
                ? [("as set", control), ("no assist", bare.Control)]
                : [("as set", control)];
            return new Frame([FootFigures.Effort(force.Model, cases, 1.0, top, shown, $"{id}-figure")], Readouts(force, bare, shown),
                Judge(force, bare, shown));
        });
        return assist is null or HydraulicBooster
            ? explorable.AgainFrom(vehicle, "effort", shown, ("pump", PumpNumbers(assist))) : explorable;
    }

    /// <summary>A booster fed by a pump as plain numbers in SI, so that a page can make it again; null for none.</summary>
    private static JsonArray? PumpNumbers(BrakeAssist? assist) => assist is HydraulicBooster pump
        ?
        [
            pump.ReliefPressure.Pascals, pump.PumpFlow.CubicMetersPerSecond, pump.PowerPistonDiameter.Meters, pump.BoostRatio,
            pump.CutInForce.Newtons, pump.JumpIn.Newtons, pump.ReturnSpringForce.Newtons, pump.SteeringFlow.CubicMetersPerSecond,
            pump.ReturnBackPressure.Pascals, pump.Accumulator?.GasVolume.CubicMeters, pump.Accumulator?.Precharge.Pascals,
            pump.Accumulator?.PolytropicExponent,
        ]
        : null;

    /// <summary>The booster of <see cref="PumpNumbers"/>.</summary>
    internal static HydraulicBooster? Pump(JsonArray? numbers)
    {
        double?[] at = [.. (numbers ?? []).Select(number => number?.GetValue<double>())];
        return at.Length < 12 ? null : new HydraulicBooster
        {
            ReliefPressure = Pressure.FromPascals(at[0]!.Value),
            PumpFlow = VolumeFlow.FromCubicMetersPerSecond(at[1]!.Value),
            PowerPistonDiameter = Length.FromMeters(at[2]!.Value),
            BoostRatio = at[3]!.Value,
            CutInForce = Force.FromNewtons(at[4]!.Value),
            JumpIn = Force.FromNewtons(at[5]!.Value),
            ReturnSpringForce = Force.FromNewtons(at[6]!.Value),
            SteeringFlow = VolumeFlow.FromCubicMetersPerSecond(at[7]!.Value),
            ReturnBackPressure = Pressure.FromPascals(at[8]!.Value),
            Accumulator = at[9] is { } volume ? new Accumulator
            {
                GasVolume = Volume.FromCubicMeters(volume),
                Precharge = Pressure.FromPascals(at[10]!.Value),
                PolytropicExponent = at[11]!.Value,
            } : null,
        };
    }

    /// <summary>The pedal's travel with sliders for bore, trapped air and fluid temperature.</summary>
    /// <param name="vehicle">The car; it must know its circuits' volumes.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    /// <exception cref="ArgumentException">The car does not say how much fluid its circuits displace.</exception>
    public static Explorable Travel(Vehicle vehicle, UnitSystem? units = null, string id = "explore-travel")
    {
        UnitSystem shown = units ?? Display.Units;
        if (vehicle.Control is not { Circuits: { } circuits } own)
        {
            throw new ArgumentException($"\"{vehicle.Name}\" does not say how much fluid its circuits displace.", nameof(vehicle));
        }

        double[] airs = [0, 0.002, 0.005, 0.01, 0.02, 0.04];
        double[] celsius = [20, 60, 100, 140, 180];
        (Exploring.Control bore, IReadOnlyList<Vehicle> cars, IReadOnlyList<Func<BrakeControl, BrakeControl>> bores) =
            Bores(vehicle, own, shown);
        BalanceModel[] models = [.. cars.Select(car => new BalanceModel(car, vehicle.LoadCases[0]))];
        Exploring.Control[] controls =
        [
            bore,
            Exploring.Control.Slider("air", "Trapped air in the fluid", Measure.Pure("air", "%", 100, 0.1), airs, 0, shown),
            Exploring.Control.Slider("heat", "Temperature of the fluid", Measure.Temperature,
                celsius.Select(c => Temperature.FromDegreesCelsius(c)).ToArray(), 0, shown),
        ];
        Length highest = own.Pedal.AvailableTravel * 1.3;
        return Explorable.Of(id, controls, state =>
        {
            CircuitVolume With(CircuitVolume circuit) => circuit with
            {
                Fluid = circuit.Fluid with
                {
                    TrappedAir = airs[state["air"]],
                    Temperature = Temperature.FromDegreesCelsius(celsius[state["heat"]]),
                },
            };
            BrakeControl control = bores[state["bore"]](own) with { Circuits = circuits.Select(With) };
            var force = new ControlForce(models[state["bore"]], control);
            (string Name, PedalTravel Travel)[] cases =
                [.. new[] { 0.8, 0.5, 0.3 }.Select(rate => ($"{FootFigures.Words(rate)} g", Travel: At(force, rate)))
                    .Where(item => item.Travel is not null).Select(item => (item.Item1, item.Travel!))];
            if (cases.Length == 0)
            {
                cases = [("no pressure", force.TravelAt(Pressure.Zero)!)];
            }

            PedalTravel hard = cases[0].Travel;
            return new Frame(
                [FootFigures.Travel(cases, own.Pedal.AvailableTravel, vehicle, vehicle.LoadCases[0].Name, highest, shown, $"{id}-figure")],
                [
                    new("Pedal travel at " + cases[0].Name, hard.Pad is { } pad ? Measure.Travel.Text(pad, shown) : "–"),
                    new("Left to the floor", hard.LeftToFloor is { } left ? Measure.Travel.Text(left, shown) : "–"),
                    new("Stroke left in the cylinder", Measure.Travel.Text(hard.StrokeLeft, shown)),
                ],
                hard.Warning is { } warning ? new Verdict(InBoth.Only(warning, shown == UnitSystem.Us), VerdictKind.Caution)
                    : hard.NotCounted.Contains("fluid") ? new Verdict(
                        "Air and temperature change nothing here: the file gives no volume of the fluid.", VerdictKind.Caution)
                    : new Verdict("Enough travel is left.", VerdictKind.Good));
        }).AgainFrom(vehicle, "travel", shown);
    }

    internal static string BoreLabel(Vehicle vehicle) =>
        vehicle.Hydraulics.Split is BalanceBarSplit ? "Bore of the front master cylinder" : "Bore of the master cylinder";

    private static PedalTravel? At(ControlForce force, double rate) =>
        force.AtRate(rate) is { } point ? force.TravelAt(point.Balance.MasterPressure) : null;

    private static (Exploring.Control Control, IReadOnlyList<BrakeControl> Controls) Supplies(BrakeControl basis, UnitSystem units)
    {
        switch (basis.Assist)
        {
            case VacuumBooster vacuum:
                double[] vacuums = Around(vacuum.Supply.Vacuum.Pascals,
                    [.. Enumerable.Range(2, 10).Select(i => Pressure.FromInchesOfMercury(2 * i).Pascals)], out int at);
                return (
                    Exploring.Control.Slider("supply", "Vacuum at the booster", Measure.Vacuum, vacuums, at, units),
                    [.. vacuums.Select(pascals =>
                        basis with { Assist = vacuum with { Supply = vacuum.Supply with { Vacuum = Pressure.FromPascals(pascals) } } })]);
            case HydraulicBooster hydraulic:
                double[] reliefs = Around(hydraulic.ReliefPressure.Pascals, [.. Enumerable.Range(3, 10).Select(i => i * 1e6)], out at);
                return (
                    Exploring.Control.Slider("supply", "Relief pressure of the pump", Measure.LinePressure, reliefs, at, units),
                    [.. reliefs.Select(pascals =>
                        basis with { Assist = hydraulic with { ReliefPressure = Pressure.FromPascals(pascals) } })]);
            default:
                double[] ratios = Around(basis.Pedal.Lever.RatioAt(Length.Zero), [.. Enumerable.Range(0, 9).Select(i => 3.5 + (0.5 * i))],
                    out at);
                return (
                    Exploring.Control.Slider("supply", "Pedal ratio", Measure.Number, ratios, at, units),
                    [.. ratios.Select(ratio => basis with { Pedal = basis.Pedal with { Lever = new FixedRatioLever { Ratio = ratio } } })]);
        }
    }

    /// <summary>A slider of bores, with the car that has each; at the start it is the car itself.</summary>
    internal static (Exploring.Control Control, Vehicle[] Cars) Bores(Vehicle vehicle, UnitSystem units)
    {
        (Exploring.Control control, IReadOnlyList<Vehicle> cars, IReadOnlyList<Func<BrakeControl, BrakeControl>> changes) =
            Bores(vehicle, vehicle.Control!, units);
        return (control, [.. cars.Select((car, i) => i == control.Start ? vehicle : car with { Control = changes[i](vehicle.Control!) })]);
    }

    private static (Exploring.Control Control, IReadOnlyList<Vehicle> Cars, IReadOnlyList<Func<BrakeControl, BrakeControl>> Changes) Bores(
        Vehicle vehicle, BrakeControl basis, UnitSystem units)
    {
        MasterCylinder cylinder = basis.MasterCylinderFor(vehicle.Hydraulics.Split);
        double own = cylinder is TwinMasterCylinders twin
            ? twin.FrontBore.Meters : Math.Sqrt(cylinder.PistonAreas.Front.SquareMeters * 4 / Math.PI);
        double[] bores = [.. Enumerable.Range(-4, 7).Select(i => own + (i * SixteenthInchMetres))
            .Where(bore => bore == own || (bore is >= 0.012 and <= 0.045 && HasCylinder(bore)))];
        int at = Array.FindIndex(bores, bore => Math.Abs(bore - own) < 1e-9);
        bool HasCylinder(double bore) => cylinder switch
        {
            TwinMasterCylinders pair =>
                pair.RearBore * (bore / own) is var rear && rear >= MasterCylinder.SmallestBore && rear <= MasterCylinder.LargestBore,
            TandemMasterCylinder tandem => tandem.Scaled(Length.FromMeters(bore)) is not null,
            _ => true,
        };
        Vehicle Car(double bore) => vehicle.Hydraulics.Split is BalanceBarSplit bar
            ? vehicle with
            {
                Hydraulics = vehicle.Hydraulics with
                {
                    Split = bar with
                    {
                        FrontBore = Length.FromMeters(bore),
                        RearBore = bar.RearBore * (bore / own)
                    }
                }
            }
            : vehicle;
        Func<BrakeControl, BrakeControl> Change(double bore) => control => control with
        {
            MasterCylinder = control.MasterCylinder switch
            {
                TandemMasterCylinder tandem => tandem.Scaled(Length.FromMeters(bore)) ?? tandem,
                SingleMasterCylinder single => single with { Bore = Length.FromMeters(bore) },
                _ => control.MasterCylinder,
            },
        };
        return (Exploring.Control.Slider("bore", BoreLabel(vehicle), FootFigures.Bore, bores, Math.Max(0, at), units),
            [.. bores.Select(Car)], [.. bores.Select(Change)]);
    }

    // The car's own value takes the place of the nearest step, so that the slider starts at the car.
    private static double[] Around(double own, double[] steps, out int at)
    {
        at = steps.Index().MinBy(step => Math.Abs(step.Item - own)).Index;
        steps[at] = own;
        return steps;
    }

    private static IReadOnlyList<Readout> Readouts(ControlForce force, ControlForce bare, UnitSystem units)
    {
        PedalTravel? travel = At(force, FootFigures.HardStop);
        return
        [
            new($"Pedal force at a deceleration of {FootFigures.Words(FootFigures.HardStop)} g",
                force.AtRate(FootFigures.HardStop) is { } hard
                ? Measure.ControlForce.Text(hard.PedalForce, units) : "not reached"),
            new("Assist runs out at", force.RunOut() is { } runOut ? FootFigures.Words(runOut.Balance.BrakingRate) + " g" : "–"),
            new("Helped up to a line pressure of", force.Control.Assist.RunOut is { } knee
                ? Measure.LinePressure.Text(force.Cylinder.OutletPressures(knee.OutputForce).Front, units) : "–"),
            new("Pedal force at 0.25 g, no assist", bare.AtRate(0.25) is { } dead
                ? Measure.ControlForce.Text(dead.PedalForce, units) : "not reached"),
            new("Travel left to the floor", travel?.LeftToFloor is { } left ? Measure.Travel.Text(left, units) : "–"),
        ];
    }

    private static Verdict Judge(ControlForce force, ControlForce bare, UnitSystem units)
    {
        FootForce foot = force.Control.Foot;
        if (force.AtRate(FootFigures.HardStop) is not { } hard)
        {
            return new($"A hard stop is not reached: {force.WhyNotAtRate(FootFigures.HardStop)}.", VerdictKind.Caution);
        }

        if (At(force, FootFigures.HardStop) is { Warning: { } warning })
        {
            return new(warning, VerdictKind.Caution);
        }

        if (bare.AtRate(0.25) is not { } dead || dead.PedalForce.Newtons > 500)
        {
            return new($"Without assist a deceleration of 0.25 g takes more than {Measure.ControlForce.Text(500, units)}: more than the "
                + "rules allow.", VerdictKind.Caution);
        }

        Force push = hard.PedalForce;
        return new($"A hard stop takes {Measure.ControlForce.Text(push, units)}: {foot.Describe(push)}.",
            push < FootForce.Touchy || push > foot.Planned ? VerdictKind.Caution
            : push <= foot.Comfortable ? VerdictKind.Good : VerdictKind.Neutral);
    }
}
