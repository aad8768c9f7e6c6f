using System.Collections.Immutable;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Days;

/// <summary>Random cars as people have them, as they truly are, and the days they are measured on.</summary>
internal static class RandomCars
{
    private static double Normal(Random random) => RandomNumbers.Normal(random);

    private static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    /// <summary>A car as people have them: discs or drums, with an adjustable, a fixed or a load-sensing valve.</summary>
    public static Vehicle Car(Random random, bool valve = true)
    {
        double wheelbase = Between(random, 2.2, 3.0), mass = Between(random, 800, 1900), a = Between(random, 0.4, 0.54) * wheelbase;
        double height = Between(random, 0.45, 0.62), radius = Between(random, 0.28, 0.34);
        double maximum = 150;

        // Front brakes that lock on a dry road at 45 to 80 bar, rear ones that would lock first without a valve.
        double rearStatic = a / wheelbase, transfer = 0.88 * height / wheelbase;
        double lockBars = Between(random, 45, 80);
        double Piston(double share, double mean) =>
            Math.Sqrt(0.88 * mass * 9.81 * share * radius / (4 * 0.38 * mean * lockBars * 1e5) * 4 / Math.PI);
        double knee = Between(random, 12, 28), slope = Between(random, 0.25, 0.5);
        double rearAtLock = valve ? knee + slope * (lockBars - knee) : lockBars;
        double rearShare = rearStatic - transfer;
        Brake rear = random.Next(3) == 0
            ? new DrumBrake
            {
                FrictionCoefficient = 0.36,
                Arrangement = ShoeArrangement.LeadingTrailing,
                WheelCylinderDiameter = Length.FromMeters(
                    Math.Sqrt(0.88 * mass * 9.81 * rearShare * radius / (2 * 2.2 * 0.12 * rearAtLock * 1e5 * 0.85) * 4 / Math.PI)),
                EffectiveRadius = Length.FromMeters(0.12),
                Shoes = CatalogueShoes.Typical(ShoeArrangement.LeadingTrailing),
                ThresholdPressure = Pressure.FromBars(2),
            }
            : new DiscBrake
            {
                FrictionCoefficient = 0.38,
                Pistons = PistonSet.OneSide([Length.FromMeters(Piston(rearShare, 0.12) * Math.Sqrt(lockBars / rearAtLock) * 0.93)]),
                EffectiveRadius = Length.FromMeters(0.12),
                ThresholdPressure = Pressure.FromBars(0.5),
            };
        int kind = valve ? random.Next(4) : 3;
        double perTurn = Between(random, 4, 8);
        ImmutableArray<PressureValve> valves = !valve ? [] : kind switch
        {
            0 => [new ProportioningValve { Knee = Pressure.FromBars(knee), Slope = slope }],
            _ => [new ProportioningValve
            {
                Knee = Pressure.FromBars(knee),
                Slope = slope,
                Adjustment = new KneeAdjustment
                {
                    KneeBackedOff = Pressure.FromBars(knee - 1.5 * perTurn > 2 ? knee - 1.5 * perTurn : 2),
                    KneePerTurn = Pressure.FromBars(perTurn),
                    Turns = 6,
                },
            }],
        };
        LoadCase Load(string name, double kilograms, double at, double up) => new()
        {
            Name = name,
            Mass = Mass.FromKilograms(kilograms),
            FrontAxleToCentreOfGravity = Length.FromMeters(at),
            CentreOfGravityHeight = Length.FromMeters(up),
        };
        return new Vehicle
        {
            Name = "random car",
            Wheelbase = Length.FromMeters(wheelbase),
            LoadCases = [Load("driver only", mass, a, height), Load("laden", 1.2 * mass, a + 0.05 * wheelbase, height + 0.02)],
            Tyres = new(new Tyre { LoadedRadius = Length.FromMeters(radius) }, new Tyre { LoadedRadius = Length.FromMeters(radius) }),
            Brakes = new(
                new DiscBrake
                {
                    FrictionCoefficient = 0.38,
                    Pistons = PistonSet.OneSide([Length.FromMeters(Piston(1 - rearShare, 0.115))]),
                    EffectiveRadius = Length.FromMeters(0.115),
                    ThresholdPressure = Pressure.FromBars(0.5),
                },
                rear),
            Hydraulics = new BrakeHydraulics { RearValves = valves, MaximumPressure = Pressure.FromBars(maximum) },
        };
    }

    /// <summary>The car as it truly is that day, drawn from what the file leaves open.</summary>
    public static Vehicle True(Vehicle file, Random random)
    {
        Vehicle car = file.WithFrictionFactors(Math.Exp(0.1 * Normal(random)), Math.Exp(0.1 * Normal(random)));
        double height = Math.Exp(0.05 * Normal(random));
        if (file.Hydraulics.RearProportioningValve is { } valve)
        {
            var off = Pressure.FromBars((0.4 + 0.03 * valve.Knee.Bars) * Math.Clamp(Normal(random), -2.5, 2.5));
            car = car with
            {
                Hydraulics = car.Hydraulics with
                {
                    RearValves = [valve with
                    {
                        Knee = valve.Knee + off,
                        Slope = valve.Slope + 0.02 * Math.Clamp(Normal(random), -2.5, 2.5),
                        Adjustment = valve.Adjustment is { } screw ? screw with { KneeBackedOff = screw.KneeBackedOff + off } : null,
                    }],
                },
            };
        }

        return car with
        {
            LoadCases = [.. car.LoadCases.Select(load => load with { CentreOfGravityHeight = load.CentreOfGravityHeight * height })],
        };
    }

    /// <summary>A dry and a wet road with the adhesion they truly have that day.</summary>
    public static SurfaceCondition[] Roads(Random random) =>
        [.. new[] { SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet") }
            .Select(road => road with { Adhesion = road.Adhesion * Math.Exp(road.Spread * Normal(random)) })];

    /// <summary>A day as a plan makes it: from easy stops to lock-ups, on two roads, in two load cases, at two or three settings.</summary>
    public static List<TestStop> Day(Vehicle file, Vehicle car, Random random)
    {
        SurfaceCondition[] roads = Roads(random);
        return Day(file, car, roads, roads, random);
    }

    /// <summary>The same with pressures planned for roads of another adhesion than they turn out to have.</summary>
    public static List<TestStop> Day(Vehicle file, Vehicle car, SurfaceCondition[] roads, SurfaceCondition[] planned, Random random)
    {
        var track = new InventedTrack(car, random.Next());
        bool notes = random.Next(2) == 0;
        double[] settings = file.Hydraulics.RearProportioningValve?.Adjustment is null ? [0] : [0, 1, 2];
        List<TestStop> stops = [];
        foreach (LoadCase load in car.LoadCases)
        {
            foreach ((SurfaceCondition road, double share) in ((SurfaceCondition, double)[])
                [(roads[0], 0.3), (roads[0], 0.45), (roads[0], 0.6), (roads[0], 0.75), (roads[0], 0.5), (roads[1], 0.5), (roads[0], 0.68),
                    (roads[1], 1.3), (roads[0], 1.3), (roads[0], 0.8)])
            {
                double? turns = settings.Length == 1 ? null : settings[stops.Count % settings.Length];
                var model = new BalanceModel(
                    turns is { } t ? file.WithRearKnee(file.Hydraulics.RearProportioningValve!.Adjustment!.KneeAt(t)) : file,
                    file.LoadCases.First(one => one.Name == load.Name));
                double bars = model.FirstLockUp(planned.First(plan => plan.Name == road.Name).Adhesion)?.At.LinePressures.Front.Bars ?? 80;
                stops.Add(track.Stop(load, road, Pressure.FromBars(Math.Clamp(share * bars, 10, 140)), Speed.FromKilometersPerHour(50),
                    turns, notes) with
                { Line = stops.Count + 2 });
            }
        }

        return stops;
    }
}
