using System.Reflection;
using System.Reflection.Metadata;
using System.Runtime.Loader;
using BrakeBalance.Notebooks.Execution;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp;

namespace BrakeBalance.Cells;

/// <summary>
/// Compiles and runs cells in a browser. What a cell sees is decided by the cells asked for alone, not by what ran before: each run of
/// cells from the top is kept, and one that begins alike goes on from there.
/// </summary>
internal sealed class CellSession(IReadOnlyList<string> assemblies, string folder)
{
    // A runtime loads an assembly of one name once, whatever session it is of.
    private static int _serial;

    private static readonly string[] Imports =
        ["System", "System.Text", "System.Collections", "System.Collections.Generic", "System.Threading.Tasks", "System.Linq"];

    private static readonly CSharpParseOptions Script = new(kind: SourceCodeKind.Script);

    // No file to be read, no second thread to be waited for, and no debug information, whose writing waits for one.
    private static readonly CSharpCompilationOptions Options = new(
        OutputKind.DynamicallyLinkedLibrary, usings: Imports, concurrentBuild: false, optimizationLevel: OptimizationLevel.Release);

    private readonly MetadataReference[] _references =
        [.. assemblies.Union([typeof(RunningLine).Assembly.GetName().Name!]).Select(Reference).OfType<MetadataReference>()];
    private readonly Dictionary<(Stage? After, string Cell), (Stage Stage, CellRun Run)> _known = [];
    private readonly Dictionary<(CSharpCompilation? After, string Cell), CSharpCompilation?> _read = [];

    /// <summary>Runs cells one after the other.</summary>
    /// <returns>What came of the last, or the failure of one above it.</returns>
    public async Task<CellRun> RunAsync(IReadOnlyList<string> cells)
    {
        Stage? stage = null;
        CellRun run = new([], null);
        foreach (string cell in cells)
        {
            if (!_known.TryGetValue((stage, cell), out (Stage Stage, CellRun Run) known))
            {
                var next = new Moving(stage);
                CellRun ran = await SetupScript.RunAsync(cell, folder, piece => SubmitAsync(piece, next));
                if (ran.Failure is not null)
                    return ran;
                _known[(stage, cell)] = known = (next.Stage!, ran);
                _read[(stage?.Compilation, cell)] = next.Stage!.Compilation;
            }

            (stage, run) = known;
        }

        return run;
    }

    /// <summary>Reads cells one after the other, without running any.</summary>
    /// <returns>
    /// The last, as the compiler understands it after the others; and whether it knows them all: none can follow one with errors.
    /// </returns>
    public async Task<(CSharpCompilation Cell, bool KnowsAll)> ReadAsync(IReadOnlyList<string> cells)
    {
        CSharpCompilation? read = null;
        bool knowsAll = true;
        foreach (string cell in cells.SkipLast(1))
        {
            CSharpCompilation? after = read;
            if (!_read.TryGetValue((after, cell), out read))
            {
                read = await ReadAsync(cell, after);
                _read[(after, cell)] = read = CellFailures.Errors(read.GetDiagnostics()).Any() ? after : read;
            }

            knowsAll &= !ReferenceEquals(read, after);
        }

        return (await ReadAsync(cells[^1], read), knowsAll);
    }

    private async Task<CSharpCompilation> ReadAsync(string cell, CSharpCompilation? read)
    {
        await SetupScript.RunAsync(cell, folder, piece =>
        {
            read = Compilation(piece, read);
            return Task.FromResult(new CellRun([], null));
        });
        return read!;
    }

    private CSharpCompilation Compilation(string code, CSharpCompilation? after)
    {
        string name = FormattableString.Invariant($"cell-{++_serial}");
        return CSharpCompilation.CreateScriptCompilation(
            name, CSharpSyntaxTree.ParseText(code, Script, name), _references, Options, after, typeof(object));
    }

    private async Task<CellRun> SubmitAsync(string code, Moving at)
    {
        var outputs = new OutputCollector();
        CSharpCompilation compilation = Compilation(
            RunningLine.Say(SyntaxFactory.ParseCompilationUnit(code, options: Script)), at.Stage?.Compilation);
        using var emitted = new MemoryStream();
        if (compilation.Emit(emitted) is { Success: false } refused)
        {
            // Without an error there is nothing to run, as in a cell of comments; it takes no place among the objects either.
            bool isEmpty = refused.Diagnostics.All(diagnostic => diagnostic.Severity != DiagnosticSeverity.Error);
            at.Stage = isEmpty ? new Stage(compilation, at.Stage?.Values ?? [null]) : at.Stage;
            return new CellRun([], isEmpty ? null : CellFailures.Compilation(code, refused.Diagnostics));
        }

        using var printed = new StringWriter { NewLine = "\n" };
        Console.SetOut(printed);
        Console.SetError(printed);
        CellFailure? failure = null;
        try
        {
            emitted.Position = 0;
            RunningLine.Now = null;
            IMethodSymbol entry = compilation.GetEntryPoint(CancellationToken.None)!;
            MethodInfo start = AssemblyLoadContext.Default.LoadFromStream(emitted).GetType(entry.ContainingType.MetadataName)!
                .GetMethod(entry.MetadataName, BindingFlags.Static | BindingFlags.Public | BindingFlags.NonPublic)!;
            object?[] values = [.. at.Stage?.Values ?? [null], null];
            object? value = await (Task<object?>)start.Invoke(null, [values])!;
            outputs.Print(printed.ToString());
            outputs.Show(value);
            at.Stage = new Stage(compilation, values);
        }
        catch (Exception exception)
        {
            outputs.Print(printed.ToString());
            failure = CellFailures.Thrown(code, exception, compilation.AssemblyName!, RunningLine.Now);
        }

        return new CellRun(outputs.ToList(), failure);
    }

    private static unsafe MetadataReference? Reference(string name) =>
        Assembly.Load(name).TryGetRawMetadata(out byte* blob, out int length)
            ? AssemblyMetadata.Create(ModuleMetadata.CreateFromMetadata((nint)blob, length)).GetReference() : null;

    /// <summary>How far a run has come: its last submission, and the objects of all.</summary>
    private sealed record Stage(CSharpCompilation Compilation, object?[] Values);

    private sealed class Moving(Stage? from)
    {
        public Stage? Stage { get; set; } = from;
    }
}
