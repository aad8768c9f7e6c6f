using System.Text.Json.Nodes;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using BrakeBalance.Notebooks.Tests.Commands;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>A reader's machine has fonts of its own: drawings stay whole and as laid out in any of them.</summary>
public class AnyFontTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    /// <summary>Faces far wider, narrower and other than the one that figures ask for; a machine that lacks one draws its own.</summary>
    public static TheoryData<string> Faces => ["monospace", "serif", "sans-serif", "DejaVu Sans", "Liberation Sans"];

    [SkippableTheory]
    [MemberData(nameof(Faces))]
    public async Task No_text_of_a_published_figure_is_cut_or_wider_than_laid_out(string face)
    {
        string page = Path.Combine(browser.Folder, $"drawings-{face.Replace(' ', '-')}.html");
        await File.WriteAllTextAsync(page, $"<!doctype html><style>svg text{{font-family:{face}!important}}</style>{await Drawings.Value}");
        await using WatchedPage watched = await browser.OpenAsync(page);
        string[] faults = await watched.Page.EvaluateExpressionAsync<string[]>(
            """
            [...document.querySelectorAll("svg")].flatMap(svg => {
              const edge = svg.viewBox.baseVal, name = svg.querySelector("title").id;
              return [...svg.querySelectorAll("text")].filter(text => text.textContent).flatMap(text => {
                const box = text.getBBox(), planned = Number(text.getAttribute("textLength"));
                const faults = [];
                if (box.x < edge.x - 1 || box.x + box.width > edge.x + edge.width + 1) faults.push("cut");
                if (!(Math.abs(box.width - planned) < 1.5)) faults.push(`${box.width.toFixed(1)} wide, laid out for ${planned}`);
                return faults.map(fault => `${name}: "${text.textContent}" ${fault}`);
              });
            })
            """);
        Assert.True(faults.Length == 0, $"{faults.Length} in {face}:\n{string.Join('\n', faults.Take(20))}");
    }

    [SkippableFact]
    public async Task Outlined_words_stand_where_the_words_would_stand_and_no_word_is_left()
    {
        string page = Path.Combine(browser.Folder, "outlines.html");
        string drawings = await Drawings.Value;
        IEnumerable<string> each = drawings.Split("<svg", StringSplitOptions.RemoveEmptyEntries).Select(part => "<svg" + part);
        string pairs = string.Concat(each.Select(svg => $"<p>{svg}{Renamed(OutlinedText.Of(svg))}</p>"));
        await File.WriteAllTextAsync(page, $"<!doctype html><style>svg text{{font-family:DejaVu Sans!important}}</style>{pairs}");
        await using WatchedPage watched = await browser.OpenAsync(page);
        string[] faults = await watched.Page.EvaluateExpressionAsync<string[]>(
            """
            [...document.querySelectorAll("p")].flatMap(pair => {
              const [words, outlines] = pair.querySelectorAll("svg"), left = outlines.querySelectorAll("text[textLength]");
              const box = one => {
                const r = one.getBoundingClientRect();
                return [r.left - one.ownerSVGElement.getBoundingClientRect().left, r.width];
              };
              const groups = [...outlines.querySelectorAll("g")].filter(g => g.firstElementChild?.localName === "use");
              const texts = [...words.querySelectorAll("text")].filter(text => text.textContent.trim());
              const name = words.querySelector("title").textContent;
              if (left.length || groups.length !== texts.length)
                return [`${name}: ${left.length} words, ${groups.length} of ${texts.length}`];
              const scale = words.getBoundingClientRect().width / words.viewBox.baseVal.width;
              return texts.flatMap((text, i) => {
                const [x, w] = box(text), [ox, ow] = box(groups[i]);
                return Math.abs(x - ox) < 4 * scale && Math.abs(w - ow) < 6 * scale ? []
                  : [`${name}: "${text.textContent}" ${x} ${w}, ${ox} ${ow}`];
              });
            })
            """);
        Assert.True(faults.Length == 0, $"{faults.Length}:\n{string.Join('\n', faults.Take(20))}");
    }

    [SkippableTheory]
    [InlineData("live.html")]
    [InlineData("chart.html")]
    [InlineData("what-the-knee-does.html")]
    public async Task A_published_page_carries_its_letters(string name)
    {
        using var folder = new TemporaryFolder();
        string car = RepositoryRoot.File("data/vehicles/coupe-1960s.json");
        Assert.Equal(0, (await (name[0] == 'w' ? Shell.RunAsync("story", "--output", folder.Path)
            : Shell.RunAsync("figures", car, "--figure", "brake-forces", "--format", name[0] == 'l' ? "embed" : "html", "--output",
                folder.Path))).Code);
        string page = folder.Names.First(file => file == name || file.EndsWith(name[0] == 'l' ? "-si-live.html" : "-si.html",
            StringComparison.Ordinal));
        await using WatchedPage watched = await browser.OpenAsync(folder.File(page));
        JsonNode letters = JsonNode.Parse(OutlinedText.Letters)!;
        const string words = "Rear force at 0.50 g: 38 bar";
        foreach (bool bold in (bool[])[false, true])
        {
            double planned = words.Sum(letter => (double)letters[FormattableString.Invariant($"{(bold ? "b" : "r")}{(int)letter:x}")]![0]!)
                / (double)letters["em"]!;
            double drawn = await watched.Page.EvaluateFunctionAsync<double>(
                """
                async (words, weight) => {
                  await document.fonts.load(`${weight} 100px Arial`, words);
                  const paper = document.createElement("canvas").getContext("2d");
                  paper.font = `${weight} 100px Arial`;
                  return paper.measureText(words).width / 100;
                }
                """, words, bold ? 700 : 400);
            Assert.InRange(drawn / planned, 0.995, 1.005);
        }
    }

    private static string Renamed(string svg) => svg.Replace("id=\"", "id=\"o-", StringComparison.Ordinal)
        .Replace("href=\"#", "href=\"#o-", StringComparison.Ordinal);

    private static readonly Lazy<Task<string>> Drawings = new(async () =>
    {
        using var folder = new TemporaryFolder();
        Assert.Equal(0, (await Shell.RunAsync("figures", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--text", "--output",
            folder.Path)).Code);
        string[] drawings = [.. folder.Names.Where(name => name.EndsWith(".svg", StringComparison.Ordinal))
            .Select(name => File.ReadAllText(folder.File(name)))];
        Assert.True(drawings.Length > 25, $"{drawings.Length} drawings");
        return string.Concat(drawings.Select(drawing => drawing[drawing.IndexOf("<svg", StringComparison.Ordinal)..]));
    });
}
