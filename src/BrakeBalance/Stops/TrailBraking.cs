using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>One lateral acceleration of a bend map.</summary>
/// <param name="Course">What happens in that bend while line pressure rises, the car as it is set.</param>
/// <param name="SafeKnee">Highest knee up to which the rear never loses the bend before the front, gauge; the car's highest pressure when
/// any knee does; null when no knee does, or the car has no proportioning valve.</param>
public sealed record BendPoint(TurnCourse Course, Pressure? SafeKnee)
{
    /// <summary>True when the rear axle, as the car is set, loses the bend before the front: the car spins.</summary>
    public bool RearLetsGo => Course.FirstAxle?.Axle == Axle.Rear;
}

/// <summary>The setting over the lateral acceleration of a bend, for one load on one surface at one speed.</summary>
/// <param name="Car">Name of the car.</param>
/// <param name="LoadCase">Name of the load case.</param>
/// <param name="Adhesion">Adhesion of the surface for a tyre of factor one at its reference load [–].</param>
/// <param name="Speed">Speed at which lift and drag are taken.</param>
/// <param name="FrontRollShare">Part of the lateral load transfer that the front axle takes [–].</param>
/// <param name="MaximumPressure">Highest line pressure considered, gauge.</param>
/// <param name="Valve">The proportioning valve as it is set; null when the car has none.</param>
/// <param name="Points">The points, lateral acceleration rising from zero.</param>
/// <param name="Limit">Lateral acceleration that the tyres hold without braking.</param>
public sealed record BendMap(
    Vehicle Car, string LoadCase, double Adhesion, Speed Speed, double FrontRollShare, Pressure MaximumPressure, ProportioningValve? Valve,
    IReadOnlyList<BendPoint> Points, Acceleration Limit)
{
    /// <summary>The knee that holds in every bend of the map, gauge; null when there is none in one of them, or no valve.</summary>
    public Pressure? SafeKneeEverywhere => Points.Any(point => point.SafeKnee is null) ? null : Points.Min(point => point.SafeKnee);

    /// <summary>True when any knee keeps the front first at that point.</summary>
    /// <param name="point">A point of the map.</param>
    public bool AnyKnee(BendPoint point) => point.SafeKnee >= MaximumPressure;
}

/// <summary>Braking while turning in: which axle lets go, and the knee up to which it is the front.</summary>
/// <remarks>
/// <para>At each lateral acceleration the pressure rises as in <see cref="TurnBraking"/>. The safe knee is found by scanning upwards and
/// halving: up to it the rear never loses the bend before the front.</para>
/// <para>Assumes friction as in the vehicle file; give a vehicle with other friction for its spread.</para>
/// <para>Source: common practice (trail braking, roll stiffness against rear brake).</para>
/// </remarks>
public static class TrailBraking
{
    private const int Knees = 14;

    /// <summary>Maps the bends from straight on to near the limit of the tyres.</summary>
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="load">One of its load cases.</param>
    /// <param name="adhesion">Peak adhesion of the surface for a tyre of factor one at its reference load [–]; 0.02 to 2.</param>
    /// <param name="speed">Speed at which lift and drag are taken; not negative.</param>
    /// <param name="step">Step of the lateral acceleration; at least 0.005 g; 0.05 g when left out.</param>
    /// <returns>The map; one point only when the tyres hold less than one step.</returns>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public static BendMap Map(Vehicle vehicle, LoadCase load, double adhesion, Speed speed, Acceleration? step = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        double apart = Require.Between(step?.StandardGravity ?? 0.05, 0.005, 1, nameof(step));
        var setup = StopSetup.From(vehicle, load, adhesion);
        List<BendPoint> points = [];
        double limit = 0;
        for (int i = 0; ; i++)
        {
            var lateral = Acceleration.FromStandardGravity(Math.Round(i * apart, 9));
            if (TurnBraking.Follow(vehicle, setup, lateral, speed) is not { } course)
            {
                limit = Limit(setup, speed, limit, lateral.StandardGravity);
                break;
            }

            limit = lateral.StandardGravity;
            points.Add(new BendPoint(course,
                vehicle.Hydraulics.RearProportioningValve is null ? null : SafeKnee(vehicle, setup, lateral, speed)));
        }

        return new BendMap(
            Car: vehicle,
            LoadCase: load.Name,
            Adhesion: adhesion,
            Speed: speed,
            FrontRollShare: setup.FrontRollShare,
            MaximumPressure: vehicle.Hydraulics.MaximumPressure,
            Valve: vehicle.Hydraulics.RearProportioningValve,
            Points: points,
            Limit: Acceleration.FromStandardGravity(limit));
    }

    /// <summary>The highest knee up to which the rear axle never loses the bend before the front.</summary>
    /// <param name="vehicle">A vehicle with a proportioning valve.</param>
    /// <param name="setup">The set-up of that vehicle at a load on a surface.</param>
    /// <param name="lateralAcceleration">Lateral acceleration of the bend; not negative.</param>
    /// <param name="speed">Speed at which lift and drag are taken; not negative.</param>
    /// <returns>The knee, gauge, within 1 kPa downwards; the vehicle's highest pressure when any knee does; null when not even a knee at
    /// zero does.</returns>
    /// <exception cref="ArgumentException">The vehicle has no proportioning valve, or the bend alone is beyond its tyres.</exception>
    public static Pressure? SafeKnee(Vehicle vehicle, StopSetup setup, Acceleration lateralAcceleration, Speed speed)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        Refuse.If(vehicle.Hydraulics.RearProportioningValve is null, "The vehicle has no proportioning valve.", nameof(vehicle));

        double top = vehicle.Hydraulics.MaximumPressure.Pascals;
        double low = 0;
        if (!Holds(low))
        {
            return null;
        }

        for (int i = 1; i <= Knees; i++)
        {
            double high = top * i / Knees;
            if (Holds(high))
            {
                low = high;
                continue;
            }

            while (high - low > 1e3)
            {
                double middle = 0.5 * (low + high);
                (low, high) = Holds(middle) ? (middle, high) : (low, middle);
            }

            return Pressure.FromPascals(low);
        }

        return vehicle.Hydraulics.MaximumPressure;

        bool Holds(double knee)
        {
            Vehicle set = vehicle.WithRearKnee(Pressure.FromPascals(knee));
            TurnCourse course = TurnBraking.Follow(set, setup, lateralAcceleration, speed)
                ?? throw new ArgumentException("The bend alone is beyond the tyres.", nameof(lateralAcceleration));
            return course.FirstAxle?.Axle != Axle.Rear;
        }
    }

    private static double Limit(StopSetup setup, Speed speed, double low, double high)
    {
        while (high - low > 1e-4)
        {
            double middle = 0.5 * (low + high);
            (low, high) = TurnBraking.Follow(setup.Car, Acceleration.FromStandardGravity(middle), setup.FrontRollShare, speed) is null
                ? (low, middle) : (middle, high);
        }

        return low;
    }
}
