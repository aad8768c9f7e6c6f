using System.Net;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>One page of all figures of a car in a folder: small drawings, their words, and the files of each.</summary>
internal sealed partial class FigureGallery(string car, Theme theme)
{
    private const string Style =
        """
        .bb-sides > ul.bb-gallery { display: grid; grid-template-columns: repeat(auto-fill, minmax(min(20rem, 100%), 1fr));
          gap: 2rem 1.5rem; max-width: none; padding: 0; }
        .bb-gallery > li { list-style: none; max-width: 26rem; font-size: 0.9rem; }
        .bb-gallery h2 { font-size: 1.1rem; margin: 0.5rem 0; padding: 0; border: 0; }
        .bb-gallery svg { width: 100%; height: auto; }
        .bb-gallery a { overflow-wrap: anywhere; }
        .bb-gallery textarea { display: block; width: 100%; height: 6rem; font: 0.85rem/1.4 var(--mono); color: var(--ink);
          background: var(--code); border: 1px solid var(--strong-line); }
        @media print { .bb-gallery svg { break-inside: avoid; } }
        """;

    private readonly List<(string Words, string Head, List<string> Files, List<string> Lines)> _items = [];
    private Vehicle? _vehicle;

    /// <summary>The page's file name.</summary>
    public string Name { get; } = car + "-figures.html";

    /// <summary>The colours of the small drawings.</summary>
    public Theme Theme { get; } = theme;

    /// <summary>Whether any page moves its figure.</summary>
    public bool IsLive { get; private set; }

    /// <summary>The line that shows an animation in a page, still to readers who have asked for less motion.</summary>
    public static string Picture(Figure figure, string address, string name)
    {
        string file = address + Uri.EscapeDataString(name);
        return $"<picture><source media=\"(prefers-reduced-motion: reduce)\" srcset=\"{file}.svg\">"
            + $"<img src=\"{file}-animated.svg\" alt=\"{HtmlText.Escape(figure.AltText)}\" style=\"max-width:100%;height:auto\"></picture>";
    }

    /// <summary>Adds a figure with its files, and lines to paste.</summary>
    /// <param name="words">The name of the files of its words, without their kind.</param>
    /// <param name="drawing">The small drawing.</param>
    /// <param name="figure">The figure as it is published.</param>
    /// <param name="vehicle">The car.</param>
    /// <param name="files">Names of its files.</param>
    /// <param name="lines">Lines to paste.</param>
    /// <param name="isLive">Whether a page moves it.</param>
    public void Add(string words, string drawing, Figure figure, Vehicle vehicle, IReadOnlyList<string> files,
        IEnumerable<(string What, string Line)> lines, bool isLive)
    {
        IsLive |= isLive;
        _vehicle = vehicle;
        _items.Add((words, $"{drawing}<h2>{HtmlText.Escape(figure.Title)}</h2>\n<p>{HtmlText.Escape(figure.Caption)}</p>\n"
            + $"<p><strong>Alt text.</strong> {HtmlText.Escape(figure.AltText)}</p>\n", [.. files],
            [.. lines.Select(line => $"<label>{line.What}<textarea readonly>{HtmlText.Escape(line.Line)}</textarea></label>")]));
    }

    /// <summary>Takes over what earlier runs wrote into the folder and is still there.</summary>
    public void Keep(string folder)
    {
        string page = Path.Combine(folder, Name);
        foreach (Match item in Item().Matches(File.Exists(page) ? File.ReadAllText(page) : ""))
        {
            string[] files = [.. item.Groups["file"].Captures.Select(file => WebUtility.HtmlDecode(file.Value))
                .Where(file => File.Exists(Path.Combine(folder, file)))];
            string[] lines = [.. item.Groups["line"].Captures.Select(line => line.Value)];
            string words = WebUtility.HtmlDecode(item.Groups["words"].Value);
            IsLive |= files.Any(file => file.EndsWith("-live.html", StringComparison.Ordinal))
                && File.Exists(Path.Combine(folder, PageNames.SharedScript));
            if (_items.Find(one => one.Words == words) is { Words: not null } again)
            {
                again.Files.AddRange(files.Except(again.Files));
                again.Lines.AddRange(lines.Where(line => !again.Lines.Exists(other => What(other) == What(line))));
            }
            else if (files.Length > 0)
            {
                _items.Add((words, item.Groups["head"].Value, [.. files], [.. lines]));
            }
        }

        static string What(string line) => line[..line.IndexOf("<textarea", StringComparison.Ordinal)];
    }

    [GeneratedRegex("""
        (?s)<li data-words="(?<words>[^"]+)">
        (?<head>.*?)<p class="bb-files">
        (?:<a href="[^"]+">(?<file>[^<]+)</a><br>
        )*</p>
        (?:(?<line><label>.*?</label>)
        )*</li>
        """)]
    private static partial Regex Item();

    public string Html()
    {
        string title = $"Figures of {car}";
        UnitSystem[] units = [.. Enum.GetValues<UnitSystem>().Where(one =>
            _items.Exists(item => $"{item.Words}-".Contains($"-{Display.Name(one)}-", StringComparison.Ordinal)))];
        string lead = $"{_items.Count} {(_items.Count == 1 ? "figure" : "figures")}, each with its words, numbers and files. "
            + FigureText.Car(_vehicle!)
            + (_items.Exists(item => item.Files.Exists(file => file.EndsWith("-embed.html", StringComparison.Ordinal)))
                ? " Paste an -embed.html file into a page as it is. To frame a live page, publish it"
                + (IsLive ? " with the folder assets beside it" : "") + " and paste the line below its figure"
                + (_items.TrueForAll(item => item.Lines.TrueForAll(line => line.Contains("://", StringComparison.Ordinal))) ? "."
                    : "; a shared link shows its picture only when the address is whole: --address URL makes it so.")
                : "");
        StringBuilder body = ComparisonPage.Opened(title, lead, [FigureText.Method, "A car whose rear axle locks first spins."])
            .Append("<style>\n").Append(Style).Append("\n</style>\n<ul class=\"bb-gallery\">\n");
        foreach ((string words, string head, List<string> files, List<string> lines) in _items)
        {
            body.Append(CultureInfo.InvariantCulture, $"<li data-words=\"{HtmlText.Escape(words)}\">\n{head}<p class=\"bb-files\">\n")
                .AppendJoin("", files.Select(file => $"<a href=\"{Uri.EscapeDataString(file)}\">{HtmlText.Escape(file)}</a><br>\n"))
                .Append("</p>\n").AppendJoin("", lines.Select(line => line + "\n")).Append("</li>\n");
        }

        return ComparisonPage.Alone(title, body.Append("</ul>\n</main>\n").ToString(), units);
    }
}
