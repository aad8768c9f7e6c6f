using Spectre.Console;

namespace BrakeBalance.Notebooks.Commands.Measuring;

internal static class MeasureOutput
{
    public static void Sentences(IAnsiConsole console, IEnumerable<string> sentences)
    {
        foreach (string sentence in sentences)
        {
            console.WriteLine(sentence);
        }
    }
}
