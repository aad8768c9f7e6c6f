using System.Reflection;
using System.Text.RegularExpressions;

namespace BrakeBalance.Charts.Outputs;

/// <summary>
/// Puts what went wrong in a cell of a notebook client into words without a stack trace, and keeps later cells from what it did not make.
/// </summary>
/// <remarks>The kernel leaves null or zero in the variables of a failed cell, with which later cells would run on.</remarks>
internal sealed partial class ClientErrors : IObserver<object>
{
    // By name of a variable: the first line of the failed cell that was to make it.
    private readonly Dictionary<string, string> _lacking = [];

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

        string[] made = Made(code);
        Array.ForEach(made, name => _lacking.Remove(name));
        if (kind == "CommandSucceeded")
        {
            return;
        }

        Array.ForEach(made, name => _lacking[name] = code.TrimStart().Split('\n')[0].TrimEnd());
        if (Get(value, "Exception") is Exception thrown && thrown.GetType().Name != "CodeSubmissionCompilationErrorException")
        {
            Set(value, "Message", Words(thrown));
            Set(value, "Exception", null);
        }
    }

    /// <inheritdoc/>
    public void OnCompleted()
    {
    }

    /// <inheritdoc/>
    public void OnError(Exception error)
    {
    }

    /// <summary>What an exception says, without what merely carried it here.</summary>
    private static string Words(Exception exception) =>
        exception is TargetInvocationException or TypeInitializationException or AggregateException { InnerExceptions.Count: 1 }
            && exception.InnerException is { } inner ? Words(inner) : exception.Message;

    private Task RunAsync(object command, object context, object next)
    {
        if (Code(command) is not { } code || _lacking.Keys.Except(Made(code))
            .FirstOrDefault(name => Regex.IsMatch(code, $@"(?<![.\w]){name}\b(?!\s*=>)")) is not { } name)
        {
            return (Task)((Delegate)next).DynamicInvoke(command, context)!;
        }

        context.GetType().GetMethods().First(method => method.Name == "Fail").Invoke(context, [command, null,
            $"Not run: this cell uses '{name}', and the cell that makes it failed. Mend that cell and run it first. It begins: "
                + _lacking[name]]);
        return Task.CompletedTask;
    }

    private static string? Code(object command) => command.GetType().Name == "SubmitCode" ? (string?)Get(command, "Code") : null;

    // The variables that a cell makes or sets: its statements stand at the margin.
    private static string[] Made(string code) => [.. Assignment().Matches(code)
        .SelectMany(match => match.Groups["name"].Captures.Select(name => name.Value)).Distinct()];

    private static object? Get(object of, string name) => of.GetType().GetProperty(name)?.GetValue(of);

    private static void Set(object of, string name, object? value) =>
        of.GetType().GetField($"<{name}>k__BackingField", BindingFlags.Instance | BindingFlags.NonPublic)?.SetValue(of, value);

    [GeneratedRegex(@"^(?:var \((?:(?<name>\w+)(?:, )?)+\)|(?:[A-Za-z_][\w.<>?,\[\]]* )?(?<name>[A-Za-z_]\w*)) *=(?![=>])", RegexOptions.Multiline)]
    private static partial Regex Assignment();
}
