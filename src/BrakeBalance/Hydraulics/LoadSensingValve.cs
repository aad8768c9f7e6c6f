namespace BrakeBalance.Hydraulics;

/// <summary>Load-sensing proportioning valve: its knee rises with the load that the rear suspension carries at that moment.</summary>
/// <remarks>
/// <para>p_k = p_k,ref + c (N₂ − N_ref), not below the lowest knee; above the knee as a proportioning valve.</para>
/// <para>
/// Assumes a linkage that follows the normal reaction of the rear axle, load transfer included: at once, or in a stop with the time
/// constant <see cref="Lag"/>.
/// </para>
/// <para>Source: common practice.</para>
/// </remarks>
public sealed record LoadSensingValve : ReducingValve
{
    /// <summary>Knee when the rear axle carries <see cref="ReferenceLoad"/>, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure KneeAtReference { get; init => field = Require.NotNegative(value); }

    /// <summary>Rear axle load (both wheels) at which the knee is <see cref="KneeAtReference"/>; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Force ReferenceLoad { get; init => field = Require.Positive(value); }

    /// <summary>Rise of the knee for each kilonewton of rise in rear axle load, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure KneePerKilonewton { get; init => field = Require.NotNegative(value); }

    /// <summary>Rise of outlet pressure per rise of inlet pressure above the knee [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1, or is not a number.</exception>
    public required double Slope { get; init => field = Require.Between(value, 0, 1); }

    /// <summary>Knee with the rear suspension unloaded, gauge; not negative; zero unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure LowestKnee { get; init => field = Require.NotNegative(value); }

    /// <summary>Time constant with which the valve follows the rear axle load; not negative; zero unless said.</summary>
    /// <remarks>Only the course of a stop sees it. Source: first-order lag of spring, damper and linkage, common practice.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Duration Lag { get; init => field = Require.NotNegative(value); }

    /// <inheritdoc/>
    public override bool SensesLoad => true;

    private protected override ValveLaw Lines
    {
        get
        {
            double pascalsPerNewton = KneePerKilonewton.Pascals / 1000;
            return ValveLaw.AboveKnee(LowestKnee.Pascals, Slope) with
            {
                B0 = (1 - Slope) * (KneeAtReference.Pascals - pascalsPerNewton * ReferenceLoad.Newtons),
                B1 = Slope,
                BLoad = (1 - Slope) * pascalsPerNewton,
            };
        }
    }
}
