using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Jupyter;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Jupyter;

public class KernelSetupTests
{
    [Fact]
    public void The_kernel_specification_starts_this_program()
    {
        using var folder = new TemporaryFolder();
        var setup = new KernelSetup(folder.File("data"));
        setup.Install("/where/the program/is.dll");

        JsonNode specification = JsonNode.Parse(File.ReadAllText(Path.Combine(setup.Folder, "kernel.json")))!;
        Assert.Equal(["dotnet", "/where/the program/is.dll", "jupyter", "serve", "{connection_file}"],
            specification["argv"]!.AsArray().Select(word => (string?)word));
    }

    [Fact]
    public void Removing_leaves_what_was_there_before_and_nothing_more()
    {
        using var folder = new TemporaryFolder();
        string[] before = [.. folder.Names];
        var setup = new KernelSetup(folder.File("data/jupyter"));
        setup.Install("program.dll");
        setup.Install("program.dll");

        Assert.True(setup.Remove());
        Assert.Equal(before, folder.Names);
        Assert.False(setup.Remove());
    }

    [Fact]
    public void Removing_keeps_other_kernels()
    {
        using var folder = new TemporaryFolder();
        var setup = new KernelSetup(folder.File("data"));
        setup.Install("program.dll");
        Directory.CreateDirectory(folder.File("data/kernels/other"));
        setup.Remove();

        Assert.True(Directory.Exists(folder.File("data/kernels/other")));
    }
}
