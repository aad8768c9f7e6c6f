namespace BrakeBalance.Charts;

/// <summary>The size at which a figure is drawn.</summary>
/// <remarks>
/// The figure is laid out on <see cref="Width"/> by <see cref="Height"/> layout units with text of <see cref="FontSize"/> units,
/// and shown <see cref="ShownWidth"/> wide: the same layout enlarged keeps its proportions.
/// </remarks>
public sealed record FigureSize
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

    /// <summary>A single printed column, 88 mm wide.</summary>
    public static FigureSize PrintSingle { get; } = new() { Name = "print-single", Width = 400, Height = 320, FontSize = 12, ShownWidth = "88mm" };

    /// <summary>Two printed columns, 178 mm wide.</summary>
    public static FigureSize PrintDouble { get; } = new() { Name = "print-double", Width = 760, Height = 480, ShownWidth = "178mm" };

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

    /// <summary>Whether title and credit line are drawn into the figure.</summary>
    public bool ShowTitle { get; init; } = true;
}
