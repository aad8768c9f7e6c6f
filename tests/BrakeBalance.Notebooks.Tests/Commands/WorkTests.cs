using System.Diagnostics;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>What takes longer than a second says how far it is, to a person only, and can be stopped.</summary>
public sealed class WorkTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    private string In(string name) => Path.Combine(_folder.Path, name);

    private static async Task<(int Code, string Output, string Error, TimeSpan After)> RunAsync(
        bool watched, Func<string, TimeSpan, bool> until, params string[] words)
    {
        using var source = new CancellationTokenSource();
        using var output = new StringWriter();
        using var error = new StringWriter();
        using var shared = TextWriter.Synchronized(error);
        var terminal = new Terminal(output, shared, IsInteractive: false) { IsWatched = watched };
        Task<int> running = CommandLine.RunAsync(words, terminal, source.Token);
        var since = Stopwatch.StartNew();
        while (!running.IsCompleted && since.Elapsed < TimeSpan.FromMinutes(2) && !until(Text(shared, error), since.Elapsed))
        {
            await Task.Delay(50);
        }

        since.Restart();
        await source.CancelAsync();
        return (await running, output.ToString(), error.ToString(), since.Elapsed);
    }

    // The synchronized writer guards the text with its own monitor.
    private static string Text(TextWriter shared, StringWriter text)
    {
        lock (shared)
        {
            return text.ToString();
        }
    }

    private string[] LongSearch()
    {
        File.WriteAllText(In("p.csv"), "part,name,sets\nratio,a,pedal.ratio = 3 .. 9 step 0.01\nvalve,b,"
            + "hydraulics.rearValves[0].knee = 10 bar .. 60 bar step 0.1 bar\n");
        return ["choose", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--parts", In("p.csv")];
    }

    [Fact]
    public async Task After_a_second_one_line_says_how_far_it_is_and_goes_away_before_the_last_word()
    {
        (int code, string output, string error, _) = await RunAsync(
            true, (error, _) => error.Contains('%', StringComparison.Ordinal), LongSearch());
        Assert.Equal(ExitCode.Stopped, code);
        Assert.Equal("", output);
        Assert.Matches(@"\rtrying combinations \[#* *\] \d+ %, \d+ s; Ctrl-C stops\u001b\[K", error);
        Assert.EndsWith("\r\u001b[KStopped." + Environment.NewLine, error, StringComparison.Ordinal);
        Assert.Equal(1, error.Count(c => c == '\n'));
    }

    [Fact]
    public async Task Sheets_of_a_large_class_say_how_far_they_are()
    {
        (int code, _, string error, _) = await RunAsync(true, (error, _) => error.Contains('%', StringComparison.Ordinal),
            "class", "sheets", "--secret", "a secret of tests", "--students", "1-9000", "--output", In("class"));
        Assert.Equal(ExitCode.Stopped, code);
        Assert.Matches(@"\rwriting sheets and key \[#* *\] \d+ %, \d+ s; Ctrl-C stops\u001b\[K", error);
    }

    [Fact]
    public async Task Where_nobody_knows_how_much_is_left_a_mark_runs_through_the_bar()
    {
        var work = new Work();
        using var error = new StringWriter();
        await work.ShowAsync(work.DoAsync("reading", async _ =>
        {
            await Task.Delay(2500);
            return 0;
        }), error, 80);
        string[] bars = [.. Regex.Matches(error.ToString(), @"reading (\[ *### *\]), \d+ s").Select(match => match.Groups[1].Value)];
        Assert.All(bars, bar => Assert.Equal(26, bar.Length));
        Assert.True(bars.Distinct().Count() >= 3, error.ToString());
    }

    [Fact]
    public async Task Where_nobody_watches_nothing_of_it_is_written()
    {
        (int code, _, string error, _) = await RunAsync(false, (_, passed) => passed.TotalSeconds > 3, LongSearch());
        Assert.Equal(ExitCode.Stopped, code);
        Assert.Equal("Stopped.\n", error.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task What_ends_within_a_second_shows_no_line()
    {
        (int code, _, string error, _) = await RunAsync(true, (_, _) => false, "schema");
        Assert.Equal(ExitCode.Success, code);
        Assert.Equal("", error);
    }

    [Fact]
    public async Task A_command_that_does_not_listen_is_left_at_once_and_leaves_no_file()
    {
        (int code, string output, _, TimeSpan after) = await RunAsync(false, (_, passed) => passed.TotalSeconds > 1.5, "measure", "setting",
            RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--stops", RepositoryRoot.File("data/logs/invented-stops.csv"),
            "--draws", "4000000", "--write", In("fitted.json"));
        Assert.Equal(ExitCode.Stopped, code);
        Assert.Equal("", output);
        Assert.InRange(after.TotalSeconds, 0, 3);
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public async Task A_word_written_meanwhile_stands_on_a_line_of_its_own()
    {
        var work = new Work();
        using var text = new StringWriter();
        using var error = TextWriter.Synchronized(text);
        using var running = new ManualResetEventSlim();
        Task<int> task = work.DoAsync("drawing", progress =>
        {
            progress.Report(0.5);
            return Task.Run(() =>
            {
                running.Wait();
                return 1;
            });
        });
        Task shown = work.ShowAsync(task, error, 80);
        for (int wait = 0; wait < 300 && !Text(error, text).Contains("drawing", StringComparison.Ordinal); wait++)
        {
            await Task.Delay(100);
        }

        using (var other = new ClearingWriter(error, work))
        {
            other.WriteLine("a warning");
        }

        Assert.Contains("drawing", Text(error, text), StringComparison.Ordinal);
        running.Set();
        await shown.WaitAsync(TimeSpan.FromSeconds(10));
        Assert.Contains("\r\u001b[Ka warning", Text(error, text), StringComparison.Ordinal);
    }
}
