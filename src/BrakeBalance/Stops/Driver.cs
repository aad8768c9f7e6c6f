namespace BrakeBalance.Stops;

/// <summary>What the foot asks for in a stop.</summary>
public abstract record Driver
{
    private protected Driver()
    {
    }

    /// <summary>Name shown in tables and figures.</summary>
    public abstract string Name { get; }

    /// <summary>What ends the rise of pressure, as far as it is known.</summary>
    public StopBound Bound { get; init; } = StopBound.Chosen;
}

/// <summary>What a stop is bound by.</summary>
public enum StopBound
{
    /// <summary>A pressure that was chosen.</summary>
    Chosen,

    /// <summary>The highest line pressure considered.</summary>
    HighestPressure,

    /// <summary>The driver's foot: pedal and assist give no more pressure at its force.</summary>
    Foot,

    /// <summary>The pedal or the master cylinder is at its end.</summary>
    Travel,

    /// <summary>The road: an axle reaches its adhesion.</summary>
    Road,
}

/// <summary>Stamps on the pedal and stays there, whatever the wheels do.</summary>
public sealed record EmergencyDriver : Driver
{
    /// <summary>Line pressure at the master cylinder that the foot holds, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure HeldPressure { get; init => field = Require.Positive(value); }

    /// <inheritdoc/>
    public override string Name => "emergency";
}

/// <summary>Builds pressure up to just below the first lock and holds it there.</summary>
/// <remarks>
/// <para>The held pressure is <see cref="Margin"/> times the lowest at which an axle would use all its adhesion with the load transfer
/// of that deceleration, at the initial speed or near standstill.</para>
/// <para>Source: common practice (threshold braking).</para>
/// </remarks>
public sealed record ThresholdDriver : Driver
{
    /// <summary>Held pressure divided by the pressure of first lock [–]; 0.3 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 1.</exception>
    public double Margin { get; init => field = Require.Between(value, 0.3, 1); } = 0.95;

    /// <summary>Highest line pressure at the master cylinder that the foot reaches, gauge; above zero; null for no bound.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Pressure? HighestPressure { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <inheritdoc/>
    public override string Name => "threshold";
}

/// <summary>Stamps on the pedal, and eases when an axle has locked, until every wheel turns again.</summary>
/// <remarks>
/// <para>
/// The pressure that the foot asks for falls at <see cref="ReleaseRate"/> from <see cref="Reaction"/> after a lock, or from
/// <see cref="EasesAt"/>, while a wheel stands; what is left when all turn is held. A lock below walking pace is left alone.
/// </para>
/// <para>Source: common practice, "ease off until the wheels turn"; a valve with hysteresis keeps the rear axle locked longest.</para>
/// </remarks>
public sealed record EasingDriver : Driver
{
    /// <summary>Line pressure at the master cylinder that the foot holds at first, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure HeldPressure { get; init => field = Require.Positive(value); }

    /// <summary>Fall per second of the pressure that the foot asks for; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required PressureChangeRate ReleaseRate { get; init => field = Require.Positive(value); }

    /// <summary>Time from a lock until the foot begins to ease; not negative; 0.5 s unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration Reaction { get; init => field = Require.NotNegative(value); } = Duration.FromSeconds(0.5);

    /// <summary>Time from first touch until the foot begins to ease; null for <see cref="Reaction"/> after the first lock.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration? EasesAt { get; init => field = value is { } given ? Require.NotNegative(given) : null; }

    /// <inheritdoc/>
    public override string Name => "easing";
}

/// <summary>A bound for comparison: stamps on the pedal, and each axle is kept at the slip of greatest adhesion by itself.</summary>
/// <remarks>
/// <para>No controller is modelled: a real one stays below this, by cycling and by reaction time.</para>
/// <para>Source: the bound is the greatest ordinate of the slip curve times <see cref="Efficiency"/>.</para>
/// </remarks>
public sealed record AntilockBound : Driver
{
    /// <summary>Line pressure at the master cylinder that the foot holds, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure HeldPressure { get; init => field = Require.Positive(value); }

    /// <summary>Adhesion that control makes use of, divided by the peak adhesion [–]; 0.5 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.5 to 1.</exception>
    public double Efficiency { get; init => field = Require.Between(value, 0.5, 1); } = 1;

    /// <inheritdoc/>
    public override string Name => "anti-lock bound";
}
