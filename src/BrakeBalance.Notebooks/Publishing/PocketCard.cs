using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;
using UnitSystem = BrakeBalance.Charts.UnitSystem;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>What a racer's pocket card says: settings and what they give, first locks, pedal, and the setting to go back to.</summary>
public sealed record PocketCard
{
    /// <summary>Braking rates at which pressures are listed [–].</summary>
    public static IReadOnlyList<double> Rates { get; } = [0.5, 0.8];

    private static readonly (string Name, double Adhesion)[] Roads = [("ice", 0.1), ("wet", 0.5), ("dry", 0.8), ("track tyres", 1.1)];
    private static readonly double[] PedalRates = [0.3, 0.5, 0.8];

    /// <summary>Name of the car.</summary>
    public required string Car { get; init; }

    /// <summary>The state of load the numbers hold for.</summary>
    public required string LoadCase { get; init; }

    /// <summary>The setting to go back to, in large type.</summary>
    public required string GoBackTo { get; init; }

    /// <summary>What bounds the setting, in a sentence; null when there is nothing to say.</summary>
    public required string? Limit { get; init; }

    /// <summary>Headings of the table of settings, each with its unit.</summary>
    public required IReadOnlyList<string> Columns { get; init; }

    /// <summary>The settings, one row each; an empty cell is to be filled in by hand.</summary>
    public required IReadOnlyList<CardRow> Rows { get; init; }

    /// <summary>The first lock on each road at the setting to go back to.</summary>
    public required IReadOnlyList<(string Name, string Value)> FirstLocks { get; init; }

    /// <summary>Pedal forces and what is in reserve; empty when the file does not say.</summary>
    public required IReadOnlyList<(string Name, string Value)> Pedal { get; init; }

    /// <summary>Makes the card of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="load">One of its load cases.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>The card.</returns>
    public static PocketCard Of(Vehicle vehicle, LoadCase load, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(load);
        var own = new BalanceModel(vehicle, load);
        (string first, string back, string? limit, IReadOnlyList<(string[] Cells, Vehicle Car, bool IsOwn)> settings) = Settings(vehicle, units);
        string unit = Measure.LinePressure.In(units).Symbol;
        return new PocketCard
        {
            Car = vehicle.Name,
            LoadCase = load.Name,
            GoBackTo = back,
            Limit = limit,
            Columns = [.. first.Split('|'), .. Rates.SelectMany(rate => new[] { $"Front at {G(rate)} [{unit}]", $"Rear at {G(rate)} [{unit}]" }), "Dry road: locks first at [g]"],
            Rows = [.. settings.Select(setting => Row(setting.Cells, new BalanceModel(setting.Car, load), setting.IsOwn, units))],
            FirstLocks = [.. Roads.Select(road => ($"{road.Name}, k = {road.Adhesion:0.0}", LockText(own.FirstLockUp(road.Adhesion))))],
            Pedal = vehicle.Control is null ? [] : [.. PedalLines(new ControlForce(own), units)],
        };
    }

    private static CardRow Row(string[] cells, BalanceModel model, bool isOwn, UnitSystem units) => new(
        [
            .. cells,
            .. Rates.Select(model.AtRate).SelectMany(at => at is null
                ? new[] { "–", "–" }
                : [Measure.LinePressure.In(units).Number(at.LinePressures.Front.Pascals), Measure.LinePressure.In(units).Number(at.LinePressures.Rear.Pascals)]),
            LockText(model.FirstLockUp(Roads[2].Adhesion)).Replace(" g", "", StringComparison.Ordinal),
        ],
        isOwn,
        model.FirstLockUp(Roads[2].Adhesion)?.First == Axle.Rear);

    private static (string Columns, string Back, string? Limit, IReadOnlyList<(string[], Vehicle, bool)> Rows) Settings(Vehicle vehicle, UnitSystem units)
    {
        string unit = Measure.LinePressure.In(units).Symbol;
        if (vehicle.Hydraulics.RearProportioningValve is { } valve)
        {
            SettingAdvice advice = SettingSearch.GreatestSafeKnee(vehicle, new SettingConditions(), valve.Slope);
            string? limit = advice.Outcome is { } best ? Bound($"a knee of {Measure.LinePressure.Text(best.Knee, units)}", "above", valve.Knee > best.Knee) : "At no knee does the front lock first in every case.";
            return valve.Adjustment is { } knob ? Knob(vehicle, valve, knob, limit, units) : ($"Turns (fill in)|Knee [{unit}]", $"Knee {Measure.LinePressure.Text(valve.Knee, units)}", limit, [.. Knees(valve, units)
                .Select(knee => (new[] { "", Number(knee, units) }, vehicle.WithRearKnee(knee, valve.Slope), knee.Equals(valve.Knee, Pressure.FromPascals(1))))]);
        }

        if (vehicle.Hydraulics.Split is BalanceBarSplit bar)
        {
            double? safe = SettingSearch.SmallestSafeFrontShare(vehicle, new SettingConditions());
            double[] shares = [.. Enumerable.Range(-4, 9).Select(i => bar.FrontForceShare + 0.02 * i).Where(share => share is >= 0.2 and <= 0.8)];
            return ("Bar position (fill in)|Front share [%]", $"Bar {Share(bar.FrontForceShare)} % front", safe is { } least ? Bound($"{Share(least)} % front", "below", bar.FrontForceShare < least) : "At no bar position does the front lock first in every case.",
                [.. shares.Select((share, i) => (new[] { "", Share(share) }, vehicle with { Hydraulics = vehicle.Hydraulics with { Split = bar with { FrontForceShare = share } } }, share == bar.FrontForceShare))]);
        }

        return ("Setting", "Nothing to set", null, [(new[] { "as built" }, vehicle, true)]);
    }

    private static string Bound(string limit, string side, bool beyond) => beyond
        ? $"CAUTION: {side} the computed limit, {limit}. The rear locks first in some load, on some road, or with pads 8 % off."
        : $"Computed limit: {limit}; {side} it the rear locks first in some load, on some road, or with pads 8 % off.";

    private static (string, string, string?, IReadOnlyList<(string[], Vehicle, bool)>) Knob(Vehicle vehicle, ProportioningValve valve, KneeAdjustment knob, string? limit, UnitSystem units)
    {
        double step = knob.Turns <= 4 ? 0.5 : knob.Turns <= 8 ? 1 : Math.Ceiling(knob.Turns / 8);
        double? ownTurns = knob.TurnsFor(valve.Knee);
        double[] turns = [.. Enumerable.Range(0, (int)Math.Floor(knob.Turns / step + 1e-9) + 1).Select(i => i * step)];
        if (ownTurns is { } own && !turns.Any(turn => Math.Abs(turn - own) < 0.05))
        {
            turns = [.. turns.Append(own).Order()];
        }

        string back = ownTurns is { } at ? $"{Turns(at)} turns in, knee {Measure.LinePressure.Text(valve.Knee, units)}" : $"Knee {Measure.LinePressure.Text(valve.Knee, units)}";
        return ($"Turns in from fully out|Knee [{Measure.LinePressure.In(units).Symbol}]", back, limit, [.. turns.Select(turn =>
            (new[] { Turns(turn), Number(knob.KneeAt(turn), units) }, vehicle.WithRearKnee(knob.KneeAt(turn), valve.Slope), ownTurns is { } o && Math.Abs(turn - o) < 0.05))]);
    }

    /// <summary>The valve's own knee and four round ones on either side.</summary>
    private static IEnumerable<Pressure> Knees(ProportioningValve valve, UnitSystem units)
    {
        DisplayUnit unit = Measure.LinePressure.In(units);
        double step = units == UnitSystem.Us ? 50 : 4;
        return Enumerable.Range(-4, 9)
            .Select(i => i == 0 ? valve.Knee : Pressure.FromPascals(unit.ToSi((Math.Round(unit.FromSi(valve.Knee.Pascals) / step) + i) * step)))
            .Where(knee => knee.Pascals > 0);
    }

    private static IEnumerable<(string, string)> PedalLines(ControlForce control, UnitSystem units)
    {
        var bare = new ControlForce(control.Model, control.Control with { Assist = control.Control.Assist.WithoutEnergy() });
        bool assisted = control.Control.Assist is not NoAssist;
        foreach (double rate in PedalRates)
        {
            yield return (assisted ? $"{G(rate)}, with / without assist" : $"Pedal at {G(rate)}", assisted ? $"{Foot(control, rate, units, bare: true)} / {Foot(bare, rate, units)}" : Foot(control, rate, units));
        }

        if (control.AtRate(0.8) is { } hard && control.TravelAt(hard.Balance.MasterPressure) is { } travel)
        {
            yield return ("Pedal left to the floor at 0.8 g", travel.LeftToFloor is { } left ? Measure.Travel.Text(left, units) : "none: not reached");
        }

        if (assisted && EngineOffPresses.Of(control) is { IsDescribed: true } presses)
        {
            yield return (
                $"Engine off: presses at {G(presses.BrakingRate)} within {Measure.ControlForce.Text(presses.GreatestPedalForce, units)}",
                presses.Count is { } count ? FormattableString.Invariant($"{count}") : "any number");
        }
    }

    private static string Foot(ControlForce control, double rate, UnitSystem units, bool bare = false) =>
        control.AtRate(rate) is not { } at ? "–" : bare ? Measure.ControlForce.In(units).Number(at.PedalForce.Newtons) : Measure.ControlForce.Text(at.PedalForce, units);

    private static string LockText(LockUp? lockUp) => lockUp is null ? "none" : FormattableString.Invariant($"{(lockUp.First switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" })} {lockUp.At.BrakingRate:0.00} g");

    private static string Number(Pressure pressure, UnitSystem units) => Measure.LinePressure.In(units).Number(pressure.Pascals);

    private static string Turns(double turns) => turns.ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);

    private static string Share(double share) => (100 * share).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);

    private static string G(double rate) => rate.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + "\u00a0g";
}

/// <summary>A setting and what it gives.</summary>
/// <param name="Cells">One text a column.</param>
/// <param name="IsOwn">Whether it is the setting to go back to.</param>
/// <param name="RearFirst">Whether the rear axle locks first on a dry road.</param>
public sealed record CardRow(IReadOnlyList<string> Cells, bool IsOwn, bool RearFirst);
