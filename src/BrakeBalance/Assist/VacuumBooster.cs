using System.Collections.Immutable;
using UnitsNet;

namespace BrakeBalance.Assist;

/// <summary>Vacuum booster: the air's pressure on one or two diaphragms helps the driver.</summary>
/// <remarks>
/// <para>Greatest assist = depression × number of diaphragms × effective area of one.</para>
/// <para>See <see cref="PoweredAssist"/> for the characteristic, <see cref="VacuumSupply"/> for what the engine offers.</para>
/// </remarks>
public sealed record VacuumBooster : PoweredAssist
{
    /// <summary>The vacuum there is.</summary>
    public required VacuumSupply Supply { get; init; }

    /// <summary>Diameter of one diaphragm, as the booster's size is named; 100 mm to 400 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 100 mm to 400 mm.</exception>
    public required Length DiaphragmDiameter { get; init => field = Require.Between(value, Length.FromMillimeters(100), Length.FromMillimeters(400)); }

    /// <summary>Number of diaphragms: 1 single, 2 tandem.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is neither 1 nor 2.</exception>
    public int Diaphragms
    {
        get;
        init => field = value is 1 or 2 ? value : throw new ArgumentOutOfRangeException(nameof(Diaphragms), value, "Must be 1 (single) or 2 (tandem).");
    } = 1;

    /// <summary>Share of a diaphragm's circle that works [–], the rolling edge and the rods taken off; 0.5 to 1.</summary>
    /// <remarks>
    /// 0.85 unless said. Common practice: a 7 in single works with about 34 in², a 9 in with 53, an 11 in with 83, which is 0.83 to 0.88 of
    /// the circle; an 8 in tandem with 75 to 80, which is 0.75 to 0.80.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0.5 to 1.</exception>
    public double EffectiveAreaShare { get; init => field = Require.Between(value, 0.5, 1); } = 0.85;

    /// <summary>Volume of the evacuated chamber(s), pedal released, with any reservoir; not negative; zero when not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume VacuumChamberVolume { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>Volume of the chamber(s) that air enters, pedal released; not negative; zero when not known.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Volume ApplyChamberVolume { get; init => field = Require.NotNegative(value); } = Volume.Zero;

    /// <summary>Area on which the depression works, all diaphragms together.</summary>
    public Area EffectiveArea => Area.FromSquareMeters(Diaphragms * EffectiveAreaShare * Math.PI / 4 * DiaphragmDiameter.Meters * DiaphragmDiameter.Meters);

    /// <inheritdoc/>
    public override Force MaximumAssist => Force.FromNewtons(Supply.Vacuum.Pascals * EffectiveArea.SquareMeters);

    /// <summary>The applications still assisted by the vacuum that is trapped behind the check valve.</summary>
    /// <param name="rodTravel">Travel of the output rod at each application; not negative.</param>
    /// <param name="applications">How many applications to list; 1 to 100.</param>
    /// <returns>One entry an application; empty when the chambers' volumes are not known or there is no vacuum.</returns>
    /// <remarks>
    /// <para>p' = [p (V_f − A x) + p_air (V_r + A x)] / (V_f + V_r): on release the air let in mixes with what was left.</para>
    /// <para>Assumes constant temperature, a tight check valve and the same travel each time; the rise of pressure during one application is neglected.</para>
    /// <para>Source: Boyle's law for the two chambers; chamber data of a test car in UCB-ITS-PRR-97-21, table 2.1 (seen second-hand).</para>
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range, or the travel is longer than the vacuum chamber allows.</exception>
    public override ImmutableArray<ReserveApplication> Reserve(Length rodTravel, int applications)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodTravel, Length.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(applications, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(applications, 100);
        double vacuumSide = VacuumChamberVolume.CubicMeters;
        double airSide = ApplyChamberVolume.CubicMeters;
        if (vacuumSide == 0 || Supply.Vacuum.Pascals == 0)
        {
            return [];
        }

        double swept = EffectiveArea.SquareMeters * rodTravel.Meters;
        if (swept >= vacuumSide)
        {
            throw new ArgumentOutOfRangeException(
                nameof(rodTravel),
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{rodTravel.Millimeters:0.#} mm"),
                string.Create(System.Globalization.CultureInfo.InvariantCulture, $"The diaphragm would sweep {swept * 1e3:0.##} L, more than the vacuum chamber's {vacuumSide * 1e3:0.##} L; check the chamber volume or the travel."));
        }

        double air = Supply.AirPressure.Pascals;
        double chamber = Supply.ChamberPressure.Pascals;
        ImmutableArray<ReserveApplication>.Builder list = ImmutableArray.CreateBuilder<ReserveApplication>(applications);
        for (int number = 1; number <= applications; number++)
        {
            Pressure vacuum = Pressure.FromPascals(Math.Max(0, air - chamber));
            VacuumBooster now = this with { Supply = Supply with { Vacuum = vacuum } };
            list.Add(new ReserveApplication
            {
                Number = number,
                WorkingPressure = vacuum,
                MaximumAssist = now.MaximumAssist,
                ShareOfFirst = vacuum / Supply.Vacuum,
                Assist = now,
            });
            chamber = ((chamber * (vacuumSide - swept)) + (air * (airSide + swept))) / (vacuumSide + airSide);
        }

        return list.MoveToImmutable();
    }
}
