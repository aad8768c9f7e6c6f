using System.Text.RegularExpressions;

namespace BrakeBalance.Charts.Publishing;

/// <summary>How a publisher wants its figures: colours, font, title and credit line; what is left out stays as it is.</summary>
public sealed partial class HouseStyle
{
    private static readonly (string Name, Tone Tone, Func<HouseStyleDocument, string?> Said)[] Tones =
    [
        ("ink", Tone.Main, said => said.Ink), ("front", Tone.Front, said => said.Front), ("rear", Tone.Rear, said => said.Rear),
        ("ideal", Tone.Ideal, said => said.Ideal), ("other", Tone.Other, said => said.Other), ("guide", Tone.Guide, said => said.Guide),
    ];

    private readonly HouseStyleDocument _said;

    private HouseStyle(HouseStyleDocument said) => _said = said;

    /// <summary>A style that says no more than a page can be asked for by itself.</summary>
    internal HouseStyle(string? credit, string? number)
        : this(new HouseStyleDocument { Credit = credit, Number = number })
    {
    }

    /// <summary>The credit line in place of the usual one, empty for none; null when the file says nothing of it.</summary>
    public string? Credit => _said.Credit;

    /// <summary>12345.6 as the house writes it; null when the file says nothing of it.</summary>
    internal string? Number => _said.Number;

    /// <summary>What stands before decimals and, where anything does, between thousands.</summary>
    public string Separators => Sample(_said.Number) is var (group, point) ? point + group : ".";

    /// <summary>The font of all words; null when the file names none.</summary>
    public string? Font => _said.Font;

    /// <summary>A figure with the numbers in its words written as the house writes them.</summary>
    /// <param name="figure">The figure.</param>
    public Figure Of(Figure figure)
    {
        ArgumentNullException.ThrowIfNull(figure);
        return figure with
        {
            Title = Numbers(figure.Title),
            Finding = figure.Finding is { } finding ? Numbers(finding) : null,
            Caption = Numbers(figure.Caption),
            LongDescription = Numbers(figure.LongDescription),
            Layers = [.. figure.Layers.Select(layer =>
                layer with { Name = Numbers(layer.Name), Label = layer.Label is { } label ? Numbers(label) : null })],
        };
    }

    /// <summary>A drawing or piece of a page with all numbers as the house writes them, also those that are read off a drawing.</summary>
    /// <param name="markup">The drawing or piece.</param>
    public string Numbered(string markup) => _said.Number is not { } number ? markup
        : Readable().Replace(Worded().Replace(markup, match => match.Groups[1].Value + Numbers(match.Groups[2].Value)),
            plan => $"data-number=\"{number}\" " + Quoted().Replace(plan.Value, name => Numbers(name.Value)));

    /// <summary>A text with its numbers written as the house writes them; names, sections and years stay.</summary>
    /// <param name="text">The text.</param>
    public string Numbers(string text) => Sample(_said.Number) is not var (group, point) ? text : Numeral().Replace(text, found =>
    {
        string whole = found.Groups["whole"].Value;
        for (int at = whole.Length - 3; at > 0 && found.Groups["whole"].Length > 4; at -= 3)
        {
            whole = whole.Insert(at, group);
        }

        return whole + (found.Groups["part"].Success ? point + found.Groups["part"].Value : "");
    });

    /// <summary>A size with title and credit line drawn in or left out.</summary>
    /// <param name="size">The size.</param>
    public FigureSize Of(FigureSize size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return size with { ShowTitle = _said.Title ?? size.ShowTitle, ShowCredit = Credit is null ? size.ShowCredit : Credit.Length > 0 };
    }

    /// <summary>A theme in the style's colours and font.</summary>
    /// <param name="theme">The theme.</param>
    public Theme Of(Theme theme)
    {
        ArgumentNullException.ThrowIfNull(theme);
        return theme with
        {
            Background = theme == Theme.Transparent ? theme.Background : _said.Background ?? theme.Background,
            Ink = _said.Ink ?? theme.Ink,
            Muted = _said.Ink ?? theme.Muted,
            Front = _said.Front ?? theme.Front,
            Rear = _said.Rear ?? theme.Rear,
            Ideal = _said.Ideal ?? theme.Ideal,
            Other = _said.Other ?? theme.Other,
            Guide = _said.Guide ?? theme.Guide,
            Font = _said.Font is { } font ? $"'{font}', {theme.Font}" : theme.Font,
        };
    }

    /// <summary>Reads a style and holds its colours against each theme that it is used with.</summary>
    /// <param name="text">The text, JSON.</param>
    /// <param name="themes">The themes.</param>
    /// <returns>The style; null with every problem found.</returns>
    public static (HouseStyle? Style, IReadOnlyList<Problem> Problems) Read(string text, IEnumerable<Theme> themes)
    {
        DocumentReading<HouseStyleDocument> reading = DocumentFile.Read<HouseStyleDocument>(text);
        List<Problem> problems = [.. reading.Problems];
        if (reading.Document is not { } document)
        {
            return (null, problems);
        }

        foreach ((string name, string? said) in
            Tones.Select(one => (one.Name, one.Said(document))).Append(("background", document.Background)))
        {
            if (said is { } colour && !(colour.Length == 7 && colour[0] == '#' && colour[1..].All(char.IsAsciiHexDigit)))
            {
                problems.Add(new(name, $"\"{colour}\" is no colour.", "six hexadecimal digits after a #, such as #0072b2"));
            }
        }

        if (document.Font?.Any(letter => !char.IsLetterOrDigit(letter) && letter is not (' ' or '-')) == true)
        {
            problems.Add(new("font", $"\"{document.Font}\" is no name of a font.", "letters, digits, spaces and hyphens"));
        }

        if (document.Number is { } number && Sample(number) is null)
        {
            problems.Add(new("number", $"\"{number}\" is not 12345.6 as a house may write it.",
                "such as 12345.6, 12345,6, 12,345.6, 12.345,6, 12 345,6 or 12’345.6"));
        }

        var style = new HouseStyle(document);
        problems.AddRange(problems.Count > 0 ? []
            : themes.Select(theme => style.Of(theme == Theme.Transparent ? Theme.Light : theme)).SelectMany(style.Unclear)
                .DistinctBy(problem => problem.ToString()));
        return (problems.Count > 0 ? null : style, problems);
    }

    private static (string Group, string Point)? Sample(string? number) =>
        number is not null && Written().Match(number) is { Success: true } match && match.Groups[1].Value != match.Groups[2].Value
            ? (match.Groups[1].Value, match.Groups[2].Value) : null;

    [GeneratedRegex(@"^12([.,'’]|\s|)345([.,])6$")]
    private static partial Regex Written();

    // Sections of rules ("571.116"), names with letters on them ("1960s", "R13") and the numbers in addresses are no numerals.
    [GeneratedRegex(@"(?<![\w.,#/]|CFR |FMVSS )(?<whole>\d+)(?:\.(?<part>\d+))?(?![\w/]|\.\d)")]
    private static partial Regex Numeral();

    [GeneratedRegex("(<(?:(?:dc:)?title|dc:description|text|desc|figcaption|p|output|option|dd|small|th|td)(?: [^>]*)?>|aria-label=\")"
        + "([^<\"]+)")]
    private static partial Regex Worded();

    // What FigureReading tells of a drawing: its names are words, its steps of rounding are not.
    [GeneratedRegex("data-read=\"[^\"]+")]
    private static partial Regex Readable();

    [GeneratedRegex("&quot;.*?&quot;")]
    private static partial Regex Quoted();

    // Least contrast by WCAG 2.1: 4.5 for text (1.4.3), 3 for marks (1.4.11). Only what the style itself brings is judged.
    private IEnumerable<Problem> Unclear(Theme theme)
    {
        foreach ((string name, Tone tone, _) in Tones.Where(one => (one.Said(_said) ?? _said.Background) is not null))
        {
            double least = tone == Tone.Main ? 4.5 : 3, contrast = Theme.Contrast(theme[tone], theme.Background);
            if (contrast < least)
            {
                yield return new(name, Invariant.Text(
                    $"{theme[tone]} stands against {theme.Background} with a contrast of {contrast:0.0}."),
                    Invariant.Text($"at least {least:0.0}"));
            }
        }

        foreach ((var one, var two) in from one in Tones
                                       from two in Tones
                                       where one.Tone < two.Tone && (one.Said(_said) ?? two.Said(_said)) is not null
                                       select (one, two))
        {
            (string a, string b) = (theme[one.Tone], theme[two.Tone]);
            string? alike = ColourVision.Deficiencies.Keys.FirstOrDefault(deficiency => ColourVision.ClearlyDifferent
                > ColourVision.Difference(ColourVision.Seen(a, deficiency), ColourVision.Seen(b, deficiency)));
            if (alike is not null)
            {
                yield return new(two.Said(_said) is null ? one.Name : two.Name,
                    $"{one.Name} {a} and {two.Name} {b} look alike to people with {alike}.", "colours that differ more");
            }
        }
    }
}

internal sealed class HouseStyleDocument
{
    [Field("Font of all words, set as its name is known to the reader's device; every word keeps the width it was laid out with",
        Example = "Source Sans 3", HowToMeasure = "Chosen: the house's own")]
    public string? Font { get; set; }

    [Field("Whether the title is drawn into the figure; true when left out", Example = "true", HowToMeasure = "Chosen")]
    public bool? Title { get; set; }

    [Field("Credit line in place of the usual one; empty for none", Example = "Our desk", HowToMeasure = "Chosen; the licence wants one")]
    public string? Credit { get; set; }

    [Field("The number 12345.6 as the house writes it; as it stands here when left out", Example = "12,345.6", HowToMeasure = "Chosen")]
    public string? Number { get; set; }

    [Field("Background", Example = "#ffffff", HowToMeasure = "Chosen: the house's own")]
    public string? Background { get; set; }

    [Field("Words, axes and the line that a figure is about", Example = "#1b1f23", HowToMeasure = "Chosen: the house's own")]
    public string? Ink { get; set; }

    [Field("The front axle", Example = "#0072b2", HowToMeasure = "Chosen: the house's own")]
    public string? Front { get; set; }

    [Field("The rear axle", Example = "#c44e00", HowToMeasure = "Chosen: the house's own")]
    public string? Rear { get; set; }

    [Field("What is ideal, or a good range", Example = "#00805c", HowToMeasure = "Chosen: the house's own")]
    public string? Ideal { get; set; }

    [Field("A second case", Example = "#9a4783", HowToMeasure = "Chosen: the house's own")]
    public string? Other { get; set; }

    [Field("Guide lines", Example = "#767d85", HowToMeasure = "Chosen: the house's own")]
    public string? Guide { get; set; }
}
