using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using System.Runtime.InteropServices;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>The program's commands and what they have in common: where they write, how they fail.</summary>
internal static class CommandLine
{
    /// <summary>What the program is called: the tool's command, the alias of the readme, the word in help and messages.</summary>
    public const string Name = "balance";

    private static readonly TimeSpan LongestFarewell = TimeSpan.FromSeconds(5);

    private const string About =
        """
        Brake balance of a car: which axle locks first, and where the proportioning valve belongs.

        A calculation is no approval. Brake work and test stops are for competent people and off public roads,
        under local law and the car's service manual. A car whose rear axle locks first spins.

        """ + ExitCode.Meanings;

    internal static IReadOnlyList<(string Name, Func<Terminal, Command> Create)> Commands { get; } =
    [
        ("render", RenderCommand.Create),
        ("summary", SummaryCommand.Create),
        ("compare", CompareCommand.Create),
        ("choose", ChooseCommand.Create),
        ("stops", StopsCommand.Create),
        ("bench", BenchCommand.Create),
        ("measure", MeasureCommand.Create),
        ("check", CheckCommand.Create),
        ("starter", StarterCommand.Create),
        ("schema", SchemaCommand.Create),
        ("notebooks", NotebooksCommand.Create),
        ("class", ClassCommand.Create),
        ("figures", FiguresCommand.Create),
        ("card", CardCommand.Create),
        ("story", StoryCommand.Create),
        ("your-car", LiveCommand.Create),
        ("jupyter", JupyterCommand.Create),
    ];

    /// <summary>Runs the program.</summary>
    /// <returns>One of <see cref="ExitCode"/>.</returns>
    /// <remarks>What a command writes as its answer is held back until it has ended well, so that no half answer is ever shown.</remarks>
    public static async Task<int> RunAsync(IReadOnlyList<string> arguments, Terminal terminal, CancellationToken cancellation = default)
    {
        TextWriter error = terminal.Error;
        terminal = terminal.Holding();
        CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.CurrentUICulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentCulture = CultureInfo.InvariantCulture;
        CultureInfo.DefaultThreadCurrentUICulture = CultureInfo.InvariantCulture;

        // A plain command and not the parser's root, which would call itself by the assembly's file name.
        var root = new Command(Name, About)
        {
            new HelpOption { Action = new HelpAction { MaxWidth = terminal.Width } },
            new VersionOption(),
        };
        foreach (Func<Terminal, Command> create in Called(arguments.Count > 0 ? arguments[0] : ""))
        {
            root.Add(create(terminal));
        }

        if (UnreadableWords(arguments) is { Count: > 0 } unreadable)
        {
            return Refuse(terminal, unreadable, arguments);
        }

        ParseResult parsed = root.Parse(arguments);
        if (parsed.Errors.Count > 0)
        {
            return Refuse(terminal, [.. parsed.Errors.Select(Words).Distinct(), "--help shows how a command is used."],
                arguments);
        }

        try
        {
            int code = await InvokeAsync(parsed, terminal, error, cancellation).ConfigureAwait(false);
            if (code >= ExitCode.Stopped)
            {
                return Stop(terminal, code);
            }

            terminal.Release();
            return code;
        }
        catch (BadInputException exception)
        {
            return Refuse(terminal, exception.Problems, arguments);
        }
        catch (OperationCanceledException)
        {
            return Stop(terminal, ExitCode.Stopped);
        }
        catch (Exception exception)
        {
            terminal.Error.WriteLine(FaultReport.Write(exception, arguments));
            return ExitCode.Fault;
        }
    }

    // Only the command that is called is made: all of them take a tenth of a short answer's time.
    private static IEnumerable<Func<Terminal, Command>> Called(string word) =>
        Commands.Where(command => command.Name == word || Commands.All(other => other.Name != word)).Select(command => command.Create);

    // The first Ctrl-C asks the command to end, and whoever listens to the token is waited for; what computes without listening is left
    // to the end of the process, as its answer is held back and each of its files is written whole or not at all.
    private static async Task<int> InvokeAsync(ParseResult parsed, Terminal terminal, TextWriter error, CancellationToken cancellation)
    {
        var invocation = new InvocationConfiguration
        {
            Output = terminal.Output,
            Error = terminal.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = null,
        };
        using var asked = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        void Ask(PosixSignalContext context)
        {
            context.Cancel = !asked.IsCancellationRequested;
            asked.Cancel();
        }

        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Ask);
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Ask);
        Task<int> running = Task.Run(() => parsed.InvokeAsync(invocation, asked.Token), CancellationToken.None);
        var stopped = new TaskCompletionSource();
        using CancellationTokenRegistration stop = asked.Token.Register(stopped.SetResult);
        Task either = Task.WhenAny(running, stopped.Task);
        if (terminal.IsWatched)
        {
            await terminal.Work.ShowAsync(either, error, terminal.Width).ConfigureAwait(false);
        }

        await either.ConfigureAwait(false);
        if (!running.IsCompleted && parsed.CommandResult.Command.Action is AsynchronousCommandLineAction)
        {
            await Task.WhenAny(running, Task.Delay(LongestFarewell, CancellationToken.None)).ConfigureAwait(false);
        }

        if (running.IsCompleted)
        {
            return await running.ConfigureAwait(false);
        }

        if (terminal.Work.ShowsItself)
        {
            // Bars that are left standing leave the cursor hidden.
            terminal.Live.Write("\n\u001b[?25h");
            terminal.Live.Flush();
        }

        AtomicFile.Finish();
        return ExitCode.Stopped;
    }

    // The parser names the word that is none of those accepted, but not the option, and gives each of them a line.
    private static string Words(ParseError error) =>
        error.SymbolResult is { Tokens: [var word] } symbol && error.Message.Split('\n') is [_, .. { Length: > 0 } known]
            ? $"{(symbol is OptionResult of ? of.Option.Name : (symbol as ArgumentResult)?.Argument.Name)} {word.Value}: there is no such "
                + $"thing. Accepted: {string.Join(", ", known.Select(one => one.Trim('\t', '\'', '\r')))}."
            : error.Message;

    /// <summary>Words that no path, name or number can be: empty, or with characters that cannot be seen.</summary>
    private static List<string> UnreadableWords(IReadOnlyList<string> arguments) =>
    [
        .. arguments.Index().Where(word => string.IsNullOrWhiteSpace(word.Item))
            .Select(word => Invariant.Text($"Word {word.Index + 1} of the command is empty. Accepted: a file, a name or a value.")),
        .. arguments.Where(word => !VisibleText.IsPlain(word))
            .Select(word => $"{word}: a word of the command has characters that cannot be seen. Accepted: letters, digits and signs."),
    ];

    /// <summary>
    /// Refuses the input; a refusal without a reason would leave the user with nothing, so it is a fault of this program.
    /// </summary>
    private static int Refuse(Terminal terminal, IReadOnlyList<string> problems, IReadOnlyList<string> arguments)
    {
        string[] said = [.. problems.Where(problem => !string.IsNullOrWhiteSpace(problem))];
        if (said.Length == 0)
        {
            terminal.Error.WriteLine(FaultReport.Write(new InvalidOperationException("Input was refused without a reason."), arguments));
            return ExitCode.Fault;
        }

        foreach (string problem in said)
        {
            terminal.Error.WriteLine(problem);
        }

        return ExitCode.BadInput;
    }

    private static int Stop(Terminal terminal, int code)
    {
        terminal.Error.WriteLine("Stopped.");
        return code;
    }
}
