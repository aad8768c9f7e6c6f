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
}
