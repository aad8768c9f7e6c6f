using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Invariants;

/// <summary>What stops and the balance must say alike, tried on random cars.</summary>
[Properties(Arbitrary = [typeof(RandomCar)], MaxTest = 60)]
public class StopInvariants
{
    // Adhesion that does not fall with slip, so that the deceleration at lock is that at the limit; wheels without mass, as in the balance.
    private static readonly SlipCurve Flat = new BurckhardtCurve { Name = "flat", C1 = 1, C2 = 40, C3 = 0 };

    private const double WheelInertia = 1e-6;
    private const double RampSeconds = 6;

    // Wheels of inertia I stop √(2 I v/(R M′)) after their axle's limit, M′ the rise per second of the torque beyond what the road
    // gives.
    private static double SecondsToStop(BalanceModel model, Axle axle, double adhesion, double pascals, double pascalsPerSecond)
    {
        Tyre tyre = model.Vehicle.Tyres[axle];
        double Beyond(double p)
        {
            BalancePoint at = model.At(Pressure.FromPascals(p));
            return at.BrakingForces[axle].Newtons - tyre.AdhesionOn(adhesion,
                at.NormalReactions[axle] / 2) * at.NormalReactions[axle].Newtons;
        }

        double perSecond = Math.Max(1e-9, (Beyond(pascals) - Beyond(0.99 * pascals)) / (0.01 * pascals) * pascalsPerSecond);
        return Math.Sqrt(2 * 2 * WheelInertia * model.Speed.MetersPerSecond / perSecond) / tyre.LoadedRadius.Meters;
    }

    private static Vehicle WithoutWheels(Vehicle car)
    {
        var light = new AxleDynamics { WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(WheelInertia) };
        return car with { AxleDynamics = new(light, light) };
    }

    [Property]
    public void Steady_lock_in_a_stop_is_the_first_lock_up_of_the_balance_at_every_speed(Vehicle car)
    {
        foreach (double kmh in new[] { 0, 80, 216.0 })
        {
            var speed = Speed.FromKilometersPerHour(kmh);
            foreach (double adhesion in new[] { 0.15, 0.5, 1.0 })
            {
                LockUp? balance = new BalanceModel(car, car.LoadCases[1], speed).FirstLockUp(adhesion);
                StopSetup setup = StopSetup.From(car, car.LoadCases[1], adhesion, Flat);
                (Pressure Pressure, Axle Axle)? steady = LockPressure.Lowest(setup.Car, speed);
                if (balance is null)
                {
                    Assert.True(steady is null || steady.Value.Pressure > setup.MaximumPressure * 0.999);
                }
                else if (balance.At.MasterPressure > Pressure.FromBars(0.5))
                {
                    Assert.NotNull(steady);
                    Assert.Equal(balance.At.MasterPressure.Pascals, steady.Value.Pressure.Pascals,
                        1e-3 * balance.At.MasterPressure.Pascals);
                    Assert.True(balance.First is null || balance.First == steady.Value.Axle);
                }
            }
        }
    }

    [Property(MaxTest = 40)]
    public void A_slow_ramp_locks_the_axle_of_the_balance_at_its_pressure_and_deceleration(Vehicle car)
    {
        foreach (double adhesion in new[] { 0.2, 0.55, 0.9 })
        {
            SlowRampAgrees(car, adhesion);
        }
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("track-coupe")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("big-cam-saloon")]
    public void Every_invented_car_locks_in_a_slow_ramp_as_the_balance_says(string name)
    {
        Vehicle car = VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", name + ".json"))
           .Vehicle with
        { Control = null, Dynamics = null };
        int compared = 0;
        foreach (double adhesion in new[] { 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8 })
        {
            compared += SlowRampAgrees(car, adhesion) ? 1 : 0;
        }

        Assert.InRange(compared, 2, 7);
    }

    /// <summary>Asserts the agreement; false when the ramp was not slow against the wheels, or no axle locked.</summary>
    private static bool SlowRampAgrees(Vehicle drawn, double adhesion)
    {
        Vehicle car = WithoutWheels(drawn);
        LoadCase load = car.LoadCases[0];
        StopSetup setup = StopSetup.From(car, load, adhesion, Flat);
        var fast = Speed.FromKilometersPerHour(200);
        double reach = (LockPressure.Lowest(setup.Car, fast)?.LinePressure ?? setup.MaximumPressure).Pascals;
        var slow = new PressureBuildUp
        {
            DeadTime = Duration.Zero,
            AssistLag = Duration.Zero,
            RampRate = PressureChangeRate.FromPascalsPerSecond(Math.Max(1e5, Math.Min(reach, setup.MaximumPressure.Pascals)) / RampSeconds),
        };
        StopResult stop;
        try
        {
            stop = StraightStop.Run(setup.Car, setup.Emergency, slow, fast, withTrace: false, relativeTolerance: 5e-5);
        }
        catch (InvalidOperationException exception) when (exception.Message.Contains("steps", StringComparison.Ordinal))
        {
            return false; // wheels all but without mass that stay at their limit cost more steps than the integrator takes
        }

        if (stop.FirstLock is not { } first)
        {
            // A lock-up counts above 15 km/h only: with downforce an axle may lock below that and nowhere before.
            Assert.Null(new BalanceModel(car, load, Speed.FromKilometersPerHour(20)).FirstLockUp(adhesion * 0.998));
            return false;
        }

        LockEvent locked = stop.Locks[first]!;
        LockUp balance = new BalanceModel(car, load, locked.Speed).FirstLockUp(adhesion)
            ?? new BalanceModel(car, load, locked.Speed).FirstLockUp(adhesion * 0.998)!;
        double pascals = balance.At.MasterPressure.Pascals;
        double perSecond = slow.RampRate.PascalsPerSecond;
        if (pascals < 0.5e5 || perSecond * SecondsToStop(new BalanceModel(car, load, locked.Speed), first, adhesion, pascals,
            perSecond) > 5e-4 * pascals)
        {
            return false;
        }

        Assert.Equal(pascals, locked.MasterPressure.Pascals, 1e-3 * pascals);
        Assert.Equal(balance.At.BrakingRate, locked.BrakingRate, 1e-3 * balance.At.BrakingRate);
        Assert.True(balance.First is null || balance.First == first);
        return true;
    }

    [Property]
    public void On_a_slope_only_the_forces_at_the_road_and_drag_move_load(Vehicle car)
    {
        foreach (double degrees in new[] { -6.0, 0, 8 })
        {
            StopSetup setup = StopSetup.From(car, car.LoadCases[0], 0.9,
                conditions: new StopConditions { Grade = Angle.FromDegrees(degrees) });
            StopResult stop;
            try
            {
                stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Speed.FromKilometersPerHour(130));
            }
            catch (InvalidOperationException)
            {
                continue; // brakes weaker than the slope
            }

            LoadCase load = car.LoadCases[0];
            double weight = load.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared;
            (double sin, double cos) = Math.SinCos(degrees * Math.PI / 180);
            foreach (StopSample s in stop.Trace.Where((_, i) => i % 20 == 0).Where(s => s.SpeedMetresPerSecond > 0.5
                && s.NormalReactionNewtons.Rear > 1))
            {
                // Moments about the front contact; the lift areas are those at the wheels.
                double lift = 0.5 * (car.Aerodynamics?.AirDensity.KilogramsPerCubicMeter
                    ?? 0) * s.SpeedMetresPerSecond * s.SpeedMetresPerSecond
                    * (car.Aerodynamics?.RearLiftArea.SquareMeters ?? 0);
                double inertia = load.Mass.Kilograms * s.DecelerationMetresPerSecondSquared - weight * sin;
                double moments = weight * cos * load.FrontAxleToCentreOfGravity.Meters - inertia * load.CentreOfGravityHeight.Meters;
                double rear = moments / car.Wheelbase.Meters - lift;
                Assert.Equal(rear, s.NormalReactionNewtons.Rear, 1e-3 * weight);
            }
        }
    }
}
