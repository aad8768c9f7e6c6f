using System.Collections.Immutable;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using FsCheck;
using FsCheck.Fluent;
using UnitsNet;

namespace BrakeBalance.Tests.Invariants;

/// <summary>Random but possible cars: any sensible geometry, every kind of brake, valve and split, with and without the extras.</summary>
public static class RandomCar
{
    /// <summary>Found by FsCheck by its return type.</summary>
    public static Arbitrary<Vehicle> Cars() => Any.ToArbitrary();

    private static Gen<Vehicle> Any =>
        from wheelbase in Between(1.8, 3.4)
        from position in Between(0.3, 0.7)
        from height in Between(0.2, 0.85)
        from kilograms in Between(500, 3500)
        from fast in Between(0.4, 2.5)
        from front in BrakeOf(kilograms * fast * 0.0065)
        from rear in BrakeOf(kilograms * fast * 0.0040)
        from tyres in TyrePair
        from split in Split
        from frontValves in Gen.OneOf(Gen.Constant(ImmutableArray<PressureValve>.Empty), Gen.Constant(ImmutableArray<PressureValve>.Empty),
            Metering.Select(One))
        from rearValves in RearValves
        from rolling in Gen.OneOf(Gen.Constant(0.0), Between(0.005, 0.03))
        from engine in Gen.OneOf(Gen.Constant<EngineBraking?>(null), Engine)
        from aerodynamics in Gen.OneOf(Gen.Constant<Aerodynamics?>(null), Aero)
        select new Vehicle
        {
            Name = "random car",
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
                MaximumPressure = Pressure.FromBars(160),
            },
            RollingResistanceCoefficient = rolling,
            EngineBraking = engine,
            Aerodynamics = aerodynamics,
        };

    private static Gen<PerAxle<Tyre>> TyrePair =>
        from radius in Between(0.25, 0.36)
        from factor in Gen.OneOf(Gen.Constant(1.0), Between(0.8, 1.3))
        from sensitivity in Gen.OneOf(Gen.Constant(0.0), Gen.Constant(0.0), Between(0.02, 0.15))
        let front = new Tyre { LoadedRadius = Length.FromMeters(radius), LoadSensitivity = sensitivity }
        select new PerAxle<Tyre>(front, front with { AdhesionFactor = factor, LoadedRadius = Length.FromMeters(radius * 1.02) });

    private static Gen<MasterSplit> Split => Gen.OneOf(
        Gen.Constant<MasterSplit>(new TandemSplit()),
        from share in Between(0.4, 0.7)
        select (MasterSplit)new BalanceBarSplit
        {
            FrontForceShare = share,
            FrontBore = Length.FromMillimeters(19),
            RearBore = Length.FromMillimeters(20.6),
        });

    private static Gen<PressureValve> Proportioning =>
        from knee in Between(5, 90)
        from slope in Between(0, 1)
        select (PressureValve)new ProportioningValve { Knee = Pressure.FromBars(knee), Slope = slope };

    private static Gen<PressureValve> Limiting =>
        from limit in Between(10, 120)
        select (PressureValve)new LimitingValve { Limit = Pressure.FromBars(limit) };

    private static Gen<PressureValve> Metering =>
        from opening in Between(1, 10)
        from more in Between(2, 20)
        select (PressureValve)new MeteringValve
        {
            OpeningPressure = Pressure.FromBars(opening),
            BlendPressure = Pressure.FromBars(opening + more),
        };

    private static Gen<PressureValve> LoadSensing =>
        from knee in Between(10, 60)
        from load in Between(2, 9)
        from gain in Between(0, 25)
        from slope in Between(0, 0.9)
        select (PressureValve)new LoadSensingValve
        {
            KneeAtReference = Pressure.FromBars(knee),
            ReferenceLoad = Force.FromKilonewtons(load),
            KneePerKilonewton = Pressure.FromBars(gain),
            Slope = slope,
            LowestKnee = Pressure.FromBars(2),
        };

    private static Gen<ImmutableArray<PressureValve>> RearValves => Gen.OneOf(
        Gen.Constant(ImmutableArray<PressureValve>.Empty),
        Proportioning.Select(One),
        Proportioning.Select(One),
        Limiting.Select(One),
        LoadSensing.Select(One),
        from first in Proportioning
        from second in Limiting
        select ImmutableArray.Create(first, second));

    private static Gen<EngineBraking?> Engine =>
        from rear in ArbMap.Default.GeneratorFor<bool>()
        from newtons in Between(50, 500)
        select (EngineBraking?)new EngineBraking { DrivenAxle = rear ? Axle.Rear : Axle.Front, BrakingForce = Force.FromNewtons(newtons) };

    private static Gen<Aerodynamics?> Aero =>
        from drag in Between(0.4, 1.2)
        from frontLift in Between(-0.4, 0.3)
        from rearLift in Between(-0.4, 0.3)
        select (Aerodynamics?)new Aerodynamics
        {
            DragArea = Area.FromSquareMeters(drag),
            FrontLiftArea = Area.FromSquareMeters(frontLift),
            RearLiftArea = Area.FromSquareMeters(rearLift),
        };

    // Newton metres of one wheel per bar, by one of the kinds of brake.
    private static Gen<Brake> BrakeOf(double newtonMetresPerBar) => Gen.OneOf(
        from friction in Between(0.25, 0.5)
        from threshold in Between(0, 3)
        select (Brake)new DiscBrake
        {
            FrictionCoefficient = friction,
            ThresholdPressure = Pressure.FromBars(threshold),
            Pistons = PistonSet.OneSideOf(1, Length.FromMeters(Math.Sqrt(newtonMetresPerBar / (2 * 0.38 * 0.12 * 1e5) * 4 / Math.PI))),
            EffectiveRadius = Length.FromMeters(0.12),
        },
        from friction in Between(0.25, 0.42)
        from threshold in Between(0, 5)
        from arrangement in Gen.Elements(ShoeArrangement.LeadingTrailing, ShoeArrangement.TwoLeading, ShoeArrangement.TwoTrailing,
            ShoeArrangement.DuoServo)
        let shoes = CatalogueShoes.Typical(arrangement)
        select (Brake)new DrumBrake
        {
            FrictionCoefficient = friction,
            ThresholdPressure = Pressure.FromBars(threshold),
            Arrangement = arrangement,
            WheelCylinderDiameter = Length.FromMeters(
                Math.Sqrt(newtonMetresPerBar / (shoes.NominalBrakeFactor * 0.12 * 1e5) * 4 / Math.PI)),
            EffectiveRadius = Length.FromMeters(0.12),
            Shoes = shoes,
        },
        Gen.Constant<Brake>(new MeasuredBrake
        {
            FrictionCoefficient = 0.4,
            FrictionWhenMeasured = 0.4,
            MeasuredNewtonMetresPerBar = newtonMetresPerBar,
            Pistons = PistonSet.OneSideOf(1, Length.FromMillimeters(50)),
            EffectiveRadius = Length.FromMeters(0.12),
        }));

    private static ImmutableArray<PressureValve> One(PressureValve valve) => [valve];

    private static LoadCase Load(string name, double kilograms, double frontAxleToCgMetres, double heightMetres) => new()
    {
        Name = name,
        Mass = Mass.FromKilograms(kilograms),
        FrontAxleToCentreOfGravity = Length.FromMeters(frontAxleToCgMetres),
        CentreOfGravityHeight = Length.FromMeters(heightMetres),
    };

    private static Gen<double> Between(double low, double high) => Gen.Choose(0, 1_000_000).Select(n => low + (high - low) * n / 1_000_000);
}
