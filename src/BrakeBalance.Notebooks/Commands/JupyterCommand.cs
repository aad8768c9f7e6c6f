using System.CommandLine;
using BrakeBalance.Notebooks.Jupyter;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>jupyter install</c> and <c>jupyter remove</c>: the notebooks' kernel for Jupyter clients.</summary>
internal static class JupyterCommand
{
    public static Command Create(Terminal terminal)
    {
        var prefix = new Option<string?>("--prefix")
        {
            Description = "Sets the kernel up under DIR/share/jupyter in place of the user's Jupyter data folder",
            HelpName = "DIR",
        };
        var install = new Command("install",
            "Set the C# kernel up for Jupyter clients, in the user's Jupyter data folder only.") { prefix };
        install.SetAction(async (parsed, cancellation) =>
        {
            string tool = await KernelTool.FolderAsync(Repository.Folder("."), cancellation).ConfigureAwait(false);
            KernelSetup setup = Setup(parsed.GetValue(prefix));
            setup.Install(tool, AppContext.BaseDirectory);
            terminal.Output.WriteLine($"Kernel '{KernelSetup.Name}' is set up in {setup.Folder}.");
            terminal.Output.WriteLine("The notebooks use the release build: run 'dotnet build -c Release' after each change of the code.");
            return ExitCode.Success;
        });
        var remove = new Command("remove", "Undo 'install': delete the kernel from the Jupyter data folder.") { prefix };
        remove.SetAction(parsed =>
        {
            KernelSetup setup = Setup(parsed.GetValue(prefix));
            terminal.Output.WriteLine(setup.Remove()
                ? $"Kernel '{KernelSetup.Name}' is removed from {setup.Folder}."
                : $"There is no kernel '{KernelSetup.Name}' in {setup.Folder}.");
            return ExitCode.Success;
        });
        return new Command("jupyter", "Set up or remove the notebooks' C# kernel for Jupyter clients.") { install, remove };
    }

    private static KernelSetup Setup(string? prefix) =>
        new(prefix is null ? JupyterFolders.UserData() : Path.Combine(Path.GetFullPath(prefix), "share", "jupyter"));
}
