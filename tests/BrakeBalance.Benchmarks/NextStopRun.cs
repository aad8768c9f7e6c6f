using System.Globalization;
using BrakeBalance.Days;

namespace BrakeBalance.Benchmarks;

/// <summary>How many stops the one-by-one order needs against the plan as it stands, over random cars.</summary>
internal static class NextStopRun
{
    public static void Write(int cars, int seed, Action<string> line)
    {
        List<NextStopDays.Outcome> all = [];
        for (int i = 0; i < cars; i++)
        {
            if (NextStopDays.Of(seed, i) is { } outcome)
            {
                all.Add(outcome);
                line(string.Create(CultureInfo.InvariantCulture, $"{i}: width {outcome.Start:0.000}, "
                    + $"after the plan {outcome.Plan[^1]:0.000} of it, one by one {string.Join(' ', outcome.OneByOne.Select(Two))}, "
                    + $"worst predicted chance {outcome.WorstProposed:0.00} of the level, "
                    + $"rear first {outcome.RearFirst} (plan {outcome.RearFirstPlanned})"));
                if (Environment.GetEnvironmentVariable("NEXT_LOG") is not null)
                {
                    line(outcome.Log);
                }
            }
        }

        static string Two(double width) => width.ToString("0.00", CultureInfo.InvariantCulture);
        line(string.Create(CultureInfo.InvariantCulture, $"{all.Count} of {cars} cars, seed {seed}, "
            + $"{all.Average(o => o.Plan.Length):0.0} stops a plan. "
            + $"Mean width left after the plan {Math.Exp(all.Average(o => Math.Log(o.Plan[^1]))):0.000}; one by one after 50, 70 and "
            + $"100 % as many stops {Left(0.5):0.000}, {Left(0.7):0.000}, {Left(1):0.000}. "
            + $"Same width after {NextStopDays.PartNeeded(all):0 %} of the stops; "
            + $"highest predicted chance of rear-first {all.Max(o => o.WorstProposed):0.00} of the level; rear first in "
            + $"{all.Sum(o => o.RearFirst)} of {all.Sum(o => o.OneByOne.Length)} stops (plan {all.Sum(o => o.RearFirstPlanned)} of "
            + $"{all.Sum(o => o.Plan.Length)})"));
        double Left(double part) => Math.Exp(NextStopDays.MeanLog(all, part));
    }
}
