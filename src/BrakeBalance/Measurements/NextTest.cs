using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Tells which safe stop would teach most.</summary>
/// <remarks>
/// <para>For each candidate the draws of the posterior foretell deceleration and lock-up. Information: mutual information of the lock
/// event with the draws, plus
/// ½ log₂(1 + V/σ²) for the deceleration where nothing locks, V the variance of its logarithm over the draws. The knee for equal
/// lock-up (on the first surface, first
/// load case) shrinks by the variance between the draws that each outcome speaks for.</para>
/// <para>Only stops whose chance of a rear-first lock-up is small are offered. Assumes the model; it is no licence to make a stop.</para>
/// </remarks>
public static class NextTest
{
    /// <summary>Highest chance of a rear-first lock-up of a stop that is offered [–]; our choice.</summary>
    public const double HighestRearFirst = 0.05;

    private const int Draws = 400;

    /// <summary>Ranks the safe candidates.</summary>
    /// <param name="estimate">What is known so far; an estimate from no stops serves before the first.</param>
    /// <param name="candidates">Candidates; null for a list made from the car's load cases, the surfaces and a ladder of pressures.</param>
    /// <returns>The safe candidates, the one that narrows the knee most first.</returns>
    public static IReadOnlyList<CandidateStop> Rank(CarEstimate estimate, IEnumerable<TestStop>? candidates = null)
    {
        Vector<double>[] draws =
            [.. Enumerable.Range(0, Draws).Select(i => estimate.Posterior.Draws[(int)((long)i * estimate.Posterior.Draws.Length / Draws)])];
        double[] knee = [.. draws.Select(d => estimate.Model.LogRearForTogether(d))];
        return [.. (candidates ?? Usual(estimate)).Select(stop => Judge(estimate, stop, draws, knee))
            .Where(c => c.RearFirst <= HighestRearFirst)
            .OrderByDescending(c => c.KneeNarrowed).ThenByDescending(c => c.Bits)

            // Below the knee and the limit, surface and adjuster make no difference: one such stop stands for all.
            .DistinctBy(c => (c.Stop.LoadCase, c.Stop.FrontPressure, Math.Round(c.KneeNarrowed, 6)))];
    }

    private static IEnumerable<TestStop> Usual(CarEstimate estimate)
    {
        Vehicle vehicle = estimate.Model.Vehicle;
        double?[] adjusters = vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } screw
            ? [0, Math.Min(1, screw.Turns), Math.Min(2, screw.Turns)] : [null];
        foreach (LoadCase load in vehicle.LoadCases)
        {
            foreach ((SurfaceCondition surface, double? turns) in estimate.Model.Surfaces.SelectMany(s => adjusters.Select(t => (s, t))))
            {
                for (double bars = 10; bars <= 70; bars += 10)
                {
                    yield return new TestStop
                    {
                        LoadCase = load.Name,
                        Surface = surface.Name,
                        FrontPressure = Pressure.FromBars(bars),
                        InitialSpeed = Speed.FromKilometersPerHour(bars < 30 ? 40 : 50),
                        Turns = turns,
                    };
                }
            }
        }
    }

    private static CandidateStop Judge(CarEstimate estimate, TestStop stop, Vector<double>[] draws, double[] knee)
    {
        StopModel.Stop prepared = estimate.Model.Prepare(stop with { Locked = FirstLock.Front }, out string? reason)
            ?? throw new ArgumentException($"A candidate stop cannot be judged: {reason}.", nameof(stop));
        (double LogRate, double None, double Front, double Rear)[] shown = [.. draws.Select(d => estimate.Model.Predict(prepared, d))];
        double none = shown.Average(s => s.None), front = shown.Average(s => s.Front), rear = shown.Average(s => s.Rear);
        double ofEvent = Entropy(none, front, rear) - shown.Average(s => Entropy(s.None, s.Front, s.Rear));

        // A stop that locks gives no deceleration, so only the draws in which nothing locks tell of one.
        double weight = Math.Max(1e-9, shown.Sum(s => s.None));
        double mean = shown.Sum(s => s.None * s.LogRate) / weight;
        double variance = shown.Sum(s => s.None * (s.LogRate - mean) * (s.LogRate - mean)) / weight;
        double noise = draws.Average(d => estimate.Model.RateVariance(prepared, d));
        double bits = ofEvent + none * 0.5 * Math.Log2(1 + variance / noise);
        double[] rates = [.. shown.Select(s => Math.Exp(s.LogRate)).Order()];
        return new CandidateStop
        {
            Stop = stop,
            BrakingRate = new Interval<double>(rates[rates.Length / 2], rates[rates.Length / 20], rates[^(rates.Length / 20 + 1)]),
            Lock = front + rear,
            RearFirst = rear,
            Bits = Math.Max(0, bits),
            KneeNarrowed = Narrowed(knee, shown, none, variance, noise, mean),
        };
    }

    private static double Narrowed(double[] knee, (double LogRate, double None, double Front, double Rear)[] shown, double none,
        double variance, double noise, double mean)
    {
        double middle = knee.Average(), all = knee.Average(k => (k - middle) * (k - middle));
        if (all < 1e-12)
        {
            return 0;
        }

        double Between(Func<(double LogRate, double None, double Front, double Rear), double> chance)
        {
            double weight = shown.Sum(chance);
            double there = weight > 1e-9 ? shown.Zip(knee, (s, k) => chance(s) * k).Sum() / weight : middle;
            return weight / shown.Length * (there - middle) * (there - middle);
        }

        double fromEvent = (Between(s => s.None) + Between(s => s.Front) + Between(s => s.Rear)) / all;
        double covariance = shown.Zip(knee, (s, k) => s.None * (s.LogRate - mean) * (k - middle))
            .Sum() / Math.Max(1e-9, shown.Sum(s => s.None));
        double fromRate = none * covariance * covariance / ((variance + noise) * all);
        return Math.Clamp(1 - (1 - fromEvent) * (1 - Math.Min(1, fromRate)), 0, 1);
    }

    private static double Entropy(params ReadOnlySpan<double> chances)
    {
        double sum = 0;
        foreach (double p in chances)
        {
            sum -= p > 0 ? p * Math.Log2(p) : 0;
        }

        return sum;
    }
}
