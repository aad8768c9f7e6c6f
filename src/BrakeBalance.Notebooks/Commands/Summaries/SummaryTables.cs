using System.Globalization;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Outputs;
using BrakeBalance.Rules;
using BrakeBalance.Summaries;
using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>A balance summary as tables for a person.</summary>
/// <param name="units">Units of what is shown.</param>
/// <param name="console">Where it is written.</param>
internal sealed class SummaryTables(SummaryUnits units, IAnsiConsole console)
{
    public void Write(BalanceSummary summary)
    {
        Line(summary.Vehicle.Name);
        Line(summary.Vehicle.Note);
        foreach (LoadCaseSummary part in summary.LoadCases)
        {
            Write(part);
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
            new ControlTables(units, console).Write(control);
        }

        if (summary.Advice is { } advice)
        {
            Line($"Setting: {advice.Sentence}");
        }

        foreach (string notice in summary.Notices)
        {
            Line($"Notice: {notice}");
        }

        Line("Pressures are gauge. A calculation is no approval: prove a setting by a competent person's test off public roads.");
    }

    private void Write(LoadCaseSummary part)
    {
        Line("");
        Line($"{part.LoadCase.Name}: {NumberText.Of(Math.Round(units.Of(part.LoadCase.Mass)))} {units.Mass}; "
            + $"unbraked {Force(part.StaticAxleLoads.Front)} front, {Force(part.StaticAxleLoads.Rear)} rear {units.Force}; "
            + $"rear wheels leave the road at a braking rate of {Fraction(part.RearLiftOffRate)}");
        string force = $" [{units.Force}]";
        string pressure = $" [{units.Pressure}]";
        Table rates = Table(
            "Braking rate", "Axle load front" + force, "rear" + force, "Ideal force front" + force, "rear" + force,
            "Installed front" + force, "rear" + force, "Line pressure front" + pressure, "rear" + pressure);
        foreach (RateSummary rate in part.Rates)
        {
            BalancePoint? at = rate.Installed;
            Row(
                rates, Fraction(rate.BrakingRate), Force(rate.NormalReactions.Front), Force(rate.NormalReactions.Rear),
                Force(rate.IdealForces.Front), Force(rate.IdealForces.Rear), Force(at?.BrakingForces.Front), Force(at?.BrakingForces.Rear),
                Pressure(at?.LinePressures.Front), Pressure(at?.LinePressures.Rear));
        }

        console.Write(RightAligned(rates));
        Table surfaces = Table(
            "Adhesion", "Locks first", "Braking rate then", "Line pressure front" + pressure, "rear" + pressure, "Efficiency", "Adhesion utilised front", "rear");
        foreach (SurfaceSummary surface in part.LockUps)
        {
            LockUp? lockUp = surface.LockUp;
            Row(
                surfaces, Fraction(surface.Adhesion), LocksFirst(lockUp), Fraction(lockUp?.At.BrakingRate), Pressure(lockUp?.At.LinePressures.Front),
                Pressure(lockUp?.At.LinePressures.Rear), Fraction(lockUp?.Efficiency), Fraction(lockUp?.At.AdhesionUtilisation.Front),
                Fraction(lockUp?.At.AdhesionUtilisation.Rear));
        }

        console.Write(RightAligned(surfaces));
        Points("Valve knee", part.Knees);
        Points("Installed meets ideal distribution", part.IdealCrossings);
    }

    private void Points(string title, IReadOnlyList<BalancePoint> points)
    {
        foreach (BalancePoint point in points)
        {
            Line($"{title}: {Pressure(point.MasterPressure)} {units.Pressure}, front force {Force(point.BrakingForces.Front)} {units.Force}, braking rate {Fraction(point.BrakingRate)}");
        }

        if (points.Count == 0)
        {
            Line($"{title}: nowhere");
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

    private static string Fraction(double? fraction) => fraction is { } value && double.IsFinite(value) ? value.ToString("0.000", CultureInfo.InvariantCulture) : "–";
}
