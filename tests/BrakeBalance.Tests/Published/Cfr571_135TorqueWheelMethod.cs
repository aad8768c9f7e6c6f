using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Measurements;
using BrakeBalance.Rules;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// 49 CFR 571.135 S4 and S7.4.4 (read): brake factor and hold-off pressure are slope and pressure-axis intercept of the least-squares
/// line of torque
/// against line pressure; axle forces follow from torque and rolling radius, z = (T₁ + T₂)/P. The equation of the adhesion utilised is
/// an image there;
/// its symbols are those of f = T/(P_i ± z h P/E), which Crolla (ed.), Automotive Engineering (2009), ch. 12.1 prints. The readings are
/// made up
/// and worked by hand.
/// </summary>
[Source("49 CFR 571.135 S4, S7.4.4", Reading.Read)]
public sealed class Cfr571_135TorqueWheelMethod
{
    private static readonly double[] Megapascals = [2, 3, 4, 5, 6];

    // By hand: mean pressure 4, Σ(p − 4)² = 10; front mean 1112, Σ(p − 4) T = 2980; rear mean 430, Σ(p − 4) T = 1110.
    private static readonly double[] FrontTorques = [520, 800, 1130, 1400, 1710];
    private static readonly double[] RearTorques = [200, 330, 420, 560, 640];

    private static (double BrakeFactor, double HoldOff) Fit(double[] torques)
    {
        var line = LeastSquares.Fit([.. Megapascals.Select(p => new[] { 1, p })], torques).Coefficients;
        return (line[1], -line[0] / line[1]);
    }

    [Fact]
    public void Front_brake_factor_is_298_newton_metres_a_megapascal_and_hold_off_0_2685_megapascals()
    {
        (double factor, double holdOff) = Fit(FrontTorques);
        Assert.Equal(298, factor, 1e-9);
        Assert.Equal(80.0 / 298, holdOff, 1e-9);
    }

    [Fact]
    public void Rear_brake_factor_is_111_newton_metres_a_megapascal_and_hold_off_0_1261_megapascals()
    {
        (double factor, double holdOff) = Fit(RearTorques);
        Assert.Equal(111, factor, 1e-9);
        Assert.Equal(14.0 / 111, holdOff, 1e-9);
    }

    [Theory]
    [InlineData(0.1, 0)]
    [InlineData(0.268, 0)] // hold-off: no torque
    [InlineData(4, 1112)]
    [InlineData(6, 1708)]
    public void Brake_follows_the_fitted_line(double megapascals, double newtonMetres) =>
        Assert.Equal(newtonMetres, Brake(FrontTorques).BrakingTorque(Pressure.FromMegapascals(megapascals)).NewtonMeters, 1e-6);

    // At 4 MPa, R = 0.3 m: T₁ = 2·1112/0.3 = 7413.33 N, T₂ = 2·430/0.3 = 2866.67 N; P = 16 000 N, E = 2.5 m, h = 0.5 m, P₁ = 9000
    // N: z = 10 280/16 000 = 0.6425; z h P/E = 2056 N; f₁ = 7413.33/11 056 = 0.67053, f₂ = 2866.67/4944 = 0.57983; limit z/0.9 =
    // 0.71389.
    [Fact]
    public void Adhesion_utilised_by_both_axles_at_4_megapascals()
    {
        Vehicle car = TestCars.With(1, 1, 2.5, 2.5 * 7000 / 16_000, 0.5, 16_000) with
        {
            Brakes = new(Brake(FrontTorques), Brake(RearTorques)),
        };
        BalancePoint at = car.Model().At(Pressure.FromMegapascals(4));
        Assert.Equal(7413.33, at.BrakingForces.Front.Newtons, 0.005);
        Assert.Equal(2866.67, at.BrakingForces.Rear.Newtons, 0.005);
        Assert.Equal(0.6425, at.BrakingRate, 1e-9);
        Assert.Equal(0.67053, at.AdhesionUtilisation.Front!.Value, 0.000005);
        Assert.Equal(0.57983, at.AdhesionUtilisation.Rear!.Value, 0.000005);
        Assert.Equal(0.71389, DistributionRules.Fmvss135RearLimit(at.BrakingRate), 0.000005);
    }

    private static MeasuredBrake Brake(double[] torques)
    {
        (double factor, double holdOff) = Fit(torques);
        return TestCars.AxleBrake(1) with
        {
            MeasuredNewtonMetresPerBar = factor / 10,
            ThresholdPressure = Pressure.FromMegapascals(holdOff),
        };
    }
}
