using System.Text.RegularExpressions;
using UnitsNet.Units;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Reads quantities such as "2.90 m" or "550 psi" in the invariant culture.</summary>
internal static partial class QuantityText
{
    // Beyond these a change of unit could overflow, and nothing of a car is that large or small.
    private const double LargestNumber = 1e15, SmallestNumber = 1e-15;

    private static readonly string[] FractionsOfAnInch = ["2", "4", "8", "16", "32", "64", "128"];

    /// <summary>Units named in messages for a kind of quantity.</summary>
    public static string Accepted(Type quantity) => KnownQuantities.Accepted(quantity);

    /// <summary>Reads one quantity or a range of it.</summary>
    /// <returns>Null when read; else what is wrong.</returns>
    public static string? Read(string text, Type quantity, out IQuantity? low, out IQuantity? high)
    {
        (low, high) = (null, null);
        string[] ends = text.Contains("..", StringComparison.Ordinal) ? text.Split("..", StringSplitOptions.TrimEntries) : [text.Trim()];
        if (ends.Length > 2 || (ends.Length == 2 && ends.Contains("")))
        {
            return $"\"{text}\" is no range: one \"..\" stands between its two ends.";
        }

        if (ends.Length == 2 && NumberOnly().IsMatch(ends[0]))
        {
            Match second = Fraction().Match(ends[1]) is { Success: true } broken ? broken : Shape().Match(ends[1]);
            ends[0] += " " + second.Groups["unit"].Value;
        }

        string? fault = ReadOne(ends[0], quantity, out low);
        if (fault is null && ends.Length == 2)
        {
            fault = ReadOne(ends[1], quantity, out high);
            if (fault is null && high!.As(low!.Unit) < low.Value)
            {
                fault = $"\"{text}\" runs downwards; write the smaller end first.";
            }
        }
        else if (fault is null)
        {
            high = low;
        }

        return fault;
    }

    /// <summary>A quantity as the reader accepts it again.</summary>
    public static string Write(IQuantity quantity) =>
        ((double)quantity.Value).ToString("0.########", CultureInfo.InvariantCulture) + " "
        + KnownQuantities.Symbol(quantity.Unit);

    private static string? ReadOne(string text, Type quantity, out IQuantity? value)
    {
        if ((value = ReadPlain(text, quantity)) is not null)
        {
            return null;
        }

        if (Fraction().Match(text) is { Success: true } fraction)
        {
            return ReadFraction(text, fraction, quantity, out value);
        }

        if (quantity == typeof(Length) && text.Contains('/', StringComparison.Ordinal))
        {
            return NoFraction(text);
        }

        Match match = Shape().Match(text);
        if (!match.Success)
        {
            return DecimalComma().IsMatch(text)
                ? $"\"{text}\" has a decimal comma; write a point."
                : $"\"{text}\" is not a number followed by a unit.";
        }

        string unitText = match.Groups["unit"].Value;
        if (unitText.Length == 0)
        {
            return $"\"{text}\" has no unit.";
        }

        Enum? unit = FindUnit(quantity, unitText);
        if (unit is null)
        {
            return $"\"{unitText}\" is not a unit of {Words(quantity.Name)}.";
        }

        double number = double.Parse(match.Groups["number"].Value, NumberStyles.Float, CultureInfo.InvariantCulture);
        if (Math.Abs(number) is > LargestNumber or (> 0 and < SmallestNumber))
        {
            return $"\"{text}\" is no number of a car.";
        }

        value = KnownQuantities.From(number, unit);
        return null;
    }

    // As nearly all are written, which asks for no regular expression: "2.90 m".
    private static IQuantity? ReadPlain(string text, Type quantity)
    {
        int gap = text.IndexOf(' ', StringComparison.Ordinal);
        ReadOnlySpan<char> number = text.AsSpan(0, Math.Max(0, gap));
        return double.TryParse(
            number, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out double value)
            && Math.Abs(value) is 0 or (>= SmallestNumber and <= LargestNumber)
            && KnownQuantities.FindWord(quantity, text[(gap + 1)..]) is { } unit ? KnownQuantities.From(value, unit) : null;
    }

    // As a workshop reads them off a rule or a part: 7/8 in, 1-1/8 in, 1 1/8".
    private static string? ReadFraction(string text, Match match, Type quantity, out IQuantity? value)
    {
        value = null;
        string unit = match.Groups["unit"].Value;
        if (unit.Length == 0)
        {
            return $"\"{text}\" has no unit.";
        }

        if (quantity != typeof(Length) || FindUnit(quantity, unit) is not LengthUnit.Inch)
        {
            return $"\"{text}\": fractions are read of inches only; write a number with a point.";
        }

        string below = match.Groups["below"].Value;
        double whole = match.Groups["whole"].Success ? double.Parse(match.Groups["whole"].Value, CultureInfo.InvariantCulture) : 0;
        double above = double.Parse(match.Groups["above"].Value, CultureInfo.InvariantCulture);
        if (!FractionsOfAnInch.Contains(below) || above < 1 || above >= double.Parse(below, CultureInfo.InvariantCulture))
        {
            return NoFraction(text);
        }

        double inches = whole + above / double.Parse(below, CultureInfo.InvariantCulture);
        value = Length.FromInches(match.Groups["sign"].Value == "-" ? -inches : inches);
        return inches > LargestNumber ? $"\"{text}\" is no number of a car." : null;
    }

    private static string NoFraction(string text) =>
        $"\"{text}\" is no fraction of an inch: write halves to 128ths below one, such as \"1-1/8 in\".";

    private static Enum? FindUnit(Type quantity, string text)
    {
        string plain = text.Replace("^2", "²", StringComparison.Ordinal).Replace("^3", "³", StringComparison.Ordinal);
        if (plain is [.., '2'] or [.., '3'])
        {
            plain = plain[..^1] + (plain[^1] == '2' ? "²" : "³");
        }

        plain = plain.Replace("m2/", "m²/", StringComparison.Ordinal).Replace('*', '·');
        plain = plain switch
        {
            "Nm" => "N·m",
            "lbf ft" or "lb·ft" or "lb ft" => "lbf·ft",
            "gal/min" or "gpm" => "US gal/min",
            "L" => "l",
            "degC" => "°C",
            "degF" => "°F",
            "deg" => "°",
            "\"" or "″" or "”" when quantity == typeof(Length) => "in",
            "kph" => "km/h",
            _ => plain,
        };
        return KnownQuantities.Find(quantity, plain);
    }

    internal static string Words(string name, string apart = " ") =>
        string.Concat(name.Select((c, i) => (i > 0 && char.IsUpper(c) ? apart : "") + char.ToLowerInvariant(c)));

    [GeneratedRegex(@"^\s*(?<number>[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+)([eE][+-]?[0-9]+)?)\s*(?<unit>[^\d\s.,+-].*?)?\s*$",
        RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();

    [GeneratedRegex(
        @"^\s*(?<sign>[+-])?((?<whole>[0-9]+)(\s*-\s*|\s+))?(?<above>[0-9]+)\s*/\s*(?<below>[0-9]+)"
            + @"\s*(?<unit>[^\d\s.,/+-].*?)?\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Fraction();

    [GeneratedRegex(@"^\s*[+-]?([0-9]+(\.[0-9]*)?|\.[0-9]+|([0-9]+(\s*-\s*|\s+))?[0-9]+\s*/\s*[0-9]+)\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex NumberOnly();

    [GeneratedRegex(@"^\s*[+-]?\d+,\d+", RegexOptions.ExplicitCapture)]
    internal static partial Regex DecimalComma();
}
