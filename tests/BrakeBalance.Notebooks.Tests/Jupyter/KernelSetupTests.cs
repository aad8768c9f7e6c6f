using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Jupyter;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Jupyter;

public class KernelSetupTests
{
    [Fact]
    public void The_newer_library_is_laid_over_the_copy_and_the_tool_stays_as_it_was()
    {
        using var folder = new TemporaryFolder();
        (string tool, string program) = Sources(folder);
        var setup = new KernelSetup(folder.File("data"));
        setup.Install(tool, program);

        Assert.Equal("new", File.ReadAllText(Path.Combine(setup.Folder, "tool", "FSharp.Core.dll")));
        Assert.Equal("inner", File.ReadAllText(Path.Combine(setup.Folder, "tool", "sub", "inner.txt")));
        Assert.Equal("old", File.ReadAllText(Path.Combine(tool, "FSharp.Core.dll")));
    }

    [Fact]
    public void The_kernel_specification_points_at_the_copy()
    {
        using var folder = new TemporaryFolder();
        (string tool, string program) = Sources(folder);
        var setup = new KernelSetup(folder.File("data"));
        setup.Install(tool, program);

        JsonNode specification = JsonNode.Parse(File.ReadAllText(Path.Combine(setup.Folder, "kernel.json")))!;
        Assert.Equal(Path.Combine(setup.Folder, "tool", "Microsoft.DotNet.Interactive.App.dll"), (string?)specification["argv"]![1]);
        Assert.Contains(specification["argv"]!.AsArray(), word => (string?)word == "--http-local-only");
        Assert.Equal("1", (string?)specification["env"]!["DOTNET_INTERACTIVE_CLI_TELEMETRY_OPTOUT"]);
    }

    [Fact]
    public void Removing_leaves_what_was_there_before_and_nothing_more()
    {
        using var folder = new TemporaryFolder();
        (string tool, string program) = Sources(folder);
        string[] before = [.. folder.Names];
        var setup = new KernelSetup(folder.File("data/jupyter"));
        setup.Install(tool, program);
        setup.Install(tool, program);

        Assert.True(setup.Remove());
        Assert.Equal(before, folder.Names);
        Assert.False(setup.Remove());
    }

    [Fact]
    public void Removing_keeps_other_kernels()
    {
        using var folder = new TemporaryFolder();
        (string tool, string program) = Sources(folder);
        var setup = new KernelSetup(folder.File("data"));
        setup.Install(tool, program);
        Directory.CreateDirectory(folder.File("data/kernels/other"));
        setup.Remove();

        Assert.True(Directory.Exists(folder.File("data/kernels/other")));
    }

    private static (string Tool, string Program) Sources(TemporaryFolder folder)
    {
        string tool = Directory.CreateDirectory(folder.File("source")).FullName;
        Directory.CreateDirectory(Path.Combine(tool, "sub"));
        File.WriteAllText(Path.Combine(tool, "FSharp.Core.dll"), "old");
        File.WriteAllText(Path.Combine(tool, "sub", "inner.txt"), "inner");
        string program = Directory.CreateDirectory(folder.File("program")).FullName;
        File.WriteAllText(Path.Combine(program, "FSharp.Core.dll"), "new");
        return (tool, program);
    }
}
