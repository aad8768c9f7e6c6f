using MathNet.Numerics.RootFinding;

namespace BrakeBalance.Brakes;

/// <summary>Rigid shoe whose supported end takes only a force parallel to the actuating force, so that the shoe centres itself.</summary>
/// <remarks>
/// <para>
/// The lining pressure is p = u cos θ + v sin θ (any small movement of a rigid shoe). Forces along the line from the drum's
/// centre to the supported end must cancel, which fixes u : v = (μ J − K) : (Q − μ K) for a leading shoe; moments about the
/// supported end then give (T/r)/M = μ (G + μ H) / (A Δ (1 + μ²) − μ r (G + μ H)), with I = ∫sin, I' = ∫cos, J = ∫sin²,
/// K = ∫sin cos, Q = ∫cos², Δ = J Q − K², G = I Q − I' K, H = I' J − I K. For a trailing shoe μ changes sign in all but T.
/// </para>
/// <para>Where the pressure would become negative the lining lifts off and only the rest of the arc carries.</para>
/// <para>Source: own equilibrium from the pressure law of the rigid shoe; no abutment friction.</para>
/// </remarks>
internal readonly record struct SlidingShoe(double DrumRadius, double AbutmentDistance, double LiningStart, double LiningEnd)
{
    /// <summary>
    /// Friction force at the drum per unit actuating moment about the supported end (1/m); null at and past self-locking.
    /// </summary>
    public double? LeadingPerMoment(double friction) => PerMoment(friction, friction);

    /// <summary>The same for the trailing shoe.</summary>
    public double? TrailingPerMoment(double friction) => PerMoment(friction, -friction);

    private double? PerMoment(double friction, double signedFriction)
    {
        if (CarryingLining(signedFriction) is not ShoeIntegrals i)
        {
            return null;
        }

        double determinant = (i.SinSin * i.CosCos) - (i.SinCos * i.SinCos);
        double torque = (i.Sin * i.CosCos) - (i.Cos * i.SinCos) + (signedFriction * ((i.Cos * i.SinSin) - (i.Sin * i.SinCos)));
        double resisting = (AbutmentDistance * determinant * (1 + (friction * friction))) - (signedFriction * DrumRadius * torque);
        return resisting > 0 && torque > 0 ? friction * torque / resisting : null;
    }

    // The part of the lining under pressure; null when friction drags the shoe along its support whatever part carries.
    private ShoeIntegrals? CarryingLining(double signedFriction)
    {
        const double smallestShare = 0.02;
        (double start, double end) = (LiningStart, LiningEnd);
        double smallest = smallestShare * (end - start);
        ShoeIntegrals whole = ShoeIntegrals.Over(start, end);
        if (PressureAt(end, whole, signedFriction) < 0)
        {
            double AtEnd(double e) => PressureAt(e, ShoeIntegrals.Over(start, e), signedFriction);
            return AtEnd(start + smallest) > 0 ? ShoeIntegrals.Over(start, Brent.FindRoot(AtEnd, start + smallest, end, 1e-12, 200)) : null;
        }

        if (PressureAt(start, whole, signedFriction) < 0)
        {
            double AtStart(double s) => PressureAt(s, ShoeIntegrals.Over(s, end), signedFriction);
            return AtStart(end - smallest) > 0 ? ShoeIntegrals.Over(Brent.FindRoot(AtStart, start, end - smallest, 1e-12, 200), end) : null;
        }

        return whole;
    }

    private static double PressureAt(double angle, ShoeIntegrals i, double signedFriction)
    {
        double alongSupport = (signedFriction * i.SinSin) - i.SinCos;
        double acrossSupport = i.CosCos - (signedFriction * i.SinCos);
        return (alongSupport * Math.Cos(angle)) + (acrossSupport * Math.Sin(angle));
    }
}
