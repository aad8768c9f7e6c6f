namespace BrakeBalance.Vehicles;

/// <summary>The logs that a vehicle file names as measured on the car itself.</summary>
/// <param name="Gauges">Path of the gauge log; null when none is named.</param>
/// <param name="Stops">Path of the log of test stops; null when none is named.</param>
/// <param name="Series">Path of the log over time; null when none is named.</param>
public sealed record MeasurementLogs(string? Gauges, string? Stops, string? Series)
{
    /// <summary>Whether what the logs say stands in the vehicle file already, so that it must not count again.</summary>
    public bool Fitted { get; init; }

    /// <summary>The highest knee that the fitted stops allow; null when the file keeps none.</summary>
    internal Pressure? SafeKnee { get; init; }

    /// <summary>The least front share of the rod force that they allow [–]; null when the file keeps none.</summary>
    internal double? SafeFrontShare { get; init; }

    /// <summary>The logs with their paths counted from a folder.</summary>
    /// <param name="folder">The vehicle file's folder.</param>
    /// <returns>The same logs with whole paths.</returns>
    public MeasurementLogs From(string folder)
    {
        string? Whole(string? path) =>
            path is null || path.Contains('\0', StringComparison.Ordinal) ? path : Path.GetFullPath(path, folder);
        return this with { Gauges = Whole(Gauges), Stops = Whole(Stops), Series = Whole(Series) };
    }
}

/// <summary>What was measured on a car, carried by it to whoever answers for it.</summary>
public interface IOwnMeasurements
{
    /// <summary>The logs it was read from.</summary>
    MeasurementLogs Logs { get; }
}
