using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The pictures of a moving figure, one for each place of its slider, which is drawn below.</summary>
/// <param name="Drawings">SVG documents, all laid out alike.</param>
/// <param name="Start">The place of the picture that shows the published figure.</param>
/// <param name="Milliseconds">How long a picture stays.</param>
/// <param name="ThereAndBack">Whether the slider goes back again; otherwise time passes, and starts anew.</param>
public sealed record MovingDrawing(IReadOnlyList<string> Drawings, int Start, int Milliseconds, bool ThereAndBack)
{
    private const double Pad = 8, Track = 22;

    /// <summary>Draws a figure as its slider moves from end to end.</summary>
    /// <param name="moving">The figure, as <see cref="MovingFigure"/> makes it.</param>
    /// <param name="size">The size.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="vehicle">The car.</param>
    /// <returns>The pictures; null when the figure has no slider.</returns>
    public static MovingDrawing? Of(Explorable moving, FigureSize size, Theme theme, Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(moving);
        ArgumentNullException.ThrowIfNull(size);
        Control slider = moving.Controls[0];
        if (!slider.IsSlider || slider.Settings.Count < 2)
        {
            return null;
        }

        // There and back these are some 40 pictures, with every setting that has a name; time passes in as many as there are moments.
        bool back = slider.FrameMilliseconds is null;
        int last = slider.Settings.Count - 1, most = Math.Min(last, back ? 17 : last);
        int[] rest = [.. moving.Controls.Skip(1).Select(control => control.Start)];
        int[] named = back ? [.. slider.Settings.Index().Where(one => one.Item.Contains(',', StringComparison.Ordinal)
            || one.Index == slider.Start).Select(one => one.Index)] : [];
        (int Place, Figure Figure)[] shown = [.. Enumerable.Range(0, most + 1)
            .Select(i => (int)Math.Round((double)i * last / most)).Concat(named).Distinct().Order()
            .Select(place => (place, Figure: MovingFigure.PartOf(() => moving.At([place, .. rest]).Figures[0])))
            .Where(one => one.Figure is not null).Select(one => (one.place, one.Figure!))];
        IReadOnlyList<Figure> figures = MovingFigure.OnSameAxes([.. shown.Select(one => one.Figure)]);
        double titleFont = size.FontSize * 1.25, inner = size.Width - (2 * Pad);
        IReadOnlyList<string>[] titles = [.. figures.Select(figure =>
            size.ShowTitle ? TextMetrics.Wrap(figure.Title, titleFont, inner, bold: true) : [])];
        int lines = titles.Max(one => one.Count);
        double top = lines == 0 ? 0 : (lines * titleFont * TextMetrics.LineHeight) + Pad;
        double small = size.FontSize * 0.85;
        IReadOnlyList<string> credit = size.ShowCredit ?? size.ShowTitle ? TextMetrics.Wrap(figures[0].Credit ?? "", small, inner) : [];
        credit = [.. credit.Where(line => line.Length > 0)];
        double below = (size.FontSize * TextMetrics.LineHeight) + Track + (credit.Count * small * TextMetrics.LineHeight) + Pad;
        FigureSize plot =
            size with { Name = size.Name + "-moving", Height = size.Height - top - below, ShowTitle = false, ShowCredit = false };
        int start = Math.Max(0, Array.FindIndex(shown, one => one.Place == slider.Start));
        Figure first = figures[start];
        string words = $"{first.LongDescription} The picture moves: {Figure.Small(slider.Label)} from {slider.Settings[shown[0].Place]} to "
            + $"{slider.Settings[shown[^1].Place]}. Described at {slider.Settings[shown[start].Place]}.";
        FigureLayout[] layouts = LaidOut(0);
        int rows = layouts.Max(one => one.KeyRowCount);
        layouts = layouts.All(one => one.KeyRowCount == rows) ? layouts : LaidOut(rows);
        return new([.. figures.Select((figure, i) => Picture(i))], start,
            slider.FrameMilliseconds ?? Math.Max(250, 3000 / figures.Count), back);

        // From the start both ways, each beside the picture before it.
        FigureLayout[] LaidOut(int rows)
        {
            var laid = new FigureLayout[figures.Count];
            foreach (int i in Enumerable.Range(start, figures.Count - start).Concat(Enumerable.Range(0, start).Reverse()))
            {
                laid[i] = FigureLayout.Of(FigureText.Named(figures[i], theme, vehicle), plot,
                    i == start ? null : laid[i < start ? i + 1 : i - 1], rows);
            }

            return laid;
        }

        string Picture(int i)
        {
            string id = $"{layouts[i].Figure.Id}-{plot.Name}", drawn = SvgRenderer.Svg(layouts[i], theme);
            const string After = "</desc>\n";
            int from = drawn.IndexOf(After, StringComparison.Ordinal) + After.Length;
            var svg = new SvgWriter();
            svg.Open("svg", ("xmlns", "http://www.w3.org/2000/svg"), ("id", id),
                ("viewBox", $"0 0 {SvgWriter.Number(size.Width)} {SvgWriter.Number(size.Height)}"),
                ("width", size.ShownWidth ?? SvgWriter.Number(size.Width)), ("role", "img"),
                ("aria-labelledby", $"{id}-title {id}-desc"), ("font-family", theme.Font), ("font-size", size.FontSize));
            svg.Text("title", first.AltText, ("id", $"{id}-title"));
            svg.Text("desc", words, ("id", $"{id}-desc"));
            svg.Raw(FigureText.Metadata(first, vehicle));
            svg.Empty("rect", ("width", size.Width), ("height", size.Height), ("fill", theme.Background));
            svg.Open("g", ("id", $"{id}-heading"), ("fill", theme.Ink), ("font-size", titleFont), ("font-weight", "bold"));
            foreach ((int line, string text) in titles[i].Index())
            {
                svg.Text("text", text, ("x", Pad), ("y", Pad + (((line * TextMetrics.LineHeight) + 0.95) * titleFont)));
            }

            svg.Close();
            svg.Open("g", ("id", $"{id}-figure"), ("transform", $"translate(0 {SvgWriter.Number(top)})"));
            svg.Raw(drawn[from..drawn.LastIndexOf("</svg>", StringComparison.Ordinal)]);
            svg.Close();
            Slider(svg, id, shown[i].Place);
            return svg.Close().ToString();
        }

        void Slider(SvgWriter svg, string id, int place)
        {
            double y = size.Height - below + size.FontSize, line = y + (Track * 0.65), wide = size.Width - (4 * Pad);
            svg.Open("g", ("id", $"{id}-slider"), ("fill", theme.Ink));
            svg.Text("text", $"{slider.Label}: {slider.Settings[place]}", ("x", 2 * Pad), ("y", y), ("font-weight", "bold"));
            SvgRenderer.Stroke(svg, 2 * Pad, line, size.Width - (2 * Pad), line, theme.Muted, 3);
            foreach (int mark in named)
            {
                svg.Empty("circle", ("cx", (2 * Pad) + (wide * mark / last)), ("cy", line), ("r", 3.5), ("fill", theme.Muted));
            }

            svg.Empty("circle", ("cx", (2 * Pad) + (wide * place / last)), ("cy", line), ("r", 7.0), ("fill", theme.Ink));
            svg.Close();
            svg.Open("g", ("id", $"{id}-credit"), ("fill", theme.Muted), ("font-size", small));
            foreach ((int row, string text) in credit.Index())
            {
                svg.Text("text", text, ("x", Pad),
                    ("y", size.Height - Pad - ((credit.Count - 1 - row) * small * TextMetrics.LineHeight)));
            }

            svg.Close();
        }
    }
}
