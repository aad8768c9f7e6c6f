using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>The colours of figures; the one place where they are chosen.</summary>
/// <remarks>
/// The hues differ for readers with deficient colour vision and reach a contrast of 3:1 against the background, the
/// least that WCAG 2 (success criterion 1.4.11) asks of the marks of a figure. No mark is told apart by colour alone.
/// </remarks>
/// <param name="Name">The theme's name.</param>
/// <param name="Background">The background.</param>
/// <param name="Ink">Text, axes and the tone <see cref="Tone.Main"/>.</param>
/// <param name="Muted">Text that stands back.</param>
/// <param name="Grid">Grid lines.</param>
/// <param name="Front">The tone <see cref="Tone.Front"/>.</param>
/// <param name="Rear">The tone <see cref="Tone.Rear"/>.</param>
/// <param name="Ideal">The tone <see cref="Tone.Ideal"/>.</param>
/// <param name="Other">The tone <see cref="Tone.Other"/>.</param>
/// <param name="Guide">The tone <see cref="Tone.Guide"/>.</param>
/// <param name="Scale">The scale of heat maps, from the least value to the greatest.</param>
public sealed record Theme(
    string Name, string Background, string Ink, string Muted, string Grid, string Front, string Rear, string Ideal, string Other,
    string Guide, IReadOnlyList<string> Scale)
{
    /// <summary>On a white page.</summary>
    public static Theme Light { get; } = new(
        Name: "light", Background: "#ffffff", Ink: "#1b1f23", Muted: "#5b636b", Grid: "#e3e6e9",
        Front: "#0072b2", Rear: "#c44e00", Ideal: "#00805c", Other: "#9a4783", Guide: "#767d85",
        Scale: ["#f1f6fb", "#c6dcee", "#8fbcdd", "#4e95c6", "#1b6ba6", "#0a3f6b"]);

    /// <summary>On a dark page.</summary>
    public static Theme Dark { get; } = new(
        Name: "dark", Background: "#15191d", Ink: "#f0f2f4", Muted: "#a9b1b9", Grid: "#30363c",
        Front: "#56b4e9", Rear: "#f5964a", Ideal: "#3cc79b", Other: "#e09bc6", Guide: "#8e979f",
        Scale: ["#1c2a38", "#1d4263", "#21608f", "#3586bd", "#6db3df", "#c3e1f5"]);

    /// <summary>On paper: the light colours on pure white with black text.</summary>
    public static Theme Print { get; } = Light with { Name = "print", Ink = "#000000", Muted = "#404448", Grid = "#d9dcdf" };

    /// <summary>On a light page of any colour: the light colours without a background of its own.</summary>
    public static Theme Transparent { get; } = Light with { Name = "transparent", Background = "none" };

    /// <summary>The themes in which figures are published.</summary>
    public static IReadOnlyList<Theme> Published { get; } = [Light, Transparent, Dark, Print];

    /// <summary>The font, as a style sheet names it.</summary>
    public string Font { get; init; } = TextMetrics.FontFamily;

    /// <summary>The colour of a tone.</summary>
    /// <param name="tone">The tone.</param>
    /// <returns>A colour as <c>#rrggbb</c>.</returns>
    public string this[Tone tone] => tone switch
    {
        Tone.Front => Front,
        Tone.Rear => Rear,
        Tone.Ideal => Ideal,
        Tone.Other => Other,
        Tone.Guide => Guide,
        _ => Ink,
    };

    /// <summary>The colour at a place on the scale of heat maps.</summary>
    /// <param name="at">From 0, the least value, to 1, the greatest [–].</param>
    /// <returns>A colour as <c>#rrggbb</c>.</returns>
    public string OnScale(double at)
    {
        double place = Math.Clamp(at, 0, 1) * (Scale.Count - 1);
        int index = Math.Min((int)place, Scale.Count - 2);
        (int R, int G, int B) low = Rgb(Scale[index]), high = Rgb(Scale[index + 1]);
        double part = place - index;
        int Mix(int a, int b) => (int)Math.Round(a + (b - a) * part);
        return Invariant.Text($"#{Mix(low.R, high.R):x2}{Mix(low.G, high.G):x2}{Mix(low.B, high.B):x2}");
    }

    /// <summary>The contrast ratio of two colours.</summary>
    /// <remarks>
    /// <para>(L₁ + 0.05)/(L₂ + 0.05) of the relative luminances, the lighter one first.</para>
    /// <para>Source: WCAG 2, definitions of "contrast ratio" and "relative luminance" (from memory).</para>
    /// </remarks>
    /// <param name="a">A colour as <c>#rrggbb</c>.</param>
    /// <param name="b">Another colour as <c>#rrggbb</c>.</param>
    /// <returns>From 1 to 21 [–].</returns>
    public static double Contrast(string a, string b)
    {
        double x = Luminance(a), y = Luminance(b);
        return (Math.Max(x, y) + 0.05) / (Math.Min(x, y) + 0.05);
    }

    private static double Luminance(string colour)
    {
        (int r, int g, int b) = Rgb(colour);
        return 0.2126 * Linear(r) + 0.7152 * Linear(g) + 0.0722 * Linear(b);
    }

    /// <summary>A channel of sRGB, 0 to 255, in linear light [–].</summary>
    internal static double Linear(int channel)
    {
        double value = channel / 255.0;
        return value <= 0.04045 ? value / 12.92 : Math.Pow((value + 0.055) / 1.055, 2.4);
    }

    private static (int R, int G, int B) Rgb(string colour) =>
        (Convert.ToInt32(colour[1..3], 16), Convert.ToInt32(colour[3..5], 16), Convert.ToInt32(colour[5..7], 16));
}
