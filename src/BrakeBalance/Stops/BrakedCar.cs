using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>A car at one load on one road, as a stop sees it.</summary>
/// <remarks>
/// <para>Two axles, the body rigid; drag acts at the height of the centre of gravity, lift as measured at the wheels (with the drag's
/// couple), rolling resistance as a force on the body.</para>
/// <para>Source: common practice of two-axle models.</para>
/// </remarks>
public sealed record BrakedCar
{
    /// <summary>Name shown in tables and figures.</summary>
    public required string Name { get; init; }

    /// <summary>The car of the vehicle file, with what that leaves uncertain; null when it is none.</summary>
    public Vehicle? Vehicle { get; init; }

    /// <summary>Mass with driver and load; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Mass Mass { get; init => field = Require.Positive(value); }

    /// <summary>Distance between the axles; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length Wheelbase { get; init => field = Require.Positive(value); }

    /// <summary>Height of the centre of gravity above the road; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Length CentreOfGravityHeight { get; init => field = Require.NotNegative(value); }

    /// <summary>
    /// Static load on the front axle divided by the weight, on level road and without aerodynamic lift [–]; 0.05 to 0.95.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 0.95.</exception>
    public required double StaticFrontShare { get; init => field = Require.Between(value, 0.05, 0.95); }

    /// <summary>The two axles.</summary>
    public required PerAxle<BrakedAxle> Axles { get; init; }

    /// <summary>Drag coefficient times frontal area; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Area DragArea { get; init => field = Require.NotNegative(value); } = Area.Zero;

    /// <summary>Lift coefficient times frontal area at each axle, upwards positive: negative for downforce.</summary>
    public PerAxle<Area> LiftArea { get; init; } = new(Area.Zero, Area.Zero);

    /// <summary>Density of the air; above zero.</summary>
    /// <remarks>Source: ISO 2533, sea level.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Density AirDensity { get; init => field = Require.Positive(value); } = Density.FromKilogramsPerCubicMeter(1.225);

    /// <summary>Rolling resistance divided by the weight [–]; 0 to 0.1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.1.</exception>
    public double RollingResistance { get; init => field = Require.Between(value, 0, 0.1); }

    /// <summary>Slope of the road, uphill positive; within 20 degrees of level.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The slope is steeper than 20 degrees.</exception>
    public Angle Grade { get; init => field = Require.Within(value, 20); } = Angle.Zero;

    /// <summary>
    /// Moment of inertia about the vertical axis through the centre of gravity; above zero, or null for mass times the product of the
    /// distances to the axles.
    /// </summary>
    /// <remarks>Source: common practice, m a b (dynamic index one).</remarks>
    public MassMomentOfInertia? YawInertia { get; init => field = value is null ? null : Require.Positive(value.Value); }

    /// <summary>Lag of the load transfer, or null for a transfer that follows the braking force at once.</summary>
    public PitchDynamics? Pitch { get; init; }
}
