namespace BrakeBalance.Measurements;

/// <summary>One quantity of the car before and after the test stops.</summary>
public sealed record EstimatedParameter
{
    /// <summary>Name, such as "front friction" or "adhesion, dry".</summary>
    public required string Name { get; init; }

    /// <summary>Unit of the values; empty for a dimensionless number.</summary>
    public required string Unit { get; init; }

    /// <summary>What was believed before, with its 90 % interval.</summary>
    public required Interval<double> Prior { get; init; }

    /// <summary>What is believed after, with its 90 % interval.</summary>
    public required Interval<double> Posterior { get; init; }

    /// <summary>How much of the width of the prior interval the stops took away [–]; 0 for nothing, towards 1 for nearly all.</summary>
    public double Learnt => Math.Clamp(1 - (Posterior.High - Posterior.Low) / (Prior.High - Prior.Low), 0, 1);
}
