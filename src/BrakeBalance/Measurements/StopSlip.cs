using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>A way in which readings of test stops can be written wrongly, and how to undo it.</summary>
/// <param name="Told">What the readings look like, such as "the pressures read 14.5 times what the car tells".</param>
/// <param name="Words">What would explain it, such as "psi entered as bar".</param>
/// <param name="Front">What front pressures have to be multiplied by [–].</param>
/// <param name="Rear">What rear pressures have to be multiplied by [–].</param>
/// <param name="Rate">What decelerations have to be multiplied by [–].</param>
/// <param name="Swaps">Whether the two gauges change places.</param>
/// <param name="Outwards">Whether the turns were counted from fully in.</param>
internal sealed record StopSlip(
    string Told, string Words, double Front = 1, double Rear = 1, double Rate = 1, bool Swaps = false, bool Outwards = false)
{
    /// <summary>Nats that a known slip is dearer than the best factor and still believed of a single reading.</summary>
    private const double AsGood = 3;

    private const double Miles = 1.609344;
    private const double Feet = 1 / 0.3048;

    public static readonly double PoundsPerBar = Pressure.FromBars(1).PoundsForcePerSquareInch;

    private static readonly (double Reads, string Words)[] Rates =
    [
        (1 / Gravity.StandardMetresPerSecondSquared, "g entered as m/s² (g under [m/s2])"),
        (Gravity.StandardMetresPerSecondSquared, "m/s² entered as g (m/s² under [g])"),
        (Feet, "ft/s² entered as m/s², or worked out from a distance in m taken as ft"),
        (1 / Feet, "worked out from a distance in ft taken as m, or m/s² entered as ft/s²"),
        (1 / Miles, "worked out from speeds in mph taken as km/h"),
        (Miles, "worked out from speeds in km/h taken as mph"),
        (1 / (Miles * Miles), "worked out from speeds in mph taken as km/h, squared over the distance"),
        (Miles * Miles, "worked out from speeds in km/h taken as mph, squared over the distance"),
    ];

    /// <summary>Slips that a whole column can have.</summary>
    public static IReadOnlyList<StopSlip> Whole { get; } =
    [
        .. Pressures("pressures", (c, told, words) => new(told, words, c, c)),
        .. Pressures("front pressures", (c, told, words) => new(told, words, Front: c)),
        .. Pressures("rear pressures", (c, told, words) => new(told, words, Rear: c)),
        .. Rates.Select(rate => new StopSlip(
            $"the decelerations read {Times(rate.Reads)} what this car would make", rate.Words, Rate: 1 / rate.Reads)),
        new("the rear gauge reads as the front one should and the front as the rear",
            "front and rear, the gauges or their columns, swapped", Swaps: true),
        new("the stops fit with the turns counted the other way", "turns counted from fully in", Outwards: true),
    ];

    /// <summary>Nats that this slip is rarer than one of a pressure's unit: few work a deceleration out by themselves.</summary>
    public double Price => Rate != 1 && Math.Abs(Math.Log(Rate)) < 1.5 ? 2 : 0;

    /// <summary>Whether the stops hold what the slip would change.</summary>
    public bool Concerns(Vehicle car, IReadOnlyList<TestStop> stops) => Swaps || (Front != 1 && Rear == 1) || (Rear != 1 && Front == 1)
        ? stops.Any(stop => stop is { FrontPressure: not null, RearPressure: not null })
        : Outwards ? stops.Any(stop => stop.Turns is not null) && car.Hydraulics.RearProportioningValve?.Adjustment is not null
        : true;

    /// <summary>The stop as it would stand without the slip.</summary>
    public TestStop Undone(TestStop stop, Vehicle car) => Scaled(Swaps
        ? stop with
        {
            FrontPressure = stop.RearPressure ?? stop.FrontPressure,
            RearPressure = stop.FrontPressure is null ? null
            : stop.RearPressure is null ? null : stop.FrontPressure
        }
        : Outwards && car.Hydraulics.RearProportioningValve?.Adjustment is { } adjuster && stop.Turns is { } turns
            ? stop with { Turns = Math.Max(0, adjuster.Turns - turns) }
        : stop);

    /// <summary>Explains one stop by itself, from a car fitted to the others.</summary>
    /// <param name="model">The model of the others.</param>
    /// <param name="theta">The car fitted to them.</param>
    /// <param name="stop">The stop.</param>
    /// <param name="name">Such as "stop 4 (line 7)".</param>
    /// <returns>Such as "stop 4 (line 7): the front pressure reads 14.5 times what the others tell, psi entered as bar".</returns>
    public static string Alone(StopModel model, Vector<double> theta, TestStop stop, string name)
    {
        double Cost(StopSlip slip)
        {
            var one = new StopModel(model.Vehicle, [slip.Undone(stop, model.Vehicle)], model.Options with
            {
                Surfaces = [.. model.Surfaces],
            });
            if (one.StopsUsed == 0)
            {
                return double.PositiveInfinity;
            }

            // The one stop's surfaces stand in another order than those of all.
            Vector<double> at = Vector<double>.Build.Dense(theta.Count, i => theta[i < 3 || i >= 3 + one.Surfaces.Count ? i
                : 3 + model.Surfaces.ToList().FindIndex(surface => surface.Name == one.Surfaces[i - 3].Name)]);
            return one.NegativeLog(one.Used.Single().Stop, at) + RearLineCheck.Of(one).Cost
                - (stop.RearPressure is null ? 0 : Math.Log(slip.Rear));
        }

        StopSlip[] known = [.. Singles.Where(slip => slip.Concerns(model.Vehicle, [stop]))];
        (StopSlip slip, double cost) = known.Select(one => (one, Cost(one))).MinBy(tried => tried.Item2);
        List<(string Column, double Reads, double Cost)> free = [];
        void Free(string column, Func<double, StopSlip> undone)
        {
            double Of(double log) => Cost(undone(Math.Exp(-log)));
            double best = Enumerable.Range(-30, 61).Select(i => 0.1 * i).MinBy(Of);
            best = Enumerable.Range(-4, 9).Select(i => best + 0.02 * i).MinBy(Of);
            free.Add((column, Math.Exp(best), Of(best)));
        }

        if (stop.Deceleration is not null)
        {
            Free("deceleration", c => new("", "", Rate: c));
        }

        if (stop.FrontPressure is not null || stop.LockPressure is not null)
        {
            Free("front pressure", c => new("", "", Front: c));
        }

        if (stop.RearPressure is not null)
        {
            Free("rear pressure", c => new("", "", Rear: c));
        }

        (string column, double reads, double left) = free.MinBy(one => one.Cost);
        return cost < left + AsGood
            ? $"{name}: {slip.Told}, {slip.Words}"
            : $"{name}: the {column} reads {Times(reads)} what the others tell, a wrong digit or a misreading";
    }

    private static IReadOnlyList<StopSlip> Singles { get; } =
    [
        .. Pressures("pressures", (c, told, words) => new(told, words, c, c), "the others tell"),
        .. Pressures("front pressure", (c, told, words) => new(told, words, Front: c), "the others tell"),
        .. Pressures("rear pressure", (c, told, words) => new(told, words, Rear: c), "the others tell"),
        .. Rates.Take(4).Select(rate => new StopSlip(
            $"the deceleration reads {Times(rate.Reads)} what the others tell", rate.Words, Rate: 1 / rate.Reads)),
        new("the rear gauge reads as the front one should", "front and rear swapped", Swaps: true),
        .. new (string Column, Func<double, StopSlip> Of)[]
            {
                ("front pressure", c => new("", "", Front: c)),
                ("rear pressure", c => new("", "", Rear: c)),
                ("deceleration", c => new("", "", Rate: c)),
            }
            .SelectMany(one => new[] { 10, 0.1 }.Select(reads => one.Of(1 / reads) with
            {
                Told = $"the {one.Column} reads {Times(reads)} what the others tell",
                Words = "the point misplaced",
            })),
    ];

    private static StopSlip[] Pressures(
        string which, Func<double, string, string, StopSlip> of, string tells = "this car tells") =>
    [
        of(1 / PoundsPerBar, $"the {which} read{(which[^1] == 's' ? "" : "s")} {Times(PoundsPerBar)} what {tells}",
            "psi entered as bar (psi under [bar])"),
        of(PoundsPerBar, $"the {which} read{(which[^1] == 's' ? "" : "s")} {Times(1 / PoundsPerBar)} what {tells}",
            "bar entered as psi (bar under [psi])"),
    ];

    private TestStop Scaled(TestStop stop) => stop with
    {
        FrontPressure = stop.FrontPressure * Front,
        LockPressure = stop.LockPressure * Front,
        RearPressure = stop.RearPressure * Rear,
        Deceleration = stop.Deceleration * Rate,
    };

    private static string Times(double factor) => factor >= 1
        ? Invariant.Text($"{factor:0.0#} times")
        : Invariant.Text($"{factor:0.00#} times");
}
