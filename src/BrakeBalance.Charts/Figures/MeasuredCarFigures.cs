namespace BrakeBalance.Charts.Figures;

/// <summary>Test stops over what the estimated car foretells.</summary>
public static class MeasuredCarFigures
{
    private const int Steps = 40;
    private const double FinestStepBars = 1e-4;
    private const double WithRoom = 1.2;

    /// <summary>Measured deceleration over front line pressure, with the estimated car's line and band.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="stops">The stops it was made from.</param>
    /// <param name="loadCase">The load case shown.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure BrakingRates(CarEstimate estimate, IReadOnlyList<TestStop> stops, LoadCase loadCase, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("measured-rates", units);
        TestStop[] shown = [.. Of(stops, loadCase)
            .Where(s => s is { Deceleration: not null, FrontPressure: not null,
            Locked: not (FirstLock.Front or FirstLock.Rear or FirstLock.Together) })];
        double? turns = shown.Select(s => s.Turns).FirstOrDefault();
        double top = Math.Max(20e5, 1.15 * shown.Select(s => s.FrontPressure!.Value.Pascals).DefaultIfEmpty(50e5).Max());
        Pressure[] pressures = [.. Enumerable.Range(1, Steps).Select(i => Pressure.FromPascals(top * i / Steps))];
        Interval<double>[] rates =
            [.. pressures.Select(at => estimate.Forecast(
                new() { LoadCase = loadCase.Name, FrontPressure = at, Turns = turns })!.BrakingRate)];
        double[] foretold = [.. shown.Select(s => estimate.Forecast(s)!.BrakingRate.Estimate)];
        double worst = shown.Zip(foretold, (s, rate) => Math.Abs(Rate(s) / rate - 1)).DefaultIfEmpty(0).Max();
        bool others = shown.Any(s => s.Turns != turns);
        string own = others ? " at each stop's own turns" : "";
        bool bends = !estimate.Model.Vehicle.Hydraulics.RearValves.IsEmpty;
        figure
            .Title(shown.Length == 0
                ? $"No stop without lock-up was made in {loadCase.Name}"
                : $"The estimated car brakes as measured{own}, to within {Measure.Percent.Text(worst, figure.Units)}")
            .Describe(
                $"Deceleration over front line pressure, {loadCase.Name}: stops without lock-up as points, the estimated car as a "
                    + "line with its 90 % band." + (others ? $" Line: {Set(turns)}; rings: the estimated car at each stop's own turns."
                        : ""),
                $"{shown.Length} stops without lock-up. The band is what the stops leave open."
                    + (bends ? " The line bends where the valve begins to hold the rear back." : "")
                    + (others ? " Stops at other turns of the adjuster lie off the line, not off their rings." : ""))
            .X("Front line pressure", "p₁", Measure.LinePressure, 0, top)
            .Y("Deceleration", "z", Measure.InG, 0)
            .Band("90 % interval", pressures, rates.Select(r => r.Low).ToArray(), rates.Select(r => r.High).ToArray(), Tone.Ideal)
            .Line(others ? $"estimated car, {Set(turns)}" : "estimated car", pressures, rates.Select(r => r.Estimate).ToArray(), Tone.Main);
        if (shown.Length > 0)
        {
            if (others)
            {
                figure.Points("estimated, own turns", shown.Select(s => s.FrontPressure!.Value).ToArray(), foretold, Tone.Main,
                    Marker.Ring, size: 11);
            }

            figure.Points("measured stops", shown.Select(s => s.FrontPressure!.Value).ToArray(), shown.Select(Rate)
                .ToArray(), Tone.Front, Marker.Circle);
        }

        return figure
            .Table(table => table
                .Column("Front line pressure", Measure.LinePressure, pressures.Where((_, i) => i % 4 == 3).ToArray())
                .Column("Deceleration", Measure.InG, rates.Where((_, i) => i % 4 == 3).Select(r => r.Estimate).ToArray())
                .Column("Lower bound", Measure.Number, rates.Where((_, i) => i % 4 == 3).Select(r => r.Low).ToArray())
                .Column("Upper bound", Measure.Number, rates.Where((_, i) => i % 4 == 3).Select(r => r.High).ToArray()))
            .Build();
    }

    private static string Set(double? turns) => turns is { } set ? SettingWords.Turns(set) : "the knee of the file";

    /// <summary>Rear against front brake force: the car of the file, the estimated car with its band, and the lock events.</summary>
    /// <param name="estimate">The estimate.</param>
    /// <param name="file">The car as the vehicle file has it.</param>
    /// <param name="stops">The stops the estimate was made from.</param>
    /// <param name="loadCase">The load case shown.</param>
    /// <param name="turns">Turns of the adjuster that the lines are drawn for; null for the knee of the file.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure LockEvents(CarEstimate estimate, Vehicle file, IReadOnlyList<TestStop> stops, LoadCase loadCase,
        double? turns = null, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("lock-events", units);
        Vehicle found = estimate.Apply();
        BalanceModel after = new(found, found.LoadCase(loadCase.Name)), before = new(file, file.LoadCase(loadCase.Name));
        StopForecast At(double bars) =>
            estimate.Forecast(new TestStop { LoadCase = loadCase.Name, FrontPressure = Pressure.FromBars(bars), Turns = turns })!;

        // Engine braking, or rear brakes that work before a metering valve lets the front begin, may be more than the road takes.
        StopForecast least = At(FinestStepBars);
        ForceWindow road = ForceWindow.Of([after], 0.95);
        (double front, double rear) = new ForceWindow(
            Force.FromNewtons(Math.Max(road.Front.Newtons, WithRoom * least.FrontForce.Estimate.Newtons)),
            Force.FromNewtons(Math.Max(road.Rear.Newtons, WithRoom * least.RearForce.High.Newtons))).Rounded();
        TestStop[] told = [.. Of(stops, loadCase).Where(s => s.Locked is not null)];
        (double X, double Y)[] PointsOf(params FirstLock[] which) => [.. told.Where(s => which.Contains(s.Locked!.Value))
            .Select(s => estimate.Forecast(s.LockPressure is { } p ? s with { FrontPressure = p } : s)).OfType<StopForecast>()
            .Select(f => (f.FrontForce.Estimate.Newtons, f.RearForce.Estimate.Newtons)).Where(p => p.Item1 <= front && p.Item2 <= rear)];
        int Count(params FirstLock[] which) => told.Count(s => which.Contains(s.Locked!.Value));
        int rearLocks = Count(FirstLock.Rear, FirstLock.Together), frontLocks = Count(FirstLock.Front);
        (double X, double Y)[] none = PointsOf(FirstLock.None), fronts = PointsOf(FirstLock.Front),
            rears = PointsOf(FirstLock.Rear, FirstLock.Together);
        PerAxle<Force>[] ideal =
            [.. Enumerable.Range(0, 81).Select(i => after.IdealForces(after.RearLiftOffRate * i / 80))
            .Where(f => f.Front.Newtons <= front)];
        Pressure[] pressures = [];
        StopForecast[] line = [];
        for (double bars = 3; line.Length < 2 && bars > FinestStepBars; bars /= 2)
        {
            pressures = [.. Enumerable.Range(1, Steps).Select(i => Pressure.FromBars(bars * i))];
            line =
            [
                .. pressures.Select(p => At(p.Bars)).Where(f => f.FrontForce.Estimate.Newtons <= front && f.RearForce.High.Newtons <= rear),
            ];
        }

        BalancePoint[] filed = [.. pressures.Select(before.At)
            .Where(p => p.BrakingForces.Front.Newtons <= front && p.BrakingForces.Rear.Newtons <= rear)];
        figure
            .Title(rearLocks > 0 ? $"In {rearLocks} of {told.Length} stops the rear locked first or with the front"
                : $"No stop locked the rear first; the front locked in {frontLocks} of {told.Length}")
            .Describe(
                $"Rear against front brake force, {loadCase.Name}: "
                    + "ideal curve, the car of the file, the estimated car with its band, and every stop where it ended.",
                "A stop is drawn at the forces the estimated car makes at its pressures: where it held without lock-up, "
                    + "at the pressure noted at lock-up, or, where none was noted, at the highest pressure of the stop. "
                    + $"{Count(FirstLock.None)} stops without lock-up, {frontLocks} with the front first, "
                    + $"{rearLocks} with the rear first or both."
                    + (told.Length - none.Length - fronts.Length - rears.Length is > 0 and int left
                        ? $" {left} of them are not drawn: no pressure was noted, or they lie outside the picture." : ""))
            .X("Front brake force", "T₁", Measure.BrakeForce, 0, front)
            .Y("Rear brake force", "T₂", Measure.BrakeForce, 0, rear)
            .Line("ideal distribution", ideal.Select(f => f.Front).ToArray(), ideal.Select(f => f.Rear)
                .ToArray(), Tone.Ideal, Dash.LongDash, 2.2, labelAt: 0.9)
            .Band("90 % interval", line.Select(f => f.FrontForce.Estimate).ToArray(), line.Select(f => f.RearForce.Low)
                .ToArray(), line.Select(f => f.RearForce.High).ToArray(), Tone.Guide, label: "");
        if (filed.Length > 0)
        {
            figure.Line("file", filed.Select(p => p.BrakingForces.Front).ToArray(), filed.Select(p => p.BrakingForces.Rear)
                .ToArray(), Tone.Other, Dash.Dash, 1.8, labelAt: 0.9);
        }

        figure.Line("estimated", line.Select(f => f.FrontForce.Estimate).ToArray(), line.Select(f => f.RearForce.Estimate)
            .ToArray(), Tone.Main, Dash.Solid, 2.6, labelAt: 0.75);
        Mark(figure, "nothing locked", none, Tone.Guide, Marker.Ring);
        Mark(figure, "front locked first", fronts, Tone.Front, Marker.Square);
        Mark(figure, "rear locked first", rears, Tone.Rear, Marker.Triangle);
        return figure.Table(table => table
            .Column("Front brake force", Measure.BrakeForce, line.Select(f => f.FrontForce.Estimate).ToArray())
            .Column("Rear brake force", Measure.BrakeForce, line.Select(f => f.RearForce.Estimate).ToArray())
            .Column("Lower bound", Measure.BrakeForce, line.Select(f => f.RearForce.Low).ToArray())
            .Column("Upper bound", Measure.BrakeForce, line.Select(f => f.RearForce.High).ToArray())).Build();
    }

    private static void Mark(FigureBuilder figure, string name, (double X, double Y)[] points, Tone tone, Marker shape)
    {
        if (points.Length > 0)
        {
            figure.Points(name, points.Select(p => p.X).ToArray(), points.Select(p => p.Y).ToArray(), tone, shape);
        }
    }

    private static IEnumerable<TestStop> Of(IEnumerable<TestStop> stops, LoadCase load) =>
        stops.Where(s => s.LoadCase is null || string.Equals(s.LoadCase, load.Name, StringComparison.OrdinalIgnoreCase));

    private static double Rate(TestStop stop) => stop.Deceleration!.Value.MetersPerSecondSquared / Gravity.StandardMetresPerSecondSquared;
}
