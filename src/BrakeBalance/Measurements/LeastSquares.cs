using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Linear regression by weighted least squares.</summary>
/// <remarks>
/// Minimises Σ wᵢ (yᵢ − xᵢᵀb)² by a QR decomposition; the covariance is s² (XᵀWX)⁻¹ with s² = Σ wᵢ rᵢ² / (n −
/// p). Source: any text on linear models; checked against NIST StRD data sets.
/// </remarks>
internal sealed class LeastSquares(Vector<double> coefficients, Matrix<double> covariance, double residualDeviation, int degreesOfFreedom)
{
    public Vector<double> Coefficients { get; } = coefficients;

    public Matrix<double> Covariance { get; } = covariance;

    /// <summary>Residual standard deviation; 0 when there are as many coefficients as points.</summary>
    public double ResidualDeviation { get; } = residualDeviation;

    public int DegreesOfFreedom { get; } = degreesOfFreedom;

    public double StandardError(int index) => Math.Sqrt(Covariance[index, index]);

    /// <summary>Fits the columns given to the values.</summary>
    /// <param name="rows">One row of regressors a point.</param>
    /// <param name="values">One value a point.</param>
    /// <param name="weights">One positive weight a point; null for equal weights.</param>
    public static LeastSquares Fit(double[][] rows, double[] values, double[]? weights = null)
    {
        int n = rows.Length, p = rows[0].Length;
        Refuse.If(n < p, $"{p} coefficients need at least {p} points; there are {n}.", nameof(rows));

        Vector<double> root = Vector<double>.Build.Dense(n, i => weights is null ? 1 : Math.Sqrt(weights[i]));
        Matrix<double> design = Matrix<double>.Build.Dense(n, p, (i, j) => rows[i][j] * root[i]);
        // Columns of very different size (1, x, x² with x in the millions) are scaled first, or the decomposition loses digits.
        Vector<double> scale = Vector<double>.Build.Dense(p, j => design.Column(j).L2Norm());
        Refuse.If(scale.Minimum() <= 0, "A regressor is zero at every point, so its coefficient cannot be found.", nameof(rows));

        Matrix<double> scaled = Matrix<double>.Build.Dense(n, p, (i, j) => design[i, j] / scale[j]);
        Vector<double> target = Vector<double>.Build.Dense(n, i => values[i] * root[i]);
        var qr = scaled.QR(MathNet.Numerics.LinearAlgebra.Factorization.QRMethod.Thin);
        Vector<double> solution = qr.Solve(target);
        Vector<double> residual = target - scaled * solution;
        int dof = n - p;
        double variance = dof > 0 ? residual.DotProduct(residual) / dof : 0;
        Matrix<double> inverse = qr.R.Inverse();
        Matrix<double> covariance = variance * (inverse * inverse.Transpose());
        return new LeastSquares(
            Vector<double>.Build.Dense(p, j => solution[j] / scale[j]),
            Matrix<double>.Build.Dense(p, p, (i, j) => covariance[i, j] / (scale[i] * scale[j])),
            Math.Sqrt(variance),
            dof);
    }

    /// <summary>
    /// Half width, in standard errors, of a central 90 % interval; the normal value when there are no degrees of freedom to estimate the
    /// scatter from.
    /// </summary>
    public static double HalfWidth90(int degreesOfFreedom) =>
        degreesOfFreedom > 0 ? StudentT.InvCDF(0, 1, degreesOfFreedom, 0.95) : 1.6448536269514722;
}
