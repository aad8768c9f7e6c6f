using System.Text.RegularExpressions;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Publishing;

/// <summary>Puts a figure into words for readers who do not know the trade.</summary>
public static class PlainWording
{
    // In this order; the longer expressions of the trade come before the words they are made of.
    private static readonly (Regex Trade, string Plain)[] Words =
    [
        .. new (string, string)[]
        {
            (@"limit of UN R13-H\b", "legal limit for new cars"),
            (@"limit of UN R13\b", "legal limit for heavy vehicles"),
            (@"rear limit of FMVSS 135", "United States limit for the rear"),
            (@"UN R13-H|UN R13|FMVSS \d+", "the rule for new cars"),
            (@" \(49 CFR [^)]*\)", ""),
            (@"whose adhesion utilised equals deceleration", "of the perfect split"),
            (@"adhesion utilised equals deceleration", "both axles use the same grip"),
            (@"between decelerations of (\d+\.\d+) and (\d+\.\d+ g)", "when braking between $1 and $2"),
            (@"at decelerations from (\d+\.\d+) to (\d+\.\d+ g)", "when braking at $1 to $2"),
            (@"from a deceleration of (\d+\.\d+) to (\d+\.\d+ g)", "from $1 to $2 of braking"),
            (@"between (\d+\.\d+) and (\d+\.\d+)(?! g)", "between $1 and $2"),
            (@"up to a deceleration of (\d+\.\d+ g)", "up to $1 of braking"),
            (@"for a deceleration of (\d+\.\d+ g)", "for $1 of braking"),
            (@"at every deceleration", "however hard it brakes"),
            (@"at a deceleration of (\d+\.\d+ g)", "when braking at $1"),
            (@"a deceleration of (\d+\.\d+ g)", "braking at $1"),
            (@"deceleration at first lock", "braking when the first wheel locks"),
            (@"decelerations?( z)?", "braking"),
            (@"the mean braking efficiency", "the average share of grip used"),
            (@"the least braking efficiency", "the smallest share of grip used"),
            (@"mean braking efficiency|mean efficiency", "average share of grip used"),
            (@"least braking efficiency", "smallest share of grip used"),
            (@"braking efficiency|efficiency", "share of grip used"),
            (@"at an adhesion of (\d+\.\d+)", "on a road with a grip of $1"),
            (@"an adhesion of (\d+\.\d+)", "a grip of $1"),
            (@"at adhesions from (\d+\.\d+) to (\d+\.\d+)", "on roads with a grip of $1 to $2"),
            (@"adhesion utilised", "grip used"),
            (@"adhesion coefficient", "grip"),
            (@"adhesion k\b", "grip of the road"),
            (@"adhesions?", "grip"),
            (@"\bk[\s\u00a0]=[\s\u00a0](\d+\.\d+)", "grip $1"),
            (@"\bz[\s\u00a0]=[\s\u00a0](\d+\.\d+)", "$1 g"),
            (@"\bf[\s\u00a0]=[\s\u00a0]z\b", "perfect split"),
            (@"line pressures?", "fluid pressure"),
            (@", gauge\b", ""),
            (@"(pressures at )?first lock-up", "$1first locking"),
            (@"lock-up", "locking"),
            (@"safe limit of the knee", "highest safe bend point"),
            (@"slope above the knee", "share passed on above the bend point"),
            (@"a knee\b", "a bend point"),
            (@"knees", "bend points"),
            (@"knee", "bend point"),
            (@"a slope of (\d+\.\d+)", "a share of $1 passed on"),
            (@"slopes", "shares passed on"),
            (@"slope", "share passed on"),
            (@"the ideal curve", "the curve of the perfect split"),
            (@"ideal distribution|ideal curve", "perfect split"),
            (@"ideal (front|rear) brake force", "$1 brake force of the perfect split"),
            (@"\bideal\b", "perfect split"),
            (@"the installed line|installed line", "this car's line"),
            (@"installed", "this car"),
            (@"distribution", "split"),
            (@"driver only", "driver alone"),
            (@"\bladen\b", "fully loaded"),
            (@"load cases", "loads"),
            (@"load case", "load"),
            (@"run-out", "end of the booster's help"),
            (@"the assist runs out", "the booster's help ends"),
            (@"\bapplication\b", "press"),
            (@"without assist", "without the booster"),
            (@"\bno assist\b", "no booster help"),
            (@"the present assist", "the present booster,"),
            (@"\bassist\b", "booster"),
            (@"without the booster, dead", "booster dead"),
            (@"anti-lock bound", "best any system could do"),
            (@"the bound\b", "the best any system could do"),
            (@"bound by", "what limits it"),
            (@"\bbound\b", "best any system could do"),
            (@"just below lock-up", "with wheels just short of locking"),
            (@"threshold distance", "distance just short of locking"),
            (@"at the threshold", "with wheels just short of locking"),
            (@"threshold", "wheels just short of locking"),
            (@"nominal friction", "normal friction"),
            (@"torque factors?", "brake strength"),
            (@"torque", "brake strength"),
            (@"lateral acceleration over g|lateral acceleration", "sideways pull"),
            (@"normal reactions?", "wheel load"),
            (@"sideslip", "drift angle"),
            (@"peak slip|\bslip\b", "sliding"),
            (@"build-up", "pressure rising"),
            (@"hat\b(?= )", "hub"),
            (@"front hat", "front hub"),
            (@"heading without sign|heading", "turned by"),
            (@"bore of the master cylinder", "width of the master cylinder"),
            (@"\bbores\b", "widths"),
            (@"\bbore\b", "width"),
        }.Select(pair => (new Regex(pair.Item1, RegexOptions.IgnoreCase | RegexOptions.CultureInvariant), pair.Item2)),
    ];

    /// <summary>The figure in plain words: axes, labels, texts and table; the drawing and its numbers stay.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="text">Caption, alternative text and axes.</param>
    /// <returns>The plain variant, with the same name.</returns>
    public static Figure Of(Figure figure, PlainText text)
    {
        ArgumentNullException.ThrowIfNull(figure);
        ArgumentNullException.ThrowIfNull(text);
        return figure with
        {
            Title = Say(figure.Title),
            Caption = text.Caption,
            AltText = text.Alt,
            LongDescription = Say(figure.LongDescription),
            XAxis = Plain(figure.XAxis, text.X),
            YAxis = Plain(figure.YAxis, text.Y),
            Layers = [.. figure.Layers.Select(Plain)],
            Table = Plain(figure.Table),
        };
    }

    /// <summary>A text of the trade in plain words.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The text with each expression of the trade replaced; a sentence keeps its capital.</returns>
    public static string Say(string text)
    {
        foreach ((Regex trade, string plain) in Words)
        {
            text = trade.Replace(text, match =>
            {
                string said = match.Result(plain);
                return said.Length > 0 && char.IsUpper(match.Value[0]) && char.IsLower(said[0])
                    && !match.Value.StartsWith("UN ", StringComparison.Ordinal)
                    ? char.ToUpperInvariant(said[0]) + said[1..]
                    : said;
            });
        }

        return text;
    }

    private static Axis Plain(Axis axis, PlainAxis plain) => axis with
    {
        Quantity = plain.Words,
        Symbol = "",
        Measure = plain.Unit is { } unit ? Measure.Pure(plain.Words, unit, 1, 0.01) : axis.Measure,
        Categories = axis.Categories is { } names ? [.. names.Select(Say)] : null,
    };

    private static Layer Plain(Layer layer)
    {
        Layer named = layer with { Name = Say(layer.Name), Label = layer.Label is { } label ? Say(label) : null };
        return named switch
        {
            MarkerLayer { PointLabels: { } labels } markers => markers with { PointLabels = [.. labels.Select(Say)] },
            MapLayer map => map with { Classes = [.. map.Classes.Select(c => c with { Label = Say(c.Label) })] },
            _ => named,
        };
    }

    private static FigureTable Plain(FigureTable table) => new(new DataFrame(table.Frame.Columns.Select(column =>
    {
        DataFrameColumn copy = column is StringDataFrameColumn words
            ? new StringDataFrameColumn(column.Name, words.Select(cell => Say(cell ?? "")))
            : column.Clone();
        copy.SetName(Say(column.Name).Replace(" [–]", "", StringComparison.Ordinal));
        return copy;
    })));
}
