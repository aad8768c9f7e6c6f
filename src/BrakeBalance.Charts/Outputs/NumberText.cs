namespace BrakeBalance.Charts.Outputs;

/// <summary>Numbers and quantities as short text, the same in every culture.</summary>
public static class NumberText
{
    private const int SignificantDigits = 6;

    /// <summary>A number with at most six significant digits; powers of ten only where plain digits would hide it.</summary>
    /// <param name="value">The number.</param>
    /// <returns>Such as <c>0.8125</c>, <c>1234570</c> or <c>2.5E-07</c>.</returns>
    public static string Of(double value)
    {
        string text = value.ToString("G" + SignificantDigits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Contains('E') && Math.Abs(value) is >= 1 and < 1e15
            ? ((decimal)double.Parse(text, CultureInfo.InvariantCulture)).ToString("0", CultureInfo.InvariantCulture)
            : text;
    }

    /// <summary>A quantity in the unit it is held in.</summary>
    /// <param name="quantity">The quantity.</param>
    /// <returns>Such as <c>38.5 bar</c>; the number alone where the unit has no symbol.</returns>
    public static string Of(IQuantity quantity)
    {
        string symbol = KnownQuantities.Symbol(quantity.Unit);
        return symbol.Length == 0 ? Of((double)quantity.Value) : $"{Of((double)quantity.Value)} {symbol}";
    }
}
