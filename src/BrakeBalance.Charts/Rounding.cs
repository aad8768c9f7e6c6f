namespace BrakeBalance.Charts;

/// <summary>Rounding to significant digits.</summary>
internal static class Rounding
{
    /// <summary>A number rounded to a count of significant digits.</summary>
    public static double Significant(double value, int digits)
    {
        if (value == 0 || !double.IsFinite(value))
        {
            return 0;
        }

        // Through the decimal text, so that the result is the double nearest to the rounded decimal.
        return double.Parse(value.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture);
    }

    /// <summary>A number rounded to a count of significant digits, written without exponent.</summary>
    public static string ToText(double value, int digits)
    {
        double rounded = Significant(value, digits);
        return rounded == 0 ? "0" : rounded.ToString("0.##########", CultureInfo.InvariantCulture);
    }

    /// <summary>A number and its half-width: one digit of the half-width, two when it begins with 1 or 2 (common practice).</summary>
    public static string Within(double value, double halfWidth)
    {
        string[] parts = halfWidth.ToString("E1", CultureInfo.InvariantCulture).Split('E');
        int digits = double.Parse(parts[0], CultureInfo.InvariantCulture) < 3 ? 2 : 1;
        int decimals = Math.Clamp(digits - 1 - int.Parse(parts[1], CultureInfo.InvariantCulture), 0, 6);
        string format = "F" + decimals.ToString(CultureInfo.InvariantCulture);
        return $"{value.ToString(format, CultureInfo.InvariantCulture)} ± {halfWidth.ToString(format, CultureInfo.InvariantCulture)}";
    }
}
