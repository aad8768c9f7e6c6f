using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Notebooks.Tests.Browser;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Tests.Pages;

public class PageBrowserTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private static readonly string[] Pages = ["index.html", "01-sample.html", "09-failed.html", "01-chart.html"];

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
    [InlineData(1280, false)]
    [InlineData(1280, true)]
    [InlineData(390, false)]
    public async Task A_slider_moved_by_keyboard_changes_answer_and_drawing(int width, bool singleFile)
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(singleFile), "01-chart.html"), width);
        const string shown = "document.querySelector('.bb-shown').innerHTML";
        string before = await page.Page.EvaluateExpressionAsync<string>(shown);
        string drawn = await page.Page.EvaluateExpressionAsync<string>(
            "document.querySelector('.bb-static:not([hidden]) svg, .bb-static svg').outerHTML");

        await page.Page.FocusAsync(".bb-controls input[type=range]");
        await page.Page.Keyboard.PressAsync("Home");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-explorable').dataset.moved > 0", new() { Timeout = 60_000 });

        Assert.NotEqual(before, await page.Page.EvaluateExpressionAsync<string>(shown));
        Assert.NotEqual(drawn, await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-static svg').outerHTML"));
        Assert.Equal("range", await page.Page.EvaluateExpressionAsync<string>("document.activeElement.type"));
        Assert.Contains(
            await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-controls output').textContent"),
            await page.Page.EvaluateExpressionAsync<string>("document.querySelector('.bb-state').textContent"), StringComparison.Ordinal);
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task Without_the_file_beside_it_a_page_says_so_and_keeps_its_drawing()
    {
        string alone = Path.Combine(browser.Folder, "alone.html");
        File.Copy(Path.Combine(WriteSite(), "01-chart.html"), alone, overwrite: true);
        await using WatchedPage page = await browser.OpenAsync(alone);
        await page.Page.FocusAsync(".bb-controls input[type=range]");
        await page.Page.Keyboard.PressAsync("Home");
        await page.Page.WaitForExpressionAsync(
            "[...document.querySelectorAll('.bb-explorable > .bb-verdict')].some(words => words.textContent.includes('calculation.js'))",
            new() { Timeout = 30_000 });
        Assert.True(await page.Page.EvaluateExpressionAsync<bool>("document.querySelector('.bb-static svg') !== null"));
    }

    [SkippableFact]
    public async Task A_car_kept_on_the_device_is_offered_and_a_fault_of_it_is_said()
    {
        await using WatchedPage page = await browser.OpenAsync(Path.Combine(WriteSite(), "02-own.html"));
        string car = File.ReadAllText(RepositoryRoot.File("data/vehicles/track-coupe.json"));
        await page.Page.EvaluateFunctionAsync(
            "text => localStorage.setItem('bb-cars', JSON.stringify({ units: 'si', at: 0, cars: [{ name: 'A', text, logs: {} }] }))", car);
        await page.Page.ReloadAsync();
        await page.Page.EvaluateExpressionAsync("document.querySelector('.bb-own').click()");
        await page.Page.WaitForExpressionAsync("document.querySelector('.bb-shown').innerText.includes('track coupe')",
            new() { Timeout = 60_000 });
        await page.Page.EvaluateExpressionAsync("document.querySelector('.bb-own').click()");
        await page.Page.WaitForExpressionAsync("!document.querySelector('.bb-shown').innerText.includes('track coupe')",
            new() { Timeout = 60_000 });
        await page.Page.EvaluateExpressionAsync("localStorage.clear()");
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_screen_and_paper_show_one_drawing_each_and_it_follows_a_dark_page()
    {
        const string shown =
            "[...document.querySelector('.bb-figure').querySelectorAll('.bb-static')].map(one => one.offsetHeight > 100).join()";
        const string ground = "getComputedStyle(document.querySelector('.bb-static svg > rect')).fill";
        string file = Path.Combine(WriteSite(), "01-chart.html");
        await using WatchedPage desk = await browser.OpenAsync(file, script: false);
        Assert.Equal("true,false", await desk.Page.EvaluateExpressionAsync<string>(shown));
        Assert.Equal("rgb(255, 255, 255)", await desk.Page.EvaluateExpressionAsync<string>(ground));
        await using WatchedPage phone = await browser.OpenAsync(file, 390, script: false, dark: true);
        Assert.Equal("false,true", await phone.Page.EvaluateExpressionAsync<string>(shown));
        Assert.Equal("rgb(21, 25, 29)", await phone.Page.EvaluateExpressionAsync<string>(ground));
        await phone.Page.EmulateMediaTypeAsync(MediaType.Print);
        Assert.Equal("true,false", await phone.Page.EvaluateExpressionAsync<string>(shown));
        Assert.Equal("rgb(255, 255, 255)", await phone.Page.EvaluateExpressionAsync<string>(ground));
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
                [new SiteEntry(SampleNotebook.Create()), new SiteEntry(SampleNotebook.Failed()), new SiteEntry(SampleNotebook.WithChart()),
                    new SiteEntry(SampleNotebook.WithCar())],
                folder, new SiteOptions { SingleFile = singleFile, Facts = [new("Vehicle", "coupe-1966.json"), new("Units", "si")] });
        }

        return folder;
    }
}
