namespace BrakeBalance.Pedals;

/// <summary>What a driver's foot can and will do on the pedal.</summary>
/// <remarks>
/// Source: common practice. A trade article on measuring pedals calls 70 lbf comfortable; a retail magazine gives 300 lbf as the most of
/// one leg and plans on a third to a half of it. People differ widely: a weak driver may not reach half of these figures.
/// </remarks>
public sealed record FootForce
{
    /// <summary>Force in a hard stop below which a pedal is touchy, too light to be metered: 20 lbf (common practice).</summary>
    public static Force Touchy { get; } = Force.FromPoundsForce(20);

    /// <summary>Force a driver uses in everyday stops without thinking of it; above zero; 70 lbf unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force Comfortable { get; init => field = Require.Positive(value); } = Force.FromPoundsForce(70);

    /// <summary>Force to plan an emergency stop on; above zero; 150 lbf unless said, half of the maximum (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force Planned { get; init => field = Require.Positive(value); } = Force.FromPoundsForce(150);

    /// <summary>Most that one leg of a strong adult gives; above zero; 300 lbf unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force Maximum { get; init => field = Require.Positive(value); } = Force.FromPoundsForce(300);

    /// <summary>Force of a foot that stamps on the pedal in an emergency stop; above zero; null when not said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Force? Emergency { get; init => field = value is { } given ? Require.Positive(given) : null; }

    /// <summary>How a pedal force feels, in words.</summary>
    /// <param name="pedalForce">Force of the foot on the pad.</param>
    /// <returns>One short phrase.</returns>
    public string Describe(Force pedalForce) =>
        pedalForce < Touchy ? "touchy, too light to be metered"
        : pedalForce <= Comfortable ? "comfortable"
        : pedalForce <= Planned ? "a firm push"
        : pedalForce <= Maximum ? "all that a strong leg gives; a weaker driver cannot"
        : "more than one leg can push";
}
