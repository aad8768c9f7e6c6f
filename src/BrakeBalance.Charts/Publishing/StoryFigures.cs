using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

internal static class StoryFigures
{
    /// <summary>What a metering valve in the front line does, in plain words.</summary>
    public const string Metering = "At the very start another valve keeps the front brakes waiting.";

    /// <summary>Whether there is such a valve.</summary>
    public static bool HoldsFront(Vehicle vehicle) => vehicle.Hydraulics.FrontValves.OfType<MeteringValve>().Any();

    /// <summary>The car from the side, with what each pair of wheels carries, now and at rest.</summary>
    public static Figure Stop(
        BalanceModel model, double rate, (string Front, string Rear) shares, UnitSystem units, string id, string title)
    {
        PerAxle<Force> rest = model.StaticAxleLoads, now = model.NormalReactions(rate);
        double wheelbase = model.Vehicle.Wheelbase.Meters;
        FigureBuilder figure = new FigureBuilder(id, units, model.Vehicle)
            .Title(title)
            .Describe($"{Finding.Capital(model.Vehicle.InText)} to scale; how far it dips is exaggerated. "
                + "The arrows are what the road carries.",
                $"The front wheels carry {shares.Front} of the car, the rear wheels {shares.Rear}.")
            .Table(table => table.Words("Wheels", "front", "rear")
                .Column("Load now", Measure.BrakeForce, new[] { now.Front, now.Rear })
                .Column("Load at rest", Measure.BrakeForce, new[] { rest.Front, rest.Rear }))
            .Car(model, rate, "Behind the front wheels");
        foreach ((string name, double x, Force was, Force load, string share, Tone tone) in new[]
        {
            ("front", 0, rest.Front, now.Front, shares.Front, Tone.Front), ("rear", wheelbase, rest.Rear, now.Rear, shares.Rear, Tone.Rear),
        })
        {
            figure.Line($"{name} at rest", [x - 0.3, x + 0.3], [-model.Drawn(was), -model.Drawn(was)], Tone.Guide, Dash.Dash, 1.5,
                    name == "rear" ? "at rest" : "")
                .Arrow($"{name} {share}", name, x, -model.Drawn(load), 0, model.Drawn(load), tone, 0.3);
        }

        return figure.Build();
    }

    /// <summary>Rear against front braking, with the curve on which all wheels would lock together.</summary>
    public static FigureBuilder Plane(BalanceModel model, ForceWindow window, UnitSystem units, string id, bool danger)
    {
        var figure = new FigureBuilder(id, units, model.Vehicle);
        (double front, double rear) = window.Rounded();
        PerAxle<Force>[] ideal =
            [.. Enumerable.Range(0, 81).Select(i => model.IdealForces(model.RearLiftOffRate * i / 80))
            .TakeWhile(f => f.Front.Newtons <= 1.05 * front)];
        double[] x = [.. ideal.Select(f => f.Front.Newtons)], y = [.. ideal.Select(f => f.Rear.Newtons)];
        double right = Math.Max(front, x[^1]);
        figure.X("Braking by the front wheels", "", Measure.BrakeForce, 0, front)
            .Y("Braking by the rear wheels", "", Measure.BrakeForce, 0, rear)
            .Table(table =>
            {
                double[] rates = [.. Enumerable.Range(1, 10).Select(i => 0.1 * i)];
                table.Column("Braking", Measure.InG, rates)
                    .Column("Front, this car", Measure.BrakeForce, rates.Select(z => model.AtRate(z)?.BrakingForces.Front.Newtons))
                    .Column("Rear, this car", Measure.BrakeForce, rates.Select(z => model.AtRate(z)?.BrakingForces.Rear.Newtons))
                    .Column("Front, perfect split", Measure.BrakeForce, rates.Select(z => model.IdealForces(z).Front).ToArray())
                    .Column("Rear, perfect split", Measure.BrakeForce, rates.Select(z => model.IdealForces(z).Rear).ToArray());
            });
        if (danger)
        {
            figure.Region("rear locks first: the car can spin", (double[])[.. x, right, right, 0],
                (double[])[.. y, y[^1], rear, rear], Tone.Rear, Hatch.Rising);
        }

        return figure.Line("perfect split", x, y, Tone.Ideal, Dash.LongDash, 2.4, labelAt: 0.8);
    }

    /// <summary>Adds the line of a car.</summary>
    public static FigureBuilder Installed(this FigureBuilder figure, BalanceModel model, ForceWindow window, string name,
        Tone tone = Tone.Main, Dash dash = Dash.Solid, double width = 3)
    {
        BalancePoint[] points = [.. InstalledLine.Of(model, between: 12).Where(p => p.BrakingForces.Front <= 1.2 * window.Front)];
        return figure.Line(name, points.Select(p => p.BrakingForces.Front).ToArray(), points.Select(p => p.BrakingForces.Rear).ToArray(),
            tone, dash, width, labelAt: 0.9);
    }

    /// <summary>Adds the knee, where the valve holds anything back and the picture reaches so far.</summary>
    public static FigureBuilder Bend(this FigureBuilder figure, BalanceModel model, double slope,
        Func<BalancePoint, (double X, double Y)> place, (double X, double Y) most)
    {
        foreach ((double x, double y) in model.RearKnees().Take(slope < 1 ? 1 : 0).Select(place)
            .Where(at => at.X <= most.X && at.Y <= most.Y))
        {
            figure.Points("knee", [x], [y]);
        }

        return figure;
    }

    /// <summary>Adds the ring of the first lock-up.</summary>
    public static FigureBuilder Mark(this FigureBuilder figure, LockUp? lockUp, Func<BalancePoint, (double X, double Y)> place)
    {
        if (lockUp is not null)
        {
            (double x, double y) = place(lockUp.At);
            figure.Points("first wheels lock", [x], [y], Tone.Other, Marker.Ring, size: 11);
        }

        return figure;
    }

    /// <summary>The place of a point in <see cref="Plane"/>.</summary>
    public static (double X, double Y) Forces(BalancePoint at) => (at.BrakingForces.Front.Newtons, at.BrakingForces.Rear.Newtons);

    /// <summary>What the valve lets through above the knee.</summary>
    public static string Passed(double slope) => slope switch
    {
        0 => "nothing more",
        1 => "all of any further pressure too",
        _ => Invariant.Text($"only {100 * slope:0} % of any further pressure"),
    };

    /// <summary>Rear against front fluid pressure, with the knee.</summary>
    public static Figure Valve(
        BalanceModel model, LockUp? lockUp, Pressure knee, double slope, Pressure highest, UnitSystem units, string id)
    {
        var figure = new FigureBuilder(id, units, model.Vehicle);
        double top = ForceWindow.Up(highest.Pascals, Measure.LinePressure.In(units));
        BalancePoint[] points = [.. InstalledLine.Of(model, Pressure.FromPascals(1.1 * top), between: 2)];
        bool holds = slope < 1;
        string at = SettingWords.Knee(knee, units);
        static (double, double) Place(BalancePoint at) => (at.LinePressures.Front.Pascals, at.LinePressures.Rear.Pascals);
        return figure
            .Title(holds ? $"Above {at} the valve lets {Passed(slope)} through to the rear"
                : "The valve lets everything through to the rear")
            .Describe(
                "Pressure of the brake fluid at the rear wheels over that at the front wheels."
                    + (HoldsFront(model.Vehicle) ? " " + Metering : ""),
                lockUp is null ? "No wheel locks."
                    : $"When the first wheels lock, the pressure is {figure.Text(Measure.LinePressure, lockUp.At.LinePressures.Front)} "
                        + $"at the front and {figure.Text(Measure.LinePressure, lockUp.At.LinePressures.Rear)} at the rear.")
            .X("Pressure at the front brakes", "", Measure.LinePressure, 0, top)
            .Y("Pressure at the rear brakes", "", Measure.LinePressure, 0, top)
            .Line("equal pressures", [0, top], [0, top], Tone.Guide, Dash.Dot, 1.4, labelAt: 0.85)
            .Line("this car", points.Select(p => p.LinePressures.Front).ToArray(), points.Select(p => p.LinePressures.Rear)
                .ToArray(), Tone.Main, Dash.Solid, 3, labelAt: 0.7)
            .Bend(model, slope, Place, (top, top)).Mark(lockUp, Place)
            .Table(table =>
            {
                BalancePoint[] rows = [.. Enumerable.Range(0, 9).Select(i => model.At(Pressure.FromPascals(top * i / 8)))];
                table.Column("Pressure at the front brakes", Measure.LinePressure, rows.Select(r => r.LinePressures.Front).ToArray())
                    .Column("Pressure at the rear brakes", Measure.LinePressure, rows.Select(r => r.LinePressures.Rear).ToArray());
            }).Build();
    }

    /// <summary>How much of its own grip each pair of wheels uses when the first pair locks.</summary>
    public static Figure Wheels(BalanceModel model, LockUp? lockUp, UnitSystem units, string id)
    {
        double front = Used(Axle.Front), rear = Used(Axle.Rear);
        return new FigureBuilder(id, units, model.Vehicle)
            .Title(lockUp is null ? "No wheel is at its limit" : lockUp.First switch
            {
                Axle.Rear => $"When the rear lets go, the front uses {Text(front)} of its grip",
                Axle.Front => $"When the front lets go, the rear uses {Text(rear)} of its grip",
                _ => "Front and rear let go at the same moment",
            })
            .Describe(
                "Share of its own grip that each pair of wheels uses at the moment the first pair locks. "
                    + "The pair with something left keeps rolling.",
                $"Front wheels {Text(front)}, rear wheels {Text(rear)} of the grip they have with the weight that then rests on them.")
            .Categories("Wheels", "front", "rear")
            .Y("Share of its grip used", "", Measure.Percent, 0, 1.1)
            .Bars("grip used", [front, rear], Tone.Front)
            .Level("limit: the wheel locks", 1, Tone.Main, Dash.Dash)
            .Build();

        string Text(double share) => Measure.Percent.Text(share, units);

        double Used(Axle axle)
        {
            if (lockUp is null || lockUp.First == axle || lockUp.First is null)
            {
                return lockUp is null ? 0 : 1;
            }

            Force load = lockUp.At.NormalReactions[axle];
            double grip = load.Newtons * model.Vehicle.Tyres[axle].AdhesionOn(lockUp.Adhesion, load / 2);
            return grip > 0 ? Math.Min(1, lockUp.At.BrakingForces[axle].Newtons / grip) : 0;
        }
    }

    /// <summary>The answer in a sentence.</summary>
    public static Verdict Verdict(LockUp? lockUp) => lockUp?.First switch
    {
        _ when lockUp is null => new("No wheel locks: the pressure does not go high enough."),
        Axle.Rear => new($"Danger: the rear wheels lock first, at {Finding.Rate(lockUp.At.BrakingRate)} g. The car can spin.",
            VerdictKind.Caution),
        Axle.Front => new($"The front wheels lock first, at {Finding.Rate(lockUp.At.BrakingRate)} g. "
            + "The car slides straight on and cannot steer, but it does not spin.", VerdictKind.Good),
        _ => new($"All four wheels lock together, at {Finding.Rate(lockUp.At.BrakingRate)} g. Nothing is left in hand.",
            VerdictKind.Caution),
    };
}
