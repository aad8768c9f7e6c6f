using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>One setting of valve or balance bar, with how the car does at it.</summary>
public sealed record SettingValue
{
    /// <summary>Knee, gauge; null when a balance bar is set.</summary>
    public Pressure? Knee { get; private init; }

    /// <summary>The bar's front share of the rod force [–]; null unless a balance bar is set.</summary>
    public double? FrontForceShare { get; private init; }

    /// <summary>Turns in from fully out; null when the adjuster is not described or does not reach the knee.</summary>
    public double? Turns { get; private init; }

    /// <summary>
    /// How much stronger the rear brakes could be against the front ones before the rear locks first, all else at its middle [–].
    /// </summary>
    public double FrictionMargin { get; private init; }

    /// <summary>Mean braking efficiency over the conditions, friction at its middle [–].</summary>
    public double MeanEfficiency { get; private init; }

    /// <summary>Least braking efficiency over the conditions, friction at its middle [–].</summary>
    public double LeastEfficiency { get; private init; }

    /// <summary>The first condition in which the rear locks first at this setting; null when the front does everywhere.</summary>
    public BindingCondition? RearFirst { get; private init; }

    /// <summary>The car set so.</summary>
    public required Vehicle Vehicle { get; init; }

    internal static SettingValue Of(Vehicle set, SettingVariable variable, Conditions conditions)
    {
        (double mean, double least) = SettingSearch.Efficiency(set, conditions);
        Hydraulics.ProportioningValve? valve = set.Hydraulics.RearProportioningValve;
        bool bar = variable == SettingVariable.BalanceBar;
        return new SettingValue
        {
            Vehicle = set,
            Knee = bar ? null : valve?.Knee,
            FrontForceShare = bar ? (set.Hydraulics.Split as Hydraulics.BalanceBarSplit)?.FrontForceShare : null,
            Turns = bar || valve is null ? null : valve.Adjustment?.TurnsFor(valve.Knee),
            FrictionMargin = SettingSearch.FrictionMargin(set, conditions),
            MeanEfficiency = mean,
            LeastEfficiency = least,
            RearFirst = SettingSearch.RearFirst(set, conditions),
        };
    }
}
