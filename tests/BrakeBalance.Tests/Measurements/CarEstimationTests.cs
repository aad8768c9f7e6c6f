using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

[Collection(SpeedCollection.Name)]
public class CarEstimationTests
{
    /// <summary>An invented coupe with front discs, duo-servo rear drums and an adjustable valve.</summary>
    internal static Vehicle Coupe { get; } = new()
    {
        Name = "Invented coupe",
        Wheelbase = Length.FromMeters(2.9),
        LoadCases =
        [
            new LoadCase
            {
                Name = "driver only",
                Mass = Mass.FromKilograms(1700),
                FrontAxleToCentreOfGravity = Length.FromMeters(2.9 * 0.44),
                CentreOfGravityHeight = Length.FromMeters(0.55),
            },
            new LoadCase
            {
                Name = "laden",
                Mass = Mass.FromKilograms(2050),
                FrontAxleToCentreOfGravity = Length.FromMeters(2.9 * 0.5),
                CentreOfGravityHeight = Length.FromMeters(0.57),
            },
        ],
        Tyres = new(new Tyre { LoadedRadius = Length.FromMeters(0.32) }, new Tyre { LoadedRadius = Length.FromMeters(0.32) }),
        Brakes = new(
            new DiscBrake
            {
                FrictionCoefficient = 0.38,
                Pistons = PistonSet.OneSide([Length.FromMillimeters(74.7)]),
                EffectiveRadius = Length.FromMillimeters(118),
                ThresholdPressure = Pressure.FromBars(0.5),
            },
            new DrumBrake
            {
                FrictionCoefficient = 0.38,
                Arrangement = ShoeArrangement.DuoServo,
                WheelCylinderDiameter = Length.FromMillimeters(22.2),
                EffectiveRadius = Length.FromMillimeters(127),
                Shoes = CatalogueShoes.Typical(ShoeArrangement.DuoServo),
                ThresholdPressure = Pressure.FromBars(4),
            }),
        Hydraulics = new BrakeHydraulics
        {
            RearValves = [new ProportioningValve { Knee = Pressure.FromBars(24), Slope = 0.35,
                Adjustment = new KneeAdjustment { KneeBackedOff = Pressure.FromBars(8), KneePerTurn = Pressure.FromBars(8), Turns = 6 } }],
        },
    };

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static Vehicle Scaled(Vehicle vehicle, double front, double rear, double height) =>
        vehicle.WithFrictionFactors(front, rear) with
        {
            LoadCases = [.. vehicle.LoadCases.Select(l => l with { CentreOfGravityHeight = l.CentreOfGravityHeight * height })],
        };

    /// <summary>A day of stops: easy and firm ones, then to lock-up on a dry and a wet surface, in two load cases.</summary>
    internal static List<TestStop> Day(InventedTrack track, SurfaceCondition dry, SurfaceCondition wet, bool notes = false)
    {
        List<TestStop> stops = [];
        foreach (LoadCase load in track.Car.LoadCases)
        {
            foreach (double bars in (double[])[12, 20, 28, 36])
            {
                stops.Add(track.Stop(load, dry, Pressure.FromBars(bars), Speed.FromKilometersPerHour(50), 2));
            }

            foreach (double turns in (double[])[1, 3])
            {
                stops.Add(track.Stop(load, dry, Pressure.FromBars(80), Speed.FromKilometersPerHour(60), turns, notes));
                stops.Add(track.Stop(load, wet, Pressure.FromBars(55), Speed.FromKilometersPerHour(40), turns, notes));
                stops.Add(track.Stop(load, dry, Pressure.FromBars(48), Speed.FromKilometersPerHour(60), turns, notes));
                stops.Add(track.Stop(load, wet, Pressure.FromBars(24), Speed.FromKilometersPerHour(40), turns, notes));
            }
        }

        return stops;
    }

    private static (Dictionary<string, int> Held, int Days) Recover(int days, int seed, double outliers, bool notes)
    {
        Dictionary<string, int> held = [];
        SurfaceCondition dryBelief = SurfaceCondition.Typical("dry"), wetBelief = SurfaceCondition.Typical("wet");
        Parallel.For(0, days, i =>
        {
            Random random = RandomNumbers.Stream(seed, i);
            double front = Math.Exp(0.1 * Normal(random)), rear = Math.Exp(0.1 * Normal(random)), height = Math.Exp(0.05 * Normal(random));
            SurfaceCondition dry = dryBelief with { Adhesion = dryBelief.Adhesion * Math.Exp(dryBelief.Spread * Normal(random)) };
            SurfaceCondition wet = wetBelief with { Adhesion = wetBelief.Adhesion * Math.Exp(wetBelief.Spread * Normal(random)) };
            var track = new InventedTrack(Scaled(Coupe, front, rear, height), seed + 100_000 + i) { Outliers = outliers };
            CarEstimate estimate = CarEstimation.Estimate(Coupe, Day(track, dry, wet, notes));
            double[] truth = [0.38 * front, 0.38 * rear, 0.55 * height, dry.Adhesion, wet.Adhesion];
            foreach ((EstimatedParameter p, double t) in estimate.Parameters.Zip(truth))
            {
                lock (held)
                {
                    held[p.Name] = held.GetValueOrDefault(p.Name) + (p.Posterior.Low <= t && t <= p.Posterior.High ? 1 : 0);
                }
            }
        });
        return (held, days);
    }

    [Fact]
    public void Ninety_percent_intervals_hold_the_truth_in_85_to_95_percent_of_days()
    {
        (Dictionary<string, int> held, int days) = Recover(220, 31_000, 0, notes: false);
        Assert.Equal(5, held.Count);
        Assert.InRange(held.Values.Sum() / (5.0 * days), 0.85, 0.95);
        // A single parameter's count scatters by two points in this many days.
        Assert.All(held, h => Assert.True(h.Value >= 0.83 * days && h.Value <= 0.97 * days, $"{string.Join(", ", held)}"));
    }

    [Fact]
    public void With_pressures_noted_at_lock_up_and_a_tenth_of_wrong_decelerations_the_truth_is_still_held()
    {
        (Dictionary<string, int> held, int days) = Recover(60, 52_000, 0.1, notes: true);
        Assert.All(held, h => Assert.True(h.Value >= 0.78 * days, $"{string.Join(", ", held)}"));
    }

    // Held beyond the lock the car does what the road allows: the load on the rear axle, and with it the valve's knee, is of the slide.
    [Fact]
    public void Stops_held_beyond_the_lock_are_of_the_car_also_where_its_valve_senses_the_load()
    {
        Vehicle car = VehicleFile.Read(StarterFile.Text("vacuum", "disc", "load-sensing"), "starter").Vehicle;
        for (int i = 0; i < 8; i++)
        {
            var track = new InventedTrack(car.WithFrictionFactors(1 + (0.02 * (i - 4)), 1.08 - (0.02 * i)), 40 + i);
            List<TestStop> day = Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet"));
            day.AddRange(car.LoadCases.Select(load => track.Stop(
                load, SurfaceCondition.Typical("dry"), Pressure.FromBars(110), Speed.FromKilometersPerHour(60))));
            Assert.Contains(day, stop => stop is { Locked: not FirstLock.None, FrontPressure.Bars: > 100 });
            Assert.Empty(CarEstimation.Estimate(car, day).Doubts);
        }
    }

    [Fact]
    public void Chains_and_weighted_draws_agree()
    {
        var track = new InventedTrack(Scaled(Coupe, 0.95, 1.05, 1.02), 9);
        CarEstimate estimate = CarEstimation.Estimate(Coupe, Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")),
            new EstimationOptions { CheckSteps = 6000 });
        Assert.True(estimate.ChainsAgree);
        Assert.InRange(estimate.DifferenceFromChains!.Value, 0, 0.35);
    }

    [Fact]
    public void Two_hundred_stops_are_fitted_within_a_second()
    {
        var track = new InventedTrack(Coupe, 3);
        List<TestStop> stops = [];
        while (stops.Count < 200)
        {
            stops.AddRange(Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")));
        }

        CarEstimation.Estimate(Coupe, stops.Take(20));
        double best = Enumerable.Range(0, 3)
            .Min(_ => SpeedCollection.ProcessorSeconds(() => CarEstimation.Estimate(Coupe, stops.Take(200))));

        // A second on two cores is two of processor time; half as much again for the unoptimised build and a busy machine's caches.
        Assert.True(best < 3, $"{best:0.00} s of processor time");
    }

    [Fact]
    public void Without_lock_ups_front_and_rear_friction_are_said_not_to_be_told_apart()
    {
        var track = new InventedTrack(Coupe, 3);
        TestStop[] stops = [.. Enumerable.Range(0, 12)
            .Select(i => track.Stop(Coupe.LoadCases[0], SurfaceCondition.Typical("dry"), Pressure.FromBars(18),
            Speed.FromKilometersPerHour(50)))];
        CarEstimate estimate = CarEstimation.Estimate(Coupe, stops);
        Assert.Contains(estimate.Identifiability, w =>
            w.Contains("Front friction and rear friction cannot be told apart") && w.Contains("torque wrench"));
        Assert.Contains(estimate.Identifiability, w =>
            w.Contains("next to nothing about") && w.Contains("height of the centre of gravity"));
    }

    [Fact]
    public void What_the_stops_tell_well_is_not_said_to_be_indistinguishable_from_another_that_they_tell_well()
    {
        var track = new InventedTrack(Coupe, 3);
        TestStop[] stops = [.. Enumerable.Range(0, 40).Select(i => track.Stop(Coupe.LoadCases[0],
            SurfaceCondition.Typical(i % 4 == 3 ? "wet" : "dry"), Pressure.FromBars(i % 4 == 0 ? 80 : 14 + (i % 20)),
            Speed.FromKilometersPerHour(50), notesLockPressure: true))];
        CarEstimate estimate = CarEstimation.Estimate(Coupe, stops);
        string[] well = [.. estimate.Parameters.Where(p => p.Learnt > 0.5).Select(p => p.Name)];
        Assert.Contains("front friction", well);
        Assert.Contains("adhesion, dry", well);
        Assert.All(estimate.Identifiability.Where(w => w.Contains("cannot be told apart")), w =>
            Assert.False(well.Count(name => w.StartsWith(name, StringComparison.OrdinalIgnoreCase)
                || w.Contains($" and {name} cannot", StringComparison.Ordinal)) > 1, w));
    }

    [Fact]
    public void Stops_that_cannot_be_used_are_named_with_line_and_reason()
    {
        TestStop[] stops =
        [
            new TestStop { Line = 4, PedalForce = Force.FromNewtons(200), Deceleration = Acceleration.FromMetersPerSecondSquared(5) },
            new TestStop
            {
                Line = 5,
                FrontPressure = Pressure.FromBars(20),
                Deceleration = Acceleration.FromMetersPerSecondSquared(5),
                LoadCase = "three up",
            },
            new TestStop
            {
                Line = 6,
                FrontPressure = Pressure.FromBars(60),
                Deceleration = Acceleration.FromMetersPerSecondSquared(7),
                Locked = FirstLock.Front,
            },
        ];
        CarEstimate estimate = CarEstimation.Estimate(Coupe, stops);
        Assert.Equal(1, estimate.StopsUsed);
        Assert.Equal([4, 5, 6], estimate.NotUsed.Select(p => p.Line));
        Assert.Contains("no line pressure", estimate.NotUsed[0].Reason);
        Assert.Contains("\"three up\"", estimate.NotUsed[1].Reason);
        Assert.Contains("deceleration was not used", estimate.NotUsed[2].Reason);
    }

    [Fact]
    public void The_same_stops_give_the_same_estimate()
    {
        List<TestStop> stops = Day(new InventedTrack(Coupe, 3), SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet"));
        Assert.Equal(CarEstimation.Estimate(Coupe, stops).Parameters.Select(p => p.Posterior),
            CarEstimation.Estimate(Coupe, stops).Parameters.Select(p => p.Posterior));
    }

    [Fact]
    public void The_estimated_car_brakes_as_the_stops_did()
    {
        var track = new InventedTrack(Scaled(Coupe, 0.9, 1.06, 1), 12)
        {
            FrictionScatter = 0.002,
            DecelerationScatter = 0.002,
            AdhesionScatter = 0.01,
            GaugeScatter = Pressure.FromBars(0.05),
        };
        CarEstimate estimate = CarEstimation.Estimate(Coupe,
            Day(track, SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet"), notes: true));
        Vehicle found = estimate.Apply();
        Assert.Equal(0.38 * 0.9, found.Brakes.Front.FrictionCoefficient, 0.012);
        Assert.Equal(0.38 * 1.06, found.Brakes.Rear.FrictionCoefficient, 0.012);
        Assert.Equal(0.88, estimate.AdhesionOn("dry")!.Value.Estimate, 0.03);
        Assert.Null(estimate.AdhesionOn("ice"));
    }

    [Fact]
    public void Stops_of_a_car_whose_front_line_is_limited_are_estimated_too()
    {
        Vehicle limited = Coupe with
        {
            Hydraulics = Coupe.Hydraulics with
            {
                FrontValves = [
            new LimitingValve { Limit = Pressure.FromBars(50) }]
            }
        };
        TestStop Stop(double front, double rear, FirstLock locked) => new()
        {
            FrontPressure = Pressure.FromBars(front),
            RearPressure = Pressure.FromBars(rear),
            LockPressure = Pressure.FromBars(front),
            Locked = locked,
            Surface = "dry",
            LoadCase = "driver only",
        };
        TestStop[] stops = [Stop(49.5, 25, FirstLock.Front), Stop(50.2, 27, FirstLock.Front), Stop(50.5, 28, FirstLock.Rear)];
        var model = new StopModel(limited, stops, new EstimationOptions());
        Assert.True(double.IsFinite(model.NegativeLog(model.PriorMean)));
        CarEstimate estimate = CarEstimation.Estimate(limited, stops);
        Assert.Equal(3, estimate.StopsUsed);
        Assert.All(estimate.Parameters, p =>
            Assert.True(double.IsFinite(p.Posterior.Low) && double.IsFinite(p.Posterior.High) && p.Posterior.Low < p.Posterior.High));
    }
}
