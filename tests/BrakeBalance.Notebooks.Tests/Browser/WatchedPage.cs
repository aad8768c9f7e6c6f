using System.Collections.Concurrent;
using Deque.AxeCore.Commons;
using PuppeteerSharp;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Browser;

/// <summary>An open page whose requests, console errors and script errors are recorded.</summary>
public sealed class WatchedPage : IAsyncDisposable
{
    private static readonly string Axe = new BundledAxeScriptProvider().GetScript() + "; null";

    private readonly ConcurrentQueue<string> _faults = new();

    public WatchedPage(IPage page)
    {
        Page = page;
        page.Request += (_, e) =>
        {
            string scheme = e.Request.Url.Split(':')[0];
            if (scheme is not ("file" or "data" or "blob" or "about"))
                _faults.Enqueue($"request for {e.Request.Url}");
        };
        page.RequestFailed += (_, e) => _faults.Enqueue($"failed request for {e.Request.Url}");
        page.PageError += (_, e) => _faults.Enqueue($"script error: {e.Message}");
        page.Console += (_, e) =>
        {
            if (e.Message.Type is ConsoleType.Error or ConsoleType.Warning)
                _faults.Enqueue($"console {e.Message.Type}: {e.Message.Text}");
        };
    }

    public IPage Page { get; }

    /// <summary>Fails on any fault recorded so far.</summary>
    public void AssertQuiet() => Assert.True(_faults.IsEmpty, $"{Page.Url}: {string.Join("; ", _faults)}");

    /// <summary>The same of a served page, which may ask its own server.</summary>
    public void AssertQuietBut(string server) =>
        Assert.All(_faults, fault => Assert.StartsWith("request for " + server, fault, StringComparison.Ordinal));

    /// <summary>Fails where the page itself can be scrolled sideways; names the widest element.</summary>
    public async Task AssertNoSidewaysScrollAsync()
    {
        string? culprit = await Page.EvaluateExpressionAsync<string?>(
            """
            (() => {
              const limit = document.documentElement.clientWidth;
              if (document.documentElement.scrollWidth <= limit && innerWidth <= limit + 20) return null;
              let worst = null, right = limit;
              for (const element of document.body.querySelectorAll("*")) {
                const box = element.getBoundingClientRect();
                if (box.right > right) { right = box.right; worst = element; }
              }
              return `${worst?.tagName}.${worst?.className} reaches ${right} of ${limit}`;
            })()
            """);
        Assert.True(culprit is null, $"{Page.Url} scrolls sideways: {culprit}");
    }

    /// <summary>
    /// Fails on any fault that axe-core finds by the rules of WCAG 2, levels A and AA, or its best practices: with folds as they are, and
    /// with all of them open.
    /// </summary>
    public async Task AssertAccessibleAsync()
    {
        await Page.EvaluateExpressionAsync(Axe);
        string[] faults = await Page.EvaluateExpressionAsync<string[]>(
            """
            (async () => {
              const faults = async () => (await axe.run(document, { resultTypes: ["violations"], iframes: false })).violations.flatMap(
                violation => violation.nodes.map(node =>
                  `${violation.id}: ${node.html.slice(0, 160)} ${node.any.map(check => check.message).join(" ")}`));
              const found = await faults(), closed = [...document.querySelectorAll("details:not([open])")];
              if (closed.length === 0) return found;
              const all = open => new Promise(done => {
                for (const fold of closed) fold.open = open;
                setTimeout(() => requestAnimationFrame(done), 50);
              });
              await all(true);
              found.push(...await faults());
              await all(false);
              return found;
            })()
            """);
        Assert.True(faults.Length == 0, $"{Page.Url}: {string.Join("\n", faults)}");
    }

    /// <summary>Prints the page and returns the PDF.</summary>
    public Task<byte[]> PrintAsync(PaperFormat paper) => Page.PdfDataAsync(new PdfOptions { Format = paper, PreferCSSPageSize = false });

    public async ValueTask DisposeAsync() => await Page.DisposeAsync();
}
