using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>How the lines change in a minute while the pedal is held, each with its 90 % interval.</summary>
/// <param name="FrontFall">Fall of the front line pressure in a minute; negative when it rises.</param>
/// <param name="RearFall">Fall of the rear line pressure in a minute; negative when it rises.</param>
/// <param name="Creep">
/// Rise of the rear line pressure in a minute beyond what the valve passes on of the front's: the valve's creep.
/// </param>
/// <param name="Holds">How many holds were read.</param>
/// <remarks>
/// A straight line in time for each hold, its readings weighed by Student's t; holds are averaged by their weights. With the front line
/// held a rear line that rises is a valve that creeps; a line that falls leaks.
/// </remarks>
public sealed record HeldLines(Interval<Pressure> FrontFall, Interval<Pressure> RearFall, Interval<Pressure> Creep, int Holds)
{
    private const double ShortestSeconds = 10;

    internal static HeldLines? Of(IReadOnlyList<GaugePair> pairs, double passedOn, double scatterBars)
    {
        List<(Interval<double> Front, Interval<double> Rear, Interval<double> Creep)> found = [];
        for (int i = 0; i < pairs.Count;)
        {
            GaugePair[] hold = [.. pairs.Skip(i).TakeWhile(pair =>
                pair is { Phase: PressurePhase.Hold, Time: not null } && pair.Turns == pairs[i].Turns)];
            i += Math.Max(1, hold.Length);
            if (hold.Length < 3 || (hold[^1].Time - hold[0].Time)!.Value.Seconds < ShortestSeconds)
            {
                continue;
            }

            double[] minutes = [.. hold.Select(pair => (pair.Time - hold[0].Time)!.Value.Minutes)];
            Interval<double> Rise(Func<GaugePair, double> of, double width)
            {
                double[][] rows = [.. minutes.Select(m => new[] { 1, m })];
                double[] noise = [.. minutes.Select(_ => width)];
                (Vector<double> line, Matrix<double> spread, _, _) = RearLineCheck.Robust(rows, [.. hold.Select(of)], noise, [1e3, 1e3]);
                double error = Math.Sqrt(spread[1, 1]);
                double half = LeastSquares.HalfWidth90(hold.Length - 2) * error;
                return new(line[1], line[1] - half, line[1] + half);
            }

            found.Add((Rise(pair => -pair.Front.Bars, scatterBars), Rise(pair => -pair.Rear.Bars, scatterBars),
                Rise(pair => pair.Rear.Bars - passedOn * pair.Front.Bars, scatterBars * Math.Sqrt(1 + passedOn * passedOn))));
        }

        Interval<Pressure> Mean(Func<(Interval<double> Front, Interval<double> Rear, Interval<double> Creep), Interval<double>> of)
        {
            double[] weights = [.. found.Select(hold => 1 / Math.Pow(of(hold).High - of(hold).Low, 2))];
            double mean = found.Zip(weights, (hold, weight) => weight * of(hold).Estimate).Sum() / weights.Sum();
            double half = 0.5 / Math.Sqrt(weights.Sum());
            return new Interval<double>(mean, mean - half, mean + half).Select(bars => Pressure.FromBars(bars));
        }

        return found.Count == 0 ? null : new HeldLines(
            FrontFall: Mean(hold => hold.Front),
            RearFall: Mean(hold => hold.Rear),
            Creep: Mean(hold => hold.Creep),
            Holds: found.Count);
    }
}
