using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>Pedal, assist, travel and failures as tables for a person.</summary>
/// <param name="units">Units of what is shown.</param>
/// <param name="console">Where it is written.</param>
internal sealed class ControlTables(SummaryUnits units, IAnsiConsole console)
{
    private string Short => units.Us ? "in" : "mm";

    private string Distance => units.Us ? "ft" : "m";

    public void Write(ControlSummary summary, bool all)
    {
        foreach (ControlLoadCaseSummary part in summary.LoadCases)
        {
            Write(part, all);
        }

        console.WriteLine("");
        console.WriteLine("Rules on stopping distance (informative, no type approval)");
        Table rules = SummaryTables.Table("Rule", "Outcome", "Finding", "Source");
        foreach (RuleVerdict verdict in summary.Verdicts)
        {
            SummaryTables.Row(rules, verdict.Title, SummaryTables.Outcome(verdict.Outcome), verdict.Explanation, verdict.Source);
        }

        console.Write(rules);
        foreach (string notice in summary.Notices.Concat(
            summary.Drags.Select(cause => cause.Words(units.System))))
        {
            SettingOutput.Labelled(console, "Notice", notice);
        }
    }

    private void Write(ControlLoadCaseSummary part, bool all)
    {
        console.WriteLine("");
        console.WriteLine($"{part.LoadCase.Name}: foot and line pressure");
        string force = $" [{units.Force}]";
        string pressure = $" [{units.Pressure}]";
        bool hot = part.Rates.Any(rate => rate.TravelDrumsHot is not null);
        string[] headings = ["Deceleration [g]", "Pedal force" + force, "no assist"
            + force, $"Pedal travel [{Short}]", $"left [{Short}]", $"left, drums hot [{Short}]"];
        Table rates = SummaryTables.Table(headings[..(hot ? 6 : 5)]);
        foreach (ControlRateSummary rate in part.Rates)
        {
            string[] cells = [Rate(rate.BrakingRate), Force(rate.Point?.PedalForce), Force(rate.WithoutAssist), Travel(rate.Travel?.Pad),
                Left(rate.Travel), Left(rate.TravelDrumsHot)];
            SummaryTables.Row(rates, cells[..(hot ? 6 : 5)]);
        }

        console.Write(SummaryTables.RightAligned(rates));
        foreach (ControlRateSummary rate in part.Rates.Where(rate => rate.Remark is not null))
        {
            SettingOutput.Labelled(console, $"At {Rate(rate.BrakingRate)} g", rate.Remark!);
        }

        console.WriteLine(part.RunOut is { } runOut
            ? $"Run-out of the assist: pedal force {Force(runOut.PedalForce)} {units.Force}, "
                + $"deceleration {Rate(runOut.Balance.BrakingRate)} g"
            : "Run-out of the assist: none within the pressure considered");
        if (all)
        {
            Table gauges = SummaryTables.Table("Pedal force" + force, "At the cylinder front" + pressure, "rear"
                + pressure, "At the brakes front" + pressure, "rear" + pressure);
            foreach (ControlForcePoint point in part.Gauges)
            {
                SummaryTables.Row(
                    gauges, Force(point.PedalForce), Pressure(point.OutletPressures.Front), Pressure(point.OutletPressures.Rear),
                    Pressure(point.Balance.LinePressures.Front), Pressure(point.Balance.LinePressures.Rear));
            }

            console.Write(SummaryTables.RightAligned(gauges));
        }

        Write(part.EngineOff);

        string foot = units.Us ? "112 lbf" : "500 N";
        string speed = units.Us ? "62 mph" : "100 km/h";
        Table failures = SummaryTables.Table(
            "Case", "Pedal force for 0.25 g"
                + force, $"Deceleration at {foot} [g]", "Bound by", "Locks first", $"Stop from {speed} [{Distance}]");
        foreach (FailureOutcome outcome in part.Failures)
        {
            SummaryTables.Row(
                failures, outcome.Case.Name, outcome.WhyNot
                    ?? Force(outcome.PedalForceForRate), Rate(outcome.RateAtForce), outcome.Bound.ToString().ToLowerInvariant(),
                outcome.LockUpRate is null
                    ? "none" : outcome.FirstToLock switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" },
                Road(outcome.Distance?.FromFirstTouch));
        }

        console.Write(failures);
    }

    private void Write(EngineOffPresses presses)
    {
        if (!presses.IsDescribed)
        {
            console.WriteLine("Engine off: the file does not give the booster's vacuumChamber, so the presses left are not told.");
            return;
        }

        string At(Force? force) => force is null ? "not reached" : $"{Force(force)} {units.Force}";
        string rate = Rate(presses.BrakingRate);
        string count = presses.Count is { } counted ? counted.ToString(CultureInfo.InvariantCulture) : "any number, even with no assist";
        console.WriteLine($"Engine off, presses in a row at {rate} g with at most {At(presses.GreatestPedalForce)}: {count}");
        foreach ((ReserveApplication application, Force? needed) in presses.Applications.Zip(presses.PedalForces)
            .TakeWhile(p => p.First.MaximumAssist > UnitsNet.Force.Zero))
        {
            console.WriteLine($"  press {application.Number}: {At(needed)}; assist {Rate(application.ShareOfFirst)} of the first");
        }

        console.WriteLine($"  store spent: {At(presses.WithoutAssist)}");
    }

    private string Force(Force? force) => force is { } value ? units.Of(value).ToString("0", CultureInfo.InvariantCulture) : "–";

    private string Pressure(Pressure? pressure) =>
        pressure is { } value ? units.Of(value).ToString(units.Us ? "0" : "0.0", CultureInfo.InvariantCulture) : "–";

    private string Travel(Length? length) =>
        length is { } value ? (units.Us ? value.Inches : value.Millimeters).ToString(units.Us ? "0.0" : "0", CultureInfo.InvariantCulture)
        : "–";

    private string Left(PedalTravel? travel) => travel is { Reaches: false } ? "none" : Travel(travel?.LeftToFloor);

    private string Road(Length? length) =>
        length is { } value ? (units.Us ? value.Feet : value.Meters).ToString("0", CultureInfo.InvariantCulture) : "–";

    private static string Rate(double rate) => rate.ToString("0.00", CultureInfo.InvariantCulture);
}
