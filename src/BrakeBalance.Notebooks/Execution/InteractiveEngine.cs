using System.Runtime.CompilerServices;
using BrakeBalance.Charts.Outputs;
using Microsoft.CodeAnalysis;
using Microsoft.CodeAnalysis.Scripting;
using Microsoft.DotNet.Interactive;
using Microsoft.DotNet.Interactive.Commands;
using Microsoft.DotNet.Interactive.CSharp;
using Microsoft.DotNet.Interactive.Events;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Runs cells in the interactive C# kernel, embedded in this program.</summary>
internal sealed class InteractiveEngine : ICellEngine
{
    private readonly string _folder;
    private readonly CSharpKernel _language = new();
    private readonly CompositeKernel _kernel;
    private int _submission;

    /// <summary>Starts a kernel.</summary>
    public InteractiveEngine(string folder, bool forClients = false)
    {
        _folder = folder;
        KernelFormatters.Register(forClients);
        _kernel = [_language.UseKernelHelpers().UseValueSharing()];
        Reach(() =>
        {
            ScriptOptions own = Options(_language);
            Options(_language) = own.WithEmitDebugInformation(true).WithFileEncoding(Encoding.UTF8)
                .WithReferences(SharedReferences.AtStart(own.MetadataReferences))
                .WithMetadataResolver(SharedReferences.Known ?? own.MetadataResolver);
            if (SharedReferences.Known is not null)
            {
                WorkingDirectory(_language) = Directory.GetCurrentDirectory();
            }
        });
        // The kernel has read whole files for references that it does not need any more: tens of megabytes that no collector sees.
        GC.Collect(0);
    }

    public Task<CellRun> RunAsync(string code, CancellationToken cancellation) =>
        SetupScript.RunAsync(code, _folder, piece => SubmitAsync(piece, cancellation));

    /// <summary>What may stand at a place of a cell.</summary>
    /// <returns>The names that begin as what is typed there, and where that begins.</returns>
    public async Task<(string[] Names, int Start)> CompleteAsync(string code, int at)
    {
        int start = at;
        while (start > 0 && (char.IsLetterOrDigit(code[start - 1]) || code[start - 1] == '_'))
        {
            start--;
        }

        KernelCommandResult result = await _kernel.SendAsync(new RequestCompletions(code, Place(code, at))).ConfigureAwait(false);
        IEnumerable<string> names = result.Events.OfType<CompletionsProduced>().SelectMany(produced => produced.Completions)
            .Select(completion => completion.DisplayText).Distinct();
        return ([.. names.Where(name => name.StartsWith(code[start..at], StringComparison.OrdinalIgnoreCase))], start);
    }

    /// <summary>Type and documentation of what stands at a place of a cell; null for nothing known.</summary>
    public async Task<string?> DescribeAsync(string code, int at)
    {
        KernelCommandResult result = await _kernel.SendAsync(new RequestHoverText(code, Place(code, at))).ConfigureAwait(false);
        return result.Events.OfType<HoverTextProduced>().SelectMany(produced => produced.Content).FirstOrDefault()?.Value
            .ReplaceLineEndings("\n");
    }

    public ValueTask DisposeAsync()
    {
        _kernel.Dispose();
        return ValueTask.CompletedTask;
    }

    private static LinePosition Place(string code, int at) => new(
        code.AsSpan(0, at).Count('\n'), at - code.LastIndexOf('\n', Math.Max(0, at - 1), at) - 1);

    private async Task<CellRun> SubmitAsync(string code, CancellationToken cancellation)
    {
        string fileName = Invariant.Text($"cell-{++_submission}.csx");
        Reach(() => Options(_language) = Options(_language).WithFilePath(fileName).WithMetadataResolver(_submission == 1
            ? Options(_language).MetadataResolver : SharedReferences.Around(Options(_language).MetadataResolver)));
        KernelCommandResult result = await _kernel.SendAsync(new SubmitCode(code), cancellation).ConfigureAwait(false);
        cancellation.ThrowIfCancellationRequested();

        var outputs = new OutputCollector();
        CellFailure? failure = null;
        List<(int Line, string Code, string Message)> errors = [];
        foreach (KernelEvent happened in result.Events)
        {
            switch (happened)
            {
                case StandardOutputValueProduced or StandardErrorValueProduced:
                    outputs.Print(((DisplayEvent)happened).FormattedValues.First().Value);
                    break;
                case ReturnValueProduced { Value: null }:
                    break;
                case DisplayEvent shown:
                    outputs.Add(shown.FormattedValues
                        .Where(form => form.MimeType != MediaTypes.Html || ValueHtml.Suits(shown.Value))
                        .ToDictionary(form => form.MimeType, form => form.Value.ReplaceLineEndings("\n")));
                    break;
                case DiagnosticsProduced diagnosed:
                    errors.AddRange(diagnosed.Diagnostics
                        .Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error)
                        .Select(diagnostic => (diagnostic.LinePositionSpan.Start.Line + 1, diagnostic.Code, diagnostic.Message)));
                    break;
                case CommandFailed failed:
                    failure = errors.Count > 0
                        ? CellFailures.Compilation(code, errors)
                        : failed.Exception is { } exception
                            ? CellFailures.Thrown(code, exception, fileName)
                            : CellFailures.At(code, failed.Message, null);
                    break;
            }
        }

        return new CellRun(outputs.ToList(), failure);
    }

    /// <summary>Changes what the kernel has no switch for: that a failure knows its line, and that references are shared.</summary>
    /// <remarks>
    /// A version without these fields still runs cells, slower and with lines unknown. At its first submission, and when the working
    /// directory is another, the kernel takes a resolver of its own.
    /// </remarks>
    private static void Reach(Action change)
    {
        try
        {
            change();
        }
        catch (MissingFieldException)
        {
        }
    }

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_workingDirectory")]
    private static extern ref string? WorkingDirectory(CSharpKernel kernel);

    [UnsafeAccessor(UnsafeAccessorKind.Field, Name = "_scriptOptions")]
    private static extern ref ScriptOptions Options(CSharpKernel kernel);
}
