using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.CSharp.Scripting;
using Microsoft.CodeAnalysis.Scripting;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Runs cells with plain C# scripting: the same cells, without the interactive kernel.</summary>
internal sealed class ScriptEngine(string folder) : ICellEngine
{
    private static readonly string[] Imports =
        ["System", "System.Text", "System.Collections", "System.Collections.Generic", "System.Threading.Tasks", "System.Linq"];

    /// <summary>Printed text is caught by replacing the console's writers, which the whole process shares: one cell at a time.</summary>
    private static readonly SemaphoreSlim OneAtATime = new(1);

    private static readonly Lazy<ScriptOptions> BaseOptions = new(() => ScriptOptions.Default
        .WithReferences(FrameworkAssemblies().Select(path => MetadataReference.CreateFromFile(path)))
        .WithImports(Imports)
        .WithEmitDebugInformation(true)
        .WithFileEncoding(Encoding.UTF8));

    private ScriptState<object>? _state;
    private int _submission;

    public async Task<CellRun> RunAsync(string code, CancellationToken cancellation)
    {
        await OneAtATime.WaitAsync(cancellation).ConfigureAwait(false);
        (TextWriter output, TextWriter error) = (Console.Out, Console.Error);
        try
        {
            return await SetupScript.RunAsync(code, folder, piece => SubmitAsync(piece, cancellation)).ConfigureAwait(false);
        }
        finally
        {
            Console.SetOut(output);
            Console.SetError(error);
            OneAtATime.Release();
        }
    }

    public ValueTask DisposeAsync() => ValueTask.CompletedTask;

    private static IEnumerable<string> FrameworkAssemblies()
    {
        string framework = Path.GetDirectoryName(typeof(object).Assembly.Location)!;
        return ((string)AppContext.GetData("TRUSTED_PLATFORM_ASSEMBLIES")!)
            .Split(Path.PathSeparator)
            .Where(path => Path.GetDirectoryName(path) == framework);
    }

    private async Task<CellRun> SubmitAsync(string code, CancellationToken cancellation)
    {
        string fileName = Invariant.Text($"cell-{++_submission}.csx");
        ScriptOptions options = BaseOptions.Value.WithFilePath(fileName);
        var outputs = new OutputCollector();
        using var printed = new StringWriter { NewLine = "\n" };
        Console.SetOut(printed);
        Console.SetError(printed);
        CellFailure? failure = null;
        try
        {
            Script<object> script = _state is null
                ? CSharpScript.Create(code, options)
                : _state.Script.ContinueWith(code, options);
            ScriptState<object> state = _state is null
                ? await script.RunAsync(null, _ => true, cancellation).ConfigureAwait(false)
                : await script.RunFromAsync(_state, _ => true, cancellation).ConfigureAwait(false);
            outputs.Print(printed.ToString());
            if (state.Exception is { } thrown)
            {
                failure = CellFailures.Thrown(code, thrown, fileName);
            }
            else
            {
                _state = state;
                outputs.Show(state.ReturnValue);
            }
        }
        catch (CompilationErrorException exception)
        {
            failure = CellFailures.Compilation(code, exception.Diagnostics);
        }
        catch (Exception exception) when (exception is not OperationCanceledException)
        {
            failure = CellFailures.Thrown(code, exception, fileName);
        }

        return new CellRun(outputs.ToList(), failure);
    }
}
