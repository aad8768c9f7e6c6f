namespace BrakeBalance.Charts;

/// <summary>The table of a figure that brings none of its own.</summary>
internal static class AutomaticTable
{
    private const int MostRowsALayer = 40;

    /// <summary>The bars by category, or the points of lines, bands and markers, thinned.</summary>
    public static FigureTable Of(Axis x, Axis y, IReadOnlyList<Layer> layers, UnitSystem units)
    {
        var table = new TableBuilder(units);
        if (x.Categories is { } categories)
        {
            table.Words(x.Quantity, categories);
            foreach (BarLayer bars in layers.OfType<BarLayer>())
            {
                table.Column($"{y.Quantity}, {bars.Name}", y.Measure, bars.Values.Select(value => (double?)value));
            }

            return table.Build();
        }

        var rows = layers.SelectMany(Points).ToList();
        return table
            .Words("Series", rows.Select(row => row.Name))
            .Column(x.Quantity, x.Measure, rows.Select(row => (double?)row.X))
            .Column(y.Quantity, y.Measure, rows.Select(row => (double?)row.Y))
            .Build();
    }

    private static IEnumerable<(string Name, double X, double Y)> Points(Layer layer)
    {
        IEnumerable<(string, IReadOnlyList<double>, IReadOnlyList<double>)> parts = layer switch
        {
            LineLayer line => [(line.Name, line.X, line.Y)],
            MarkerLayer markers => [(markers.Name, markers.X, markers.Y)],
            BandLayer band => [(band.Name + ", lower edge", band.X, band.Lower), (band.Name + ", upper edge", band.X, band.Upper)],
            _ => [],
        };
        foreach ((string name, IReadOnlyList<double> x, IReadOnlyList<double> y) in parts)
        {
            int count = Math.Min(x.Count, MostRowsALayer);
            for (int i = 0; i < count; i++)
            {
                int at = count == 1 ? 0 : (int)Math.Round(i * (x.Count - 1.0) / (count - 1));
                yield return (name, x[at], y[at]);
            }
        }
    }
}
