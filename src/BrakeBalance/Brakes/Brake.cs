namespace BrakeBalance.Brakes;

/// <summary>The friction brake of one wheel: turns line pressure into braking torque.</summary>
/// <remarks>
/// <para>M = C* · η · (p − p₀) · A · r above the threshold pressure p₀, and zero below it.</para>
/// <para>
/// C* is the brake factor of the European texts: circumferential friction force at the effective radius divided by the
/// application force of one piston (p · A). It is a force per force. The "brake factor" of the United States light-vehicle
/// brake rule (49 CFR 571.135, definitions) is another thing, the slope of measured torque against line pressure: here
/// that is <see cref="TorqueNewtonMetresPerPascal"/>, and a brake known only by it is a <see cref="MeasuredBrake"/>.
/// </para>
/// <para>Assumes quasi-static application, the same friction over the whole lining, and rotation in the forward direction.</para>
/// <para>Source: C* as defined in Breuer and Bill, Bremsenhandbuch (2006), seen second hand; torque from the definition.</para>
/// </remarks>
public abstract record Brake
{
    /// <summary>The highest friction coefficient any brake here accepts [–].</summary>
    public const double HighestFriction = 1.2;

    private Kept<double> _torqueNewtonMetresPerPascal;

    /// <summary>Friction coefficient between pad or lining and disc or drum [–]; above 0, at most 1.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero, or is above 1.2.</exception>
    public required double FrictionCoefficient { get; init => field = Require.PositiveUpTo(value, HighestFriction); }

    /// <summary>Line pressure up to which the brake gives no torque (return springs, seals, clearance), gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure ThresholdPressure { get; init => field = Require.NotNegative(value); } = Pressure.Zero;

    /// <summary>Share of the piston force that reaches the pads or shoes [–]; above 0, at most 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero, or is above 1.</exception>
    public double Efficiency { get; init => field = Require.PositiveUpTo(value, 1); } = 1;

    /// <summary>
    /// Piston area that makes one application force: for a disc the pistons of one side, for a drum one wheel-cylinder bore.
    /// </summary>
    public abstract Area PistonArea { get; }

    /// <summary>Distance from the wheel's axis at which the friction force acts; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public abstract Length EffectiveRadius { get; init; }

    /// <summary>
    /// Whether it is a disc or a drum, which decides what its cylinders displace; null for a measured brake that does not say.
    /// </summary>
    public abstract BrakeConstruction? Construction { get; }

    /// <summary>
    /// Brake factor C* at the brake's own friction coefficient [–]: friction force per application force of one piston.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A shoe self-locks at this friction.</exception>
    public double BrakeFactor => BrakeFactorAt(FrictionCoefficient);

    /// <summary>Relative change of C* per relative change of friction, (dC*/C*)/(dμ/μ), at the brake's own friction [–].</summary>
    /// <remarks>
    /// <para>1 means torque follows friction in proportion; 3 means a lining 10 % stickier brakes about 30 % harder.</para>
    /// <para>Central difference over ±0.01 % of the friction coefficient.</para>
    /// <para>Source: definition of a logarithmic derivative.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A shoe self-locks at this friction.</exception>
    public virtual double FrictionSensitivity
    {
        get
        {
            const double relativeStep = 1e-4;
            double above = Factor(FrictionCoefficient * (1 + relativeStep));
            double below = Factor(FrictionCoefficient * (1 - relativeStep));
            return Math.Log(above / below) / Math.Log((1 + relativeStep) / (1 - relativeStep));
        }
    }

    /// <summary>Torque of one wheel's brake per pascal of line pressure above the threshold, in newton metres per pascal.</summary>
    /// <remarks>
    /// <para>C* · η · A · r. Worked out once and kept.</para>
    /// <para>
    /// Source: this slope is the measured "brake factor" of 49 CFR 571.135 S4 (read), that of the least-squares line of torque against line
    /// pressure.
    /// </para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">A shoe self-locks at the brake's friction coefficient.</exception>
    public double TorqueNewtonMetresPerPascal => _torqueNewtonMetresPerPascal.Of(this, static brake =>
        brake.BrakeFactor * brake.Efficiency * brake.PistonArea.SquareMeters * brake.EffectiveRadius.Meters);

    /// <summary>Brake factor C* for another friction coefficient [–].</summary>
    /// <param name="friction">Friction coefficient between lining and disc or drum [–]; above 0, at most 1.2.</param>
    /// <returns>Friction force at the effective radius per application force of one piston [–]; above zero.</returns>
    /// <remarks><para>Source: see the brake's own type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// <paramref name="friction"/> is outside its range, or a leading shoe self-locks at it; the message gives the friction at which it
    /// does.
    /// </exception>
    public double BrakeFactorAt(double friction) => Factor(Require.PositiveUpTo(friction, HighestFriction, nameof(friction)));

    /// <summary>Braking torque of this one wheel at a line pressure.</summary>
    /// <param name="line">Line pressure at this brake, gauge; not negative.</param>
    /// <returns>Torque on one wheel; zero up to the threshold pressure, never negative.</returns>
    /// <remarks>
    /// <para>M = C* · η · (p − p₀) · A · r.</para>
    /// <para>
    /// Source: definition of C*; the straight line above a threshold is also how 49 CFR 571.135 S4 (read) describes measured torque, with
    /// "brake hold-off pressure" for the threshold.
    /// </para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="line"/> is negative, or a shoe self-locks.</exception>
    public Torque BrakingTorque(Pressure line)
    {
        Require.NotNegative(line, nameof(line));
        double acting = Math.Max(0, line.Pascals - ThresholdPressure.Pascals);
        return Torque.FromNewtonMeters(TorqueNewtonMetresPerPascal * acting);
    }

    /// <summary>Greatest friction with which the brake can be computed [–]: below it no shoe locks by itself.</summary>
    public virtual double GreatestFriction => HighestFriction;

    /// <summary>The same brake with its friction changed by a factor, at most to <see cref="GreatestFriction"/>.</summary>
    /// <param name="factor">Factor on the friction [–]; above zero.</param>
    /// <exception cref="ArgumentOutOfRangeException">The factor is not above zero.</exception>
    public Brake WithFrictionFactor(double factor) => WithFriction(Within(FrictionCoefficient * Require.Positive(factor, nameof(factor))));

    /// <summary>Brake factor when the friction is changed by a factor, at most to <see cref="GreatestFriction"/>.</summary>
    /// <param name="friction">The friction wished for [–]; above zero.</param>
    /// <returns>The brake factor there.</returns>
    internal double BrakeFactorNear(double friction) => BrakeFactorAt(Within(friction));

    private double Within(double friction) =>
        friction <= FrictionCoefficient ? friction : Math.Min(friction, Math.Max(FrictionCoefficient, GreatestFriction));

    /// <summary>The same brake with another friction coefficient, for instance hot or with other linings.</summary>
    /// <param name="friction">Friction coefficient [–]; above 0, at most 1.2.</param>
    /// <returns>A copy; this brake is unchanged.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="friction"/> is outside its range.</exception>
    public Brake WithFriction(double friction) =>
        this with { FrictionCoefficient = Require.PositiveUpTo(friction, HighestFriction, nameof(friction)) };

    /// <summary>Whether two brakes have the same description.</summary>
    /// <param name="other">The brake to compare with.</param>
    /// <returns>True when type and every described value agree.</returns>
    public virtual bool Equals(Brake? other) =>
        other is not null
        && EqualityContract == other.EqualityContract
        && FrictionCoefficient.Equals(other.FrictionCoefficient)
        && ThresholdPressure.Pascals.Equals(other.ThresholdPressure.Pascals)
        && Efficiency.Equals(other.Efficiency);

    /// <summary>A hash of the description.</summary>
    public override int GetHashCode() => HashCode.Combine(EqualityContract, FrictionCoefficient, ThresholdPressure.Pascals, Efficiency);

    /// <summary>C* at a friction coefficient already known to lie in range.</summary>
    /// <param name="friction">Friction coefficient [–].</param>
    /// <returns>C* [–].</returns>
    /// <exception cref="ArgumentOutOfRangeException">A shoe self-locks.</exception>
    private protected abstract double Factor(double friction);

    /// <summary>
    /// A one-line description in millimetres, square centimetres and bar; values that may not exist past self-locking are left out.
    /// </summary>
    /// <returns>The description, the same in every culture.</returns>
    public sealed override string ToString() => Invariant.Text($"{GetType().Name} {{ friction {FrictionCoefficient:0.###}, "
        + $"piston area {PistonArea.SquareCentimeters:0.###} cm², effective radius {EffectiveRadius.Millimeters:0.#} mm, "
        + $"threshold {ThresholdPressure.Bars:0.##} bar, efficiency {Efficiency:0.###} }}");
}
