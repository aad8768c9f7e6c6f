using System.Reflection;
using System.Text.RegularExpressions;

namespace BrakeBalance.Charts.Outputs;

/// <summary>
/// Puts what went wrong in a cell of a notebook client into words without a stack trace, and keeps later cells from what it did not make.
/// </summary>
/// <remarks>The kernel leaves null or zero in the variables of a failed cell, with which later cells would run on.</remarks>
internal sealed partial class ClientErrors : IObserver<object>
{
    // By name of a variable: the start of the failed cell for which it was not made.
    private readonly Dictionary<string, string> _lacking = [];
    private string? _culprit;

    /// <summary>Follows the cells of a kernel.</summary>
    /// <param name="kernel">The kernel that the client asks.</param>
    public void Follow(object kernel)
    {
        ((IObservable<object>)Get(kernel, "KernelEvents")!).Subscribe(this);
        MethodInfo add = kernel.GetType().GetMethods().First(method => method.Name == "AddMiddleware");
        add.Invoke(kernel, [Delegate.CreateDelegate(
            add.GetParameters()[0].ParameterType, this, ((Func<object, object, object, Task>)RunAsync).Method), nameof(ClientErrors)]);
    }

    /// <inheritdoc/>
    public void OnNext(object value)
    {
        string kind = value.GetType().Name;
        if (kind is not ("CommandFailed" or "CommandSucceeded") || Code(Get(value, "Command")!) is not { } code)
        {
            return;
        }

        foreach (string name in Made(code))
        {
            _lacking.Remove(name);
            if (kind == "CommandFailed")
            {
                _lacking[name] = _culprit ?? Start(code);
            }
        }

        _culprit = null;
        if (kind == "CommandFailed" && Get(value, "Exception") is Exception thrown
            && thrown.GetType().Name != "CodeSubmissionCompilationErrorException")
        {
            Set(value, "Message", Said(thrown));
            Set(value, "Exception", null);
        }
    }

    void IObserver<object>.OnCompleted() { }

    void IObserver<object>.OnError(Exception error) { }

    /// <summary>What an exception says, without what merely carried it here.</summary>
    private static string Said(Exception exception) =>
        exception is TargetInvocationException or TypeInitializationException or AggregateException { InnerExceptions.Count: 1 }
            && exception.InnerException is { } inner ? Said(inner) : exception.Message;

    private Task RunAsync(object command, object context, object next)
    {
        if (Code(command) is not { } code || _lacking.Keys.Except(Made(code))
            .FirstOrDefault(name => Regex.IsMatch(Words().Replace(code, ""), $@"(?<![.\w]){name}\b(?!\s*=>)")) is not { } name)
        {
            return (Task)((Delegate)next).DynamicInvoke(command, context)!;
        }

        _culprit = _lacking[name];
        context.GetType().GetMethods().First(method => method.Name == "Fail").Invoke(context, [command, null,
            $"Not run: '{name}' rests on a cell that failed. Mend that cell and run on from there. It begins with: {_culprit}"]);
        return Task.CompletedTask;
    }

    private static string? Code(object command) => command.GetType().Name == "SubmitCode" ? (string?)Get(command, "Code") : null;

    private static string Start(string code)
    {
        string line = code.TrimStart().Split('\n')[0].TrimEnd();
        return line.Length <= 60 ? line : line[..60] + " …";
    }

    // The variables that a cell makes or sets: its statements stand at the margin.
    private static string[] Made(string code) => [.. Assignment().Matches(code)
        .SelectMany(match => match.Groups["name"].Captures.Select(name => name.Value)).Distinct()];

    private static object? Get(object of, string name) => of.GetType().GetProperty(name)?.GetValue(of);

    private static void Set(object of, string name, object? value) =>
        of.GetType().GetField($"<{name}>k__BackingField", BindingFlags.Instance | BindingFlags.NonPublic)?.SetValue(of, value);

    // Texts, save those with values in them, and comments.
    [GeneratedRegex(@"(?<!\$)@""(?:[^""]|"""")*""|(?<![$@])""[^""\n]*""|//.*")]
    private static partial Regex Words();

    [GeneratedRegex(
        @"^(?:var \((?:(?<name>\w+)(?:, )?)+\)|(?:[A-Za-z_][\w.<>?,\[\]]* )?(?<name>[A-Za-z_]\w*)) *=(?![=>])", RegexOptions.Multiline)]
    private static partial Regex Assignment();
}
