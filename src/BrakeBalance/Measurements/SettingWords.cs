using BrakeBalance.Answers;
using BrakeBalance.Balance;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>The setting in words: the same on the terminal, the card, the pages and the figures.</summary>
public static class SettingWords
{
    /// <summary>What stands for a setting that there is none of.</summary>
    public const string None = "none";

    private const string OtherParts = "What the stops allowed holds for the parts they were made with: other parts need other stops, "
        + "and until then a file without its measurements.";

    /// <summary>What stands in place of a limit where every setting keeps the front first.</summary>
    internal const string Any = "any setting";

    /// <summary>What is said of a car without a setting of its own that needs one.</summary>
    internal const string AsBuilt = "As it is built the rear can lock first and spin it";

    private const string StillTooMuch = "fully out is still too much rear braking";

    /// <summary>The caution that stands beside every setting.</summary>
    public const string Caution = "No approval: rear-first spins. Test off public roads.";

    /// <summary>A knee or a share of the bar as shown, rounded to the safe side: a knee down, a front share up.</summary>
    /// <param name="value">The setting.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "12.4 bar" or "62.5 % front".</returns>
    public static string Number(SettingValue value, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(value);
        return Amount(value.Knee, value.FrontForceShare, units);
    }

    /// <summary>The setting of a limit as shown, rounded to the safe side.</summary>
    /// <param name="limit">The limit.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "12.4 bar"; <see cref="None"/> when no setting keeps the front first.</returns>
    public static string Number(SettingLimit? limit, UnitSystem units) =>
        limit is null || !limit.Exists ? None : limit.AtAnySetting ? Any : Amount(limit.Knee, limit.FrontForceShare, units);

    /// <summary>The same of the knee alone.</summary>
    internal static string Number(Pressure limit, UnitSystem units) => Shown(limit, units, down: true);

    /// <summary>A setting with the turns of its adjuster.</summary>
    /// <param name="value">The setting; null for none.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "12.4 bar, 0.5 turns in", counted from fully out.</returns>
    public static string Text(SettingValue? value, UnitSystem units) =>
        value is null ? None
        : value.Turns is { } turns ? $"{Number(value, units)}, {Turns(turns)} in"
        : Number(value, units);

    /// <summary>Turns as shown, rounded down to a hundredth.</summary>
    /// <param name="turns">Turns [–].</param>
    /// <returns>Such as "1 turn" or "0.5 turns".</returns>
    public static string Turns(double turns)
    {
        bool quarter = Math.Abs(4 * turns - Math.Round(4 * turns)) < 1e-6;
        double shown = quarter ? Math.Round(4 * turns) / 4 : Math.Floor(100 * turns + 1e-6) / 100;
        return shown == 1 ? "1 turn" : Invariant.Text($"{shown:0.##} turns");
    }

    /// <summary>What the conditions are, in a sentence without a full stop.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "adhesion 0.20 to 1.00; standstill to 180 km/h; every load case; brakes normal, cold …; friction ± 8
    /// %".</returns>
    public static string Conditions(Vehicle vehicle, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        Conditions of = vehicle.Conditions;
        IReadOnlyList<Speed> speeds = of.SpeedsOf(vehicle);
        string speed = speeds.Count == 1
            ? vehicle.Aerodynamics is null ? "any speed" : SpeedRange.Words(speeds[0], units)
            : $"{SpeedRange.Words(speeds[0], units)} to {SpeedRange.Words(speeds[^1], units)}";
        string loads = of.LoadCases.IsEmpty && vehicle.LoadCases.Length > 1
            ? "every load case"
            : $"load case {List(of.LoadCasesOf(vehicle).Select(load => LoadCase.Listed(load.Name)))}";
        string friction = of.FrictionSpread.Front == of.FrictionSpread.Rear
            ? Invariant.Text($"friction ± {100 * of.FrictionSpread.Front:0.#} %")
            : Invariant.Text($"friction ± {100 * of.FrictionSpread.Front:0.#} % in front, "
                + $"± {100 * of.FrictionSpread.Rear:0.#} % at the rear");
        return Invariant.Text($"adhesion {of.LowestAdhesion:0.0#} to {of.HighestAdhesion:0.0#}; {speed}; {loads}; ")
            + $"brakes {List(of.BrakeStates.Select(state => state.Name))}; {friction}";
    }

    /// <summary>Which rule gave the safe limit, and what the other would give.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>A sentence.</returns>
    public static string Rule(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        string chance = Invariant.Text($"{100 * setting.Conditions.RearFirstChance:0.#} %");
        string other = Number(setting.OtherRule, units);
        return setting.Rule == SettingRule.Corners
            ? $"{Measured(setting)}: front first in every corner of the conditions."
                + (setting.Reach == SettingReach.NotNeeded ? "" : $" A chance of rear-first of {chance} would allow {other}.")
            : $"Own test stops{(setting.Kept is not null ? ", fitted and kept in the file (entry measurements)"
                    : OwnMeasurements.AreBeforeChange(setting.Vehicle) ? ", made before the car was changed" : "")}: a chance of "
                + $"rear-first of at most {chance} in each condition. "
                + (setting.Binding is null ? ""
                    : "On roads of more adhesion than they reached every corner of their fit counts; one there decides. ")
                + $"Every corner {(setting.Kept is null ? "without them" : "of the fit")} would allow {other}.";
    }

    /// <summary>What holds the limit back.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>A phrase.</returns>
    public static string Why(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        // Where corners beyond the roads of the stops hold the limit back, the chance is told of another setting.
        return setting is { MostRearFirst: { } most, Binding: null }
            ? Invariant.Text(
                $"rear first most often in {LoadCase.Listed(most.LoadCase)}, {most.Surface}, brakes {most.State} ")
                + Invariant.Text($"({100 * most.RearFirst:0.#} %)")
            : IsKept(setting) ? "this car's own stops allow no more"
            : setting.Binding is { } binding
                ? (setting.SafeLimit is null ? "even with least rear braking" : "beyond it")
                    + $" the rear locks first in {binding.Words(units)}"
                : "nothing in the conditions lets the rear lock first";
    }

    private static bool IsKept(Setting setting) => setting is { Rule: SettingRule.Chance, Kept: not null };

    /// <summary>How sure the limit is.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>A phrase.</returns>
    public static string HowSure(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        int typical = setting.Vehicle.Uncertainty?.OfClass ?? 0;
        return setting.Band is { } of
            ? (setting.Reach == SettingReach.NotNeeded ? "none needed" : Span(Number(of.Low, units), Number(of.High, units)))
                + " over the file's ranges (90 %)"
                + (typical > 0 ? $", {typical} of them typical of the class" : "")
            : setting.Rule == SettingRule.Corners ? "as sure as the file"
            : "by this car's own stops" + (OwnMeasurements.AreBeforeChange(setting.Vehicle) ? ", made before it was changed" : "")
                + (setting.Binding is null ? "" : "; by every corner of their fit beyond the adhesion they reached");
    }

    /// <summary>How many numbers of a car are not its own but typical of its class.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>A sentence; empty when all are the car's own.</returns>
    public static string OfClass(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return (vehicle.Uncertainty?.OfClass ?? 0) switch
        {
            0 => "",
            1 => "1 number is typical of the car's class, not this car's.",
            int typical => Invariant.Text($"{typical} numbers are typical of the car's class, not this car's."),
        };
    }

    /// <summary>What measuring a number would gain.</summary>
    /// <param name="gain">The gain.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "friction of both axles by test stops (limit up to 3 bar higher)".</returns>
    public static string Gain(MeasuringGain gain, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(gain);
        string amount = gain.Ends ? (gain.Variable == SettingVariable.AddedKnee ? "no valve needed then" : $"{Any} then")
            : gain.Knee is { } knee ? $"limit {Measure.LinePressure.Text(knee, units)} higher"
            : Invariant.Text($"limit {100 * gain.Amount:0.#} % of the rod force lower");
        return $"{gain.Range?.Path ?? "friction, by test stops"} ({amount})";
    }

    /// <summary>Where the limit lies for the adjuster, and what would help, in sentences; empty when it is in reach.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Sentences.</returns>
    public static IReadOnlyList<string> OutOfReach(Setting setting, UnitSystem units = UnitSystem.Si)
    {
        ArgumentNullException.ThrowIfNull(setting);
        string? where = setting.Reach switch
        {
            SettingReach.None => "No setting keeps the front first in all conditions.",
            SettingReach.Withheld => "No setting is recommended while the measurements do not fit the car.",
            SettingReach.Below => $"The safe limit lies below what the adjuster reaches: {StillTooMuch}.",
            _ => null,
        };
        return where is null ? []
            : [where, .. IsKept(setting) ? [OtherParts] : setting.Doubts.Select(doubt => InBoth.Only(doubt, units == UnitSystem.Us)),
                .. setting.Changes.Select(change => Change(change, setting.Vehicle))];
    }

    /// <summary>A change of parts in words.</summary>
    /// <param name="change">The change.</param>
    /// <param name="vehicle">The car.</param>
    /// <returns>A sentence.</returns>
    public static string Change(SettingChange change, Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(change);
        ArgumentNullException.ThrowIfNull(vehicle);
        double factor = change.Amount;
        return change.Kind switch
        {
            SettingChangeKind.LowerSlope => Invariant.Text($"A valve of slope {factor:0.00} or lower brings one in reach."),
            SettingChangeKind.AddedValve =>
                Invariant.Text($"A proportioning valve (slope about {factor:0.0#}) in the rear line, "
                    + $"besides the bar, brings one in reach."),
            SettingChangeKind.NothingHelps =>
                "Even rear brakes of a quarter of their present force do not help: look for a wrong entry, "
                    + "such as the height of the centre of gravity, an axle load or the front friction.",
            _ => Invariant.Text($"Rear brakes with {100 * factor:0} % of their present force per pressure bring one in reach: ")
                + vehicle.Brakes.Rear switch
                {
                    DrumBrake drum => Invariant.Text($"a wheel cylinder {Math.Sqrt(factor):0.00} times as wide, or linings "
                        + $"of about {drum.FrictionCoefficient * (1 - (1 - factor) / drum.FrictionSensitivity):0.00} friction."),
                    Brake brake => Invariant.Text($"pistons {Math.Sqrt(factor):0.00} times as wide, "
                        + $"pads of {brake.FrictionCoefficient * factor:0.00} friction, or a smaller effective radius."),
                },
        };
    }

    /// <summary>What lies beside the conditions, one sentence each.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    public static IReadOnlyList<string> Findings(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return [.. setting.Findings.Select(finding =>
        {
            string where = finding.Kind switch
            {
                SettingFindingKind.Ice => Invariant.Text($"On ice (adhesion below {setting.Conditions.LowestAdhesion:0.0#})"),
                SettingFindingKind.OtherTyres => Invariant.Text($"With tyres of more adhesion (up to 1.3)"),
                SettingFindingKind.Bend => Invariant.Text($"In a bend of {SettingFinding.BendRate:0.0} g ")
                    + $"({setting.Conditions.LoadCasesOf(setting.Vehicle)[0].Name}, dry road, "
                    + $"{SpeedRange.Words(SettingFinding.BendSpeed, units)})",
                _ => "As the foot eases after both axles locked",
            };
            string limit = finding.Limit is not { } highest ? "no setting does better"
                : finding.AtAnySetting(setting.Vehicle) ? "at any setting"
                : $"limit there {Number(highest, units)}";
            string what = finding.Kind != SettingFindingKind.Release ? $"the {(finding.FrontFirst ? "front still" : "rear")} locks first"
                : finding.FrontFirst ? "the front still lets go with the rear or after it" : "the rear lets go last";
            return $"{where} {what} ({limit}).";
        })];
    }

    /// <summary>The answer in a few lines: a label and its text each.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    public static IReadOnlyList<(string Label, string Text)> Lines(Setting setting, UnitSystem units) =>
        [.. InSight(setting, units), ("Why", Why(setting, units))];

    /// <summary>What must always be in sight: what locks first, the three settings, how sure they are, and what to measure next.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>The first of <see cref="Lines"/>.</returns>
    public static IReadOnlyList<(string Label, string Text)> InSight(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        string more = setting.Reach is SettingReach.Withheld ? ": " + InBoth.Only(string.Join(' ', setting.Doubts), units == UnitSystem.Us)
            : setting.Reach is SettingReach.NotNeeded ? ""
            : setting.Recommended is not { } best
                ? ": " + (setting.Reach is SettingReach.None ? "no setting keeps the front first in all conditions" : StillTooMuch)
            : Invariant.Text($"; mean efficiency {100 * best.MeanEfficiency:0} %");
        return
        [
            ("Locks first", LocksFirst(setting, units)),
            ("Present setting", Present(setting, units) + (setting.PresentIsBeyond ? "; BEYOND THE SAFE LIMIT"
                : setting.IsBuiltBeyond ? "; AS BUILT THE REAR CAN LOCK FIRST" : "")),
            ("Safe limit", SafeLimit(setting, units)),
            ("Recommended setting", Recommended(setting, units) + more),
            ("How sure", HowSure(setting, units)),
            ("Measure next", setting.Gains is [var gain, ..] ? Gain(gain, units)
                : setting.Rule == SettingRule.Chance ? "another test stop" : "nothing in the file would raise the limit"),
        ];
    }

    /// <summary>What stands behind the answer: a label and a text each.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    public static IReadOnlyList<(string Label, string Text)> Behind(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return
        [
            ("Conditions", Conditions(setting.Vehicle, units) + "."),
            ("Rule", Rule(setting, units)),
            .. setting.Reach == SettingReach.NotNeeded ? [] : Orientation(setting, units),
            .. OutOfReach(setting, units).Select(words => ("Out of reach", words)),
        ];
    }

    private static (string Label, string Text)[] Orientation(Setting setting, UnitSystem units) =>
    [
        ("Orientation", setting.Middle.Binding is not { } binding ? "with every number at its middle the front locks first at any setting."
            : $"with every number at its middle both axles lock together at {Number(setting.Middle, units)} in {binding.Words(units)}: "
                + "never to set."),
    ];

    /// <summary>The answer in one sentence, for a caption or a title's second line.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    public static string Sentence(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        string present = setting.Present is not null
            ? $"Present setting {Present(setting, units)}{(setting.PresentIsBeyond ? ", beyond the safe limit" : "")}. "
            : setting.IsBuiltBeyond ? AsBuilt + ". " : "";
        return present + setting.Reach switch
        {
            SettingReach.NotNeeded => "No valve is needed: " + (setting.Rule == SettingRule.Chance
                ? "without one the car stays within the chance of rear-first." : "the front locks first in all conditions without one."),
            SettingReach.None or SettingReach.Below or SettingReach.Withheld => string.Join(' ', OutOfReach(setting, units)),
            _ => $"Recommended setting {Recommended(setting, units)}; "
                + (setting.HoldsAtAnySetting ? setting.Rule == SettingRule.Chance
                        ? "any setting stays within the chance of rear-first." : "any setting keeps the front first in all conditions."
                    : $"safe limit {Number(setting.SafeLimit!, units)}, {Why(setting, units)}."),
        };
    }

    /// <summary>A knee that is tried, rounded as any number.</summary>
    /// <param name="knee">The knee, gauge.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "24.0 bar".</returns>
    public static string Knee(Pressure knee, UnitSystem units) => Shown(knee, units, down: false);

    /// <summary>The setting the car has, rounded as any number.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "24.0 bar, 1.7 turns in", counted from fully out; "none fitted"; "no adjustable valve".</returns>
    public static string Present(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        if (setting.Present is not { } value)
        {
            return setting.Vehicle.Hydraulics.RearValves.IsEmpty ? "none fitted" : "no adjustable valve";
        }

        string amount = value.Knee is { } knee ? Shown(knee, units, down: false)
            : Invariant.Text($"{100 * value.FrontForceShare ?? 0:0.0} % front");
        return value.Turns is { } turns ? $"{amount}, {Turns(turns)} in" : amount;
    }

    /// <summary>The safe limit as every output shows it.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "9.5 bar, 0.25 turns in"; "none needed"; "any setting"; <see cref="None"/>.</returns>
    public static string SafeLimit(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        string limit = setting.Reach == SettingReach.NotNeeded ? "none needed"
            : setting.HoldsAtAnySetting ? Any : Text(setting.SafeLimit, units);
        return setting.Doubts.Count > 0 ? limit + " (by the file, before measuring)" : limit;
    }

    /// <summary>The recommended setting as every output shows it.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Such as "9.5 bar, 0.25 turns in"; "8.5 bar (valve of slope 0.4 to be fitted)"; "no valve needed"; "withheld"; "none in
    /// reach".</returns>
    public static string Recommended(Setting setting, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(setting);
        return setting.Reach switch
        {
            SettingReach.NotNeeded => "no valve needed",
            SettingReach.Withheld => "withheld",
            _ => setting.Recommended is null ? $"{None} in reach" : Text(setting.Recommended, units)
                + (setting.Variable != SettingVariable.AddedKnee ? ""
                    : Invariant.Text($" (valve of slope {SettingSearch.AddedSlope:0.0#} to be fitted")
                        + (setting.Vehicle.Hydraulics.RearValves.Any(valve => valve is not MeteringValve)
                            ? " before the one that is there)" : ")")),
        };
    }

    /// <summary>Both ends of a band; one number where they read the same.</summary>
    private static string Span(string low, string high) => low == high ? low : $"{low} to {high}";

    private static string Measured(Setting setting) => setting.Doubts.Count > 0 ? "The measurements do not fit this car and are left out"
        : setting.Vehicle.Measured?.Logs.Fitted == true ? "The fit of this car's tests stands in its file"
        : OwnMeasurements.Of(setting.Vehicle)?.Stops is not null ? "No test stop of this car can be used"
        : "Nothing measured on this car";

    private static string LocksFirst(Setting setting, UnitSystem units)
    {
        static string First(LockUp? lockUp) => lockUp?.First switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" };
        string[] rates = [.. setting.FirstLocksDrawn.Append(setting.FirstLockDry).OfType<LockUp>().Select(lockUp => lockUp.At.BrakingRate)
            .Order().Select(rate => Invariant.Text($"{rate:0.00}"))];
        string band = rates.Length < 2 || rates[0] == rates[^1] ? ""
            : $" ({rates[0]}–{rates[^1]}){(setting.Vehicle.Uncertainty?.OfClass > 0 ? "*" : "")}";
        string dry = setting.FirstLockDry is { } lockUp
            ? string.Join(" or ", setting.FirstLocksDrawn.OfType<LockUp>().Prepend(lockUp).Select(First).Distinct())
                + Invariant.Text($", dry road, {lockUp.At.BrakingRate:0.00} g{band}")
            : "neither on dry road";
        return setting.RearFirstAtMiddle is { } rear
            ? $"{dry}; rear {(setting.Rule == SettingRule.Chance ? "by the file " : "")}in {rear.Words(units)}"
            : $"{dry}; front everywhere {(band.Length > 0 ? "at the ranges' middle" : "by the file")}";
    }

    private static string Amount(Pressure? knee, double? share, UnitSystem units) =>
        knee is { } pressure ? Shown(pressure, units, down: true)
        : share is { } front ? Invariant.Text($"{Math.Ceiling(1000 * front - 1e-6) / 10:0.0} % front")
        : None;

    private static string Shown(Pressure knee, UnitSystem units, bool down) =>
        $"{Digits(knee, units, down)} {(units == UnitSystem.Us ? "psi" : "bar")}";

    /// <summary>A knee without its unit: to a tenth of a bar or a whole psi, for no valve is set closer.</summary>
    internal static string Digits(Pressure knee, UnitSystem units, bool down = false)
    {
        double Rounded(double number) => down ? Math.Floor(number + 1e-6) : Math.Round(number);
        return units == UnitSystem.Us
            ? Invariant.Text($"{Rounded(knee.PoundsForcePerSquareInch):0}")
            : Invariant.Text($"{Rounded(10 * knee.Bars) / 10:0.0}");
    }

    private static string List(IEnumerable<string> names)
    {
        string[] all = [.. names];
        return all.Length == 1 ? all[0] : $"{string.Join(", ", all[..^1])} and {all[^1]}";
    }
}
