using System.Text.Json.Nodes;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Choosing;

namespace BrakeBalance.Charts.Live;

/// <summary>A search among parts in a live page: in pieces, so that the page can say how far it has come and stop it.</summary>
internal sealed class LiveChoice
{
    private const int Each = 3;
    private readonly Lately<Search> _searches = new(2);

    /// <summary>The form of targets, and the file of them that it shows; the file keeps no comments.</summary>
    public static JsonObject Targets(string text, UnitSystem units)
    {
        (JsonNode? root, Problem? problem) = DocumentFile.Parse(text.Trim().Length == 0 ? "{}" : text);
        if (root is not JsonObject file)
        {
            return new() { ["problems"] = new JsonArray(JsonValue.Create((problem ?? new("", "This is no file of targets.")).ToString())) };
        }

        var html = new StringBuilder();
        Fields(html, typeof(TargetsDocument), "", file, units);
        return new() { ["html"] = html.ToString(), ["text"] = file.ToJsonString() };
    }

    /// <summary>
    /// The next piece of a search: <c>done</c> of <c>count</c>, with what is found once all are, and then <c>asked</c> of <c>cars</c>
    /// drawn from the file's ranges, as long as some are left; or the problems of its texts.
    /// </summary>
    public JsonObject Next(string text, Vehicle? car, JsonObject request)
    {
        string parts = LiveDesk.Word(request, "parts") ?? "", targets = LiveDesk.Word(request, "targets") ?? "{}";
        Search search = _searches.Of(string.Join('\0', text, parts, targets), () => new Search(text, targets, parts, car));
        if (search.Choice is not { } choice || search.Among is not { } among)
        {
            return new() { ["problems"] = new JsonArray([.. search.Problems.Select(words => (JsonNode?)JsonValue.Create(words))]) };
        }

        var reply = new JsonObject { ["count"] = among.Count };
        int some = Math.Clamp(request["some"]?.GetValue<int>() ?? 100, 1, 1_000_000);
        if (search.Done < among.Count)
        {
            long to = Math.Min(among.Count, search.Done + some);
            (search.Field, search.Done) = (among.Some(search.Done, to, search.Field), to);
        }
        else
        {
            search.Ask(some);
            ChoiceResult result = search.Result!;
            if (result.Held is null)
            {
                (reply["asked"], reply["cars"]) = (search.Asked, search.Drawn.Count);
            }

            reply["html"] = Html(choice, result, LiveDesk.Units(request));
            reply["sets"] = new JsonArray([.. result.Sets.Select(set => (JsonNode?)JsonValue.Create(set.Text))]);
        }

        reply["done"] = search.Done;
        return reply;
    }

    private static string Html(Choice choice, ChoiceResult result, UnitSystem units)
    {
        var html = new StringBuilder(ChoiceTables.Sets(choice, result, units, drawn: result.Held is not null).ToHtml());
        html.Append(ChoiceTables.Answers(choice, result, units).ToHtml()).Append("<ul>\n");
        foreach (string caution in ChoiceResult.Cautions)
        {
            html.Append("<li>").Append(HtmlRenderer.Escape(caution)).Append("</li>\n");
        }

        return html.Append("</ul>\n").ToString();
    }

    private static void Fields(StringBuilder html, Type document, string path, JsonObject? file, UnitSystem units)
    {
        foreach (FieldInfo field in FieldMap.Of(document))
        {
            string Told(string text) => HtmlRenderer.Escape(OtherUnits.Within(text, units, field));
            string at = path + field.Key, label = Told(field.About.Description), id = "t-" + at.Replace('.', '-');
            if (field.Shape == FieldShape.Document)
            {
                html.Append("<fieldset class=\"bb-inner\"><legend>").Append(label).Append("</legend>\n");
                Fields(html, field.ValueType, at + ".", file?[field.Key] as JsonObject, units);
                html.Append("</fieldset>\n");
                continue;
            }

            string value = CarForm.Text(file?[field.Key]), kind = field.Shape.ToString().ToLowerInvariant();
            html.Append(CultureInfo.InvariantCulture, $"<div class=\"bb-field\"><label for=\"{id}\">{label}</label>\n");
            if (field.Shape == FieldShape.Flag)
            {
                html.Append(CultureInfo.InvariantCulture, $"<select id=\"{id}\" data-target=\"{at}\" data-shape=\"{kind}\">");
                foreach ((string word, string shown) in ((string, string)[])[("", "left out"), ("true", "yes"), ("false", "no")])
                {
                    html.Append(CultureInfo.InvariantCulture,
                        $"<option value=\"{word}\"{(word == value ? " selected" : "")}>{shown}</option>");
                }

                html.Append("</select></div>\n");
                continue;
            }

            html.Append(CultureInfo.InvariantCulture, $"<input type=\"text\" id=\"{id}\" data-target=\"{at}\" data-shape=\"{kind}\" "
                + $"value=\"{HtmlRenderer.Escape(value)}\" placeholder=\"{Told(field.About.Example)}\"></div>\n");
        }
    }

    private sealed class Search
    {
        private readonly Dictionary<int, int> _meet = [];

        public Search(string text, string targets, string parts, Vehicle? car)
        {
            Choice = Choice.Read(text, targets, parts, (which, found) =>
            {
                string of = which switch { ChoiceText.Car => "the car", ChoiceText.Targets => "targets", _ => "parts" };
                Problems.AddRange(found.Select(problem => $"{of}: {problem}"));
            }, car);
            Among = Choice is { } choice ? new(choice.Text, choice.Targets, choice.Parts) : null;
        }

        public Choice? Choice { get; }

        public ChoiceSearch? Among { get; }

        public List<string> Problems { get; } = [];

        public long Done { get; set; }

        public ChoiceField? Field { get; set; }

        public ChoiceResult? Result { get; private set; }

        /// <summary>The cars drawn from the file's ranges, each for its set, by the set's place.</summary>
        public IReadOnlyList<(int Set, Vehicle Car)> Drawn { get; private set; } = [];

        public int Asked { get; private set; }

        // The sets first; the drawn cars take a hundred times as long, so they are asked when the sets are in sight.
        public void Ask(int some)
        {
            if (Result is null)
            {
                Result = ChoiceResult.Of(Among!, Field!, Each);
                Drawn = [.. (Result.Nearest is null ? Result.Sets : []).Index()
                    .SelectMany(set => set.Item.Drawn().Select(car => (set.Index, car)))];
            }
            else
            {
                for (int to = Math.Min(Drawn.Count, Asked + some); Asked < to; Asked++)
                {
                    (int set, Vehicle car) = Drawn[Asked];
                    _meet[set] = _meet.GetValueOrDefault(set) + (Result.Sets[set].MeetsOn(car) ? 1 : 0);
                }
            }

            if (Asked == Drawn.Count)
            {
                int[] of = [.. Result.Sets.Select((_, i) => Drawn.Count(one => one.Set == i))];
                Result = Result with
                {
                    Held = [.. of.Select((cars, i) => cars == 0 ? ((int, int)?)null : (_meet.GetValueOrDefault(i), cars))],
                };
            }
        }
    }
}
