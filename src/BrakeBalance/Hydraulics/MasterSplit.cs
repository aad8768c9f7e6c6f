using UnitsNet;

namespace BrakeBalance.Hydraulics;

/// <summary>How the two circuits share what the driver puts in: both pistons of a tandem at one pressure, or two cylinders on a balance bar.</summary>
public abstract record MasterSplit
{
    private protected MasterSplit()
    {
    }

    /// <summary>Rear master-cylinder pressure over front master-cylinder pressure [–]; above zero.</summary>
    public abstract double RearToFrontPressureRatio { get; }
}

/// <summary>Tandem master cylinder: both circuits leave it at the same pressure.</summary>
/// <remarks>Assumes equal bores and neglects the small spring and seal difference between the two pistons. Source: common practice.</remarks>
public sealed record TandemSplit : MasterSplit
{
    /// <inheritdoc/>
    public override double RearToFrontPressureRatio => 1;
}

/// <summary>Two master cylinders side by side, the pedal's force shared between them by a balance bar.</summary>
/// <remarks>
/// <para>p_r/p_f = ((1 − φ)/A_r)/(φ/A_f), φ being the front cylinder's share of the rod force.</para>
/// <para>Source: statics of a lever on two supports.</para>
/// </remarks>
public sealed record BalanceBarSplit : MasterSplit
{
    /// <summary>Bore of the front circuit's master cylinder; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length FrontBore { get; init => field = Require.Positive(value); }

    /// <summary>Bore of the rear circuit's master cylinder; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Length RearBore { get; init => field = Require.Positive(value); }

    /// <summary>The front cylinder's share of the rod force [–]; 0.2 to 0.8 (fully over, a bar gives about 2:1: common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.2 to 0.8.</exception>
    public required double FrontForceShare { get; init => field = Require.Between(value, 0.2, 0.8); }

    /// <inheritdoc/>
    public override double RearToFrontPressureRatio
    {
        get
        {
            double bores = FrontBore / RearBore;
            return (1 - FrontForceShare) / FrontForceShare * bores * bores;
        }
    }
}
