using BrakeBalance.Tyres;

namespace BrakeBalance.Stops;

/// <summary>One axle in SI numbers, for the inner loops.</summary>
internal readonly struct AxleNumbers(BrakedAxle axle, double staticNewtons, double liftNewtonsPerSpeedSquared)
{
    public readonly SlipCurve Tyre = axle.Tyre;
    public readonly TorqueCurve Brakes = axle.Brakes;
    public readonly double Radius = axle.LoadedRadius.Meters;
    public readonly double Inertia = axle.WheelInertia.KilogramSquareMeters;
    public readonly double EngineTorque = axle.EngineBrakingTorque.NewtonMeters;
    public readonly double LateralWeight = axle.LateralSlipWeight;
    public readonly double Track = axle.Track.Meters;
    public readonly double Static = staticNewtons;
    public readonly double Lift = liftNewtonsPerSpeedSquared;
    public readonly bool LoadDependent = axle.Tyre.DependsOnLoad;

    /// <summary>Adhesion coefficient at a slip for the axle's normal reaction (two wheels).</summary>
    public double Mu(double slip, double axleNewtons) => Tyre.Mu(slip, 0.5 * axleNewtons);
}

/// <summary>A car in SI numbers, for the inner loops.</summary>
internal readonly struct CarNumbers
{
    public readonly AxleNumbers Front;
    public readonly AxleNumbers Rear;
    public readonly double Mass;
    public readonly double HeightOverWheelbase;
    public readonly double FrontArm;
    public readonly double RearArm;
    public readonly double YawInertia;
    public readonly double DragPerSpeedSquared;
    public readonly double RollingNewtons;
    public readonly double GradeNewtons;
    public readonly double PitchRate;
    public readonly double PitchDamping;
    public readonly bool Pitches;
    public readonly bool LoadDependent;

    public CarNumbers(BrakedCar car)
    {
        ArgumentNullException.ThrowIfNull(car);
        Mass = car.Mass.Kilograms;
        double wheelbase = car.Wheelbase.Meters;
        HeightOverWheelbase = car.CentreOfGravityHeight.Meters / wheelbase;
        RearArm = car.StaticFrontShare * wheelbase;
        FrontArm = wheelbase - RearArm;
        YawInertia = car.YawInertia?.KilogramSquareMeters ?? Mass * FrontArm * RearArm;
        double weight = Mass * Gravity.StandardMetresPerSecondSquared;
        double normal = weight * Math.Cos(car.Grade.Radians);
        double dynamic = 0.5 * car.AirDensity.KilogramsPerCubicMeter;
        DragPerSpeedSquared = dynamic * car.DragArea.SquareMeters;
        RollingNewtons = car.RollingResistance * normal;
        GradeNewtons = weight * Math.Sin(car.Grade.Radians);
        Front = new AxleNumbers(car.Axles.Front, normal * car.StaticFrontShare, dynamic * car.LiftArea.Front.SquareMeters);
        Rear = new AxleNumbers(car.Axles.Rear, normal * (1 - car.StaticFrontShare), dynamic * car.LiftArea.Rear.SquareMeters);
        Pitches = car.Pitch is not null;
        if (car.Pitch is { } pitch)
        {
            PitchRate = pitch.NaturalFrequency.Hertz * 2 * Math.PI;
            PitchDamping = 2 * pitch.DampingRatio * PitchRate;
        }

        LoadDependent = Front.LoadDependent || Rear.LoadDependent;
    }

    /// <summary>Load that moves to the front axle when the tyres retard with these forces per newton of load.</summary>
    /// <remarks>ΔN = (h/E) (c₁ N₁ + c₂ N₂ + R), with N₁ = N₁₀ + ΔN and N₂ = N₂₀ − ΔN, solved for ΔN.</remarks>
    public double StaticTransfer(double frontPerNewton, double rearPerNewton, double frontStatic, double rearStatic) =>
        HeightOverWheelbase * (frontPerNewton * frontStatic + rearPerNewton * rearStatic + RollingNewtons)
        / (1 - HeightOverWheelbase * (frontPerNewton - rearPerNewton));
}
