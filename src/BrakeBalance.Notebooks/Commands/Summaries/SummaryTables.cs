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
    // A band that is broken inside cannot be read; what is longer than one are words.
    private const int WidestBand = 14;

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
        Banded<BalanceSummary> bands = summary.Bands();
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
        Line("Rule checks (informative, no type approval)");
        Table rules = Table("Rule", "Outcome", "Margin", "Where it is least", "Source");
        for (int i = 0; i < summary.Verdicts.Count; i++)
        {
            RuleVerdict verdict = summary.Verdicts[i];
            Banded<RuleVerdict> of = bands.Select(car => car.Verdicts.ElementAtOrDefault(i))!;
            Row(rules, verdict.Title, of.Text(v => Outcome(v.Outcome)), of.Text(v => Fraction(v.Margin)), verdict.At, verdict.Source);
        }

        console.Write(rules);
        if (bands.Select(of => of.Control()) is { } control)
        {
            new ControlTables(units, console).Write(control, all);
        }

        foreach (string notice in BandText.Each(summary.Notices, bands.Drawn.Select(of => of.Notices), bands.OfClass.Select(of => of.Notices)))
        {
            SettingOutput.Labelled(console, "Notice", notice);
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
            $"{NumberText.Of(Math.Round(units.Of(of.LoadCase.Mass)))} {units.Mass}; unbraked {Force(of.StaticAxleLoads.Front)} {units.Force} front, "
            + $"{Force(of.StaticAxleLoads.Rear)} {units.Force} rear; rear wheels leave the road at a deceleration of {Fraction(of.RearLiftOffRate)} g"));
        string force = $"[{units.Force}]";
        string pressure = $"[{units.Pressure}]";
        Table rates = Table(
            "Deceleration\n[g]", "Axle load\nfront " + force, "\nrear " + force, "Line pressure\nfront " + pressure, "\nrear " + pressure);
        Rows(rates, part, of => of.Rates, rate => [
            Fraction(rate.BrakingRate), Force(rate.NormalReactions.Front), Force(rate.NormalReactions.Rear),
            Pressure(rate.Installed?.LinePressures.Front), Pressure(rate.Installed?.LinePressures.Rear)]);
        console.Write(RightAligned(rates));
        if (all)
        {
            Table forces = Table(
                "Deceleration\n[g]", "Ideal force\nfront " + force, "\nrear " + force, "Installed\nfront " + force, "\nrear " + force);
            Rows(forces, part, of => of.Rates, rate => [
                Fraction(rate.BrakingRate), Force(rate.IdealForces.Front), Force(rate.IdealForces.Rear),
                Force(rate.Installed?.BrakingForces.Front), Force(rate.Installed?.BrakingForces.Rear)]);
            console.Write(RightAligned(forces));
        }

        Table surfaces = Table(
            "Adhesion", "Locks\nfirst", "Deceleration\n[g]", "Front line\n" + pressure, "Rear line\n" + pressure, "Braking\nefficiency");
        Rows(surfaces, part, of => of.LockUps, surface => [
            Fraction(surface.Adhesion), LocksFirst(surface.LockUp), Fraction(surface.LockUp?.At.BrakingRate),
            Pressure(surface.LockUp?.At.LinePressures.Front), Pressure(surface.LockUp?.At.LinePressures.Rear),
            Fraction(surface.LockUp?.Efficiency)]);
        console.Write(RightAligned(surfaces));
        if (all)
        {
            Table used = Table("Adhesion", "Adhesion used front", "rear");
            Rows(used, part, of => of.LockUps, surface => [
                Fraction(surface.Adhesion), Fraction(surface.LockUp?.At.AdhesionUtilisation.Front),
                Fraction(surface.LockUp?.At.AdhesionUtilisation.Rear)]);
            console.Write(RightAligned(used));
            Points("Valve knee", part, of => of.Knees);
            Points("Installed meets ideal distribution", part, of => of.IdealCrossings);
        }
    }

    private void Points(string title, Banded<LoadCaseSummary> part, Func<LoadCaseSummary, IReadOnlyList<BalancePoint>> of)
    {
        for (int i = 0; i < of(part.Middle).Count; i++)
        {
            Line(part.Select(load => of(load).ElementAtOrDefault(i))!.Text(point =>
                $"{title}: {Pressure(point.MasterPressure)} {units.Pressure}, front force {Force(point.BrakingForces.Front)} {units.Force}, deceleration {Fraction(point.BrakingRate)} g"));
        }

        if (of(part.Middle).Count == 0)
        {
            Line($"{title}: none");
        }
    }

    /// <summary>A row for each item that the middle has; every number with its band.</summary>
    internal static void Rows<TPart, TItem>(Table table, Banded<TPart> part, Func<TPart, IReadOnlyList<TItem>> items,
        Func<TItem, string[]> cells) where TItem : class
    {
        bool[] narrow = [.. table.Columns.Select(_ => true)];
        for (int i = 0; i < items(part.Middle).Count; i++)
        {
            Banded<string[]> row = part.Select(of => items(of).ElementAtOrDefault(i))!.Select(cells)!;
            string[] shown = [.. row.Middle.Select((_, column) =>
                row.Text(of => of[column]).Replace(" (", "\n(", StringComparison.Ordinal))];
            narrow = [.. narrow.Zip(shown, (so, cell) => so && cell.Split('\n').All(line => line.Length <= WidestBand))];
            Row(table, shown);
        }

        foreach ((int column, bool keeps) in narrow.Index())
        {
            table.Columns[column].NoWrap = keeps && part.HasBand;
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
            table.AddColumn(new TableColumn(Markup.Escape(heading)) { Padding = new Padding(0, 0, 1, 0) });
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
