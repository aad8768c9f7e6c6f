namespace BrakeBalance.Brakes;

/// <summary>What is known about a drum brake's shoes, enough to give the brake factor C*.</summary>
/// <remarks>
/// Either their geometry (<see cref="ShoeGeometry"/>, <see cref="DuoServoGeometry"/>) or a catalogue value (<see cref="CatalogueShoes"/>).
/// </remarks>
public abstract record DrumShoes
{
    private protected DrumShoes()
    {
    }

    /// <summary>C* of the whole brake for a friction coefficient above zero [–].</summary>
    internal abstract double Factor(ShoeArrangement arrangement, double friction, Length drumRadius);

    /// <summary>Friction coefficient at which a shoe self-locks [–], or null when none does.</summary>
    internal abstract double? SelfLocking(ShoeArrangement arrangement, Length drumRadius);

    private protected static ArgumentOutOfRangeException Locks(string shoe, double friction, double? limit) =>
        new(nameof(friction), friction, limit is double at
            ? Invariant.Text($"The {shoe} self-locks at a friction coefficient of {at:0.###} and above: "
                + $"friction alone would keep it applied and no finite brake factor exists. Accepted: below {at:0.###}.")
            : Invariant.Text($"The {shoe} has no equilibrium at this friction coefficient and geometry: "
                + $"friction alone keeps it applied or drags it along its support. Accepted: a lower friction coefficient."));
}
