using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Bench;

/// <summary>Old parts against new on one car: what changes in effort, travel, balance, knee needed and heat.</summary>
/// <remarks>
/// Both cars go through the same computations: <see cref="ControlForce"/>, <see cref="BalanceModel"/>, <see cref="Setting"/>; the heat of
/// one stop is ½ m v² shared like the braking forces, taken by the two rings of the axle at 460 J/(kg K) (grey iron, common practice),
/// cooling and
/// pads left out. It compares parts; it approves none.
/// </remarks>
public sealed record ChangePlan
{
    private const double IronJoulesPerKilogramKelvin = 460;
    private const string Missing = "not told";

    /// <summary>The car with its old parts.</summary>
    public required Vehicle Before { get; init; }

    /// <summary>The car with the new parts.</summary>
    public required Vehicle After { get; init; }

    /// <summary>The stop by which they are compared.</summary>
    public ChangeConditions Conditions { get; init; } = new();

    /// <summary>The table.</summary>
    /// <returns>The rows by topic.</returns>
    /// <exception cref="ArgumentException">One of the cars has no load case of the name asked for, or cannot be computed.</exception>
    public ImmutableArray<ChangeRow> Rows()
    {
        var old = new Side(Before, Conditions, Conditions.OldRings);
        var changed = new Side(After, Conditions, Conditions.NewRings);
        return [.. Effort(old, changed), .. Travel(old, changed), .. BalanceRows(old, changed), .. Knee(old, changed),
            .. Heat(old, changed)];
    }

    private IEnumerable<ChangeRow> Effort(Side old, Side changed)
    {
        double rate = Conditions.BrakingRate;
        yield return Row(ChangeTopic.Effort, FormattableString.Invariant($"Front line pressure at {rate:0.00} g"), old.PressureAtRate,
            changed.PressureAtRate,
            changed.PressureAtRate is null
                ? BenchSeverity.Wrong : BenchSeverity.Good, "That much pressure is needed", "the highest pressure does not reach it");
        if (old.Control is null || changed.Control is null)
        {
            yield return new(ChangeTopic.Effort, "Pedal force", null, null, old.Control is null
                ? Missing : "told", changed.Control is null ? Missing : "told",
                BenchSeverity.Caution, "The vehicle file does not say what lies between foot and line pressure.");
            yield break;
        }

        Force? dead = changed.PedalWithoutAssist;
        Pedals.FootForce foot = changed.Vehicle.Control!.Foot;
        yield return Row(ChangeTopic.Effort, FormattableString.Invariant($"Pedal force at {rate:0.00} g"), old.PedalForce,
            changed.PedalForce,
            changed.PedalForce is not { } force || force > foot.Maximum ? BenchSeverity.Wrong
                : force > foot.Planned || force < Force.FromPoundsForce(20) ? BenchSeverity.Caution
                : BenchSeverity.Good,
            "The pedal gets " + (changed.PedalForce < old.PedalForce ? "lighter" : "harder"), "the deceleration is not reached");
        yield return Row(ChangeTopic.Effort,
            FormattableString.Invariant($"Pedal force at {Conditions.RateWithoutAssist:0.00} g, no assist"), old.PedalWithoutAssist, dead,
            dead is null || dead > foot.Maximum ? BenchSeverity.Wrong : dead > foot.Planned ? BenchSeverity.Caution : BenchSeverity.Good,
            "Without assist the leg has to do it", "the deceleration is not reached");
        Pressure? runOut = changed.RunOutPressure, ceiling = changed.Vehicle.Hydraulics.MaximumPressure;
        bool early = runOut < changed.PressureAtRate, beyond = runOut > ceiling;
        yield return Row(ChangeTopic.Effort, "Front line pressure at run-out of the assist", old.RunOutPressure, runOut,
            early || beyond ? BenchSeverity.Caution : BenchSeverity.Good,
            early ? "The assist runs out before the hard stop is reached"
            : beyond ? "The assist can press beyond the highest pressure considered: hoses, calipers and cylinder must be rated for it"
            : "Above it no assist is left",
            "no assist to run out");
    }

    private IEnumerable<ChangeRow> Travel(Side old, Side changed)
    {
        if (old.Travel is null && changed.Travel is null)
        {
            yield break;
        }

        Length? left = changed.Travel?.PadLeft;
        yield return Row(ChangeTopic.Travel, FormattableString.Invariant($"Pedal travel at {Conditions.BrakingRate:0.00} g"),
            old.Travel?.Pad, changed.Travel?.Pad,
            BenchSeverity.Good, "The pedal goes " + (changed.Travel?.Pad < old.Travel?.Pad ? "less" : "more") + " deep", Missing);
        yield return Row(ChangeTopic.Travel, "Travel left to the floor", old.Travel?.PadLeft, left,
            changed.Travel is { Reaches: false }
                ? BenchSeverity.Wrong : left is null || left < PedalTravel.WantedReserve ? BenchSeverity.Caution : BenchSeverity.Good,
            changed.Travel?.Warning ?? "More than 50 mm (2 in) are wanted (common practice)", Missing);
        yield return Row(ChangeTopic.Travel, "Master-cylinder stroke left", old.Travel?.StrokeLeft, changed.Travel?.StrokeLeft,
            changed.Travel is null ? BenchSeverity.Caution
                : changed.Travel.StrokeLeft < Length.Zero ? BenchSeverity.Wrong : BenchSeverity.Good,
            "What is left when one circuit takes more", Missing);
    }

    private IEnumerable<ChangeRow> BalanceRows(Side old, Side changed)
    {
        double? before = old.RearShare, after = changed.RearShare;
        string way = before is not { } b || after is not { } a ? "The deceleration is not reached"
            : Math.Abs(a - b) < 5e-4 ? "The balance stays"
            : string.Create(CultureInfo.InvariantCulture, $"Braking moves {(a > b ? "rearwards, the dangerous side" : "forwards")}, "
                + $"by {Math.Abs(a - b) * 100:0.0} points");
        yield return Row(ChangeTopic.Balance,
            FormattableString.Invariant($"Rear axle's share of braking at {Conditions.BrakingRate:0.00} g"),
            Fraction(before), Fraction(after), after is null || after > before ? BenchSeverity.Caution : BenchSeverity.Good,
            way, "the deceleration is not reached");
        string now = changed.RearFirst;
        yield return new(ChangeTopic.Balance, "Rear axle locks first on adhesions", null, null, old.RearFirst, now,
            now == Side.Nowhere ? BenchSeverity.Good : BenchSeverity.Wrong,
            now == Side.Nowhere ? "The front axle locks first everywhere tried."
                : "A car whose rear axle locks first spins: lower the knee before it moves.");
    }

    private static IEnumerable<ChangeRow> Knee(Side old, Side changed)
    {
        if (old.Setting is null && changed.Setting is null)
        {
            yield break;
        }

        Pressure? set = changed.Vehicle.Hydraulics.RearProportioningValve?.Knee;
        Pressure? safe = changed.SafeKnee;
        bool tooHigh = set is { } knee && safe is { } most && knee > most;
        yield return Row(ChangeTopic.Knee, "Safe limit: highest knee that keeps the front first in all conditions", old.SafeKnee, safe,
            safe is null || tooHigh ? BenchSeverity.Wrong : BenchSeverity.Good,
            safe is null ? "No knee makes this safe: change brakes, not the valve"
                : tooHigh ? "The knee that is set lies above it: turn the valve out before the car moves"
                : "The knee that is set lies below it", "no knee is safe");
    }

    private IEnumerable<ChangeRow> Heat(Side old, Side changed)
    {
        foreach (Axle axle in new[] { Axle.Front, Axle.Rear })
        {
            if (old.Warming(axle) is null && changed.Warming(axle) is null)
            {
                continue;
            }

            TemperatureDelta? rise = changed.Warming(axle);
            yield return Row(ChangeTopic.Heat,
                string.Create(CultureInfo.InvariantCulture,
                $"{axle} disc temperature rise, one stop from {Conditions.Speed.KilometersPerHour:0} km/h "
                    + $"({Conditions.Speed.MilesPerHour:0} mph)"),
                old.Warming(axle), rise,
                rise is { } k && k.Kelvins > 230
                    ? BenchSeverity.Caution : BenchSeverity.Good, "Bulk of the ring, before any cooling", "ring not weighed");
        }
    }

    private static IQuantity? Fraction(double? value) => value is { } fraction ? Ratio.FromDecimalFractions(fraction) : null;

    private static ChangeRow Row(ChangeTopic topic, string name, IQuantity? before, IQuantity? after, BenchSeverity severity,
        string meaning, string missing)
    {
        var row = new ChangeRow(topic, name, before, after, before is null ? missing : "", after is null ? missing : "", severity, meaning);
        string change = row.Factor is { } factor and < 3 && topic != ChangeTopic.Balance
            ? FormattableString.Invariant($" ({(factor - 1) * 100:+0;−0;±0} %)") : "";
        return row with { Meaning = meaning.TrimEnd('.') + change + "." };
    }

    // Everything one of the two cars has to say.
    private sealed class Side
    {
        public const string Nowhere = "none";

        private readonly PerAxle<Mass?> _rings;
        private readonly double _joules;

        public Side(Vehicle vehicle, ChangeConditions conditions, PerAxle<Mass?> rings)
        {
            Vehicle = vehicle;
            _rings = rings;
            LoadCase load = conditions.LoadCase is { } name ? vehicle.LoadCase(name) : vehicle.LoadCases[0];
            var model = new BalanceModel(vehicle, load);
            double speed = conditions.Speed.MetersPerSecond;
            _joules = 0.5 * load.Mass.Kilograms * speed * speed;
            if (model.AtRate(conditions.BrakingRate) is { } point)
            {
                PressureAtRate = point.LinePressures.Front;
                RearShare = point.BrakingForces.Rear / (point.BrakingForces.Front + point.BrakingForces.Rear);
            }

            RearFirst = string.Join(", ", Enumerable.Range(2, 9).Select(tenth => tenth / 10.0)
                .Where(adhesion => model.FirstLockUp(adhesion)?.First == Axle.Rear)
                .Select(adhesion => FormattableString.Invariant($"{adhesion:0.0}")));
            RearFirst = RearFirst.Length == 0 ? Nowhere : RearFirst;
            Setting = vehicle.Hydraulics.RearProportioningValve is null ? null : Setting.Of(vehicle);
            if (vehicle.Control is not { } parts)
            {
                return;
            }

            Control = new ControlForce(model);
            PedalForce = Control.AtRate(conditions.BrakingRate)?.PedalForce;
            PedalWithoutAssist = new ControlForce(model, parts with { Assist = parts.Assist.WithoutEnergy() })
                .AtRate(conditions.RateWithoutAssist)?.PedalForce;
            RunOutPressure = parts.Assist.RunOut is { } runOut ? Control.Cylinder.OutletPressures(runOut.OutputForce).Front : null;
            Travel = Control.AtRate(conditions.BrakingRate) is { } hard ? Control.TravelAt(hard.Balance.MasterPressure) : null;
        }

        public Vehicle Vehicle { get; }

        public ControlForce? Control { get; }

        public Pressure? PressureAtRate { get; }

        public Force? PedalForce { get; }

        public Force? PedalWithoutAssist { get; }

        public Pressure? RunOutPressure { get; }

        public PedalTravel? Travel { get; }

        public double? RearShare { get; }

        public string RearFirst { get; }

        public Setting? Setting { get; }

        public Pressure? SafeKnee => Setting?.SafeLimit?.Knee;

        public TemperatureDelta? Warming(Axle axle) => _rings[axle] is { } ring && RearShare is { } rear
            ? TemperatureDelta.FromKelvins(
                _joules * (axle == Axle.Rear ? rear : 1 - rear) / (2 * ring.Kilograms * IronJoulesPerKilogramKelvin))
            : null;
    }
}
