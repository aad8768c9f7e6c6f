using BrakeBalance.Balance;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// MOT inspection manual, cars and passenger vehicles, 1.2.2 (read in a public copy): efficiency in per cent = total brake effort over
/// test weight;
/// a service brake needs 58 % (M1 first used from 1 September 2010) or 50 %, a second control 25 %. The car is our own: 1200 kg on the
/// rollers.
/// </summary>
[Source("MOT inspection manual, 1.2.2", Reading.Read)]
public sealed class MotInspectionManual
{
    private const double Kilograms = 1200;

    [Theory]
    [InlineData(58, 696)]
    [InlineData(50, 600)]
    [InlineData(25, 300)]
    public void Efficiency_is_the_total_effort_over_the_weight(double percent, double kilogramsOfEffort)
    {
        BalanceModel model = TestCars.FixedShare(0.66, 2.5, 1.1, 0.5, Kilograms * Gravity.StandardMetresPerSecondSquared).Model();
        BalancePoint at = model.AtRate(percent / 100)!;
        Assert.Equal(kilogramsOfEffort, at.BrakingForces.Front.KilogramsForce + at.BrakingForces.Rear.KilogramsForce, 0.5);

        // The other way: the pressure of those efforts gives the efficiency back.
        Assert.Equal(percent, 100 * model.At(at.MasterPressure).BrakingRate, 1e-6);
    }
}
