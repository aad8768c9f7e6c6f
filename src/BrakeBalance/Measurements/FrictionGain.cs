using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;
using MathNet.Numerics.Interpolation;

namespace BrakeBalance.Measurements;

/// <summary>
/// Braking force of one axle per pascal of line pressure, against the factor on its friction: a table, so that a hundred thousand draws
/// do not work out shoe geometry each.
/// </summary>
/// <remarks>
/// A natural cubic spline through the logarithm: a likelihood built on it must have no kinks, or its highest point sticks at one.
/// </remarks>
internal sealed class FrictionGain
{
    private const double Lowest = 0.3;
    private const double Highest = 2.2;
    private const int Nodes = 190;

    private readonly CubicSpline _logNewtonsPerPascal;
    private readonly double _locksByItselfFrom;

    public FrictionGain(Brake brake, double loadedRadiusMetres)
    {
        double locks = BalanceKernel.LocksByItselfFrom(brake);
        _locksByItselfFrom = locks / brake.FrictionCoefficient;
        double[] factors = [.. Enumerable.Range(0, Nodes + 1).Select(i => Lowest + (Highest - Lowest) * i / Nodes)];
        double[] logs = new double[factors.Length];
        double slope = 0;
        for (int i = 0; i < factors.Length; i++)
        {
            // Past self-locking, or past any friction there is, the curve goes on as it was: a likelihood must not break off.
            double friction = brake.FrictionCoefficient * factors[i];
            logs[i] = i == 0 || friction < Math.Min(locks, Brake.HighestFriction)
                ? Math.Log(BalanceKernel.NewtonsPerPascal(brake, loadedRadiusMetres, factors[i], locks))
                : logs[i - 1] + slope;
            slope = i > 0 ? Math.Min(logs[i] - logs[i - 1], 0.2) : 0;
        }

        _logNewtonsPerPascal = CubicSpline.InterpolateNaturalSorted(factors, logs);
    }

    /// <summary>The tables of a car.</summary>
    public static PerAxle<FrictionGain> Of(Vehicle vehicle) => new(
        new FrictionGain(vehicle.Brakes.Front, vehicle.Tyres.Front.LoadedRadius.Meters),
        new FrictionGain(vehicle.Brakes.Rear, vehicle.Tyres.Rear.LoadedRadius.Meters));

    /// <summary>Newtons of both wheels per pascal, smooth in the friction.</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double At(double factor) => Math.Exp(_logNewtonsPerPascal.Interpolate(Math.Clamp(factor, Lowest, Highest)));

    /// <summary>The same where shoes that lock by themselves count as locking.</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double Drawn(double factor) => factor >= _locksByItselfFrom ? BalanceKernel.SelfLockingNewtonsPerPascal : At(factor);

    /// <summary>Relative change of force per relative change of friction [–].</summary>
    /// <param name="factor">Friction over the brake's own [–].</param>
    public double SensitivityAt(double factor) => factor * _logNewtonsPerPascal.Differentiate(Math.Clamp(factor, Lowest, Highest));
}
