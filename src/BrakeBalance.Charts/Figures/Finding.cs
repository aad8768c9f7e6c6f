namespace BrakeBalance.Charts.Figures;

internal static class Finding
{
    private const double LowestRate = 0.1;

    /// <summary>The most adhesion of a road that is looked at [–]; one crossing of the lines has one answer everywhere.</summary>
    public const double HighestAdhesion = 1.2;

    /// <summary>The most adhesion that is looked at for a car [–]: what its conditions ask, where they go further.</summary>
    public static double Highest(Vehicle car) => Math.Max(HighestAdhesion, car.Conditions.HighestAdhesion);

    /// <summary>Roads on which the first lock-up is looked at [–], up to the one named.</summary>
    public static double[] Roads(double highest) =>
        [.. Enumerable.Range(0, (int)Math.Round((highest - 0.1) * 100) + 1).Select(i => 0.1 + i * 0.01)];

    /// <summary>Roads to choose from: name and place in plain words, adhesion [–]; the last at least as good as the conditions.</summary>
    public static IReadOnlyList<(string Name, string Where, double Adhesion)> NamedRoads(Vehicle car) =>
    [
        ("slippery", "on a slippery road", Conditions.SlipperyAdhesion), ("wet", "on a wet road", Conditions.WetAdhesion),
        ("dry", "on a dry road", Conditions.DryAdhesion),
        ("dry, track tyres", "on a dry road with track tyres", car.Conditions.TrackAdhesion),
    ];

    /// <summary>The parts of the range of decelerations in which the rear axle uses more of its tyres than the front.</summary>
    public static IReadOnlyList<(double From, double To)> RearLed(BalanceModel model, double highestRate)
    {
        double top = Math.Min(highestRate, Math.Min(model.RearLiftOffRate * 0.999, model.At(model.MaximumPressure).BrakingRate));
        double[] ends = [LowestRate, .. model.IdealCrossings().Select(c => c.BrakingRate).Where(z => z > LowestRate && z < top), top];
        List<(double From, double To)> led = [];
        for (int i = 1; i < ends.Length; i++)
        {
            double middle = (ends[i - 1] + ends[i]) / 2;
            if (ends[i] > ends[i - 1] && model.FirstRearLedRate(middle, middle) is not null)
            {
                led.Add((ends[i - 1], ends[i]));
            }
        }

        return led;
    }

    /// <summary>Which axle would lock first, over the range of decelerations.</summary>
    public static string Order(BalanceModel model, double highestRate)
    {
        IReadOnlyList<(double From, double To)> led = RearLed(model, highestRate);
        double top = Math.Min(highestRate, model.At(model.MaximumPressure).BrakingRate);
        if (led.Count == 0)
        {
            return $"the front axle locks first at decelerations from {Rate(LowestRate)} to {Rate(top)} g";
        }

        bool fromStart = led[0].From <= LowestRate + 1e-9, toEnd = led[^1].To >= Math.Min(top, model.RearLiftOffRate * 0.999) - 1e-9;
        return (led.Count, fromStart, toEnd) switch
        {
            (1, true, true) => "the rear axle locks first at every deceleration",
            (1, true, false) => $"the rear axle locks first up to a deceleration of {Rate(led[0].To)} g, the front axle above",
            (1, false, true) => $"the front axle locks first up to a deceleration of {Rate(led[0].From)} g, the rear axle above",
            (1, false, false) => $"the rear axle locks first between decelerations of {Rate(led[0].From)} and {Rate(led[0].To)} g",
            _ => "the rear axle locks first " + string.Join(" and ", led.Select(part => $"between {Rate(part.From)} and {Rate(part.To)}")),
        };
    }

    /// <summary>The first lock-up on a surface.</summary>
    public static string LockUp(LockUp? lockUp, double adhesion) => lockUp is null
        ? $"At an adhesion of {Rate(adhesion)} no axle locks within the pressure considered."
        : $"At an adhesion of {Rate(adhesion)} {AxleWords(lockUp.First)} first, at a deceleration of {Rate(lockUp.At.BrakingRate)} g.";

    /// <summary>Which axle locks, as a clause.</summary>
    public static string AxleWords(Axle? first) => first switch
    {
        Axle.Front => "the front axle locks",
        Axle.Rear => "the rear axle locks",
        _ => "both axles lock together",
    };

    public static string AxleWord(LockUp? lockUp) =>
        lockUp is null ? "none" : lockUp.First switch { Axle.Front => "front", Axle.Rear => "rear", _ => "both" };

    /// <summary>The parts of a row in which something holds, by their first and last items.</summary>
    public static IReadOnlyList<(T From, T To)> Runs<T>(IReadOnlyList<T> row, Func<T, bool> holds)
    {
        List<(T From, T To)> runs = [];
        for (int i = 0; i < row.Count; i++)
        {
            if (holds(row[i]))
            {
                runs = i > 0 && holds(row[i - 1]) ? [.. runs[..^1], runs[^1] with { To = row[i] }] : [.. runs, (row[i], row[i])];
            }
        }

        return runs;
    }

    public static string Capital(string words) => Invariant.Capital(words);

    public static string Rate(double number) => Measure.Number.Text(number, UnitSystem.Si);

    /// <summary>The adhesions of the roads on which something holds, such as "adhesions from 0.30 to 0.50 and from 0.90 to 1.20".</summary>
    public static string Adhesions<T>(IReadOnlyList<T> roads, Func<T, double> adhesion, Func<T, bool> holds)
    {
        (double From, double To)[] runs = [.. Runs(roads, holds).Select(run => (adhesion(run.From), adhesion(run.To)))];
        return runs is [var (from, to)] && from == to ? $"an adhesion of {Rate(from)}"
            : "adhesions " + string.Join(" and ", runs.Select(run => run.From < run.To ? $"from {Rate(run.From)} to {Rate(run.To)}"
                : $"of {Rate(run.From)}"));
    }

    /// <summary>A name and value that a label keeps on one line.</summary>
    public static string Bound(string name, double number) =>
        $"{name}\u00a0=\u00a0{number.ToString("0.0#", System.Globalization.CultureInfo.InvariantCulture)}";
}
