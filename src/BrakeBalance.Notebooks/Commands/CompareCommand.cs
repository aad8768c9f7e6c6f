using System.CommandLine;
using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Commands.Benches;
using BrakeBalance.Notebooks.Publishing;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>compare FILE…</c>: the answers of several set-ups side by side, each held against the first.</summary>
internal static class CompareCommand
{
    public static Command Create(Terminal terminal)
    {
        var files = new Argument<string[]>("FILES")
        {
            Description = Invariant.Text(
                $"The vehicle files, the first being what the others are held against; with --set at most {SetUpComparison.Most} set-ups"),
            Arity = ArgumentArity.ZeroOrMore,
        };
        var set = Options.Of<string[]>("--set", "One more set-up: the first file with other values, separated by semicolons: "
            + "--set \"masterCylinder.bore=7/8 in; pedal.ratio=5\"; may be given several times", "PATH=VALUE;…", []);
        var load = Options.Of<string?>("--load-case", "The load case by which they are compared", "NAME");
        var json = Options.Of<bool>("--json", "Writes JSON for scripts; each row says its unit");
        var pageFile = Options.Of<string?>("--page", "Writes the table and overlaid figures as a page (HTML)", "FILE");
        Option<string> units = VehicleOptions.Units();
        Option<bool> force = OutputFiles.Force();
        var command = new Command("compare", "Set vehicle files side by side: what each answers, and how far it lies from the first.")
        {
            files, set, load, json, pageFile, units, force,
        };
        command.SetAction(parsed =>
        {
            List<string> problems = [];
            (string Name, Vehicle Car)[] setUps = SetUps(terminal, parsed.GetValue(files) ?? [], parsed.GetRequiredValue(set), problems);
            string? asked = parsed.GetValue(load);
            foreach ((string name, Vehicle car) in setUps.Where(_ => asked is not null))
            {
                try
                {
                    car.LoadCase(asked!);
                }
                catch (ArgumentException fault)
                {
                    problems.Add($"--load-case: {name}: {Problem.WordsOf(fault)}");
                }
            }

            string? page = parsed.GetValue(pageFile) is { } named
                ? new OutputFiles(problems, parsed.GetValue(force)).File(named, "--page") : null;
            BadInputException.ThrowIfAny(problems);
            UnitSystem system = VehicleOptions.UnitsOf(parsed, units);
            SetUpComparison comparison = terminal.Work.Do("comparing", _ => Of(setUps, system, asked));
            if (page is not null)
            {
                AtomicFile.Write(page, ComparisonPage.Html(setUps, comparison, asked, system));
            }

            return terminal.Answer(parsed.GetValue(json), () => Json(comparison, new ReportUnits(system)), console =>
            {
                Write(console, comparison);
                string[] legends = [.. setUps.Select(setUp => BandText.LegendOf(setUp.Car)).Where(text => text.Length > 0).Distinct()];
                console.WriteLine(string.Join(' ', legends.Append(SettingWords.Caution)));
            });
        });
        return command;
    }

    /// <summary>Writes a comparison as a table; below a number, how far it lies from the first.</summary>
    public static void Write(IAnsiConsole console, SetUpComparison comparison)
    {
        var table = new TextTable(["What", .. comparison.Names]);
        foreach (ComparisonRow row in comparison.Rows)
        {
            table.Row([row.Label, .. row.Texts.Zip(row.Differences, (text, far) => far.Length == 0 ? text : $"{text};\n{far}")]);
        }

        table.Write(console);
    }

    public static JsonObject Json(SetUpComparison comparison, ReportUnits units)
    {
        JsonArray Of(IEnumerable<JsonNode?> values) => new([.. values]);
        return new()
        {
            ["set_ups"] = Of(comparison.Names.Select(name => (JsonNode?)name)),
            ["rows"] = Of(comparison.Rows.Select(row =>
            {
                JsonNode? End(Banded<IQuantity?> value, Func<IEnumerable<double>, double> which) =>
                    value.Drawn.OfType<IQuantity>().Select(one => BenchJson.Value(one, units)!.GetValue<double>()).ToArray() is
                    { Length: > 0 } drawn ? SummaryJson.Number(which(drawn)) : null;
                var json = new JsonObject
                {
                    ["key"] = row.Key,
                    ["name"] = row.Label,
                    ["unit"] = BenchJson.Unit(row.Values.Select(value => value.Middle).FirstOrDefault(value => value is not null), units),
                    ["texts"] = Of(row.Texts.Select(text => (JsonNode?)text)),
                    ["values"] = Of(row.Values.Select(value => (JsonNode?)BenchJson.Value(value.Middle, units))),
                    ["differs"] = row.Differs,
                };
                if (row.Values.Any(value => value.HasBand))
                {
                    json["values" + JsonBands.Low] = Of(row.Values.Select(value => End(value, all => all.Min())));
                    json["values" + JsonBands.High] = Of(row.Values.Select(value => End(value, all => all.Max())));
                }

                return (JsonNode?)json;
            })),
        };
    }

    /// <summary>The answers of some set-ups side by side.</summary>
    /// <exception cref="BadInputException">One of them cannot be computed.</exception>
    public static SetUpComparison Of((string Name, Vehicle Car)[] setUps, UnitSystem units, string? load) =>
        PartFault.Refused("", () => SetUpComparison.Of(setUps, units, new ChangeConditions { LoadCase = load }));

    private static (string Name, Vehicle Car)[] SetUps(Terminal terminal, string[] paths, string[] sets, List<string> problems)
    {
        if (paths.Length + sets.Length is < 2 or > SetUpComparison.Most || paths.Length == 0)
        {
            problems.Add(Invariant.Text(
                $"Vehicle files given: {paths.Length}; times --set: {sets.Length}. Accepted: 2 to {SetUpComparison.Most} set-ups, "
                    + $"the first a vehicle file."));
            return [];
        }

        List<(string, Vehicle)> setUps = [];
        foreach (string path in paths)
        {
            if (VehicleOptions.Read(terminal, path, [], problems) is { } reading)
            {
                setUps.Add((NameOf(path, paths), reading.Vehicle));
            }
        }

        foreach (string text in sets)
        {
            IReadOnlyList<ValueOverride> values = VehicleOptions.Overrides(
                text.Split(';', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries), problems);
            if (values.Count > 0 && VehicleOptions.Read(paths[0], values, problems) is { } reading)
            {
                setUps.Add((string.Join(", ", values.Select(value => $"{value.Path} = {value.Value}")), reading.Vehicle));
            }
        }

        return [.. setUps];
    }

    /// <summary>What a set-up is called: its file's name, or where several have that name, its path.</summary>
    public static string NameOf(string path, string[] paths) =>
        paths.Count(other => Path.GetFileName(other) == Path.GetFileName(path)) == 1 ? Path.GetFileNameWithoutExtension(path) : path;
}
