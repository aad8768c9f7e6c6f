namespace BrakeBalance.Hydraulics;

/// <summary>One piston for both axles, as on cars before split circuits.</summary>
/// <remarks>
/// x = x_port + (V_f + V_r)/A. A leak anywhere takes all braking: no car should be driven so if it can be helped. Source: continuity.
/// </remarks>
public sealed record SingleMasterCylinder : MasterCylinder
{
    /// <summary>Bore; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public required Length Bore { get; init => field = SensibleBore(value, nameof(Bore)); }

    /// <inheritdoc/>
    public override PerAxle<Area> PistonAreas => new(Circle(Bore), Circle(Bore));

    /// <inheritdoc/>
    public override PerAxle<double> ForceShares => new(1, 1);

    /// <inheritdoc/>
    public override Length RodTravel(PerAxle<Volume> volumes) => CompensatingPortTravel + ((volumes.Front + volumes.Rear) / Circle(Bore));

    /// <inheritdoc/>
    public override Length? RodTravelWithout(Axle lost, PerAxle<Volume> volumes) => null;
}
