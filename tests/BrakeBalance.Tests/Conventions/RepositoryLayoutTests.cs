namespace BrakeBalance.Tests.Conventions;

/// <summary>What a newcomer finds on the top level of the repository.</summary>
public class RepositoryLayoutTests
{
    private static readonly string[] Allowed =
        ["DEVELOPERS.md", "LICENSE", "Notebooks.sln", "README.md", "data", "notebooks", "src", "tests"];

    // What a build leaves behind is not part of the repository.
    private static readonly string[] Ignored = ["out", "TestResults", "BenchmarkDotNet.Artifacts"];

    [Fact]
    public void Top_level_holds_nothing_but_the_eight_visible_names() => Assert.Empty(
        Directory.GetFileSystemEntries(RepositoryFiles.Root)
            .Select(path => Path.GetFileName(path)!)
            .Where(name => name[0] != '.')
            .Except(Allowed)
            .Except(Ignored));

    [Theory]
    [InlineData("Notebooks.sln")]
    [InlineData("data")]
    [InlineData("notebooks")]
    [InlineData("src")]
    [InlineData("tests")]
    public void Top_level_has(string name) => Assert.True(Path.Exists(Path.Combine(RepositoryFiles.Root, name)), name);

    [Fact]
    public void Packages_with_known_faults_fail_the_build() =>
        Assert.Contains("<NuGetAudit>true</NuGetAudit>",
            File.ReadAllText(Path.Combine(RepositoryFiles.Root, "src", "Directory.Build.props")), StringComparison.Ordinal);
}
