namespace BrakeBalance.Charts;

/// <summary>Colours as people with deficient colour vision see them.</summary>
/// <remarks>
/// Source: G. M. Machado, M. M. Oliveira, L. A. F. Fernandes, "A Physiologically-based Model for Simulation of Color Vision Deficiency",
/// IEEE TVCG 15(6), 2009, pp. 1291-1298, matrices of severity 1.0, applied to linear RGB (digits read in public sources that cite the
/// paper).
/// </remarks>
internal static class ColourVision
{
    /// <summary>CIELAB distance that counts as different at a glance; a just noticeable difference is about 2.3 (from memory).</summary>
    public const double ClearlyDifferent = 10;

    /// <summary>The matrix of each deficiency.</summary>
    public static IReadOnlyDictionary<string, double[][]> Deficiencies { get; } = new Dictionary<string, double[][]>
    {
        ["protanopia"] = [[0.152286, 1.052583, -0.204868], [0.114503, 0.786281, 0.099216], [-0.003882, -0.048116, 1.051998]],
        ["deuteranopia"] = [[0.367322, 0.860646, -0.227968], [0.280085, 0.672501, 0.047413], [-0.011820, 0.042940, 0.968881]],
        ["tritanopia"] = [[1.255528, -0.076749, -0.178779], [-0.078411, 0.930809, 0.147602], [0.004733, 0.691367, 0.303900]],
    };

    /// <summary>A colour as it is seen, in linear RGB [–].</summary>
    public static double[] Seen(string colour, string deficiency)
    {
        double[] linear = [.. new[] { 1, 3, 5 }.Select(at => Theme.Linear(Convert.ToInt32(colour[at..(at + 2)], 16)))];
        return [.. Deficiencies[deficiency].Select(row => Math.Clamp(row.Zip(linear, (m, c) => m * c).Sum(), 0, 1))];
    }

    /// <summary>How far two colours lie apart in CIELAB [–].</summary>
    public static double Difference(double[] a, double[] b) => Math.Sqrt(Lab(a).Zip(Lab(b), (p, q) => (p - q) * (p - q)).Sum());

    /// <summary>CIELAB of linear sRGB, white D65 (CIE 15; constants from memory).</summary>
    public static double[] Lab(double[] rgb)
    {
        double x = (0.4124564 * rgb[0] + 0.3575761 * rgb[1] + 0.1804375 * rgb[2]) / 0.95047;
        double y = 0.2126729 * rgb[0] + 0.7151522 * rgb[1] + 0.0721750 * rgb[2];
        double z = (0.0193339 * rgb[0] + 0.1191920 * rgb[1] + 0.9503041 * rgb[2]) / 1.08883;
        return [116 * F(y) - 16, 500 * (F(x) - F(y)), 200 * (F(y) - F(z))];

        static double F(double t) => t > 216.0 / 24389 ? Math.Cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }
}
