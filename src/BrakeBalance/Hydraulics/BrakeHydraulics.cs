namespace BrakeBalance.Hydraulics;

/// <summary>All that lies between the master cylinder and the wheel brakes: how the circuits are split, and the valves in each.</summary>
/// <remarks>
/// The independent variable everywhere is the <em>front master-cylinder pressure</em>: with a tandem cylinder it is also the rear's,
/// with a balance bar the rear's is a fixed multiple of it. It does not depend on pedal or assist.
/// </remarks>
public sealed record BrakeHydraulics
{
    /// <summary>How the two circuits share the demand.</summary>
    public MasterSplit Split { get; init; } = new TandemSplit();

    /// <summary>Valves in the front line, from the master cylinder to the brakes.</summary>
    public ImmutableArray<PressureValve> FrontValves { get; init; } = [];

    /// <summary>Valves in the rear line, from the master cylinder to the brakes.</summary>
    public ImmutableArray<PressureValve> RearValves { get; init; } = [];

    /// <summary>Highest master-cylinder pressure considered, gauge; above zero; 140 bar unless said (common practice).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Pressure MaximumPressure { get; init => field = Require.Positive(value); } = Pressure.FromBars(140);

    /// <summary>Whether any valve looks at the rear axle's load.</summary>
    public bool SensesLoad => RearValves.Any(valve => valve.SensesLoad) || FrontValves.Any(valve => valve.SensesLoad);

    /// <summary>The first proportioning valve in the rear line; null when there is none.</summary>
    public ProportioningValve? RearProportioningValve => RearValves.OfType<ProportioningValve>().FirstOrDefault();

    /// <summary>Line pressures at the brakes.</summary>
    /// <param name="master">Front master-cylinder pressure, gauge; not negative.</param>
    /// <param name="rearAxleLoad">Normal reaction on the rear axle at that moment; only a load-sensing valve looks at it.</param>
    /// <returns>Front and rear line pressure behind the valves, gauge.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="master"/> is negative.</exception>
    public PerAxle<Pressure> LinePressures(Pressure master, Force rearAxleLoad = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(master, Pressure.Zero);
        return new(
            Pressure.FromPascals(Through(FrontValves, master.Pascals, rearAxleLoad.Newtons)),
            Pressure.FromPascals(Through(RearValves, master.Pascals * Split.RearToFrontPressureRatio, rearAxleLoad.Newtons)));
    }

    /// <summary>The same hydraulics with another knee and slope in the rear line.</summary>
    /// <param name="knee">The knee, gauge; not negative.</param>
    /// <param name="slope">The slope above it [–]; null keeps the present slope.</param>
    /// <returns>A copy whose first rear proportioning valve has that knee; with such a valve added in front when there was none.</returns>
    /// <exception cref="ArgumentException">There is no proportioning valve and no slope is given.</exception>
    public BrakeHydraulics WithRearKnee(Pressure knee, double? slope = null)
    {
        ProportioningValve? present = RearProportioningValve;
        if (present is null)
        {
            return this with
            {
                RearValves = RearValves.Insert(0, new ProportioningValve
                {
                    Knee = knee,
                    Slope = slope ?? throw new ArgumentException(
                        "The car has no proportioning valve, so a slope must be given with the knee.", nameof(slope)),
                }),
            };
        }

        return this with { RearValves = RearValves.Replace(present, present with { Knee = knee, Slope = slope ?? present.Slope }) };
    }

    /// <summary>The same hydraulics without proportioning in the rear line: what the brakes would do on their own.</summary>
    /// <returns>A copy in which only metering valves are left in the rear line.</returns>
    public BrakeHydraulics WithoutRearProportioning() => this with { RearValves = [.. RearValves.Where(valve => valve is MeteringValve)] };

    /// <summary>Whether other hydraulics differ in the knee of <see cref="RearProportioningValve"/> at most.</summary>
    internal bool DiffersInKneeOnly(BrakeHydraulics other)
    {
        (BrakeHydraulics one, BrakeHydraulics two) = (AtZero(this), AtZero(other));
        return one with { FrontValves = two.FrontValves, RearValves = two.RearValves } == two
            && one.FrontValves.SequenceEqual(two.FrontValves) && one.RearValves.SequenceEqual(two.RearValves);

        static BrakeHydraulics AtZero(BrakeHydraulics set) => set.RearProportioningValve is null ? set : set.WithRearKnee(Pressure.Zero);
    }

    internal static double Through(ImmutableArray<PressureValve> valves, double inletPascals, double rearAxleLoadNewtons)
    {
        double pressure = inletPascals;
        foreach (PressureValve valve in valves)
        {
            pressure = valve.OutletPascals(pressure, rearAxleLoadNewtons);
        }

        return pressure;
    }

    /// <summary>Line pressure behind valves that have reached the given outlets; none for a pressure that has only risen.</summary>
    internal static double Through(ImmutableArray<PressureValve> valves, double inletPascals, double rearAxleLoadNewtons,
        ReadOnlySpan<double> highestOutlets)
    {
        if (highestOutlets.IsEmpty)
        {
            return Through(valves, inletPascals, rearAxleLoadNewtons);
        }

        double pressure = inletPascals;
        for (int i = 0; i < valves.Length; i++)
        {
            pressure = valves[i].OutletPascals(pressure, rearAxleLoadNewtons, highestOutlets[i]);
        }

        return pressure;
    }

    /// <summary>Raises the outlets that valves have reached to those of this moment; does nothing without a place to keep them.</summary>
    internal static void Remember(ImmutableArray<PressureValve> valves, double inletPascals, double rearAxleLoadNewtons,
        Span<double> highestOutlets)
    {
        double pressure = inletPascals;
        for (int i = 0; i < highestOutlets.Length; i++)
        {
            pressure = valves[i].OutletPascals(pressure, rearAxleLoadNewtons, highestOutlets[i]);
            highestOutlets[i] = Math.Max(highestOutlets[i], pressure);
        }
    }
}
