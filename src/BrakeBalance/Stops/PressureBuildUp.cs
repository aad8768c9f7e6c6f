namespace BrakeBalance.Stops;

/// <summary>How line pressure follows the driver's foot: dead time, a ramp, and the lag of the assist.</summary>
/// <remarks>
/// <para>After the dead time the foot asks for a pressure that rises at <see cref="RampRate"/> to the target and stays there; the
/// pressure follows it as a first-order lag with <see cref="AssistLag"/>.</para>
/// <para>Source: common practice; closed form of a first-order lag under a ramp.</para>
/// </remarks>
public sealed record PressureBuildUp
{
    /// <summary>Time from first touch of the pedal to the first pressure; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration DeadTime { get; init => field = Require.NotNegative(value); } = Duration.FromMilliseconds(50);

    /// <summary>Rise per second of the pressure that the foot asks for; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public PressureChangeRate RampRate { get; init => field = Require.Positive(value); } = PressureChangeRate.FromMegapascalsPerSecond(40);

    /// <summary>Time constant of the assist; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration AssistLag { get; init => field = Require.NotNegative(value); } = Duration.FromMilliseconds(60);

    /// <summary>Pressure at once, for closed forms and limits.</summary>
    public static PressureBuildUp Instant { get; } = new()
    {
        DeadTime = Duration.Zero,
        AssistLag = Duration.Zero,
        RampRate = PressureChangeRate.FromMegapascalsPerSecond(1e6),
    };
}
