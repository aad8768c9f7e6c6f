using PuppeteerSharp;

namespace BrakeBalance.Notebooks.Tests.Browser;

/// <summary>
/// One headless Chromium, with nothing kept from others, for the tests of a class. Where it is missing the tests are skipped with a
/// reason, except with CI=true, where they fail.
/// </summary>
public sealed class BrowserFixture : IAsyncLifetime
{
    private static readonly string[] Candidates = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"];

    private readonly string _profile = Path.Combine(Path.GetTempPath(), $"bb-browser-{Guid.NewGuid():N}");
    private IBrowser? _browser;

    private static string? Executable =>
        Environment.GetEnvironmentVariable("BRAKE_BALANCE_CHROMIUM") is { Length: > 0 } chosen
            ? chosen : Candidates.FirstOrDefault(File.Exists);

    private static bool Required => string.Equals(Environment.GetEnvironmentVariable("CI"), "true", StringComparison.OrdinalIgnoreCase);

    /// <summary>A folder that is removed with the browser.</summary>
    public string Folder => Path.Combine(_profile, "files");

    public async Task InitializeAsync()
    {
        Directory.CreateDirectory(Folder);
        if (Executable is not { } executable)
            return;
        _browser = await Puppeteer.LaunchAsync(new LaunchOptions
        {
            ExecutablePath = executable,
            Headless = true,
            UserDataDir = Path.Combine(_profile, "profile"),
            Args =
            [
                "--no-sandbox", "--disable-gpu", "--disable-background-networking", "--disable-component-update", "--disable-sync",
                "--no-first-run", "--disable-dev-shm-usage", "--force-color-profile=srgb",
            ],
        });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        try
        {
            Directory.Delete(_profile, recursive: true);
        }
        catch (IOException)
        {
            // Chromium may still be writing its last files; the system's own clearing of temporary files takes them.
        }
    }

    /// <summary>
    /// Opens a file, or an address of this machine, and watches it: see <see cref="WatchedPage"/>. From far the reader comes near no
    /// control, so that the calculation never starts: for tests of what was written into the page.
    /// </summary>
    public async Task<WatchedPage> OpenAsync(
        string file, int width = 1280, int height = 900, bool dark = false, bool script = true, bool reducedMotion = false,
        bool far = false)
    {
        IPage page = await NewPageAsync();
        await page.SetViewportAsync(
            new ViewPortOptions { Width = width, Height = height, HasTouch = width < 600, IsMobile = width < 600, DeviceScaleFactor = 1 });
        await page.EmulateMediaFeaturesAsync(
        [
            new MediaFeatureValue { MediaFeature = MediaFeature.PrefersColorScheme, Value = dark ? "dark" : "light" },
            new MediaFeatureValue { MediaFeature = MediaFeature.PrefersReducedMotion, Value = reducedMotion ? "reduce" : "no-preference" },
        ]);
        await page.SetJavaScriptEnabledAsync(script);
        if (far)
        {
            await page.EvaluateExpressionOnNewDocumentAsync(
                "globalThis.IntersectionObserver = class { observe() {} unobserve() {} disconnect() {} };");
        }

        var watched = new WatchedPage(page);
        await page.GoToAsync(file.StartsWith("http:", StringComparison.Ordinal) ? file : new Uri(Path.GetFullPath(file)).AbsoluteUri,
            new NavigationOptions { WaitUntil = [WaitUntilNavigation.Load], Timeout = 60_000 });
        return watched;
    }

    /// <summary>Forgets the cars that pages have kept; a page reads them as soon as it opens.</summary>
    public async Task ForgetCarsAsync()
    {
        string blank = Path.Combine(Folder, "blank.html");
        await File.WriteAllTextAsync(blank, "<!DOCTYPE html><title>blank</title>");
        await using WatchedPage page = await OpenAsync(blank);
        await page.Page.EvaluateExpressionAsync("localStorage.removeItem('bb-cars')");
    }

    private async Task<IPage> NewPageAsync()
    {
        if (_browser is null && Required)
            Assert.Fail("The browser tests need Chromium and CI=true requires them. "
                + $"Looked for {string.Join(", ", Candidates)}; BRAKE_BALANCE_CHROMIUM can name another.");
        Skip.If(_browser is null,
            $"Chromium is not installed (looked for {string.Join(", ", Candidates)}; BRAKE_BALANCE_CHROMIUM can name another).");
        return await _browser!.NewPageAsync();
    }
}
