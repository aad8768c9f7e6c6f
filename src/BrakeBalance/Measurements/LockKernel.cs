using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>A car in one load case, prepared so that draws of friction, adhesion and height of the centre of gravity cost next to nothing.</summary>
internal sealed class LockKernel
{
    private readonly FrictionGain _front, _rear;
    private readonly double _frontStatic, _rearStatic, _tau, _external, _frontThreshold, _rearThreshold, _frontEngine, _rearEngine;
    private readonly PerAxle<Tyre> _tyres;

    /// <summary>Prepares the car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="load">The load case.</param>
    /// <param name="gains">Its friction tables, which do not depend on the load.</param>
    /// <param name="speedMetresPerSecond">Speed for drag and lift.</param>
    public LockKernel(Vehicle vehicle, LoadCase load, PerAxle<FrictionGain> gains, double speedMetresPerSecond)
    {
        (_front, _rear, _tyres) = (gains.Front, gains.Rear, vehicle.Tyres);
        double wheelbase = vehicle.Wheelbase.Meters, a = load.FrontAxleToCentreOfGravity.Meters;
        double weight = load.Mass.Kilograms * Gravity.StandardMetresPerSecondSquared;
        double dynamic = vehicle.Aerodynamics?.DynamicPressurePascals(speedMetresPerSecond) ?? 0;
        _frontStatic = weight * (wheelbase - a) / wheelbase - dynamic * (vehicle.Aerodynamics?.FrontLiftArea.SquareMeters ?? 0);
        _rearStatic = weight * a / wheelbase - dynamic * (vehicle.Aerodynamics?.RearLiftArea.SquareMeters ?? 0);
        _tau = load.CentreOfGravityHeight.Meters / wheelbase;
        _external = vehicle.RollingResistanceCoefficient * (_frontStatic + _rearStatic) + dynamic * (vehicle.Aerodynamics?.DragArea.SquareMeters ?? 0);
        _frontThreshold = vehicle.Brakes.Front.ThresholdPressure.Pascals;
        _rearThreshold = vehicle.Brakes.Rear.ThresholdPressure.Pascals;
        _frontEngine = vehicle.EngineBraking is { DrivenAxle: Axle.Front } front ? front.BrakingForce.Newtons : 0;
        _rearEngine = vehicle.EngineBraking is { DrivenAxle: Axle.Rear } rear ? rear.BrakingForce.Newtons : 0;
        WeightNewtons = weight;
    }

    public double WeightNewtons { get; }

    public static PerAxle<FrictionGain> Gains(Vehicle vehicle) => new(
        new FrictionGain(vehicle.Brakes.Front, vehicle.Tyres.Front.LoadedRadius.Meters),
        new FrictionGain(vehicle.Brakes.Rear, vehicle.Tyres.Rear.LoadedRadius.Meters));

    /// <summary>Whether the valves of a car are of the kind that the quick solution covers: at most one proportioning valve in the rear line, and at most one hold-off valve in front.</summary>
    public static bool Covers(BrakeHydraulics hydraulics) =>
        hydraulics.FrontValves.Length <= 1 && hydraulics.FrontValves.All(v => v is HoldOffValve) && hydraulics.RearValves.All(v => v is ProportioningValve) && hydraulics.RearValves.Length <= 1;

    /// <summary>One draw.</summary>
    /// <param name="frontFriction">Factor on the front brakes' friction [–].</param>
    /// <param name="rearFriction">Factor on the rear brakes' friction [–].</param>
    /// <param name="height">Factor on the height of the centre of gravity [–].</param>
    /// <param name="frontAdhesion">Adhesion of the surface as the front axle meets it [–].</param>
    /// <param name="rearAdhesion">Adhesion of the surface as the rear axle meets it [–].</param>
    public LockDraw Draw(double frontFriction, double rearFriction, double height, double frontAdhesion, double rearAdhesion)
    {
        double tau = _tau * height;
        double k1 = frontAdhesion * _tyres.Front.AdhesionFactor, k2 = rearAdhesion * _tyres.Rear.AdhesionFactor;
        if (_tyres.Front.LoadSensitivity != 0 || _tyres.Rear.LoadSensitivity != 0)
        {
            (double n1, double n2) = (_frontStatic, _rearStatic);
            for (int i = 0; i < 6; i++)
            {
                k1 = _tyres.Front.AdhesionOn(frontAdhesion, n1 / 2, _tyres.Front.ReferenceLoad.Newtons);
                k2 = _tyres.Rear.AdhesionOn(rearAdhesion, n2 / 2, _tyres.Rear.ReferenceLoad.Newtons);
                double transfer = tau * (k1 * n1 + k2 * n2 + _external);
                (n1, n2) = (_frontStatic + transfer, Math.Max(0, _rearStatic - transfer));
            }
        }

        return new LockDraw(_frontStatic, _rearStatic, tau, _external, k1, k2, _front.At(frontFriction), _rear.At(rearFriction), _frontThreshold, _rearThreshold, _frontEngine, _rearEngine);
    }

    /// <summary>Braking rate and logarithms of the utilisation over the adhesion that the tyres have on a surface of adhesion 1, for line pressures at the brakes and newtons per pascal of each axle.</summary>
    public (double Rate, double LogFront, double LogRear) Utilisation(double frontLine, double rearLine, double frontGain, double rearGain, double height)
    {
        double t1 = frontGain * Math.Max(0, frontLine - _frontThreshold) + _frontEngine;
        double t2 = rearGain * Math.Max(0, rearLine - _rearThreshold) + _rearEngine;
        double transfer = _tau * height * (t1 + t2 + _external);
        double n1 = Math.Min(_frontStatic + transfer, _frontStatic + _rearStatic), n2 = Math.Max(1, _rearStatic - transfer);
        double k1 = _tyres.Front.AdhesionOn(1, n1 / 2, _tyres.Front.ReferenceLoad.Newtons), k2 = _tyres.Rear.AdhesionOn(1, n2 / 2, _tyres.Rear.ReferenceLoad.Newtons);
        return ((t1 + t2 + _external) / WeightNewtons, Math.Log(Math.Max(t1, 1e-3) / (n1 * k1)), Math.Log(Math.Max(t2, 1e-3) / (n2 * k2)));
    }
}
