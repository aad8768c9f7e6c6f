namespace BrakeBalance.Charts.Figures;

public static partial class FootFigures
{
    private static readonly (Tone Tone, Hatch Hatch)[] TravelStyles =
    [
        (Tone.Guide, Hatch.None), (Tone.Front, Hatch.Rising), (Tone.Rear, Hatch.Falling), (Tone.Ideal, Hatch.Dots),
            (Tone.Other, Hatch.Crossed),
        (Tone.Front, Hatch.Crossed), (Tone.Other, Hatch.Crossed),
    ];

    // A stack of nine bars cannot be told apart; the table keeps every part.
    private static string DrawnAs(string part) => part switch
    {
        "free play" or "push-rod gap" or "compensating ports" => "play",
        "front pads or shoes to contact" => "front contact",
        "rear pads or shoes to contact" => "rear contact",
        "compliance of calipers and drums" or "compression of the fluid" => "compliance and fluid",
        "trapped air" => "air",
        "lost circuit's piston to its end" => "lost circuit",
        _ => part,
    };

    /// <summary>What stands before the travel left where not everything that gives way is counted.</summary>
    internal static string AtMost(PedalTravel travel) => travel.NotCounted.IsEmpty ? "" : "at most ";

    /// <summary>The case that leaves least; of those that leave the same the first, which asks the most.</summary>
    internal static (string Name, PedalTravel Travel) Hardest(IReadOnlyList<(string Name, PedalTravel Travel)> cases) =>
        cases.MinBy(item => item.Travel.LeftToFloor?.Meters ?? double.NegativeInfinity);

    /// <summary>Where the pedal's travel goes, as stacked bars.</summary>
    /// <param name="cases">The budgets with a name each, the hardest first, of the same parts; the title tells the least left.</param>
    /// <param name="available">Travel from rest to the floor.</param>
    /// <param name="car">The car.</param>
    /// <param name="loadCase">Its load case, for the caption.</param>
    /// <param name="highest">End of the axis; null to fit the data.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <exception cref="ArgumentException">There is no case, or the cases differ in their parts.</exception>
    public static Figure Travel(
        IReadOnlyList<(string Name, PedalTravel Travel)> cases, Length available, Vehicle car, string loadCase, Length? highest = null,
            UnitSystem? units = null, string id = "travel")
    {
        Refuse.If(cases.Count == 0 || cases.Any(item =>
            !item.Travel.Parts.Select(part => part.Name).SequenceEqual(cases[0].Travel.Parts.Select(part => part.Name))),
            "A picture of the pedal's travel needs at least one case, and the same parts in every case.", nameof(cases));

        var figure = new FigureBuilder(id, units, car);
        (string hardest, PedalTravel first) = Hardest(cases);
        PedalTravelPart biggest = first.Parts.MaxBy(part => part.Travel.Meters);
        figure
            .Title(first.LeftToFloor is { } left
                ? Finding.Capital(AtMost(first) + figure.Text(Measure.Travel, left))
                    + $" are left to the floor ({hardest}); most goes into {biggest.Name}"
                : $"The pedal is at its end before the pressure is reached ({hardest})")
            .Describe(
                $"Travel of the pedal pad, by what uses it up. {car.Name}, {loadCase}."
                    + (first.NotCounted.Contains("hoses") ? "" : " Hoses at the greatest swelling that FMVSS 106 allows.")
                    + (first.NotCounted.IsEmpty ? "" : " Not counted, for the file has no number for how far they give way: "
                        + $"{string.Join(", ", first.NotCounted)}."),
                string.Join(" ", cases.Select(item =>
                    $"{Finding.Capital(item.Name)}: " + string.Join(", ", item.Travel.Parts.Where(part => part.Travel.Millimeters >= 0.05)
                    .Select(part => $"{part.Name} {figure.Text(Measure.Travel, part.Travel)}")) + ".")))
            .Categories("Case", cases.Select(item => item.Name))
            .Y("Pedal travel", "s", Measure.Travel, 0, highest?.Meters)
            .StackingBars();
        string[] groups = [.. first.Parts.Select(part => DrawnAs(part.Name)).Distinct()];
        foreach ((int i, string group) in groups.Index())
        {
            double[] metres = [.. cases.Select(item =>
                item.Travel.Parts.Where(part => DrawnAs(part.Name) == group).Sum(part => part.Travel.Meters))];
            (Tone tone, Hatch hatch) = TravelStyles[i % TravelStyles.Length];
            if (metres.Max() >= 5e-5)
            {
                figure.Bars(group, metres, tone, hatch);
            }
        }

        figure.Level("floor", available.Meters, Tone.Main, Dash.Solid);
        if (available > PedalTravel.WantedReserve)
        {
            figure.Level("reserve wanted", (available - PedalTravel.WantedReserve).Meters);
        }

        return figure.Table(table =>
        {
            table.Words("Part", [.. first.Parts.Select(part => part.Name), "sum", "left to the floor"]);
            foreach ((string name, PedalTravel travel) in cases)
            {
                table.Column(Finding.Capital(name), Measure.Travel,
                    [.. travel.Parts.Select(part => (double?)part.Travel.Meters), travel.Pad?.Meters, travel.LeftToFloor?.Meters]);
            }
        }).Build();
    }
}
