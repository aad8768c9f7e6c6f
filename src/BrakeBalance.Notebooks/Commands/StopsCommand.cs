using System.CommandLine;
using System.Text.RegularExpressions;
using BrakeBalance.Notebooks.Commands.Stopping;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>stops FILE</c>: stops, stability and heat of a car as tables or as JSON, without notebooks.</summary>
internal static class StopsCommand
{
    private const int MostReasons = 5;

    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File();
        Option<bool> json = Options.Json();
        Option<bool> keys = Options.Keys();
        Option<string[]> set = VehicleOptions.Set();
        Option<string> units = VehicleOptions.Units();
        var adhesion = Options.Of<string>("--adhesion",
            "Surfaces to stop on, as peak coefficients of adhesion from 0.05 to 2, separated by commas", "NUMBERS", "0.3,0.6,0.9");
        var speed = Options.Of<string>("--speed", "Speed when the foot touches the pedal: \"100 km/h\", \"60 mph\"", "SPEED", "100 km/h");
        var grade = Options.Of<string>("--grade",
            "Slope of the road, uphill positive, as \"6 %\" or \"3.5 °\"; fade and laps stay on level road", "SLOPE", "0 %");
        var pedalForce = Options.Of<string?>("--pedal-force",
            "Force of the foot in an emergency stop, such as \"110 lbf\"; without it the file\'s pedal.emergencyForce, or 500 N", "FORCE");
        var release = Options.Of<string?>("--release",
            "Also a stop whose foot eases half a second after the first lock, at this fall of pressure, "
                + "such as \"100 bar/s\", until every wheel turns again", "RATE");
        var load = Options.Of<string?>("--load-case", "Only the load case of this name", "NAME");
        var study = Options.Of<int?>("--study",
            "Also so many emergency stops with adhesion, load and friction drawn at random, on all processors", "NUMBER");
        var seed = Options.Of<int>("--seed", "Seed of the study's draws", "NUMBER", 1);
        var lap = Options.Of<string?>("--lap",
            "Also the heat of laps: a log with a time and a speed as loggers export it (see 'measure series --help')", "FILE");
        var laps = Options.Of<int>("--laps", "How often the lap is driven, 1 to 200", "NUMBER", 5);
        var split = Options.Of<string?>("--split-adhesion",
            "Also stops with one adhesion under the left and another under the right wheels, 0.05 to 2 each, the "
                + "steering held still: \"0.3/0.8\"", "LEFT/RIGHT");
        var crossSlope = Options.Of<string?>("--cross-slope",
            "Slope across the road where the car may yaw, -17 to 17 %, positive when it falls away to the left; \"2 %\" "
                + "when left out. Also stops with full pressure and below lock-up", "PERCENT");
        var bends = Options.Of<bool>("--bend-map", "Also braking in bends: what lets go first, and the highest knee "
            + "with the front first, over lateral acceleration");
        (Option<bool> lost, Option<string[]> column) = (LogInput.AllowLost(), LogInput.Columns());
        var command = new Command("stops", "Stop a car: distance, lock order, whether it swaps ends, brake heat and fade.")
        {
            file, json, keys, set, units, adhesion, speed, grade, pedalForce, release, load, split, crossSlope, bends, study, seed, lap,
                laps, column, lost,
        };
        command.SetAction((parsed, cancellation) => Task.Run(
            () =>
            {
                if (parsed.GetValue(keys))
                {
                    TextTable.Keys(terminal.Rich(), StopKeys.All);
                    return ExitCode.Success;
                }

                List<string> problems = [];
                Vehicle? vehicle = VehicleOptions
                    .ReadNamed(terminal, parsed.GetValue(file), parsed.GetRequiredValue(set), problems)?.Vehicle;
                double[] surfaces = VehicleOptions.Numbers("--adhesion", parsed.GetRequiredValue(adhesion), one => one is >= 0.05 and <= 2,
                    "from 0.05 to 2", problems);
                Speed? initial = VehicleOptions.SpeedOf(parsed.GetRequiredValue(speed), 10, 450, problems);
                IReadOnlyList<LoadCase> loads = VehicleOptions.Loads(vehicle, parsed.GetValue(load), problems);
                StopRoad road = Road(parsed.GetValue(crossSlope), parsed.GetValue(split), problems) with
                {
                    Grade = RoadText.Grade(parsed.GetRequiredValue(grade), problems),
                };
                Force? foot = RoadText.PedalForce(parsed.GetValue(pedalForce), vehicle, problems);
                PressureChangeRate? releaseRate = RoadText.ReleaseRate(parsed.GetValue(release), problems);
                bool uneven = parsed.GetValue(split) is not null || parsed.GetValue(crossSlope) is not null;
                SpeedTrace? trace = Lap(terminal, parsed.GetValue(lap), parsed.GetRequiredValue(column), parsed.GetValue(lost), problems);
                Demand(parsed.GetRequiredValue(laps) is >= 1 and <= 200, "--laps: must lie between 1 and 200.", problems);
                Demand(parsed.GetValue(study) is null or (>= 1 and <= 1_000_000), "--study: must lie between 1 and 1000000.", problems);
                if (problems.Count > 0 || vehicle is null || initial is null)
                {
                    throw new BadInputException(problems);
                }

                var ask = new StopAsk(initial.Value, surfaces, road, uneven, parsed.GetValue(bends), trace, parsed.GetRequiredValue(laps))
                {
                    PedalForce = foot,
                    ReleaseRate = releaseRate,
                };
                bool stops = vehicle.LoadCases.All(loadCase => StopSetup.WhyNoStop(vehicle, loadCase, ask.Conditions) is null);
                StopStudyResult? many = parsed.GetValue(study) is { } count && stops
                    ? terminal.Work.Do("simulating stops", count, progress => PartFault.Refused(vehicle.Name, () => StopStudy.Run(
                        vehicle,
                        new StopStudyPlan
                        {
                            Stops = count,
                            Seed = parsed.GetRequiredValue(seed),
                            InitialSpeed = initial.Value,
                            Conditions = ask.Conditions,
                        },
                        progress, cancellation)))
                    : null;
                var shown = new ReportUnits(VehicleOptions.UnitsOf(parsed, units));
                Banded<StopReport> reports = PartFault.Refused(vehicle.Name, () => Banded.Of(vehicle, drawn =>
                    StopReport.Of(drawn, ask, [.. loads.Select(one => drawn.LoadCase(one.Name))], many)));
                return terminal.Answer(parsed.GetValue(json), () => new StopJson(shown).Of(reports), console =>
                    BandedParts.Write(console, reports.Select(report => StopReportTables.Of(report, shown))!, vehicle));
            },
            cancellation));
        return command;
    }

    private static StopRoad Road(string? crossSlope, string? split, List<string> problems)
    {
        var road = new StopRoad();
        road = Slope("--cross-slope", crossSlope, 17, problems) is { } across ? road with { CrossSlope = across } : road;
        if (split is null)
        {
            return road;
        }

        double[] sides = [.. split.Split('/', StringSplitOptions.TrimEntries).Select(part =>
            double.TryParse(part, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number is >= 0.05 and <= 2
                ? number : double.NaN)];
        if (sides.Length == 2 && !sides.Any(double.IsNaN))
        {
            return road with { Split = (sides[0], sides[1]) };
        }

        problems.Add($"--split-adhesion: '{split}' is not two numbers from 0.05 to 2, left and right, such as \"0.3/0.8\".");
        return road;
    }

    private static Angle? Slope(string option, string? text, double most, List<string> problems)
    {
        if (text is null)
        {
            return null;
        }

        if (double.TryParse(text.TrimEnd('%', ' '), NumberStyles.Float, CultureInfo.InvariantCulture, out double percent)
            && Math.Abs(percent) <= most)
        {
            return Angle.FromRadians(Math.Atan(percent / 100));
        }

        problems.Add(Invariant.Text($"{option}: '{text}' is not a slope from {-most} % to {most} %, such as \"2 %\"."));
        return null;
    }

    private static SpeedTrace? Lap(Terminal terminal, string? path, string[] columns, bool allowLost, List<string> problems)
    {
        IReadOnlyList<ColumnChoice> choices = LogInput.ChoicesOf(columns, problems);
        if (path is null)
        {
            return null;
        }

        try
        {
            LogReading<MotionSample> lap = LogInput.Read(path, text => LogReader.ReadLap(text, choices), allowLost);
            LogColumn[] guessed = [.. lap.Columns.Where(c => c.Meaning != ColumnMeaning.None
                && !Regex.IsMatch(c.Name, $@"^{c.Words}\s*([\[(_]|$)", RegexOptions.IgnoreCase))];
            if (guessed.Length > 0)
            {
                terminal.Error.WriteLine($"--lap {path}: "
                    + string.Join("; ", guessed
                        .Select(c => $"'{c.Name}' is {c.Words}{(c.Unit.Length > 0 ? $" [{c.Unit}]" : "")} ({c.Reason})"))
                    + ". --column sets another.");
            }

            if (lap.Problems.Count > 0)
            {
                terminal.Error.WriteLine(
                    $"--lap {path}: {lap.Lost} of {lap.Rows.Count + lap.Lost} rows left out; "
                        + $"{string.Join("; ", lap.Problems.Take(MostReasons))}.");
            }

            return lap.Rows.Trace();
        }
        catch (BadInputException exception)
        {
            problems.AddRange(exception.Problems.Select(problem => $"--lap {problem}"));
            return null;
        }
        catch (ArgumentException exception)
        {
            problems.Add($"--lap {path}: {Problem.WordsOf(exception)}");
            return null;
        }
    }

    private static void Demand(bool holds, string problem, List<string> problems)
    {
        if (!holds)
        {
            problems.Add(problem);
        }
    }
}
