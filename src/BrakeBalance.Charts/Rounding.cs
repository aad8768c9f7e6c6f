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
}
