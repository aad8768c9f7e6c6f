namespace BrakeBalance.Tyres;

/// <summary>Adhesion coefficient of a braked tyre against its slip.</summary>
/// <remarks>
/// <para>Slip s = (v − ω R)/v: 0 for a freely rolling wheel, 1 for a locked one. The coefficient is the force along the slip divided by
/// the normal reaction of the same wheel.</para>
/// <para>Source: the shape comes from the derived type; scale and load sensitivity multiply it.</para>
/// </remarks>
public abstract record SlipCurve
{
    /// <summary>Name of the tyre and road surface that the curve describes.</summary>
    public required string Name { get; init; }

    /// <summary>Factor by which every ordinate of the shape is multiplied [–]; above zero, 1 when left out.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public double AdhesionScale { get; init => field = Require.Positive(value); } = 1;

    /// <summary>Loss of adhesion with load, or null when the shape holds at every load.</summary>
    public LoadSensitivity? LoadSensitivity { get; init; }

    /// <summary>Adhesion coefficient at a slip.</summary>
    /// <param name="slip">Slip of the wheel [–]; −1 to 1, negative when the wheel is driven.</param>
    /// <param name="normalReaction">Normal reaction of one wheel; above zero.</param>
    /// <returns>Braking force divided by normal reaction [–]; has the sign of the slip.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The slip lies outside −1 to 1, or the reaction is not above zero.</exception>
    public double AdhesionCoefficient(double slip, Force normalReaction)
    {
        Require.Between(slip, -1, 1, nameof(slip));
        Require.Positive(normalReaction, nameof(normalReaction));
        return Mu(slip, normalReaction.Newtons);
    }

    /// <summary>Slip at which the adhesion coefficient is greatest.</summary>
    /// <param name="normalReaction">Normal reaction of one wheel; above zero.</param>
    /// <returns>Slip [–], 0 to 1; 1 when the curve still rises at lock.</returns>
    public double PeakSlip(Force normalReaction) => PeakSlipAt(Require.Positive(normalReaction, nameof(normalReaction)).Newtons);

    /// <summary>Greatest adhesion coefficient between free rolling and lock.</summary>
    /// <param name="normalReaction">Normal reaction of one wheel; above zero.</param>
    /// <returns>Adhesion coefficient [–].</returns>
    public double PeakAdhesion(Force normalReaction) => PeakMu(Require.Positive(normalReaction, nameof(normalReaction)).Newtons);

    /// <summary>Adhesion coefficient of a locked wheel.</summary>
    /// <param name="normalReaction">Normal reaction of one wheel; above zero.</param>
    /// <returns>Adhesion coefficient [–].</returns>
    public double LockedAdhesion(Force normalReaction) => Mu(1, Require.Positive(normalReaction, nameof(normalReaction)).Newtons);

    /// <summary>The same shape with another greatest adhesion coefficient.</summary>
    /// <param name="peakAdhesion">Greatest adhesion coefficient wanted [–]; above zero.</param>
    /// <param name="normalReaction">Normal reaction of one wheel at which it is wanted; above zero.</param>
    /// <returns>The curve with its scale changed; peak slip and the ratio of locked to peak adhesion stay.</returns>
    public SlipCurve ScaledToPeak(double peakAdhesion, Force normalReaction) =>
        this with { AdhesionScale = AdhesionScale * Require.Positive(peakAdhesion, nameof(peakAdhesion)) / PeakAdhesion(normalReaction) };

    /// <summary>Adhesion coefficient for a slip of either sign and a load in newtons.</summary>
    internal double Mu(double slip, double loadNewtons)
    {
        double scale = Scale(loadNewtons);
        return slip < 0 ? -scale * Shape(-slip, loadNewtons) : scale * Shape(slip, loadNewtons);
    }

    /// <summary>Greatest adhesion coefficient for a load in newtons.</summary>
    internal double PeakMu(double loadNewtons) => Mu(PeakSlipAt(loadNewtons), loadNewtons);

    internal bool DependsOnLoad => LoadSensitivity is not null || ShapeDependsOnLoad;

    private protected virtual bool ShapeDependsOnLoad => false;

    private double Scale(double loadNewtons) =>
        LoadSensitivity is { } sensitivity ? AdhesionScale * sensitivity.Factor(loadNewtons) : AdhesionScale;

    /// <summary>Unscaled adhesion coefficient for a slip from 0 to 1.</summary>
    private protected abstract double Shape(double slip, double loadNewtons);

    /// <summary>Slip of the greatest adhesion coefficient for a load in newtons, at most 1.</summary>
    internal abstract double PeakSlipAt(double loadNewtons);

    /// <summary>Peak and locked adhesion of a curve, the shape worked out once where it is the same at every load.</summary>
    internal readonly struct Ends(SlipCurve curve)
    {
        private readonly (double Peak, double Locked)? _shape =
            curve.ShapeDependsOnLoad ? null : (curve.Shape(curve.PeakSlipAt(1), 1), curve.Shape(1, 1));

        public double PeakMu(double loadNewtons) => _shape is { } shape ? curve.Scale(loadNewtons) * shape.Peak : curve.PeakMu(loadNewtons);

        public double LockedMu(double loadNewtons) =>
            _shape is { } shape ? curve.Scale(loadNewtons) * shape.Locked : curve.Mu(1, loadNewtons);
    }
}
