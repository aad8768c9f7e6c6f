
namespace BrakeBalance.Vehicles.Files;

/// <summary>How far a value can be moved by a slider, as numbers in the unit in which the file gives it.</summary>
/// <param name="Low">Lowest number.</param>
/// <param name="High">Highest number.</param>
/// <param name="Value">The present number, a range at its middle.</param>
/// <param name="Unit">The unit behind the number; empty for a plain number.</param>
internal sealed record Slide(double Low, double High, double Value, string Unit)
{
    private const double Reach = 0.5;

    /// <summary>The slide of an entry: half of its value either way, within what the file's reader accepts.</summary>
    internal static Slide? Of(FieldInfo field, string value)
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
        string symbol = KnownQuantities.Symbol(unit);
        return Around(((double)low.Value + high!.As(unit)) / 2, field.LowQuantity?.As(unit), field.HighQuantity?.As(unit), symbol);
    }

    private static Slide? Around(double value, double? least, double? most, string unit)
    {
        double half = value == 0 ? ((most ?? 1) - (least ?? -1)) / 4 : Math.Abs(value) * Reach;
        double low = Math.Max(least ?? double.MinValue, value - half), high = Math.Min(most ?? double.MaxValue, value + half);
        return high > low ? new(low, high, value, unit) : null;
    }

    private static double? Number(string text) =>
        double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number)
            ? number : null;
}
