namespace BrakeBalance.Stops;

/// <summary>Straight pieces between points; past either end the piece there goes on.</summary>
internal static class StraightPieces
{
    public static double At(double[] x, double[] y, double at)
    {
        int found = x.AsSpan().BinarySearch(at);
        int low = Math.Clamp(found >= 0 ? found : ~found - 1, 0, x.Length - 2);
        return y[low] + (at - x[low]) * (y[low + 1] - y[low]) / (x[low + 1] - x[low]);
    }
}
