using System.Text;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands;
using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Tests.Conventions;

/// <summary>What the source keeps to, whoever writes it.</summary>
public class HouseTests
{
    private const int LongestLine = 140;

    /// <summary>Lines of all source under src. It may only fall: lower it with what you delete.</summary>
    private const int MostLines = 70246;

    private static readonly string[] Endings = [".cs", ".csx", ".js", ".css"];

    [Fact]
    public void No_line_is_longer_than_140_characters_or_bytes() => Assert.Empty(
        from file in Files("src").Concat(Files("tests")).Append(RepositoryRoot.File("notebooks/_setup.csx"))
        from line in File.ReadLines(file).Index()
        let bytes = Encoding.UTF8.GetByteCount(line.Item)
        where bytes > LongestLine && !line.Item.StartsWith("#r \"", StringComparison.Ordinal)
        select $"{Path.GetRelativePath(RepositoryRoot.File("."), file)}:{line.Index + 1} has {bytes} bytes");

    [Fact]
    public void The_source_only_shrinks()
    {
        int lines = Files("src").Sum(file => File.ReadLines(file).Count());
        Assert.True(lines <= MostLines,
            $"src has {lines} lines, {lines - MostLines} more than the {MostLines} it had: delete as many, or say in the commit why not.");
        Assert.True(lines > MostLines - 250,
            $"src has shrunk to {lines} lines: write that number over {MostLines} in {nameof(HouseTests)}.");
    }

    [Theory]
    [InlineData("BrakeBalance")]
    [InlineData("BrakeBalance.Charts")]
    [InlineData("BrakeBalance.Notebooks")]
    public void No_namespace_needs_one_that_needs_it(string project)
    {
        IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> uses = SourceNamespaces.Of(project);
        Assert.True(uses.Count > 5, $"{project} was not read.");
        Assert.Empty(
            from one in uses.Keys
            from other in uses[one].Keys
            where Reaches(uses, other, one)
            select $"{one} needs {other} ({uses[one][other]}), which needs it, at once or through others");
    }

    [Theory]
    [InlineData("BrakeBalance.Charts")]
    [InlineData("BrakeBalance.Notebooks")]
    public void A_file_lies_in_the_folder_of_its_namespace(string project) => Assert.Empty(
        from file in Files($"src/{project}")
        where file.EndsWith(".cs", StringComparison.Ordinal) && Path.GetFileName(file) != "Program.cs"
        let folder = Path.GetRelativePath(RepositoryRoot.File($"src/{project}"), Path.GetDirectoryName(file)!)
        let expected = folder == "." ? project : $"{project}.{folder.Replace(Path.DirectorySeparatorChar, '.')}"
        where !File.ReadLines(file).Contains($"namespace {expected};")
        select $"{Path.GetRelativePath(RepositoryRoot.File("."), file)} is not in {expected}");

    // A theory's method is public, and so is the type of its cases.
    [Fact]
    public void The_program_is_nobodys_library() =>
        Assert.Equal([typeof(EngineKind)], typeof(CommandLine).Assembly.GetExportedTypes());

    private static bool Reaches(
        IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> uses, string from, string to)
    {
        HashSet<string> seen = [from];
        var open = new Stack<string>(seen);
        while (open.TryPop(out string? at))
        {
            if (at == to)
            {
                return true;
            }

            foreach (string next in uses.GetValueOrDefault(at)?.Keys.Where(seen.Add) ?? [])
            {
                open.Push(next);
            }
        }

        return false;
    }

    private static IEnumerable<string> Files(string folder) =>
        Directory.EnumerateFiles(RepositoryRoot.File(folder), "*", SearchOption.AllDirectories)
            .Where(file => Endings.Contains(Path.GetExtension(file)) && !SourceNamespaces.IsBuilt(file))
            .Order(StringComparer.Ordinal);
}
