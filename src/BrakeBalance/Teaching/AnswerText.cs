using System.Text.RegularExpressions;

namespace BrakeBalance.Teaching;

/// <summary>Reads an answer as people write one: any natural spelling of its number and of its unit.</summary>
internal static partial class AnswerText
{
    // Units by the symbol that the file reader knows, and how they are spelled once what parts their parts is out.
    private static readonly Dictionary<Type, (string Symbol, string Spellings)[]> Units = new()
    {
        [typeof(Force)] =
        [
            ("N", "n newton newtons"), ("kN", "kn kilonewton kilonewtons"),
            ("lbf", "lb lbs lbf lbsf pound pounds poundforce poundsforce poundsofforce"), ("kgf", "kgf kp kilopond kiloponds"),
        ],
        [typeof(Pressure)] =
        [
            ("bar", "bar bars barg"), ("kPa", "kpa kilopascal kilopascals kn/m2"),
            ("MPa", "mpa megapascal megapascals n/mm2"), ("Pa", "pa pascal pascals n/m2"),
            ("psi", "psi psig lb/in2 lbf/in2 lbs/in2 pounds/in2 pound/in2 poundsforce/in2 poundforce/in2"),
            ("mbar", "mbar millibar millibars"), ("N/cm²", "n/cm2"), ("kgf/cm²", "kg/cm2 kgf/cm2 kp/cm2"),
            ("atm", "atm atmosphere atmospheres"),
        ],
        [typeof(Length)] =
        [
            ("mm", "mm millimetre millimetres millimeter millimeters"), ("cm", "cm centimetre centimetres centimeter centimeters"),
            ("m", "m metre metres meter meters"), ("in", "in ins inch inches \" ″ ”"), ("ft", "ft foot feet ' ′"),
        ],
        [typeof(Torque)] =
        [
            ("N·m", "nm nxm newtonmetre newtonmetres newtonmeter newtonmeters newtonsmetre newtonsmetres newtonsmeters mn"),
            ("kN·m", "knm kilonewtonmetre kilonewtonmetres kilonewtonmeter kilonewtonmeters"),
            ("N·mm", "nmm"), ("kgf·m", "kgfm kpm kgm"),
            ("lbf·ft", "lbft lbfft lbsft lbsfft ftlb ftlbf ftlbs ftlbsf poundfoot poundfeet poundsfeet poundsfoot footpound footpounds "
                + "poundforcefoot footlb footlbs footlbf ftpound ftpounds"),
            ("lbf·in", "lbin lbfin lbsin inlb inlbf inlbs inchpound inchpounds poundinch poundinches"),
        ],
        [typeof(Energy)] =
        [
            ("kJ", "kj kilojoule kilojoules knm kws"), ("J", "j joule joules nm ws"), ("MJ", "megajoule megajoules"),
            ("ft·lb", "ftlb ftlbf ftlbs ftlbsf footpound footpounds footlbs lbft lbfft lbsft"), ("BTU", "btu btus"),
            ("Wh", "wh watthour watthours"), ("kWh", "kwh kilowatthour kilowatthours"),
        ],
        [typeof(Power)] =
        [
            ("kW", "kw kilowatt kilowatts kj/s"), ("W", "w watt watts j/s nm/s"), ("hp(I)", "hp bhp horsepower"), ("hp(M)", "ps"),
            ("MW", "megawatt megawatts"),
        ],
        [typeof(TemperatureDelta)] =
        [
            ("∆°C", "k kelvin kelvins °k degk degreekelvin degreeskelvin c °c c° degc degreec degreesc celsius degreecelsius "
                + "degreescelsius degcelsius °celsius centigrade degreescentigrade"),
            ("∆°F", "f °f degf degreef degreesf fahrenheit degreefahrenheit degreesfahrenheit degfahrenheit °fahrenheit"),
        ],
    };

    private static readonly HashSet<string> Words = [.. Units.Values.SelectMany(kind => kind)
        .SelectMany(unit => unit.Spellings.Split(' ').Append(unit.Symbol.ToLowerInvariant()))];

    // Read, but nobody is taken to have slipped into one.
    private static readonly HashSet<string> Rare =
        ["kgf", "mbar", "N/cm²", "kgf/cm²", "atm", "N·mm", "kgf·m", "MJ", "BTU", "Wh", "kWh", "hp(M)", "MW"];

    /// <summary>The number that a text begins with, in every way it can be meant, and what follows it.</summary>
    /// <param name="text">The text.</param>
    /// <param name="decimalSign">The sign by which the writer parts decimals; null when it is not known.</param>
    /// <returns>
    /// More than one number where one sign may part thousands or decimals (5,933); none where the text begins with no number.
    /// </returns>
    public static (IReadOnlyList<double> Numbers, string Unit) Read(string text, char? decimalSign = null)
    {
        string plain = Label().Replace(Plain(text), "");
        if (FeetAndInches().Match(plain) is { Success: true, Groups: var parts })
        {
            return ([12 * Number(parts["feet"].Value, '.') + Number(parts["inches"].Value, '.')], "in");
        }

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
        IEnumerable<double> numbers = !match.Groups["below"].Success ? Decimals(match.Groups["number"].Value, decimalSign)
            : Part("below") > 0 ? [Part("whole") + (Part("above") / Part("below"))] : [];
        return ([.. numbers.Select(number => sign * number * scale)], Bare(match.Groups["unit"].Value));
    }

    /// <summary>The sign by which somebody parts decimals, from all that they wrote; null when that does not tell.</summary>
    public static char? DecimalSign(IEnumerable<string> texts)
    {
        char[] signs = [.. texts.SelectMany(text => Fractional().Matches(text)).Select(match => match.Groups["sign"].Value[0]).Distinct()];
        return signs.Length == 1 ? signs[0] : null;
    }

    /// <summary>The symbol of a unit as the file reader knows it; what was written when it is no unit of the kind.</summary>
    public static string Unit(string written, Type kind)
    {
        string spelled = written.Trim().TrimEnd('.'), tight = Tight(spelled);
        return Known(kind, tight) ?? Known(kind, tight.ToLowerInvariant()) ?? Before(spelled.LastIndexOf(' ')) ?? spelled;

        // "N on the front axle": words that are no unit may follow.
        string? Before(int space) => space > 0 && spelled[(space + 1)..] is var word && word.All(char.IsLetter)
            && !Words.Contains(word.ToLowerInvariant()) && Unit(spelled[..space], kind) is var head
            && Words.Contains(head.ToLowerInvariant()) ? head : null;

        // Capitals tell mega from milli.
        static string? Known(Type kind, string tight) => Units[kind].Where(unit => Parting().Replace(unit.Symbol, "") == tight)
            .Concat(Units[kind].Where(unit => unit.Spellings.Split(' ').Contains(tight))).Select(unit => unit.Symbol).FirstOrDefault();
    }

    /// <summary>The units in which somebody may have worked by mistake.</summary>
    public static IEnumerable<Enum> UnitsOf(Type kind) =>
        Units[kind].Where(unit => !Rare.Contains(unit.Symbol)).Select(unit => KnownQuantities.Find(kind, unit.Symbol)).OfType<Enum>();

    /// <summary>A unit's letters and powers alone: "lbs per sq. inch" is lbs/in2.</summary>
    public static string Tight(string unit) => SquareInch().Replace(Parting().Replace(unit, ""), "in2")
        .Replace("per", "/", StringComparison.OrdinalIgnoreCase).Replace('²', '2');

    // Without brackets around it, and without what follows it: the same in other units, "approx.".
    private static string Bare(string unit)
    {
        string alone = unit.Trim();
        alone = Bracketed().Match(alone) is { Success: true } inner ? inner.Groups["unit"].Value : alone;
        return Trailing().Replace(alone, "").Trim().TrimEnd(',', ';', '!');
    }

    // Spaces of any width, the true minus and dashes, signs of multiplication: each as one sign; powers and fractions written out.
    private static string Plain(string text) => Power().Replace(string.Concat(text.Trim().Select(letter => letter switch
    {
        '\u00A0' or '\u2007' or '\u2009' or '\u200A' or '\u202F' or '\t' => " ",
        '\u2212' or '\u2012' or '\u2013' or '\u2010' or '\u2011' => "-",
        '⋅' or '∙' or '•' or '×' => "·",
        '’' or '‘' => "'",
        '⁄' or '∕' => "/",
        'º' or '˚' => "°",
        '℃' => "°C",
        '℉' => "°F",
        '½' => " 1/2",
        '¼' => " 1/4",
        '¾' => " 3/4",
        '⅛' => " 1/8",
        '⅜' => " 3/8",
        '⅝' => " 5/8",
        '⅞' => " 7/8",
        _ => letter.ToString(),
    })), power => "10^" + string.Concat(power.Groups["power"].Value.Select(raised => raised switch
    {
        '⁻' => '-',
        '⁺' => '+',
        _ => (char)('0' + Superscripts.IndexOf(raised)),
    }))).Replace("''", "\"", StringComparison.Ordinal).Trim();

    private const string Superscripts = "⁰¹²³⁴⁵⁶⁷⁸⁹";

    // A sign between three digits may part thousands or decimals; one that comes twice parts thousands, and of two the last the decimals.
    private static IEnumerable<double> Decimals(string written, char? decimalSign)
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
        return !thousands || last == decimalSign ? [Number(digits, last)]
            : decimalSign is null ? [Number(digits, last), Number(digits, '\0')] : [Number(digits, '\0')];
    }

    private static double Number(string digits, char point) => double.Parse(
        string.Concat(digits.Where(c => char.IsAsciiDigit(c) || c == point)).Replace(',', '.'),
        NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    // "F1 = ", "T2/T = ", "about", "≈": what stands before the number.
    [GeneratedRegex(@"^(?:(?:[\p{L}∆Δ][^=≈~:≅∼⇒→]{0,24})?[=≈~:≅∼⇒→]\s*"
        + @"|(?:about|abt\.?|around|approximately|approx\.?|appr\.?|roughly|circa|ca\.?|c\.|by|some)\s+)+", RegexOptions.IgnoreCase)]
    private static partial Regex Label();

    [GeneratedRegex(@"^(?<feet>[0-9]+)\s*(?:ft\.?|feet|foot|['′])\s*(?<inches>[0-9]+(?:\.[0-9]+)?)\s*(?:in\.?|inch|inches|[""″])$",
        RegexOptions.IgnoreCase)]
    private static partial Regex FeetAndInches();

    [GeneratedRegex(@"10(?<power>[⁺⁻]?[⁰¹²³⁴-⁹]+)")]
    private static partial Regex Power();

    [GeneratedRegex(@"^[\(\[](?<unit>[^\d\)\]]+)[\)\]]$")]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"(?:^|\s)(?:[\(\[=≈]|/\s*\d).*$"
        + @"|(?:^|[\s,])(?:approx\.?|approximately|about|roughly|or so|more or less)$", RegexOptions.IgnoreCase)]
    private static partial Regex Trailing();

    [GeneratedRegex(@"(?<![\d.,])0(?<sign>[.,])\d|\d(?<sign>[.,])(?:\d{1,2}|\d{4,})(?![\d.,])")]
    private static partial Regex Fractional();

    [GeneratedRegex(
        @"^(?<sign>[+-]?)\s*(?:(?:(?<whole>[0-9]+)(?:\s+|\s*-\s*))?(?<above>[0-9]+)\s*/\s*(?<below>[0-9]+)"
            + @"|(?<number>[0-9]{1,3}(?:[ '][0-9]{3})+(?:[.,][0-9]+)?|[0-9]+(?:[.,][0-9]+)*[.,]?|[.,][0-9]+)"
            + @"(?:[eE](?<power>[+-]?[0-9]+)|\s*[·*xX]\s*10\s*(?:\^|\*\*)\s*\(?(?<power>[+-]?[0-9]+)\)?)?)"
            + @"\s*(?<unit>[^\d\s.,].*)?$", RegexOptions.ExplicitCapture)]
    private static partial Regex Shape();

    [GeneratedRegex(@"^(?:[1-9][0-9]{0,2})[.,][0-9]{3}$")]
    private static partial Regex Thousands();

    // What parts the parts of a unit, or follows an abbreviation.
    [GeneratedRegex(@"[\s·*.^()\[\]\-]")]
    private static partial Regex Parting();

    [GeneratedRegex(@"sq(?:uare)?in(?:ch(?:es)?)?|in(?:ch(?:es)?)?(?:2|²|squared)", RegexOptions.IgnoreCase)]
    private static partial Regex SquareInch();
}
