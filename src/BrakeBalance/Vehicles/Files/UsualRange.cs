namespace BrakeBalance.Vehicles.Files;

/// <summary>The usual range of an entry as numbers in the unit of its lower end.</summary>
internal sealed class UsualRange
{
    // Ranges of common practice have no sharp ends.
    private const double Slack = 0.1;

    private readonly UsualAttribute _about;
    private readonly string[] _shown;
    private readonly Enum? _unit;
    private readonly double _low;
    private readonly double _high;

    public UsualRange(UsualAttribute about, string typical, Type type)
    {
        _about = about;
        _shown = typical.Length > 0 ? typical.Split("..", StringSplitOptions.TrimEntries) : [about.Low, about.High];
        if (type == typeof(double))
        {
            (_low, _high) = (double.Parse(about.Low, CultureInfo.InvariantCulture), double.Parse(about.High, CultureInfo.InvariantCulture));
            return;
        }

        (IQuantity low, IQuantity high) = (Read(about.Low, type), Read(about.High, type));
        (_low, _high, _unit) = ((double)low.Value, high.As(low.Unit), low.Unit);
    }

    /// <summary>What a value clearly outside the range gives to warn of; null for any other.</summary>
    public Warning? Judge(string path, object value)
    {
        double number = Number(value);
        (string Side, string Slip)? outside = number < _low - Slack * Math.Abs(_low) ? ("below", _about.Below)
            : number > _high + Slack * Math.Abs(_high) ? ("above", _about.Above)
            : null;
        return outside is var (side, slip) ? new(path, $"{Text(value)} is {side} the usual range.", Words(value), slip) : null;
    }

    private double Number(object value) => _unit is null ? (double)value : ((IQuantity)value).As(_unit);

    // The range that the starter shows too, in the unit that the file uses, so that the two can be compared.
    private string Words(object value) =>
        string.Join(" to ", _shown.Select(end => value is IQuantity given ? In(Read(end, given.GetType()), given.Unit) : end));

    private static string In(IQuantity end, Enum unit)
    {
        if (end.Unit.Equals(unit))
        {
            return QuantityText.Write(end);
        }

        double there = end.As(unit);
        double step = there == 0 ? 1 : Math.Pow(10, Math.Floor(Math.Log10(Math.Abs(there))) - 1);
        return QuantityText.Write(KnownQuantities.From(Math.Round(there / step) * step, unit));
    }

    private static string Text(object value) =>
        value is IQuantity quantity ? QuantityText.Write(quantity) : ((double)value).ToString("0.######", CultureInfo.InvariantCulture);

    private static IQuantity Read(string text, Type type) =>
        QuantityText.Read(text, type, out IQuantity? value, out _) is { } fault ? throw new InvalidOperationException(fault) : value!;
}
