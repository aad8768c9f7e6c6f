using System.Text.RegularExpressions;

namespace BrakeBalance.Teaching;

/// <summary>Reads an answer as people write one: any natural spelling of its number and of its unit.</summary>
internal static partial class AnswerText
{
    // Words and compressed spellings of units, by the symbol that the file reader knows.
    private static readonly Dictionary<Type, (string Symbol, string Spellings)[]> Units = new()
    {
        [typeof(Force)] =
        [
            ("N", "n newton newtons"), ("kN", "kn kilonewton kilonewtons"),
            ("lbf", "lb lbs lbf lbsf pound pounds poundforce poundsforce poundsofforce"), ("kgf", "kgf kp kilopond kiloponds"),
        ],
        [typeof(Pressure)] =
        [
            ("bar", "bar bars"), ("kPa", "kpa kilopascal kilopascals"), ("MPa", "mpa megapascal megapascals n/mm2 n/mm²"),
            ("Pa", "pa pascal pascals n/m2 n/m²"),
            ("psi", "psi lb/in2 lb/in² lbf/in2 lbf/in² lbs/in2 lbs/in² poundspersquareinch poundpersquareinch psig"),
        ],
        [typeof(Length)] =
        [
            ("mm", "mm millimetre millimetres millimeter millimeters"), ("cm", "cm centimetre centimetres centimeter centimeters"),
            ("m", "m metre metres meter meters"), ("in", "in inch inches \" ″ ”"), ("ft", "ft foot feet ' ′"),
        ],
        [typeof(Torque)] =
        [
            ("N·m", "nm newtonmetre newtonmetres newtonmeter newtonmeters newtonsmetre mn"),
            ("kN·m", "knm kilonewtonmetre kilonewtonmetres kilonewtonmeter kilonewtonmeters"),
            ("lbf·ft", "lbft lbfft lbsft lbsfft ftlb ftlbf ftlbs ftlbsf poundfoot poundfeet footpound footpounds poundforcefoot"),
            ("lbf·in", "lbin lbfin lbsin inlb inlbf inlbs inchpound inchpounds poundinch"),
        ],
        [typeof(Energy)] =
        [
            ("kJ", "kj kilojoule kilojoules"), ("J", "j joule joules nm ws"), ("MJ", "megajoule megajoules"),
            ("ft·lb", "ftlb ftlbf ftlbs ftlbsf footpound footpounds lbft lbfft lbsft"), ("BTU", "btu btus"),
            ("Wh", "wh watthour watthours"), ("kWh", "kwh kilowatthour kilowatthours"),
        ],
        [typeof(Power)] =
        [
            ("kW", "kw kilowatt kilowatts kj/s"), ("W", "w watt watts j/s"), ("hp(I)", "hp bhp horsepower"), ("MW", "megawatt megawatts"),
        ],
        [typeof(TemperatureDelta)] =
        [
            ("∆°C", "k kelvin kelvins °k c °c degc degreec degreesc celsius degreecelsius degreescelsius degcelsius °celsius "
                + "centigrade degreescentigrade"),
            ("∆°F", "f °f degf degreef degreesf fahrenheit degreefahrenheit degreesfahrenheit degfahrenheit °fahrenheit"),
        ],
    };

    /// <summary>The number that a text begins with, in every way it can be meant, and what follows it.</summary>
    /// <returns>
    /// More than one number where one sign may part thousands or decimals (5,933); none where the text begins with no number.
    /// </returns>
    public static (IReadOnlyList<double> Numbers, string Unit) Read(string text)
    {
        string plain = Label().Replace(Plain(text), "");
        Match match = Shape().Match(plain);
        if (!match.Success)
        {
            return ([], "");
        }

        double sign = match.Groups["sign"].Value.Contains('-', StringComparison.Ordinal) ? -1 : 1;
        double scale = match.Groups["power"] is { Success: true, Value: var power }
            ? Math.Pow(10, double.Parse(power, CultureInfo.InvariantCulture)) : 1;
        double Part(string group) => match.Groups[group] is { Success: true, Value: var digits }
            ? double.Parse(digits, CultureInfo.InvariantCulture) : 0;
        IEnumerable<double> numbers = !match.Groups["below"].Success ? Decimals(match.Groups["number"].Value)
            : Part("below") > 0 ? [Part("whole") + (Part("above") / Part("below"))] : [];
        return ([.. numbers.Select(number => sign * number * scale)], match.Groups["unit"].Value.Trim());
    }

    /// <summary>The symbol of a unit as the file reader knows it; what was written when it is no unit of the kind.</summary>
    public static string Unit(string written, Type kind)
    {
        string spelled = written.Trim().TrimEnd('.');
        string tight = Parting().Replace(spelled, "");
        return Known(kind, tight) ?? Known(kind, tight.ToLowerInvariant()) ?? spelled;

        // Capitals tell mega from milli.
        static string? Known(Type kind, string tight) => Units[kind].Where(unit => Parting().Replace(unit.Symbol, "") == tight)
            .Concat(Units[kind].Where(unit => unit.Spellings.Split(' ').Contains(tight))).Select(unit => unit.Symbol).FirstOrDefault();
    }

    /// <summary>The units in which somebody may have worked: those that a school or a workshop writes.</summary>
    public static IEnumerable<Enum> UnitsOf(Type kind) =>
        Units[kind].Select(unit => KnownQuantities.Find(kind, unit.Symbol)).OfType<Enum>();

    // Spaces of any width, the true minus and dashes, signs of multiplication: each as one sign.
    private static string Plain(string text) => string.Concat(text.Trim().Select(letter => letter switch
    {
        '\u00A0' or '\u2007' or '\u2009' or '\u200A' or '\u202F' or '\t' => ' ',
        '\u2212' or '\u2012' or '\u2013' or '\u2010' or '\u2011' => '-',
        '⋅' or '∙' or '•' or '×' => '·',
        '’' or '‘' => '\'',
        '⁄' or '∕' => '/',
        _ => letter,
    }));

    // A sign between three digits may part thousands or decimals; one that comes twice parts thousands, and of two the last the decimals.
    private static IEnumerable<double> Decimals(string written)
    {
        string digits = written.Replace(" ", "", StringComparison.Ordinal).Replace("'", "", StringComparison.Ordinal);
        int commas = digits.Count(c => c == ','), points = digits.Count(c => c == '.');
        char last = commas + points == 0 ? '.' : digits[digits.LastIndexOfAny([',', '.'])];
        if (commas > 0 && points > 0)
        {
            return (last == ',' ? commas : points) > 1 ? [] : [Number(digits, last)];
        }

        if (commas + points > 1)
        {
            return [Number(digits, '\0')];
        }

        bool thousands = commas + points == 1 && Thousands().IsMatch(digits);
        return thousands ? [Number(digits, last), Number(digits, '\0')] : [Number(digits, last)];
    }

    private static double Number(string digits, char point) => double.Parse(
        string.Concat(digits.Where(c => char.IsAsciiDigit(c) || c == point)).Replace(',', '.'),
        NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    // "F1 = ", "about", "≈": what stands before the number.
    [GeneratedRegex(@"^(?:(?:[\p{L}∆Δ][\p{L}\p{N}_₀-₉]{0,11}\s*)?[=≈~:≅]\s*|(?:about|approximately|approx\.?|roughly|circa|ca\.?|c\.)\s+)+",
        RegexOptions.IgnoreCase)]
    private static partial Regex Label();

    [GeneratedRegex(
        @"^(?<sign>[+-]?)\s*(?:(?:(?<whole>[0-9]+)(?:\s+|\s*-\s*))?(?<above>[0-9]+)\s*/\s*(?<below>[0-9]+)"
            + @"|(?<number>[0-9]{1,3}(?:[ '][0-9]{3})+(?:[.,][0-9]+)?|[0-9]+(?:[.,][0-9]+)*[.,]?|[.,][0-9]+)"
            + @"(?:[eE](?<power>[+-]?[0-9]+)|\s*[·*x]\s*10\s*(?:\^|\*\*)\s*\(?(?<power>[+-]?[0-9]+)\)?)?)"
            + @"\s*(?<unit>[^\d\s.,].*)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();

    [GeneratedRegex(@"^(?:[1-9][0-9]{0,2})[.,][0-9]{3}$")]
    private static partial Regex Thousands();

    // What parts the parts of a unit, or follows an abbreviation.
    [GeneratedRegex(@"[\s·*.\-]")]
    private static partial Regex Parting();
}
