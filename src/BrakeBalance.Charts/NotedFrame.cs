using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts;

/// <summary>A table of a car whose file gives ranges; the note says what its numbers are.</summary>
internal sealed class NotedFrame(IEnumerable<DataFrameColumn> columns, string note) : DataFrame(columns)
{
    public string Note => note;
}
