using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>
/// Estimates friction front and rear, height of the centre of gravity and adhesion together, from test stops and lock events.
/// </summary>
/// <remarks>
/// <para>Posterior by Laplace's approximation, its lopsidedness put right by weighted draws, on request checked by Metropolis chains.
/// What the stops cannot tell stays as uncertain as before, and is said.</para>
/// <para>Assumes the rest of the vehicle file: axle loads, wheelbase, brake dimensions, radii. An error there goes into the friction
/// found.</para>
/// </remarks>
public static class CarEstimation
{
    private const double Ninety = 1.6448536269514722;

    /// <summary>Estimates the car.</summary>
    /// <param name="vehicle">The car as the vehicle file describes it.</param>
    /// <param name="stops">The stops; none at all gives what is believed beforehand.</param>
    /// <param name="options">Priors and scatter; null for the usual ones.</param>
    public static CarEstimate Estimate(Vehicle vehicle, IEnumerable<TestStop> stops, EstimationOptions? options = null) =>
        Estimate(vehicle, stops, options, null);

    /// <summary>The same from the draws of the same stops, whose likelihood is the same for this car.</summary>
    internal static CarEstimate Estimate(Vehicle vehicle, IEnumerable<TestStop> stops, EstimationOptions? options, PosteriorSample? known)
    {
        options ??= new EstimationOptions();
        TestStop[] made = [.. stops];
        var model = new StopModel(vehicle, made, options);
        LaplacePosterior? posterior = known is null ? Fitted(model) : null;
        PosteriorSample sample = known ?? PosteriorSample.From(model.NegativeLog, posterior!, options.Seed);
        (double Difference, bool Agree)? check =
            posterior is not null && options.CheckSteps > 0 ? Check(model, posterior, sample, options) : null;
        EstimatedParameter[] parameters = Parameters(model, sample);
        double[][] correlation = [.. Enumerable.Range(0, parameters.Length).Select(i => Enumerable.Range(0, parameters.Length)
            .Select(j => sample.Correlation(i, j)).ToArray())];
        Vector<double> middle = Vector<double>.Build.Dense(model.PriorMean.Count, i => sample.Interval(d => d[i]).Estimate);
        return new CarEstimate(sample, model)
        {
            Parameters = parameters,
            Correlation = correlation,
            Identifiability = Words(parameters, correlation, model.StopsUsed),
            DecelerationScatter = sample.Interval(d => Math.Exp(d[model.ScatterIndex])),
            StopsUsed = model.StopsUsed,
            NotUsed = model.NotUsed,
            DifferenceFromChains = check?.Difference,
            ChainsAgree = check?.Agree,
            Weights = [.. model.Used.Select(used => Weight(model, used.Stop, used.Place, made[used.Place], middle))],
            Doubts = FitCheck.Of(model, made, middle),
        };
    }

    private static LaplacePosterior Fitted(StopModel model)
    {
        Vector<double> steps = 0.1 * model.PriorDeviation, start = model.PriorMean;
        foreach (double widened in (double[])[6, 2.5])
        {
            start = LaplacePosterior.Descend(theta => model.NegativeLog(theta, widened), start, steps);
        }

        return LaplacePosterior.Find(model.NegativeLog, start, steps);
    }

    private static StopWeight Weight(StopModel model, StopModel.Stop used, int place, TestStop stop, Vector<double> middle)
    {
        (double? rate, double? locked) = model.Weights(used, middle);
        return new StopWeight(
            Number: place + 1,
            Line: stop.Line,
            Deceleration: rate is null ? null : stop.Deceleration,
            Foretold: rate is null ? null : Acceleration.FromStandardGravity(model.Forces(used, middle).Rate),
            DecelerationWeight: rate,
            Locked: stop.Locked,
            LockWeight: locked);
    }

    private static EstimatedParameter[] Parameters(StopModel model, PosteriorSample sample)
    {
        Vehicle vehicle = model.Vehicle;
        EstimatedParameter Make(string name, string unit, double scale, int i) => new(
            Name: name,
            Unit: unit,
            Prior: Band(scale, model.PriorMean[i], model.PriorDeviation[i]),
            Posterior: sample.Interval(d => scale * Math.Exp(d[i])));
        return
        [
            Make("front friction", "", vehicle.Brakes.Front.FrictionCoefficient, 0),
            Make("rear friction", "", vehicle.Brakes.Rear.FrictionCoefficient, 1),
            Make("height of the centre of gravity", "m", vehicle.LoadCases[0].CentreOfGravityHeight.Meters, 2),
            .. model.Surfaces.Select((surface, i) => Make("adhesion, " + surface.Name, "", 1, 3 + i)),
        ];
    }

    private static Interval<double> Band(double scale, double log, double deviation) =>
        new(scale * Math.Exp(log), scale * Math.Exp(log - Ninety * deviation), scale * Math.Exp(log + Ninety * deviation));

    private static (double Difference, bool Agree) Check(StopModel model, LaplacePosterior posterior, PosteriorSample sample,
        EstimationOptions options)
    {
        (Vector<double>[] samples, double reduction) =
            MetropolisChain.Run(model.NegativeLog, posterior, options.CheckSteps, 4, options.Seed);
        double worst = 0;
        for (int i = 0; i < 3 + model.Surfaces.Count; i++)
        {
            double[] sorted = [.. samples.Select(v => v[i]).Order()];
            double low = sorted[(int)(0.05 * sorted.Length)], high = sorted[(int)(0.95 * sorted.Length)];
            Interval<double> ours = sample.Interval(d => d[i]);
            worst = Math.Max(worst, Math.Max(Math.Abs(low - ours.Low), Math.Abs(high - ours.High)) / ((high - low) / (2 * Ninety)));
        }

        return (worst, reduction < 1.05);
    }

    private static List<string> Words(EstimatedParameter[] parameters, double[][] correlation, int stops)
    {
        if (stops == 0)
        {
            return ["No test stops were used: everything is as believed beforehand."];
        }

        List<string> words = [];
        const double wellLearnt = 0.5;
        string[] well = [.. parameters.Where(p => p.Learnt > wellLearnt).Select(p => p.Name)],
            hardly = [.. parameters.Where(p => p.Learnt < 0.15).Select(p => p.Name)];
        if (well.Length > 0)
        {
            words.Add($"The stops tell well: {string.Join("; ", well)}.");
        }

        if (hardly.Length > 0)
        {
            words.Add($"The stops say next to nothing about: {string.Join("; ", hardly)}. There the band is what was believed beforehand.");
        }

        for (int i = 0; i < parameters.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                double r = correlation[i][j];
                (double one, double two) = (parameters[i].Learnt, parameters[j].Learnt);
                if (Math.Abs(r) > 0.8 && one + two > 0.1 && Math.Min(one, two) <= wellLearnt)
                {
                    words.Add(Invariant.Text($"{Invariant.Capital(parameters[j].Name)} and {parameters[i].Name} cannot be told apart "
                        + $"by these stops (correlation {r:0.00;−0.00}): "
                        + $"only {(r < 0 ? "something like their sum or product" : "their ratio")} is known. {Remedy(j, i)}"));
                }
            }
        }

        return words;
    }

    private static string Remedy(int first, int second) => (first, second) switch
    {
        (0, 1) => "Stops at one front pressure with the adjuster at both ends of its safe range tell them apart; "
            + "so does a torque wrench on one hub with a gauge in its line.",
        ( < 2, 2) => "Lock-ups on two surfaces of different adhesion tell them apart; so does weighing the car with one end raised.",
        ( < 2, >= 3) => "Stops without lock-up at two pressures on that surface give the friction by itself.",
        (2, >= 3) => "Weighing the car with one end raised gives the height by itself.",
        _ => "A lock-up on each surface alone tells them apart.",
    };
}
