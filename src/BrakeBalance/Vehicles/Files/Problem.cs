namespace BrakeBalance.Vehicles.Files;

/// <summary>One thing wrong with a file: where, what, and what would be accepted.</summary>
/// <param name="Path">Path of the entry in the file, such as <c>rear.brake.friction</c>; empty for the file as a whole.</param>
/// <param name="What">What is wrong, naming the value found.</param>
/// <param name="Accepted">What would be accepted; empty when <paramref name="What"/> says it.</param>
public sealed record Problem(string Path, string What, string Accepted = "")
{
    /// <summary>What a form would accept, where that differs from what the file would; null where it does not.</summary>
    public string? Typed { get; init; }

    /// <summary>What an exception says of an argument, without the name that the code has for it.</summary>
    /// <param name="fault">The exception.</param>
    /// <returns>Its message as one line.</returns>
    public static string WordsOf(ArgumentException fault) => fault.Message.Split(Behind, 2, StringSplitOptions.None)[0].TrimEnd();

    // What the runtime writes behind a message; the one in a page has no texts of its own, but their names.
    private static readonly string[] Behind = [" (Parameter", " Arg_ParamName_Name", "\n"];

    /// <inheritdoc/>
    public override string ToString() =>
        (Path.Length > 0 ? Path + ": " : "") + What + (Accepted.Length > 0 ? " Accepted: " + Accepted + "." : "");
}

/// <summary>One value set from outside in place of the file's: a path and the new text.</summary>
/// <param name="Path">
/// Path of the entry, such as <c>hydraulics.rearValves[0].knee</c>; a list element may also be named, as in
/// <c>loadCases[laden].mass</c>.
/// </param>
/// <param name="Value">The new value as text, with its unit for a quantity.</param>
public sealed record ValueOverride(string Path, string Value)
{
    /// <summary>Reads <c>path=value</c>.</summary>
    /// <param name="text">The text.</param>
    /// <returns>The override; null when there is no equals sign with something on both sides.</returns>
    public static ValueOverride? Parse(string text)
    {
        int at = text.IndexOf('=', StringComparison.Ordinal);
        string path = at > 0 ? text[..at].Trim() : "";
        string value = at > 0 ? text[(at + 1)..].Trim() : "";
        return path.Length > 0 && value.Length > 0 ? new(path, value) : null;
    }
}

/// <summary>A vehicle file that cannot be used; carries every problem found.</summary>
/// <param name="source">File name or other origin of the text.</param>
/// <param name="problems">At least one problem.</param>
public sealed class VehicleFileException(string source, IReadOnlyList<Problem> problems)
    : Exception(string.Join('\n', problems.Select(problem => source + ": " + problem)))
{
    /// <summary>Every problem found.</summary>
    public IReadOnlyList<Problem> Problems { get; } = problems;
}
