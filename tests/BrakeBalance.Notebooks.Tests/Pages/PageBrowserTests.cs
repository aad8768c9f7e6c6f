using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Pages;

[Collection(BrowserTests.Name)]
public class PageBrowserTests(BrowserFixture browser)
{
    private static readonly string[] Pages = ["index.html", "01-sample.html", "09-failed.html", "01-chart.html"];

    [SkippableFact]
    public async Task Cells_saved_from_a_page_are_written_as_those_of_the_files()
    {
        string script = BrakeBalance.Charts.FigureAssets.Script;
        int start = script.IndexOf("const csvCell = ", StringComparison.Ordinal),
            end = script.IndexOf("const csvOf", start, StringComparison.Ordinal);
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), Pages[0]));
        foreach (string cell in new[] { "=cmd()", "+1", "-3.5", "-x;y", "@a", "\tz", "a\"b", "1,5", "plain", "", "-", "+.5e3", "-1e",
            "−4" })
        {
            string saved = await page.Page.EvaluateFunctionAsync<string>($"text => {{ {script[start..end]} return csvCell(text); }}", cell);
            Assert.Equal(CsvText.Cell(cell), saved);
        }
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task Every_page_opens_from_disk_quietly_and_fits(int width)
    {
        string folder = WriteSite();
        foreach (string name in Pages)
        {
            await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, name), width);
            await page.AssertNoSidewaysScrollAsync();
            page.AssertQuiet();
        }
    }

    [SkippableTheory]
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(390, false)]
    public async Task Every_page_is_accessible_in_light_and_dark(int width, bool dark)
    {
        string folder = WriteSite();
        foreach (string name in Pages)
        {
            await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, name), width, dark: dark);
            await page.Page.EvaluateExpressionAsync("document.querySelectorAll('details').forEach(details => { details.open = true; })");
            await page.AssertAccessibleAsync();
        }
    }

    [SkippableTheory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_chart_is_drawn_from_the_script_beside_the_page_or_inside_it(bool singleFile)
    {
        string folder = WriteSite(singleFile);

        await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, "01-chart.html"));
        await page.Page.WaitForSelectorAsync("#valve-live svg.main-svg", new() { Timeout = 20_000 });
        page.AssertQuiet();
    }

    [SkippableTheory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_slider_moved_by_keyboard_changes_the_number_and_the_chart(int width)
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "01-chart.html"), width);
        await page.Page.WaitForSelectorAsync("#valve-live svg.main-svg", new() { Timeout = 20_000 });
        const string number = "document.querySelector('.bb-readout dd').textContent";
        string before = await page.Page.EvaluateExpressionAsync<string>(number);

        await page.Page.FocusAsync("#knee-knee");
        await page.Page.Keyboard.PressAsync("ArrowRight");
        await page.Page.WaitForExpressionAsync($"{number} !== '{before}'");

        Assert.Equal("45\u00a0bar", before);
        Assert.Equal("52\u00a0bar", await page.Page.EvaluateExpressionAsync<string>(number));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task On_paper_and_without_scripts_the_static_drawing_stands_for_the_chart()
    {
        const string shown = "[getComputedStyle(document.querySelector('.bb-live')).display, "
            + "getComputedStyle(document.querySelector('.bb-static')).display].join()";
        string file = Path.Combine(WriteSite(), "01-chart.html");
        await using WatchedPage page = await browser.OpenAsync(file);
        await page.Page.WaitForSelectorAsync("#valve-live svg.main-svg", new() { Timeout = 20_000 });

        string screen = await page.Page.EvaluateExpressionAsync<string>(shown);
        await page.Page.EmulateMediaTypeAsync(MediaType.Print);
        string paper = await page.Page.EvaluateExpressionAsync<string>(shown);
        await using WatchedPage still = await browser.OpenAsync(file, script: false);
        string html = await still.Page.GetContentAsync();

        Assert.Equal("block,none", screen);
        Assert.Equal("none,block", paper);
        Assert.DoesNotContain("bb-on\"", html, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task The_watch_sees_a_request_that_would_leave_the_page()
    {
        string file = Path.Combine(browser.Folder, "leaky.html");
        await File.WriteAllTextAsync(file, "<!DOCTYPE html><title>x</title><img src=\"http://127.0.0.1:9/x.png\">");

        await using WatchedPage page = await browser.OpenAsync(file);

        Assert.Throws<Xunit.Sdk.TrueException>(page.AssertQuiet);
    }

    [SkippableFact]
    public async Task The_accessibility_check_sees_a_picture_without_text()
    {
        string file = Path.Combine(browser.Folder, "mute.html");
        await File.WriteAllTextAsync(file,
            "<!DOCTYPE html><html lang=\"en\"><title>x</title>"
                + "<main><h1>x</h1><img src=\"data:image/gif;base64,R0lGODlhAQABAAAAACw=\"></main></html>");

        await using WatchedPage page = await browser.OpenAsync(file);

        var fault = await Assert.ThrowsAsync<Xunit.Sdk.TrueException>(page.AssertAccessibleAsync);
        Assert.Contains("image-alt", fault.Message, StringComparison.Ordinal);
    }

    [SkippableFact]
    public async Task The_policy_of_the_page_stops_a_request_that_a_script_tries()
    {
        string folder = WriteSite();
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(folder, "01-sample.html"));

        bool refused = await page.Page.EvaluateExpressionAsync<bool>("fetch('http://127.0.0.1:9/x').then(() => false, () => true)");
        string violated = await page.Page.EvaluateExpressionAsync<string>(
            "new Promise(done => { addEventListener('securitypolicyviolation', e => done(e.effectiveDirective)); "
                + "new Image().src = 'http://127.0.0.1:9/y.png'; setTimeout(() => done('none'), 3000); })");

        Assert.True(refused);
        Assert.Equal("img-src", violated);
    }

    [SkippableFact]
    public async Task The_theme_follows_the_system_and_the_button_changes_it_and_is_remembered()
    {
        string file = Path.Combine(WriteSite(), "01-sample.html");
        await using WatchedPage page = await browser.OpenAsync(file, dark: true);
        const string ground = "getComputedStyle(document.documentElement).backgroundColor";
        string dark = await page.Page.EvaluateExpressionAsync<string>(ground);

        await page.Page.ClickAsync("#bb-theme");
        string light = await page.Page.EvaluateExpressionAsync<string>(ground);
        await page.Page.ReloadAsync();
        string after = await page.Page.EvaluateExpressionAsync<string>(ground);
        await page.Page.EvaluateExpressionAsync("localStorage.clear()");

        Assert.NotEqual(dark, light);
        Assert.Equal(light, after);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task One_button_opens_all_code()
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "01-sample.html"));
        const string open = "document.querySelectorAll('details.bb-code[open]').length";
        int before = await page.Page.EvaluateExpressionAsync<int>(open);

        await page.Page.ClickAsync("#bb-code-all");

        Assert.Equal(0, before);
        Assert.Equal(3, await page.Page.EvaluateExpressionAsync<int>(open));
    }

    [SkippableFact]
    public async Task Without_scripts_the_text_is_there_and_nothing_is_asked_for()
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "01-sample.html"), script: false);

        string html = await page.Page.GetContentAsync();
        Assert.Contains("Which axle locks first?", html, StringComparison.Ordinal);
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Formulas_are_set_as_mathematics_and_not_as_flat_text()
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "01-sample.html"));

        // A fraction that is set is higher than the line it stands in; one that is not has the height of its text.
        double ratio = await page.Page.EvaluateExpressionAsync<double>(
            "(() => { const f = document.querySelector('math[display] mfrac'); "
                + "return f.getBoundingClientRect().height / f.firstElementChild.getBoundingClientRect().height; })()");

        Assert.True(ratio > 1.8, $"height of a fraction over its numerator: {ratio}");
    }

    [SkippableFact]
    public async Task Pages_print_on_A4_and_Letter()
    {
        foreach (PaperFormat paper in new[] { PaperFormat.A4, PaperFormat.Letter })
        {
            await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "01-sample.html"));
            byte[] pdf = await page.PrintAsync(paper);
            Assert.Equal("%PDF"u8.ToArray(), pdf[..4]);
            Assert.True(pdf.Length > 10_000);
            page.AssertQuiet();
        }
    }

    private string WriteSite(bool singleFile = false)
    {
        string folder = Path.Combine(browser.Folder, singleFile ? "single" : "shared");
        if (!Directory.Exists(folder))
        {
            Site.Write(
                [new SiteEntry(SampleNotebook.Create()), new SiteEntry(SampleNotebook.Failed()), new SiteEntry(SampleNotebook.WithChart())],
                folder, new SiteOptions { SingleFile = singleFile, Facts = [new("Vehicle", "coupe-1966.json"), new("Units", "si")] });
        }

        return folder;
    }
}
