using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

public class CarEstimationTests
{
    /// <summary>An invented coupe with front discs, duo-servo rear drums and an adjustable valve.</summary>
    internal static Vehicle Coupe { get; } = new()
    {
        Name = "Invented coupe",
        Wheelbase = Length.FromMeters(2.9),
        LoadCases =
        [
            new LoadCase { Name = "driver only", Mass = Mass.FromKilograms(1700), FrontAxleToCentreOfGravity = Length.FromMeters(2.9 * 0.44), CentreOfGravityHeight = Length.FromMeters(0.55) },
            new LoadCase { Name = "laden", Mass = Mass.FromKilograms(2050), FrontAxleToCentreOfGravity = Length.FromMeters(2.9 * 0.5), CentreOfGravityHeight = Length.FromMeters(0.57) },
        ],
        Tyres = new(new Tyre { LoadedRadius = Length.FromMeters(0.32) }, new Tyre { LoadedRadius = Length.FromMeters(0.32) }),
        Brakes = new(
            new DiscBrake { FrictionCoefficient = 0.38, Pistons = PistonSet.OneSide([Length.FromMillimeters(74.7)]), EffectiveRadius = Length.FromMillimeters(118), ThresholdPressure = Pressure.FromBars(0.5) },
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
            RearValves = [new ProportioningValve { Knee = Pressure.FromBars(24), Slope = 0.35, Adjustment = new KneeAdjustment { KneeFullyOut = Pressure.FromBars(8), KneePerTurn = Pressure.FromBars(8), Turns = 6 } }],
        },
    };

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    private static Vehicle Scaled(Vehicle vehicle, double front, double rear, double height) => vehicle.WithFrictionFactors(front, rear) with
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
            var random = new Random(seed + i);
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

    [Theory]
    [InlineData(0.0, false)]
    [InlineData(0.0, true)]
    public void Ninety_percent_intervals_hold_the_truth_in_85_to_95_percent_of_days(double outliers, bool notes)
    {
        (Dictionary<string, int> held, int days) = Recover(240, 31_000, outliers, notes);
        Assert.Equal(5, held.Count);
        Assert.All(held, h => Assert.True(h.Value >= 0.85 * days && h.Value <= 0.95 * days, $"{string.Join(", ", held)}"));
    }
}
