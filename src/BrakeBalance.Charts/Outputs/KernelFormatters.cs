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
    private const string Html = "text/html";
    private const string Plain = "text/plain";
    private const string Csv = "text/csv";
    private const string Svg = "image/svg+xml";
    private const string Chart = "application/vnd.plotly.v1+json";

    private static readonly Lock Once = new();
    private static bool s_done;

    /// <summary>Registers the formatters; only the first call does anything.</summary>
    /// <param name="forClients">Whether figures also come in the forms that other notebook clients draw.</param>
    /// <returns>Whether a kernel was found.</returns>
    public static bool Register(bool forClients = false)
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

            if (forClients)
            {
                Write(formatter, typeof(Figure), Svg, (value, writer) => writer.Write(((Figure)value).ToSvg()));
                Write(formatter, typeof(Figure), Chart, (value, writer) => writer.Write(((Figure)value).ToPlotlyJson()));
                Prefer(formatter, typeof(Figure), Html, Svg, Chart, Plain);
            }

            s_done = true;
            return true;
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
