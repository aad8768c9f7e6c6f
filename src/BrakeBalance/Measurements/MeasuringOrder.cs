using BrakeBalance.Answers;
using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>Answers as bands for a car of which some numbers are ranges, and what to measure next to narrow them.</summary>
/// <remarks>Every value within a range is taken as equally likely. The order is by variance-based sensitivity (Sobol indices).</remarks>
public static class MeasuringOrder
{
    private const double PlainSlope = 0.4;

    /// <summary>Works out the bands.</summary>
    /// <param name="car">The car with its ranges.</param>
    /// <param name="adhesion">Coefficient of adhesion that the answers are for [–]; above 0, at most 2.</param>
    /// <param name="loadCase">Load case; null for the first.</param>
    /// <param name="samples">Rows of the sensitivity matrices; the car is built this many times the number of ranges plus two.</param>
    /// <param name="seed">Seed of the random numbers.</param>
    /// <returns>The answers; a car without ranges has bands without width and nothing to measure.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="adhesion"/> is outside its range.</exception>
    public static IReadOnlyList<BandedAnswer> Bands(Vehicle car, double adhesion = Conditions.DryAdhesion, string? loadCase = null,
        int samples = 256,
        int seed = 1)
    {
        Require.PositiveUpTo(adhesion, 2, nameof(adhesion));
        string k = Invariant.Text($"adhesion {adhesion:0.##}");
        (string Key, string Question, Measure Measure)[] questions =
        [
            ("rear_force_margin", $"How much more the rear could brake before it locks together with the front, {k}, as a share of "
                + "what it does; below zero the rear locks first", Measure.Number),
            ("knee_for_equal_lock_up", $"Knee at which both axles lock together, {k} (zero: even the least rear braking is too much)",
                Measure.LinePressure),
            ("first_lock_up_deceleration", $"Deceleration at first lock-up, {k}", Measure.InG),
            ("first_lock_up_line_pressure", $"Front line pressure at first lock-up, {k}", Measure.LinePressure),
            ("braking_efficiency", $"Braking efficiency at first lock-up, {k}", Measure.Number),
        ];
        Dictionary<string, double?[]> cache = [];
        double?[] All(double[] fractions)
        {
            string key = string.Join(' ', fractions.Select(f => f.ToString("R", CultureInfo.InvariantCulture)));
            if (!cache.TryGetValue(key, out double?[]? values))
            {
                values = car.Uncertainty!.Draw(fractions) is { } vehicle
                    ? Answers(vehicle, adhesion, loadCase) : new double?[questions.Length];
                cache[key] = values;
            }

            return values;
        }

        IReadOnlyList<ValueRange> ranges = car.Uncertainty?.Ranges ?? [];
        int inputs = ranges.Count;
        double?[] middle = Answers(car, adhesion, loadCase);
        return [.. questions.Select((question, q) =>
        {
            double usual = middle[q] ?? 0;
            (double[] first, double[] total, double[] values) = inputs == 0
                ? ([], [], [usual])
                : SobolIndices.Estimate(inputs, samples, f => All(f)[q] ?? usual, seed);
            double[] sorted = [.. values.Order()];
            double At(double share) => sorted[(int)Math.Clamp(share * sorted.Length, 0, sorted.Length - 1)];
            return new BandedAnswer(
                Key: question.Key,
                Question: question.Question,
                Measure: question.Measure,
                Band: new Interval<double>(At(0.5), At(0.05), At(0.95)),
                Answered: inputs == 0 ? (middle[q] is null ? 0 : 1) : cache.Values.Average(v => v[q] is null ? 0.0 : 1),
                MeasureNext: [.. ranges.Select((range, i) => Advice(range, first[i], total[i])).Where(a => a.InAll > 0.01)
                    .OrderByDescending(a => a.InAll)]);
        })];
    }

    private static MeasuringAdvice Advice(ValueRange range, double first, double total) => new(
        Path: range.Path,
        What: range.Description,
        How: range.HowToMeasure.Length > 0 ? range.HowToMeasure : "See the car's service manual, or the part itself",
        Range: $"{range.Low} .. {range.High}",
        IsTypical: range.IsTypical,
        Alone: Math.Clamp(first, 0, 1),
        InAll: Math.Clamp(total, 0, 1));

    private static double?[] Answers(Vehicle vehicle, double adhesion, string? loadCase)
    {
        LoadCase load = loadCase is null ? vehicle.LoadCases[0] : vehicle.LoadCase(loadCase);
        var model = new BalanceModel(vehicle, load);
        (double front, double rear) = model.Kernel.Together(model.Gains, adhesion, adhesion);
        double ratio = vehicle.Hydraulics.Split.RearToFrontPressureRatio;
        double threshold = vehicle.Brakes.Rear.ThresholdPressure.Pascals;
        double installed = BrakeHydraulics.Through(vehicle.Hydraulics.RearValves, front * ratio,
            model.NormalReactions(adhesion).Rear.Newtons);
        double slope = vehicle.Hydraulics.RearProportioningValve?.Slope ?? PlainSlope;
        double? margin = installed > threshold ? (rear - threshold) / (installed - threshold) - 1 : null;
        double knee = slope < 1 ? Math.Clamp((rear - slope * ratio * front) / (1 - slope), 0, Math.Max(0, ratio * front))
            : Math.Max(0, ratio * front);
        bool locks = model.TryFirstLockUp(adhesion, out BalanceState state, out _, out double efficiency);
        return
        [
            margin,
            knee,
            locks ? state.BrakingRate : null,
            locks ? state.FrontLinePascals : null,
            locks ? efficiency : null,
        ];
    }
}
