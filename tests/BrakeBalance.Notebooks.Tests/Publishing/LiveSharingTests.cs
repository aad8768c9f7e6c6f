using System.Net;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Publishing;
using BrakeBalance.Notebooks.Tests.Browser;
using ZXing;
using ZXing.Common;
using ZXing.QrCode;
using static BrakeBalance.Notebooks.Tests.Publishing.LiveDriving;

namespace BrakeBalance.Notebooks.Tests.Publishing;

/// <summary>A car handed from one device to another, and its entries in the units of the other system.</summary>
public class LiveSharingTests(BrowserFixture browser) : IClassFixture<BrowserFixture>
{
    private const string Bar = "document.querySelector('#live-bar').innerText";
    private const string Knee = "[data-field$=\"rearValves[0].knee\"] ";
    private const string KneeEntry = "document.querySelector('" + Knee + "input')";
    private const string Beside = "document.querySelector('" + Knee + ".bb-beside').innerText";

    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));
    private static readonly Lazy<string> Html = new(() => HtmlOf(Coupe));

    [SkippableTheory]
    [InlineData(1280, false)]
    [InlineData(390, true)]
    public async Task From_a_disk_the_picture_holds_words_that_open_the_same_car_where_they_are_pasted(int width, bool dark)
    {
        await using WatchedPage page = await OpenAsync(width, dark);
        string answer = await TextAsync(page, Bar);
        string words = await ScannedAsync(page);
        Assert.StartsWith("CAR/", words, StringComparison.Ordinal);
        Assert.Equal("rgb(255, 255, 255)", await TextAsync(page, "getComputedStyle(document.querySelector('.bb-scan rect')).fill"));
        Assert.Equal("rgb(0, 0, 0)", await TextAsync(page, "getComputedStyle(document.querySelector('.bb-scan path')).fill"));
        await page.AssertNoSidewaysScrollAsync();
        await page.AssertAccessibleAsync();

        await PasteAsync(page, File.ReadAllText(RepositoryRoot.File("data/vehicles/track-coupe.json")), "track coupe");
        Assert.NotEqual(answer, await TextAsync(page, Bar));
        Assert.NotEqual(words, await ScannedAsync(page));
        await PasteAsync(page, words, "1960s coupe");
        Assert.Equal(answer, await TextAsync(page, Bar));
        Assert.Equal(words, await ScannedAsync(page));

        await PasteAsync(page, words[..40] + words[80..], "holds no car");
        Assert.Equal(answer, await TextAsync(page, Bar));
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task From_a_server_the_picture_holds_a_link_that_opens_the_same_car()
    {
        int port = Random.Shared.Next(20_000, 60_000);
        string address = $"http://127.0.0.1:{port}/";
        using var server = new HttpListener { Prefixes = { address } };
        server.Start();
        Task serving = Task.Run(() => ServeAsync(server));
        string link, answer;
        await using (WatchedPage page = await browser.OpenAsync(address + LivePage.FileName))
        {
            await LiveAsync(page);
            await MoveAsync(page, "26.0");
            await page.Page.WaitForExpressionAsync($"{Bar}.includes('26')", new() { Timeout = 60_000 });
            answer = await TextAsync(page, Bar);
            link = await ScannedAsync(page);
            Assert.StartsWith($"{address}{LivePage.FileName}#CAR/", link, StringComparison.Ordinal);
            await page.Page.EvaluateExpressionAsync("localStorage.clear()");
        }

        await using (WatchedPage page = await browser.OpenAsync(link))
        {
            await LiveAsync(page);
            await page.Page.EvaluateExpressionAsync("localStorage.clear()");
            Assert.Contains("1960s coupe", await TextAsync(page, "document.title"), StringComparison.Ordinal);
            Assert.Equal(answer, await TextAsync(page, Bar));
            Assert.EndsWith(" psi", await TextAsync(page, KneeEntry + ".value"), StringComparison.Ordinal);
        }

        server.Close();
        await serving;
    }

    [SkippableFact]
    public async Task Beside_a_field_stands_its_value_in_the_other_units_while_it_is_typed()
    {
        await using WatchedPage page = await OpenAsync(1280, dark: false);
        await ClickAsync(page, "[data-tab=car]");
        await ClickAsync(page, "[data-part=hydraulics] > summary");
        Assert.Equal("350 psi", await TextAsync(page, KneeEntry + ".value"));
        Assert.Equal("= 24.1 bar", await TextAsync(page, Beside));
        await page.Page.FocusAsync(Knee + "input");
        await page.Page.EvaluateExpressionAsync(KneeEntry + ".select()");
        await page.Page.Keyboard.TypeAsync("300 psi");
        await page.Page.WaitForExpressionAsync(Beside + " === '= 20.7 bar'", new() { Timeout = 60_000 });
        await page.Page.Keyboard.TypeAsync(" .. 320 psi");
        await page.Page.WaitForExpressionAsync(Beside + " === '= 20.7 bar .. 22.1 bar'", new() { Timeout = 60_000 });
        await page.Page.Keyboard.TypeAsync("x");
        await page.Page.WaitForExpressionAsync(Beside + " === ''", new() { Timeout = 60_000 });
        await page.Page.SelectAsync("#live-units", "us");
        await page.Page.WaitForExpressionAsync(
            "document.querySelector('[data-field=wheelbase] .bb-beside').innerText === '= 114 in'", new() { Timeout = 60_000 });
        page.AssertQuiet();
    }

    [SkippableFact]
    public async Task A_slider_speaks_in_the_chosen_units_and_its_file_keeps_its_own()
    {
        const string Row = "document.querySelector('#live-dock .bb-slider')";
        const string Value = Row + ".querySelector('output').innerText";
        const string Track = Row + ".querySelector('input')";
        await using WatchedPage page = await OpenAsync(1280, dark: false);
        Assert.Equal("24.1 bar", await TextAsync(page, Value));
        Assert.Equal("24.1 bar", await TextAsync(page, Track + ".ariaValueText"));
        await page.Page.WaitForExpressionAsync(Row + ".querySelector('small').innerText.includes('bar')", new() { Timeout = 60_000 });
        double[] marks = await MarksAsync(page);
        Assert.NotEmpty(marks);
        await MoveAsync(page, "20.0");
        Assert.Equal("20.0 bar", await TextAsync(page, Track + ".ariaValueText"));

        await page.Page.SelectAsync("#live-units", "us");
        await page.Page.WaitForExpressionAsync(Value + " === '290 psi'", new() { Timeout = 60_000 });
        Assert.Equal("290 psi", await TextAsync(page, Track + ".ariaValueText"));
        await page.Page.WaitForExpressionAsync(Row + ".querySelector('small').innerText.includes('psi')", new() { Timeout = 60_000 });
        double[] there = await MarksAsync(page);
        Assert.Equal(marks.Length, there.Length);
        Assert.All(marks.Zip(there), pair => Assert.Equal(pair.First, pair.Second, 0.6));

        await page.Page.SelectAsync("#live-units", "si");
        await page.Page.WaitForExpressionAsync(Value + ".endsWith('bar')", new() { Timeout = 60_000 });
        await MoveAsync(page, "22.0");
        await page.Page.EvaluateExpressionAsync(Row + ".querySelector('button').click()");
        await page.Page.WaitForExpressionAsync(KneeEntry + ".value === '319.08 psi'", new() { Timeout = 60_000 });
        Assert.Equal("= 22 bar", await TextAsync(page, Beside));
        page.AssertQuiet();
    }

    private static Task<double[]> MarksAsync(WatchedPage page) => page.Page.EvaluateExpressionAsync<double[]>(
        "[...document.querySelectorAll('#live-dock .bb-ticks i')].map(tick => parseFloat(tick.style.left.match(/[\\d.]+/)[0]))");

    private static Task MoveAsync(WatchedPage page, string to) => page.Page.EvaluateFunctionAsync(
        "to => { const track = document.querySelector('#live-dock input'); track.value = to; "
            + "track.dispatchEvent(new Event('input')); }", to);

    private static async Task PasteAsync(WatchedPage page, string text, string said)
    {
        await page.Page.EvaluateFunctionAsync(
            "text => { document.querySelector('#live-text').value = text; document.querySelector('#live-paste').click(); }", text);
        await page.Page.WaitForFunctionAsync(
            "said => document.title.includes(said) || document.querySelector('#live-status').innerText.includes(said)",
            new() { Timeout = 60_000 }, said);
    }

    // What another program reads from the picture as it is shown.
    private static async Task<string> ScannedAsync(WatchedPage page)
    {
        await ClickAsync(page, "[data-tab=car]");
        await page.Page.EvaluateExpressionAsync(
            "(() => { const button = document.querySelector('#live-picture'); if (button.ariaExpanded === 'true') button.click(); "
                + "button.click(); })()");
        await page.Page.WaitForSelectorAsync("#live-scan svg", new() { Timeout = 60_000 });
        string shown = await page.Page.EvaluateExpressionAsync<string>(
            """
            (async () => {
              // As large as a phone shows it, in whole pixels a module: this decoder finds no picture in a photograph of one.
              const drawing = document.querySelector("#live-scan svg"), modules = drawing.viewBox.baseVal.width;
              const side = modules * Math.round(2 * drawing.getBoundingClientRect().width / modules);
              const image = new Image();
              const copy = drawing.cloneNode(true);
              copy.setAttribute("width", side);
              copy.setAttribute("height", side);
              image.src = "data:image/svg+xml;charset=utf-8," + encodeURIComponent(new XMLSerializer().serializeToString(copy));
              await image.decode();
              const canvas = document.createElement("canvas");
              canvas.width = canvas.height = side;
              const context = canvas.getContext("2d");
              context.drawImage(image, 0, 0, side, side);
              const { data } = context.getImageData(0, 0, side, side);
              let text = "";
              for (let i = 0; i < data.length; i += 4) text += String.fromCharCode(data[i]);
              return btoa(text);
            })()
            """);
        byte[] grey = Convert.FromBase64String(shown);
        int side = (int)Math.Sqrt(grey.Length);
        var source = new RGBLuminanceSource(grey, side, side, RGBLuminanceSource.BitmapFormat.Gray8);
        var hints = new Dictionary<DecodeHintType, object> { [DecodeHintType.PURE_BARCODE] = true };
        return new QRCodeReader().decode(new BinaryBitmap(new GlobalHistogramBinarizer(source)), hints)?.Text ?? "not read";
    }

    private static async Task ServeAsync(HttpListener server)
    {
        byte[] page = System.Text.Encoding.UTF8.GetBytes(Html.Value);
        try
        {
            while (true)
            {
                HttpListenerContext asked = await server.GetContextAsync();
                bool known = asked.Request.Url!.AbsolutePath == "/" + LivePage.FileName;
                asked.Response.StatusCode = known ? 200 : 404;
                asked.Response.ContentType = "text/html; charset=utf-8";
                await asked.Response.OutputStream.WriteAsync(known ? page : []);
                asked.Response.Close();
            }
        }
        catch (Exception ended) when (ended is HttpListenerException or ObjectDisposedException or InvalidOperationException)
        {
            // The server was closed.
        }
    }

    private Task<WatchedPage> OpenAsync(int width, bool dark) => OpenLiveAsync(browser, "sharing.html", Html.Value, width, dark: dark);
}
