using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>Writes a car's figures as files for print and web, with the words and numbers that go with them.</summary>
/// <remarks>
/// Names: <c>car-figure-size-units</c>, then <c>-plain</c> and the theme where they are not the usual ones, then <c>-2x</c>, <c>-3x</c> for larger pictures.
/// Words (<c>.txt</c>, <c>.json</c>) and numbers (<c>.csv</c>) are the same for all sizes and carry no size in their name.
/// </remarks>
public static class FigureExport
{
    /// <summary>Writes the figures.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="plan">What is written.</param>
    /// <param name="folder">The folder; created where it is missing.</param>
    /// <param name="browser">Makes pictures and sheets; null when neither is wanted or possible.</param>
    /// <param name="cancellation">Ends the export between two files.</param>
    /// <returns>Names of the files written, in order.</returns>
    /// <exception cref="IOException">A file cannot be written.</exception>
    public static async Task<IReadOnlyList<string>> WriteAsync(
        Vehicle vehicle, FigurePlan plan, string folder, Chromium? browser, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(plan);
        List<string> files = [];
        foreach (UnitSystem units in plan.Units)
        {
            foreach ((CatalogueEntry entry, Figure figure) in FigureCatalogue.For(vehicle, units, entry => plan.Figures.Count == 0 || plan.Figures.Contains(entry.Name)))
            {
                foreach (bool plain in plan.PlainVariants)
                {
                    Figure shown = (plain ? PlainWording.Of(figure, entry.Plain) : figure) with { Credit = FigureText.Credit(vehicle) };
                    string words = $"{plan.CarName}-{entry.Name}-{Name(units)}{(plain ? "-plain" : "")}";
                    Put(words + ".txt", FigureText.Words(shown, vehicle));
                    Put(words + ".json", FigureText.Json(shown, vehicle, units, plain));
                    Put(words + ".csv", shown.Table.ToCsv());
                    foreach (FigureSize size in plan.Sizes)
                    {
                        foreach (Theme theme in plan.Themes)
                        {
                            cancellation.ThrowIfCancellationRequested();
                            await DrawAsync(shown, size, theme, $"{plan.CarName}-{entry.Name}-{size.Name}-{Name(units)}{(plain ? "-plain" : "")}{(theme == Theme.Light ? "" : "-" + theme.Name)}").ConfigureAwait(false);
                        }
                    }
                }
            }
        }

        return files;

        async Task DrawAsync(Figure figure, FigureSize size, Theme theme, string name)
        {
            string svg = FigureText.WithMetadata(figure.ToSvg(size, theme), figure, vehicle);
            Put(name + ".svg", svg);
            if (browser is null)
            {
                return;
            }

            (int width, int height) = size.Pixels();
            foreach (int scale in plan.Png ? plan.Scales : [])
            {
                PutBytes(scale == 1 ? name + ".png" : FormattableString.Invariant($"{name}-{scale}x.png"), await browser.PngAsync(svg, width, height, scale).ConfigureAwait(false));
            }

            if (plan.Pdf)
            {
                (double wide, double high) = size.Inches();
                PutBytes(name + ".pdf", await browser.PdfAsync(svg, figure.Title, wide, high).ConfigureAwait(false));
            }
        }

        void Put(string name, string text)
        {
            AtomicFile.Write(Path.Combine(folder, name), text);
            files.Add(name);
        }

        void PutBytes(string name, byte[] data)
        {
            AtomicFile.Write(Path.Combine(folder, name), data);
            files.Add(name);
        }
    }

    /// <summary>The short name of a system of units in file names.</summary>
    /// <param name="units">The system of units.</param>
    /// <returns><c>si</c> or <c>us</c>.</returns>
    public static string Name(UnitSystem units) => units == UnitSystem.Us ? "us" : "si";
}
