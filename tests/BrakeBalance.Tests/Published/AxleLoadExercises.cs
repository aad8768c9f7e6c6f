using BrakeBalance.Balance;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Axle loads at rest and while braking, from textbooks and exercises; each test names its source.</summary>
[Source("Textbook exercises, each named at its case", Reading.Read)]
public class AxleLoadExercises
{
    /// <summary>
    /// NCERT Physics, class XI, chapter "System of Particles and Rotational Motion", exercise on the 1800 kg car; statement and answers
    /// read. g = 9.8 m/s².
    /// </summary>
    [Fact]
    public void Ncert_car_of_1800_kg_carries_3675_and_5145_newtons_on_each_wheel()
    {
        PerAxle<Force> loads = TestCars.FixedShare(0.6, 1.8, 1.05, 0.5, 1800 * 9.8).Model().StaticAxleLoads;
        Assert.Equal(3675, loads.Front.Newtons / 2, 0.5);
        Assert.Equal(5145, loads.Rear.Newtons / 2, 0.5);
    }

    /// <summary>
    /// Exercise with printed answers (documen.tv 23210487): 961 kg, axles 3.27 m apart, centre of gravity 0.615 m behind the front axle,
    /// g = 9.81 m/s².
    /// </summary>
    [Fact]
    public void Car_of_961_kg_carries_3830_and_887_newtons_on_each_wheel()
    {
        PerAxle<Force> loads = TestCars.FixedShare(0.6, 3.27, 0.615, 0.5, 961 * 9.81).Model().StaticAxleLoads;
        Assert.Equal(3830, loads.Front.Newtons / 2, 5.0);
        Assert.Equal(887, loads.Rear.Newtons / 2, 0.5);
    }

    /// <summary>
    /// Halliday, Resnick and Walker, Fundamentals of Physics, 8th ed., ch. 12, emergency stop: 11 kN, μ = 0.40, axles 4.2 m apart,
    /// centre of gravity
    /// 1.8 m behind the front axle and 0.75 m high. Inputs read; the book's rounded answers are from memory.
    /// </summary>
    [Source("Halliday, Resnick and Walker, 8th ed., ch. 12", Reading.FromMemory)]
    [Fact]
    public void Halliday_emergency_stop_with_all_wheels_locked()
    {
        BalanceModel model = TestCars.FixedShare(0.6, 4.2, 1.8, 0.75, 11_000).Model();
        double rate = model.GreatestRate(0.40);
        Assert.Equal(3.9, rate * 9.81, 0.05);
        PerAxle<Force> normal = model.NormalReactions(rate);
        Assert.Equal(2.0, normal.Rear.Kilonewtons / 2, 0.05);
        Assert.Equal(3.5, normal.Front.Kilonewtons / 2, 0.05);
        PerAxle<Force> braking = model.IdealForces(rate);
        Assert.Equal(0.79, braking.Rear.Kilonewtons / 2, 0.005);
        Assert.Equal(1.4, braking.Front.Kilonewtons / 2, 0.05);
    }

    /// <summary>
    /// Skidding car at 0.25 g (physicsforums.com, thread 401373): 1500 kg, 2.8 m, centre of gravity midway and 0.6 m high. Inputs read;
    /// outputs
    /// recomputed with g = 9.81 m/s².
    /// </summary>
    [Fact]
    public void Skidding_car_at_a_quarter_g_rubs_1_24_times_as_hard_at_the_front()
    {
        BalanceModel model = TestCars.FixedShare(0.6, 2.8, 1.4, 0.6, 1500 * 9.81).Model();
        PerAxle<Force> normal = model.NormalReactions(0.25);
        Assert.Equal(8145.80, normal.Front.Newtons, 0.005);
        Assert.Equal(6569.20, normal.Rear.Newtons, 0.005);
        PerAxle<Force> ideal = model.IdealForces(0.25);
        Assert.Equal(1.240, ideal.Front / ideal.Rear, 0.0005);
    }

    /// <summary>
    /// Exercise with inputs read and no answer (swiftacademicpapers 2868080): 1500 kg, L = 1.5 m, centre of gravity 0.8 m behind the
    /// front axle and
    /// 0.5 m high, μ = 0.3, 50 km/h, all wheels braked; recomputed with g = 9.81 m/s².
    /// </summary>
    [Fact]
    public void Short_car_of_1500_kg_braked_on_all_wheels_stops_in_4_719_seconds()
    {
        BalanceModel model = TestCars.FixedShare(0.6, 1.5, 0.8, 0.5, 1500 * 9.81).Model();
        double rate = model.GreatestRate(0.3);
        PerAxle<Force> normal = model.NormalReactions(rate);
        Assert.Equal(8338.5, normal.Front.Newtons, 0.05);
        Assert.Equal(6376.5, normal.Rear.Newtons, 0.05);
        Assert.Equal(4.719, 50 / 3.6 / (rate * 9.81), 0.0005);
    }
}
