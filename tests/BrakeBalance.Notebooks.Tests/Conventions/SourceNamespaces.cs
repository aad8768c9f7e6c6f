using System.Collections.Concurrent;
using System.Xml.Linq;
using BrakeBalance.Charts;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;
using Microsoft.CodeAnalysis.CSharp.Syntax;

namespace BrakeBalance.Notebooks.Tests.Conventions;

/// <summary>Which namespaces of a project name types or members of which others, as the compiler understands its source.</summary>
internal static class SourceNamespaces
{
    private const string Attribute = "Attribute";

    private static readonly string[] Implicit =
    [
        "System", "System.Collections.Generic", "System.IO", "System.Linq", "System.Net.Http", "System.Threading", "System.Threading.Tasks",
    ];

    private static readonly CSharpParseOptions Latest = new(LanguageVersion.Latest);

    /// <summary>For each namespace those of the same project that it uses, each with one place that does.</summary>
    public static IReadOnlyDictionary<string, IReadOnlyDictionary<string, string>> Of(string project)
    {
        CSharpCompilation compilation = Compile(project);
        // The compiler takes its time to understand a name: only those are asked that could be the project's own.
        HashSet<string> own = [.. compilation.GetSymbolsWithName(_ => true).Select(symbol => symbol.Name), "var"];
        own.UnionWith(compilation.SyntaxTrees.SelectMany(tree => tree.GetCompilationUnitRoot().Usings)
            .Select(use => use.Alias?.Name.Identifier.ValueText).OfType<string>());
        own.UnionWith([.. own.Where(name => name.EndsWith(Attribute, StringComparison.Ordinal)).Select(name => name[..^Attribute.Length])]);
        var uses = new ConcurrentDictionary<string, ConcurrentDictionary<string, string>>();
        foreach (SyntaxTree tree in compilation.SyntaxTrees)
        {
            SemanticModel model = compilation.GetSemanticModel(tree);
            foreach (SimpleNameSyntax name in tree.GetRoot().DescendantNodes(node => node is not UsingDirectiveSyntax)
                .OfType<SimpleNameSyntax>().Where(name => own.Contains(name.Identifier.ValueText)))
            {
                SymbolInfo info = model.GetSymbolInfo(name);
                string? from = name.FirstAncestorOrSelf<BaseNamespaceDeclarationSyntax>()?.Name.ToString();
                if (from is not null && (info.Symbol ?? info.CandidateSymbols.FirstOrDefault()) is { } used and not INamespaceSymbol
                    && used.ContainingAssembly?.Name == project && NamespaceOf(used) is { } to && to != from)
                {
                    uses.GetOrAdd(to, _ => []);
                    uses.GetOrAdd(from, _ => []).TryAdd(to, $"{name} in {Path.GetFileName(tree.FilePath)}");
                }
            }
        }

        return uses.ToDictionary(one => one.Key, one => (IReadOnlyDictionary<string, string>)one.Value);
    }

    /// <summary>Whether a build made the file.</summary>
    public static bool IsBuilt(string file) =>
        Path.GetRelativePath(RepositoryRoot.File("."), file).Split(Path.DirectorySeparatorChar).Any(part => part is "bin" or "obj");

    private static string? NamespaceOf(ISymbol symbol) =>
        symbol.ContainingNamespace is { IsGlobalNamespace: false } space ? space.ToDisplayString() : null;

    private static CSharpCompilation Compile(string project)
    {
        string folder = RepositoryRoot.File($"src/{project}");
        IEnumerable<SyntaxTree> trees = Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
            .Where(file => !IsBuilt(file))
            .Select(file => CSharpSyntaxTree.ParseText(File.ReadAllText(file), Latest, file));
        IEnumerable<string> usings = XDocument.Load(Path.Combine(folder, project + ".csproj")).Descendants("Using")
            .Select(use => (use.Attribute("Alias") is { } alias ? alias.Value + " = " : "") + use.Attribute("Include")!.Value)
            .Concat(Implicit);
        // The assemblies that this test runs with, but for the project's own: that one is read from its source.
        IEnumerable<MetadataReference> references = ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => Path.GetFileName(path) != project + ".dll")
            .Select(path => MetadataReference.CreateFromFile(path));
        return CSharpCompilation.Create(
            project,
            trees.Append(CSharpSyntaxTree.ParseText(string.Concat(usings.Select(use => $"global using {use};\n")), Latest)),
            references,
            new CSharpCompilationOptions(OutputKind.DynamicallyLinkedLibrary, nullableContextOptions: NullableContextOptions.Enable));
    }
}
