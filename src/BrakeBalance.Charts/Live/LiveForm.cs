
namespace BrakeBalance.Charts.Live;

internal static class LiveForm
{
    /// <summary>The form; the page's script listens to what its elements say in their data attributes.</summary>
    public static string Html(string text, UnitSystem units)
    {
        (IReadOnlyList<FormPart> parts, Problem? problem) = CarForm.Of(text, units);
        if (problem is not null)
        {
            return $"<p class=\"bb-wrong\">{Escape(problem.ToString())}</p>";
        }

        var html = new StringBuilder();
        foreach (FormPart part in parts)
        {
            Top(html, part);
        }

        return html.ToString();
    }

    private static void Top(StringBuilder html, FormPart part)
    {
        string key = part.Path.Length == 0 ? "car" : part.Path;
        html.Append("<details class=\"bb-part\" data-part=\"").Append(key).Append("\"><summary><span>").Append(Escape(part.Label))
            .Append("</span> <small>").Append(Escape(Short(part))).Append("</small></summary>\n");
        Inside(html, part, 3);
        html.Append("</details>\n");
    }

    // What a folded part says of itself: the first few values given.
    private static string Short(FormPart part)
    {
        if (!part.IsThere)
        {
            return "left out";
        }

        string[] values = [.. Values(part).Where(value => value.Length is > 0 and < 24).Take(4)];
        return values.Length == 0 ? part.IsGiven ? "" : "by class" : string.Join(" · ", values);
    }

    private static IEnumerable<string> Values(FormPart part) =>
        (part.Kind is { } kind && part.IsGiven ? [kind] : Enumerable.Empty<string>())
            .Concat(part.Fields.Where(field => field.Path != "note").Select(field => field.Value))
            .Concat(part.Parts.SelectMany(Values));

    private static void Inside(StringBuilder html, FormPart part, int level)
    {
        if (part.Description.Length > 0)
        {
            html.Append("<p class=\"bb-about\">").Append(Escape(part.Description)).Append(".</p>\n");
        }

        if (part.Kinds.Count > 0)
        {
            Kinds(html, part);
        }

        if (!part.IsThere)
        {
            if (part.Kinds.Count == 0)
            {
                Button(html, "add", part.Path, $"Add {Figure.Small(part.Label)}");
            }

            return;
        }

        ILookup<bool, FormField> shown = part.Fields.ToLookup(field => field.Value.Length > 0 || field.FromClass.Length > 0
            || (field.Entry.About.Required && field.Entry.About.InPlaceOf.Length == 0));
        foreach (FormField field in shown[true])
        {
            Field(html, field);
        }

        FormPart[] there = [.. part.Parts.Where(inner => inner.IsThere || inner.Kinds.Count > 0)], absent = [.. part.Parts.Except(there)];
        foreach (FormPart inner in there)
        {
            Nested(html, inner, level);
        }

        if (part.MayGrow)
        {
            Button(html, "add", part.Path, $"Add to {Figure.Small(part.Label)}");
        }

        int more = shown[false].Count() + absent.Length;
        if (more > 0)
        {
            html.Append("<details class=\"bb-more\"><summary>").Append(CultureInfo.InvariantCulture, $"{more} more")
                .Append("<span class=\"bb-hidden\">").Append(more == 1 ? " entry of " : " entries of ")
                .Append(Escape(Figure.Small(part.Label))).Append("</span></summary>\n");
            foreach (FormField field in shown[false])
            {
                Field(html, field);
            }

            foreach (FormPart inner in absent)
            {
                Nested(html, inner, level);
            }

            html.Append("</details>\n");
        }

        if (part.IsGiven && part.Path.Length > 0)
        {
            Button(html, "remove", part.Path, $"Take {Figure.Small(part.Label)} out");
        }
    }

    private static void Nested(StringBuilder html, FormPart part, int level)
    {
        html.Append(CultureInfo.InvariantCulture,
            $"<fieldset class=\"bb-inner\" data-part=\"{Escape(part.Path)}\"><legend>{Escape(part.Label)}</legend>\n");
        Inside(html, part, level + 1);
        html.Append("</fieldset>\n");
    }

    private static void Kinds(StringBuilder html, FormPart part)
    {
        string id = Id(part.Path + ".type");
        string label = Escape(Figure.Small(part.Label));
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-field\" data-field=\"{Escape(part.Path)}.type\"><label for=\"{id}\">Kind of {label}</label>\n")
            .Append(CultureInfo.InvariantCulture, $"<select id=\"{id}\" data-kind=\"{Escape(part.Path)}\">");
        if (part.Kind is null || !part.IsGiven)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<option value=\"\" selected>{Escape(part.Kind is null ? "left out" : $"{part.Kind}, by class")}</option>");
        }

        foreach ((string name, string description) in part.Kinds)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<option value=\"{Escape(name)}\"{(part.IsGiven && name == part.Kind ? " selected" : "")}>{Escape(description)}</option>");
        }

        html.Append("</select><p class=\"bb-wrong\" hidden></p></div>\n");
    }

    private static void Field(StringBuilder html, FormField field)
    {
        string id = Id(field.Path), path = Escape(field.Path);
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-field\" data-field=\"{path}\"><label for=\"{id}\">{Escape(field.Label)}</label>\n<div class=\"bb-entry\">");
        if (field.Entry.Shape is FieldShape.Choice or FieldShape.Flag)
        {
            IEnumerable<string> words = field.Entry.Shape == FieldShape.Flag
                ? ["true", "false"] : field.Entry.Words.Select(known => known.Word);
            html.Append(CultureInfo.InvariantCulture, $"<select id=\"{id}\" data-path=\"{path}\" aria-describedby=\"{id}-about\">")
                .Append(CultureInfo.InvariantCulture,
                    $"<option value=\"\">{Escape(field.FromClass.Length > 0 ? $"{field.FromClass}, by class" : "left out")}</option>");
            foreach (string word in words)
            {
                html.Append(CultureInfo.InvariantCulture,
                    $"<option value=\"{Escape(word)}\"{(word == field.Value ? " selected" : "")}>{Escape(Word(field, word))}</option>");
            }

            html.Append("</select>");
        }
        else
        {
            string value = Escape(field.Value);
            html.Append(CultureInfo.InvariantCulture, $"<input id=\"{id}\" type=\"text\" data-path=\"{path}\" value=\"{value}\"")
                .Append(" autocomplete=\"off\" spellcheck=\"false\"")
                .Append(CultureInfo.InvariantCulture, $" aria-describedby=\"{id}-beside {id}-about\"")
                .Append(field.FromClass.Length > 0
                    ? $" placeholder=\"{Escape(field.FromClass)} (class)\"" : "").Append('>')
                .Append(CultureInfo.InvariantCulture, $"<output id=\"{id}-beside\" for=\"{id}\" class=\"bb-beside\">")
                .Append(Escape(Beside(field.Beside))).Append("</output>");
        }

        if (field.Slide is { } slide)
        {
            string unit = Escape(slide.Unit), label = Escape(Figure.Small(field.Label));
            html.Append("<button type=\"button\" class=\"bb-slide\" aria-pressed=\"false\"")
                .Append(CultureInfo.InvariantCulture, $" data-slide=\"{path}\"")
                .Append(CultureInfo.InvariantCulture, $" data-low=\"{slide.Low:R}\" data-high=\"{slide.High:R}\"")
                .Append(CultureInfo.InvariantCulture, $" data-value=\"{slide.Value:R}\" data-unit=\"{unit}\"")
                .Append(CultureInfo.InvariantCulture, $" data-decimals=\"{slide.Decimals}\">")
                .Append(CultureInfo.InvariantCulture, $"Slide<span class=\"bb-hidden\"> {label}</span></button>");
        }

        html.Append("</div>\n<p class=\"bb-wrong\" hidden></p>\n<details class=\"bb-how\" id=\"").Append(id).Append("-about\"><summary>")
            .Append(Escape(field.Told(field.Entry.About.Description))).Append(".</summary>");
        if (field.Entry.About.HowToMeasure is { Length: > 0 } how)
        {
            html.Append("<p>How to measure: ").Append(Escape(field.Told(how))).Append(".</p>");
        }

        if (field.Usual is { Length: > 0 } usual)
        {
            html.Append("<p>Usual: ").Append(Escape(usual)).Append(" (common practice).</p>");
        }

        html.Append("<p>Accepted: ").Append(Escape(field.Told(DocumentReader.Typed(field.Entry)))).Append(".</p></details></div>\n");
    }

    /// <summary>What a value is in the chosen system of units, as it stands beside the field.</summary>
    public static string Beside(string converted) => converted.Length > 0 ? "= " + converted : "";

    private static string Word(FormField field, string word) => field.Entry.Shape == FieldShape.Flag ? word == "true" ? "yes" : "no" : word;

    private static void Button(StringBuilder html, string how, string path, string label) => html.Append(
        CultureInfo.InvariantCulture, $"<button type=\"button\" data-how=\"{how}\" data-at=\"{Escape(path)}\">{Escape(label)}</button>\n");

    private static string Id(string path) => "f-" + string.Concat(path.Select(letter => char.IsAsciiLetterOrDigit(letter) ? letter : '-'));

    private static string Escape(string text) => HtmlRenderer.Escape(text);
}
