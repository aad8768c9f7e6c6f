namespace BrakeBalance.Vehicles.Files;

/// <summary>Reads a quantity that stands by itself, such as a command's option, by the rules of the files' entries.</summary>
public static class QuantityOption
{
    /// <summary>Reads one quantity.</summary>
    /// <typeparam name="T">The kind of quantity.</typeparam>
    /// <param name="text">The text, such as "100 km/h".</param>
    /// <returns>The quantity, finite; or null and what is wrong.</returns>
    public static (T? Value, string? Fault) Read<T>(string text) where T : struct, IQuantity =>
        QuantityText.Read(text, typeof(T), out IQuantity? low, out IQuantity? high) is { } fault ? (null, fault)
        : !ReferenceEquals(low, high) ? (null, $"\"{text}\" is a range; give one value.")
        : ((T)low!, null);
}
