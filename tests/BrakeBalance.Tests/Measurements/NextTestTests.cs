using BrakeBalance.Days;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;
using Xunit.Abstractions;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The stop to make next: worth most, safe, and approached from the safe side.</summary>
[Collection(SpeedCollection.Name)]
public class NextTestTests(ITestOutputHelper output)
{
    private static readonly EstimationOptions Options =
        new() { Surfaces = [SurfaceCondition.Typical("dry"), SurfaceCondition.Typical("wet")] };

    private static readonly Vehicle Coupe = CarEstimationTests.Coupe;

    private static readonly CarEstimate Before = CarEstimation.Estimate(Coupe, [], Options);

    private static TestStop Firm(FirstLock locked = FirstLock.None, double turns = 0) => new()
    {
        LoadCase = "driver only",
        Surface = "dry",
        FrontPressure = Pressure.FromBars(20),
        InitialSpeed = Speed.FromKilometersPerHour(50),
        Turns = turns,
        Locked = locked,
    };

    private static double Width(CarEstimate estimate)
    {
        Interval<Pressure> knee = NextTest.Known(estimate).Knee!.Value;
        return (knee.High - knee.Low).Bars;
    }

    [Fact]
    public void On_random_cars_one_by_one_takes_at_least_30_per_cent_fewer_stops_than_the_plan_and_stays_below_the_level()
    {
        var cars = new NextStopDays.Outcome?[Cars];
        Parallel.For(0, cars.Length, i => cars[i] = NextStopDays.Of(11, i));
        NextStopDays.Outcome[] done = [.. cars.OfType<NextStopDays.Outcome>()];
        double part = NextStopDays.PartNeeded(done);
        output.WriteLine($"{done.Length} cars, same width after {part:0 %} of the stops, "
            + $"worst chance {done.Max(car => car.WorstProposed):0.000} of the level");
        Assert.InRange(done.Length, Cars - 2, Cars);
        Assert.InRange(part, 0, 0.7);
        Assert.All(done, car => Assert.InRange(car.WorstProposed, 0, 1));
        Assert.InRange(done.Sum(car => car.RearFirst) / (double)done.Sum(car => car.OneByOne.Length), 0, 0.02);
    }

    private const int Cars = 8;

    [Fact]
    public void The_first_stop_has_the_adjuster_fully_out_and_no_lock_up_to_expect()
    {
        NextStops next = NextTest.Of(Before);
        Assert.NotEmpty(next.Candidates);
        Assert.All(next.Candidates, c => Assert.Equal(0, c.Stop.Turns));
        Assert.All(next.Candidates, c => Assert.False(c.IsToLockUp));
        Assert.All(next.Candidates, c => Assert.InRange(c.WidthLeft, 0, 1));
    }

    [Theory]
    [InlineData(-7, 23.5, "setting back: none low enough to 23.5 bar (90 %).")]
    [InlineData(-9, -2, "setting back: none low enough (90 %).")]
    [InlineData(4, 23.5, "setting back: 4 bar to 23.5 bar (90 %).")]
    public void No_knee_is_told_below_zero(double low, double high, string words)
    {
        NextStops next = NextTest.Of(Before);
        var knee = new Interval<Pressure>(Pressure.FromBars((low + high) / 2), Pressure.FromBars(low), Pressure.FromBars(high));
        Assert.EndsWith(words, NextStopWords.Caption(next with { Knee = knee }, UnitSystem.Si)[0].Replace('\u00a0', ' '));
    }

    [Fact]
    public void The_adjuster_comes_in_by_a_quarter_of_its_range_at_most_and_stays_out_where_the_rear_locked_first()
    {
        static double Furthest(params TestStop[] made) =>
            NextTest.Of(CarEstimation.Estimate(Coupe, made, Options)).Candidates.Max(c => c.Stop.Turns!.Value);
        Assert.InRange(Furthest(Firm()), 0, 1.5);
        Assert.InRange(Furthest(Firm(), Firm(turns: 1.5)), 0.5, 3);
        IReadOnlyList<CandidateStop> after = NextTest.Of(CarEstimation.Estimate(
            Coupe, [Firm(), Firm(turns: 1.5), Firm(FirstLock.Rear, 1.5)], Options)).Candidates;
        Assert.All(after.Where(c => c.Stop.Turns >= 1.5), c => Assert.InRange(c.Lock, 0, Coupe.Conditions.RearFirstChance));
    }

    [Theory]
    [InlineData(0.005)]
    [InlineData(0.02)]
    [InlineData(0.05)]
    public void No_stop_is_offered_above_the_level_of_the_cars_conditions(double level)
    {
        Vehicle car = Coupe with { Conditions = Coupe.Conditions with { RearFirstChance = level } };
        NextStops next = NextTest.Of(CarEstimation.Estimate(car, [Firm(), Firm(turns: 1.5)], Options));
        Assert.Equal(level, next.Level);
        Assert.All(next.Candidates, c => Assert.InRange(c.RearFirst, 0, level));
        Assert.NotEmpty(next.Candidates);
    }

    [Fact]
    public void Lift_at_the_rear_counts_at_the_speed_at_which_the_stop_begins()
    {
        static CarEstimate Lifted(double area) => CarEstimation.Estimate(
            Coupe with
            {
                Aerodynamics = new Aerodynamics
                {
                    DragArea = Area.FromSquareMeters(0.7),
                    FrontLiftArea = Area.FromSquareMeters(0),
                    RearLiftArea = Area.FromSquareMeters(area),
                }
            }, [], Options);
        TestStop hard = Firm(turns: 3) with { FrontPressure = Pressure.FromBars(60), InitialSpeed = Speed.FromKilometersPerHour(160) };
        double slow = NextTest.Outlook(Lifted(0.5), hard with { InitialSpeed = Speed.FromKilometersPerHour(20) }).RearFirst;
        Assert.True(NextTest.Outlook(Lifted(0.5), hard).RearFirst > slow);

        // Pressed down at speed, the rear locks first at the end of the stop.
        Assert.Equal(slow, NextTest.Outlook(Lifted(-0.5), hard).RearFirst, 0.05);
    }

    [Fact]
    public void What_was_measured_often_is_worth_less_to_measure_again()
    {
        var track = new InventedTrack(Coupe, 5);
        TestStop[] made = [.. Enumerable.Range(0, 15).Select(_ =>
            track.Stop(Coupe.LoadCases[0], SurfaceCondition.Typical("dry"), Pressure.FromBars(20), Speed.FromKilometersPerHour(50), 0))];
        CarEstimate after = CarEstimation.Estimate(Coupe, made, Options);
        Assert.DoesNotContain(NextTest.Of(after).Candidates.Take(3), c => c.Stop.Turns == 0
            && c.Stop.FrontPressure!.Value.Bars is > 16 and < 24 && c.Stop.Surface == "dry" && c.Stop.LoadCase == "driver only");
    }

    [Fact]
    public void The_width_foretold_is_on_average_the_width_that_comes()
    {
        double foretold = 0, came = 0;
        CarEstimate now = Before;
        var track = new InventedTrack(Coupe, 6);
        List<TestStop> made = [];
        for (int i = 0; i < 12; i++)
        {
            CandidateStop next = NextTest.Of(now).Candidates[0];
            made.Add(track.Stop(Coupe.LoadCase(next.Stop.LoadCase!), SurfaceCondition.Typical(next.Stop.Surface!),
                next.Stop.FrontPressure!.Value, next.Stop.InitialSpeed!.Value, next.Stop.Turns));
            CarEstimate then = CarEstimation.Estimate(Coupe, made, Options);
            foretold += Math.Log(next.WidthLeft);
            came += Math.Log(Width(then) / Width(now));
            now = then;
        }

        Assert.True(came < 0.5 * foretold && came > 1.6 * foretold, $"{foretold:0.000} {came:0.000}");
    }

    [Fact]
    public void A_balance_bar_is_answered_as_a_share_and_a_car_in_one_position_has_no_turns()
    {
        Vehicle bar = Coupe with
        {
            Hydraulics = new BrakeHydraulics
            {
                Split = new BalanceBarSplit
                {
                    FrontBore = Length.FromMillimeters(19),
                    RearBore = Length.FromMillimeters(19),
                    FrontForceShare = 0.7,
                },
            },
        };
        NextStops next = NextTest.Of(CarEstimation.Estimate(bar, [], Options));
        Assert.Null(next.Knee);
        Assert.InRange(next.FrontForceShare!.Value.Estimate, 0.3, 0.95);
        Assert.All(next.Candidates, c => Assert.Null(c.Stop.Turns));
        Assert.NotEmpty(next.Candidates);
    }
}
