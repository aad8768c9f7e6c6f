using BenchmarkDotNet.Attributes;
using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Benchmarks;

/// <summary>One evaluation and one search of the balance of the invented coupe, with all its valves.</summary>
[MemoryDiagnoser]
public class BalanceBenchmarks
{
    private BalanceModel _model = null!;
    private double _pascals;
    private double _adhesion;

    [GlobalSetup]
    public void Setup()
    {
        Vehicle car = InventedCars.Coupe();
        _model = new BalanceModel(car, car.LoadCases[0]);
    }

    /// <summary>Pressure to both axles' forces, loads and utilised adhesions; the target is under 200 ns.</summary>
    [Benchmark]
    public double One_evaluation()
    {
        _pascals = _pascals < 1e7 ? _pascals + 12_345 : 0;
        BalanceState state = _model.StateAt(_pascals);
        return state.FrontUtilisation + state.RearUtilisation;
    }

    [Benchmark]
    public double First_lock_up()
    {
        _adhesion = _adhesion < 1.2 ? _adhesion + 0.0123 : 0.05;
        return _model.TryFirstLockUp(_adhesion, out BalanceState state, out _, out double efficiency) ? state.BrakingRate + efficiency : 0;
    }

    [Benchmark]
    public int Ideal_crossings() => _model.IdealCrossings().Count;
}
