using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench;

/// <summary>What the return lines do to the pedal when the foot comes off.</summary>
/// <remarks>
/// <para>
/// Standing: the back-pressure with no flow out of the booster pushes on the power piston; what springs do not hold becomes line pressure.
/// Release: springs alone bring the piston home, so its flow Q is the one whose back-pressure equals spring force over piston area, and the
/// time is area × travel / Q.
/// </para>
/// <para>
/// Assumes a spool that opens wide, and springs alone: while the brakes still push back the release is quicker, so the time is an upper
/// bound. No agreed limit of back-pressure was found; the booster's maker may give one.
/// </para>
/// <para>Source: equilibrium and continuity at the power piston.</para>
/// </remarks>
/// <param name="Standing">Back-pressure at the booster with the pedal released and at rest, gauge.</param>
/// <param name="RodForce">Force that it leaves on the master cylinder's rod; zero when the booster's spring holds it.</param>
/// <param name="ResidualLinePressure">Line pressure that stays on the front brakes, gauge; zero when springs hold it.</param>
/// <param name="SpringPressure">Pressure difference that the springs make at the power piston.</param>
/// <param name="ReleaseFlow">
/// Flow out of the booster at which the springs and the return lines balance; null when the piston does not come home.
/// </param>
/// <param name="ReleaseTime">Longest time for the pedal to come back; null when it does not come back by springs.</param>
/// <param name="Finding">The finding in words.</param>
public sealed record ReleaseEffect(
    Pressure Standing, Force RodForce, Pressure ResidualLinePressure, Pressure SpringPressure, VolumeFlow? ReleaseFlow,
    Duration? ReleaseTime, BenchFinding Finding)
{
    /// <summary>Time within which a wheel should turn freely by hand once the pedal is let go: 2 s (common practice).</summary>
    public static Duration FreeWithin { get; } = Duration.FromSeconds(2);

    /// <summary>Works out what the return lines do.</summary>
    /// <param name="flow">The return lines and what flows in them.</param>
    /// <param name="booster">The booster; its own return back-pressure is not looked at.</param>
    /// <param name="master">The master cylinder.</param>
    /// <param name="rodTravel">Travel of the rod that is let go; above zero.</param>
    /// <param name="makersLimit">Highest back-pressure that the booster's maker allows, gauge; null when not known.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="rodTravel"/> is not above zero.</exception>
    /// <exception cref="InvalidOperationException">The booster's return does not reach the reservoir.</exception>
    public static ReleaseEffect Of(ReturnFlow flow, HydraulicBooster booster, MasterCylinder master, Length rodTravel,
        Pressure? makersLimit = null)
    {
        ArgumentNullException.ThrowIfNull(flow);
        ArgumentNullException.ThrowIfNull(booster);
        ArgumentNullException.ThrowIfNull(master);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(rodTravel, Length.Zero);
        Pressure standing = flow.BackPressure(VolumeFlow.Zero);
        Force rod = (booster with { ReturnBackPressure = standing }).ReleasedOutputForce;
        Pressure residual = master.OutletPressures(rod).Front;
        double springs = (booster.ReturnSpringForce.Newtons
            + master.ReturnSpringForce.Newtons - master.SealFriction.Newtons) / booster.PowerPistonArea.SquareMeters;
        double? release = ReleaseFlowFor(flow, springs, standing.Pascals);
        Duration? time = release is { } cubic
            ? Duration.FromSeconds(booster.PowerPistonArea.SquareMeters * rodTravel.Meters / cubic) : null;
        return new ReleaseEffect(
            Standing: standing,
            RodForce: rod,
            ResidualLinePressure: residual,
            SpringPressure: Pressure.FromPascals(springs),
            ReleaseFlow: release is { } q ? VolumeFlow.FromCubicMetersPerSecond(q) : null,
            ReleaseTime: time,
            Finding: Judge(standing, residual, springs, time, makersLimit));
    }

    private static double? ReleaseFlowFor(ReturnFlow flow, double springPascals, double standingPascals)
    {
        if (springPascals <= standingPascals)
        {
            return null;
        }

        // The back-pressure grows with the flow; it jumps where flow turns turbulent, and there the root is the jump itself.
        double Miss(double cubic) => flow.BackPressure(VolumeFlow.FromCubicMetersPerSecond(cubic)).Pascals - springPascals;
        double high = 1e-5;
        while (Miss(high) < 0 && high < 1)
        {
            high *= 2;
        }

        double low = 0;
        for (int i = 0; i < 100 && high - low > 1e-12 * high; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Miss(middle) < 0 ? (middle, high) : (low, middle);
        }

        return low > 0 ? low : null;
    }

    private static BenchFinding Judge(Pressure standing, Pressure residual, double springPascals, Duration? time, Pressure? limit)
    {
        const string where = "booster return";
        if (time is null)
        {
            return new(BenchSeverity.Wrong, where, Invariant.Text(
                $"The back-pressure is {InBoth.Text(standing)} with the pedal released, the springs hold "
                    + $"{InBoth.Text(Pressure.FromPascals(springPascals))}; of the rest booster and cylinder make "
                    + $"{InBoth.Text(residual)} that stay on the brakes."),
                "The brakes drag and heat up. Give the booster a return of its own, wider and shorter, and let the oil warm up before "
                    + "it is judged.");
        }

        if (limit is { } most && standing > most)
        {
            return new(BenchSeverity.Wrong, where,
                Invariant.Text($"the back-pressure is {InBoth.Text(standing)}, the maker allows {InBoth.Text(most)}."),
                "Give the booster a return of its own, wider and shorter.");
        }

        string seconds = Invariant.Text($"By springs alone the pedal takes up to {time.Value.Seconds:0.00} s to come back, "
            + $"against {InBoth.Text(standing)} in the return.");
        return time > FreeWithin
            ? new(BenchSeverity.Caution, where, seconds,
                "That is a slow release; widen or shorten the return, and look for a crushed hose.")
            : new(BenchSeverity.Pass, where, seconds, "Two seconds after release each wheel should turn by hand as it did before.");
    }
}
