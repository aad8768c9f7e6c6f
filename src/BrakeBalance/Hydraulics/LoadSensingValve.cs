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
    [Field("Knee when the rear axle carries referenceLoad", Required = true, Low = "0 bar", High = "300 bar", Example = "30 bar",
        HowToMeasure = "Two gauges at the valve, rear axle on scales: inlet pressure at which they part")]
    [Usual("10 bar", "75 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure KneeAtReference { get; init => field = Require.NotNegative(value); }

    /// <summary>Rear axle load (both wheels) at which the knee is <see cref="KneeAtReference"/>; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Rear axle load for which kneeAtReference holds", Required = true, Low = "0.5 kN", High = "50 kN", Example = "6 kN",
        HowToMeasure = "Scales under both rear wheels at that reading")]
    public required Force ReferenceLoad { get; init => field = Require.Positive(value); }

    /// <summary>Rise of the knee for each kilonewton of rise in rear axle load, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Rise of the knee for each kilonewton more on the rear axle", Required = true, Low = "0 bar", High = "50 bar", Example = "8 bar",
        HowToMeasure = "The same at a second load: rise of the knee over rise of the load")]
    public required Pressure KneePerKilonewton { get; init => field = Require.NotNegative(value); }

    /// <summary>Rise of outlet pressure per rise of inlet pressure above the knee [–]; 0 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1, or is not a number.</exception>
    [Field("Rise of the outlet over rise of the inlet above the knee", Required = true, Low = "0", High = "1", Example = "0.35",
        HowToMeasure = "Two gauges: difference of outlet over difference of inlet between two readings above the knee")]
    [Usual("0.2", "0.5", Above = "percent reduction given for slope (a 57 % reduction is a slope of 0.43)")]
    public required double Slope { get; init => field = Require.Between(value, 0, 1); }

    /// <summary>Knee with the rear suspension unloaded, gauge; not negative; zero unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Knee with the rear suspension unloaded; 0 bar when left out", Low = "0 bar", High = "200 bar", Example = "5 bar",
        HowToMeasure = "Two gauges, car lifted until the rear wheels hang")]
    public Pressure LowestKnee { get; init => field = Require.NotNegative(value); }

    /// <summary>Time constant with which the valve follows the rear axle load; not negative; zero unless said.</summary>
    /// <remarks>Only the course of a stop sees it. Source: first-order lag of spring, damper and linkage, common practice.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Time constant with which the valve follows the rear axle load in a stop; none when left out", Low = "0 ms", High = "2000 ms",
        Example = "50 ms",
        HowToMeasure = "Pressure logger in both lines while the tail is dropped: time to 63 % of the change")]
    public Duration Lag { get; init => field = Require.NotNegative(value); }

    /// <inheritdoc/>
    [Field("How much higher the outlet stands at the same inlet on release than on application, above the knee; none when left out",
        Low = "0 bar", High = "40 bar", Example = "3 bar",
        HowToMeasure = "Two gauges, rising and falling: difference of the outlets at the same inlet")]
    public override Pressure Hysteresis { get; init => field = Require.NotNegative(value); }

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
