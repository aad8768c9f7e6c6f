using BrakeBalance.Charts.Rendering;
using Plotly.NET;

namespace BrakeBalance.Charts;

internal static class PlotlyTraces
{
    private const int Digits = 5;
    private const string TintAlpha = "21";

    /// <summary>The traces of a figure, each with the place of the layer it draws.</summary>
    public static IReadOnlyList<(int Owner, Trace Trace)> Of(FigureLayout layout)
    {
        List<(int, Trace)> traces = [];
        foreach ((int owner, Layer layer) in layout.Figure.Layers.Index())
        {
            traces.AddRange(Of(layout, layer).Select(trace => (owner, (Trace)trace)));
        }

        return traces;
    }

    private static IEnumerable<Trace2D> Of(FigureLayout layout, Layer layer)
    {
        Theme theme = Theme.Light;
        string colour = theme[layer.Tone];
        switch (layer)
        {
            case LineLayer line:
                (IReadOnlyList<double> x, IReadOnlyList<double> y) = (line.X, line.Y);
                IReadOnlyList<int> keep = Thinning.Keep(y, Figure.PointLimit);
                Trace2D path = Scatter(layout, line.Name, [.. keep.Select(i => x[i])], [.. keep.Select(i => y[i])], "lines");
                path.SetProperty("line", LineStyle(colour, line.Width, line.Dash));
                yield return path;
                break;
            case ReferenceLayer reference:
                double[] along = reference.Vertical ? [layout.YLow, layout.YHigh] : [layout.XLow, layout.XHigh];
                double at = reference.Vertical ? XUnit(layout).FromSi(reference.Value) : YUnit(layout).FromSi(reference.Value);
                Trace2D across = Plain("scatter", reference.Name);
                across.SetProperty("x", reference.Vertical ? [Round(at), Round(at)] : Round(along));
                across.SetProperty("y", reference.Vertical ? Round(along) : [Round(at), Round(at)]);
                across.SetProperty("mode", "lines");
                across.SetProperty("line", LineStyle(colour, 1.4, reference.Dash));
                across.SetProperty("hoverinfo", "skip");
                yield return across;
                break;
            case RegionLayer region:
                Trace2D area = Scatter(layout, region.Name, region.X, region.Y, "lines");
                Fill(area, colour, region.Hatch);
                yield return area;
                break;
            case BandLayer band:
                Trace2D ribbon = Scatter(layout, band.Name, [.. band.X, .. band.X.Reverse()], [.. band.Upper, .. band.Lower.Reverse()],
                    "lines");
                Fill(ribbon, colour, Hatch.None);
                yield return ribbon;
                break;
            case MarkerLayer markers:
                int[] inside = [.. Enumerable.Range(0, markers.X.Count)
                    .Where(i => layout.Plot.Grown(0.5).Contains(layout.At(markers.X[i], markers.Y[i])))];
                Trace2D points = Scatter(layout, markers.Name, [.. inside.Select(i => markers.X[i])], [.. inside.Select(i => markers.Y[i])],
                    "markers");
                points.SetProperty("cliponaxis", false);
                points.SetProperty("marker", Dynamic.Of(
                    ("color", markers.Shape == Marker.Ring ? theme.Background : colour), ("size", markers.Size),
                        ("symbol", Symbol(markers.Shape)),
                    ("line", Dynamic.Of(
                        ("color", markers.Shape is Marker.Cross or Marker.Ring ? colour : theme.Background),
                        ("width", markers.Shape is Marker.Cross or Marker.Ring ? 2 : 1)))));
                if (markers.YError is { } error)
                {
                    points.SetProperty("error_y", ErrorBars(layout, [.. inside.Select(i => error[i])], colour));
                }

                yield return points;
                break;
            case BarLayer bars:
                Trace2D bar = Plain("bar", bars.Name);
                bar.SetProperty("x", Enumerable.Range(0, bars.Values.Count).ToArray());
                bar.SetProperty("customdata", layout.Figure.XAxis.Categories!.ToArray());
                bar.SetProperty("y", Y(layout, bars.Values));
                bar.SetProperty("marker", Dynamic.Of(
                    ("color", bars.Hatch == Hatch.None ? colour : colour + "33"), ("line", Dynamic.Of(("color", colour), ("width", 1))),
                    ("pattern", Pattern(bars.Hatch, colour, null))));
                bar.SetProperty("hovertemplate",
                    $"%{{customdata}}: %{{y:.4~g}} {YUnit(layout).Symbol}<extra>{SvgWriter.Escape(bars.Name)}</extra>");
                yield return bar;
                break;
            case HeatLayer heat:
                yield return Heat(layout, heat, theme);
                break;
            case MapLayer map:
                for (int c = 0; c < map.Classes.Count; c++)
                {
                    if (MapClass(layout, map, c) is { } cells)
                    {
                        Fill(cells, theme[map.Classes[c].Tone], map.Classes[c].Hatch);
                        yield return cells;
                    }
                }

                break;
        }
    }

    private static Trace2D Plain(string type, string name)
    {
        var trace = new Trace2D(type);
        trace.SetProperty("name", name);
        trace.SetProperty("showlegend", false);
        return trace;
    }

    private static Trace2D Scatter(FigureLayout layout, string name, IReadOnlyList<double> x, IReadOnlyList<double> y, string mode)
    {
        Trace2D trace = Plain("scatter", name);
        trace.SetProperty("x", X(layout, x));
        trace.SetProperty("y", Y(layout, y));
        trace.SetProperty("mode", mode);
        trace.SetProperty(
            "hovertemplate",
            $"%{{x:.4~g}} {XUnit(layout).Symbol}, %{{y:.4~g}} {YUnit(layout).Symbol}<extra>{SvgWriter.Escape(name)}</extra>".Replace(" ,",
                ",", StringComparison.Ordinal).Replace(" <", "<", StringComparison.Ordinal));
        return trace;
    }

    private static void Fill(Trace2D trace, string colour, Hatch hatch)
    {
        trace.SetProperty("fill", "toself");
        trace.SetProperty("fillcolor", colour + TintAlpha);
        trace.SetProperty("line", Dynamic.Of(("width", 0)));
        trace.SetProperty("hoverinfo", "skip");
        trace.RemoveProperty("hovertemplate");
        if (hatch != Hatch.None)
        {
            trace.SetProperty("fillpattern", Pattern(hatch, colour, colour + TintAlpha));
        }
    }

    private static DynamicObj.DynamicObj? Pattern(Hatch hatch, string colour, string? background) => hatch == Hatch.None
        ? null
        : Dynamic.Of(
            ("shape", hatch switch { Hatch.Rising => "/", Hatch.Falling => "\\", Hatch.Crossed => "x", _ => "." }),
            ("fgcolor", colour), ("bgcolor", background), ("fgopacity", 0.5), ("size", 7), ("solidity", 0.14));

    private static DynamicObj.DynamicObj LineStyle(string colour, double width, Dash dash) => Dynamic.Of(
        ("color", colour), ("width", width),
        ("dash", SvgLayers.Dashes(dash, width) is { } parts ? string.Join(',', parts.Split(' ').Select(part => part + "px")) : null));

    private static DynamicObj.DynamicObj ErrorBars(FigureLayout layout, IReadOnlyList<double> error, string colour) => Dynamic.Of(
        ("type", "data"), ("array", error.Select(e => Round(e * YUnit(layout).Scale)).ToArray()), ("color", colour), ("thickness", 1.2),
            ("width", 4));

    private static Trace2D Heat(FigureLayout layout, HeatLayer heat, Theme theme)
    {
        DisplayUnit unit = heat.Measure.In(layout.Figure.Units);
        (double low, double high) = heat.Range;
        Trace2D trace = Plain("heatmap", heat.Name);
        trace.SetProperty("x", X(layout, heat.X));
        trace.SetProperty("y", Y(layout, heat.Y));
        trace.SetProperty("z", heat.Values.Select(row =>
            row.Select(value => value is { } si ? Round(unit.FromSi(si)) : (double?)null).ToArray()).ToArray());
        trace.SetProperty("zmin", Round(unit.FromSi(low)));
        trace.SetProperty("zmax", Round(unit.FromSi(high)));
        trace.SetProperty("colorscale", theme.Scale.Select((colour, i) => new object[] { Round(i / (theme.Scale.Count - 1.0)), colour })
            .ToArray());
        trace.SetProperty("colorbar", Dynamic.Of(("title", Dynamic.Of(("text", unit.Bracketed))), ("thickness", 12), ("outlinewidth", 0)));
        trace.SetProperty(
            "hovertemplate",
            $"%{{x:.4~g}} {XUnit(layout).Symbol}, %{{y:.4~g}} {YUnit(layout).Symbol}: "
                + $"%{{z:.4~g}} {unit.Symbol}<extra>{SvgWriter.Escape(heat.Name)}</extra>");
        return trace;
    }

    private static Trace2D? MapClass(FigureLayout layout, MapLayer map, int wanted)
    {
        List<double?> x = [], y = [];
        Extent xs = HeatLayer.Cells(map.X), ys = HeatLayer.Cells(map.Y);
        double width = (xs.High - xs.Low) / map.X.Count / 2, height = (ys.High - ys.Low) / map.Y.Count / 2;
        foreach ((int row, int from, int to) in MapRuns.Of(map, wanted))
        {
            double left = map.X[from] - width, right = map.X[to] + width, low = map.Y[row] - height, high = map.Y[row] + height;
            x.AddRange([left, right, right, left, left, null]);
            y.AddRange([low, low, high, high, low, null]);
        }

        if (x.Count == 0)
        {
            return null;
        }

        Trace2D trace = Plain("scatter", map.Classes[wanted].Label);
        trace.SetProperty("x", x.Select(v => v is { } si ? Round(XUnit(layout).FromSi(si)) : (double?)null).ToArray());
        trace.SetProperty("y", y.Select(v => v is { } si ? Round(YUnit(layout).FromSi(si)) : (double?)null).ToArray());
        trace.SetProperty("mode", "lines");
        return trace;
    }

    private static string Symbol(Marker shape) => shape switch
    {
        Marker.Square => "square",
        Marker.Diamond => "diamond",
        Marker.Triangle => "triangle-up",
        Marker.Cross => "cross-thin",
        _ => "circle",
    };

    private static DisplayUnit XUnit(FigureLayout layout) => layout.Figure.XAxis.Measure.In(layout.Figure.Units);

    private static DisplayUnit YUnit(FigureLayout layout) => layout.Figure.YAxis.Measure.In(layout.Figure.Units);

    private static double[] X(FigureLayout layout, IReadOnlyList<double> si) => [.. si.Select(value => Round(XUnit(layout).FromSi(value)))];

    private static double[] Y(FigureLayout layout, IReadOnlyList<double> si) => [.. si.Select(value => Round(YUnit(layout).FromSi(value)))];

    private static double[] Round(double[] values) => [.. values.Select(Round)];

    private static double Round(double value) => Rounding.Significant(value, Digits);
}
