using BrakeBalance.Charts;
using Spectre.Console;

namespace BrakeBalance.Notebooks;

/// <summary>A table of texts for the width of the console: as columns, or where they would be too narrow as one block a row.</summary>
/// <param name="headings">Headings of the columns; a line break in one is kept.</param>
internal sealed class TextTable(params string[] headings)
{
    private const string Gap = "  ";
    private const int Margin = 1;

    // What a column of sentences needs to be read.
    private const int Sentence = 40;
    private const int Readable = 16;
    private const int WidestLabel = 30;

    // Short cells and names stay whole where there is room for that.
    private const int Whole = 12;
    private const int WholeName = 24;

    private readonly List<string[]> _rows = [];

    /// <summary>Adds a row.</summary>
    /// <param name="cells">One text a column; a line break in one is kept.</param>
    public void Row(params string[] cells) => _rows.Add(cells);

    /// <summary>The table with the bands of its numbers.</summary>
    /// <param name="drawn">The same table of each car that the file's ranges allow; one with other rows is left out.</param>
    /// <param name="ofClass">The same of some cars that differ only in what is typical of the class.</param>
    public TextTable Banded(IReadOnlyList<TextTable> drawn, IReadOnlyList<TextTable> ofClass)
    {
        var banded = new TextTable(headings);
        IEnumerable<string> Cells(IReadOnlyList<TextTable> tables, int row, int column) =>
            tables.Where(table => table._rows.Count == _rows.Count).Select(table => table._rows[row][column]);
        foreach ((int r, string[] row) in _rows.Index())
        {
            banded.Row([.. row.Select((cell, c) => BandText.Of(cell, Cells(drawn, r, c), Cells(ofClass, r, c)))]);
        }

        return banded;
    }

    /// <summary>Writes a table under its title and caption.</summary>
    public static void Write(IAnsiConsole console, NamedTable named)
    {
        console.WriteLine("");
        console.WriteLine(named.Title);
        if (named.Caption.Length > 0)
        {
            console.WriteLine(named.Caption);
        }

        Of(named).Write(console);
    }

    /// <summary>The columns of a table without its title.</summary>
    public static TextTable Of(NamedTable named)
    {
        var table = new TextTable([.. named.Table.Columns]);
        for (long row = 0; row < named.Table.Frame.Rows.Count; row++)
        {
            table.Row([.. named.Table.Row(row)]);
        }

        return table;
    }

    /// <summary>Writes keys, each with what it means below it.</summary>
    public static void Keys(IAnsiConsole console, IReadOnlyList<(string Path, string Meaning)> keys)
    {
        string indent = new(' ', 4);
        foreach ((string path, string meaning) in keys)
        {
            console.WriteLine(path);
            foreach (string line in Folded(meaning, console.Profile.Width - indent.Length))
            {
                console.WriteLine(indent + line);
            }
        }
    }

    /// <summary>Writes the table.</summary>
    /// <param name="console">Where it is written; its width decides the form.</param>
    public void Write(IAnsiConsole console)
    {
        int width = console.Profile.Width;
        console.WriteLine("");
        foreach (string line in Widths(width) is { } widths ? Columns(widths) : Blocks(width))
        {
            console.WriteLine(line);
        }

        console.WriteLine("");
    }

    /// <summary>The width of each column; null when the columns do not fit or would be too narrow to read.</summary>
    private int[]? Widths(int width)
    {
        int free = width - Margin - (Gap.Length * (headings.Length - 1));
        int[] wanted = [.. headings.Select((heading, i) => Column(i).Append(heading).Max(Longest))];
        int[] words = [.. headings.Select((heading, i) => Column(i).Append(heading).Max(LongestWord))];
        int[] least = [.. words.Select((word, i) => Math.Max(word,
            Column(i).SelectMany(cell => cell.Split('\n')).Select(line => line.Length)
                .Where(length => length <= (i == 0 ? WholeName : Whole)).DefaultIfEmpty(0).Max()))];
        least = least.Sum() > free ? words : least;
        if (least.Sum() > free)
        {
            return null;
        }

        // The highest cap under which all fit; no column is narrower than its longest word.
        int[] Capped(int cap) => [.. wanted.Zip(least, (most, fewest) => Math.Min(most, Math.Max(fewest, cap)))];
        int cap = wanted.Max();
        while (Capped(cap).Sum() > free)
        {
            cap--;
        }

        int[] widths = Capped(cap);
        return widths.Zip(wanted).Any(column => column.Second > Sentence && column.First < Readable) ? null : widths;
    }

    private IEnumerable<string> Columns(int[] widths)
    {
        bool[] right = [.. headings.Select((_, i) => Column(i).Where(cell => cell.Length > 0).All(IsNumber))];
        foreach (string line in Lines(headings, widths, right, fromBelow: true))
        {
            yield return line;
        }

        yield return new string('─', Margin + widths.Sum() + (Gap.Length * (widths.Length - 1)));
        foreach (string line in _rows.SelectMany(row => Lines(row, widths, right, fromBelow: false)))
        {
            yield return line;
        }
    }

    private static IEnumerable<string> Lines(string[] cells, int[] widths, bool[] right, bool fromBelow)
    {
        string[][] folded = [.. cells.Zip(widths, (cell, width) => Folded(cell, width).ToArray())];
        int height = folded.Max(lines => lines.Length);
        for (int line = 0; line < height; line++)
        {
            var text = new StringBuilder(new string(' ', Margin));
            for (int i = 0; i < cells.Length; i++)
            {
                int at = fromBelow ? line - (height - folded[i].Length) : line;
                string part = at >= 0 && at < folded[i].Length ? folded[i][at] : "";
                text.Append(i == 0 ? "" : Gap).Append(right[i] ? part.PadLeft(widths[i]) : part.PadRight(widths[i]));
            }

            yield return text.ToString().TrimEnd();
        }
    }

    private IEnumerable<string> Blocks(int width)
    {
        string[] labels = [.. headings.Select(heading => heading.Replace('\n', ' ').Trim())];
        int label = Math.Min(WidestLabel, labels.Max(text => text.Length));
        foreach ((int number, string[] row) in _rows.Index())
        {
            if (number > 0)
            {
                yield return "";
            }

            foreach (string line in Folded($"{labels[0]}: {row[0]}", width - Margin))
            {
                yield return new string(' ', Margin) + line;
            }

            foreach ((string name, string cell) in labels.Zip(row).Skip(1).Where(pair => pair.Second.Length > 0))
            {
                string[] names = [.. Folded(name, label)];
                string[] texts = [.. Folded(cell.Replace('\n', ' '), width - label - Margin - (2 * Gap.Length))];
                for (int line = 0; line < Math.Max(names.Length, texts.Length); line++)
                {
                    yield return (new string(' ', Margin) + Gap + names.ElementAtOrDefault(line)?.PadRight(label) ?? "").PadRight(
                        Margin + Gap.Length + label) + Gap + texts.ElementAtOrDefault(line);
                }
            }
        }
    }

    private IEnumerable<string> Column(int index) => _rows.Select(row => row[index]);

    private static int Longest(string cell) => cell.Split('\n').Max(line => line.Length);

    private static int LongestWord(string cell) => cell.Split('\n', ' ').Max(word => word.Length);

    private static bool IsNumber(string cell) =>
        char.IsAsciiDigit(cell[0]) || cell[0] is '(' or '–' or '±'
        || ("−-+".Contains(cell[0], StringComparison.Ordinal) && cell.Length > 1);

    /// <summary>The lines of a text that is no wider than so many columns.</summary>
    internal static IEnumerable<string> Folded(string text, int width)
    {
        foreach (string paragraph in text.Split('\n'))
        {
            string line = "";
            foreach (string word in paragraph.Split(' ').SelectMany(word =>
                word.Length > width ? word.Chunk(width).Select(part => new string(part)) : [word]))
            {
                if (line.Length > 0 && line.Length + 1 + word.Length > width)
                {
                    yield return line;
                    line = word;
                }
                else
                {
                    line = line.Length == 0 ? word : $"{line} {word}";
                }
            }

            yield return line;
        }
    }
}
