using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Choosing;

/// <summary>What a choice of parts is asked of: a car, what is wanted, and what may be fitted.</summary>
public sealed record Choice
{
    private Choice(Vehicle car, string text, Targets targets, PartsList parts) => (Car, Text, Targets, Parts) = (car, text, targets, parts);

    /// <summary>The car as it is.</summary>
    public Vehicle Car { get; }

    /// <summary>Its file without what was measured with the old parts.</summary>
    public string Text { get; }

    /// <summary>What is wanted.</summary>
    public Targets Targets { get; }

    /// <summary>What may be fitted.</summary>
    public PartsList Parts { get; }

    /// <summary>Whether logs of the old parts were left aside.</summary>
    public bool LogsLeft { get; private init; }

    /// <summary>Reads what is asked.</summary>
    /// <param name="text">The text of a vehicle file that says what lies between foot and line pressure.</param>
    /// <param name="targets">The text of a file of targets, JSON; <c>{}</c> for common practice.</param>
    /// <param name="parts">The text of a list of parts, CSV.</param>
    /// <returns>What is asked.</returns>
    /// <exception cref="FormatException">A text cannot be used; every problem of all three stands in the message.</exception>
    public static Choice Of(string text, string targets, string parts)
    {
        List<Problem> problems = [];
        return Read(text, targets, parts, (_, found) => problems.AddRange(found)) ?? throw new FormatException(string.Join('\n', problems));
    }

    /// <summary>Reads what is asked, and tells every problem with the text that has it.</summary>
    /// <param name="text">The vehicle file; null when there is none to read.</param>
    /// <param name="targets">The file of targets; null when there is none to read.</param>
    /// <param name="parts">The list of parts; null when there is none to read.</param>
    /// <param name="wrong">Told the problems of each text.</param>
    /// <param name="car">The car, when its file was read already, with its logs; null to read it.</param>
    /// <returns>What is asked; null when anything is wrong or lacks.</returns>
    internal static Choice? Read(string? text, string? targets, string? parts, Action<ChoiceText, IReadOnlyList<Problem>> wrong,
        Vehicle? car = null)
    {
        bool sound = text is not null && targets is not null && parts is not null;
        bool logs = false;
        void Tell(ChoiceText which, IReadOnlyList<Problem> problems)
        {
            if (problems.Count > 0)
            {
                sound = false;
                wrong(which, problems);
            }
        }

        if (text is not null)
        {
            (VehicleReading? reading, IReadOnlyList<Problem> ofCar) = VehicleFile.TryRead(text);
            Tell(ChoiceText.Car, ofCar);
            car ??= reading?.Vehicle;
            logs = reading?.Logs is not null;
            text = logs ? VehicleText.Remove(text, "measurements") : text;
        }

        if (car is { Control: null })
        {
            Tell(ChoiceText.Car,
                [new("", "the file does not say what lies between foot and line pressure.", "pedal, assist and masterCylinder")]);
        }

        Targets? wanted = null;
        if (targets is not null)
        {
            (wanted, IReadOnlyList<Problem> ofTargets) = Targets.Read(targets, car);
            Tell(ChoiceText.Targets, ofTargets);
        }

        PartsList? list = null;
        if (parts is not null)
        {
            (list, IReadOnlyList<Problem> ofParts) = PartsList.Read(new StringReader(parts), car is null ? null : text);
            Tell(ChoiceText.Parts, ofParts);
            if (list?.Count > ChoiceSearch.Most)
            {
                Tell(ChoiceText.Parts, [new("", Invariant.Text($"{list.Count:#,0} combinations."),
                    Invariant.Text($"at most {ChoiceSearch.Most:#,0}; wider steps or fewer rows"))]);
            }
        }

        return sound ? new(car!, text!, wanted!, list!) { LogsLeft = logs } : null;
    }
}

/// <summary>The texts that a choice is read from.</summary>
internal enum ChoiceText
{
    Car,
    Targets,
    Parts,
}
