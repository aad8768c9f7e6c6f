using Spectre.Console;

namespace BrakeBalance.Notebooks;

/// <summary>Lines and tables of an answer, with the bands of their numbers where the file gives ranges.</summary>
internal static class BandedParts
{
    /// <summary>An empty line between parts.</summary>
    public const string Gap = "\n";

    /// <summary>Writes them.</summary>
    public static void Write(IAnsiConsole console, Banded<IReadOnlyList<object>> parts, Vehicle vehicle)
    {
        bool IsLike(IReadOnlyList<object> other) => other.Select(part => part.GetType()).SequenceEqual(parts.Middle.Select(part =>
            part.GetType()));
        IReadOnlyList<object>[] drawn = [.. parts.Drawn.Where(IsLike)], ofClass = [.. parts.OfClass.Where(IsLike)];
        foreach ((int i, object part) in parts.Middle.Index())
        {
            if (part is TextTable table)
            {
                table.Banded([.. drawn.Select(other => (TextTable)other[i])], [.. ofClass.Select(other => (TextTable)other[i])])
                    .Write(console);
            }
            else if (part.Equals(Gap))
            {
                console.WriteLine("");
            }
            else if (Line((string)part, Texts(drawn, i), Texts(ofClass, i)) is { Length: > 0 } line)
            {
                console.WriteLine(line);
            }
        }

        static string[] Texts(IReadOnlyList<object>[] cars, int place) => [.. cars.Select(car => (string)car[place])];
        if (drawn.Length < parts.Drawn.Count)
        {
            console.WriteLine(Invariant.Text(
                $"Of {parts.Drawn.Count} cars drawn from the file's ranges {parts.Drawn.Count - drawn.Length} would give another report, "
                    + $"such as one without a stop: they are not in the brackets."));
        }

        if (BandText.LegendOf(vehicle) is { Length: > 0 } legend)
        {
            console.WriteLine(legend);
        }
    }

    // Where the middle or some of the others have nothing to say.
    private static string Line(string middle, string[] drawn, string[] ofClass)
    {
        string[] said = [.. drawn.Where(text => text.Length > 0)];
        string line = BandText.Sentences(middle, said, ofClass.Where(text => text.Length > 0)).TrimStart();
        return middle.Length > 0 && said.Length < drawn.Length ? line + " This is not so of every car that the file's ranges allow." : line;
    }
}
