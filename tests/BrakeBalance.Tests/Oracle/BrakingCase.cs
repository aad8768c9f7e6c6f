using System.Collections.Immutable;
using System.Globalization;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace BrakeBalance.Tests.Oracle;

/// <summary>A car on a surface at a speed, with one number more for what a property wants to choose at random.</summary>
public sealed record BrakingCase(Vehicle Car, double Adhesion, double KilometresPerHour, double Choice)
{
    public LoadCase Load => Car.LoadCases[0];

    public Speed Speed => Speed.FromKilometersPerHour(KilometresPerHour);

    internal double MetresPerSecond => KilometresPerHour / 3.6;

    internal PlainCar Plain => PlainCarReader.Read(Car, Load);

    public override string ToString() => string.Create(CultureInfo.InvariantCulture,
        $"adhesion {Adhesion:0.####}, {KilometresPerHour:0.##} km/h, choice {Choice:0.####}, "
            + $"{Car.LoadCases.Length} load case(s), front {Words(Car.Brakes.Front)}, rear {Words(Car.Brakes.Rear)}\n{Plain}");

    private static string Words(Brake brake) => brake is DrumBrake drum ? $"{drum.Arrangement} drum with {drum.Shoes.GetType().Name}"
        : brake.GetType().Name;
}

/// <summary>Every kind of car that a file can describe, within what is sensible: all valves and chains of them, splits, brakes, air,
/// rolling, engine, tyres.</summary>
public static class AnyCase
{
    private static readonly Pressure Highest = Pressure.FromBars(160);

    /// <summary>Found by FsCheck by its return type; a failing case is made plainer as long as it fails.</summary>
    public static Arbitrary<BrakingCase> Cases() => Arb.From(Any, Plainer);

    private static Gen<BrakingCase> Any =>
        from car in Car
        from adhesion in Between(0.05, 1.5)
        from speed in Gen.OneOf(Gen.Constant(0.0), Between(0, 250), Between(0, 250))
        from choice in Between(0, 1)
        select new BrakingCase(car, adhesion, speed, choice);

    private static Gen<Vehicle> Car =>
        from wheelbase in Between(1.8, 3.4)
        from position in Between(0.3, 0.65)
        from height in Between(0.2, 0.85)
        from kilograms in Between(500, 3500)
        from size in Between(0.4, 2.5)
        from front in BrakeOf(kilograms * size * 0.0065)
        from rear in BrakeOf(kilograms * size * 0.0040)
        from tyres in TyrePair(kilograms)
        from split in Split
        from frontValves in FrontValves
        from rearValves in RearValves(kilograms)
        from rolling in Gen.OneOf(Gen.Constant(0.0), Between(0.005, 0.03))
        from engine in Gen.OneOf(Gen.Constant<EngineBraking?>(null), Engine)
        from air in Gen.OneOf(Gen.Constant<Aerodynamics?>(null), Air)
        select new Vehicle
        {
            Name = "any car",
            Wheelbase = Length.FromMeters(wheelbase),
            LoadCases =
            [
                Load("light", kilograms, position * wheelbase, height),
                Load("laden", kilograms * 1.25, (position + 0.05) * wheelbase, height + 0.03),
            ],
            Tyres = tyres,
            Brakes = new(front, rear),
            Hydraulics = new BrakeHydraulics
            {
                Split = split,
                FrontValves = frontValves,
                RearValves = rearValves,
                MaximumPressure = Highest
            },
            RollingResistanceCoefficient = rolling,
            EngineBraking = engine,
            Aerodynamics = air,
        };

    private static Gen<PerAxle<Tyre>> TyrePair(double kilograms) =>
        from radius in Between(0.25, 0.36)
        from rearRadius in Between(0.25, 0.36)
        from factor in Gen.OneOf(Gen.Constant(1.0), Between(0.8, 1.3))
        from rearFactor in Gen.OneOf(Gen.Constant(1.0), Between(0.8, 1.3))
        from sensitivity in Gen.OneOf(Gen.Constant(0.0), Gen.Constant(0.0), Between(0.02, 0.25))
        from rearSensitivity in Gen.OneOf(Gen.Constant(sensitivity), Gen.Constant(0.0), Between(0.02, 0.25))
        from reference in Between(1.5, 4.0)
        select new PerAxle<Tyre>(
            new Tyre
            {
                LoadedRadius = Length.FromMeters(radius),
                AdhesionFactor = factor,
                LoadSensitivity = sensitivity,
                ReferenceLoad = Force.FromNewtons(kilograms * reference)
            },
            new Tyre
            {
                LoadedRadius = Length.FromMeters(rearRadius),
                AdhesionFactor = rearFactor,
                LoadSensitivity = rearSensitivity,
                ReferenceLoad = Force.FromNewtons(kilograms * reference)
            });

    private static Gen<MasterSplit> Split => Gen.OneOf(
        Gen.Constant<MasterSplit>(new TandemSplit()),
        from share in Between(0.35, 0.75)
        from front in Gen.Elements(15.9, 19.05, 20.6, 22.2)
        from rear in Gen.Elements(15.9, 19.05, 20.6, 22.2)
        select (MasterSplit)new BalanceBarSplit
        {
            FrontForceShare = share,
            FrontBore = Length.FromMillimeters(front),
            RearBore = Length.FromMillimeters(rear)
        });

    private static Gen<PressureValve> Proportioning =>
        from knee in Gen.OneOf(Gen.Constant(0.0), Between(5, 90), Between(5, 90), Between(5, 90))
        from slope in Gen.OneOf(Gen.Constant(0.0), Gen.Constant(1.0), Between(0, 1), Between(0.2, 0.6), Between(0.2, 0.6))
        select (PressureValve)new ProportioningValve { Knee = Pressure.FromBars(knee), Slope = slope };

    private static Gen<PressureValve> Limiting =>
        from limit in Between(5, 150)
        select (PressureValve)new LimitingValve { Limit = Pressure.FromBars(limit) };

    private static Gen<PressureValve> Metering =>
        from opening in Between(0, 12)
        from more in Between(1, 25)
        select (PressureValve)new MeteringValve
        {
            OpeningPressure = Pressure.FromBars(opening),
            BlendPressure = Pressure.FromBars(opening + more)
        };

    private static Gen<PressureValve> LoadFeeling(double kilograms) =>
        from knee in Between(5, 60)
        from load in Between(3, 6)
        from gain in Between(0, 40)
        from slope in Between(0, 0.9)
        from lowest in Between(0, 10)
        select (PressureValve)new LoadSensingValve
        {
            KneeAtReference = Pressure.FromBars(knee),
            ReferenceLoad = Force.FromNewtons(load * kilograms),
            KneePerKilonewton = Pressure.FromBars(gain * 1000 / kilograms),
            Slope = slope,
            LowestKnee = Pressure.FromBars(lowest),
        };

    private static Gen<ImmutableArray<PressureValve>> FrontValves => Gen.OneOf(
        Gen.Constant(ImmutableArray<PressureValve>.Empty),
        Gen.Constant(ImmutableArray<PressureValve>.Empty),
        Chain(Metering),
        Chain(Gen.OneOf(Metering, Limiting, Proportioning)),
        Chain(Metering, Limiting));

    private static Gen<ImmutableArray<PressureValve>> RearValves(double kilograms) => Gen.OneOf(
        Gen.Constant(ImmutableArray<PressureValve>.Empty),
        Chain(Proportioning),
        Chain(Proportioning),
        Chain(Limiting),
        Chain(LoadFeeling(kilograms)),
        Chain(LoadFeeling(kilograms)),
        Chain(LoadFeeling(kilograms), Limiting),
        Chain(Proportioning, LoadFeeling(kilograms)),
        Chain(Metering),
        Chain(Proportioning, Proportioning),
        Chain(Proportioning, Limiting),
        Chain(Limiting, Proportioning),
        Chain(Metering, Proportioning, Limiting));

    private static Gen<EngineBraking?> Engine =>
        from rear in ArbMap.Default.GeneratorFor<bool>()
        from newtons in Between(50, 500)
        select (EngineBraking?)new EngineBraking { DrivenAxle = rear ? Axle.Rear : Axle.Front, BrakingForce = Force.FromNewtons(newtons) };

    private static Gen<Aerodynamics?> Air =>
        from drag in Between(0.4, 1.2)
        from frontLift in Between(-0.8, 0.25)
        from rearLift in Between(-0.8, 0.25)
        from density in Between(0.9, 1.4)
        select (Aerodynamics?)new Aerodynamics
        {
            DragArea = Area.FromSquareMeters(drag),
            FrontLiftArea = Area.FromSquareMeters(frontLift),
            RearLiftArea = Area.FromSquareMeters(rearLift),
            AirDensity = Density.FromKilogramsPerCubicMeter(density),
        };

    // About so many newton metres of one wheel per bar, by one of the kinds of brake.
    private static Gen<Brake> BrakeOf(double newtonMetresPerBar) => Gen.OneOf(
        from friction in Between(0.25, 0.5)
        from threshold in Between(0, 3)
        from efficiency in Between(0.85, 1)
        from pistons in Gen.Choose(1, 3)
        select (Brake)new DiscBrake
        {
            FrictionCoefficient = friction,
            ThresholdPressure = Pressure.FromBars(threshold),
            Efficiency = efficiency,
            Pistons = PistonSet.OneSideOf(pistons, Bore(newtonMetresPerBar / pistons, 0.76, 0.12)),
            EffectiveRadius = Length.FromMeters(0.12),
        },
        Drum(newtonMetresPerBar),
        from friction in Between(0.25, 0.5)
        from sensitivity in Between(0.6, 2.5)
        select (Brake)new MeasuredBrake
        {
            FrictionCoefficient = friction,
            FrictionWhenMeasured = 0.38,
            Sensitivity = sensitivity,
            MeasuredNewtonMetresPerBar = newtonMetresPerBar,
            Pistons = PistonSet.OneSideOf(1, Length.FromMillimeters(50)),
            EffectiveRadius = Length.FromMeters(0.12),
        });

    private static Gen<Brake> Drum(double newtonMetresPerBar) => (
        from friction in Between(0.25, 0.42)
        from threshold in Between(0, 5)
        from arrangement in Gen.Elements(ShoeArrangement.LeadingTrailing, ShoeArrangement.TwoLeading, ShoeArrangement.TwoTrailing,
            ShoeArrangement.DuoServo)
        from radius in Between(0.09, 0.14)
        from shoes in Gen.OneOf(Gen.Constant<DrumShoes>(CatalogueShoes.Typical(arrangement)), Shoes(arrangement, radius))
        select new DrumBrake
        {
            FrictionCoefficient = friction,
            ThresholdPressure = Pressure.FromBars(threshold),
            Arrangement = arrangement,
            WheelCylinderDiameter = Bore(newtonMetresPerBar, CatalogueShoes.Typical(arrangement).NominalBrakeFactor, radius),
            EffectiveRadius = Length.FromMeters(radius),
            Shoes = shoes,
        })
        .Where(drum => (drum.SelfLockingFriction() ?? 3) > 1.3 * drum.FrictionCoefficient)
        .Select(drum => (Brake)drum);

    private static Gen<DrumShoes> Shoes(ShoeArrangement arrangement, double radius) =>
        from start in Between(20, 40)
        from end in Between(120, 140)
        from sliding in ArbMap.Default.GeneratorFor<bool>()
        from angle in Between(0, 90)
        from kind in Gen.Choose(0, 2)
        select arrangement == ShoeArrangement.DuoServo
            ? new DuoServoGeometry
            {
                CylinderDistance = Length.FromMeters(0.70 * radius),
                AnchorDistance = Length.FromMeters(0.85 * radius),
                LinkDistance = Length.FromMeters(0.82 * radius),
                PrimaryLining = LiningArc.FromDegrees(start + 10, end),
                SecondaryLining = LiningArc.FromDegrees(start, end),
            }
            : kind == 0
                ? (DrumShoes)new ShortShoeGeometry
                {
                    ActuatingArm = Length.FromMeters(1.5 * radius),
                    NormalArm = Length.FromMeters(0.8 * radius),
                    FrictionArm = Length.FromMeters(0.9 * radius),
                    LiningAngle = Angle.FromDegrees(angle),
                }
                : new ShoeGeometry
                {
                    PivotDistance = Length.FromMeters(0.8 * radius),
                    ActuatingArm = Length.FromMeters(1.55 * radius),
                    Lining = LiningArc.FromDegrees(start, end),
                    Support = sliding ? ShoeSupport.Sliding : ShoeSupport.Pivoted,
                };

    private static Length Bore(double newtonMetresPerBar, double factor, double radius) =>
        Length.FromMeters(Math.Sqrt(newtonMetresPerBar / (factor * radius * 1e5) * 4 / Math.PI));

    private static Gen<ImmutableArray<PressureValve>> Chain(params Gen<PressureValve>[] valves) =>
        valves.Aggregate(Gen.Constant(ImmutableArray<PressureValve>.Empty), (chain, valve) =>
            from before in chain from next in valve select before.Add(next));

    private static LoadCase Load(string name, double kilograms, double frontAxleToCgMetres, double heightMetres) => new()
    {
        Name = name,
        Mass = Mass.FromKilograms(kilograms),
        FrontAxleToCentreOfGravity = Length.FromMeters(frontAxleToCgMetres),
        CentreOfGravityHeight = Length.FromMeters(heightMetres),
    };

    private static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(n =>
        low + ((high - low) * n / 1_000_000));

    // Leaves out one thing at a time, so that what is left of a failing case is what makes it fail.
    private static IEnumerable<BrakingCase> Plainer(BrakingCase given)
    {
        Vehicle car = given.Car;
        BrakeHydraulics hydraulics = car.Hydraulics;
        BrakingCase With(Vehicle plainer) => given with { Car = plainer };

        if (car.LoadCases.Length > 1)
        {
            yield return With(car with { LoadCases = [car.LoadCases[0]] });
            yield return With(car with { LoadCases = [car.LoadCases[1]] });
        }

        if (car.Aerodynamics is { } air)
        {
            yield return With(car with { Aerodynamics = null });
            if (air.FrontLiftArea.SquareMeters != 0 || air.RearLiftArea.SquareMeters != 0)
            {
                yield return With(car with { Aerodynamics = air with { FrontLiftArea = Area.Zero, RearLiftArea = Area.Zero } });
            }

            if (air.DragArea > Area.Zero)
            {
                yield return With(car with { Aerodynamics = air with { DragArea = Area.Zero } });
            }
        }

        if (car.RollingResistanceCoefficient > 0)
        {
            yield return With(car with { RollingResistanceCoefficient = 0 });
        }

        if (car.EngineBraking is not null)
        {
            yield return With(car with { EngineBraking = null });
        }

        if (car.Tyres.Front.LoadSensitivity > 0 || car.Tyres.Rear.LoadSensitivity > 0)
        {
            yield return With(car with { Tyres = car.Tyres.Select(tyre => tyre with { LoadSensitivity = 0 }) });
        }

        if (car.Tyres.Front.AdhesionFactor != 1 || car.Tyres.Rear.AdhesionFactor != 1)
        {
            yield return With(car with { Tyres = car.Tyres.Select(tyre => tyre with { AdhesionFactor = 1 }) });
        }

        if (hydraulics.Split is not TandemSplit)
        {
            yield return With(car with { Hydraulics = hydraulics with { Split = new TandemSplit() } });
        }

        for (int i = 0; i < hydraulics.FrontValves.Length; i++)
        {
            yield return With(car with { Hydraulics = hydraulics with { FrontValves = hydraulics.FrontValves.RemoveAt(i) } });
        }

        for (int i = 0; i < hydraulics.RearValves.Length; i++)
        {
            yield return With(car with { Hydraulics = hydraulics with { RearValves = hydraulics.RearValves.RemoveAt(i) } });
        }

        foreach (Axle axle in Enum.GetValues<Axle>())
        {
            Brake brake = car.Brakes[axle];
            if (brake is not DiscBrake { Efficiency: 1 } || brake.ThresholdPressure > Pressure.Zero)
            {
                var disc = new DiscBrake
                {
                    FrictionCoefficient = 0.38,
                    Pistons = PistonSet.OneSideOf(1, Bore(brake.TorqueNewtonMetresPerPascal * 1e5, 0.76, 0.12)),
                    EffectiveRadius = Length.FromMeters(0.12),
                };
                yield return With(car with { Brakes = axle == Axle.Front ? new(disc, car.Brakes.Rear) : new(car.Brakes.Front, disc) });
            }
        }

        if (given.KilometresPerHour > 0 && car.Aerodynamics is null)
        {
            yield return given with { KilometresPerHour = given.KilometresPerHour == 100 ? 0 : 100 };
        }
    }
}
