using System.Collections.Concurrent;
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
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
    /// <param name="knee">The knee, gauge; not negative.</param>
    /// <param name="slope">The slope above it [–]; 0 to 1.</param>
    /// <returns>The outcome.</returns>
    public static SettingOutcome Evaluate(Vehicle vehicle, SettingConditions conditions, Pressure knee, double slope) =>
        Evaluate(new Cases(vehicle, conditions), knee, slope);

    /// <summary>Tries every knee with every slope, on all cores.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
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
        var cases = new Cases(vehicle, conditions);
        int done = 0;
        Parallel.ForEach(
            Partitioner.Create(0, outcomes.Length, Math.Max(1, outcomes.Length / (Environment.ProcessorCount * 8))),
            new ParallelOptions { CancellationToken = cancellation },
            range =>
            {
                for (int i = range.Item1; i < range.Item2; i++)
                {
                    outcomes[i] = Evaluate(cases, knees[i / slopes.Count], slopes[i % slopes.Count]);
                }

                progress?.Report(Interlocked.Add(ref done, range.Item2 - range.Item1));
            });
        return outcomes;
    }

    /// <summary>The greatest knee that keeps the front first everywhere, for a slope.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
    /// <param name="slope">The slope above the knee [–]; the car's own valve's when null.</param>
    /// <returns>The advice.</returns>
    /// <exception cref="ArgumentException">No slope is given and the car has no proportioning valve.</exception>
    public static SettingAdvice GreatestSafeKnee(Vehicle vehicle, SettingConditions conditions, double? slope = null)
    {
        double used = slope ?? vehicle.Hydraulics.RearProportioningValve?.Slope
            ?? throw new ArgumentException("The car has no proportioning valve, so a slope must be given.", nameof(slope));
        Pressure top = vehicle.Hydraulics.MaximumPressure;
        var cases = new Cases(vehicle, conditions);
        Vehicle without = vehicle with { Hydraulics = vehicle.Hydraulics.WithoutRearProportioning() };
        bool needed = new Cases(without, conditions).RearFirst(null) is not null;
        (Pressure? nominal, _) = Greatest(pascals => cases.RearFirst(ValveLaw.AboveKnee(pascals, used), nominal: true), top.Pascals);
        (Pressure? greatest, BindingCondition? binding) =
            Greatest(pascals => cases.RearFirst(ValveLaw.AboveKnee(pascals, used)), top.Pascals);
        if (greatest is not { } knee)
        {
            return new(null, nominal, needed, FormattableString.Invariant(
                $"No knee keeps the front first with a slope of {used:0.00}: even at 0 bar the rear locks first ({binding!.Words}). ")
                + "A lower slope, a smaller rear brake or a larger front one is needed.")
            { Binding = binding };
        }

        SettingOutcome outcome = Evaluate(cases, knee, used);
        string kneeWords = FormattableString.Invariant($"A knee of {knee.Bars:0.0} bar ({knee.PoundsForcePerSquareInch:0} psi)");
        string slopeWords = FormattableString.Invariant($" with a slope of {used:0.00} is the greatest that keeps the front first");
        string because = binding is null ? "" : $"; a higher one lets the rear lock first ({binding.Words})";
        string mean = FormattableString.Invariant($"{outcome.MeanEfficiency:0.0%}.");
        return new(outcome, nominal, needed, needed
            ? $"{kneeWords}{slopeWords}{because}; mean efficiency {mean}"
            : $"No valve is needed: the front locks first everywhere without one; mean efficiency with the valve fully open {mean}")
        { Binding = binding };
    }

    /// <summary>The smallest front share of a balance bar that keeps the front first everywhere.</summary>
    /// <param name="vehicle">A car with a balance bar.</param>
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
    /// <returns>The front share of the rod force [–], to a thousandth, upwards; null when no share from 0.2 to 0.8 does.</returns>
    /// <exception cref="ArgumentException">The car has no balance bar.</exception>
    public static double? SmallestSafeFrontShare(Vehicle vehicle, SettingConditions conditions)
    {
        if (vehicle.Hydraulics.Split is not BalanceBarSplit bar)
        {
            throw new ArgumentException("The car has no balance bar.", nameof(vehicle));
        }

        var cases = new Cases(vehicle, conditions);
        bool Safe(double share) => cases.RearFirst(null, (bar with { FrontForceShare = share }).RearToFrontPressureRatio) is null;
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
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
    /// <returns>True when it does; a case with no lock-up up to the highest pressure counts as safe.</returns>
    public static bool FrontFirstEverywhere(Vehicle vehicle, SettingConditions conditions) =>
        new Cases(vehicle, conditions).RearFirst(null) is null;

    private static SettingOutcome Evaluate(Cases cases, Pressure knee, double slope)
    {
        ValveLaw law = ValveLaw.AboveKnee(knee.Pascals, slope);
        (double rearFirst, double mean, double worst) = cases.Count(law);
        return new(knee, slope, cases.RearFirst(law) is null, rearFirst, mean, worst);
    }

    private static (Pressure? Knee, BindingCondition? Binding) Greatest(Func<double, BindingCondition?> rearFirst, double topPascals)
    {
        if (rearFirst(0) is { } already)
        {
            return (null, already);
        }

        BindingCondition? binding = rearFirst(topPascals);
        (double low, double high) = (0, topPascals);
        while (binding is not null && high - low > 1e3)
        {
            double middle = 0.5 * (low + high);
            BindingCondition? here = rearFirst(middle);
            (low, high, binding) = here is null ? (middle, high, binding) : (low, middle, here);
        }

        return (Pressure.FromPascals(binding is null ? topPascals : low), binding);
    }

    /// <summary>A car in every load case at every speed, prepared once: settings are then tried without preparing it anew.</summary>
    private sealed class Cases
    {
        private readonly SettingConditions _conditions;
        private readonly (LoadCase Load, Speed Speed, BalanceKernel Kernel)[] _cases;
        private readonly CarGains _nominal;
        private readonly CarGains _worst;

        // The worst corner of the friction spread; shoes that lock by themselves within it lock as soon as they touch.
        public Cases(Vehicle vehicle, SettingConditions conditions)
        {
            _conditions = conditions;
            _cases = [.. from load in conditions.LoadCasesOf(vehicle)
                         from speed in conditions.SpeedsOf(vehicle)
                         select (load, speed, new BalanceKernel(vehicle, load, speed.MetersPerSecond))];
            _nominal = BalanceKernel.Draw(vehicle);
            _worst = BalanceKernel.Draw(vehicle, 1 - conditions.FrictionSpread, 1 + conditions.FrictionSpread);
        }

        /// <summary>
        /// The first condition in which the rear locks first; null when there is none. A case with no lock-up up to the highest pressure
        /// counts as safe.
        /// </summary>
        public BindingCondition? RearFirst(ValveLaw? setting, double? ratio = null, bool nominal = false)
        {
            IReadOnlyList<double> adhesions = _conditions.Adhesions;
            foreach ((LoadCase load, Speed speed, BalanceKernel kernel) in _cases)
            {
                CarGains car = nominal ? _nominal : _worst;
                if (kernel.RearFirstAdhesion(car, Laws(kernel, setting), ratio ?? kernel.Ratio, adhesions[0], adhesions[^1]) is { } adhesion)
                {
                    double spread = nominal ? 0 : _conditions.FrictionSpread;
                    return new(load.Name, adhesion, speed, 1 - spread, 1 + spread);
                }
            }

            return null;
        }

        /// <summary>
        /// Share of all cases in which the rear locks first in the worst corner, and mean and least efficiency at nominal friction.
        /// </summary>
        public (double RearFirst, double Mean, double Worst) Count(ValveLaw setting)
        {
            IReadOnlyList<double> adhesions = _conditions.Adhesions;
            (int rearFirst, double sum, double worst) = (0, 0, 1);
            foreach ((_, _, BalanceKernel kernel) in _cases)
            {
                ValveLaw[] laws = Laws(kernel, setting);
                foreach (double adhesion in adhesions)
                {
                    (AxleLimit front, AxleLimit rear) = kernel.Limits(adhesion, adhesion);
                    double limit = kernel.LimitNewtons(front, rear, 1);
                    rearFirst += kernel.First(_worst, laws, kernel.Ratio, front, rear, limit).Order == LockOrder.Rear ? 1 : 0;
                    double efficiency = kernel.First(_nominal, laws, kernel.Ratio, front, rear, limit).Efficiency;
                    sum += efficiency;
                    worst = Math.Min(worst, efficiency);
                }
            }

            double count = _cases.Length * adhesions.Count;
            return (rearFirst / count, sum / count, worst);
        }

        private static ValveLaw[] Laws(BalanceKernel kernel, ValveLaw? setting)
        {
            if (setting is not { } law)
            {
                return kernel.Laws;
            }

            ValveLaw[] laws = [.. kernel.Laws];
            laws[kernel.Setting] = law;
            return laws;
        }
    }
}
