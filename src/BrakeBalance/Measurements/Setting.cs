using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>
/// The answer to where the valve or the balance bar is to be set: the one that every command, page, card and figure shows.
/// </summary>
/// <remarks>
/// <para>
/// Safe limit: the highest setting that keeps the front first. While nothing has been measured on the car: in every corner of the
/// conditions, and for nine in ten of the cars that the file's ranges allow. Once test stops were fitted: with the chance of rear-first
/// below the conditions' level in each of them, and in every corner beyond the adhesion that those stops reached. Once that fit was
/// written into the file: in every corner of its ranges, and never above what the stops gave.
/// </para>
/// <para>
/// Recommended setting: the highest at or below the safe limit within the adjuster's reach, rounded to the safe side (a quarter of a
/// turn, or half a bar, or a hundredth of the rod force): up to the limit more rear braking only uses more of the road.
/// </para>
/// <para>Source: own derivation from UN R13-H Annex 5's f₁ and f₂. A setting is a start for testing, not an approval.</para>
/// </remarks>
/// <param name="Vehicle">The car as it was asked for.</param>
/// <param name="Variable">What is set.</param>
/// <param name="Rule">Which rule gave the safe limit.</param>
/// <param name="Present">The setting the car has; null when no valve is fitted.</param>
/// <param name="SafeLimit">The highest setting that keeps the front first; null when none does.</param>
/// <param name="Recommended">What to set; null when no setting in reach keeps the front first.</param>
/// <param name="Band">
/// The safe limit over the cars that the file's ranges allow: low end, middle and high end of nine in ten; null without ranges.
/// </param>
/// <param name="Binding">What holds the limit back; null when nothing does, or when chance does.</param>
/// <param name="Reach">Where the safe limit lies for the adjuster.</param>
/// <param name="Changes">What would bring a setting in reach; empty when one is.</param>
/// <param name="FirstLockDry">The first lock-up of the car as it is on a dry road, first load case; null when neither axle locks.</param>
/// <param name="RearFirstAtMiddle">
/// The first condition in which the rear locks first as the car is, by the file's numbers alone; null when the front does everywhere.
/// </param>
/// <param name="MostRearFirst">In a measured car, the condition in which the rear locks first most often at the limit; else null.</param>
public sealed record Setting(
    Vehicle Vehicle, SettingVariable Variable, SettingRule Rule, SettingValue? Present, SettingValue? SafeLimit,
    SettingValue? Recommended, Interval<SettingLimit>? Band, BindingCondition? Binding, SettingReach Reach,
    IReadOnlyList<SettingChange> Changes, LockUp? FirstLockDry, BindingCondition? RearFirstAtMiddle,
    ConditionOutcome? MostRearFirst = null)
{
    /// <summary>
    /// Share of the cars within the file's ranges for which the limit may fail: nine in ten hold on either side of the middle.
    /// </summary>
    private const double BandShare = 0.05;
    private const double TurnStep = 0.25;
    private const double ShareStep = 0.01;
    private const int DrawsOfTheOtherRule = 20_000;

    /// <summary>What the answer holds for.</summary>
    public Conditions Conditions => Vehicle.Conditions;

    /// <summary>The rule of chance in full: the trade-off over all settings, and each condition.</summary>
    public SettingAnswer Chance => ChanceLater.Value;

    /// <summary>What the other rule would give as the limit.</summary>
    public SettingLimit OtherRule => OtherRuleLater.Value;

    /// <summary>Where both axles lock together with every number at its middle: for orientation, never to set.</summary>
    public SettingLimit Middle => MiddleLater.Value;

    /// <summary>
    /// Why what was measured cannot be of this car as it is written, in sentences; nothing is recommended then. Empty when it fits.
    /// </summary>
    public IReadOnlyList<string> Doubts { get; init; } = [];

    /// <summary>What each condition costs: the limit without it; the dearest first.</summary>
    public IReadOnlyList<ConditionCost> Costs => CostsLater.Value;

    /// <summary>What measuring which number would gain; the most first.</summary>
    public IReadOnlyList<MeasuringGain> Gains => GainsLater.Value;

    /// <summary>Limits of their own beside the conditions: on ice, on other tyres, in a bend, on release.</summary>
    public IReadOnlyList<SettingFinding> Findings => FindingsLater.Value;

    /// <summary>The first lock-up on a dry road of each car drawn from the file's ranges; empty without ranges.</summary>
    internal IReadOnlyList<LockUp?> FirstLocksDrawn => FirstLocksLater.Value;

    // What few readers ask for is worked out when they do.
    private Lazy<IReadOnlyList<LockUp?>> FirstLocksLater { get; init; } = null!;

    private Lazy<SettingAnswer> ChanceLater { get; init; } = null!;

    private Lazy<SettingLimit> OtherRuleLater { get; init; } = null!;

    private Lazy<SettingLimit> MiddleLater { get; init; } = null!;

    private Lazy<IReadOnlyList<MeasuringGain>> GainsLater { get; init; } = null!;

    private Lazy<IReadOnlyList<ConditionCost>> CostsLater { get; init; } = null!;

    private Lazy<IReadOnlyList<SettingFinding>> FindingsLater { get; init; } = null!;

    /// <summary>What the stops allowed whose fit stands in the file, as it keeps it; null when it keeps nothing.</summary>
    internal SettingLimit? Kept { get; private init; }

    /// <summary>Whether the car stands beyond the safe limit.</summary>
    public bool PresentIsBeyond => Present is not null && !HoldsAtAnySetting && (SafeLimit is null || Beyond(Present, SafeLimit));

    /// <summary>Whether a car without a setting of its own lets the rear lock first in some condition as it is built.</summary>
    internal bool IsBuiltBeyond => Variable == SettingVariable.AddedKnee && Reach is not (SettingReach.NotNeeded or SettingReach.Withheld);

    /// <summary>Whether the front locks first in all conditions however the car is set, so that no end of the scale is a limit.</summary>
    internal bool HoldsAtAnySetting { get; private init; }

    /// <summary>Whether the car as it stands lets the rear lock first in some condition.</summary>
    internal bool StandsBeyond => PresentIsBeyond || IsBuiltBeyond;

    /// <summary>The safe limit as a mark; null where every setting holds, and its number is but the end of the scale.</summary>
    internal SettingValue? MarkedLimit => HoldsAtAnySetting ? null : SafeLimit;

    /// <summary>What the rule of chance gives as the limit, also where corners beyond the roads of the stops hold it back.</summary>
    internal SettingLimit ByChance => LimitOf(Chance.Recommended, Middle, Vehicle);

    /// <summary>The car set as recommended; as it is when there is nothing to recommend.</summary>
    public Vehicle RecommendedVehicle => Recommended?.Vehicle ?? Vehicle;

    /// <summary>Whether a copy of the car, set otherwise, brakes its rear more than the safe limit allows.</summary>
    internal bool IsBeyond(Vehicle set) => IsBuiltBeyond && ReferenceEquals(set, Vehicle)
        || Reach != SettingReach.NotNeeded && !HoldsAtAnySetting
        && (SafeLimit is null || Beyond(SettingValue.Of(set, Variable, Conditions), SafeLimit));

    /// <summary>Stops of the car and of copies that brake its rear more, marked where that is more than its own stops allow.</summary>
    /// <inheritdoc cref="StopComparison.Of"/>
    public IReadOnlyList<StopComparisonRow> Compare(IEnumerable<(string Name, Vehicle Vehicle)> cars, string loadCase, double adhesion,
        Speed initialSpeed, StopConditions? conditions = null)
    {
        // Own stops judge the car as it stands: a copy is beyond with it, and where a corner says so.
        (string Name, Vehicle Vehicle)[] all = [.. cars];
        return [.. StopComparison.Of(all, loadCase, adhesion, initialSpeed, conditions).Zip(all, (row, of) => row with
        {
            IsBeyondOwnStops = Rule == SettingRule.Chance && (StandsBeyond
                || (!ReferenceEquals(of.Vehicle, Vehicle) && SettingSearch.RearFirst(of.Vehicle, Vehicle.Conditions) is not null)),
        })];
    }

    /// <summary>Answers for a car.</summary>
    /// <param name="vehicle">The car, with its conditions and what its file leaves uncertain.</param>
    /// <param name="estimate">
    /// What its own test stops say; null for those that the car carries (<see cref="OwnMeasurements"/>), if any.
    /// </param>
    /// <param name="progress">Told the part done, 0 to 1; may be null.</param>
    /// <param name="draws">Random draws for the rule of chance; fewer where it is only the other rule.</param>
    public static Setting Of(Vehicle vehicle, CarEstimate? estimate = null, IProgress<double>? progress = null, int draws = 100_000)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        OwnMeasurements? own = estimate is null ? OwnMeasurements.Of(vehicle) : null;
        IReadOnlyList<string> doubts = own?.Doubts ?? estimate?.Doubts ?? [];
        estimate = doubts.Count > 0 ? null : estimate ?? OwnMeasurements.EstimateFor(vehicle);
        Conditions conditions = vehicle.Conditions;
        SettingVariable variable = SettingSearch.VariableOf(vehicle);
        SettingLimit corners = SettingSearch.Limit(vehicle, conditions);
        (double[] Fractions, SettingLimit Limit)[] drawn = estimate is null ? OverRanges(vehicle) : [];
        Interval<SettingLimit>? band = BandOf(drawn);
        var question = new SettingQuestion
        {
            Vehicle = vehicle,
            Estimate = estimate,
            Draws = estimate is null ? Math.Min(draws, DrawsOfTheOtherRule) : draws,
        };
        var chance = new Lazy<SettingAnswer>(() => own is not null && estimate is not null
            ? own.Chance(question, progress) : RobustSetting.Find(question, progress));
        SettingLimit byFile = band?.Low ?? corners;
        SettingLimit? kept = estimate is null && doubts.Count == 0 ? KeptOf(own?.Logs, byFile) : null;
        bool holds = kept is not null && Amount(kept) < Amount(byFile);
        SettingLimit limit = estimate is not null ? Supported(vehicle, LimitOf(chance.Value.Recommended, corners, vehicle), estimate)
            : holds ? kept! : byFile;
        SettingReach reach = doubts.Count > 0 ? SettingReach.Withheld : ReachOf(vehicle, limit);
        Vehicle? best = reach is SettingReach.Within or SettingReach.Above or SettingReach.NotNeeded
            ? Rounded(vehicle, limit, reach) : null;
        SettingValue? Value(Vehicle? set) => set is null ? null : SettingValue.Of(set, variable, conditions);
        bool reachable = best is not null || reach == SettingReach.Withheld;
        return new Setting(
            Vehicle: vehicle,
            Variable: variable,
            Rule: estimate is null && !holds ? SettingRule.Corners : SettingRule.Chance,
            Present: variable == SettingVariable.AddedKnee ? null : Value(vehicle),
            SafeLimit: Value(limit.Set(vehicle)),
            Recommended: Value(best),
            Band: holds ? null : band,
            Binding: limit.Binding,
            MostRearFirst: estimate is null ? null : chance.Value.Binding,
            FirstLockDry: FirstLockOf(vehicle),
            RearFirstAtMiddle: SettingSearch.RearFirst(vehicle, conditions.AtMiddle),
            Reach: reach,
            Changes: reachable || holds ? [] : SettingChange.Of(vehicle))
        {
            ChanceLater = chance,
            FirstLocksLater = new(() => [.. (vehicle.Uncertainty?.CarsOf(vehicle) ?? []).Select(FirstLockOf)]),
            OtherRuleLater = new(() => holds ? byFile : estimate is not null ? BandOf(OverRanges(vehicle))?.Low ?? corners
                : kept ?? LimitOf(
                    chance.IsValueCreated ? chance.Value.Recommended : RobustSetting.Best(question, corners), corners, vehicle)),
            Kept = kept,
            HoldsAtAnySetting = limit.AtAnySetting && reach != SettingReach.NotNeeded,
            MiddleLater = new(() => SettingSearch.Limit(vehicle, conditions.AtMiddle)),
            Doubts = doubts,
            CostsLater = new(() => holds ? [] : CostsOf(vehicle, corners)),
            GainsLater = new(() => estimate is null && !holds ? GainsOf(vehicle, corners, drawn) : []),
            FindingsLater = new(() => SettingFinding.Of(best ?? vehicle, conditions)),
        };
    }

    /// <summary>
    /// Answers for a car and a modified copy of it, by one rule: what the car's own stops say holds for both; without such stops both go by
    /// the file's numbers and ranges, for a limit kept in the file says nothing of the copy.
    /// </summary>
    /// <param name="before">The car.</param>
    /// <param name="change">Makes the copy, of any car that the ranges allow.</param>
    public static (Setting Before, Setting After) OfBoth(Vehicle before, Func<Vehicle, Vehicle> change)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(change);
        Vehicle after = change(before) with { Uncertainty = before.Uncertainty?.After(change) };
        return OwnMeasurements.EstimateFor(before) is not null
            ? (Of(before), Of(after)) : (Of(before with { Measured = null }), Of(after with { Measured = null }));
    }

    /// <summary>Whether one setting brakes the rear more than another.</summary>
    internal static bool Beyond(SettingValue setting, SettingValue limit) => setting.FrontForceShare is { } share
        ? share < limit.FrontForceShare - 1e-9
        : setting.Knee is { } knee && limit.Knee is { } most && knee.Pascals > most.Pascals + 1;

    private static LockUp? FirstLockOf(Vehicle vehicle) =>
        new BalanceModel(vehicle, vehicle.Conditions.LoadCasesOf(vehicle)[0]).FirstLockUp(Vehicles.Conditions.DryAdhesion);

    private static (double[] Fractions, SettingLimit Limit)[] OverRanges(Vehicle vehicle)
    {
        if (vehicle.Uncertainty?.DrawsOf(vehicle) is not { Count: > 0 } cars)
        {
            return [];
        }

        // A limit is set on this car's valve, whatever slope the drawn one has.
        double? slope = vehicle.Hydraulics.RearProportioningValve?.Slope;
        var drawn = new (double[], SettingLimit)[cars.Count];
        Parallel.For(0, cars.Count, i =>
        {
            SettingLimit limit = SettingSearch.Limit(cars[i].Vehicle, vehicle.Conditions);
            drawn[i] = (cars[i].Fractions, limit with { Slope = slope ?? limit.Slope });
        });
        return drawn;
    }

    // The corners' limit never lets go of a car within its ranges: nine in ten of the cars drawn keep the front first at the lower end.
    private static Interval<SettingLimit>? BandOf((double[] Fractions, SettingLimit Limit)[] drawn)
    {
        SettingLimit[] rising = [.. drawn.Select(draw => draw.Limit).OrderBy(Amount)];
        int end = LowEnd(rising.Length);
        return rising.Length == 0 ? null : new Interval<SettingLimit>(rising[rising.Length / 2], rising[end], rising[^(1 + end)]);
    }

    private static IReadOnlyList<MeasuringGain> GainsOf(
        Vehicle vehicle, SettingLimit corners, (double[] Fractions, SettingLimit Limit)[] drawn)
    {
        Conditions conditions = vehicle.Conditions;
        List<MeasuringGain> gains = [];
        if (drawn.Length > 0)
        {
            double[] amounts = [.. drawn.Select(draw => Amount(draw.Limit))];
            double low = Quantile(amounts);
            for (int i = 0; i < vehicle.Uncertainty!.Ranges.Count; i++)
            {
                double[] at = [.. drawn.Select(draw => draw.Fractions[i] - 0.5)];
                double square = at.Sum(a => a * a), mean = amounts.Average();
                double slope = square > 0 ? at.Zip(amounts, (a, b) => a * (b - mean)).Sum() / square : 0;
                gains.Add(new(vehicle.Uncertainty.Ranges[i], Quantile([.. amounts.Zip(at, (b, a) => b - slope * a)]) - low,
                    corners.Variable));
            }
        }

        SettingLimit half = SettingSearch.Limit(vehicle,
            conditions with { FrictionSpread = conditions.FrictionSpread.Select(spread => spread / 2) });
        gains.Add(new(null, Amount(half) - Amount(corners), corners.Variable, half.Binding is null));
        return [.. gains.Where(gain => gain.Amount > 0).OrderByDescending(gain => gain.Amount)];
    }

    /// <summary>
    /// A limit as a number that rises with rear braking: pascals of knee, or the rear's share of the rod force; below zero for none.
    /// </summary>
    internal static double Amount(SettingLimit limit) => limit.Knee?.Pascals ?? (limit.FrontForceShare is { } share ? 1 - share : -1);

    private static int LowEnd(int count) => (int)(BandShare * (count - 1));

    private static double Quantile(double[] values)
    {
        double[] rising = [.. values.Order()];
        return rising[LowEnd(rising.Length)];
    }

    private static SettingLimit LimitOf(SettingPoint? found, SettingLimit like, Vehicle vehicle)
    {
        SettingLimit limit = like with { Knee = found?.Knee, FrontForceShare = found?.FrontForceShare, Binding = null };
        return limit with { AtAnySetting = limit.IsEndOfScale(vehicle) };
    }

    // A fit's ranges know nothing of how its numbers hang together: the limit of the stops themselves stands beside them.
    private static SettingLimit? KeptOf(MeasurementLogs? logs, SettingLimit like)
    {
        SettingLimit kept = like with { Binding = null, AtAnySetting = false };
        return logs is not { Fitted: true } ? null
            : like.Variable == SettingVariable.BalanceBar
                ? logs.SafeFrontShare is { } share ? kept with { FrontForceShare = share <= 0.8 ? share : null } : null
            : logs.SafeKnee is { } knee ? kept with { Knee = knee > Pressure.Zero ? knee : null } : null;
    }

    // On grippier roads than those stops reached the corners about what they found decide.
    private static SettingLimit Supported(Vehicle vehicle, SettingLimit byChance, CarEstimate estimate)
    {
        const double room = 1.1;
        Conditions conditions = vehicle.Conditions;
        double seen = Math.Max(conditions.LowestAdhesion, room * estimate.HighestAdhesionSeen);
        if (seen >= conditions.HighestAdhesion)
        {
            return byChance;
        }

        SettingLimit beyond = SettingSearch.Limit(estimate.ApplyTo(vehicle), conditions with { LowestAdhesion = seen });
        return Amount(beyond) < Amount(byChance) ? beyond : byChance;
    }

    private static SettingReach ReachOf(Vehicle vehicle, SettingLimit limit)
    {
        if (!limit.Exists)
        {
            return SettingReach.None;
        }

        if (!limit.Needed)
        {
            return SettingReach.NotNeeded;
        }

        return vehicle.Hydraulics.RearProportioningValve?.Adjustment is not { } adjuster || limit.Knee is not { } knee ? SettingReach.Within
            : knee < adjuster.KneeBackedOff ? SettingReach.Below
            : knee > adjuster.KneeAt(adjuster.Turns) ? SettingReach.Above
            : SettingReach.Within;
    }

    private static Vehicle? Rounded(Vehicle vehicle, SettingLimit limit, SettingReach reach)
    {
        if (reach == SettingReach.NotNeeded)
        {
            return vehicle;
        }

        if (limit.FrontForceShare is { } share)
        {
            return vehicle.WithFrontForceShare(Math.Min(0.8, Math.Ceiling((share - 1e-9) / ShareStep) * ShareStep));
        }

        if (limit.Knee is not { } knee)
        {
            return null;
        }

        Pressure rounded = vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } adjuster
            ? adjuster.KneeAt(Math.Min(adjuster.Turns,
                Math.Floor(((knee - adjuster.KneeBackedOff) / adjuster.KneePerTurn + 1e-9) / TurnStep) * TurnStep))
            : Pressure.FromBars(Math.Floor(knee.Bars / 0.5 + 1e-9) * 0.5);
        return vehicle.WithRearKnee(rounded, limit.Slope);
    }

    private static IReadOnlyList<ConditionCost> CostsOf(Vehicle vehicle, SettingLimit corners)
    {
        Conditions all = vehicle.Conditions;
        IReadOnlyList<LoadCase> loads = all.LoadCasesOf(vehicle);
        double fifth = 0.2 * (all.HighestAdhesion - all.LowestAdhesion);
        (double cut, double raised) = (all.HighestAdhesion - fifth, all.LowestAdhesion + fifth);
        (string Name, Conditions Without)[] dropped =
        [
            .. all.BrakeStates.Where(_ => all.BrakeStates.Length > 1)
                .Select(state => ($"brakes {state.Name}", all with { BrakeStates = all.BrakeStates.Remove(state) })),
            .. loads.Where(_ => loads.Count > 1).Select(load => ($"load case {load.Name}",
                all with { LoadCases = [.. loads.Where(other => other != load).Select(other => other.Name)] })),
            (Invariant.Text($"adhesion above {cut:0.00}"), all with { HighestAdhesion = cut }),
            (Invariant.Text($"adhesion below {raised:0.00}"), all with { LowestAdhesion = raised }),
            .. vehicle.Aerodynamics is null ? ((string, Conditions)[])[]
                : [("speed (aerodynamics)", all with { Speeds = SpeedRange.Only(all.Speeds.Lowest) })],
            ("the spread of the friction", all with { FrictionSpread = default }),
        ];
        return [.. dropped.Select(drop => new ConditionCost(drop.Name, SettingSearch.Limit(vehicle, drop.Without)))
            .Where(cost => Amount(cost.Limit) > Amount(corners) + 1e-6)
            .OrderByDescending(cost => Amount(cost.Limit))];
    }
}

/// <summary>Which of the two rules gave a safe limit.</summary>
public enum SettingRule
{
    /// <summary>Front first in every corner of the conditions: nothing has been measured on the car.</summary>
    Corners,

    /// <summary>
    /// Chance of rear-first below the level in every condition: the car's own test stops were fitted, now or before their fit was
    /// written into the file, which then keeps the limit.
    /// </summary>
    Chance,
}

/// <summary>Where a safe limit lies for what is on the car.</summary>
public enum SettingReach
{
    /// <summary>It can be set.</summary>
    Within,

    /// <summary>Below what the adjuster reaches: even fully out there is too much rear braking.</summary>
    Below,

    /// <summary>Above what the adjuster reaches: fully in is safe.</summary>
    Above,

    /// <summary>No setting keeps the front first.</summary>
    None,

    /// <summary>No valve is fitted, and none is needed.</summary>
    NotNeeded,

    /// <summary>What was measured does not fit the car, so nothing is recommended.</summary>
    Withheld,
}

/// <summary>What one condition costs.</summary>
/// <param name="Name">The condition that is dropped, in words.</param>
/// <param name="Limit">The limit without it.</param>
public sealed record ConditionCost(string Name, SettingLimit Limit);

/// <summary>What measuring a number would gain.</summary>
/// <param name="Range">
/// The entry of the file that is a range; null for the friction of both axles, found by test stops to half its spread.
/// </param>
/// <param name="Amount">How much higher the limit would be: pascals of knee, or share of the rod force [–].</param>
/// <param name="Variable">What is set.</param>
/// <param name="Ends">Whether nothing would hold the setting back then.</param>
public sealed record MeasuringGain(ValueRange? Range, double Amount, SettingVariable Variable, bool Ends = false)
{
    /// <summary>The gain in knee, gauge; null for a balance bar.</summary>
    public Pressure? Knee => Variable == SettingVariable.BalanceBar ? null : Pressure.FromPascals(Amount);
}
