namespace BrakeBalance.Charts.Tests;

/// <summary>The tones of every theme as people with deficient colour vision see them.</summary>
public class ColourVisionTests
{
    public static TheoryData<string, string> Cases
    {
        get
        {
            TheoryData<string, string> cases = [];
            foreach (string deficiency in ColourVision.Deficiencies.Keys)
            {
                cases.Add(deficiency, "light");
                cases.Add(deficiency, "dark");
                cases.Add(deficiency, "print");
            }

            return cases;
        }
    }

    [Fact]
    public void Grey_stays_grey() =>
        Assert.All(ColourVision.Deficiencies.Values.SelectMany(matrix => matrix), row => Assert.Equal(1, row.Sum(), 2e-6));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_tone_keeps_three_to_one_against_the_background(string deficiency, string name)
    {
        // WCAG 2.1, success criterion 1.4.11: 3:1 for the marks of a figure.
        Theme theme = Named(name);
        double[] background = ColourVision.Seen(theme.Background, deficiency);
        Assert.All(Enum.GetValues<Tone>(), tone => Assert.InRange(Contrast(ColourVision.Seen(theme[tone], deficiency), background), 3, 21));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Any_two_tones_stay_clearly_different(string deficiency, string name)
    {
        Theme theme = Named(name);
        Tone[] tones = Enum.GetValues<Tone>();
        foreach ((Tone a, Tone b) in from a in tones from b in tones where a < b select (a, b))
        {
            double difference = ColourVision.Difference(ColourVision.Seen(theme[a], deficiency), ColourVision.Seen(theme[b], deficiency));
            Assert.True(difference >= ColourVision.ClearlyDifferent, FormattableString.Invariant($"{a} and {b}: {difference:0.0}"));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_scale_of_maps_runs_one_way_in_lightness(string deficiency, string name)
    {
        double[] lightness = [.. Named(name).Scale.Select(colour => ColourVision.Lab(ColourVision.Seen(colour, deficiency))[0])];
        Assert.True(lightness.Zip(lightness.Skip(1), (a, b) => name == "dark" ? b - a : a - b)
            .All(step => step > 3), string.Join(' ', lightness));
    }

    private static Theme Named(string name) => name switch { "dark" => Theme.Dark, "print" => Theme.Print, _ => Theme.Light };

    private static double Contrast(double[] a, double[] b)
    {
        double x = Luminance(a) + 0.05, y = Luminance(b) + 0.05;
        return Math.Max(x, y) / Math.Min(x, y);
    }

    private static double Luminance(double[] linear) => 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];
}
