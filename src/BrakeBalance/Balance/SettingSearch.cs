using System.Collections.Concurrent;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Balance;

/// <summary>Finds the setting of valve or balance bar that keeps the front first and wastes least of the road.</summary>
/// <remarks>
/// <para>More rear pressure never hurts efficiency as long as the front locks first, so the best safe knee is the greatest safe knee;
/// the worst corner of the friction spread is low at the front and high at the rear, in each state of the brakes. Both follow from f₁
/// falling and f₂ rising with rear force.</para>
/// <para>Source: own derivation from UN R13-H Annex 5's f₁ and f₂.</para>
/// </remarks>
public static class SettingSearch
{
    /// <summary>Slope of a valve that is not there yet [–]: the middle of what adjustable valves have (common practice).</summary>
    public const double AddedSlope = 0.4;

    /// <summary>Tries every knee with every slope, on all cores.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="conditions">Surfaces, speeds, loads and friction spread.</param>
    /// <param name="knees">Knees to try, gauge.</param>
    /// <param name="slopes">Slopes to try [–].</param>
    /// <returns>An outcome each, slopes within knees.</returns>
    public static IReadOnlyList<SettingOutcome> Sweep(
        Vehicle vehicle, Conditions conditions, IReadOnlyList<Pressure> knees, IReadOnlyList<double> slopes)
    {
        var outcomes = new SettingOutcome[knees.Count * slopes.Count];
        var cases = new Cases(vehicle, conditions);
        Parallel.ForEach(
            Partitioner.Create(0, outcomes.Length, Math.Max(1, outcomes.Length / (Environment.ProcessorCount * 8))),
            range =>
            {
                for (int i = range.Item1; i < range.Item2; i++)
                {
                    outcomes[i] = Evaluate(cases, knees[i / slopes.Count], slopes[i % slopes.Count]);
                }
            });
        return outcomes;
    }

    /// <summary>The highest setting that keeps the front first in every corner of the conditions.</summary>
    /// <param name="vehicle">
    /// The car: its valve's knee is set, or its balance bar, or else the knee of a valve that is not there yet.
    /// </param>
    /// <param name="conditions">What it has to hold for.</param>
    /// <param name="slope">The slope above the knee [–]; the car's own valve's when null, or <see cref="AddedSlope"/>.</param>
    /// <returns>The limit, with what binds it; without a setting when none keeps the front first.</returns>
    public static SettingLimit Limit(Vehicle vehicle, Conditions conditions, double? slope = null)
    {
        SettingVariable variable = VariableOf(vehicle);
        var cases = new Cases(vehicle, conditions);
        if (variable == SettingVariable.BalanceBar && vehicle.Hydraulics.Split is BalanceBarSplit bar && slope is null)
        {
            (double? share, BindingCondition? holds) = SmallestShare(cases, bar);
            return new(variable, null, share, null, holds) { AtAnySetting = holds is null };
        }

        double used = slope ?? vehicle.Hydraulics.RearProportioningValve?.Slope ?? AddedSlope;
        // A car without such a valve keeps what else is in its rear line; at the highest pressure one more makes no difference.
        (Pressure? knee, BindingCondition? binding) = Greatest(cases, used, vehicle.Hydraulics.MaximumPressure.Pascals);
        return new(variable == SettingVariable.BalanceBar ? SettingVariable.AddedKnee : variable, knee, null, used, binding)
        {
            AtAnySetting = binding is null,
        };
    }

    /// <summary>What is set on a car.</summary>
    /// <param name="vehicle">The car.</param>
    public static SettingVariable VariableOf(Vehicle vehicle) =>
        vehicle.Hydraulics.RearProportioningValve is not null ? SettingVariable.Knee
        : vehicle.Hydraulics.Split is BalanceBarSplit ? SettingVariable.BalanceBar : SettingVariable.AddedKnee;

    /// <summary>The first condition in which the rear locks first with the car as it is set; null when there is none.</summary>
    /// <param name="vehicle">The car as set.</param>
    /// <param name="conditions">What it has to hold for.</param>
    /// <returns>The condition. A case with no lock-up up to the highest pressure counts as front first.</returns>
    public static BindingCondition? RearFirst(Vehicle vehicle, Conditions conditions) => new Cases(vehicle, conditions).RearFirst(null);

    /// <summary>
    /// How much stronger the rear brakes could be against the front ones, all else at its middle, before the rear locks first.
    /// </summary>
    /// <param name="vehicle">The car as set.</param>
    /// <param name="conditions">Surfaces, speeds and load cases; states and spread are left aside.</param>
    /// <returns>
    /// A share [–]: 0.1 for a tenth stronger; negative when the rear already locks first, at least −0.9; at most 1, also when nothing
    /// locks.
    /// </returns>
    public static double FrictionMargin(Vehicle vehicle, Conditions conditions)
    {
        var cases = new Cases(vehicle, conditions.AtMiddle);
        (double low, double high) = (0.1, 2.0);
        if (cases.RearFirst(null, rear: high) is null)
        {
            return high - 1;
        }

        for (int i = 0; i < 14; i++)
        {
            double factor = 0.5 * (low + high);
            (low, high) = cases.RearFirst(null, rear: factor) is null ? (factor, high) : (low, factor);
        }

        return low - 1;
    }

    // To a thousandth, upwards: more on the front is the safe side.
    private static (double? Share, BindingCondition? Binding) SmallestShare(Cases cases, BalanceBarSplit bar)
    {
        BindingCondition? At(int thousandths) =>
            cases.RearFirst(null, (bar with { FrontForceShare = thousandths / 1000.0 }).RearToFrontPressureRatio);
        if (At(800) is { } already)
        {
            return (null, already);
        }

        BindingCondition? binding = At(200);
        if (binding is null)
        {
            return (0.2, null);
        }

        (int low, int high) = (200, 800);
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            BindingCondition? here = At(middle);
            (low, high, binding) = here is null ? (low, middle, binding) : (middle, high, here);
        }

        return (high / 1000.0, binding);
    }

    /// <summary>Mean and least braking efficiency of the car as it is set, over the conditions, with friction at its middle.</summary>
    /// <param name="vehicle">The car as set.</param>
    /// <param name="conditions">Surfaces, speeds and load cases.</param>
    /// <returns>Mean and least efficiency [–].</returns>
    public static (double Mean, double Least) Efficiency(Vehicle vehicle, Conditions conditions)
    {
        (_, double mean, double least) = new Cases(vehicle, conditions.AtMiddle).Over(null);
        return (mean, least);
    }

    private static SettingOutcome Evaluate(Cases cases, Pressure knee, double slope)
    {
        ValveLaw law = ValveLaw.AboveKnee(knee.Pascals, slope);
        (double rearFirst, double mean, double worst) = cases.Over(law);
        return new(knee, slope, cases.RearFirst(law) is null, rearFirst, mean, worst);
    }

    // One look shows of most cases that they allow what those before allow: only what a case lowers is searched for.
    private static (Pressure? Knee, BindingCondition? Binding) Greatest(Cases cases, double slope, double topPascals)
    {
        ValveLaw At(double pascals) => ValveLaw.AboveKnee(pascals, slope);
        if (cases.RearFirst(At(0)) is { } already)
        {
            return (null, already);
        }

        (double limit, double beyond) = (topPascals, topPascals);
        for (int i = 0; i < cases.Count; i++)
        {
            if (cases.RearFirst(i, At(limit)) is null)
            {
                continue;
            }

            (double low, double high) = (0, topPascals);
            while (high - low > 1e3)
            {
                double middle = 0.5 * (low + high);
                (low, high) = middle >= limit || cases.RearFirst(i, At(middle)) is not null ? (low, middle) : (middle, high);
            }

            (limit, beyond) = (low, high);
        }

        return (Pressure.FromPascals(limit), limit < topPascals ? cases.RearFirst(At(beyond)) : null);
    }

    /// <summary>A car in every load case at every speed, prepared once: settings are then tried without preparing it anew.</summary>
    private sealed class Cases
    {
        private readonly Vehicle _vehicle;
        private readonly Conditions _conditions;
        private readonly PerAxle<double> _spread;
        private readonly Case[] _cases;
        private readonly StateGains[] _states;
        private readonly CarGains _middle;

        // The worst corner of the friction spread; shoes that lock by themselves within it lock as soon as they touch.
        public Cases(Vehicle vehicle, Conditions conditions)
        {
            (_vehicle, _conditions) = (vehicle, conditions);
            _spread = conditions.FrictionSpread;
            _cases = [.. from load in conditions.LoadCasesOf(vehicle)
                         from speed in conditions.SpeedsOf(vehicle)
                         select new Case(load, speed, new(vehicle, load, speed.MetersPerSecond))];
            // The state with most rear braking first: it decides most cases.
            _states = [.. conditions.BrakeStates
                .Select(state => new StateGains(state, Draw(state.Front * (1 - _spread.Front), state.Rear * (1 + _spread.Rear))))
                .OrderByDescending(state => state.Worst.Rear / state.Worst.Front)];
            _middle = Draw(1, 1);
        }

        public int Count => _states.Length * _cases.Length;

        /// <summary>
        /// The first condition in which the rear locks first; null when there is none. A case with no lock-up up to the highest pressure
        /// counts as safe.
        /// </summary>
        public BindingCondition? RearFirst(ValveLaw? setting, double? ratio = null, double rear = 1)
        {
            for (int i = 0; i < Count; i++)
            {
                if (RearFirst(i, setting, ratio, rear) is { } found)
                {
                    return found;
                }
            }

            return null;
        }

        /// <summary>The same in one case, by its place.</summary>
        public BindingCondition? RearFirst(int at, ValveLaw? setting, double? ratio = null, double rear = 1)
        {
            (BrakeState state, CarGains worst) = _states[at / _cases.Length];
            (LoadCase load, Speed speed, BalanceKernel kernel) = _cases[at % _cases.Length];
            double? adhesion = kernel.RearFirstAdhesion(rear == 1 ? worst : Draw(state.Front, state.Rear * rear),
                Laws(kernel, setting), ratio ?? kernel.Ratio, _conditions.LowestAdhesion, _conditions.HighestAdhesion);
            return adhesion is { } there ? new(load.Name, there, speed, state.Name, _spread) : null;
        }

        /// <summary>
        /// Share of all cases in which the rear locks first in the worst corner, and mean and least efficiency with friction at its middle.
        /// </summary>
        public (double RearFirst, double Mean, double Worst) Over(ValveLaw? setting)
        {
            IReadOnlyList<double> adhesions = _conditions.Adhesions;
            (int rearFirst, double sum, double worst) = (0, 0, 1);
            bool never = RearFirst(setting) is null;
            foreach ((_, _, BalanceKernel kernel) in _cases)
            {
                ValveLaw[] laws = Laws(kernel, setting);
                foreach (double adhesion in adhesions)
                {
                    (AxleLimit front, AxleLimit rear) = kernel.Limits(adhesion, adhesion);
                    double limit = kernel.LimitNewtons(front, rear, 1);
                    bool RearIn(CarGains car) => kernel.First(car, laws, kernel.Ratio, front, rear, limit).Order == LockOrder.Rear;
                    rearFirst += !never && _states.Any(state => RearIn(state.Worst)) ? 1 : 0;
                    double efficiency = kernel.First(_middle, laws, kernel.Ratio, front, rear, limit).Efficiency;
                    sum += efficiency;
                    worst = Math.Min(worst, efficiency);
                }
            }

            double count = _cases.Length * adhesions.Count;
            return (rearFirst / count, sum / count, worst);
        }

        private CarGains Draw(double front, double rear) => BalanceKernel.Draw(_vehicle, front, rear);

        private sealed record Case(LoadCase Load, Speed Speed, BalanceKernel Kernel);

        private sealed record StateGains(BrakeState State, CarGains Worst);

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
