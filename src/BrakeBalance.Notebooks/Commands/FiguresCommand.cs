using System.CommandLine;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Publishing;

namespace BrakeBalance.Notebooks.Commands;

/// <summary><c>figures FILE</c>: a car's figures as files for print and web, with captions, descriptions and numbers.</summary>
internal static class FiguresCommand
{
    private const string All = "all";
    private const int MostUnasked = 200;
    private static readonly string[] Formats = ["svg", "png", "pdf", "html", "embed", "animation"];

    public static Command Create(Terminal terminal)
    {
        Argument<string?> file = Options.File();
        var list = Options.Of<bool>("--list", "Lists figures, sizes and themes, and does nothing else");
        var figures = Options.Of<string[]>("--figure", "One figure only, by its name; may be given several times", "NAME", []);
        var sizes = Options.Of<string[]>("--size", "A size by its name, one of your own (88mm, 88x60mm, 640px, 1200x630px), or all; "
            + "may be given several times", "SIZE", [FigureSize.Column.Name]);
        var formats = Options.Of<string[]>("--format",
            "svg, png, pdf, html (a chart whose points answer to the pointer, a page of 3.7 MB), embed (a piece to paste into a page, and "
                + "a page with controls to frame) or animation (a moving SVG, and MP4 where ffmpeg is installed); may be given several "
                + "times. SVG is always written", "FORMAT", ["svg"]);
        var themes = Options.Of<string[]>("--theme", "white, transparent, dark or print; may be given several times", "NAME", ["white"]);
        var scales = Options.Of<string[]>("--scale", "Pixels of a PNG per nominal pixel: 1, 2 or 3; may be given several times", "NUMBER",
            ["1"]);
        var units = Options.Of<string>("--units", "Units of what is shown: si (bar, kN, mm), us (psi, lbf, in) or both",
            "si|us|both", "si");
        units.AcceptOnlyFromAmong(StringComparer.OrdinalIgnoreCase, "si", "us", "both");
        var words = Options.Of<bool>("--text",
            "Words stay words that can be edited, in the fonts of whoever looks; as outlines they look the same everywhere");
        var plain = Options.Of<bool>("--plain", "Few marks and plain words, for readers who do not know the trade");
        var style = Options.Of<string?>("--style",
            "Your house style, a JSON file: font, title, credit, number format, and colours as #rrggbb for background, ink, "
                + "front, rear, ideal, other, guide; colours that cannot be told apart are refused", "FILE");
        var address = Options.Of<string?>("--address",
            "The address of the folder that embed and animation will be published in; without it addresses are relative", "URL");
        var title = Options.Of<string?>("--title", "A title of your own, with one --figure", "TEXT");
        var many = Options.Of<bool>("--many", Invariant.Text($"Writes more than {MostUnasked} drawings"));
        Option<string[]> set = VehicleOptions.Set();
        Option<string> output = Options.Folder("out/figures");
        var command = new Command("figures", "Write a car's figures as SVG, PNG and PDF with captions, descriptions, credit and numbers.")
        {
            file, list, figures, sizes, formats, themes, scales, units, plain, words, style, title, address, many, set, output,
        };
        command.SetAction(async (parsed, cancellation) =>
        {
            if (parsed.GetValue(list))
            {
                List(terminal);
                return ExitCode.Success;
            }

            List<string> problems = [];
            string? path = parsed.GetValue(file);
            VehicleReading? reading = VehicleOptions.ReadNamed(terminal, path, parsed.GetRequiredValue(set), problems);

            string[] wanted = Known("--figure", parsed.GetRequiredValue(figures), [.. FigureCatalogue.All.Select(entry => entry.Name)],
                problems);
            string[] asked = parsed.GetRequiredValue(sizes);
            FigureSize[] drawn = Sizes(asked, problems);
            string[] themeNames = Known("--theme", parsed.GetRequiredValue(themes), [.. Theme.Published.Select(ThemeName)], problems);
            string[] kinds = Known("--format", parsed.GetRequiredValue(formats), Formats, problems);
            string[] factors = Known("--scale", parsed.GetRequiredValue(scales), ["1", "2", "3"], problems);
            Theme[] colours = [.. Theme.Published.Where(theme => themeNames.Contains(ThemeName(theme)))];
            HouseStyle? house = parsed.GetValue(style) is { } named ? Style(named, colours, problems) : null;
            if (parsed.GetValue(title) is not null && wanted.Length != 1)
            {
                problems.Add("--title: a title is for one figure. Accepted: --figure NAME once beside it.");
            }

            string shown = parsed.GetRequiredValue(units).ToLowerInvariant();
            string? at = parsed.GetValue(address);
            if (at is not null && !(Uri.TryCreate(at, UriKind.Absolute, out Uri? parsedAddress)
                && parsedAddress is { Scheme: "http" or "https", Query: "", Fragment: "" }))
            {
                problems.Add($"--address {at}: this is no address of a folder. Accepted: such as https://example.org/figures/.");
            }

            var plan = new FigurePlan
            {
                CarName = Path.GetFileNameWithoutExtension(path ?? ""),
                Figures = wanted,
                Sizes = drawn,
                Units = shown == "both" ? [UnitSystem.Si, UnitSystem.Us] : [Display.Parse(shown) ?? UnitSystem.Si],
                Themes = colours,
                Style = house,
                Title = parsed.GetValue(title),
                Plain = parsed.GetValue(plain),
                Words = parsed.GetValue(words),
                Png = kinds.Contains("png"),
                Pdf = kinds.Contains("pdf"),
                Chart = kinds.Contains("html"),
                Embed = kinds.Contains("embed"),
                Animation = kinds.Contains("animation"),
                Address = at is null ? "" : at.TrimEnd('/') + "/",
                Scales = [.. factors.Select(factor => factor[0] - '0').Distinct().Order()],
            };
            int drawings = plan.Drawings(wanted.Length > 0 ? wanted.Length : FigureCatalogue.All.Count);
            if (drawings > MostUnasked && !parsed.GetValue(many))
            {
                problems.Add(Invariant.Text(
                    $"This would write {drawings} drawings. Accepted: {MostUnasked}; fewer sizes, themes or figures, or --many."));
            }

            string folder = new OutputFiles(problems, force: false).Folder(parsed.GetRequiredValue(output));

            BadInputException.ThrowIfAny(problems, reading);
            return await WriteAsync(terminal, reading.Vehicle, plan, folder, parsed, cancellation).ConfigureAwait(false);
        });
        return command;
    }

    private static async Task<int> WriteAsync(Terminal terminal, Vehicle vehicle, FigurePlan plan, string folder, ParseResult parsed,
        CancellationToken cancellation)
    {
        string? missing = null;
        FigureExportResult result;
        await using (Chromium? browser = plan.NeedsBrowser
            ? await Chromium.TryStartAsync(reason => missing = reason).ConfigureAwait(false) : null)
        {
            result = await terminal.Work.DoAsync(
                "drawing figures", progress => FigureExport.WriteAsync(vehicle, plan, folder, browser, cancellation, progress))
                .ConfigureAwait(false);
        }

        List<string> left = [.. result.Failed.Select(figure =>
            $"{figure.Name} ({Display.Name(figure.Units)}): not made; {PartFault.Words(figure.Fault, parsed)}")];
        left.AddRange(plan.Figures
            .Where(name => result.Failed.All(figure => figure.Name != name)
                && !result.Files.Contains(
                    $"{plan.CarName}-{name}-{Display.Name(plan.Units[0])}{(plan.Plain ? "-plain" : "")}.csv"))
            .Select(name => $"{name}: not made; "
                + $"it needs {FigureCatalogue.All.First(entry => entry.Name == name).Needs}, which this car has not."));
        if (missing is not null)
        {
            left.Add(missing + (plan.Embed ? " The pictures of shared links were not made." : "")
                + (plan.Animation ? " MP4 was not made." : "") + " SVG, words and numbers were written.");
        }
        else if (plan.Animation && Film.Executable is null)
        {
            left.Add(Film.Missing + " MP4 was not made; the moving SVG was.");
        }

        left.ForEach(terminal.Error.WriteLine);
        foreach (CatalogueEntry entry in plan.Figures.Count > 0 ? [] : FigureCatalogue.All.Where(entry => entry.IsMeasured
            && result.Failed.All(figure => figure.Name != entry.Name)
            && !result.Files.Any(file => file.StartsWith($"{plan.CarName}-{entry.Name}-", StringComparison.Ordinal))))
        {
            terminal.Output.WriteLine($"{entry.Name}: left out; it needs {entry.Needs}.");
        }

        if (result.Still.Count > 0)
        {
            terminal.Output.WriteLine($"No animation, for no slider moves them: {string.Join(", ", result.Still)}.");
        }

        if (result.Files.Count > 0)
        {
            terminal.Output.WriteLine($"{Path.Combine(folder, result.Gallery)}: all of them on one page.");
        }

        int drawings = result.Files.Count(name => name.EndsWith(".svg", StringComparison.Ordinal));
        terminal.Output.WriteLine(Invariant.Text(
            $"{folder}: {drawings} drawing{(drawings == 1 ? "" : "s")}, {result.Files.Count} files. {FigureText.Car(vehicle)}"));
        return left.Count > 0 ? ExitCode.Failed : ExitCode.Success;
    }

    private static FigureSize[] Sizes(string[] asked, List<string> problems)
    {
        if (asked.Contains(All))
        {
            return [.. FigureSize.Published];
        }

        FigureSize? Named(string name) => FigureSize.Published.FirstOrDefault(size => size.Name == name) ?? FigureSize.Own(name);
        problems.AddRange(asked.Distinct().Where(name => Named(name) is null).Select(name =>
            $"--size {name}: there is no such thing. Accepted: "
                + $"{string.Join(", ", FigureSize.Published.Select(one => one.Name))}, {All}, or a width of 60mm to 420mm "
                + "or 320px to 8000px, with a height after an x that is 0.4 to 2 times the width, such as 88x60mm."));
        return [.. asked.Distinct().Select(Named).OfType<FigureSize>()];
    }

    private static HouseStyle? Style(string path, IReadOnlyList<Theme> themes, List<string> problems)
    {
        (string? text, Problem? none) = DocumentFile.Load(path, "a house style");
        (HouseStyle? style, IReadOnlyList<Problem> found) = text is null ? (null, [none!]) : HouseStyle.Read(text, themes);
        problems.AddRange(found.Select(problem => $"{path}: {problem}"));
        return style;
    }

    private static string[] Known(string option, string[] given, string[] known, List<string> problems)
    {
        problems.AddRange(given.Where(name => !known.Contains(name))
            .Select(name => $"{option} {name}: there is no such thing. Accepted: {string.Join(", ", known)}."));
        return given;
    }

    private static string ThemeName(Theme theme) => theme == Theme.Light ? "white" : theme.Name;

    private static void List(Terminal terminal)
    {
        terminal.Output.WriteLine("Figures:");
        foreach (CatalogueEntry entry in FigureCatalogue.All)
        {
            terminal.Output.WriteLine($"  {entry.Name,-22}{(entry.Needs is { } needs ? $"needs {needs}. " : "")}{entry.Shows}");
        }

        terminal.Output.WriteLine("Sizes:");
        foreach (FigureSize size in FigureSize.Published)
        {
            (int width, int height) = size.Pixels();
            terminal.Output.WriteLine(
                Invariant.Text($"  {size.Name,-22}{width} × {height} px at scale 1"
                    + $"{(size.ShownWidth!.EndsWith("mm", StringComparison.Ordinal) ? ", " + size.ShownWidth + " wide at 300 dpi" : "")}"));
        }

        terminal.Output.WriteLine($"Themes: {string.Join(", ", Theme.Published.Select(ThemeName))}");
    }
}
