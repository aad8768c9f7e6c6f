using System.Globalization;
using System.Text;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Days;

/// <summary>
/// Simulated days on random cars: the plan as it stands beside the stop that is worth most each time, both of as many stops. How wide the
/// setting's interval is after each, and how often the rear locks first on the way.
/// </summary>
internal static class NextStopDays
{
    /// <summary>One car's two days.</summary>
    /// <param name="Start">Width of the setting's interval before the first stop, in the setting's own unit.</param>
    /// <param name="Plan">Width after each stop of the plan, over that at the start [–].</param>
    /// <param name="OneByOne">The same of the stops chosen one by one.</param>
    /// <param name="WorstProposed">Highest predicted chance of rear-first of a stop proposed, over the level.</param>
    /// <param name="RearFirst">Stops, of those proposed, in which the rear did lock first.</param>
    /// <param name="RearFirstPlanned">The same of the plan.</param>
    /// <param name="Log">What was done, stop by stop.</param>
    internal sealed record Outcome(
        double Start, double[] Plan, double[] OneByOne, double WorstProposed, int RearFirst, int RearFirstPlanned, string Log);

    /// <summary>Both days of one car.</summary>
    public static Outcome? Of(int seed, int number)
    {
        Random random = RandomNumbers.Stream(seed, number);
        Vehicle file = RandomCars.Car(random, valve: number % 8 != 0), car = RandomCars.True(file, random);
        SurfaceCondition[] roads = RandomCars.Roads(random);
        var options = new EstimationOptions { Surfaces = [.. roads.Select(road => SurfaceCondition.Typical(road.Name))] };
        TestStop Made(InventedTrack track, TestStop stop) => track.Stop(
            car.LoadCase(stop.LoadCase!), roads.First(road => road.Name == stop.Surface), stop.FrontPressure!.Value,
            stop.InitialSpeed!.Value, stop.Turns);
        CarEstimate before = CarEstimation.Estimate(file, [], options);
        IReadOnlyList<PlannedStop> plan = TestPlanner.Make(before).Stops;
        if (plan.Count == 0)
        {
            return null;
        }

        int trackSeed = random.Next();
        var track = new InventedTrack(car, trackSeed);
        List<TestStop> made = [];
        List<double> widths = [];
        foreach (PlannedStop planned in plan)
        {
            made.Add(Made(track, new TestStop
            {
                LoadCase = planned.LoadCase,
                Surface = planned.Surface,
                FrontPressure = planned.TargetPressure,
                InitialSpeed = planned.Speed,
                Turns = planned.Turns,
            }));
            widths.Add(Width(CarEstimation.Estimate(file, made, options)));
        }

        int plannedRear = made.Count(stop => stop.Locked == FirstLock.Rear);
        double start = Width(before), worst = 0;
        track = new InventedTrack(car, trackSeed);
        made = [];
        List<double> chosen = [];
        CarEstimate estimate = before;
        var log = new StringBuilder();
        while (made.Count < plan.Count && NextTest.Of(estimate) is { Candidates: [CandidateStop next, ..] } answer)
        {
            worst = Math.Max(worst, next.RearFirst / answer.Level);
            made.Add(Made(track, next.Stop));
            estimate = CarEstimation.Estimate(file, made, options);
            chosen.Add(Width(estimate));
            log.Append(CultureInfo.InvariantCulture, $"  {next.Stop.LoadCase,-12} {next.Stop.Surface} ")
                .Append(CultureInfo.InvariantCulture, $"{next.Stop.FrontPressure!.Value.Bars:0} bar ")
                .Append(CultureInfo.InvariantCulture, $"turns {next.Stop.Turns} lock {next.Lock:0.00} rear {next.RearFirst:0.000} ")
                .Append(CultureInfo.InvariantCulture, $"left {next.WidthLeft:0.000}: {made[^1].Locked}, {chosen[^1] / start:0.000}\n");
        }

        return new Outcome(start, [.. widths.Select(width => width / start)], [.. chosen.Select(width => width / start)], worst,
            made.Count(stop => stop.Locked == FirstLock.Rear), plannedRear, log.ToString());
    }

    /// <summary>
    /// Of the plan's number of stops, the part after which the mean width (geometric, over the cars) of the stops chosen one by one is down
    /// to that at the end of the plan [–]; 1 when it never is.
    /// </summary>
    public static double PartNeeded(IReadOnlyList<Outcome> cars)
    {
        double wanted = cars.Average(car => Math.Log(car.Plan[^1]));
        for (int part = 1; part < 100; part++)
        {
            if (MeanLog(cars, part / 100.0) <= wanted)
            {
                return part / 100.0;
            }
        }

        return 1;
    }

    /// <summary>Mean over the cars of the logarithm of the width after a part of the plan's number of stops, chosen one by one.</summary>
    public static double MeanLog(IReadOnlyList<Outcome> cars, double part) => cars.Average(car =>
        (int)Math.Floor(part * car.Plan.Length + 1e-9) is > 0 and int count && car.OneByOne.Length > 0
            ? Math.Log(car.OneByOne[Math.Min(count, car.OneByOne.Length) - 1]) : 0);

    private static double Width(CarEstimate estimate)
    {
        NextStops answer = NextTest.Known(estimate);
        return answer.Knee is { } knee ? (knee.High - knee.Low).Bars
            : answer.FrontForceShare!.Value.High - answer.FrontForceShare.Value.Low;
    }
}
