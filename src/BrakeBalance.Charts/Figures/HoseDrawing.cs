using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Figures;

/// <summary>Draws a hose assembly with the lengths to cut it by. Not to scale across, only along.</summary>
public static class HoseDrawing
{
    private static readonly FigureSize Wide = new() { Name = "wide", Width = 720, Height = 210, ShowTitle = false };

    private static readonly FigureSize Narrow = new() { Name = "narrow", Width = 360, Height = 250, FontSize = 13, ShowTitle = false };

    /// <summary>Draws an assembly.</summary>
    /// <param name="hose">The assembly; its cut length above zero.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Drawing Of(HoseAssembly hose, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(hose);
        UnitSystem system = units ?? Display.Units;
        string Text(UnitsNet.Length length) => BenchMeasures.Cut.Text(length, system);
        string angle = hose.Orientation is { } turn ? $", ends {Degrees(turn)} apart" : "";
        return new Drawing(Wide, Narrow, (size, theme) => Draw(hose, system, size, theme))
        {
            Id = "hose-" + Naming.Slug(hose.Name),
            Title = $"{hose.Name}: cut {Text(hose.CutLength)} of hose{angle}",
            Caption = $"Overall {Text(hose.OverallLength)} less cut-offs of {Text(hose.First.CutOff)} and {Text(hose.Second.CutOff)}. "
                + $"Under pressure {Text(hose.ShortestUnderPressure)} to {Text(hose.LongestUnderPressure)}. "
                + "The angle is read from the second end: first end (1) hanging down, clockwise to the second (2).",
            AltText = $"Hose with two fittings and its lengths: overall {Text(hose.OverallLength)}, cut {Text(hose.CutLength)}.",
            LongDescription = $"{hose.Rating.Name}. First end: {hose.First.Fitting}, cut-off {Text(hose.First.CutOff)}. Second end: "
                + $"{hose.Second.Fitting}, cut-off {Text(hose.Second.CutOff)}{angle}. The hose is cut to {Text(hose.CutLength)}.",
            Table = new TableBuilder(system)
                .Words("Length", "overall", "cut-off, first end", "cut-off, second end", "cut length", "free hose",
                    "shortest under pressure", "longest under pressure")
                .Column("Value", BenchMeasures.Cut, new double?[]
                {
                    hose.OverallLength.Meters, hose.First.CutOff.Meters, hose.Second.CutOff.Meters, hose.CutLength.Meters,
                        hose.FreeLength.Meters,
                    hose.ShortestUnderPressure.Meters, hose.LongestUnderPressure.Meters,
                })
                .Build(),
        };
    }

    private static string Degrees(UnitsNet.Angle angle) => Invariant.Text($"{angle.Degrees:0.#}°");

    private static string Draw(HoseAssembly hose, UnitSystem units, FigureSize size, Theme theme)
    {
        var svg = new SvgWriter(size.FontSize);
        bool narrow = size.Width < 500;
        double left = narrow ? 22 : 40, right = size.Width - (narrow ? 22 : 130), y = 96;

        // Cut-offs are far shorter than the hose, so they are drawn at least wide enough to carry a dimension.
        double span = right - left, least = narrow ? 46 : 64;
        double first = Math.Clamp(span * hose.First.CutOff.Meters / hose.OverallLength.Meters, least, span * 0.3);
        double second = Math.Clamp(span * hose.Second.CutOff.Meters / hose.OverallLength.Meters, least, span * 0.3);
        double a = left + first, b = right - second;
        svg.Open("g", ("fill", "none"), ("stroke", theme.Ink), ("stroke-width", 1.5));
        svg.Empty("rect", ("x", a), ("y", y - 9), ("width", b - a), ("height", 18.0), ("fill", theme.Grid));
        for (double x = a + 6; x < b - 12; x += 12)
        {
            svg.Empty("path", ("d", Invariant.Text($"M{x:0.##} {y + 9:0.##}l9 -18")), ("stroke", theme.Guide),
                ("stroke-width", 1.0));
        }

        End(svg, hose.First, a, left, y, theme);
        End(svg, hose.Second, b, right, y, theme);
        svg.Close();
        string Text(UnitsNet.Length length) => BenchMeasures.Cut.Text(length, units);
        Dimension(svg, size, theme, left, right, y - 48, y, Text(hose.OverallLength), "overall");
        Dimension(svg, size, theme, a, b, y + 46, y, Text(hose.CutLength), "cut");
        Dimension(svg, size, theme, left, a, y + 46, y, Text(hose.First.CutOff), "");
        Dimension(svg, size, theme, b, right, y + 46, y, Text(hose.Second.CutOff), "");
        if (hose.Orientation is { } angle && hose.First.IsBent && hose.Second.IsBent)
        {
            Dial(svg, size, theme, angle.Radians, Degrees(angle), narrow ? (size.Width / 2, 206.0) : (size.Width - 62, 92.0));
        }

        return svg.ToString();
    }

    private static void End(SvgWriter svg, HoseEnd end, double hoseEnd, double seat, double y, Theme theme)
    {
        double way = Math.Sign(seat - hoseEnd), socket = hoseEnd - (way * 16), reach = seat - (way * 7);

        // The socket overlaps the hose; the stem runs on to the seat's centre line and turns there.
        svg.Empty("rect", ("x", Math.Min(socket, hoseEnd + (way * 8))), ("y", y - 12), ("width", 24.0), ("height", 24.0),
            ("fill", theme.Background));
        if (end.IsBent)
        {
            double turn = end.Bend.Radians, dx = way * 22 * Math.Cos(turn), dy = 22 * Math.Sin(turn);
            svg.Empty("path", ("d", Invariant.Text(
                $"M{hoseEnd + (way * 8):0.##} {y:0.##}L{seat:0.##} {y:0.##}l{dx:0.##} {dy:0.##}")), ("stroke-width", 7.0),
                ("stroke", theme.Muted), ("stroke-linejoin", "round"));
        }
        else
        {
            svg.Empty("path", ("d", Invariant.Text($"M{hoseEnd + (way * 8):0.##} {y:0.##}L{reach:0.##} {y:0.##}")),
                ("stroke-width", 7.0), ("stroke", theme.Muted));
            svg.Empty("rect", ("x", Math.Min(seat, reach - (way * 8))), ("y", y - 10), ("width", 15.0), ("height", 20.0),
                ("fill", theme.Background));
        }
    }

    private static void Dimension(SvgWriter svg, FigureSize size, Theme theme, double from, double to, double at, double hose, string value,
        string name)
    {
        double font = size.FontSize * 0.95;
        svg.Open("g", ("stroke", theme.Ink), ("stroke-width", 1.0), ("fill", theme.Ink));
        double tip = at + (Math.Sign(at - hose) * 5), start = hose + (Math.Sign(at - hose) * 16);
        svg.Empty("path", ("d", Invariant.Text(
            $"M{from:0.##} {start:0.##}V{tip:0.##}M{to:0.##} {start:0.##}V{tip:0.##}M{from:0.##} {at:0.##}H{to:0.##}")), ("fill", "none"));
        svg.Empty("path", ("d", Invariant.Text($"M{from:0.##} {at:0.##}l7 -3v6ZM{to:0.##} {at:0.##}l-7 -3v6Z")),
            ("stroke", "none"));
        string text = name.Length == 0 ? value : $"{name} {value}";
        bool fits = TextMetrics.Width(text, font) + 4 < to - from;
        double below = at > hose ? at + font + (fits ? 4 : font + 6) : at - 6;
        svg.Text("text", text, ("x", (from + to) / 2), ("y", below), ("text-anchor", "middle"), ("stroke", "none"), ("font-size", font),
            ("font-weight", name.Length > 0 ? "bold" : null));
        svg.Close();
    }

    private static void Dial(SvgWriter svg, FigureSize size, Theme theme, double radians, string text, (double X, double Y) centre)
    {
        const double radius = 30;
        (double x, double y) = centre;
        svg.Open("g", ("fill", "none"), ("stroke", theme.Ink), ("stroke-width", 1.4));
        svg.Empty("circle", ("cx", x), ("cy", y), ("r", 7.0));
        svg.Empty("path", ("d", Invariant.Text($"M{x:0.##} {y + 7:0.##}V{y + radius:0.##}")), ("stroke-width", 5.0),
            ("stroke", theme.Muted));
        double ex = x - (radius * Math.Sin(radians)), ey = y + (radius * Math.Cos(radians));
        svg.Empty("path", ("d", Invariant.Text(
            $"M{x - (7 * Math.Sin(radians)):0.##} {y + (7 * Math.Cos(radians)):0.##}L{ex:0.##} {ey:0.##}")), ("stroke-width", 5.0));
        double font = size.FontSize * 0.85;
        svg.Text("text", "1", ("x", x), ("y", y + radius + font + 2), ("text-anchor", "middle"), ("stroke", "none"), ("fill", theme.Ink),
            ("font-size", font));
        svg.Text("text", "2", ("x", x - ((radius + 9) * Math.Sin(radians))), ("y", y + ((radius + 9) * Math.Cos(radians)) + (font * 0.35)),
            ("text-anchor", "middle"), ("stroke", "none"), ("fill", theme.Ink), ("font-size", font));
        double arc = radius * 0.62;
        int large = radians > Math.PI ? 1 : 0;
        svg.Empty("path", ("d", Invariant.Text(
            $"M{x:0.##} {y + arc:0.##}A{arc:0.##} {arc:0.##} 0 {large} 1 {x - (arc * Math.Sin(radians)):0.##} "
                + $"{y + (arc * Math.Cos(radians)):0.##}")), ("stroke", theme.Front), ("stroke-dasharray", "3 2"));
        svg.Text("text", text, ("x", x + (size.Width < 500 ? 44 : 0)), ("y", size.Width < 500 ? y + 4 : y - radius - 10),
            ("text-anchor", size.Width < 500 ? "start" : "middle"), ("stroke", "none"), ("fill", theme.Ink), ("font-weight", "bold"));
        svg.Close();
    }
}
