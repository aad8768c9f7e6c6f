using System.Runtime.CompilerServices;

namespace BrakeBalance;

/// <summary>
/// Guards for values set through an <c>init</c> accessor; the message names the property, the value and what is accepted.
/// </summary>
internal static class Require
{
    /// <summary>A number from <paramref name="low"/> to <paramref name="high"/>, both included.</summary>
    public static double Between(double value, double low, double high, [CallerMemberName] string name = "") =>
        value >= low && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value, Invariant.Text($"Must lie between {low} and {high}."));

    /// <summary>A count from <paramref name="low"/> to <paramref name="high"/>, both included.</summary>
    public static int Between(int value, int low, int high, [CallerMemberName] string name = "") =>
        (int)Between((double)value, low, high, name);

    /// <summary>An angle that is off zero by no more than so many degrees.</summary>
    public static UnitsNet.Angle Within(UnitsNet.Angle value, double degrees, [CallerMemberName] string name = "") =>
        Between(value, UnitsNet.Angle.FromDegrees(-degrees), UnitsNet.Angle.FromDegrees(degrees), name);

    /// <summary>A number above zero and not above <paramref name="high"/>.</summary>
    public static double PositiveUpTo(double value, double high, [CallerMemberName] string name = "") =>
        value > 0 && value <= high
            ? value
            : throw new ArgumentOutOfRangeException(name, value,
                Invariant.Text($"Must be greater than zero and not above {high}."));

    /// <summary>A number above zero.</summary>
    public static double Positive(double value, [CallerMemberName] string name = "") =>
        value > 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "Must be greater than zero and finite.");

    /// <summary>A number not below zero.</summary>
    public static double NotNegative(double value, [CallerMemberName] string name = "") =>
        value >= 0 && double.IsFinite(value)
            ? value
            : throw new ArgumentOutOfRangeException(name, value, "Must not be negative, and must be finite.");

    /// <summary>A quantity above zero.</summary>
    public static T Positive<T>(T value, [CallerMemberName] string name = "") where T : UnitsNet.IQuantity =>
        (double)value.Value > 0
            ? value
            : throw new ArgumentOutOfRangeException(name, Words(value), "Must be greater than zero.");

    /// <summary>A quantity not below zero.</summary>
    public static T NotNegative<T>(T value, [CallerMemberName] string name = "") where T : UnitsNet.IQuantity =>
        (double)value.Value >= 0
            ? value
            : throw new ArgumentOutOfRangeException(name, Words(value), "Must not be negative.");

    /// <summary>A quantity from <paramref name="low"/> to <paramref name="high"/>, both included.</summary>
    public static T Between<T>(T value, T low, T high, [CallerMemberName] string name = "") where T
        : struct, UnitsNet.IQuantity, IComparable<T> =>
        value.CompareTo(low) >= 0 && value.CompareTo(high) <= 0
            ? value
            : throw new ArgumentOutOfRangeException(name, Words(value), $"Must lie between {Words(low)} and {Words(high)}.");

    private static string Words(UnitsNet.IQuantity value) => value.ToString(null, System.Globalization.CultureInfo.InvariantCulture) ?? "?";
}
