using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>Runs the program in this process and catches what it writes.</summary>
internal static class Shell
{
    public static async Task<(int Code, string Output, string Error)> RunAsync(params string[] arguments)
    {
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = await CommandLine.RunAsync(arguments, new Terminal(output, error, IsInteractive: false));
        return (code, output.ToString().ReplaceLineEndings("\n"), error.ToString().ReplaceLineEndings("\n"));
    }
}
