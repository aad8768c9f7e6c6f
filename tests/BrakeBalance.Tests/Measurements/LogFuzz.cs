using System.Globalization;
using System.Text;
using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Measurements;

/// <summary>Logs that are broken by chance, and logs whose speed is written in any unit: what must hold for each.</summary>
internal static class LogFuzz
{
    private static readonly string[] Bad =
        ["", "-", "NaN", "Infinity", "1e308", "-1e308", "1e999", "４５", "1,5", "1.5", "1,200", "0", "-5", "99999999999999999999", "=1+1",
            "x",
            "\u001b[31m", "\u0000", "\"", "\ud800", "12:61:99", "25:00:00", "2026-13-40T00:00:00", "-0.1", "1e-320", "[km/h]", "s",
                "true", "|", ";"];

    private static readonly string[] Headers =
        ["", "time", "time [min]", "Time (ms)", "speed", "speed [furlong]", "GPS speed [kn]", "acc X [g]", "acc Y", "acceleration",
            "Latitude",
            "brake", "Brake pressure front [bar]", "wheel FL", "note", "clock", "v", "x", "y", "z", "g", "km/h", "time [s]"];

    private static readonly (string Spelling, double PerMetreASecond)[] Units =
        [("km/h", 3.6), ("kmh", 3.6), ("KPH", 3.6), ("km_h", 3.6), ("mph", 1 / 0.44704), ("Mi/h", 1 / 0.44704), ("m/s", 1), ("m_s", 1),
            ("mps", 1), ("kn", 3600 / 1852.0), ("knots", 3600 / 1852.0), ("kt", 3600 / 1852.0), ("ft/s", 1 / 0.3048), ("fps", 1 / 0.3048)];

    private static readonly string[] Unknown = ["", "furlong", "units", "rad", "%", "V", "raw", "m", "s", "kph*10", "c"];
    private static readonly string[] Names =
        ["speed", "Speed", "GPS Speed", "velocity", "Geschwindigkeit", "vitesse", "Vehicle speed", "OBD speed", "ground speed", "v", "Spd"];

    /// <summary>What is wrong with the reader's answer to one broken log; null when nothing is.</summary>
    public static string? Broken(int seed, IReadOnlyList<string> sound)
    {
        var random = new Random(seed);
        T One<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
        string text = One(sound);
        for (int n = random.Next(1, 6); n > 0; n--)
        {
            List<string> lines = [.. text.Split('\n')];
            int at = random.Next(lines.Count);
            char sign = ";,\t|"[random.Next(4)];
            string[] cells = lines[at].Split(sign);
            switch (random.Next(13))
            {
                case 0 or 1 or 2:
                    cells[random.Next(cells.Length)] = One(Bad);
                    lines[at] = string.Join(sign, cells);
                    break;
                case 3 or 4:
                    int header = lines.FindIndex(l => l.Contains("ime", StringComparison.Ordinal)
                        || l.Contains("Zeit", StringComparison.Ordinal));
                    cells = lines[Math.Max(0, header)].Split(sign);
                    cells[random.Next(cells.Length)] = One(Headers);
                    lines[Math.Max(0, header)] = string.Join(sign, cells);
                    break;
                case 5: lines.RemoveAt(at); break;
                case 6: lines.Insert(at, lines[random.Next(lines.Count)]); break;
                case 7: lines = [.. lines.Select(l => l.Replace('.', ','))]; break;
                case 8: lines = [.. lines.Select(l => l.Replace(sign, One([';', ',', '\t', '|', ' '])))]; break;
                case 9: lines = lines[..at]; break;
                case 10: lines.Reverse(); break;
                case 11: lines[at] = lines[at].Insert(random.Next(lines[at].Length + 1), One(Bad)); break;
                default: lines = [.. lines.Select((l, i) => i % 7 == 3 ? l + sign + One(Bad) : l)]; break;
            }

            text = string.Join('\n', lines);
        }

        byte[] bytes = One<Encoding>([Encoding.UTF8, Encoding.Unicode, Encoding.BigEndianUnicode, Encoding.Latin1]).GetBytes(text);
        if (random.Next(5) == 0 && bytes.Length > 0)
        {
            bytes[random.Next(bytes.Length)] = (byte)random.Next(256);
        }

        try
        {
            text = LogText.Decode(bytes);
            LogReading<MotionSample> reading = random.Next(4) == 0 ? LogReader.ReadLap(new StringReader(text))
                : LogReader.ReadTimeSeries(new StringReader(text),
                    random.Next(5) == 0 ? [new ColumnChoice(One(Enum.GetValues<ColumnMeaning>()), null,
                        One(["#1", "#2", "speed", "nothing"]))] : null);
            if (reading.Rows.Count == 0 && reading.Problems.Count == 0)
            {
                return "nothing read and nothing said";
            }

            if (reading.Rows.Zip(reading.Rows.Skip(1)).Any(pair => pair.Second.Time <= pair.First.Time))
            {
                return "the times do not rise";
            }

            if (reading.Rows.Count >= 10)
            {
                foreach (MeasuredStop stop in StopFinder.Find(reading.Rows).Stops)
                {
                    double[] numbers = [stop.Distance.Meters, stop.DistanceWithin.Meters, stop.InitialSpeed.MetersPerSecond,
                        stop.Start.Seconds,
                        stop.Deceleration?.MetersPerSecondSquared ?? 0, stop.Peak.MetersPerSecondSquared, stop.RiseTime.Seconds,
                        stop.DecelerationWithin?.MetersPerSecondSquared ?? 0, stop.InitialSpeedWithin.MetersPerSecond, stop.End.Seconds];
                    if (!numbers.All(double.IsFinite))
                    {
                        return "a number that is not finite";
                    }
                }
            }

            return null;
        }
        catch (Exception exception)
        {
            return exception.ToString();
        }
    }

    /// <summary>A log whose speed is written in some unit, named in some way or not at all: the speed must be right or asked for.</summary>
    public static string? WrongUnit(int seed)
    {
        var random = new Random(seed);
        T One<T>(IReadOnlyList<T> of) => of[random.Next(of.Count)];
        bool known = random.Next(3) > 0;
        (string spelling, double factor) = One(Units);
        string name = One(Names), unit = known ? spelling : One(Unknown);
        bool row = random.Next(4) == 0, behind = !row && random.Next(3) == 0 && unit.Length > 1 && !unit.Contains('*');
        char sign = One([';', '\t', '|', ',']), mark = sign != ',' && random.Next(2) == 0 ? ',' : '.';
        string header = row || unit.Length == 0 ? name : behind ? $"{name}_{unit}"
            : One([$"{name} [{unit}]", $"{name} ({unit})", $"{name}({unit})"]);
        var text = new StringBuilder(random.Next(2) == 0 ? "Device" + sign + "none\nDriver" + sign + "nobody\n\n" : "");
        text.Append(CultureInfo.InvariantCulture, $"time{(row ? "" : " [s]")}{sign}{header}\n");
        text.Append(row ? $"s{sign}{(unit.Length == 0 ? "-" : unit)}\n" : "");
        for (int i = 0; i < 60; i++)
        {
            string cells = FormattableString.Invariant($"{i * 0.1:0.0}") + '\u0001'
                + (Math.Clamp(25 - 0.6 * Math.Max(0, i - 15), 0, 25) * factor).ToString("0.000", CultureInfo.InvariantCulture);
            text.Append(cells.Replace('.', mark).Replace('\u0001', sign)).Append('\n');
        }

        LogReading<MotionSample> reading = LogReader.ReadTimeSeries(new StringReader(text.ToString()));
        double? first = reading.Rows.Count == 0 ? null : reading.Rows[0].Speed?.MetersPerSecond;
        string told = string.Join(" | ", reading.Problems.Select(p => p.Reason));
        return known
            ? first is { } v && Math.Abs(v - 25) < 0.01 && reading.Rows.Count == 60 ? null
                : $"'{header}' in {spelling} gave {first} m/s: {told}"
            : first is null && told.Contains("--column", StringComparison.Ordinal) | told.Contains("no column", StringComparison.Ordinal)
                ? null : $"'{header}' without a unit gave {first} m/s: {told}";
    }
}
