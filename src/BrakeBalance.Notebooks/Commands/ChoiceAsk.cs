using BrakeBalance.Choosing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>What a choice of parts is asked of: a car, what is wanted, and what may be fitted.</summary>
/// <param name="Path">The vehicle file, as it was named.</param>
/// <param name="Car">The car as it is.</param>
/// <param name="Text">Its file without what was measured with the old parts.</param>
/// <param name="Targets">What is wanted.</param>
/// <param name="Parts">What may be fitted.</param>
internal sealed record ChoiceAsk(string Path, Vehicle Car, string Text, Targets Targets, PartsList Parts)
{
    /// <summary>Whether logs of the old parts were left aside.</summary>
    public bool LogsLeft { get; private init; }

    /// <summary>Reads the three files, with every problem of all of them.</summary>
    /// <exception cref="BadInputException">A file is missing or has problems.</exception>
    public static ChoiceAsk Read(Terminal terminal, string? file, string? targets, string? parts, List<string> problems)
    {
        VehicleReading? reading = VehicleOptions.ReadNamed(terminal, file, [], problems);
        string? text = file is null ? null : DocumentFile.Load(file, "a vehicle file").Text;
        bool logs = reading?.Logs is not null;
        text = logs ? VehicleText.Remove(text!, "measurements") : text;
        if (reading is not null && reading.Vehicle.Control is null)
        {
            problems.Add($"{file}: the file does not say what lies between foot and line pressure. "
                + "Accepted: pedal, assist and masterCylinder.");
        }

        (string? wanted, Problem? noTargets) = targets is null ? ("{}", null) : DocumentFile.Load(targets, "a file of targets");
        (Targets? read, IReadOnlyList<Problem> wrong) = wanted is null ? (null, [noTargets!]) : Targets.Read(wanted, reading?.Vehicle);
        problems.AddRange(wrong.Select(problem => $"{targets}: {problem}"));
        PartsList? list = null;
        if (parts is null)
        {
            problems.Add($"No list of parts is named; '{CommandLine.Name} choose starter parts FILE' writes one to begin with.");
        }
        else
        {
            (string? csv, Problem? noParts) = DocumentFile.Load(parts, "a list of parts");
            (list, IReadOnlyList<Problem> bad) = csv is null ? (null, [noParts! with { Accepted = "the path of a list of parts (CSV)" }])
                : PartsList.Read(new StringReader(csv), reading is null ? null : text);
            problems.AddRange(bad.Select(problem => $"{parts}: {problem}"));
            if (list?.Count > ChoiceSearch.Most)
            {
                problems.Add(string.Create(CultureInfo.InvariantCulture,
                    $"{parts}: {list.Count:#,0} combinations. Accepted: at most {ChoiceSearch.Most:#,0}; wider steps or fewer rows."));
            }
        }

        BadInputException.ThrowIfAny(problems);
        return new(file!, reading!.Vehicle, text!, read!, list!) { LogsLeft = logs };
    }
}
