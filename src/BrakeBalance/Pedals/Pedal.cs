namespace BrakeBalance.Pedals;

/// <summary>The brake pedal: lever, return spring, friction, free play and the travel there is to the floor.</summary>
/// <remarks>
/// <para>F_rod = η · i(s) · (F − F_s − c s), with the return spring's force referred to the pad.</para>
/// <para>Assumes slow application. Source: law of the lever.</para>
/// </remarks>
public sealed record Pedal
{
    /// <summary>The lever between pad and rod.</summary>
    public required PedalLever Lever { get; init; }

    /// <summary>Share of the foot's work that reaches the rod [–]; 0.5 to 1; 0.95 unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.5 to 1.</exception>
    public double Efficiency { get; init => field = Require.Between(value, 0.5, 1); } = 0.95;

    /// <summary>Force of the return spring at rest, referred to the pad; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force ReturnSpringForce { get; init => field = Require.NotNegative(value); } = Force.Zero;

    /// <summary>Rate of the return spring, referred to the pad; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public ForcePerLength ReturnSpringRate { get; init => field = Require.NotNegative(value); } = ForcePerLength.Zero;

    /// <summary>Travel of the pad before the rod starts to move; not negative; 4 mm unless said (1/8 to 1/4 in, common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Length FreePlay { get; init => field = Require.NotNegative(value); } = Length.FromMillimeters(4);

    /// <summary>Travel of the pad from rest to the floor or stop; above zero; 150 mm unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Length AvailableTravel { get; init => field = Require.Positive(value); } = Length.FromMillimeters(150);

    /// <summary>Force on the input rod for a force of the foot.</summary>
    /// <param name="pedalForce">Force of the foot on the pad; not negative.</param>
    /// <param name="padTravel">Travel of the pad at that moment, free play left out; not negative.</param>
    /// <returns>Force on the input rod; zero while the return spring holds the pedal up.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative.</exception>
    public Force InputRodForce(Force pedalForce, Length padTravel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(pedalForce, Force.Zero);
        double beyondSpring = pedalForce.Newtons - SpringNewtons(padTravel);
        return Force.FromNewtons(Math.Max(0, Efficiency * Lever.RatioAt(padTravel) * beyondSpring));
    }

    /// <summary>Force of the foot needed for a force on the input rod.</summary>
    /// <param name="inputRodForce">Force on the input rod; not negative.</param>
    /// <param name="padTravel">Travel of the pad at that moment, free play left out; not negative.</param>
    /// <returns>Force of the foot on the pad, the return spring's included; zero for no rod force at rest.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is negative.</exception>
    public Force PedalForce(Force inputRodForce, Length padTravel = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputRodForce, Force.Zero);
        return Force.FromNewtons((inputRodForce.Newtons / (Efficiency * Lever.RatioAt(padTravel))) + SpringNewtons(padTravel));
    }

    /// <summary>Travel of the pad, free play included, for a travel of the input rod.</summary>
    /// <param name="rodTravel">Travel of the input rod; not negative.</param>
    /// <returns>Travel of the pad from rest; null when the lever cannot push the rod so far.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rodTravel"/> is negative.</exception>
    public Length? PadTravel(Length rodTravel) => Lever.PadTravel(rodTravel) is { } travel ? FreePlay + travel : null;

    private double SpringNewtons(Length padTravel) => ReturnSpringForce.Newtons + (ReturnSpringRate.NewtonsPerMeter * padTravel.Meters);
}
