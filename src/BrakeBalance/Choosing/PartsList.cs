using System.Text.RegularExpressions;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Choosing;

/// <summary>One part that may be fitted.</summary>
/// <param name="Place">What it takes the place of: parts of one place exclude one another.</param>
/// <param name="Name">Its name in the list, with the size where the row stands for several.</param>
/// <param name="Sets">The entries of the vehicle file that it sets.</param>
/// <param name="Price">Its price in the list's money [–]; 0 unless said.</param>
/// <param name="Mass">Its mass; null when not said.</param>
/// <param name="Rating">Highest line pressure that it bears, gauge; null when not said.</param>
public sealed record Part(string Place, string Name, ImmutableArray<ValueOverride> Sets, double Price, Mass? Mass, Pressure? Rating)
{
    /// <summary>A vehicle file with the part in it; comments and layout stay.</summary>
    internal string Fitted(string text) => VehicleText.With(text, Sets);

    /// <summary>A vehicle file with some parts in it; null where one of them takes away what another sets.</summary>
    internal static string? Fit(string text, IEnumerable<Part> parts)
    {
        ValueOverride[] sets = [.. parts.SelectMany(part => part.Sets)];
        string fitted = VehicleText.With(text, sets);
        return VehicleText.Lacking(fitted, sets).Any() ? null : fitted;
    }
}

/// <summary>The parts among which is chosen: the user's list.</summary>
/// <param name="Places">Places of the car, each with the parts that may stand there; the present one always may, and is null.</param>
/// <param name="Money">What prices are in, as the list's header says; empty when it says nothing.</param>
public sealed partial record PartsList(ImmutableArray<(string Name, ImmutableArray<Part?> Parts)> Places, string Money)
{
    private const int MostSteps = 1000;
    private const string Header = "part,name,sets,price [money],mass [kg],rating [bar]";
    private static readonly string[] Columns = ["part", "name", "sets", "price", "mass", "rating"];

    // Sizes that cylinders are made in; common practice.
    private static readonly (string Name, string[] Sizes)[] Series =
    [
        ("inch series", ["5/8 in", "11/16 in", "3/4 in", "13/16 in", "7/8 in", "15/16 in", "1 in", "1-1/16 in", "1-1/8 in", "1-1/4 in"]),
        ("metric series", ["16 mm", "17 mm", "18 mm", "19 mm", "20 mm", "21 mm", "22 mm", "23 mm", "24 mm", "25 mm", "26 mm", "28 mm"]),
    ];

    /// <summary>How many combinations there are [–].</summary>
    public double Count => Places.Aggregate(1.0, (count, place) => count * place.Parts.Length);

    /// <summary>Reads a list for a car.</summary>
    /// <param name="list">The list, CSV.</param>
    /// <param name="vehicle">The text of the vehicle file, without problems; null to read the list by itself.</param>
    /// <returns>The parts; null with every problem found.</returns>
    public static (PartsList? Parts, IReadOnlyList<Problem> Problems) Read(TextReader list, string? vehicle)
    {
        LogTable table = LogTable.Read(list);
        List<Problem> problems = [.. table.Problems.Select(problem => new Problem(Line(problem.Line), problem.Reason + "."))];
        (string Name, string Unit)[] header = [.. table.Header.Select(cell =>
            Heading().Match(cell) is { Success: true } match
                ? (match.Groups["name"].Value.Trim().ToLowerInvariant(), match.Groups["unit"].Value.Trim()) : (cell, ""))];
        (string where, string known) = (Line(table.HeaderLine), string.Join(", ", Columns));
        problems.AddRange(header.Where(column => !Columns.Contains(column.Name))
            .Select(column => new Problem(where, $"\"{column.Name}\" is no column.", known)));
        problems.AddRange(Columns.Take(3).Where(column => table.Header.Length > 0 && header.All(has => has.Name != column))
            .Select(lacking => new Problem(where, $"there is no column \"{lacking}\".", known)));
        problems.AddRange(header.GroupBy(column => column.Name).Where(group => group.Count() > 1)
            .Select(twice => new Problem(where, $"the column \"{twice.Key}\" is there twice.", "one of each")));

        if (problems.Count > 0)
        {
            return (null, problems);
        }

        List<Part> parts = [];
        foreach ((int line, string[] cells) in table.Rows)
        {
            string Cell(string column) => Array.FindIndex(header, has => has.Name == column) is >= 0 and var at && at < cells.Length
                ? cells[at].Trim() : "";
            string Unit(string column) => header.FirstOrDefault(has => has.Name == column).Unit ?? "";
            void Add(string what, string accepted) => problems.Add(new(Line(line), what, accepted));
            if (cells.Length > header.Length && cells.Skip(header.Length).Any(cell => cell.Trim().Length > 0))
            {
                Add("has more cells than the header.", "a cell with commas or semicolons in quotation marks");
                continue;
            }

            T? Quantity<T>(string column) where T : struct, IQuantity
            {
                string text = Cell(column);
                text = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _) ? $"{text} {Unit(column)}" : text;
                (T? value, string? fault) = text.Length == 0 ? (null, null) : QuantityOption.Read<T>(text);
                if (fault is not null || (value is { } read && !(double.IsFinite((double)read.Value) && (double)read.Value > 0)))
                {
                    Add($"{column} \"{text}\" cannot be used{(fault is null ? "." : ": " + fault)}",
                        $"a number above zero with its unit, there or as \"{column} [unit]\" in the header");
                    return null;
                }

                return value;
            }

            string place = Cell("part"), name = Cell("name"), sets = Cell("sets"), priced = Cell("price");
            double price = 0;
            if (priced.Length > 0 && !(double.TryParse(priced, NumberStyles.Float, CultureInfo.InvariantCulture, out price)
                && double.IsFinite(price) && price >= 0))
            {
                Add($"price \"{priced}\" is no number from zero.", "such as 85 or 85.50");
            }

            if (place.Length == 0 || name.Length == 0)
            {
                Add(place.Length == 0 ? "does not say which part it stands for." : "has no name.", "a word or two");
            }

            (Mass? mass, Pressure? rating) = (Quantity<Mass>("mass"), Quantity<Pressure>("rating"));
            List<Problem> found = [];
            foreach ((ImmutableArray<ValueOverride> one, string size) in Sets(sets, Add))
            {
                var part = new Part(place, $"{name} {size}".Trim(), one, price, mass, rating);
                parts.Add(part);
                if (vehicle is not null)
                {
                    Check(part, vehicle, Line(line), found);
                }
            }

            // What is wrong with a row in each of its sizes is said once.
            problems.AddRange(found.DistinctBy(problem => problem with { Path = "" }));
        }

        problems.AddRange(parts.GroupBy(part => (part.Place, part.Name)).Where(group => group.Count() > 1).Select(same =>
            new Problem("", $"\"{same.Key.Name}\" is there {same.Count()} times under \"{same.Key.Place}\".", "a name of its own each")));

        // Two places that set one entry would overwrite each other, in an order that nobody asked for.
        foreach (IGrouping<string, Part> entry in parts.SelectMany(part => part.Sets.Select(set => (set.Path, part)))
            .GroupBy(pair => pair.Path, pair => pair.part).Where(group => group.Select(part => part.Place).Distinct().Count() > 1))
        {
            problems.Add(new("", $"{entry.Key} is set by \"{string.Join("\" and \"", entry.Select(part => part.Place).Distinct())}\".",
                "one part for each entry"));
        }

        return problems.Count > 0 ? (null, problems) : (new(
            [.. parts.GroupBy(part => part.Place).Select(place => (place.Key, ImmutableArray.Create<Part?>([null, .. place])))],
            header.FirstOrDefault(column => column.Name == "price").Unit ?? ""), []);
    }

    /// <summary>A list to begin with, of invented parts with sizes that are common in the trade.</summary>
    /// <param name="vehicle">
    /// The text of a vehicle file, about whose sizes the list is made; null for one of no car in particular.
    /// </param>
    /// <param name="units">The system of units; null for that of the trade.</param>
    /// <returns>The list, CSV; a row that the car has no entry for stands in it as a comment.</returns>
    public static string Starter(string? vehicle = null, UnitSystem? units = null) => StarterParts.Text(vehicle, Header, units, name =>
        Series.First(series => series.Name == name).Sizes);

    private static string Line(int number) => Invariant.Text($"line {number}");

    // A part by itself has to make a car that can be read; what it sets has to be an entry of a vehicle file.
    private static void Check(Part part, string vehicle, string line, List<Problem> problems)
    {
        string fitted = part.Fitted(vehicle);
        problems.AddRange(VehicleText.Lacking(fitted, part.Sets).Select(set =>
            VehicleText.Kinds(fitted, set.Path).ToArray() is { Length: > 0 } kinds
                ? new Problem(line, $"{set.Path} \"{set.Value}\" is not known.", string.Join(", ", kinds))
                : new Problem(line, $"{set.Path} is no single value of this car's file.", "a path as '--set' takes it")));
        problems.AddRange(VehicleFile.TryRead(fitted).Problems.Select(problem => problem with
        {
            Path = $"{line} ({part.Name})",
            What = $"{problem.Path} {problem.What}".Trim(),
        }));
    }

    private static IEnumerable<(ImmutableArray<ValueOverride> Sets, string Size)> Sets(string text, Action<string, string> add)
    {
        const string accepted = "such as masterCylinder.bore = 7/8 in; masterCylinder.stroke = 30 mm";
        List<ValueOverride> sets = [];
        foreach (string one in text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (ValueOverride.Parse(one) is { } set)
            {
                sets.Add(set);
            }
            else
            {
                add($"\"{one}\" is not PATH = VALUE.", accepted);
                return [];
            }
        }

        ValueOverride[] several = [.. sets.Where(set => Several().IsMatch(set.Value))];
        if (sets.Count == 0 || several.Length > 1 || sets.Select(set => set.Path).Distinct().Count() < sets.Count)
        {
            add(sets.Count == 0 ? "sets nothing." : several.Length > 1 ? "has more than one value that stands for several."
                : "sets an entry twice.", accepted);
            return [];
        }

        if (several.Length == 0)
        {
            return [([.. sets], "")];
        }

        IReadOnlyList<string> values = Values(several[0].Value);
        if (values.Count == 0)
        {
            add($"\"{several[0].Value}\" names no size.", "\"inch series\", \"metric series\", also with \"LOW .. HIGH\" behind it, or "
                + Invariant.Text($"\"LOW .. HIGH step STEP\" of one unit with at most {MostSteps} steps"));
        }

        return values.Select(value => (sets.Select(set => set == several[0] ? set with { Value = value } : set).ToImmutableArray(), value));
    }

    /// <summary>The sizes that a series or a range with a step stands for, smallest first; empty when it cannot be read.</summary>
    internal static IReadOnlyList<string> Values(string text)
    {
        foreach ((string name, string[] sizes) in Series.Where(series => text.StartsWith(series.Name, StringComparison.OrdinalIgnoreCase)))
        {
            string[] ends = text[name.Length..].Split("..", StringSplitOptions.TrimEntries);
            if (ends is [""])
            {
                return sizes;
            }

            Length? Size(string size) => QuantityOption.Read<Length>(size).Value;
            return ends.Length == 2 && Size(ends[0]) is { } low && Size(ends[1]) is { } high
                ? [.. sizes.Where(size => Size(size) >= low * (1 - 1e-9) && Size(size) <= high * (1 + 1e-9))] : [];
        }

        Match match = Several().Match(text);
        if (!match.Groups["low"].Success)
        {
            return [];
        }

        double Number(string group) => double.Parse(match.Groups[group].Value, NumberStyles.Float, CultureInfo.InvariantCulture);
        string[] units = [.. new[] { "lowUnit", "highUnit", "stepUnit" }.Select(group => match.Groups[group].Value.Trim())];
        (double from, double to, double step) = (Number("low"), Number("high"), Number("step"));
        string unit = units.FirstOrDefault(one => one.Length > 0) ?? "";
        if (!(step > 0) || !(to >= from) || (to - from) / step > MostSteps || units.Any(one => one.Length > 0 && one != unit))
        {
            return [];
        }

        return [.. Enumerable.Range(0, (int)Math.Floor((to - from) / step + 1e-9) + 1)
            .Select(i => Math.Round(from + (i * step), 9).ToString(CultureInfo.InvariantCulture))
            .Select(number => unit.Length == 0 ? number : $"{number} {unit}")];
    }

    [GeneratedRegex(@"^(?<name>[^\[]*)(\[(?<unit>[^\]]*)\])?\s*$", RegexOptions.ExplicitCapture)]
    private static partial Regex Heading();

    [GeneratedRegex(@"^(inch|metric) series|^(?<low>-?\d+(\.\d+)?)(?<lowUnit>[^.\d]*)\.\.\s*(?<high>-?\d+(\.\d+)?)(?<highUnit>[^\d]*?)\s*"
        + @"\bstep\s+(?<step>\d+(\.\d+)?)(?<stepUnit>[^\d]*)$", RegexOptions.ExplicitCapture | RegexOptions.IgnoreCase)]
    private static partial Regex Several();
}
