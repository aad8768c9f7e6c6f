using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Writes a car's figures as files for print and web, with the words and numbers that go with them.</summary>
/// <remarks>
/// Names: <c>car-figure-size-units</c>, then <c>-plain</c> and the theme where they are not the usual ones, then <c>-2x</c>, <c>-3x</c>
/// for larger pictures.
/// Words (<c>.txt</c>, <c>.json</c>) and numbers (<c>.csv</c>) are the same for all sizes and carry no size in their name.
/// </remarks>
internal static class FigureExport
{
    /// <summary>Writes the figures; one that cannot be made stops no other.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="plan">What is written.</param>
    /// <param name="folder">The folder; created where it is missing.</param>
    /// <param name="browser">Makes pictures and sheets; null when neither is wanted or possible.</param>
    /// <param name="cancellation">Ends the export between two files.</param>
    /// <param name="progress">Told the part done, 0 to 1.</param>
    /// <returns>Names of the files written, in order, and the figures that failed.</returns>
    /// <exception cref="BadInputException">A file cannot be written.</exception>
    public static Task<FigureExportResult> WriteAsync(
        Vehicle vehicle, FigurePlan plan, string folder, Chromium? browser, CancellationToken cancellation = default,
        IProgress<double>? progress = null) =>
        WriteAsync(vehicle, plan, folder, browser, units => FigureCatalogue.For(vehicle, units, plan.Plain), cancellation, progress);

    /// <summary>Writes figures made in any way.</summary>
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
                        ? await FilesAsync(vehicle, plan, units, entry, figure, browser, gallery, cancellation).ConfigureAwait(false) : [];
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

        if (files.Count > 0)
        {
            AtomicFile.Write(Path.Combine(folder, gallery.Name), AtomicFile.Bytes(gallery.Html(plan.Units)));
        }

        return new FigureExportResult(files, failed, gallery.Name);
    }

    private static async Task<IReadOnlyList<(string Name, byte[] Data)>> FilesAsync(
        Vehicle vehicle, FigurePlan plan, UnitSystem units, CatalogueEntry entry, Figure figure, Chromium? browser,
            FigureGallery gallery, CancellationToken cancellation)
    {
        List<(string Name, byte[] Data)> files = [];
        Figure shown = FigureText.Credited(
            entry.Marked(plan.Title is { } title ? figure with { Title = title } : figure, vehicle), vehicle, plan.Style);
        shown = plan.Style?.Of(shown) ?? shown;
        int before = files.Count;
        string words = $"{plan.CarName}-{entry.Name}-{Display.Name(units)}{(plan.Plain ? "-plain" : "")}";
        Put(words + ".txt", FigureText.Words(shown, vehicle));
        Put(words + ".json", FigureText.Json(shown, vehicle, units, plan.Plain));
        Put(words + ".csv", shown.Table.ToCsv());
        if (plan.Chart)
        {
            Put(words + ".html", ChartPage.Html(shown));
        }

        foreach ((FigureSize size, Theme theme) in plan.Sizes.SelectMany(size => plan.Themes.Select(theme => (size, theme))))
        {
            cancellation.ThrowIfCancellationRequested();
            string name = $"{plan.CarName}-{entry.Name}-{size.Name}-{Display.Name(units)}"
                + (plan.Plain ? "-plain" : "") + (theme == Theme.Light ? "" : "-" + theme.Name);
            string svg = FigureText.Drawing(shown, plan.Style?.Of(size) ?? size, plan.Style?.Of(theme) ?? theme, vehicle);
            svg = plan.Style?.Numbered(svg) ?? svg;
            svg = plan.Words || plan.Style?.Font is not null ? svg : OutlinedText.Of(svg);
            Put(name + ".svg", svg);
            if (browser is null)
            {
                continue;
            }

            (int width, int height) = size.Pixels();
            foreach (int scale in plan.Png ? plan.Scales : [])
            {
                files.Add((scale == 1 ? name + ".png"
                    : FormattableString.Invariant($"{name}-{scale}x.png"), await browser.PngAsync(svg, width, height, scale)
                    .ConfigureAwait(false)));
            }

            if (plan.Pdf)
            {
                (double wide, double high) = size.Inches();
                files.Add((name + ".pdf", await browser.PdfAsync(svg, shown.Title, wide, high).ConfigureAwait(false)));
            }
        }

        gallery.Add(shown, vehicle, [.. files.Skip(before).Select(file => file.Name)]);

        return files;

        void Put(string name, string text) => files.Add((name, AtomicFile.Bytes(text)));
    }
}

/// <summary>What came of writing a car's figures.</summary>
/// <param name="Files">Names of the files written, in order.</param>
/// <param name="Failed">The figures that could not be made.</param>
/// <param name="Gallery">Name of the page that shows them all; it is written when any file is.</param>
internal sealed record FigureExportResult(IReadOnlyList<string> Files, IReadOnlyList<FigureFault> Failed, string Gallery);

/// <summary>A figure that could not be made.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Units">The system of units in which it was asked for.</param>
/// <param name="Fault">What happened.</param>
internal sealed record FigureFault(string Name, UnitSystem Units, Exception Fault);
