namespace BrakeBalance.Measurements;

/// <summary>Reads the kinds of log: gauge pairs, test stops, time series and laps.</summary>
/// <remarks>
/// A log is a table with one header line that names each column and its unit in brackets, such as <c>front pressure [bar]</c>.
/// Cells are separated by semicolon, tab or comma; decimals are written with a point or a comma, one way throughout; an empty cell or
/// a dash is a missing value; a line that begins with # is a remark. A line that cannot be read is left out and reported with its number
/// and the reason, never silently. The unit may also stand behind the name, as loggers write it: <c>time_s</c>, <c>speed_km_h</c>.
/// </remarks>
public static class LogReader
{
    internal const string PressureRange = "a line pressure lies from 0 to 300 bar";

    /// <summary>Reads front and rear line pressures taken together.</summary>
    /// <param name="reader">The log's text.</param>
    /// <returns>The pairs, and the lines left out.</returns>
    public static LogReading<GaugePair> ReadGaugePairs(TextReader reader)
    {
        var cells = new LogCells(LogTable.Read(reader));
        var front = cells.Number(LogUnits.Pressures, "front pressure", "front line pressure", "front");
        var rear = cells.Number(LogUnits.Pressures, "rear pressure", "rear line pressure", "rear");
        var turns = cells.Number(LogUnits.Turns, "turns", "adjuster", "adjuster turns", "knob", "knob turns");
        var time = cells.Number(LogUnits.Durations, "time");
        int phase = cells.Find("phase", "branch");
        cells.ReportUnusedColumns("note", "notes", "pedal force");
        if (front is null || rear is null)
        {
            cells.Missing(front is null ? "front pressure" : "rear pressure", (front is null ? "front" : "rear") + " pressure [bar]");
            return cells.Nothing<GaugePair>();
        }

        return cells.ReadRows(line =>
        {
            Pressure? frontPressure = Bounded(cells, front);
            Pressure? rearPressure = Bounded(cells, rear);
            double? adjuster = cells.Value(turns, -50, 50, t => t, "turns lie from -50 to 50");
            PressurePhase? step = Phase(cells, cells.Word(phase));
            if (frontPressure is null || rearPressure is null)
            {
                cells.Fault(frontPressure is null ? "the front pressure is missing" : "the rear pressure is missing");
                return null;
            }

            return new GaugePair
            {
                Line = line,
                Front = frontPressure.Value,
                Rear = rearPressure.Value,
                Turns = adjuster,
                Phase = step,
                Time = cells.Value(time, 0, 1e7, t => t.Seconds, "a time is not negative"),
            };
        });
    }

    /// <summary>Reads test stops, one a line.</summary>
    /// <param name="reader">The log's text.</param>
    /// <returns>The stops, and the lines left out.</returns>
    public static LogReading<TestStop> ReadTestStops(TextReader reader)
    {
        var cells = new LogCells(LogTable.Read(reader));
        StopColumns of = StopColumns.In(cells);
        cells.ReportUnusedColumns("note", "notes", "stop", "target pressure", "abort if", "done");
        if (of.Deceleration is null && (of.Locked < 0 || cells.IsUnused("decel")))
        {
            cells.Missing("deceleration' or 'locked first", "deceleration [g]' or 'locked first");
            return cells.Nothing<TestStop>();
        }

        return cells.ReadRows(line =>
        {
            var stop = new TestStop
            {
                Line = line,
                InitialSpeed = cells.Value(of.Speed, 0, 110, v => v.MetersPerSecond, "a test speed lies from 0 to 400 km/h"),
                PedalForce = cells.Value(of.PedalForce, 0, 3000, f => f.Newtons, "a pedal force lies from 0 to 3000 N"),
                FrontPressure = Bounded(cells, of.FrontPressure),
                RearPressure = Bounded(cells, of.RearPressure),
                LockPressure = Bounded(cells, of.LockPressure),
                Deceleration = cells.Value(of.Deceleration, 0.1, 30, a =>
                    a.MetersPerSecondSquared, "a deceleration is positive (is the sign wrong?), from 0.1 to 30 m/s² (0.01 to 3 g)"),
                InitialTemperature = cells.Value(of.Temperature, -40, 1200, t =>
                    t.DegreesCelsius, "a disc or drum temperature lies from -40 to 1200 °C"),
                Turns = cells.Value(of.Turns, -50, 50, t => t, "turns lie from -50 to 50"),
                Locked = Locked(cells, cells.Word(of.Locked)),
                Surface = Name(cells.Word(of.Surface)),
                LoadCase = Name(cells.Word(of.LoadCase)),
            };
            if (stop is { Deceleration: null, Locked: null, FrontPressure: null, RearPressure: null, LockPressure: null, PedalForce: null })
            {
                cells.PassOver("neither a deceleration nor anything else measured is given: the stop was not made");
            }
            else if (stop is { Deceleration: null, Locked: null })
            {
                cells.Fault("neither a deceleration nor which axle locked first is given");
            }
            else if (stop is { FrontPressure: null, RearPressure: null, LockPressure: null, PedalForce: null })
            {
                cells.Fault("no line pressure and no pedal force is given, so the stop says nothing about the brakes");
            }
            else if (stop.Locked is null or FirstLock.None && stop.LockPressure is not null)
            {
                cells.Fault("a lock pressure is given, but not which axle locked");
            }

            return stop;
        });
    }

    /// <summary>Reads a time series as a phone or a logger exports it.</summary>
    /// <param name="reader">The log's text.</param>
    /// <param name="columns">What columns mean, where the guess is not to be trusted; null for the guess alone.</param>
    /// <returns>The samples in order of time, what each column was taken for, and the lines left out.</returns>
    /// <remarks>
    /// Lines may stand before the header and a line of units below it. A time with a speed (also as positions or of the wheels) or an
    /// acceleration is needed; what each column means is guessed by its name, unit and numbers (<see cref="LogColumn"/>).
    /// </remarks>
    public static LogReading<MotionSample> ReadTimeSeries(TextReader reader, IReadOnlyList<ColumnChoice>? columns = null) =>
        MotionReader.Read(reader, columns ?? [], onlySpeed: false);

    /// <summary>Reads the speed over time of a lap, from the same logs as <see cref="ReadTimeSeries"/>.</summary>
    /// <param name="reader">
    /// The log's text, with a time and a speed, such as <c>time [s];speed [km/h]</c> or <c>time_s,speed_km_h</c>.
    /// </param>
    /// <param name="columns">What columns mean, where the guess is not to be trusted; null for the guess alone.</param>
    /// <returns>The samples in order of time, each with a speed, and the lines left out.</returns>
    public static LogReading<MotionSample> ReadLap(TextReader reader, IReadOnlyList<ColumnChoice>? columns = null) =>
        MotionReader.Read(reader, columns ?? [], onlySpeed: true);

    /// <summary>Reads a file of the speed over time of a lap.</summary>
    /// <param name="path">Path of the CSV file.</param>
    /// <returns>The rows, and the lines left out.</returns>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static LogReading<MotionSample> LoadLap(string path)
    {
        using TextReader reader = LogText.Open(path);
        return ReadLap(reader);
    }

    private static Pressure? Bounded(LogCells cells, LogCells.Column<Pressure>? column) =>
        cells.Value(column, 0, 3e7, p => p.Pascals, PressureRange);

    private static string? Name(string word) => word.Length == 0 ? null : word;

    private static PressurePhase? Phase(LogCells cells, string word) => Known(cells, word, "phase", "apply, release or hold",
        ("apply up rising", PressurePhase.Apply), ("release down falling", PressurePhase.Release), ("hold held", PressurePhase.Hold));

    private static FirstLock? Locked(LogCells cells, string word) => Known(cells, word, "locked first", "none, front, rear or together",
        ("none no neither", FirstLock.None), ("front f", FirstLock.Front), ("rear r", FirstLock.Rear),
        ("together both", FirstLock.Together));

    private static T? Known<T>(LogCells cells, string word, string column, string accepted, params (string Words, T Meaning)[] known)
        where T : struct
    {
        (string? words, T meaning) = Array.Find(known, one => one.Words.Split(' ').Contains(word.ToLowerInvariant()));
        if (words is null && word.Length > 0)
        {
            cells.Fault($"{column}: '{word}' is not known; write {accepted}");
        }

        return words is null ? null : meaning;
    }
}
