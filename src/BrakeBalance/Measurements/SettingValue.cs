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
    public double FrictionMargin => MarginLater.Value;

    /// <summary>Mean braking efficiency over the conditions, friction at its middle [–].</summary>
    public double MeanEfficiency => EfficiencyLater.Value.Mean;

    /// <summary>Least braking efficiency over the conditions, friction at its middle [–].</summary>
    public double LeastEfficiency => EfficiencyLater.Value.Least;

    /// <summary>The first condition in which the rear locks first at this setting; null when the front does everywhere.</summary>
    public BindingCondition? RearFirst => RearFirstLater.Value;

    /// <summary>The car set so.</summary>
    public required Vehicle Vehicle { get; init; }

    private Lazy<double> MarginLater { get; init; } = null!;

    private Lazy<(double Mean, double Least)> EfficiencyLater { get; init; } = null!;

    private Lazy<BindingCondition?> RearFirstLater { get; init; } = null!;

    internal static SettingValue Of(Vehicle set, SettingVariable variable, Conditions conditions)
    {
        Hydraulics.ProportioningValve? valve = set.Hydraulics.RearProportioningValve;
        bool bar = variable == SettingVariable.BalanceBar;
        return new SettingValue
        {
            Vehicle = set,
            Knee = bar ? null : valve?.Knee,
            FrontForceShare = bar ? (set.Hydraulics.Split as Hydraulics.BalanceBarSplit)?.FrontForceShare : null,
            Turns = bar || valve is null ? null : valve.Adjustment?.TurnsFor(valve.Knee),
            MarginLater = new(() => SettingSearch.FrictionMargin(set, conditions)),
            EfficiencyLater = new(() => SettingSearch.Efficiency(set, conditions)),
            RearFirstLater = new(() => SettingSearch.RearFirst(set, conditions)),
        };
    }
}
