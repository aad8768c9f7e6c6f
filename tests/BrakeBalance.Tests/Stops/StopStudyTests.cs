using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

public class StopStudyTests
{
    private static Vehicle Car(double frontShare) => TestCars.FixedShare(frontShare, 2.5, 1.2, 0.5);

    [Fact]
    public void The_same_seed_gives_the_same_stops_and_progress_reaches_the_end()
    {
        var plan = new StopStudyPlan { Stops = 600, Seed = 7 };
        int furthest = 0;
        StopStudyResult first = StopStudy.Run(Car(0.7), plan, new Told(done => furthest = Math.Max(furthest, done)));
        StopStudyResult second = StopStudy.Run(Car(0.7), plan);
        Assert.Equal(first.Stops, second.Stops);
        Assert.Equal(600, furthest);
        Assert.NotEqual(first.Stops, StopStudy.Run(Car(0.7), plan with { Seed = 8 }).Stops);
    }

    [Fact]
    public void A_car_with_too_much_rear_braking_locks_its_rear_first_and_one_with_little_never()
    {
        var plan = new StopStudyPlan { Stops = 300 };
        Assert.Equal(0, StopStudy.Run(Car(0.9), plan).RearFirstShare);
        Assert.Equal(1, StopStudy.Run(Car(0.45), plan).RearFirstShare);
        double between = StopStudy.Run(Car(0.62), plan).RearFirstShare;
        Assert.InRange(between, 0.05, 0.95);
    }

    [Fact]
    public void Without_spread_the_distances_are_those_of_single_stops()
    {
        Vehicle car = Car(0.7);
        var plan = new StopStudyPlan
        {
            Stops = 3,
            LowestAdhesion = 0.8,
            HighestAdhesion = 0.8,
            FrictionSpread = 0,
            RiseTime = Duration.FromSeconds(0.25),
        };
        StopSetup setup = StopSetup.From(car, car.LoadCases[0], 0.8, BrakeBalance.Tyres.PublishedSlipCurves.DryAsphalt);
        double single = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, plan.InitialSpeed).Distance.Meters;
        StopStudyResult study = StopStudy.Run(car, plan);
        Assert.All(study.Stops, s => Assert.Equal(single, s.DistanceMetres, 0.01));
        Assert.Equal(single, study.DistanceQuantile(0.5).Meters, 0.01);
    }

    [Fact]
    public void A_study_can_be_ended_early()
    {
        using var ended = new CancellationTokenSource();
        ended.Cancel();
        Assert.Throws<OperationCanceledException>(() => StopStudy.Run(Car(0.7), new StopStudyPlan(), null, ended.Token));
        Assert.Throws<ArgumentOutOfRangeException>(() => new StopStudyPlan { Stops = 0 });
    }

    private sealed class Told(Action<int> tell) : IProgress<int>
    {
        private readonly Lock _lock = new();

        public void Report(int value)
        {
            lock (_lock)
            {
                tell(value);
            }
        }
    }
}
