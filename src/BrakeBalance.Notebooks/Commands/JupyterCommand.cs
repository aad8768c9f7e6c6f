using System.CommandLine;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Notebooks.Jupyter;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>jupyter install</c> and <c>jupyter remove</c>: the notebooks' kernel for Jupyter clients.</summary>
internal static class JupyterCommand
{
    public static Command Create(Terminal terminal)
    {
        var prefix = Options.Of<string?>("--prefix",
            "Sets the kernel up under DIR/share/jupyter in place of the user's Jupyter data folder", "DIR");
        var install = new Command("install",
            "Set the C# kernel up for Jupyter clients, in the user's Jupyter data folder only.") { prefix };
        install.SetAction(parsed =>
        {
            KernelSetup setup = Setup(parsed.GetValue(prefix));
            setup.Install(typeof(JupyterCommand).Assembly.Location);
            terminal.Output.WriteLine($"Kernel '{KernelSetup.Name}' is set up in {setup.Folder}. It is this program: where it is now.");
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
        var connection = new Argument<FileInfo>("connection") { Description = "The connection file that the client has written" };
        var serve = new Command("serve", "Answer a client: what the client starts itself.") { connection };
        serve.Hidden = true;
        serve.SetAction(async (parsed, cancellation) =>
        {
            string path = parsed.GetRequiredValue(connection).FullName;
            using var server = new KernelServer(Connection(path), Environment.CurrentDirectory);
            await server.RunAsync(cancellation).ConfigureAwait(false);
            return ExitCode.Success;
        });
        return new Command("jupyter", "Set up or remove the notebooks' C# kernel for Jupyter clients.") { install, remove, serve };
    }

    private static JsonObject Connection(string path)
    {
        try
        {
            return JsonNode.Parse(File.ReadAllText(path)) as JsonObject
                ?? throw new BadInputException($"'{path}' is no connection file. Accepted: the JSON object that a Jupyter client writes.");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or JsonException)
        {
            throw new BadInputException($"'{path}' cannot be read: {exception.Message} Accepted: the file that a Jupyter client writes.");
        }
    }

    private static KernelSetup Setup(string? prefix) =>
        new(prefix is null ? JupyterFolders.UserData() : Path.Combine(Path.GetFullPath(prefix), "share", "jupyter"));
}
