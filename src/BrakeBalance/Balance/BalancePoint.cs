namespace BrakeBalance.Balance;

/// <summary>The car at one line pressure: pressures, braking forces, axle loads and adhesion utilised.</summary>
/// <param name="MasterPressure">Front master-cylinder pressure, gauge.</param>
/// <param name="LinePressures">Line pressure at the brakes, gauge.</param>
/// <param name="BrakingForces">Braking force of each axle (both wheels).</param>
/// <param name="NormalReactions">Normal reaction of the road on each axle at this deceleration.</param>
/// <param name="BrakingRate">Deceleration over g [–].</param>
/// <param name="AdhesionUtilisation">f_i = T_i/N_i [–]; null for an axle whose wheels are in the air.</param>
public sealed record BalancePoint(
    Pressure MasterPressure,
    PerAxle<Pressure> LinePressures,
    PerAxle<Force> BrakingForces,
    PerAxle<Force> NormalReactions,
    double BrakingRate,
    PerAxle<double?> AdhesionUtilisation)
{
    internal static BalancePoint From(in BalanceState state) => new(
        Pressure.FromPascals(state.MasterPascals),
        new(Pressure.FromPascals(state.FrontLinePascals), Pressure.FromPascals(state.RearLinePascals)),
        new(Force.FromNewtons(state.FrontForceNewtons), Force.FromNewtons(state.RearForceNewtons)),
        new(Force.FromNewtons(state.FrontNormalNewtons), Force.FromNewtons(state.RearNormalNewtons)),
        state.BrakingRate,
        new(state.FrontUtilisation, double.IsFinite(state.RearUtilisation) ? state.RearUtilisation : null));
}
