using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Where everything of a figure goes at one size: plot area, ticks, wrapped texts, labels.</summary>
internal sealed class FigureLayout
{
    private const double Pad = 8;
    private const double ScaleRoom = 74;
    private const double Invisible = 0.05;
    private const double Grid = 1 << 20;

    private readonly Dictionary<LineLayer, IReadOnlyList<Dot>> _drawn = new(ReferenceEqualityComparer.Instance);

    private readonly double _spare;

    private FigureLayout(Figure figure, FigureSize size, IReadOnlyList<(int Owner, int Part)> keyed, int keyRows)
    {
        Figure = figure;
        Size = size;
        Keyed = keyed;
        double font = size.FontSize, line = font * TextMetrics.LineHeight, inner = size.Width - 2 * Pad;
        TitleLines = size.ShowTitle ? TextMetrics.Wrap(figure.Title, TitleFont, inner, bold: true) : [];
        CreditLines = (size.ShowCredit ?? size.ShowTitle) && figure.Credit is { Length: > 0 } credit
            ? TextMetrics.Wrap(credit, SmallFont, inner) : [];
        YTitleLines = TextMetrics.Wrap(figure.YAxis.Title(figure.Units), font, inner);
        double top = Pad + TitleLines.Count * TitleFont * TextMetrics.LineHeight + (TitleLines.Count > 0 ? Pad : 0);
        YTitleTop = top;
        top += YTitleLines.Count * line + font * 0.6;

        // Ranges need tick counts, tick labels need ranges, margins need tick labels: the height is known well enough beforehand.
        double roughHeight = size.Height - top - 3.5 * line;
        (YLow, YHigh, YStep) = Range(figure.YAxis, figure.Layers.Select(layer => layer.Extents.Y)
            .Append(Stacks(figure)), roughHeight / (font * 3.4));
        YTicks = [.. Ticks.Between(YLow, YHigh, YStep).Select(value => (value, Ticks.Text(value, YStep)))];
        double left = Pad + YTicks.Max(tick => TextMetrics.Width(tick.Text, font)) + 7;
        double right = Pad + 6 + (figure.Layers.Any(layer => layer is HeatLayer) ? ScaleRoom : 0);
        (XLow, XHigh, XStep) = figure.XAxis.Categories is { } categories
            ? (-0.5, categories.Count - 0.5, 1)
            : Range(figure.XAxis, figure.Layers.Select(layer => layer.Extents.X), (size.Width - left - right) / (font * 5.2));
        XTicks = figure.XAxis.Categories is { } names
            ? [.. names.Select((name, i) => ((double)i, name))]
            : [.. Ticks.Between(XLow, XHigh, XStep).Select(value => (value, Ticks.Text(value, XStep)))];
        if (figure.XAxis.Categories is null && XTicks.Count > 0 && XTicks[^1].Value > XHigh - XStep * 0.2)
        {
            right = Math.Max(right, Pad + TextMetrics.Width(XTicks[^1].Text, font) / 2);
        }

        double band = (size.Width - left - right) / Math.Max(1, figure.XAxis.Categories?.Count ?? 1);
        XTickLines = figure.XAxis.Categories is null
            ? [.. XTicks.Select(tick => (IReadOnlyList<string>)[tick.Text])]
            : Names([.. XTicks.Select(tick => tick.Text)], font, band);
        XTitleLines = TextMetrics.Wrap(figure.XAxis.Title(figure.Units), font, inner);
        Key = KeyRows(size.Width - left - right);
        KeyRowCount = Math.Max(keyRows, Key.Count > 0 ? Key.Max(entry => entry.Row + 1) : 0);
        double bottom = Pad + CreditLines.Count * SmallFont * TextMetrics.LineHeight + (CreditLines.Count > 0 ? Pad / 2 : 0)
            + (KeyRowCount > 0 ? KeyRowCount * line + Pad / 2 : 0)
            + XTitleLines.Count * line + XTickLines.Max(lines => lines.Count) * line + 8;
        Plot = new Box(left, top, size.Width - right, Math.Max(top + 40, size.Height - bottom));
        if (figure.IsToScale)
        {
            double along = Plot.Width / (XHigh - XLow), up = Plot.Height / (YHigh - YLow);
            double over = Math.Max(0, (Plot.Height / along) - (YHigh - YLow)) / 2;
            XHigh += Math.Max(0, (Plot.Width / up) - (XHigh - XLow));
            (YLow, YHigh) = (YLow - over, YHigh + over);
            _spare = 2 * over * along;
            XTicks = [.. Ticks.Between(XLow, XHigh, XStep).Select(value => (value, Ticks.Text(value, XStep)))];
            YTicks = [.. Ticks.Between(YLow, YHigh, YStep).Select(value => (value, Ticks.Text(value, YStep)))];
            XTickLines = [.. XTicks.Select(tick => (IReadOnlyList<string>)[tick.Text])];
        }

        XTitleTop = Plot.Bottom + 6 + XTickLines.Max(lines => lines.Count) * line;
        KeyTop = XTitleTop + XTitleLines.Count * line + Pad / 2;
        Labels = [];
    }

    // Names wider than their bars stand in two tiers by turns, each with the room of its neighbours.
    private static IReadOnlyList<string>[] Names(string[] names, double font, double band)
    {
        IReadOnlyList<string>[] lines = [.. names.Select(name => TextMetrics.Wrap(name, font, band - 4))];
        if (lines.SelectMany(all => all).All(text => TextMetrics.Width(text, font) <= band - 2))
        {
            return lines;
        }

        // Those at the ends have the edge of the drawing on one side.
        double room = (2 * band) - 6, atEnd = Math.Min(room, band + (2 * Pad));
        lines = [.. names.Select((name, i) => TextMetrics.Wrap(name, font, i == 0 || i == names.Length - 1 ? atEnd : room))];
        int upper = lines.Where((_, i) => i % 2 == 0).Max(all => all.Count);
        return [.. lines.Select((all, i) => i % 2 == 0 ? all : (IReadOnlyList<string>)[.. Enumerable.Repeat("", upper), .. all])];
    }

    public Figure Figure { get; }

    /// <summary>The size it is laid out for.</summary>
    public FigureSize Size { get; }

    public Box Plot { get; }

    /// <summary>Ends and tick step of the axes, in display units.</summary>
    public double XLow { get; }

    public double XHigh { get; }

    public double XStep { get; }

    public double YLow { get; }

    public double YHigh { get; }

    public double YStep { get; }

    public IReadOnlyList<(double Value, string Text)> XTicks { get; }

    public IReadOnlyList<(double Value, string Text)> YTicks { get; }

    public IReadOnlyList<IReadOnlyList<string>> XTickLines { get; }

    public IReadOnlyList<string> TitleLines { get; }

    public IReadOnlyList<string> CreditLines { get; }

    public IReadOnlyList<string> XTitleLines { get; }

    public IReadOnlyList<string> YTitleLines { get; }

    public double YTitleTop { get; }

    public double XTitleTop { get; }

    public double KeyTop { get; }

    /// <summary>The labels beside their marks.</summary>
    public IReadOnlyList<PlacedLabel> Labels { get; private set; }

    /// <summary>The layers, and the classes of maps, that found no room for their label and stand in the key below the plot.</summary>
    public IReadOnlyList<(int Owner, int Part)> Keyed { get; }

    /// <summary>Where the entries of the key stand.</summary>
    public IReadOnlyList<(int Owner, int Part, string Text, double X, int Row)> Key { get; }

    public int KeyRowCount { get; }

    public double TitleFont => Size.FontSize * 1.25;

    public double SmallFont => Size.FontSize * 0.85;

    public double LabelFont => Size.FontSize * 0.95;

    /// <summary>Lays a figure out.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="size">The size.</param>
    /// <param name="before">The picture that it follows, near whose labels its own stay; null for none.</param>
    /// <param name="keyRows">For how many rows of the key there is room at least.</param>
    public static FigureLayout Of(Figure figure, FigureSize size, FigureLayout? before = null, int keyRows = 0)
    {
        int[] bars = [.. figure.Layers.Index().Where(layer => layer.Item is BarLayer).Select(layer => layer.Index)];
        var keyed = new SortedSet<(int Owner, int Part)>(bars.Length > 1 ? bars.Select(bar => (bar, 0)) : []);
        while (true)
        {
            var layout = new FigureLayout(figure, size, [.. keyed], keyRows);
            (IReadOnlyList<LabelRequest> requests, LabelPlacer placer) = LabelRequests.Of(layout);
            requests = before is null ? requests : [.. requests.Select(one => one with
            {
                Stood = [.. before.Labels.Where(label => before.Figure.Layers[label.Owner].Name == figure.Layers[one.Owner].Name)
                    .Select(label => label.Box.Centre)],
            })];
            IReadOnlyList<PlacedLabel?> labels = placer.Place(requests);
            int count = keyed.Count;
            keyed.UnionWith(labels.Index()
                .Where(label => label.Item is null && !requests[label.Index].MayBeLeftOut)
                .Select(label => (requests[label.Index].Owner, requests[label.Index].Part)));
            if (keyed.Count > count)
            {
                continue;
            }

            layout.Labels = [.. labels.Zip(requests).Where(pair => pair.First is not null)
                .Select(pair => Joined(figure, pair.First!, pair.Second, placer))];
            if (!figure.IsKeyedWhereCrowded || Crowded(layout.Labels, requests) is not { } crowded)
            {
                return layout;
            }

            keyed.Add((crowded.Owner, 0));
        }
    }

    private static PlacedLabel? Crowded(IReadOnlyList<PlacedLabel> labels, IReadOnlyList<LabelRequest> requests) => labels
        .Where(label => !requests.First(request => request.Owner == label.Owner).MayBeLeftOut && (label.Clutter >= PlacedLabel.Crowded
            || (label.Leader is var (from, to) && labels.Any(other => other != label && Geometry.Clip(from, to, other.Box) is not null))))
        .MaxBy(label => label.Clutter);

    /// <summary>A size without the height that a figure drawn to scale cannot use.</summary>
    public static FigureSize Fitting(Figure figure, FigureSize size) =>
        figure.IsToScale ? size with { Height = Math.Round(size.Height - new FigureLayout(figure, size, [], 0)._spare) } : size;

    /// <summary>A label with the line to its mark, where it had to go so far from it that one is needed.</summary>
    private static PlacedLabel Joined(Figure figure, PlacedLabel label, LabelRequest request, LabelPlacer placer)
    {
        // A line of another tone than the name's is not taken for its own.
        bool IsAlike(int other) => figure.IsKeyedWhereCrowded
            || ((figure.Layers[label.Owner], figure.Layers[other]) is (LineLayer own, LineLayer line) && own.Tone == line.Tone);
        return request.Mark is { } mark && Geometry.Between(label.Box, mark) is var (from, to) && Geometry.Distance(from, to) is var away
            && (away > PlacedLabel.Reach || (away > PlacedLabel.Beside && placer.IsNearerAnother(label.Owner, label.Box, away, IsAlike)))
            ? label with { Leader = (from, to) } : label;
    }

    /// <summary>Whether a point is in the plot, and so is drawn.</summary>
    public bool IsShown(Dot dot) => Plot.Grown(0.5).Contains(dot);

    /// <summary>The name of a layer or of a class of a map.</summary>
    public string NameOf(int owner, int part) => Figure.Layers[owner] is MapLayer map ? map.Classes[part].Label : Figure.Layers[owner].Name;

    /// <summary>The place of an SI point of the figure on the drawing.</summary>
    public Dot At(double x, double y) => new(AtX(x), AtY(y));

    public double AtX(double x) => ShownX(Figure.XAxis.Categories is null ? Figure.XAxis.Measure.In(Figure.Units).FromSi(x) : x);

    public double AtY(double y) => ShownY(Figure.YAxis.Measure.In(Figure.Units).FromSi(y));

    /// <summary>The place of a display value on the drawing.</summary>
    public double ShownX(double value) => OnGrid(Plot.Left + (value - XLow) / (XHigh - XLow) * Plot.Width);

    /// <summary>The same upwards.</summary>
    public double ShownY(double value) => OnGrid(Plot.Bottom - (value - YLow) / (YHigh - YLow) * Plot.Height);

    // A browser's last digit is another than a processor's; a millionth of a pixel must not decide where a label goes.
    private static double OnGrid(double place) => Math.Floor(place * Grid + 0.5) / Grid;

    /// <summary>A line on the drawing, without the points whose lack cannot be seen.</summary>
    public IReadOnlyList<Dot> Drawn(LineLayer line)
    {
        if (!_drawn.TryGetValue(line, out IReadOnlyList<Dot>? path))
        {
            (IReadOnlyList<double> x, IReadOnlyList<double> y) = (line.X, line.Y);
            _drawn[line] = path = Geometry.Simplify(Path(x, y), Invisible);
        }

        return path;
    }

    /// <summary>The points of a path on the drawing, thinned.</summary>
    public IReadOnlyList<Dot> Path(IReadOnlyList<double> x, IReadOnlyList<double> y) =>
        [.. Thinning.Keep(y, Figure.PointLimit).Select(i => At(x[i], y[i]))];

    private (double Low, double High, double Step) Range(Axis axis, IEnumerable<Extent?> extents, double parts)
    {
        DisplayUnit unit = axis.Measure.In(Figure.Units);
        Extent? all = extents.Aggregate(axis.Reach, Extent.Union);
        bool grid = Figure.Layers.Any(layer => layer is HeatLayer or MapLayer);
        double low = unit.FromSi(axis.Minimum ?? all?.Low ?? 0), high = unit.FromSi(axis.Maximum ?? all?.High ?? 1);
        (double fitLow, double fitHigh) = grid ? (low, high) : Ticks.Fit(low, high, parts);
        (low, high) = (axis.Minimum is null ? fitLow : low, axis.Maximum is null ? fitHigh : high);
        double step = Ticks.Step(high - low, parts);
        return (low, high, axis.Measure == Measure.Count ? Math.Ceiling(step) : step);
    }

    /// <summary>The extent of stacked bars; null when bars do not stack.</summary>
    internal static Extent? Stacks(Figure figure)
    {
        BarLayer[] bars = [.. figure.Layers.OfType<BarLayer>()];
        return figure.StacksBars && bars.Length > 0
            ? Extent.Of(Enumerable.Range(0, bars[0].Values.Count).Select(i => bars.Sum(bar => bar.Values[i])))
            : null;
    }

    private List<(int Owner, int Part, string Text, double X, int Row)> KeyRows(double width)
    {
        List<(int Owner, int Part, string Text, double X, int Row)> entries = [];
        double x = 0;
        int row = 0;
        foreach ((int owner, int part) in Keyed)
        {
            string text = NameOf(owner, part);
            double needed = 30 + TextMetrics.Width(text, LabelFont) + 14;
            if (x > 0 && x + needed > width)
            {
                (x, row) = (0, row + 1);
            }

            entries.Add((owner, part, text, x, row));
            x += needed;
        }

        return entries;
    }
}
