namespace BrakeBalance.Brakes;

/// <summary>The pistons of one side of a disc brake's caliper.</summary>
/// <remarks>
/// Fixed caliper: the pistons on one side of the disc only. Sliding caliper: its piston or pistons once, because the
/// sliding body presses the other pad by reaction. Counting both sides doubles the torque on paper.
/// </remarks>
public sealed record PistonSet
{
    private readonly Length[] _diameters;

    private PistonSet(Length[] diameters)
    {
        Refuse.If(diameters.Length == 0, "At least one piston is needed on one side of the caliper; none was given.", nameof(diameters));

        foreach (Length diameter in diameters)
        {
            Require.Positive(diameter, nameof(diameters));
        }

        _diameters = diameters;
        Area = Area.FromSquareMeters(diameters.Sum(d => Math.PI / 4 * d.Meters * d.Meters));
    }

    /// <summary>Diameter of each piston of one side.</summary>
    public IReadOnlyList<Length> Diameters => Array.AsReadOnly(_diameters);

    /// <summary>Total piston area of one side.</summary>
    public Area Area { get; }

    /// <summary>Pistons of one side, each with its own diameter (staggered bores).</summary>
    /// <param name="diameters">Piston diameters of one side; each above zero.</param>
    /// <returns>The pistons of one side.</returns>
    /// <exception cref="ArgumentException">No diameter was given.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A diameter is not above zero.</exception>
    public static PistonSet OneSide(params IEnumerable<Length> diameters) => new([.. diameters]);

    /// <summary>Whether two sets have the same diameters in the same order.</summary>
    /// <param name="other">The set to compare with.</param>
    /// <returns>True when every diameter agrees.</returns>
    public bool Equals(PistonSet? other) =>
        other is not null && _diameters.Select(d => d.Meters).SequenceEqual(other._diameters.Select(d => d.Meters));

    /// <summary>A hash of the diameters.</summary>
    public override int GetHashCode() => _diameters.Aggregate(0, (hash, d) => HashCode.Combine(hash, d.Meters));
}
