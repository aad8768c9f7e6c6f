using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Publishing;

/// <summary>Measurements of a car as they might come out: made from the car itself with scatter, always the same for the same car.</summary>
internal sealed class InventedTests
{
    private const int Seed = 11;
    private readonly Lazy<CarEstimate> _estimate;
    private readonly Lazy<Setting> _answer;

    public InventedTests(Vehicle car)
    {
        var gauges = new InventedTrack(car, Seed);
        double[] knob = car.Hydraulics.RearProportioningValve?.Adjustment is { } screw ? [.. new[] { 0.2, 0.4, 0.6 }.Select(part => Math.Round(part * screw.Turns, 1))] : [];
        Readings = car.Hydraulics.RearProportioningValve is null ? []
            : knob.Length == 0 ? gauges.Gauges(null, Pressure.FromBars(100), 14) : [.. knob.SelectMany(turns => gauges.Gauges(turns, Pressure.FromBars(80), 14))];
        Gauges = Readings.Count == 0 ? null : ValveFitting.Analyse(Readings);
        var track = new InventedTrack(car.WithFrictionFactors(0.95, 1.04), Seed);
        SurfaceCondition dry = SurfaceCondition.Typical("dry"), wet = SurfaceCondition.Typical("wet");
        Stops = [.. car.LoadCases.SelectMany(load => new (SurfaceCondition Road, double Bars, double Kmh)[]
        {
            (dry, 12, 50), (dry, 20, 50), (dry, 28, 50), (dry, 36, 50), (dry, 80, 60), (wet, 55, 40), (dry, 48, 60), (wet, 24, 40),
        }.Select(stop => track.Stop(load, stop.Road, Pressure.FromBars(stop.Bars), Speed.FromKilometersPerHour(stop.Kmh), null, notesLockPressure: true)))];
        _estimate = new(() => CarEstimation.Estimate(car, Stops));
        _answer = new(() => Setting.Of(car, Estimate, draws: 20_000));
    }

    /// <summary>Readings of two gauges; empty when the car has no proportioning valve.</summary>
    public IReadOnlyList<GaugePair> Readings { get; }

    /// <summary>What the gauges show; null when the car has no proportioning valve.</summary>
    public GaugeAnalysis? Gauges { get; }

    /// <summary>Test stops.</summary>
    public IReadOnlyList<TestStop> Stops { get; }

    /// <summary>The car as the stops show it.</summary>
    public CarEstimate Estimate => _estimate.Value;

    /// <summary>The setting that follows.</summary>
    public Setting Answer => _answer.Value;
}
