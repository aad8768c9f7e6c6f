namespace BrakeBalance.Assist;

/// <summary>No assist: a plain rod, or a booster that has lost its energy and whose springs the driver pushes as well.</summary>
/// <remarks>F_out = max(0, F_in − F_s). Source: equilibrium of the rod.</remarks>
public sealed record NoAssist : BrakeAssist
{
    /// <summary>Force of springs and seals against the rod; not negative; zero for a plain rod.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Force OpposingForce { get; init => field = Require.NotNegative(value); } = Force.Zero;

    /// <inheritdoc/>
    public override RunOut? RunOut => null;

    /// <inheritdoc/>
    public override Force OutputForce(Force inputForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(inputForce, Force.Zero);
        return inputForce > OpposingForce ? inputForce - OpposingForce : Force.Zero;
    }

    /// <inheritdoc/>
    public override Force InputForce(Force outputForce)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(outputForce, Force.Zero);
        return outputForce > Force.Zero ? outputForce + OpposingForce : Force.Zero;
    }

    /// <inheritdoc/>
    public override BrakeAssist WithoutEnergy() => this;

    /// <inheritdoc/>
    public override ImmutableArray<ReserveApplication> Reserve(IReadOnlyList<Length> rodTravels) => [];
}
