namespace BrakeBalance.Charts.Figures;

public static partial class StopFigures
{
    // Cars are drawn larger than the road so that their heading can be seen on a phone.
    private const double CarScale = 2.2;

    /// <summary>Cars on the road seen from above at one moment, one lane a case.</summary>
    /// <param name="stops">Name and outcome of each case, top lane first; at most four, all with traces.</param>
    /// <param name="wheelbase">Wheelbase of the cars.</param>
    /// <param name="moment">Time in seconds since the foot touched the pedal.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <param name="aspect">Height over width of the road [–]; above zero.</param>
    public static Figure PlanView(
        IReadOnlyList<(string Name, YawResult Stop)> stops, Length wheelbase, double moment, UnitSystem? units = null, string id = "plan",
        double aspect = 0.45)
    {
        var figure = new FigureBuilder(id, units, stops[0].Stop.Car.Vehicle);
        double length = 1.12 * stops.Max(s => s.Stop.Trace.Max(t => t.AlongMetres)) + 8;
        double lane = length * aspect / stops.Count;
        string[] now = [.. stops.Select(s => NowWords(At(s.Stop, moment)))];
        figure
            .Title(Turns(stops))
            .Describe(
                $"{stops[0].Stop.Car.Name}, from above, to scale; the cars are "
                    + Invariant.Text($"drawn {CarScale:0.0} times their size. Thick bar: locked axle; point: nose."),
                string.Join(' ', stops.Select(s => Finding.Capital(Outcome(s.Name, s.Stop)))))
            .ToScale()
            .X("Way along the road", "x", Measure.Distance, -4, length)
            .Y("Across the road, lanes one above the other", "y", Measure.Distance, 0, lane * stops.Count)
            .Table(table => table
                .Words("Case", stops.Select(s => s.Name))
                .Words("Now", now)
                .Column("Way along the road", Measure.Distance, stops.Select(s => At(s.Stop, moment).AlongMetres).ToArray())
                .Column("Way across", Measure.Distance, stops.Select(s => At(s.Stop, moment).AcrossMetres).ToArray())
                .Column("Heading", Measure.Angle, stops.Select(s => At(s.Stop, moment).HeadingRadians).ToArray())
                .Column("Speed", Measure.Speed, stops.Select(s => At(s.Stop, moment).SpeedMetresPerSecond).ToArray()));
        foreach ((int i, (string caseName, YawResult stop)) in stops.Index())
        {
            double centre = lane * (stops.Count - i - 0.5);
            Tone tone = CaseTone(caseName, i);
            figure.Line($"lane {i + 1}", [-4, length], [centre, centre], Tone.Guide, Dash.Dot, 1, "");
            figure.Note(caseName, length * 0.03, centre + 0.38 * lane, tone);
            YawSample[] past = [.. stop.Trace.Where(s => s.TimeSeconds <= moment + 1e-9)];
            if (past.Length > 1)
            {
                figure.Line(
                    $"path, {caseName}", past.Select(s => s.AlongMetres).ToArray(), past.Select(s => centre + s.AcrossMetres)
                        .ToArray(), tone, Dash.Solid, 1.5, "");
            }

            AddCar(figure, At(stop, moment), caseName, centre, wheelbase.Meters * CarScale, tone);
        }

        return figure.Build();
    }

    internal static YawSample At(YawResult stop, double seconds)
    {
        IReadOnlyList<YawSample> trace = stop.Trace;
        int after = 0;
        while (after < trace.Count && trace[after].TimeSeconds <= seconds)
        {
            after++;
        }

        return trace[Math.Max(0, after - 1)];
    }

    private static string NowWords(YawSample now)
    {
        string wheels = (now.Wheels.Front, now.Wheels.Rear) switch
        {
            (WheelState.Locked, WheelState.Locked) => "all wheels locked",
            (WheelState.Locked, _) => "front locked",
            (_, WheelState.Locked) => "rear locked",
            _ => "wheels rolling",
        };
        return $"{wheels}, heading {Degrees(Angle.FromRadians(now.HeadingRadians))}";
    }

    private static void AddCar(FigureBuilder figure, YawSample now, string name, double centre, double wheelbase, Tone tone)
    {
        double half = 0.30 * wheelbase;
        double front = 0.5 * wheelbase;
        double overhang = 0.30 * wheelbase;
        (double X, double Y)[] body =
        [
            (-front - overhang, -half), (front + 0.4 * overhang, -half), (front + 1.5 * overhang, 0), (front + 0.4 * overhang, half),
                (-front - overhang, half),
            (-front - overhang, -half),
        ];
        (double sin, double cos) = Math.SinCos(now.HeadingRadians);
        double[] xs = [.. body.Select(p => now.AlongMetres + p.X * cos - p.Y * sin)];
        double[] ys = [.. body.Select(p => centre + now.AcrossMetres + p.X * sin + p.Y * cos)];
        figure.Region($"body, {name}", xs, ys, tone, Hatch.None, "");
        figure.Line($"outline, {name}", xs, ys, tone, Dash.Solid, 1.5, "");
        AddAxle(figure, now, $"front axle, {name}", front, half, centre, sin, cos, now.Wheels.Front == WheelState.Locked);
        AddAxle(figure, now, $"rear axle, {name}", -front, half, centre, sin, cos, now.Wheels.Rear == WheelState.Locked);
    }

    private static void AddAxle(
        FigureBuilder figure, YawSample now, string name, double at, double half, double centre, double sin, double cos, bool locked)
    {
        double[] xs = [now.AlongMetres + at * cos + 1.15 * half * sin, now.AlongMetres + at * cos - 1.15 * half * sin];
        double[] ys = [centre + now.AcrossMetres + at * sin - 1.15 * half * cos, centre + now.AcrossMetres + at * sin + 1.15 * half * cos];
        figure.Line(name, xs, ys, Tone.Main, Dash.Solid, locked ? 5 : 1.5, "");
    }
}
