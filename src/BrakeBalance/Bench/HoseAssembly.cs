namespace BrakeBalance.Bench;

/// <summary>A hose with its two fittings, as it is ordered or made up.</summary>
/// <remarks>
/// <para>Cut length = overall length − cut-off allowance of each end. Under pressure the hose (not the fittings) becomes up to 4 %
/// shorter or 2 % longer.</para>
/// <para>Source: cut length and change of length as given on hose makers' pages and in a maker's note, read in part; they restate the
/// SAE hose tables.</para>
/// </remarks>
/// <param name="Name">Name of the assembly, such as "pump to booster".</param>
/// <param name="Rating">Class and size of the hose.</param>
/// <param name="First">The first end.</param>
/// <param name="Second">The second end.</param>
/// <param name="OutsideDiameter">
/// Outer diameter of the hose; null when not measured, and then the straight hose at the fittings is not judged.
/// </param>
/// <param name="RouteLength">
/// Longest way from seat to seat over full bump, droop and both locks, found with a string; null when not measured.
/// </param>
/// <param name="Routing">The bends of the route; null when not measured.</param>
public sealed record HoseAssembly(
    string Name, HoseRating Rating, HoseEnd First, HoseEnd Second, Length? OutsideDiameter = null, Length? RouteLength = null,
    HoseRouting? Routing = null)
{
    /// <summary>Most that a hose may shorten under pressure, of its length [–].</summary>
    public const double GreatestShortening = 0.04;

    /// <summary>Most that a hose may grow under pressure, of its length [–].</summary>
    public const double GreatestGrowth = 0.02;

    /// <summary>Length from seat to seat (to the centre line of a bent fitting's seat), the hose straight; above zero, to 10 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero or above 10 m.</exception>
    public required Length OverallLength { get; init => field = Require.Between(value, Length.FromMillimeters(1), Length.FromMeters(10)); }

    /// <summary>
    /// Angle between two bent ends: looking along the hose at the second end from its open side, the first end hanging down, clockwise from
    /// down to where the second points; 0 up to 360 degrees; null when an end is straight. Write the convention on the order.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 360 degrees.</exception>
    public Angle? Orientation
    {
        get;
        init => field = value is { } angle ? Require.Between(angle, Angle.Zero, Angle.FromDegrees(360)) : null;
    }

    /// <summary>Distances to heat and to moving parts.</summary>
    public System.Collections.Immutable.ImmutableArray<HoseClearance> Clearances { get; init; } = [];

    /// <summary>How many are made; 1 to 100; one unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 100.</exception>
    public int Pieces { get; init => field = (int)Require.Between((double)value, 1, 100); } = 1;

    /// <summary>How many more are made to keep; 0 to 100; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 100.</exception>
    public int Spares { get; init => field = (int)Require.Between((double)value, 0, 100); }

    /// <summary>What the two ends take off the overall length.</summary>
    public Length CutOffs => First.CutOff + Second.CutOff;

    /// <summary>
    /// Length to which the hose is cut; not above zero when the ends alone are longer than the assembly: see <see cref="HoseChecks"/>.
    /// </summary>
    public Length CutLength => OverallLength - CutOffs;

    /// <summary>Hose that can bend: cut length less what the sockets hide.</summary>
    public Length FreeLength => CutLength - First.Insertion - Second.Insertion;

    /// <summary>Shortest the assembly may become under pressure.</summary>
    public Length ShortestUnderPressure => OverallLength - (CutLength * GreatestShortening);

    /// <summary>Longest the assembly may become under pressure.</summary>
    public Length LongestUnderPressure => OverallLength + (CutLength * GreatestGrowth);

    /// <summary>How far the length of a made-up assembly may be off, plus or minus.</summary>
    /// <remarks>
    /// Up to 12 in 1/8 in, to 18 in 3/16 in, to 36 in 1/4 in, above 1 % of the length. Source: the first step a maker's note, read in part;
    /// the others the SAE J517 family, from memory.
    /// </remarks>
    public Length LengthTolerance => OverallLength.Inches switch
    {
        <= 12 => Length.FromInches(0.125),
        <= 18 => Length.FromInches(0.1875),
        <= 36 => Length.FromInches(0.25),
        _ => OverallLength * 0.01,
    };

    /// <summary>Working pressure of the assembly: the lowest of hose and connectors, gauge.</summary>
    /// <remarks>Source: SAE J517 (Jul 2003), scope.</remarks>
    public Pressure WorkingPressure =>
        new[] { Rating.WorkingPressure, First.WorkingPressure, Second.WorkingPressure }.OfType<Pressure>().Min();

    /// <summary>Overall length that still spans a route when the hose is at its shortest.</summary>
    /// <param name="route">Longest way from seat to seat; not negative.</param>
    /// <returns>(route − cut-offs)/(1 − 0.04) + cut-offs; the cut-offs themselves for a shorter route.</returns>
    public Length OverallFor(Length route) => route <= CutOffs ? CutOffs : ((route - CutOffs) / (1 - GreatestShortening)) + CutOffs;
}
