using BrakeBalance.Stops;
using BrakeBalance.Tyres;
using UnitsNet;

namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of a stop: each takes what the calculation assembly answers and draws it.</summary>
public static partial class StopFigures
{
    /// <summary>Adhesion against slip, with the greatest value and the locked wheel marked.</summary>
    /// <param name="curves">The curves; at most five.</param>
    /// <param name="wheelLoad">Normal reaction of one wheel; above zero.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure.</returns>
    public static Figure SlipCurves(IReadOnlyList<SlipCurve> curves, Force wheelLoad, UnitSystem? units = null, string id = "slip-curves")
    {
        var figure = new FigureBuilder(id, units);
        double[] slips = [.. Enumerable.Range(0, 101).Select(i => i / 100.0 * (i / 100.0))];
        SlipCurve first = curves[0];
        double peak = first.PeakAdhesion(wheelLoad);
        double locked = first.LockedAdhesion(wheelLoad);
        figure
            .Title($"A locked wheel on {first.Name} keeps {Percent(locked / peak)} of its best grip")
            .Describe(
                $"Adhesion against slip at a wheel load of {figure.Text(Measure.BrakeForce, wheelLoad)}. 0 % slip: rolling freely; 100 %: locked.",
                "Adhesion rises steeply to a peak at small slip and falls towards the locked wheel.",
                string.Join(' ', curves.Select(curve =>
                    $"On {curve.Name} adhesion is greatest, {Number(curve.PeakAdhesion(wheelLoad))}, at {Percent(curve.PeakSlip(wheelLoad))} slip, and {Number(curve.LockedAdhesion(wheelLoad))} with the wheel locked.")))
            .X("Slip", "s", Measure.Percent, 0, 1)
            .Y("Adhesion coefficient", "μ", Measure.Number, 0);
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        Tone[] tones = [Tone.Main, Tone.Front, Tone.Other, Tone.Ideal, Tone.Rear];
        foreach ((int i, SlipCurve curve) in curves.Index())
        {
            figure.Line(curve.Name, slips, slips.Select(s => curve.AdhesionCoefficient(s, wheelLoad)).ToArray(), tones[i % 5], dashes[i % 5], labelAt: 0.8);
        }

        figure.Points(
            "greatest adhesion", curves.Select(c => c.PeakSlip(wheelLoad)).ToArray(), curves.Select(c => c.PeakAdhesion(wheelLoad)).ToArray(), Tone.Main, Marker.Ring, label: "");
        return figure.Build();
    }

    /// <summary>Heading against time of several stops.</summary>
    /// <param name="stops">Name and outcome of each; at most five, all with traces.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure.</returns>
    public static Figure Headings(IReadOnlyList<(string Name, YawResult Stop)> stops, UnitSystem? units = null, string id = "headings")
    {
        var figure = new FigureBuilder(id, units);
        (string name, YawResult worst) = stops.MaxBy(s => s.Stop.GreatestSideslip);
        figure
            .Title(worst.SwapsEnds
                ? $"{Finding.Capital(name)}: square to the road after {worst.SidewaysAt!.Value.Seconds.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture)} s"
                : "No case turns the car square to the road")
            .Describe(
                "Heading of the car against its first direction of travel, with the steering wheel held still.",
                "Heading against time for each case; past 90 degrees the rear leads.",
                string.Join(' ', stops.Select(s => Finding.Capital(Outcome(s.Name, s.Stop)))))
            .X("Time since the foot touched the pedal", "t", Measure.Time, 0)
            .Y("Heading without sign", "ψ", Measure.Angle, 0)
            .Level("square to the road", Math.PI / 2, Tone.Guide);
        Dash[] dashes = [Dash.Solid, Dash.Dash, Dash.DashDot, Dash.LongDash, Dash.Dot];
        foreach ((int i, (string caseName, YawResult stop)) in stops.Index())
        {
            figure.Line(
                caseName, stop.Trace.Select(s => s.TimeSeconds).ToArray(), stop.Trace.Select(s => Math.Abs(s.HeadingRadians)).ToArray(),
                CaseTone(caseName, i), dashes[i % 5]);
        }

        return figure.Build();
    }

    /// <summary>Braking rate at which the first wheel is at its limit, against the lateral acceleration of a bend.</summary>
    /// <param name="setup">The car on its surface.</param>
    /// <param name="speed">Speed at which lift is taken.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    /// <returns>The figure.</returns>
    public static Figure BrakingInABend(StopSetup setup, Speed speed, UnitSystem? units = null, string id = "bend")
    {
        var figure = new FigureBuilder(id, units);
        List<(double Lateral, TurnLock Lock)> found = [];
        for (double lateral = 0; lateral < 2; lateral += 0.01)
        {
            if (TurnBraking.FirstLock(setup.Car, Acceleration.FromStandardGravity(lateral), setup.FrontRollShare, speed) is not { } turn)
            {
                break;
            }

            found.Add((lateral, turn));
        }

        if (found.Count == 0)
        {
            throw new ArgumentException("No pressure brings a wheel to its limit even straight on, so there is nothing to show.", nameof(setup));
        }

        string Wheel(TurnLock turn) => $"{(turn.Axle == Axle.Front ? "front" : "rear")} {(turn.Side == BendSide.Inner ? "inner" : "outer")} wheel first";
        TurnLock middle = found[found.Count / 2].Lock;
        figure
            .Title($"Half-way to the limit of the bend: {Wheel(middle)}, at {Number(middle.BrakingRate)} g")
            .Describe(
                $"Highest braking rate before a wheel locks, for the {setup.Car.Name} on an adhesion of {Number(setup.Adhesion)}. Steady bend; equal pressure left and right.",
                "The braking rate at first lock falls as the lateral acceleration rises.",
                $"Straight on the first wheel locks at {Number(found[0].Lock.BrakingRate)} g. With more lateral acceleration less braking is left; at {Number(found[^1].Lateral)} g sideways it is {Number(found[^1].Lock.BrakingRate)} g.")
            .X("Lateral acceleration over g", "a/g", Measure.Number, 0)
            .Y("Braking rate at first lock", "z", Measure.Number, 0);
        foreach (var run in Runs(found, f => Wheel(f.Lock)))
        {
            bool front = run[0].Lock.Axle == Axle.Front;
            figure.Line(
                Wheel(run[0].Lock), run.Select(f => f.Lateral).ToArray(), run.Select(f => f.Lock.BrakingRate).ToArray(),
                front ? Tone.Front : Tone.Rear, front ? Dash.Solid : Dash.Dash, 3);
        }

        return figure
            .Table(table => table
                .Column("Lateral acceleration over g", Measure.Number, found.Where((_, i) => i % 5 == 0).Select(f => f.Lateral).ToArray())
                .Words("First wheel", found.Where((_, i) => i % 5 == 0).Select(f => Wheel(f.Lock)))
                .Column("Braking rate", Measure.Number, found.Where((_, i) => i % 5 == 0).Select(f => f.Lock.BrakingRate).ToArray())
                .Column("Line pressure", Measure.LinePressure, found.Where((_, i) => i % 5 == 0).Select(f => f.Lock.LinePressure).ToArray()))
            .Build();
    }

    internal static string Outcome(string name, YawResult stop) => stop.SwapsEnds
        ? $"{name}: square to the road after {Number(stop.SidewaysAt!.Value.Seconds)} s, heading {Degrees(stop.FinalHeading)} at standstill."
        : $"{name}: at most {Degrees(stop.GreatestSideslip)} out of line, heading {Degrees(stop.FinalHeading)} at standstill.";

    internal static Tone CaseTone(string name, int place) => name.Contains("rear", StringComparison.OrdinalIgnoreCase) ? Tone.Rear
        : name.Contains("front", StringComparison.OrdinalIgnoreCase) ? Tone.Front
        : place % 2 == 0 ? Tone.Main : Tone.Ideal;

    internal static string Number(double value) => Measure.Number.Text(value, UnitSystem.Si);

    private static string Percent(double value) => Measure.Percent.Text(value, UnitSystem.Si);

    private static string Degrees(Angle angle) => angle.Degrees.ToString("0", System.Globalization.CultureInfo.InvariantCulture) + "°";

    private static IEnumerable<List<T>> Runs<T>(IReadOnlyList<T> items, Func<T, string> kind)
    {
        List<T> run = [items[0]];
        foreach (T item in items.Skip(1))
        {
            if (kind(item) != kind(run[^1]))
            {
                // The line ends where the next one begins.
                List<T> finished = [.. run, item];
                yield return finished;
                run = [];
            }

            run.Add(item);
        }

        yield return run;
    }
}
