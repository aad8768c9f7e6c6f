using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Turns the words of a drawing into outlines, so that it looks the same whatever fonts there are where it is shown.</summary>
/// <remarks>Each word keeps the width that it was laid out with.</remarks>
/// <param name="unitsPerEm">How many units of the outlines make the size of the font.</param>
/// <param name="letter">Width of a letter, of the usual or the bold face, and its outline as SVG path data, empty for a space; null when
/// the font lacks it.</param>
public sealed partial class LetterOutlines(double unitsPerEm, Func<char, bool, (double Width, string Path)?> letter)
{
    private const char Bold = '\u0100';

    private static readonly string[] Laid =
        ["x", "y", "textLength", "lengthAdjust", "text-anchor", "font-size", "font-weight", "font-style", "font-family", "stroke-width",
            "transform"];

    /// <summary>Outlines that were written by <see cref="Text"/>; a null reference for no text.</summary>
    internal static LetterOutlines? Read(string? text)
    {
        if (text is null || JsonNode.Parse(text) is not JsonObject said)
        {
            return null;
        }

        return new(said["em"]!.GetValue<double>(), (one, bold) => said[Key(one, bold)] is JsonArray found
            ? (found[0]!.GetValue<double>(), found[1]!.GetValue<string>()) : null);
    }

    /// <summary>The outlines of letters as text, for a page to carry; those that the font lacks are left out, signs are not bold.</summary>
    /// <param name="letters">The letters.</param>
    public string Text(IEnumerable<char> letters) => PlainJson.Text(new JsonObject([
        new("em", unitsPerEm),
        .. from one in letters
           from bold in one < Bold ? (bool[])[false, true] : [false]
           let found = letter(one, bold)
           where found is not null
           select KeyValuePair.Create(Key(one, bold), (JsonNode?)new JsonArray(found.Value.Width, found.Value.Path)),
    ]));

    /// <summary>The drawing with outlines in place of its words; a word with a letter that the font lacks stays as it is.</summary>
    /// <param name="svg">A drawing that names itself.</param>
    public string Of(string svg)
    {
        ArgumentNullException.ThrowIfNull(svg);
        string id = Label().Match(svg).Groups[1].Value;
        var written = new StringBuilder();
        var open = new Stack<Dictionary<string, string>>([[]]);
        SortedDictionary<string, string> glyphs = new(StringComparer.Ordinal);
        int at = 0, defs = 0;
        foreach (Match tag in Tags().Matches(svg))
        {
            (string name, bool ends) = (tag.Groups["name"].Value, tag.Groups["end"].Length > 0);
            if (ends)
            {
                open.Pop();
                if (open.Count == 2 && name is "title" or "desc" or "metadata")
                {
                    written.Append(svg, at, tag.Index + tag.Length - at);
                    (at, defs) = (tag.Index + tag.Length, written.Length);
                }

                continue;
            }

            Dictionary<string, string> own = new(open.Peek());
            foreach (Match one in Attributes().Matches(tag.Value).Where(one => Laid.Contains(one.Groups[1].Value)))
            {
                own[one.Groups[1].Value] = one.Groups[2].Value;
            }

            int close = name == "text" ? svg.IndexOf('<', tag.Index + tag.Length) : -1;
            if (close > 0 && string.CompareOrdinal(svg, close, "</text>", 0, 7) == 0
                && Outline(WebUtility.HtmlDecode(svg[(tag.Index + tag.Length)..close]), tag.Value, own, id, glyphs) is { } group)
            {
                written.Append(svg, at, tag.Index - at).Append(group);
                at = close + "</text>".Length;
            }

            if (tag.Groups["empty"].Length == 0)
            {
                // What a word is moved by is its own; a shift around it holds for its outlines as it did for it.
                own.Remove("transform");
                open.Push(own);
            }
        }

        written.Append(svg, at, svg.Length - at);
        return glyphs.Count == 0 ? written.ToString() : written.Insert(defs, "\n<defs>" + string.Concat(
            glyphs.Select(glyph => $"<path id=\"{glyph.Key}\" d=\"{glyph.Value}\" />")) + "</defs>").ToString();
    }

    private string? Outline(
        string words, string tag, Dictionary<string, string> laid, string id, SortedDictionary<string, string> glyphs)
    {
        bool bold = laid.GetValueOrDefault("font-weight") == "bold";
        (double Width, string Path)?[] letters = [.. words.Select(one => letter(one, bold))];
        if (words.Length == 0 || letters.Any(one => one is null))
        {
            return null;
        }

        double? Number(string name) => laid.TryGetValue(name, out string? value) ? double.Parse(value, CultureInfo.InvariantCulture) : null;
        double unit = (Number("font-size") ?? 16) / unitsPerEm, natural = unit * letters.Sum(one => one!.Value.Width);
        double shown = Number("textLength") ?? natural, wide = natural > 0 ? unit * shown / natural : unit;
        double start = (Number("x") ?? 0) - shown * (laid.GetValueOrDefault("text-anchor") switch { "end" => 1, "middle" => 0.5, _ => 0 });
        var group = new StringBuilder("<g");
        foreach (Match one in Attributes().Matches(tag).Where(one => !Laid.Contains(one.Groups[1].Value)))
        {
            group.Append(one.Value);
        }

        if (Number("stroke-width") is { } stroke)
        {
            group.Append(CultureInfo.InvariantCulture, $" stroke-width=\"{Math.Round(stroke / unit, 2)}\"");
        }

        // A turn stands before the shift and the scale, as it does on the words.
        group.Append(" transform=\"").Append(laid.TryGetValue("transform", out string? turn) ? turn + " " : "")
            .Append(CultureInfo.InvariantCulture, $"translate({Math.Round(start, 2)} {Math.Round(Number("y") ?? 0, 2)}) ")
            .Append(CultureInfo.InvariantCulture, $"scale({Math.Round(wide, 6)} {Math.Round(unit, 6)})\">");
        double reached = 0;
        foreach ((char one, (double width, string path)) in words.Zip(letters, (one, found) => (one, found!.Value)))
        {
            if (path.Length > 0)
            {
                string name = $"{id}-{Key(one, bold)}";
                glyphs[name] = path;
                group.Append(CultureInfo.InvariantCulture, $"<use href=\"#{name}\"")
                    .Append(reached == 0 ? "" : Invariant.Text($" x=\"{Math.Round(reached)}\"")).Append(" />");
            }

            reached += width;
        }

        return group.Append("</g>").ToString();
    }

    private static string Key(char letter, bool bold) => Invariant.Text($"{(bold ? "b" : "r")}{(int)letter:x}");

    [GeneratedRegex("aria-labelledby=\"([^ \"]+)")]
    private static partial Regex Label();

    [GeneratedRegex("<(?<end>/?)(?<name>[a-zA-Z][\\w:-]*)(?:\\s+[\\w:-]+=\"[^\"]*\")*\\s*(?<empty>/?)>")]
    private static partial Regex Tags();

    [GeneratedRegex(" ([\\w:-]+)=\"([^\"]*)\"")]
    private static partial Regex Attributes();
}
