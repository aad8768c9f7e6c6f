using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts;

/// <summary>A column whose numbers all stand with as many digits behind the point, as running text writes their kind.</summary>
internal sealed class RoundedColumn(DoubleDataFrameColumn numbers, int digits) : DoubleDataFrameColumn(numbers.Name, numbers)
{
    public int Digits => digits;
}
