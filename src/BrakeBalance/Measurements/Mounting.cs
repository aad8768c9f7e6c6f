using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>Turns three axes of an instrument in any mounting into the car's longitudinal axis.</summary>
internal static class Mounting
{
    /// <summary>Longitudinal acceleration, forwards most likely positive, zero where nothing but gravity is felt.</summary>
    /// <remarks>
    /// The seconds without acceleration give gravity and with it the vertical; across it, the direction of the strongest readings is the
    /// car's axis, and braking most likely its strong side.
    /// </remarks>
    public static double[] Longitudinal(MotionSample[] samples, List<string> remarks)
    {
        Vector<double>[] readings = [.. samples.Select(s => Vector<double>.Build.Dense([
            s.Axes!.Value.X.MetersPerSecondSquared, s.Axes.Value.Y.MetersPerSecondSquared, s.Axes.Value.Z.MetersPerSecondSquared]))];
        Vector<double> rest = Quietest(samples, readings);
        if (Math.Abs(rest.L2Norm() - Gravity.StandardMetresPerSecondSquared) > 0.8)
        {
            remarks.Add(Invariant.Text($"At rest the three axes add up to {rest.L2Norm():0.00} m/s², not to gravity: "
                + $"the axes are without gravity, or the log holds no second at rest. Tilt was not removed."));
            rest = Vector<double>.Build.Dense(3);
        }

        Vector<double> up = rest.L2Norm() > 0 ? rest.Normalize(2) : Vector<double>.Build.Dense(3);
        Vector<double>[] level = [.. readings.Select(r => r - rest - (r - rest).DotProduct(up) * up)];
        double strong = 0.6 * level.Select(v => v.L2Norm()).ToArray().Quantile(0.99);
        Vector<double>[] strongest = [.. level.Where(v => v.L2Norm() >= strong)];
        Matrix<double> spread = strongest.Aggregate(Matrix<double>.Build.Dense(3, 3), (sum, v) => sum + v.OuterProduct(v));
        Vector<double> axis = spread.Evd(Symmetricity.Symmetric).EigenVectors.Column(2);
        axis *= -Math.Sign(strongest.Sum(v => v.DotProduct(axis)) is var s && s == 0 ? 1 : s);
        double tilt = rest.L2Norm() > 0 ? Math.Acos(Math.Clamp(rest.AbsoluteMaximum() / rest.L2Norm(), -1, 1)) * 180 / Math.PI : 0;
        remarks.Add(Invariant.Text($"The instrument's axes were turned: its nearest axis stands {tilt:0.#}° off the vertical; "
            + $"the car's axis is the direction of the strongest readings."));
        return [.. level.Select(v => v.DotProduct(axis))];
    }

    // Any acceleration along the road adds to gravity, so the seconds in which the axes add up to least are those without.
    private static Vector<double> Quietest(MotionSample[] samples, Vector<double>[] readings)
    {
        int window = Math.Clamp(samples.Count(s => s.Time.Seconds < samples[0].Time.Seconds + 1), 5, readings.Length);
        Vector<double>[] seconds = [.. Enumerable.Range(0, (readings.Length - window) / Math.Max(1, window / 2) + 1)
            .Select(i => readings[(i * Math.Max(1, window / 2))..(i * Math.Max(1, window / 2) + window)].Aggregate((a, b) => a
                + b) / window)
            .OrderBy(mean => mean.L2Norm())];
        seconds = seconds[..Math.Max(1, seconds.Length / 5)];
        return Vector<double>.Build.Dense(3, axis => seconds.Select(s => s[axis]).Median());
    }
}
