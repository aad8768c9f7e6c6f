using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Execution.Children;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>The built program, ended from outside while it works: what it says and that nothing stays behind.</summary>
[Collection(EnginesCollection.Name)]
public sealed class EndingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public EndingTests()
    {
        Directory.CreateDirectory(_folder.File("notebooks"));
        Directory.CreateDirectory(_folder.File("data/vehicles"));
        _folder.Write("Notebooks.sln", "");
        File.Copy(RepositoryRoot.File(NotebookInput.DefaultVehicle), _folder.File(NotebookInput.DefaultVehicle));
        _folder.Write("notebooks/01-endless.ipynb", SampleNotebook.Json("# Endless", "1", "while (true) { }"));
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("INT", 130)]
    [InlineData("KILL", 137)]
    public async Task A_render_that_is_stopped_takes_its_cells_with_it(string signal, int expected)
    {
        if (!OperatingSystem.IsLinux())
        {
            return; // reads /proc
        }

        using Program render = Program.Start(_folder.Path, "render");
        await Program.UntilAsync(() =>
            render.Output.Contains("cell 1 of 2", StringComparison.Ordinal), "the first cell runs: " + render.Error);
        int cells = Assert.Single(Program.ChildrenOf(render.Id), id => Program.With(CellWorker.Command).Contains(id));
        render.Signal(signal);

        Assert.Equal(expected, await render.ExitAsync());
        await Program.UntilAsync(() => !Program.IsRunning(cells), "the process of the cells ends");
        if (signal == "INT")
        {
            Assert.Equal("Stopped.\n", render.Error);
            Assert.DoesNotContain("ran to their end", render.Output, StringComparison.Ordinal);
            Assert.False(Directory.Exists(_folder.File("out")));
        }
    }

    [SkippableFact]
    public async Task The_browser_ends_with_a_killed_export()
    {
        Skip.If(Chromium.Executable is null && Environment.GetEnvironmentVariable("CI") != "true", Chromium.Missing);
        Skip.IfNot(OperatingSystem.IsLinux(), "reads /proc");
        HashSet<string> before = [.. Profiles()];
        using Program figures = Program.Start(_folder.Path, "figures", RepositoryRoot.File(NotebookInput.DefaultVehicle), "--format", "png",
            "--size", "all", "--many", "--scale", "3", "--output", "figures");
        string profile = "";
        await Program.UntilAsync(
            () => (profile = Profiles()
                .FirstOrDefault(folder => !before.Contains(folder) && Program.With("--user-data-dir=" + folder).Count > 1)
                ?? "").Length > 0,
            "the browser runs: " + figures.Error);
        figures.Signal("KILL");

        Assert.Equal(137, await figures.ExitAsync());
        await Program.UntilAsync(() =>
            Program.With(profile).Count == 0 && !Directory.Exists(profile), "the browser ends and its profile is gone");

        static IEnumerable<string> Profiles() => Directory.EnumerateDirectories(Path.GetTempPath(), "brake-balance-browser-*");
    }
}
