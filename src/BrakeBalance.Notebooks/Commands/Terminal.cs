using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands;

/// <summary>Where a command writes.</summary>
/// <param name="Output">Answers.</param>
/// <param name="Error">Problems.</param>
/// <param name="IsInteractive">Whether a person watches <paramref name="Output"/>: colours and moving progress, else plain lines.</param>
public sealed record Terminal(TextWriter Output, TextWriter Error, bool IsInteractive)
{
    /// <summary>Columns of a table when nobody watches; wide enough that no table is folded.</summary>
    private const int PlainWidth = 160;

    /// <summary>The terminal of this process.</summary>
    /// <returns>The terminal.</returns>
    public static Terminal OfProcess()
    {
        Console.OutputEncoding = System.Text.Encoding.UTF8;
        return new Terminal(Console.Out, Console.Error, !Console.IsOutputRedirected && Environment.GetEnvironmentVariable("CI") is null);
    }

    /// <summary>A console for tables and progress on <see cref="Output"/>.</summary>
    /// <returns>The console.</returns>
    public IAnsiConsole Rich()
    {
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Ansi = IsInteractive ? AnsiSupport.Detect : AnsiSupport.No,
            ColorSystem = IsInteractive ? ColorSystemSupport.Detect : ColorSystemSupport.NoColors,
            Interactive = IsInteractive ? InteractionSupport.Detect : InteractionSupport.No,
            Out = new AnsiConsoleOutput(Output),
        });
        if (!IsInteractive)
        {
            console.Profile.Width = PlainWidth;
        }

        return console;
    }
}
