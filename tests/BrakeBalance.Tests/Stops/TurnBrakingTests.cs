using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;
using static BrakeBalance.Tests.Stops.Cars;

namespace BrakeBalance.Tests.Stops;

public class TurnBrakingTests
{
    private static Acceleration G(double value) => Acceleration.FromStandardGravity(value);

    private static Vehicle Read(string name) =>
        VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", name + ".json")).Vehicle;

    private static TurnLock? First(BrakedCar car, Acceleration lateral, double frontRollShare, Speed speed) =>
        TurnBraking.Follow(car, lateral, frontRollShare, speed)?.FirstWheel;

    [Fact]
    public void Straight_on_it_is_the_steady_lock_pressure()
    {
        TurnLock straight = First(Coupe(), G(0), 0.55, Speed.Zero)!;
        Assert.Equal(LockPressure.Lowest(Coupe(), Speed.Zero)!.Value.LinePressure.Bars, straight.LinePressure.Bars, 1e-6);
        Assert.Equal(straight.InnerUtilisation.Front, straight.OuterUtilisation.Front, 12);
        Assert.Equal(Axle.Front, straight.Axle);
    }

    [Fact]
    public void In_a_bend_an_inner_wheel_is_first()
    {
        Assert.Equal(BendSide.Inner, First(Coupe(), G(0.5), 0.55, Speed.Zero)!.Side);
        TurnLock rear = First(RearFirst(), G(0.5), 0.4, Speed.Zero)!;
        Assert.Equal((Axle.Rear, BendSide.Inner), (rear.Axle, rear.Side));
    }

    [Fact]
    public void A_stiffer_front_roll_bar_can_move_the_first_lock_from_the_rear_to_the_front()
    {
        BrakedCar close = Coupe(rearTorque: 1850);
        Assert.Equal(Axle.Rear, First(close, G(0.45), 0.2, Speed.Zero)!.Axle);
        Assert.Equal(Axle.Front, First(close, G(0.45), 0.8, Speed.Zero)!.Axle);
    }

    [Fact]
    public void A_bend_beyond_the_tyres_has_no_answer()
    {
        SlipCurve wet = PublishedSlipCurves.WetAsphalt.ScaledToPeak(0.5, Force.FromKilonewtons(4));
        Assert.Null(First(Coupe(wet), G(0.6), 0.55, Speed.Zero));
    }

    [Property(MaxTest = 100)]
    public Property More_cornering_never_leaves_more_braking() => Prop.ForAll(
        Gen.Choose(0, 80).Zip(Gen.Choose(20, 80)).ToArbitrary(),
        drawn =>
        {
            double lateral = drawn.Item1 / 100.0;
            TurnLock? less = First(Coupe(), G(lateral), drawn.Item2 / 100.0, Speed.Zero);
            TurnLock? more = First(Coupe(), G(lateral + 0.02), drawn.Item2 / 100.0, Speed.Zero);
            return more is null || (less is not null && more.BrakingRate <= less.BrakingRate + 1e-9 && Largest(less) > 0.999);
        });

    [Fact]
    public void A_sliding_inner_rear_wheel_is_not_yet_a_spin()
    {
        // The inner rear wheel goes first; the outer one alone still holds the rear, and the axle is lost only later.
        TurnCourse course = TurnBraking.Follow(RearFirst(), G(0.2), 0.4, Speed.Zero)!;
        Assert.Equal((Axle.Rear, BendSide.Inner), (course.FirstWheel!.Axle, course.FirstWheel.Side));
        Assert.Equal(Axle.Rear, course.FirstAxle!.Axle);
        Assert.True(course.FirstAxle.LinePressure > 1.02 * course.FirstWheel.LinePressure);
        Assert.True(course.FirstWheel.SideForceLeft.Rear > course.SideForceNeeded.Rear);
        Assert.Equal(course.SideForceNeeded.Rear.Newtons, course.FirstAxle.SideForceLeft.Rear.Newtons, 1);
    }

    [Fact]
    public void The_axle_that_lets_go_need_not_be_that_of_the_first_wheel()
    {
        // Soft front, stiff rear in roll: the inner rear wheel carries next to nothing and slides early, yet the front axle runs wide
        // first.
        TurnCourse course = TurnBraking.Follow(Coupe(), G(0.55), 0.2, Speed.Zero)!;
        Assert.Equal(Axle.Rear, course.FirstWheel!.Axle);
        Assert.Equal(Axle.Front, course.FirstAxle!.Axle);
        Assert.True(course.FirstAxle.SideForceLeft.Rear > course.SideForceNeeded.Rear);
    }

    [Theory]
    [InlineData(1400, 0.3, 0.55)]
    [InlineData(1400, 0.55, 0.2)]
    [InlineData(2600, 0.4, 0.7)]
    [InlineData(2000, 0.6, 0.5)]
    public void Wheels_and_axles_let_go_where_a_march_in_small_steps_says(double rearTorque, double lateral, double share)
    {
        // An oracle as plain as a textbook: pressure in steps of 0.01 bar, loads by iteration, one list of wheels, no code shared.
        const double weight = 1700 * 9.80665, h = 0.55, e = 2.9, track = 1.45, radius = 0.32, peak = 0.9, slide = 0.9 / 1.170025 * 0.76;
        double[] side = [weight * lateral * 0.56, weight * lateral * 0.44];
        double[] torque = [50, rearTorque / 100];
        double[] part = [share, 1 - share];
        bool[,] slides = new bool[2, 2];
        (double Bar, int Axle)? wheel = null, axle = null;
        for (double bar = 0; axle is null; bar += 0.01)
        {
            double[,] load = new double[2, 2];
            double force = 0;
            for (int k = 0; k < 40; k++)
            {
                double[] on = [weight * 0.56 + h / e * force, weight * 0.44 - h / e * force];
                force = 0;
                for (int i = 0; i < 2; i++)
                {
                    double across = part[i] * weight * lateral * h / track;
                    load[i, 0] = Math.Max(0, on[i] / 2 - across);
                    load[i, 1] = on[i] - load[i, 0];
                    force += (slides[i, 0] ? slide * load[i, 0] : torque[i] * bar / radius / 2)
                        + (slides[i, 1] ? slide * load[i, 1] : torque[i] * bar / radius / 2);
                }
            }

            for (int i = 0; i < 2; i++)
            {
                double rolling = (slides[i, 0] ? 0 : load[i, 0]) + (slides[i, 1] ? 0 : load[i, 1]);
                for (int j = 0; j < 2; j++)
                {
                    double y = side[i] * load[i, j] / rolling;
                    if (!slides[i, j] && Math.Sqrt(Math.Pow(torque[i] * bar / radius / 2, 2) + y * y) >= peak * load[i, j])
                    {
                        slides[i, j] = true;
                        wheel ??= (bar, i);
                        bar -= 0.01;
                        i = j = 2;
                    }
                }

                if (i < 2 && slides[i, 0] && slides[i, 1])
                {
                    axle = (bar, i);
                }
            }
        }

        TurnCourse course = TurnBraking.Follow(Coupe(rearTorque: rearTorque), G(lateral), share, Speed.Zero)!;
        Assert.Equal(wheel!.Value.Axle, (int)course.FirstWheel!.Axle);
        Assert.Equal(wheel.Value.Bar, course.FirstWheel.LinePressure.Bars, 0.03);
        Assert.Equal(axle.Value.Axle, (int)course.FirstAxle!.Axle);
        Assert.Equal(axle.Value.Bar, course.FirstAxle.LinePressure.Bars, 0.03);
    }

    [Fact]
    public void Drag_moves_load_and_counts_as_deceleration()
    {
        // Lift areas hold the drag couple already, so that the whole m a h/E moves: z m g = T₁ + T₂ + R + D.
        BrakedCar car = Coupe() with { DragArea = Area.FromSquareMeters(0.9), RollingResistance = 0.015 };
        TurnLock still = First(car, G(0), 0.55, Speed.Zero)!;
        TurnLock fast = First(car, G(0), 0.55, Kmh(216))!;
        double drag = 0.5 * 1.225 * 0.9 * 60 * 60;
        double weight = 1700 * Gravity.StandardMetresPerSecondSquared;
        double brakes = (5000 + 1400) / 0.32 * fast.LinePressure.Bars / 100;
        Assert.Equal((brakes + drag + 0.015 * weight) / weight, fast.BrakingRate, 1e-6);
        double onFront = 0.56 * weight + 0.55 / 2.9 * fast.BrakingRate * weight;
        Assert.Equal(0.9 * onFront, 5000 / 0.32 * fast.LinePressure.Bars / 100, 0.01);
        Assert.True(fast.LinePressure > still.LinePressure);
    }

    [Fact]
    public void A_grade_slows_the_car_and_moves_no_load_by_itself()
    {
        // m a − m g sin θ = T + R + D is what moves load; the weight's part along the road only slows the car.
        BrakedCar hill = Coupe() with { Grade = Angle.FromDegrees(8) };
        TurnLock up = First(hill, G(0), 0.55, Speed.Zero)!;
        (double sin, double cos) = Math.SinCos(8 * Math.PI / 180);
        double weight = 1700 * Gravity.StandardMetresPerSecondSquared;
        double brakes = (5000 + 1400) / 0.32 * up.LinePressure.Bars / 100;
        Assert.Equal(brakes / weight + sin, up.BrakingRate, 1e-6);
        Assert.Equal(0.9 * (0.56 * weight * cos + 0.55 / 2.9 * brakes), 5000 / 0.32 * up.LinePressure.Bars / 100, 0.01);
    }

    [Property(MaxTest = 60)]
    public Property Straight_on_the_vehicle_lets_go_where_the_balance_says() => Prop.ForAll(
        Gen.Choose(0, 220).Zip(Gen.Choose(25, 110)).Zip(Gen.Elements("coupe-1960s", "track-coupe",
            "rear-engined-sports-car")).ToArbitrary(),
        drawn =>
        {
            ((int kmh, int adhesion), string name) = drawn;
            Vehicle vehicle = Read(name);
            var setup = StopSetup.From(vehicle, vehicle.LoadCases[0], adhesion / 100.0);
            LockUp? straight = new BalanceModel(vehicle, vehicle.LoadCases[0], Kmh(kmh)).FirstLockUp(adhesion / 100.0);
            TurnCourse course = TurnBraking.Follow(vehicle, setup, G(0), Kmh(kmh))!;
            if (straight is null)
            {
                return course.FirstWheel is null && course.FirstAxle is null;
            }

            return Math.Abs(course.FirstWheel!.LinePressure / straight.At.MasterPressure - 1) < 1e-3
                && Math.Abs(course.FirstAxle!.BrakingRate / straight.At.BrakingRate - 1) < 1e-3
                && (straight.First is null || straight.First == course.FirstAxle.Axle);
        });

    [Fact]
    public void A_load_sensing_valve_follows_the_rear_load_into_the_bend()
    {
        Vehicle coupe = Read("coupe-1960s");
        var valve = new LoadSensingValve
        {
            KneeAtReference = Pressure.FromBars(40),
            ReferenceLoad = Force.FromKilonewtons(7),
            KneePerKilonewton = Pressure.FromBars(8),
            Slope = 0.3,
        };
        Vehicle sensing = coupe with { Hydraulics = coupe.Hydraulics with { RearValves = [valve] } };
        var setup = StopSetup.From(sensing, sensing.LoadCases[0], 0.9);
        TurnLoss loss = TurnBraking.Follow(sensing, setup, G(0.3), Kmh(80))!.FirstAxle!;

        // The same car with a plain valve whose knee is that of the rear load at the first wheel.
        TurnLock first = TurnBraking.Follow(sensing, setup, G(0.3), Kmh(80))!.FirstWheel!;
        double weight = 1700 * Gravity.StandardMetresPerSecondSquared;
        double rear = 0.44 * weight - 0.5 * 1.225 * 0.20 * Math.Pow(80 / 3.6, 2) - 0.55 / 2.9 * first.BrakingRate * weight;
        double knee = 40 + 8 * (rear - 7000) / 1000;
        Vehicle plain = coupe.WithRearKnee(Pressure.FromBars(knee), 0.3);
        Assert.Equal(TurnBraking.Follow(plain, setup, G(0.3), Kmh(80))!.FirstWheel!.LinePressure.Bars, first.LinePressure.Bars, 0.01);
        Assert.True(knee < 40 && loss.LinePressure >= first.LinePressure);
    }

    [Property(MaxTest = 100)]
    public Property Side_force_left_is_never_negative_and_the_lost_axle_cannot_hold_the_bend() => Prop.ForAll(
        Gen.Choose(0, 85).Zip(Gen.Choose(0, 100)).Zip(Gen.Choose(300, 4000)).ToArbitrary(),
        drawn =>
        {
            ((int lateral, int share), int rear) = drawn;
            if (TurnBraking.Follow(Coupe(rearTorque: rear), G(lateral / 100.0), share / 100.0,
                Speed.Zero) is not { FirstAxle: { } loss } course)
            {
                return true;
            }

            Axle lost = loss.Axle;
            Axle held = lost == Axle.Front ? Axle.Rear : Axle.Front;
            return loss.SideForceLeft.Front >= Force.Zero && loss.SideForceLeft.Rear >= Force.Zero
                && loss.SideForceLeft[lost].Newtons <= course.SideForceNeeded[lost].Newtons + 1
                // As the lost axle's last wheel stops, its braking and with it the load on the other axle change a little at that moment.
                && loss.SideForceLeft[held].Newtons >= 0.97 * course.SideForceNeeded[held].Newtons - 1
                && course.FirstWheel!.SideForceLeft.Rear.Newtons >= course.SideForceNeeded.Rear.Newtons - 1
                && loss.LinePressure >= course.FirstWheel.LinePressure;
        });

    private static double Largest(TurnLock turn) => new[]
    {
        turn.InnerUtilisation.Front, turn.InnerUtilisation.Rear, turn.OuterUtilisation.Front, turn.OuterUtilisation.Rear,
    }.Max();
}
