using MathNet.Numerics.Statistics;

namespace BrakeBalance.Measurements;

/// <summary>What the speeds at the wheels say of a stop: slip, and which axle locked when.</summary>
internal sealed record WheelLocks(FirstLock? First, double? FrontAt, double? RearAt, double? FrontSlip, double? RearSlip)
{
    private const double LockedSlip = 0.85, HalfSlip = 0.5, LeastSpeed = 2.5, LeastSeconds = 0.08, OneInstant = 0.03;

    // No tyre of a car slows it faster, so a wheel that does is locking.
    private const double MostDeceleration = 13;

    /// <summary>Looks at the wheels during a stop.</summary>
    /// <param name="samples">The samples from just before the stop to its end.</param>
    /// <param name="reference">Speed of the car on the wheels' clock; null where only the wheels know it.</param>
    /// <returns>What was found; null without wheel speeds of both axles.</returns>
    public static WheelLocks? Of(IEnumerable<MotionSample> samples, Func<double, double>? reference)
    {
        MotionSample[] within = [.. samples
            .Where(s => (s.Wheels.FrontLeft ?? s.Wheels.FrontRight) is not null && (s.Wheels.RearLeft ?? s.Wheels.RearRight) is not null)];
        if (within.Length < 5)
        {
            return null;
        }

        double[] time = [.. within.Select(s => s.Time.Seconds)];
        double[][] wheels = [.. within.Select(s => s.AllWheels.Select(w => w?.MetersPerSecond ?? double.NaN).ToArray())];
        double[] car = new double[time.Length];
        for (int i = 0; i < time.Length; i++)
        {
            double fastest = wheels[i].Where(w => !double.IsNaN(w)).Max();
            car[i] = reference?.Invoke(time[i])
                ?? (i == 0 ? fastest : Math.Max(fastest, car[i - 1] - MostDeceleration * (time[i] - time[i - 1])));
        }

        double v0 = car[0];
        double? Slip(params int[] corners)
        {
            double[] slips = [.. Enumerable.Range(0, time.Length).Where(i => car[i] <= 0.8 * v0 && car[i] >= 0.3 * v0)
                .SelectMany(i => corners.Select(c => 1 - wheels[i][c] / car[i])).Where(double.IsFinite)];
            return slips.Length < 3 ? null : slips.Median();
        }

        double? Locked(params int[] corners) => corners.Select(c => LockedAt(time, car, [.. wheels.Select(w => w[c])])).Min();

        (double? front, double? rear) = (Locked(0, 1), Locked(2, 3));
        return new WheelLocks(
            FrontAt: front,
            RearAt: rear,
            First: (front, rear) switch
            {
                (null, null) => FirstLock.None,
                (not null, null) => FirstLock.Front,
                (null, not null) => FirstLock.Rear,
                ({ } f, { } r) => Math.Abs(f - r) < OneInstant ? FirstLock.Together : f < r ? FirstLock.Front : FirstLock.Rear,
            },
            FrontSlip: Slip(0, 1),
            RearSlip: Slip(2, 3));
    }

    // A wheel locks when it slips by half on its way to standing still while the car rolls.
    private static double? LockedAt(double[] time, double[] car, double[] wheel)
    {
        double? half = null, still = null;
        for (int i = 0; i < time.Length; i++)
        {
            double slip = car[i] > LeastSpeed ? 1 - wheel[i] / car[i] : 0;
            if (double.IsNaN(slip))
            {
                continue;
            }

            half = slip > HalfSlip ? half ?? time[i] : null;
            still = slip > LockedSlip ? still ?? time[i] : null;
            if (still is { } since && time[i] - since >= LeastSeconds)
            {
                return half;
            }
        }

        return null;
    }
}
