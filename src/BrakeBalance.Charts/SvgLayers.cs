using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

internal static class SvgLayers
{
    private const double Tint = 0.13;

    /// <summary>The hatch patterns a figure needs.</summary>
    public static void Patterns(SvgWriter svg, Figure figure, Theme theme, string id)
    {
        IEnumerable<(Tone Tone, Hatch Hatch)> needed = figure.Layers.SelectMany(layer => layer switch
        {
            RegionLayer region => [(region.Tone, region.Hatch)],
            BarLayer bars => [(bars.Tone, bars.Hatch)],
            MapLayer map => map.Classes.Select(c => (c.Tone, c.Hatch)),
            _ => (IEnumerable<(Tone, Hatch)>)[],
        });
        foreach ((Tone tone, Hatch hatch) in needed.Where(one => one.Hatch != Hatch.None).Distinct())
        {
            svg.Open(
                "pattern",
                ("id", Pattern(id, tone, hatch)), ("width", 8.0), ("height", 8.0), ("patternUnits", "userSpaceOnUse"));
            string path = hatch switch
            {
                Hatch.Rising => "M-2 2L2-2M0 8L8 0M6 10L10 6",
                Hatch.Falling => "M-2 6L2 10M0 0L8 8M6-2L10 2",
                Hatch.Crossed => "M0 8L8 0M0 0L8 8",
                _ => "M2 2h0M6 6h0",
            };
            svg.Empty(
                "path",
                ("d", path), ("stroke", theme[tone]), ("stroke-width", hatch == Hatch.Dots ? 1.8 : 0.9), ("stroke-linecap", "round"),
                ("stroke-opacity", 0.55), ("fill", "none"));
            svg.Close();
        }
    }

    public static void Draw(SvgWriter svg, FigureLayout layout, Theme theme, string id, Layer layer)
    {
        switch (layer)
        {
            case LineLayer line:
                svg.Empty(
                    "path",
                    ("d", PathData(layout.Drawn(line), close: false)), ("fill", "none"),
                        ("stroke", theme[line.Tone]),
                    ("stroke-width", line.Width), ("stroke-dasharray", Dashes(line.Dash, line.Width)), ("stroke-linejoin", "round"));
                break;
            case RegionLayer region:
                string outline = PathData([.. region.X.Zip(region.Y, layout.At)], close: true);
                Area(svg, outline, theme[region.Tone], Pattern(id, region.Tone, region.Hatch));
                break;
            case BandLayer band:
                Area(svg, PathData([.. layout.Path(band.X, band.Upper), .. layout.Path(band.X, band.Lower).Reverse()], close: true),
                    theme[band.Tone], null);
                break;
            case ReferenceLayer reference:
                (double x1, double y1, double x2, double y2) = reference.Vertical
                    ? (layout.AtX(reference.Value), layout.Plot.Top, layout.AtX(reference.Value), layout.Plot.Bottom)
                    : (layout.Plot.Left, layout.AtY(reference.Value), layout.Plot.Right, layout.AtY(reference.Value));
                SvgRenderer.Stroke(svg, x1, y1, x2, y2, theme[reference.Tone], 1.4, Dashes(reference.Dash, 1.4));
                break;
            case MarkerLayer markers:
                Markers(svg, layout, theme, markers);
                break;
            case BarLayer bars:
                Bars(svg, layout, theme, id, bars);
                break;
            case HeatLayer heat:
                Heat(svg, layout, theme, heat);
                break;
            case MapLayer map:
                Map(svg, layout, theme, id, map);
                break;
        }
    }

    /// <summary>A sample of a layer for the key.</summary>
    public static void Sample(SvgWriter svg, Theme theme, string id, Layer layer, int part, double left, double middle)
    {
        switch (layer)
        {
            case LineLayer line:
                SvgRenderer.Stroke(svg, left, middle, left + 24, middle, theme[line.Tone], line.Width, Dashes(line.Dash, line.Width));
                break;
            case ReferenceLayer reference:
                SvgRenderer.Stroke(svg, left, middle, left + 24, middle, theme[reference.Tone], 1.4, Dashes(reference.Dash, 1.4));
                break;
            case MarkerLayer markers:
                Shape(svg, markers.Shape, new Dot(left + 12, middle), markers.Size, theme[markers.Tone]);
                break;
            default:
                (Tone tone, Hatch hatch) = layer switch
                {
                    RegionLayer region => (region.Tone, region.Hatch),
                    BarLayer bars => (bars.Tone, bars.Hatch),
                    MapLayer map => (map.Classes[part].Tone, map.Classes[part].Hatch),
                    _ => (layer.Tone, Hatch.None),
                };
                string? pattern = Pattern(id, tone, hatch);
                string box = PathData([new(left, middle - 6), new(left + 24, middle - 6), new(left + 24, middle + 6),
                    new(left, middle + 6)], close: true);
                if (layer is BarLayer)
                {
                    Bar(svg, box, theme, tone, pattern);
                }
                else
                {
                    Area(svg, box, theme[tone], pattern);
                }

                break;
        }
    }

    /// <summary>The dash pattern of a line, scaled by its width.</summary>
    public static string? Dashes(Dash dash, double width)
    {
        double[]? parts = dash switch
        {
            Dash.Dash => [4, 2.5],
            Dash.Dot => [1, 2],
            Dash.DashDot => [5, 2, 1, 2],
            Dash.LongDash => [9, 3],
            _ => null,
        };
        return parts is null ? null : string.Join(' ', parts.Select(part => SvgWriter.Number(part * Math.Max(width, 1.4))));
    }

    private static string? Pattern(string id, Tone tone, Hatch hatch) =>
        hatch == Hatch.None ? null : $"{id}-hatch-{tone}-{hatch}".ToLowerInvariant();

    private static string PathData(IReadOnlyList<Dot> path, bool close)
    {
        var data = new StringBuilder();
        foreach ((int i, Dot dot) in path.Index())
        {
            data.Append(i == 0 ? 'M' : 'L').Append(SvgWriter.Number(dot.X)).Append(' ').Append(SvgWriter.Number(dot.Y));
        }

        return data.Append(close ? "Z" : "").ToString();
    }

    private static void Area(SvgWriter svg, string outline, string colour, string? pattern)
    {
        svg.Empty("path", ("d", outline), ("fill", colour), ("fill-opacity", Tint));
        if (pattern is not null)
        {
            svg.Empty("path", ("d", outline), ("fill", $"url(#{pattern})"));
        }
    }

    private static void Bar(SvgWriter svg, string outline, Theme theme, Tone tone, string? pattern)
    {
        svg.Empty("path", ("d", outline), ("fill", theme[tone]), ("fill-opacity", pattern is null ? 0.85 : 0.2), ("stroke", theme[tone]),
            ("stroke-width", 1.0));
        if (pattern is not null)
        {
            svg.Empty("path", ("d", outline), ("fill", $"url(#{pattern})"));
        }
    }

    private static void Markers(SvgWriter svg, FigureLayout layout, Theme theme, MarkerLayer markers)
    {
        string colour = theme[markers.Tone];
        for (int i = 0; i < markers.X.Count; i++)
        {
            Dot dot = layout.At(markers.X[i], markers.Y[i]);
            if (!layout.IsShown(dot))
            {
                continue;
            }

            if (markers.YError is { } error)
            {
                ErrorBar(svg, layout, dot.X, markers.Y[i] - error[i], markers.Y[i] + error[i], colour);
            }

            Shape(svg, markers.Shape, dot, markers.Size, colour, theme.Background);
        }
    }

    private static void ErrorBar(SvgWriter svg, FigureLayout layout, double x, double low, double high, string colour)
    {
        double bottom = layout.AtY(low), top = layout.AtY(high);
        SvgRenderer.Stroke(svg, x, bottom, x, top, colour, 1.2);
        SvgRenderer.Stroke(svg, x - 4, bottom, x + 4, bottom, colour, 1.2);
        SvgRenderer.Stroke(svg, x - 4, top, x + 4, top, colour, 1.2);
    }

    private static void Shape(SvgWriter svg, Marker shape, Dot at, double size, string colour, string? halo = null)
    {
        double r = size / 2, x = at.X, y = at.Y;
        switch (shape)
        {
            case Marker.Circle:
                svg.Empty("circle", ("cx", x), ("cy", y), ("r", r), ("fill", colour), ("stroke", halo),
                    ("stroke-width", halo is null ? null : 1.2));
                break;
            case Marker.Ring:
                svg.Empty("circle", ("cx", x), ("cy", y), ("r", r), ("fill", halo ?? "none"), ("stroke", colour), ("stroke-width", 1.8));
                break;
            case Marker.Cross:
                SvgRenderer.Stroke(svg, x - r, y, x + r, y, colour, 2);
                SvgRenderer.Stroke(svg, x, y - r, x, y + r, colour, 2);
                break;
            default:
                IReadOnlyList<Dot> corners = shape switch
                {
                    Marker.Square => [new(x - r, y - r), new(x + r, y - r), new(x + r, y + r), new(x - r, y + r)],
                    Marker.Diamond => [new(x, y - r * 1.25), new(x + r * 1.25, y), new(x, y + r * 1.25), new(x - r * 1.25, y)],
                    _ => [new(x, y - r * 1.2), new(x + r * 1.15, y + r * 0.9), new(x - r * 1.15, y + r * 0.9)],
                };
                svg.Empty("path", ("d", PathData(corners, close: true)), ("fill", colour), ("stroke", halo),
                    ("stroke-width", halo is null ? null : 1.2));
                break;
        }
    }

    private static void Bars(SvgWriter svg, FigureLayout layout, Theme theme, string id, BarLayer bars)
    {
        BarLayer[] all = [.. layout.Figure.Layers.OfType<BarLayer>()];
        int place = Array.IndexOf(all, bars);
        bool stacked = layout.Figure.StacksBars;
        double room = 0.76, width = stacked ? room : room / all.Length;
        for (int i = 0; i < bars.Values.Count; i++)
        {
            int category = i;
            double below = stacked ? all.Take(place).Sum(other => other.Values[category]) : 0;
            double left = i - room / 2 + (stacked ? 0 : place * width);
            double x1 = layout.ShownX(left), x2 = layout.ShownX(left + width * 0.96);
            double y1 = layout.AtY(below), y2 = layout.AtY(below + bars.Values[i]);
            Bar(svg, PathData([new(x1, y1), new(x2, y1), new(x2, y2), new(x1, y2)], close: true), theme, bars.Tone,
                Pattern(id, bars.Tone, bars.Hatch));
        }
    }

    private static void Heat(SvgWriter svg, FigureLayout layout, Theme theme, HeatLayer heat)
    {
        (double low, double high) = heat.Range;
        Cells(svg, layout, heat.X, heat.Y, (row, column) =>
            heat.Values[row][column] is { } value ? theme.OnScale((value - low) / (high - low)) : null);
    }

    /// <summary>The scale of a heat map, right of the plot.</summary>
    public static void Scale(SvgWriter svg, FigureLayout layout, Theme theme, HeatLayer heat)
    {
        const int Steps = 24;
        DisplayUnit unit = heat.Measure.In(layout.Figure.Units);
        (double low, double high) = (unit.FromSi(heat.Range.Low), unit.FromSi(heat.Range.High));
        double left = layout.Plot.Right + 14, font = layout.LabelFont, height = layout.Plot.Height;
        svg.Open("g", ("class", "bb-heat"));
        for (int i = 0; i < Steps; i++)
        {
            double bottom = layout.Plot.Bottom - height * i / Steps;
            SvgRenderer.Rectangle(svg, new Box(left, bottom - height / Steps - 0.5, left + 12, bottom), theme.OnScale((i + 0.5) / Steps));
        }

        svg.Close();

        double step = Ticks.Step(high - low, height / (font * 4));
        foreach (double tick in Ticks.Between(low, high, step))
        {
            double y = layout.Plot.Bottom - height * (tick - low) / (high - low);
            svg.Text("text", Ticks.Text(tick, step), ("x", left + 17), ("y", y + font * 0.35), ("font-size", font), ("fill", theme.Muted));
        }

        svg.Text("text", unit.Bracketed, ("x", left), ("y", layout.Plot.Top - font * 0.6), ("font-size", font), ("fill", theme.Ink));
    }

    private static void Map(SvgWriter svg, FigureLayout layout, Theme theme, string id, MapLayer map)
    {
        for (int c = 0; c < map.Classes.Count; c++)
        {
            var outline = new StringBuilder();
            Extent xs = HeatLayer.Cells(map.X), ys = HeatLayer.Cells(map.Y);
            double width = (xs.High - xs.Low) / map.X.Count, height = (ys.High - ys.Low) / map.Y.Count;
            foreach ((int row, int from, int to) in MapRuns.Of(map, c))
            {
                Dot a = layout.At(map.X[from] - width / 2, map.Y[row] - height / 2),
                    b = layout.At(map.X[to] + width / 2, map.Y[row] + height / 2);
                outline.Append(PathData([a, new(b.X, a.Y), b, new(a.X, b.Y)], close: true));
            }

            if (outline.Length > 0)
            {
                Area(svg, outline.ToString(), theme[map.Classes[c].Tone], Pattern(id, map.Classes[c].Tone, map.Classes[c].Hatch));
            }
        }
    }

    private static void Cells(SvgWriter svg, FigureLayout layout, IReadOnlyList<double> x, IReadOnlyList<double> y,
        Func<int, int, string?> fill)
    {
        Extent xs = HeatLayer.Cells(x), ys = HeatLayer.Cells(y);
        double width = (xs.High - xs.Low) / x.Count, height = (ys.High - ys.Low) / y.Count;
        svg.Open("g", ("class", "bb-heat"), ("shape-rendering", "crispEdges"));
        for (int row = 0; row < y.Count; row++)
        {
            for (int column = 0; column < x.Count; column++)
            {
                if (fill(row, column) is { } colour)
                {
                    Dot a = layout.At(x[column] - width / 2, y[row] + height / 2),
                        b = layout.At(x[column] + width / 2, y[row] - height / 2);
                    SvgRenderer.Rectangle(svg, new Box(a.X, a.Y, b.X, b.Y), colour);
                }
            }
        }

        svg.Close();
    }
}
