using BrakeBalance.Balance;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Mannering and Washburn, Principles of Highway Engineering and Traffic Analysis, eqs 2.28 to 2.30: greatest braking force of each axle
/// and
/// the brake force ratio (l_r + h (μ + f))/(l_f − h (μ + f)); formulas read in a lecture that restates them (scribd 708242037).
/// Example: L = 100 in, centre of gravity 40 in behind the front axle and 24 in high, μ = 0.60, f = 0.018 at 80 mph: inputs from memory,
/// outputs recomputed.
/// </summary>
[Source("Mannering and Washburn, eqs 2.28 to 2.30", Reading.FromMemory)]
public class ManneringBrakeForceRatio
{
    private const double WeightNewtons = 12_000;

    private static readonly BalanceModel Model = TestCars.FixedShare(0.6, 2.54, 1.016, 0.6096, WeightNewtons, rolling: 0.018).Model();

    [Fact]
    public void Ratio_is_2_973_and_the_front_share_74_83_percent()
    {
        PerAxle<Force> ideal = Model.IdealForces(0.618);
        Assert.Equal(2.973, ideal.Front / ideal.Rear, 0.0005);
        Assert.Equal(74.83, 100 * (ideal.Front / (ideal.Front + ideal.Rear)), 0.005);
        Assert.Equal(25.17, 100 * (ideal.Rear / (ideal.Front + ideal.Rear)), 0.005);
    }

    [Fact]
    public void Greatest_rate_is_adhesion_plus_rolling_resistance() => Assert.Equal(0.618, Model.GreatestRate(0.60), 1e-9);

    // Eqs 2.28 and 2.29 with 60 + 24·0.618 and 40 − 24·0.618 over 100.
    [Fact]
    public void Greatest_forces_of_both_axles_hold_each_other()
    {
        Force front = Force.FromNewtons(0.60 * WeightNewtons * 0.74832);
        Force rear = Force.FromNewtons(0.60 * WeightNewtons * 0.25168);
        Assert.Equal(front.Newtons, Model.FrontForceAtLimit(0.60, rear)!.Value.Newtons, 1e-3);
        Assert.Equal(rear.Newtons, Model.RearForceAtLimit(0.60, front).Newtons, 1e-3);
    }
}
