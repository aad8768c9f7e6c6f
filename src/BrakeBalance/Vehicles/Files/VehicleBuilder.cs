using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Makes the vehicle from a complete document, checking what entries say of one another.</summary>
/// <remarks>A part that is read as it stands is copied (<c>with { }</c>): a range sets other values in the document.</remarks>
internal sealed class VehicleBuilder(IReadOnlyList<Problem> readingProblems)
{
    // What the tool itself adds to a friction: scatter of the pads, grabbing when cold, the dearer linings of a comparison.
    private const double FrictionSpread = 0.15;
    private const double GreatestEngineShare = 0.5;
    private const double LeastPressureRatio = 0.2;
    private const double LeastAxleShare = 0.05;

    private readonly List<Problem> _problems = [];

    public IReadOnlyList<Problem> Problems => _problems;

    // Parts that could be read are checked even when others could not, so that every problem is told at once.
    public Vehicle? Build(VehicleDocument document)
    {
        ImmutableArray<LoadCase> loads = [.. (document.LoadCases ?? [])
            .Select((load, i) => load is not null && Sound($"loadCases[{i}]")
                ? LoadCase(load, document.Wheelbase, $"loadCases[{i}]") : null)
            .OfType<LoadCase>()];
        foreach (IGrouping<string, string> same in (document.LoadCases ?? [])
            .Select(load => load?.Name).OfType<string>()
            .GroupBy(name => name, StringComparer.OrdinalIgnoreCase).Where(group => group.Count() > 1))
        {
            Add("loadCases", $"The name \"{same.Key}\" is used {same.Count()} times.", "a name of its own for each load case");
        }

        Brake? front = Sound("front") ? Brake(document.Front!.Brake!, "front.brake") : null;
        Brake? rear = Sound("rear") ? Brake(document.Rear!.Brake!, "rear.brake") : null;
        InsideTyre(document.Front, "front", front);
        InsideTyre(document.Rear, "rear", rear);
        BrakeHydraulics? hydraulics = Hydraulics(document.Hydraulics, document.MasterCylinder);
        EngineBraking? engine = Sound("engineBraking") && document.EngineBraking is { } drag ? drag with { } : null;
        WithinGrip(engine, loads, document);
        bool controlSound = new[] { "pedal", "assist", "masterCylinder", "fluid", "hydraulics", "front", "rear" }.All(Sound);
        BrakeControl? control = controlSound
            ? new ControlBuilder(_problems).Build(document, front is null || rear is null ? null : new PerAxle<Brake>(front, rear))
            : null;
        Conditions conditions = Sound("conditions") ? ConditionsOf(document.Conditions, loads) : new();
        var dynamics = new DynamicsBuilder(_problems);
        var axles = new PerAxle<AxleDynamics>(
            Sound("front") ? dynamics.Axle(document.Front!, "front") : new(),
            Sound("rear") ? dynamics.Axle(document.Rear!, "rear") : new());
        if (_problems.Count + readingProblems.Count > 0)
        {
            return null;
        }

        return new Vehicle
        {
            Name = document.Name!,
            Note = document.Note ?? "",
            IsInvented = document.Invented == true,
            Wheelbase = document.Wheelbase!.Value,
            LoadCases = loads,
            Tyres = new(Tyre(document.Front!.Tyre!), Tyre(document.Rear!.Tyre!)),
            Brakes = new(front!, rear!),
            Hydraulics = hydraulics!,
            Aerodynamics = document.Aerodynamics is { } air ? air with { } : null,
            RollingResistanceCoefficient = document.RollingResistance ?? 0,
            EngineBraking = engine,
            Dynamics = document.Dynamics is { } moves ? moves with { } : null,
            AxleDynamics = axles,
            Control = control,
            Conditions = conditions,
        };
    }

    private Conditions ConditionsOf(ConditionsDocument? document, IReadOnlyList<LoadCase> loads)
    {
        Conditions usual = document?.ClosedTrack == true ? Conditions.Track : new();
        if (document is null)
        {
            return usual;
        }

        (double low, double high) = (document.LowestAdhesion ?? usual.LowestAdhesion, document.HighestAdhesion ?? usual.HighestAdhesion);
        if (low >= high)
        {
            Add("conditions.lowestAdhesion", Invariant.Text($"{low} is not below the highest adhesion, {high}."),
                "the lower of the two");
        }

        if (document.HighestSpeed < document.LowestSpeed)
        {
            Add("conditions.lowestSpeed", "It is above the highest speed.", "the lower of the two");
        }

        foreach (string name in (document.LoadCases ?? [])
            .Where(name => !loads.Any(load => string.Equals(load.Name, name, StringComparison.OrdinalIgnoreCase))))
        {
            Add("conditions.loadCases", $"There is no load case \"{name}\".", string.Join(", ", loads.Select(load => $"\"{load.Name}\"")));
        }

        return usual with
        {
            LowestAdhesion = low,
            HighestAdhesion = high,
            Speeds = new SpeedRange { Lowest = document.LowestSpeed ?? Speed.Zero, Highest = document.HighestSpeed },
            LoadCases = [.. document.LoadCases ?? []],
            BrakeStates = document.BrakeStates is { Count: > 0 } states
                ? [.. states.Select(state => state with { })]
                : usual.BrakeStates,
            FrictionSpread = new(document.FrontFrictionSpread ?? usual.FrictionSpread.Front, document.RearFrictionSpread
                ?? usual.FrictionSpread.Rear),
            RearFirstChance = document.RearFirstChance ?? usual.RearFirstChance,
        };
    }

    private void InsideTyre(AxleDocument? axle, string path, Brake? brake)
    {
        if (brake is null || axle?.Tyre?.LoadedRadius is not { } tyre)
        {
            return;
        }

        (string entry, Length radius) = axle.Brake switch
        {
            DiscBrakeDocument { PadOuterRadius: { } outer } => ("padOuterRadius", outer),
            DrumBrakeDocument => ("drumRadius", brake.EffectiveRadius),
            _ => ("effectiveRadius", brake.EffectiveRadius),
        };
        if (radius >= tyre)
        {
            Add($"{path}.brake.{entry}",
                Invariant.Text(
                    $"{radius.Millimeters:0.#} mm does not fit into the tyre, whose loaded radius is {tyre.Millimeters:0.#} mm."),
                Invariant.Text($"a radius, not a diameter, below {tyre.Millimeters:0.#} mm"));
        }
    }

    // Beyond this the engine alone locks its wheels at once, on a dry road too, and no balance of the brakes is left to tell.
    private void WithinGrip(EngineBraking? engine, IReadOnlyList<LoadCase> loads, VehicleDocument document)
    {
        if (engine is null || document.Wheelbase is not { } wheelbase || loads.Count == 0)
        {
            return;
        }

        double lightest = loads.Min(load => load.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared
            * (engine.DrivenAxle == Axle.Rear
                ? load.FrontAxleToCentreOfGravity / wheelbase : 1 - load.FrontAxleToCentreOfGravity / wheelbase));
        double most = GreatestEngineShare * lightest;
        if (engine.BrakingForce.Newtons > most)
        {
            Add("engineBraking.brakingForce",
                Invariant.Text($"{engine.BrakingForce.Newtons:0} N is more than an engine drags with: "
                    + $"{engine.BrakingForce.Newtons / lightest:0.00} of the load of {lightest:0} N on the driven axle."),
                Invariant.Text($"a force up to {Math.Floor(most):0} N, {GreatestEngineShare} of that load"));
        }
    }

    private bool Sound(string path) => !readingProblems.Any(problem =>
        problem.Path.StartsWith(path, StringComparison.Ordinal)
            && (problem.Path.Length == path.Length || problem.Path[path.Length] is '.' or '['));

    private LoadCase? LoadCase(LoadCaseDocument load, Length? wheelbase, string path)
    {
        Mass? mass = load.Mass;
        double? share = load.FrontShare;
        if (load.FrontAxleMass is { } onFront && load.RearAxleMass is { } onRear)
        {
            if (mass is not null || share is not null || load.FrontAxleToCentreOfGravity is not null)
            {
                Add(path, "gives the axle masses as well as mass, frontShare or frontAxleToCentreOfGravity.",
                    "either the two axle masses, or mass with one of the others");
                return null;
            }

            mass = onFront + onRear;
            share = onFront / mass.Value;
        }
        else if (load.FrontAxleMass is not null || load.RearAxleMass is not null)
        {
            Add(path, "gives the mass on one axle only.", "frontAxleMass and rearAxleMass together");
            return null;
        }

        if (mass is null)
        {
            Add(DocumentReader.Join(path, "mass"), "is missing.", "a mass such as \"1350 kg\", or frontAxleMass and rearAxleMass");
            return null;
        }

        if ((share is null) == (load.FrontAxleToCentreOfGravity is null))
        {
            Add(path, share is null ? "does not say where the centre of gravity lies." : "says twice where the centre of gravity lies.",
                "one of frontShare and frontAxleToCentreOfGravity, or the two axle masses");
            return null;
        }

        if (wheelbase is not { } between)
        {
            return null;
        }

        Length a = load.FrontAxleToCentreOfGravity ?? between * (1 - share!.Value);
        if (a >= between)
        {
            Add(DocumentReader.Join(path, "frontAxleToCentreOfGravity"),
                Invariant.Text($"The centre of gravity lies outside the wheelbase: "
                    + $"{a.Meters:0.###} m behind the front axle, wheelbase {between.Meters:0.###} m."),
                Invariant.Text($"a length above zero and below {between.Meters:0.###} m"));
            return null;
        }

        // Nearer to an axle than this the other one brakes nothing, and a stop is no longer told.
        double onFrontAxle = 1 - a / between;
        if (onFrontAxle is < LeastAxleShare or > 1 - LeastAxleShare)
        {
            string entry = load.FrontAxleToCentreOfGravity is not null ? "frontAxleToCentreOfGravity" : "frontAxleMass";
            Add(DocumentReader.Join(path, entry),
                Invariant.Text($"The front axle would carry {100 * onFrontAxle:0.#} % of the weight."),
                Invariant.Text($"a centre of gravity that leaves each axle at least {100 * LeastAxleShare:0} % of the weight"));
            return null;
        }

        return new LoadCase
        {
            Name = load.Name!,
            Mass = mass.Value,
            FrontAxleToCentreOfGravity = a,
            CentreOfGravityHeight = load.CentreOfGravityHeight!.Value,
        };
    }

    private static Tyre Tyre(TyreDocument tyre)
    {
        var made = new Tyre
        {
            LoadedRadius = tyre.LoadedRadius!.Value,
            AdhesionFactor = tyre.AdhesionFactor ?? 1,
            LoadSensitivity = tyre.LoadSensitivity ?? 0,
        };
        return tyre.ReferenceLoad is { } load ? made with { ReferenceLoad = load } : made;
    }

    private Brake? Brake(BrakeDocument brake, string path)
    {
        Brake? made = brake switch
        {
            DiscBrakeDocument disc => Disc(disc, path),
            DrumBrakeDocument drum => Drum(drum, path),
            MeasuredBrakeDocument measured => Measured(measured),
            _ => throw new NotSupportedException(brake.GetType().Name),
        };
        if (made is null)
        {
            return null;
        }

        try
        {
            _ = made.BrakeFactor;
        }
        catch (ArgumentException fault)
        {
            Add(path, Problem.WordsOf(fault).Split(" Accepted:")[0], "a lower friction, or shoes that lock at a higher one");
            return null;
        }

        if (made is DrumBrake shoes && shoes.SelfLockingFriction() is { } locks && locks <= (1 + FrictionSpread) * made.FrictionCoefficient)
        {
            Add(DocumentReader.Join(path, "friction"),
                Invariant.Text($"{made.FrictionCoefficient:0.###} is so near the {locks:0.###} at which the shoes lock "
                    + $"by themselves that the scatter of linings, {100 * FrictionSpread:0} %, reaches it."),
                Invariant.Text($"a friction below {locks / (1 + FrictionSpread):0.###}, or shoes that lock at a higher one"));
            return null;
        }

        return made;
    }

    private DiscBrake? Disc(DiscBrakeDocument disc, string path)
    {
        Length? radius = disc.EffectiveRadius;
        bool pads = disc.PadInnerRadius is not null && disc.PadOuterRadius is not null;
        if ((radius is null) != pads || (disc.PadInnerRadius is null) != (disc.PadOuterRadius is null))
        {
            Add(path, radius is null ? "does not say at which radius the pads rub." : "says twice at which radius the pads rub.",
                "effectiveRadius, or padInnerRadius together with padOuterRadius");
            return null;
        }

        if (pads)
        {
            if (disc.PadInnerRadius >= disc.PadOuterRadius)
            {
                Add(DocumentReader.Join(path, "padInnerRadius"), "is not below padOuterRadius.", "a smaller radius than padOuterRadius");
                return null;
            }

            radius = new PadRing
            {
                InnerRadius = disc.PadInnerRadius!.Value,
                OuterRadius = disc.PadOuterRadius!.Value
            }.EffectiveRadiusUniformWear();
        }

        return new DiscBrake
        {
            FrictionCoefficient = disc.Friction!.Value,
            ThresholdPressure = disc.ThresholdPressure ?? Pressure.Zero,
            Efficiency = disc.Efficiency ?? 1,
            Pistons = PistonSet.OneSide(disc.PistonDiameters!),
            EffectiveRadius = radius!.Value,
        };
    }

    private DrumBrake? Drum(DrumBrakeDocument drum, string path)
    {
        ShoeArrangement arrangement = drum.Shoes!.Value;
        int ways = (drum.BrakeFactor is null ? 0 : 1) + (drum.Geometry is null ? 0 : 1) + (drum.DuoServoGeometry is null ? 0 : 1);
        if (ways > 1)
        {
            Add(path, "describes its shoes more than once.",
                "one of brakeFactor, geometry and duoServoGeometry, or none for typical shoes");
            return null;
        }

        bool duoServo = arrangement == ShoeArrangement.DuoServo;
        if ((drum.Geometry is not null && duoServo) || (drum.DuoServoGeometry is not null && !duoServo))
        {
            Add(path, $"gives {(duoServo ? "geometry" : "duoServoGeometry")} for {QuantityText.Words(arrangement.ToString(), "-")} shoes.",
                duoServo ? "duoServoGeometry or brakeFactor" : "geometry or brakeFactor");
            return null;
        }

        return new DrumBrake
        {
            FrictionCoefficient = drum.Friction!.Value,
            ThresholdPressure = drum.ThresholdPressure ?? Pressure.Zero,
            Efficiency = drum.Efficiency ?? 1,
            Arrangement = arrangement,
            WheelCylinderDiameter = drum.WheelCylinderDiameter!.Value,
            EffectiveRadius = drum.DrumRadius!.Value,
            Shoes = Shoes(drum, arrangement) ?? CatalogueShoes.Typical(arrangement),
        };
    }

    private static DrumShoes? Shoes(DrumBrakeDocument drum, ShoeArrangement arrangement)
    {
        if (drum.Geometry is { } shoe)
        {
            return new ShoeGeometry
            {
                PivotDistance = shoe.PivotDistance!.Value,
                ActuatingArm = shoe.ActuatingArm!.Value,
                Lining = new LiningArc { Start = shoe.LiningStart!.Value, End = shoe.LiningEnd!.Value },
                Support = shoe.Support ?? ShoeSupport.Pivoted,
            };
        }

        if (drum.DuoServoGeometry is { } servo)
        {
            return new DuoServoGeometry
            {
                CylinderDistance = servo.CylinderDistance!.Value,
                AnchorDistance = servo.AnchorDistance!.Value,
                LinkDistance = servo.LinkDistance!.Value,
                PrimaryLining = new LiningArc { Start = servo.PrimaryStart!.Value, End = servo.PrimaryEnd!.Value },
                SecondaryLining = new LiningArc { Start = servo.SecondaryStart!.Value, End = servo.SecondaryEnd!.Value },
            };
        }

        CatalogueShoes typical = CatalogueShoes.Typical(arrangement);
        return drum.BrakeFactor is { } factor
            ? new CatalogueShoes
            {
                NominalBrakeFactor = factor,
                NominalFriction = drum.BrakeFactorFriction ?? drum.FrictionOfFile ?? drum.Friction!.Value,
                NominalSensitivity = drum.FrictionSensitivity ?? typical.NominalSensitivity,
            }
            : null;
    }

    private static MeasuredBrake Measured(MeasuredBrakeDocument brake) => new()
    {
        MeasuredOn = brake.Construction,
        FrictionCoefficient = brake.Friction!.Value,
        FrictionWhenMeasured = brake.FrictionOfFile ?? brake.Friction.Value,
        ThresholdPressure = brake.ThresholdPressure ?? Pressure.Zero,
        Efficiency = brake.Efficiency ?? 1,
        MeasuredNewtonMetresPerBar = brake.Torque!.Value.NewtonMeters / brake.TorquePressure!.Value.Bars,
        Sensitivity = brake.FrictionSensitivity ?? 1,
        Pistons = PistonSet.OneSide(brake.PistonDiameters!),
        EffectiveRadius = brake.EffectiveRadius!.Value,
    };

    private BrakeHydraulics? Hydraulics(HydraulicsDocument? document, MasterCylinderDocument? master)
    {
        if (document is null)
        {
            return new() { Split = Tandem(master) };
        }

        if (document.Split is BalanceBarSplit { FrontBore.Value: > 0, RearBore.Value: > 0, FrontForceShare: > 0 } read)
        {
            double ratio = read.RearToFrontPressureRatio;
            if (ratio is < LeastPressureRatio or > 1 / LeastPressureRatio)
            {
                Add("hydraulics.split.frontForceShare",
                    Invariant.Text($"{read.FrontForceShare:0.###} with these bores gives the rear {ratio:0.###} "
                        + $"times the front's pressure."),
                    Invariant.Text($"a share and bores that give between {LeastPressureRatio} "
                        + $"and {1 / LeastPressureRatio} times the front's pressure"));
            }
        }

        ImmutableArray<PressureValve> frontValves = Valves(document.FrontValves, "hydraulics.frontValves");
        ImmutableArray<PressureValve> rearValves = Valves(document.RearValves, "hydraulics.rearValves");
        if (!Sound("hydraulics"))
        {
            return null;
        }

        return new BrakeHydraulics
        {
            Split = document.Split is BalanceBarSplit bar ? bar with { } : Tandem(master),
            FrontValves = frontValves,
            RearValves = rearValves,
            MaximumPressure = document.MaximumPressure ?? new BrakeHydraulics().MaximumPressure,
        };
    }

    private static TandemSplit Tandem(MasterCylinderDocument? master) =>
        master is TandemCylinderDocument { Bore: { } bore, RearBore: { } rearBore }
        ? new TandemSplit { FrontToRearAreaRatio = TandemMasterCylinder.AreaRatio(bore, rearBore) }
        : new TandemSplit();

    private ImmutableArray<PressureValve> Valves(IReadOnlyList<PressureValve>? valves, string path) =>
        [.. (valves ?? []).Select((valve, i) => valve is not null && Sound($"{path}[{i}]") ? Valve(valve, $"{path}[{i}]") : null)
            .OfType<PressureValve>()];

    private PressureValve? Valve(PressureValve valve, string path)
    {
        if (valve is ProportioningValve { Knee: var knee, Adjustment: { } screw } && screw.TurnsFor(knee) is null)
        {
            string As(Pressure one) => Invariant.Text($"{one.As(knee.Unit):0.##} {KnownQuantities.Symbol(knee.Unit)}");
            Add(DocumentReader.Join(path, "knee"), $"{As(knee)} cannot be set with the adjuster described.",
                $"a pressure from {As(screw.KneeBackedOff)} to {As(screw.KneeAt(screw.Turns))}");
            return null;
        }

        if (valve is MeteringValve metering && metering.BlendPressure <= metering.OpeningPressure)
        {
            Add(DocumentReader.Join(path, "blendPressure"), "is not above openingPressure.", "a pressure above openingPressure");
            return null;
        }

        return valve is ProportioningValve { Adjustment: { } adjuster } adjustable
            ? adjustable with { Adjustment = adjuster with { } } : valve with { };
    }

    private void Add(string path, string what, string accepted = "") => _problems.Add(new(path, what, accepted));
}
