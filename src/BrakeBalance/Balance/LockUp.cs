namespace BrakeBalance.Balance;

/// <summary>The first lock-up on a surface: which axle, when, and how much of the road was used until then.</summary>
/// <param name="Adhesion">The surface's coefficient of adhesion [–].</param>
/// <param name="First">The axle that locks first; null when both lock together (within a thousandth of a deceleration).</param>
/// <param name="At">The car at that moment.</param>
/// <param name="Efficiency">
/// Braking efficiency [–], 0 to 1: braking force of the tyres at first lock-up over what both axles at their limit would give.
/// </param>
public sealed record LockUp(double Adhesion, Axle? First, BalancePoint At, double Efficiency)
{
    /// <summary>Whether the order is safe: the front locks first, or both together.</summary>
    public bool FrontFirstOrTogether => First != Axle.Rear;
}
