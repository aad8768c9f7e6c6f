using System.Text.RegularExpressions;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>Keeps cells from running on with what a failed cell did not make.</summary>
/// <remarks>The kernel leaves null or zero in the variables of a failed cell.</remarks>
internal sealed partial class FailedCells
{
    // By name of a variable: the start of the failed cell for which it was not made.
    private readonly Dictionary<string, string> _lacking = [];

    /// <summary>Why a cell cannot run; null where it can.</summary>
    public string? Against(string code) => Missing(code) is { } name
        ? $"Not run: '{name}' rests on a cell that failed. Mend that cell and run on from there. It begins with: {_lacking[name]}" : null;

    /// <summary>Remembers what came of a cell.</summary>
    /// <param name="code">The cell.</param>
    /// <param name="failed">Whether it failed or was not run.</param>
    public void Ran(string code, bool failed)
    {
        string? culprit = Missing(code) is { } missing ? _lacking[missing] : null;
        foreach (string name in Made(code))
        {
            _lacking.Remove(name);
            if (failed)
            {
                _lacking[name] = culprit ?? Start(code);
            }
        }
    }

    private string? Missing(string code) => _lacking.Keys.Except(Made(code))
        .FirstOrDefault(name => Regex.IsMatch(Words().Replace(code, ""), $@"(?<![.\w]){name}\b(?!\s*=>)"));

    private static string Start(string code)
    {
        string line = code.TrimStart().Split('\n')[0].TrimEnd();
        return line.Length <= 60 ? line : line[..60] + " …";
    }

    // The variables that a cell makes or sets: its statements stand at the margin.
    private static string[] Made(string code) => [.. Assignment().Matches(code)
        .SelectMany(match => match.Groups["name"].Captures.Select(name => name.Value)).Distinct()];

    // Texts, save those with values in them, and comments.
    [GeneratedRegex(@"(?<!\$)@""(?:[^""]|"""")*""|(?<![$@])""[^""\n]*""|//.*")]
    private static partial Regex Words();

    [GeneratedRegex(
        @"^(?:var \((?:(?<name>\w+)(?:, )?)+\)|(?:[A-Za-z_][\w.<>?,\[\]]* )?(?<name>[A-Za-z_]\w*)) *=(?![=>])", RegexOptions.Multiline)]
    private static partial Regex Assignment();
}
