namespace BrakeBalance.Pedals;

/// <summary>The lever between the driver's foot and the input rod of the booster or master cylinder.</summary>
/// <seealso cref="FixedRatioLever"/>
/// <seealso cref="LinkedLever"/>
public abstract record PedalLever
{
    private protected PedalLever()
    {
    }

    /// <summary>
    /// Pedal ratio at a pedal travel: how much further the pad moves than the rod, and so how much the foot's force is multiplied.
    /// </summary>
    /// <param name="padTravel">Travel of the pedal pad from rest; not negative.</param>
    /// <returns>Pedal ratio [–], above zero.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="padTravel"/> is negative or beyond what the lever allows.</exception>
    public abstract double RatioAt(Length padTravel);

    /// <summary>Travel of the input rod for a travel of the pad.</summary>
    /// <param name="padTravel">Travel of the pedal pad from rest; not negative.</param>
    /// <returns>Travel of the rod from rest.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="padTravel"/> is negative or beyond what the lever allows.</exception>
    public abstract Length RodTravel(Length padTravel);

    /// <summary>Travel of the pad for a travel of the input rod: the inverse of <see cref="RodTravel"/>.</summary>
    /// <param name="rodTravel">Travel of the rod from rest; not negative.</param>
    /// <returns>Travel of the pad from rest; null when the lever cannot push the rod so far.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rodTravel"/> is negative.</exception>
    public abstract Length? PadTravel(Length rodTravel);
}
