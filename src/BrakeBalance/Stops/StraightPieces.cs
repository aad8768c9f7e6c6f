namespace BrakeBalance.Stops;

/// <summary>Straight pieces between a few points; past either end the piece there goes on.</summary>
internal static class StraightPieces
{
    public static double At(double[] x, double[] y, double at)
    {
        int low = 0;
        while (low < x.Length - 2 && x[low + 1] <= at)
        {
            low++;
        }

        return y[low] + (at - x[low]) * (y[low + 1] - y[low]) / (x[low + 1] - x[low]);
    }
}
