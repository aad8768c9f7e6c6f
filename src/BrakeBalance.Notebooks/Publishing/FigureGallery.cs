using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>One page of all figures of an export: small drawings, their words, and the files of each.</summary>
internal sealed class FigureGallery(string car, Theme theme)
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

    private readonly StringBuilder _items = new();
    private int _count;
    private Vehicle? _vehicle;

    /// <summary>The page's file name.</summary>
    public string Name { get; } = car + "-figures.html";

    /// <summary>Whether any page of the run moves its figure.</summary>
    public bool IsLive { get; private set; }

    /// <summary>The line that shows an animation in a page, still to readers who have asked for less motion.</summary>
    public static string Picture(Figure figure, string address, string name)
    {
        string file = address + Uri.EscapeDataString(name);
        return $"<picture><source media=\"(prefers-reduced-motion: reduce)\" srcset=\"{file}.svg\">"
            + $"<img src=\"{file}-animated.svg\" alt=\"{HtmlText.Escape(figure.AltText)}\" style=\"max-width:100%;height:auto\"></picture>";
    }

    /// <summary>Adds a figure with its files, and lines to paste.</summary>
    public void Add(
        Figure figure, Vehicle vehicle, IReadOnlyList<string> files, IEnumerable<(string What, string Line)> lines, bool isLive)
    {
        IsLive |= isLive;
        (_count, _vehicle) = (_count + 1, vehicle);
        _items.Append("<li>\n").Append(FigureText.Drawing(figure, FigureSize.Phone, theme, vehicle))
            .Append("<h2>").Append(HtmlText.Escape(figure.Title)).Append("</h2>\n<p>").Append(HtmlText.Escape(figure.Caption))
            .Append("</p>\n<p><strong>Alt text.</strong> ").Append(HtmlText.Escape(figure.AltText)).Append("</p>\n<p>");
        foreach (string file in files)
        {
            string address = Uri.EscapeDataString(file);
            _items.Append(CultureInfo.InvariantCulture, $"<a href=\"{address}\">{HtmlText.Escape(file)}</a><br>");
        }

        _items.Append("</p>\n");
        foreach ((string what, string line) in lines)
        {
            _items.Append(CultureInfo.InvariantCulture,
                $"<label>{what}<textarea readonly>{HtmlText.Escape(line)}</textarea></label>\n");
        }

        _items.Append("</li>\n");
    }

    /// <summary>The page.</summary>
    public string Html(FigurePlan plan)
    {
        string title = $"Figures of {car}";
        string lead = $"{_count} {(_count == 1 ? "figure" : "figures")}, each with its words, numbers and files. "
            + FigureText.Car(_vehicle!)
            + (plan.Embed ? " Paste an -embed.html file into a page as it is. To frame a live page, publish it"
                + (IsLive ? " with the folder assets beside it" : "") + " and paste the line below its figure"
                + (plan.Address.Length > 0 ? "."
                    : "; a shared link shows its picture only when the address is whole: --address URL makes it so.")
                : "");
        string body = ComparisonPage.Opened(title, lead, [FigureText.Method, "A car whose rear axle locks first spins."])
            .Append("<style>\n").Append(Style).Append("\n</style>\n<ul class=\"bb-gallery\">\n").Append(_items)
            .Append("</ul>\n</main>\n").ToString();
        return ComparisonPage.Alone(title, body, [.. plan.Units]);
    }
}
