using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Browser;

/// <summary>Where a page breaks on paper: how full each sheet is, and what is torn.</summary>
/// <remarks>
/// Each block, row and heading gets a link at its top and one at its bottom that take no room. Chromium writes links as annotations with
/// their place on their sheet, uncompressed (ISO 32000-1, 12.5.6.5: /Subtype /Link, /Rect), so the PDF tells where each part came to lie.
/// </remarks>
internal sealed record PaperLayout(IReadOnlyList<double> Fills, IReadOnlyList<string> Torn)
{
    // As page.css says: a table of at most this many rows stays whole.
    private const int ShortRows = 8;

    // The margins of @page in page.css [pt].
    private const double Top = 16 * 72 / 25.4, Bottom = 18 * 72 / 25.4;

    private const string Marks =
        """
        (() => {
          const shown = element => element.getClientRects().length > 0 && element.offsetHeight > 0, names = [];
          const mark = (element, kind) => {
            const number = names.push(`${kind}: ${element.textContent.trim().replace(/\s+/g, " ").slice(0, 60)}`) - 1;
            if (getComputedStyle(element).position === "static") element.style.position = "relative";
            for (const end of ["top", "bottom"]) {
              const link = document.createElement("a");
              link.href = `http://mark/${number}-${end}`;
              link.style.cssText = "position:absolute;left:0;width:2px;height:2px;margin:0;padding:0;display:block;min-height:0";
              link.style[end] = "0";
              element.append(link);
            }
          };
          for (const element of [...document.querySelectorAll("body *")].filter(shown)) {
            if (element.closest("svg, math, thead")) continue;
            const tag = element.localName;
            if (tag === "tr" && element.cells.length > 0) mark(element.cells[0], "row");
            else if (element.matches(".bb-figure, .bb-equation, .bb-readouts, .bb-verdict, .bb-cards > li, .bb-doors > section"))
              mark(element, "block");
            else if (/^h[1-6]$/.test(tag)) mark(element, "heading");
            else if (tag === "table" && element.tBodies[0]?.rows.length <= SHORT)
              mark(element.closest(".bb-table") || element.closest(".bb-scroll") || element.parentElement, "short table");
            else if (element.matches("p, li, dd, dt, pre, .bb-static, figcaption, .bb-field, .bb-part") && !element.closest("table"))
              mark(element, "text");
          }
          return names;
        })()
        """;

    /// <summary>Prints a page on papers of several formats and looks where its parts are.</summary>
    public static async Task<IReadOnlyList<PaperLayout>> OfAsync(WatchedPage page, params PaperFormat[] papers)
    {
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        string[] names = await page.Page.EvaluateExpressionAsync<string[]>(
            Marks.Replace("SHORT", ShortRows.ToString(CultureInfo.InvariantCulture), StringComparison.Ordinal));
        List<PaperLayout> layouts = [];
        foreach (PaperFormat paper in papers)
        {
            layouts.Add(Of(names, Encoding.Latin1.GetString(await page.PrintAsync(paper))));
        }

        return layouts;
    }

    private static PaperLayout Of(string[] names, string pdf)
    {
        Dictionary<string, (string Mark, double Low)> links = Regex.Matches(
            pdf, @"(\d+) 0 obj\n<<[^<>]*?/Subtype /Link[^<>]*?/Rect \[\S+ (\S+) \S+ \S+\][^<>]*?<<[^<>]*?/URI \(http://mark/([^)]*)\)")
            .ToDictionary(link => link.Groups[1].Value, link => (link.Groups[3].Value, Number(link.Groups[2].Value)));
        Dictionary<string, int> sheets = [];
        List<double> fills = [];
        foreach (string sheet in Regex.Matches(pdf, @"<</Type /Page\n.*?endobj", RegexOptions.Singleline).Select(one => one.Value))
        {
            double height = Number(Regex.Match(sheet, @"/MediaBox \[\S+ \S+ \S+ (\S+?)\]").Groups[1].Value), low = height - Top;
            foreach (Match reference in Regex.Matches(Regex.Match(sheet, @"/Annots \[([^\]]*)\]").Groups[1].Value, @"(\d+) 0 R"))
            {
                if (links.TryGetValue(reference.Groups[1].Value, out (string Mark, double Low) link))
                {
                    sheets.TryAdd(link.Mark, fills.Count);
                    low = Math.Min(low, link.Low);
                }
            }

            fills.Add((height - Top - low) / (height - Top - Bottom));
        }

        int found = names.Where((_, i) => sheets.ContainsKey($"{i}-top") && sheets.ContainsKey($"{i}-bottom")).Count();
        Assert.True(names.Length > 5 && found > 0.95 * names.Length, $"{found} of {names.Length} parts were found on paper.");
        int On(int part, string end) => sheets.GetValueOrDefault($"{part}-{end}", -1);
        List<string> torn = [.. names.Where((name, i) => !name.StartsWith("text", StringComparison.Ordinal)
            && On(i, "top") != On(i, "bottom"))];
        torn.AddRange(names.Where((name, i) => name.StartsWith("heading", StringComparison.Ordinal) && i + 1 < names.Length
            && On(i, "bottom") != On(i + 1, "top")).Select(name => name + ", alone at the foot of its sheet"));
        return new(fills, torn);
    }

    /// <summary>Fails where something is torn or a sheet before the last is less than half full.</summary>
    public void AssertGood(string name)
    {
        Assert.True(Torn.Count == 0, $"{name}: torn: {string.Join("; ", Torn)}");
        string fills = string.Join(" ", Fills.Select(fill => fill.ToString("0 %", CultureInfo.InvariantCulture)));
        Assert.True(Fills.SkipLast(1).All(fill => fill >= 0.5), $"{name}: sheets filled to {fills}");
    }

    private static double Number(string digits) => double.Parse(digits, CultureInfo.InvariantCulture);
}
