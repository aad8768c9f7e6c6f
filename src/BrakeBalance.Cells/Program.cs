using System.Runtime.InteropServices.JavaScript;
using System.Runtime.Versioning;

[assembly: SupportedOSPlatform("browser")]

namespace BrakeBalance.Cells;

/// <summary>What a page can call: one question, one answer, both JSON.</summary>
internal static partial class Program
{
    private static readonly CellDesk Desk = new();

    private static void Main()
    {
    }

    [JSExport]
    internal static Task<string> Answer(string request) => Desk.AnswerAsync(request);
}
