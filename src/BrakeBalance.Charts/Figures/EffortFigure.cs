namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of pedal, assist, travel and failures.</summary>
public static partial class FootFigures
{
    /// <summary>Deceleration that captions and readouts take as a hard stop on a dry road [–].</summary>
    public const double HardStop = 0.8;

    private static readonly (Tone Tone, Dash Dash)[] Styles =
    [
        (Tone.Main, Dash.Solid), (Tone.Ideal, Dash.Dash), (Tone.Rear, Dash.DashDot), (Tone.Front, Dash.LongDash), (Tone.Other, Dash.Dot),
            (Tone.Guide, Dash.Solid),
    ];

    /// <summary>Pedal force against deceleration for a car with several boosters or pedals, run-out marked.</summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="cases">What is compared, with a name each; the first is what the title speaks of.</param>
    /// <param name="highestRate">End of the axis of decelerations [–].</param>
    /// <param name="highestForce">End of the axis of pedal forces; null to fit the data.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure Effort(
        BalanceModel model,
        IReadOnlyList<(string Name, BrakeControl Control)> cases,
        double highestRate = 1.0,
        Force? highestForce = null,
        UnitSystem? units = null,
        string id = "effort")
    {
        var figure = new FigureBuilder(id, units, model.Vehicle);
        double[] rates = [.. Enumerable.Range(1, 100).Select(i => highestRate * i / 100).Where(rate => model.AtRate(rate) is not null)];
        (string Name, ControlForce Force)[] controls = [.. cases.Select(item => (item.Name, new ControlForce(model, item.Control)))];
        string finding = EffortFinding(figure, controls[0].Force);
        (string Of, ControlForcePoint At)[] knees =
            [.. controls.Select((item, i) => (i == 0 ? "run-out" : $"run-out, {item.Name}", item.Force.RunOut()!))
            .Where(knee => knee.Item2?.Balance.BrakingRate <= highestRate
                && knee.Item2.PedalForce.Newtons <= (highestForce?.Newtons ?? double.PositiveInfinity))
            .DistinctBy(knee => Math.Round(knee.Item2.PedalForce.Newtons, 3))];
        bool runsOut = knees.Length > 0;
        figure
            .Title(finding)
            .Describe(
                $"Pedal force against deceleration of {model.Vehicle.InText}, {model.LoadCase.Name}{With(model, cases[0].Control)}."
                    + (runsOut ? " A ring marks where an assist gives all it can; beyond it all further force is the driver's own." : ""),
                string.Join(" ", controls.Select(item => EffortSentence(figure, item.Name, item.Force))))
            .X("Deceleration", "z", Measure.InG, 0, highestRate)
            .Y("Pedal force", "F", Measure.ControlForce, 0, highestForce?.Newtons);
        for (int i = 0; i < controls.Length; i++)
        {
            AddEffort(figure, controls[i].Name, controls[i].Force, rates, Styles[Math.Min(i, Styles.Length - 1)], highestForce?.Newtons
                ?? double.PositiveInfinity, labelAt: 0.45 + (0.12 * i));
        }

        // A pedal that ends before the brakes take hold has no line; the foot's most stands in its place.
        if (figure.IsEmpty)
        {
            figure.Level("all that a foot can push", cases[0].Control.Foot.Maximum.Newtons);
        }

        foreach ((string of, ControlForcePoint at) in knees)
        {
            figure.Points(of, [at.Balance.BrakingRate], [at.PedalForce.Newtons], Tone.Other, Marker.Ring,
                label: of == knees[0].Of ? "run-out" : "");
        }

        return figure.Table(table =>
        {
            double[] listed = [.. Enumerable.Range(1, 10).Select(i => highestRate * i / 10)];
            table.Column("Deceleration z", Measure.InG, listed);
            foreach ((string name, ControlForce force) in controls)
            {
                table.Column($"Pedal force, {name}", Measure.ControlForce, listed.Select(rate => force.AtRate(rate)?.PedalForce.Newtons));
            }
        }).Build();
    }

    internal static void AddEffort(FigureBuilder figure, string name, ControlForce control, double[] rates, (Tone Tone, Dash Dash) style,
        double highestNewtons, double labelAt)
    {
        // A linkage may reach its end before the brakes give the rate.
        List<(double Rate, double Newtons)> points =
        [
            .. rates.Select(rate => (rate, control.AtRate(rate))).Where(point => point.Item2 is not null)
                .Select(point => (point.rate, point.Item2!.PedalForce.Newtons)),
        ];
        if (rates.Length > 0 && control.RunOut() is { } runOut && runOut.Balance.BrakingRate > rates[0]
            && runOut.Balance.BrakingRate < rates[^1])
        {
            points.Add((runOut.Balance.BrakingRate, runOut.PedalForce.Newtons));
        }

        var shown = points.Where(point => point.Newtons <= highestNewtons).OrderBy(point => point.Rate).ToArray();
        if (shown.Length > 1)
        {
            figure.Line(name, shown.Select(point => point.Rate).ToArray(), shown.Select(point => point.Newtons)
                .ToArray(), style.Tone, style.Dash, style.Tone == Tone.Main ? 2.8 : 2, labelAt: Math.Min(0.95, labelAt));
        }
    }

    private static string EffortFinding(FigureBuilder figure, ControlForce control)
    {
        string hard = control.AtRate(HardStop) is { } point
            ? $"a deceleration of {Words(HardStop)} g takes {figure.Text(Measure.ControlForce, point.PedalForce)} on the pedal"
            : $"the highest pressure does not give a deceleration of {Words(HardStop)} g";
        return control.RunOut() is { } runOut && runOut.Balance.BrakingRate < HardStop
            ? $"The assist runs out at a deceleration of {Words(runOut.Balance.BrakingRate)} g; {hard}"
            : Finding.Capital(hard);
    }

    private static string EffortSentence(FigureBuilder figure, string name, ControlForce control)
    {
        string hard = control.AtRate(HardStop) is { } point
            ? $"{figure.Text(Measure.ControlForce, point.PedalForce)} for a deceleration of {Words(HardStop)} g"
            : $"a deceleration of {Words(HardStop)} g is not reached";
        string runOut = control.RunOut() is { } at
            ? $"; run-out at {figure.Text(Measure.ControlForce, at.PedalForce)} and {Words(at.Balance.BrakingRate)} g" : "";
        return $"{Finding.Capital(name)}: {hard}{runOut}.";
    }

    internal static string Words(double number) => Measure.Number.Text(number, UnitSystem.Si);
}
