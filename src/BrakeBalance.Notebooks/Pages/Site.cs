using BrakeBalance.Notebooks.Execution;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Writes the pages of a run: one for each notebook, the index, and the script they share.</summary>
internal static class Site
{
    /// <summary>Renders and writes all pages.</summary>
    /// <param name="entries">The notebooks in reading order, main notebooks before lessons.</param>
    /// <param name="folder">The folder for the pages; created where it is missing. Files of other names in it stay.</param>
    /// <param name="options">What all pages have in common.</param>
    /// <returns>The files written and the problems met.</returns>
    /// <exception cref="ArgumentException">Two notebooks would become the same file.</exception>
    /// <exception cref="IOException">A file cannot be written.</exception>
    public static SiteResult Write(IReadOnlyList<SiteEntry> entries, string folder, SiteOptions options)
    {
        List<PageFault> faults = [];
        IReadOnlyList<RenderedPage> pages = Render(entries, options, faults);
        List<(string Name, string Text)> written = [];
        PageGroup[] groups =
        [
            new("Answers for this car", options.Answers), new("Notebooks", Of(NotebookGroup.Main)),
            new(PageGroup.Lessons, Of(NotebookGroup.Lesson)), new("Stories for readers", options.Stories),
        ];
        RenderedPage[] all = [.. groups.SelectMany(group => group.Pages)];
        foreach (RenderedPage page in all.Where(page => page.Html.Length > 0))
            Put(page.FileName, PageMenu.Into(page.Html, page.FileName, groups));
        if (options.IsWhole || !File.Exists(Path.Combine(folder, PageNames.Index)))
            Put(PageNames.Index, PageMenu.Into(IndexPage.Html(groups, options), PageNames.Index, groups));
        bool edits = pages.Any(page => page.IsEdited);
        if (edits || (!options.SingleFile && pages.Any(page => page.IsLive)))
            Put(PageNames.SharedScript, LiveAssets.Shared);
        if (edits)
            Put(PageNames.CellsScript, LiveAssets.Cells);
        if (edits || all.Any(page => page.IsLive))
            Put(PageNames.Notices, LiveAssets.Notices);
        if (options.IsWhole && written.Any(file => file.Name == PageNames.SharedScript))
        {
            string start = options.Answers.FirstOrDefault(page => page.IsLive)?.FileName ?? PageNames.Index;
            foreach ((string name, string text) in InstalledApp.Files([.. written], start).ToArray())
                Put(name, text);
        }
        if (options.IsWatched)
            Put(Reloading.Stamps, Reloading.StampsOf(written));
        return new SiteResult([.. written.Select(file => Path.Combine(folder, file.Name))], [.. pages.SelectMany(p => p.Problems)], faults);

        IReadOnlyList<RenderedPage> Of(NotebookGroup group) =>
            [.. entries.Zip(pages).Where(pair => pair.First.Group == group).Select(pair => pair.Second)];

        void Put(string name, string text)
        {
            text = options.IsWatched && name.EndsWith(".html", StringComparison.Ordinal) ? Reloading.Into(text) : text;
            AtomicFile.Write(Path.Combine(folder, name), text);
            written.Add((name, text));
        }
    }

    /// <summary>Renders all notebook pages without writing them.</summary>
    /// <param name="entries">The notebooks in reading order.</param>
    /// <param name="options">What all pages have in common.</param>
    /// <param name="faults">
    /// Told of each page that cannot be made, in whose place stands one that says so; without it, the first ends the rendering.
    /// </param>
    /// <returns>The pages in the same order.</returns>
    /// <exception cref="ArgumentException">Two notebooks would become the same file.</exception>
    public static IReadOnlyList<RenderedPage> Render(IReadOnlyList<SiteEntry> entries, SiteOptions options,
        ICollection<PageFault>? faults = null)
    {
        string[] taken = [.. entries.Select(e => e.Notebook.Name).Append(Path.GetFileNameWithoutExtension(PageNames.Index))];
        if (taken.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1) is { } twice)
            throw new ArgumentException($"Two pages would have the name \"{twice.Key}\"; give one notebook another file name.",
                nameof(entries));
        return
        [
            .. entries.Select((entry, i) => entry.Standing ?? Page(entry.Notebook, LinkTo(i - 1), LinkTo(i + 1))),
        ];

        RenderedPage Page(ExecutedNotebook notebook, PageLink? previous, PageLink? next)
        {
            try
            {
                return PageRenderer.Render(notebook, options, previous, next);
            }
            catch (Exception exception) when (faults is not null)
            {
                faults.Add(new PageFault(notebook.Name, exception));
                var notice = new ExecutedCodeCell("page", "", [], [], new CellFailure("This page could not be made.", null, null));
                return PageRenderer.Render(notebook with { Cells = [notice] }, options, previous, next);
            }
        }

        PageLink? LinkTo(int index) => index < 0 || index >= entries.Count
            ? null
            : new PageLink(PageNames.FileFor(entries[index].Notebook.Name), entries[index].Notebook.Title);
    }
}
