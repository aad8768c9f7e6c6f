using BrakeBalance.Bench;
using BrakeBalance.Bench.Files;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Tests.Bench;

/// <summary>The bench file to start from is a sound job.</summary>
public class BenchStarterTests
{
    [Fact]
    public void The_starter_is_read_with_each_optional_line_taken_in_and_with_all_of_them()
    {
        string[] lines = BenchStarter.Text().Split('\n');
        Assert.Contains("numbers are invented", lines[0]);
        BenchReport report = BenchReport.Of(Read(lines));
        Assert.NotEmpty(report.Sheet.Hoses);
        Assert.NotNull(report.PushRod);
        Assert.DoesNotContain(report.Findings, finding => finding.Severity == BenchSeverity.Wrong);
        int[] optional = [.. lines.Index()
            .Where(line => line.Item.Contains(CommentedFile.Optional, StringComparison.Ordinal) && line.Index > 6)
            .Select(line => line.Index)];
        Assert.True(optional.Length > 15, $"{optional.Length} optional lines");
        Assert.All(optional, taken => BenchReport.Of(Read(lines.Select((line, i) => i == taken ? TakenIn(line) : line))));
        BenchReport.Of(Read(lines.Select(TakenIn)));
    }

    private static string TakenIn(string line) => line.Replace(CommentedFile.Optional, "", StringComparison.Ordinal);

    private static BenchSheet Read(IEnumerable<string> lines) => BenchFile.Read(string.Join('\n', lines), "starter", RepositoryFiles.Root);
}
