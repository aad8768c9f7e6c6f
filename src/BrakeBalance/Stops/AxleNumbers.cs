using BrakeBalance.Tyres;

namespace BrakeBalance.Stops;

/// <summary>One axle in SI numbers, for the inner loops.</summary>
internal readonly struct AxleNumbers(BrakedAxle axle, double staticNewtons, double liftNewtonsPerSpeedSquared)
{
    public readonly SlipCurve Tyre = axle.Tyre;
    public readonly SlipCurve.Ends Ends = new(axle.Tyre);
    public readonly TorqueCurve Brakes = axle.Brakes;
    public readonly double Radius = axle.LoadedRadius.Meters;
    public readonly double Inertia = axle.WheelInertia.KilogramSquareMeters;
    public readonly double EngineTorque = axle.EngineBrakingTorque.NewtonMeters;
    public readonly double LateralWeight = axle.LateralSlipWeight;
    public readonly double Track = axle.Track.Meters;
    public readonly double Imbalance = axle.BrakeImbalance;
    public readonly double Static = staticNewtons;
    public readonly double Lift = liftNewtonsPerSpeedSquared;
    public readonly bool LoadDependent = axle.Tyre.DependsOnLoad;

    /// <summary>Adhesion coefficient at a slip for the axle's normal reaction (two wheels).</summary>
    public double Mu(double slip, double axleNewtons) => Tyre.Mu(slip, 0.5 * axleNewtons);
}

internal readonly struct CarNumbers
{
    public readonly AxleNumbers Front;
    public readonly AxleNumbers Rear;
    public readonly double Mass;
    public readonly double HeightOverWheelbase;
    public readonly double FrontArm;
    public readonly double RearArm;
    public readonly double YawInertia;

    /// <summary>Drag, less the rolling resistance that lift takes away, over the square of the speed.</summary>
    public readonly double DragPerSpeedSquared;
    public readonly double RollingNewtons;
    public readonly double GradeNewtons;

    /// <summary>Part of the load transfer that reaches the tyres at once; one for a car that does not pitch.</summary>
    public readonly double InstantShare = 1;
    public readonly double PitchRate;
    public readonly double PitchDamping;
    public readonly bool Pitches;

    /// <summary>Whether a valve looks at the rear axle's load, and the time constant with which it follows.</summary>
    public readonly bool SensesLoad;
    public readonly double SensingLag;
    public readonly bool LoadDependent;

    public CarNumbers(BrakedCar car)
    {
        Mass = car.Mass.Kilograms;
        double wheelbase = car.Wheelbase.Meters;
        HeightOverWheelbase = car.CentreOfGravityHeight.Meters / wheelbase;
        RearArm = car.StaticFrontShare * wheelbase;
        FrontArm = wheelbase - RearArm;
        YawInertia = car.YawInertia?.KilogramSquareMeters ?? Mass * FrontArm * RearArm;
        double weight = Mass * Gravity.StandardMetresPerSecondSquared;
        double normal = weight * Math.Cos(car.Grade.Radians);
        double dynamic = 0.5 * car.AirDensity.KilogramsPerCubicMeter;
        DragPerSpeedSquared = dynamic * (car.DragArea - car.RollingResistance * (car.LiftArea.Front + car.LiftArea.Rear)).SquareMeters;
        RollingNewtons = car.RollingResistance * normal;
        GradeNewtons = weight * Math.Sin(car.Grade.Radians);
        Front = new AxleNumbers(car.Axles.Front, normal * car.StaticFrontShare, dynamic * car.LiftArea.Front.SquareMeters);
        Rear = new AxleNumbers(car.Axles.Rear, normal * (1 - car.StaticFrontShare), dynamic * car.LiftArea.Rear.SquareMeters);
        Pitches = car.Pitch is not null;
        if (car.Pitch is { } pitch)
        {
            PitchRate = pitch.NaturalFrequency.Hertz * 2 * Math.PI;
            PitchDamping = 2 * pitch.DampingRatio * PitchRate;
            InstantShare = pitch.InstantShare;
        }

        SensesLoad = Front.Brakes.SensesLoad || Rear.Brakes.SensesLoad;
        SensingLag = Math.Max(Front.Brakes.LagSeconds, Rear.Brakes.LagSeconds);

        LoadDependent = Front.LoadDependent || Rear.LoadDependent;
    }

    /// <summary>Load that moves to the front axle when the tyres retard with these forces per newton of load.</summary>
    /// <remarks>
    /// ΔN = (h/E) (c₁ N₁ + c₂ N₂ + R + D), with N₁ = N₁₀ + ΔN and N₂ = N₂₀ − ΔN, solved for ΔN. The lift areas
    /// are those at the wheels, so that they hold the drag's couple and the whole of m a − m g sin θ moves load.
    /// </remarks>
    public double StaticTransfer(double frontPerNewton, double rearPerNewton, double frontStatic, double rearStatic, double speedSquared) =>
        Transfer(frontPerNewton, rearPerNewton, frontStatic, rearStatic, speedSquared, 1, 0);

    /// <summary>The same when only a part moves at once, on top of what springs and dampers carry already.</summary>
    public double Transfer(
        double frontPerNewton, double rearPerNewton, double frontStatic, double rearStatic, double speedSquared, double instantShare,
            double sprung) =>
        (instantShare * HeightOverWheelbase
            * (frontPerNewton * frontStatic + rearPerNewton * rearStatic + External(speedSquared)) + (1 - instantShare) * sprung)
        / (1 - instantShare * HeightOverWheelbase * (frontPerNewton - rearPerNewton));

    /// <summary>Rolling resistance and drag.</summary>
    public double External(double speedSquared) => RollingNewtons + DragPerSpeedSquared * speedSquared;

    /// <summary>Steady braking below lock at a rising pressure.</summary>
    /// <param name="pascals">Line pressure at the master cylinder.</param>
    /// <param name="speedSquared">Square of the speed, for lift and drag.</param>
    /// <param name="frontFactor">Factor on the front brakes' torque.</param>
    /// <param name="rearFactor">Factor on the rear brakes' torque.</param>
    /// <returns>Torques, forces and loads, at the one rear axle load that agrees with itself.</returns>
    public SteadyBraking Steady(double pascals, double speedSquared, double frontFactor = 1, double rearFactor = 1)
    {
        if (!SensesLoad)
        {
            return SteadyWith(pascals, speedSquared, 0, frontFactor, rearFactor);
        }

        // More rear load opens the valve, which brakes harder and unloads the rear. False position with the idle end's weight halved.
        double low = 0;
        double high = Math.Max(0, Rear.Static - Rear.Lift * speedSquared);
        SteadyBraking at = SteadyWith(pascals, speedSquared, high, frontFactor, rearFactor);
        double atHigh = at.RearLoad - high;
        double atLow = atHigh < 0 ? SteadyWith(pascals, speedSquared, low, frontFactor, rearFactor).RearLoad : 0;
        for (int i = 0; i < 100 && atHigh < 0; i++)
        {
            double load = atLow > 0 ? low + (high - low) * atLow / (atLow - atHigh) : 0;
            at = SteadyWith(pascals, speedSquared, load, frontFactor, rearFactor);
            double miss = at.RearLoad - load;
            if (atLow <= 0 || Math.Abs(miss) < 1e-8)
            {
                break;
            }

            if (miss > 0)
            {
                (low, atLow, atHigh) = (load, miss, 0.5 * atHigh);
            }
            else
            {
                (high, atHigh, atLow) = (load, miss, 0.5 * atLow);
            }
        }

        return at;
    }

    private SteadyBraking SteadyWith(double pascals, double speedSquared, double sensedNewtons, double frontFactor, double rearFactor)
    {
        double frontTorque = Front.Brakes.NewtonMetres(pascals, sensedNewtons) * frontFactor;
        double rearTorque = Rear.Brakes.NewtonMetres(pascals, sensedNewtons) * rearFactor;
        double front = (frontTorque + Front.EngineTorque) / Front.Radius;
        double rear = (rearTorque + Rear.EngineTorque) / Rear.Radius;
        double frontStatic = Front.Static - Front.Lift * speedSquared;
        double rearStatic = Rear.Static - Rear.Lift * speedSquared;
        double transfer = Math.Min(rearStatic, HeightOverWheelbase * (front + rear + External(speedSquared)));
        return new SteadyBraking(frontTorque, rearTorque, front, rear, frontStatic + transfer, rearStatic - transfer);
    }
}

/// <summary>A car that brakes steadily below lock, SI units, both wheels of an axle.</summary>
internal readonly record struct SteadyBraking(
    double FrontTorque, double RearTorque, double FrontForce, double RearForce, double FrontLoad, double RearLoad);
