namespace BrakeBalance.Vehicles;

/// <summary>
/// All that an answer about the setting has to hold for: surfaces, speeds, load cases, states of the brakes and how well they are known.
/// </summary>
/// <remarks>There is one set for each car, out of its file; every answer that depends on them says them.</remarks>
public sealed record Conditions
{
    /// <summary>Adhesion of a dry road wherever one is spoken of [–] (common practice).</summary>
    public const double DryAdhesion = 0.9;

    /// <summary>Adhesion of a wet road wherever one is spoken of [–] (common practice).</summary>
    public const double WetAdhesion = 0.5;

    /// <summary>Adhesion of a slippery road wherever one is spoken of [–] (common practice).</summary>
    public const double SlipperyAdhesion = 0.3;

    /// <summary>Whether the car is used on a closed track with track tyres: only decides what stands where nothing is said.</summary>
    public bool ClosedTrack { get; init; }

    /// <summary>Slipperiest surface [–]; 0.05 to 2; 0.2 unless said, 0.3 on a closed track.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double LowestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 0.2;

    /// <summary>Grippiest surface [–]; 0.05 to 2; 1.0 unless said, 1.3 on a closed track.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.05 to 2.</exception>
    public double HighestAdhesion { get; init => field = Require.Between(value, 0.05, 2); } = 1.0;

    /// <summary>The adhesion of track tyres on a dry road [–]: 1.1, or the highest of the conditions where that is more.</summary>
    internal double TrackAdhesion => Math.Max(1.1, HighestAdhesion);

    /// <summary>
    /// The best road that is spoken of [–]: a dry one, or the conditions' best where no road tyre reaches it: a knee that no dry road
    /// reaches may be one that track tyres do.
    /// </summary>
    internal double BestAdhesion => HighestAdhesion > 1 ? HighestAdhesion : DryAdhesion;

    /// <summary>Usual roads, and the grippiest of the conditions where it lies beyond them [–].</summary>
    internal IReadOnlyList<double> RoadsWith(IReadOnlyList<double> usual) =>
        HighestAdhesion > usual[^1] ? [.. usual, HighestAdhesion] : usual;

    /// <summary>Names of the load cases to hold in; all of the car's when empty.</summary>
    public ImmutableArray<string> LoadCases { get; init; } = [];

    /// <summary>Speeds to hold at; standstill to the car's maximum speed unless said.</summary>
    public SpeedRange Speeds { get; init; } = new();

    /// <summary>States of the brakes to hold in; at least one.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public ImmutableArray<BrakeState> BrakeStates
    {
        get;
        init => field = value.IsDefaultOrEmpty
            ? throw new ArgumentException("There must be at least one state of the brakes.", nameof(BrakeStates)) : value;
    } = UsualStates;

    /// <summary>
    /// Friction may be this fraction off at each axle, in either direction [–]; 0 to 0.5; 0.08 unless said (common practice).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside 0 to 0.5.</exception>
    public PerAxle<double> FrictionSpread
    {
        get;
        init => field = new(Require.Between(value.Front, 0, 0.5), Require.Between(value.Rear, 0, 0.5));
    } = new(0.08, 0.08);

    /// <summary>
    /// Once the car has been measured, the highest chance that the rear locks first in any one condition [–]; 0.001 to 0.5; 0.02 unless
    /// said, 0.05 on a closed track.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.001 to 0.5.</exception>
    public double RearFirstChance { get; init => field = Require.Between(value, 0.001, 0.5); } = 0.02;

    /// <summary>
    /// Steps between the two adhesions for shares and efficiencies [–]; at least 4. Whether the front locks first is worked out between
    /// them too.
    /// </summary>
    public int AdhesionSteps
    {
        get;
        init => field = value >= 4 ? value : throw new ArgumentOutOfRangeException(nameof(AdhesionSteps), value, "Must be at least 4.");
    } = 40;

    /// <summary>The same surfaces, speeds and load cases with the brakes normal and their friction as the file says.</summary>
    internal Conditions AtMiddle => this with { BrakeStates = [UsualStates[0]], FrictionSpread = default };

    /// <summary>The states of the brakes unless others are named (common practice).</summary>
    public static ImmutableArray<BrakeState> UsualStates { get; } =
    [
        new BrakeState { Name = "normal" },
        new BrakeState { Name = "cold", Front = 0.95, Rear = 0.95 },
        new BrakeState { Name = "hot in front", Front = 0.90 },
        new BrakeState { Name = "grabbing at the rear", Rear = 1.08 },
    ];

    /// <summary>What stands on a closed track with track tyres where nothing is said.</summary>
    public static Conditions Track { get; } =
        new() { ClosedTrack = true, LowestAdhesion = 0.3, HighestAdhesion = 1.3, RearFirstChance = 0.05 };

    /// <summary>The adhesions tried, rising.</summary>
    /// <exception cref="InvalidOperationException">The lowest adhesion is not below the highest.</exception>
    public IReadOnlyList<double> Adhesions => LowestAdhesion < HighestAdhesion
        ? [.. Enumerable.Range(0, AdhesionSteps + 1).Select(i => LowestAdhesion + (HighestAdhesion - LowestAdhesion) * i / AdhesionSteps)]
        : throw new InvalidOperationException(
            Invariant.Text($"The lowest adhesion ({LowestAdhesion}) must be below the highest ({HighestAdhesion})."));

    /// <summary>The load cases of a car that count.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>Them, in the car's order.</returns>
    /// <exception cref="ArgumentException">The car has no load case of a name.</exception>
    public IReadOnlyList<LoadCase> LoadCasesOf(Vehicle vehicle) =>
        LoadCases.IsEmpty ? vehicle.LoadCases : [.. LoadCases.Select(vehicle.LoadCase)];

    /// <summary>The speeds tried with a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>Them, rising.</returns>
    public IReadOnlyList<Speed> SpeedsOf(Vehicle vehicle) => Speeds.Of(vehicle, 4);
}
