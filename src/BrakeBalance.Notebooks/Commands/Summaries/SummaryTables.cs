using BrakeBalance.Charts.Outputs;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

internal sealed class SummaryTables(ReportUnits units, IAnsiConsole console)
{
    private string _fraction = "0.000";

    /// <summary>The answer first, then what it rests on.</summary>
    /// <param name="summary">The summary.</param>
    /// <param name="all">Whether every table is shown, or only those that most readers want.</param>
    public void Write(BalanceSummary summary, bool all)
    {
        _fraction = summary.Vehicle.Uncertainty is null ? "0.000" : "0.00";

        // What is written last is worked out while the first is written.
        Task<Banded<BalanceSummary>> later = Task.Run(summary.Bands);
        Task<Banded<ControlSummary>?> foot = later.ContinueWith(bands => bands.Result.Select(of => of.Control()), TaskScheduler.Default);
        _ = Task.Run(() => (summary.Setting.Findings, summary.Setting.Costs));
        Line(summary.Vehicle.Name);
        SettingOutput.WriteAnswer(console, summary.Setting, units.System);
        if (summary.Vehicle.Note.Length > 0)
        {
            Line("");
            SettingOutput.Labelled(console, "Note", summary.Vehicle.Note);
        }

        SettingOutput.WriteDetails(console, summary.Setting, units.System);
        Banded<BalanceSummary> bands = later.GetAwaiter().GetResult();
        if (bands.HasBand)
        {
            Line("");
            SettingOutput.Labelled(console, "Ranges", BandText.LegendOf(summary.Vehicle));
        }

        for (int i = 0; i < summary.LoadCases.Count; i++)
        {
            Write(bands.Select(of => of.LoadCases.ElementAtOrDefault(i))!, all);
        }

        Line("");
        Line("Rule checks (informative, no type approval; engine disconnected)");
        var rules = new TextTable("Rule", "Outcome", "Margin", "Where it is least", "Source");
        for (int i = 0; i < summary.Verdicts.Count; i++)
        {
            RuleVerdict verdict = summary.Verdicts[i];
            Banded<RuleVerdict> of = bands.Select(car => car.Verdicts.ElementAtOrDefault(i))!;
            rules.Row(verdict.Title, of.Text(v => Outcome(v.Outcome)), of.Text(v => Fraction(v.Margin)), verdict.At, verdict.Source);
        }

        rules.Write(console);
        if (foot.GetAwaiter().GetResult() is { } control)
        {
            new ControlTables(units, console).Write(control, all);
        }

        foreach (string notice in BandText.Each(
            summary.Notices, bands.Drawn.Select(of => of.Notices), bands.OfClass.Select(of => of.Notices)))
        {
            SettingOutput.Labelled(console, "Notice", InBoth.Only(notice, units.Us));
        }

        if (!all)
        {
            Line("");
            Line("More tables: --all. For scripts: --json. Pressures are gauge.");
        }
    }

    private void Write(Banded<LoadCaseSummary> part, bool all)
    {
        Line("");
        SettingOutput.Labelled(console, part.Middle.LoadCase.Name, part.Text(of =>
            $"{NumberText.Of(Math.Round(units.Of(of.LoadCase.Mass)))} {units.Mass}; "
            + $"unbraked {units.Text(of.StaticAxleLoads.Front)} {units.Force} front, {units.Text(of.StaticAxleLoads.Rear)} "
            + $"{units.Force} rear; rear wheels leave the road at a deceleration of {Fraction(of.RearLiftOffRate)} g"));
        string force = $"[{units.Force}]";
        string pressure = $"[{units.Pressure}]";
        var rates = new TextTable(
            "Deceleration\n[g]", "Axle load\nfront " + force, "\nrear " + force, "Line pressure\nfront " + pressure, "\nrear " + pressure);
        Rows(rates, part, of => of.Rates, rate => [
            Fraction(rate.BrakingRate), units.Text(rate.NormalReactions.Front), units.Text(rate.NormalReactions.Rear),
            units.Text(rate.Installed?.LinePressures.Front), units.Text(rate.Installed?.LinePressures.Rear)]);
        rates.Write(console);
        if (all)
        {
            var forces = new TextTable(
                "Deceleration\n[g]", "Ideal force\nfront " + force, "\nrear " + force, "Installed\nfront " + force, "\nrear " + force);
            Rows(forces, part, of => of.Rates, rate => [
                Fraction(rate.BrakingRate), units.Text(rate.IdealForces.Front), units.Text(rate.IdealForces.Rear),
                units.Text(rate.Installed?.BrakingForces.Front), units.Text(rate.Installed?.BrakingForces.Rear)]);
            forces.Write(console);
        }

        var surfaces = new TextTable(
            "Adhesion", "Locks\nfirst", "Deceleration\n[g]", "Front line\n" + pressure, "Rear line\n" + pressure, "Braking\nefficiency");
        Rows(surfaces, part, of => of.LockUps, surface => [
            Fraction(surface.Adhesion), LocksFirst(surface.LockUp), Fraction(surface.LockUp?.At.BrakingRate),
            units.Text(surface.LockUp?.At.LinePressures.Front), units.Text(surface.LockUp?.At.LinePressures.Rear),
            Fraction(surface.LockUp?.Efficiency)]);
        surfaces.Write(console);
        if (all)
        {
            var used = new TextTable("Adhesion", "Adhesion used front", "rear");
            Rows(used, part, of => of.LockUps, surface => [
                Fraction(surface.Adhesion), Fraction(surface.LockUp?.At.AdhesionUtilisation.Front),
                Fraction(surface.LockUp?.At.AdhesionUtilisation.Rear)]);
            used.Write(console);
            Points("Valve knee", part, of => of.Knees);
            Points("Installed meets ideal distribution", part, of => of.IdealCrossings);
        }
    }

    private void Points(string title, Banded<LoadCaseSummary> part, Func<LoadCaseSummary, IReadOnlyList<BalancePoint>> of)
    {
        for (int i = 0; i < of(part.Middle).Count; i++)
        {
            Line(part.Select(load => of(load).ElementAtOrDefault(i))!.Text(point =>
                $"{title}: {units.Text(point.MasterPressure)} {units.Pressure}, "
                + $"front force {units.Text(point.BrakingForces.Front)} {units.Force}, deceleration {Fraction(point.BrakingRate)} g"));
        }

        if (of(part.Middle).Count == 0)
        {
            Line($"{title}: none");
        }
    }

    /// <summary>A row for each item that the middle has; every number with its band.</summary>
    internal static void Rows<TPart, TItem>(TextTable table, Banded<TPart> part, Func<TPart, IReadOnlyList<TItem>> items,
        Func<TItem, string[]> cells) where TItem : class
    {
        for (int i = 0; i < items(part.Middle).Count; i++)
        {
            Banded<string[]> row = part.Select(of => items(of).ElementAtOrDefault(i))!.Select(cells)!;
            table.Row([.. row.Middle.Select((_, column) => row.Text(of => of[column]).Replace(" (", "\n(", StringComparison.Ordinal))]);
        }
    }

    private void Line(string text) => console.WriteLine(text);

    private static string LocksFirst(LockUp? lockUp) => lockUp switch
    {
        null => "none",
        { First: Axle.Front } => "front",
        { First: Axle.Rear } => "REAR",
        _ => "both together",
    };

    internal static string Outcome(RuleOutcome outcome) => outcome switch
    {
        RuleOutcome.Pass => "pass",
        RuleOutcome.Fail => "FAIL",
        _ => "not applicable",
    };

    // What has a band is worth two decimals; three that are rounded once more would not be the two of other places.
    private string Fraction(double? fraction) =>
        fraction is { } value && double.IsFinite(value) ? value.ToString(_fraction, CultureInfo.InvariantCulture) : "–";
}
