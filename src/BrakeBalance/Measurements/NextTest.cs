using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>Tells which safe stop would narrow the setting's interval most.</summary>
/// <remarks>
/// <para>Each candidate's expected posterior covariance: of a lock-up, between and within the draws that each outcome speaks for; of a
/// deceleration, by the linearised update of the normal posterior, weighed by the chance that nothing locks. Single stops tell of sums of
/// two unknowns, so a short rest of the day is put together first, greedily and then by exchange, so that the variance of the setting
/// after it is least; what a stop takes away by itself and what it costs to put it into that rest rank it alike.</para>
/// <para>Only stops whose chance of a rear-first lock-up is within the level of the car's conditions are offered, at all speeds of the
/// stop. Rear braking is approached from the safe side: adjuster fully out first, then at most a quarter of its range further in than
/// before, never as far in as where the rear locked first; no stop to lock-up before one without in that load case.</para>
/// <para>Assumes the model; it is no licence to make a stop. Source: own derivation; c-optimal design in any text on the design of
/// experiments.</para>
/// </remarks>
public static class NextTest
{
    private const int Draws = 250;
    private const int DrawsForPressure = 40;
    private const int Ahead = 5;

    // Student's t tells less of its middle than a normal distribution of the same scale does: (n + 1) / (n + 3) for 5 degrees of freedom.
    private const double ToldByStudent = 0.75;

    private static readonly double[] Shares = [0.3, 0.45, 0.6, 0.75, 0.9, 1.15];

    /// <summary>What the stops so far leave open, and the safe stops that tell most.</summary>
    /// <param name="estimate">What is known so far; an estimate from no stops serves before the first.</param>
    public static NextStops Of(CarEstimate estimate)
    {
        ArgumentNullException.ThrowIfNull(estimate);
        var target = new SettingTarget(estimate);
        return Known(estimate, target) with { Candidates = Ranked(estimate, target) };
    }

    /// <summary>What the stops so far leave open, without candidates.</summary>
    internal static NextStops Known(CarEstimate estimate) => Known(estimate, new SettingTarget(estimate));

    private static NextStops Known(CarEstimate estimate, SettingTarget target)
    {
        Interval<double> now = target.Interval(estimate);
        bool bar = target.Variable == Balance.SettingVariable.BalanceBar;
        return new NextStops(
            Knee: bar ? null : now.Select(pascals => Pressure.FromPascals(pascals)),
            FrontForceShare: bar ? now : null,
            Level: Level(estimate),
            Candidates: [],
            StopsUsed: estimate.StopsUsed);
    }

    /// <summary>Highest chance of a rear-first lock-up of a stop that is offered [–].</summary>
    internal static double Level(CarEstimate estimate) => estimate.Model.Vehicle.Conditions.RearFirstChance;

    /// <summary>What a stop would show over the draws of an estimate.</summary>
    /// <exception cref="ArgumentException">The stop cannot be judged.</exception>
    internal static StopOutlook Outlook(CarEstimate estimate, TestStop stop) => Outlook(estimate, stop, Thinned(estimate, Draws));

    /// <summary>The front line pressure at which half of the draws have locked.</summary>
    internal static Pressure LockPressure(CarEstimate estimate, string load, string surface, double? turns)
    {
        Vector<double>[] draws = Thinned(estimate, DrawsForPressure);
        double highest = Math.Min(120e5, estimate.Model.Vehicle.Hydraulics.MaximumPressure.Pascals), low = 2e5, high = highest;
        for (int i = 0; i < 10; i++)
        {
            double middle = (low + high) / 2;
            StopModel.Stop stop = Prepared(estimate, new TestStop
            {
                LoadCase = load,
                Surface = surface,
                FrontPressure = Pressure.FromPascals(middle),
                Turns = turns,
            });
            (low, high) = draws.Average(d => estimate.Model.Predict(stop, d).None) > 0.5 ? (middle, high) : (low, middle);
        }

        return Pressure.FromPascals(high);
    }

    private static Vector<double>[] Thinned(CarEstimate estimate, int count) =>
        [.. Enumerable.Range(0, count).Select(i => estimate.Posterior.Draws[(int)((long)i * estimate.Posterior.Draws.Length / count)])];

    private static StopModel.Stop Prepared(CarEstimate estimate, TestStop stop) =>
        estimate.Model.Prepare(stop with { Locked = FirstLock.Front }, out string? reason)
            ?? throw new ArgumentException($"A candidate stop cannot be judged: {reason}.", nameof(stop));

    private static StopOutlook Outlook(CarEstimate estimate, TestStop stop, Vector<double>[] draws)
    {
        StopModel.Stop prepared = Prepared(estimate, stop);
        StopShows[] shown = [.. draws.Select(d => estimate.Model.Predict(prepared, d))];
        double rear = shown.Average(s => s.Rear);
        if (estimate.Model.Vehicle.Aerodynamics is not null && stop.InitialSpeed is { } speed)
        {
            // The fit takes six tenths of the speed; lift may be worse at its beginning or at its end.
            foreach (double share in (double[])[0, 1 / 0.6])
            {
                StopModel.Stop at = Prepared(estimate, stop with { InitialSpeed = share * speed });
                rear = Math.Max(rear, draws.Average(d => estimate.Model.Predict(at, d).Rear));
            }
        }

        double[] rates = [.. shown.Select(s => Math.Exp(s.LogRate)).Order()];
        return new StopOutlook(
            prepared,
            shown,
            new Interval<double>(rates[rates.Length / 2], rates[rates.Length / 20], rates[^(rates.Length / 20 + 1)]),
            1 - shown.Average(s => s.None),
            rear);
    }

    private static IReadOnlyList<CandidateStop> Ranked(CarEstimate estimate, SettingTarget target)
    {
        Vector<double>[] draws = Thinned(estimate, Draws);
        Vector<double> mean = draws.Aggregate((a, b) => a + b) / draws.Length;
        int n = mean.Count;
        Matrix<double> covariance = Matrix<double>.Build.Dense(n, n);
        Vector<double> with = Vector<double>.Build.Dense(n);
        double[] setting = [.. draws.Select(target.At)];
        double middle = setting.Average();
        foreach ((Vector<double> draw, double there) in draws.Zip(setting))
        {
            Vector<double> off = draw - mean;
            covariance += off.OuterProduct(off) / draws.Length;
            with += off * ((there - middle) / draws.Length);
        }

        covariance += Matrix<double>.Build.DiagonalIdentity(n) * 1e-9;
        Matrix<double> precision = covariance.Inverse();
        Vector<double> slope = precision * with;
        double Variance(Matrix<double> information) => slope.DotProduct(information.Cholesky().Solve(slope));
        double all = Variance(precision);
        if (!(all > 0))
        {
            return [];
        }

        List<Informing> safe = [];
        foreach (TestStop stop in Usual(estimate))
        {
            StopOutlook outlook = Outlook(estimate, stop, draws);
            if (outlook.RearFirst <= Level(estimate))
            {
                safe.Add(new(
                    stop, outlook, Information(estimate, outlook, draws, mean, covariance, precision), Allowed(estimate, stop, outlook)));
            }
        }

        if (!safe.Exists(one => one.Allowed))
        {
            return [];
        }

        // The rest of the day: the best follower again and again, then each exchanged for a better one.
        List<Informing> day = [];
        Matrix<double> told = precision;
        while (day.Count < Ahead)
        {
            Informing best = safe.MinBy(one => Variance(told + one.Information))!;
            day.Add(best);
            told += best.Information;
        }

        for (int i = 0; i < day.Count; i++)
        {
            Matrix<double> others = told - day[i].Information;
            day[i] = safe.MinBy(one => Variance(others + one.Information))!;
            told = others + day[i].Information;
        }

        double WithinDay(Informing one) => day.Min(other => Variance(told - other.Information + one.Information));
        double least = safe.Where(one => one.Allowed).Min(WithinDay);
        return [.. safe.Where(one => one.Allowed)
            .Select(one => (One: one, Within: WithinDay(one) / least, Left: Variance(precision + one.Information) / all))
            .OrderBy(one => Math.Log(one.Left) + Math.Log(one.Within) + Trouble(estimate, one.One.Stop))

            // Below the knee and the limit, surface and adjuster make no difference: one such stop stands for all.
            .DistinctBy(one => (one.One.Stop.LoadCase, one.One.Stop.FrontPressure, Math.Round(one.Left, 4)))
            .Select(one => new CandidateStop(
                Stop: one.One.Stop,
                BrakingRate: one.One.Outlook.BrakingRate,
                Lock: one.One.Outlook.Lock,
                RearFirst: one.One.Outlook.RearFirst,
                WidthLeft: Math.Sqrt(Math.Clamp(one.Left, 0, 1))))];
    }

    private static IEnumerable<TestStop> Usual(CarEstimate estimate)
    {
        Vehicle vehicle = estimate.Model.Vehicle;
        double?[] adjusters = vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } screw
            ? [.. Enumerable.Range(0, 5).Select(i => (double?)(i * Step(screw))).Where(turns => turns <= screw.Turns)] : [null];
        double highest = vehicle.Hydraulics.MaximumPressure.Bars;
        foreach (LoadCase load in vehicle.LoadCases)
        {
            foreach ((SurfaceCondition surface, double? turns) in estimate.Model.Surfaces.SelectMany(s => adjusters.Select(t => (s, t))))
            {
                double limit = LockPressure(estimate, load.Name, surface.Name, turns).Bars;
                foreach (double bars in Shares.Select(share => Math.Round(share * limit)).Where(bars => bars >= 4 && bars <= highest))
                {
                    yield return new TestStop
                    {
                        LoadCase = load.Name,
                        Surface = surface.Name,
                        FrontPressure = Pressure.FromBars(bars),
                        InitialSpeed = Speed.FromKilometersPerHour(bars < 0.5 * limit ? 40 : 50),
                        Turns = turns,
                    };
                }
            }
        }
    }

    // A quarter of the adjuster's range, in half turns.
    private static double Step(KneeAdjustment screw) =>
        screw.Turns < 2 ? screw.Turns / 4 : Math.Max(0.5, Math.Floor(2 * screw.Turns / 4) / 2);

    private static bool Allowed(CarEstimate estimate, TestStop stop, StopOutlook outlook)
    {
        IReadOnlyList<TestStop> made = estimate.Model.Made;
        if (outlook.Lock > CandidateStop.MostWithout
            && !made.Any(one => one.Locked is null or FirstLock.None && SameLoad(estimate, one.LoadCase, stop.LoadCase)))
        {
            return false;
        }

        if (estimate.Model.Vehicle.Hydraulics.RearProportioningValve?.Adjustment is not { } screw || stop.Turns is not { } turns)
        {
            return true;
        }

        double reached = made.Where(one => one.Turns is not null && one.Locked is not FirstLock.Rear)
            .Select(one => one.Turns!.Value + Step(screw)).DefaultIfEmpty(0).Max();
        double rear = made.Where(one => one.Locked == FirstLock.Rear).Select(one => one.Turns ?? screw.Turns)
            .DefaultIfEmpty(double.PositiveInfinity).Min();
        return turns <= reached + 1e-9 && (turns < rear || outlook.Lock <= Level(estimate));
    }

    // Loading the car anew, or going to another road, has to be worth it: a part of the variance, our choice.
    private static double Trouble(CarEstimate estimate, TestStop stop) => estimate.Model.Made is not [.., TestStop last] ? 0
        : (SameLoad(estimate, last.LoadCase, stop.LoadCase) ? 0 : 0.02)
            + (string.Equals(last.Surface, stop.Surface, StringComparison.OrdinalIgnoreCase) ? 0 : 0.01);

    private static bool SameLoad(CarEstimate estimate, string? one, string? other)
    {
        string first = estimate.Model.Vehicle.LoadCases[0].Name;
        return string.Equals(one ?? first, other ?? first, StringComparison.OrdinalIgnoreCase);
    }

    // What a stop adds to the inverse of the covariance, on average over what it may show.
    private static Matrix<double> Information(CarEstimate estimate, StopOutlook outlook, Vector<double>[] draws, Vector<double> mean,
        Matrix<double> covariance, Matrix<double> precision)
    {
        Matrix<double> within = covariance.Clone();
        foreach (Func<StopShows, double> chance in (Func<StopShows, double>[])[s => s.None, s => s.Front, s => s.Rear])
        {
            Vector<double> there = Vector<double>.Build.Dense(mean.Count);
            double weight = 0;
            foreach ((StopShows shows, Vector<double> draw) in outlook.Shown.Zip(draws))
            {
                double at = chance(shows) / draws.Length;
                weight += at;
                there += (draw - mean) * at;
            }

            if (weight > 1e-9)
            {
                within -= there.OuterProduct(there) / weight;
            }
        }

        Matrix<double> told = within.Inverse() - precision;
        double none = 1 - outlook.Lock;
        if (none > 1e-3)
        {
            const double step = 0.01;
            Vector<double> slope = Vector<double>.Build.Dense(mean.Count);
            for (int i = 0; i < 3; i++)
            {
                Vector<double> up = mean.Clone(), down = mean.Clone();
                up[i] += step;
                down[i] -= step;
                slope[i] = (estimate.Model.LogRate(outlook.Stop, up) - estimate.Model.LogRate(outlook.Stop, down)) / (2 * step);
            }

            told += slope.OuterProduct(slope) * (none * ToldByStudent / estimate.Model.RateVariance(outlook.Stop, mean));
        }

        return (told + told.Transpose()) / 2;
    }

    private sealed record Informing(TestStop Stop, StopOutlook Outlook, Matrix<double> Information, bool Allowed);
}

/// <summary>What one draw of an estimate foretells of a stop: logarithm of the deceleration, and each outcome's chance [–].</summary>
internal readonly record struct StopShows(double LogRate, double None, double Front, double Rear);

/// <summary>What all draws foretell of a stop.</summary>
/// <param name="Stop">The stop as the likelihood needs it.</param>
/// <param name="Shown">What each draw foretells.</param>
/// <param name="BrakingRate">Deceleration with its 90 % interval [–].</param>
/// <param name="Lock">Chance that an axle locks [–].</param>
/// <param name="RearFirst">Chance that the rear locks first [–], at the speed where it is highest.</param>
internal sealed record StopOutlook(StopModel.Stop Stop, StopShows[] Shown, Interval<double> BrakingRate, double Lock, double RearFirst);
