using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Balance;

/// <summary>The kernel allocates nothing, so that sweeps over millions of cases run at the speed of the arithmetic.</summary>
public class AllocationTests
{
    public static TheoryData<string> Cars => ["plain", "valve", "series", "aerodynamics", "lift-off"];

    [Theory]
    [MemberData(nameof(Cars))]
    public void One_evaluation_allocates_nothing(string car)
    {
        BalanceModel model = Model(car);
        double sum = 0;
        Assert.Equal(0, Allocated(() =>
        {
            for (int i = 0; i < 1000; i++)
            {
                BalanceState state = model.StateAt(i * 1e4);
                sum += state.FrontUtilisation + state.BrakingRate;
            }
        }));
        Assert.True(sum > 0);
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void First_lock_up_allocates_nothing_where_all_lines_are_straight(string car)
    {
        BalanceModel model = Model(car);
        double sum = 0;
        Assert.Equal(0, Allocated(() =>
        {
            for (int i = 1; i <= 1000; i++)
            {
                if (model.TryFirstLockUp(i * 0.0012, out BalanceState state, out Axle? first, out double efficiency))
                {
                    sum += efficiency + state.BrakingRate + (first == Axle.Front ? 1 : 0);
                }
            }
        }));
        Assert.True(sum > 0);
    }

    [Fact]
    public void Evaluation_of_a_load_sensing_valve_allocates_nothing_either()
    {
        BalanceModel model = Model("load-sensing");
        double sum = 0;
        Assert.Equal(0, Allocated(() =>
        {
            for (int i = 0; i < 1000; i++)
            {
                sum += model.StateAt(i * 1e4).RearForceNewtons;
            }
        }));
        Assert.True(sum > 0);
    }

    private static BalanceModel Model(string car)
    {
        Vehicle plain = TestCars.FixedShare(0.65, 2.5, 1.2, 0.5);
        var valve = new ProportioningValve { Knee = Pressure.FromBars(35), Slope = 0.4 };
        return car switch
        {
            "valve" => plain.WithRearValves(valve).Model(),
            "series" => plain.WithRearValves(valve, new LimitingValve { Limit = Pressure.FromBars(60) })
                .WithFrontValves(new MeteringValve { OpeningPressure = Pressure.FromBars(6), BlendPressure = Pressure.FromBars(20) })
                    .Model(),
            "aerodynamics" => (plain with
            {
                RollingResistanceCoefficient = 0.015,
                Aerodynamics = new Aerodynamics { DragArea = Area.FromSquareMeters(0.7), RearLiftArea = Area.FromSquareMeters(0.2) },
            }).Model(Speed.FromKilometersPerHour(160)),
            "lift-off" => TestCars.FixedShare(0.8, 2.0, 0.6, 0.9).Model(),
            "load-sensing" => plain.WithRearValves(new LoadSensingValve
            {
                KneeAtReference = Pressure.FromBars(40),
                ReferenceLoad = Force.FromKilonewtons(4),
                KneePerKilonewton = Pressure.FromBars(15),
                Slope = 0.3,
            }).Model(),
            _ => plain.Model(),
        };
    }

    // Run once before, so that compilation and first-use caches do not count.
    private static long Allocated(Action action)
    {
        action();
        long before = GC.GetAllocatedBytesForCurrentThread();
        action();
        return GC.GetAllocatedBytesForCurrentThread() - before;
    }
}
