using System.Text.RegularExpressions;
using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>Guesses what the columns of a time series mean, by their names, units and numbers.</summary>
internal static partial class SeriesColumns
{
    /// <summary>The unit of a time of day.</summary>
    public const string Clock = "clock";

    private const int MostLooked = 2000;

    private static readonly string[] Excluded =
        ["gyro", "rotation", "yaw", "pitch", "roll", "rate", "magnet", "orient", "angle", "heading", "bearing", "course", "altitude",
            "height", "accuracy", "error", "hdop", "rpm", "gear", "throttle", "accelerator", "clutch", "steer", "temperature", "count",
            "satellites", "sats", "engine", "motor", "wind", "target", "limit", "distance", "lap", "delta", "max", "min", "avg", "average",
            "tyre", "tire", "oil", "fuel", "boost", "manifold", "air", "baro", "ambient", "coolant", "water", "number", "index",
                "odometer"];

    private static readonly string[] Times =
        ["t", "time", "timestamp", "zeit", "temps", "tiempo", "tempo", "elapsed", "clock", "utc", "moment", "seconds", "uhrzeit"];

    private static readonly string[] Speeds =
        ["speed", "velocity", "vel", "spd", "v", "geschwindigkeit", "geschw", "vitesse", "velocidad", "velocita", "kmh", "kph", "mph"];

    private static readonly string[] Accelerations = ["acc", "accel", "acceleration", "decel", "deceleration", "beschl", "gforce",
        "slowing"];
    private static readonly string[] Along = ["long", "longitudinal", "lon", "längs", "laengs", "inline", "forward", "fore", "along"];
    private static readonly string[] Across = ["lat", "lateral", "quer", "side", "sideways", "across", "cross", "vert", "vertical", "up"];
    private static readonly string[] Brakes = ["brake", "braking", "brems", "frein", "freno", "brk"];
    private static readonly string[] Wheels = ["wheel", "whl", "rad", "roue", "rueda", "ruota"];
    private static readonly string[] Front = ["front", "vorn", "vorder", "avant", "delantero"];
    private static readonly string[] Rear = ["rear", "hinten", "hinter", "arriere", "trasero"];
    private static readonly string[] Satellite = ["gps", "gnss", "sat", "satellite", "ground"];
    private static readonly string[] Diagnostics = ["obd", "ecu", "can", "diag", "diagnostics", "vehicle", "dash"];

    /// <summary>The units a meaning is read in; none when it needs no unit.</summary>
    public static IReadOnlyList<string> UnitsOf(ColumnMeaning meaning) => meaning switch
    {
        ColumnMeaning.Time => [.. LogUnits.Durations.Keys, Clock],
        ColumnMeaning.Speed or >= ColumnMeaning.WheelFrontLeft and <= ColumnMeaning.WheelRearRight => [.. LogUnits.Speeds.Keys],
        >= ColumnMeaning.Acceleration and <= ColumnMeaning.AccelerationZ => [.. LogUnits.Accelerations.Keys],
        ColumnMeaning.FrontPressure or ColumnMeaning.RearPressure => [.. LogUnits.Pressures.Keys],
        ColumnMeaning.Latitude or ColumnMeaning.Longitude => [.. LogUnits.Degrees.Keys],
        _ => [],
    };

    /// <summary>What every column was taken for, and what has to be given before it can be used.</summary>
    public static (IReadOnlyList<LogColumn> Columns, IReadOnlyList<string> Asked) Guess(
        LogTable table, LogCells cells, IReadOnlyList<ColumnChoice> choices)
    {
        List<string> asked = [];
        Candidate[] all = [.. table.Header.Select((header, i) => Of(table, cells, i, header))];
        HashSet<ColumnMeaning> set = [];
        foreach (ColumnChoice choice in choices)
        {
            int at = Place(table.Header, choice.Name);
            if (at < 0)
            {
                asked.Add($"--column: the log has no column '{choice.Name}'; it has "
                    + string.Join(", ", table.Header.Select(h => $"'{h}'")));
                continue;
            }

            string? unit = choice.Unit ?? UnitOf(table, at, choice.Meaning).Unit ?? ByNumbers(table, cells, at, choice.Meaning).Unit;
            all[at] = new Candidate(choice.Meaning, 10, unit, "set by --column");
            set.Add(choice.Meaning);
        }

        AxesUnit(table, cells, all);
        OneAxis(table, cells, all);
        List<LogColumn> columns = [];
        for (int i = 0; i < all.Length; i++)
        {
            Candidate own = all[i];
            int best = own.Meaning == ColumnMeaning.None ? i : Enumerable.Range(0, all.Length)
                .Where(n => all[n].Meaning == own.Meaning).MaxBy(n => (all[n].Rank, all[n].Unit is null ? 0 : 1, -n));
            if (best != i)
            {
                own = new Candidate(ColumnMeaning.None, 0, "", set.Contains(own.Meaning) ? "another column was set in its place"
                    : $"another column for {ColumnChoice.WordsOf(own.Meaning)} is used, '{table.Header[best]}'");
            }
            else if (own is { Meaning: not ColumnMeaning.None, Unit: null })
            {
                string words = ColumnChoice.WordsOf(own.Meaning);
                IReadOnlyList<string> units = UnitsOf(own.Meaning);
                asked.Add($"the column '{table.Header[i]}' reads like {words}, but names no unit that is known; "
                    + $"write it in the header, as in '{words} [{units[0]}]', or give it: "
                    + $"--column \"{words} [{units[0]}]={table.Header[i]}\", with one of {string.Join(", ", units)}");
                own = new Candidate(ColumnMeaning.None, 0, "", "its unit is not known");
            }

            columns.Add(new LogColumn(i, table.Header[i], own.Meaning, own.Unit ?? "", own.Reason));
        }

        return (columns, asked);
    }

    private static int Place(string[] header, string name) =>
        name.StartsWith('#') && int.TryParse(name.AsSpan(1), NumberStyles.None, CultureInfo.InvariantCulture, out int number)
            && number >= 1 && number <= header.Length ? number - 1
        : Array.FindIndex(header, h => h == name) is >= 0 and int exact ? exact
        : Array.FindIndex(header, h => string.Equals(Bare(h), Bare(name), StringComparison.OrdinalIgnoreCase));

    private static string Bare(string header) => Bracket().Replace(header, "").Trim();

    private static Candidate Of(LogTable table, LogCells cells, int index, string header)
    {
        string[] words = Words(header);
        (ColumnMeaning meaning, int rank, string why) = MeaningOf(header, words, table, cells, index);
        if (meaning == ColumnMeaning.None)
        {
            return new Candidate(meaning, 0, "", why);
        }

        if (UnitsOf(meaning) is [])
        {
            return new Candidate(meaning, rank, "", why);
        }

        (string? unit, string reason) = UnitOf(table, index, meaning);
        if (unit is null)
        {
            (unit, reason) = ByNumbers(table, cells, index, meaning);
        }

        return new Candidate(meaning, rank, unit, unit is null ? why : $"{why}; {reason}");
    }

    private static (ColumnMeaning Meaning, int Rank, string Why) MeaningOf(
        string header, string[] words, LogTable table, LogCells cells, int index)
    {
        bool Has(params string[] stems) => words.Any(w => stems.Any(stem => stem.Length < 4 ? w == stem
            : w.StartsWith(stem, StringComparison.Ordinal)));
        (ColumnMeaning, int, string) By(ColumnMeaning meaning, int rank, string what) => (meaning, rank, $"its name says {what}");
        string unit = Bracket().Match(header) is { Success: true } match ? LogUnits.Plain(match.Value)
            : index < table.Units.Length ? LogUnits.Plain(table.Units[index]) : "";
        if (words.Length == 0 && header.Length == 0)
        {
            return (ColumnMeaning.None, 0, "it has no name");
        }

        if (Has(Excluded) && !words.Contains("temps"))
        {
            return (ColumnMeaning.None, 0, "its name says something that is not used");
        }

        bool braking = Has(Brakes), accelerating = Has(Accelerations) || unit is "g" or "m/s2" or "mg"
            || words.Contains("g") && (Has(Along) || Has(Across));
        if (braking && Has("switch", "light", "lamp", "on", "status", "flag", "state", "active", "schalter", "licht"))
        {
            return By(ColumnMeaning.BrakeSwitch, 2, "brake switch");
        }

        if (!accelerating && (Has("press", "druck", "presion") || LogUnits.Pressures.ContainsKey(unit)))
        {
            return Has(Front) || words.Contains("f") ? By(ColumnMeaning.FrontPressure, 2, "front pressure")
                : Has(Rear) || words.Contains("r") ? By(ColumnMeaning.RearPressure, 2, "rear pressure")
                : braking ? By(ColumnMeaning.Pedal, 1, "a brake pressure without an axle")
                    : (ColumnMeaning.None, 0, "a pressure of unknown place");
        }

        if (Has("pedal", "pedale") && !accelerating || braking && !accelerating && !Has(Speeds) && !Has(Times))
        {
            double?[] numbers = [.. Numbers(table, cells, index)];
            return numbers.Length > 0 && numbers.All(n => n is 0 or 1) ? (ColumnMeaning.BrakeSwitch, 1,
                "a brake column of noughts and ones")
                : By(ColumnMeaning.Pedal, 2, "brake pedal");
        }

        if (accelerating || words is ["x"] or ["y"] or ["z"] or ["ax"] or ["ay"] or ["az"] or ["gx"] or ["gy"] or ["gz"])
        {
            ColumnMeaning axis = Has("x", "ax", "gx") ? ColumnMeaning.AccelerationX : Has("y", "ay", "gy") ? ColumnMeaning.AccelerationY
                : Has("z", "az", "gz") ? ColumnMeaning.AccelerationZ : ColumnMeaning.Acceleration;
            return Has(Along) ? By(ColumnMeaning.Acceleration, 3, "acceleration along the car")
                : axis != ColumnMeaning.Acceleration ? By(axis, 2, "acceleration along an axis")
                : Has(Across) ? (ColumnMeaning.None, 0, "acceleration across the car is not used")
                : Has("total", "abs", "absolute", "norm", "magnitude", "combined", "sum")
                    ? (ColumnMeaning.None, 0, "the size of an acceleration has no direction")
                : By(ColumnMeaning.Acceleration, 1, "acceleration");
        }

        if (Corner(words, Has) is { } corner && (Has(Wheels) || Has(Speeds)))
        {
            return By(corner, 2, "speed at " + ColumnChoice.WordsOf(corner).Replace("wheel ", "the ", StringComparison.Ordinal) + " wheel");
        }

        if (Has("latitude", "breite") || words.Contains("lat"))
        {
            return By(ColumnMeaning.Latitude, 2, "latitude");
        }

        if (Has("longitude", "länge") || Has("lon", "lng") || words is ["long"] or [_, "long"])
        {
            return By(ColumnMeaning.Longitude, 2, "longitude");
        }

        if (Has(Speeds) && !(words.Contains("tempo") && !Has("speed")) || LogUnits.Speeds.ContainsKey(LogUnits.Plain(header)))
        {
            return Has(Satellite) ? By(ColumnMeaning.Speed, 4, "speed by satellite") : Has(Diagnostics)
                ? By(ColumnMeaning.Speed, 2, "speed by the car's diagnostics") : Has(Wheels)
                    ? By(ColumnMeaning.Speed, 1, "speed of a wheel")
                : By(ColumnMeaning.Speed, 3, "speed");
        }

        if (Has(Times))
        {
            return By(ColumnMeaning.Time, Has("elapsed") ? 3 : 2, "time");
        }

        return First(table, index) is { } cell && LogNumbers.Moment(cell) is not null
            ? (ColumnMeaning.Time, 1, "its cells are times of day") : (ColumnMeaning.None, 0, "its name is not known");
    }

    private static ColumnMeaning? Corner(string[] words, Func<string[], bool> has)
    {
        bool left = has(["left", "links", "gauche"]) || words.Contains("l"), right = has(["right", "rechts", "droit"]);
        bool front = has(Front), rear = has(Rear);
        return words.Any(w => w is "fl" or "lf" or "vl") || front && left ? ColumnMeaning.WheelFrontLeft
            : words.Any(w => w is "fr" or "rf" or "vr") || front && right ? ColumnMeaning.WheelFrontRight
            : words.Any(w => w is "rl" or "lr" or "hl") || rear && left ? ColumnMeaning.WheelRearLeft
            : words.Any(w => w is "rr" or "hr") || rear && right ? ColumnMeaning.WheelRearRight
            : front && has(Wheels) ? ColumnMeaning.WheelFrontLeft : rear && has(Wheels) ? ColumnMeaning.WheelRearLeft : null;
    }

    // The unit in brackets, else among the words of the name, else in the line of units.
    private static (string? Unit, string Reason) UnitOf(LogTable table, int index, ColumnMeaning meaning)
    {
        IReadOnlyList<string> units = UnitsOf(meaning);
        if (units.Count == 0)
        {
            return ("", "");
        }

        string header = table.Header[index];
        if (Bracket().Match(header) is { Success: true } bracket && units.Contains(LogUnits.Plain(bracket.Value)))
        {
            return (LogUnits.Plain(bracket.Value), "its unit stands in its name");
        }

        string[] words = Words(Bare(header));
        foreach (int length in (int[])[3, 2, 1])
        {
            for (int from = words.Length - length; from >= 0; from--)
            {
                string[] part = words[from..(from + length)];
                bool last = from + length == words.Length;
                string? unit = new[] { string.Join('/', part), string.Concat(part) }.Where(text => last || text.Length > 1)
                    .Select(LogUnits.Plain).FirstOrDefault(word => word != Clock && units.Contains(word));
                if (unit is not null)
                {
                    return (unit, "its unit stands in its name");
                }
            }
        }

        return index < table.Units.Length && units.Contains(LogUnits.Plain(table.Units[index]))
            ? (LogUnits.Plain(table.Units[index]), "its unit stands in the line of units")
            : meaning is ColumnMeaning.Latitude or ColumnMeaning.Longitude ? ("deg", "in degrees") : (null, "");
    }

    // Only numbers that can be one unit alone: times of day, seconds since 1970, and times with decimals close together.
    private static (string? Unit, string Reason) ByNumbers(LogTable table, LogCells cells, int index, ColumnMeaning meaning)
    {
        if (meaning != ColumnMeaning.Time)
        {
            return (null, "");
        }

        if (First(table, index) is { } cell && LogNumbers.Moment(cell) is not null)
        {
            return (Clock, "its cells are times of day");
        }

        double[] numbers = [.. Numbers(table, cells, index).OfType<double>()];
        if (numbers.Length < 3)
        {
            return (null, "");
        }

        double middle = numbers.Median(), step = numbers.Zip(numbers.Skip(1), (a, b) => b - a).Where(d => d > 0).DefaultIfEmpty(0).Median();
        return middle is > 8e8 and < 4e9 ? ("s", "its numbers are seconds since 1970")
            : middle is > 8e11 and < 4e12 ? ("ms", "its numbers are milliseconds since 1970")
            : step is >= 0.002 and < 0.5 ? ("s", "its steps can only be seconds") : (null, "");
    }

    // Gravity tells the unit of three axes that hold it.
    private static void AxesUnit(LogTable table, LogCells cells, Candidate[] all)
    {
        int[] axes = Axes(all);
        if (axes.Any(i => i < 0) || axes.All(i => all[i].Unit is not null))
        {
            return;
        }

        double[] sizes = [.. table.Rows.Take(MostLooked).Select(row => axes.Select(i => i < row.Cells.Length ? cells.Plain(row.Cells[i])
            : null))
            .Where(a => a.All(n => n is not null)).Select(a => Math.Sqrt(a.Sum(n => n!.Value * n.Value)))];
        double size = sizes.Length > 10 ? sizes.Median() : 0;
        string? unit = size is > 9.3 and < 10.5 ? "m/s2" : size is > 0.95 and < 1.07 ? "g" : null;
        foreach (int i in axes.Where(i => unit is not null && all[i].Unit is null))
        {
            all[i] = all[i] with
            {
                Unit = unit,
                Reason = all[i].Reason
                    + Invariant.Text($"; the three axes add up to gravity, {size:0.##}"),
            };
        }
    }

    // An instrument that logs one or two axes: the one that moves most lies along the car.
    private static void OneAxis(LogTable table, LogCells cells, Candidate[] all)
    {
        int[] axes = [.. Axes(all).Where(i => i >= 0)];
        if (axes.Length is 0 or 3 || all.Any(c => c.Meaning == ColumnMeaning.Acceleration))
        {
            return;
        }

        int most = axes.MaxBy(i => Numbers(table, cells, i).OfType<double>().DefaultIfEmpty(0).StandardDeviation());
        all[most] = all[most] with { Meaning = ColumnMeaning.Acceleration, Reason = all[most].Reason + "; its readings move most" };
    }

    private static int[] Axes(Candidate[] all) =>
    [
        .. new[] { ColumnMeaning.AccelerationX, ColumnMeaning.AccelerationY, ColumnMeaning.AccelerationZ }
            .Select(axis => Array.FindIndex(all, c => c.Meaning == axis)),
    ];

    private static string? First(LogTable table, int index) => table.Rows.Take(20)
        .Select(row => index < row.Cells.Length ? row.Cells[index].Trim() : "").FirstOrDefault(cell => !LogNumbers.IsMissing(cell));

    private static IEnumerable<double?> Numbers(LogTable table, LogCells cells, int index) => table.Rows.Take(MostLooked)
        .Where(row => index < row.Cells.Length && !LogNumbers.IsMissing(row.Cells[index])).Select(row => cells.Plain(row.Cells[index]));

    private static string[] Words(string header) =>
        [.. Joints().Split(header).Where(word => word.Length > 0).Select(word => word.ToLowerInvariant())];

    private sealed record Candidate(ColumnMeaning Meaning, int Rank, string? Unit, string Reason);

    [GeneratedRegex(@"[\[({]([^\])}]*)[\])}]\s*$")]
    private static partial Regex Bracket();

    [GeneratedRegex(@"[^\p{L}\p{Nd}%²]+|(?<=\p{Ll})(?=\p{Lu})|(?<=\p{Lu})(?=\p{Lu}\p{Ll})")]
    private static partial Regex Joints();
}
