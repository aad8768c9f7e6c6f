using System.Diagnostics.CodeAnalysis;

namespace BrakeBalance.Notebooks;

/// <summary>What a command was given cannot be used; ends it with <see cref="ExitCode.BadInput"/>.</summary>
internal sealed class BadInputException(params IReadOnlyList<string> problems) : Exception(string.Join('\n', problems))
{
    /// <summary>Every problem found.</summary>
    public IReadOnlyList<string> Problems { get; } = problems;

    /// <summary>Ends the command when there are problems.</summary>
    /// <exception cref="BadInputException">There is a problem.</exception>
    internal static void ThrowIfAny(IReadOnlyList<string> problems)
    {
        if (problems.Count > 0)
        {
            throw new BadInputException(problems);
        }
    }

    /// <summary>The same where nothing was read without a problem.</summary>
    internal static void ThrowIfAny(IReadOnlyList<string> problems, [NotNull] object? read)
    {
        if (problems.Count > 0 || read is null)
        {
            throw new BadInputException(problems);
        }
    }
}
