using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts;

/// <summary>A table whose cells have the bands of a car's ranges; the note says what they are.</summary>
internal sealed class BandedFrame(IEnumerable<DataFrameColumn> columns, string note) : DataFrame(columns)
{
    public string Note => note;
}
