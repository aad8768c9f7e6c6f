using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>Answers fit the width asked for, 80 columns unless said, whatever the command.</summary>
[Collection(nameof(WidthTests))]
[CollectionDefinition(nameof(WidthTests), DisableParallelization = true)]
public sealed class WidthTests : IDisposable
{
    private readonly string? _columns = Environment.GetEnvironmentVariable("COLUMNS");

    public static TheoryData<string, int> Answers
    {
        get
        {
            TheoryData<string, int> answers = [];
            foreach (string command in (string[])
            [
                "summary vehicles/coupe-1960s.json --all", "summary vehicles/track-coupe.json --all --units us",
                "summary vehicles/big-cam-saloon.json --set rear.brake.friction=0.34..0.44", "summary --keys",
                "stops vehicles/coupe-1960s.json --bend-map --split-adhesion 0.3/0.8 --release 100bar/s",
                "stops vehicles/track-coupe.json --units us",
                "stops --keys", "measure gauges logs/invented-gauges.csv", "measure series logs/invented-phone.csv",
                "measure setting vehicles/coupe-1960s.json --draws 2000 --stops logs/invented-stops.csv --gauges logs/invented-gauges.csv",
                "measure bands vehicles/coupe-1960s.json", "measure bands vehicles/coupe-1960s.json --set wheelbase=2.8m..2.9m",
                "measure plan vehicles/coupe-1960s.json", "measure questions vehicles/coupe-1960s.json", "bench bench/booster-swap.json",
                "bench bench/booster-swap.json --units us", "bench --threads inverted", "--help", "summary --help", "stops --help",
                "compare vehicles/coupe-1960s.json vehicles/track-coupe.json", "compare --help", "choose --help", "choose starter --help",
                "measure --help", "measure setting --help", "bench --help", "render --help", "card --help",
                "figures --help", "story --help",
                "class --help", "class sheets --help", "starter --help", "check --help", "notebooks --help", "jupyter --help",
                "schema --help",
            ])
            {
                answers.Add(command, 80);
                answers.Add(command, 60);
            }

            answers.Add("bench bench/booster-swap.json", 140);
            return answers;
        }
    }

    public void Dispose() => Environment.SetEnvironmentVariable("COLUMNS", _columns);

    [Theory]
    [MemberData(nameof(Answers))]
    public async Task No_line_is_wider_than_asked(string command, int width)
    {
        Environment.SetEnvironmentVariable("COLUMNS", width == 80 ? null : $"{width}");
        (int code, string output, string error) = await Shell.RunAsync([.. command.Split(' ').Select(word =>
            word.Contains('/', StringComparison.Ordinal) && word.Contains('.', StringComparison.Ordinal) && !word.StartsWith('0')
                ? RepositoryRoot.File("data/" + word) : word)]);
        Assert.True(code == 0, error);
        Assert.Equal([], output.Split('\n').Where(line => line.TrimEnd().Length > width));
        Assert.DoesNotContain("\n\n\n", output, StringComparison.Ordinal);
        Assert.DoesNotContain("…\n", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_table_that_cannot_stand_in_columns_stands_in_blocks_with_every_cell()
    {
        Environment.SetEnvironmentVariable("COLUMNS", "200");
        string bench = RepositoryRoot.File("data/bench/booster-swap.json");
        string wide = (await Shell.RunAsync("bench", bench)).Output;
        Environment.SetEnvironmentVariable("COLUMNS", "50");
        string narrow = (await Shell.RunAsync("bench", bench)).Output;
        string[] words = [.. wide.Split([' ', '\n', '─'], StringSplitOptions.RemoveEmptyEntries).Distinct()];
        string[] lost = [.. words.Where(word => word.Length < 20 && !narrow.Contains(word, StringComparison.Ordinal))];
        Assert.Equal([], lost);
    }
}
