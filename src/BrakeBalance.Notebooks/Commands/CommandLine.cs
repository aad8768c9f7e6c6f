using System.CommandLine;
using System.Globalization;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>The program's commands and what they have in common: where they write, how they fail.</summary>
public static class CommandLine
{
    private const string About =
        """
        Brake balance of a car: which axle locks first, and where the proportioning valve belongs.

        A calculation is no approval. Brake work and test stops belong in competent hands and off public roads,
        under local law and the car's service manual. A car whose rear axle locks first spins.
        """;

    /// <summary>Runs the program.</summary>
    /// <param name="arguments">The words after the program's name.</param>
    /// <param name="terminal">Where it writes.</param>
    /// <param name="cancellation">Ends a running command.</param>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, Terminal terminal, CancellationToken cancellation = default)
    {
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

        var root = new RootCommand(About)
        {
            RenderCommand.Create(terminal),
            SummaryCommand.Create(terminal),
            StopsCommand.Create(terminal),
            BenchCommand.Create(terminal),
            MeasureCommand.Create(terminal),
            CheckCommand.Create(terminal),
            StarterCommand.Create(terminal),
            SchemaCommand.Create(terminal),
            NotebooksCommand.Create(terminal),
            ClassCommand.Create(terminal),
            FiguresCommand.Create(terminal),
            CardCommand.Create(terminal),
            StoryCommand.Create(terminal),
            JupyterCommand.Create(terminal),
        };
        ParseResult parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0)
        {
            return Refuse(terminal, [.. parsed.Errors.Select(error => error.Message).Distinct(), "--help shows how a command is used."]);
        }

        try
        {
            var invocation = new InvocationConfiguration { Output = terminal.Output, Error = terminal.Error, EnableDefaultExceptionHandler = false };
            return await parsed.InvokeAsync(invocation, cancellation).ConfigureAwait(false);
        }
        catch (BadInputException exception)
        {
            return Refuse(terminal, exception.Problems);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine(exception.Message);
            return ExitCode.Failed;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("Stopped.");
            return ExitCode.Failed;
        }
    }

    private static int Refuse(Terminal terminal, IReadOnlyList<string> problems)
    {
        foreach (string problem in problems)
        {
            terminal.Error.WriteLine(problem);
        }

        return ExitCode.BadInput;
    }
}
