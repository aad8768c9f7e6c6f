namespace BrakeBalance.Hydraulics;

/// <summary>A grade of brake fluid and the least it must withstand.</summary>
/// <remarks>
/// Source: 49 CFR 571.116 S5.1.1 to S5.1.3 (read) for boiling points and viscosity; compressibility: see
/// <c>data/references/brake-fluids.csv</c>.
/// Wet means with 3.7 % of water, about two years' use. DOT 5 is silicone-based, the others are glycol-based.
/// </remarks>
public sealed record BrakeFluidGrade
{
    private static readonly Lazy<IReadOnlyList<BrakeFluidGrade>> Table =
        new(() => ReferenceTable.Rows("brake-fluids.csv", row => new BrakeFluidGrade
        {
            Name = row["grade"],
            DryBoilingPoint = Temperature.FromDegreesCelsius(row.Number("dry_boiling_point_C")!.Value),
            WetBoilingPoint = Temperature.FromDegreesCelsius(row.Number("wet_boiling_point_C")!.Value),
            GreatestColdViscosity = KinematicViscosity.FromCentistokes(row.Number("viscosity_at_minus_40C_cSt")!.Value),
            ColdCompressibility = Compressibility.FromInversePascals(row.Number("compressibility_20C_per_GPa")!.Value / 1e9),
            HotCompressibility = Compressibility.FromInversePascals(row.Number("compressibility_200C_per_GPa")!.Value / 1e9),
        }));

    private BrakeFluidGrade()
    {
    }

    /// <summary>All grades of the table.</summary>
    public static IReadOnlyList<BrakeFluidGrade> All => Table.Value;

    /// <summary>The grade that most road cars use.</summary>
    public static BrakeFluidGrade Dot4 => Named("DOT 4") ?? throw new InvalidOperationException("The table of brake fluids has no DOT 4.");

    /// <summary>Name of the grade.</summary>
    public string Name { get; private init; } = string.Empty;

    /// <summary>Lowest boiling point of fresh fluid.</summary>
    public Temperature DryBoilingPoint { get; private init; }

    /// <summary>Lowest boiling point of fluid that has drawn 3.7 % of water.</summary>
    public Temperature WetBoilingPoint { get; private init; }

    /// <summary>Greatest kinematic viscosity at −40 °C.</summary>
    public KinematicViscosity GreatestColdViscosity { get; private init; }

    /// <summary>Compressibility of the fluid at 20 °C, without air.</summary>
    public Compressibility ColdCompressibility { get; private init; }

    /// <summary>Compressibility of the fluid at 200 °C, without air.</summary>
    public Compressibility HotCompressibility { get; private init; }

    /// <summary>The grade of a name.</summary>
    /// <param name="name">Such as <c>DOT 4</c>; case and spaces do not matter.</param>
    /// <returns>The grade; null when there is none of that name.</returns>
    public static BrakeFluidGrade? Named(string name) =>
        All.FirstOrDefault(grade => Plain(grade.Name).Equals(Plain(name), StringComparison.OrdinalIgnoreCase));

    private static string Plain(string name) => name.Replace(" ", string.Empty, StringComparison.Ordinal);
}
