using System.Text.RegularExpressions;

namespace BrakeBalance.Tests.Conventions;

/// <summary>The calculation assembly flows one way: a file uses only stages that lie before its own.</summary>
public partial class StageDirectionTests
{
    private static readonly string[] Order =
    [
        "Answers", "Pedals", "Assist", "Hydraulics", "Brakes", "Tyres", "Vehicles", "Balance", "Rules", "Stops", "Measurements", "Bench",
            "Teaching", "Summaries", "Choosing",
    ];

    private static readonly string Source = Path.Combine(RepositoryFiles.Root, "src", "BrakeBalance");

    public static TheoryData<string> SourceFiles =>
        [.. Directory.GetFiles(Source, "*.cs", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(Source, path).Replace('\\', '/'))
            .Where(path => !path.StartsWith("obj/", StringComparison.Ordinal) && !path.StartsWith("bin/", StringComparison.Ordinal))];

    [Theory]
    [MemberData(nameof(SourceFiles))]
    public void File_lies_in_its_namespace_and_uses_only_earlier_stages(string file)
    {
        string text = File.ReadAllText(Path.Combine(Source, file));
        string folder = Path.GetDirectoryName(file)!.Replace('\\', '/').Replace('/', '.');
        Assert.Contains(folder.Length == 0 ? "namespace BrakeBalance;" : $"namespace BrakeBalance.{folder};", text);
        string stage = folder.Split('.')[0];
        int own = stage.Length == 0 ? -1 : Array.IndexOf(Order, stage);
        Assert.True(stage.Length == 0 || own >= 0, $"{stage} is not one of the stages.");
        foreach (Match use in Uses().Matches(text))
        {
            string used = use.Groups["stage"].Value;
            int at = Array.IndexOf(Order, used);
            Assert.True(at >= 0, $"{used} is not one of the stages.");
            Assert.True(at <= own, $"{file} uses {used}, which comes after {(own < 0 ? "the root" : stage)}.");
        }
    }

    [Fact]
    public void Every_stage_has_files() =>
        Assert.All(Directory.GetDirectories(Source).Select(path => Path.GetFileName(path)!).Except(["bin", "obj"]), folder =>
            Assert.Contains(folder, Order));

    [GeneratedRegex(@"^(global )?using (static |\w+ = )?BrakeBalance\.(?<stage>\w+)",
        RegexOptions.Multiline | RegexOptions.ExplicitCapture)]
    private static partial Regex Uses();
}
