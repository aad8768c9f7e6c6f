using BrakeBalance.Brakes;
using MathNet.Numerics.Interpolation;

namespace BrakeBalance.Measurements;

/// <summary>Braking force of one axle per pascal of line pressure, against the factor on its friction: a table, so that a hundred thousand draws do not work out shoe geometry each.</summary>
/// <remarks>A natural cubic spline through the logarithm: a likelihood built on it must have no kinks, or its highest point sticks at one.</remarks>
internal sealed class FrictionGain
{
    private const double Lowest = 0.3;
    private const double Highest = 2.2;
    private const int Nodes = 190;

    private readonly CubicSpline? _logNewtonsPerPascal;
    private readonly double _atOwnFriction;

    public FrictionGain(Brake brake, double loadedRadiusMetres)
    {
        double[] factors = [.. Enumerable.Range(0, Nodes + 1).Select(i => Lowest + (Highest - Lowest) * i / Nodes)];
        double[] logs = new double[factors.Length];
        double slope = 0;
        for (int i = 0; i < factors.Length; i++)
        {
            double? force = Force(brake, factors[i], loadedRadiusMetres);
            // Past self-locking, or past any friction there is, the curve goes on as it was: no draw gets there unless the input is odd.
            logs[i] = force is { } f ? Math.Log(f) : logs[i - 1] + slope;
            slope = i > 0 ? Math.Min(logs[i] - logs[i - 1], 0.2) : 0;
        }

        _logNewtonsPerPascal = CubicSpline.InterpolateNaturalSorted(factors, logs);
    }

    private FrictionGain(double atOwnFriction) => _atOwnFriction = atOwnFriction;

    /// <summary>Without the table: for a car that is looked at once, at its own friction.</summary>
    public static FrictionGain AtOwnFriction(Brake brake, double loadedRadiusMetres) => new(2 * brake.TorqueNewtonMetresPerPascal / loadedRadiusMetres);

    /// <summary>Newtons of both wheels per pascal.</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double At(double factor) => _logNewtonsPerPascal is null ? _atOwnFriction : Math.Exp(_logNewtonsPerPascal.Interpolate(Math.Clamp(factor, Lowest, Highest)));

    /// <summary>Relative change of force per relative change of friction [–].</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double SensitivityAt(double factor) => _logNewtonsPerPascal is null ? 1 : factor * _logNewtonsPerPascal.Differentiate(Math.Clamp(factor, Lowest, Highest));

    private static double? Force(Brake brake, double factor, double radius)
    {
        double friction = brake.FrictionCoefficient * factor;
        try
        {
            return friction <= Brake.HighestFriction ? 2 * brake.WithFriction(friction).TorqueNewtonMetresPerPascal / radius : null;
        }
        catch (ArgumentOutOfRangeException)
        {
            return null;
        }
    }
}
