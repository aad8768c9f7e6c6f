using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Spectre.Console;

namespace BrakeBalance.Notebooks;

/// <summary>Where a command writes.</summary>
/// <param name="Output">Answers.</param>
/// <param name="Error">Problems.</param>
/// <param name="IsInteractive">Whether a person watches <paramref name="Output"/>: colours and moving progress, else plain lines.</param>
internal sealed partial record Terminal(TextWriter Output, TextWriter Error, bool IsInteractive)
{
    /// <summary>Where progress is shown while a command still works: the real output, never held back.</summary>
    public TextWriter Live { get; private init; } = Output;

    /// <summary>Whether a person sees <see cref="Error"/> as it is written: progress is shown there.</summary>
    public bool IsWatched { get; init; }

    /// <summary>What the command is busy with.</summary>
    public Work Work { get; } = new();

    /// <summary>
    /// Columns that every answer can be read at; those of all that is written when nobody watches and COLUMNS is not
    /// set.
    /// </summary>
    public const int Columns = 80;

    private const int FewestColumns = 40;

    /// <summary>The terminal of this process.</summary>
    public static Terminal OfProcess()
    {
        System.Console.OutputEncoding = System.Text.Encoding.UTF8;
        bool person = Environment.GetEnvironmentVariable("CI") is null;
        return new Terminal(System.Console.Out, System.Console.Error, !System.Console.IsOutputRedirected && person)
        {
            IsWatched = !System.Console.IsErrorRedirected && person,
        };
    }

    /// <summary>
    /// The same terminal with its answers held back until <see cref="Release"/>, and with what cannot be seen made visible.
    /// </summary>
    internal Terminal Holding() =>
        this with
        {
            Output = new StringWriter(),
            Error = new VisibleWriter(IsWatched ? new ClearingWriter(Error, Work) : Error),
            Live = IsInteractive ? Output : new VisibleWriter(Output),
        };

    internal void Release()
    {
        Live.Write(BlankLines().Replace(VisibleText.Of(Output.ToString()!, colours: IsInteractive), "\n\n"));
        Live.Flush();
        (Output as StringWriter)?.GetStringBuilder().Clear();
    }

    /// <summary>Columns of what is written: those of the screen, or what COLUMNS asks for, or <see cref="Columns"/>.</summary>
    public int Width => Rich().Profile.Width;

    /// <summary>A console for tables on <see cref="Output"/>.</summary>
    public IAnsiConsole Rich() => Console(new Held(Output, Live));

    /// <summary>Writes an answer for a script, or for a reader.</summary>
    public int Answer(bool forScript, Func<JsonNode> json, Action<IAnsiConsole> shown)
    {
        if (forScript)
        {
            Output.WriteLine(IndentedJson.Text(json()));
        }
        else
        {
            shown(Rich());
        }

        return ExitCode.Success;
    }

    /// <summary>A console for progress on <see cref="Live"/>.</summary>
    public IAnsiConsole Watched() => Console(new AnsiConsoleOutput(Live));

    // Tables and paragraphs each keep their distance; two of them together need no more than one.
    [GeneratedRegex("\n{3,}")]
    private static partial Regex BlankLines();

    private IAnsiConsole Console(IAnsiConsoleOutput output)
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = IsInteractive ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = IsInteractive ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = IsInteractive ? InteractionSupport.Detect : InteractionSupport.No,
            Out = output,
        });
        if (!IsInteractive)
        {
            console.Profile.Width = int.TryParse(Environment.GetEnvironmentVariable("COLUMNS"), out int asked) && asked >= FewestColumns
                ? asked : Columns;
        }

        return console;
    }

    /// <summary>Text held back, laid out for the terminal on which it will be shown.</summary>
    private sealed class Held(TextWriter writer, TextWriter shown) : IAnsiConsoleOutput
    {
        private readonly AnsiConsoleOutput _shown = new(shown);

        public TextWriter Writer => writer;

        public bool IsTerminal => _shown.IsTerminal;

        public int Width => _shown.Width;

        public int Height => _shown.Height;

        public void SetEncoding(System.Text.Encoding encoding)
        {
        }
    }
}
