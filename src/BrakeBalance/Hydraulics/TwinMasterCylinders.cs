namespace BrakeBalance.Hydraulics;

/// <summary>Two cylinders side by side, one circuit each, pushed through a balance bar.</summary>
/// <remarks>
/// <para>
/// The bar's bearing moves by x = φ x_f + (1 − φ) x_r, φ being the front cylinder's share of the force: the weighted mean of the two
/// rods' travels. With one circuit lost its piston runs to the end of its stroke, then the bar carries force as before.
/// </para>
/// <para>Assumes a bar that stays nearly square and never touches its tube. Source: statics and kinematics of a lever on two
/// supports.</para>
/// </remarks>
public sealed record TwinMasterCylinders : MasterCylinder
{
    /// <summary>Bore of the front circuit's cylinder; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public required Length FrontBore { get; init => field = SensibleBore(value, nameof(FrontBore)); }

    /// <summary>Bore of the rear circuit's cylinder; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public required Length RearBore { get; init => field = SensibleBore(value, nameof(RearBore)); }

    /// <summary>The front cylinder's share of the force [–]: bearing to rear clevis over clevis to clevis; 0.2 to 0.8.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.2 to 0.8.</exception>
    public required double FrontForceShare { get; init => field = Require.Between(value, 0.2, 0.8); }

    /// <inheritdoc/>
    public override PerAxle<Area> PistonAreas => new(Circle(FrontBore), Circle(RearBore));

    /// <inheritdoc/>
    public override PerAxle<double> ForceShares => new(FrontForceShare, 1 - FrontForceShare);

    /// <inheritdoc/>
    public override Length RodTravel(PerAxle<Volume> volumes) =>
        CompensatingPortTravel + BearingTravel(volumes.Front / Circle(FrontBore), volumes.Rear / Circle(RearBore));

    /// <inheritdoc/>
    public override Length? RodTravelWithout(Axle lost, PerAxle<Volume> volumes) => lost == Axle.Front
        ? CompensatingPortTravel + BearingTravel(Stroke - CompensatingPortTravel, volumes.Rear / Circle(RearBore))
        : CompensatingPortTravel + BearingTravel(volumes.Front / Circle(FrontBore), Stroke - CompensatingPortTravel);

    private Length BearingTravel(Length front, Length rear) => (front * FrontForceShare) + (rear * (1 - FrontForceShare));
}
