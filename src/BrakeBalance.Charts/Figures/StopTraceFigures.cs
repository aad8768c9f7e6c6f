using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Charts.Figures;

public static partial class StopFigures
{
    /// <summary>Speed against time.</summary>
    /// <param name="stop">A stop with its trace.</param>
    /// <param name="moment">Time in seconds to mark; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure SpeedOverTime(StopResult stop, double? moment = null, UnitSystem? units = null, string id = "stop-speed")
    {
        FigureBuilder figure = OverTime(id, units, stop, moment)
            .Title($"From {Text(Measure.Speed, stop.InitialSpeed, units)} the car stops in {Text(Measure.Distance, stop.Distance, units)}")
            .Describe(
                $"{stop.Car.Name}: speed of the car and of its tyres' circumference. Driver: {stop.Driver}, "
                    + $"holding {Text(Measure.LinePressure, stop.HeldPressure, units)} in front.",
                LockWords(stop))
            .Y("Speed", "v", Measure.Speed, 0);
        return figure
            .Line("car", Times(stop), Of(stop, s => s.SpeedMetresPerSecond), Tone.Main, Dash.Solid)
            .Line("front tyres", Times(stop), Of(stop, s => s.SpeedMetresPerSecond * (1 - s.Slip.Front)), Tone.Front, Dash.Dash)
            .Line("rear tyres", Times(stop), Of(stop, s => s.SpeedMetresPerSecond * (1 - s.Slip.Rear)), Tone.Rear, Dash.DashDot)
            .Build();
    }

    /// <summary>Deceleration against time.</summary>
    /// <param name="stop">A stop with its trace.</param>
    /// <param name="moment">Time in seconds to mark; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure DecelerationOverTime(StopResult stop, double? moment = null, UnitSystem? units = null,
        string id = "stop-deceleration")
    {
        double highest = stop.Trace.Max(s => s.DecelerationMetresPerSecondSquared);
        return OverTime(id, units, stop, moment)
            .Title($"Deceleration peaks at {StopFigures.Number(highest / Gravity.StandardMetresPerSecondSquared)} g")
            .Describe($"{stop.Car.Name}: deceleration from {Text(Measure.Speed, stop.InitialSpeed, units)}.", LockWords(stop))
            .Y("Deceleration", "z", Measure.Deceleration, 0)
            .Line("deceleration", Times(stop), Of(stop, s => s.DecelerationMetresPerSecondSquared), Tone.Main)
            .Build();
    }

    /// <summary>Normal reaction and braking force of each axle against time.</summary>
    /// <param name="stop">A stop with its trace.</param>
    /// <param name="moment">Time in seconds to mark; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure LoadsOverTime(StopResult stop, double? moment = null, UnitSystem? units = null, string id = "stop-loads") =>
        OverTime(id, units, stop, moment)
            .Title("The front axle carries up "
                + $"to {Text(Measure.BrakeForce, Force.FromNewtons(stop.Trace.Max(s => s.NormalReactionNewtons.Front)), units)}")
            .Describe($"{stop.Car.Name}: load and braking force of each axle.", LockWords(stop))
            .Y("Force", "N, T", Measure.BrakeForce, 0)
            .Line("load, front", Times(stop), Of(stop, s => s.NormalReactionNewtons.Front), Tone.Front, Dash.Dash)
            .Line("load, rear", Times(stop), Of(stop, s => s.NormalReactionNewtons.Rear), Tone.Rear, Dash.Dash)
            .Line("braking, front", Times(stop), Of(stop, s => s.BrakingForceNewtons.Front), Tone.Front)
            .Line("braking, rear", Times(stop), Of(stop, s => s.BrakingForceNewtons.Rear), Tone.Rear)
            .Build();

    /// <summary>The course of an actual stop on the picture of rear against front brake force.</summary>
    /// <param name="model">The car in its load case.</param>
    /// <param name="stop">A stop of that car with its trace.</param>
    /// <param name="adhesion">Adhesion of the surface [–].</param>
    /// <param name="moment">Time in seconds to mark; null for none.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure ForceCourse(BalanceModel model, StopResult stop, double adhesion, double? moment = null, UnitSystem? units = null,
        string id = "force-course")
    {
        var figure = new FigureBuilder(id, units, model.Vehicle);
        double top = Math.Min(model.GreatestRate(Math.Max(adhesion, 0.6)) * 1.05, model.RearLiftOffRate * 0.999);
        PerAxle<Force>[] ideal = [.. Enumerable.Range(0, 61).Select(i => model.IdealForces(top * i / 60))];
        double right = 1.1 * Math.Max(ideal.Max(f => f.Front.Newtons), stop.Trace.Max(s => s.BrakingForceNewtons.Front));
        BalanceState[] installed =
            [.. Enumerable.Range(0, 301).Select(i => model.StateAt(model.MaximumPressure.Pascals * i / 300))
            .Where(s => s.FrontForceNewtons <= right)];
        double upper = 1.35 * Math.Max(ideal.Max(f => f.Rear.Newtons), stop.Trace.Max(s => s.BrakingForceNewtons.Rear));
        figure
            .Title(stop.FirstLock is null ? $"No axle locks up to {Text(Measure.BrakeForce, Most(stop), units)} of braking"
                : $"The {(stop.FirstLock == Axle.Front ? "front" : "rear")} tyres are past their peak from "
                    + $"{Number(Leaves(stop, stop.FirstLock.Value))} g on; {First(stop)}, "
                    + $"at {Number(stop.Locks[stop.FirstLock.Value]!.BrakingRate)} g")
            .Describe(
                $"Braking forces at the road during the stop, on the ideal and the installed distribution; {stop.Car.Name}. "
                    + "Up to a tyre's peak the stop runs beside the installed line: brakes also slow the wheels.",
                LockWords(stop))
            .X("Front brake force", "T₁", Measure.BrakeForce, 0, right)
            .Y("Rear brake force", "T₂", Measure.BrakeForce, 0, upper)
            .Line("ideal", ideal.Select(f => f.Front.Newtons).ToArray(), ideal.Select(f => f.Rear.Newtons).ToArray(), Tone.Ideal, Dash.Dash)
            .Line("installed", installed.Select(s => s.FrontForceNewtons).ToArray(), installed.Select(s => s.RearForceNewtons)
                .ToArray(), Tone.Guide, Dash.DashDot)
            .Line("this stop", Of(stop, s => s.BrakingForceNewtons.Front), Of(stop, s => s.BrakingForceNewtons.Rear), Tone.Main, Dash.Solid,
                2.5);
        foreach (LockEvent? at in new[] { stop.Locks.Front, stop.Locks.Rear })
        {
            if (at is not null)
            {
                StopSample sample = stop.Trace.First(s => s.TimeSeconds >= at.Time.Seconds);
                bool front = at.Axle == Axle.Front;
                figure.Points(
                    front ? "front locks" : "rear locks", [sample.BrakingForceNewtons.Front], [sample.BrakingForceNewtons.Rear],
                    front ? Tone.Front : Tone.Rear, front ? Marker.Square : Marker.Triangle);
            }
        }

        if (moment is { } time)
        {
            StopSample now = At(stop, time);
            figure.Points("now", [now.BrakingForceNewtons.Front], [now.BrakingForceNewtons.Rear], Tone.Other, Marker.Circle, size: 11);
        }

        return figure.Build();
    }

    /// <summary>Stopping distances of several set-ups and drivers side by side.</summary>
    /// <param name="rows">The set-ups.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure Distances(IReadOnlyList<StopComparisonRow> rows, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("distances", units, rows[0].Emergency.Car.Vehicle);
        StopComparisonRow best = rows.OrderBy(r => r.IsBeyond)
            .ThenBy(r => r.Threshold?.Distance.Meters ?? r.Emergency.Distance.Meters).First();
        StopComparisonRow[] beyond = [.. rows.Where(r => r.IsBeyond)];
        figure
            .Title($"{Finding.Capital(best.Name)}{(best.IsBeyond ? " (beyond the safe limit)" : "")}: "
                + $"shortest stop{(beyond.Length > 0 && !best.IsBeyond ? " with the front first" : "")}, just below lock-up, "
                + $"{figure.Text(Measure.Distance, (best.Threshold ?? best.Emergency).Distance)}")
            .Describe(
                $"{best.Emergency.Car.Name}: stopping distance from {figure.Text(Measure.Speed, best.Emergency.InitialSpeed)}, "
                    + "pressure build-up included. The bound is no real anti-lock system."
                    + (beyond.Length == 0 ? ""
                        : $" Beyond the safe limit (the rear can lock first): {string.Join("; ", beyond.Select(r => r.Name))}."),
                string.Join(' ', rows.Select(r =>
                    $"{r.Name}: full pressure, wheels locked {figure.Text(Measure.Distance, r.Emergency.Distance)}, {First(r.Emergency)}; "
                        + (r.Threshold is { } just ? $"just below lock-up {figure.Text(Measure.Distance, just.Distance)}; " : "")
                        + $"bound {figure.Text(Measure.Distance, r.Bound.Distance)}"
                        + (r.RearFirst is { } rear
                            ? $"; beyond the safe limit, the rear can lock first in {rear.Words(figure.Units)}."
                            : r.IsBeyond ? "; beyond the safe limit of the car's own stops." : "."))))
            .Categories("Set-up", rows.Select(r => r.Name))
            .Y("Stopping distance", "s", Measure.Distance, 0)
            .Bars("full pressure, wheels locked", rows.Select(r => r.Emergency.Distance).ToArray(), Tone.Rear, Hatch.Rising)
            .Bars("just below lock-up", rows.Select(r => (r.Threshold ?? r.Emergency).Distance).ToArray(), Tone.Front)
            .Bars("anti-lock bound", rows.Select(r => r.Bound.Distance).ToArray(), Tone.Guide, Hatch.Dots)
            .Table(StopTables.SideBySide(rows, figure.Units));
        return figure.Build();
    }

    internal static StopSample At(StopResult stop, double seconds) =>
        stop.Trace.LastOrDefault(s => s.TimeSeconds <= seconds + 1e-9) is { TimeSeconds: > 0 } sample ? sample : stop.Trace[0];

    internal static string First(StopResult stop) => stop.FirstLock switch
    {
        Axle.Front => "the front axle locks first",
        Axle.Rear => "the rear axle locks first",
        _ => "no axle locks",
    };

    internal static string LockWords(StopResult stop)
    {
        string[] words = [.. new[] { stop.Locks.Front, stop.Locks.Rear }.OfType<LockEvent>().OrderBy(l => l.Time.Seconds).Select(l =>
            $"The {(l.Axle == Axle.Front ? "front" : "rear")} axle locks after {Number(l.Time.Seconds)} s at {Number(l.BrakingRate)} g.")];
        return words.Length == 0
            ? $"No axle locks: the wheels roll until the car stands after {Number(stop.Duration.Seconds)} s."
            : string.Join(' ', words);
    }

    private static FigureBuilder OverTime(string id, UnitSystem? units, StopResult stop, double? moment)
    {
        FigureBuilder figure = new FigureBuilder(id, units, stop.Car.Vehicle)
            .X("Time since the foot touched the pedal", "t", Measure.Time, 0, stop.Duration.Seconds);
        foreach (LockEvent? at in new[] { stop.Locks.Front, stop.Locks.Rear })
        {
            if (at is not null)
            {
                bool front = at.Axle == Axle.Front;
                figure.Upright(front ? "front locks"
                    : "rear locks", at.Time.Seconds, front ? Tone.Front : Tone.Rear, front ? Dash.Dash : Dash.DashDot);
            }
        }

        return moment is { } time ? figure.Upright("now", time, Tone.Other, Dash.Solid) : figure;
    }

    // Past the peak of its tyres an axle brakes less, however much its brakes could; it locks a moment later.
    private static double Leaves(StopResult stop, Axle first) =>
        stop.Trace.TakeWhile(s => s.TimeSeconds <= stop.Locks[first]!.Time.Seconds).MaxBy(s => s.BrakingForceNewtons[first])
            .DecelerationMetresPerSecondSquared / Gravity.StandardMetresPerSecondSquared;

    private static Force Most(StopResult stop) =>
        Force.FromNewtons(stop.Trace.Max(s => s.BrakingForceNewtons.Front + s.BrakingForceNewtons.Rear));

    private static double[] Times(StopResult stop) => Of(stop, s => s.TimeSeconds);

    private static double[] Of(StopResult stop, Func<StopSample, double> value) => [.. stop.Trace.Select(value)];

    private static string Text(Measure measure, IQuantity quantity, UnitSystem? units) => measure.Text(quantity, units ?? Display.Units);
}
