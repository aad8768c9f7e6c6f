using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>Braking torque of one axle against line pressure at the master cylinder, as straight pieces between given points.</summary>
/// <remarks>
/// <para>The pieces run from no torque at no pressure through the points; past the last point the last piece goes on.</para>
/// <para>Assumes quasi-static pressure: no lag between master cylinder and brake beyond that of the pressure build-up.</para>
/// <para>Source: piecewise linear interpolation; the points come from the hydraulics and brakes of the car.</para>
/// </remarks>
public sealed class TorqueCurve
{
    private readonly double[] _pascals;
    private readonly double[] _newtonMetres;

    private TorqueCurve(double[] pascals, double[] newtonMetres)
    {
        _pascals = pascals;
        _newtonMetres = newtonMetres;
    }

    /// <summary>A curve through measured or computed points.</summary>
    /// <param name="points">Line pressure at the master cylinder (gauge) and braking torque of both brakes of the axle; pressures above zero and rising, torques never falling.</param>
    /// <returns>The curve, which starts at no torque at no pressure.</returns>
    /// <exception cref="ArgumentException">There is no point, a pressure does not rise, or a torque falls or is negative.</exception>
    public static TorqueCurve Through(IEnumerable<(Pressure LinePressure, Torque BrakingTorque)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        double[][] columns = [.. points.Select(p => new[] { p.LinePressure.Pascals, p.BrakingTorque.NewtonMeters })];
        double[] pascals = [0, .. columns.Select(c => c[0])];
        double[] torques = [0, .. columns.Select(c => c[1])];
        if (pascals.Length < 2)
        {
            throw new ArgumentException("Must hold at least one point.", nameof(points));
        }

        for (int i = 1; i < pascals.Length; i++)
        {
            if (!(pascals[i] > pascals[i - 1]) || !(torques[i] >= torques[i - 1]))
            {
                throw new ArgumentException(
                    FormattableString.Invariant($"Pressures must rise and torques must not fall from point to point; point {i} is {pascals[i]} Pa, {torques[i]} N·m after {pascals[i - 1]} Pa, {torques[i - 1]} N·m."),
                    nameof(points));
            }
        }

        return new TorqueCurve(pascals, torques);
    }

    /// <summary>A curve that rises in proportion to pressure.</summary>
    /// <param name="linePressure">A line pressure, gauge; above zero.</param>
    /// <param name="brakingTorque">Braking torque of both brakes of the axle at that pressure; not negative.</param>
    /// <returns>The straight line from the origin through that point.</returns>
    public static TorqueCurve Proportional(Pressure linePressure, Torque brakingTorque) => Through([(linePressure, brakingTorque)]);

    /// <summary>A curve sampled at evenly spaced pressures.</summary>
    /// <param name="brakingTorque">Braking torque of both brakes of the axle for a line pressure at the master cylinder (gauge).</param>
    /// <param name="highest">Highest line pressure sampled, gauge; above zero.</param>
    /// <param name="count">Number of samples; at least one.</param>
    /// <returns>The curve through the samples.</returns>
    public static TorqueCurve Sampled(Func<Pressure, Torque> brakingTorque, Pressure highest, int count = 200)
    {
        ArgumentNullException.ThrowIfNull(brakingTorque);
        Require.Positive(highest, nameof(highest));
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        return Through(Enumerable.Range(1, count).Select(i => highest * ((double)i / count)).Select(p => (p, brakingTorque(p))));
    }

    /// <summary>The curve with every torque multiplied, as when pad friction changes.</summary>
    /// <param name="factor">Factor on the torque [–]; not negative.</param>
    /// <returns>The scaled curve.</returns>
    public TorqueCurve Scaled(double factor)
    {
        Require.NotNegative(factor, nameof(factor));
        return new TorqueCurve(_pascals, Array.ConvertAll(_newtonMetres, t => t * factor));
    }

    /// <summary>Braking torque of the axle at a line pressure.</summary>
    /// <param name="linePressure">Line pressure at the master cylinder, gauge; not negative.</param>
    /// <returns>Braking torque of both brakes of the axle while the wheels turn.</returns>
    public Torque BrakingTorque(Pressure linePressure) =>
        Torque.FromNewtonMeters(NewtonMetres(Require.NotNegative(linePressure, nameof(linePressure)).Pascals));

    /// <summary>Highest pressure among the points, in pascals.</summary>
    internal double HighestPascals => _pascals[^1];

    /// <summary>The torque in newton metres at a pressure in pascals.</summary>
    internal double NewtonMetres(double pascals)
    {
        if (pascals <= 0)
        {
            return 0;
        }

        int low = 0;
        int high = _pascals.Length - 1;
        while (high - low > 1)
        {
            int middle = (low + high) >> 1;
            if (_pascals[middle] <= pascals)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return _newtonMetres[low] + (pascals - _pascals[low]) * (_newtonMetres[high] - _newtonMetres[low]) / (_pascals[high] - _pascals[low]);
    }
}
