using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Whether the rear gauge of test stops reads what the car's valves make of the front gauge's reading.</summary>
/// <remarks>
/// Residuals of the rear reading against the file's valves, with the valve itself uncertain: its knee by a twentieth and half a bar, its
/// slope by 0.05 (own choice: what a maker's word or two gauges leave). Both enter as coefficients with a normal prior: a step above the
/// knee, and a share of what the valve takes away. Readings are weighed by Student's t of five degrees of freedom (iteratively reweighted
/// least squares, from memory).
/// </remarks>
internal sealed class RearLineCheck(int[] places, double[] surprises, double cost, double step, double stepDeviations,
    PerAxle<double> drift, double drifting)
{
    private const double TailDegrees = 5;
    private const double KneeShare = 0.05;
    private const double KneeBars = 0.5;
    private const double SlopeError = 0.05;
    private const double MostDriftBars = 30;
    private const int Rounds = 12;

    /// <summary>Places of the stops with both readings, among those given.</summary>
    public int[] Places { get; } = places;

    /// <summary>How far each of them lies off, in standard deviations.</summary>
    public double[] Surprises { get; } = surprises;

    /// <summary>Negative log likelihood, up to a constant for each reading.</summary>
    public double Cost { get; } = cost;

    /// <summary>How much higher than the file's valve the rear line stands above the knee, in bar.</summary>
    public double StepBars { get; } = step;

    /// <summary>How far valve and readings disagree, in standard deviations of what is believed of the valve.</summary>
    public double StepDeviations { get; } = stepDeviations;

    /// <summary>What either gauge would have to gain from the first stop to the last, in bar, if it alone drifted.</summary>
    public PerAxle<double> DriftBars { get; } = drift;

    /// <summary>The greater of both over its standard error.</summary>
    public double Drifting { get; } = drifting;

    /// <summary>Looks at the rear readings of the stops in use.</summary>
    /// <param name="model">The stops.</param>
    /// <param name="wider">Factor on what is believed of the knee: 1 for this car's, more for one that nothing is known of.</param>
    /// <param name="slopes">The same of the slope.</param>
    /// <returns>The fit; empty when no stop gives both pressures.</returns>
    public static RearLineCheck Of(StopModel model, double wider = 1, double slopes = 1)
    {
        (int Place, StopModel.Stop Stop)[] rows = [.. model.Used.Where(used => used.Stop.RearByFront is not null)];
        if (rows.Length == 0)
        {
            return new RearLineCheck([], [], 0, 0, 0, new(0, 0), 0);
        }

        StopModel.RearLineLaw[] laws = [.. rows.Select(row => row.Stop.RearByFront!)];
        double gauge = Math.Max(0.1, model.Options.GaugeScatter.Bars);
        double[] residuals = [.. rows.Select((row, i) => (row.Stop.RearLine - laws[i].Rear) / 1e5)];
        double[] noise = [.. laws.Select(law => gauge * Math.Sqrt(1 + law.Slope * law.Slope))];
        double[] cuts = [.. laws.Select(law => law.Cut / 1e5)];
        // A gauge's scatter alone makes no knee.
        double[] steps = [.. cuts.Select(cut => cut > 0.2 ? 1.0 : 0)];
        // A knee that stands higher lifts the rear line by what the valve would have taken away there.
        (double knee, double slope) = model.Vehicle.Hydraulics.RearProportioningValve is { } valve
            ? (valve.Knee.Bars, valve.Slope) : (20, 0);
        double lifted = Math.Max(0.3, model.Vehicle.Hydraulics.Split.RearToFrontPressureRatio - slope);
        double[] deviations = [wider * lifted * (KneeBars + KneeShare * knee), slopes * SlopeError];
        double last = Math.Max(1, rows[^1].Place - rows[0].Place);
        double[][] plain = [.. rows.Select((_, i) => new[] { steps[i], cuts[i] })];
        (Vector<double> found, Matrix<double> _, double cost, double[] surprises) = Robust(plain, residuals, noise, deviations);

        // A front gauge that reads too high lets the rear look too low, by what the valve passes on.
        (double Bars, double Sure) Drift(Func<int, double> moved)
        {
            (Vector<double> with, Matrix<double> spread, _, _) = Robust(
                [.. plain.Select((row, i) => (double[])[.. row, moved(i) * (rows[i].Place - rows[0].Place) / last])],
                residuals, noise, [.. deviations, MostDriftBars]);
            return rows.Length > 4 ? (with[2], Math.Abs(with[2]) / Math.Sqrt(spread[2, 2])) : (0, 0);
        }

        (double Bars, double Sure) front = Drift(i => -laws[i].Slope), rear = Drift(_ => 1);
        return new RearLineCheck([.. rows.Select(row => row.Place)], surprises, cost, found[0],
            Math.Sqrt(Math.Pow(found[0] / deviations[0], 2) + Math.Pow(found[1] / deviations[1], 2)),
            new(front.Bars, rear.Bars), Math.Max(front.Sure, rear.Sure));
    }

    /// <summary>Coefficients with normal priors about zero, readings weighed by Student's t.</summary>
    /// <param name="rows">Regressors of each reading.</param>
    /// <param name="values">The readings.</param>
    /// <param name="noise">Standard deviation of each.</param>
    /// <param name="priors">Standard deviations of the coefficients.</param>
    /// <returns>Coefficients, their covariance, the negative log posterior there, and each residual in standard deviations.</returns>
    internal static (Vector<double> Found, Matrix<double> Covariance, double Cost, double[] Surprises) Robust(
        double[][] rows, double[] values, double[] noise, double[] priors)
    {
        int count = priors.Length;
        Vector<double> found = Vector<double>.Build.Dense(count);
        Matrix<double> covariance = Matrix<double>.Build.DenseIdentity(count);
        double[] surprises = new double[values.Length];
        for (int round = 0; round <= Rounds; round++)
        {
            for (int i = 0; i < values.Length; i++)
            {
                surprises[i] = (values[i] - Vector<double>.Build.Dense(rows[i]) * found) / noise[i];
            }

            if (round == Rounds)
            {
                break;
            }

            Matrix<double> precision = Matrix<double>.Build.DenseDiagonal(count, count, j => 1 / (priors[j] * priors[j]));
            Vector<double> right = Vector<double>.Build.Dense(count);
            for (int i = 0; i < values.Length; i++)
            {
                double weight = (TailDegrees + 1) / (TailDegrees + surprises[i] * surprises[i]) / (noise[i] * noise[i]);
                Vector<double> row = Vector<double>.Build.Dense(rows[i]);
                precision += weight * row.OuterProduct(row);
                right += weight * values[i] * row;
            }

            covariance = precision.Inverse();
            found = covariance * right;
        }

        double cost = surprises.Zip(noise, (u, s) => Math.Log(s) + (TailDegrees + 1) / 2 * Math.Log(1 + u * u / TailDegrees)).Sum()
            + found.Zip(Vector<double>.Build.Dense(priors), (b, s) => 0.5 * b * b / (s * s) + Math.Log(s)).Sum();
        return (found, covariance, cost, surprises);
    }
}
