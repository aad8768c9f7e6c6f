using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Notebooks.Commands.Measuring;
using BrakeBalance.Notebooks.Commands.Summaries;
using BrakeBalance.Notebooks.Publishing;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>measure …</c>: from gauges and test stops to a setting, and what to measure next.</summary>
internal static class MeasureCommand
{
    public static Command Create(Terminal terminal) =>
        new("measure", "From gauges and test stops to a setting; what to measure next; a plan of test stops.")
    {
        Gauges(terminal), SeriesCommand.Create(terminal), Setting(terminal), Next(terminal), Bands(terminal), Plan(terminal),
            Questions(terminal), Invent(terminal),
        Starter(terminal),
    };

    private static Command Starter(Terminal terminal)
    {
        var kind = new Argument<string>("KIND") { Description = "gauges: readings of two gauges; stops: test stops" };
        kind.AcceptOnlyFromAmong([.. LogStarter.Kinds]);
        Option<string> units = VehicleOptions.Units();
        return StarterCommand.Writing(
            terminal, "starter", "Write an empty log with the columns that this program reads, and notes on filling it in.",
            "Fill it in on the car. Gauges are read by '" + CommandLine.Name
                + " measure gauges', stops by 'measure setting' and 'measure next'.",
            parsed => LogStarter.Text(parsed.GetRequiredValue(kind), System(parsed, units) == UnitSystem.Us), kind, units);
    }

    private static Command Gauges(Terminal terminal)
    {
        Argument<string> log = Log(
            "Gauge pairs: front and rear line pressure, turns and phase, as CSV; or the vehicle file that names such a log");
        var below = Options.Of<double>("--below-knee",
            "Rear over front line pressure below the knee: 1 for one master cylinder, else what two bores and a bar make it; "
                + "by a vehicle file when one is named", "NUMBER", 1);
        (Option<bool> json, Option<string> units, Option<bool> lost) = (Options.Json(), VehicleOptions.Units(), LogInput.AllowLost());
        var command = new Command("gauges", "Knee and slope of the valve by turns of its adjuster, and what is wrong with the lines.")
        {
            log, below, json, units, lost,
        };
        command.SetAction(parsed =>
        {
            (string path, Vehicle? car) = LogOf(parsed.GetRequiredValue(log), "gauges", logs => logs.Gauges);
            LogReading<GaugePair> reading = LogInput.Read(path, LogReader.ReadGaugePairs, parsed.GetValue(lost));
            double ratio = parsed.GetValue(below);
            if (ratio is not (>= 0.1 and <= 10))
            {
                throw new BadInputException("--below-knee: a number from 0.1 to 10, such as 1 or 0.85.");
            }

            GaugeAnalysis analysis = car is not null && parsed.GetResult(below) is null or { Implicit: true }
                ? ValveFitting.Analyse(reading.Rows, car) : ValveFitting.Analyse(reading.Rows, ratio);
            UnitSystem system = System(parsed, units);
            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Gauges(analysis, reading.Problems), console =>
            {
                TextTable.Write(console, MeasurementTables.LeftOut(reading.Problems));
                TextTable.Write(console, MeasurementTables.Knees(analysis, system));
                TextTable.Write(console, MeasurementTables.Valve(analysis, system));
                MeasureOutput.Sentences(console, analysis.Findings.Count == 0
                    ? ["The gauges show nothing wrong."] : analysis.Findings.Select(f => InBoth.Only(f.Text, system == UnitSystem.Us)));
            });
        });
        return command;
    }

    private static Command Setting(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        (Option<string?> stops, Option<string?> gauges) = (LogOption("--stops", "test stops"), LogOption("--gauges", "gauge pairs"));
        var draws = Options.Of<int>("--draws", "Number of random draws", "COUNT", 100_000);
        var check = Options.Of<bool>("--check", "Checks the estimate by Metropolis chains");
        var write = Options.Of<string?>("--write", "Writes a copy of the vehicle file with the fitted numbers as ranges", "FILE");
        var date = Options.Of<string?>("--date", "Day of the tests for the comments that --write makes: 2026-05-12", "DATE");
        (Option<bool> lost, Option<bool> force) = (LogInput.AllowLost(), OutputFiles.Force());
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Options.Json(), VehicleOptions.Units(), VehicleOptions.Set());
        var command = new Command("setting", "The setting that follows from the file and the car's own tests, with its trade-off.")
        {
            file, stops, gauges, draws, check, write, date, json, units, set, lost, force,
        };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            string source = parsed.GetRequiredValue(file);
            string[] changed = parsed.GetRequiredValue(set);
            MeasurementLogs given = new(parsed.GetValue(gauges), parsed.GetValue(stops), null);
            Vehicle car = Logged(terminal, source, changed, given, parsed.GetValue(lost), parsed.GetValue(check));
            if (parsed.GetValue(draws) is not (>= 1000 and <= 10_000_000))
            {
                problems.Add("--draws: a whole number from 1000 to 10000000.");
            }

            DateOnly? day = DateOf(parsed.GetValue(date), problems);
            string? target = parsed.GetValue(write) is { } named
                ? new OutputFiles(problems, parsed.GetValue(force)).File(named, "--write") : null;
            if (target is not null && changed.Length > 0)
            {
                problems.Add("--write: not together with --set; the file written must rest on the file read.");
            }

            BadInputException.ThrowIfAny(problems);
            var own = car.Measured as OwnMeasurements;
            CarEstimate? estimate = own is null ? null : terminal.Work.Do("estimating the car", _ => own.Estimate);
            Setting answer = terminal.Work.Do("drawing", progress => Measurements.Setting.Of(car, null, progress, parsed.GetValue(draws)));
            if (target is not null)
            {
                Write(terminal, source, own, target, day, answer);
            }

            NextStops? next = estimate is { StopsUsed: > 0 } && answer.Doubts.Count == 0 ? NextTest.Of(estimate) : null;
            UnitSystem system = System(parsed, units);
            string? turns = answer.Recommended?.Knee is { } knee && own?.Valve?.Calibration?.TurnsFor(knee) is { } by
                ? Invariant.Text($"{by.Estimate:0.0} ({by.Low:0.0} to {by.High:0.0})") : null;
            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Setting(car, answer, next, turns), console =>
                Show(console, own, answer, next, turns, system));
        });
        return command;
    }

    private static void Write(Terminal terminal, string source, OwnMeasurements? own, string target, DateOnly? day, Setting answer)
    {
        try
        {
            (string text, IReadOnlyList<string> written) = FittedFile.Write(File.ReadAllText(source),
                own, Path.GetDirectoryName(target)!, day, answer);
            AtomicFile.Write(target, text);
            terminal.Error.WriteLine($"{target}: written with {string.Join(", ", written)}.");
        }
        catch (ArgumentException exception)
        {
            throw new BadInputException($"--write: {Problem.WordsOf(exception)}");
        }
    }

    private static DateOnly? DateOf(string? text, List<string> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day))
        {
            return day;
        }

        problems.Add($"--date: '{text}' is not a day. Accepted: year, month and day, such as 2026-05-12.");
        return null;
    }

    // Logs named on the command line stand in for those of the file.
    private static Vehicle Logged(Terminal terminal, string path, string[] set, MeasurementLogs given, bool allowLost, bool check)
    {
        VehicleReading reading = Reading(terminal, path, set, allowLost);
        if (given is { Gauges: null, Stops: null } && !check)
        {
            return reading.Vehicle;
        }

        // Logs whose fit stands in the file already must not count beside new ones.
        var own = reading.Vehicle.Measured as OwnMeasurements;
        bool isNew = given is not { Gauges: null, Stops: null };
        MeasurementLogs? named = isNew && own?.Logs.Fitted == true ? null : own?.Logs;
        MeasurementLogs logs = (named ?? new(null, null, null)) with
        {
            Gauges = given.Gauges ?? named?.Gauges,
            Stops = given.Stops ?? named?.Stops,
        };
        VehicleReading file = VehicleFile.Load(path, VehicleOptions.Overrides(set, []));
        (Vehicle? car, IReadOnlyList<string> problems) = OwnMeasurements.Measured(file, logs, allowLost, check ? 6000 : 0);
        return car ?? throw new BadInputException(problems);
    }

    private static void Show(
        IAnsiConsole console, OwnMeasurements? own, Setting answer, NextStops? next, string? turns, UnitSystem units)
    {
        if (own?.Gauges is { } pairs)
        {
            TextTable.Write(console, MeasurementTables.LeftOut(pairs.Problems));
        }

        if (own is { Stops: { } log, Estimate: { } estimate })
        {
            TextTable.Write(console, MeasurementTables.LeftOut([.. log.Problems, .. estimate.NotUsed]));
            TextTable.Write(console, MeasurementTables.Estimate(estimate, units));
            TextTable.Write(console, MeasurementTables.Weights(estimate, units));
            MeasureOutput.Sentences(console, estimate.Identifiability);
            if (estimate.DifferenceFromChains is { } difference)
            {
                console.WriteLine(Invariant.Text($"Metropolis chains: bounds differ by at most {difference:0.00} standard deviations; "
                    + $"the chains {(estimate.ChainsAgree == true ? "agree" : "do not agree")}."));
            }
        }

        console.WriteLine("");
        SettingOutput.WriteAnswer(console, answer, units);
        if (turns is not null)
        {
            console.WriteLine($"By the gauges that knee stands at {turns} turns in from fully out.");
        }

        if (answer.MostRearFirst is not null)
        {
            TextTable.Write(console, MeasurementTables.Conditions(answer.Chance, units));
        }

        if (next is not null)
        {
            TextTable.Write(console, MeasurementTables.NextStops(next, units));
        }

        SettingOutput.WriteDetails(console, answer, units);
        if (own?.Series is { } series)
        {
            TextTable.Write(console, MeasurementTables.LeftOut(series.Problems));
            TextTable.Write(console, MeasurementTables.Stops(StopFinder.Find(series.Rows), units));
        }
    }

    private static Option<string?> LogOption(string name, string of) =>
        Options.Of<string?>(name, $"Log of {of} (CSV), in place of the file's own", "LOG");

    private static Command Next(Terminal terminal)
    {
        Argument<string?> file = Options.File();
        (Option<string?> stops, Option<string?> gauges) = (LogOption("--stops", "test stops"), LogOption("--gauges", "gauge pairs"));
        var surfaces = Options.Of<string?>("--surfaces",
            "Surfaces that can be tested on, separated by commas; those of the stops so far unless said, or dry and wet", "NAMES");
        Option<bool> keys = Options.Keys();
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Options.Json(), VehicleOptions.Units(), VehicleOptions.Set());
        Option<bool> lost = LogInput.AllowLost();
        var command = new Command("next", "The safe test stop that would narrow the setting's interval most, after those made so far.")
        {
            file, stops, gauges, surfaces, json, keys, units, set, lost,
        };
        command.SetAction(parsed =>
        {
            if (parsed.GetValue(keys))
            {
                TextTable.Keys(terminal.Rich(), NextStopKeys.All);
                return ExitCode.Success;
            }

            string path = parsed.GetValue(file) ?? throw new BadInputException("FILE: name the vehicle file.");
            Vehicle car = Logged(terminal, path, parsed.GetRequiredValue(set),
                new(parsed.GetValue(gauges), parsed.GetValue(stops), null), parsed.GetValue(lost), check: false);
            OwnMeasurements? own = OwnMeasurements.Of(car);
            (CarEstimate estimate, string[] doubts, NextStops? next) = terminal.Work.Do("weighing the stops", _ =>
            {
                CarEstimate known = OwnMeasurements.EstimateOn(car, Names(parsed.GetValue(surfaces) ?? ""));
                string[] against = [.. (own?.Doubts ?? []).Union(known.Doubts)];
                return (known, against, against.Length > 0 ? null : NextTest.Of(known));
            });
            LogProblem[] left = [.. own?.Stops?.Problems ?? [], .. estimate.NotUsed];
            UnitSystem system = System(parsed, units);
            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Next(car, next, doubts, left), console =>
            {
                if (left.Length > 0)
                {
                    TextTable.Write(console, MeasurementTables.LeftOut(left));
                }

                if (next is null)
                {
                    MeasureOutput.Sentences(console, [.. doubts, "No stop is proposed until that is cleared up."]);
                    return;
                }

                TextTable.Write(console, MeasurementTables.NextStops(next, system));
                if (next.Candidates is [CandidateStop first, ..])
                {
                    SettingOutput.Labelled(console, "Abort when", NextStopWords.Abort(first, system) + ".");
                }

                SettingOutput.Labelled(console, "Caution", SettingWords.Caution);
            });
        });
        return command;
    }

    private static string[] Names(string text) => text.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);

    private static Command Bands(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var adhesion = Options.Of<double>("--adhesion", "Coefficient of adhesion that the answers are for",
            "NUMBER", Conditions.DryAdhesion);
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Options.Json(), VehicleOptions.Units(), VehicleOptions.Set());
        var command = new Command("bands", "Answers as bands while numbers are missing, and which number to measure next, with which tool.")
        {
            file, adhesion, json, units, set,
        };
        command.SetAction(parsed =>
        {
            Vehicle car = Car(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            if (parsed.GetValue(adhesion) is not (> 0 and <= 2))
            {
                throw new BadInputException("--adhesion: a number above 0, at most 2, such as 0.9.");
            }

            IReadOnlyList<BandedAnswer> answers =
                terminal.Work.Do("trying the ranges", _ => MeasuringOrder.Bands(car, parsed.GetValue(adhesion)));
            UnitSystem system = System(parsed, units);
            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Bands(car, answers), console =>
            {
                TextTable.Write(console, MeasurementTables.Bands(answers, system));
                TextTable.Write(console, MeasurementTables.MeasureNext(answers[0], system));
                console.Write(OwnMeasurements.Of(car)?.Estimate is { StopsUsed: > 0 }
                    ? "By the file's ranges, without this car's own stops: what those say stands in 'measure setting'.\n"
                    : car.Uncertainty is not null ? ""
                    : "The file gives no ranges, so every entry counts as exact. What to measure for the setting, whose friction scatters, "
                        + "stands in 'summary'.\n");
            });
        });
        return command;
    }

    private static Command Plan(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var surfaces = Options.Of<string>("--surfaces", "Surfaces to test on, separated by commas", "NAMES", "dry,wet");
        var csv = Options.Of<string?>("--csv", "Writes the sheet to fill in, as CSV that 'measure setting --stops' reads back", "FILE");
        var sheet = Options.Of<string?>("--sheet", "Writes a sheet to print (HTML, A4 or Letter)", "FILE");
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Options.Json(), VehicleOptions.Units(), VehicleOptions.Set());
        Option<bool> force = OutputFiles.Force();
        var command = new Command("plan", "An ordered list of test stops with pressures, loads, abort criteria and cautions.")
        {
            file, surfaces, csv, sheet, json, units, set, force,
        };
        command.SetAction(parsed =>
        {
            Vehicle car = Car(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            string[] names = Names(parsed.GetRequiredValue(surfaces));
            List<string> problems = [];
            if (names.Length == 0)
            {
                problems.Add("--surfaces: name at least one surface, such as dry.");
            }

            var files = new OutputFiles(problems, parsed.GetValue(force));
            string? csvFile = parsed.GetValue(csv) is { } csvPath ? files.File(csvPath, "--csv") : null;
            string? sheetFile = parsed.GetValue(sheet) is { } sheetPath ? files.File(sheetPath, "--sheet") : null;
            BadInputException.ThrowIfAny(problems);
            TestPlan plan = TestPlanner.Make(car, names);
            UnitSystem system = System(parsed, units);
            if (csvFile is not null)
            {
                AtomicFile.Write(csvFile, plan.ToCsv(system));
            }

            if (sheetFile is not null)
            {
                AtomicFile.Write(sheetFile, TestPlanSheet.Html(plan, system));
            }

            return terminal.Answer(parsed.GetValue(json), () => new MeasureJson(new(system)).Plan(plan),
                console => TextTable.Write(console, MeasurementTables.Plan(plan, system)));
        });
        return command;
    }

    private static Command Questions(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var number = Options.Of<int?>("--number", Invariant.Text($"Only the question of this number, 1 to {QuestionDesk.Count}"), "NUMBER");
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Options.Json(), VehicleOptions.Units(), VehicleOptions.Set());
        var command = new Command("questions", "Common questions, answered for a car or with the number that lacks and how to find it.")
        {
            file, number, json, units, set,
        };
        command.SetAction(parsed =>
        {
            VehicleReading car = Reading(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            if (parsed.GetValue(number) is < 1 or > QuestionDesk.Count)
            {
                throw new BadInputException(Invariant.Text($"--number: a question from 1 to {QuestionDesk.Count}."));
            }

            IReadOnlyList<QuestionAnswer> answers = terminal.Work.Do("answering", _ => QuestionDesk.Answer(car, System(parsed, units)));
            QuestionAnswer[] shown = [.. answers.Where(a => parsed.GetValue(number) is not { } only || a.Number == only)];
            return terminal.Answer(parsed.GetValue(json), () => MeasureJson.Questions(car.Vehicle, shown), console =>
            {
                foreach (QuestionAnswer answer in shown)
                {
                    console.WriteLine("");
                    console.WriteLine(Invariant.Text($"{answer.Number}. {answer.Question}"));
                    console.WriteLine(answer.Answer ?? "Lacking: " + string.Join("; ", answer.Lacking));
                    if (answer.Vague.Count > 0)
                    {
                        console.WriteLine($"Known only as a range or by the class: {string.Join(", ", answer.Vague)}.");
                    }

                    console.WriteLine($"More: {QuestionPointers.Of(answer.Number).Words}.");
                }

                console.WriteLine("");
                if (BandText.LegendOf(car.Vehicle) is { Length: > 0 } legend)
                {
                    SettingOutput.Labelled(console, "Ranges", legend);
                }

                SettingOutput.Labelled(console, "Caution", $"{SettingWords.Caution} {QuestionDesk.Holds}");
            });
        });
        return command;
    }

    private static Command Invent(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Folder the invented logs are written to" };
        var file = Options.Of<string?>("--vehicle", "The car the logs are invented from; the repository's coupe unless said",
            "FILE");
        Option<bool> force = OutputFiles.Force();
        var command = new Command("invent", "Writes the invented logs that the notebooks read, from a car whose truth is known.")
        {
            folder, file, force,
        };
        command.SetAction(parsed =>
        {
            string path = parsed.GetValue(file) ?? Repository.Folder(NotebookInput.DefaultVehicle);
            Vehicle vehicle = Car(terminal, path, []);
            IReadOnlyList<(string Name, string Text)> logs;
            try
            {
                logs = InventedLogs.Of(vehicle);
            }
            catch (ArgumentException exception)
            {
                throw new BadInputException($"{path}: {Problem.WordsOf(exception)}");
            }

            List<string> problems = [];
            var files = new OutputFiles(problems, parsed.GetValue(force));
            string[] targets = [.. logs.Select(log => files.File(Path.Combine(parsed.GetRequiredValue(folder), log.Name)))];
            BadInputException.ThrowIfAny(problems);
            foreach (((string name, string text), string target) in logs.Zip(targets))
            {
                AtomicFile.Write(target, text);
                terminal.Output.WriteLine(name);
            }

            return ExitCode.Success;
        });
        return command;
    }

    // A log by its own path, or by the vehicle file that names it.
    internal static (string Path, Vehicle? Car) LogOf(string named, string entry, Func<MeasurementLogs, string?> log)
    {
        if (!named.EndsWith(".json", StringComparison.OrdinalIgnoreCase))
        {
            return (named, null);
        }

        try
        {
            VehicleReading reading = VehicleFile.Load(named);
            return reading.Logs is { } logs && log(logs) is { } path ? (path, reading.Vehicle)
                : throw new BadInputException(
                    $"{named}: measurements.{entry} names no log. Accepted: a log (CSV), or a vehicle file that names one there.");
        }
        catch (VehicleFileException exception)
        {
            throw new BadInputException([.. exception.Problems.Select(problem => $"{named}: {problem}")]);
        }
    }

    internal static Argument<string> Log(string description) => new("LOG") { Description = description };

    private static Argument<string> VehicleArgument() => new("FILE") { Description = "The vehicle file" };

    internal static UnitSystem System(ParseResult parsed, Option<string> units) => VehicleOptions.UnitsOf(parsed, units);

    private static Vehicle Car(Terminal terminal, string path, string[] set) => Reading(terminal, path, set).Vehicle;

    private static VehicleReading Reading(Terminal terminal, string path, string[] set, bool allowLost = false)
    {
        List<string> problems = [];
        VehicleReading? car = VehicleOptions.Read(terminal, path, VehicleOptions.Overrides(set, problems), problems, allowLost);
        BadInputException.ThrowIfAny(problems);
        return car!;
    }
}
