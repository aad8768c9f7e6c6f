using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>Pedal, assist, travel and failures as tables for a person.</summary>
internal sealed class ControlTables(ReportUnits units, IAnsiConsole console)
{
    public void Write(Banded<ControlSummary> bands, bool all)
    {
        ControlSummary summary = bands.Middle;
        for (int i = 0; i < summary.LoadCases.Count; i++)
        {
            Write(bands.Select(of => of.LoadCases.ElementAtOrDefault(i))!, all);
        }

        console.WriteLine("");
        console.WriteLine("Rules on stopping distance (informative, no type approval)");
        var rules = new TextTable("Rule", "Outcome", "Finding", "Source");
        for (int i = 0; i < summary.Verdicts.Count; i++)
        {
            Banded<RuleVerdict> verdict = bands.Select(of => of.Verdicts.ElementAtOrDefault(i)?.In(units.System))!;
            rules.Row(verdict.Middle.Title, verdict.Text(v => SummaryTables.Outcome(v.Outcome)),
                verdict.Text(v => v.Explanation), verdict.Middle.Source);
        }

        rules.Write(console);
        foreach (string notice in BandText.Each(Notices(summary), bands.Drawn.Select(Notices), bands.OfClass.Select(Notices)))
        {
            SettingOutput.Labelled(console, "Notice", InBoth.Only(notice, units.Us));
        }
    }

    private IReadOnlyList<string> Notices(ControlSummary summary) =>
        [.. summary.Notices, .. summary.Drags.Select(cause => cause.Words(units.System))];

    private void Write(Banded<ControlLoadCaseSummary> part, bool all)
    {
        console.WriteLine("");
        console.WriteLine($"{part.Middle.LoadCase.Name}: foot and line pressure");
        string force = $" [{units.Force}]";
        string pressure = $" [{units.Pressure}]";
        bool hot = part.Middle.Rates.Any(rate => rate.TravelDrumsHot is not null);
        string[] headings = ["Deceleration [g]", "Pedal force" + force, "no assist"
            + force, $"Pedal travel [{units.Travel}]", $"left [{units.Travel}]", $"left, drums hot [{units.Travel}]"];
        var rates = new TextTable(headings[..(hot ? 6 : 5)]);
        SummaryTables.Rows(rates, part, of => of.Rates, rate =>
        {
            string[] cells = [Rate(rate.BrakingRate), units.Text(rate.Point?.PedalForce), units.Text(rate.WithoutAssist),
                Travel(rate.Travel?.Pad), Left(rate.Travel), Left(rate.TravelDrumsHot)];
            return cells[..(hot ? 6 : 5)];
        });
        rates.Write(console);
        foreach (ControlRateSummary rate in part.Middle.Rates.Where(rate => rate.Remark is not null))
        {
            SettingOutput.Labelled(console, $"At {Rate(rate.BrakingRate)} g", rate.Remark!);
        }

        bool assisted = part.Middle.Failures.Any(outcome => outcome.Case.AssistLost);
        console.WriteLine(part.Text(of => !assisted ? "No assist: nothing runs out, and nothing is lost with the engine off"
            : of.RunOut is { } runOut
            ? $"Run-out of the assist: pedal force {units.Text(runOut.PedalForce)} {units.Force}, deceleration "
                + $"{Rate(runOut.Balance.BrakingRate)} g"
            : "Run-out of the assist: none within the pressure considered"));
        if (all)
        {
            var gauges = new TextTable("Pedal force" + force, "At the cylinder front" + pressure, "rear"
                + pressure, "At the brakes front" + pressure, "rear" + pressure);
            SummaryTables.Rows(gauges, part, of => of.Gauges, point => [
                units.Text(point.PedalForce), units.Text(point.OutletPressures.Front), units.Text(point.OutletPressures.Rear),
                units.Text(point.Balance.LinePressures.Front), units.Text(point.Balance.LinePressures.Rear)]);
            gauges.Write(console);
        }

        if (assisted)
        {
            Write(part.Select(of => of.EngineOff)!);
        }

        string foot = units.Us ? "112 lbf" : "500 N";
        string speed = units.Us ? "62 mph" : "100 km/h";
        var failures = new TextTable(
            "Case", "Pedal force for 0.25 g"
                + force, $"Deceleration at {foot} [g]", "Bound by", "Locks first", $"Stop from {speed} [{units.Distance}]");
        SummaryTables.Rows(failures, part, of => of.Failures, outcome => [
            outcome.Case.Name, outcome.WhyNot ?? units.Text(outcome.PedalForceForRate), Rate(outcome.RateAtForce),
            outcome.Bound.ToString().ToLowerInvariant(),
            outcome.LockUpRate is null ? "none" : outcome.FirstToLock switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" },
            Road(outcome.Distance?.FromFirstTouch)]);
        failures.Write(console);
    }

    private void Write(Banded<EngineOffPresses> of)
    {
        EngineOffPresses presses = of.Middle;
        if (!presses.IsDescribed)
        {
            console.WriteLine("Engine off: the file does not give the booster's vacuumChamber, so the presses left are not told.");
            return;
        }

        string At(Force? force) => force is null ? "not reached" : $"{units.Text(force)} {units.Force}";
        string rate = Rate(presses.BrakingRate);
        string Count(EngineOffPresses p) =>
            p.Count is { } counted ? counted.ToString(CultureInfo.InvariantCulture) : "any number, even with no assist";
        console.WriteLine($"Engine off, presses in a row at {rate} g with at most {At(presses.GreatestPedalForce)}: {of.Text(Count)}");
        string[] Presses(EngineOffPresses p) => [.. p.Applications.Zip(p.PedalForces)
            .TakeWhile(press => press.First.MaximumAssist > Force.Zero)
            .Select(press => $"{At(press.Second)}; assist {Rate(press.First.ShareOfFirst)} of the first")];
        for (int i = 0; i < Presses(presses).Length; i++)
        {
            console.WriteLine($"  press {i + 1}: {of.Select(p => Presses(p).ElementAtOrDefault(i))!.Text(press => press)}");
        }

        console.WriteLine($"  store spent: {of.Text(p => At(p.WithoutAssist))}");
    }

    private string Travel(Length? length) =>
        units.OfTravel(length)?.ToString(units.Us ? "0.0" : "0", CultureInfo.InvariantCulture) ?? "–";

    private string Left(PedalTravel? travel) => travel is { Reaches: false } ? "none" : Travel(travel?.LeftToFloor);

    private string Road(Length? length) =>
        length is { } known ? units.OfDistance(known).ToString("0", CultureInfo.InvariantCulture) : "–";

    private static string Rate(double rate) => rate.ToString("0.00", CultureInfo.InvariantCulture);
}
