using BrakeBalance.Balance;

namespace BrakeBalance.Measurements;

/// <summary>The setting recommended, and the trade-off it was chosen from.</summary>
/// <param name="Variable">What is set.</param>
/// <param name="Recommended">
/// The setting with most rear braking whose rear-first probability stays below the level in every condition; null when there is none.
/// </param>
/// <param name="TradeOff">All settings looked at, from least to most rear braking.</param>
/// <param name="Conditions">The recommended setting (or, without one, the setting with least rear braking) condition by condition.</param>
/// <param name="Level">The level that the probability had to stay under [–].</param>
/// <param name="Draws">Number of draws.</param>
public sealed record SettingAnswer(
    SettingVariable Variable, SettingPoint? Recommended, IReadOnlyList<SettingPoint> TradeOff, IReadOnlyList<ConditionOutcome> Conditions,
    double Level, int Draws)
{
    /// <summary>The car as it is set now.</summary>
    public SettingPoint Present => PresentLater.Value;

    /// <summary>Whether every setting stays below the level.</summary>
    public bool HoldsAtAnySetting => TradeOff.All(point => point.WorstRearFirst <= Level);

    internal Lazy<SettingPoint> PresentLater { get; init; } = null!;

    /// <summary>The condition in which the rear locks first most often: what holds the setting back.</summary>
    public ConditionOutcome Binding => Conditions.MaxBy(condition => condition.RearFirst)!;
}
