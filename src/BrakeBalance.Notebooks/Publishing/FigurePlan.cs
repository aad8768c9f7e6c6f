using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>What of a car's figures is to be exported, and how.</summary>
internal sealed record FigurePlan
{
    /// <summary>The car's short name, as file names begin with it.</summary>
    public required string CarName { get; init; }

    /// <summary>Names of the figures; all that the car has when empty.</summary>
    public IReadOnlyList<string> Figures { get; init; } = [];

    public IReadOnlyList<FigureSize> Sizes { get; init; } = [FigureSize.Column];

    public IReadOnlyList<UnitSystem> Units { get; init; } = [UnitSystem.Si];

    public IReadOnlyList<Theme> Themes { get; init; } = [Theme.Light];

    /// <summary>Whether words stay words that can be edited, in the reader's own fonts, and do not become outlines.</summary>
    public bool Words { get; init; }

    /// <summary>A drawing as it is published: numbers as the house writes them, words as outlines unless they shall stay text.</summary>
    public string Drawn(string svg)
    {
        string numbered = Numbered(svg);
        return Words || Style?.Font is not null ? numbered : OutlinedText.Of(numbered);
    }

    /// <summary>A piece of a page with its numbers as the house writes them.</summary>
    public string Numbered(string piece) => Style?.Numbered(piece) ?? piece;

    /// <summary>Whether few marks and plain words are shown in place of the trade's own.</summary>
    public bool Plain { get; init; }

    /// <summary>Whether charts whose points answer to the pointer are written, a page each.</summary>
    public bool Chart { get; init; }

    /// <summary>Whether pieces to paste and pages to frame are written.</summary>
    public bool Embed { get; init; }

    /// <summary>Whether moving drawings are written, and films where there is a browser and ffmpeg.</summary>
    public bool Animation { get; init; }

    /// <summary>Where the files will be published, with a slash at the end; empty for addresses relative to the page.</summary>
    public string Address { get; init; } = "";

    /// <summary>Whether anything in it needs a browser.</summary>
    public bool NeedsBrowser => Png || Pdf || Embed || Animation;

    /// <summary>How many drawings it asks for.</summary>
    public int Drawings(int figures) => figures * Themes.Count * Units.Count * ((Sizes.Count * (Animation ? 2 : 1)) + (Embed ? 2 : 0));

    /// <summary>Whether pictures are written.</summary>
    public bool Png { get; init; }

    /// <summary>Whether sheets are written.</summary>
    public bool Pdf { get; init; }

    /// <summary>The publisher's style; null for none.</summary>
    public HouseStyle? Style { get; init; }

    /// <summary>A title of the publisher's own; null for the figure's.</summary>
    public string? Title { get; init; }

    /// <summary>Pixels of a picture per nominal pixel; each 1, 2 or 3.</summary>
    public IReadOnlyList<int> Scales { get; init; } = [1];
}
