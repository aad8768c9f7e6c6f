using System.Collections;

namespace BrakeBalance.Vehicles.Files;

/// <summary>The place in a document that a range was read into.</summary>
internal sealed class RangeTarget
{
    private readonly object _document;
    private readonly FieldInfo _field;
    private readonly int _index;
    private readonly double _low;
    private readonly double _high;
    private readonly Enum? _unit;

    /// <summary>Keeps the place.</summary>
    /// <param name="document">The part of the document.</param>
    /// <param name="field">Its entry.</param>
    /// <param name="index">Index in a list; negative for a single value.</param>
    /// <param name="range">The range.</param>
    public RangeTarget(object document, FieldInfo field, int index, ValueRange range)
    {
        (_document, _field, _index, Range) = (document, field, index, range);
        Type quantity = FieldMap.ShapeOf(field.ValueType).ValueType;
        if (quantity == typeof(double))
        {
            (_low, _high) = (double.Parse(range.Low, CultureInfo.InvariantCulture), double.Parse(range.High, CultureInfo.InvariantCulture));
            return;
        }

        QuantityText.Read(range.Low, quantity, out IQuantity? low, out _);
        QuantityText.Read(range.High, quantity, out IQuantity? high, out _);
        (_low, _high, _unit) = ((double)low!.Value, high!.As(low.Unit), low.Unit);
    }

    public ValueRange Range { get; }

    /// <summary>Half the width of the range over its middle [–].</summary>
    public double RelativeHalfWidth => (_high - _low) / Math.Abs(_high + _low);

    /// <summary>Puts a value of the range into the document.</summary>
    /// <param name="fraction">0 for the lower end, 1 for the upper.</param>
    public void Set(double fraction)
    {
        double value = Math.Clamp(_low + fraction * (_high - _low), _low, _high);
        object boxed = _unit is null ? value : KnownQuantities.From(value, _unit);
        if (_index < 0)
        {
            _field.Property.SetValue(_document, boxed);
        }
        else
        {
            ((IList)_field.Property.GetValue(_document)!)[_index] = boxed;
        }
    }
}
