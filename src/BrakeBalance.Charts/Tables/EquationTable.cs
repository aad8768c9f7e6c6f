using BrakeBalance.Charts.Outputs;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Tables;

/// <summary>Equations evaluated in a notebook, each beside what the calculation answers.</summary>
public static class EquationTable
{
    private const double Equal = 1e-6;

    /// <summary>A row for each equation.</summary>
    /// <param name="rows">Its symbol, its value as the cell works it out, and the calculation's own: quantities, or numbers [–].</param>
    /// <returns>Symbol, both values, and whether they are equal, to a millionth, or by how much they differ.</returns>
    /// <exception cref="ArgumentException">A value is neither a quantity nor a number, or two of a row are of different kinds.</exception>
    public static DataFrame Of(params IReadOnlyList<(string Symbol, object? ByEquation, object? ByAssembly)> rows) =>
        new TableBuilder(UnitSystem.Si)
            .Words("Symbol", rows.Select(row => row.Symbol))
            .Words("By the equation", rows.Select(row => Text(row.ByEquation)))
            .Words("By the calculation", rows.Select(row => Text(row.ByAssembly)))
            .Words("Difference", rows.Select(row => Difference(row.Symbol, row.ByEquation, row.ByAssembly)))
            .Build().Frame;

    private static string Text(object? value) => value switch
    {
        null => "–",
        double number => NumberText.Short(number),
        IQuantity quantity => NumberText.Shown(quantity),
        _ => ValueText.Of(value),
    };

    private static string Difference(string symbol, object? one, object? other)
    {
        if (one is null || other is null)
        {
            return "–";
        }

        Refuse.If((one as IQuantity)?.QuantityInfo.ValueType != (other as IQuantity)?.QuantityInfo.ValueType,
            $"{symbol}: a {one.GetType().Name} cannot be held against a {other.GetType().Name}.");

        (double a, double b) = (Si(one), Si(other));
        double off = Math.Abs(a - b) / Math.Max(Math.Max(Math.Abs(a), Math.Abs(b)), 1e-12);
        return off < Equal ? "none" : Invariant.Text($"{100 * off:0.##} %");
    }

    private static double Si(object value) => value switch
    {
        IQuantity quantity => KnownQuantities.Si(quantity),
        double number => number,
        int number => number,
        _ => throw new ArgumentException($"{value} is neither a quantity nor a number."),
    };
}
