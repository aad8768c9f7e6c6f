using BrakeBalance.Charts;
using BrakeBalance.Charts.Outputs;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>A balance summary as tables for a person.</summary>
/// <param name="units">Units of what is shown.</param>
/// <param name="console">Where it is written.</param>
internal sealed class SummaryTables(SummaryUnits units, IAnsiConsole console)
{
    /// <summary>The answer first, then what it rests on.</summary>
    /// <param name="summary">The summary.</param>
    /// <param name="all">Whether every table is shown, or only those that most readers want.</param>
    public void Write(BalanceSummary summary, bool all)
    {
        Line(summary.Vehicle.Name);
        SettingOutput.WriteAnswer(console, summary.Setting, units.System);
        if (summary.Vehicle.Note.Length > 0)
        {
            Line("");
            SettingOutput.Labelled(console, "Note", summary.Vehicle.Note);
        }

        SettingOutput.WriteDetails(console, summary.Setting, units.System);
        foreach (LoadCaseSummary part in summary.LoadCases)
        {
            Write(part, all);
        }

        Line("");
        Line("Rule checks (informative, no type approval)");
        Table rules = Table("Rule", "Outcome", "Margin", "Where it is least", "Source");
        foreach (RuleVerdict verdict in summary.Verdicts)
        {
            Row(rules, verdict.Title, Outcome(verdict.Outcome), Fraction(verdict.Margin), verdict.At, verdict.Source);
        }

        console.Write(rules);
        if (summary.Control() is { } control)
        {
            new ControlTables(units, console).Write(control, all);
        }

        foreach (string notice in summary.Notices)
        {
            SettingOutput.Labelled(console, "Notice", notice);
        }

        if (!all)
        {
            Line("");
            Line("More tables: --all. For scripts: --json. Pressures are gauge.");
        }
    }

    private void Write(LoadCaseSummary part, bool all)
    {
        Line("");
        SettingOutput.Labelled(console, part.LoadCase.Name,
            $"{NumberText.Of(Math.Round(units.Of(part.LoadCase.Mass)))} {units.Mass}; "
                + $"unbraked {Force(part.StaticAxleLoads.Front)} {units.Force} front, "
            + $"{Force(part.StaticAxleLoads.Rear)} {units.Force} rear; "
            + $"rear wheels leave the road at a deceleration of {Fraction(part.RearLiftOffRate)} g");
        string force = $"[{units.Force}]";
        string pressure = $"[{units.Pressure}]";
        Table rates = Table(
            "Deceleration\n[g]", "Axle load\nfront " + force, "\nrear " + force, "Line pressure\nfront " + pressure, "\nrear " + pressure);
        foreach (RateSummary rate in part.Rates)
        {
            Row(
                rates, Fraction(rate.BrakingRate), Force(rate.NormalReactions.Front), Force(rate.NormalReactions.Rear),
                Pressure(rate.Installed?.LinePressures.Front), Pressure(rate.Installed?.LinePressures.Rear));
        }

        console.Write(RightAligned(rates));
        if (all)
        {
            Table forces = Table(
                "Deceleration\n[g]", "Ideal force\nfront " + force, "\nrear " + force, "Installed\nfront " + force, "\nrear " + force);
            foreach (RateSummary rate in part.Rates)
            {
                PerAxle<UnitsNet.Force>? installed = rate.Installed?.BrakingForces;
                Row(
                    forces, Fraction(rate.BrakingRate), Force(rate.IdealForces.Front), Force(rate.IdealForces.Rear),
                        Force(installed?.Front), Force(installed?.Rear));
            }

            console.Write(RightAligned(forces));
        }

        Table surfaces = Table(
            "Adhesion", "Locks\nfirst", "Deceleration\n[g]", "Front line\n" + pressure, "Rear line\n" + pressure, "Braking\nefficiency");
        foreach (SurfaceSummary surface in part.LockUps)
        {
            LockUp? lockUp = surface.LockUp;
            Row(
                surfaces, Fraction(surface.Adhesion), LocksFirst(lockUp), Fraction(lockUp?.At.BrakingRate),
                    Pressure(lockUp?.At.LinePressures.Front),
                Pressure(lockUp?.At.LinePressures.Rear), Fraction(lockUp?.Efficiency));
        }

        console.Write(RightAligned(surfaces));
        if (all)
        {
            Table used = Table("Adhesion", "Adhesion used front", "rear");
            foreach (SurfaceSummary surface in part.LockUps)
            {
                PerAxle<double?>? at = surface.LockUp?.At.AdhesionUtilisation;
                Row(used, Fraction(surface.Adhesion), Fraction(at?.Front), Fraction(at?.Rear));
            }

            console.Write(RightAligned(used));
            Points("Valve knee", part.Knees);
            Points("Installed meets ideal distribution", part.IdealCrossings);
        }
    }

    private void Points(string title, IReadOnlyList<BalancePoint> points)
    {
        foreach (BalancePoint point in points)
        {
            Line($"{title}: {Pressure(point.MasterPressure)} {units.Pressure}, "
                + $"front force {Force(point.BrakingForces.Front)} {units.Force}, deceleration {Fraction(point.BrakingRate)} g");
        }

        if (points.Count == 0)
        {
            Line($"{title}: none");
        }
    }

    private void Line(string text) => console.WriteLine(text);

    /// <summary>Writes a table under its title and caption.</summary>
    internal static void Write(IAnsiConsole console, NamedTable named)
    {
        console.WriteLine("");
        console.WriteLine(named.Title);
        if (named.Caption.Length > 0)
        {
            console.WriteLine(named.Caption);
        }

        Table table = Table([.. named.Table.Columns]);
        for (long row = 0; row < named.Table.Frame.Rows.Count; row++)
        {
            Row(table, [.. named.Table.Row(row)]);
        }

        console.Write(table);
    }

    internal static Table Table(params string[] headings)
    {
        var table = new Table { Border = TableBorder.Simple };
        foreach (string heading in headings)
        {
            table.AddColumn(new TableColumn(Markup.Escape(heading)));
        }

        return table;
    }

    internal static Table RightAligned(Table table)
    {
        foreach (TableColumn column in table.Columns)
        {
            column.RightAligned();
        }

        return table;
    }

    internal static void Row(Table table, params string[] cells) => table.AddRow([.. cells.Select(Markup.Escape)]);

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

    private string Force(UnitsNet.Force? force) => force is { } value ? units.Of(value).ToString("0", CultureInfo.InvariantCulture) : "–";

    private string Pressure(UnitsNet.Pressure? pressure) =>
        pressure is { } value ? units.Of(value).ToString(units.Us ? "0" : "0.0", CultureInfo.InvariantCulture) : "–";

    private static string Fraction(double? fraction) =>
        fraction is { } value && double.IsFinite(value) ? value.ToString("0.000", CultureInfo.InvariantCulture) : "–";
}
