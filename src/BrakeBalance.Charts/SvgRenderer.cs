using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

internal static class SvgRenderer
{
    public static string Svg(Figure figure, FigureSize size, Theme theme) => Svg(FigureLayout.Of(figure, size), theme);

    /// <summary>The drawing of what is laid out.</summary>
    public static string Svg(FigureLayout layout, Theme theme)
    {
        (Figure figure, FigureSize size) = (layout.Figure, layout.Size);
        string id = $"{figure.Id}-{size.Name}";
        var svg = new SvgWriter();
        double? shownHeight = size.ShownWidth is null ? size.Height : null;
        svg.Open(
            "svg",
            ("xmlns", "http://www.w3.org/2000/svg"),
            ("viewBox", $"0 0 {SvgWriter.Number(size.Width)} {SvgWriter.Number(size.Height)}"),
            ("width", size.ShownWidth ?? SvgWriter.Number(size.Width)),
            ("height", shownHeight),
            ("role", "img"),
            ("aria-labelledby", $"{id}-title {id}-desc"),
            ("font-family", theme.Font),
            ("font-size", size.FontSize));
        svg.Text("title", figure.AltText, ("id", $"{id}-title"));
        svg.Text("desc", figure.LongDescription, ("id", $"{id}-desc"));
        svg.Open("defs");
        svg.Open("clipPath", ("id", $"{id}-clip"));
        Rectangle(svg, layout.Plot.Grown(0.5));
        svg.Close();
        SvgLayers.Patterns(svg, figure, theme, id);
        svg.Close();
        svg.Empty("rect", ("width", size.Width), ("height", size.Height), ("fill", theme.Background));
        Texts(svg, layout, theme, id);
        Axes(svg, layout, theme, id);
        svg.Open("g", ("id", $"{id}-layers"));
        var used = new HashSet<string>();
        foreach ((int index, Layer layer) in figure.Layers.Index())
        {
            // Markers on the edge are drawn whole; everything else ends at the plot.
            string name = $"{id}-{Naming.Slug(layer.Name)}";
            svg.Open(
                "g", ("id", used.Add(name) ? name : Invariant.Text($"{name}-{index}")),
                ("clip-path", layer is MarkerLayer ? null : $"url(#{id}-clip)"));
            SvgLayers.Draw(svg, layout, theme, id, layer);
            svg.Close();
        }

        svg.Close();
        Frame(svg, layout, theme, id);
        Labels(svg, layout, theme, id);
        foreach (HeatLayer heat in figure.Layers.OfType<HeatLayer>())
        {
            svg.Open("g", ("id", $"{id}-scale"));
            SvgLayers.Scale(svg, layout, theme, heat);
            svg.Close();
        }

        return svg.Close().ToString();
    }

    private static void Texts(SvgWriter svg, FigureLayout layout, Theme theme, string id)
    {
        FigureSize size = layout.Size;
        double line = size.FontSize * TextMetrics.LineHeight, y = 8;
        svg.Open("g", ("id", $"{id}-texts"), ("fill", theme.Ink));
        foreach (string title in layout.TitleLines)
        {
            svg.Text("text", title, ("x", 8.0), ("y", y + layout.TitleFont * 0.95), ("font-size", layout.TitleFont),
                ("font-weight", "bold"));
            y += layout.TitleFont * TextMetrics.LineHeight;
        }

        foreach ((int i, string text) in layout.YTitleLines.Index())
        {
            svg.Text("text", text, ("x", 8.0), ("y", layout.YTitleTop + i * line + size.FontSize * 0.95));
        }

        foreach ((int i, string text) in layout.XTitleLines.Index())
        {
            svg.Text("text", text, ("x", layout.Plot.Right), ("y", layout.XTitleTop + i * line + size.FontSize * 0.95),
                ("text-anchor", "end"));
        }

        foreach ((int i, string text) in layout.CreditLines.Index())
        {
            double at = size.Height - 8 - (layout.CreditLines.Count - 1 - i) * layout.SmallFont * TextMetrics.LineHeight;
            svg.Text("text", text, ("x", 8.0), ("y", at), ("font-size", layout.SmallFont), ("fill", theme.Muted));
        }

        svg.Close();
    }

    private static void Axes(SvgWriter svg, FigureLayout layout, Theme theme, string id)
    {
        Box plot = layout.Plot;
        double font = layout.Size.FontSize, line = font * TextMetrics.LineHeight;
        svg.Open("g", ("id", $"{id}-axis-x"), ("fill", theme.Muted), ("stroke", "none"), ("text-anchor", "middle"));
        foreach ((int i, (double value, string _)) in layout.XTicks.Index())
        {
            double x = layout.ShownX(value);
            if (layout.Figure.XAxis.Categories is null)
            {
                Stroke(svg, x, plot.Top, x, plot.Bottom, theme.Grid, null);
            }

            foreach ((int row, string text) in layout.XTickLines[i].Index().Where(line => line.Item.Length > 0))
            {
                svg.Text("text", text, ("x", x), ("y", plot.Bottom + 6 + font * 0.95 + row * line));
            }
        }

        svg.Close();
        svg.Open("g", ("id", $"{id}-axis-y"), ("fill", theme.Muted), ("stroke", "none"), ("text-anchor", "end"));
        foreach ((double value, string text) in layout.YTicks)
        {
            double y = layout.ShownY(value);
            Stroke(svg, plot.Left, y, plot.Right, y, theme.Grid, null);
            svg.Text("text", text, ("x", plot.Left - 6), ("y", y + font * 0.35));
        }

        svg.Close();
    }

    private static void Frame(SvgWriter svg, FigureLayout layout, Theme theme, string id)
    {
        Box plot = layout.Plot;
        svg.Open("g", ("id", $"{id}-frame"));
        Stroke(svg, plot.Left, plot.Bottom, plot.Right, plot.Bottom, theme.Muted, 1.2);
        Stroke(svg, plot.Left, plot.Top, plot.Left, plot.Bottom, theme.Muted, 1.2);
        svg.Close();
    }

    private static void Labels(SvgWriter svg, FigureLayout layout, Theme theme, string id)
    {
        double font = layout.LabelFont, line = font * TextMetrics.LineHeight;
        svg.Open(
            "g",
            ("id", $"{id}-labels"), ("font-size", font), ("text-anchor", "middle"), ("paint-order", "stroke"), ("stroke", theme.Background),
            ("stroke-width", 3.5), ("stroke-linejoin", "round"));
        foreach (PlacedLabel label in layout.Labels)
        {
            if (label.Leader is (Dot from, Dot to))
            {
                Stroke(svg, from.X, from.Y, to.X, to.Y, TextColour(theme, label.Tone), 1);
            }

            foreach ((int i, string text) in label.Lines.Index())
            {
                svg.Text(
                    "text", text, ("x", label.Box.Centre.X), ("y", label.Box.Top + i * line + font * 0.93),
                        ("fill", TextColour(theme, label.Tone)),
                    ("font-weight", label.Bold ? "bold" : null));
            }
        }

        svg.Close();
        if (layout.Key.Count == 0)
        {
            return;
        }

        svg.Open("g", ("id", $"{id}-key"), ("font-size", font), ("fill", theme.Ink));
        foreach ((int owner, int part, string text, double x, int row) in layout.Key)
        {
            double left = layout.Plot.Left + x, middle = layout.KeyTop + row * layout.Size.FontSize * TextMetrics.LineHeight + font * 0.6;
            SvgLayers.Sample(svg, theme, id, layout.Figure.Layers[owner], part, left, middle);
            svg.Text("text", text, ("x", left + 30), ("y", middle + font * 0.35));
        }

        svg.Close();
    }

    internal static string TextColour(Theme theme, Tone tone) => tone == Tone.Guide ? theme.Muted : theme[tone];

    internal static void Rectangle(SvgWriter svg, Box box, string? fill = null) =>
        svg.Empty("rect", ("x", box.Left), ("y", box.Top), ("width", box.Width), ("height", box.Height), ("fill", fill));

    internal static void Stroke(SvgWriter svg, double x1, double y1, double x2, double y2, string colour, double? width,
        string? dashes = null) =>
        svg.Empty(
            "line", ("x1", x1), ("y1", y1), ("x2", x2), ("y2", y2), ("stroke", colour), ("stroke-width", width),
                ("stroke-dasharray", dashes));
}
