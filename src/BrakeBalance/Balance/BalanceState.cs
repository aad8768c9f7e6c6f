namespace BrakeBalance.Balance;

/// <summary>The car at one line pressure, in SI units: the kernel's result.</summary>
/// <remarks>Forces are those that the brakes ask of the road; whether the road gives them is the adhesion utilisation's to tell.</remarks>
/// <param name="MasterPascals">Front master-cylinder pressure, gauge.</param>
/// <param name="FrontLinePascals">Line pressure at the front brakes, gauge.</param>
/// <param name="RearLinePascals">Line pressure at the rear brakes, gauge.</param>
/// <param name="FrontForceNewtons">Braking force of the front axle (both wheels), engine braking included.</param>
/// <param name="RearForceNewtons">Braking force of the rear axle (both wheels), engine braking included.</param>
/// <param name="BrakingRate">Deceleration over g [–], rolling resistance and drag included.</param>
/// <param name="FrontNormalNewtons">Normal reaction on the front axle.</param>
/// <param name="RearNormalNewtons">Normal reaction on the rear axle; zero once the rear wheels are in the air.</param>
public readonly record struct BalanceState(
    double MasterPascals,
    double FrontLinePascals,
    double RearLinePascals,
    double FrontForceNewtons,
    double RearForceNewtons,
    double BrakingRate,
    double FrontNormalNewtons,
    double RearNormalNewtons)
{
    /// <summary>Adhesion utilised by the front axle, f₁ = T₁/N₁ [–].</summary>
    public double FrontUtilisation => Utilisation(FrontForceNewtons, FrontNormalNewtons);

    /// <summary>
    /// Adhesion utilised by the rear axle, f₂ = T₂/N₂ [–]; positive infinity when the rear wheels are in the air but braked.
    /// </summary>
    public double RearUtilisation => Utilisation(RearForceNewtons, RearNormalNewtons);

    private static double Utilisation(double force, double normal) =>
        force <= 0 ? 0 : normal > 0 ? force / normal : double.PositiveInfinity;
}
