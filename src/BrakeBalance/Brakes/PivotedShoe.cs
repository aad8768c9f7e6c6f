namespace BrakeBalance.Brakes;

/// <summary>Rigid shoe on a fixed pivot: lining pressure grows with the sine of the angle from the pivot.</summary>
/// <remarks>
/// <para>(T/r)/M with M the actuating moment about the pivot: leading μ I / (A J − μ (r I − A K)), trailing with a plus,
/// where I = ∫sin θ, J = ∫sin² θ, K = ∫sin θ cos θ over the lining; from M_n, M_f and T of the long internal shoe.</para>
/// <para>Source: Shigley's Mechanical Engineering Design, section 16-2, internal expanding rim brakes (from memory).</para>
/// </remarks>
internal readonly record struct PivotedShoe(double DrumRadius, double PivotDistance, ShoeIntegrals Lining)
{
    /// <summary>Normal-force moment about the pivot, per unit of pa·b·r/sin θa.</summary>
    private double NormalMoment => PivotDistance * Lining.SinSin;

    /// <summary>Friction-force moment about the pivot, per unit of μ·pa·b·r/sin θa.</summary>
    private double FrictionMoment => (DrumRadius * Lining.Sin) - (PivotDistance * Lining.SinCos);

    /// <summary>Friction at which the leading shoe self-locks, or null when its friction never helps.</summary>
    public double? SelfLocking => FrictionMoment > 0 ? NormalMoment / FrictionMoment : null;

    /// <summary>Friction force at the drum per unit actuating moment about the pivot (1/m); null at and past self-locking.</summary>
    public double? LeadingPerMoment(double friction)
    {
        double resisting = NormalMoment - (friction * FrictionMoment);
        return resisting > 0 ? friction * Lining.Sin / resisting : null;
    }

    /// <summary>The same for the trailing shoe; null when reversed friction moment would lock it (lining close to the pivot).</summary>
    public double? TrailingPerMoment(double friction)
    {
        double resisting = NormalMoment + (friction * FrictionMoment);
        return resisting > 0 ? friction * Lining.Sin / resisting : null;
    }
}
