using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

public partial class ReadmeTests
{
    private static readonly string Text = File.ReadAllText(RepositoryRoot.File("README.md"));

    [Fact]
    public async Task The_picture_is_what_the_figures_command_draws_today()
    {
        string folder = Directory.CreateTempSubdirectory("readme").FullName;
        try
        {
            (int code, _, string error) = await Shell.RunAsync(
                "figures", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--figure", "brake-forces", "--size", "full-width",
                    "--output", folder);
            Assert.Equal((0, ""), (code, error));
            Assert.Equal(
                File.ReadAllText(Directory.GetFiles(folder, "*.svg").Single()),
                File.ReadAllText(RepositoryRoot.File("notebooks/pictures/brake-forces.svg")));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }

    [Fact]
    public async Task Every_command_it_names_exists()
    {
        string[] commands = [.. Command().Matches(Text).Select(match => match.Groups[1].Value).Distinct()];
        Assert.True(commands.Length > 8, string.Join(' ', commands));
        foreach (string command in commands)
        {
            (int code, _, string error) = await Shell.RunAsync([.. command.Split(' '), "--help"]);
            Assert.True(code == 0, $"{command}: {error}");
        }
    }

    [Fact]
    public async Task Its_alias_is_the_name_that_help_and_messages_use()
    {
        Assert.Contains($"\nalias {CommandLine.Name}=", Text, StringComparison.Ordinal);
        Assert.DoesNotMatch(@"(^|[`\s])bb ", Text);
        Assert.Contains($"{CommandLine.Name} summary ", (await Shell.RunAsync("summary", "--help")).Output, StringComparison.Ordinal);
        Assert.Contains($"'{CommandLine.Name} starter FILE'", (await Shell.RunAsync("summary")).Error, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_file_it_links_to_exists() =>
        Assert.All(Link().Matches(Text).Select(match => match.Groups[1].Value), path =>
            Assert.True(Path.Exists(RepositoryRoot.File(path)), path));

    [Fact]
    public void The_job_stands_in_one_paragraph_at_the_top_and_the_caution_follows()
    {
        string[] parts = Text.Split("\n\n");
        Assert.StartsWith("# ", parts[0], StringComparison.Ordinal);
        Assert.Contains("which axle locks first", parts[1], StringComparison.Ordinal);
        Assert.Contains("no approval", parts[2], StringComparison.Ordinal);
    }

    [GeneratedRegex(@"^balance ((?:class|measure|jupyter|notebooks) [a-z]+|[a-z-]+)", RegexOptions.Multiline)]
    private static partial Regex Command();

    [GeneratedRegex(@"\]\(((?!http)[^)#]+)\)")]
    private static partial Regex Link();
}
