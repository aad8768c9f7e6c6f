using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class StarterCommandTests
{
    private const string Metric = @"\d (mm|cm|m|kg|bar|kPa|N|kN|km/h|m/s|°C|N·m|l|cm³|l/min|m²|cm²)(?![\w·/²³])";
    private const string Customary = @"\d (in|ft|lb|psi|lbf|mph|°F|inHg|US gal/min)(?![\w·/²³])";

    [Fact]
    public async Task The_starter_file_passes_the_check()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("starter", folder.File("car.json"))).Code);
        Assert.Equal(["car.json"], folder.Names);
        (int code, string _, string error) = await Shell.RunAsync("check", folder.File("car.json"));
        Assert.Equal((0, ""), (code, error));
    }

    [Theory]
    [InlineData("pump", "disc", "adjustable")]
    [InlineData("vacuum", "drum", "load-sensing")]
    [InlineData("none", "disc", "balance-bar")]
    public async Task A_starter_of_other_parts_passes_the_check(string assist, string rear, string valve)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("starter", folder.File("car.json"), "--assist", assist, "--rear", rear, "--valve",
            valve)).Code);
        (int code, string _, string error) = await Shell.RunAsync("check", folder.File("car.json"));
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(assist == "pump", File.ReadAllText(folder.File("car.json")).Contains("\"pumpFlow\"", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("us", Metric, "starter", "-", "--assist", "vacuum", "--rear", "drum")]
    [InlineData("us", Metric, "starter", "-", "--assist", "pump")]
    [InlineData("us", Metric, "bench", "starter")]
    [InlineData("us", Metric, "choose", "starter", "targets")]
    [InlineData("us", Metric, "choose", "starter", "parts")]
    [InlineData("si", Customary, "starter", "-", "--assist", "vacuum")]
    [InlineData("si", Customary, "choose", "starter", "targets")]
    public async Task A_starter_in_one_system_of_units_has_none_of_the_other(string units, string others, params string[] command)
    {
        using var folder = new TemporaryFolder();
        string text = (await Shell.RunAsync([.. command, "--units", units])).Output;
        string[] below = [.. text.Split('\n').SkipWhile(line => line.StartsWith("//", StringComparison.Ordinal) || line.StartsWith('#'))];
        Assert.DoesNotContain(below, line => System.Text.RegularExpressions.Regex.IsMatch(line, others));
        if (command[0] == "starter")
        {
            File.WriteAllText(folder.File("car.json"), text);
            (int code, string _, string error) = await Shell.RunAsync("check", folder.File("car.json"), "--strict");
            Assert.Equal((0, ""), (code, error));
        }
    }

    [Fact]
    public async Task Parts_that_no_starter_has_are_refused_with_those_there_are()
    {
        (int code, string _, string error) = await Shell.RunAsync("starter", "-", "--assist", "electric");
        Assert.Equal(2, code);
        Assert.Contains("vacuum", error);
    }

    [Fact]
    public async Task A_bench_starter_is_worked_out_as_it_stands()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("bench", "starter", folder.File("job.json"))).Code);
        (int code, string output, string error) = await Shell.RunAsync("bench", folder.File("job.json"));
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("pump to booster", output);
    }

    [Theory]
    [InlineData("gauges", "front pressure [psi]")]
    [InlineData("stops", "locked first")]
    public async Task A_log_to_fill_in_goes_to_a_file_or_the_terminal(string kind, string column)
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("measure", "starter", kind, folder.File("log.csv"), "--units", "us")).Code);
        Assert.Contains(column, File.ReadAllText(folder.File("log.csv")));
        Assert.Equal(File.ReadAllText(folder.File("log.csv")), (await Shell.RunAsync("measure", "starter", kind, "--units", "us")).Output);
    }

    [Fact]
    public async Task An_unfilled_log_is_told_to_hold_nothing()
    {
        using var folder = new TemporaryFolder();
        await Shell.RunAsync("measure", "starter", "gauges", folder.File("log.csv"));
        (int code, string _, string error) = await Shell.RunAsync("measure", "gauges", folder.File("log.csv"));
        Assert.Equal(2, code);
        Assert.Contains("log.csv", error);
    }

    [Theory]
    [InlineData("bench", "starter")]
    [InlineData("measure", "starter", "gauges")]
    [InlineData("measure", "starter", "stops")]
    public async Task No_starter_writes_over_a_file_unless_forced(params string[] command)
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("mine", "mine");
        (int code, string _, string error) = await Shell.RunAsync([.. command, file]);
        Assert.Equal(2, code);
        Assert.Contains("--force", error);
        Assert.Equal("mine", File.ReadAllText(file));
        Assert.Equal(0, (await Shell.RunAsync([.. command, file, "--force"])).Code);
        Assert.NotEqual("mine", File.ReadAllText(file));
    }

    [Fact]
    public async Task A_dash_writes_to_the_terminal()
    {
        (int code, string output, string _) = await Shell.RunAsync("starter", "-");
        Assert.Equal(0, code);
        Assert.Contains("\"wheelbase\"", output);
        Assert.Contains("//", output);
    }

    [Fact]
    public async Task A_file_that_is_there_is_written_over_only_by_force()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("car.json", "mine");
        (int code, string _, string error) = await Shell.RunAsync("starter", file);
        Assert.Equal(2, code);
        Assert.Contains("--force", error);
        Assert.Equal("mine", File.ReadAllText(file));

        Assert.Equal(0, (await Shell.RunAsync("starter", file, "--force")).Code);
        Assert.NotEqual("mine", File.ReadAllText(file));
    }

    [Fact]
    public async Task A_folder_is_refused()
    {
        using var folder = new TemporaryFolder();
        (int code, string _, string error) = await Shell.RunAsync("starter", folder.Path);
        Assert.Equal(2, code);
        Assert.Contains("folder", error);
    }

    [Fact]
    public async Task The_schema_is_JSON_and_describes_the_wheelbase()
    {
        (int code, string output, string _) = await Shell.RunAsync("schema");
        Assert.Equal(0, code);
        Assert.NotNull(JsonNode.Parse(output)!["properties"]!["wheelbase"]);
    }
}
