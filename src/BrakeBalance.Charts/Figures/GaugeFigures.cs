namespace BrakeBalance.Charts.Figures;

/// <summary>Gauge readings and what the fit makes of them.</summary>
public static class GaugeFigures
{
    private static readonly Marker[] Shapes = [Marker.Circle, Marker.Square, Marker.Triangle, Marker.Diamond, Marker.Cross];

    /// <summary>Rear against front line pressure as read, with the fitted line of each adjuster position.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="analysis">Their analysis.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure Readings(IReadOnlyList<GaugePair> readings, GaugeAnalysis analysis, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("gauge-readings", units);
        AdjusterPosition[] seen = [.. analysis.Positions.Where(p => p.Apply?.Knee is not null)];
        double top = readings.Count == 0 ? 1e6 : readings.Max(r => Math.Max(r.Front.Pascals, r.Rear.Pascals));
        string finding = analysis.Findings.Any(f => f.Kind == GaugeFindingKind.Swapped)
            ? "The gauges, lines or columns are swapped: no knee can be read"
            : seen.Length == 0 ? "No knee shows within the pressures read"
            : seen.Length == 1 ? $"The gauges show a knee at {SettingWords.Knee(seen[0].Apply!.Knee!.Value.Estimate, figure.Units)}"
            : $"The gauges show knees from {SettingWords.Knee(seen.Min(p => p.Apply!.Knee!.Value.Estimate), figure.Units)} "
                + $"to {SettingWords.Knee(seen.Max(p => p.Apply!.Knee!.Value.Estimate), figure.Units)}";
        figure
            .Title(finding)
            .Describe(
                "Rear against front line pressure as read on two gauges; lines are the fits for each position of the adjuster, "
                    + "pressure rising.",
                $"{readings.Count} readings. "
                    + string.Join(' ', seen.Select(p =>
                    $"{Name(p.Turns)}: knee {SettingWords.Knee(p.Apply!.Knee!.Value.Estimate, figure.Units)}, "
                        + $"slope {Measure.Number.Text(p.Apply.Slope!.Value.Estimate, figure.Units)}.")
                    .Concat(analysis.Positions.Where(p => p.Apply is { Knee: null }).Select(p => $"{Name(p.Turns)}: no knee up to "
                        + $"{Measure.LinePressure.Text(p.Apply!.HighestFront, figure.Units)} in front.")))
                    + (readings.Any(r => r.Phase == PressurePhase.Release)
                        ? " Readings with pressure falling lie a little higher: the valve's hysteresis." : ""))
            .X("Front line pressure", "p₁", Measure.LinePressure, 0, top)
            .Y("Rear line pressure", "p₂", Measure.LinePressure, 0, top)
            .Line("equal pressures", [0, top], [0, top], Tone.Guide, Dash.Dot, 1);
        // One key for the rings of all positions.
        bool ringsNamed = false;
        foreach ((int i, AdjusterPosition position) in analysis.Positions.Index())
        {
            GaugePair[] rows = [.. readings.Where(r => r.Turns == position.Turns && r.Phase != PressurePhase.Hold)];
            GaugePair[] falling = [.. rows.Where(r => r.Phase == PressurePhase.Release)];
            GaugePair[] rising = [.. rows.Except(falling)];
            figure.Points($"{Name(position.Turns)}, rising", rising.Select(r => r.Front).ToArray(), rising.Select(r => r.Rear)
                .ToArray(), Tone.Rear, Shapes[i % Shapes.Length], size: 6,
                label: seen.Length > 0 && position.Apply is { Knee: null } ? $"{Name(position.Turns)}: no knee" : "");
            if (falling.Length > 0)
            {
                figure.Points($"{Name(position.Turns)}, falling", falling.Select(r => r.Front).ToArray(), falling.Select(r => r.Rear)
                    .ToArray(), Tone.Guide, Marker.Ring, label: ringsNamed ? "" : "pressure falling", size: 5);
                ringsNamed = true;
            }

            if (position.Apply is { Knee: { } knee } fit)
            {
                Pressure[] x = [Pressure.Zero, knee.Estimate / analysis.InletRatio, fit.HighestFront];
                Pressure[] y = [.. x.Select(p => fit.RearAt(p * analysis.InletRatio))];
                figure.Line(Name(position.Turns), x, y, Tone.Main, Dash.Solid, 1.8, labelAt: 0.98);
            }
        }

        return figure.Table(table => table
            .Words("Adjuster", readings.Select(r => Name(r.Turns)))
            .Words("Pressure", readings.Select(r =>
                r.Phase switch { PressurePhase.Release => "falling", PressurePhase.Hold => "held", _ => "rising" }))
            .Column("Front line pressure", Measure.LinePressure, readings.Select(r => r.Front).ToArray())
            .Column("Rear line pressure", Measure.LinePressure, readings.Select(r => r.Rear).ToArray())).Build();
    }

    /// <summary>The knee against the turns of the adjuster, with its band.</summary>
    /// <param name="analysis">The analysis; it must hold a calibration.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The analysis has no calibration: fewer than two positions show a knee.</exception>
    public static Figure Adjuster(GaugeAnalysis analysis, UnitSystem? units = null)
    {
        AdjusterCalibration adjuster = analysis.Calibration
            ?? throw new ArgumentException(
            "The knee is known at fewer than two positions of the adjuster, so it cannot be drawn against the turns.", nameof(analysis));
        var figure = new FigureBuilder("knee-against-turns", units);
        AdjusterPosition[] seen = [.. analysis.Positions.Where(p => p is { Turns: not null, Apply.Knee: not null })];
        double[] turns = [.. Enumerable.Range(0,
            31).Select(i => adjuster.LowestTurns + (adjuster.HighestTurns - adjuster.LowestTurns) * i / 30)];
        Interval<Pressure>[] knees = [.. turns.Select(adjuster.KneeAt)];
        Interval<Pressure> perTurn = adjuster.KneePerTurn;
        return figure
            .Title($"A turn moves the knee by {SettingWords.Knee(perTurn.Estimate, figure.Units)}")
            .Describe(
                "Knee against turns of the adjuster from fully out, "
                    + "from gauge readings with pressure rising; the band holds the knee at 90 %.",
                $"Each turn moves the knee by {SettingWords.Knee(perTurn.Low, figure.Units)} to "
                    + $"{SettingWords.Knee(perTurn.High, figure.Units)}, at 90 %. The line is drawn over the turns measured only.")
            .X("Turns in from fully out", "n", Measure.Number)
            .Y("Knee", "p", Measure.LinePressure, 0)
            .Band("90 % interval", turns, knees.Select(k => k.Low).ToArray(), knees.Select(k => k.High).ToArray(), Tone.Ideal)
            .Line("knee", turns, knees.Select(k => k.Estimate).ToArray(), Tone.Main)
            .Points("single positions", seen.Select(p => p.Turns!.Value).ToArray(), seen.Select(p => p.Apply!.Knee!.Value.Estimate)
                .ToArray(), Tone.Rear, Marker.Circle, error: seen.Select(p => (p.Apply!.Knee!.Value.High - p.Apply.Knee.Value.Low) / 2)
                .ToArray())
            .Table(table => table
                .Column("Turns", Measure.Number, turns.Where((_, i) => i % 5 == 0).ToArray())
                .Column("Knee", Measure.LinePressure, knees.Where((_, i) => i % 5 == 0).Select(k => k.Estimate).ToArray())
                .Column("Lower bound", Measure.LinePressure, knees.Where((_, i) => i % 5 == 0).Select(k => k.Low).ToArray())
                .Column("Upper bound", Measure.LinePressure, knees.Where((_, i) => i % 5 == 0).Select(k => k.High).ToArray()))
            .Build();
    }

    private static string Name(double? turns) => turns is { } t ? Invariant.Text($"{t:0.##} turn{(t == 1 ? "" : "s")}") : "as it is";
}
