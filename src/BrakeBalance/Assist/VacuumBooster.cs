namespace BrakeBalance.Assist;

/// <summary>Vacuum booster: the air's pressure on one or two diaphragms helps the driver.</summary>
/// <remarks>
/// <para>Greatest assist = depression × number of diaphragms × effective area of one.</para>
/// <para>See <see cref="PoweredAssist"/> for the characteristic, <see cref="VacuumSupply"/> for what the engine offers.</para>
/// </remarks>
public sealed record VacuumBooster : PoweredAssist
{
    private readonly double? _areaShare;

    /// <summary>The vacuum there is.</summary>
    public required VacuumSupply Supply { get; init; }

    /// <summary>Diameter of one diaphragm, as the booster's size is named; 100 mm to 400 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 100 mm to 400 mm.</exception>
    public required Length DiaphragmDiameter
    {
        get;
        init => field = Require.Between(value, Length.FromMillimeters(100), Length.FromMillimeters(400));
    }

    /// <summary>Number of diaphragms: 1 single, 2 tandem.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is neither 1 nor 2.</exception>
    public int Diaphragms
    {
        get;
        init => field = value is 1 or 2
            ? value : throw new ArgumentOutOfRangeException(nameof(Diaphragms), value, "Must be 1 (single) or 2 (tandem).");
    } = 1;

    /// <summary>Share of a diaphragm's circle that works [–], the rolling edge and the rods taken off; 0.5 to 1.</summary>
    /// <remarks>
    /// <see cref="UsualAreaShare"/> of the number of diaphragms unless said. Common practice: a 7 in single works with about 34 in², a 9
    /// in with 53, an 11 in with 83, which is 0.83 to 0.88 of the circle; an 8 in tandem with 75 to 80 for both, which is 0.75 to 0.80: the
    /// rear one's piston passes through the wall between them.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.5 to 1.</exception>
    public double EffectiveAreaShare
    {
        get => _areaShare ?? UsualAreaShare(Diaphragms);
        init => _areaShare = Require.Between(value, 0.5, 1);
    }

    /// <summary>The share of a diaphragm's circle that works where none is given [–].</summary>
    /// <param name="diaphragms">Number of diaphragms: 1 single, 2 tandem.</param>
    /// <returns>0.85 for a single, 0.78 for a tandem.</returns>
    public static double UsualAreaShare(int diaphragms) => diaphragms == 2 ? 0.78 : 0.85;

    /// <summary>Volume of the evacuated chamber(s), pedal released, with any reservoir; not negative; zero when not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume VacuumChamberVolume { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>Volume of the chamber(s) that air enters, pedal released; not negative; zero when not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume ApplyChamberVolume { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>Area on which the depression works, all diaphragms together.</summary>
    public Area EffectiveArea =>
        Area.FromSquareMeters(Diaphragms * EffectiveAreaShare * Math.PI / 4 * DiaphragmDiameter.Meters * DiaphragmDiameter.Meters);

    /// <inheritdoc/>
    public override Force MaximumAssist => Force.FromNewtons(Supply.Vacuum.Pascals * EffectiveArea.SquareMeters);

    /// <summary>The applications still assisted by the vacuum that is trapped behind the check valve.</summary>
    /// <param name="rodTravels">Travel of the output rod at the end of each application; 1 to 100 of them, none negative.</param>
    /// <returns>One entry an application; empty when the chambers' volumes are not known or there is no vacuum.</returns>
    /// <remarks>
    /// <para>
    /// With the check valve shut the vacuum side holds its air, p V_f, while the diaphragm sweeps A x out of it: at the end of the stroke,
    /// where the help is needed, p_f = p V_f / (V_f − A x). Air that would rise above the air's own pressure leaves through the check
    /// valve, and nothing is left. On release the air let in mixes with what was trapped: p' = [p V_f + p_air (V_r + A x)] / (V_f + V_r).
    /// Pressures are absolute.
    /// </para>
    /// <para>
    /// Assumes constant temperature, a tight check valve, a stopped engine whose manifold stands at the air's pressure, and an air side
    /// filled up to the air's pressure, which is the most that a press can let in.
    /// </para>
    /// <para>Source: Boyle's law and the balance of the air's mass for the two chambers.</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">
    /// An argument is out of its range, or a travel is longer than the vacuum chamber allows.
    /// </exception>
    public override ImmutableArray<ReserveApplication> Reserve(IReadOnlyList<Length> rodTravels)
    {
        RequireStrokes(rodTravels);
        double vacuumSide = VacuumChamberVolume.CubicMeters;
        double airSide = ApplyChamberVolume.CubicMeters;
        if (vacuumSide == 0 || Supply.Vacuum.Pascals == 0)
        {
            return [];
        }

        double air = Supply.AirPressure.Pascals;
        double chamber = Supply.ChamberPressure.Pascals;
        double first = 0;
        ImmutableArray<ReserveApplication>.Builder list = ImmutableArray.CreateBuilder<ReserveApplication>(rodTravels.Count);
        foreach (Length travel in rodTravels)
        {
            double swept = SweptCubicMetres(travel, vacuumSide);
            double atEnd = Math.Min(air, chamber * vacuumSide / (vacuumSide - swept));
            Pressure vacuum = Pressure.FromPascals(air - atEnd);
            VacuumBooster now = this with { Supply = Supply with { Vacuum = vacuum } };
            first = list.Count == 0 ? vacuum.Pascals : first;
            list.Add(new ReserveApplication(
                Number: list.Count + 1,
                WorkingPressure: vacuum,
                MaximumAssist: now.MaximumAssist,
                ShareOfFirst: first > 0 ? vacuum.Pascals / first : 0,
                Assist: now));
            chamber = ((atEnd * (vacuumSide - swept)) + (air * (airSide + swept))) / (vacuumSide + airSide);
        }

        return list.MoveToImmutable();
    }

    private double SweptCubicMetres(Length rodTravel, double vacuumSide)
    {
        double swept = EffectiveArea.SquareMeters * rodTravel.Meters;
        return swept < vacuumSide ? swept : throw new ArgumentOutOfRangeException(
            nameof(rodTravel),
            Invariant.Text($"{rodTravel.Millimeters:0.#} mm"),
            Invariant.Text($"The diaphragm would sweep {swept * 1e3:0.##} L, ")
                + Invariant.Text($"more than the vacuum chamber's {vacuumSide * 1e3:0.##} L; ")
                + "check the chamber volume or the travel.");
    }
}
