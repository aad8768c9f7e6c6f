namespace BrakeBalance.Charts;

/// <summary>The one place where the display units of a run are chosen.</summary>
/// <remarks>
/// Every figure function takes an optional <see cref="UnitSystem"/>; when it is left out, <see cref="Units"/> holds.
/// Set it once, before the first figure is built.
/// </remarks>
public static class Display
{
    /// <summary>Name of the environment variable read for the initial choice: <c>si</c> or <c>us</c>.</summary>
    public const string Variable = "BRAKE_BALANCE_UNITS";

    /// <summary>The units in use; at the start those named by the environment variable <see cref="Variable"/>, otherwise SI.</summary>
    public static UnitSystem Units { get; set; } = Parse(Environment.GetEnvironmentVariable(Variable)) ?? UnitSystem.Si;

    /// <summary>The short name of a system of units, as file names have it.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns><c>si</c> or <c>us</c>.</returns>
    public static string Name(UnitSystem units) => units == UnitSystem.Us ? "us" : "si";

    /// <summary>Reads the name of a system of units.</summary>
    /// <param name="name"><c>si</c> or <c>us</c>, in any case.</param>
    /// <returns>The system of units; null when <paramref name="name"/> is null, empty or unknown.</returns>
    public static UnitSystem? Parse(string? name) =>
        Enum.TryParse(name, ignoreCase: true, out UnitSystem units) && Enum.IsDefined(units) && !char.IsDigit(name![0]) ? units : null;
}
