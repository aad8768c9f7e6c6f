using System.Diagnostics.CodeAnalysis;
using System.Reflection;
using System.Text.RegularExpressions;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Outputs;

/// <summary>A record of the calculation, such as a lock-up, as a small table of what it holds.</summary>
internal static partial class RecordTable
{
    private const int Deepest = 2;

    /// <summary>The table; null for what is no record of the calculation, or holds nothing that a row can say.</summary>
    [UnconditionalSuppressMessage("Trimming", "IL2072", Justification = "Cells run where the calculation assembly is whole.")]
    public static DataFrame? Of(object? value)
    {
        List<(string Name, string Value)> rows = Suits(value) ? [.. Rows("", value!, 0)] : [];
        return rows.Count == 0 ? null : new TableBuilder(UnitSystem.Si)
            .Words(Words(value!.GetType().Name), rows.Select(row => row.Name)).Words("Value", rows.Select(row => row.Value)).Build().Frame;
    }

    private static IEnumerable<(string, string)> Rows(string before, object value, int depth)
    {
        foreach (PropertyInfo property in value.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance)
            .Where(property => property.GetIndexParameters().Length == 0 && property.GetMethod?.IsPublic == true))
        {
            object? held = property.GetValue(value);
            string name = before + Words(property.Name);
            if (held is IQuantity or double or int or bool or string or Enum)
            {
                yield return (name, ValueText.Of(held is Enum ? Words(held.ToString()!) : held));
            }
            else if (depth < Deepest && (Suits(held) || held?.GetType().Name.StartsWith("PerAxle", StringComparison.Ordinal) == true))
            {
                foreach ((string, string) row in Rows(name + ", ", held!, depth + 1))
                {
                    yield return row;
                }
            }
        }
    }

    /// <summary>Whether a value is a result, a record of the calculation: a car and its parts are inputs.</summary>
    public static bool Suits(object? value) =>
        value?.GetType() is { } type && type.Namespace is "BrakeBalance.Balance" or "BrakeBalance.Measurements" or "BrakeBalance.Stops"
            && type.GetMethod("<Clone>$") is not null;

    private static string Words(string name) => Capital().Replace(name, " $0").ToLowerInvariant();

    [GeneratedRegex("(?<=[a-z])[A-Z]")]
    private static partial Regex Capital();
}
