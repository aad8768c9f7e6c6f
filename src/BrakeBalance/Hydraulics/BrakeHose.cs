namespace BrakeBalance.Hydraulics;

/// <summary>Bore of a hydraulic brake hose, in the three groups that FMVSS 106 knows.</summary>
public enum HoseBore
{
    /// <summary>1/8 in or 3 mm, or less.</summary>
    EighthInch,

    /// <summary>More than 1/8 in or 3 mm, up to 3/16 in or 5 mm.</summary>
    ThreeSixteenthsInch,

    /// <summary>More than 3/16 in or 5 mm.</summary>
    QuarterInch,
}

/// <summary>The flexible hoses of one axle and by how much they swell under pressure.</summary>
/// <remarks>
/// <para>Between the standard's test pressures the expansion is interpolated on straight lines, from zero at zero pressure.</para>
/// <para>Valid for: 0 to 2,900 psi (200 bar); 0 to 1,500 psi (103 bar) for the largest bore.</para>
/// <para>
/// Source: 49 CFR 571.106 S5.3.2, table I, read (see <c>data/references/hose-expansion.csv</c>). These are the greatest values a hose may
/// show in the test, so the volume is an upper bound for a hose that meets the standard, not what a given hose does.
/// </para>
/// </remarks>
public sealed record BrakeHose
{
    private const double PascalsPerPsi = 6894.757293168361;
    private const double MetresPerFoot = 0.3048;

    private static readonly Lazy<IReadOnlyList<double?[]>> Table = new(() => ReferenceTable.Rows(
        "hose-expansion.csv",
        row => new[]
        {
            row.Number("expansion_1000psi_cc_per_ft"),
            row.Number("expansion_1500psi_cc_per_ft"),
            row.Number("expansion_2900psi_cc_per_ft"),
        }));

    private static readonly double[] TestPressuresPsi = [1000, 1500, 2900];

    /// <summary>Free length of hose on the axle, all hoses together; 0 to 20 m.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 20 m.</exception>
    public required Length Length { get; init => field = Require.Between(value, Length.Zero, Length.FromMeters(20)); }

    /// <summary>Bore group; 1/8 in unless said.</summary>
    public HoseBore Bore { get; init; } = HoseBore.EighthInch;

    /// <summary>Whether it is a low-expansion hose (braided, for instance); regular unless said.</summary>
    public bool LowExpansion { get; init; }

    /// <summary>Highest line pressure for which the table has a value, gauge.</summary>
    public Pressure LargestPressure
    {
        get
        {
            double?[] row = Row;
            return Pressure.FromPascals(TestPressuresPsi.Where((_, i) => row[i] is not null).Last() * PascalsPerPsi);
        }
    }

    private double?[] Row => Table.Value[(2 * (int)Bore) + (LowExpansion ? 1 : 0)];

    /// <summary>The bore group of a hose.</summary>
    /// <param name="bore">Inner diameter.</param>
    /// <returns>Its group; up to 3.2 mm counts as 1/8 in, up to 5 mm as 3/16 in.</returns>
    public static HoseBore BoreGroup(Length bore) =>
        bore.Millimeters <= 3.2 ? HoseBore.EighthInch : bore.Millimeters <= 5 ? HoseBore.ThreeSixteenthsInch : HoseBore.QuarterInch;

    /// <summary>Most that the hoses swell at a line pressure.</summary>
    /// <param name="linePressure">Line pressure, gauge; not negative.</param>
    /// <returns>Volume taken up.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="linePressure"/> is negative or beyond the table.</exception>
    public Volume Expansion(Pressure linePressure)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(linePressure, Pressure.Zero);
        double psi = linePressure.Pascals / PascalsPerPsi;
        double?[] row = Row;
        double fromPsi = 0;
        double fromExpansion = 0;
        for (int i = 0; i < TestPressuresPsi.Length && row[i] is { } expansion; i++)
        {
            if (psi <= TestPressuresPsi[i])
            {
                double perFoot = fromExpansion + ((expansion - fromExpansion) * (psi - fromPsi) / (TestPressuresPsi[i] - fromPsi));
                return Volume.FromCubicCentimeters(perFoot * Length.Meters / MetresPerFoot);
            }

            (fromPsi, fromExpansion) = (TestPressuresPsi[i], expansion);
        }

        throw new ArgumentOutOfRangeException(nameof(linePressure), Invariant.Text($"{linePressure.Bars:0.#} bar"),
            Invariant.Text($"The table of hose expansion ends at {fromPsi:0} psi ({fromPsi * PascalsPerPsi / 1e5:0} bar) for this bore."));
    }
}
