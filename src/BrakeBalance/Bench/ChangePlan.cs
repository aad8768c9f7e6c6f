using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Bench;

/// <summary>Old parts against new on one car: what changes in effort, travel, balance, knee needed and heat.</summary>
/// <remarks>
/// The figures are those of <see cref="SetUp"/>, as in every comparison; here each is judged. It compares parts; it approves none.
/// </remarks>
public sealed record ChangePlan
{
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
        var old = new SetUp(Before, Conditions, Conditions.OldRings);
        var changed = new SetUp(After, Conditions, Conditions.NewRings);
        return [.. Effort(old, changed), .. Travel(old, changed), .. BalanceRows(old, changed), .. Knee(old, changed),
            .. Heat(old, changed)];
    }

    private IEnumerable<ChangeRow> Effort(SetUp old, SetUp changed)
    {
        yield return Row(old, changed, "front_line_pressure",
            changed.PressureAtRate is null ? BenchSeverity.Wrong : BenchSeverity.Pass, "That much pressure is needed");
        if (old.Control is null || changed.Control is null)
        {
            yield return new(ChangeTopic.Effort, "Pedal force", null, null, old.Control is null
                ? SetUp.Missing : "told", changed.Control is null ? SetUp.Missing : "told",
                BenchSeverity.Caution, "The vehicle file does not say what lies between foot and line pressure.");
            yield break;
        }

        Force? dead = changed.PedalWithoutAssist;
        Pedals.FootForce foot = changed.Vehicle.Control!.Foot;
        yield return Row(old, changed, "pedal_force",
            changed.PedalForce is not { } force || force > foot.Maximum ? BenchSeverity.Wrong
                : force > foot.Planned || force < Pedals.FootForce.Touchy ? BenchSeverity.Caution
                : BenchSeverity.Pass,
            "The pedal gets " + (changed.PedalForce < old.PedalForce ? "lighter" : "harder"));
        yield return Row(old, changed, "pedal_force_no_assist",
            dead is null || dead > foot.Maximum ? BenchSeverity.Wrong : dead > foot.Planned ? BenchSeverity.Caution : BenchSeverity.Pass,
            "Without assist the leg has to do it");
        Pressure? runOut = changed.RunOutPressure, ceiling = changed.Vehicle.Hydraulics.MaximumPressure;
        bool early = runOut < changed.PressureAtRate, beyond = runOut > ceiling;
        yield return Row(old, changed, "run_out_pressure",
            early || beyond ? BenchSeverity.Caution : BenchSeverity.Pass,
            early ? "The assist runs out before the hard stop is reached"
            : beyond ? "The assist can press beyond the highest pressure considered: hoses, calipers and cylinder must be rated for it"
            : "Above it no assist is left");
    }

    private static IEnumerable<ChangeRow> Travel(SetUp old, SetUp changed)
    {
        if (old.Travel is null && changed.Travel is null)
        {
            yield break;
        }

        Length? left = changed.Travel?.PadLeft;
        yield return Row(old, changed, "pedal_travel", BenchSeverity.Pass,
            "The pedal goes " + (changed.Travel?.Pad < old.Travel?.Pad ? "less deep" : "deeper"));
        yield return Row(old, changed, "pedal_travel_left",
            changed.Travel is { Reaches: false }
                ? BenchSeverity.Wrong : left is null || left < PedalTravel.WantedReserve ? BenchSeverity.Caution : BenchSeverity.Pass,
            changed.Travel?.Warning ?? Invariant.Text(
                $"More than {PedalTravel.WantedReserve.Millimeters:0} mm ({PedalTravel.WantedReserve.Inches:0} in) are wanted "
                    + $"(common practice)"));
        yield return Row(old, changed, "stroke_left",
            changed.Travel is null ? BenchSeverity.Caution
                : changed.Travel.StrokeLeft < Length.Zero ? BenchSeverity.Wrong : BenchSeverity.Pass,
            "What is left when one circuit takes more");
    }

    private static IEnumerable<ChangeRow> BalanceRows(SetUp old, SetUp changed)
    {
        double? before = old.RearShare, after = changed.RearShare;
        string way = before is not { } b || after is not { } a ? "The deceleration is not reached"
            : Math.Abs(a - b) < 5e-4 ? "The balance stays"
            : $"Braking moves {(a > b ? "rearwards, the dangerous side" : "forwards")}";
        yield return Row(old, changed, "rear_share", after is null || after > before ? BenchSeverity.Caution : BenchSeverity.Pass, way);
        bool safe = changed.RearFirst == SetUp.Nowhere;
        yield return Row(old, changed, "rear_first_adhesions", safe ? BenchSeverity.Pass : BenchSeverity.Wrong,
            safe ? "The front axle locks first everywhere tried"
                : "A car whose rear axle locks first spins: "
                    + (changed.Vehicle.Hydraulics.RearProportioningValve is null
                        ? "it must not move so" : "lower the knee before it moves"));
    }

    private static IEnumerable<ChangeRow> Knee(SetUp old, SetUp changed)
    {
        if (old.Setting is null && changed.Setting is null)
        {
            yield break;
        }

        Pressure? set = changed.Vehicle.Hydraulics.RearProportioningValve?.Knee;
        Pressure? safe = changed.SafeKnee;
        bool tooHigh = set is { } knee && safe is { } most && knee > most;
        yield return Row(old, changed, "safe_knee",
            !changed.AnyKneeIsSafe && (safe is null || tooHigh) ? BenchSeverity.Wrong : BenchSeverity.Pass,
            changed.AnyKneeIsSafe ? "The front locks first at any knee"
                : safe is null ? "No knee makes this safe: change brakes, not the valve"
                : tooHigh ? "The knee that is set lies above it: turn the valve out before the car moves"
                : "The knee that is set lies below it");
    }

    private static IEnumerable<ChangeRow> Heat(SetUp old, SetUp changed)
    {
        foreach (Axle axle in new[] { Axle.Front, Axle.Rear })
        {
            if (old.Warming(axle) is null && changed.Warming(axle) is null)
            {
                continue;
            }

            yield return Row(old, changed, axle == Axle.Front ? "front_rise" : "rear_rise",
                changed.Warming(axle)?.Kelvins > 230 ? BenchSeverity.Caution : BenchSeverity.Pass,
                "Bulk of disc or drum, before any cooling");
        }
    }

    private static ChangeRow Row(SetUp old, SetUp changed, string key, BenchSeverity severity, string meaning)
    {
        (SetUpFigure before, SetUpFigure after) = (old[key], changed[key]);
        string Words(SetUpFigure figure) => figure.Value is null ? figure.Words : "";
        return new ChangeRow(
            after.Topic, after.Name, before.Value, after.Value, Words(before), Words(after), severity, meaning.TrimEnd('.') + ".");
    }
}
