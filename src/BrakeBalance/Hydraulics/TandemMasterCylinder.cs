using UnitsNet;

namespace BrakeBalance.Hydraulics;

/// <summary>Two pistons in line in one bore, one circuit each, at practically the same pressure.</summary>
/// <remarks>
/// <para>x = x_port + V_f/A + V_r/A: the travels of the two chambers add. With one circuit lost, its chamber closes fully first.</para>
/// <para>Assumes equal bores. Source: continuity and equilibrium of the floating piston.</para>
/// </remarks>
public sealed record TandemMasterCylinder : MasterCylinder
{
    /// <summary>Bore; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public required Length Bore { get; init => field = SensibleBore(value, nameof(Bore)); }

    /// <summary>Share of the stroke that belongs to the front circuit's chamber [–]; 0.2 to 0.8; half unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.2 to 0.8.</exception>
    public double FrontStrokeShare { get; init => field = Require.Between(value, 0.2, 0.8); } = 0.5;

    /// <inheritdoc/>
    public override PerAxle<Area> PistonAreas => new(Circle(Bore), Circle(Bore));

    /// <inheritdoc/>
    public override PerAxle<double> ForceShares => new(1, 1);

    /// <inheritdoc/>
    public override Length RodTravel(PerAxle<Volume> volumes) =>
        CompensatingPortTravel + ((volumes.Front + volumes.Rear) / Circle(Bore));

    /// <inheritdoc/>
    public override Length? RodTravelWithout(Axle lost, PerAxle<Volume> volumes)
    {
        double lostShare = lost == Axle.Front ? FrontStrokeShare : 1 - FrontStrokeShare;
        Volume sound = lost == Axle.Front ? volumes.Rear : volumes.Front;
        return CompensatingPortTravel + (Stroke * lostShare) + (sound / Circle(Bore));
    }
}
