namespace BrakeBalance.Bench;

/// <summary>What a hose has to stand.</summary>
public sealed record HoseDuty
{
    /// <summary>Highest pressure, gauge: the pump's relief on the pressure side; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure Highest { get; init => field = Require.NotNegative(value); }

    /// <summary>How far the working pressure should lie above it, of it [–]; 0 to 3; 0.25 unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 3.</exception>
    public double Margin { get; init => field = Require.Between(value, 0, 3); } = 0.25;

    /// <summary>Highest fluid temperature; null when not known.</summary>
    public Temperature? Hottest { get; init; }

    /// <summary>Which side of the circuit it is.</summary>
    public HoseSide Side { get; init; }
}
