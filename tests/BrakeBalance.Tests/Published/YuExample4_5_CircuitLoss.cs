using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Yu Zhisheng, Automobile Theory, example 4.5 (car): inputs and printed answers read in a posted answer sheet, not in the book itself.
/// L = 2.7 m,
/// a = 1.45 m, h = 0.63 m, front share 0.65, adhesion 0.7. The example takes g = 9.8 m/s², which cancels in every braking rate.
/// </summary>
[Source("Yu, Automobile Theory, example 4.5, posted answer sheet", Reading.SecondHand)]
public sealed class YuExample4_5_CircuitLoss
{
    private static readonly LoadCase Load = new()
    {
        Name = "as printed",
        Mass = Mass.FromKilograms(1500),
        FrontAxleToCentreOfGravity = Length.FromMeters(1.45),
        CentreOfGravityHeight = Length.FromMeters(0.63),
    };

    private static readonly FailureConditions Conditions = new() { Adhesion = 0.7 };

    private static Vehicle Car(CircuitLayout layout) => new()
    {
        Name = "Example 4.5",
        Wheelbase = Length.FromMeters(2.7),
        LoadCases = [Load],
        Tyres = new(new Tyre { LoadedRadius = Length.FromMeters(0.3) }, new Tyre { LoadedRadius = Length.FromMeters(0.3) }),
        Brakes = new(Brake(65), Brake(35)),
        Hydraulics = new BrakeHydraulics { MaximumPressure = Pressure.FromBars(500) },
        Control = new BrakeControl
        {
            Pedal = new Pedal { Lever = new FixedRatioLever { Ratio = 5 } },
            Assist = new NoAssist(),
            MasterCylinder = new TandemMasterCylinder { Bore = Length.FromMillimeters(20), Stroke = Length.FromMillimeters(35) },
            Layout = layout,
        },
    };

    private static MeasuredBrake Brake(double newtonMetresPerBar) => new()
    {
        FrictionCoefficient = 0.4,
        FrictionWhenMeasured = 0.4,
        MeasuredNewtonMetresPerBar = newtonMetresPerBar / 10,
        Pistons = PistonSet.OneSideOf(1, Length.FromMillimeters(50)),
        EffectiveRadius = Length.FromMillimeters(120),
    };

    [Fact]
    public void Sound_car_locks_its_front_axle_first_with_an_efficiency_of_0_951()
    {
        LockUp lockUp = new BalanceModel(Car(CircuitLayout.FrontRear), Load).FirstLockUp(0.7)!;
        Assert.Equal(Axle.Front, lockUp.First);
        Assert.Equal(0.951, lockUp.Efficiency, 0.0005);
        // Printed 6.53 m/s² with g = 9.8.
        Assert.Equal(6.53, lockUp.At.BrakingRate * 9.8, 0.005);
    }

    [Theory]
    [InlineData(CircuitLayout.FrontRear, "front-lost", 0.46, 0.32, 0.7)]
    [InlineData(CircuitLayout.FrontRear, "rear-lost", 0.55, 0.39, 1.3)]
    public void Lost_circuit_leaves_the_printed_efficiency_rate_and_gain(CircuitLayout layout, string id, double efficiency, double rate,
        double gainOfOneCircuit)
    {
        Vehicle car = Car(layout);
        FailureOutcome outcome = FailureAnalysis.Of(car, Load, Conditions).Single(failure => failure.Case.Id == id);
        Assert.Equal(efficiency, outcome.Efficiency!.Value, 0.005);
        Assert.Equal(rate, outcome.LockUpRate!.Value, 0.005);

        // The gain is braking force over pressure; the example counts it in units of half the sound car's.
        Pressure pressure = Pressure.FromBars(30);
        double sound = new BalanceModel(car, Load).At(pressure).BrakingRate;
        double left = FailureAnalysis.Damaged(car, Load, outcome.Case).Model.At(pressure).BrakingRate;
        Assert.Equal(gainOfOneCircuit / 2, left / sound, 1e-9);
    }

    /// <summary>
    /// Printed for a diagonal split: efficiency 0.95, 0.33 g. The example keeps the sound car's efficiency and so its load transfer at
    /// twice the
    /// rate. With the load transfer of the rate that is really had, the front wheel locks at z = 0.35 (b/L)/(0.65 − 0.35 h/L) = 0.285
    /// (recomputed),
    /// efficiency 0.815: that is what the code gives, and it is the smaller promise.
    /// </summary>
    [Fact]
    public void Lost_diagonal_leaves_less_than_the_half_that_is_printed()
    {
        Vehicle car = Car(CircuitLayout.Diagonal);
        LockUp sound = new BalanceModel(car, Load).FirstLockUp(0.7)!;
        Assert.Equal(0.33, sound.At.BrakingRate / 2, 0.005);
        Assert.Equal(0.95, sound.Efficiency, 0.005);

        FailureOutcome outcome = FailureAnalysis.Of(car, Load, Conditions).Single(failure => failure.Case.Id == "diagonal-lost");
        Assert.Equal(0.35 * (1.25 / 2.7) / (0.65 - (0.35 * 0.63 / 2.7)), outcome.LockUpRate!.Value, 1e-6);
        Assert.Equal(0.815, outcome.Efficiency!.Value, 0.0005);
        Pressure pressure = Pressure.FromBars(30);
        double left = FailureAnalysis.Damaged(car, Load, outcome.Case).Model.At(pressure).BrakingRate;
        Assert.Equal(0.5, left / new BalanceModel(car, Load).At(pressure).BrakingRate, 1e-9);
    }

    [Fact]
    public void Lost_front_circuit_lets_the_rear_axle_lock_and_the_other_way_round()
    {
        IReadOnlyList<FailureOutcome> outcomes = FailureAnalysis.Of(Car(CircuitLayout.FrontRear), Load, Conditions);
        Assert.Equal(Axle.Rear, outcomes.Single(failure => failure.Case.Id == "front-lost").FirstToLock);
        Assert.Equal(Axle.Front, outcomes.Single(failure => failure.Case.Id == "rear-lost").FirstToLock);
    }

    /// <summary>
    /// The same answer sheet's truck (another university's question bank has the inputs): a = 2.1 m, b = 1.85 m, h = 0.85 m empty,
    /// adhesion 0.8; front circuit lost. The answers 0.4536 and 0.3629 are recomputed.
    /// </summary>
    [Fact]
    public void Empty_trucks_lost_front_circuit()
    {
        var load = Load with { FrontAxleToCentreOfGravity = Length.FromMeters(2.1), CentreOfGravityHeight = Length.FromMeters(0.85) };
        Vehicle truck = Car(CircuitLayout.FrontRear) with { Wheelbase = Length.FromMeters(3.95), LoadCases = [load] };
        FailureOutcome outcome = FailureAnalysis.Of(truck, load, new FailureConditions { Adhesion = 0.8 })
            .Single(failure => failure.Case.Id == "front-lost");
        Assert.Equal(Axle.Rear, outcome.FirstToLock);
        Assert.Equal(0.4536, outcome.Efficiency!.Value, 0.00005);
        Assert.Equal(0.3629, outcome.LockUpRate!.Value, 0.00005);
    }
}
