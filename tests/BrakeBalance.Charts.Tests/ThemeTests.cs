using System.Xml.Linq;

namespace BrakeBalance.Charts.Tests;

public class ThemeTests
{
    public static TheoryData<string> EveryTheme => ["light", "dark", "print"];

    [Theory]
    [MemberData(nameof(EveryTheme))]
    public void Marks_stand_out_three_to_one_and_text_four_and_a_half_to_one(string name)
    {
        // WCAG 2, success criteria 1.4.11 (graphics 3:1) and 1.4.3 (text 4.5:1); numbers from memory.
        Theme theme = Named(name);
        Assert.All(Enum.GetValues<Tone>(), tone => Assert.InRange(Theme.Contrast(theme[tone], theme.Background), 3, 21));
        Assert.All(Enum.GetValues<Tone>(), tone =>
            Assert.InRange(Theme.Contrast(SvgRenderer.TextColour(theme, tone), theme.Background), 4.5, 21));
        Assert.InRange(Theme.Contrast(theme.Muted, theme.Background), 4.5, 21);
    }

    [Fact]
    public void Contrast_is_that_of_the_guideline()
    {
        // Black on white is 21:1 by the definition of contrast ratio in WCAG 2; #767676 is the lightest grey with 4.5:1 on white (from
        // memory).
        Assert.Equal(21, Theme.Contrast("#000000", "#ffffff"), 1e-9);
        Assert.Equal(4.54, Theme.Contrast("#ffffff", "#767676"), 0.005);
    }

    [Theory]
    [MemberData(nameof(EveryTheme))]
    public void Six_hues_at_most_and_all_different(string name)
    {
        string[] hues = [.. Enum.GetValues<Tone>().Select(tone => Named(name)[tone])];
        Assert.Equal(hues.Length, hues.Distinct().Count());
        Assert.InRange(hues.Length, 2, 6);
    }

    [Fact]
    public void The_colours_of_light_pages_can_be_exchanged_for_those_of_dark_ones()
    {
        // The style sheet tells colours by their value, so no two parts of the light theme may share one.
        Theme light = Theme.Light;
        string[] all = [light.Background, light.Ink, light.Muted, light.Grid, light.Front, light.Rear, light.Ideal, light.Other,
            light.Guide];
        string[] every = [.. all, .. light.Scale];
        Assert.Equal(every.Length, every.Distinct().Count());
        Assert.All(all, colour => Assert.Contains($"[fill=\"{colour}\"] {{ fill: #", FigureAssets.Style, StringComparison.Ordinal));
    }

    [Fact]
    public void A_heat_map_is_turned_over_whole_on_dark_pages_and_not_the_few_cells_that_have_a_colour_of_the_scale()
    {
        Assert.All(Theme.Light.Scale, colour => Assert.DoesNotContain(colour, FigureAssets.Style, StringComparison.Ordinal));
        Assert.Equal(2, FigureAssets.Style.Split(".bb-heat { filter: invert").Length - 1);
        string svg = Cars.Figures("big-cam-saloon", UnitSystem.Si).Last(figure => figure.Layers.Any(layer => layer is HeatLayer))
            .ToSvg(FigureSize.Column, Theme.Light);
        XElement drawn = XElement.Parse(svg);
        string[] scale = [.. drawn.Descendants().Where(rect => rect.Name.LocalName == "rect" && rect.Ancestors().Any(group =>
            (string?)group.Attribute("class") == "bb-heat")).Select(rect => (string)rect.Attribute("fill")!)];
        Assert.True(scale.Length > 24);
        Assert.Contains(scale, colour => Theme.Light.Scale.Contains(colour));
        Assert.Contains(scale, colour => !Theme.Light.Scale.Contains(colour));
    }

    [Theory]
    [MemberData(nameof(EveryTheme))]
    public void The_scale_of_heat_maps_runs_one_way_from_pale_to_dark_or_back(string name)
    {
        Theme theme = Named(name);
        double[] contrasts = [.. Enumerable.Range(0, 21).Select(i => Theme.Contrast(theme.OnScale(i / 20.0), theme.Background))];
        Assert.All(contrasts.Zip(contrasts.Skip(1)), pair => Assert.True(pair.Second > pair.First));
    }

    [Fact]
    public void No_two_dashes_are_alike()
    {
        string?[] dashes = [.. Enum.GetValues<Dash>().Select(dash => SvgLayers.Dashes(dash, 2))];
        Assert.Equal(dashes.Length, dashes.Distinct().Count());
    }

    private static Theme Named(string name) => name switch { "dark" => Theme.Dark, "print" => Theme.Print, _ => Theme.Light };
}
