namespace BrakeBalance.Hydraulics;

/// <summary>
/// A valve as straight lines: outlet = min(inlet, max(A₀ + A₁ inlet, B₀ + B₁ inlet + B_N N)), N the load on the rear axle.
/// </summary>
/// <remarks>
/// One form for every kind: a proportioning valve and a limiter have the first line only, a load-sensing valve has its lowest knee in the
/// first and the sensed one in the second, a metering valve has nothing in the first and its rise to the blend pressure in the second.
/// </remarks>
internal readonly record struct ValveLaw(double A0, double A1, double B0, double B1, double BLoad)
{
    /// <summary>A valve that passes everything.</summary>
    public static ValveLaw Open => AboveKnee(double.PositiveInfinity, 0);

    /// <summary>All up to a knee, a part of any further rise above it; an infinite knee for all.</summary>
    public static ValveLaw AboveKnee(double kneePascals, double slope) =>
        new(double.IsPositiveInfinity(kneePascals) ? kneePascals : (1 - slope) * kneePascals, slope, double.NegativeInfinity, 0, 0);

    /// <summary>Outlet line pressure in pascals, gauge.</summary>
    public double Outlet(double inletPascals, double rearLoadNewtons) =>
        Math.Min(inletPascals, Math.Max(A0 + A1 * inletPascals, B0 + B1 * inletPascals + BLoad * rearLoadNewtons));
}
