using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using Bb = BrakeBalance.Notebooks.Commands.CommandLine;

namespace BrakeBalance.Fuzz;

/// <summary>How far an accepted case is taken.</summary>
internal enum FuzzDepth
{
    /// <summary>Only read.</summary>
    Read,

    /// <summary>One quick answer.</summary>
    Quick,

    /// <summary>Every command.</summary>
    Every,
}

/// <summary>Something that must not happen.</summary>
/// <param name="Where">The command or stage.</param>
/// <param name="What">What happened.</param>
internal sealed record FuzzFinding(string Where, string What);

/// <summary>What became of a case.</summary>
/// <param name="Accepted">Whether the file was accepted.</param>
/// <param name="Answers">How many commands answered.</param>
/// <param name="Findings">What must not happen but did.</param>
internal sealed record FuzzVerdict(bool Accepted, int Answers, IReadOnlyList<FuzzFinding> Findings);

/// <summary>Takes cases through the program, in this process.</summary>
/// <param name="folder">A folder for the files.</param>
internal sealed partial class FuzzRun(string folder)
{
    private const double MostProcessorSeconds = 2;
    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");
    private static readonly string Lap = RepositoryRoot.File("data/cycles/invented-lap.csv");
    private readonly List<FuzzFinding> _findings = [];
    private int _answers;

    /// <summary>Takes a sound car through everything, so that the time of compiling counts for no case.</summary>
    public async Task WarmUpAsync() =>
        await TryAsync(new FuzzCase("vehicle", File.ReadAllText(Coupe), "nothing"), FuzzDepth.Every).ConfigureAwait(false);

    /// <summary>Tries a case.</summary>
    public async Task<FuzzVerdict> TryAsync(FuzzCase tried, FuzzDepth depth)
    {
        _findings.Clear();
        _answers = 0;
        string path = Path.Combine(folder, tried.Kind is "vehicle" or "bench" ? "case.json" : "case.csv");
        File.WriteAllText(path, tried.Text, System.Text.Encoding.UTF8);
        bool accepted = depth == FuzzDepth.Read && (tried.Kind is "lap" or "stops")
            ? await ReadAsync(tried).ConfigureAwait(false)
            : await CommandAsync(First(tried.Kind, path), mayRefuse: true).ConfigureAwait(false) is ExitCode.Success or ExitCode.Failed;
        if (accepted && depth > FuzzDepth.Read)
        {
            foreach (string[] words in Quick(tried.Kind, path).Concat(depth == FuzzDepth.Every ? Slow(tried.Kind, path) : []))
            {
                await CommandAsync(words, mayRefuse: false).ConfigureAwait(false);
            }

            if (depth == FuzzDepth.Every && tried.Kind == "vehicle")
            {
                await FiguresAsync(path).ConfigureAwait(false);
            }
        }

        return new FuzzVerdict(accepted, _answers, [.. _findings]);
    }

    // The commands of these kinds drive or estimate a whole car; to read is enough for most of the cases.
    private async Task<bool> ReadAsync(FuzzCase tried)
    {
        bool accepted = false;
        await WatchAsync("reading", () =>
        {
            using var text = new StringReader(tried.Text);
            accepted = tried.Kind == "lap" ? LogReader.ReadLap(text).Rows.Count > 1 : LogReader.ReadTestStops(text).Rows.Count > 0;
            return Task.CompletedTask;
        }).ConfigureAwait(false);
        return accepted;
    }

    private string[] First(string kind, string path) => kind switch
    {
        "vehicle" => ["check", path],
        "bench" => ["bench", path, "--json"],
        "gauges" => ["measure", "gauges", path, "--json", "--allow-lost-rows"],
        "series" => ["measure", "series", path, "--json", "--allow-lost-rows"],
        "lap" => ["stops", Coupe, "--lap", path, "--laps", "1", "--adhesion", "0.9", "--load-case", "driver only", "--json",
            "--allow-lost-rows"],
        "stops" => ["measure", "setting", Coupe, "--stops", path, "--draws", "1000", "--json", "--allow-lost-rows"],
        _ => ["class", "mark", path, "--secret", "a test secret", "--output", Path.Combine(folder, "class")],
    };

    private static string[][] Quick(string kind, string path) => kind switch
    {
        "vehicle" => [["summary", path, "--json"]],
        "bench" => [["bench", path, "--units", "us"]],
        "gauges" => [["measure", "gauges", path, "--allow-lost-rows"]],
        "series" => [["measure", "series", path, "--units", "us", "--allow-lost-rows"]],
        _ => [],
    };

    private string[][] Slow(string kind, string path) => kind switch
    {
        "vehicle" =>
        [
            ["summary", path], ["summary", path, "--units", "us", "--json", "--speed", "160 km/h"],
            ["stops", path, "--json", "--adhesion", "0.3,0.9", "--lap", Lap, "--laps", "2"],
                ["stops", path, "--units", "us", "--study", "20"],
            ["card", path, "--force", "--output", Path.Combine(folder, "card")],
            ["measure", "bands", path], ["measure", "plan", path, "--json", "--units", "us"], ["measure", "questions", path],
                ["measure", "setting", path, "--draws", "1000", "--json"],
        ],
        "bench" => [["bench", path, "--force", "--sheet", Path.Combine(folder, "sheet.html")]],
        "gauges" => [["measure", "setting", Coupe, "--gauges", path, "--draws", "1000", "--allow-lost-rows"]],
        _ => [],
    };

    private async Task<int> CommandAsync(string[] words, bool mayRefuse)
    {
        string where = string.Join(' ', words.Where(word => !word.StartsWith(folder, StringComparison.Ordinal)));
        using var output = new StringWriter();
        using var error = new StringWriter();
        int code = -1;
        await WatchAsync(where, async () =>
            code = await Bb.RunAsync(words, new Terminal(output, error, IsInteractive: false)).ConfigureAwait(false)).ConfigureAwait(false);
        string told = error.ToString();
        if (code == ExitCode.Fault)
        {
            _findings.Add(new(where, "fault: " + Details(told)));
        }
        else if (code == ExitCode.BadInput && !mayRefuse)
        {
            _findings.Add(new(where, "refused after it was accepted: " + told.Split('\n')[0]));
        }
        else if (code == ExitCode.BadInput && string.IsNullOrWhiteSpace(told))
        {
            _findings.Add(new(where, "refused without a word"));
        }
        else if (code == ExitCode.BadInput && output.ToString().Length > 0)
        {
            _findings.Add(new(where, "answered and refused at once"));
        }

        Finite(where, output.ToString());
        _answers += code is ExitCode.Success or ExitCode.Failed ? 1 : 0;
        return code;
    }

    private async Task FiguresAsync(string path)
    {
        Vehicle vehicle = VehicleFile.Load(path).Vehicle;
        foreach (UnitSystem units in (UnitSystem[])[UnitSystem.Si, UnitSystem.Us])
        {
            foreach (CatalogueEntry entry in FigureCatalogue.All)
            {
                await WatchAsync($"figure {entry.Name} {units}", () =>
                {
                    if (entry.For(vehicle, units) is { } figure)
                    {
                        Finite($"figure {entry.Name} {units}", figure.Title + "\n" + figure.Caption + "\n" + figure.AltText + "\n"
                            + figure.LongDescription + "\n" + figure.ToSvg());
                        _answers++;
                    }

                    return Task.CompletedTask;
                }).ConfigureAwait(false);
            }
        }
    }

    private async Task WatchAsync(string where, Func<Task> action)
    {
        TimeSpan before = Environment.CpuUsage.TotalTime;
        try
        {
            await Task.Run(action).WaitAsync(Patience).ConfigureAwait(false);
        }
        catch (TimeoutException)
        {
            _findings.Add(new(where, "no end within three minutes"));
            return;
        }
        catch (Exception exception)
        {
            _findings.Add(new(where, "exception: " + Short(exception.ToString())));
        }

        double seconds = (Environment.CpuUsage.TotalTime - before).TotalSeconds;
        if (seconds > MostProcessorSeconds)
        {
            _findings.Add(new(where, FormattableString.Invariant($"{seconds:0.0} s of processor time")));
        }
    }

    private void Finite(string where, string text)
    {
        if (NotFinite().Match(text) is { Success: true } match)
        {
            int from = Math.Max(0, match.Index - 80);
            _findings.Add(new(where, "not finite: …" + text[from..Math.Min(text.Length, match.Index + 40)].ReplaceLineEndings(" ")));
        }
    }

    private static string Details(string told)
    {
        string path = Path.Combine(Path.GetTempPath(), FormattableString.Invariant($"brake-balance-fault-{Environment.ProcessId}.txt"));
        return File.Exists(path) ? Short(string.Join('\n', File.ReadLines(path).Skip(3))) : told;
    }

    private static string Short(string trace) =>
        string.Join(" | ", trace.Split('\n').Select(line => line.Trim()).Where(line => line.Length > 0).Take(4)
        .Select(line => line.Length > 220 ? line[..220] : line));

    [GeneratedRegex(@"(?<!['-])\b(NaN|Infinity)\b|∞")]
    private static partial Regex NotFinite();
}
