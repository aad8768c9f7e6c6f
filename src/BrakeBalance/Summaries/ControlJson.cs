using System.Text.Json.Nodes;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Summaries;

/// <summary>Pedal, assist, travel and failures as JSON for scripts; <see cref="SummaryKeys"/> says what each key means.</summary>
/// <param name="units">Units of the values, named at the end of the keys.</param>
internal sealed class ControlJson(ReportUnits units)
{
    public JsonObject Node(ControlSummary summary) => new()
    {
        ["load_cases"] = SummaryJson.List(summary.LoadCases, LoadCase),
        ["rule_checks"] = SummaryJson.List(summary.Verdicts, SummaryJson.Verdict),
        ["choices"] = SummaryJson.List(summary.Choices, Choice),
        ["notices"] = SummaryJson.Words([.. summary.Notices, .. summary.Drags.Select(cause => cause.Words(units.System))]),
    };

    private JsonObject Choice(ControlChoiceResult choice) => new()
    {
        [Key("bore")] = Short(choice.Bore),
        ["pedal_ratio"] = SummaryJson.Number(choice.PedalRatio),
        [units.Key("pedal_force", units.Force)] = Force(choice.PedalForce),
        [Key("pad_left")] = Short(choice.Travel?.LeftToFloor),
        [units.Key("pedal_force_without_assist_at_0_25_g", units.Force)] = Force(choice.FailSafePedalForce),
        ["fits"] = choice.Fits,
        ["verdict"] = choice.Describe(),
    };

    private JsonObject LoadCase(ControlLoadCaseSummary part) => new()
    {
        ["name"] = part.LoadCase.Name,
        ["run_out"] = part.RunOut is { } runOut ? Point(runOut) : null,
        ["decelerations"] = SummaryJson.List(part.Rates, Rate),
        ["gauge_table"] = SummaryJson.List(part.Gauges, Point),
        ["engine_off"] = EngineOff(part.EngineOff),
        ["reserve"] = SummaryJson.List(part.EngineOff.Applications.Zip(part.EngineOff.PedalForces), Press),
        ["failures"] = SummaryJson.List(part.Failures, Failure),
    };

    private JsonObject Rate(ControlRateSummary rate) => new()
    {
        ["deceleration_g"] = SummaryJson.Number(rate.BrakingRate),
        ["at"] = rate.Point is { } point ? Point(point) : null,
        [units.Key("pedal_force_without_assist", units.Force)] = Force(rate.WithoutAssist),
        ["travel"] = rate.Travel is { } travel ? Travel(travel) : null,
        ["travel_drums_hot"] = rate.TravelDrumsHot is { } hot ? Travel(hot) : null,
        ["why_not"] = rate.WhyNot,
    };

    private JsonObject Point(ControlForcePoint point) => new()
    {
        [units.Key("pedal_force", units.Force)] = Force(point.PedalForce),
        [units.Key("input_rod_force", units.Force)] = Force(point.InputRodForce),
        [units.Key("output_rod_force", units.Force)] = Force(point.OutputRodForce),
        [units.Key("outlet_pressure_front", units.Pressure)] = Pressure(point.OutletPressures.Front),
        [units.Key("outlet_pressure_rear", units.Pressure)] = Pressure(point.OutletPressures.Rear),
        [units.Key("line_pressure_front", units.Pressure)] = Pressure(point.Balance.LinePressures.Front),
        [units.Key("line_pressure_rear", units.Pressure)] = Pressure(point.Balance.LinePressures.Rear),
        ["deceleration_g"] = SummaryJson.Number(point.Balance.BrakingRate),
    };

    private JsonObject Travel(PedalTravel travel)
    {
        var parts = new JsonArray(
            [.. travel.Parts.Select(part => new JsonObject { ["part"] = part.Name, [Key("travel")] = Short(part.Travel) })]);
        return new()
        {
            [Key("pad")] = Short(travel.Pad),
            [Key("pad_left")] = Short(travel.PadLeft),
            ["reaches"] = travel.Reaches,
            [Key("rod")] = Short(travel.RodTravel),
            [Key("stroke_left")] = Short(travel.StrokeLeft),
            ["parts"] = parts,
            ["warning"] = travel.Warning,
        };
    }

    private JsonObject EngineOff(EngineOffPresses presses) => new()
    {
        ["deceleration_g"] = SummaryJson.Number(presses.BrakingRate),
        [units.Key("greatest_pedal_force", units.Force)] = Force(presses.GreatestPedalForce),
        ["is_described"] = presses.IsDescribed,
        ["presses"] = presses.Count,
        ["needs_no_assist"] = presses.NeedsNoAssist,
        [units.Key("pedal_force_with_store_spent", units.Force)] = Force(presses.WithoutAssist),
    };

    private JsonObject Press((ReserveApplication Application, Force? PedalForce) press) => new()
    {
        ["application"] = press.Application.Number,
        [units.Key("working_pressure", units.Pressure)] = Pressure(press.Application.WorkingPressure),
        [units.Key("greatest_assist", units.Force)] = Force(press.Application.MaximumAssist),
        ["share_of_first"] = SummaryJson.Number(press.Application.ShareOfFirst),
        [units.Key("pedal_force", units.Force)] = Force(press.PedalForce),
    };

    private JsonObject Failure(FailureOutcome outcome) => new()
    {
        ["case"] = outcome.Case.Id,
        ["name"] = outcome.Case.Name,
        [units.Key("pedal_force_at_0_25_g", units.Force)] = Force(outcome.PedalForceForRate),
        ["why_not"] = outcome.WhyNot,
        ["deceleration_g_at_500_n"] = SummaryJson.Number(outcome.RateAtForce),
        ["bound_by"] = outcome.Bound.ToString().ToLowerInvariant(),
        [units.Key("pedal_force_used", units.Force)] = Force(outcome.ForceUsed),
        ["locks_first"] = outcome.LockUpRate is null ? null : outcome.FirstToLock?.ToString().ToLowerInvariant() ?? "both together",
        ["lock_up_deceleration_g"] = SummaryJson.Number(outcome.LockUpRate),
        [units.Key("distance_from_100_km_h", units.Distance)] = Distance(outcome.Distance?.FromFirstTouch),
        [units.Key("distance_with_reaction", units.Distance)] = Distance(outcome.Distance?.Whole),
        [Key("pad_travel")] = Short(outcome.Travel?.Pad),
        ["notices"] = SummaryJson.Words(outcome.Notices),
    };

    private string Key(string stem) => units.Key(stem, units.Travel);

    private JsonValue? Force(Force? force) => SummaryJson.Number(units.Of(force));

    private JsonValue? Pressure(Pressure pressure) => SummaryJson.Number(units.Of(pressure));

    private JsonValue? Short(Length? length) => SummaryJson.Number(units.OfTravel(length));

    private JsonValue? Distance(Length? length) => SummaryJson.Number(length is { } known ? units.OfDistance(known) : null);
}
