using System.Collections.Concurrent;
using BenchmarkDotNet.Attributes;
using BrakeBalance.Balance;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Benchmarks;

/// <summary>A sweep of one million cases (1000 settings, each at 1000 adhesions), on one core and on all.</summary>
[MemoryDiagnoser]
public class SweepBenchmarks
{
    private const int Settings = 1000;
    private const int Adhesions = 1000;

    private Vehicle _car = null!;
    private SettingQuestion _question = null!;

    [GlobalSetup]
    public void Setup()
    {
        _car = InventedCars.Coupe();
        _question = new() { Vehicle = _car, Spread = new() { FrontFriction = 0.04, RearFriction = 0.04, CentreOfGravityHeight = 0.03 } };
    }

    [Benchmark(Baseline = true)]
    public double Million_cases_on_one_core()
    {
        double sum = 0;
        for (int i = 0; i < Settings; i++)
        {
            sum += One(i);
        }

        return sum;
    }

    [Benchmark]
    public double Million_cases_on_all_cores()
    {
        double[] sums = new double[Settings];
        Parallel.ForEach(Partitioner.Create(0, Settings, Settings / (Environment.ProcessorCount * 8)), range =>
        {
            for (int i = range.Item1; i < range.Item2; i++)
            {
                sums[i] = One(i);
            }
        });
        return sums.Sum();
    }

    /// <summary>A setting from a hundred thousand drawn cars, on all cores.</summary>
    [Benchmark]
    public SettingAnswer Hundred_thousand_draws() => RobustSetting.Find(_question);

    private double One(int setting)
    {
        var model = new BalanceModel(_car.WithRearKnee(Pressure.FromBars(5 + setting * 0.08), 0.3),
            _car.LoadCases[setting % _car.LoadCases.Length]);
        double sum = 0;
        for (int i = 1; i <= Adhesions; i++)
        {
            sum += model.TryFirstLockUp(i * 0.0012, out _, out _, out double efficiency) ? efficiency : 0;
        }

        return sum;
    }
}
