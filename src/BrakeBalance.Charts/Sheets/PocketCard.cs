namespace BrakeBalance.Charts.Sheets;

/// <summary>
/// What a racer's pocket card says: settings and resulting pressures, first locks and pedal, around the recommended setting.
/// </summary>
/// <param name="Car">Name of the car.</param>
/// <param name="LoadCase">The state of load the numbers hold for.</param>
/// <param name="Warning">What must be said first; null when there is nothing.</param>
/// <param name="Baseline">The recommended setting, in large type.</param>
/// <param name="Limit">Safe limit and present setting with what bounds them.</param>
/// <param name="Conditions">What all this holds for, in a sentence.</param>
/// <param name="HasBands">Whether its numbers stand with bands, because the file gives ranges.</param>
/// <param name="Columns">Headings of the table of settings, each with its unit.</param>
/// <param name="Rows">The settings, one row each; an empty cell is to be filled in by hand.</param>
/// <param name="Set">Which setting first locks and pedal are told of: the recommended one, or the present one where there is none.</param>
/// <param name="FirstLocks">The first lock on each road at that setting.</param>
/// <param name="Pedal">Pedal forces and what is in reserve; empty when the file does not say.</param>
public sealed record PocketCard(
    string Car, string LoadCase, string? Warning, string Baseline, string Limit, string Conditions, bool HasBands,
    IReadOnlyList<string> Columns, IReadOnlyList<CardRow> Rows, string Set, IReadOnlyList<(string Name, string Value)> FirstLocks,
    IReadOnlyList<(string Name, string Value)> Pedal)
{
    /// <summary>Decelerations at which pressures are listed [–]: half and most of what the best road of the conditions gives.</summary>
    internal static double[] Rates(Vehicle car) =>
        [.. new[] { 0.5, 0.85 }.Select(part => Math.Floor(10 * part * car.Conditions.HighestAdhesion + 1e-9) / 10)];

    private static (string Name, double Adhesion)[] Roads(Vehicle car) =>
        [("ice", 0.1), ("wet", Vehicles.Conditions.WetAdhesion), ("dry", Vehicles.Conditions.DryAdhesion),
            ("track tyres", car.Conditions.TrackAdhesion)];

    /// <summary>Makes the card of a car.</summary>
    public static PocketCard Of(Vehicle vehicle, LoadCase load, UnitSystem units)
    {
        Setting setting = Setting.Of(vehicle);
        Vehicle recommended = setting.RecommendedVehicle;
        Banded<BalanceModel> own = Models(recommended, load);
        (IReadOnlyList<string> columns, IReadOnlyList<(string[] Cells, Vehicle Car)> settings) = Settings(recommended, units);
        string unit = Measure.LinePressure.In(units).Symbol;
        double best = vehicle.Conditions.BestAdhesion;
        return new PocketCard(
            Car: vehicle.Name,
            LoadCase: load.Name,
            Warning: WarningOf(setting, units),
            Baseline: setting.Reach == SettingReach.Withheld ? "Withheld: the measurements do not fit the car"
                : setting.Recommended is null ? "No safe setting in reach"
                : setting.Reach == SettingReach.NotNeeded ? "No valve needed" : SettingWords.Recommended(setting, units),
            Limit: $"Safe limit {SettingWords.SafeLimit(setting, units)}: {SettingWords.Why(setting, units)}."
                + (setting.Present is not null && !setting.PresentIsBeyond
                    ? $" Present setting {SettingWords.Present(setting, units)}." : ""),
            Conditions: SettingWords.Conditions(vehicle, units)
                + (vehicle.Hydraulics is { Split: BalanceBarSplit bar, RearValves.IsEmpty: false }
                    ? $"; the bar at {Share(bar.FrontForceShare)} % front." : ".")
                + (own.HasBand ? " " + BandText.LegendOf(vehicle) : ""),
            HasBands: own.HasBand,
            Columns: [.. columns,
                .. Rates(vehicle).SelectMany(rate => new[] { $"Front at {G(rate)} [{unit}]", $"Rear at {G(rate)} [{unit}]" }),
                $"{(best > 1 ? Invariant.Text($"k = {best:0.0#}") : "Dry road")}: locks first at [g]"],
            Rows: [.. settings.Select(row =>
                Row(row.Cells, Models(row.Car, load), ReferenceEquals(row.Car, recommended), setting.IsBeyond(row.Car), units))],
            Set: setting.Recommended is null ? "present" : "recommended",
            FirstLocks: [.. Roads(vehicle).Select(road =>
                (Invariant.Text($"{road.Name}, k = {road.Adhesion:0.0#}"), own.Text(model => LockText(model.FirstLockUp(road.Adhesion)))))],
            Pedal: vehicle.Control is null ? [] : PedalOf(own, units));
    }

    private static Banded<BalanceModel> Models(Vehicle car, LoadCase load) =>
        Banded.Of(car, of => new BalanceModel(of, of.LoadCase(load.Name)));

    private static IReadOnlyList<(string, string)> PedalOf(Banded<BalanceModel> own, UnitSystem units)
    {
        Banded<(string Name, string Value)[]> lines = own.Select(model => PedalLines(new ControlForce(model), units).ToArray())!;
        return [.. lines.Middle.Select(line => (line.Name, lines.Text(of =>
            of.Where(other => other.Name == line.Name).Select(other => other.Value).FirstOrDefault("–"))))];
    }

    private static string? WarningOf(Setting setting, UnitSystem units)
    {
        string ofClass = SettingWords.OfClass(setting.Vehicle);
        string beyond = setting.PresentIsBeyond
            ? $"Present setting {SettingWords.Present(setting, units)}, beyond the safe limit: the rear can lock first and spin it."
            : setting.IsBuiltBeyond ? SettingWords.AsBuilt + "." : "";
        string doubts = InBoth.Only(string.Join(' ', setting.Doubts), units == UnitSystem.Us);
        return ofClass.Length + beyond.Length + doubts.Length == 0 ? null : $"{doubts} {beyond} {ofClass}".Trim();
    }

    private static CardRow Row(string[] cells, Banded<BalanceModel> models, bool isOwn, bool isBeyond, UnitSystem units) => new(
        [
            .. isBeyond ? [.. cells[..^1], cells[^1] + CardRow.BeyondMark] : cells,
            .. Rates(models.Middle.Vehicle).SelectMany(rate => new[]
            {
                models.Text(model => Line(model.AtRate(rate)?.LinePressures.Front, units)),
                models.Text(model => Line(model.AtRate(rate)?.LinePressures.Rear, units)),
            }),
            models.Text(model => LockText(BestRoad(model)).Replace(" g", "", StringComparison.Ordinal)),
        ],
        isOwn,
        isBeyond,
        BestRoad(models.Middle)?.First == Axle.Rear);

    private static LockUp? BestRoad(BalanceModel model) => model.FirstLockUp(model.Vehicle.Conditions.BestAdhesion);

    private static string Line(Pressure? pressure, UnitSystem units) =>
        pressure is { } line ? Measure.LinePressure.In(units).Number(line.Pascals) : "–";

    // The recommended setting and others around it; what cannot be known is to be filled in by hand.
    private static (IReadOnlyList<string> Columns, IReadOnlyList<(string[], Vehicle)> Rows) Settings(Vehicle vehicle, UnitSystem units)
    {
        string unit = Measure.LinePressure.In(units).Symbol;
        if (vehicle.Hydraulics.RearProportioningValve is { } valve)
        {
            Vehicle At(Pressure knee) => IsOwn(knee) ? vehicle : vehicle.WithRearKnee(knee, valve.Slope);
            bool IsOwn(Pressure knee) => knee.Equals(valve.Knee, Pressure.FromPascals(1));
            string Cell(Pressure knee) => SettingWords.Digits(knee, units, down: IsOwn(knee));
            return valve.Adjustment is { } adjuster
                ? ([$"Turns in from fully out", $"Knee [{unit}]"],
                    [.. TurnsOf(adjuster, valve.Knee)
                        .Select(turns => (Turns: Turns(turns), Knee: adjuster.KneeAt(turns)))
                        .Select(row => (new[] { row.Turns, Cell(row.Knee) }, At(row.Knee)))])
                : ([$"Turns (fill in)", $"Knee [{unit}]"],
                    [.. Knees(valve, units).Select(knee => (new[] { "", Cell(knee) }, At(knee)))]);
        }

        return vehicle.Hydraulics.Split is BalanceBarSplit bar
            ? (["Bar position (fill in)", "Front share [%]"],
                [.. Enumerable.Range(-4, 9).Select(i => Math.Round(bar.FrontForceShare + 0.02 * i, 6))
                    .Where(share => share is >= 0.2 and <= 0.8)
                    .Select(share => (new[] { "", Share(share) }, Math.Abs(share - bar.FrontForceShare) < 1e-6
                        ? vehicle : vehicle.WithFrontForceShare(share)))])
            : (["Setting"], [(new[] { "as built" }, vehicle)]);
    }

    private static IReadOnlyList<double> TurnsOf(KneeAdjustment adjuster, Pressure own)
    {
        double step = adjuster.Turns <= 4 ? 0.5 : adjuster.Turns <= 8 ? 1 : Math.Ceiling(adjuster.Turns / 8);
        double end = adjuster.Turns;
        double[] turns = [.. Enumerable.Range(0, (int)Math.Ceiling(end / step - 0.05)).Select(i => i * step), end];
        return adjuster.TurnsFor(own) is not { } at ? turns
            : [.. turns.Where(turn => Math.Abs(turn - at) >= 0.05 || turn == end).Append(at).Distinct().Order()];
    }

    /// <summary>The valve's own knee and four round ones on either side.</summary>
    private static IEnumerable<Pressure> Knees(ProportioningValve valve, UnitSystem units)
    {
        DisplayUnit unit = Measure.LinePressure.In(units);
        double step = units == UnitSystem.Us ? 50 : 4;
        return Enumerable.Range(-4, 9)
            .Select(i => i == 0 ? valve.Knee
                : Pressure.FromPascals(unit.ToSi((Math.Round(unit.FromSi(valve.Knee.Pascals) / step) + i) * step)))
            .Where(knee => knee.Pascals > 0);
    }

    private static IEnumerable<(string, string)> PedalLines(ControlForce control, UnitSystem units)
    {
        var bare = new ControlForce(control.Model, control.Control with { Assist = control.Control.Assist.WithoutEnergy() });
        bool assisted = control.Control.Assist is not NoAssist;
        double[] rates = [0.3, .. Rates(control.Model.Vehicle)];
        foreach (double rate in rates)
        {
            yield return (assisted ? $"{G(rate)}, with / without assist"
                : $"Pedal at {G(rate)}", assisted
                ? $"{Foot(control, rate, units, bare: true)} / {Foot(bare, rate, units)}" : Foot(control, rate, units));
        }

        if (control.AtRate(rates[^1]) is { } hard && control.TravelAt(hard.Balance.MasterPressure) is { } travel)
        {
            string left = $"Pedal left to the floor at {G(rates[^1])}"
                + (travel.NotCounted.IsEmpty ? "" : $", at most: {string.Join(", ", travel.NotCounted)} not counted");
            yield return (left, travel.LeftToFloor is { } room ? Measure.Travel.Text(room, units) : "none: not reached");
        }

        if (assisted && EngineOffPresses.Of(control) is { IsDescribed: true } presses)
        {
            yield return (
                $"Engine off: presses at {G(presses.BrakingRate)} within {Measure.ControlForce.Text(presses.GreatestPedalForce, units)}",
                presses.Count is { } count ? Invariant.Text($"{count}") : "any number");
        }
    }

    private static string Foot(ControlForce control, double rate, UnitSystem units, bool bare = false) =>
        control.AtRate(rate) is not { } at
            ? "–" : bare ? Measure.ControlForce.In(units).Number(at.PedalForce.Newtons) : Measure.ControlForce.Text(at.PedalForce, units);

    private static string LockText(LockUp? lockUp) =>
        lockUp is null ? "none" : Invariant.Text(
            $"{(lockUp.First switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" })} {lockUp.At.BrakingRate:0.00} g");

    private static string Turns(double turns) => turns.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture);

    private static string Share(double share) => (100 * share).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture);

    private static string G(double rate) => rate.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture) + "\u00a0g";
}

/// <summary>A setting and what it gives.</summary>
/// <param name="Cells">One text a column.</param>
/// <param name="IsOwn">Whether it is the setting to go back to.</param>
/// <param name="IsBeyond">Whether it lies beyond the safe limit.</param>
/// <param name="RearFirst">Whether the rear axle locks first on the road of the table.</param>
public sealed record CardRow(IReadOnlyList<string> Cells, bool IsOwn, bool IsBeyond, bool RearFirst)
{
    internal const string BeyondMark = "\u00a0†";
}
