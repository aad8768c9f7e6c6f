namespace BrakeBalance.Charts.Publishing;

/// <summary>What a figure shows and says to readers who do not know the trade: few marks, plain words.</summary>
/// <param name="Caption">The caption; at most 40 words.</param>
/// <param name="X">The axis from left to right.</param>
/// <param name="Y">The axis from bottom to top.</param>
/// <param name="Title">The finding, from the car and the figure in the words of the trade.</param>
/// <param name="Marks">
/// The marks that stay, each with its words. A star at the end of a name stands for any ending; in the words it is that ending. Bars of the
/// same words are added up, areas become one; no words draw a mark without a name.
/// </param>
/// <remarks>Written by hand beside each figure; the marks that are not named are left out of the drawing.</remarks>
internal sealed record PlainText(
    string Caption, PlainAxis X, PlainAxis Y, Func<CarStudy, Figure, string> Title, (string Name, string Words)[] Marks)
{
    /// <summary>The most marks that carry a name.</summary>
    public const int MostLabels = 4;

    /// <summary>The figure in plain words.</summary>
    public Figure Of(Figure figure, CarStudy study)
    {
        string title = Title(study, figure);
        Axis x = Plain(figure.XAxis, X), y = Plain(figure.YAxis, Y);
        IReadOnlyList<Layer> layers = FewNames([.. Added([.. figure.Layers.Select(Plain).OfType<Layer>()])]);
        return figure with
        {
            Title = title,
            Caption = Caption,
            LongDescription = $"{title}. {Caption}",
            XAxis = x,
            YAxis = y,
            Layers = layers,
            Table = AutomaticTable.Of(x, y, layers, figure.Units),
        };
    }

    /// <summary>The name of a load case in plain words.</summary>
    public static string Load(string name) => name switch { "driver only" => "driver alone", "laden" => "fully loaded", _ => name };

    /// <summary>What a control moves, in plain words.</summary>
    public static string Label(string label) => label switch
    {
        "Knee pressure of the valve" => "Bend of the valve",
        "Front share of the balance bar" => "Share that the bar gives the front",
        _ => label.Replace("Bore of", "Width of", StringComparison.Ordinal),
    };

    private string? Words(string name) => Marks
        .Where(mark => !mark.Name.EndsWith('*') ? mark.Name == name : name.StartsWith(mark.Name[..^1], StringComparison.Ordinal))
        .Select(mark => mark.Words.Replace("*", Load(name[Math.Min(name.Length, mark.Name.Length - 1)..]), StringComparison.Ordinal))
        .FirstOrDefault();

    private Axis Plain(Axis axis, PlainAxis plain) => axis with
    {
        Quantity = plain.Words,
        Symbol = "",
        Measure = plain.Unit is { } unit ? Measure.Pure(plain.Words, unit, 1, 0.01) : axis.Measure,
        Categories = axis.Categories is { } names ? [.. names.Select(name => Words(name) ?? name)] : null,
    };

    private Layer? Plain(Layer layer)
    {
        if (layer is MapLayer map)
        {
            string[] labels = [.. map.Classes.Select((c, i) => map.Cells.Any(row => row.Contains(i)) ? Words(c.Label) ?? "" : "")];
            int[] first = [.. labels.Select((one, i) => one.Length == 0 ? i : Array.IndexOf(labels, one))];
            return map with
            {
                Name = "map",
                Classes = [.. map.Classes.Select((c, i) => c with { Label = first[i] == i ? labels[i] : "" })],
                Cells = [.. map.Cells.Select(row => (int[])[.. row.Select(c => c < 0 ? c : first[c])])],
            };
        }

        if (Words(layer.Name) is not { } words)
        {
            return null;
        }

        Layer named = layer with { Name = words.Length > 0 ? words : "mark", Label = words.Length == 0 || layer.Label == "" ? "" : null };
        return named is MarkerLayer markers ? markers with { PointLabels = null } : named;
    }

    private static IEnumerable<Layer> Added(IReadOnlyList<Layer> layers)
    {
        HashSet<string> done = [];
        foreach (Layer layer in layers)
        {
            if (layer is not BarLayer bars)
            {
                yield return layer;
            }
            else if (done.Add(bars.Name))
            {
                BarLayer[] same = [.. layers.OfType<BarLayer>().Where(one => one.Name == bars.Name)];
                yield return bars with { Values = [.. bars.Values.Select((_, i) => same.Sum(one => one.Values[i]))] };
            }
        }
    }

    /// <summary>Takes the names from the middle of the lines where there are too many, and single points whole; first and last tell the
    /// rest.</summary>
    private static IReadOnlyList<Layer> FewNames(Layer[] layers)
    {
        HashSet<Layer> nameless = [];
        int classes = layers.OfType<MapLayer>().Sum(map => map.Classes.Count(c => c.Label.Length > 0));
        int[] named = [.. layers.Index().Where(one => one.Item is not MapLayer && one.Item.LabelText.Length > 0)
            .OrderBy(one => one.Item is ReferenceLayer).Select(one => one.Index)];
        for (int over = named.Length + classes - MostLabels, at = named.Length / 2; over > 0; over--, at = named.Length / 2)
        {
            layers[named[at]] = layers[named[at]] with { Label = "" };
            nameless.Add(layers[named[at]]);
            named = [.. named.Where((_, i) => i != at)];
        }

        return [.. layers.Where(layer => !(layer is MarkerLayer { X.Count: 1 } && nameless.Contains(layer)))];
    }
}
