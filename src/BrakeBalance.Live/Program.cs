using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;
using BrakeBalance.Charts.Live;

[assembly: SupportedOSPlatform("browser")]

namespace BrakeBalance.Live;

/// <summary>What a page can call: one question, one answer, both JSON.</summary>
internal static partial class Program
{
    private const string DemoFolder = "Demos.";

    private static readonly LiveDesk Desk = new(Demos);

    private static void Main()
    {
    }

    [JSExport]
    internal static string Answer(string request, string? text) => Desk.Answer(request, text);

    private static Dictionary<string, string> Demos()
    {
        System.Reflection.Assembly own = typeof(Program).Assembly;
        return own.GetManifestResourceNames().Where(name => name.StartsWith(DemoFolder, StringComparison.Ordinal))
            .Order(StringComparer.Ordinal).ToDictionary(name => name[DemoFolder.Length..^".json".Length], name =>
            {
                using var reader = new StreamReader(own.GetManifestResourceStream(name)!);
                return reader.ReadToEnd();
            });
    }
}
