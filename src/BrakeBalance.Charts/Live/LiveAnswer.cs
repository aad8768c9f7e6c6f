using System.Text.Json.Nodes;

namespace BrakeBalance.Charts.Live;

/// <summary>The answer of a live page: always in sight, in the words of every other output.</summary>
internal static class LiveAnswer
{
    /// <summary>The reply: problems with their paths, or the answer in short.</summary>
    public static JsonObject Of(LiveCar car, UnitSystem units, JsonNode? slides)
    {
        var reply = new JsonObject
        {
            ["problems"] = new JsonArray([.. car.Problems.Select(problem => Said(problem.Path, Problem(problem, units)))]),
            ["logProblems"] = new JsonArray([.. car.LogProblems.Select(words => (JsonNode?)JsonValue.Create(words))]),
        };
        if (car.Reading is not { } reading || car.Study is not { } study)
        {
            return reply;
        }

        Setting setting = study.Answer;
        reply["name"] = reading.Vehicle.Name;
        reply["invented"] = reading.Vehicle.IsInvented;
        reply["warnings"] = new JsonArray(
            [.. reading.Warnings.Select(warning => Said(warning.Path, OtherUnits.Within(warning.ToString(), units)))]);
        reply["beyond"] = setting.StandsBeyond;
        reply["bar"] = Bar(setting, car.Unread, units);
        reply["marks"] = Marks(setting, units, slides);
        reply["sentence"] = SettingWords.Sentence(setting, units);
        return reply;
    }

    // What was typed is told as it was.
    private static string Problem(Problem problem, UnitSystem units) =>
        (problem with { Path = "", Accepted = OtherUnits.Within(problem.Typed ?? problem.Accepted, units) }).ToString();

    private static JsonObject Said(string path, string words) => new() { ["path"] = path, ["words"] = words };

    private static string Bar(Setting setting, string unread, UnitSystem units)
    {
        var html = new StringBuilder("<dl>");
        (string, string)[] own = unread.Length == 0 ? [] : [("Own measurements", unread)];
        foreach ((string label, string text) in SettingWords.InSight(setting, units).Concat(own))
        {
            html.Append("<div><dt>").Append(HtmlRenderer.Escape(label)).Append("</dt><dd>").Append(HtmlRenderer.Escape(text))
                .Append("</dd></div>");
        }

        return html.Append("</dl>").ToString();
    }

    /// <summary>What stands behind the answer; it takes longer, for it asks the other rule too.</summary>
    public static string Behind(LiveCar car, UnitSystem units)
    {
        if (car.Study?.Answer is not { } setting)
        {
            return "";
        }

        var html = new StringBuilder("<dl>");
        void Line(string label, string text) => html.Append("<dt>").Append(HtmlRenderer.Escape(label)).Append("</dt><dd>")
            .Append(HtmlRenderer.Escape(text)).Append("</dd>\n");
        Line("Why", SettingWords.Why(setting, units));
        foreach ((string label, string text) in SettingWords.Behind(setting, units))
        {
            Line(label, text);
        }

        foreach (string words in SettingWords.Findings(setting, units))
        {
            Line("Beside these", words);
        }

        if (SettingWords.OfClass(setting.Vehicle) is { Length: > 0 } typical)
        {
            Line("By class", typical);
        }

        Line("Caution", SettingWords.Caution);
        return html.Append("</dl>").ToString();
    }

    // Where present setting, safe limit and recommendation stand on the track of the entry that sets them.
    private static JsonObject? Marks(Setting setting, UnitSystem units, JsonNode? slides)
    {
        var hydraulics = setting.Vehicle.Hydraulics;
        int valve = hydraulics.RearValves.ToList().FindIndex(one => one is ProportioningValve);
        string? path = setting.Variable switch
        {
            SettingVariable.Knee when valve >= 0 => Invariant.Text($"hydraulics.rearValves[{valve}].knee"),
            SettingVariable.BalanceBar => "hydraulics.split.frontForceShare",
            _ => null,
        };
        JsonNode? slider = (slides as JsonArray)?.FirstOrDefault(pair => pair?[0]?.ToString() == path);
        Pressure? one = slider is not null && QuantityText.Read($"1 {slider[1]}", typeof(Pressure), out IQuantity? unit, out _) is null
            ? (Pressure)unit! : null;
        JsonObject? Mark(SettingValue? value, string text) => value is null ? null : new JsonObject
        {
            ["at"] = one is { Unit: var shown } ? value.Knee?.As(shown) : value.FrontForceShare,
            ["text"] = text,
        };
        return path is null ? null : new JsonObject
        {
            ["path"] = path,
            ["safe"] = Mark(setting.MarkedLimit, "Safe limit " + SettingWords.SafeLimit(setting, units)),
            ["reach"] = one is { Unit: var by } && hydraulics.RearProportioningValve?.Adjustment is { } screw
                ? new JsonArray(screw.KneeAt(0).As(by), screw.KneeAt(screw.Turns).As(by)) : null,
            ["recommended"] = Mark(setting.Recommended, "Recommended setting " + SettingWords.Recommended(setting, units)),
        };
    }
}
