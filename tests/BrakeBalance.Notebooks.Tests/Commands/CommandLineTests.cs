using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

[Collection(EnginesCollection.Name)]
public class CommandLineTests
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    [Fact]
    public async Task Help_lists_the_commands_and_the_caution()
    {
        (int code, string output, string error) = await Shell.RunAsync("--help");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("A calculation is no approval", output);
        foreach (string command in new[] { "render", "summary", "check", "starter", "schema", "notebooks", "jupyter" })
        {
            Assert.Contains($"\n  {command}", output);
        }
    }

    [Fact]
    public void Every_command_is_found_by_its_own_name() => Assert.All(CommandLine.Commands,
        command => Assert.Equal(command.Name, command.Create(new Terminal(TextWriter.Null, TextWriter.Null, false)).Name));

    [Theory]
    [InlineData("brew", "brew")]
    [InlineData("check", "FILE")]
    [InlineData("check x.json --loud", "--loud")]
    [InlineData("summary x.json --units furlongs", "--units furlongs: there is no such thing. Accepted: si, us.")]
    [InlineData("render --engine steam", "--engine steam: ")]
    [InlineData("card x.json --paper a4", "--paper a4: there is no such thing. Accepted: a5, half-letter.")]
    [InlineData("measure starter wheels x.csv", "KIND wheels: there is no such thing. Accepted: gauges, stops")]
    [InlineData("compare x.json", "Vehicle files given: 1; times --set: 0. Accepted: 2 to ")]
    public async Task What_is_not_understood_ends_with_2_and_says_so(string line, string named)
    {
        (int code, string output, string error) = await Shell.RunAsync(line.Split(' '));
        Assert.Equal((2, ""), (code, output));
        Assert.Contains(named, error);
        Assert.Equal(line.StartsWith("compare", StringComparison.Ordinal), !error.Contains("--help", StringComparison.Ordinal));
        Assert.DoesNotContain("   at ", error);
    }

    [Fact]
    public async Task Check_says_that_a_good_file_is_good()
    {
        (int code, string output, string error) = await Shell.RunAsync("check", Coupe);
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("no problem found", output);
    }

    [Fact]
    public async Task Check_lists_all_problems_at_once()
    {
        using var folder = new TemporaryFolder();
        string broken = folder.Write("broken.json", File.ReadAllText(Coupe)
            .Replace("\"2.90 m\"", "290", StringComparison.Ordinal)
            .Replace("\"drumRadius\"", "\"drumRadios\"", StringComparison.Ordinal));

        (int code, string output, string error) = await Shell.RunAsync("check", broken, "--set", "nonsense");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("wheelbase: 290 has no unit", error);
        Assert.Contains("drumRadios", error);
        Assert.Contains("--set nonsense", error);
        Assert.DoesNotContain("   at ", error);
    }

    [Fact]
    public async Task Check_of_a_file_that_is_not_there_ends_with_2()
    {
        (int code, string _, string error) = await Shell.RunAsync("check", "/nowhere/car.json");
        Assert.Equal(2, code);
        Assert.Contains("/nowhere/car.json", error);
    }
}
