using BrakeBalance.Notebooks.Execution;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Tests.Pages;

public sealed class SiteTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("bb-site-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void The_index_lists_notebooks_before_lessons_with_title_and_first_paragraph()
    {
        Site.Write([new SiteEntry(SampleNotebook.Create("01-a")), new SiteEntry(SampleNotebook.Create("lesson-b"), NotebookGroup.Lesson)],
            _folder, new SiteOptions());

        // The menu in the top bar names every page before the list does: the list alone has this order to keep.
        string index = File.ReadAllText(Path.Combine(_folder, "index.html"));
        index = index[index.IndexOf("<main", StringComparison.Ordinal)..];
        Assert.True(index.IndexOf("<h2>Notebooks</h2>", StringComparison.Ordinal) < index.IndexOf("href=\"01-a.html\"",
            StringComparison.Ordinal));
        Assert.True(index.IndexOf("<h2>Lessons</h2>", StringComparison.Ordinal) < index.IndexOf("href=\"lesson-b.html\"",
            StringComparison.Ordinal));
        Assert.Contains("<p>A pedal force becomes two line pressures", index, StringComparison.Ordinal);
        Assert.Contains("Caution.", index, StringComparison.Ordinal);
    }

    [Fact]
    public void Pages_lead_to_their_neighbours()
    {
        IReadOnlyList<RenderedPage> pages = Site.Render(
            [new SiteEntry(SampleNotebook.Create("01-a")), new SiteEntry(SampleNotebook.Create("02-b")),
                new SiteEntry(SampleNotebook.Create("03-c"))], new SiteOptions());

        Assert.Contains("rel=\"prev\" class=\"bb-prev\" href=\"01-a.html\"", pages[1].Html, StringComparison.Ordinal);
        Assert.Contains("rel=\"next\" class=\"bb-next\" href=\"03-c.html\"", pages[1].Html, StringComparison.Ordinal);
        Assert.DoesNotContain("rel=\"prev\"", pages[0].Html, StringComparison.Ordinal);
        Assert.DoesNotContain("rel=\"next\"", pages[2].Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_page_has_the_menu_of_all_pages_and_marks_itself()
    {
        RenderedPage story = new("story.html", "A story", "", $"<header>{PageMenu.Place}</header>", []);
        Site.Write([new SiteEntry(SampleNotebook.Create("01-a")), new SiteEntry(SampleNotebook.Create("lesson-b"), NotebookGroup.Lesson)],
            _folder, new SiteOptions { Stories = [story] });

        foreach (string name in new[] { "01-a.html", "lesson-b.html", "story.html", "index.html" })
        {
            string html = File.ReadAllText(Path.Combine(_folder, name));
            Assert.DoesNotContain(PageMenu.Place, html, StringComparison.Ordinal);
            string menu = html[html.IndexOf("<nav aria-label=\"All pages\">", StringComparison.Ordinal)..html.IndexOf("</nav>",
                StringComparison.Ordinal)];
            foreach (string other in new[] { "01-a.html", "lesson-b.html", "story.html" })
            {
                Assert.Contains($"<a href=\"{other}\"{(other == name ? " aria-current=\"page\"" : "")}>", menu, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void A_folder_is_created_and_no_temporary_file_stays()
    {
        string folder = Path.Combine(_folder, "a", "b");

        SiteResult result = Site.Write([new SiteEntry(SampleNotebook.Create())], folder, new SiteOptions());

        Assert.Equal(result.Files.Select(Path.GetFullPath).Order(), Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Order());
    }

    [Fact]
    public void Two_notebooks_of_one_name_are_refused()
    {
        var exception = Assert.Throws<ArgumentException>(() =>
            Site.Render([new SiteEntry(SampleNotebook.Create()), new SiteEntry(SampleNotebook.Create())], new SiteOptions()));
        Assert.Contains("01-sample", exception.Message, StringComparison.Ordinal);
        Assert.Throws<ArgumentException>(() => Site.Render([new SiteEntry(SampleNotebook.Create("index"))], new SiteOptions()));
    }

    [Fact]
    public void The_calculation_is_written_once_or_inlined_on_request()
    {
        var entry = new SiteEntry(SampleNotebook.WithChart());

        Site.Write([entry], _folder, new SiteOptions());
        string page = File.ReadAllText(Path.Combine(_folder, "01-chart.html"));
        Assert.True(new FileInfo(Path.Combine(_folder, PageNames.SharedScript)).Length > 3_000_000);
        Assert.Contains("\"assets/calculation.js\"", page, StringComparison.Ordinal);
        Assert.True(File.Exists(Path.Combine(_folder, PageNames.Notices)));
        Assert.True(page.Length < 200_000);

        string single = Site.Render([entry], new SiteOptions { SingleFile = true })[0].Html;
        Assert.InRange(single.Length, 3_000_000, 5_000_000);
        // A closing tag inside the script would end it early: openings and closings must match.
        Assert.Equal(single.Split("<script").Length - 1, single.Split("</script>").Length - 1);
    }

    [Fact]
    public void A_page_without_controls_and_cells_asks_for_no_script()
    {
        // Cells can be edited and run, which takes scripts; prose alone takes none.
        ExecutedNotebook sample = SampleNotebook.Create();
        SiteResult result = Site.Write(
            [new SiteEntry(sample with { Cells = [.. sample.Cells.OfType<ExecutedMarkdownCell>()] })], _folder, new SiteOptions());

        Assert.DoesNotContain(result.Files, f => f.EndsWith(".js", StringComparison.Ordinal));
    }

    [Fact]
    public void A_file_that_cannot_be_replaced_leaves_no_half_file_behind()
    {
        string target = Path.Combine(_folder, "taken");
        Directory.CreateDirectory(Path.Combine(target, "inside"));

        Assert.ThrowsAny<Exception>(() => AtomicFile.Write(target, "text"));

        Assert.Equal([target], Directory.EnumerateFileSystemEntries(_folder));
    }
}
