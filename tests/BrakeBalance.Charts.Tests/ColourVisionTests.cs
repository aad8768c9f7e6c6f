namespace BrakeBalance.Charts.Tests;

/// <summary>The tones of every theme as people with deficient colour vision see them.</summary>
/// <remarks>
/// Source: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
/// IEEE TVCG 15(6), 2009, pp. 1291-1298, matrices of severity 1.0, applied to linear RGB (digits read in public sources that cite the
/// paper).
/// </remarks>
public class ColourVisionTests
{
    /// <summary>CIELAB distance that counts as different at a glance; a just noticeable difference is about 2.3 (from memory).</summary>
    private const double ClearlyDifferent = 10;

    private static readonly Dictionary<string, double[][]> Deficiencies = new()
    {
        ["protanopia"] = [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
        ["deuteranopia"] = [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
        ["tritanopia"] = [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
    };

    public static TheoryData<string, string> Cases
    {
        get
        {
            TheoryData<string, string> cases = [];
            foreach (string deficiency in Deficiencies.Keys)
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
        Assert.All(Deficiencies.Values.SelectMany(matrix => matrix), row => Assert.Equal(1, row.Sum(), 2e-6));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Every_tone_keeps_three_to_one_against_the_background(string deficiency, string name)
    {
        // WCAG 2.1, success criterion 1.4.11: 3:1 for the marks of a figure.
        Theme theme = Named(name);
        double[] background = Seen(theme.Background, deficiency);
        Assert.All(Enum.GetValues<Tone>(), tone => Assert.InRange(Contrast(Seen(theme[tone], deficiency), background), 3, 21));
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void Any_two_tones_stay_clearly_different(string deficiency, string name)
    {
        Theme theme = Named(name);
        Tone[] tones = Enum.GetValues<Tone>();
        foreach ((Tone a, Tone b) in from a in tones from b in tones where a < b select (a, b))
        {
            double difference = Difference(Seen(theme[a], deficiency), Seen(theme[b], deficiency));
            Assert.True(difference >= ClearlyDifferent, FormattableString.Invariant($"{a} and {b}: {difference:0.0}"));
        }
    }

    [Theory]
    [MemberData(nameof(Cases))]
    public void The_scale_of_maps_runs_one_way_in_lightness(string deficiency, string name)
    {
        double[] lightness = [.. Named(name).Scale.Select(colour => Lab(Seen(colour, deficiency))[0])];
        Assert.True(lightness.Zip(lightness.Skip(1), (a, b) => name == "dark" ? b - a : a - b)
            .All(step => step > 3), string.Join(' ', lightness));
    }

    private static Theme Named(string name) => name switch { "dark" => Theme.Dark, "print" => Theme.Print, _ => Theme.Light };

    private static double[] Seen(string colour, string deficiency)
    {
        double[] linear = [.. new[] { 1, 3, 5 }.Select(at => Convert.ToInt32(colour[at..(at + 2)], 16) / 255.0)
            .Select(c => c <= 0.04045 ? c / 12.92 : Math.Pow((c + 0.055) / 1.055, 2.4))];
        return [.. Deficiencies[deficiency].Select(row => Math.Clamp(row.Zip(linear, (m, c) => m * c).Sum(), 0, 1))];
    }

    private static double Contrast(double[] a, double[] b)
    {
        double x = Luminance(a) + 0.05, y = Luminance(b) + 0.05;
        return Math.Max(x, y) / Math.Min(x, y);
    }

    private static double Luminance(double[] linear) => 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2];

    private static double Difference(double[] a, double[] b) => Math.Sqrt(Lab(a).Zip(Lab(b), (p, q) => (p - q) * (p - q)).Sum());

    /// <summary>CIELAB of linear sRGB, white D65 (CIE 15; constants from memory).</summary>
    private static double[] Lab(double[] rgb)
    {
        double x = (0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / 0.95047;
        double y = 0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2];
        double z = (0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / 1.08883;
        return [116 * F(y) - 16, 500 * (F(x) - F(y)), 200 * (F(y) - F(z))];

        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
