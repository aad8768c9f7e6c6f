using System.Globalization;
using BrakeBalance.Balance;
using Xunit.Sdk;

namespace BrakeBalance.Tests.Oracle;

/// <summary>Compares an answer of the library with the textbook's, to a thousandth.</summary>
/// <remarks>
/// Two things may be said either way. Axles that use their tyres to the same two thousandths lock together, or either first. And where
/// the least
/// change of adhesion moves the moment of lock-up far (a curve that only grazes the limit, or rides along it), any moment between is right.
/// </remarks>
internal static class Agreement
{
    private const double Tolerance = 1e-3;
    private const double LeastAdhesion = 1e-5;

    /// <summary>One answer of the library.</summary>
    /// <param name="First">The axle that locks first; null for both together.</param>
    /// <param name="Pascals">Front master-cylinder pressure.</param>
    /// <param name="Rate">Deceleration over g; null when not told.</param>
    /// <param name="Efficiency">Braking efficiency; null when not told.</param>
    internal sealed record Lock(Axle? First, double Pascals, double? Rate = null, double? Efficiency = null);

    public static Lock? Of(LockUp? lockUp) => lockUp is null ? null : new(lockUp.First, lockUp.At.MasterPressure.Pascals,
        lockUp.At.BrakingRate, lockUp.Efficiency);

    /// <summary>Fails unless the library's first lock-up is the textbook's.</summary>
    /// <param name="given">The case, for the message.</param>
    /// <param name="car">The car in plain numbers.</param>
    /// <param name="adhesion">Adhesion of the surface.</param>
    /// <param name="metresPerSecond">Speed.</param>
    /// <param name="actual">The library's answer; null when it says that nothing locks.</param>
    /// <param name="tolerance">Relative tolerance.</param>
    public static void OnFirstLock(object given, PlainCar car, double adhesion, double metresPerSecond, Lock? actual,
        double tolerance = Tolerance)
    {
        PlainLock? expected = Textbook.FirstLock(car, adhesion, metresPerSecond);
        if (expected is not null && actual is not null && FirstAgrees(expected, actual.First)
            && NearPressure(expected.At.Pressure, actual.Pascals, tolerance)
            && (expected.IsBeforeThePedal || actual.Rate is not { } rate || Near(expected.At.BrakingRate, rate, tolerance))
            && (expected.IsBeforeThePedal || actual.Efficiency is not { } efficiency || Near(expected.Efficiency, efficiency, tolerance)))
        {
            return;
        }

        if ((expected is null && actual is null) || EitherMayBe(car, adhesion, metresPerSecond, actual, tolerance))
        {
            return;
        }

        throw new XunitException(string.Create(CultureInfo.InvariantCulture,
            $"textbook: {Words(expected)}\nlibrary:  {Words(actual)}\n"
                + $"adhesion {adhesion:0.######}, {metresPerSecond * 3.6:0.##} km/h\n{car}\nfrom {given.GetType().Name}"));
    }

    /// <summary>Whether an efficiency is the textbook's: at first lock-up, or at the highest pressure when nothing locks.</summary>
    public static bool OnEfficiency(PlainCar car, double adhesion, double metresPerSecond, double actual, out double expected)
    {
        expected = EfficiencyOf(car, adhesion, metresPerSecond);
        if (Near(expected, actual))
        {
            return true;
        }

        double low = EfficiencyOf(car, adhesion * (1 - LeastAdhesion), metresPerSecond);
        double high = EfficiencyOf(car, adhesion * (1 + LeastAdhesion), metresPerSecond);
        return actual >= Math.Min(low, high) && actual <= Math.Max(low, high);
    }

    /// <summary>Efficiency in the textbook: at first lock-up, or at the highest pressure when nothing locks.</summary>
    public static double EfficiencyOf(PlainCar car, double adhesion, double metresPerSecond) => Textbook.FirstLock(car, adhesion,
        metresPerSecond) is { } found
        ? found.Efficiency
        : Textbook.Efficiency(car, adhesion, metresPerSecond, Textbook.At(car, car.HighestPressure, metresPerSecond));

    /// <summary>Whether it is right to say that the rear locks first.</summary>
    public static bool RearMayBeFirst(PlainCar car, double adhesion, double metresPerSecond) =>
        NearAdhesions(adhesion).Any(near => Textbook.FirstLock(car, near, metresPerSecond) is { } found && (found.IsTie
            || found.RearIsFirst));

    /// <summary>Whether it is wrong not to say so.</summary>
    public static bool RearMustBeFirst(PlainCar car, double adhesion, double metresPerSecond) =>
        NearAdhesions(adhesion).All(near => Textbook.FirstLock(car, near, metresPerSecond) is { IsTie: false, RearIsFirst: true });

    private static double[] NearAdhesions(double adhesion) => [adhesion, adhesion * (1 - LeastAdhesion), adhesion * (1 + LeastAdhesion)];

    public static bool Near(double expected, double actual, double tolerance = Tolerance) =>
        Math.Abs(expected - actual) <= (tolerance * Math.Abs(expected)) + 1e-6;

    /// <summary>Nearness of two pressures: to a thousandth, or of a bar where they are small.</summary>
    public static bool NearPressure(double expected, double actual, double tolerance = Tolerance) =>
        Math.Abs(expected - actual) <= tolerance * Math.Max(1e5, Math.Abs(expected));

    public static bool FirstAgrees(PlainLock expected, Axle? first) => expected.IsTie || first == (expected.RearIsFirst ? Axle.Rear
        : Axle.Front);

    private static bool EitherMayBe(PlainCar car, double adhesion, double metresPerSecond, Lock? actual, double tolerance)
    {
        PlainLock? sooner = Textbook.FirstLock(car, adhesion * (1 - LeastAdhesion), metresPerSecond);
        PlainLock? later = Textbook.FirstLock(car, adhesion * (1 + LeastAdhesion), metresPerSecond);
        if (actual is null)
        {
            return later is null || later.At.Pressure > car.HighestPressure * (1 - tolerance);
        }

        if (sooner is null)
        {
            return actual.Pascals > car.HighestPressure * (1 - tolerance)
                && Near(Textbook.At(car, car.HighestPressure, metresPerSecond).BrakingRate, actual.Rate ?? 0, tolerance);
        }

        double latest = later?.At.Pressure ?? car.HighestPressure;
        bool moves = later is null || latest > sooner.At.Pressure * (1 + (100 * LeastAdhesion));
        bool between = actual.Pascals >= sooner.At.Pressure * (1 - tolerance) && actual.Pascals <= latest * (1 + tolerance);
        return moves && between && (FirstAgrees(sooner, actual.First) || (later is not null && FirstAgrees(later, actual.First)));
    }

    private static string Words(PlainLock? found) => found is null ? "nothing locks" : string.Create(CultureInfo.InvariantCulture,
        $"{(found.RearIsFirst ? "rear" : "front")} first (front uses {found.FrontUsed:0.######}, rear {found.RearUsed:0.######}) "
            + $"at {found.At.Pressure / 1e5:0.#####} bar, {found.At.BrakingRate:0.######} g, efficiency {found.Efficiency:0.######}");

    private static string Words(Lock? found) => found is null ? "nothing locks" : string.Create(CultureInfo.InvariantCulture,
        $"{found.First?.ToString() ?? "both"} first at {found.Pascals / 1e5:0.#####} bar, "
            + $"{found.Rate:0.######} g, efficiency {found.Efficiency:0.######}");
}
