using BrakeBalance.Choosing;

namespace BrakeBalance.Charts.Tables;

/// <summary>Tables of a choice of parts: the sets found, what each answers to the targets, what there is to buy.</summary>
public static class ChoiceTables
{
    /// <summary>The sets that a search shows, each with what it is shown for, what it breaks, and of which cars it holds.</summary>
    /// <param name="choice">What was asked.</param>
    /// <param name="result">What the search found.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="drawn">Whether the cars drawn from the file's ranges are asked too; with ranges that takes long.</param>
    /// <returns>The table; its title is the answer.</returns>
    public static NamedTable Sets(Choice choice, ChoiceResult result, UnitSystem? units = null, bool drawn = true)
    {
        ArgumentNullException.ThrowIfNull(choice);
        ArgumentNullException.ThrowIfNull(result);
        var words = new ChoiceWords(choice, result, units ?? Display.Units);
        IReadOnlyList<Proposal> sets = result.Sets;
        TableBuilder table = new TableBuilder(units)
            .Words("Set", sets.Select((_, i) => Number(i + 1)))
            .Words("Shown for", sets.Select((_, i) => words.ShownFor(i)))
            .Words("New parts", sets.Select(ChoiceWords.PartsOf))
            .Words("Price", sets.Select(set => words.PriceOf(set, "")))
            .Words("Mass", sets.Select(words.MassOf))
            .Words("Breaks", sets.Select(words.Broken));
        bool all = drawn || choice.Car.Uncertainty is null;
        return new()
        {
            Id = "choice-sets",
            Title = words.Answer,
            Caption = words.Tried
                + (all ? "" : " For how many cars of the file's ranges a set holds is said once all are asked."),
            Table = (all ? table.Words("Holds for", sets.Select((_, i) => words.HoldsFor(i))) : table).Build(),
        };
    }

    /// <summary>Each target with what was wanted, what the car answers as it is, and what it answers with each set.</summary>
    /// <param name="choice">What was asked.</param>
    /// <param name="result">What the search found.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Answers(Choice choice, ChoiceResult result, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(result);
        UnitSystem system = units ?? Display.Units;
        var words = new ChoiceWords(choice, result, system);
        TableBuilder table = new TableBuilder(system)
            .Words("Target", words.Asked.Select(target => target.Name))
            .Words("Wanted", words.Asked.Select(words.Wanted))
            .Words("Met by", words.Asked.Select(words.Met))
            .Words("Present", words.Asked.Select(target => target.Text(words.Present[(int)target.Kind], system)));
        foreach ((int i, Proposal set) in result.Sets.Index())
        {
            table.Words($"Set {Number(i + 1)}", words.Asked.Select(target => target.Text(set.Values[(int)target.Kind], system)));
        }

        return new()
        {
            Id = "choice-answers",
            Title = "What each set answers to the targets",
            Caption = $"{words.Conditions} Met by: {ChoiceWords.MetBy}",
            Table = table.Build(),
        };
    }

    /// <summary>One entry of a vehicle file at several values: force and travel of the pedal, and their product.</summary>
    /// <param name="text">The vehicle file; it says what lies between foot and line pressure.</param>
    /// <param name="path">The entry.</param>
    /// <param name="values">Its values, with their units; one that makes no car is left out.</param>
    /// <param name="what">What the entry is.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The table's short name.</param>
    /// <returns>The table, its first row the car as it is.</returns>
    public static NamedTable OneByOne(
        string text, string path, IEnumerable<string> values, string what, UnitSystem? units = null, string id = "one-by-one")
    {
        ArgumentNullException.ThrowIfNull(values);
        ArgumentException.ThrowIfNullOrEmpty(what);
        (string Name, double[] Answers)[] rows =
        [
            .. values.Select(value => (value, Answers(VehicleText.Set(text, path, value)))).Prepend(("as it is", Answers(text)))
                .Where(row => row.Item2 is not null).Select(row => (row.Item1, row.Item2!)),
        ];
        static double Product(double[] answers) => answers[(int)TargetKind.PedalForceFull] * answers[(int)TargetKind.PedalTravelFull];
        string name = Invariant.Capital(what);
        IEnumerable<double?> Column(Func<double[], double> of) =>
            rows.Select(row => of(row.Answers) is var value && double.IsFinite(value) ? value : (double?)null);
        return new()
        {
            Id = id,
            Title = $"{name} trades force for travel",
            Caption = "First load case, all else as it is. Nothing stands where the pedal reaches the floor first.",
            Table = new TableBuilder(units)
                .Words(name, rows.Select(row => row.Name))
                .Rounded("Pedal force at 1.00 g", Measure.ControlForce, Column(row => row[(int)TargetKind.PedalForceFull]))
                .Rounded("Pedal force at 0.50 g, no assist", Measure.ControlForce,
                    Column(row => row[(int)TargetKind.PedalForceHalfNoAssist]))
                .Rounded("Pedal travel at 1.00 g", Measure.Travel, Column(row => row[(int)TargetKind.PedalTravelFull]))
                .Rounded("Force times travel over the present", Measure.Percent,
                    Column(row => Product(row) / Product(rows[0].Answers)))
                .Build(),
        };

        static double[]? Answers(string file) => VehicleFile.TryRead(file).Reading?.Vehicle is { Control: not null } car
            ? Banded.Try(() => ChosenCar.Answers(
                car with { Uncertainty = null }, Targets.Read("{\"failures\": false}", null).Targets!, null)) : null;
    }

    /// <summary>The parts of a set to buy, with their ratings and the entries of the vehicle file that they set.</summary>
    /// <param name="choice">What was asked.</param>
    /// <param name="result">What the search found.</param>
    /// <param name="set">One of its sets.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Shopping(Choice choice, ChoiceResult result, Proposal set, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(set);
        UnitSystem system = units ?? Display.Units;
        var words = new ChoiceWords(choice, result, system);
        return new()
        {
            Id = "shopping-list",
            Title = "Shopping list",
            Caption = "A part without a rating: ask its maker before it is bought.",
            Table = new TableBuilder(units)
                .Words("Part", [.. set.Parts.Select(part => part.Place), "together"])
                .Words("Name", [.. set.Parts.Select(part => part.Name), ""])
                .Words("Price", [.. set.Parts.Select(part => words.Price(part.Price)), words.PriceOf(set, "")])
                .Words("Mass", [.. set.Parts.Select(words.MassOf), words.MassOf(set)])
                .Words("Rated for",
                    [.. set.Parts.Select(part => part.Rating is { } bears ? Measure.LinePressure.Text(bears, system) : "not said"), ""])
                .Words("Sets", [.. set.Parts.Select(part => string.Join("; ", part.Sets.Select(one => $"{one.Path} = {one.Value}"))), ""])
                .Build(),
        };
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);
}
