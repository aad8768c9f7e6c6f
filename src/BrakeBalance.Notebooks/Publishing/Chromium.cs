using System.Diagnostics;
using PuppeteerSharp;
using PuppeteerSharp.Media;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The system's Chromium without a window, which turns drawings into pictures and sheets of paper.</summary>
internal sealed class Chromium(IBrowser browser, string profile, Process? guard) : IAsyncDisposable
{
    /// <summary>The environment variable that can name another browser of the Chromium family.</summary>
    public const string Variable = "BRAKE_BALANCE_CHROMIUM";

    private static readonly string[] Candidates = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    /// <summary>
    /// Waits for a line or for the end of its input. The end means that this program is gone, however it went; then the browser,
    /// whose process number is in the lock of its profile, and the profile go too.
    /// </summary>
    private const string Guard =
        """
        trap '' INT TERM HUP
        read -r _ && exit
        for _ in 1 2 3 4 5 6 7 8 9 10; do
            lock=$(readlink "$1/SingletonLock") && kill -KILL "${lock##*-}" && break
            sleep 1
        done
        sleep 1
        rm -rf "$1"
        """;

    private readonly IBrowser _browser = browser;
    private readonly string _profile = profile;
    private readonly Process? _guard = guard;

    /// <summary>Path of the browser; null where there is none.</summary>
    public static string? Executable =>
        Environment.GetEnvironmentVariable(Variable) is { Length: > 0 } chosen
            ? File.Exists(chosen) ? chosen : null
            : Candidates.FirstOrDefault(File.Exists);

    /// <summary>What to tell a user whose system has no browser.</summary>
    public static string Missing =>
        $"PNG and PDF need Chromium, which was not found (looked for {string.Join(", ", Candidates)}). "
            + $"Install it, or name it in the environment variable {Variable}.";

    /// <summary>Starts the browser.</summary>
    /// <exception cref="IOException">There is no browser, or it does not start; the message says what to do.</exception>
    public static async Task<Chromium> StartAsync()
    {
        string executable = Executable ?? throw new IOException(Missing);
        string profile = Directory.CreateTempSubdirectory("brake-balance-browser-").FullName;
        Process? guard = StartGuard(profile);
        try
        {
            IBrowser browser = await Puppeteer.LaunchAsync(new LaunchOptions
            {
                ExecutablePath = executable,
                Headless = true,
                UserDataDir = profile,
                Timeout = 120_000,
                Args =
                [
                    "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                    "--no-first-run", "--disable-dev-shm-usage", "--force-color-profile=srgb", "--proxy-server=127.0.0.1:9",
                ],
            }).ConfigureAwait(false);
            return new Chromium(browser, profile, guard);
        }
        catch (PuppeteerException exception)
        {
            Dismiss(guard);
            Remove(profile);
            throw new IOException($"{executable} does not start as a browser of the Chromium family.", exception);
        }
    }

    /// <summary>Starts the browser where there is one.</summary>
    /// <param name="missing">Told the reason when there is none or it does not start.</param>
    /// <returns>The browser, or null.</returns>
    public static async Task<Chromium?> TryStartAsync(Action<string> missing)
    {
        try
        {
            return await StartAsync().ConfigureAwait(false);
        }
        catch (IOException exception)
        {
            missing(exception.Message);
            return null;
        }
    }

    /// <summary>A picture of a drawing.</summary>
    /// <param name="svg">The drawing.</param>
    /// <param name="width">Nominal width in pixels.</param>
    /// <param name="height">Nominal height in pixels.</param>
    /// <param name="scale">Pixels of the picture per nominal pixel.</param>
    /// <returns>
    /// PNG data of exactly <paramref name="width"/> × <paramref name="height"/> × <paramref name="scale"/>² pixels; transparent where
    /// nothing is drawn.
    /// </returns>
    public async Task<byte[]> PngAsync(string svg, int width, int height, int scale)
    {
        await using IPage page = await _browser.NewPageAsync().ConfigureAwait(false);
        await page.SetViewportAsync(new ViewPortOptions { Width = width, Height = height, DeviceScaleFactor = scale })
            .ConfigureAwait(false);
        await page.SetContentAsync(Wrapped(svg, Invariant.Text($"{width}px"), Invariant.Text($"{height}px"))).ConfigureAwait(false);
        return await page.ScreenshotDataAsync(new ScreenshotOptions { Type = ScreenshotType.Png, OmitBackground = true })
            .ConfigureAwait(false);
    }

    /// <summary>A drawing on a page of its own size.</summary>
    public async Task<byte[]> PdfAsync(string svg, string title, double width, double height)
    {
        await using IPage page = await _browser.NewPageAsync().ConfigureAwait(false);
        string w = Invariant.Text($"{width:0.####}in"), h = Invariant.Text($"{height:0.####}in");
        await page.SetContentAsync(Wrapped(svg, w, h, title)).ConfigureAwait(false);
        return await page.PdfDataAsync(new PdfOptions { Width = w, Height = h, PrintBackground = true, PageRanges = "1" })
            .ConfigureAwait(false);
    }

    /// <summary>A page printed as its own style sheet says.</summary>
    /// <param name="html">The page; it must need nothing from elsewhere.</param>
    /// <param name="letter">Letter in place of A4, where the style sheet names no size.</param>
    public async Task<byte[]> PrintAsync(string html, bool letter = false)
    {
        await using IPage page = await _browser.NewPageAsync().ConfigureAwait(false);
        await page.SetContentAsync(html).ConfigureAwait(false);
        return await page.PdfDataAsync(new PdfOptions
        {
            Format = letter ? PaperFormat.Letter : PaperFormat.A4,
            PreferCSSPageSize = true,
            PrintBackground = true,
        }).ConfigureAwait(false);
    }

    public async ValueTask DisposeAsync()
    {
        await _browser.DisposeAsync().ConfigureAwait(false);
        Dismiss(_guard);
        Remove(_profile);
    }

    /// <summary>
    /// Starts the guard where there is a POSIX shell; elsewhere the browser ends only when this program ends in good order.
    /// </summary>
    private static Process? StartGuard(string profile) => OperatingSystem.IsWindows()
        ? null
        : Process.Start(new ProcessStartInfo("/bin/sh", ["-c", Guard, "sh", profile])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true
        });

    private static void Dismiss(Process? guard)
    {
        try
        {
            guard?.StandardInput.WriteLine();
            guard?.StandardInput.Close();
        }
        catch (IOException)
        {
            // It has ended already.
        }

        guard?.Dispose();
    }

    private static string Wrapped(string svg, string width, string height, string title = "Figure") =>
        $"<!DOCTYPE html><html lang=\"en\"><head><meta charset=\"utf-8\"><title>{HtmlText.Escape(title)}</title>"
        + $"<style>html,body{{margin:0;background:transparent;overflow:hidden}}svg{{display:block;width:{width};height:{height}}}</style>"
        + $"</head><body>{svg}</body></html>";

    private static void Remove(string folder)
    {
        try
        {
            Directory.Delete(folder, recursive: true);
        }
        catch (IOException)
        {
            // The browser may still be writing its last files; the system's own clearing of temporary files takes them.
        }
    }
}
