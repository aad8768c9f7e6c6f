using System.CommandLine;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Notebooks.Commands.Measuring;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>measure series LOG</c>: the stops in a phone's or logger's readings, and their way into the log of test stops.</summary>
internal static class SeriesCommand
{
    public static Command Create(Terminal terminal)
    {
        Argument<string> log = MeasureCommand.Log("What a phone or logger exported: a time with a speed (also of wheels, or as positions) "
            + "or an acceleration, 4 to 200 times a second, in any delimiter, decimal sign and wording; or the vehicle file that "
            + "names one");
        var dive = Options.Of<double?>("--dive", "Nose-down pitch of the body at 1 g, in degrees; only an accelerometer needs it",
            "DEGREES");
        var into = Options.Of<string?>("--into",
            "Adds the stops that can be trusted to this log of test stops; it is begun when it is not there", "STOPS");
        var load = Options.Of<string?>("--load-case", "With --into: load case, as the vehicle file names it", "NAME");
        var surface = Options.Of<string?>("--surface", "With --into: surface, the same word for the same surface", "NAME");
        var locked = Options.Of<string?>("--locked",
            "With --into: what locked first (none, front, rear, together) where no wheel speeds tell, one for all stops or one for "
                + "each, separated by commas", "WORDS");
        var pressure = Options.Of<string?>("--front-pressure",
            "With --into: front line pressure where the log has none, one for all stops or one for each, such as \"27 bar, 31 bar\"",
                "PRESSURES");
        var turns = Options.Of<double?>("--turns", "With --into: turns of the valve's adjuster, in from fully out", "NUMBER");
        (Option<bool> json, Option<string> units, Option<bool> lost) = (Options.Json(), VehicleOptions.Units(),
            LogInput.AllowLost());
        Option<string[]> column = LogInput.Columns();
        var command = new Command("series",
            "Finds the stops in a logger's or phone's readings: speed, distance, mean fully developed deceleration, with uncertainty.")
        {
            log, column, dive, into, load, surface, locked, pressure, turns, json, units, lost,
        };
        command.SetAction(parsed =>
        {
            (string path, Vehicle? car) = MeasureCommand.LogOf(parsed.GetRequiredValue(log), "series", logs => logs.Series);
            List<string> problems = [];
            IReadOnlyList<ColumnChoice> choices = LogInput.ChoicesOf(parsed.GetRequiredValue(column), problems);
            double? degrees = parsed.GetValue(dive);
            if (degrees is not (null or (>= 0 and <= 10)))
            {
                problems.Add("--dive: the pitch lies from 0 to 10 degrees at 1 g; one to two are usual.");
            }

            var told = new Told(parsed.GetValue(load), parsed.GetValue(surface), parsed.GetValue(locked), parsed.GetValue(pressure),
                parsed.GetValue(turns));
            if (parsed.GetValue(into) is null
                && told is not { LoadCase: null, Surface: null, Locked: null, FrontPressure: null, Turns: null })
            {
                problems.Add("--load-case, --surface, --locked, --front-pressure and --turns say what goes into a log of test stops; "
                    + "name it: --into STOPS.");
            }

            BadInputException.ThrowIfAny(problems);
            LogReading<MotionSample> reading = LogInput.Read(path, text => LogReader.ReadTimeSeries(text, choices), parsed.GetValue(lost));
            if (StopFinder.WhyTooFew(reading.Rows) is { } few)
            {
                throw new BadInputException($"{path}: {few}");
            }

            StopSearch search = StopFinder.Find(reading.Rows, degrees is { } d ? Angle.FromDegrees(d) : null);
            UnitSystem system = MeasureCommand.System(parsed, units);
            if (parsed.GetValue(into) is { } target)
            {
                Put(terminal, path, car, search, target, system == UnitSystem.Us, told);
            }

            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Series(search, reading), console =>
            {
                TextTable.Write(console, MeasurementTables.Columns(reading.Columns));
                TextTable.Write(console, MeasurementTables.LeftOut(reading.Problems));
                TextTable.Write(console, MeasurementTables.Stops(search, system));
                if (MeasurementTables.Wheels(search, system) is { } wheels)
                {
                    TextTable.Write(console, wheels);
                }
            });
        });
        return command;
    }

    private sealed record Told(string? LoadCase, string? Surface, string? Locked, string? FrontPressure, double? Turns);

    // What a logger cannot know has to be said; nothing is guessed, and no row that is there is touched.
    private static void Put(Terminal terminal, string path, Vehicle? car, StopSearch search, string target, bool us, Told told)
    {
        List<string> problems = [];
        MeasuredStop[] stops = [.. search.Stops.Where(s => s.IsTrusted)];
        if (stops.Length == 0)
        {
            throw new BadInputException($"--into: {path} holds no stop that can be trusted. "
                + string.Join(' ', search.Stops.SelectMany(s => s.Cautions).Distinct()));
        }

        if (told.LoadCase is null)
        {
            problems.Add("--into: the load case is not known to a logger; give --load-case NAME"
                + (car is null ? "." : $", one of {car.LoadCaseNames}."));
        }
        else if (car?.LoadCases.All(l => l.Name != told.LoadCase) == true)
        {
            problems.Add($"--load-case: the vehicle file has {car.LoadCaseNames}.");
        }

        if (told.Surface is null)
        {
            problems.Add("--into: the surface is not known to a logger; give --surface NAME, such as dry.");
        }

        FirstLock?[] locks = Each<FirstLock>(told.Locked, stops.Length, "--locked", problems, word =>
            Enum.TryParse(word, ignoreCase: true, out FirstLock first) && word.All(char.IsLetter) ? first : (FirstLock?)null,
            "none, front, rear or together");
        Pressure?[] pressures = Each<Pressure>(told.FrontPressure, stops.Length, "--front-pressure", problems,
            text => QuantityOption.Read<Pressure>(text).Value is { } p && p.Bars is >= 0 and <= 300 ? p : null,
                "pressures such as \"27 bar\"");
        if (told.Turns is not (null or (>= -50 and <= 50)))
        {
            problems.Add("--turns: turns lie from -50 to 50.");
        }

        if (told.Locked is null && stops.Any(s => s.Locked is null))
        {
            problems.Add("--into: which axle locked first is not logged; give --locked none, front, rear or together.");
        }

        if (told.FrontPressure is null && stops.Any(s => (s.FrontPressure ?? s.RearPressure) is null))
        {
            problems.Add("--into: the log has no line pressure, without which a stop says nothing of the brakes; give --front-pressure.");
        }

        string full = Path.GetFullPath(target), name = Path.GetFileName(path);
        if (!File.Exists(full))
        {
            new OutputFiles(problems, force: false).File(target, "--into");
        }

        BadInputException.ThrowIfAny(problems);
        (string? text, IReadOnlyList<string> wrong) = StopLog.Add(Existing(full, us),
            [.. stops.Select((stop, i) => (Row(stop, i), Note(stop)))]);
        if (text is null)
        {
            throw new BadInputException([.. wrong.Select(problem => $"--into {target}: {problem}.")]);
        }

        AtomicFile.Write(full, text);
        terminal.Error.WriteLine($"{target}: {stops.Length} stop{(stops.Length == 1 ? "" : "s")} added.");
        foreach (MeasuredStop left in search.Stops.Where(s => !s.IsTrusted))
        {
            terminal.Error.WriteLine(Invariant.Text(
                $"The stop at {left.Start.Seconds:0.00} s is not added: {string.Join(' ', left.Cautions)}"));
        }

        if (stops.Where((s, i) => s.Locked is { } seen && locks[i] is { } said && seen != said).Any())
        {
            terminal.Error.WriteLine("--locked: not used where the wheel speeds tell otherwise.");
        }

        if (told.FrontPressure is not null && stops.Any(s => s.FrontPressure is not null))
        {
            terminal.Error.WriteLine("--front-pressure: not used; the log has its own.");
        }

        string Note(MeasuredStop stop) => Invariant.Text($"{name} at {stop.Start.Seconds:0.00} s");

        TestStop Row(MeasuredStop stop, int i)
        {
            FirstLock first = stop.Locked ?? locks[i]!.Value;
            Pressure? front = stop.FrontPressure ?? pressures[i];
            return new TestStop
            {
                InitialSpeed = stop.InitialSpeed,
                FrontPressure = front,
                RearPressure = stop.RearPressure,
                LockPressure = first == FirstLock.None ? null : stop.LockPressure,
                Deceleration = first == FirstLock.None ? stop.Deceleration : null,
                Locked = first,
                Surface = told.Surface,
                LoadCase = told.LoadCase,
                Turns = told.Turns,
            };
        }
    }

    private static string Existing(string path, bool us)
    {
        try
        {
            return File.Exists(path) ? LogText.Open(path).ReadToEnd() : LogStarter.Text("stops", us);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            throw new BadInputException($"--into {path}: the file cannot be opened.");
        }
    }

    // One for all, or one for each.
    private static T?[] Each<T>(string? text, int count, string option, List<string> problems, Func<string, T?> read, string accepted)
        where T : struct
    {
        string[] words = text?.Split(',', StringSplitOptions.TrimEntries) ?? [];
        T?[] values = [.. words.Select(read)];
        if (text is not null && (values.Any(v => v is null) || values.Length != 1 && values.Length != count))
        {
            problems.Add($"{option}: '{text}' is not understood. Accepted: {accepted}; one for all {count} stops that can be trusted, "
                + "or one for each, separated by commas.");
            return new T?[count];
        }

        return values.Length == 0 ? new T?[count] : values.Length == 1 ? [.. Enumerable.Repeat(values[0], count)] : values;
    }
}
