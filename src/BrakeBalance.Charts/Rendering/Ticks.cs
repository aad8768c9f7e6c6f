namespace BrakeBalance.Charts.Rendering;

internal static class Ticks
{
    private static readonly double[] Steps = [1, 2, 2.5, 5, 10];

    /// <summary>The round step that gives about so many parts.</summary>
    public static double Step(double range, double parts)
    {
        double raw = range / Math.Max(parts, 1);
        double power = Math.Pow(10, Math.Floor(Math.Log10(raw)));
        return Steps.First(step => step * power >= raw * 0.999999) * power;
    }

    /// <summary>The range an axis covers when it fits its data: whole steps, from zero when zero is near.</summary>
    public static (double Low, double High) Fit(double low, double high, double parts)
    {
        if (low >= 0 && low <= 0.4 * high)
        {
            low = 0;
        }

        if (high - low <= 1e-12 * Math.Max(Math.Abs(low), Math.Abs(high)))
        {
            double half = high == 0 ? 1 : Math.Abs(high) * 0.1;
            (low, high) = (low - half, high + half);
        }

        double step = Step(high - low, parts);
        return (Math.Floor(low / step + 1e-9) * step, Math.Ceiling(high / step - 1e-9) * step);
    }

    /// <summary>The multiples of a step in a range.</summary>
    public static IReadOnlyList<double> Between(double low, double high, double step)
    {
        List<double> ticks = [];
        double slack = step * 1e-6;
        for (double k = Math.Ceiling((low - slack) / step); k * step <= high + slack; k++)
        {
            ticks.Add(k * step);
        }

        return ticks;
    }

    /// <summary>A tick as text, with as many decimals as its step needs.</summary>
    public static string Text(double value, double step)
    {
        int decimals = 0;
        while (decimals < 8 && Math.Abs(step - Math.Round(step, decimals)) > step * 1e-6)
        {
            decimals++;
        }

        string text = Math.Abs(value).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return value < -step * 1e-6 ? "−" + text : text;
    }
}
