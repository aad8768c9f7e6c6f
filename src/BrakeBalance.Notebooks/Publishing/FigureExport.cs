using BrakeBalance.Charts;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Writes a car's figures as files for print and web, with the words and numbers that go with them.</summary>
/// <remarks>
/// Names: <c>car-figure-size-units</c>, then <c>-plain</c> and the theme where they are not the usual ones, then <c>-2x</c>, <c>-3x</c> for
/// larger pictures. Words (<c>.txt</c>, <c>.json</c>) and numbers (<c>.csv</c>) are the same for all sizes and carry no size in their name.
/// </remarks>
internal static class FigureExport
{
    /// <summary>Writes the figures; one that cannot be made stops no other.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="plan">What is written.</param>
    /// <param name="folder">The folder; created where it is missing.</param>
    /// <param name="browser">Makes pictures, sheets and films; null when none is wanted or possible.</param>
    /// <param name="cancellation">Ends the export between two files.</param>
    /// <param name="progress">Told the part done, 0 to 1.</param>
    /// <returns>Names of the files written, in order, and the figures that failed.</returns>
    /// <exception cref="BadInputException">A file cannot be written.</exception>
    public static Task<FigureExportResult> WriteAsync(
        Vehicle vehicle, FigurePlan plan, string folder, Chromium? browser, CancellationToken cancellation = default,
        IProgress<double>? progress = null) =>
        WriteAsync(vehicle, plan, folder, browser, units => FigureCatalogue.For(vehicle, units, plan.Plain), cancellation, progress);

    internal static async Task<FigureExportResult> WriteAsync(
        Vehicle vehicle,
        FigurePlan plan,
        string folder,
        Chromium? browser,
        Func<UnitSystem, IEnumerable<(CatalogueEntry Entry, Func<Figure?> Make)>> figures,
        CancellationToken cancellation,
        IProgress<double>? progress = null)
    {
        List<string> files = [];
        List<FigureFault> failed = [];
        SortedSet<string> still = [];
        var gallery = new FigureGallery(plan.CarName, plan.Style?.Of(plan.Themes[0]) ?? plan.Themes[0]);
        double all = plan.Units.Count * (plan.Figures.Count > 0 ? plan.Figures.Count : FigureCatalogue.All.Count);
        int begun = 0;
        foreach (UnitSystem units in plan.Units)
        {
            foreach ((CatalogueEntry entry, Func<Figure?> make) in figures(units))
            {
                if (plan.Figures.Count > 0 && !plan.Figures.Contains(entry.Name))
                {
                    continue;
                }

                progress?.Report(begun++ / all);
                IReadOnlyList<(string Name, byte[] Data)> made;
                try
                {
                    made = make() is { } figure
                        ? await FilesAsync(vehicle, plan, units, entry, figure, browser, gallery, still, cancellation).ConfigureAwait(false)
                        : [];
                }
                catch (Exception exception) when (exception is not OperationCanceledException)
                {
                    failed.Add(new FigureFault(entry.Name, units, exception));
                    continue;
                }

                foreach ((string name, byte[] data) in made)
                {
                    AtomicFile.Write(Path.Combine(folder, name), data);
                    files.Add(name);
                }
            }
        }

        if (gallery.IsLive)
        {
            foreach ((string name, string text) in new[]
            {
                (PageNames.SharedScript, LiveAssets.Shared), (PageNames.Notices, LiveAssets.Notices),
            })
            {
                AtomicFile.Write(Path.Combine(folder, name), text);
                files.Add(name);
            }
        }

        if (files.Count > 0)
        {
            gallery.Keep(folder);
            AtomicFile.Write(Path.Combine(folder, gallery.Name), AtomicFile.Bytes(gallery.Html()));
        }

        return new FigureExportResult(files, failed, [.. still], gallery.Name);
    }

    private static async Task<IReadOnlyList<(string Name, byte[] Data)>> FilesAsync(
        Vehicle vehicle, FigurePlan plan, UnitSystem units, CatalogueEntry entry, Figure figure, Chromium? browser,
            FigureGallery gallery, ISet<string> still, CancellationToken cancellation)
    {
        List<(string Name, byte[] Data)> files = [];
        List<(string What, string Line)> lines = [];
        Figure shown = FigureText.Credited(
            entry.Marked(plan.Title is { } title ? figure with { Title = title, Finding = figure.Title } : figure, vehicle),
            vehicle, plan.Style);
        Figure drawn = plan.Plain ? shown with { Id = shown.Id + "-plain" } : shown;
        shown = plan.Style?.Of(shown) ?? shown;
        Explorable? moving = plan.Embed || plan.Animation ? MovingFigure.Of(entry, vehicle, units, plan.Plain, plan.Style) : null;
        int before = files.Count;
        string words = $"{plan.CarName}-{entry.Name}-{Display.Name(units)}{(plan.Plain ? "-plain" : "")}";
        Put(words + ".txt", FigureText.Words(shown, vehicle));
        Put(words + ".json", FigureText.Json(shown, vehicle, units, plan.Plain));
        Put(words + ".csv", shown.Table.ToCsv());
        if (plan.Chart)
        {
            Put(words + ".html", ChartPage.Html(shown, plan.Style));
        }

        foreach (Theme theme in plan.Embed ? plan.Themes : [])
        {
            Theme own = plan.Style?.Of(theme) ?? theme;
            string name = words + Suffix(theme), page = plan.Address + Uri.EscapeDataString(name + "-live.html");
            string? image = null;
            if (browser is not null)
            {
                (int width, int height) = FigureSize.Card.Pixels();
                string card = plan.Drawn(FigureText.Drawing(
                    drawn, plan.Style?.Of(FigureSize.Card) ?? FigureSize.Card, Opaque(own), vehicle));
                files.Add((name + "-share.png", await browser.PngAsync(card, width, height, 1).ConfigureAwait(false)));
                image = plan.Address + Uri.EscapeDataString(name + "-share.png");
            }

            Put(name + "-embed.html", EmbedPages.Snippet(drawn, own, vehicle, plan));
            Put(name + "-live.html", EmbedPages.Live(drawn, moving, own, vehicle, plan, (page, image)));
            lines.Add(("Frame of the live page", EmbedPages.Frame(shown, moving?.Controls.Count ?? 0, page)));
        }

        foreach ((FigureSize size, Theme theme) in plan.Sizes.SelectMany(size => plan.Themes.Select(theme => (size, theme))))
        {
            cancellation.ThrowIfCancellationRequested();
            string name = $"{plan.CarName}-{entry.Name}-{size.Name}-{Display.Name(units)}" + (plan.Plain ? "-plain" : "") + Suffix(theme);
            (FigureSize styled, Theme own) = (plan.Style?.Of(size) ?? size, plan.Style?.Of(theme) ?? theme);
            string svg = plan.Drawn(FigureText.Drawing(drawn, styled, own, vehicle));
            Put(name + ".svg", svg);
            if (plan.Animation)
            {
                if (moving is null || MovingDrawing.Of(moving, styled, own, vehicle) is not { } frames)
                {
                    still.Add(entry.Name);
                }
                else
                {
                    Put(name + "-animated.svg", plan.Drawn(AnimatedSvg.Of(frames)));
                    lines.Add(("Animation, still where less motion is wanted", FigureGallery.Picture(shown, plan.Address, name)));
                    if (browser is not null && Film.Executable is not null)
                    {
                        MovingDrawing film = own == Opaque(own) ? frames : MovingDrawing.Of(moving, styled, Opaque(own), vehicle)!;
                        files.Add((name + ".mp4", await FilmAsync(browser, film, size, plan, cancellation).ConfigureAwait(false)));
                    }
                }
            }

            if (browser is null)
            {
                continue;
            }

            (int width, int height) = size.Pixels();
            foreach (int scale in plan.Png ? plan.Scales : [])
            {
                files.Add((scale == 1 ? name + ".png"
                    : Invariant.Text($"{name}-{scale}x.png"), await browser.PngAsync(svg, width, height, scale)
                    .ConfigureAwait(false)));
            }

            if (plan.Pdf)
            {
                (double wide, double high) = size.Inches();
                files.Add((name + ".pdf", await browser.PdfAsync(svg, shown.Title, wide, high).ConfigureAwait(false)));
            }
        }

        gallery.Add(words, plan.Numbered(FigureText.Drawing(drawn, FigureSize.Phone, gallery.Theme, vehicle)), shown, vehicle,
            [.. files.Skip(before).Select(file => file.Name)], lines, plan.Embed && moving is not null);

        return files;

        void Put(string name, string text) => files.Add((name, AtomicFile.Bytes(text)));
    }

    private static string Suffix(Theme theme) => theme == Theme.Light ? "" : "-" + theme.Name;

    // Pictures of shared links and films have a ground of their own.
    private static Theme Opaque(Theme theme) => theme.Background == "none" ? theme with { Background = Theme.Light.Background } : theme;

    private static async Task<byte[]> FilmAsync(
        Chromium browser, MovingDrawing moving, FigureSize size, FigurePlan plan, CancellationToken cancellation)
    {
        (int width, int height) = size.Pixels();
        var pictures = new Dictionary<string, byte[]>();
        foreach (string drawing in moving.Drawings)
        {
            cancellation.ThrowIfCancellationRequested();
            pictures[drawing] = await browser.PngAsync(plan.Drawn(drawing), width, height, 1).ConfigureAwait(false);
        }

        return await Film.Mp4Async(AnimatedSvg.Film(moving).Select(drawing => pictures[drawing]), moving.Milliseconds, cancellation)
            .ConfigureAwait(false);
    }
}

/// <summary>What came of writing a car's figures.</summary>
/// <param name="Files">Names of the files written, in order.</param>
/// <param name="Failed">The figures that could not be made.</param>
/// <param name="Still">Names of the figures that nothing moves, where animations were asked for.</param>
/// <param name="Gallery">Name of the page that shows them all; it is written when any file is.</param>
internal sealed record FigureExportResult(
    IReadOnlyList<string> Files, IReadOnlyList<FigureFault> Failed, IReadOnlyList<string> Still, string Gallery);

/// <summary>A figure that could not be made.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Units">The system of units in which it was asked for.</param>
/// <param name="Fault">What happened.</param>
internal sealed record FigureFault(string Name, UnitSystem Units, Exception Fault);
