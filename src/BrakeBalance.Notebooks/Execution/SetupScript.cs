using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>The files a cell loads with <c>#load</c>, prepared for an engine inside this program.</summary>
/// <remarks>
/// Another C# kernel reads <c>#load</c> and <c>#r</c> itself, with the assemblies of the last release build. Inside this
/// program the assemblies are the ones it runs on, whatever they were built as: each <c>#r</c> of a file that lies beside
/// the program is pointed there, so that a figure made in a cell is of the program's own type. In a browser all of them are at hand.
/// </remarks>
internal static partial class SetupScript
{
    /// <summary>Runs a cell after the files it loads.</summary>
    /// <returns>What came of the cell, or the failure of a file it loads.</returns>
    public static async Task<CellRun> RunAsync(string code, string folder, Func<string, Task<CellRun>> submit)
    {
        foreach (Match match in LoadLine().Matches(code))
        {
            string path = Path.GetFullPath(Path.Combine(folder, match.Groups["path"].Value));
            if (!File.Exists(path))
            {
                int line = code.AsSpan(0, match.Index).Count('\n') + 1;
                return new CellRun([], CellFailures.At(code, $"There is no file '{path}' to load.", line));
            }

            CellRun loaded = await submit(WithOwnAssemblies(File.ReadAllText(path), Path.GetDirectoryName(path)!)).ConfigureAwait(false);
            if (loaded.Failure is { } failure)
            {
                return new CellRun([], failure with { Message = $"{Path.GetFileName(path)}: {failure.Message}" });
            }
        }

        // Blanks in their place: what is said of the cell counts its lines and letters.
        return await submit(LoadLine().Replace(code, line => new string(' ', line.Length))).ConfigureAwait(false);
    }

    private static string WithOwnAssemblies(string script, string folder) => ReferenceLine().Replace(script, match =>
    {
        string own = Path.Combine(AppContext.BaseDirectory, Path.GetFileName(match.Groups["path"].Value));
        string path = File.Exists(own) ? own : Path.GetFullPath(Path.Combine(folder, match.Groups["path"].Value));
        return OperatingSystem.IsBrowser() ? "" : $"#r \"{path}\"";
    });

    [GeneratedRegex("""^[ \t]*#load[ \t]+"(?<path>[^"\n]+)"[ \t]*$""", RegexOptions.Multiline)]
    private static partial Regex LoadLine();

    [GeneratedRegex("""^[ \t]*#r[ \t]+"(?<path>[^"\n]+)"[ \t]*$""", RegexOptions.Multiline)]
    private static partial Regex ReferenceLine();
}
