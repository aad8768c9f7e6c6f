using System.Globalization;
using BrakeBalance.Assist;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Rules;
using BrakeBalance.Summaries;
using Spectre.Console;
using UnitsNet;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>Pedal, assist, travel and failures as tables for a person.</summary>
/// <param name="units">Units of what is shown.</param>
/// <param name="console">Where it is written.</param>
internal sealed class ControlTables(SummaryUnits units, IAnsiConsole console)
{
    private string Short => units.Us ? "in" : "mm";

    private string Distance => units.Us ? "ft" : "m";

    public void Write(ControlSummary summary)
    {
        foreach (ControlLoadCaseSummary part in summary.LoadCases)
        {
            Write(part);
        }

        console.WriteLine("");
        console.WriteLine("Rules on stopping distance (informative, no type approval)");
        Table rules = SummaryTables.Table("Rule", "Outcome", "Finding", "Source");
        foreach (RuleVerdict verdict in summary.Verdicts)
        {
            SummaryTables.Row(rules, verdict.Title, SummaryTables.Outcome(verdict.Outcome), verdict.Explanation, verdict.Source);
        }

        console.Write(rules);
        foreach (string notice in summary.Notices)
        {
            console.WriteLine($"Notice: {notice}");
        }
    }

    private void Write(ControlLoadCaseSummary part)
    {
        console.WriteLine("");
        console.WriteLine($"{part.LoadCase.Name}: foot and line pressure");
        string force = $" [{units.Force}]";
        string pressure = $" [{units.Pressure}]";
        Table rates = SummaryTables.Table("Braking rate", "Pedal force" + force, "without assist" + force, "Line pressure front" + pressure, "rear" + pressure, $"Pedal travel [{Short}]", $"left [{Short}]", $"left, drums hot [{Short}]");
        foreach (ControlRateSummary rate in part.Rates)
        {
            SummaryTables.Row(
                rates, Rate(rate.BrakingRate), Force(rate.Point?.PedalForce), Force(rate.WithoutAssist), Pressure(rate.Point?.Balance.LinePressures.Front),
                Pressure(rate.Point?.Balance.LinePressures.Rear), Travel(rate.Travel?.Pad), Left(rate.Travel), Left(rate.TravelDrumsHot));
        }

        console.Write(SummaryTables.RightAligned(rates));
        foreach (ControlRateSummary rate in part.Rates.Where(rate => rate.Remark is not null))
        {
            console.WriteLine($"Braking rate {Rate(rate.BrakingRate)}: {rate.Remark}");
        }

        console.WriteLine(part.RunOut is { } runOut
            ? $"Run-out of the assist: pedal force {Force(runOut.PedalForce)} {units.Force}, braking rate {Rate(runOut.Balance.BrakingRate)}"
            : "Run-out of the assist: none within the pressure considered");
        Table gauges = SummaryTables.Table("Pedal force" + force, "At the cylinder front" + pressure, "rear" + pressure, "At the brakes front" + pressure, "rear" + pressure);
        foreach (ControlForcePoint point in part.Gauges)
        {
            SummaryTables.Row(
                gauges, Force(point.PedalForce), Pressure(point.OutletPressures.Front), Pressure(point.OutletPressures.Rear),
                Pressure(point.Balance.LinePressures.Front), Pressure(point.Balance.LinePressures.Rear));
        }

        console.Write(SummaryTables.RightAligned(gauges));
        Write(part.EngineOff);

        Table failures = SummaryTables.Table(
            "Case", "Pedal force for 0.25" + force, "Rate at 500 N", "Bound by", "Locks first", $"Stop from 100 km/h [{Distance}]", $"with 1 s reaction [{Distance}]");
        foreach (FailureOutcome outcome in part.Failures)
        {
            SummaryTables.Row(
                failures, outcome.Case.Name, outcome.WhyNot ?? Force(outcome.PedalForceForRate), Rate(outcome.RateAtForce), outcome.Bound.ToString().ToLowerInvariant(),
                outcome.LockUpRate is null ? "none" : outcome.FirstToLock switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both together" },
                Road(outcome.Distance?.FromFirstTouch), Road(outcome.Distance?.Whole));
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
        console.WriteLine($"Engine off, presses in a row at a braking rate of {rate} with at most {At(presses.GreatestPedalForce)}: {count}");
        foreach ((ReserveApplication application, Force? needed) in presses.Applications.Zip(presses.PedalForces).TakeWhile(p => p.First.MaximumAssist > UnitsNet.Force.Zero))
        {
            console.WriteLine($"  press {application.Number}: {At(needed)}; assist {Rate(application.ShareOfFirst)} of the first");
        }

        console.WriteLine($"  store spent: {At(presses.WithoutAssist)}");
    }

    private string Force(Force? force) => force is { } value ? units.Of(value).ToString("0", CultureInfo.InvariantCulture) : "–";

    private string Pressure(Pressure? pressure) => pressure is { } value ? units.Of(value).ToString(units.Us ? "0" : "0.0", CultureInfo.InvariantCulture) : "–";

    private string Travel(Length? length) => length is { } value ? (units.Us ? value.Inches : value.Millimeters).ToString(units.Us ? "0.0" : "0", CultureInfo.InvariantCulture) : "–";

    private string Left(PedalTravel? travel) => travel is { Reaches: false } ? "none" : Travel(travel?.LeftToFloor);

    private string Road(Length? length) => length is { } value ? (units.Us ? value.Feet : value.Meters).ToString("0", CultureInfo.InvariantCulture) : "–";

    private static string Rate(double rate) => rate.ToString("0.00", CultureInfo.InvariantCulture);
}
