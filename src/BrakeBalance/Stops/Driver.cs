using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>What the foot asks for in a stop.</summary>
public abstract record Driver
{
    private protected Driver()
    {
    }

    /// <summary>Name shown in tables and figures.</summary>
    public abstract string Name { get; }
}

/// <summary>Stamps on the pedal and stays there, whatever the wheels do.</summary>
public sealed record PanicDriver : Driver
{
    /// <summary>Line pressure at the master cylinder that the foot holds, gauge; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure HeldPressure { get; init => field = Require.Positive(value); }

    /// <inheritdoc/>
    public override string Name => "panic";
}

/// <summary>Builds pressure up to just below the first lock and holds it there.</summary>
/// <remarks>
/// <para>The held pressure is <see cref="Margin"/> times the lowest at which an axle would use all its adhesion with the load transfer of that braking rate, at the initial speed or near standstill.</para>
/// <para>Source: common practice (threshold braking).</para>
/// </remarks>
public sealed record ThresholdDriver : Driver
{
    /// <summary>Held pressure divided by the pressure of first lock [–]; 0.3 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.3 to 1.</exception>
    public double Margin { get; init => field = Require.Between(value, 0.3, 1); } = 0.95;

    /// <inheritdoc/>
    public override string Name => "threshold";
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
