using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;

namespace BrakeBalance.Charts.Publishing;

/// <summary>The figures of the story, in plain words.</summary>
internal static class StoryFigures
{
    /// <summary>Rear against front fluid pressure, with the knee.</summary>
    public static Figure Valve(BalanceModel model, LockUp? lockUp, Pressure knee, double slope, UnitSystem units, string id)
    {
        var figure = new FigureBuilder(id, units);
        double top = 80e5;
        BalancePoint[] points = [.. InstalledLine.Of(model, Pressure.FromPascals(1.1 * top), between: 2)];
        bool holds = slope < 1;
        figure
            .Title(holds
                ? $"Above {figure.Text(Measure.LinePressure, knee)} the valve lets "
                    + $"{(slope == 0 ? "nothing more" : FormattableString.Invariant($"only {100 * slope:0} % of any further pressure"))} "
                    + $"through to the rear"
                : "Without the valve the rear brakes get all the pressure")
            .Describe(
                "Pressure of the brake fluid at the rear wheels against that at the front wheels.",
                (holds ? $"From {figure.Text(Measure.LinePressure, knee)} at the rear on the line is flatter. "
                    : "Nothing holds the rear pressure back. ")
                + (HoldsFront(model.Vehicle) ? Metering + " " : "")
                + (lockUp is null ? "No wheel locks."
                    : $"When the first wheels lock, the pressure is {figure.Text(Measure.LinePressure, lockUp.At.LinePressures.Front)} "
                        + $"at the front and {figure.Text(Measure.LinePressure, lockUp.At.LinePressures.Rear)} at the rear."))
            .X("Pressure at the front brakes", "", Measure.LinePressure, 0, top)
            .Y("Pressure at the rear brakes", "", Measure.LinePressure, 0, top)
            .Line("equal pressures", [0, top], [0, top], Tone.Guide, Dash.Dot, 1.4, labelAt: 0.85)
            .Line("this car", points.Select(p => p.LinePressures.Front).ToArray(), points.Select(p => p.LinePressures.Rear)
                .ToArray(), Tone.Main, Dash.Solid, 3, labelAt: 0.7);
        if (holds)
        {
            foreach (BalancePoint bend in model.RearKnees().Take(1))
            {
                figure.Points("knee", [bend.LinePressures.Front.Pascals], [bend.LinePressures.Rear.Pascals]);
            }
        }

        Mark(figure, lockUp, at => (at.LinePressures.Front.Pascals, at.LinePressures.Rear.Pascals));
        return figure.Table(table =>
        {
            BalancePoint[] rows = [.. Enumerable.Range(0, 9).Select(i => model.At(Pressure.FromPascals(top * i / 8)))];
            table.Column("Pressure at the front brakes", Measure.LinePressure, rows.Select(r => r.LinePressures.Front).ToArray())
                .Column("Pressure at the rear brakes", Measure.LinePressure, rows.Select(r => r.LinePressures.Rear).ToArray());
        }).Build();
    }

    /// <summary>Rear against front braking, with the curve on which all wheels would lock together.</summary>
    public static Figure Sharing(BalanceModel model, LockUp? lockUp, double adhesion, string road, ForceWindow window, UnitSystem units,
        string id)
    {
        var figure = new FigureBuilder(id, units);
        (double front, double rear) = window.Rounded(units);
        PerAxle<Force>[] ideal =
            [.. Enumerable.Range(0, 81).Select(i => model.IdealForces(model.RearLiftOffRate * i / 80))
            .TakeWhile(f => f.Front.Newtons <= 1.05 * front)];
        BalancePoint[] points = [.. InstalledLine.Of(model, between: 12).Where(p => p.BrakingForces.Front.Newtons <= 1.1 * front)];
        double[] x = [.. ideal.Select(f => f.Front.Newtons)], y = [.. ideal.Select(f => f.Rear.Newtons)];
        (PerAxle<Force> last, double right) = (ideal[^1], Math.Max(front, x[^1]));
        string grip = Finding.Rate(adhesion);
        figure
            .Title(lockUp is null ? "No wheel locks here" : lockUp.First switch
            {
                Axle.Rear => "At the limit of this road the line is on the wrong side of the curve: the rear wheels lock first",
                Axle.Front => "At the limit of this road the line is on the safe side of the curve: the front wheels lock first",
                _ => "All wheels lock together",
            })
            .Describe(
                "Braking by the rear wheels against braking by the front wheels. "
                    + "On the green curve all four wheels would lock together; above it, in the hatched area, the rear goes first.",
                "The perfect split rises, bends over and falls, because hard braking takes weight off the rear wheels. "
                    + $"The road is {road}, its grip {grip} of the weight. "
                + (lockUp is null ? "No wheel locks."
                    : $"The first wheels lock with {figure.Text(Measure.BrakeForce, lockUp.At.BrakingForces.Front)} of braking "
                        + $"at the front and {figure.Text(Measure.BrakeForce, lockUp.At.BrakingForces.Rear)} at the rear."))
            .X("Braking by the front wheels", "", Measure.BrakeForce, 0, front)
            .Y("Braking by the rear wheels", "", Measure.BrakeForce, 0, rear)
            .Region("rear locks first: the car can spin", (double[])[.. x, right, right, 0],
                (double[])[.. y, last.Rear.Newtons, rear, rear], Tone.Rear, Hatch.Rising)
            .Line("perfect split", x, y, Tone.Ideal, Dash.LongDash, 2.4, labelAt: 0.8)
            .Line("this car", points.Select(p => p.BrakingForces.Front).ToArray(), points.Select(p => p.BrakingForces.Rear)
                .ToArray(), Tone.Main, Dash.Solid, 3, labelAt: 0.9);
        foreach (BalancePoint bend in model.RearKnees().Take(1))
        {
            figure.Points("knee", [bend.BrakingForces.Front.Newtons], [bend.BrakingForces.Rear.Newtons]);
        }

        Mark(figure, lockUp, at => (at.BrakingForces.Front.Newtons, at.BrakingForces.Rear.Newtons));
        return figure.Table(table =>
        {
            double[] rates = [.. Enumerable.Range(1, 10).Select(i => 0.1 * i)];
            table.Column("Braking", GForce, rates)
                .Column("Front, this car", Measure.BrakeForce, rates.Select(z => model.AtRate(z)?.BrakingForces.Front.Newtons))
                .Column("Rear, this car", Measure.BrakeForce, rates.Select(z => model.AtRate(z)?.BrakingForces.Rear.Newtons))
                .Column("Front, perfect split", Measure.BrakeForce, rates.Select(z => model.IdealForces(z).Front).ToArray())
                .Column("Rear, perfect split", Measure.BrakeForce, rates.Select(z => model.IdealForces(z).Rear).ToArray());
        }).Build();
    }

    /// <summary>How much of its own grip each pair of wheels uses when the first pair locks.</summary>
    public static Figure Wheels(LockUp? lockUp, UnitSystem units, string id)
    {
        double front = lockUp is null ? 0 : Used(lockUp, Axle.Front), rear = lockUp is null ? 0 : Used(lockUp, Axle.Rear);
        return new FigureBuilder(id, units)
            .Title(lockUp is null ? "No wheel is at its limit" : lockUp.First switch
            {
                Axle.Rear => $"When the rear lets go, the front still uses only {Text(front)} of its grip",
                Axle.Front => $"When the front lets go, the rear still uses only {Text(rear)} of its grip",
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

    /// <summary>What a metering valve in the front line does, in plain words.</summary>
    public const string Metering = "At the very start another valve keeps the front brakes waiting until the rear shoes touch.";

    /// <summary>Whether there is such a valve.</summary>
    public static bool HoldsFront(Vehicle vehicle) => vehicle.Hydraulics.FrontValves.OfType<MeteringValve>().Any();

    private static Measure GForce { get; } = Measure.Pure("braking", "g", 1, 0.01);

    private static double Used(LockUp lockUp, Axle axle) =>
        Math.Min(1, (lockUp.At.AdhesionUtilisation[axle] ?? 0) / Math.Max(lockUp.At.AdhesionUtilisation.Front
        ?? 0, lockUp.At.AdhesionUtilisation.Rear ?? 0));

    private static void Mark(FigureBuilder figure, LockUp? lockUp, Func<BalancePoint, (double X, double Y)> place)
    {
        if (lockUp is not null)
        {
            (double x, double y) = place(lockUp.At);
            figure.Points("first wheels lock", [x], [y], Tone.Other, Marker.Ring, size: 11);
        }
    }
}
