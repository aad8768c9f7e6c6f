using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>A vehicle at one load on one surface, ready to stop.</summary>
/// <param name="Car">The car on its surface.</param>
/// <param name="Heat">Heat capacity, cooling and fade of one wheel's brake of each axle.</param>
/// <param name="BuildUp">How pressure follows the foot in an emergency stop.</param>
/// <param name="MaximumPressure">Highest line pressure at the master cylinder considered, gauge.</param>
/// <param name="EmergencyPressure">
/// Line pressure at the master cylinder that an emergency driver reaches and holds, gauge: what foot, assist and travel give.
/// </param>
/// <param name="EmergencyBound">What ends the rise to <see cref="EmergencyPressure"/>.</param>
/// <param name="PedalForce">
/// Force of the emergency driver's foot; null when the vehicle does not say what lies between foot and line pressure.
/// </param>
/// <param name="FrontRollShare">Part of the lateral load transfer that the front axle takes [–].</param>
/// <param name="MaximumSpeed">Maximum speed, for the fade test.</param>
/// <param name="Fluid">The brake fluid.</param>
/// <param name="Adhesion">Adhesion of the surface for a tyre of factor one at its reference load [–].</param>
/// <param name="Assumptions">The typical values that stand in for what the vehicle file leaves out, in words.</param>
/// <remarks>
/// <para>Made from the vehicle file; where the file is silent a typical value stands in, and <see cref="Assumptions"/> names it.</para>
/// <para>Source: typical values are common practice.</para>
/// </remarks>
public sealed record StopSetup(
    BrakedCar Car, PerAxle<ThermalBrake> Heat, PressureBuildUp BuildUp, Pressure MaximumPressure, Pressure EmergencyPressure,
    StopBound EmergencyBound, Force? PedalForce, double FrontRollShare, Speed MaximumSpeed, BrakeFluidGrade Fluid, double Adhesion,
    IReadOnlyList<string> Assumptions)
{
    /// <summary>A driver who stamps on the pedal and holds all the pressure that comes.</summary>
    public EmergencyDriver Emergency => new() { HeldPressure = EmergencyPressure, Bound = EmergencyBound };

    /// <summary>A driver who holds just below the first lock, or all the pressure that comes when that is less.</summary>
    public ThresholdDriver Threshold => new() { HighestPressure = EmergencyPressure, Bound = EmergencyBound };

    /// <summary>The bound of an ideal anti-lock control with a foot that stamps on the pedal.</summary>
    public AntilockBound Antilock => new() { HeldPressure = EmergencyPressure, Bound = EmergencyBound };

    /// <summary>A driver who stamps on the pedal and eases after the first lock.</summary>
    /// <param name="releaseRate">Fall per second of the pressure that the foot asks for; above zero.</param>
    public EasingDriver Easing(PressureChangeRate releaseRate)
        => new() { HeldPressure = EmergencyPressure, Bound = EmergencyBound, ReleaseRate = releaseRate };

    /// <summary>The car with the torque that its hot brakes have left at the end of a stop.</summary>
    /// <param name="stop">A stop of a heat cycle of this set-up.</param>
    /// <returns>The car with other brakes.</returns>
    public BrakedCar HotAfter(HeatStop stop)
    {
        ArgumentNullException.ThrowIfNull(stop);
        PerAxle<double> left = stop.TorqueFactorAtEnd;
        return Car with
        {
            Axles = new(
                Car.Axles.Front with { Brakes = Car.Axles.Front.Brakes.Scaled(left.Front) },
                Car.Axles.Rear with { Brakes = Car.Axles.Rear.Brakes.Scaled(left.Rear) }),
        };
    }

    /// <summary>Why a vehicle's foot cannot stop it.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="load">One of its load cases.</param>
    /// <param name="conditions">Road and foot; a level road and the vehicle's foot unless said.</param>
    /// <returns>A sentence; null when the foot brings pressure to the brakes, so that there is a set-up.</returns>
    public static string? WhyNoStop(Vehicle vehicle, LoadCase load, StopConditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(load);
        (Pressure held, _, Force? force) = Reach(vehicle, load, conditions ?? new(), []);
        return NoPressure(held, force);
    }

    /// <summary>Makes the set-up.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="load">One of its load cases.</param>
    /// <param name="adhesion">Peak adhesion of the surface for a tyre of factor one at its reference load [–]; 0.02 to 2.</param>
    /// <param name="shape">Slip curve that gives the shape; null for the tyre's own, or else one that suits the adhesion.</param>
    /// <param name="conditions">Road and foot; a level road and the vehicle's foot unless said.</param>
    /// <returns>The set-up.</returns>
    /// <exception cref="ArgumentException">The foot's force brings no pressure to the brakes (<see cref="WhyNoStop"/>).</exception>
    /// <exception cref="ArgumentOutOfRangeException">
    /// The adhesion is outside its range, or a drum's shoe would lock by itself at a friction of its curve.
    /// </exception>
    public static StopSetup From(Vehicle vehicle, LoadCase load, double adhesion, SlipCurve? shape = null,
        StopConditions? conditions = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(load);
        Require.Between(adhesion, 0.02, 2, nameof(adhesion));
        List<string> assumed = [];
        VehicleDynamics dynamics = vehicle.Dynamics ?? new();
        StopConditions road = conditions ?? new();
        (Pressure emergencyPressure, StopBound emergencyBound, Force? pedalForce) = Reach(vehicle, load, road, assumed);
        if (NoPressure(emergencyPressure, pedalForce) is { } why)
        {
            throw new ArgumentException(why);
        }

        double emergencySeconds = Known(dynamics.EmergencyRiseTime?.Seconds, 0.25, "time to the full push of an emergency stop 0.25 s",
            assumed);
        Aerodynamics? air = vehicle.Aerodynamics;
        var car = new BrakedCar
        {
            Name = $"{vehicle.Name}, {load.Name}",
            Vehicle = vehicle,
            Mass = load.Mass,
            Wheelbase = vehicle.Wheelbase,
            CentreOfGravityHeight = load.CentreOfGravityHeight,
            StaticFrontShare = 1 - load.FrontAxleToCentreOfGravity / vehicle.Wheelbase,
            Axles = new(Axle(vehicle, BrakeBalance.Axle.Front, adhesion, shape, assumed),
                Axle(vehicle, BrakeBalance.Axle.Rear, adhesion, shape, assumed)),
            Grade = road.Grade,
            DragArea = air?.DragArea ?? Area.Zero,
            LiftArea = new(air?.FrontLiftArea ?? Area.Zero, air?.RearLiftArea ?? Area.Zero),
            RollingResistance = vehicle.RollingResistanceCoefficient,
            YawInertia = dynamics.YawInertia,
            Pitch = dynamics.PitchFrequency is { } pitch
                ? new PitchDynamics
                {
                    NaturalFrequency = pitch,
                    DampingRatio = Known(dynamics.PitchDamping, 0.35, "damping ratio of pitch 0.35", assumed),
                    InstantShare = dynamics.AntiDive ?? 0,
                }
                : null,
        };
        if (dynamics.YawInertia is null)
        {
            assumed.Add("yaw inertia mass times both axle distances");
        }

        return new StopSetup(
            Car: air is null ? car : car with { AirDensity = air.AirDensity },
            Heat: new(
                ThermalFigures.Of(vehicle.Brakes.Front, vehicle.AxleDynamics.Front.Heat, "front", assumed),
                ThermalFigures.Of(vehicle.Brakes.Rear, vehicle.AxleDynamics.Rear.Heat, "rear", assumed)),
            BuildUp: new PressureBuildUp
            {
                RampRate = PressureChangeRate.FromPascalsPerSecond(emergencyPressure.Pascals / emergencySeconds),
                AssistLag = vehicle.Control?.Assist is Assist.NoAssist ? dynamics.AssistLag ?? Duration.Zero
                    : Duration.FromSeconds(Known(dynamics.AssistLag?.Seconds, 0.06, "assist lag 60 ms", assumed)),
            },
            MaximumPressure: vehicle.Hydraulics.MaximumPressure,
            EmergencyPressure: emergencyPressure,
            EmergencyBound: emergencyBound,
            PedalForce: pedalForce,
            FrontRollShare: Known(dynamics.FrontRollShare, 0.55, "front axle takes 55 % of the lateral load transfer", assumed),
            MaximumSpeed: Speed.FromKilometersPerHour(
                Known(dynamics.MaximumSpeed?.KilometersPerHour, 160, "maximum speed 160 km/h (99 mph)", assumed)),
            Fluid: vehicle.Control?.Circuits?.Front.Fluid.Grade ?? BrakeFluidGrade.Dot4,
            Adhesion: adhesion,
            Assumptions: assumed);
    }

    private static (Pressure Held, StopBound Bound, Force? PedalForce) Reach(Vehicle vehicle, LoadCase load, StopConditions conditions,
        List<string> assumed)
    {
        Pressure highest = vehicle.Hydraulics.MaximumPressure;
        if (vehicle.Control is not { } control)
        {
            assumed.Add(Invariant.Text(
                $"full pressure held at {InBoth.Text(highest)}, the highest considered, because the car's pedal and assist are not known"));
            return (highest, StopBound.HighestPressure, null);
        }

        Force force = conditions.PedalForce ?? control.Foot.Emergency
            ?? Force.FromNewtons(Known(null, StopConditions.UsualPedalForce.Newtons,
                $"force of the foot in an emergency stop {InBoth.Text(StopConditions.UsualPedalForce)}", assumed));
        FootReach reach = FootReach.Of(new ControlForce(new BalanceModel(vehicle, load)), force);
        return (reach.MasterPressure, BoundOf(reach.Bound), force);
    }

    private static string? NoPressure(Pressure held, Force? force) => held > Pressure.Zero || force is not { } foot ? null
        : $"A foot of {InBoth.Text(foot)} brings no pressure to the brakes: springs and friction hold it all, or the pedal ends before.";

    private static StopBound BoundOf(RateBound? bound) => bound switch
    {
        RateBound.Foot => StopBound.Foot,
        RateBound.Travel => StopBound.Travel,
        _ => StopBound.HighestPressure,
    };

    private static BrakedAxle Axle(Vehicle vehicle, Axle axle, double adhesion, SlipCurve? shape, List<string> assumed)
    {
        Tyre tyre = vehicle.Tyres[axle];
        AxleDynamics dynamics = vehicle.AxleDynamics[axle];
        string name = axle == BrakeBalance.Axle.Front ? "front" : "rear";
        SlipCurve curve = shape ?? dynamics.SlipCurve ?? ShapeFor(adhesion);
        if (shape is null && dynamics.SlipCurve is null)
        {
            assumed.Add($"{name} slip curve of the shape \"{curve.Name}\"");
        }

        curve = (curve with
        {
            LoadSensitivity = tyre.LoadSensitivity > 0
                ? new LoadSensitivity { ReferenceLoad = tyre.ReferenceLoad, LossPerDoubling = tyre.LoadSensitivity }
                : curve.LoadSensitivity,
        }).ScaledToPeak(adhesion * tyre.AdhesionFactor, tyre.ReferenceLoad);
        return new BrakedAxle
        {
            LoadedRadius = tyre.LoadedRadius,
            Tyre = curve,
            Brakes = TorqueCurve.Behind(vehicle.Brakes[axle], vehicle.Hydraulics, axle),
            WheelInertia = MassMomentOfInertia.FromKilogramSquareMeters(
                2 * Known(dynamics.WheelInertia?.KilogramSquareMeters, 1, $"{name} wheel inertia 1 kg·m² (24 lb·ft²) each", assumed)),
            EngineBrakingTorque = vehicle.EngineBraking is { } engine && engine.DrivenAxle == axle
                ? engine.BrakingForce * tyre.LoadedRadius
                : Torque.Zero,
            LateralSlipWeight = Known(dynamics.LateralStiffnessRatio, 0.5, $"{name} lateral slip stiffness half of the longitudinal",
                assumed),
            BrakeImbalance = dynamics.BrakeImbalance,
            Track = Length.FromMeters(Known(dynamics.Track?.Meters, 1.45, $"{name} track 1.45 m (4.76 ft)", assumed)),
        };
    }

    private static SlipCurve ShapeFor(double adhesion) => adhesion switch
    {
        >= 0.6 => PublishedSlipCurves.DryAsphalt,
        >= 0.28 => PublishedSlipCurves.WetAsphalt,
        _ => PublishedSlipCurves.Snow,
    };

    private static double Known(double? given, double typical, string words, List<string> assumed)
    {
        if (given is { } known)
        {
            return known;
        }

        assumed.Add(words);
        return typical;
    }
}
