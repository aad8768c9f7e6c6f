using BrakeBalance.Choosing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>What a choice of parts is asked of, from three files.</summary>
internal static class ChoiceAsk
{
    /// <summary>Reads the three files, with every problem of all of them.</summary>
    /// <exception cref="BadInputException">A file is missing or has problems.</exception>
    public static Choice Read(Terminal terminal, string? file, string? targets, string? parts, List<string> problems)
    {
        VehicleReading? reading = VehicleOptions.ReadNamed(terminal, file, [], problems);
        string? text = reading is null ? null : DocumentFile.Load(file!, "a vehicle file").Text;
        string? Load(string path, string what, string accepted)
        {
            (string? loaded, Problem? none) = DocumentFile.Load(path, what);
            if (loaded is null)
            {
                problems.Add($"{path}: {none! with { Accepted = accepted }}");
            }

            return loaded;
        }

        string? wanted = targets is null ? "{}" : Load(targets, "a file of targets", "the path of a file of targets (JSON)");
        string? list = null;
        if (parts is null)
        {
            problems.Add($"No list of parts is named; '{CommandLine.Name} choose starter parts FILE --vehicle {file ?? "my-car.json"}' "
                + "writes one to begin with.");
        }
        else
        {
            list = Load(parts, "a list of parts", "the path of a list of parts (CSV)");
        }

        var choice = Choice.Read(text, wanted, list, (which, found) => problems.AddRange(found.Select(problem =>
            $"{(which == ChoiceText.Car ? file : which == ChoiceText.Targets ? targets : parts)}: {problem}")), reading?.Vehicle);
        BadInputException.ThrowIfAny(problems);
        return choice!;
    }
}
