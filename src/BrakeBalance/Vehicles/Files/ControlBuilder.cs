using BrakeBalance.Assist;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;

namespace BrakeBalance.Vehicles.Files;

/// <summary>
/// Makes pedal, assist, master cylinder and fluid budget from a complete document, checking what they say of one another.
/// </summary>
internal sealed class ControlBuilder(List<Problem> problems)
{
    /// <summary>The control of the brakes; null when the file says nothing of it, or when there are problems.</summary>
    public BrakeControl? Build(VehicleDocument document, PerAxle<Brake>? brakes)
    {
        bool any = document.Pedal is not null || document.Assist is not null || document.MasterCylinder is not null
            || document.Fluid is not null;
        if (!any)
        {
            return null;
        }

        AddMissing(document.Pedal, "pedal", "pedal with ratio or geometry, or none of pedal, assist, masterCylinder and fluid");
        AddMissing(document.Assist, "assist",
            "{ \"type\": \"none\" } for a car without booster, or \"vacuum\" or \"hydraulic\" with its data");
        AddMissing(document.MasterCylinder, "masterCylinder", "\"tandem\", \"balance bar\" or \"single\" with its data");
        Pedal? pedal = document.Pedal is null ? null : Pedal(document.Pedal);
        BrakeAssist? assist = document.Assist is null ? null : Assist(document.Assist);
        MasterCylinder? master = document.MasterCylinder is null ? null : Master(document.MasterCylinder, document.Hydraulics?.Split);
        PushRodFit? pushRod = document.MasterCylinder?.PushRod is { } rod ? PushRod(rod) : null;
        PerAxle<CircuitVolume>? circuits = document.Fluid is { } fluid && brakes is { } known ? Circuits(fluid, known) : null;
        CircuitLayout layout = Layout(document.MasterCylinder);
        return problems.Count > 0 || pedal is null || assist is null || master is null ? null : new BrakeControl
        {
            Pedal = pedal,
            Assist = assist,
            MasterCylinder = master,
            Layout = layout,
            Foot = new FootForce { Emergency = document.Pedal!.EmergencyForce },
            Circuits = circuits,
            PushRod = pushRod,
            Residual = new(Residual(document.MasterCylinder!.FrontResidual), Residual(document.MasterCylinder.RearResidual)),
        };
    }

    private Pedal? Pedal(PedalDocument pedal)
    {
        if ((pedal.Ratio is null) == (pedal.Geometry is null))
        {
            Add("pedal", pedal.Ratio is null ? "does not say its ratio." : "says its ratio twice.", "one of ratio and geometry");
            return null;
        }

        var plain = new Pedal { Lever = new FixedRatioLever { Ratio = pedal.Ratio ?? 1 } };
        PedalLever lever = plain.Lever;
        if (pedal.Geometry is { } links)
        {
            lever = links with { };
            try
            {
                _ = lever.RatioAt(Length.Zero);
            }
            catch (ArgumentException fault)
            {
                Add("pedal.geometry", fault.Message);
                return null;
            }

            Length ends = ((LinkedLever)lever).GreatestPadTravel + (pedal.FreePlay ?? plain.FreePlay);
            Length floor = pedal.Travel ?? plain.AvailableTravel;
            if (ends < floor)
            {
                Add("pedal.geometry",
                    Invariant.Text($"stops pushing the rod after {ends.Millimeters:0} mm of the pad's travel, "
                        + $"free play included, before the floor at {floor.Millimeters:0} mm."),
                    Invariant.Text($"a longer link, a pin that stands further back or a rod axis nearer the pin; "
                        + $"or pedal.travel up to {Math.Floor(ends.Millimeters):0} mm"));
                return null;
            }
        }

        if ((pedal.FreePlay ?? plain.FreePlay) >= (pedal.Travel ?? plain.AvailableTravel))
        {
            Add("pedal.freePlay",
                Invariant.Text($"{(pedal.FreePlay ?? plain.FreePlay).Millimeters:0.#} mm is not less than the pad's whole travel "
                    + $"of {(pedal.Travel ?? plain.AvailableTravel).Millimeters:0.#} mm."),
                "a free play below pedal.travel");
            return null;
        }

        return plain with
        {
            Lever = lever,
            Efficiency = pedal.Efficiency ?? plain.Efficiency,
            ReturnSpringForce = pedal.ReturnSpring ?? plain.ReturnSpringForce,
            ReturnSpringRate = pedal.ReturnSpringRate ?? plain.ReturnSpringRate,
            FreePlay = pedal.FreePlay ?? plain.FreePlay,
            AvailableTravel = pedal.Travel ?? plain.AvailableTravel,
        };
    }

    private BrakeAssist? Assist(AssistDocument assist)
    {
        switch (assist)
        {
            case VacuumBoosterDocument vacuum:
                var made = new VacuumBooster
                {
                    Supply = new VacuumSupply { Vacuum = vacuum.Vacuum!.Value, Altitude = vacuum.Altitude ?? Length.Zero },
                    DiaphragmDiameter = vacuum.DiaphragmDiameter!.Value,
                    BoostRatio = vacuum.BoostRatio!.Value,
                    Diaphragms = (int)(vacuum.Diaphragms ?? 1),
                    VacuumChamberVolume = vacuum.VacuumChamber ?? Volume.Zero,
                    ApplyChamberVolume = vacuum.ApplyChamber ?? Volume.Zero,
                    JumpIn = vacuum.JumpIn ?? Force.Zero,
                    ReturnSpringForce = vacuum.ReturnSpring ?? Force.Zero,
                };
                if (vacuum.Vacuum > made.Supply.AirPressure)
                {
                    Add("assist.vacuum", Invariant.Text(
                        $"{vacuum.Vacuum.Value.InchesOfMercury:0.#} inHg is more than the air's own pressure "
                            + $"at {made.Supply.Altitude.Meters:0} m."),
                        Invariant.Text($"a vacuum up to {made.Supply.AirPressure.InchesOfMercury:0.#} inHg there"));
                    return null;
                }

                made = made with { CutInForce = vacuum.CutIn ?? made.CutInForce };
                return vacuum.EffectiveAreaShare is { } share ? made with { EffectiveAreaShare = share } : made;
            case HydraulicBoosterDocument hydraulic:
                if (hydraulic.Accumulator is { } vessel && vessel.Precharge > hydraulic.ReliefPressure)
                {
                    Add("assist.accumulator.precharge",
                        Invariant.Text($"{vessel.Precharge.Bars:0.#} bar lies above the pump's relief pressure "
                            + $"of {hydraulic.ReliefPressure!.Value.Bars:0.#} bar, so no oil can enter the accumulator."),
                        Invariant.Text($"a pressure below {hydraulic.ReliefPressure.Value.Bars:0.#} bar"));
                    return null;
                }

                var booster = new HydraulicBooster
                {
                    ReliefPressure = hydraulic.ReliefPressure!.Value,
                    PumpFlow = hydraulic.PumpFlow!.Value,
                    PowerPistonDiameter = hydraulic.PowerPiston!.Value,
                    BoostRatio = hydraulic.BoostRatio!.Value,
                    SteeringFlow = hydraulic.SteeringFlow ?? VolumeFlow.Zero,
                    ReturnBackPressure = hydraulic.ReturnBackPressure ?? Pressure.Zero,
                    JumpIn = hydraulic.JumpIn ?? Force.Zero,
                    ReturnSpringForce = hydraulic.ReturnSpring ?? Force.Zero,
                    Accumulator = hydraulic.Accumulator is { } oil ? oil with { } : null,
                };
                return hydraulic.CutIn is { } cutIn ? booster with { CutInForce = cutIn } : booster;
            default:
                return new NoAssist();
        }
    }

    private MasterCylinder? Master(MasterCylinderDocument document, MasterSplit? split)
    {
        bool barInSplit = split is BalanceBarSplit;
        if (barInSplit != document is TwinCylinderDocument)
        {
            Add("masterCylinder.type",
                barInSplit ? "is not \"balance bar\", but hydraulics.split is."
                    : "is \"balance bar\", but hydraulics.split gives no balance bar.",
                barInSplit ? "\"balance bar\"" : "hydraulics.split with type \"balance bar\", its bores and force share");
            return null;
        }

        if (document is TandemCylinderDocument wrong && QuickTakeUpProblem(wrong) is { } problem)
        {
            problems.Add(problem);
            return null;
        }

        MasterCylinder master = document switch
        {
            TandemCylinderDocument tandem => Tandem(tandem),
            SingleCylinderDocument single => new SingleMasterCylinder { Bore = single.Bore!.Value, Stroke = single.Stroke!.Value },
            _ => Twin((BalanceBarSplit)split!, document.Stroke!.Value),
        };
        return master with
        {
            CompensatingPortTravel = document.PortTravel ?? master.CompensatingPortTravel,
            ReturnSpringForce = document.ReturnSpring ?? master.ReturnSpringForce,
            SealFriction = document.SealFriction ?? master.SealFriction,
        };
    }

    private static Problem? QuickTakeUpProblem(TandemCylinderDocument document) =>
        document.QuickTakeUpBore is not { } large ? null
        : document.RearBore is not null
            ? new("masterCylinder.quickTakeUpBore", "is given beside rearBore; a stepped cylinder with quick take-up is not computed here.",
                "one of quickTakeUpBore and rearBore")
        : large <= document.Bore
            ? new("masterCylinder.quickTakeUpBore",
                Invariant.Text($"{large.Millimeters:0.##} mm is not above the bore of {document.Bore!.Value.Millimeters:0.##} mm."),
                    "a diameter above bore")
        : null;

    private static TandemMasterCylinder Tandem(TandemCylinderDocument document)
    {
        QuickTakeUp? fast = document.QuickTakeUpBore is { } large ? new QuickTakeUp { LargeBore = large } : null;
        return new TandemMasterCylinder
        {
            Bore = document.Bore!.Value,
            RearBore = document.RearBore,
            QuickTakeUp = fast is not null && document.QuickTakeUpPressure is { } pressure
                ? fast with { BlowOffPressure = pressure } : fast,
            Stroke = document.Stroke!.Value,
            FrontStrokeShare = document.FrontStrokeShare ?? 0.5,
        };
    }

    private static TwinMasterCylinders Twin(BalanceBarSplit bar, Length stroke) => new()
    {
        FrontBore = bar.FrontBore,
        RearBore = bar.RearBore,
        FrontForceShare = bar.FrontForceShare,
        Stroke = stroke,
    };

    private static CircuitLayout Layout(MasterCylinderDocument? document) => document switch
    {
        SingleCylinderDocument => CircuitLayout.Single,
        TandemCylinderDocument { Circuits: TandemCircuits.Diagonal } => CircuitLayout.Diagonal,
        _ => CircuitLayout.FrontRear,
    };

    private PushRodFit? PushRod(PushRodFit fit)
    {
        if (fit.Verdict == PushRodVerdict.Preload)
        {
            Add("masterCylinder.pushRod.rodProjection", fit.Describe(),
                Invariant.Text(
                    $"a projection below {(fit.PistonDepth + fit.Gasket).Millimeters:0.##} mm, with the depth and gasket given"));
            return null;
        }

        return fit with { };
    }

    private PerAxle<CircuitVolume> Circuits(FluidDocument document, PerAxle<Brake> brakes)
    {
        BrakeFluidGrade grade = document.Grade is { } name ? BrakeFluidGrade.Named(name)! : BrakeFluidGrade.Dot4;
        var fluid = new BrakeFluid { Grade = grade, TrappedAir = document.TrappedAir ?? 0 };
        fluid = document.Temperature is { } temperature ? fluid with { Temperature = temperature } : fluid;
        return new(Circuit(document.Front!, brakes.Front, fluid, "front"), Circuit(document.Rear!, brakes.Rear, fluid, "rear"));
    }

    // A drum's cylinder has two pistons (or there are two cylinders); a fixed caliper has as many again on the other side. Two wheels an
    // axle.
    private CircuitVolume Circuit(CircuitDocument document, Brake brake, BrakeFluid fluid, string axle)
    {
        string path = DocumentReader.Join("fluid", axle);
        BrakeConstruction? construction = brake.Construction ?? (document.Caliper is null ? null : BrakeConstruction.Disc);
        if (construction is null)
        {
            Add(DocumentReader.Join(axle, "brake.construction"), "is missing: what a measured brake displaces depends on it.",
                $"\"disc\", with {path}.caliper \"sliding\" or \"fixed\", or \"drum\"");
        }

        bool isDrum = construction == BrakeConstruction.Drum;
        if (construction is not null && (document.Caliper is null) != isDrum)
        {
            Add(DocumentReader.Join(path, "caliper"), isDrum
                ? "is given for a drum brake." : "is missing.", isDrum ? "nothing: leave it out" : "\"sliding\", \"fixed\"");
        }

        if (!isDrum && (document.DrumTemperature is not null || document.DrumExpansionPerKelvin is not null))
        {
            Add(DocumentReader.Join(path, document.DrumTemperature is not null ? "drumTemperature" : "drumExpansionPerKelvin"),
                "is given for a disc brake.", "nothing: leave it out");
        }

        double faces = document.Caliper == CaliperKind.Sliding ? 1 : 2;
        var circuit = new CircuitVolume
        {
            PistonArea = brake.PistonArea * (2 * faces),
            Drum = isDrum ? Growth(document, brake) : null,
            Clearance = document.Clearance!.Value,
            Compliance = document.Compliance ?? Volume.Zero,
            FluidVolume = document.Volume ?? Volume.Zero,
            Fluid = fluid,
            Hose = new BrakeHose
            {
                Length = document.HoseLength ?? Length.Zero,
                Bore = BrakeHose.BoreGroup(document.HoseBore ?? Length.FromInches(0.125)),
                LowExpansion = document.LowExpansion ?? false,
            },
        };
        return document.ComplianceAt is { } pressure ? circuit with { ComplianceAt = pressure } : circuit;
    }

    private static DrumGrowth Growth(CircuitDocument document, Brake brake)
    {
        var growth = new DrumGrowth { DrumRadius = brake.EffectiveRadius };
        growth = document.DrumTemperature is { } temperature ? growth with { HotTemperature = temperature } : growth;
        growth = document.DrumExpansionPerKelvin is { } expansion ? growth with { ExpansionPerKelvin = expansion } : growth;
        return brake is DrumBrake { Shoes: ShoeGeometry shoe }
            ? growth with { PistonPerGrowth = shoe.ActuatingArm / shoe.PivotDistance } : growth;
    }

    private static ResidualPressureValve? Residual(Pressure? held) =>
        held is { } pressure ? new ResidualPressureValve { Held = pressure } : null;

    private void AddMissing(object? part, string path, string accepted)
    {
        if (part is null)
        {
            Add(path, "is missing, though other parts between foot and line pressure are given.", accepted);
        }
    }

    private void Add(string path, string what, string accepted = "") => problems.Add(new(path, what, accepted));
}
