using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Vehicles;

/// <summary>A car of which some values are known as ranges only: gives the car for any choice of values within them.</summary>
/// <remarks>The file is read once; a draw sets the entries that are ranges and builds the vehicle anew. Not for use by several threads at a time.</remarks>
public sealed class UncertainVehicle
{
    private readonly VehicleDocument _document;
    private readonly IReadOnlyList<RangeTarget> _targets;

    private UncertainVehicle(VehicleReading middle, VehicleDocument document, IReadOnlyList<RangeTarget> targets) =>
        (Middle, _document, _targets) = (middle, document, targets);

    /// <summary>The reading with every range at its middle.</summary>
    public VehicleReading Middle { get; }

    /// <summary>The ranges, in the order in which <see cref="Draw"/> takes them.</summary>
    public IReadOnlyList<ValueRange> Ranges => Middle.Ranges;

    /// <summary>Reads a vehicle file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="overrides">Single values to take in place of the file's.</param>
    /// <returns>The car.</returns>
    /// <exception cref="VehicleFileException">The file cannot be read or has problems; all of them are listed.</exception>
    public static UncertainVehicle Load(string path, params IEnumerable<ValueOverride> overrides)
    {
        (string? text, Problem? fault) = DocumentFile.Load(path, "a vehicle file");
        return text is null ? throw new VehicleFileException(path, [fault!]) : Read(text, path, overrides);
    }

    /// <summary>Reads the text of a vehicle file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="source">File name or other origin, for messages.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The car.</returns>
    /// <exception cref="VehicleFileException">The text has problems; all of them are listed.</exception>
    public static UncertainVehicle Read(string text, string source, params IEnumerable<ValueOverride> overrides)
    {
        ValueOverride[] changes = [.. overrides];
        VehicleReading middle = VehicleFile.Read(text, source, changes);
        DocumentReading<VehicleDocument> reading = VehicleFile.ReadDocument(text, [], changes);
        RangeTarget[] targets = [.. middle.Ranges.Select(range => reading.Targets.First(target => target.Range.Path == range.Path))];
        return new UncertainVehicle(middle, reading.Document!, targets);
    }

    /// <summary>The car for a choice of values.</summary>
    /// <param name="fractions">For each range where in it the value lies [–]: 0 for the lower end, 1 for the upper.</param>
    /// <returns>The car; null when these values do not go together, such as a friction at which a shoe locks by itself.</returns>
    /// <exception cref="ArgumentException">There are not as many fractions as ranges.</exception>
    public Vehicle? Draw(ReadOnlySpan<double> fractions)
    {
        if (fractions.Length != _targets.Count)
        {
            throw new ArgumentException(FormattableString.Invariant($"{_targets.Count} fractions are needed, one for each range; there are {fractions.Length}."), nameof(fractions));
        }

        for (int i = 0; i < fractions.Length; i++)
        {
            _targets[i].Set(fractions[i]);
        }

        return new VehicleBuilder([]).Build(_document);
    }

    /// <summary>Half the width of a range over its middle [–].</summary>
    /// <param name="index">Which range.</param>
    /// <returns>Relative half width.</returns>
    public double RelativeHalfWidth(int index) => _targets[index].RelativeHalfWidth;
}
