
namespace BrakeBalance.Vehicles.Files;

/// <summary>How far a value can be moved by a slider, as numbers in the unit in which it is shown.</summary>
/// <param name="Low">Lowest number.</param>
/// <param name="High">Highest number.</param>
/// <param name="Value">The present number, a range at its middle.</param>
/// <param name="Unit">The unit behind the number; empty for a plain number.</param>
/// <param name="Decimals">Decimals with which the number is shown and set.</param>
internal sealed record Slide(double Low, double High, double Value, string Unit, int Decimals)
{
    private const double Reach = 0.5, Slip = 1e-6;

    /// <summary>The slide of an entry: half of its value either way, within what the file's reader accepts.</summary>
    internal static Slide? Of(FieldInfo field, string value, UnitSystem units)
    {
        if (field.Shape == FieldShape.Number)
        {
            string[] ends = value.Split("..", StringSplitOptions.TrimEntries);
            return !field.About.Whole && Number(ends[0]) is { } first && Number(ends[^1]) is { } last
                ? Around((first + last) / 2, field.LowNumber, field.HighNumber, "") : null;
        }

        if (field.Shape != FieldShape.Quantity
            || QuantityText.Read(value, field.ValueType, out IQuantity? low, out IQuantity? high) is not null)
        {
            return null;
        }

        Enum unit = low!.Unit;
        Enum shown = OtherUnits.In(field, unit, units);
        string symbol = KnownQuantities.Symbol(shown);
        double Shown(double number) => KnownQuantities.From(number, unit).As(shown);
        return Around(((double)low.Value + high!.As(unit)) / 2, field.LowQuantity?.As(unit), field.HighQuantity?.As(unit), symbol, Shown);
    }

    private static Slide? Around(double value, double? least, double? most, string unit, Func<double, double>? shown = null)
    {
        double half = value == 0 ? ((most ?? 1) - (least ?? -1)) / 4 : Math.Abs(value) * Reach;
        double low = Math.Max(least ?? double.MinValue, value - half), high = Math.Min(most ?? double.MaxValue, value + half);
        if (!(high > low))
        {
            return null;
        }

        (low, high, value) = shown is null ? (low, high, value) : (shown(low), shown(high), shown(value));
        int decimals = Math.Clamp(2 - (int)Math.Floor(Math.Log10(high - low)), 0, 11);

        // The ends as they are written lie within what the reader accepts.
        double step = Math.Pow(10, -decimals);
        double lowest = Math.Round(Math.Ceiling((low / step) - Slip) * step, decimals);
        return new(lowest, Math.Round(Math.Floor((high / step) + Slip) * step, decimals), value, unit, decimals);
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? number : null;
}
