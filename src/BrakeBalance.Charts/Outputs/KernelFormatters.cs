using System.Reflection;
using Microsoft.Data.Analysis;

namespace BrakeBalance.Charts.Outputs;

/// <summary>
/// Teaches the interactive C# kernel, where a cell runs in one, to show values as <see cref="ValueHtml"/> and <see cref="ValueText"/>
/// do.
/// </summary>
/// <remarks>
/// This assembly refers to no kernel. It looks the kernel's formatting assembly up by name among those already loaded,
/// and does nothing where there is none (plain scripting, tests).
/// </remarks>
public static class KernelFormatters
{
    private const string FormatterType = "Microsoft.DotNet.Interactive.Formatting.Formatter";
    private const string Client = "Microsoft.DotNet.Interactive.App";
    private const string Html = "text/html";
    private const string Plain = "text/plain";
    private const string Csv = "text/csv";
    private const string Svg = "image/svg+xml";

    private static readonly Lock Once = new();
    private static bool s_done;

    /// <summary>Registers the formatters; only the first call does anything.</summary>
    /// <returns>Whether a kernel was found.</returns>
    public static bool Register()
    {
        lock (Once)
        {
            Type? formatter = AppDomain.CurrentDomain.GetAssemblies()
                .Where(assembly => assembly.GetName().Name == "Microsoft.DotNet.Interactive.Formatting")
                .Select(assembly => assembly.GetType(FormatterType))
                .FirstOrDefault(type => type is not null);
            if (formatter is null)
            {
                return false;
            }

            // Also when the first cell is run again: its output is what a client that has loaded the notebook anew gets the scripts from.
            bool isClient = Assembly.GetEntryAssembly()?.GetName().Name == Client;
            if (isClient)
            {
                Greet(follow: !s_done);
            }

            if (s_done)
            {
                return true;
            }

            Write(formatter, typeof(object), Html, (value, writer) => writer.Write(ValueHtml.Of(value)));
            Write(formatter, typeof(object), Plain, (value, writer) => writer.Write(ValueText.Of(value)));
            Write(formatter, typeof(DataFrame), Csv, (value, writer) => writer.Write(new FrameTable((DataFrame)value).ToCsv()));
            Prefer(formatter, typeof(object), Html, Plain);
            Prefer(formatter, typeof(DataFrame), Html, Plain, Csv);
            foreach (Type type in new[] { typeof(string), typeof(bool), typeof(IFormattable), typeof(IQuantity) })
            {
                Prefer(formatter, type, Plain);
            }

            if (isClient)
            {
                Write(formatter, typeof(Figure), Svg, (value, writer) => writer.Write(((Figure)value).ToSvg()));
                Prefer(formatter, typeof(Figure), Html, Svg, Plain);
            }

            s_done = true;
            return true;
        }
    }

    /// <summary>Gives a notebook client, once a notebook, what its figures need, and its errors in words.</summary>
    private static void Greet(bool follow)
    {
        Assembly kernels = AppDomain.CurrentDomain.GetAssemblies().First(one => one.GetName().Name == "Microsoft.DotNet.Interactive");
        object context = kernels.GetType("Microsoft.DotNet.Interactive.KernelInvocationContext")!.GetProperty("Current")!.GetValue(null)!;
        MethodInfo show = kernels.GetType("Microsoft.DotNet.Interactive.KernelInvocationContextExtensions")!.GetMethods()
            .First(method => method.Name == "DisplayAs");
        show.Invoke(null, [context, FigureAssets.ForClients, Html, .. show.GetParameters().Skip(3).Select(_ => (object?)null)]);
        object kernel = context.GetType().GetProperty("HandlingKernel")!.GetValue(context)!;
        if (follow)
        {
            new ClientErrors().Follow(kernel.GetType().GetProperty("RootKernel")?.GetValue(kernel) ?? kernel);
        }
    }

    private static void Write(Type formatter, Type type, string mediaType, Action<object, TextWriter> write) =>
        Method(formatter, "Register", typeof(Type), typeof(Action<object, TextWriter>), typeof(string))
            .Invoke(null, [type, write, mediaType]);

    private static void Prefer(Type formatter, Type type, params string[] mediaTypes) =>
        Method(formatter, "SetPreferredMimeTypesFor", typeof(Type), typeof(string[])).Invoke(null, [type, mediaTypes]);

    private static MethodInfo Method(Type formatter, string name, params Type[] parameters) =>
        formatter.GetMethod(name, parameters)
        ?? throw new MissingMethodException(
            $"This kernel's {FormatterType} has no method {name}({string.Join(", ", parameters.Select(type => type.Name))}).");
}
