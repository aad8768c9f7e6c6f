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
    private const string PressureRange = "a line pressure lies from 0 to 300 bar";

    /// <summary>Reads front and rear line pressures taken together.</summary>
    /// <param name="reader">The log's text.</param>
    /// <returns>The pairs, and the lines left out.</returns>
    public static LogReading<GaugePair> ReadGaugePairs(TextReader reader)
    {
        var cells = new LogCells(LogTable.Read(reader));
        var front = cells.Number(LogUnits.Pressures, "front pressure", "front line pressure", "front");
        var rear = cells.Number(LogUnits.Pressures, "rear pressure", "rear line pressure", "rear");
        var turns = cells.Number(LogUnits.Turns, "turns", "adjuster", "adjuster turns", "knob", "knob turns");
        int phase = cells.Find("phase");
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

            return new GaugePair { Line = line, Front = frontPressure.Value, Rear = rearPressure.Value, Turns = adjuster, Phase = step };
        });
    }

    /// <summary>Reads test stops, one a line.</summary>
    /// <param name="reader">The log's text.</param>
    /// <returns>The stops, and the lines left out.</returns>
    public static LogReading<TestStop> ReadTestStops(TextReader reader)
    {
        var cells = new LogCells(LogTable.Read(reader));
        var speed = cells.Number(LogUnits.Speeds, "speed", "initial speed");
        var pedal = cells.Number(LogUnits.Forces, "pedal force", "pedal");
        var front = cells.Number(LogUnits.Pressures, "front pressure", "front line pressure", "front");
        var rear = cells.Number(LogUnits.Pressures, "rear pressure", "rear line pressure", "rear");
        var atLock = cells.Number(LogUnits.Pressures, "lock pressure", "front pressure at lock");
        var deceleration = cells.Number(LogUnits.Accelerations, "deceleration", "mfdd", "mean fully developed deceleration");
        var temperature = cells.Number(LogUnits.Temperatures, "temperature", "initial temperature");
        var turns = cells.Number(LogUnits.Turns, "turns", "adjuster", "adjuster turns", "knob", "knob turns");
        int locked = cells.Find("locked first", "locked", "first lock");
        int surface = cells.Find("surface");
        int load = cells.Find("load case", "load");
        cells.ReportUnusedColumns("note", "notes", "stop", "target pressure", "abort if", "done");
        if (deceleration is null && locked < 0)
        {
            cells.Missing("deceleration' or 'locked first", "deceleration [g]' or 'locked first");
            return cells.Nothing<TestStop>();
        }

        return cells.ReadRows(line =>
        {
            var stop = new TestStop
            {
                Line = line,
                InitialSpeed = cells.Value(speed, 0, 110, v => v.MetersPerSecond, "a test speed lies from 0 to 400 km/h"),
                PedalForce = cells.Value(pedal, 0, 3000, f => f.Newtons, "a pedal force lies from 0 to 3000 N"),
                FrontPressure = Bounded(cells, front),
                RearPressure = Bounded(cells, rear),
                LockPressure = Bounded(cells, atLock),
                Deceleration = cells.Value(deceleration, 0.1, 30, a =>
                    a.MetersPerSecondSquared, "a deceleration is positive and lies from 0.1 to 30 m/s²"),
                InitialTemperature = cells.Value(temperature, -40, 1200, t =>
                    t.DegreesCelsius, "a disc or drum temperature lies from -40 to 1200 °C"),
                Turns = cells.Value(turns, -50, 50, t => t, "turns lie from -50 to 50"),
                Locked = Locked(cells, cells.Word(locked)),
                Surface = Name(cells.Word(surface)),
                LoadCase = Name(cells.Word(load)),
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

    /// <summary>Reads a time series of speed or acceleration.</summary>
    /// <param name="reader">The log's text.</param>
    /// <returns>The samples in order of time, and the lines left out.</returns>
    public static LogReading<MotionSample> ReadTimeSeries(TextReader reader) => ReadMotion(reader, onlySpeed: false);

    /// <summary>Reads the speed over time of a lap.</summary>
    /// <param name="reader">
    /// The log's text, with a time and a speed, such as <c>time [s];speed [km/h]</c> or <c>time_s,speed_km_h</c>.
    /// </param>
    /// <returns>The samples in order of time, each with a speed, and the lines left out.</returns>
    public static LogReading<MotionSample> ReadLap(TextReader reader) => ReadMotion(reader, onlySpeed: true);

    private static LogReading<MotionSample> ReadMotion(TextReader reader, bool onlySpeed)
    {
        var cells = new LogCells(LogTable.Read(reader));
        var time = cells.Number(LogUnits.Durations, "time", "t");
        var speed = cells.Number(LogUnits.Speeds, "speed");
        var acceleration = cells.Number(LogUnits.Accelerations, "acceleration", "longitudinal acceleration");
        var x = cells.Number(LogUnits.Accelerations, "acceleration x", "x");
        var y = cells.Number(LogUnits.Accelerations, "acceleration y", "y");
        var z = cells.Number(LogUnits.Accelerations, "acceleration z", "z");
        var front = cells.Number(LogUnits.Pressures, "front pressure", "front");
        var rear = cells.Number(LogUnits.Pressures, "rear pressure", "rear");
        cells.ReportUnusedColumns("note", "notes");
        if (time is null || (speed is null && (onlySpeed || (acceleration is null && (x is null || y is null || z is null)))))
        {
            (string what, string example) = time is null ? ("time", "time [s]")
                : onlySpeed ? ("speed", "speed [km/h]")
                : ("speed' or 'acceleration", "speed [km/h]' or 'acceleration [m/s2]");
            cells.Missing(what, example);
            return cells.Nothing<MotionSample>();
        }

        double last = double.NegativeInfinity;
        return cells.ReadRows(line =>
        {
            Duration? at = cells.Value(time, 0, 1e7, t => t.Seconds, "time counts up from 0");
            Speed? v = cells.Value(speed, 0, 150, s => s.MetersPerSecond, "a speed lies from 0 to 540 km/h");
            Acceleration? a = Axis(cells, acceleration);
            (Acceleration? ax, Acceleration? ay, Acceleration? az) = (Axis(cells, x), Axis(cells, y), Axis(cells, z));
            Pressure? frontPressure = Bounded(cells, front);
            Pressure? rearPressure = Bounded(cells, rear);
            if (at is null)
            {
                cells.Fault("the time is missing");
                return null;
            }

            if (onlySpeed && v is null)
            {
                cells.Fault("the speed is missing");
                return null;
            }

            if (v is null && a is null && (ax is null || ay is null || az is null))
            {
                cells.Fault("neither a speed nor an acceleration is given");
                return null;
            }

            if (at.Value.Seconds <= last)
            {
                cells.Fault(FormattableString.Invariant($"the time {at.Value.Seconds:0.####} s does not come after {last:0.####} s"));
                return null;
            }

            last = at.Value.Seconds;
            return new MotionSample
            {
                Line = line,
                Time = at.Value,
                Speed = v,
                Acceleration = a,
                Axes = ax is { } vx && ay is { } vy && az is { } vz ? (vx, vy, vz) : null,
                FrontPressure = frontPressure,
                RearPressure = rearPressure,
            };
        });
    }

    /// <summary>Reads a file of front and rear line pressures taken together.</summary>
    /// <param name="path">Path of the CSV file.</param>
    /// <returns>The rows, and the lines left out.</returns>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static LogReading<GaugePair> LoadGaugePairs(string path)
    {
        using var reader = new StreamReader(path);
        return ReadGaugePairs(reader);
    }

    /// <summary>Reads a file of test stops.</summary>
    /// <param name="path">Path of the CSV file.</param>
    /// <returns>The rows, and the lines left out.</returns>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static LogReading<TestStop> LoadTestStops(string path)
    {
        using var reader = new StreamReader(path);
        return ReadTestStops(reader);
    }

    /// <summary>Reads a file of the speed over time of a lap.</summary>
    /// <param name="path">Path of the CSV file.</param>
    /// <returns>The rows, and the lines left out.</returns>
    /// <exception cref="IOException">The file cannot be opened.</exception>
    public static LogReading<MotionSample> LoadLap(string path)
    {
        using var reader = new StreamReader(path);
        return ReadLap(reader);
    }

    private static Pressure? Bounded(LogCells cells, LogCells.Column<Pressure>? column) =>
        cells.Value(column, 0, 3e7, p => p.Pascals, PressureRange);

    private static Acceleration? Axis(LogCells cells, LogCells.Column<Acceleration>? column) =>
        cells.Value(column, -80, 80, a => a.MetersPerSecondSquared, "an acceleration lies from -8 to 8 g");

    private static string? Name(string word) => word.Length == 0 ? null : word;

    private static PressurePhase? Phase(LogCells cells, string word)
    {
        switch (word.ToLowerInvariant())
        {
            case "": return null;
            case "apply" or "up" or "rising": return PressurePhase.Apply;
            case "release" or "down" or "falling": return PressurePhase.Release;
            case "hold" or "held": return PressurePhase.Hold;
            default:
                cells.Fault($"phase: '{word}' is not known; write apply, release or hold");
                return null;
        }
    }

    private static FirstLock? Locked(LogCells cells, string word)
    {
        switch (word.ToLowerInvariant())
        {
            case "": return null;
            case "none" or "no" or "neither": return FirstLock.None;
            case "front" or "f": return FirstLock.Front;
            case "rear" or "r": return FirstLock.Rear;
            case "together" or "both": return FirstLock.Together;
            default:
                cells.Fault($"locked first: '{word}' is not known; write none, front, rear or together");
                return null;
        }
    }
}
