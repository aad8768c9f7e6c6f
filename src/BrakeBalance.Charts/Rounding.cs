namespace BrakeBalance.Charts;

internal static class Rounding
{
    private static readonly double[] Tens = [1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15];

    /// <summary>A number rounded to a count of significant digits: the double nearest to the rounded decimal.</summary>
    public static double Significant(double value, int digits) => value == 0 || !double.IsFinite(value) ? 0
        : Split(value, digits) is var (whole, decimals)
            ? Math.CopySign(decimals < 0 ? whole * Tens[-decimals] : whole / Tens[decimals], value)
            : double.Parse(value.ToString("E" + (digits - 1).ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture),
                CultureInfo.InvariantCulture);

    /// <summary>A number rounded to a count of significant digits, written without exponent.</summary>
    public static string ToText(double value, int digits)
    {
        if (value == 0 || Split(value, digits) is not var (whole, decimals) || decimals > 10)
        {
            return Significant(value, digits).ToString("0.##########", CultureInfo.InvariantCulture);
        }

        string sign = value < 0 ? "-" : "", all = whole.ToString(CultureInfo.InvariantCulture).PadLeft(Math.Max(0, decimals) + 1, '0');
        return sign
            + (decimals > 0 ? $"{all[..^decimals]}.{all[^decimals..]}".TrimEnd('0').TrimEnd('.') : all + new string('0', -decimals));
    }

    // The digits as a whole number, and how many of them are decimals; nothing beside a tie, which the decimal text decides.
    private static (long Whole, int Decimals)? Split(double value, int digits)
    {
        double size = Math.Abs(value), power = Math.Floor(Math.Log10(size));
        int decimals = Math.Abs(power) < 15 - digits ? digits - 1 - (int)power : 16;
        double scaled = decimals > 15 ? double.NaN : decimals < 0 ? size / Tens[-decimals] : size * Tens[decimals];
        return Math.Abs(scaled - Math.Round(scaled)) < 0.499 ? ((long)Math.Round(scaled), decimals) : null;
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
