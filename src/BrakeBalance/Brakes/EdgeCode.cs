namespace BrakeBalance.Brakes;

/// <summary>The two friction letters on the edge of a pad or lining: normal (warm) first, hot second.</summary>
/// <remarks>
/// <para>Source: SAE J866 (2019), seen second hand (tnlab.org summary): normal from four temperatures between 93 °C and 204 °C, hot from
/// ten points of fade and recovery of the SAE J661 test.</para>
/// </remarks>
public sealed record EdgeCode
{
    private EdgeCode(FrictionBand? normal, FrictionBand? hot)
    {
        (Normal, Hot) = (normal, hot);
    }

    /// <summary>Band of the normal friction; null when unclassified (Z).</summary>
    public FrictionBand? Normal { get; }

    /// <summary>Band of the hot friction; null when unclassified (Z).</summary>
    public FrictionBand? Hot { get; }

    /// <summary>Reads the two letters.</summary>
    /// <param name="letters">Two letters, such as FE; spaces around them are ignored.</param>
    /// <exception cref="ArgumentException">There are not exactly two characters.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A letter is none of C to H and not Z.</exception>
    public static EdgeCode Parse(string letters)
    {
        ArgumentNullException.ThrowIfNull(letters);
        string trimmed = letters.Trim();
        return trimmed.Length == 2
            ? new EdgeCode(FrictionBand.Of(trimmed[0]), FrictionBand.Of(trimmed[1]))
            : throw new ArgumentException($"A friction edge code has two letters, normal then hot, such as FE; was '{letters}'.",
                nameof(letters));
    }
}
