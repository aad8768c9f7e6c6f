using System.Diagnostics;
using System.Text;
using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>The built program as a process of its own, as a user starts it.</summary>
internal sealed class Program : IDisposable
{
    private readonly Process _process;
    private readonly StringBuilder _output = new(), _error = new();

    private Program(Process process)
    {
        _process = process;
        process.OutputDataReceived += (_, line) => Keep(_output, line.Data);
        process.ErrorDataReceived += (_, line) => Keep(_error, line.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
    }

    public int Id => _process.Id;

    public string Output => Text(_output);

    public string Error => Text(_error);

    /// <summary>Starts it in a folder. A shell's background job would have it ignore Ctrl-C, which <c>env</c> takes back.</summary>
    public static Program Start(string folder, params string[] arguments) => Start(folder, [], arguments);

    /// <summary>The same with variables of the environment of its own: set here, they would be those of every other test too.</summary>
    public static Program Start(string folder, Dictionary<string, string> variables, params string[] arguments)
    {
        var start = new ProcessStartInfo(
            "/usr/bin/env", ["--default-signal=INT", "dotnet", typeof(CommandLine).Assembly.Location, .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            RedirectStandardInput = true,
        };
        foreach ((string name, string value) in variables)
        {
            start.Environment[name] = value;
        }

        return new(Process.Start(start)!);
    }

    public void Signal(string name)
    {
        using var kill = Process.Start("/bin/kill", [$"-{name}", Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
    }

    public async Task<int> ExitAsync()
    {
        using var patience = new CancellationTokenSource(TimeSpan.FromMinutes(2));
        await _process.WaitForExitAsync(patience.Token);
        return _process.ExitCode;
    }

    /// <summary>Waits until something holds.</summary>
    public static async Task UntilAsync(Func<bool> holds, string what)
    {
        var since = Stopwatch.StartNew();
        while (!holds())
        {
            Assert.True(since.Elapsed < TimeSpan.FromMinutes(2), what);
            await Task.Delay(100);
        }
    }

    /// <summary>Processes on whose command line a text stands.</summary>
    public static IReadOnlyList<int> With(string text) =>
    [
        .. Directory.EnumerateDirectories("/proc").Select(Path.GetFileName).Where(name => int.TryParse(name, out _))
            .Where(id => CommandLineOf(id!).Contains(text, StringComparison.Ordinal))
                .Select(id => int.Parse(id!, System.Globalization.CultureInfo.InvariantCulture)),
    ];

    /// <summary>Processes that a process started.</summary>
    public static IReadOnlyList<int> ChildrenOf(int id) =>
    [
        .. Directory.EnumerateDirectories($"/proc/{id}/task")
            .SelectMany(task => Read(Path.Combine(task, "children")).Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Select(child => int.Parse(child, System.Globalization.CultureInfo.InvariantCulture)),
    ];

    public static bool IsRunning(int id) =>
        Read($"/proc/{id}/stat") is { Length: > 0 } stat && !stat.Contains(") Z ", StringComparison.Ordinal);

    public void Dispose()
    {
        if (!_process.HasExited)
        {
            _process.Kill(entireProcessTree: true);
        }

        _process.Dispose();
    }

    private static string CommandLineOf(string id) => Read($"/proc/{id}/cmdline");

    private static string Read(string path)
    {
        try
        {
            return File.ReadAllText(path);
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException)
        {
            return "";
        }
    }

    private static void Keep(StringBuilder text, string? line)
    {
        lock (text)
        {
            if (line is not null)
            {
                text.Append(line).Append('\n');
            }
        }
    }

    private static string Text(StringBuilder text)
    {
        lock (text)
        {
            return text.ToString();
        }
    }
}
