using BrakeBalance.Days;
using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The posted table of how often intervals of 90 % hold the truth.</summary>
[Collection(SpeedCollection.Name)]
public class CoverageTests
{
    [Fact]
    public void Of_the_posted_days_88_to_92_per_cent_hold_each_quantity()
    {
        Assert.Equal(Coverage.Quantities.Length, IntervalCoverage.Posted.Count);
        Assert.All(IntervalCoverage.Posted, row => Assert.InRange(row.Days, 500, int.MaxValue));
        Assert.All(IntervalCoverage.Posted, row => Assert.InRange(row.Share, 0.88, 0.92));
    }

    /// <summary>Another processor's last digits may carry one day over an edge; more means that the table must be made again.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(17)]
    public void A_part_of_the_posted_table_made_again_is_the_same(int block)
    {
        IReadOnlyDictionary<string, string> posted = ReferenceTable.Rows("interval-coverage.csv", row => row)[block];
        Assert.Equal(block * Coverage.Block, (int)posted.Number("first day")!.Value);
        int[] held = Coverage.Held(Coverage.Seed, block * Coverage.Block, Coverage.Block, Environment.ProcessorCount);
        Assert.All(held.Zip(posted.Keys.Skip(2)), pair => Assert.InRange(pair.First - posted.Number(pair.Second)!.Value, -1, 1));
    }
}
