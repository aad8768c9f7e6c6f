namespace BrakeBalance.Charts.Figures;

/// <summary>Tables of a bench report.</summary>
public static class BenchTables
{
    /// <summary>What a change of parts does.</summary>
    /// <param name="report">The report.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">No change is planned.</exception>
    public static NamedTable Changes(BenchReport report, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        if (report.Sheet.Change is not { } plan)
        {
            throw new ArgumentException("The bench sheet plans no change of parts.", nameof(report));
        }

        return Changes(plan, report.Changes, units);
    }

    /// <summary>Old parts against new, of a plan by itself.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="rows">Its rows.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Changes(ChangePlan plan, IReadOnlyList<ChangeRow> rows, UnitSystem? units)
    {
        ArgumentNullException.ThrowIfNull(plan);
        UnitSystem system = units ?? Display.Units;
        string ranges = (plan.Before.Uncertainty ?? plan.After.Uncertainty) is null ? ""
            : " Ranges of the vehicle files stand at their middles here; compare shows their bands.";
        return new NamedTable
        {
            Id = "change-plan",
            Title = "Old parts against new",
            Caption = $"{plan.Before.Name}, {plan.Conditions.LoadCase ?? plan.Before.LoadCases[0].Name}. "
                + "It compares parts and approves none." + ranges,
            Table = new TableBuilder(system)
                .Words("What", rows.Select(row => InBoth.Only(row.Name, system == UnitSystem.Us)))
                .Words("Old", rows.Select(row => Shown(row.Topic, row.Before, row.BeforeWords, system)))
                .Words("New", rows.Select(row => Shown(row.Topic, row.After, row.AfterWords, system)))
                .Words("Verdict", rows.Select(row => Word(row.Severity)))
                .Words("What it means", rows.Select(row => InBoth.Only(Meaning(row, system), system == UnitSystem.Us)))
                .Build(),
        };
    }

    /// <summary>How long each hose is cut.</summary>
    /// <param name="report">The report, with hoses.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable CutList(BenchReport report, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        HoseAssembly[] hoses = [.. report.Sheet.Hoses.Select(hose => hose.Assembly)];
        return new NamedTable
        {
            Id = "cut-list",
            Title = "Hoses to cut",
            Table = new TableBuilder(units)
                .Words("Hose", hoses.Select(hose => hose.Name))
                .Words("Class and size", hoses.Select(hose => hose.Rating.Name))
                .Column("Overall", BenchMeasures.Cut, hoses.Select(hose => (double?)Step(hose.OverallLength, BenchMeasures.Cut, units)))
                .Column("Cut-off, first", BenchMeasures.Cut,
                    hoses.Select(hose => (double?)Step(hose.First.CutOff, BenchMeasures.Cut, units)))
                .Column("Cut-off, second", BenchMeasures.Cut,
                    hoses.Select(hose => (double?)Step(hose.Second.CutOff, BenchMeasures.Cut, units)))
                .Column("Cut", BenchMeasures.Cut, hoses.Select(hose => (double?)Step(hose.CutLength, BenchMeasures.Cut, units)))
                .Column("Clocking angle", Measure.Angle, hoses.Select(hose => hose.Orientation?.Radians))
                .Words("Pieces", hoses.Select(hose =>
                    hose.Spares == 0 ? Whole(hose.Pieces) : $"{Whole(hose.Pieces)} + {Whole(hose.Spares)} spare"))
                .Build(),
        };
    }

    /// <summary>How much hose to buy.</summary>
    /// <param name="report">The report, with hoses.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Purchase(BenchReport report, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        return new NamedTable
        {
            Id = "hose-to-buy",
            Title = "Hose to buy",
            Table = new TableBuilder(units)
                .Words("Class and size", report.Purchase.Select(line => line.Rating.Name))
                .Column("In the car", BenchMeasures.Stock,
                    report.Purchase.Select(line => (double?)Step(line.Net, BenchMeasures.Stock, units)))
                .Column("Spares", BenchMeasures.Stock,
                    report.Purchase.Select(line => (double?)Step(line.Spare, BenchMeasures.Stock, units)))
                .Column("Cutting waste", BenchMeasures.Cut,
                    report.Purchase.Select(line => (double?)Step(line.Kerf, BenchMeasures.Cut, units)))
                .Column("To buy", BenchMeasures.Stock,
                    report.Purchase.Select(line => (double?)Step(line.ToBuy, BenchMeasures.Stock, units)))
                .Build(),
        };
    }

    /// <summary>What the return does to the pedal, over the temperature of the oil.</summary>
    /// <param name="report">The report.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; without rows when it cannot be told.</returns>
    public static NamedTable Releases(BenchReport report, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(report);
        UnitSystem system = units ?? Display.Units;
        return new NamedTable
        {
            Id = "release",
            Title = "How fast the pedal comes back",
            Caption = "By springs alone, so it is the longest time; while the brakes still push back it is shorter.",
            Table = new TableBuilder(system)
                .Column("Oil", Measure.Temperature, report.Releases.Select(release => (double?)release.Oil.Kelvins))
                .Column("In the return, at rest", BenchMeasures.BackPressure,
                    report.Releases.Select(release => (double?)Step(release.Effect.Standing, BenchMeasures.BackPressure, units)))
                .Column("Stays on the brakes", BenchMeasures.BackPressure, report.Releases.Select(release =>
                    (double?)Step(release.Effect.ResidualLinePressure, BenchMeasures.BackPressure, units)))
                .Words("Back within", report.Releases.Select(release =>
                    release.Effect.ReleaseTime is { } time ? Measure.Time.Text(time, system) : "not by springs"))
                .Build(),
        };
    }

    /// <summary>Threads that were looked up, with what they are taken for by mistake.</summary>
    /// <param name="rows">The rows, such as those of <see cref="ThreadFact.Search"/>.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Threads(IEnumerable<ThreadFact> rows, UnitSystem? units = null)
    {
        ThreadFact[] all = [.. rows];
        return new NamedTable
        {
            Id = "threads",
            Title = "Threads and seats",
            Caption = "Measure the thread and look at the seat; the letters of the sources stand at the head of the data file.",
            Table = new TableBuilder(units)
                .Words("Kind and size", all.Select(row => $"{row.Family} {row.Size}"))
                .Words("Thread", all.Select(row => row.Thread))
                .Column("Outer diameter", BenchMeasures.Gap,
                    all.Select(row => (double?)Step(row.MajorDiameter, BenchMeasures.Gap, units ?? Display.Units)))
                .Column("Threads per inch", Measure.Number, all.Select(row => (double?)row.ThreadsPerInch))
                .Words("Standard", all.Select(row => row.Standard))
                .Words("Often confused with",
                    all.Select(row => string.Join("; ", row.LookAlikes().Select(alike => $"{alike.Other.Family} {alike.Other.Thread}")
                    .Distinct().Take(3))))
                .Words("Source", all.Select(row => row.Source))
                .Build(),
        };
    }

    /// <summary>What was found, gravest first.</summary>
    /// <param name="findings">The findings.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Findings(IEnumerable<BenchFinding> findings, UnitSystem? units = null)
    {
        BenchFinding[] all = [.. findings.Select(finding => finding.In(units ?? Display.Units))];
        return new NamedTable
        {
            Id = "findings",
            Title = "Findings",
            Table = new TableBuilder(UnitSystem.Si)
                .Words("Verdict", all.Select(finding => Word(finding.Severity)))
                .Words("Where", all.Select(finding => finding.Where))
                .Words("What", all.Select(finding => finding.What))
                .Words("Why, and what to do", all.Select(finding => finding.Why))
                .Build(),
        };
    }

    internal static string Word(BenchSeverity severity) => severity switch
    {
        BenchSeverity.Pass => "pass",
        BenchSeverity.Caution => "caution",
        _ => "WRONG",
    };

    // By how much a number has changed is worked out from both as they are shown beside it.
    private static string Meaning(ChangeRow row, UnitSystem system) => row.Topic != ChangeTopic.Balance
        && BandText.Leading(Shown(row.Topic, row.Before, "", system)) is { } before and not 0
        && BandText.Leading(Shown(row.Topic, row.After, "", system)) is { } after && after / before < 3
            ? Invariant.Text($"{row.Meaning.TrimEnd('.')} ({((after / before) - 1) * 100:+0;−0;±0} %).") : row.Meaning;

    // A safe limit is rounded to the safe side, as wherever it is told.
    private static string Shown(ChangeTopic topic, IQuantity? value, string words, UnitSystem units) =>
        topic == ChangeTopic.Knee && value is Pressure limit ? SettingWords.Number(limit, units) : SetUp.Text(value, words, units);

    // A list to work by needs no more digits than a rule or a gauge shows.
    private static double Step(IQuantity quantity, Measure measure, UnitSystem? units)
    {
        DisplayUnit unit = measure.In(units ?? Display.Units);
        return unit.ToSi(Math.Round(unit.FromSi(measure.Si(quantity)) / unit.RoundTo) * unit.RoundTo);
    }

    private static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);
}
