using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Why one part of many could not be done, in words for the user.</summary>
internal static class PartFault
{
    /// <summary>The words.</summary>
    /// <returns>What the calculation says; of a fault of this program, where its details are.</returns>
    public static string Words(Exception fault, ParseResult parsed) =>
        Said(fault) ?? FaultReport.Write(fault, [.. parsed.Tokens.Select(token => token.Value)]);

    /// <summary>What this project's own code says of an input with which it cannot calculate; null for any other fault.</summary>
    public static string? Said(Exception fault) => fault switch
    {
        BadInputException bad => string.Join(" ", bad.Problems),
        ArgumentException or InvalidOperationException when IsOurs(fault) =>
            fault.Message.Split(" (Parameter", 2)[0].ReplaceLineEndings(" ").TrimEnd(),
        _ => null,
    };

    // A message of the framework speaks of the code, not of the car.
    private static bool IsOurs(Exception fault) =>
        fault is not (ArgumentNullException or ObjectDisposedException)
        && fault.TargetSite?.DeclaringType?.Assembly.GetName().Name?.StartsWith("BrakeBalance", StringComparison.Ordinal) == true;
}
