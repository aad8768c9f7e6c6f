namespace BrakeBalance.Measurements;

/// <summary>What is believed before the test stops, and how far stops scatter.</summary>
public sealed record EstimationOptions
{
    /// <summary>How far friction and height of the centre of gravity may lie off the vehicle file.</summary>
    public ParameterSpread Prior { get; init; } = new();

    /// <summary>Surfaces whose adhesion is known better than their name says.</summary>
    public IReadOnlyList<SurfaceCondition> Surfaces { get; init; } = [];

    /// <summary>Knee against turns as found with gauges; null to go by the vehicle file.</summary>
    public KnobCalibration? Knob { get; init; }

    /// <summary>Relative scatter of the deceleration at a given pressure that is expected, friction from stop to stop and instruments together [–]; 0.005 to 0.3. The stops correct it.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public double DecelerationScatter { get; init => field = Require.Between(value, 0.005, 0.3); } = 0.04;

    /// <summary>Relative scatter of the pressure at which an axle locks, surface and friction together [–]; 0.005 to 0.3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside that range.</exception>
    public double LockScatter { get; init => field = Require.Between(value, 0.005, 0.3); } = 0.05;

    /// <summary>Steps of the Metropolis chains that check the result; 0 for no check.</summary>
    public int CheckSteps { get; init; }

    /// <summary>Seed of the check's random numbers.</summary>
    public int Seed { get; init; } = 1;
}
