namespace BrakeBalance.Bench;

/// <summary>A hose or pipe from one port to another, in the direction of flow.</summary>
public sealed record PlumbingLine
{
    /// <summary>Port it comes from, as <c>part.port</c>.</summary>
    public required string From { get; init; }

    /// <summary>Port it goes to, as <c>part.port</c>.</summary>
    public required string To { get; init; }

    /// <summary>Inner diameter; 2 to 50 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 2 to 50 mm.</exception>
    public required Length Bore { get; init => field = Require.Between(value, Length.FromMillimeters(2), Length.FromMillimeters(50)); }

    /// <summary>Length; above zero, to 20 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 mm to 20 m.</exception>
    public required Length Length { get; init => field = Require.Between(value, Length.FromMillimeters(1), Length.FromMeters(20)); }

    /// <summary>
    /// Sum of the loss coefficients of its fittings, bends, entry and exit [–]; 0 to 100; 1.5 unless said: entry 0.5 and exit 1
    /// (textbooks, from memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 100.</exception>
    public double LossCoefficient { get; init => field = Require.Between(value, 0, 100); } = 1.5;

    /// <summary>Highest working pressure of hose and fittings, gauge; null when not known.</summary>
    public Pressure? WorkingPressure { get; init; }

    /// <summary>Name for messages: from and to.</summary>
    public string Name => $"{From} → {To}";
}
