using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Commands.Benches;

/// <summary>A bench report as JSON for scripts; keys end in their unit.</summary>
internal sealed class BenchJson(ReportUnits units)
{
    public JsonObject Of(BenchReport report) => new()
    {
        ["name"] = report.Sheet.Name,
        ["note"] = report.Sheet.Note,
        ["hoses"] = new JsonArray([.. report.Sheet.Hoses.Select(hose => Hose(hose.Assembly))]),
        ["purchase"] = new JsonArray([.. report.Purchase.Select(Purchase)]),
        ["push_rod"] = report.PushRod is { } fit ? new JsonObject
        {
            [Key("gap")] = Number(fit.Gap),
            [Key("gap_error")] = Number(fit.GapError),
            ["verdict"] = fit.Verdict.ToString(),
        } : null,
        ["releases"] = new JsonArray([.. report.Releases.Select(release => new JsonObject
        {
            ["oil_celsius"] = SummaryJson.Number(release.Oil.DegreesCelsius),
            [units.Key("standing_back_pressure", units.Pressure)] = Number(release.Effect.Standing),
            [units.Key("residual_line_pressure", units.Pressure)] = Number(release.Effect.ResidualLinePressure),
            ["release_time_s"] = SummaryJson.Number(release.Effect.ReleaseTime?.Seconds),
        })]),
        ["changes"] = new JsonArray([.. report.Changes.Select(Change)]),
        ["findings"] = new JsonArray([.. report.Findings.Select(finding => finding.In(units.System)).Select(finding => new JsonObject
        {
            ["severity"] = finding.Severity.ToString().ToLowerInvariant(),
            ["where"] = finding.Where,
            ["what"] = finding.What,
            ["why"] = finding.Why,
        })]),
    };

    private JsonObject Hose(HoseAssembly hose) => new()
    {
        ["name"] = hose.Name,
        ["rating"] = hose.Rating.Name,
        [Key("overall_length")] = Number(hose.OverallLength),
        [Key("cut_length")] = Number(hose.CutLength),
        [Key("shortest_under_pressure")] = Number(hose.ShortestUnderPressure),
        [Key("longest_under_pressure")] = Number(hose.LongestUnderPressure),
        ["orientation_degrees"] = SummaryJson.Number(hose.Orientation?.Degrees),
        [units.Key("working_pressure", units.Pressure)] = Number(hose.WorkingPressure),
        ["pieces"] = hose.Pieces,
        ["spares"] = hose.Spares,
    };

    private JsonObject Purchase(HosePurchaseLine line) => new()
    {
        ["rating"] = line.Rating.Name,
        [Key("net")] = Number(line.Net),
        [Key("spare")] = Number(line.Spare),
        [Key("kerf")] = Number(line.Kerf),
        [Key("to_buy")] = Number(line.ToBuy),
    };

    private JsonObject Change(ChangeRow row) => new()
    {
        ["topic"] = row.Topic.ToString().ToLowerInvariant(),
        ["name"] = row.Name,
        ["unit"] = Unit(row.Before ?? row.After, units),
        ["before"] = Value(row.Before, units),
        ["after"] = Value(row.After, units),
        ["before_words"] = row.BeforeWords,
        ["after_words"] = row.AfterWords,
        ["severity"] = row.Severity.ToString().ToLowerInvariant(),
        ["meaning"] = InBoth.Only(row.Meaning, units.Us),
    };

    /// <summary>The unit in which a figure of a comparison stands in JSON.</summary>
    public static string? Unit(IQuantity? quantity, ReportUnits units) => quantity switch
    {
        null => null,
        Pressure => units.Pressure,
        Force => units.Force,
        Length => units.Length,
        TemperatureDelta => "K",
        _ => "fraction",
    };

    /// <summary>A figure of a comparison in that unit.</summary>
    public static JsonValue? Value(IQuantity? quantity, ReportUnits units) => quantity switch
    {
        null => null,
        Pressure pressure => SummaryJson.Number(units.Of(pressure)),
        Force force => SummaryJson.Number(units.Of(force)),
        Length length => SummaryJson.Number(units.Of(length)),
        TemperatureDelta rise => SummaryJson.Number(rise.Kelvins),
        Ratio ratio => SummaryJson.Number(ratio.DecimalFractions),
        _ => throw new NotSupportedException(quantity.QuantityInfo.Name),
    };

    private string Key(string stem) => units.Key(stem, units.Length);

    private JsonValue? Number(Length length) => SummaryJson.Number(units.Of(length));

    private JsonValue? Number(Pressure pressure) => SummaryJson.Number(units.Of(pressure));
}
