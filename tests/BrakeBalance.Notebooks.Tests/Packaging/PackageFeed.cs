using System.Diagnostics;
using System.Xml.Linq;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Packaging;

/// <summary>Both packages of the built solution in a feed that is a folder, and an empty folder in which nothing else is at hand.</summary>
public sealed class PackageFeed : IAsyncLifetime
{
    private readonly TemporaryFolder _folder = new();

    /// <summary>The version that every project has.</summary>
    public static string Version { get; } =
        XDocument.Load(RepositoryRoot.File("src/Directory.Build.props")).Descendants("Version").Single().Value;

    public string Feed => _folder.File("feed");

    /// <summary>Where the tool is installed.</summary>
    public string Tools => _folder.File("tools");

    /// <summary>A folder that began empty.</summary>
    public string Work => _folder.File("work");

    public string Package(string id, string extension) => Path.Combine(Feed, $"{id}.{Version}.{extension}");

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Work);
        string configuration = Path.GetFileName(Path.GetDirectoryName(Path.GetDirectoryName(typeof(CommandLine).Assembly.Location))!);
        foreach (string project in (string[])["BrakeBalance", "BrakeBalance.Notebooks"])
        {
            await DotnetAsync(
                "pack", RepositoryRoot.File($"src/{project}/{project}.csproj"), "--configuration", configuration,
                "--no-build", "--output", Feed, "-nodeReuse:false");
        }

        await DotnetAsync("tool", "install", "BrakeBalance.Tool", "--version", Version, "--tool-path", Tools, "--source", Feed);
    }

    /// <summary>The installed tool, in the folder that began empty.</summary>
    public Task<(int Code, string Output, string Error)> ToolAsync(params string[] arguments) =>
        RunAsync(Path.Combine(Tools, CommandLine.Name), arguments);

    /// <summary>A command of the SDK that has to succeed, in the folder that began empty.</summary>
    /// <returns>What it wrote.</returns>
    public async Task<string> DotnetAsync(params string[] arguments)
    {
        (int code, string output, string error) = await RunAsync("dotnet", arguments);
        Assert.True(code == 0, $"dotnet {string.Join(' ', arguments)}\n{output}\n{error}");
        return output;
    }

    public Task DisposeAsync()
    {
        _folder.Dispose();
        return Task.CompletedTask;
    }

    private async Task<(int Code, string Output, string Error)> RunAsync(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = Work,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };

        // What the running tests were started with would lead the SDK astray, and packages of an earlier run must not stand in for these.
        string[] inherited = [.. start.Environment.Keys.Where(name => name.StartsWith("MSBuild", StringComparison.OrdinalIgnoreCase))];
        Array.ForEach(inherited, name => start.Environment.Remove(name));

        start.Environment["NUGET_PACKAGES"] = _folder.File("packages");
        start.Environment["DOTNET_CLI_UI_LANGUAGE"] = "en";
        start.Environment["DOTNET_NOLOGO"] = "1";
        if (arguments is ["pack", ..])
        {
            start.Environment.Remove("NUGET_PACKAGES");
        }

        using Process process = Process.Start(start)!;
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(4));
        Task<string> output = process.StandardOutput.ReadToEndAsync(patience.Token);
        Task<string> error = process.StandardError.ReadToEndAsync(patience.Token);
        try
        {
            await process.WaitForExitAsync(patience.Token);
            return (process.ExitCode, (await output).ReplaceLineEndings("\n"), (await error).ReplaceLineEndings("\n"));
        }
        finally
        {
            if (!process.HasExited)
            {
                process.Kill(entireProcessTree: true);
            }
        }
    }
}
