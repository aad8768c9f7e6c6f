using System.Text;

namespace BrakeBalance.Fuzz;

/// <summary>Counts over many cases.</summary>
internal sealed class FuzzReport
{
    private const int MostShown = 400;
    private readonly SortedDictionary<string, (int Tried, int Accepted, int Answers)> _kinds = new(StringComparer.Ordinal);
    private readonly List<string> _findings = [];

    /// <summary>What must not happen but did, each with the number of its case.</summary>
    public IReadOnlyList<string> Findings => _findings;

    /// <summary>Cases that were accepted, of a kind.</summary>
    public int Accepted(string kind) => _kinds.TryGetValue(kind, out (int Tried, int Accepted, int Answers) counts) ? counts.Accepted : 0;

    /// <summary>Tries cases one after the other.</summary>
    /// <param name="seed">Seed of all.</param>
    /// <param name="numbers">Numbers of the cases.</param>
    /// <param name="depth">How far to take the next case of a kind, by how many of the kind were accepted.</param>
    /// <param name="watch">Told after each case; null for nobody.</param>
    public static async Task<FuzzReport> RunAsync(int seed, IEnumerable<int> numbers, Func<string, int, FuzzDepth> depth,
        Action<int, FuzzReport>? watch = null)
    {
        string folder = Directory.CreateTempSubdirectory("brake-balance-fuzz-").FullName;
        var report = new FuzzReport();
        try
        {
            var run = new FuzzRun(folder);
            await run.WarmUpAsync().ConfigureAwait(false);
            foreach (int number in numbers)
            {
                FuzzCase tried = FuzzCase.Of(seed, number);
                report.Add(number, tried, await run.TryAsync(tried, depth(tried.Kind, report.Accepted(tried.Kind))).ConfigureAwait(false));
                watch?.Invoke(number, report);
            }
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }

        return report;
    }

    /// <summary>The counts and findings in words.</summary>
    public override string ToString()
    {
        var text = new StringBuilder();
        foreach ((string kind, (int tried, int accepted, int answers)) in _kinds)
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture,
                $"{kind}: {tried} tried, {accepted} accepted, {answers} answers\n");
        }

        text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{_findings.Count} findings\n");
        return _findings.Take(MostShown).Aggregate(text, (all, finding) => all.Append(finding).Append('\n')).ToString();
    }

    private void Add(int number, FuzzCase tried, FuzzVerdict verdict)
    {
        (int Tried, int Accepted, int Answers) now = _kinds.GetValueOrDefault(tried.Kind);
        _kinds[tried.Kind] = (now.Tried + 1, now.Accepted + (verdict.Accepted ? 1 : 0), now.Answers + verdict.Answers);
        _findings.AddRange(verdict.Findings.Select(finding =>
            FormattableString.Invariant($"case {number} ({tried.Kind}: {tried.What}): {finding.Where}: {finding.What}")));
    }
}
