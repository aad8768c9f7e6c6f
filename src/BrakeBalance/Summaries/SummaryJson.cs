using System.Text.Json.Nodes;
using BrakeBalance.Balance;
using BrakeBalance.Rules;

namespace BrakeBalance.Summaries;

/// <summary>A balance summary as JSON for scripts; <see cref="SummaryKeys"/> says what each key means.</summary>
/// <param name="units">Units of the values, named at the end of the keys.</param>
internal sealed class SummaryJson(ReportUnits units)
{
    public string Text(BalanceSummary summary) => IndentedJson.Text(Node(summary));

    /// <summary>The summary; beside each number that the file's ranges move, its lowest and highest.</summary>
    public JsonObject Node(BalanceSummary summary)
    {
        Banded<BalanceSummary> bands = summary.Bands();
        JsonObject node = Numbers(summary);
        JsonObject banded = bands.HasBand ? JsonBands.With(node, [.. bands.Drawn.Select(Numbers)]) : node;
        banded["setting"] = SettingJson.Node(summary.Setting, units);
        banded["notices"] = Words(
            BandText.Each(summary.Notices, bands.Drawn.Select(of => of.Notices), bands.OfClass.Select(of => of.Notices)));
        return banded;
    }

    private JsonObject Numbers(BalanceSummary summary) => new()
    {
        ["name"] = summary.Vehicle.Name,
        ["note"] = summary.Vehicle.Note,
        [units.Key("speed", units.Speed)] = Number(units.Of(summary.Speed)),
        ["load_cases"] = List(summary.LoadCases, LoadCase),
        ["rule_checks"] = List(summary.Verdicts, Verdict),
        ["control"] = summary.Control() is { } control
            ? new ControlJson(units).Node(control)
            : null,
    };

    private JsonObject LoadCase(LoadCaseSummary part)
    {
        var node = new JsonObject
        {
            ["name"] = part.LoadCase.Name,
            [units.Key("mass", units.Mass)] = Number(units.Of(part.LoadCase.Mass)),
            [units.Key("centre_of_gravity_behind_front_axle", units.Length)] = Number(units.Of(part.LoadCase.FrontAxleToCentreOfGravity)),
            [units.Key("centre_of_gravity_height", units.Length)] = Number(units.Of(part.LoadCase.CentreOfGravityHeight)),
        };
        Add(node, "static_axle_load", part.StaticAxleLoads);
        node["rear_lift_off_deceleration_g"] = Number(part.RearLiftOffRate);
        node["decelerations"] = List(part.Rates, Rate);
        node["adhesions"] = List(part.LockUps, Surface);
        node["ideal_crossings"] = List(part.IdealCrossings, Point);
        node["knees"] = List(part.Knees, Point);
        return node;
    }

    private JsonObject Rate(RateSummary rate)
    {
        var node = new JsonObject { ["deceleration_g"] = Number(rate.BrakingRate) };
        Add(node, "axle_load", rate.NormalReactions);
        Add(node, "ideal_force", rate.IdealForces);
        node["installed"] = rate.Installed is { } installed ? Point(installed) : null;
        return node;
    }

    private JsonObject Surface(SurfaceSummary surface) => new()
    {
        ["adhesion"] = Number(surface.Adhesion),
        ["locks_first"] = surface.LockUp is { } lockUp ? lockUp.First?.ToString().ToLowerInvariant() ?? "both together" : null,
        ["braking_efficiency"] = Number(surface.LockUp?.Efficiency),
        ["at_lock_up"] = surface.LockUp is { } at ? Point(at.At) : null,
    };

    private JsonObject Point(BalancePoint point)
    {
        var node = new JsonObject { [units.Key("master_pressure", units.Pressure)] = Number(units.Of(point.MasterPressure)) };
        node[units.Key("line_pressure_front", units.Pressure)] = Number(units.Of(point.LinePressures.Front));
        node[units.Key("line_pressure_rear", units.Pressure)] = Number(units.Of(point.LinePressures.Rear));
        Add(node, "braking_force", point.BrakingForces);
        Add(node, "axle_load", point.NormalReactions);
        node["deceleration_g"] = Number(point.BrakingRate);
        node["adhesion_utilised_front"] = Number(point.AdhesionUtilisation.Front);
        node["adhesion_utilised_rear"] = Number(point.AdhesionUtilisation.Rear);
        return node;
    }

    internal static JsonObject Verdict(RuleVerdict verdict) => new()
    {
        ["rule"] = verdict.Rule,
        ["title"] = verdict.Title,
        ["source"] = verdict.Source,
        ["outcome"] = verdict.Outcome switch { RuleOutcome.Pass => "pass", RuleOutcome.Fail => "fail", _ => "not_applicable" },
        ["margin"] = Number(verdict.Margin),
        ["at"] = verdict.At,
        ["explanation"] = verdict.Explanation,
    };

    private void Add(JsonObject node, string stem, PerAxle<Force> forces)
    {
        node[units.Key(stem + "_front", units.Force)] = Number(units.Of(forces.Front));
        node[units.Key(stem + "_rear", units.Force)] = Number(units.Of(forces.Rear));
    }

    internal static JsonArray Words(IEnumerable<string> words) => List(words, word => JsonValue.Create(word));

    internal static JsonArray List<T>(IEnumerable<T> items, Func<T, JsonNode?> node) => new([.. items.Select(node)]);

    /// <summary>A number with six significant digits; null where there is none.</summary>
    internal static JsonValue? Number(double? value) => value is { } number && double.IsFinite(number)
        ? JsonValue.Create(double.Parse(number.ToString("G6", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture))
        : null;
}
