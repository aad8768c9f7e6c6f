namespace BrakeBalance.Tyres;

/// <summary>Force of a tyre that slips along and across its rolling direction at once.</summary>
/// <remarks>
/// <para>With the contact patch's sliding velocity (v_x − ω R, v_y) and the wheel's speed |v|: s_L = (v_x − ω R)/|v|, s_S = v_y/|v|,
/// s = √(s_L² + s_S²); σ = √(s_L² + (r s_S)²) with r = r₀ + (1 − r₀) min(1, s); the force has the size μ(σ) N and the
/// direction −(s_L, r s_S)/σ.</para>
/// <para>Assumes one slip curve for all directions; the weight r₀ ≤ 1 lowers the lateral slip stiffness of a rolling wheel, and goes to
/// one for a sliding wheel, so that a locked wheel is pulled exactly against its velocity.</para>
/// <para>Source: resultant slip after Burckhardt 1993 (from memory, in Kiencke and Nielsen, Automotive Control Systems, ch. 8); the
/// weight r is this project's.</para>
/// </remarks>
public static class CombinedSlip
{
    /// <summary>Longitudinal and lateral force on one wheel.</summary>
    /// <param name="curve">Slip curve of the tyre.</param>
    /// <param name="lateralWeight">Lateral over longitudinal slip stiffness of the rolling tyre r₀ [–]; above 0, at most 1.</param>
    /// <param name="longitudinalVelocity">Velocity of the wheel centre in the wheel's plane, forwards positive.</param>
    /// <param name="lateralVelocity">Velocity of the wheel centre across the wheel's plane, leftwards positive.</param>
    /// <param name="circumferentialVelocity">ω R of the wheel, forwards positive; zero for a locked wheel.</param>
    /// <param name="normalReaction">Normal reaction of the wheel; above zero.</param>
    /// <returns>Force of the road on the wheel, forwards and leftwards positive; zero when the wheel stands still.</returns>
    public static (Force Longitudinal, Force Lateral) Forces(
        SlipCurve curve, double lateralWeight, Speed longitudinalVelocity, Speed lateralVelocity, Speed circumferentialVelocity,
            Force normalReaction)
    {
        ArgumentNullException.ThrowIfNull(curve);
        Require.Between(lateralWeight, 0.01, 1, nameof(lateralWeight));
        double load = Require.Positive(normalReaction, nameof(normalReaction)).Newtons;
        double vx = longitudinalVelocity.MetersPerSecond;
        PerNewton(curve, lateralWeight, vx - circumferentialVelocity.MetersPerSecond, lateralVelocity.MetersPerSecond,
            Math.Sqrt(vx * vx + lateralVelocity.MetersPerSecond * lateralVelocity.MetersPerSecond), load, out double x, out double y,
                out _);
        return (Force.FromNewtons(x * load), Force.FromNewtons(y * load));
    }

    /// <summary>Force per newton of load, and the secant stiffness μ(σ)/σ of the curve.</summary>
    internal static void PerNewton(
        SlipCurve curve, double lateralWeight, double slidingX, double slidingY, double speed, double loadNewtons, out double x,
            out double y, out double secant)
    {
        double reference = Math.Max(speed, SmallestReferenceSpeed);
        double sx = slidingX / reference;
        double sy = slidingY / reference;
        double total = Math.Min(1, Math.Sqrt(sx * sx + sy * sy));
        sy *= lateralWeight + (1 - lateralWeight) * total;
        double sigma = Math.Sqrt(sx * sx + sy * sy);
        double bounded = Math.Clamp(sigma, 1e-6, 1);
        secant = curve.Mu(bounded, loadNewtons) / bounded;
        double factor = sigma > 1 ? secant / sigma : secant;
        x = -factor * sx;
        y = -factor * sy;
    }

    /// <summary>
    /// Speed in metres per second below which slip is referred to this speed instead of the wheel's, so that it stays finite.
    /// </summary>
    internal const double SmallestReferenceSpeed = 0.1;
}
