namespace BrakeBalance.Tyres;

/// <summary>Sets of slip-curve constants as they stand in the literature.</summary>
/// <remarks>
/// <para>They describe one tyre on one surface at one speed. A car's own tyres take the shape and another height by
/// <see cref="SlipCurve.ScaledToPeak"/>.</para>
/// <para>Source: beside each set.</para>
/// </remarks>
public static class PublishedSlipCurves
{
    /// <summary>Dry asphalt.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: six public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve DryAsphalt { get; } = new() { Name = "dry asphalt", C1 = 1.2801, C2 = 23.99, C3 = 0.52 };

    /// <summary>Wet asphalt.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve WetAsphalt { get; } = new() { Name = "wet asphalt", C1 = 0.857, C2 = 33.822, C3 = 0.347 };

    /// <summary>Dry concrete.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve DryConcrete { get; } = new() { Name = "dry concrete", C1 = 1.1973, C2 = 25.168, C3 = 0.5373 };

    /// <summary>Dry cobblestones.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve DryCobblestones { get; } = new() { Name = "dry cobblestones", C1 = 1.3713, C2 = 6.4565, C3 = 0.6691 };

    /// <summary>Wet cobblestones.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve WetCobblestones { get; } = new() { Name = "wet cobblestones", C1 = 0.4004, C2 = 33.708, C3 = 0.1204 };

    /// <summary>Packed snow.</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve Snow { get; } = new() { Name = "snow", C1 = 0.1946, C2 = 94.129, C3 = 0.0646 };

    /// <summary>Ice; the curve has no peak (c₃ = 0).</summary>
    /// <remarks>Source: Burckhardt 1993, second hand: public copies agree, the book was not read.</remarks>
    public static BurckhardtCurve Ice { get; } = new() { Name = "ice", C1 = 0.05, C2 = 306.39, C3 = 0 };

    /// <summary>Dry road, Magic Formula with four constants.</summary>
    /// <remarks>Source: set in wide use for teaching, second hand: four public copies agree, no paper was read.</remarks>
    public static MagicFormulaCurve DryRoad { get; } = new()
    {
        Name = "dry road",
        Stiffness = 10,
        ShapeFactor = 1.9,
        Peak = 1,
        Curvature = 0.97,
    };

    /// <summary>Wet road, Magic Formula with four constants.</summary>
    /// <remarks>Source: set in wide use for teaching, second hand: four public copies agree, no paper was read.</remarks>
    public static MagicFormulaCurve WetRoad { get; } = new()
    {
        Name = "wet road",
        Stiffness = 12,
        ShapeFactor = 2.3,
        Peak = 0.82,
        Curvature = 1,
    };

    /// <summary>Snow-covered road, Magic Formula with four constants.</summary>
    /// <remarks>Source: set in wide use for teaching, second hand: four public copies agree, no paper was read.</remarks>
    public static MagicFormulaCurve SnowyRoad { get; } = new()
    {
        Name = "snowy road",
        Stiffness = 5,
        ShapeFactor = 2,
        Peak = 0.3,
        Curvature = 1,
    };

    /// <summary>Icy road, Magic Formula with four constants.</summary>
    /// <remarks>Source: set in wide use for teaching, second hand: four public copies agree, no paper was read.</remarks>
    public static MagicFormulaCurve IcyRoad { get; } = new()
    {
        Name = "icy road",
        Stiffness = 4,
        ShapeFactor = 2,
        Peak = 0.1,
        Curvature = 1,
    };

    /// <summary>One passenger-car tyre with load-dependent factors.</summary>
    /// <remarks>Source: coefficients b₀ to b₈ seen in published code (n-jokic/Vehicle_MPC_control, pacajeka_init.m).</remarks>
    public static MagicFormula89Curve PassengerCarTyre { get; } = new()
    {
        Name = "passenger-car tyre, load dependent",
        Coefficients = [1.65, -21.3, 1144, 49.6, 226, 0.069, -0.006, 0.056, 0.486],
    };

    /// <summary>Every set, in the order of this class.</summary>
    public static IReadOnlyList<SlipCurve> All { get; } =
    [
        DryAsphalt, WetAsphalt, DryConcrete, DryCobblestones, WetCobblestones, Snow, Ice,
        DryRoad, WetRoad, SnowyRoad, IcyRoad, PassengerCarTyre,
    ];
}
