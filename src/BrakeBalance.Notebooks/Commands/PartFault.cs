using System.CommandLine;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Why one part of many could not be done, in words for the user.</summary>
internal static class PartFault
{
    /// <summary>The words.</summary>
    /// <returns>What the calculation says; of a fault of this program, where its details are.</returns>
    public static string Words(Exception fault, ParseResult parsed) =>
        Said(fault) ?? FaultReport.Write(fault, [.. parsed.Tokens.Select(token => token.Value)]);

    /// <summary>An answer, or what the calculation says against the input.</summary>
    /// <exception cref="BadInputException">The input cannot be used; the message begins with <paramref name="of"/>.</exception>
    public static T Refused<T>(string of, Func<T> answer)
    {
        try
        {
            return answer();
        }
        catch (Exception exception) when (Said(exception) is { } words)
        {
            throw new BadInputException(of.Length > 0 ? $"{of}: {words}" : words);
        }
    }

    /// <summary>What this project's own code says of an input with which it cannot calculate; null for any other fault.</summary>
    private static string? Said(Exception fault) => fault switch
    {
        BadInputException bad => string.Join(" ", bad.Problems),
        AggregateException { InnerException: { } inner } => Said(inner),
        ArgumentException or InvalidOperationException when IsOurs(fault) =>
            fault.Message.Split(" (Parameter", 2)[0].ReplaceLineEndings(" ").TrimEnd(),
        _ => null,
    };

    // A message of the framework speaks of the code, not of the car.
    private static bool IsOurs(Exception fault) =>
        fault is not (ArgumentNullException or ObjectDisposedException)
        && fault.TargetSite?.DeclaringType?.Assembly.GetName().Name?.StartsWith("BrakeBalance", StringComparison.Ordinal) == true;
}
