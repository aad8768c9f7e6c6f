namespace BrakeBalance.Charts.Figures;

internal static class InstalledLine
{
    /// <summary>The bends of the characteristic and points between them, up to a pressure.</summary>
    public static IReadOnlyList<BalancePoint> Of(BalanceModel model, Pressure? highest = null, int between = 0)
    {
        double top = Math.Min((highest ?? model.MaximumPressure).Pascals, model.MaximumPressure.Pascals);
        double[] bends = [.. model.Kinks.Select(kink => kink.Pascals).Where(pascals => pascals < top), top];
        List<BalancePoint> points = [];
        for (int i = 0; i < bends.Length; i++)
        {
            for (int j = 1; i > 0 && j <= between; j++)
            {
                points.Add(model.At(Pressure.FromPascals(bends[i - 1] + (bends[i] - bends[i - 1]) * j / (between + 1))));
            }

            points.Add(model.At(Pressure.FromPascals(bends[i])));
        }

        return points;
    }

    /// <summary>
    /// The pressure at which lock-up has happened on the grippiest of some surfaces, and some more; the highest when none locks.
    /// </summary>
    public static Pressure Beyond(BalanceModel model, IEnumerable<double> adhesions)
    {
        double top = adhesions.Max(adhesion => (model.FirstLockUp(adhesion)?.At.MasterPressure ?? model.MaximumPressure).Pascals);
        return Pressure.FromPascals(Math.Min(top * 1.25, model.MaximumPressure.Pascals));
    }
}
