using BrakeBalance.Brakes;
using FsCheck;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Brakes;

/// <summary>Laws that hold for every brake; whole numbers drawn at random are mapped onto plausible dimensions.</summary>
public class BrakeInvariants
{
    [Property]
    public bool Torque_never_falls_as_pressure_rises(byte friction, byte radius, byte pressure, byte step)
    {
        foreach (Brake brake in Brakes(friction, radius))
        {
            Torque lower = brake.BrakingTorque(Pressure.FromBars(pressure / 2.0));
            Torque higher = brake.BrakingTorque(Pressure.FromBars((pressure + step) / 2.0));
            if (lower.NewtonMeters < 0 || higher < lower)
            {
                return false;
            }
        }

        return true;
    }

    [Property]
    public bool Brake_factor_rises_with_friction_below_self_locking(byte shoe, byte low, byte high)
    {
        foreach (DrumBrake brake in Brakes(100, shoe).OfType<DrumBrake>())
        {
            double limit = Math.Min(brake.SelfLockingFriction() ?? Brake.HighestFriction, Brake.HighestFriction) * 0.99;
            double first = Between(Math.Min(low, high), 0.02, limit);
            double second = Between(Math.Max(low, high), 0.02, limit);
            if (second > first && brake.BrakeFactorAt(second) <= brake.BrakeFactorAt(first))
            {
                return false;
            }
        }

        return true;
    }

    [Property]
    public bool Arrangements_keep_their_order(byte shoe, byte friction)
    {
        DrumBrake[] brakes = [.. Brakes(100, shoe).OfType<DrumBrake>()];
        double limit = brakes.Min(b => b.SelfLockingFriction() ?? Brake.HighestFriction);
        double mu = Between(friction, 0.15, Math.Min(limit * 0.98, 0.6));
        double Factor(ShoeArrangement arrangement) => brakes.Single(b => b.Arrangement == arrangement).BrakeFactorAt(mu);
        return Factor(ShoeArrangement.TwoTrailing) < Factor(ShoeArrangement.LeadingTrailing)
            && Factor(ShoeArrangement.LeadingTrailing) < Factor(ShoeArrangement.TwoLeading)
            && Factor(ShoeArrangement.TwoLeading) < Factor(ShoeArrangement.DuoServo);
    }

    [Property]
    public bool A_disc_is_the_only_brake_whose_sensitivity_is_exactly_one(byte friction, byte shoe)
    {
        double mu = Between(friction, 0.2, 0.5);
        return Brakes(100, shoe).All(brake => brake switch
        {
            DiscBrake => brake.WithFriction(mu).FrictionSensitivity == 1,
            DrumBrake { Arrangement: ShoeArrangement.TwoTrailing } => brake.WithFriction(mu).FrictionSensitivity < 1,
            _ => brake.WithFriction(mu).FrictionSensitivity > 1,
        });
    }

    [Property]
    public bool Units_of_the_inputs_change_nothing(byte friction, byte radius)
    {
        foreach (Brake brake in Brakes(friction, radius))
        {
            Brake inInches = brake with { EffectiveRadius = brake.EffectiveRadius.ToUnit(UnitsNet.Units.LengthUnit.Inch) };
            double metric = brake.BrakingTorque(Pressure.FromPascals(4e6)).NewtonMeters;
            double imperial = inInches.BrakingTorque(Pressure.FromPascals(4e6)
                .ToUnit(UnitsNet.Units.PressureUnit.PoundForcePerSquareInch)).NewtonMeters;
            if (Math.Abs((imperial / metric) - 1) > 1e-9)
            {
                return false;
            }
        }

        return true;
    }

    private static double Between(byte value, double low, double high) => low + ((high - low) * value / byte.MaxValue);

    private static IEnumerable<Brake> Brakes(byte friction, byte shape)
    {
        double mu = Between(friction, 0.1, 0.45);
        double drum = Between(shape, 0.10, 0.16);
        Length radius = Length.FromMeters(drum);
        double pivot = drum * Between((byte)(shape * 7), 0.80, 0.88);
        double cylinder = drum * Between((byte)(shape * 13), 0.62, 0.70);
        LiningArc lining = LiningArc.FromDegrees(Between((byte)(shape * 3), 15, 40), Between((byte)(shape * 5), 115, 135));
        yield return new DiscBrake
        {
            Pistons = PistonSet.OneSideOf(1 + (shape % 3), Length.FromMillimeters(Between(shape, 30, 60))),
            EffectiveRadius = radius,
            FrictionCoefficient = mu,
            ThresholdPressure = Pressure.FromBars(0.3),
        };
        foreach (ShoeArrangement arrangement in Enum.GetValues<ShoeArrangement>())
        {
            yield return new DrumBrake
            {
                Arrangement = arrangement,
                EffectiveRadius = radius,
                WheelCylinderDiameter = Length.FromMillimeters(20),
                FrictionCoefficient = mu,
                ThresholdPressure = Pressure.FromBars(3),
                Shoes = arrangement == ShoeArrangement.DuoServo
                    ? new DuoServoGeometry
                    {
                        CylinderDistance = Length.FromMeters(cylinder),
                        AnchorDistance = Length.FromMeters(pivot),
                        LinkDistance = Length.FromMeters(pivot),
                        PrimaryLining = lining,
                        SecondaryLining = lining,
                    }
                    : new ShoeGeometry
                    {
                        PivotDistance = Length.FromMeters(pivot),
                        ActuatingArm = Length.FromMeters(pivot + cylinder),
                        Lining = lining,
                    },
            };
        }
    }
}
