using System.Collections.Concurrent;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>What tests do in the page of one's own car.</summary>
internal static class LiveDriving
{
    // What would be saved, in the order of saving.
    private const string WatchSaving =
        """
        globalThis.saved = [];
        (() => {
          const blobs = new Map(), make = URL.createObjectURL;
          URL.createObjectURL = blob => { const link = make.call(URL, blob); blobs.set(link, blob); return link; };
          HTMLAnchorElement.prototype.click = function() { saved.push({ name: this.download, blob: blobs.get(this.href) }); };
        })()
        """;

    private static readonly ConcurrentDictionary<string, string> Written = new();

    /// <summary>The page of a car, written once.</summary>
    public static string HtmlOf(string car) => Written.GetOrAdd(car, text => LivePage.Render(text).Html);

    /// <summary>Opens a page in which no car is kept, and waits until it answers.</summary>
    public static async Task<WatchedPage> OpenLiveAsync(
        BrowserFixture browser, string name, string html, int width, int height = 900, bool dark = false)
    {
        string file = Path.Combine(browser.Folder, name);
        await File.WriteAllTextAsync(file, html);
        await browser.ForgetCarsAsync();
        WatchedPage page = await browser.OpenAsync(file, width, height, dark);
        await LiveAsync(page);
        return page;
    }

    public static Task LiveAsync(WatchedPage page) =>
        page.Page.WaitForExpressionAsync("document.documentElement.dataset.live !== undefined", new() { Timeout = 120_000 });

    public static Task<string> TextAsync(WatchedPage page, string expression) => page.Page.EvaluateExpressionAsync<string>(expression);

    public static Task ClickAsync(WatchedPage page, string selector) =>
        page.Page.EvaluateFunctionAsync("selector => document.querySelector(selector).click()", selector);

    /// <summary>From here on the page notes what it would save.</summary>
    public static Task WatchSavingAsync(WatchedPage page) => page.Page.EvaluateExpressionAsync(WatchSaving);
}
