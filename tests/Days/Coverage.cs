using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Days;

/// <summary>Where the truth lies within what an estimate says of it, on simulated days of random cars.</summary>
internal static class Coverage
{
    /// <summary>Seed of the days of the posted table.</summary>
    public const int Seed = 1;

    /// <summary>Days in a row of the posted table.</summary>
    public const int Block = 50;

    /// <summary>What is estimated: the parameters of the model, and the setting that follows.</summary>
    public static readonly string[] Quantities =
    [
        "front friction", "rear friction", "height of the centre of gravity", "adhesion of the dry road", "adhesion of the wet road",
        "setting",
    ];

    /// <summary>Share of the posterior below the truth, for each quantity: an interval of 90 % holds what lies from 0.05 to 0.95.</summary>
    public static double[] Day(int seed, int day)
    {
        Random random = RandomNumbers.Stream(seed, day);
        Vehicle file = RandomCars.Car(random, valve: day % 8 != 0), car = RandomCars.True(file, random);
        SurfaceCondition[] roads = RandomCars.Roads(random);

        // Planned with what is believed of the roads: pressures that knew their adhesion would tell more than a day can.
        SurfaceCondition[] believed = [.. roads.Select(road => SurfaceCondition.Typical(road.Name))];
        CarEstimate estimate = CarEstimation.Estimate(file, RandomCars.Day(file, car, roads, believed, random));
        var target = new SettingTarget(estimate);
        Vector<double> truth = estimate.Model.PriorMean.Clone();
        truth[0] = Math.Log(car.Brakes.Front.FrictionCoefficient / file.Brakes.Front.FrictionCoefficient);
        truth[1] = Math.Log(car.Brakes.Rear.FrictionCoefficient / file.Brakes.Rear.FrictionCoefficient);
        truth[2] = Math.Log(car.LoadCases[0].CentreOfGravityHeight / file.LoadCases[0].CentreOfGravityHeight);
        foreach ((int i, SurfaceCondition surface) in estimate.Model.Surfaces.Index())
        {
            truth[3 + i] = Math.Log(roads.First(road => road.Name == surface.Name).Adhesion);
        }

        double Below(Func<Vector<double>, double> of)
        {
            double there = of(truth);
            return estimate.Posterior.Draws.Average(draw => of(draw) < there ? 1.0 : 0);
        }

        int Place(string name) => 3 + estimate.Model.Surfaces.Index().First(s => s.Item.Name == name).Index;
        return [Below(d => d[0]), Below(d => d[1]), Below(d => d[2]), Below(d => d[Place("dry")]), Below(d => d[Place("wet")]),
            Below(target.At)];
    }

    /// <summary>Of how many days in a row an interval of 90 % holds each quantity.</summary>
    public static int[] Held(int seed, int first, int days, int threads)
    {
        var ranks = new double[days][];
        Parallel.For(0, days, new ParallelOptions { MaxDegreeOfParallelism = threads }, i => ranks[i] = Day(seed, first + i));
        return [.. Quantities.Select((_, q) => ranks.Count(day => day[q] is >= 0.05 and <= 0.95))];
    }

    /// <summary>The posted table, in one thread: blocks of days, so that a part of it can be made again.</summary>
    public static void Write(int days, int seed, Action<string> line)
    {
        line("# Intervals of 90 % against the truth: of so many simulated days in a row, on how many each interval held it.");
        line(FormattableString.Invariant(
            $"# Source: this program; made by 'BrakeBalance.Benchmarks -- coverage {days} {seed}' (tests/Days/Coverage.cs):"));
        line("# every day another random car that differs from its file as cars do, 20 stops in two load cases on two roads. "
            + "Invented, no measurement.");
        line("first day,days," + string.Join(',', Quantities));
        for (int first = 0; first < days; first += Block)
        {
            int count = Math.Min(Block, days - first);
            line(FormattableString.Invariant($"{first},{count},") + string.Join(',', Held(seed, first, count, 1)));
        }
    }
}
