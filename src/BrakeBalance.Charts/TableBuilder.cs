using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts;

/// <summary>Builds a table column by column; numbers are given in SI and stored in display units, named in the column's name.</summary>
/// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
/// <param name="car">The car: where its file gives ranges, the table says that each stands at its middle; null to say nothing.</param>
public sealed class TableBuilder(UnitSystem? units = null, Vehicle? car = null)
{
    private const string Middles = "Worked out with each range of the file at its middle.";

    private readonly UnitSystem _units = units ?? Display.Units;
    private readonly List<DataFrameColumn> _columns = [];

    /// <summary>Adds a column of numbers.</summary>
    /// <param name="name">What they are; the unit in brackets is added.</param>
    /// <param name="measure">Their measure.</param>
    /// <param name="values">The numbers in SI, or quantities.</param>
    public TableBuilder Column(string name, Measure measure, Series values) =>
        Column(name, measure, values.Values.Select(value => (double?)value));

    /// <summary>Adds a column of numbers of which some may be missing.</summary>
    /// <param name="name">What they are; the unit in brackets is added.</param>
    /// <param name="measure">Their measure.</param>
    /// <param name="values">The numbers in SI; null where there is no answer.</param>
    public TableBuilder Column(string name, Measure measure, IEnumerable<double?> values)
    {
        DisplayUnit unit = measure.In(_units);
        _columns.Add(new DoubleDataFrameColumn(
            $"{name} {unit.Bracketed}",
                values.Select(value => value is { } si ? Rounding.Significant(unit.FromSi(si), 6) : (double?)null)));
        return this;
    }

    /// <summary>Adds a column of numbers rounded as in running text, for a table that is read rather than computed with.</summary>
    /// <param name="name">What they are; the unit in brackets is added.</param>
    /// <param name="measure">Their measure.</param>
    /// <param name="values">The numbers in SI; null where there is no answer.</param>
    public TableBuilder Rounded(string name, Measure measure, IEnumerable<double?> values)
    {
        DisplayUnit unit = measure.In(_units);
        Column(name, measure,
            values.Select(value => value is { } si ? unit.ToSi(Math.Round(unit.FromSi(si) / unit.RoundTo) * unit.RoundTo) : (double?)null));
        if (unit.KeepsZeros)
        {
            _columns[^1] = new RoundedColumn((DoubleDataFrameColumn)_columns[^1], unit.Decimals);
        }

        return this;
    }

    /// <summary>Adds a column of quantities each with its half-width, both as exact as the half-width allows.</summary>
    /// <typeparam name="T">Kind of row.</typeparam>
    /// <param name="name">What they are; the unit in brackets is added.</param>
    /// <param name="measure">Their measure.</param>
    /// <param name="rows">The rows.</param>
    /// <param name="value">The quantity of a row; null where there is no answer.</param>
    /// <param name="halfWidth">Half of its interval; null where there is no answer.</param>
    public TableBuilder Within<T>(
        string name, Measure measure, IEnumerable<T> rows, Func<T, IQuantity?> value, Func<T, IQuantity?> halfWidth)
    {
        DisplayUnit unit = measure.In(_units);
        return Words($"{name} {unit.Bracketed}", rows.Select(row => (value(row), halfWidth(row)) is ({ } v, { } half)
            ? Rounding.Within(unit.FromSi(measure.Si(v)), measure.Si(half) * unit.Scale) : ""));
    }

    /// <summary>Adds a column of words.</summary>
    /// <param name="name">What they are.</param>
    /// <param name="values">The words.</param>
    public TableBuilder Words(string name, params IEnumerable<string> values)
    {
        _columns.Add(new StringDataFrameColumn(name, values));
        return this;
    }

    /// <summary>The finished table.</summary>
    /// <exception cref="InvalidOperationException">The table has no columns, or columns differ in length.</exception>
    public FigureTable Build()
    {
        if (_columns.Count == 0)
        {
            throw new InvalidOperationException("A table needs at least one column.");
        }

        DataFrameColumn? odd = _columns.Find(column => column.Length != _columns[0].Length);
        return odd is null
            ? new FigureTable(car?.Uncertainty is null ? new DataFrame(_columns) : new NotedFrame(_columns, Middles))
            : throw new InvalidOperationException(
                Invariant.Text($"Column '{odd.Name}' has {odd.Length} rows, column '{_columns[0].Name}' has {_columns[0].Length}."));
    }
}
