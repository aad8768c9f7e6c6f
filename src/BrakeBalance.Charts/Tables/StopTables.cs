using BrakeBalance.Charts.Figures;
using BrakeBalance.Stops;

namespace BrakeBalance.Charts.Tables;

/// <summary>Tables of stops and of heat.</summary>
public static class StopTables
{
    /// <summary>Set-ups side by side: distances, first lock and whether the car turns round.</summary>
    /// <param name="rows">The set-ups.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table.</returns>
    public static FigureTable SideBySide(IReadOnlyList<StopComparisonRow> rows, UnitSystem? units = null) => new TableBuilder(units)
        .Words("Set-up", rows.Select(r => r.Name))
        .Column("Panic distance", Measure.Distance, rows.Select(r => r.Panic.Distance).ToArray())
        .Column("Threshold distance", Measure.Distance, rows.Select(r => r.Threshold?.Distance.Meters))
        .Column("Anti-lock bound", Measure.Distance, rows.Select(r => r.Bound.Distance).ToArray())
        .Words("First lock, panic", rows.Select(r => First(r.Panic)))
        .Column("Time of first lock", Measure.Time, rows.Select(r => r.Panic.FirstLock is { } axle ? r.Panic.Locks[axle]!.Time.Seconds : (double?)null))
        .Column("Braking rate at first lock", Measure.Number, rows.Select(r => r.Panic.FirstLock is { } axle ? r.Panic.Locks[axle]!.BrakingRate : (double?)null))
        .Words("Just past first lock, crowned road", rows.Select(r => StopFigures.Outcome("", r.FirmOnCrown).TrimStart(':', ' ')))
        .Build();

    /// <summary>The stops of a heat cycle.</summary>
    /// <param name="result">The outcome of the cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table.</returns>
    public static FigureTable HeatStops(HeatResult result, UnitSystem? units = null) => new TableBuilder(units)
        .Column("Stop", Measure.Count, result.Stops.Select(s => (double)s.Number).ToArray())
        .Column("Mean deceleration", Measure.Deceleration, result.Stops.Select(s => s.MeanDeceleration).ToArray())
        .Column("Line pressure at its end", Measure.LinePressure, result.Stops.Select(s => s.LinePressure).ToArray())
        .Column("Front disc or drum", Measure.Temperature, result.Stops.Select(s => s.RingAtEnd.Front).ToArray())
        .Column("Rear disc or drum", Measure.Temperature, result.Stops.Select(s => s.RingAtEnd.Rear).ToArray())
        .Column("Front fluid", Measure.Temperature, result.Stops.Select(s => s.FluidAtEnd.Front).ToArray())
        .Column("Rear fluid", Measure.Temperature, result.Stops.Select(s => s.FluidAtEnd.Rear).ToArray())
        .Column("Front share of heat", Measure.Percent, result.Stops.Select(s => s.FrontShare))
        .Build();

    private static string First(StopResult stop) => stop.FirstLock switch { Axle.Front => "front", Axle.Rear => "rear", _ => "none" };
}
