namespace BrakeBalance.Charts.Publishing;

/// <summary>A figure that can be made for any car, or for those that have what it needs.</summary>
public sealed record CatalogueEntry
{

    private readonly PlainText? _plain;
    private readonly Func<CarStudy, UnitSystem, Figure?>? _make;

    internal CatalogueEntry()
    {
    }

    /// <summary>The figure's name: lower-case letters, digits and hyphens.</summary>
    public required string Name { get; init; }

    /// <summary>What a car must have for it, in words; null when every car will do.</summary>
    public string? Needs { get; init; }

    /// <summary>Whether it shows what was measured on the car, so that it tells of invented logs.</summary>
    public bool IsMeasured { get; init; }

    /// <summary>Whether it is drawn from the car; a table of a standard is not.</summary>
    public bool IsOfTheCar { get; init; } = true;

    /// <summary>What it shows, in plain words.</summary>
    public string Shows => Plain.Caption;

    /// <summary>Marks and words of its plain variant.</summary>
    internal PlainText Plain
    {
        get => _plain ?? throw new InvalidOperationException($"The entry '{Name}' has no plain words.");
        init => _plain = value;
    }

    /// <summary>Makes the figure; null when the car lacks what it needs.</summary>
    internal Func<CarStudy, UnitSystem, Figure?> Make
    {
        get => _make ?? throw new InvalidOperationException($"The entry '{Name}' does not say how its figure is made.");
        init => _make = value;
    }

    /// <summary>A figure of this entry as it is published: where its logs are invented, or the file gives ranges, it says so.</summary>
    /// <param name="figure">The figure.</param>
    /// <param name="vehicle">The car it was made for.</param>
    /// <returns>The figure, its caption marked where that is needed.</returns>
    public Figure Marked(Figure figure, Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(figure);
        string[] marks =
        [
            .. IsMeasured && OwnMeasurements.Of(vehicle)?.AreInvented == true ? (string[])["Invented measurements."] : [],
            .. vehicle.Uncertainty is null || IsMeasured || !IsOfTheCar
                || figure.Caption.EndsWith(FigureBuilder.Middles, StringComparison.Ordinal) ? (string[])[] : [FigureBuilder.Middles],
        ];
        return marks.Length == 0 ? figure : figure with { Caption = string.Join(' ', [figure.Caption, .. marks]) };
    }

    /// <summary>Makes the figure for a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>The figure; null when the car lacks what <see cref="Needs"/> says.</returns>
    public Figure? For(Vehicle vehicle, UnitSystem units) => Make(new CarStudy(vehicle), units);
}
