using System.Text.Json.Nodes;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Charts.Live;

/// <summary>A car as a live page has it: what was read, or what is wrong with it.</summary>
internal sealed record LiveCar(
    VehicleReading? Reading, CarStudy? Study, IReadOnlyList<Problem> Problems, IReadOnlyList<string> LogProblems, string Unread = "")
{
    /// <summary>What its logs say; null without any that can be read.</summary>
    public OwnMeasurements? Own => Study?.Car.Measured as OwnMeasurements;

    /// <summary>Whether the car was changed since its logs were fitted.</summary>
    public bool IsChanged => Study is not null && OwnMeasurements.AreBeforeChange(Study.Car);
}

/// <summary>The cars last asked for, so that one file is not read again for each figure.</summary>
internal sealed class LiveCars
{
    /// <summary>Where a request holds, beside the logs, the file of the car as it was when they were fitted.</summary>
    public const string LogsOf = "of";

    private const int MostRows = 5000;

    private readonly Lately<LiveCar> _cars = new(8);
    private readonly Lately<(OwnMeasurements? Own, IReadOnlyList<string> Wrong)> _measured = new(4);

    public LiveCar Of(JsonObject request)
    {
        string text = LiveDesk.Word(request, "text") ?? "";
        var logs = request["logs"] as JsonObject;
        string key = string.Join('\0', text, request["set"]?.ToJsonString(), logs?.ToJsonString());
        return _cars.Of(key, () => Read(text, Overrides(request["set"]), logs));
    }

    /// <summary>The values that a request puts in place of the file's.</summary>
    public static ValueOverride[] Overrides(JsonNode? set) =>
    [
        .. (set as JsonArray ?? []).OfType<JsonArray>().Where(pair => pair.Count == 2)
            .Select(pair => new ValueOverride(pair[0]!.ToString(), pair[1]!.ToString())),
    ];

    private LiveCar Read(string text, ValueOverride[] set, JsonObject? logs)
    {
        (VehicleReading? reading, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(text, set);
        if (reading is null)
        {
            return new LiveCar(null, null, problems, []);
        }

        string? gauges = Log(logs, "gauges"), stops = Log(logs, "stops");
        string[] tooLong = [.. new[] { ("gauges", gauges), ("stops", stops) }
            .Where(log => log.Item2?.Count(letter => letter == '\n') > MostRows)
            .Select(log => Invariant.Text($"{log.Item1}: more rows than this page fits. Accepted: at most {MostRows:N0}; ")
                + "the command 'measure' takes more.")];
        if (tooLong.Length > 0)
        {
            return new LiveCar(reading, new CarStudy(reading.Vehicle), [], tooLong);
        }

        string unread = Unread(reading.Logs, gauges, stops);
        if ((gauges ?? stops) is null && reading.Logs?.Fitted != true)
        {
            return new LiveCar(reading, new CarStudy(reading.Vehicle), [], [], unread);
        }

        // The page names the logs as the file does, or as it saves them.
        MeasurementLogs named = (reading.Logs ?? new(null, null, null)) with
        {
            Gauges = gauges is null ? null : reading.Logs?.Gauges ?? "gauges.csv",
            Stops = stops is null ? null : reading.Logs?.Stops ?? "stops.csv",
            Series = null,
        };
        // What was entered or moved since the logs were fitted is a change of the car that they are of.
        string fitted = Log(logs, LogsOf) ?? text;
        string key = string.Join('\0', VehicleText.WithoutControlAndKnee(fitted), gauges, stops);
        Vehicle Fitted() =>
            (fitted == text && set.Length == 0 ? null : VehicleFile.TryRead(fitted).Reading?.Vehicle) ?? reading.Vehicle;
        (OwnMeasurements? read, IReadOnlyList<string> wrong) = _measured.Of(key, () => OwnMeasurements.Read(
            Fitted(), named, open: path => new StringReader((path == named.Gauges ? gauges : stops)!)));
        return new LiveCar(reading, new CarStudy(read?.CarriedBy(reading.Vehicle) ?? reading.Vehicle), [], wrong, unread);
    }

    // A file that holds its logs' fit already is answered by it.
    private static string Unread(MeasurementLogs? named, string? gauges, string? stops)
    {
        string?[] names = named is null or { Fitted: true } ? []
            : [gauges is null ? named.Gauges : null, stops is null ? named.Stops : null];
        return names.OfType<string>().ToArray() is { Length: > 0 } found
            ? $"The file names {string.Join(" and ", found)}: not read here until opened under Measure and fitted." : "";
    }

    private static string? Log(JsonObject? logs, string key) =>
        logs is not null && LiveDesk.Word(logs, key) is { } text && text.Trim().Length > 0 ? text : null;
}
