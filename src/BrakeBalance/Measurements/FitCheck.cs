using BrakeBalance.Vehicles;
using MathNet.Numerics.LinearAlgebra;

namespace BrakeBalance.Measurements;

/// <summary>
/// Tells whether logs can be of the car at all, and which column is probably in the wrong unit or swapped when they cannot.
/// </summary>
/// <remarks>
/// A slip of unit moves every reading by the same factor, and no ordinary brake lies that far off its file: the residuals of the best fit
/// then stand to one side, or the fit has to move the friction further than the file allows. The slip is found by trying it: the one
/// that explains the logs with the file's own car. Limits: own choice, far outside the scatter of test stops (3 to 5 %, common practice).
/// </remarks>
internal static class FitCheck
{
    /// <summary>Residual beyond which half of the stops lie, in the logarithm [–]: a fit leaves a twentieth at most.</summary>
    private const double Systematic = 0.2;

    /// <summary>Standard deviations of what is believed beforehand beyond which a friction is not that of the file's car [–].</summary>
    private const double MostDeviations = 3;

    /// <summary>Share of the residuals that a slip has to leave at most to be named [–].</summary>
    private const double Explains = 0.5;
    private const double LowestHardPressBars = 12;
    private const int FewestStops = 3;
    private static readonly double PoundsPerBar = Pressure.FromBars(1).PoundsForcePerSquareInch;

    private static readonly Slip[] Slips =
    [
        new("the pressures are probably in another unit than the header says (bar under [psi]?)", PoundsPerBar, 1),
        new("the pressures are probably in another unit than the header says (psi under [bar]?)", 1 / PoundsPerBar, 1),
        new("the deceleration is probably in another unit than the header says (g under [m/s2]?)", 1,
            Gravity.StandardMetresPerSecondSquared),
        new("the deceleration is probably in another unit than the header says (m/s² under [g]?)", 1,
            1 / Gravity.StandardMetresPerSecondSquared),
    ];

    /// <summary>Looks at gauge pairs.</summary>
    /// <param name="vehicle">The car as its file describes it.</param>
    /// <param name="pairs">The readings.</param>
    /// <param name="valve">What they say.</param>
    /// <returns>Sentences; empty when the readings fit the car.</returns>
    public static IEnumerable<string> Of(Vehicle vehicle, IReadOnlyList<GaugePair> pairs, GaugeAnalysis valve)
    {
        foreach (GaugeFinding finding in valve.Findings.Where(finding => finding.Kind == GaugeFindingKind.Swapped))
        {
            yield return "Gauges: " + finding.Text;
        }

        double top = pairs.Max(pair => pair.Front.Bars);
        double? off = vehicle.Hydraulics.RearProportioningValve?.Adjustment is { } adjuster && valve.Calibration is { } measured
            && measured.KneePerTurn.Estimate > Pressure.Zero
            ? Math.Log(measured.KneePerTurn.Estimate / adjuster.KneePerTurn)
            : null;
        if (top < LowestHardPressBars || (off is { } log && Math.Abs(Math.Abs(log) - Math.Log(PoundsPerBar)) < 1))
        {
            string turn = off is null ? "" : string.Create(CultureInfo.InvariantCulture,
                $", and the knee by {valve.Calibration!.KneePerTurn.Estimate.Bars:0.##} bar a turn where the file says ")
                + $"{Text($"{vehicle.Hydraulics.RearProportioningValve!.Adjustment!.KneePerTurn.Bars:0.##}")} bar";
            yield return string.Create(CultureInfo.InvariantCulture,
                $"Gauges: the front pressure rises to {top:0.#} bar only{turn}: "
                    + $"the pressures are probably in another unit than the header ")
                + "says (bar under [psi], or psi under [bar]).";
        }
    }

    /// <summary>Looks at test stops and what was made of them.</summary>
    /// <param name="model">The stops' likelihood.</param>
    /// <param name="stops">The stops.</param>
    /// <param name="middle">The quantities of the best fit, in logarithms.</param>
    /// <returns>Sentences; empty when the stops fit the car.</returns>
    public static IReadOnlyList<string> Of(StopModel model, IReadOnlyList<TestStop> stops, Vector<double> middle)
    {
        if (model.StopsUsed < FewestStops)
        {
            return [];
        }

        List<string> doubts = [];
        string? rear = Rear(model, stops);
        (double rates, double locks) = Middles(model, stops, middle);
        double shift = Enumerable.Range(0, 2).Max(i => Math.Abs(middle[i] - model.PriorMean[i]) / model.PriorDeviation[i]);
        if (rear is null && Math.Abs(rates) <= Systematic && Math.Abs(locks) <= Systematic && shift <= MostDeviations)
        {
            return [];
        }

        // What the file's own car would make of the stops as they are, and with each slip undone.
        double asIs = Misfit(model, stops);
        Slip? likely = Slips.Select(slip => (Slip: slip, Left: Misfit(model, [.. stops.Select(slip.Undone)])))
            .Where(tried => tried.Left < Explains * asIs).OrderBy(tried => tried.Left).Select(tried => tried.Slip).FirstOrDefault();
        string probably = rear ?? likely?.Words
            ?? "look for a column in another unit, swapped gauges, "
                + "a load case or turns noted wrongly, or a wrong entry in the vehicle file";
        if (Math.Abs(rates) > Systematic)
        {
            doubts.Add(string.Create(CultureInfo.InvariantCulture, $"Stops: even the best fit leaves half "
                + $"of the decelerations {Off(rates)} what the car would make: {probably}."));
        }
        else if (Math.Abs(locks) > Systematic)
        {
            doubts.Add(Text($"Stops: even the best fit leaves half of the lock-ups at an adhesion {Off(locks)} the road's: {probably}."));
        }
        else if (shift > MostDeviations)
        {
            int axle = Math.Abs(middle[0] - model.PriorMean[0]) / model.PriorDeviation[0] >= shift ? 0 : 1;
            double factor = Math.Exp(middle[axle] - model.PriorMean[axle]);
            doubts.Add(Text($"Stops: the {(axle == 0 ? "front" : "rear")} friction they ask for is {factor:0.00} of the file's, ")
                + Text($"{shift:0.0} standard deviations off what the file allows: {probably}."));
        }
        else
        {
            doubts.Add($"Stops: {rear}.");
        }

        return doubts;
    }

    private static string Off(double log) => Text($"{Math.Abs(Math.Exp(log) - 1) * 100:0} % {(log > 0 ? "above" : "below")}");

    // A valve says what the rear line has to show; readings that fit it the other way round, or by the factor of a unit, are a slip.
    private static string? Rear(StopModel model, IReadOnlyList<TestStop> stops)
    {
        List<double> asIs = [], swapped = [];
        foreach (TestStop stop in stops.Where(stop => stop is { FrontPressure: not null, RearPressure: not null }))
        {
            if (Log(stop) is { } log
                && Log(stop with { FrontPressure = stop.RearPressure, RearPressure = stop.FrontPressure }) is { } other)
            {
                asIs.Add(log);
                swapped.Add(other);
            }
        }

        if (asIs.Count < FewestStops)
        {
            return null;
        }

        double median = KneeFit.Median([.. asIs]);
        if (Math.Abs(median) > Systematic && Math.Abs(KneeFit.Median([.. swapped])) < Explains * Math.Abs(median))
        {
            return "front and rear pressure, the gauges or their columns, are probably swapped";
        }

        return Math.Abs(Math.Abs(median) - Math.Log(PoundsPerBar)) < Explains
            ? "one of the two pressures is probably in another unit than its header says (bar under [psi], or psi under [bar])"
            : null;

        double? Log(TestStop stop) =>
            model.Prepare(stop with { RearPressure = null }, out _) is { RearLine: > 0 } by && stop.RearPressure is { Pascals: > 0 } rear
                ? Math.Log(rear.Pascals / by.RearLine)
                : null;
    }

    private static double Misfit(StopModel model, IReadOnlyList<TestStop> stops)
    {
        (double rates, double locks) = Middles(model, stops, model.PriorMean);
        return Math.Abs(rates) + Math.Abs(locks);
    }

    private static (double Rates, double Locks) Middles(StopModel model, IReadOnlyList<TestStop> stops, Vector<double> theta)
    {
        List<double> rates = [], locks = [];
        foreach (TestStop stop in stops)
        {
            if (model.Prepare(stop, out _) is { } prepared)
            {
                (double? rate, double? locked) = model.Residuals(prepared, theta);
                rates.AddRange(rate is { } r ? [r] : []);
                locks.AddRange(locked is { } l ? [l] : []);
            }
        }

        return (Middle(rates), Middle(locks));
    }

    private static double Middle(List<double> values) => values.Count < FewestStops ? 0 : KneeFit.Median([.. values]);

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>A way in which a log can be written wrongly.</summary>
    /// <param name="Words">What it is, in words.</param>
    /// <param name="Pressure">What the pressures have to be multiplied by [–].</param>
    /// <param name="Deceleration">What the decelerations have to be multiplied by [–].</param>
    private sealed record Slip(string Words, double Pressure, double Deceleration)
    {
        public TestStop Undone(TestStop stop) => stop with
        {
            FrontPressure = stop.FrontPressure * Pressure,
            RearPressure = stop.RearPressure * Pressure,
            LockPressure = stop.LockPressure * Pressure,
            Deceleration = stop.Deceleration * Deceleration,
        };
    }
}
