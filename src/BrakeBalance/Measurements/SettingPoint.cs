namespace BrakeBalance.Measurements;

/// <summary>One setting with what it gives.</summary>
public sealed record SettingPoint
{
    /// <summary>Knee, gauge; null when a balance bar is set, or no valve is fitted.</summary>
    public Pressure? Knee { get; init; }

    /// <summary>Turns of the adjuster from fully out for that knee; null when the adjuster is not described or does not reach it.</summary>
    public double? Turns { get; init; }

    /// <summary>Front cylinder's share of the rod force [–]; null unless a balance bar is set.</summary>
    public double? FrontForceShare { get; init; }

    /// <summary>Probability that the rear locks first, over all conditions alike [–].</summary>
    public required double RearFirst { get; init; }

    /// <summary>The same in the condition where it is highest [–].</summary>
    public required double WorstRearFirst { get; init; }

    /// <summary>Mean braking efficiency at first lock-up over all conditions [–].</summary>
    public required double MeanEfficiency { get; init; }
}
