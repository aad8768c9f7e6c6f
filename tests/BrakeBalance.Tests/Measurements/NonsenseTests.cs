using System.Collections.Immutable;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;
using Xunit.Abstractions;

namespace BrakeBalance.Tests.Measurements;

/// <summary>Invented test days that are written down wrongly, each on many random cars.</summary>
[Collection(SpeedCollection.Name)]
public class NonsenseTests(ITestOutputHelper output)
{
    private const int Cars = 60;
    private const int CleanDays = 300;

    private static double Normal(Random random) => RandomNumbers.Normal(random);

    private static double Between(Random random, double low, double high) => low + (high - low) * random.NextDouble();

    /// <summary>A car as people have them: discs or drums, with an adjustable, a fixed or a load-sensing valve.</summary>
    private static Vehicle Car(Random random, bool valve = true)
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
    private static Vehicle True(Vehicle file, Random random)
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

    /// <summary>A day as a plan makes it: from easy stops to lock-ups, on two roads, in two load cases, at two or three settings.</summary>
    private static List<TestStop> Day(Vehicle file, Vehicle car, Random random)
    {
        SurfaceCondition[] roads = [.. new[] { SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet") }
            .Select(road => road with { Adhesion = road.Adhesion * Math.Exp(road.Spread * Normal(random)) })];
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
                double bars = model.FirstLockUp(road.Adhesion)?.At.LinePressures.Front.Bars ?? 80;
                stops.Add(track.Stop(load, road, Pressure.FromBars(Math.Clamp(share * bars, 10, 140)), Speed.FromKilometersPerHour(50),
                    turns, notes) with
                { Line = stops.Count + 2 });
            }
        }

        return stops;
    }

    private static IReadOnlyList<string> Doubts(Vehicle file, IReadOnlyList<TestStop> stops)
    {
        var model = new StopModel(file, stops, new EstimationOptions());
        MathNet.Numerics.LinearAlgebra.Vector<double> theta = model.PriorMean;
        foreach (double widened in (double[])[6, 2.5, 1])
        {
            theta = LaplacePosterior.Descend(at => model.NegativeLog(at, widened), theta, 0.1 * model.PriorDeviation);
        }

        return FitCheck.Of(model, stops, theta);
    }

    /// <summary>Kinds of nonsense: how a right day becomes a wrong one, and by which words it has to be named.</summary>
    private static readonly Dictionary<string, (Func<List<TestStop>, Vehicle, Random, List<TestStop>> Spoil, string[] Named)> Kinds = new()
    {
        ["pressures: psi as bar"] = ((day, _, _) => Each(day, stop => Pressures(stop, PoundsPerBar)), ["psi under [bar]"]),
        ["pressures: bar as psi"] = ((day, _, _) => Each(day, stop => Pressures(stop, 1 / PoundsPerBar)), ["bar under [psi]"]),
        ["deceleration: g as m/s2"] = ((day, _, _) => Rates(day, 1 / 9.80665), ["g under [m/s2]"]),
        ["deceleration: ft as m (a too high)"] = ((day, _, _) => Rates(day, 3.28084), ["ft/s² entered as m/s²"]),
        ["distance: ft as m (a too low)"] = ((day, _, _) => Rates(day, 0.3048), ["distance in ft taken as m"]),
        ["speed: mph as km/h"] = ((day, _, _) => Rates(day, 0.62137), ["mph taken as km/h"]),
        ["gauges swapped"] = ((day, _, _) => Each(day, Swap), ["swapped"]),
        ["stops of another car"] = ((day, file, random) => OtherDay(file, random), ["another car"]),
        ["one stop: psi as bar"] = ((day, _, random) => One(day, random, stop => Pressures(stop, PoundsPerBar)), ["#", "psi under [bar]"]),
        ["one stop: gauges swapped"] = (OneSwapped, ["#"]),
        ["one stop: an outlier"] = ((day, _, random) => One(day, random, stop => Wild(stop, random)), ["#"]),
        ["front gauge drifts"] = ((day, _, random) => Drift(day, random, front: true), ["front gauge gains"]),
        ["rear gauge drifts"] = ((day, _, random) => Drift(day, random, front: false), ["rear gauge gains"]),
        ["rear read on release"] = (Hysteresis, ["hysteresis"]),
        ["sign of the deceleration"] = ((day, _, _) => Rates(day, -1), ["sign"]),
    };

    private static readonly double PoundsPerBar = 14.5038;

    private static List<TestStop> Each(List<TestStop> day, Func<TestStop, TestStop> of) => [.. day.Select(of)];

    private static List<TestStop> Rates(List<TestStop> day, double factor) =>
        Each(day, stop => stop with { Deceleration = stop.Deceleration * factor });

    private static TestStop Pressures(TestStop stop, double factor) => stop with
    {
        FrontPressure = stop.FrontPressure * factor,
        RearPressure = stop.RearPressure * factor,
        LockPressure = stop.LockPressure * factor,
    };

    private static TestStop Swap(TestStop stop) => stop with { FrontPressure = stop.RearPressure, RearPressure = stop.FrontPressure };

    private static List<TestStop> One(List<TestStop> day, Random random, Func<TestStop, TestStop> of)
    {
        int[] even = [.. day.Index().Where(stop => stop.Item.Deceleration is not null).Select(stop => stop.Index)];
        int at = even[random.Next(even.Length)];
        return [.. day.Select((stop, i) => i == at ? of(stop) with { PedalForce = Force.FromNewtons(1) } : stop)];
    }

    // Swapped gauges show only where the two differ.
    private static List<TestStop> OneSwapped(List<TestStop> day, Vehicle file, Random random)
    {
        (int at, TestStop hard) = day.Index().Where(stop => stop.Item.Deceleration is not null)
            .MaxBy(stop => stop.Item.FrontPressure!.Value.Bars - stop.Item.RearPressure!.Value.Bars);
        return [.. day.Select((stop, i) => i == at ? Swap(hard) with { PedalForce = Force.FromNewtons(1) } : stop)];
    }

    private static TestStop Wild(TestStop stop, Random random)
    {
        double factor = random.Next(2) == 0 ? Between(random, 1.5, 3) : 1 / Between(random, 1.5, 3);
        return random.Next(3) switch
        {
            0 => stop with { Deceleration = stop.Deceleration * factor },
            1 => stop with { FrontPressure = stop.FrontPressure * factor },
            _ => stop with { RearPressure = stop.RearPressure * factor },
        };
    }

    private static List<TestStop> Drift(List<TestStop> day, Random random, bool front)
    {
        double bars = Between(random, 8, 14) * (random.Next(2) == 0 ? 1 : -1);
        Pressure? Moved(Pressure? read, int i) =>
            read is { } pressure ? Pressure.FromBars(Math.Max(0.1, pressure.Bars + bars * i / (day.Count - 1))) : null;
        return [.. day.Select((stop, i) => front
            ? stop with { FrontPressure = Moved(stop.FrontPressure, i), LockPressure = Moved(stop.LockPressure, i) }
            : stop with { RearPressure = Moved(stop.RearPressure, i) })];
    }

    private static List<TestStop> Hysteresis(List<TestStop> day, Vehicle file, Random random)
    {
        double bars = Between(random, 4, 8);
        return Each(day, stop => stop with
        {
            RearPressure = Pressure.FromBars(Math.Min(stop.FrontPressure!.Value.Bars, stop.RearPressure!.Value.Bars + bars)),
        });
    }

    // A car that brakes at least a third harder or a quarter softer at the same pressures than the file's.
    private static List<TestStop> OtherDay(Vehicle file, Random random)
    {
        while (true)
        {
            double heavier = Math.Exp(Between(random, -0.6, 0.6));
            Vehicle other = Car(random);
            other = other with { LoadCases = [.. other.LoadCases.Select(load => load with { Mass = heavier * load.Mass })] };
            double ratio = Rate(other) / Rate(file);
            if (ratio is > 1.4 or < 0.7)
            {
                return [.. Day(other, True(other, random), random).Select(stop => stop with { Turns =
                    file.Hydraulics.RearProportioningValve?.Adjustment is null ? null : stop.Turns ?? 1 })];
            }
        }

        static double Rate(Vehicle car) => new BalanceModel(car, car.LoadCases[0]).StateAt(30e5).BrakingRate;
    }

    [Fact]
    public void Clean_days_are_doubted_at_most_once_in_fifty()
    {
        string[] told = new string[CleanDays];
        Parallel.For(0, CleanDays, i =>
        {
            Random random = RandomNumbers.Stream(900, i);
            Vehicle file = Car(random, valve: i % 8 != 0);
            told[i] = string.Join(' ', Doubts(file, Day(file, True(file, random), random)));
        });
        string[] alarms = [.. told.Where(words => words.Length > 0)];
        output.WriteLine($"{alarms.Length} of {CleanDays}\n" + string.Join('\n', alarms));
        Assert.InRange(alarms.Length, 0, CleanDays / 50);
    }

    /// <summary>The names of the kinds.</summary>
    public static TheoryData<string> Names => [.. Kinds.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Nonsense_is_noticed_on_every_car_and_named_on_nine_of_ten(string kind)
    {
        (Func<List<TestStop>, Vehicle, Random, List<TestStop>> spoil, string[] named) = Kinds[kind];
        var seen = new (bool Noticed, bool Named, bool First, string Words)[Cars];
        Parallel.For(0, Cars, i =>
        {
            Random random = RandomNumbers.Stream(7000, i);
            Vehicle file = Car(random);
            List<TestStop> day = spoil(Day(file, True(file, random), random), file, random);
            string marked = string.Concat(day.Where(stop => stop.PedalForce is not null).Select(stop => $"(line {stop.Line})"));
            string words = string.Join(' ', Doubts(file, day));
            string[] wanted = [.. named.Select(name => name == "#" ? marked : name)];
            string likeliest = words.Split(" Or: ")[0];
            seen[i] = (words.Length > 0, wanted.All(name => words.Contains(name, StringComparison.Ordinal)),
                wanted.All(name => likeliest.Contains(name, StringComparison.Ordinal)), words);
        });
        output.WriteLine($"{kind,-36} noticed {seen.Count(s => s.Noticed) / (double)Cars,6:0.0 %}  "
            + $"named {seen.Count(s => s.Named) / (double)Cars,6:0.0 %}  "
            + $"named first {seen.Count(s => s.First) / (double)Cars,6:0.0 %}");
        foreach (string words in seen.Where(s => !s.Named).Select(s => s.Words).Take(4))
        {
            output.WriteLine("    " + words);
        }

        Assert.InRange(seen.Count(s => s.Noticed), 0.95 * Cars, Cars);
        Assert.InRange(seen.Count(s => s.Named), 0.9 * Cars, Cars);
    }
}
