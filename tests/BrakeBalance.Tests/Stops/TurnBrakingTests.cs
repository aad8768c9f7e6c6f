using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class TurnBrakingTests
{
    private static Acceleration G(double value) => Acceleration.FromStandardGravity(value);

    [Fact]
    public void Straight_on_it_is_the_steady_lock_pressure()
    {
        TurnLock straight = TurnBraking.FirstLock(Coupe(), G(0), 0.55, Speed.Zero)!;
        Assert.Equal(LockPressure.Lowest(Coupe(), Speed.Zero)!.Value.LinePressure.Bars, straight.LinePressure.Bars, 1e-6);
        Assert.Equal(straight.InnerUtilisation.Front, straight.OuterUtilisation.Front, 12);
        Assert.Equal(Axle.Front, straight.Axle);
    }

    [Fact]
    public void In_a_bend_an_inner_wheel_is_first()
    {
        Assert.Equal(BendSide.Inner, TurnBraking.FirstLock(Coupe(), G(0.5), 0.55, Speed.Zero)!.Side);
        TurnLock rear = TurnBraking.FirstLock(RearFirst(), G(0.5), 0.4, Speed.Zero)!;
        Assert.Equal((Axle.Rear, BendSide.Inner), (rear.Axle, rear.Side));
    }

    [Fact]
    public void A_stiffer_front_roll_bar_can_move_the_first_lock_from_the_rear_to_the_front()
    {
        BrakedCar close = Coupe(rearTorque: 1850);
        Assert.Equal(Axle.Rear, TurnBraking.FirstLock(close, G(0.45), 0.2, Speed.Zero)!.Axle);
        Assert.Equal(Axle.Front, TurnBraking.FirstLock(close, G(0.45), 0.8, Speed.Zero)!.Axle);
    }

    [Fact]
    public void A_bend_beyond_the_tyres_has_no_answer()
    {
        SlipCurve wet = PublishedSlipCurves.WetAsphalt.ScaledToPeak(0.5, Force.FromKilonewtons(4));
        Assert.Null(TurnBraking.FirstLock(Coupe(wet), G(0.6), 0.55, Speed.Zero));
    }

    [Property(MaxTest = 100)]
    public Property More_cornering_never_leaves_more_braking() => Prop.ForAll(
        Gen.Choose(0, 80).Zip(Gen.Choose(20, 80)).ToArbitrary(),
        drawn =>
        {
            double lateral = drawn.Item1 / 100.0;
            TurnLock? less = TurnBraking.FirstLock(Coupe(), G(lateral), drawn.Item2 / 100.0, Speed.Zero);
            TurnLock? more = TurnBraking.FirstLock(Coupe(), G(lateral + 0.02), drawn.Item2 / 100.0, Speed.Zero);
            return more is null || (less is not null && more.BrakingRate <= less.BrakingRate + 1e-9 && Largest(less) > 0.999);
        });

    private static double Largest(TurnLock turn) => new[]
    {
        turn.InnerUtilisation.Front, turn.InnerUtilisation.Rear, turn.OuterUtilisation.Front, turn.OuterUtilisation.Rear,
    }.Max();
}
