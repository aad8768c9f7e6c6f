using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;
using Microsoft.FSharp.Collections;
using Plotly.NET;

namespace BrakeBalance.Charts;

/// <summary>Turns a figure into a Plotly.NET chart and its JSON.</summary>
internal static class PlotlyRenderer
{
    public static GenericChart Chart(Figure figure, FigureSize size)
    {
        FigureLayout layout = FigureLayout.Of(figure, size);
        IReadOnlyList<(int Owner, Trace Trace)> traces = PlotlyTraces.Of(layout);
        HashSet<string> keyed = [.. layout.Keyed.Select(key => layout.NameOf(key.Owner, key.Part))];
        foreach ((int _, Trace trace) in traces.Where(t => keyed.Contains((string)t.Trace.GetPropertyValue("name"))))
        {
            trace.SetProperty("showlegend", true);
        }

        return GenericChart.NewMultiChart(
            ListModule.OfSeq(traces.Select(t => t.Trace)), Layout(figure, layout), Config(), new DisplayOptions());
    }

    /// <summary>Traces and layout at one size.</summary>
    public static string Json(Figure figure, FigureSize size) => PlainJson.Text(Node(Chart(figure, size)));

    /// <summary>
    /// The chart's traces and layout, the same as <see cref="GenericChart.toFigureJson"/> writes, without a detour over text.
    /// </summary>
    private static JsonObject Node(GenericChart chart) => new()
    {
        ["data"] = Dynamic.Node(GenericChart.getTraces(chart)),
        ["layout"] = Dynamic.Node(GenericChart.getLayout(chart)),
    };

    private static Config Config()
    {
        var config = new Config();
        config.SetProperty("displayModeBar", false);
        config.SetProperty("responsive", true);
        config.SetProperty("scrollZoom", false);
        return config;
    }

    private static Layout Layout(Figure figure, FigureLayout layout)
    {
        Theme theme = Theme.Light;
        Box plot = layout.Plot;
        var result = new Layout();
        result.SetProperty("font", Dynamic.Of(("family", theme.Font), ("size", layout.Size.FontSize), ("color", theme.Ink)));
        result.SetProperty("paper_bgcolor", theme.Background);
        result.SetProperty("plot_bgcolor", theme.Background);
        result.SetProperty("height", layout.Size.Height);
        result.SetProperty("margin", Dynamic.Of(
            ("l", Math.Ceiling(plot.Left)), ("r", Math.Ceiling(layout.Size.Width - plot.Right)), ("t", Math.Ceiling(plot.Top)),
            ("b", Math.Ceiling(layout.Size.Height - plot.Bottom)), ("pad", 0)));
        result.SetProperty("dragmode", false);
        result.SetProperty("hovermode", "closest");
        result.SetProperty("showlegend", true);
        result.SetProperty("legend", Dynamic.Of(
            ("orientation", "h"), ("x", 0), ("xanchor", "left"), ("y", -(layout.KeyTop - plot.Bottom - 4) / plot.Height),
                ("yanchor", "top"),
            ("bgcolor", theme.Background), ("font", Dynamic.Of(("size", layout.LabelFont))), ("itemclick", false),
                ("itemdoubleclick", false)));
        if (figure.Layers.Any(layer => layer is BarLayer))
        {
            result.SetProperty("barmode", figure.StacksBars ? "stack" : "group");
        }

        result.SetProperty("xaxis", Axis(figure.XAxis, figure.Units, layout.XLow, layout.XHigh, layout.XStep, theme, withTitle: true,
            layout.XTickLines));
        result.SetProperty("yaxis", Axis(figure.YAxis, figure.Units, layout.YLow, layout.YHigh, layout.YStep, theme, withTitle: false));
        if (figure.IsToScale)
        {
            ((DynamicObj.DynamicObj)result.GetPropertyValue("yaxis")!).SetProperty("scaleanchor", "x");
        }

        result.SetProperty("annotations", Annotations(layout, theme));
        return result;
    }

    private static DynamicObj.DynamicObj Axis(
        Axis axis, UnitSystem units, double low, double high, double step, Theme theme, bool withTitle,
        IReadOnlyList<IReadOnlyList<string>>? names = null)
    {
        // The title of the upright axis lies above it, as an annotation, and names itself here for whoever reads the JSON.
        DynamicObj.DynamicObj result = Dynamic.Of(
            ("title", Dynamic.Of(
                ("text", axis.Title(units)), ("standoff", 8),
                ("font", Dynamic.Of(("color", withTitle ? theme.Ink : "rgba(0,0,0,0)"), ("size", withTitle ? 13 : 1))))),
            ("gridcolor", theme.Grid), ("linecolor", theme.Muted), ("showline", true), ("zeroline", false), ("fixedrange", true),
            ("tickfont", Dynamic.Of(("color", theme.Muted))), ("ticks", ""));
        if (axis.Categories is null)
        {
            result.SetProperty("range", new[] { Rounding.Significant(low, 8), Rounding.Significant(high, 8) });
            result.SetProperty("tick0", 0);
            result.SetProperty("dtick", Rounding.Significant(step, 6));
        }
        else
        {
            // Places by number, so that lines across the plot keep to it: a number on an axis of categories would be one more category.
            result.SetProperty("range", new[] { -0.5, axis.Categories.Count - 0.5 });
            result.SetProperty("tickmode", "array");
            result.SetProperty("tickvals", Enumerable.Range(0, axis.Categories.Count).ToArray());
            result.SetProperty("ticktext", names!.Select(lines => string.Join("<br>", lines.Select(SvgWriter.Escape))).ToArray());
            result.SetProperty("tickangle", 0);
        }

        return result;
    }

    private static List<DynamicObj.DynamicObj> Annotations(FigureLayout layout, Theme theme)
    {
        Box plot = layout.Plot;
        List<DynamicObj.DynamicObj> annotations =
        [
            Dynamic.Of(
                ("name", "title of the upright axis"), ("text", string.Join("<br>", layout.YTitleLines)), ("xref", "paper"),
                    ("yref", "paper"), ("x", 0), ("y", 1), ("xanchor", "left"),
                ("yanchor", "bottom"), ("xshift", -Math.Round(plot.Left - 8)), ("yshift", 4), ("align", "left"), ("showarrow", false),
                ("font", Dynamic.Of(("color", theme.Ink)))),
        ];
        foreach (PlacedLabel label in layout.Labels)
        {
            Dot centre = label.Box.Centre, at = label.Leader?.To ?? centre;
            string colour = SvgRenderer.TextColour(theme, label.Tone);
            double x = (at.X - plot.Left) / plot.Width, y = (plot.Bottom - at.Y) / plot.Height;

            // A plan keeps its scale at any width, so that its labels follow the marks and not the frame.
            bool plan = layout.Figure.IsToScale;

            annotations.Add(Dynamic.Of(
                ("name", layout.Figure.Layers[label.Owner].Name),
                    ("text", Bold(label.Bold, string.Join("<br>", label.Lines.Select(SvgWriter.Escape)))),
                ("xref", plan ? "x" : "paper"), ("yref", plan ? "y" : "paper"),
                ("x", Math.Round(plan ? layout.XLow + (x * (layout.XHigh - layout.XLow)) : x, 3)),
                ("y", Math.Round(plan ? layout.YLow + (y * (layout.YHigh - layout.YLow)) : y, 3)),
                ("xanchor", "center"), ("yanchor", "middle"), ("showarrow", label.Leader is not null),
                ("ax", Math.Round(centre.X - at.X)), ("ay", Math.Round(centre.Y - at.Y)), ("arrowhead", 0), ("arrowwidth", 1),
                ("arrowcolor", colour), ("bgcolor", theme.Background + "a6"), ("borderpad", 0),
                ("font", Dynamic.Of(("color", colour), ("size", layout.LabelFont)))));
        }

        return annotations;

        static string Bold(bool bold, string text) => bold ? $"<b>{text}</b>" : text;
    }
}
