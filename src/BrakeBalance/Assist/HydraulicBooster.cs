namespace BrakeBalance.Assist;

/// <summary>Hydraulic booster fed by the steering pump: oil pressure on a power piston helps the driver.</summary>
/// <remarks>
/// <para>
/// Greatest assist = relief pressure × area of the power piston. The pump's flow limits how fast the piston can follow the foot; steering
/// at the same time takes its share of the flow first. Pressure that stands in a shared return line cannot leave the power chamber and
/// pushes even with the pedal released: slow release and dragging brakes.
/// </para>
/// <para>
/// Assumes the booster upstream of the steering gear, so that steering takes flow from it but not pressure, and a pump whose relief
/// pressure does not depend on speed.
/// </para>
/// <para>See <see cref="PoweredAssist"/> for the characteristic. Source: equilibrium and continuity at the power piston.</para>
/// </remarks>
public sealed record HydraulicBooster : PoweredAssist
{
    /// <summary>Pressure at which the pump's relief valve opens, gauge; not negative, zero when the pump has stopped; to 200 bar.</summary>
    /// <remarks>Service data show 1,000 to 1,580 psi (69 to 109 bar): common practice.</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 200 bar.</exception>
    public required Pressure ReliefPressure { get; init => field = Require.Between(value, Pressure.Zero, Pressure.FromBars(200)); }

    /// <summary>Flow the pump gives at the engine speed considered; not negative.</summary>
    /// <remarks>One car's service data ask for at least 0.9 gal/min at idle; 2 to 3 gal/min are aimed for (common practice).</remarks>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required VolumeFlow PumpFlow { get; init => field = Require.NotNegative(value); }

    /// <summary>Diameter of the power piston; 10 mm to 80 mm.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 10 mm to 80 mm.</exception>
    public required Length PowerPistonDiameter
    {
        get;
        init => field = Require.Between(value, Length.FromMillimeters(10), Length.FromMillimeters(80));
    }

    /// <summary>Flow that the steering gear takes at the same time; not negative; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public VolumeFlow SteeringFlow { get; init => field = Require.NotNegative(value); } = VolumeFlow.Zero;

    /// <summary>Pressure that stands in the return line at the booster, gauge; not negative; none unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure ReturnBackPressure { get; init => field = Require.NotNegative(value); } = Pressure.Zero;

    /// <summary>The accumulator for the time after the pump has stopped; null when there is none.</summary>
    public Accumulator? Accumulator { get; init; }

    /// <summary>Area of the power piston.</summary>
    public Area PowerPistonArea => Area.FromSquareMeters(Math.PI / 4 * PowerPistonDiameter.Meters * PowerPistonDiameter.Meters);

    /// <inheritdoc/>
    public override Force MaximumAssist => Force.FromNewtons(ReliefPressure.Pascals * PowerPistonArea.SquareMeters);

    /// <inheritdoc/>
    public override Force ResidualAssist =>
        Force.FromNewtons(Math.Min(ReturnBackPressure.Pascals, ReliefPressure.Pascals) * PowerPistonArea.SquareMeters);

    /// <summary>
    /// Force left on the master cylinder's rod with the pedal released, from pressure in the return line; zero when the spring overcomes
    /// it.
    /// </summary>
    public Force ReleasedOutputForce => OutputForce(Force.Zero);

    /// <summary>Fastest travel of the output rod that the pump's flow can follow; zero when steering takes it all.</summary>
    public Speed FastestRodSpeed => Speed.FromMetersPerSecond(
        Math.Max(0, PumpFlow.CubicMetersPerSecond - SteeringFlow.CubicMetersPerSecond) / PowerPistonArea.SquareMeters);

    /// <summary>Shortest time in which the assist can move the output rod through a travel.</summary>
    /// <param name="rodTravel">Travel of the output rod; not negative.</param>
    /// <returns>The time; null when steering leaves no flow for the brakes.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rodTravel"/> is negative.</exception>
    public Duration? ShortestApplication(Length rodTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodTravel, Length.Zero);
        double speed = FastestRodSpeed.MetersPerSecond;
        return speed > 0 ? Duration.FromSeconds(rodTravel.Meters / speed) : null;
    }

    /// <summary>The applications still assisted out of the accumulator.</summary>
    /// <param name="rodTravels">Travel of the output rod at the end of each application; 1 to 100 of them, none negative.</param>
    /// <returns>
    /// One entry an application, with the pressure left at its end; without the spent ones; empty when there is no accumulator.
    /// </returns>
    /// <remarks>
    /// <para>
    /// See <see cref="Assist.Accumulator"/>. Each application takes area × travel of oil, and the pressure that counts is the one left at
    /// the end of the stroke. On release that oil runs off to the reservoir, so the draws add up.
    /// </para>
    /// <para>Leakage past the spool is neglected, and that the gas takes up heat again between the applications, which gives some
    /// pressure back.</para>
    /// </remarks>
    /// <exception cref="ArgumentException">The accumulator's precharge lies above the pump's relief pressure.</exception>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public override ImmutableArray<ReserveApplication> Reserve(IReadOnlyList<Length> rodTravels)
    {
        RequireStrokes(rodTravels);
        if (Accumulator is null || ReliefPressure <= Pressure.Zero)
        {
            return [];
        }

        double drawn = 0;
        double first = 0;
        ImmutableArray<ReserveApplication>.Builder list = ImmutableArray.CreateBuilder<ReserveApplication>();
        foreach (Length travel in rodTravels)
        {
            drawn += PowerPistonArea.SquareMeters * travel.Meters;
            Pressure left = Accumulator.PressureAfter(ReliefPressure, Volume.FromCubicMeters(drawn));
            if (left <= Pressure.Zero)
            {
                break;
            }

            first = first == 0 ? left.Pascals : first;
            HydraulicBooster now = this with { ReliefPressure = left, PumpFlow = VolumeFlow.Zero, ReturnBackPressure = Pressure.Zero };
            list.Add(new ReserveApplication(
                Number: list.Count + 1,
                WorkingPressure: left,
                MaximumAssist: now.MaximumAssist,
                ShareOfFirst: left.Pascals / first,
                Assist: now));
        }

        return list.ToImmutable();
    }
}
