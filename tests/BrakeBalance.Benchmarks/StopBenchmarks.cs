using BenchmarkDotNet.Attributes;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Benchmarks;

/// <summary>
/// Stops of the invented coupe on one core: the targets are 1 ms for a straight stop, 3 ms for a yaw stop, 5 ms for a 15-stop heat
/// cycle.
/// </summary>
[MemoryDiagnoser]
public class StopBenchmarks
{
    private static readonly Speed Hundred = Speed.FromKilometersPerHour(100);
    private StopSetup _setup = null!;
    private HeatCycle _cycle = null!;
    private BrakedCar _rearLocked = null!;

    [GlobalSetup]
    public void Setup()
    {
        Vehicle car = InventedCars.Coupe();
        _setup = StopSetup.From(car, car.LoadCases[0], 0.9);
        _cycle = HeatCycle.TypeOne(_setup.MaximumSpeed);
        _rearLocked = YawStop.WithOnlyLocked(_setup.Car, Axle.Rear);
    }

    [Benchmark]
    public double Straight_stop() => StraightStop.Run(_setup.Car, _setup.Emergency, _setup.BuildUp, Hundred).Distance.Meters;

    [Benchmark]
    public double Straight_stop_without_trace() =>
        StraightStop.Run(_setup.Car, _setup.Emergency, _setup.BuildUp, Hundred, withTrace: false).Distance.Meters;

    [Benchmark]
    public double Yaw_stop() =>
        YawStop.Run(_setup.Car, _setup.MaximumPressure, _setup.BuildUp, Hundred, YawDisturbance.Crown).Distance.Meters;

    [Benchmark]
    public double Yaw_stop_with_locked_rear() =>
        YawStop.Run(_rearLocked, _setup.MaximumPressure, _setup.BuildUp, Hundred, YawDisturbance.Crown).Distance.Meters;

    [Benchmark]
    public double Fifteen_stop_heat_cycle() =>
        BrakeHeat.Run(_setup.Car, _setup.Heat, _cycle, Temperature.FromDegreesCelsius(20), _setup.Fluid).HottestRing.Front.Kelvins;
}
