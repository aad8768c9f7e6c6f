using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
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
        Assert.All(plan.Stops, s => Assert.InRange(s.RearFirst, 0, CarEstimationTests.Coupe.Conditions.RearFirstChance));
        Assert.All(plan.Stops, s => Assert.NotEmpty(s.AbortIf(UnitSystem.Si)));
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
    public void The_sheet_in_the_other_units_says_every_pressure_in_them_and_is_read_back()
    {
        string text = TestPlanner.Make(Before).ToCsv(UnitSystem.Us);
        Assert.Contains("target pressure [psi]", text);
        Assert.DoesNotMatch("[0-9] bar|\\[bar\\]", text);
        string[] lines = text.Split('\n');
        int first = Array.FindIndex(lines, l => l.StartsWith("1;", StringComparison.Ordinal));
        lines[first] = lines[first].Replace(";;;;;;;", ";250;240;;0.34;none;180;clean");
        TestStop stop = Assert.Single(LogReader.ReadTestStops(new StringReader(string.Join('\n', lines))).Rows);
        Assert.Equal(250, stop.FrontPressure!.Value.PoundsForcePerSquareInch, 6);
        Assert.Equal(19, stop.InitialSpeed!.Value.MilesPerHour, 6);
    }

    [Fact]
    public void A_stop_is_called_above_the_knee_only_where_the_valve_holds_the_rear_back()
    {
        const string above = "above the knee";
        Assert.Contains(TestPlanner.Make(Before).Stops, stop => stop.Purpose.Contains(above, StringComparison.Ordinal));
        foreach (BrakeHydraulics lines in new[]
        {
            new BrakeHydraulics(),
            new BrakeHydraulics { RearValves = [new ProportioningValve { Knee = Pressure.FromBars(90), Slope = 0.3 }] },
        })
        {
            TestPlan plan = TestPlanner.Make(CarEstimation.Estimate(CarEstimationTests.Coupe.WithFrictionFactors(1, 0.4) with
            {
                Hydraulics = lines,
            }, [], Options));
            Assert.True(plan.Stops.Count >= 10);
            Assert.DoesNotContain(plan.Stops, stop => stop.Purpose.Contains(above, StringComparison.Ordinal));
            Assert.Contains(plan.Stops, stop => stop.Purpose.StartsWith("harder stop without lock-up", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_adjuster_is_spoken_of_only_where_there_is_one()
    {
        Vehicle fixedValve = CarEstimationTests.Coupe with
        {
            Hydraulics = new BrakeHydraulics { RearValves = [new ProportioningValve { Knee = Pressure.FromBars(8), Slope = 0.35 }] },
        };
        string Words(Vehicle car) =>
            string.Join(' ', NextStopWords.Caption(NextTest.Of(CarEstimation.Estimate(car, [], Options)), UnitSystem.Si));
        Assert.Contains("the adjuster comes in from fully out", Words(CarEstimationTests.Coupe), StringComparison.Ordinal);
        Assert.DoesNotContain("adjuster", Words(fixedValve), StringComparison.Ordinal);
    }
}
