namespace BrakeBalance.Hydraulics;

/// <summary>Two pistons in line, one circuit each: in one bore, at practically the same pressure, or in a stepped one.</summary>
/// <remarks>
/// <para>
/// x = x_port + V_f/A_f + V_r/A_r: the floating piston moves by x₂ = V₂/A₂ and takes A₁ x₂ out of the first chamber, which the
/// first piston must follow, V₁ = A₁ (x₁ − x₂). Pressures F/A_f and F/A_r, see <see cref="TandemSplit"/>. With one circuit lost,
/// its chamber closes fully
/// first; then the first piston pushes the floating one by contact, or its chamber as before, and the sound circuit has the same pressure.
/// </para>
/// <para>Source: continuity and equilibrium of the floating piston.</para>
/// </remarks>
public sealed record TandemMasterCylinder : MasterCylinder
{
    /// <summary>Bore; with <see cref="RearBore"/> that of the front circuit's chamber; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public required Length Bore { get; init => field = SensibleBore(value, nameof(Bore)); }

    /// <summary>Bore of the rear circuit's chamber when the cylinder is stepped; null for one bore; 9 mm to 51 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 51 mm.</exception>
    public Length? RearBore { get; init => field = value is { } bore ? SensibleBore(bore, nameof(RearBore)) : null; }

    /// <summary>The large bore of a quick-take-up cylinder; null for a plain one.</summary>
    /// <remarks>
    /// Counts from the front bore's area: with stepped bores too that is not computed, and a vehicle file with both is refused.
    /// </remarks>
    public QuickTakeUp? QuickTakeUp { get; init; }

    /// <summary>Share of the stroke that belongs to the front circuit's chamber [–]; 0.2 to 0.8; half unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.2 to 0.8.</exception>
    public double FrontStrokeShare { get; init => field = Require.Between(value, 0.2, 0.8); } = 0.5;

    /// <inheritdoc/>
    public override PerAxle<Area> PistonAreas => new(Circle(Bore), Circle(RearBore ?? Bore));

    /// <inheritdoc/>
    public override PerAxle<double> ForceShares => new(1, 1);

    /// <inheritdoc/>
    public override Pressure? BlowOffPressure => QuickTakeUp?.BlowOffPressure;

    /// <inheritdoc/>
    public override Length RodTravel(PerAxle<Volume> volumes) =>
        CompensatingPortTravel + (volumes.Front / Circle(Bore)) + (volumes.Rear / Circle(RearBore ?? Bore));

    /// <inheritdoc/>
    public override Length TravelSaved(PerAxle<Volume> filled) => QuickTakeUp is null
        ? Length.Zero
        : (RodTravel(filled) - CompensatingPortTravel) * (SurplusAreaRatio / (1 + SurplusAreaRatio));

    /// <inheritdoc/>
    public override Length? RodTravelWithout(Axle lost, PerAxle<Volume> volumes)
    {
        double lostShare = lost == Axle.Front ? FrontStrokeShare : 1 - FrontStrokeShare;
        Volume sound = lost == Axle.Front ? volumes.Rear : volumes.Front;
        return CompensatingPortTravel + (Stroke * lostShare) + (sound / Circle(lost == Axle.Front ? RearBore ?? Bore : Bore));
    }

    /// <summary>Area of one bore over that of another.</summary>
    /// <param name="front">Bore of the front circuit's chamber; above zero.</param>
    /// <param name="rear">Bore of the rear circuit's chamber; above zero.</param>
    /// <returns>The ratio of the areas [–].</returns>
    public static double AreaRatio(Length front, Length rear) => front / rear * (front / rear);

    /// <summary>
    /// The same cylinder with another front bore; a stepped cylinder keeps the ratio of its bores, a quick-take-up one that of its areas.
    /// </summary>
    /// <param name="bore">Bore of the front circuit's chamber.</param>
    /// <returns>A copy; null when a bore would lie outside the sensible range.</returns>
    public TandemMasterCylinder? Scaled(Length bore)
    {
        double scale = bore / Bore;
        Length? rear = RearBore * scale;
        return IsSensible(bore) && (rear is not { } other || IsSensible(other))
            && (QuickTakeUp is not { } fast || fast.LargeBore * scale <= Length.FromMillimeters(70))
            ? this with
            {
                Bore = bore,
                RearBore = rear,
                QuickTakeUp = QuickTakeUp is { } large
                ? large with { LargeBore = large.LargeBore * scale } : null
            }
            : null;
    }

    private protected override double NewtonsThatPress(double net) => QuickTakeUp is { } fast
        ? Math.Max(net / (1 + SurplusAreaRatio), net - (fast.BlowOffPressure.Pascals * Circle(Bore).SquareMeters * SurplusAreaRatio))
        : net;

    private protected override double NewtonsToPress(double atPiston) => QuickTakeUp is { } fast
        ? atPiston + (SurplusAreaRatio * Math.Min(atPiston, fast.BlowOffPressure.Pascals * Circle(Bore).SquareMeters))
        : atPiston;

    // (A_L − A)/A, not below zero.
    private double SurplusAreaRatio => QuickTakeUp is { } fast ? Math.Max(0, AreaRatio(fast.LargeBore, Bore) - 1) : 0;
}
