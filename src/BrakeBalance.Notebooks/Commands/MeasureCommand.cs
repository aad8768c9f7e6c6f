using System.CommandLine;
using System.Globalization;
using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Commands.Measuring;
using BrakeBalance.Notebooks.Commands.Summaries;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Spectre.Console;
using UnitsNet;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>measure …</c>: from gauges and test stops to a setting, and what to measure next.</summary>
internal static class MeasureCommand
{
    public static Command Create(Terminal terminal) => new("measure", "From gauges and test stops to a setting; what to measure next; a plan of test stops.")
    {
        Gauges(terminal), Series(terminal), Setting(terminal), Bands(terminal), Plan(terminal), Questions(terminal), Invent(terminal),
        Starter(terminal),
    };

    private static Command Starter(Terminal terminal)
    {
        var kind = new Argument<string>("KIND") { Description = "gauges: readings of two gauges; stops: test stops" };
        kind.AcceptOnlyFromAmong([.. LogStarter.Kinds]);
        Option<string> units = VehicleOptions.Units();
        return StarterCommand.Writing(
            terminal, "starter", "Write an empty log with the columns that this program reads, and notes on filling it in.",
            "Fill it in on the car; what reads it: 'measure gauges', 'measure setting'.",
            parsed => LogStarter.Text(parsed.GetRequiredValue(kind), Shown(parsed, units).Us), kind, units);
    }

    private static Command Gauges(Terminal terminal)
    {
        Argument<string> log = Log("Gauge pairs: front and rear line pressure, turns and phase, as CSV");
        var below = new Option<double>("--below-knee")
        {
            Description = "Rear over front line pressure below the knee: 1 for one master cylinder, else what two bores and a bar make it",
            HelpName = "NUMBER",
            DefaultValueFactory = _ => 1,
        };
        (Option<bool> json, Option<string> units, Option<bool> lost) = (Json(), VehicleOptions.Units(), LogInput.AllowLost());
        var command = new Command("gauges", "Knee and slope of the valve by turns of its knob, and what is wrong with the lines.") { log, below, json, units, lost };
        command.SetAction(parsed =>
        {
            LogReading<GaugePair> reading = LogInput.Read(parsed.GetRequiredValue(log), LogReader.ReadGaugePairs, parsed.GetValue(lost));
            double ratio = parsed.GetValue(below);
            if (ratio is not (>= 0.1 and <= 10))
            {
                throw new BadInputException("--below-knee: a number from 0.1 to 10, such as 1 or 0.85.");
            }

            GaugeAnalysis analysis = ValveFitting.Analyse(reading.Rows, ratio);
            if (parsed.GetValue(json))
            {
                JsonObject node = new MeasureJson(Shown(parsed, units)).Gauges(analysis);
                node["left_out"] = MeasureJson.Problems(reading.Problems);
                terminal.Output.WriteLine(MeasureJson.Text(node));
            }
            else
            {
                IAnsiConsole console = terminal.Rich();
                SummaryTables.Write(console, MeasurementTables.LeftOut(reading.Problems));
                SummaryTables.Write(console, MeasurementTables.Knees(analysis, System(parsed, units)));
                MeasureOutput.Sentences(console, analysis.Findings.Count == 0 ? ["The gauges show nothing wrong."] : analysis.Findings.Select(f => f.Text));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static Command Series(Terminal terminal)
    {
        Argument<string> log = Log("Time and speed or acceleration, 10 to 200 samples a second, as CSV");
        var dive = new Option<double?>("--dive") { Description = "Nose-down pitch of the body at 1 g, in degrees; only an accelerometer needs it", HelpName = "DEGREES" };
        (Option<bool> json, Option<string> units, Option<bool> lost) = (Json(), VehicleOptions.Units(), LogInput.AllowLost());
        var command = new Command("series", "Finds the stops in a logger's or telephone's readings and their mean fully developed deceleration.") { log, dive, json, units, lost };
        command.SetAction(parsed =>
        {
            LogReading<MotionSample> reading = LogInput.Read(parsed.GetRequiredValue(log), LogReader.ReadTimeSeries, parsed.GetValue(lost));
            if (reading.Rows.Count < 10)
            {
                throw new BadInputException($"{parsed.GetRequiredValue(log)}: {reading.Rows.Count} samples could be read; a stop needs at least ten.");
            }

            double? degrees = parsed.GetValue(dive);
            if (degrees is not (null or (>= 0 and <= 10)))
            {
                throw new BadInputException("--dive: the pitch lies from 0 to 10 degrees at 1 g; one to two are usual.");
            }

            StopSearch search = StopFinder.Find(reading.Rows, degrees is { } d ? Angle.FromDegrees(d) : null);
            if (parsed.GetValue(json))
            {
                JsonObject node = new MeasureJson(Shown(parsed, units)).Stops(search);
                node["left_out"] = MeasureJson.Problems(reading.Problems);
                terminal.Output.WriteLine(MeasureJson.Text(node));
            }
            else
            {
                IAnsiConsole console = terminal.Rich();
                SummaryTables.Write(console, MeasurementTables.LeftOut(reading.Problems));
                SummaryTables.Write(console, MeasurementTables.Stops(search, System(parsed, units)));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static Command Setting(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var stops = new Option<string?>("--stops") { Description = "Log of test stops (CSV); without it the setting rests on the vehicle file alone", HelpName = "LOG" };
        var gauges = new Option<string?>("--gauges") { Description = "Log of gauge pairs (CSV): knee against turns, and the valve's slope", HelpName = "LOG" };
        var draws = new Option<int>("--draws") { Description = "Number of random draws", HelpName = "COUNT", DefaultValueFactory = _ => 100_000 };
        var check = new Option<bool>("--check") { Description = "Checks the estimate by Metropolis chains" };
        Option<bool> lost = LogInput.AllowLost();
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Json(), VehicleOptions.Units(), VehicleOptions.Set());
        var command = new Command("setting", "The setting that uses the road best while the rear rarely locks first, with its trade-off.") { file, stops, gauges, draws, check, json, units, set, lost };
        command.SetAction(parsed =>
        {
            Vehicle car = Car(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            LogReading<TestStop>? log = parsed.GetValue(stops) is { } path ? LogInput.Read(path, LogReader.ReadTestStops, parsed.GetValue(lost)) : null;
            LogReading<GaugePair>? pairs = parsed.GetValue(gauges) is { } gaugeLog ? LogInput.Read(gaugeLog, LogReader.ReadGaugePairs, parsed.GetValue(lost)) : null;
            GaugeAnalysis? valve = pairs is null ? null : ValveFitting.Analyse(pairs.Rows, car.Hydraulics.Split.RearToFrontPressureRatio);
            Vehicle vehicle = valve?.Slope is { } slope && car.Hydraulics.RearProportioningValve is { } fitted
                ? car.WithRearKnee(fitted.Knee, Math.Clamp(slope.Estimate, 0, 1))
                : car;
            List<string> problems = [];
            if (parsed.GetValue(draws) is not (>= 1000 and <= 10_000_000))
            {
                problems.Add("--draws: a whole number from 1000 to 10000000.");
            }

            if (problems.Count > 0)
            {
                throw new BadInputException(problems);
            }

            var options = new EstimationOptions { Prior = ParameterSpread.From(car), Knob = valve?.Calibration, CheckSteps = parsed.GetValue(check) ? 6000 : 0 };
            CarEstimate? estimate = log is null ? null : MeasureOutput.WithProgress(terminal, "estimating the car", _ => CarEstimation.Estimate(vehicle, log.Rows, options));
            Setting answer = MeasureOutput.WithProgress(
                terminal, "drawing", progress => Measurements.Setting.Of(vehicle, estimate, progress, parsed.GetValue(draws)));
            IReadOnlyList<CandidateStop> next = estimate is { StopsUsed: > 0 } ? NextTest.Rank(estimate) : [];
            if (parsed.GetValue(json))
            {
                var write = new MeasureJson(Shown(parsed, units));
                var node = new JsonObject { ["car"] = vehicle.Name, ["setting"] = SettingOutput.Node(answer, Shown(parsed, units)), ["chance"] = write.Chance(answer.Chance) };
                if (estimate is not null)
                {
                    node["estimate"] = MeasureJson.Estimate(estimate);
                    node["next_stops"] = write.NextStops(next);
                    node["left_out"] = MeasureJson.Problems(log!.Problems);
                }

                if (pairs is not null)
                {
                    node["gauges_left_out"] = MeasureJson.Problems(pairs.Problems);
                }

                node["turns_by_gauges"] = TurnsByGauges(answer, valve);
                terminal.Output.WriteLine(MeasureJson.Text(node));
            }
            else
            {
                SummaryTables.Write(terminal.Rich(), MeasurementTables.LeftOut(pairs?.Problems ?? []));
                Show(terminal, log, estimate, answer, next, valve, System(parsed, units));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static void Show(Terminal terminal, LogReading<TestStop>? log, CarEstimate? estimate, Setting answer, IReadOnlyList<CandidateStop> next, GaugeAnalysis? valve, UnitSystem units)
    {
        IAnsiConsole console = terminal.Rich(Terminal.Narrow);
        if (log is not null && estimate is not null)
        {
            SummaryTables.Write(console, MeasurementTables.LeftOut([.. log.Problems, .. estimate.NotUsed]));
            SummaryTables.Write(console, MeasurementTables.Estimate(estimate));
            MeasureOutput.Sentences(console, estimate.Identifiability);
            if (estimate.DifferenceFromChains is { } difference)
            {
                console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"Metropolis chains: bounds differ by at most {difference:0.00} standard deviations; the chains {(estimate.ChainsAgree == true ? "agree" : "do not agree")}."));
            }
        }

        console.WriteLine("");
        SettingOutput.WriteAnswer(console, answer, units);
        if (TurnsByGauges(answer, valve) is { } turns)
        {
            console.WriteLine($"By the gauges that knee stands at {turns} turns in from fully out.");
        }

        SummaryTables.Write(console, MeasurementTables.Conditions(answer.Chance));
        if (next.Count > 0)
        {
            SummaryTables.Write(console, MeasurementTables.NextStops(next, units));
        }

        SettingOutput.WriteDetails(console, answer, units);
    }

    private static string? TurnsByGauges(Setting answer, GaugeAnalysis? valve) =>
        answer.Recommended?.Knee is { } knee && valve?.Calibration?.TurnsFor(knee) is { } turns
            ? string.Create(CultureInfo.InvariantCulture, $"{turns.Estimate:0.0} ({turns.Low:0.0} to {turns.High:0.0})")
            : null;

    private static Command Bands(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var adhesion = new Option<double>("--adhesion") { Description = "Coefficient of adhesion that the answers are for", HelpName = "NUMBER", DefaultValueFactory = _ => 0.85 };
        (Option<bool> json, Option<string[]> set) = (Json(), VehicleOptions.Set());
        var command = new Command("bands", "Answers as bands while numbers are missing, and which number to measure next, with which tool.") { file, adhesion, json, set };
        command.SetAction(parsed =>
        {
            Vehicle car = Car(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            if (parsed.GetValue(adhesion) is not (> 0 and <= 2))
            {
                throw new BadInputException("--adhesion: a number above 0, at most 2, such as 0.85.");
            }

            IReadOnlyList<BandedAnswer> answers = MeasureOutput.WithProgress(terminal, "trying the ranges", _ => MeasuringOrder.Bands(car, parsed.GetValue(adhesion)));
            if (parsed.GetValue(json))
            {
                terminal.Output.WriteLine(MeasureJson.Text(new JsonObject { ["car"] = car.Name, ["answers"] = MeasureJson.Bands(answers) }));
            }
            else
            {
                IAnsiConsole console = terminal.Rich();
                SummaryTables.Write(console, MeasurementTables.Bands(answers));
                SummaryTables.Write(console, MeasurementTables.MeasureNext(answers[0]));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static Command Plan(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var surfaces = new Option<string>("--surfaces") { Description = "Surfaces to test on, parted by commas", HelpName = "NAMES", DefaultValueFactory = _ => "dry,wet" };
        var csv = new Option<string?>("--csv") { Description = "Writes the sheet to fill in, as CSV that 'measure setting --stops' reads back", HelpName = "FILE" };
        var sheet = new Option<string?>("--sheet") { Description = "Writes a sheet to print (HTML, A4 or Letter)", HelpName = "FILE" };
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Json(), VehicleOptions.Units(), VehicleOptions.Set());
        Option<bool> force = OutputFiles.Force();
        var command = new Command("plan", "An ordered list of test stops with pressures, loads, abort criteria and cautions.") { file, surfaces, csv, sheet, json, units, set, force };
        command.SetAction(parsed =>
        {
            Vehicle car = Car(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            string[] names = parsed.GetRequiredValue(surfaces).Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
            List<string> problems = [];
            if (names.Length == 0)
            {
                problems.Add("--surfaces: name at least one surface, such as dry.");
            }

            var files = new OutputFiles(problems, parsed.GetValue(force));
            string? csvFile = parsed.GetValue(csv) is { } csvPath ? files.File(csvPath, "--csv") : null;
            string? sheetFile = parsed.GetValue(sheet) is { } sheetPath ? files.File(sheetPath, "--sheet") : null;
            BadInputException.ThrowIfAny(problems);
            CarEstimate estimate = CarEstimation.Estimate(car, [], new EstimationOptions { Prior = ParameterSpread.From(car), Surfaces = [.. names.Select(SurfaceCondition.Typical)] });
            TestPlan plan = TestPlanner.Make(estimate, names);
            if (csvFile is not null)
            {
                AtomicFile.Write(csvFile, plan.ToCsv());
            }

            if (sheetFile is not null)
            {
                AtomicFile.Write(sheetFile, TestPlanSheet.Html(plan, System(parsed, units)));
            }

            if (parsed.GetValue(json))
            {
                terminal.Output.WriteLine(MeasureJson.Text(new MeasureJson(Shown(parsed, units)).Plan(plan)));
            }
            else
            {
                SummaryTables.Write(terminal.Rich(), MeasurementTables.Plan(plan, System(parsed, units)));
            }

            return ExitCode.Success;
        });
        return command;
    }

    private static Command Questions(Terminal terminal)
    {
        Argument<string> file = VehicleArgument();
        var number = new Option<int?>("--number")
        {
            Description = FormattableString.Invariant($"Only the question of this number, 1 to {QuestionDesk.Count}"),
            HelpName = "NUMBER",
        };
        (Option<bool> json, Option<string> units, Option<string[]> set) = (Json(), VehicleOptions.Units(), VehicleOptions.Set());
        var command = new Command("questions", "Common questions, answered for a car or with the number that lacks and how to find it.")
        {
            file, number, json, units, set,
        };
        command.SetAction(parsed =>
        {
            VehicleReading car = Reading(terminal, parsed.GetRequiredValue(file), parsed.GetRequiredValue(set));
            if (parsed.GetValue(number) is < 1 or > QuestionDesk.Count)
            {
                throw new BadInputException(FormattableString.Invariant($"--number: a question from 1 to {QuestionDesk.Count}."));
            }

            IReadOnlyList<QuestionAnswer> answers =
                MeasureOutput.WithProgress(terminal, "answering", _ => QuestionDesk.Answer(car, System(parsed, units)));
            QuestionAnswer[] shown = [.. answers.Where(a => parsed.GetValue(number) is not { } only || a.Number == only)];
            if (parsed.GetValue(json))
            {
                terminal.Output.WriteLine(MeasureJson.Text(
                    new JsonObject { ["car"] = car.Vehicle.Name, ["questions"] = MeasureJson.Questions(shown) }));
                return ExitCode.Success;
            }

            IAnsiConsole console = terminal.Rich();
            foreach (QuestionAnswer answer in shown)
            {
                console.WriteLine("");
                console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{answer.Number}. {answer.Question}"));
                console.WriteLine(answer.Answer ?? "Lacking: " + string.Join("; ", answer.Lacking));
                if (answer.Vague.Count > 0)
                {
                    console.WriteLine($"Known only as a range or by the class: {string.Join(", ", answer.Vague)}.");
                }

                console.WriteLine($"More: {QuestionPointers.Of(answer.Number).Words}.");
            }

            console.WriteLine("");
            SettingOutput.Labelled(console, "Caution", SettingWords.Caution);
            return ExitCode.Success;
        });
        return command;
    }

    private static Command Invent(Terminal terminal)
    {
        var folder = new Argument<string>("FOLDER") { Description = "Folder the invented logs are written to" };
        Option<string?> file = new("--vehicle") { Description = "The car the logs are invented from; the repository's coupe unless said", HelpName = "FILE" };
        Option<bool> force = OutputFiles.Force();
        var command = new Command("invent", "Writes the invented logs that the notebooks read, from a car whose truth is known.") { folder, file, force };
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

    private static Argument<string> Log(string description) => new("LOG") { Description = description };

    private static Argument<string> VehicleArgument() => new("FILE") { Description = "The vehicle file" };

    private static Option<bool> Json() => new("--json") { Description = "Writes JSON for scripts; keys carry their unit" };

    private static SummaryUnits Shown(ParseResult parsed, Option<string> units) => new(string.Equals(parsed.GetRequiredValue(units), "us", StringComparison.OrdinalIgnoreCase));

    private static UnitSystem System(ParseResult parsed, Option<string> units) => Shown(parsed, units).Us ? UnitSystem.Us : UnitSystem.Si;

    private static Vehicle Car(Terminal terminal, string path, string[] set) => Reading(terminal, path, set).Vehicle;

    private static VehicleReading Reading(Terminal terminal, string path, string[] set)
    {
        List<string> problems = [];
        IReadOnlyList<ValueOverride> overrides = VehicleOptions.Overrides(set, problems);
        VehicleReading? car = null;
        try
        {
            car = VehicleFile.Load(path, overrides);
            VehicleOptions.TellOfWarnings(terminal, path, car, overrides);
        }
        catch (VehicleFileException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"{path}: {problem}"));
        }

        return problems.Count > 0 || car is null ? throw new BadInputException(problems) : car;
    }
}
