using System.Diagnostics;
using System.Reflection;
using Microsoft.CodeAnalysis;

namespace BrakeBalance.Notebooks.Execution;

/// <summary>Puts what went wrong in a cell into words, with the line where it did.</summary>
internal static class CellFailures
{
    /// <summary>The compiler's errors, in the order of their lines.</summary>
    public static CellFailure Compilation(string code, IEnumerable<(int Line, string Code, string Message)> errors)
    {
        List<(int Line, string Code, string Message)> ordered = [.. errors.Distinct().OrderBy(error => error.Line)];
        IEnumerable<string> texts = ordered.Select((error, index) =>
            index == 0 ? $"{error.Message} ({error.Code})"
                : FormattableString.Invariant($"line {error.Line}: {error.Message} ({error.Code})"));
        return At(code, string.Join("; ", texts), ordered.Count > 0 ? ordered[0].Line : null);
    }

    /// <summary>The compiler's errors as Roslyn gives them.</summary>
    public static CellFailure Compilation(string code, IEnumerable<Diagnostic> diagnostics) => Compilation(
        code, Errors(diagnostics).Select(error => (Line(error), error.Id, error.GetMessage(CultureInfo.InvariantCulture))));

    /// <summary>Those that keep a cell from running.</summary>
    public static IEnumerable<Diagnostic> Errors(IEnumerable<Diagnostic> diagnostics) =>
        diagnostics.Where(diagnostic => diagnostic.Severity == DiagnosticSeverity.Error);

    /// <summary>The line of a compiler's message, from 1.</summary>
    public static int Line(Diagnostic diagnostic) => diagnostic.Location.GetLineSpan().StartLinePosition.Line + 1;

    /// <summary>What a cell threw while it ran.</summary>
    public static CellFailure Thrown(string code, Exception exception, string fileName, int? running = null)
    {
        Exception cause = Unwrapped(exception);
        int? line = new StackTrace(cause, fNeedFileInfo: true).GetFrames()
            .Where(frame => Path.GetFileName(frame.GetFileName()) == fileName)
            .Select(frame => (int?)frame.GetFileLineNumber())
            .FirstOrDefault(number => number > 0) ?? running;
        return At(code, cause.Message.ReplaceLineEndings(" "), line);
    }

    /// <summary>A failure in words, with its source line.</summary>
    public static CellFailure At(string code, string message, int? line)
    {
        string[] lines = code.ReplaceLineEndings("\n").Split('\n');
        return line is { } number && number >= 1 && number <= lines.Length
            ? new CellFailure(message, number, lines[number - 1].Trim())
            : new CellFailure(message, null, null);
    }

    private static Exception Unwrapped(Exception exception) => exception switch
    {
        TargetInvocationException { InnerException: { } inner } => Unwrapped(inner),
        TypeInitializationException { InnerException: { } inner } => Unwrapped(inner),
        AggregateException { InnerExceptions: [var only] } => Unwrapped(only),
        _ => exception,
    };
}
