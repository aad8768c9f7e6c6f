using System.Text.RegularExpressions;

namespace BrakeBalance.Charts;

/// <summary>The size at which a figure is drawn.</summary>
/// <remarks>
/// The figure is laid out on <see cref="Width"/> by <see cref="Height"/> layout units with text of <see cref="FontSize"/> units,
/// and shown <see cref="ShownWidth"/> wide: the same layout enlarged keeps its proportions.
/// </remarks>
public sealed partial record FigureSize
{
    /// <summary>Inside a page, 720 × 450 px; the page writes title and caption itself.</summary>
    public static FigureSize Page { get; } = new() { Name = "page", Width = 720, Height = 450, ShowTitle = false };

    /// <summary>Inside a page on a phone, 360 × 380 px.</summary>
    public static FigureSize Phone { get; } = new() { Name = "phone", Width = 360, Height = 380, FontSize = 12, ShowTitle = false };

    /// <summary>A column of a web page, 1200 × 800 px.</summary>
    public static FigureSize Column { get; } = new() { Name = "column", Width = 720, Height = 480, ShownWidth = "1200" };

    /// <summary>The full width of a web page, 1600 × 900 px.</summary>
    public static FigureSize FullWidth { get; } = new() { Name = "full-width", Width = 960, Height = 540, ShownWidth = "1600" };

    /// <summary>A slide, 1920 × 1080 px, with larger text.</summary>
    public static FigureSize Slide { get; } = new() { Name = "slide", Width = 800, Height = 450, ShownWidth = "1920" };

    /// <summary>A square, 1080 × 1080 px.</summary>
    public static FigureSize Square { get; } = new() { Name = "square", Width = 600, Height = 600, ShownWidth = "1080" };

    /// <summary>A flatter column of a web page, 1200 × 675 px.</summary>
    public static FigureSize ColumnWide { get; } = new() { Name = "column-wide", Width = 720, Height = 405, ShownWidth = "1200" };

    /// <summary>An upright picture for a phone's feed, 1080 × 1350 px.</summary>
    public static FigureSize Upright { get; } = new() { Name = "upright", Width = 600, Height = 750, ShownWidth = "1080" };

    /// <summary>The picture of a shared link, 1200 × 630 px.</summary>
    public static FigureSize Card { get; } = new() { Name = "card", Width = 720, Height = 378, ShownWidth = "1200" };

    /// <summary>A single printed column, 88 mm wide.</summary>
    public static FigureSize PrintSingle { get; } = new()
    {
        Name = "print-single",
        Width = 400,
        Height = 320,
        FontSize = 12,
        ShownWidth = "88mm",
    };

    /// <summary>Two printed columns, 178 mm wide.</summary>
    public static FigureSize PrintDouble { get; } = new() { Name = "print-double", Width = 760, Height = 480, ShownWidth = "178mm" };

    /// <summary>The sizes in which figures are published.</summary>
    public static IReadOnlyList<FigureSize> Published { get; } =
        [Column, ColumnWide, FullWidth, Slide, Square, Upright, Card, PrintSingle, PrintDouble];

    /// <summary>A name for file names.</summary>
    public required string Name { get; init; }

    /// <summary>Width in layout units; one unit is a pixel at page size.</summary>
    public required double Width { get; init; }

    /// <summary>Height in layout units.</summary>
    public required double Height { get; init; }

    /// <summary>Size of plain text in layout units.</summary>
    public double FontSize { get; init; } = 13;

    /// <summary>The width at which it is shown, as an SVG length; null for <see cref="Width"/> pixels.</summary>
    public string? ShownWidth { get; init; }

    /// <summary>Whether the title, and the credit line unless it is said, is drawn into the figure.</summary>
    public bool ShowTitle { get; init; } = true;

    /// <summary>Whether the credit line is drawn into the figure; null for as the title is.</summary>
    public bool? ShowCredit { get; init; }

    /// <summary>This size for a figure on a page: without the height that one drawn to scale cannot use.</summary>
    /// <param name="figure">The figure.</param>
    public FigureSize For(Figure figure) => FigureLayout.Fitting(figure, this);

    /// <summary>A size of one's own: such as <c>88mm</c>, <c>88x60mm</c>, <c>640px</c> or <c>1200x630px</c>.</summary>
    /// <remarks>
    /// On paper words keep 7.5 points, whatever the width. On screens they keep 13 px up to 720 px; wider figures are the same, enlarged.
    /// Without a height it is two thirds of the width.
    /// </remarks>
    /// <param name="text">Width, or width and height, 60 to 420 mm or 320 to 8000 px wide.</param>
    /// <returns>The size; null when the text is none, or lies outside.</returns>
    public static FigureSize? Own(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        Match match = OwnSize().Match(text);
        if (!match.Success)
        {
            return null;
        }

        double wide = Number(match.Groups["w"].Value);
        double high = match.Groups["h"] is { Success: true, Value: var given } ? Number(given) : Math.Round(wide * 2 / 3);
        bool paper = match.Groups["u"].Value == "mm";
        double least = paper ? 60 : 320, most = paper ? 420 : 8000;
        if (wide < least || wide > most || high / wide is < 0.4 or > 2)
        {
            return null;
        }

        double width = paper ? wide * PrintSingle.Width / 88 : Math.Min(wide, Column.Width);
        return new()
        {
            Name = text,
            Width = width,
            Height = width * high / wide,
            FontSize = paper ? PrintSingle.FontSize : Column.FontSize,
            ShownWidth = paper ? match.Groups["w"].Value + "mm" : match.Groups["w"].Value,
        };
    }

    [GeneratedRegex("^(?<w>[0-9]{2,4})(x(?<h>[0-9]{2,4}))?(?<u>mm|px)$")]
    private static partial Regex OwnSize();

    /// <summary>The size as a picture of pixels.</summary>
    /// <remarks>A width in millimetres counts at 300 dots an inch, the usual resolution of print (common practice).</remarks>
    /// <param name="scale">Pixels of the picture per nominal pixel, in either direction; at least 1.</param>
    /// <returns>Width and height in pixels.</returns>
    public (int Width, int Height) Pixels(int scale = 1)
    {
        double width = ShownWidth is null ? Width
            : ShownWidth.EndsWith("mm", StringComparison.Ordinal) ? Number(ShownWidth[..^2]) / 25.4 * 300
            : Number(ShownWidth);
        int columns = (int)Math.Round(width), rows = (int)Math.Round(columns * Height / Width);
        return (columns * scale, rows * scale);
    }

    /// <summary>The size on a page of its own, in inches.</summary>
    /// <remarks>A width in millimetres is kept; a pixel counts 1/96 in, as in style sheets.</remarks>
    /// <returns>Width and height in inches.</returns>
    public (double Width, double Height) Inches()
    {
        double width = ShownWidth is null
            ? Width / 96 : ShownWidth.EndsWith("mm", StringComparison.Ordinal) ? Number(ShownWidth[..^2]) / 25.4 : Number(ShownWidth) / 96;
        return (width, width * Height / Width);
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
