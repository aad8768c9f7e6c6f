namespace BrakeBalance.Brakes;

/// <summary>The brake of one wheel known by a measurement: the slope of its torque against line pressure.</summary>
/// <remarks>
/// <para>
/// The measured slope is what the United States light-vehicle brake rule calls the brake factor: a torque per pressure, not C*.
/// C* here is worked back from it, C* = slope/(η A r), and changes with friction as C*₀ (μ/μ₀)^S.
/// </para>
/// <para>Source: 49 CFR 571.135 S4, definitions of brake factor and hold-off pressure (read); the power law is a stated assumption.</para>
/// </remarks>
public sealed record MeasuredBrake : Brake
{
    /// <summary>Measured torque of one wheel per bar of line pressure above the threshold, in newton metres per bar; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double MeasuredNewtonMetresPerBar { get; init => field = Require.Positive(value); }

    /// <summary>Friction coefficient taken to have acted during the measurement [–]; above 0, at most 1.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero, or is above 1.2.</exception>
    public required double FrictionWhenMeasured { get; init => field = Require.PositiveUpTo(value, HighestFriction); }

    /// <summary>Exponent S with which torque follows friction away from the measurement [–]: 1 for a disc; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public double Sensitivity { get; init => field = Require.Positive(value); } = 1;

    /// <summary>Pistons that make one application force: one side of a caliper, or one wheel-cylinder bore.</summary>
    public required PistonSet Pistons { get; init; }

    /// <summary>Distance from the wheel's axis at which the friction force acts; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public override required Length EffectiveRadius { get; init => field = Require.Positive(value); }

    /// <summary>Disc or drum; null when it was not said, and then nothing that depends on it can be told.</summary>
    public BrakeConstruction? MeasuredOn { get; init; }

    /// <summary>As <see cref="MeasuredOn"/> says.</summary>
    public override BrakeConstruction? Construction => MeasuredOn;

    /// <summary>Piston area that makes one application force.</summary>
    public override Area PistonArea => Pistons.Area;

    /// <summary>The stated sensitivity [–].</summary>
    public override double FrictionSensitivity => Sensitivity;

    private protected override double Factor(double friction)
    {
        const double pascalsPerBar = 1e5;
        double whenMeasured = MeasuredNewtonMetresPerBar / pascalsPerBar / (Efficiency * PistonArea.SquareMeters * EffectiveRadius.Meters);
        return whenMeasured * Math.Pow(friction / FrictionWhenMeasured, Sensitivity);
    }
}
