using System.Text.Json.Nodes;
using BrakeBalance.Balance;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>The setting as JSON for scripts, the same in every command.</summary>
internal static class SettingJson
{
    /// <summary>What each key means; units as for SI.</summary>
    public static readonly IReadOnlyList<(string Path, string Meaning)> Keys =
    [
        ("setting.variable", "what is set: knee, added_knee (no valve is fitted) or balance_bar"),
        ("setting.rule", "corners (nothing measured on the car) or chance (its own test stops were fitted)"),
        ("setting.present", "the setting of the file (see setting_point); null when no valve is fitted"),
        ("setting.present_is_beyond_safe_limit", "whether the car stands beyond the safe limit"),
        ("setting.safe_limit", "highest setting that keeps the front first under the conditions (see setting_point); null when none does"),
        ("setting.recommended", "what to set, at or below the safe limit and in reach (see setting_point); null when there is none"),
        ("setting.reach", "where the safe limit lies for the adjuster: within, below, above, none, not_needed or withheld (the "
            + "measurements do not fit)"),
        ("setting.out_of_reach[]", "what would bring a setting in reach, in words; empty when one is"),
        ("setting.binding", "the condition that holds the limit back (see setting_condition); null when none does"),
        ("setting.most_rear_first", "in a measured car, the condition in which the rear locks first most often, in words; else null"),
        ("setting.band.low", "safe limit at the low end of 90 % of the cars that the file's ranges allow (see setting_limit); no band "
            + "without ranges"),
        ("setting.band.middle", "the same in the middle"),
        ("setting.band.high", "the same at the high end"),
        ("setting.other_rule", "what the other rule would give as the limit (see setting_limit)"),
        ("setting.middle", "where both axles lock together with every number at its middle: for orientation, never to set (see "
            + "setting_limit)"),
        ("setting.locks_first_dry", "front, rear or both together on a dry road in the first load case; null when neither does"),
        ("setting.locks_first_dry_deceleration_g", "deceleration there, over g"),
        ("setting.costs[].condition", "a condition, the dearest first"),
        ("setting.costs[].limit_without", "the limit without it (see setting_limit)"),
        ("setting.gains[].measure", "entry of the file, or the friction of both axles, the one that gains most first"),
        ("setting.gains[].limit_higher_by_bar", "how much higher the limit would be, about; null for a balance bar"),
        ("setting.findings[].kind", "ice, other_tyres, bend or release: beside the conditions"),
        ("setting.findings[].front_first", "whether the front locks first there (on release: lets go last) at the recommended setting"),
        ("setting.findings[].limit", "limit there (see setting_limit); null when no setting does"),
        ("setting.conditions.words", "the conditions in a sentence"),
        ("setting.conditions.lowest_adhesion", "slipperiest surface"),
        ("setting.conditions.highest_adhesion", "grippiest surface"),
        ("setting.conditions.load_cases[]", "load cases"),
        ("setting.conditions.speeds_km_h[]", "speeds tried"),
        ("setting.conditions.brake_states[]", "states of the brakes"),
        ("setting.conditions.friction_spread_front", "how far the front friction may be off, as a fraction"),
        ("setting.conditions.friction_spread_rear", "the same at the rear"),
        ("setting.conditions.rear_first_chance", "highest chance of rear-first in any condition once the car has been measured"),
        ("setting.sentence", "the answer in a sentence"),
        ("setting_point.knee_bar", "knee, gauge; null for a balance bar, or where none is needed or any is safe (see shown)"),
        ("setting_point.front_force_share", "the bar's front share of the rod force; null unless a bar is set, or where any is safe"),
        ("setting_point.turns", "turns in from fully out; null when the adjuster is not described or does not reach"),
        ("setting_point.friction_margin",
            "how much stronger the rear brakes could be against the front ones before the rear locks first, as a fraction"),
        ("setting_point.mean_efficiency", "mean braking efficiency over the conditions, friction at its middle"),
        ("setting_point.least_efficiency", "least braking efficiency over the conditions, friction at its middle"),
        ("setting_point.rear_first_in",
            "first condition in which the rear locks first (see setting_condition); null when the front does everywhere"),
        ("setting_point.shown", "the setting as every output shows it"),
        ("setting_limit.knee_bar", "knee, gauge; null for a balance bar, when there is none, or where any is safe (see shown)"),
        ("setting_limit.front_force_share", "the bar's front share; null for a knee, when there is none, or where any is safe"),
        ("setting_limit.shown", "the same in words"),
        ("setting_condition.load_case", "load case"),
        ("setting_condition.adhesion", "coefficient of adhesion"),
        ("setting_condition.speed_km_h", "speed"),
        ("setting_condition.brakes", "state of the brakes"),
        ("setting_condition.words", "the condition in words"),
    ];

    /// <summary>The answer for scripts.</summary>
    public static JsonObject Node(Setting setting, ReportUnits units)
    {
        UnitSystem system = units.System;
        Conditions of = setting.Conditions;
        string? none = setting.Reach == SettingReach.NotNeeded ? "none needed" : null;
        return new JsonObject
        {
            ["variable"] = Snake(setting.Variable),
            ["rule"] = Snake(setting.Rule),
            ["present"] = Point(setting.Present, SettingWords.Present(setting, system), units),
            ["present_is_beyond_safe_limit"] = setting.PresentIsBeyond,
            ["safe_limit"] = Point(setting.SafeLimit, SettingWords.SafeLimit(setting, system), units,
                setting.HoldsAtAnySetting ? SettingWords.Any : none),
            ["recommended"] = Point(setting.Recommended, SettingWords.Recommended(setting, system), units),
            ["reach"] = Snake(setting.Reach),
            ["out_of_reach"] = SummaryJson.Words(SettingWords.OutOfReach(setting, system)),
            ["binding"] = Condition(setting.Binding, units),
            ["most_rear_first"] = setting is not { MostRearFirst: not null, Binding: null } ? null : SettingWords.Why(setting, system),
            ["band"] = setting.Band is { } band
                ? new JsonObject
                {
                    ["low"] = Limit(band.Low, units, none),
                    ["middle"] = Limit(band.Estimate, units, none),
                    ["high"] = Limit(band.High, units, none)
                }
                : null,
            ["other_rule"] = Limit(setting.OtherRule, units),
            ["middle"] = Limit(setting.Middle, units, none),
            ["locks_first_dry"] = setting.FirstLockDry is { } lockUp
                ? lockUp.First?.ToString().ToLowerInvariant() ?? "both together" : null,
            ["locks_first_dry_deceleration_g"] = SummaryJson.Number(setting.FirstLockDry?.At.BrakingRate),
            ["costs"] = SummaryJson.List(setting.Costs, cost =>
                new JsonObject { ["condition"] = cost.Name, ["limit_without"] = Limit(cost.Limit, units) }),
            ["gains"] = SummaryJson.List(setting.Gains, gain => new JsonObject
            {
                ["measure"] = gain.Range?.Path ?? "friction of both axles",
                [units.Key("limit_higher_by", units.Pressure)] = SummaryJson.Number(units.Of(gain.Knee)),
            }),
            ["findings"] = SummaryJson.List(setting.Findings, finding => new JsonObject
            {
                ["kind"] = Snake(finding.Kind),
                ["front_first"] = finding.FrontFirst,
                ["limit"] = Limit(finding.Limit, units, finding.AtAnySetting(setting.Vehicle) ? SettingWords.Any : null),
            }),
            ["conditions"] = new JsonObject
            {
                ["words"] = SettingWords.Conditions(setting.Vehicle, system),
                ["lowest_adhesion"] = SummaryJson.Number(of.LowestAdhesion),
                ["highest_adhesion"] = SummaryJson.Number(of.HighestAdhesion),
                ["load_cases"] = SummaryJson.Words(of.LoadCasesOf(setting.Vehicle).Select(load => load.Name)),
                [units.Key("speeds", units.Speed)] =
                    SummaryJson.List(of.SpeedsOf(setting.Vehicle), speed => SummaryJson.Number(units.Of(speed))),
                ["brake_states"] = SummaryJson.Words(of.BrakeStates.Select(state => state.Name)),
                ["friction_spread_front"] = SummaryJson.Number(of.FrictionSpread.Front),
                ["friction_spread_rear"] = SummaryJson.Number(of.FrictionSpread.Rear),
                ["rear_first_chance"] = SummaryJson.Number(of.RearFirstChance),
            },
            ["sentence"] = SettingWords.Sentence(setting, system),
        };
    }

    private static JsonObject? Point(SettingValue? value, string shown, ReportUnits units, string? none = null) =>
        value is null ? null : new JsonObject
        {
            [units.Key("knee", units.Pressure)] = SummaryJson.Number(none is null ? units.Of(value.Knee) : null),
            ["front_force_share"] = SummaryJson.Number(none is null ? value.FrontForceShare : null),
            ["turns"] = SummaryJson.Number(value.Turns),
            ["friction_margin"] = SummaryJson.Number(value.FrictionMargin),
            ["mean_efficiency"] = SummaryJson.Number(value.MeanEfficiency),
            ["least_efficiency"] = SummaryJson.Number(value.LeastEfficiency),
            ["rear_first_in"] = Condition(value.RearFirst, units),
            ["shown"] = shown,
        };

    // A knee where every one is safe is but the highest that was tried; words stand in its place.
    private static JsonObject? Limit(SettingLimit? limit, ReportUnits units, string? any = null) => limit is null ? null : new JsonObject
    {
        [units.Key("knee", units.Pressure)] = SummaryJson.Number(any is null && !limit.AtAnySetting ? units.Of(limit.Knee) : null),
        ["front_force_share"] = SummaryJson.Number(any is null && !limit.AtAnySetting ? limit.FrontForceShare : null),
        ["shown"] = any ?? SettingWords.Number(limit, units.System),
    };

    private static JsonObject? Condition(BindingCondition? binding, ReportUnits units) => binding is null ? null : new JsonObject
    {
        ["load_case"] = binding.LoadCase,
        ["adhesion"] = SummaryJson.Number(binding.Adhesion),
        [units.Key("speed", units.Speed)] = SummaryJson.Number(units.Of(binding.Speed)),
        ["brakes"] = binding.BrakeState,
        ["words"] = binding.Words(units.System),
    };

    private static string Snake<T>(T value)
        where T : struct, Enum =>
        string.Concat(value.ToString().Select((letter, i) => (i > 0 && char.IsUpper(letter) ? "_" : "") + char.ToLowerInvariant(letter)));
}
