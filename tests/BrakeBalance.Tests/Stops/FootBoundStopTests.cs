using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

public class FootBoundStopTests
{
    private static readonly Vehicle Coupe = VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles",
        "coupe-1960s.json")).Vehicle;
    private static readonly Vehicle Unassisted = Coupe with { Control = Coupe.Control! with { Assist = new NoAssist() } };

    private static StopResult Stop(StopSetup setup) => StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp,
        Speed.FromKilometersPerHour(100));

    [Fact]
    public void Without_assist_the_coupe_stops_as_hard_as_the_foot_can_and_says_so()
    {
        StopSetup setup = StopSetup.From(Unassisted, Unassisted.LoadCases[0], 0.9);
        FailureOutcome summary = FailureAnalysis.Of(Unassisted, Unassisted.LoadCases[0])[0];
        Assert.Equal(RateBound.Foot, summary.Bound);
        Assert.Equal(0.556, summary.RateAtForce, 5e-4);
        Assert.Equal(summary.MasterPressure.Pascals, setup.EmergencyPressure.Pascals, 1e-6 * summary.MasterPressure.Pascals);
        Assert.Equal((StopBound.Foot, 500.0), (setup.EmergencyBound, setup.PedalForce!.Value.Newtons));

        // The balance leaves out what the wheels' inertia takes; drag is gone near the end.
        StopResult stop = Stop(setup);
        Assert.Equal(StopBound.Foot, stop.Bound);
        Assert.Null(stop.FirstLock);
        double wheels = setup.Car.Axles.Front.WheelInertia.KilogramSquareMeters / Math.Pow(setup.Car.Axles.Front.LoadedRadius.Meters, 2)
            + setup.Car.Axles.Rear.WheelInertia.KilogramSquareMeters / Math.Pow(setup.Car.Axles.Rear.LoadedRadius.Meters, 2);
        StopSample slow = stop.Trace.Last(s => s.SpeedMetresPerSecond > 3);
        double rate = slow.DecelerationMetresPerSecondSquared * (1 + wheels / setup.Car.Mass.Kilograms)
            / Gravity.StandardMetresPerSecondSquared;
        Assert.Equal(summary.RateAtForce, rate, 2e-3 * rate);
        Assert.Equal(summary.Distance!.FromFirstTouch.Meters, stop.Distance.Meters, 0.05 * stop.Distance.Meters);
    }

    [Fact]
    public void The_force_of_the_conditions_comes_before_that_of_the_file_and_that_before_500_newtons()
    {
        Vehicle strong = Unassisted with { Control = Unassisted.Control! with { Foot = new() { Emergency = Force.FromNewtons(900) } } };
        StopSetup Of(Vehicle car, Force? force = null) => StopSetup.From(car, car.LoadCases[0], 0.9,
            conditions: new() { PedalForce = force });
        Assert.Equal(900, Of(strong).PedalForce!.Value.Newtons);
        Assert.Equal(700, Of(strong, Force.FromNewtons(700)).PedalForce!.Value.Newtons);
        Assert.Contains("force of the foot in an emergency stop 500 N (112 lbf)", Of(Unassisted).Assumptions);
        Assert.DoesNotContain("force of the foot in an emergency stop 500 N (112 lbf)", Of(strong).Assumptions);
        Assert.True(Of(strong).EmergencyPressure > Of(Unassisted).EmergencyPressure * 1.7);
        Assert.Throws<ArgumentException>(() => Of(Unassisted, Force.FromNewtons(10)));
    }

    [Fact]
    public void A_stop_in_which_an_axle_locks_is_bound_by_the_road()
    {
        Assert.Equal(StopBound.Road, Stop(StopSetup.From(Coupe, Coupe.LoadCases[0], 0.3)).Bound);
        StopSetup setup = StopSetup.From(Coupe, Coupe.LoadCases[0], 0.5);
        Speed speed = Speed.FromKilometersPerHour(80);
        Assert.Equal(StopBound.Road, StraightStop.Run(setup.Car, setup.Threshold, setup.BuildUp, speed).Bound);
        Assert.Equal(StopBound.Road, StraightStop.Run(setup.Car, setup.Antilock, setup.BuildUp, speed).Bound);
    }

    [Fact]
    public void A_threshold_driver_presses_no_harder_than_the_foot_can()
    {
        StopSetup setup = StopSetup.From(Unassisted, Unassisted.LoadCases[0], 0.9);
        StopResult threshold = StraightStop.Run(setup.Car, setup.Threshold, setup.BuildUp, Speed.FromKilometersPerHour(100));
        Assert.Equal(setup.EmergencyPressure, threshold.HeldPressure);
        Assert.Equal(StopBound.Foot, threshold.Bound);
    }

    [Fact]
    public void A_pedal_at_its_end_bounds_the_stop_at_the_pressure_where_it_ends()
    {
        var shortPedal = Coupe.Control!.Pedal with { AvailableTravel = Length.FromMillimeters(60) };
        Vehicle spongy = Coupe with { Control = Coupe.Control with { Pedal = shortPedal } };
        StopSetup setup = StopSetup.From(spongy, spongy.LoadCases[0], 0.9);
        Assert.Equal(StopBound.Travel, setup.EmergencyBound);
        var control = new ControlForce(new BalanceModel(spongy, spongy.LoadCases[0]));
        Assert.True(control.TravelAt(setup.EmergencyPressure * 0.999)!.Reaches);
        Assert.False(control.TravelAt(setup.EmergencyPressure * 1.001)!.Reaches);
        Assert.Equal(StopBound.Travel, Stop(setup).Bound);
    }

    [Fact]
    public void A_car_whose_pedal_is_not_known_holds_the_highest_pressure_and_says_so()
    {
        Vehicle bare = Coupe with { Control = null };
        StopSetup setup = StopSetup.From(bare, bare.LoadCases[0], 0.9);
        Assert.Equal((bare.Hydraulics.MaximumPressure, StopBound.HighestPressure), (setup.EmergencyPressure, setup.EmergencyBound));
        Assert.Contains(setup.Assumptions, a => a.StartsWith("full pressure held at 140 bar", StringComparison.Ordinal));
    }
}
