using BrakeBalance.Measurements;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

public class TestPlanTests
{
    private static readonly EstimationOptions Options =
        new()
        {
            Surfaces = [SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")],
            Prior = new ParameterSpread { FrontFriction = 0.06, RearFriction = 0.04 }
        };

    private static readonly CarEstimate Before = CarEstimation.Estimate(CarEstimationTests.Coupe, [], Options);

    [Fact]
    public void Without_stops_the_estimate_is_what_was_believed()
    {
        Assert.Equal(0, Before.StopsUsed);
        Assert.Equal(5, Before.Parameters.Count);
        Assert.All(Before.Parameters, p => Assert.Equal(p.Prior.Estimate, p.Posterior.Estimate, 0.03 * p.Prior.Estimate));
    }

    [Fact]
    public void A_plan_begins_slow_and_light_with_least_rear_braking()
    {
        TestPlan plan = TestPlanner.Make(Before);
        Assert.True(plan.Stops.Count >= 10);
        Assert.Equal(Enumerable.Range(1, plan.Stops.Count), plan.Stops.Select(s => s.Number));
        Assert.Equal("driver only", plan.Stops[0].LoadCase);
        Assert.Equal(30, plan.Stops[0].Speed.KilometersPerHour, 6);
        Assert.All(plan.Stops, s => Assert.Equal(0, s.Turns));
        Assert.All(plan.Stops, s => Assert.InRange(s.RearFirst, 0, NextTest.HighestRearFirst));
        Assert.All(plan.Stops, s => Assert.NotEmpty(s.AbortIf));
        Assert.Contains(plan.Cautions, c => c.Contains("Closed ground only"));
    }

    [Fact]
    public void The_sheet_filled_in_is_read_back()
    {
        TestPlan plan = TestPlanner.Make(Before);
        string[] lines = plan.ToCsv().Split('\n');
        int first = Array.FindIndex(lines, l => l.StartsWith("1;", StringComparison.Ordinal));
        lines[first] = lines[first].Replace(";;;;;;;", ";17.5;17.1;;0.34;none;80;clean");
        LogReading<TestStop> log = LogReader.ReadTestStops(new StringReader(string.Join('\n', lines)));
        TestStop stop = Assert.Single(log.Rows);
        Assert.Equal(17.5, stop.FrontPressure!.Value.Bars, 6);
        Assert.Equal("driver only", stop.LoadCase);
        Assert.Equal(0, stop.Turns);
        Assert.Equal(FirstLock.None, stop.Locked);
        // The stops not made yet are named as such, and no column of the sheet is unknown.
        Assert.Equal(plan.Stops.Count - 1, log.Problems.Count);
        Assert.All(log.Problems, p => Assert.Contains("neither a deceleration nor", p.Reason));
    }

    [Fact]
    public void What_was_measured_often_is_worth_less_to_measure_again()
    {
        var track = new InventedTrack(CarEstimationTests.Coupe, 5);
        TestStop firm = new()
        {
            LoadCase = "driver only",
            Surface = "dry",
            FrontPressure = Pressure.FromBars(20),
            InitialSpeed = Speed.FromKilometersPerHour(50),
            Turns = 0,
        };
        IEnumerable<TestStop> made = Enumerable.Range(0, 15)
            .Select(_ => track.Stop(CarEstimationTests.Coupe.LoadCases[0], SurfaceCondition.Typical("dry"), Pressure.FromBars(20),
            Speed.FromKilometersPerHour(50), 0));
        CarEstimate after = CarEstimation.Estimate(CarEstimationTests.Coupe, made, Options);
        Assert.True(NextTest.Rank(Before, [firm])[0].Bits > 1.5 * NextTest.Rank(after, [firm])[0].Bits);
    }

    [Fact]
    public void Candidates_are_ranked_and_none_is_likely_to_lock_the_rear_first()
    {
        IReadOnlyList<CandidateStop> ranked = NextTest.Rank(Before);
        Assert.NotEmpty(ranked);
        Assert.All(ranked, c => Assert.InRange(c.RearFirst, 0, NextTest.HighestRearFirst));
        Assert.All(ranked.Zip(ranked.Skip(1)), pair => Assert.True(pair.First.KneeNarrowed >= pair.Second.KneeNarrowed));
        Assert.All(ranked, c => Assert.InRange(c.KneeNarrowed, 0, 1));
    }

    [Fact]
    public void The_best_stop_made_often_narrows_the_knee()
    {
        CandidateStop best = NextTest.Rank(Before)[0];
        var track = new InventedTrack(CarEstimationTests.Coupe, 6);
        SurfaceCondition surface = SurfaceCondition.Typical(best.Stop.Surface!);
        IEnumerable<TestStop> made = Enumerable.Range(0, 12)
            .Select(_ => track.Stop(CarEstimationTests.Coupe.LoadCase(best.Stop.LoadCase!), surface, best.Stop.FrontPressure!.Value,
            best.Stop.InitialSpeed!.Value, best.Stop.Turns));
        CarEstimate after = CarEstimation.Estimate(CarEstimationTests.Coupe, made, Options);
        static double Spread(CarEstimate e)
        {
            Interval<double> band = e.Posterior.Interval(e.Model.LogRearForTogether);
            return band.High - band.Low;
        }

        Assert.True(Spread(after) < 0.95 * Spread(Before), $"{Spread(Before)} {Spread(after)}");
    }
}
