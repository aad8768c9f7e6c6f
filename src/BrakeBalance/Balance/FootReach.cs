namespace BrakeBalance.Balance;

/// <summary>The line pressure that a foot reaches through pedal and assist, whatever the road allows.</summary>
/// <param name="MasterPressure">Front master-cylinder pressure, gauge; zero when nothing arrives.</param>
/// <param name="Bound">What ends it: the foot's force, or the travel of pedal and master cylinder; null for the highest pressure
/// considered.</param>
internal sealed record FootReach(Pressure MasterPressure, RateBound? Bound)
{
    /// <summary>The reach of a car's pedal under a force.</summary>
    /// <param name="control">The foot in front of the car's balance.</param>
    /// <param name="pedalForce">Force of the foot on the pad; not negative.</param>
    /// <returns>The least of what force, travel and the highest pressure considered allow.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="pedalForce"/> is negative.</exception>
    public static FootReach Of(ControlForce control, Force pedalForce)
    {
        Pressure foot = control.At(pedalForce).Balance.MasterPressure;
        Pressure highest = control.Model.MaximumPressure;
        (Pressure wanted, RateBound? bound) = foot < highest ? (foot, RateBound.Foot) : (highest, (RateBound?)null);
        if (!Ends(wanted))
        {
            return new FootReach(wanted, bound);
        }

        (double low, double high) = (0, wanted.Pascals);
        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Ends(Pressure.FromPascals(middle)) ? (low, middle) : (middle, high);
        }

        return new FootReach(Pressure.FromPascals(low), RateBound.Travel);

        bool Ends(Pressure master) => control.TravelAt(master) is { Reaches: false };
    }
}
