using System.Globalization;
using System.Reflection;
using Xunit.Sdk;

namespace BrakeBalance.Tests.Sources;

/// <summary>Every published check says how its source was read, and the readme's counts are those of this test project.</summary>
public class PublishedCheckTests
{
    private static readonly Assembly Project = typeof(PublishedCheckTests).Assembly;

    private static IEnumerable<MethodInfo> Checks => Project.GetTypes()
        .Where(type => type is { IsAbstract: false } && $"{type.Namespace}.".Contains(".Published.", StringComparison.Ordinal))
        .SelectMany(type => type.GetMethods(BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static))
        .Where(method => method.GetCustomAttribute<FactAttribute>() is not null);

    [Fact]
    public void Every_published_check_says_how_its_source_was_read()
    {
        string[] silent = [.. Checks.Where(check => SourceOf(check) is null).Select(check => check.ReflectedType!.Name).Distinct()
            .Order(StringComparer.Ordinal)];
        Assert.True(
            silent.Length == 0,
            "Write [Source(\"title, section\", Reading.Read)], "
                + $"or SecondHand or FromMemory, above each of these classes of {Project.GetName().Name}: "
                + string.Join(", ", silent));
        Assert.All(Checks, check => Assert.False(string.IsNullOrWhiteSpace(SourceOf(check)!.Name)));
    }

    [Fact]
    public void Readme_counts_the_published_checks()
    {
        Dictionary<Reading, int> cases = Checks
            .Where(check => SourceOf(check) is not null)
            .GroupBy(check => SourceOf(check)!.Reading)
            .ToDictionary(group => group.Key, group => group.Sum(Cases));
        int Count(Reading reading) => cases.GetValueOrDefault(reading);
        string start = $"| `{Project.GetName().Name}` |";
        string row = string.Create(
            CultureInfo.InvariantCulture,
            $"{start} {Count(Reading.Read)} | {Count(Reading.SecondHand)} | {Count(Reading.FromMemory)} | {cases.Values.Sum()} |");
        string[] written = [.. File.ReadLines(Path.Combine(Root(), "README.md"))
            .Where(line => line.StartsWith(start, StringComparison.Ordinal))];
        string[] wanted = cases.Count > 0 ? [row] : [];
        Assert.True(
            written.SequenceEqual(wanted),
            $"README.md, section \"Checked against\", must hold for {Project.GetName().Name} "
                + $"{(cases.Count > 0 ? $"exactly this row: {row}" : "no row: the project has no published checks")}");
    }

    private static SourceAttribute? SourceOf(MethodInfo check) =>
        check.GetCustomAttribute<SourceAttribute>() ?? check.ReflectedType!.GetCustomAttribute<SourceAttribute>();

    private static int Cases(MethodInfo check)
    {
        DataAttribute[] rows = [.. check.GetCustomAttributes<DataAttribute>()];
        return rows.Length == 0 ? 1 : rows.Sum(attribute => attribute.GetData(check).Count());
    }

    private static string Root()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Notebooks.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException("The repository's root was not found above the tests.");
    }
}
