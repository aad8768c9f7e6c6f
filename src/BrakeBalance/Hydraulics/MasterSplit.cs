namespace BrakeBalance.Hydraulics;

/// <summary>
/// How the two circuits share what the driver puts in: both pistons of a tandem under one force, or two cylinders on a balance bar.
/// </summary>
[Kind("tandem", typeof(TandemSplit), "one tandem master cylinder")]
[Kind("balance bar", typeof(BalanceBarSplit), "two master cylinders on a balance bar")]
public abstract record MasterSplit
{
    private protected MasterSplit()
    {
    }

    /// <summary>Rear master-cylinder pressure over front master-cylinder pressure [–]; above zero.</summary>
    public abstract double RearToFrontPressureRatio { get; }
}

/// <summary>
/// Tandem master cylinder: both circuits leave it at the same pressure, or, with stepped bores, at pressures as one over their areas.
/// </summary>
/// <remarks>
/// <para>
/// p_r/p_f = A_f/A_r: the rod's force stands on the first piston, p₁ A₁ = F, and the floating piston, one end in each bore with the
/// step between them open to the reservoir, carries it on, p₂ A₂ = p₁ A₁. So each chamber has F over its own area, whichever is
/// first.
/// </para>
/// <para>Neglects the small spring and seal difference between the two pistons. Source: equilibrium of the floating piston.</para>
/// </remarks>
public sealed record TandemSplit : MasterSplit
{
    /// <summary>Area of the front circuit's piston over that of the rear's [–]; 1/40 to 40; 1, equal bores, unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1/40 to 40.</exception>
    public double FrontToRearAreaRatio { get; init => field = Require.Between(value, 1.0 / 40, 40); } = 1;

    /// <inheritdoc/>
    public override double RearToFrontPressureRatio => FrontToRearAreaRatio;
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
    [Field("Bore of the front circuit's master cylinder", Required = true, Low = "10 mm", High = "40 mm", Example = "19.05 mm",
        HowToMeasure = "Cast or stamped on the cylinder; bore gauge")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "outside of the cylinder")]
    public required Length FrontBore { get; init => field = Require.Positive(value); }

    /// <summary>Bore of the rear circuit's master cylinder; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Bore of the rear circuit's master cylinder", Required = true, Low = "10 mm", High = "40 mm", Example = "20.64 mm",
        HowToMeasure = "Cast or stamped on the cylinder; bore gauge")]
    [Usual("14 mm", "32 mm", Below = "radius given for diameter", Above = "outside of the cylinder")]
    public required Length RearBore { get; init => field = Require.Positive(value); }

    /// <summary>
    /// The front cylinder's share of the rod force [–]; 0.2 to 0.8 (fully over, a bar gives about 2:1: common practice).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.2 to 0.8.</exception>
    [Field("Front cylinder's share of the rod force: distance from bearing to rear clevis over clevis spacing", Required = true,
        Low = "0.2", High = "0.8", Example = "0.55", HowToMeasure = "Rule: bearing centre to rear clevis over clevis spacing, under load")]
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
