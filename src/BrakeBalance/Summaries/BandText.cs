using System.Text;
using System.Text.RegularExpressions;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>Writes what one car says so that it holds for all cars that the ranges of its file allow.</summary>
public static partial class BandText
{
    /// <summary>What a reader is told of the bands, once.</summary>
    public const string Legend = "In brackets: the span over a dozen cars drawn from the file's ranges; their ends can reach further.";

    /// <summary>Stands behind a number that rests on what is typical of the class.</summary>
    public const string ClassMark = "*";

    /// <summary>What a reader is told of <see cref="ClassMark"/>, once.</summary>
    public const string ClassLegend = ClassMark + " rests on numbers typical of the car's class, not this car's.";

    /// <summary>What a reader of a car's numbers is told of their bands.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>One sentence or two; empty when its file has no ranges.</returns>
    public static string LegendOf(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.Uncertainty is not { } ranges ? "" : ranges.OfClass > 0 ? $"{Legend} {ClassLegend}" : Legend;
    }

    /// <summary>The number with which a text begins; null when it begins with none.</summary>
    internal static double? Leading(string text) => Number().Match(text) is { Success: true, Index: 0 } number ? Value(number) : null;

    private static double Value(Match number) => double.Parse(number.Value.Replace('−', '-'), CultureInfo.InvariantCulture);

    private const int MostAlternatives = 2;

    /// <summary>Each number of a text with its band.</summary>
    /// <param name="middle">The text with every range at its middle.</param>
    /// <param name="drawn">The text of each car that the ranges allow.</param>
    /// <param name="ofClass">The text of some cars that differ only in what is typical of the class.</param>
    /// <returns>The text; where some cars say something else altogether, that too.</returns>
    public static string Of(string middle, IEnumerable<string> drawn, IEnumerable<string> ofClass)
    {
        ArgumentNullException.ThrowIfNull(middle);
        ArgumentNullException.ThrowIfNull(drawn);
        ArgumentNullException.ThrowIfNull(ofClass);
        string[] told = [.. drawn.Where(text => text != middle)], ofTypical = [.. ofClass.Where(text => text != middle)];
        if (told.Length == 0)
        {
            return middle;
        }

        var own = new Parts(middle);
        Parts[] cars = [.. told.Select(text => new Parts(text))];
        Parts[] same = [.. cars.Where(own.IsLike)];
        Parts[] typical = [.. ofTypical.Select(text => new Parts(text))];
        bool none = own.Numbers.Count > 0 && cars.Any(car => car.Text == Nothing);
        string said = own.With(same, none, typical);
        string[] others = [.. Otherwise(cars.Where(car => !own.IsLike(car) && !(none && car.Text == Nothing))).Select(group =>
            group[0].With(group, none: false, []))];
        string mark = typical.Any(text => !own.IsLike(text)) ? ClassMark : "";
        return others.Length == 0 ? said
            : said.EndsWith('.') ? $"{said[..^1]}; within the file's ranges also "
                + $"{string.Join(" or ", others.Select(other => char.ToLowerInvariant(other[0]) + other[1..].TrimEnd('.')))}{mark}."
            : $"{said} or {string.Join(" or ", others)}{mark}";
    }

    /// <summary>Sentences with the bands of their numbers, and in the end those that some cars would change.</summary>
    /// <param name="middle">The sentences with every range at its middle.</param>
    /// <param name="drawn">Those of each car that the ranges allow.</param>
    /// <param name="ofClass">Those of some cars that differ only in what is typical of the class.</param>
    public static string Sentences(string middle, IEnumerable<string> drawn, IEnumerable<string> ofClass)
    {
        ArgumentNullException.ThrowIfNull(middle);
        ArgumentNullException.ThrowIfNull(drawn);
        ArgumentNullException.ThrowIfNull(ofClass);
        Parts[] own = Split(middle);
        Parts[][] cars = [.. drawn.Where(text => text != middle).Select(Split)];
        Parts[][] typical = [.. ofClass.Where(text => text != middle).Select(Split)];
        string said = string.Join(' ', own.Select((sentence, i) =>
        {
            // Of several sentences of one form the same one in order is meant.
            int nth = own.Take(i).Count(sentence.IsLike);
            Parts[] Like(Parts[][] texts) => [.. texts.SelectMany(text => text.Where(sentence.IsLike).Skip(nth).Take(1))];
            return sentence.With(Like(cars), none: false, Like(typical));
        }));
        Parts[] other = [.. cars.SelectMany(text => text.Where(sentence => !own.Any(sentence.IsLike)))];
        string[] otherwise = [.. Otherwise(other).OrderBy(group => Array.FindIndex(other, group[0].IsLike))
            .Select(group => group[0].With(group, none: false, [.. typical.SelectMany(text => text.Where(group[0].IsLike).Take(1))]))];
        return otherwise.Length == 0 ? said : $"{said} {Also}{string.Join(' ', otherwise)}";
    }

    /// <summary>Notices with the bands of their numbers, and in the end those that only some cars of the ranges would get.</summary>
    /// <param name="middle">The notices with every range at its middle.</param>
    /// <param name="drawn">Those of each car that the ranges allow.</param>
    /// <param name="ofClass">Those of some cars that differ only in what is typical of the class.</param>
    public static IEnumerable<string> Each(IReadOnlyList<string> middle, IEnumerable<IReadOnlyList<string>> drawn,
        IEnumerable<IReadOnlyList<string>> ofClass)
    {
        ArgumentNullException.ThrowIfNull(middle);
        Parts[] own = [.. middle.Select(text => new Parts(text))];
        Parts[][] cars = [.. drawn.Select(texts => texts.Select(text => new Parts(text)).ToArray())];
        Parts[][] typical = [.. ofClass.Select(texts => texts.Select(text => new Parts(text)).ToArray())];
        foreach (Parts notice in own)
        {
            yield return notice.With([.. cars.SelectMany(car => car.Where(notice.IsLike).Take(1))], none: false,
                [.. typical.SelectMany(car => car.Where(notice.IsLike).Take(1))]);
        }

        foreach (Parts[] other in Otherwise(cars.SelectMany(car => car).Where(notice => !own.Any(notice.IsLike))))
        {
            yield return Also + other[0].With(other, none: false, []);
        }
    }

    private const string Nothing = "–";
    private const string Also = "Within the file's ranges it can also be: ";

    /// <summary>What some cars say otherwise, by form, the most frequent first.</summary>
    private static IEnumerable<Parts[]> Otherwise(IEnumerable<Parts> texts) => texts.GroupBy(text => text.Skeleton)
        .OrderByDescending(group => group.Count()).ThenBy(group => group.Key, StringComparer.Ordinal).Take(MostAlternatives)
        .Select(group => group.ToArray());

    private static Parts[] Split(string text) => [.. SentenceEnd().Split(text).Select(sentence => new Parts(sentence))];

    /// <summary>A text taken apart into its numbers and what stands between them.</summary>
    private sealed class Parts(string text)
    {
        public string Text { get; } = text;

        public IReadOnlyList<Match> Numbers { get; } = [.. Number().Matches(text).Cast<Match>()];

        public string Skeleton { get; } = Number().Replace(text, "#");

        public bool IsLike(Parts other) => other.Skeleton == Skeleton;

        /// <summary>The text with the band of each number that differs, behind the number's unit.</summary>
        public string With(IReadOnlyList<Parts> same, bool none, IReadOnlyList<Parts> typical)
        {
            var text = new StringBuilder();
            int at = 0;
            foreach ((int i, Match number) in Numbers.Index())
            {
                double[] values = [.. same.Select(car => Value(car.Numbers[i])).Append(Value(number))];
                (double low, double high) = (values.Min(), values.Max());
                if (low == high && !none)
                {
                    continue;
                }

                Match unit = Unit().Match(Text, number.Index + number.Length);
                int end = number.Index + number.Length + unit.Length;
                string form = Form(same.Select(car => car.Numbers[i].Value).Append(number.Value), low, Value(number), high);
                text.Append(Text, at, number.Index - at).Append(Written(Value(number), form)).Append(unit.Value)
                    .Append(" (").Append(Written(low, form)).Append('–').Append(none ? "none" : Written(high, form)).Append(')')
                    .Append(typical.Any(car => !IsLike(car) || car.Numbers[i].Value != number.Value) ? ClassMark : "");
                at = end;
            }

            return text.Append(Text, at, Text.Length - at).ToString();
        }

        // No more decimals than the width of the band is worth; one more where a 1 would stand alone, for 0.15 is neither 0.1 nor 0.2.
        private static string Form(IEnumerable<string> numbers, params double[] shown)
        {
            double width = shown.Max() - shown.Min();
            int given = numbers.Max(number => number.IndexOf('.', StringComparison.Ordinal) is > 0 and var point
                ? number.Length - point - 1 : 0);
            int worth = width > 0 ? Math.Clamp((int)Math.Ceiling(-Math.Log10(width / 3)), 0, given) : given;
            double step = Math.Pow(10, -worth);
            bool alone = worth < given && shown.Any(value => Math.Abs(value) >= step && Math.Abs(value) < 2 * step);
            return "F" + (alone ? worth + 1 : worth).ToString(CultureInfo.InvariantCulture);
        }

        private static string Written(double value, string form)
        {
            string size = Math.Abs(value).ToString(form, CultureInfo.InvariantCulture);
            return value < 0 && size.Any(digit => digit is >= '1' and <= '9') ? "−" + size : size;
        }
    }

    [GeneratedRegex(@"(?<![\w.])[−-]?\d+(\.\d+)?(?![\w]|\.\d)", RegexOptions.CultureInvariant)]
    private static partial Regex Number();

    [GeneratedRegex(
        @"\G[\s\u00a0](%|°C|°F|(bar|psi|kPa|inHg|N|kN|lbf|mm|in|m|ft|cm³|in³|kg|lb|g|s|K|l/min"
            + @"|US\u00a0gal/min|gal/min|km/h|mph)(·\w+)?[²³]?(?![\w/]))",
        RegexOptions.CultureInvariant)]
    private static partial Regex Unit();

    [GeneratedRegex(@"(?<=[.!?]) (?=\S)", RegexOptions.CultureInvariant)]
    private static partial Regex SentenceEnd();
}
