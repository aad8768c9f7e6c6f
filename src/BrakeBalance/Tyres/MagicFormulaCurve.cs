namespace BrakeBalance.Tyres;

/// <summary>Slip curve of the Magic Formula with four constant factors.</summary>
/// <remarks>
/// <para>μ(s) = D sin(C atan(B s − E (B s − atan B s))).</para>
/// <para>Assumes factors that do not change with load; <see cref="MagicFormula89Curve"/> has those that do.</para>
/// <para>Source: Bakker, Nyborg and Pacejka 1987, SAE 870421 (form, from memory).</para>
/// </remarks>
public sealed record MagicFormulaCurve : SlipCurve
{
    /// <summary>Stiffness factor B, slip as a fraction [–]; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double Stiffness { get; init => field = Require.Positive(value); }

    /// <summary>Shape factor C [–]; 1 to 3.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 3.</exception>
    public required double ShapeFactor { get; init => field = Require.Between(value, 1, 3); }

    /// <summary>Peak factor D [–]; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required double Peak { get; init => field = Require.Positive(value); }

    /// <summary>Curvature factor E [–]; −20 to 1.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −20 to 1.</exception>
    public required double Curvature { get; init => field = Require.Between(value, -20, 1); }

    private protected override double Shape(double slip, double loadNewtons) => Peak * Sine(Stiffness * slip, ShapeFactor, Curvature);

    internal override double PeakSlipAt(double loadNewtons) => Math.Min(1, PeakArgument(ShapeFactor, Curvature, Stiffness) / Stiffness);

    /// <summary>sin(C atan(x − E (x − atan x))).</summary>
    internal static double Sine(double x, double shapeFactor, double curvature) =>
        Math.Sin(shapeFactor * Math.Atan(x - curvature * (x - Math.Atan(x))));

    /// <summary>The x of the greatest ordinate, at most <paramref name="largest"/>.</summary>
    internal static double PeakArgument(double shapeFactor, double curvature, double largest)
    {
        // The ordinate peaks where C atan(…) reaches π/2; the bent argument rises with x, so bisection always finds it.
        double target = Math.Tan(Math.PI / (2 * shapeFactor));
        if (largest - curvature * (largest - Math.Atan(largest)) <= target)
        {
            return largest;
        }

        double low = 0;
        double high = largest;
        for (int i = 0; i < 40; i++)
        {
            double middle = 0.5 * (low + high);
            if (middle - curvature * (middle - Math.Atan(middle)) < target)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return 0.5 * (low + high);
    }
}
