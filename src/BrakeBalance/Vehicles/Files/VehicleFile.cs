using System.Text.Json.Nodes;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Reads vehicle files: JSON with comments, one car a file, every quantity a text with its unit.</summary>
public static class VehicleFile
{
    /// <summary>Reads a vehicle file.</summary>
    /// <param name="path">Path of the file.</param>
    /// <param name="overrides">Single values to take in place of the file's.</param>
    /// <returns>The vehicle, and which of its values are ranges.</returns>
    /// <exception cref="VehicleFileException">The file cannot be read or has problems; all of them are listed.</exception>
    public static VehicleReading Load(string path, params IEnumerable<ValueOverride> overrides)
    {
        (string? text, Problem? fault) = DocumentFile.Load(path, "a vehicle file");
        VehicleReading reading = text is null ? throw new VehicleFileException(path, [fault!]) : Read(text, path, overrides);
        return reading.Logs is { } logs ? reading with { Logs = logs.From(Path.GetDirectoryName(Path.GetFullPath(path))!) } : reading;
    }

    /// <summary>Reads the text of a vehicle file.</summary>
    /// <param name="text">The text.</param>
    /// <param name="source">File name or other origin, for messages.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The vehicle, and which of its values are ranges.</returns>
    /// <exception cref="VehicleFileException">The text has problems; all of them are listed.</exception>
    public static VehicleReading Read(string text, string source, params IEnumerable<ValueOverride> overrides)
    {
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = TryRead(text, overrides);
        return reading ?? throw new VehicleFileException(source, problems);
    }

    /// <summary>Reads the text of a vehicle file, giving problems back instead of throwing.</summary>
    /// <param name="text">The text.</param>
    /// <param name="overrides">Single values to take in place of the text's.</param>
    /// <returns>The reading, or null and every problem found.</returns>
    public static (VehicleReading? Reading, IReadOnlyList<Problem> Problems) TryRead(string text,
        params IEnumerable<ValueOverride> overrides)
    {
        List<string> filled = [];
        DocumentReading<VehicleDocument> reading = ReadDocument(text, filled, overrides);
        if (reading.Partial is not { } document)
        {
            return (null, reading.Problems);
        }

        var builder = new VehicleBuilder(reading.Problems);
        if (builder.Build(document) is not { } vehicle)
        {
            return (null, [.. reading.Problems, .. builder.Problems]);
        }

        return EndsOf(reading, filled) is { Count: > 0 } ends
            ? (null, ends)
            : (new VehicleReading(SourceText.Remember(Uncertain(vehicle, reading, filled), new SourceText(text, [.. overrides])))
            {
                FromCarClass = filled,
                Warnings = Plausibility.Of(document, vehicle, filled),
                Logs = document.Measurements is { } named
                    && ((named.Gauges ?? named.Stops ?? named.Series) is not null || named.Fitted == true)
                    ? new MeasurementLogs(named.Gauges, named.Stops, named.Series)
                    {
                        Fitted = named.Fitted == true,
                        SafeKnee = named.SafeKnee,
                        SafeFrontShare = named.SafeFrontShare,
                    }
                    : null,
            }, []);
    }

    // The spread of the friction is one of the conditions: said there, or by the range of the friction itself.
    private static Vehicle Uncertain(Vehicle vehicle, DocumentReading<VehicleDocument> reading, List<string> filled)
    {
        ConditionsDocument? said = reading.Document!.Conditions;
        double Spread(double usual, double? given, string path) =>
            given ?? (reading.Targets.FirstOrDefault(of => of.Range.Path == path) is { } target
                ? Math.Min(0.5, target.RelativeHalfWidth) : usual);
        PerAxle<double> spread = vehicle.Conditions.FrictionSpread;
        Vehicle middle = vehicle with
        {
            Conditions = vehicle.Conditions with
            {
                FrictionSpread = new(
                    Spread(spread.Front, said?.FrontFrictionSpread, "front.brake.friction"),
                        Spread(spread.Rear, said?.RearFrictionSpread, "rear.brake.friction")),
            },
        };
        RangeTarget[] targets = [.. reading.Ranges.Select(range => reading.Targets.First(target => target.Range.Path == range.Path))];
        ValueRange[] ranges = [.. reading.Ranges.Zip(targets, (range, target) => range with
        {
            IsTypical = filled.Contains(range.Path),
            RelativeHalfWidth = target.RelativeHalfWidth,
        })];
        return ranges.Length == 0 ? middle : middle with
        {
            Uncertainty = new VehicleUncertainty(middle, ranges, fractions =>
            {
                for (int i = 0; i < targets.Length; i++)
                {
                    targets[i].Set(fractions[i]);
                }

                return new VehicleBuilder([]).Build(reading.Document!);
            }),
        };
    }

    // A car whose range has an end that cannot be is found here, not when a command tries that end.
    private static List<Problem> EndsOf(DocumentReading<VehicleDocument> reading, List<string> filled)
    {
        List<Problem> problems = [];
        foreach (RangeTarget target in reading.Targets.Where(target => !filled.Contains(target.Range.Path)))
        {
            foreach (int end in (int[])[0, 1])
            {
                target.Set(end);
                var builder = new VehicleBuilder([]);
                builder.Build(reading.Document!);
                problems.AddRange(builder.Problems.Select(problem =>
                    problem with
                    {
                        What = $"With {target.Range.Path} at {(end == 0 ? target.Range.Low : target.Range.High)}: {problem.What}",
                    }));
            }

            target.Set(0.5);
        }

        return problems;
    }

    internal static DocumentReading<VehicleDocument> ReadDocument(string text, List<string> filled, IEnumerable<ValueOverride> overrides)
    {
        // A value that an override sets is no longer the class's.
        PerAxle<BrakeDocument?> before = default;
        DocumentReading<VehicleDocument> reading = DocumentFile.Read<VehicleDocument>(
            text,
            json =>
            {
                CarClasses.Fill(json, filled);
                before = new(Before(json, "front"), Before(json, "rear"));
            },
            overrides);
        filled.RemoveAll(path => overrides.Any(change => change.Path == path));
        Hold(reading.Partial?.Front?.Brake, before.Front);
        Hold(reading.Partial?.Rear?.Brake, before.Rear);
        return reading;

        // The brake whose friction alone is set otherwise; whoever gives a torque of another brake gives the friction with it.
        BrakeDocument? Before(JsonObject json, string axle)
        {
            string[] set = [.. overrides.Where(change => change.Path.StartsWith(axle + ".brake", StringComparison.Ordinal))
                .Select(change => change.Path.Split('.')[^1])];
            bool another = set.Any(entry => entry is "brake" or "type" or "brakeFactor" or "torque" or "torquePressure");
            return another || !set.Contains("friction") ? null
                : (BrakeDocument?)new DocumentReader().ReadDocument(typeof(BrakeDocument), (json[axle] as JsonObject)?["brake"], "");
        }

        static void Hold(BrakeDocument? brake, BrakeDocument? before) => brake?.FrictionOfFile = (before ?? brake).Friction;
    }
}

/// <summary>What came of reading a vehicle file.</summary>
/// <param name="Vehicle">The vehicle; a value given as a range stands at its middle.</param>
public sealed record VehicleReading(Vehicle Vehicle)
{
    /// <summary>The values given as ranges.</summary>
    public IReadOnlyList<ValueRange> Ranges => Vehicle.Uncertainty?.Ranges ?? [];

    /// <summary>Paths of the entries that the file leaves out and its car class supplies (common practice).</summary>
    public IReadOnlyList<string> FromCarClass { get; init; } = [];

    /// <summary>
    /// The logs that the file names as measured on the car; null when it names none. Their paths are whole where the file was loaded by
    /// its path, and as written where a text was read.
    /// </summary>
    public MeasurementLogs? Logs { get; init; }

    /// <summary>What the file says that can be, but hardly is (common practice).</summary>
    public IReadOnlyList<Warning> Warnings { get; init; } = [];
}
