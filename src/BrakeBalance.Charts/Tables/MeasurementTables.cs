using BrakeBalance.Charts.Outputs;

namespace BrakeBalance.Charts.Tables;

/// <summary>Tables of what was measured and what follows from it.</summary>
public static class MeasurementTables
{
    private const string NoRange = "no range in the file moves it";

    /// <summary>Lines of a log that were left out.</summary>
    /// <param name="problems">The problems.</param>
    /// <param name="id">The table's short name.</param>
    /// <returns>The table; one row that says so when nothing was left out.</returns>
    public static NamedTable LeftOut(IReadOnlyList<LogProblem> problems, string id = "left-out") => new()
    {
        Id = id,
        Title = problems.Count == 0
            ? "Every line of the log was read" : $"{problems.Count} remark{(problems.Count == 1 ? "" : "s")} on lines of the log",
        Table = new TableBuilder()
            .Words("Line", problems.Count == 0 ? ["–"] : problems.Select(p => p.Line.ToString(CultureInfo.InvariantCulture)))
            .Words("Reason", problems.Count == 0 ? ["nothing was left out"] : problems.Select(p => p.Reason)).Build(),
    };

    /// <summary>Knee and slope of each position of the adjuster.</summary>
    /// <param name="analysis">The analysis of the gauges.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Knees(GaugeAnalysis analysis, UnitSystem? units = null)
    {
        (AdjusterPosition Position, ValveFit Fit)[] rows =
            [.. analysis.Positions.SelectMany(p => new[] { p.Apply, p.Release }.OfType<ValveFit>().Select(f => (p, f)))];
        DisplayUnit unit = Measure.LinePressure.In(units ?? Display.Units);
        return new NamedTable
        {
            Id = "knees",
            Title = "Knee and slope by position of the adjuster",
            Caption = "Behind ± stands half of a 90 % interval. No knee means that none shows up to the highest pressure read."
                + (analysis.InletRatio == 1 || rows.All(r => r.Fit.Knee is null) ? "" : Invariant.Text(
                    $" Knee and slope are those of the valve, whose inlet stands at {analysis.InletRatio:0.00} of the front pressure.")),
            Table = rows.Length == 0
                ? new TableBuilder(units).Words("Adjuster", ["–"]).Words("Finding", ["no position could be fitted"]).Build()
                : new TableBuilder(units)
                    .Words("Adjuster", rows.Select(r =>
                        r.Position.Turns is { } t ? Invariant.Text($"{t:0.##} turn{(t == 1 ? "" : "s")}") : "as it is"))
                    .Words("Pressure", rows.Select(r => r.Fit.Phase == PressurePhase.Release ? "falling" : "rising"))
                    .Within("Knee", Measure.LinePressure, rows,
                        r => r.Fit.Knee?.Estimate, r => r.Fit.Knee is { } knee ? (knee.High - knee.Low) / 2 : null)
                    .Words("Slope", rows.Select(r => r.Fit.Slope is { } slope
                        ? Rounding.Within(slope.Estimate, (slope.High - slope.Low) / 2) : ""))
                    .Words($"Scatter of a gauge {unit.Bracketed}", rows.Select(r =>
                        Rounding.ToText(unit.FromSi(r.Fit.Scatter.Pascals), 2)))
                    .Column("Readings used", Measure.Count, rows.Select(r => (double?)r.Fit.Readings))
                    .Words("Least weight", rows.Select(r => r.Fit.Weights.MinBy(w => w.Weight) is { } least
                        ? Invariant.Text($"{least.Weight:0.00}") + (least.Line > 0 ? $" (line {least.Line})" : "")
                        : "–")).Build(),
        };
    }

    /// <summary>The valve's numbers with their intervals, beside what is usual.</summary>
    /// <param name="analysis">The analysis of the gauges.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; one row that says so when nothing was found.</returns>
    public static NamedTable Valve(GaugeAnalysis analysis, UnitSystem? units = null)
    {
        IReadOnlyList<ValveProperty> found = analysis.Properties;
        UnitSystem shown = units ?? Display.Units;
        string Read(ValveProperty of, double si) => of.Measure == Measure.LinePressure && si >= 0
            ? SettingWords.Knee(Pressure.FromPascals(si), shown) : of.Measure.Text(si, shown);
        string[] outside = [.. found.Where(p => p.IsOutside).Select(p => p.Name)];
        return new NamedTable
        {
            Id = "valve",
            Title = found.Count == 0 ? "The gauges tell no number of the valve"
                : outside.Length == 0 ? "The valve's numbers are usual ones" : $"Outside common practice: {string.Join(", ", outside)}",
            Caption = "Bounds are a 90 % interval. One slope and one hysteresis serve all positions of the adjuster.",
            Table = found.Count == 0
                ? new TableBuilder(units).Words("Number", ["–"]).Build()
                : new TableBuilder(units)
                    .Words("Number", found.Select(p => p.Name + p.Per))
                    .Words("Value", found.Select(p => Read(p, p.Value.Estimate)))
                    .Words("90 % interval", found.Select(p => $"{Read(p, p.Value.Low)} to {Read(p, p.Value.High)}"))
                    .Words("Usual", found.Select(p => p.Usual is { } usual
                        ? $"up to {p.Measure.Text(usual.High, shown)} ({p.Source})" : "–"))
                    .Words("Judgement", found.Select(p => p.IsOutside ? "outside" : p.Usual is null ? "–" : "usual")).Build(),
        };
    }

    /// <summary>Each stop in use beside what the fitted car foretells, with the weight it has.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Weights(CarEstimate estimate, UnitSystem? units = null) => new()
    {
        Id = "stop-weights",
        Title = estimate.Weights.All(w => Math.Min(w.DecelerationWeight ?? 1, w.LockWeight ?? 1) > 0.5)
            ? "Every stop has its say" : "Stops that do not fit the others have less say",
        Caption = "Weight 1 is a full say. No stop is thrown out; one far off what the others tell counts less.",
        Table = estimate.Weights.Count == 0
            ? new TableBuilder(units).Words("Stop", ["–"]).Build()
            : new TableBuilder(units)
                .Words("Stop", estimate.Weights.Select(w => w.Line > 0 ? Invariant.Text($"{w.Number} (line {w.Line})")
                    : Invariant.Text($"{w.Number}")))
                .Rounded("Deceleration", Measure.Deceleration, estimate.Weights.Select(w => w.Deceleration?.MetersPerSecondSquared))
                .Rounded("Predicted", Measure.Deceleration, estimate.Weights.Select(w => w.Foretold?.MetersPerSecondSquared))
                .Rounded("Weight", Measure.Number, estimate.Weights.Select(w => w.DecelerationWeight))
                .Words("Locked first", estimate.Weights.Select(w => w.Locked?.ToString().ToLowerInvariant() ?? "–"))
                .Rounded("Weight of that", Measure.Number, estimate.Weights.Select(w => w.LockWeight)).Build(),
    };

    /// <summary>Stops found in a time series.</summary>
    /// <param name="search">The search.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Stops(StopSearch search, UnitSystem? units = null) => new()
    {
        Id = "stops-found",
        Title = search.Stops.Count == 0
            ? "No stop was found" : $"{search.Stops.Count} stop{(search.Stops.Count == 1 ? " was" : "s were")} found",
        Caption = string.Join(' ', search.Stops.Count == 0
            ? search.Remarks : search.Remarks.Append("Behind ± stands half of a 90 % interval.")
                .Append("The distance counts from the change of slope, in the middle of the rise.")),
        Table = search.Stops.Count == 0
            ? new TableBuilder(units).Words("Stop", ["–"]).Build()
            : new TableBuilder(units)
                .Rounded("Begins at", Measure.Time, search.Stops.Select(s => (double?)s.Start.Seconds))
                .Words("Found by", search.Stops.Select(s => s.FoundBy))
                .Within("Initial speed", Measure.Speed, search.Stops, s => s.InitialSpeed, s => s.InitialSpeedWithin)
                .Within("Mean fully developed deceleration", Measure.Deceleration, search.Stops,
                    s => s.Deceleration, s => s.DecelerationWithin)
                .Within("Peak deceleration", Measure.Deceleration, search.Stops, s => s.Peak, s => s.PeakWithin)
                .Within("Rise time", Measure.Time, search.Stops, s => s.RiseTime, s => s.RiseTimeWithin)
                .Within("Distance", Measure.Distance, search.Stops, s => s.Distance, s => s.DistanceWithin)
                .Within("From the pedal", Measure.Distance, search.Stops, s => s.DistanceFromPedal, s => s.DistanceFromPedalWithin)
                .Words("Trusted", search.Stops.Select(s => s.IsDistanceTrusted ? "yes" : s.IsTrusted ? "all but the distance" : "no"))
                .Words("Caution", search.Stops.Select(s => s.Cautions.Count == 0 ? "none" : string.Join(' ', s.Cautions))).Build(),
    };

    /// <summary>Line pressures, slip and lock-up of the stops found.</summary>
    /// <param name="search">The stops.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; null when the log holds neither pressures nor wheel speeds.</returns>
    public static NamedTable? Wheels(StopSearch search, UnitSystem? units = null) =>
        search.Stops.All(s => s is { FrontPressure: null, RearPressure: null, Locked: null }) ? null : new()
        {
            Id = "stops-wheels",
            Title = "Line pressures, slip and lock-up",
            Caption = "Pressures are means from 80 % to 10 % of the initial speed; slip is the middle one from 80 % to 30 %.",
            Table = new TableBuilder(units)
                .Rounded("Begins at", Measure.Time, search.Stops.Select(s => (double?)s.Start.Seconds))
                .Rounded("Front pressure", Measure.LinePressure, search.Stops.Select(s => s.FrontPressure?.Pascals))
                .Rounded("Rear pressure", Measure.LinePressure, search.Stops.Select(s => s.RearPressure?.Pascals))
                .Rounded("Front slip", Measure.Percent, search.Stops.Select(s => s.FrontSlip))
                .Rounded("Rear slip", Measure.Percent, search.Stops.Select(s => s.RearSlip))
                .Words("Locks first", search.Stops.Select(s => s.Locked?.ToString().ToLowerInvariant() ?? "not logged"))
                .Rounded("Front locks at", Measure.Time, search.Stops.Select(s => s.FrontLockedAt?.Seconds))
                .Rounded("Rear locks at", Measure.Time, search.Stops.Select(s => s.RearLockedAt?.Seconds))
                .Rounded("Front pressure at lock-up", Measure.LinePressure, search.Stops.Select(s => s.LockPressure?.Pascals)).Build(),
        };

    /// <summary>What each column of a time series was taken for, and why.</summary>
    /// <param name="columns">The columns.</param>
    public static NamedTable Columns(IReadOnlyList<LogColumn> columns) => new()
    {
        Id = "log-columns",
        Title = "What the columns were taken for",
        Caption = $"Where one is wrong, name it in the file's header as in 'speed [km/h]', or by --column {ColumnChoice.Form}.",
        Table = new TableBuilder()
            .Words("Column", columns.Select(c => c.Name))
            .Words("Meaning", columns.Select(c => c.Meaning == ColumnMeaning.None ? "not used" : c.Words))
            .Words("Unit", columns.Select(c => c.Unit.Length == 0 ? "–" : c.Unit))
            .Words("Reason", columns.Select(c => c.Reason)).Build(),
    };

    /// <summary>What was believed and what is known after the stops.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Estimate(CarEstimate estimate, UnitSystem? units = null) => new()
    {
        Id = "estimate",
        Title = $"The car before and after {estimate.StopsUsed} stop{(estimate.StopsUsed == 1 ? "" : "s")}",
        Caption = "Bounds are a 90 % interval. Learnt: the share of the band that the stops took away.",
        Table = new TableBuilder(units)
            .Words("Quantity", estimate.Parameters.Select(p => p.Name))
            .Words("Before", estimate.Parameters.Select(p => p.Text(p.Prior, units ?? Display.Units)))
            .Words("After", estimate.Parameters.Select(p => p.Text(p.Posterior, units ?? Display.Units)))
            .Rounded("Learnt", Measure.Percent, estimate.Parameters.Select(p => (double?)p.Learnt)).Build(),
    };

    /// <summary>Present setting, safe limit and recommended setting, with what lies behind them.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Setting(Setting setting, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(setting);
        UnitSystem shown = units ?? Display.Units;
        (string Label, string Text)[] lines =
            [.. SettingWords.Lines(setting, shown), .. SettingWords.OutOfReach(setting, shown).Select(words => ("Out of reach", words))];
        return new()
        {
            Id = "setting-answer",
            Title = setting.PresentIsBeyond ? "The present setting lies beyond the safe limit"
                : setting.IsBuiltBeyond ? "As the car is built the rear can lock first" : "The setting",
            Caption = $"Conditions: {SettingWords.Conditions(setting.Vehicle, shown)}. "
                + $"{SettingWords.Rule(setting, shown)} {SettingWords.Caution}",
            Table = new TableBuilder(units)
                .Words("Question", lines.Select(line => line.Label))
                .Words("Answer", lines.Select(line => line.Text)).Build(),
        };
    }

    /// <summary>What each condition costs: the safe limit without it.</summary>
    /// <param name="setting">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; one row that says so when no condition costs anything.</returns>
    public static NamedTable Costs(Setting setting, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(setting);
        bool none = setting.Costs.Count == 0;
        return new()
        {
            Id = "setting-costs",
            Title = "What each condition costs",
            Caption = "The limit of all corners if one condition did not have to be met, the dearest first.",
            Table = new TableBuilder(units)
                .Words("Without this condition", none ? ["–"] : setting.Costs.Select(cost => cost.Name))
                .Words("the limit would be", none
                    ? ["the same"] : setting.Costs.Select(cost => SettingWords.Number(cost.Limit, units ?? Display.Units)))
                .Build(),
        };
    }

    /// <summary>A setting condition by condition.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Conditions(SettingAnswer answer, UnitSystem? units = null) => new()
    {
        Id = "setting-conditions",
        Title = answer.Recommended is not { } at ? "The setting with least rear braking, case by case"
            : answer.HoldsAtAnySetting ? "The setting with most rear braking, within the chance as all are, case by case"
            : "At " + (at.Knee is { } knee
                ? SettingWords.Number(knee, units ?? Display.Units)
                : Measure.Percent.Text(at.FrontForceShare!.Value, units ?? Display.Units))
                + ", the highest within the chance, case by case",
        Table = new TableBuilder(units)
            .Words("Load", answer.Conditions.Select(c => c.LoadCase))
            .Words("Surface", answer.Conditions.Select(c => c.Surface))
            .Words("Brakes", answer.Conditions.Select(c => c.State))
            .Rounded("Worst speed", Measure.Speed, answer.Conditions.Select(c => (double?)c.Speed.MetersPerSecond))
            .Rounded("Rear locks first", Measure.Percent, answer.Conditions.Select(c => (double?)c.RearFirst))
            .Rounded("Mean efficiency", Measure.Percent, answer.Conditions.Select(c => (double?)c.MeanEfficiency)).Build(),
    };

    /// <summary>Answers as bands.</summary>
    /// <param name="answers">The answers.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="car">The car, where the title is to name it.</param>
    public static NamedTable Bands(
        IReadOnlyList<BandedAnswer> answers, UnitSystem? units = null, Vehicle? car = null) => new()
        {
            Id = "bands",
            Title = car is null ? "Answers as bands" : $"{car.Name}: answers as bands",
            Caption = "90 % of the cars within the ranges lie within the band.",
            Table = new TableBuilder()
            .Words("Answer", answers.Select(a => a.Question))
            .Words("Unit", answers.Select(a => a.Measure.In(units ?? Display.Units).Symbol is { Length: > 0 } unit ? unit : "–"))
            .Words("Band", answers.Select(a => Band(a.Band.Select(a.Measure.In(units ?? Display.Units).FromSi))))
            .Words("Measure first", answers.Select(a => a.MeasureNext.Count == 0 ? NoRange : a.MeasureNext[0].Path))
                .Build(),
        };

    /// <summary>What to measure next for one answer.</summary>
    /// <param name="answer">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable MeasureNext(BandedAnswer answer, UnitSystem? units = null) => new()
    {
        Id = "measure-next-list",
        Title = "What to measure next",
        Caption = answer.Question + ".",
        Table = answer.MeasureNext.Count == 0
            ? new TableBuilder().Words("Entry", [NoRange]).Build()
            : new TableBuilder()
                .Words("Entry", answer.MeasureNext.Select(a => a.Path))
                .Words("Now", answer.MeasureNext.Select(a =>
                    OtherUnits.Text(a.Range, units ?? Display.Units) + (a.IsTypical ? " (typical of the class, common practice)" : "")))
                .Words("With what, and how", answer.MeasureNext.Select(a => a.How))
                .Rounded("Band left when known", Measure.Percent, answer.MeasureNext.Select(a => (double?)a.BandLeft)).Build(),
    };

    /// <summary>Safe stops, the one to make next first, and what they would leave open of the setting.</summary>
    /// <param name="next">The answer.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; one row that says so when no stop is safe enough.</returns>
    public static NamedTable NextStops(NextStops next, UnitSystem? units = null)
    {
        ArgumentNullException.ThrowIfNull(next);
        UnitSystem shown = units ?? Display.Units;
        CandidateStop[] first = [.. next.Candidates.Take(6)];
        return new NamedTable
        {
            Id = "next-stops",
            Title = NextStopWords.Title(next, shown),
            Caption = string.Join(' ', NextStopWords.Caption(next, shown)),
            Table = first.Length == 0
                ? new TableBuilder(units).Words("Stop", ["–"]).Build()
                : new TableBuilder(units)
                    .Words("Load", first.Select(c => c.Stop.LoadCase ?? "–"))
                    .Words("Surface", first.Select(c => c.Stop.Surface ?? "–"))
                    .Words("Turns", first.Select(c => c.Stop.Turns?.ToString("0.##", CultureInfo.InvariantCulture) ?? "–"))
                    .Rounded("Front line pressure", Measure.LinePressure, first.Select(c => c.Stop.FrontPressure?.Pascals))
                    .Rounded("Speed", Measure.Speed, first.Select(c => c.Stop.InitialSpeed?.MetersPerSecond))
                    .Rounded("An axle locks", Measure.Percent, first.Select(c => (double?)c.Lock))
                    .Rounded("Rear first", Measure.Percent, first.Select(c => (double?)c.RearFirst))
                    .Rounded("Interval left", Measure.Percent, first.Select(c => (double?)c.WidthLeft)).Build(),
        };
    }

    /// <summary>How often intervals of 90 % held the truth on simulated days.</summary>
    /// <param name="posted">The rows.</param>
    public static NamedTable Coverage(IReadOnlyList<IntervalCoverage> posted) => new()
    {
        Id = "interval-coverage",
        Title = Invariant.Text(
            $"Intervals of 90 % held the truth on {100 * posted.Min(row => row.Share):0.0} to {100 * posted.Max(row => row.Share):0.0} % "
                + $"of {posted[0].Days} simulated days"),
        Caption = "Each day another random car that differs from its file, 20 stops in two load cases on two roads. "
            + "By chance alone a share scatters by "
            + Invariant.Text($"{100 * Math.Sqrt(0.09 / posted[0].Days):0.0} % about 90 %."),
        Table = new TableBuilder()
            .Words("Quantity", posted.Select(row => row.Quantity))
            .Column("Days", Measure.Count, posted.Select(row => (double)row.Days).ToArray())
            .Column("Held", Measure.Count, posted.Select(row => (double)row.Held).ToArray())
            .Words("Share", posted.Select(row => Invariant.Text($"{100 * row.Share:0.0} %"))).Build(),
    };

    /// <summary>A test plan.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static NamedTable Plan(TestPlan plan, UnitSystem? units = null) => new()
    {
        Id = "test-plan",
        Title = $"Test plan for the {plan.Car}",
        Caption = string.Join(' ', plan.Cautions),
        Table = plan.Stops.Count == 0
            ? new TableBuilder(units).Words("Stop", ["no stop is safe enough to plan: lower the rear braking first"]).Build()
            : new TableBuilder(units)
                .Words("No.", plan.Stops.Select(s => s.Number.ToString(CultureInfo.InvariantCulture)))
                .Words("Load", plan.Stops.Select(s => s.LoadCase))
                .Words("Surface", plan.Stops.Select(s => s.Surface))
                .Words("Turns", plan.Stops.Select(s => s.Turns?.ToString("0.##", CultureInfo.InvariantCulture) ?? "–"))
                .Rounded("Speed", Measure.Speed, plan.Stops.Select(s => (double?)s.Speed.MetersPerSecond))
                .Rounded("Front line pressure", Measure.LinePressure, plan.Stops.Select(s => (double?)s.TargetPressure.Pascals))
                .Words("Purpose", plan.Stops.Select(s => s.Purpose))
                .Words("Abort when", plan.Stops.Select(s => s.AbortIf(units ?? Display.Units))).Build(),
    };

    private static string Band(Interval<double> band)
    {
        string format = Math.Abs(band.Estimate) >= 20 ? "0" : Math.Abs(band.Estimate) >= 5 ? "0.0" : "0.000";
        string Text(double value) => NumberText.Signed(value.ToString(format, CultureInfo.InvariantCulture));
        return Text(band.Low) == Text(band.High) ? Text(band.Low) : $"{Text(band.Low)} to {Text(band.High)}";
    }
}
