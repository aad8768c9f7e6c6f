using BrakeBalance.Answers;

namespace BrakeBalance.Measurements;

/// <summary>One quantity of the car before and after the test stops.</summary>
/// <param name="Name">Name, such as "front friction" or "adhesion, dry".</param>
/// <param name="Unit">Unit of the values; empty for a dimensionless number.</param>
/// <param name="Prior">What was believed before, with its 90 % interval.</param>
/// <param name="Posterior">What is believed after, with its 90 % interval.</param>
public sealed record EstimatedParameter(string Name, string Unit, Interval<double> Prior, Interval<double> Posterior)
{
    /// <summary>How much of the width of the prior interval the stops took away [–]; 0 for nothing, towards 1 for nearly all.</summary>
    public double Learnt => Math.Clamp(1 - (Posterior.High - Posterior.Low) / (Prior.High - Prior.Low), 0, 1);

    /// <summary>A value of the quantity with its interval, in words.</summary>
    /// <param name="band">The value, such as <see cref="Posterior"/>.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as <c>0.405 (0.394 to 0.415)</c>; a length as <see cref="Measure.Travel"/> is shown.</returns>
    public string Text(Interval<double> band, UnitSystem units)
    {
        string One(double value) => Unit == "m" ? Measure.Travel.Text(value, units) : Invariant.Text($"{value:0.000}");
        return $"{One(band.Estimate)} ({One(band.Low)} to {One(band.High)})";
    }
}
