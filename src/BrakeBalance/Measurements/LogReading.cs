namespace BrakeBalance.Measurements;

/// <summary>What a log gave: the rows that could be read, and every line that was left out.</summary>
/// <typeparam name="TRow">Kind of row.</typeparam>
public sealed record LogReading<TRow>
{
    /// <summary>What the remark begins with that marks a log as invented.</summary>
    public const string InventedMark = "origin: invented";

    private const double MostLost = 0.02;

    /// <summary>The rows that could be read, in the order of the file.</summary>
    public required IReadOnlyList<TRow> Rows { get; init; }

    /// <summary>Rows of data that could not be used, each with its reason among <see cref="Problems"/>.</summary>
    public required int Lost { get; init; }

    /// <summary>Whether so much was left out, more than one row in fifty, that the rest may tell something else than the whole.</summary>
    public bool LosesTooMuch => Lost > MostLost * (Rows.Count + Lost);

    /// <summary>Lines left out and columns not used, each with its reason; empty when all was read.</summary>
    public required IReadOnlyList<LogProblem> Problems { get; init; }

    /// <summary>What each column was taken for; empty for logs whose columns have fixed names.</summary>
    public IReadOnlyList<LogColumn> Columns { get; init; } = [];

    /// <summary>The comment lines of the file and those before its header, without their mark.</summary>
    public required IReadOnlyList<string> Remarks { get; init; }

    /// <summary>Whether the log is marked as invented, by a remark that begins with <see cref="InventedMark"/>.</summary>
    public bool IsInvented => Remarks.Any(remark => remark.StartsWith(InventedMark, StringComparison.Ordinal));
}
