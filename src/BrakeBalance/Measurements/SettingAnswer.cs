using BrakeBalance.Balance;

namespace BrakeBalance.Measurements;

/// <summary>The setting recommended, and the trade-off it was chosen from.</summary>
public sealed record SettingAnswer
{
    /// <summary>What is set.</summary>
    public required SettingVariable Variable { get; init; }

    /// <summary>
    /// The setting with the highest mean efficiency whose rear-first probability stays below the level in every condition; null when
    /// there is none.
    /// </summary>
    public SettingPoint? Recommended { get; init; }

    /// <summary>The car as it is set now.</summary>
    public required SettingPoint Present { get; init; }

    /// <summary>All settings looked at, from least to most rear braking.</summary>
    public required IReadOnlyList<SettingPoint> TradeOff { get; init; }

    /// <summary>The recommended setting (or, without one, the setting with least rear braking) condition by condition.</summary>
    public required IReadOnlyList<ConditionOutcome> Conditions { get; init; }

    /// <summary>The condition in which the rear locks first most often: what holds the setting back.</summary>
    public ConditionOutcome Binding => Conditions.MaxBy(condition => condition.RearFirst)!;

    /// <summary>The level that the probability had to stay under [–].</summary>
    public required double Level { get; init; }

    /// <summary>Number of draws.</summary>
    public required int Draws { get; init; }
}
