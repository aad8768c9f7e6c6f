using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Invariants;

/// <summary>Laws that hold for every car, tried on random ones.</summary>
[Properties(Arbitrary = [typeof(RandomCar)], MaxTest = 150)]
public class BalanceInvariants
{
    private static readonly double[] Adhesions = [0.05, 0.15, 0.3, 0.5, 0.75, 1.0, 1.3];
    private static readonly double[] Bars = [0, 1, 5, 17, 33, 60, 100, 159];
    private static readonly Speed Fast = Speed.FromKilometersPerHour(130);

    [Property]
    public void Ideal_forces_sum_to_mass_times_deceleration_and_use_both_axles_alike(Vehicle car)
    {
        Vehicle bare = Bare(car);
        var model = new BalanceModel(bare, bare.LoadCases[0]);
        foreach (double rate in new[] { 0.1, 0.4, 0.8, 1.1 })
        {
            PerAxle<Force> ideal = model.IdealForces(rate);
            PerAxle<Force> normal = model.NormalReactions(rate);
            Assert.Equal(rate * model.Weight.Newtons, (ideal.Front + ideal.Rear).Newtons, 1e-9 * model.Weight.Newtons);
            if (rate < model.RearLiftOffRate * 0.999)
            {
                Assert.Equal(rate, ideal.Front / normal.Front, 1e-9);
                Assert.Equal(rate, ideal.Rear / normal.Rear, 1e-9);
            }
        }
    }

    [Property]
    public void Normal_reactions_sum_to_weight_less_lift(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0], Fast);
        double lift = 0.5 * 1.225 * Math.Pow(Fast.MetersPerSecond, 2)
            * ((car.Aerodynamics?.FrontLiftArea.SquareMeters ?? 0) + (car.Aerodynamics?.RearLiftArea.SquareMeters ?? 0));
        double expected = car.LoadCases[0].Mass.Kilograms * Gravity.StandardMetresPerSecondSquared - lift;
        foreach (double bars in Bars)
        {
            PerAxle<Force> normal = model.At(Pressure.FromBars(bars)).NormalReactions;
            Assert.Equal(expected, (normal.Front + normal.Rear).Newtons, 1e-9 * expected);
            Assert.True(normal.Rear >= Force.Zero);
        }
    }

    // Newton's second law and moments about the rear contact, from the forces alone.
    [Property]
    public void Forces_and_moments_balance(Vehicle car)
    {
        Vehicle still = car with { Aerodynamics = null };
        LoadCase load = still.LoadCases[1];
        var model = new BalanceModel(still, load);
        double weight = model.Weight.Newtons;
        foreach (double bars in Bars)
        {
            BalancePoint at = model.At(Pressure.FromBars(bars));
            double braking = (at.BrakingForces.Front + at.BrakingForces.Rear).Newtons + still.RollingResistanceCoefficient * weight;
            Assert.Equal(at.BrakingRate * weight, braking, 1e-9 * weight);
            if (at.NormalReactions.Rear > Force.Zero)
            {
                double moment = at.NormalReactions.Front.Newtons * still.Wheelbase.Meters
                    - weight * (still.Wheelbase - load.FrontAxleToCentreOfGravity).Meters
                    - at.BrakingRate * weight * load.CentreOfGravityHeight.Meters;
                Assert.Equal(0, moment / weight, 1e-9);
            }
        }
    }

    [Property]
    public void Outlet_pressure_never_exceeds_inlet_and_never_falls(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0]);
        double ratio = car.Hydraulics.Split.RearToFrontPressureRatio;
        BalancePoint? before = null;
        foreach (double bars in Bars)
        {
            BalancePoint at = model.At(Pressure.FromBars(bars));
            Assert.True(at.LinePressures.Front.Bars <= bars + 1e-9);
            Assert.True(at.LinePressures.Rear.Bars <= bars * ratio + 1e-9);
            if (before is not null)
            {
                Assert.True(at.LinePressures.Front.Bars >= before.LinePressures.Front.Bars - 1e-9);
                Assert.True(at.BrakingRate >= before.BrakingRate - 1e-9);
            }

            before = at;
        }
    }

    [Property]
    public void Point_at_a_rate_has_that_rate(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0], Fast);
        foreach (double rate in new[] { 0.05, 0.3, 0.7, 1.0, 1.6 })
        {
            if (model.AtRate(rate) is { } at)
            {
                Assert.Equal(rate, at.BrakingRate, 1e-8);
            }
            else
            {
                Assert.True(model.At(model.MaximumPressure).BrakingRate < rate || model.At(Pressure.Zero).BrakingRate > rate);
            }
        }
    }

    // At the first lock-up one axle uses just what its tyres have, and the other less.
    [Property]
    public void First_axle_to_lock_is_at_its_limit_and_the_other_below(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0], Fast);
        foreach (double adhesion in Adhesions)
        {
            if (model.FirstLockUp(adhesion) is not { } lockUp)
            {
                (double front, double rear) = Used(car, model.At(model.MaximumPressure), adhesion);
                Assert.True(front < 1 && rear < 1);
                continue;
            }

            (double frontUsed, double rearUsed) = Used(car, lockUp.At, adhesion);
            Assert.InRange(lockUp.Efficiency, 0, 1);
            if (lockUp.At.MasterPressure > Pressure.Zero)
            {
                Assert.Equal(1, Math.Max(frontUsed, rearUsed), 1e-6);
            }
            else
            {
                Assert.True(Math.Max(frontUsed, rearUsed) >= 1);
            }

            Assert.Equal(lockUp.First, Math.Abs(frontUsed - rearUsed) < 1e-3 ? null : frontUsed > rearUsed ? Axle.Front : Axle.Rear);
        }
    }

    [Property]
    public void No_axle_is_past_its_limit_below_the_first_lock_up(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[1]);
        foreach (double adhesion in Adhesions)
        {
            if (model.FirstLockUp(adhesion) is { } lockUp)
            {
                for (int i = 0; i < 20; i++)
                {
                    (double front, double rear) = Used(car, model.At(lockUp.At.MasterPressure * (i / 20.0)), adhesion);
                    Assert.True(lockUp.At.MasterPressure.Pascals <= 0 || Math.Max(front, rear) < 1 + 1e-9);
                }
            }
        }
    }

    // The curve that is higher at z is the one that meets k first: utilised adhesion tells the order of lock-up.
    [Property]
    public void Axle_that_uses_more_adhesion_locks_first(Vehicle car)
    {
        Vehicle alike = car with { Tyres = new(TestCars.Tyre, TestCars.Tyre) };
        var model = new BalanceModel(alike, alike.LoadCases[0]);
        foreach (double rate in new[] { 0.15, 0.4, 0.8 })
        {
            if (model.AtRate(rate) is { AdhesionUtilisation: { Front: { } front, Rear: { } rear } })
            {
                double adhesion = Math.Max(front, rear);
                if (adhesion <= 2 && Math.Abs(front - rear) > 2e-3 && model.FirstLockUp(adhesion) is { } lockUp
                    && Math.Abs(lockUp.At.BrakingRate - rate) < 1e-6)
                {
                    Assert.Equal(front > rear ? Axle.Front : Axle.Rear, lockUp.First);
                }
            }
        }
    }

    [Property]
    public void Utilisation_reaches_the_rate_on_one_axle_at_least(Vehicle car)
    {
        Vehicle bare = Bare(car);
        var model = new BalanceModel(bare, bare.LoadCases[0]);
        foreach (double bars in Bars)
        {
            BalancePoint at = model.At(Pressure.FromBars(bars));
            if (at.AdhesionUtilisation is { Front: { } front, Rear: { } rear })
            {
                Assert.True(Math.Max(front, rear) >= at.BrakingRate - 1e-9);
                Assert.True(Math.Min(front, rear) <= at.BrakingRate + 1e-9);
            }
        }
    }

    [Property]
    public void Raising_the_knee_never_lowers_rear_force_nor_lets_the_front_lock_earlier_on_the_way_up(Vehicle car, byte low, byte more)
    {
        Vehicle with = car with { Hydraulics = car.Hydraulics with { RearValves = [] } };
        double slope = (low % 10) / 10.0;
        var lower = new BalanceModel(with.WithRearKnee(Pressure.FromBars(low / 4.0), slope), with.LoadCases[0]);
        var higher = new BalanceModel(with.WithRearKnee(Pressure.FromBars((low + more) / 4.0), slope), with.LoadCases[0]);
        foreach (double bars in Bars)
        {
            Assert.True(higher.StateAt(bars * 1e5).RearForceNewtons >= lower.StateAt(bars * 1e5).RearForceNewtons - 1e-6);
        }

        foreach (double adhesion in Adhesions)
        {
            // Once the rear locks first, more rear pressure cannot bring the front back.
            if (lower.FirstLockUp(adhesion)?.First == Axle.Rear && higher.FirstLockUp(adhesion) is { } lockUp)
            {
                Assert.NotEqual(Axle.Front, lockUp.First);
            }
        }
    }

    [Property]
    public void More_adhesion_never_lowers_the_rate_or_pressure_of_the_first_lock_up(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0]);
        LockUp? before = null;
        foreach (double adhesion in Adhesions)
        {
            LockUp? lockUp = model.FirstLockUp(adhesion);
            if (before is not null && lockUp is not null)
            {
                Assert.True(lockUp.At.MasterPressure.Pascals >= before.At.MasterPressure.Pascals - 1e-3);
                Assert.True(lockUp.At.BrakingRate >= before.At.BrakingRate - 1e-9);
            }

            before = lockUp;
        }
    }

    [Property]
    public void No_rate_of_a_first_lock_up_exceeds_the_greatest_rate(Vehicle car)
    {
        var model = new BalanceModel(car, car.LoadCases[0], Fast);
        foreach (double adhesion in Adhesions)
        {
            if (model.FirstLockUp(adhesion) is { } lockUp && lockUp.At.MasterPressure > Pressure.Zero)
            {
                Assert.True(lockUp.At.BrakingRate <= model.GreatestRate(adhesion) + 1e-9);
            }
        }
    }

    // Twice the car: mass, brake torque, engine and areas doubled changes no ratio.
    [Property]
    public void Car_of_twice_the_mass_with_twice_the_brakes_is_the_same_car(Vehicle car)
    {
        Vehicle plain = car with
        {
            Brakes = new(TestCars.AxleBrake(80), TestCars.AxleBrake(45)),
            Tyres = car.Tyres.Select(tyre => tyre with { LoadSensitivity = 0 }),
            Hydraulics = car.Hydraulics with { RearValves = [.. car.Hydraulics.RearValves.Where(valve => !valve.SensesLoad)] },
        };
        Vehicle twice = plain with
        {
            Brakes = new(TestCars.AxleBrake(160), TestCars.AxleBrake(90)),
            LoadCases = [.. plain.LoadCases.Select(load => load with { Mass = load.Mass * 2 })],
            EngineBraking = plain.EngineBraking is { } engine ? engine with { BrakingForce = engine.BrakingForce * 2 } : null,
            Aerodynamics = plain.Aerodynamics is { } air
                ? air with { DragArea = air.DragArea * 2, FrontLiftArea = air.FrontLiftArea * 2, RearLiftArea = air.RearLiftArea * 2 }
                : null,
        };
        var one = new BalanceModel(plain, plain.LoadCases[0], Fast);
        var two = new BalanceModel(twice, twice.LoadCases[0], Fast);
        foreach (double bars in Bars)
        {
            Assert.Equal(one.At(Pressure.FromBars(bars)).BrakingRate, two.At(Pressure.FromBars(bars)).BrakingRate, 1e-9);
        }

        foreach (double adhesion in Adhesions)
        {
            LockUp? small = one.FirstLockUp(adhesion);
            LockUp? large = two.FirstLockUp(adhesion);
            Assert.Equal(small is null, large is null);
            Assert.Equal(small?.Efficiency ?? 0, large?.Efficiency ?? 0, 1e-9);
        }
    }

    [Property]
    public void Closed_form_agrees_with_the_solver(Vehicle car, byte share)
    {
        double frontShare = 0.3 + 0.6 * share / 255;
        LoadCase load = car.LoadCases[0];
        double weight = load.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared;
        double wheelbase = car.Wheelbase.Meters;
        Vehicle fixedShare = TestCars.FixedShare(frontShare, wheelbase, load.FrontAxleToCentreOfGravity.Meters,
            load.CentreOfGravityHeight.Meters, weight);
        var closed = new FixedRatio
        {
            StaticRearShare = load.FrontAxleToCentreOfGravity.Meters / wheelbase,
            RearForceShare = 1 - frontShare,
            RelativeHeight = load.CentreOfGravityHeight.Meters / wheelbase,
        };
        foreach (double adhesion in Adhesions)
        {
            if (closed.FirstLockRate(adhesion) < 2.4)
            {
                Assert.Equal(closed.FirstLockRate(adhesion), fixedShare.Model().FirstLockUp(adhesion)!.At.BrakingRate, 1e-9);
            }
        }
    }

    // Two descriptions of the same lengths, masses and pressures.
    [Property]
    public void Units_in_which_a_car_is_described_change_nothing(Vehicle car)
    {
        Vehicle us = car with
        {
            Wheelbase = car.Wheelbase.ToUnit(UnitsNet.Units.LengthUnit.Inch),
            LoadCases = [.. car.LoadCases.Select(load => load with
            {
                Mass = load.Mass.ToUnit(UnitsNet.Units.MassUnit.Pound),
                FrontAxleToCentreOfGravity = load.FrontAxleToCentreOfGravity.ToUnit(UnitsNet.Units.LengthUnit.Foot),
                CentreOfGravityHeight = load.CentreOfGravityHeight.ToUnit(UnitsNet.Units.LengthUnit.Inch),
            })],
            Tyres = car.Tyres.Select(tyre => tyre with { LoadedRadius = tyre.LoadedRadius.ToUnit(UnitsNet.Units.LengthUnit.Inch) }),
            Hydraulics = car.Hydraulics with
            {
                RearValves = [.. car.Hydraulics.RearValves.Select(valve => valve is ProportioningValve proportioning
                    ? proportioning with { Knee = proportioning.Knee.ToUnit(UnitsNet.Units.PressureUnit.PoundForcePerSquareInch) }
                    : valve)],
            },
        };
        var one = new BalanceModel(car, car.LoadCases[0]);
        var two = new BalanceModel(us, us.LoadCases[0]);
        foreach (double bars in Bars)
        {
            Assert.Equal(one.At(Pressure.FromBars(bars)).BrakingRate,
                two.At(Pressure.FromPoundsForcePerSquareInch(Pressure.FromBars(bars).PoundsForcePerSquareInch)).BrakingRate, 1e-9);
        }

        foreach (double adhesion in Adhesions)
        {
            Assert.Equal(one.FirstLockUp(adhesion)?.At.BrakingRate ?? -1, two.FirstLockUp(adhesion)?.At.BrakingRate ?? -1, 1e-7);
        }
    }

    [Property]
    public void Crossings_are_where_both_axles_use_the_same(Vehicle car)
    {
        Vehicle alike = car with { Tyres = new(TestCars.Tyre, TestCars.Tyre) };
        double previous = 0;
        foreach (BalancePoint crossing in new BalanceModel(alike, alike.LoadCases[0]).IdealCrossings())
        {
            Assert.Equal(crossing.AdhesionUtilisation.Front!.Value, crossing.AdhesionUtilisation.Rear!.Value, 1e-6);
            Assert.True(crossing.BrakingRate > previous);
            previous = crossing.BrakingRate;
        }
    }

    private static Vehicle Bare(Vehicle car) => car with
    {
        RollingResistanceCoefficient = 0,
        EngineBraking = null,
        Aerodynamics = null,
        Tyres = new(TestCars.Tyre, TestCars.Tyre),
    };

    // Braking force over what the tyres of the axle have: 1 is about to lock; an axle in the air locks at any force.
    private static (double Front, double Rear) Used(Vehicle car, BalancePoint at, double adhesion)
    {
        double Of(Axle axle)
        {
            Force normal = at.NormalReactions[axle];
            Force force = at.BrakingForces[axle];
            return force <= Force.Zero
                ? 0 : normal <= Force.Zero ? double.PositiveInfinity : force / normal / car.Tyres[axle].AdhesionOn(adhesion, normal / 2);
        }

        return (Of(Axle.Front), Of(Axle.Rear));
    }
}
