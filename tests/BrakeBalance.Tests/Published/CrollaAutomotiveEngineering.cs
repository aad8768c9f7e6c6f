using BrakeBalance.Balance;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Crolla (ed.), Automotive Engineering: Powertrain, Chassis System and Vehicle Body (2009), ch. 12.1, pp. 371 to 373, text read:
/// η = z/μ (12.1.55), f_f = x_f P z/(F + P z h/l) and f_r = x_r P z/(R − P z h/l) (12.1.61 to 12.1.64), front limit μ (F + P z h/l)
/// (12.1.51).
/// The data of its example car were not found, so the formulas are put to a car of our own.
/// </summary>
[Source("Crolla (ed.), Automotive Engineering (2009), ch. 12.1", Reading.Read)]
public class CrollaAutomotiveEngineering
{
    private const double Weight = 15_000;
    private const double Front = 8_250;
    private const double Rear = 6_750;
    private const double HeightOverBase = 0.55 / 2.5;

    private static readonly BalanceModel Model = TestCars.FixedShare(0.68, 2.5, 2.5 * Rear / Weight, 0.55, Weight).Model();

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.35)]
    [InlineData(0.6)]
    [InlineData(0.9)]
    [InlineData(1.2)]
    public void Adhesion_utilised_follows_equations_61_to_64(double z)
    {
        BalancePoint at = Model.AtRate(z)!;
        Assert.Equal(0.68 * Weight * z / (Front + Weight * z * HeightOverBase), at.AdhesionUtilisation.Front!.Value, 1e-9);
        Assert.Equal(0.32 * Weight * z / (Rear - Weight * z * HeightOverBase), at.AdhesionUtilisation.Rear!.Value, 1e-9);
    }

    [Theory]
    [InlineData(0.3)]
    [InlineData(0.8)]
    public void Efficiency_is_rate_over_adhesion(double adhesion)
    {
        LockUp lockUp = Model.FirstLockUp(adhesion)!;
        Assert.Equal(lockUp.At.BrakingRate / adhesion, lockUp.Efficiency, 1e-9);
        Assert.InRange(lockUp.Efficiency, 0.5, 1);
    }

    // p. 366 ff.: front lock z = l μ F/(P (l x_f − μ h)), rear lock z = l μ R/(P (l x_r + μ h)); the lower one is the car's limit.
    [Theory]
    [InlineData(0.68, 0.3)]
    [InlineData(0.68, 0.8)]
    [InlineData(0.55, 0.3)]
    [InlineData(0.55, 0.8)]
    public void Limits_of_both_axles_follow_from_the_fixed_ratio(double share, double adhesion)
    {
        double front = adhesion * Front / (Weight * (share - adhesion * HeightOverBase));
        double rear = adhesion * Rear / (Weight * (1 - share + adhesion * HeightOverBase));
        LockUp lockUp = TestCars.FixedShare(share, 2.5, 2.5 * Rear / Weight, 0.55, Weight).Model().FirstLockUp(adhesion)!;
        Assert.Equal(front < rear ? Axle.Front : Axle.Rear, lockUp.First);
        Assert.Equal(Math.Min(front, rear), lockUp.At.BrakingRate, 1e-9);
    }

    [Fact]
    public void Front_limit_follows_equation_51()
    {
        LockUp lockUp = Model.FirstLockUp(0.5)!;
        Assert.Equal(Axle.Front, lockUp.First);
        Assert.Equal(0.5 * (Front + Weight * lockUp.At.BrakingRate * HeightOverBase), lockUp.At.BrakingForces.Front.Newtons, 1e-3);
    }
}
