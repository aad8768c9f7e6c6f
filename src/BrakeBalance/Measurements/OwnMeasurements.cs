using System.Collections.Concurrent;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Measurements;

/// <summary>What was measured on a car itself: its logs, what they say of valve and brakes, and whether they fit the car at all.</summary>
public sealed class OwnMeasurements : IOwnMeasurements
{
    private readonly ConcurrentDictionary<int, SettingAnswer> _chance;
    private readonly Lazy<CarEstimate?> _estimate;
    private readonly Lazy<IReadOnlyList<string>> _doubts;

    private OwnMeasurements(
        Vehicle file, MeasurementLogs logs, LogReading<GaugePair>? gauges, LogReading<TestStop>? stops, LogReading<MotionSample>? series,
            int checkSteps, OwnMeasurements? known = null)
    {
        (File, Logs, Gauges, Stops, Series) = (file, logs, gauges, stops, series);
        Valve = gauges is null ? null : ValveFitting.Analyse(gauges.Rows, file);
        Car = logs.Fitted ? file : AsRead(file, Valve);
        _chance = known?._chance ?? new();
        _estimate = new(() => logs.Fitted || stops is null ? null
            : CarEstimation.Estimate(
                Car, stops.Rows, Beliefs(file, Valve) with { CheckSteps = checkSteps }, known?.Estimate?.Posterior));
        _doubts = new(() => [.. Valve is null ? [] : FitCheck.Of(file, gauges!.Rows, Valve), .. Estimate?.Doubts ?? []]);
    }

    /// <summary>
    /// What is known of a car before its next stop: the estimate that its own stops give, or what its file says, on all surfaces that
    /// could be tested.
    /// </summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="surfaces">Surfaces that could be tested; none for those of the stops so far, or dry and wet before the first.</param>
    public static CarEstimate EstimateOn(Vehicle vehicle, IReadOnlyList<string> surfaces)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        OwnMeasurements? own = Of(vehicle);
        IReadOnlyList<TestStop> made = own is { Stops: { } log, Logs.Fitted: false } ? log.Rows : [];
        if (surfaces.Count == 0 && made.Count > 0)
        {
            return own!.Estimate!;
        }

        string[] tested = surfaces.Count > 0 ? [.. surfaces] : ["dry", "wet"];
        return CarEstimation.Estimate(own?.Car ?? vehicle, made, Beliefs(own?.File ?? vehicle, own?.Valve) with
        {
            Surfaces = [.. tested.Select(SurfaceCondition.Typical)],
        });
    }

    private static EstimationOptions Beliefs(Vehicle file, GaugeAnalysis? read) =>
        new() { Prior = ParameterSpread.From(file), Adjuster = read?.Calibration };

    // Slope, hysteresis and adjuster as read, the latter as a fitted file has it; the release follows the falling branch.
    private static Vehicle AsRead(Vehicle file, GaugeAnalysis? read) =>
        WithValve(file, read?.Slope is { } slope ? Math.Clamp(slope.Estimate, 0, 1) : null, read?.Hysteresis?.Estimate,
            read?.Calibration is { KneePerTurn: { Low.Bars: > 0 } turn } screw ? (Middle(screw.KneeAt(0)), Middle(turn)) : null);

    private static Pressure Middle(Interval<Pressure> band) => (band.Low + band.High) / 2;

    /// <summary>A car whose valve has another slope, hysteresis and adjuster; null leaves what is there.</summary>
    internal static Vehicle WithValve(
        Vehicle file, double? slope, Pressure? hysteresis, (Pressure KneeBackedOff, Pressure KneePerTurn)? adjuster)
    {
        if (file.Hydraulics.RearProportioningValve is not { } valve)
        {
            return file;
        }

        ProportioningValve found = valve with
        {
            Slope = slope ?? valve.Slope,
            Hysteresis = hysteresis ?? valve.Hysteresis,
            Adjustment = adjuster is var (fullyOut, turn) && valve.Adjustment is not null
                ? valve.Adjustment with { KneeBackedOff = fullyOut, KneePerTurn = turn } : valve.Adjustment,
        };
        return file with { Hydraulics = file.Hydraulics with { RearValves = file.Hydraulics.RearValves.Replace(valve, found) } };
    }

    /// <inheritdoc/>
    public MeasurementLogs Logs { get; }

    /// <summary>The car as its file describes it.</summary>
    public Vehicle File { get; }

    /// <summary>The car the estimate is of: that of the file, with the valve that the gauges found.</summary>
    public Vehicle Car { get; }

    /// <summary>Readings of two gauges; null when no log of them is named.</summary>
    public LogReading<GaugePair>? Gauges { get; }

    /// <summary>What the gauges say; null without them.</summary>
    public GaugeAnalysis? Valve { get; }

    /// <summary>Test stops; null when no log of them is named.</summary>
    public LogReading<TestStop>? Stops { get; }

    /// <summary>A logger's or phone's readings; null when no log of them is named.</summary>
    public LogReading<MotionSample>? Series { get; }

    /// <summary>
    /// What the stops say of the car, computed when first asked for; null without stops, or when the file holds their fit already.
    /// </summary>
    public CarEstimate? Estimate => _estimate.Value;

    /// <summary>
    /// Why the logs cannot be of this car as they are written, in sentences; empty when they fit. Computed when first asked for.
    /// </summary>
    public IReadOnlyList<string> Doubts => _doubts.Value;

    /// <summary>Whether one of the logs says of itself that it is invented.</summary>
    public bool AreInvented => Gauges?.IsInvented == true || Stops?.IsInvented == true || Series?.IsInvented == true;

    /// <summary>Every line that was left out of a log, with the file, the line and the reason.</summary>
    public IReadOnlyList<string> LeftOut =>
    [
        .. (Gauges?.Problems ?? []).Select(problem => $"{Logs.Gauges}: {problem}"),
        .. (Stops?.Problems ?? []).Select(problem => $"{Logs.Stops}: {problem}"),
        .. (Series?.Problems ?? []).Select(problem => $"{Logs.Series}: {problem}"),
    ];

    /// <summary>Reads the logs that a vehicle file names.</summary>
    /// <param name="reading">The vehicle file.</param>
    /// <param name="allowLostRows">Whether any number of rows may be lost.</param>
    /// <returns>The reading whose car carries what was measured, or every problem of the logs.</returns>
    public static (VehicleReading? Reading, IReadOnlyList<string> Problems) Attach(VehicleReading reading, bool allowLostRows = false)
    {
        ArgumentNullException.ThrowIfNull(reading);
        if (reading.Logs is not { } logs)
        {
            return (reading, []);
        }

        (Vehicle? car, IReadOnlyList<string> problems) = Measured(reading, logs, allowLostRows);
        if (car is null)
        {
            return (null, problems);
        }

        // The page reads logs as those of the car in its text.
        SourceText? source = SourceText.Of(reading.Vehicle);
        string?[] paths = [logs.Gauges, logs.Stops];
        return (reading with
        {
            Vehicle = SourceText.Remember(car, source is null || Of(car) is null ? source : source with
            {
                Logs = new[] { "gauges", "stops" }.Zip(paths).Where(log => log.Second is not null)
                    .ToDictionary(log => log.First, log => System.IO.File.ReadAllText(log.Second!)),
            }),
        }, []);
    }

    /// <summary>The car that carries what its logs say; they are of the car as its file has it, whatever else was asked for.</summary>
    /// <inheritdoc cref="Read"/>
    internal static (Vehicle? Car, IReadOnlyList<string> Problems) Measured(
        VehicleReading reading, MeasurementLogs logs, bool allowLostRows = false, int checkSteps = 0)
    {
        Vehicle? written = SourceText.Of(reading.Vehicle) is { Set.Count: > 0 } source
            ? VehicleFile.TryRead(source.Text).Reading?.Vehicle : null;
        (OwnMeasurements? own, IReadOnlyList<string> problems) = Read(written ?? reading.Vehicle, logs, allowLostRows, checkSteps);
        return (own?.CarriedBy(reading.Vehicle), problems);
    }

    /// <summary>Reads logs of a car.</summary>
    /// <param name="file">The car as its file describes it.</param>
    /// <param name="logs">Whole paths of the logs.</param>
    /// <param name="allowLostRows">Whether any number of rows may be lost.</param>
    /// <param name="checkSteps">Steps of the Metropolis chains that check the estimate; 0 for no check.</param>
    /// <param name="open">Opens the text of a path; null for files on disk.</param>
    /// <returns>What was measured, or every problem of the logs.</returns>
    public static (OwnMeasurements? Own, IReadOnlyList<string> Problems) Read(
        Vehicle file, MeasurementLogs logs, bool allowLostRows = false, int checkSteps = 0, Func<string, TextReader>? open = null)
    {
        ArgumentNullException.ThrowIfNull(file);
        ArgumentNullException.ThrowIfNull(logs);
        List<string> problems = [];
        LogReading<T>? Of<T>(string? path, Func<TextReader, LogReading<T>> read) =>
            path is null ? null : LogFile.Read(path, read, allowLostRows, problems, open);
        LogReading<GaugePair>? gauges = Of(logs.Gauges, LogReader.ReadGaugePairs);
        LogReading<TestStop>? stops = Of(logs.Stops, LogReader.ReadTestStops);
        LogReading<MotionSample>? series = Of(logs.Series, text => LogReader.ReadTimeSeries(text));
        if (series is not null && StopFinder.WhyTooFew(series.Rows) is { } few)
        {
            problems.Add($"{logs.Series}: {few}");
        }

        problems.AddRange((stops?.Rows ?? []).Where(stop => !allowLostRows && stop.LoadCase is { } name && file.LoadCases.All(load =>
                !string.Equals(load.Name, name, StringComparison.OrdinalIgnoreCase)))
            .GroupBy(stop => stop.LoadCase, StringComparer.OrdinalIgnoreCase).Select(same =>
                $"{logs.Stops}: load case \"{same.Key}\" (line{(same.Count() == 1 ? "" : "s")} "
                    + $"{string.Join(", ", same.Select(stop => stop.Line))}) is none of the car's. Accepted: {file.LoadCaseNames}."));
        if (file.Hydraulics.RearProportioningValve?.Adjustment is { Turns: var most })
        {
            problems.AddRange((gauges?.Rows.Select(pair => (logs.Gauges, pair.Line, pair.Turns)) ?? [])
                .Concat(stops?.Rows.Select(stop => (logs.Stops, stop.Line, stop.Turns)) ?? [])
                .Where(row => Math.Abs(row.Turns ?? 0) > most + 0.05)
                .Select(row => Invariant.Text($"{row.Item1}: line {row.Line}: turns: {row.Turns:0.##} is more than the file's ")
                    + Invariant.Text($"adjuster has. Accepted: up to {most:0.##}, counted from fully out.")));
        }

        return problems.Count > 0 ? (null, problems) : (new OwnMeasurements(file, logs, gauges, stops, series, checkSteps), []);
    }

    /// <summary>The car that carries these measurements, with the valve that the gauges found.</summary>
    public Vehicle Attached() => Car with { Measured = this };

    /// <summary>A car that carries these measurements: that of the file, set otherwise, or changed since they were made.</summary>
    /// <remarks>
    /// Where it differs in pedal, assist and the knee set at most, what the stops say is not fitted again unless one of them does not tell
    /// at which knee it was made.
    /// </remarks>
    internal Vehicle CarriedBy(Vehicle car)
    {
        bool ownValve = car.Hydraulics.DiffersInKneeOnly(File.Hydraulics);
        return ReferenceEquals(car, File) ? Attached()
            : !ownValve || !AreAlike(car, File) ? (ownValve && !Logs.Fitted ? AsRead(car, Valve) : car) with { Measured = this }
            : new OwnMeasurements(car, Logs, Gauges, Stops, Series, 0, Stops?.Rows.All(stop =>
                StopModel.KneeAt(Car, Valve?.Calibration, stop.Turns) is not null) == true ? this : null).Attached();
    }

    /// <summary>
    /// The rule of chance for the car, drawn once: pedal, assist and the knee set have no say in it but for the present setting.
    /// </summary>
    internal SettingAnswer Chance(SettingQuestion question, IProgress<double>? progress)
    {
        Vehicle asked = question.Vehicle with { Hydraulics = Car.Hydraulics, Control = Car.Control, Measured = Car.Measured };
        return asked == Car && question.Vehicle.Hydraulics.DiffersInKneeOnly(Car.Hydraulics)
            ? RobustSetting.At(_chance.GetOrAdd(question.Draws, _ => RobustSetting.Find(question, progress)), question)
            : RobustSetting.Find(question, progress);
    }

    /// <summary>What was measured on a car, as long as it is still the car it was measured on.</summary>
    /// <param name="vehicle">The car; its valve may have been set otherwise since.</param>
    /// <returns>The measurements; null when there are none, or when brakes, tyres or loads were changed since.</returns>
    public static OwnMeasurements? Of(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.Measured is OwnMeasurements own && AreAlike(vehicle, own.File) ? own : null;
    }

    /// <summary>
    /// What its own stops say of a car, also of one that was changed since: friction and height, against what its description says, go
    /// with it.
    /// </summary>
    /// <returns>The estimate; null where no stop can be used, or the logs do not fit the car.</returns>
    internal static CarEstimate? EstimateFor(Vehicle vehicle) =>
        vehicle.Measured is OwnMeasurements { Doubts.Count: 0, Estimate: { StopsUsed: > 0 } found } ? found : null;

    /// <summary>Whether a car carries measurements that were made before its brakes, tyres or loads were changed.</summary>
    internal static bool AreBeforeChange(Vehicle vehicle) => vehicle.Measured is OwnMeasurements && Of(vehicle) is null;

    private static bool AreAlike(Vehicle one, Vehicle other) => one.Brakes == other.Brakes && one.Tyres == other.Tyres
        && one.Wheelbase.Equals((object)other.Wheelbase) && one.LoadCases.SequenceEqual(other.LoadCases);
}
