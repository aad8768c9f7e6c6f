using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench;

/// <summary>All that a bench sheet has to say: what to cut, what to buy, what is wrong, what changes.</summary>
/// <param name="Sheet">What was measured.</param>
/// <param name="Purchase">Hose to buy.</param>
/// <param name="PushRod">The push rod's fit; null when it was not measured.</param>
/// <param name="Changes">The change table; empty when no change is planned.</param>
/// <param name="Findings">Everything found, gravest first.</param>
public sealed record BenchReport(
    BenchSheet Sheet, ImmutableArray<HosePurchaseLine> Purchase, PushRodFit? PushRod,
    ImmutableArray<ChangeRow> Changes, ImmutableArray<BenchFinding> Findings)
{
    /// <summary>What the return does to the pedal, over oil temperature, coldest first; empty when it cannot be told.</summary>
    public required ImmutableArray<(Temperature Oil, ReleaseEffect Effect)> Releases { get; init; }

    /// <summary>Works a sheet out.</summary>
    /// <param name="sheet">What was measured.</param>
    /// <exception cref="ArgumentException">A car of the change plan cannot be computed; the message says why.</exception>
    public static BenchReport Of(BenchSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        List<BenchFinding> findings = [.. sheet.Hoses.SelectMany(hose => HoseChecks.Of(hose.Assembly, hose.Duty))];
        ImmutableArray<(Temperature Oil, ReleaseEffect Effect)> releases = [];
        if (sheet.Plumbing is { } plumbing)
        {
            ImmutableArray<BenchFinding> found = PlumbingCheck.Of(plumbing.Return.Plumbing);
            findings.AddRange(found);
            if (found.All(finding => finding.Severity != BenchSeverity.Wrong))
            {
                releases = Release(plumbing);
                findings.AddRange(releases.Where(release => Math.Abs(release.Oil.Kelvins - plumbing.Return.Temperature.Kelvins) < 1e-9)
                    .Select(release => release.Effect.Finding));
            }
        }

        if (sheet.PushRod is { } rod)
        {
            findings.Add(rod.Finding());
        }

        ImmutableArray<ChangeRow> changes = sheet.Change?.Rows() ?? [];
        findings.AddRange(changes.Where(row => row.Severity != BenchSeverity.Pass)
            .Select(row => new BenchFinding(row.Severity, "new parts", row.Name + ".", row.Meaning)));
        return new BenchReport(
            Sheet: sheet,
            Purchase: sheet.Purchase.For(sheet.Hoses.Select(hose => hose.Assembly)),
            PushRod: sheet.PushRod?.Fit(),
            Changes: changes,
            Findings: [.. findings.OrderByDescending(finding => finding.Severity)])
        {
            Releases = releases,
        };
    }

    private static ImmutableArray<(Temperature Oil, ReleaseEffect Effect)> Release(PlumbingJob plumbing)
    {
        if (plumbing.Release is not { } job)
        {
            return [];
        }

        Temperature given = plumbing.Return.Temperature;
        IEnumerable<Temperature> oils = new[] { -20.0, 0, 20, 60, 90 }.Select(celsius => Temperature.FromDegreesCelsius(celsius))
            .Where(oil => Math.Abs(oil.DegreesCelsius - given.DegreesCelsius) > 0.5).Append(given).OrderBy(oil => oil.DegreesCelsius);
        return [.. oils.Select(oil =>
            (oil, ReleaseEffect.Of(plumbing.Return with { Temperature = oil }, job.Booster, job.Master, job.RodTravel, job.MakersLimit)))];
    }
}
