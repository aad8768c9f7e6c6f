using System.Diagnostics;
using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Jupyter;

/// <summary>The .NET tool that speaks Jupyter's protocol; its version is pinned in the repository's tool manifest.</summary>
internal static class KernelTool
{
    /// <summary>The tool's main assembly.</summary>
    public const string Assembly = "Microsoft.DotNet.Interactive.App.dll";

    private const string Package = "microsoft.dotnet-interactive";

    /// <summary>The folder with the tool's files; restores the tool when it is not there yet.</summary>
    /// <exception cref="BadInputException">The manifest does not name the tool, or it could not be restored.</exception>
    public static async Task<string> FolderAsync(string root, CancellationToken cancellation)
    {
        string version = Version(Path.Combine(root, ".config", "dotnet-tools.json"));
        if (Find(version) is { } found)
        {
            return found;
        }

        using Process restore = Process.Start(
            new ProcessStartInfo("dotnet", ["tool", "restore"])
            {
                WorkingDirectory = root,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
            })
            ?? throw new IOException("The program 'dotnet' cannot be started.");
        Task<string> output = restore.StandardOutput.ReadToEndAsync(cancellation);
        Task<string> error = restore.StandardError.ReadToEndAsync(cancellation);
        try
        {
            await restore.WaitForExitAsync(cancellation).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            restore.Kill(entireProcessTree: true);
            throw;
        }

        return Find(version)
            ?? throw new BadInputException(
                $"'dotnet tool restore' did not bring {Package} {version}: "
                    + $"{(await error.ConfigureAwait(false) + await output.ConfigureAwait(false)).Trim().ReplaceLineEndings(" ")}");
    }

    private static string Version(string manifest)
    {
        JsonNode? tool = File.Exists(manifest) ? JsonNode.Parse(File.ReadAllText(manifest))?["tools"]?[Package] : null;
        return (string?)tool?["version"] ?? throw new BadInputException($"'{manifest}' does not name the tool {Package}.");
    }

    private static string? Find(string version)
    {
        string packages = Environment.GetEnvironmentVariable("NUGET_PACKAGES") is { Length: > 0 } set
            ? set
            : Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile), ".nuget", "packages");
        string tools = Path.Combine(packages, Package, version, "tools");
        return Directory.Exists(tools)
            ? Directory.EnumerateFiles(tools, Assembly, SearchOption.AllDirectories).Select(Path.GetDirectoryName).FirstOrDefault()
            : null;
    }
}
