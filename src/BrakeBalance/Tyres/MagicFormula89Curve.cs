namespace BrakeBalance.Tyres;

/// <summary>Longitudinal slip curve of the Magic Formula whose factors change with load (1989 set of coefficients).</summary>
/// <remarks>
/// <para>With F_z in kN and slip in percent: C = b₀; D = (b₁ F_z + b₂) F_z; BCD = (b₃ F_z² + b₄ F_z) e^(−b₅ F_z); E = b₆
/// F_z² + b₇ F_z + b₈; F = D sin(C atan(B s − E (B s − atan B s))) in newtons; μ = F/F_z.</para>
/// <para>Valid for one wheel's load from about 1 kN to 10 kN; loads outside are taken at the nearer end. No shifts.</para>
/// <para>Source: Bakker, Pacejka and Lidner 1989, SAE 890087 (form, from memory).</para>
/// </remarks>
public sealed record MagicFormula89Curve : SlipCurve
{
    private const double SmallestKilonewtons = 0.5;
    private const double LargestKilonewtons = 12;

    private readonly double[] _b = [];

    /// <summary>The nine coefficients b₀ to b₈, for loads in kilonewtons and slip in percent [–].</summary>
    /// <exception cref="ArgumentException">There are not nine finite numbers.</exception>
    public required IReadOnlyList<double> Coefficients
    {
        get => _b;
        init => _b = value is { Count: 9 } && value.All(double.IsFinite)
            ? [.. value]
            : throw new ArgumentException("Must hold the nine coefficients b0 to b8, all finite.", nameof(Coefficients));
    }

    private protected override bool ShapeDependsOnLoad => true;

    private protected override double Shape(double slip, double loadNewtons)
    {
        double load = Math.Clamp(loadNewtons / 1000, SmallestKilonewtons, LargestKilonewtons);
        Factors(load, out double stiffness, out double peak, out double curvature);
        return peak * MagicFormulaCurve.Sine(stiffness * 100 * slip, _b[0], curvature) / (1000 * load);
    }

    internal override double PeakSlipAt(double loadNewtons)
    {
        double load = Math.Clamp(loadNewtons / 1000, SmallestKilonewtons, LargestKilonewtons);
        Factors(load, out double stiffness, out _, out double curvature);
        return MagicFormulaCurve.PeakArgument(_b[0], curvature, 100 * stiffness) / (100 * stiffness);
    }

    private void Factors(double loadKilonewtons, out double stiffness, out double peak, out double curvature)
    {
        peak = (_b[1] * loadKilonewtons + _b[2]) * loadKilonewtons;
        double slope = (_b[3] * loadKilonewtons + _b[4]) * loadKilonewtons * Math.Exp(-_b[5] * loadKilonewtons);
        stiffness = slope / (_b[0] * peak);
        curvature = (_b[6] * loadKilonewtons + _b[7]) * loadKilonewtons + _b[8];
    }
}
