using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Oracle;

/// <summary>Reads into plain numbers what is stated about a car: only inputs, nothing that the library works out.</summary>
internal static class PlainCarReader
{
    /// <summary>Reads a car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="load">Its load case.</param>
    /// <param name="frontFriction">Factor on the front friction.</param>
    /// <param name="rearFriction">Factor on the rear friction.</param>
    public static PlainCar Read(Vehicle car, LoadCase load, double frontFriction = 1, double rearFriction = 1) => new()
    {
        Mass = load.Mass.Kilograms,
        Wheelbase = car.Wheelbase.Meters,
        FrontAxleToCentreOfGravity = load.FrontAxleToCentreOfGravity.Meters,
        CentreOfGravityHeight = load.CentreOfGravityHeight.Meters,
        Front = ReadAxle(car, Axle.Front, car.Brakes.Front, car.Tyres.Front, [.. car.Hydraulics.FrontValves], frontFriction,
            car.Aerodynamics?.FrontLiftArea),
        Rear = ReadAxle(car, Axle.Rear, car.Brakes.Rear, car.Tyres.Rear, [.. car.Hydraulics.RearValves], rearFriction,
            car.Aerodynamics?.RearLiftArea),
        RearToFrontMasterPressure = car.Hydraulics.Split switch
        {
            TandemSplit => 1,
            // A bar shares the force; each cylinder makes pressure of its share over its own area.
            BalanceBarSplit bar => (1 - bar.FrontForceShare) / AreaOf(bar.RearBore) / (bar.FrontForceShare / AreaOf(bar.FrontBore)),
            _ => throw new NotSupportedException("The oracle does not know this split."),
        },
        HighestPressure = car.Hydraulics.MaximumPressure.Pascals,
        DragArea = car.Aerodynamics?.DragArea.SquareMeters ?? 0,
        AirDensity = car.Aerodynamics?.AirDensity.KilogramsPerCubicMeter ?? 0,
        RollingCoefficient = car.RollingResistanceCoefficient,
    };

    private static PlainAxle ReadAxle(Vehicle car, Axle which, Brake brake, Tyre tyre, PressureValve[] valves, double friction,
        Area? lift) => new()
        {
            WheelRadius = tyre.LoadedRadius.Meters,
            TorquePerPascal = TorquePerPascal(brake, Math.Min(1.2, brake.FrictionCoefficient * friction)),
            ThresholdPressure = brake.ThresholdPressure.Pascals,
            Valves = [.. valves.Select(ReadValve)],
            AdhesionFactor = tyre.AdhesionFactor,
            LoadSensitivity = tyre.LoadSensitivity,
            ReferenceWheelLoad = tyre.ReferenceLoad.Newtons,
            LiftArea = lift?.SquareMeters ?? 0,
            EngineBrakingForce = car.EngineBraking is { } engine && engine.DrivenAxle == which ? engine.BrakingForce.Newtons : 0,
        };

    private static PlainValve ReadValve(PressureValve valve) => valve switch
    {
        ProportioningValve v => new ProportioningAt(v.Knee.Pascals, v.Slope),
        LimitingValve v => new LimitAt(v.Limit.Pascals),
        MeteringValve v => new MeteringBetween(v.OpeningPressure.Pascals, v.BlendPressure.Pascals),
        LoadSensingValve v => new LoadSensing(v.KneeAtReference.Pascals, v.ReferenceLoad.Newtons, v.KneePerKilonewton.Pascals / 1000,
            v.Slope, v.LowestKnee.Pascals),
        _ => throw new NotSupportedException("The oracle does not know this valve."),
    };

    private static double TorquePerPascal(Brake brake, double friction)
    {
        double radius = brake.EffectiveRadius.Meters;
        switch (brake)
        {
            case DiscBrake disc:
                // Two pads, each pressed with the force of the pistons of one side.
                return 2 * friction * brake.Efficiency * disc.Pistons.Diameters.Sum(AreaOf) * radius;
            case MeasuredBrake measured:
                return measured.MeasuredNewtonMetresPerBar / 1e5 * Math.Pow(friction / measured.FrictionWhenMeasured, measured.Sensitivity);
            case DrumBrake drum:
                return BothShoes(drum, friction) * brake.Efficiency * AreaOf(drum.WheelCylinderDiameter) * radius;
            default:
                throw new NotSupportedException("The oracle does not know this brake.");
        }
    }

    // Friction force at the drum for each newton of one piston.
    private static double BothShoes(DrumBrake drum, double friction)
    {
        double radius = drum.EffectiveRadius.Meters;
        switch (drum.Shoes)
        {
            case CatalogueShoes given:
                // A short shoe gives c μ/(1 − e μ): c and e from the value and the sensitivity S = 1/(1 − e μ₀) that are given at
                // μ₀.
                double e = (1 - (1 / given.NominalSensitivity)) / given.NominalFriction;
                double c = given.NominalBrakeFactor * (1 - (e * given.NominalFriction)) / given.NominalFriction;
                return c * friction / (1 - (e * friction));
            case ShortShoeGeometry block:
                return Two(drum.Arrangement, leading => PlainShoes.Block(
                    friction, leading, block.ActuatingArm.Meters, block.NormalArm.Meters, block.FrictionArm.Meters,
                        block.LiningAngle.Degrees));
            case ShoeGeometry shoe when shoe.Support == ShoeSupport.Pivoted:
                return Two(drum.Arrangement, leading => PlainShoes.OnPin(
                    friction, leading, radius, shoe.PivotDistance.Meters, shoe.Lining.Start.Degrees, shoe.Lining.End.Degrees,
                        shoe.ActuatingArm.Meters));
            case ShoeGeometry shoe:
                return Two(drum.Arrangement, leading => PlainShoes.Sliding(
                    friction, leading, radius, shoe.PivotDistance.Meters, shoe.Lining.Start.Degrees, shoe.Lining.End.Degrees,
                        shoe.ActuatingArm.Meters));
            case DuoServoGeometry duo:
                double cylinder = duo.CylinderDistance.Meters;
                double link = duo.LinkDistance.Meters;
                double anchor = duo.AnchorDistance.Meters;
                double primary = PlainShoes.Sliding(friction, true, radius, link, duo.PrimaryLining.Start.Degrees,
                    duo.PrimaryLining.End.Degrees, cylinder + link);

                // Moments of the primary shoe about the drum's centre give the force in the link.
                double passedOn = (cylinder + (primary * radius)) / link;
                double secondary = PlainShoes.OnPin(
                    friction, true, radius, anchor, duo.SecondaryLining.Start.Degrees, duo.SecondaryLining.End.Degrees,
                        (passedOn * (anchor + link)) + anchor - cylinder);
                return primary + secondary;
            default:
                throw new NotSupportedException("The oracle does not know these shoes.");
        }
    }

    private static double Two(ShoeArrangement arrangement, Func<bool, double> shoe) => arrangement switch
    {
        ShoeArrangement.LeadingTrailing => shoe(true) + shoe(false),
        ShoeArrangement.TwoLeading => 2 * shoe(true),
        ShoeArrangement.TwoTrailing => 2 * shoe(false),
        _ => throw new NotSupportedException("Duo-servo shoes need their own geometry."),
    };

    private static double AreaOf(Length bore) => Math.PI / 4 * bore.Meters * bore.Meters;
}
