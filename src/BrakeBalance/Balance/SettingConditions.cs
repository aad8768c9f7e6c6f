using System.Collections.Immutable;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>All under which a setting has to hold: surfaces, speeds, states of load and the spread of pad friction.</summary>
public sealed record SettingConditions
{
    /// <summary>Slipperiest surface [–]; 0.05 to 2; 0.2 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double LowestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 0.2;

    /// <summary>Grippiest surface [–]; 0.05 to 2; 1.0 unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double HighestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 1.0;

    /// <summary>Friction may be this fraction off at either axle, in either direction [–]; 0 to 0.5; 0.08 unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.5.</exception>
    public double FrictionSpread { get; init => field = Require.Between(value, 0, 0.5); } = 0.08;

    /// <summary>Names of the load cases to hold in; all of the car's when empty.</summary>
    public ImmutableArray<string> LoadCases { get; init; } = [];

    /// <summary>Speeds to hold at; standstill to the car's maximum speed unless said.</summary>
    public SpeedRange Speeds { get; init; } = new();

    /// <summary>
    /// Steps between the two adhesions for shares and efficiencies [–]; at least 4. Whether the front locks first is worked out between
    /// them too.
    /// </summary>
    public int AdhesionSteps { get; init => field = value >= 4 ? value : throw new ArgumentOutOfRangeException(nameof(AdhesionSteps), value, "Must be at least 4."); } = 40;

    /// <summary>The adhesions tried, rising.</summary>
    /// <exception cref="InvalidOperationException">The lowest adhesion is not below the highest.</exception>
    public IReadOnlyList<double> Adhesions => LowestAdhesion < HighestAdhesion
        ? [.. Enumerable.Range(0, AdhesionSteps + 1).Select(i => LowestAdhesion + (HighestAdhesion - LowestAdhesion) * i / AdhesionSteps)]
        : throw new InvalidOperationException(FormattableString.Invariant($"The lowest adhesion ({LowestAdhesion}) must be below the highest ({HighestAdhesion})."));

    internal IReadOnlyList<Speed> SpeedsOf(Vehicle vehicle) => Speeds.Of(vehicle, 4);

    internal IEnumerable<LoadCase> LoadCasesOf(Vehicle vehicle) => LoadCases.IsEmpty ? vehicle.LoadCases : LoadCases.Select(vehicle.LoadCase);
}
