using BrakeBalance.Charts.Outputs;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Tests.Outputs;

public class FrameTableTests
{
    private static readonly DataFrame Settings = new(
        new DoubleDataFrameColumn("Knee [bar]", new double?[] { 38.5, null, 41.123456789 }),
        new StringDataFrameColumn("Set-up", ["as found", "a \"b\", c", "<new>"]));

    [Fact]
    public void Headings_belong_to_columns_and_text_is_escaped()
    {
        string html = new FrameTable(Settings).ToHtml();
        Assert.Contains("<th scope=\"col\" class=\"number\">Knee [bar]</th><th scope=\"col\">Set-up</th>", html);
        Assert.Contains("<td>&lt;new&gt;</td>", html);
        Assert.Contains("<td class=\"number\">–</td>", html);
        Assert.DoesNotContain("rows are shown", html);
    }

    [Fact]
    public void A_long_frame_is_cut_and_says_so()
    {
        var table = new FrameTable(Settings, mostRows: 2);
        Assert.Contains("The first 2 of 3 rows are shown.", table.ToHtml());
        Assert.DoesNotContain("new", table.ToHtml());
        Assert.EndsWith("The first 2 of 3 rows are shown.", table.ToPlainText());
    }

    [Fact]
    public void The_CSV_has_all_rows_in_full_precision_with_quotes_where_due() =>
        Assert.Equal("Knee [bar],Set-up\n38.5,as found\n,\"a \"\"b\"\", c\"\n41.123456789,<new>\n", new FrameTable(Settings, mostRows: 1)
            .ToCsv());
}
