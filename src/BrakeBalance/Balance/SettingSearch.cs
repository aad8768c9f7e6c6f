using System.Collections.Concurrent;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>Finds the setting of valve or balance bar that keeps the front first and wastes least of the road.</summary>
/// <remarks>
/// <para>More rear pressure never hurts efficiency as long as the front locks first, so the best safe knee is the greatest safe knee;
/// the worst corner of the friction spread is low at the front and high at the rear. Both follow from f₁ falling and f₂ rising with rear force.</para>
/// <para>Source: own derivation from UN R13-H Annex 5's f₁ and f₂.</para>
/// </remarks>
public static class SettingSearch
{
    /// <summary>How one knee and slope do over all conditions.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <param name="knee">The knee, gauge; not negative.</param>
    /// <param name="slope">The slope above it [–]; 0 to 1.</param>
    /// <returns>The outcome.</returns>
    public static SettingOutcome Evaluate(Vehicle vehicle, SettingConditions conditions, Pressure knee, double slope)
    {
        (int rearFirst, int cases, double sum, double worst) = Count(vehicle.WithRearKnee(knee, slope), conditions);
        return new(knee, slope, rearFirst == 0, (double)rearFirst / cases, sum, worst);
    }

    /// <summary>Tries every knee with every slope, on all cores.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <param name="knees">Knees to try, gauge.</param>
    /// <param name="slopes">Slopes to try [–].</param>
    /// <param name="progress">Told the number of settings done; may be null.</param>
    /// <param name="cancellation">Stops the sweep.</param>
    /// <returns>An outcome each, slopes within knees.</returns>
    public static IReadOnlyList<SettingOutcome> Sweep(
        Vehicle vehicle, SettingConditions conditions, IReadOnlyList<Pressure> knees, IReadOnlyList<double> slopes,
        IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        var outcomes = new SettingOutcome[knees.Count * slopes.Count];
        int done = 0;
        Parallel.ForEach(
            Partitioner.Create(0, outcomes.Length, Math.Max(1, outcomes.Length / (Environment.ProcessorCount * 8))),
            new ParallelOptions { CancellationToken = cancellation },
            range =>
            {
                for (int i = range.Item1; i < range.Item2; i++)
                {
                    outcomes[i] = Evaluate(vehicle, conditions, knees[i / slopes.Count], slopes[i % slopes.Count]);
                }

                progress?.Report(Interlocked.Add(ref done, range.Item2 - range.Item1));
            });
        return outcomes;
    }

    /// <summary>The greatest knee that keeps the front first everywhere, for a slope.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <param name="slope">The slope above the knee [–]; the car's own valve's when null.</param>
    /// <returns>The advice.</returns>
    /// <exception cref="ArgumentException">No slope is given and the car has no proportioning valve.</exception>
    public static SettingAdvice GreatestSafeKnee(Vehicle vehicle, SettingConditions conditions, double? slope = null)
    {
        double used = slope ?? vehicle.Hydraulics.RearProportioningValve?.Slope
            ?? throw new ArgumentException("The car has no proportioning valve, so a slope must be given.", nameof(slope));
        Pressure top = vehicle.Hydraulics.MaximumPressure;
        bool Safe(double pascals, double spread) => SafeEverywhere(vehicle.WithRearKnee(Pressure.FromPascals(pascals), used), conditions, spread);

        bool needed = !SafeEverywhere(vehicle with { Hydraulics = vehicle.Hydraulics.WithoutRearProportioning() }, conditions, conditions.FrictionSpread);
        Pressure? nominal = Greatest(pascals => Safe(pascals, 0), top.Pascals);
        Pressure? greatest = Greatest(pascals => Safe(pascals, conditions.FrictionSpread), top.Pascals);
        if (greatest is not { } knee)
        {
            return new(null, nominal, needed, FormattableString.Invariant(
                $"No knee keeps the front first with a slope of {used:0.00}: even at 0 bar the rear locks first somewhere. A lower slope, a smaller rear brake or a larger front one is needed."));
        }

        SettingOutcome outcome = Evaluate(vehicle, conditions, knee, used);
        return new(outcome, nominal, needed, needed
            ? FormattableString.Invariant(
                $"A knee of {knee.Bars:0.0} bar ({knee.PoundsForcePerSquareInch:0} psi) with a slope of {used:0.00} is the greatest that keeps the front first; mean efficiency {outcome.MeanEfficiency:0.0%}.")
            : FormattableString.Invariant($"No valve is needed: the front locks first everywhere without one; mean efficiency with the valve fully open {outcome.MeanEfficiency:0.0%}."));
    }

    /// <summary>The smallest front share of a balance bar that keeps the front first everywhere.</summary>
    /// <param name="vehicle">A car with a balance bar.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <returns>The front share of the rod force [–], to a thousandth, upwards; null when no share from 0.2 to 0.8 does.</returns>
    /// <exception cref="ArgumentException">The car has no balance bar.</exception>
    public static double? SmallestSafeFrontShare(Vehicle vehicle, SettingConditions conditions)
    {
        if (vehicle.Hydraulics.Split is not BalanceBarSplit bar)
        {
            throw new ArgumentException("The car has no balance bar.", nameof(vehicle));
        }

        bool Safe(double share) => SafeEverywhere(
            vehicle with { Hydraulics = vehicle.Hydraulics with { Split = bar with { FrontForceShare = share } } }, conditions, conditions.FrictionSpread);
        if (!Safe(0.8))
        {
            return null;
        }

        (int low, int high) = (199, 800);
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            if (Safe(middle / 1000.0))
            {
                high = middle;
            }
            else
            {
                low = middle;
            }
        }

        return high / 1000.0;
    }

    /// <summary>Whether the front locks first, or both together, on every surface and in every load case, friction at its worst corner.</summary>
    /// <param name="vehicle">The car as set.</param>
    /// <param name="conditions">Surfaces, loads and friction spread.</param>
    /// <returns>True when it does; a case with no lock-up up to the highest pressure counts as safe.</returns>
    public static bool FrontFirstEverywhere(Vehicle vehicle, SettingConditions conditions) => SafeEverywhere(vehicle, conditions, conditions.FrictionSpread);

    private static bool SafeEverywhere(Vehicle vehicle, SettingConditions conditions, double spread)
    {
        if (WithWorstFriction(vehicle, spread) is not { } worst)
        {
            return false;
        }

        IReadOnlyList<double> adhesions = conditions.Adhesions;
        foreach (LoadCase load in conditions.LoadCasesOf(vehicle))
        {
            var model = new BalanceModel(worst, load);
            foreach (double adhesion in adhesions)
            {
                if (model.TryFirstLockUp(adhesion, out _, out Axle? first, out _) && first == Axle.Rear)
                {
                    return false;
                }
            }
        }

        return true;
    }

    // Null when the rear shoes lock by themselves within the spread: then the rear locks first at any setting.
    private static Vehicle? WithWorstFriction(Vehicle vehicle, double spread)
    {
        Brake front = vehicle.Brakes.Front;
        double highest = Math.Min(Brake.HighestFriction, vehicle.Brakes.Rear.FrictionCoefficient * (1 + spread));
        return vehicle.Brakes.Rear is DrumBrake drum && drum.SelfLockingFriction() <= highest
            ? null
            : vehicle with { Brakes = new(front.WithFriction(front.FrictionCoefficient * (1 - spread)), vehicle.Brakes.Rear.WithFriction(highest)) };
    }

    private static (int RearFirst, int Cases, double MeanEfficiency, double WorstEfficiency) Count(Vehicle vehicle, SettingConditions conditions)
    {
        Vehicle? worstFriction = WithWorstFriction(vehicle, conditions.FrictionSpread);
        IReadOnlyList<double> adhesions = conditions.Adhesions;
        int rearFirst = 0;
        int cases = 0;
        double sum = 0;
        double worst = 1;
        foreach (LoadCase load in conditions.LoadCasesOf(vehicle))
        {
            var nominal = new BalanceModel(vehicle, load);
            BalanceModel? spread = worstFriction is null ? null : new(worstFriction, load);
            foreach (double adhesion in adhesions)
            {
                cases++;
                if (spread is null || (spread.TryFirstLockUp(adhesion, out _, out Axle? first, out _) && first == Axle.Rear))
                {
                    rearFirst++;
                }

                // With no lock-up up to the highest pressure the car uses what that pressure gives.
                double efficiency = nominal.TryFirstLockUp(adhesion, out _, out _, out double value)
                    ? value
                    : nominal.StateAt(nominal.MaximumPressure.Pascals).BrakingRate / nominal.GreatestRate(adhesion);
                sum += efficiency;
                worst = Math.Min(worst, efficiency);
            }
        }

        return (rearFirst, cases, sum / cases, worst);
    }

    private static Pressure? Greatest(Func<double, bool> safe, double topPascals)
    {
        if (!safe(0))
        {
            return null;
        }

        if (safe(topPascals))
        {
            return Pressure.FromPascals(topPascals);
        }

        (double low, double high) = (0, topPascals);
        while (high - low > 1e3)
        {
            double middle = 0.5 * (low + high);
            if (safe(middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        return Pressure.FromPascals(low);
    }
}
