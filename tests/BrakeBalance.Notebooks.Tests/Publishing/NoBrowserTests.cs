using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>Where there is no browser.</summary>
[Collection(EnginesCollection.Name)]
public class NoBrowserTests
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    [Fact]
    public async Task Without_a_browser_drawings_are_written_and_the_rest_is_told()
    {
        using var folder = new TemporaryFolder();
        string? before = Environment.GetEnvironmentVariable(Chromium.Variable);
        Environment.SetEnvironmentVariable(Chromium.Variable, "/no/such/browser");
        try
        {
            (int code, string _, string error) =
                await Shell.RunAsync("figures", Coupe, "--figure", "line-pressures", "--format", "png", "--output", folder.Path);
            Assert.Equal(1, code);
            Assert.Contains("Chromium", error, StringComparison.Ordinal);
            Assert.Equal(5, folder.Names.Count());
        }
        finally
        {
            Environment.SetEnvironmentVariable(Chromium.Variable, before);
        }
    }
}
