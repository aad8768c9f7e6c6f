using Markdig.Renderers;
using Markdig.Renderers.Html;
using Markdig.Syntax.Inlines;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>Makes the links of a notebook work in a page, and keeps a page from asking for anything outside itself.</summary>
internal static class Links
{
    /// <summary>Turns links to notebooks into links to pages; refuses unsafe links and pictures that would be fetched.</summary>
    public static void Prepare(LinkInline link, Report report)
    {
        string url = link.Url ?? "";
        if (link.IsImage && !url.StartsWith("data:image/", StringComparison.OrdinalIgnoreCase))
        {
            report($"The picture \"{url}\" would have to be fetched; embed it as data:image/… or draw it in a cell");
            link.Url = "data:,";
            return;
        }
        if (link.IsImage)
            return;
        link.Url = Checked(url, report);
        if (IsOutside(link.Url))
            link.GetAttributes().AddPropertyIfNotExist("rel", "noopener noreferrer");
    }

    /// <summary>The same for a link that is its own text.</summary>
    public static void Prepare(AutolinkInline link, Report report)
    {
        if (!link.IsEmail)
            link.Url = Checked(link.Url, report);
        link.GetAttributes().AddPropertyIfNotExist("rel", "noopener noreferrer");
    }

    private static string Checked(string url, Report report)
    {
        if (IsOutside(url) || url.StartsWith('#') || url.StartsWith("mailto:", StringComparison.OrdinalIgnoreCase))
            return url;
        int colon = url.IndexOf(':', StringComparison.Ordinal);
        if (colon >= 0)
        {
            report($"The link \"{url}\" has a scheme that pages do not use; use https, mailto, another notebook or #heading");
            return "#";
        }
        int hash = url.IndexOf('#', StringComparison.Ordinal);
        (string path, string fragment) = hash < 0 ? (url, "") : (url[..hash], url[hash..]);
        // All pages lie in one folder, whatever folder their notebooks lie in.
        return path.EndsWith(".ipynb", StringComparison.OrdinalIgnoreCase)
            ? PageNames.FileFor(Path.GetFileNameWithoutExtension(path)) + fragment : url;
    }

    private static bool IsOutside(string url) =>
        url.StartsWith("https://", StringComparison.OrdinalIgnoreCase) || url.StartsWith("http://", StringComparison.OrdinalIgnoreCase);
}

/// <summary>Writes a link's text without the link, for the table of contents.</summary>
internal sealed class LinkTextRenderer : HtmlObjectRenderer<LinkInline>
{
    protected override void Write(HtmlRenderer renderer, LinkInline link)
    {
        if (!link.IsImage)
            renderer.WriteChildren(link);
    }
}
