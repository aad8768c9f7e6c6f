using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class StarterCommandTests
{
    [Fact]
    public async Task The_starter_file_passes_the_check()
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("starter", folder.File("car.json"))).Code);
        Assert.Equal(["car.json"], folder.Names);
        (int code, string _, string error) = await Shell.RunAsync("check", folder.File("car.json"));
        Assert.Equal((0, ""), (code, error));
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
