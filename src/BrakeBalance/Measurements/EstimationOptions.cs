namespace BrakeBalance.Measurements;

/// <summary>What is believed before the test stops, and how far stops scatter.</summary>
public sealed record EstimationOptions
{
    /// <summary>How far friction and height of the centre of gravity may lie off the vehicle file.</summary>
    public ParameterSpread Prior { get; init; } = new();

    /// <summary>Surfaces whose adhesion is known better than their name says.</summary>
    public IReadOnlyList<SurfaceCondition> Surfaces { get; init; } = [];

    /// <summary>Knee against turns as found with gauges; null to go by the vehicle file.</summary>
    public AdjusterCalibration? Adjuster { get; init; }

    /// <summary>Relative error expected of a deceleration read [–]; 0.005 to 0.3. The stops correct it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public double DecelerationScatter { get; init => field = Require.Between(value, 0.005, 0.3); } = 0.03;

    /// <summary>Relative scatter expected of each axle's adhesion from stop to stop [–]; 0.005 to 0.3. The stops correct it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public double AdhesionScatter { get; init => field = Require.Between(value, 0.005, 0.3); } = 0.04;

    /// <summary>Relative scatter of each axle's friction from stop to stop [–]; 0 to 0.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public double FrictionScatter { get; init => field = Require.Between(value, 0, 0.2); } = 0.02;

    /// <summary>Standard deviation of one gauge's reading; not negative; half a bar or so for dial gauges (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure GaugeScatter { get; init => field = Require.NotNegative(value); } = Pressure.FromBars(0.6);

    /// <summary>Steps of the Metropolis chains that check the result; 0 for no check.</summary>
    public int CheckSteps { get; init; }

    /// <summary>Seed of the check's random numbers.</summary>
    public int Seed { get; init; } = 1;
}
