using System.Security.Cryptography;
using BrakeBalance.Charts;
using BrakeBalance.Charts.Exploring;

namespace BrakeBalance.Notebooks.Pages;

/// <summary>What stands around the content of every page: head, top bar, foot, scripts.</summary>
internal static class PageShell
{
    // Chosen theme before the first paint; storage may be refused for pages opened from disk.
    private const string EarlyScript =
        "try{const t=localStorage.getItem('bb-theme');if(t==='light'||t==='dark')document.documentElement.dataset.theme=t}catch{}"
        + "document.documentElement.classList.add('bb-js')";

    /// <summary>What follows the title of every page but the index.</summary>
    public const string TitleEnd = " – Brake balance notebooks";

    private static readonly string Mark =
        Drawing("class=\"bb-mark\" aria-hidden=\"true\" focusable=\"false\"", "currentColor", "var(--accent)");

    /// <summary>The mark as a drawing of its own.</summary>
    public static string Icon => Drawing("xmlns=\"http://www.w3.org/2000/svg\"", "#1c2428", "#0b5568") + "\n";

    /// <summary>Ids that the shell uses itself.</summary>
    public static readonly string[] ReservedIds = ["content", "bb-code-all", "bb-theme", CellRenderer.FirstScreenId];

    /// <summary>What differs between pages.</summary>
    public sealed record Parts(
        string Title, string Body, IEnumerable<KeyValuePair<string, string>> Facts, bool IsIndex, bool SingleFile,
            bool HasCode = true)
    {
        /// <summary>Whether the calculation assembly runs in the page.</summary>
        public bool IsLive { get; init; }

        /// <summary>Whether a reader may edit the page's cells.</summary>
        public bool IsEdited { get; init; }

        /// <summary>Whether anything can be worked out in the page.</summary>
        public bool Works => IsLive || IsEdited;

        /// <summary>Whether the page carries the assembly itself.</summary>
        public bool CarriesParts => IsLive && SingleFile;

        /// <summary>Whether the assembly starts while the page is read, before its own script asks.</summary>
        public bool StartsAtOnce { get; init; }

        /// <summary>Light or dark, for a page that stands in another's frame, without top bar and foot; null for others.</summary>
        public string? FramedIn { get; init; }

        /// <summary>Style that gives the page its own letters; empty for those of the machine.</summary>
        public string Face { get; init; } = "";

        /// <summary>What else the head says.</summary>
        public string Head { get; init; } = "";

        /// <summary>The page's own script; a live page without one moves its explorables.</summary>
        public string OwnScript { get; init; } = "";
    }

    /// <summary>The fact in a page's foot that says in which units it speaks.</summary>
    public static KeyValuePair<string, string> Units(params UnitSystem[] units) =>
        new("Units", string.Join(", ", units.Select(one => one == UnitSystem.Us ? "US customary" : "SI")));

    /// <summary>Puts a page together.</summary>
    public static string Html(Parts parts)
    {
        var html = new StringBuilder();
        string desk = parts.Works ? Script(LiveAssets.Desk(parts.CarriesParts, parts.StartsAtOnce)) : "";
        string[] atEnd = [.. ScriptsAtEnd(parts)];
        string body = Explorable.Exported(parts.Body);
        bool framed = parts.FramedIn is not null;
        html.Append("<!DOCTYPE html>\n<html lang=\"en-GB\"").Append(framed ? $" data-theme=\"{parts.FramedIn}\"" : "")
            .Append(">\n<head>\n<meta charset=\"utf-8\">\n" + PageMark.Html + "\n")
            .Append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
            .Append("<meta http-equiv=\"Content-Security-Policy\" content=\"")
            .Append(HtmlText.Escape(Policy(
                [
                    EarlyScript, .. parts.CarriesParts ? [LiveAssets.TakePart] : (string[])[], .. parts.Works ? [desk] : (string[])[],
                    .. atEnd,
                ],
                parts.Works, parts.Face.Length > 0))).Append("\">\n")
            .Append("<meta name=\"referrer\" content=\"no-referrer\">\n<meta name=\"color-scheme\" content=\"light dark\">\n")
            .Append("<link rel=\"icon\" href=\"data:,\">\n")
            .Append("<title>").Append(HtmlText.Escape(parts.Title))
            .Append(parts.IsIndex ? "" : TitleEnd.Replace("–", "&ndash;", StringComparison.Ordinal)).Append("</title>\n")
            .Append(parts.Head)
            .Append("<style>\n").Append(HtmlText.Plain(FigureAssets.Style + PageAssets.Style, "\\00")).Append(parts.Face)
            .Append("</style>\n");
        if (parts.StartsAtOnce)
        {
            AppendDesk();
            AppendParts(html, LiveAssets.Scripts);
        }

        if (framed)
        {
            html.Append("</head>\n<body>\n").Append(body);
        }
        else
        {
            html.Append("<script>").Append(EarlyScript).Append("</script>\n")
                .Append("</head>\n<body>\n<a class=\"bb-skip\" href=\"#content\">Skip to the text</a>\n");
            AppendTopBar(html, parts.IsIndex, parts.HasCode);
            html.Append(body);
            AppendFoot(html, parts.Facts);
        }

        if (parts.Works && !parts.StartsAtOnce)
            AppendDesk();
        foreach (string script in atEnd)
            html.Append("<script>").Append(script).Append("</script>\n");

        // Last, for nearly all of the page's length is in them: what stands before is shown and moves meanwhile.
        if (parts.CarriesParts)
            AppendParts(html, parts.StartsAtOnce ? LiveAssets.Parts.Except(LiveAssets.Scripts) : LiveAssets.Parts);

        return html.Append("</body>\n</html>\n").ToString();

        void AppendDesk()
        {
            AppendData(html, "live-worker", LiveAssets.Worker);
            html.Append("<script>").Append(desk).Append("</script>\n");
        }
    }

    private static void AppendParts(StringBuilder html, IEnumerable<(string Name, string Text)> parts)
    {
        foreach ((string name, string text) in parts)
            html.Append(CultureInfo.InvariantCulture, $"<script type=\"application/json\" data-file=\"{name}\">{text}</script>")
                .Append(CultureInfo.InvariantCulture, $"<script>{LiveAssets.TakePart}</script>\n");
    }

    private static string Script(string text) => HtmlText.Plain(HtmlText.ScriptBody(text));

    private static void AppendTopBar(StringBuilder html, bool isIndex, bool hasCode)
    {
        html.Append("<header class=\"bb-top\">\n");
        string name = Mark + "<span>Brake balance notebooks</span>";
        html.Append(isIndex ? $"<p class=\"bb-home\">{name}</p>\n" : $"<a class=\"bb-home\" href=\"{PageNames.Index}\">{name}</a>\n");
        html.Append(PageMenu.Place).Append("<div class=\"bb-tools\">");
        if (!isIndex && hasCode)
            html.Append("<button type=\"button\" id=\"bb-code-all\" aria-pressed=\"false\">Show the computation</button>");
        html.Append("<button type=\"button\" id=\"bb-theme\">Dark</button></div>\n</header>\n");
    }

    private static void AppendFoot(StringBuilder html, IEnumerable<KeyValuePair<string, string>> facts)
    {
        html.Append("<footer class=\"bb-foot\">\n"
            + "<p>A calculation is not an approval. Have work and tests on brakes done or checked by competent people, "
            + "test away from public roads, keep to local law and the service manual.</p>\n<dl>");
        foreach ((string label, string value) in facts)
            html.Append("<div><dt>").Append(HtmlText.Escape(label)).Append("</dt><dd>").Append(HtmlText.Escape(value))
                .Append("</dd></div>");
        html.Append("</dl>\n</footer>\n");
    }

    private static string Drawing(string attributes, string ink, string accent) => $"<svg {attributes} viewBox=\"0 0 32 32\">"
        + $"<path d=\"M4 4v24h24\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"2\"/>"
        + $"<path d=\"M4 28C9 15 16 11 28 16\" fill=\"none\" stroke=\"{ink}\" stroke-width=\"2\" stroke-dasharray=\"3 2.4\"/>"
        + $"<path d=\"M4 28 14 17 28 12\" fill=\"none\" stroke=\"{accent}\" stroke-width=\"3\" stroke-linejoin=\"round\"/>"
        + $"<circle cx=\"14\" cy=\"17\" r=\"3\" fill=\"{accent}\"/></svg>";

    public static void AppendData(StringBuilder html, string id, string json) => html.Append("<script type=\"application/json\" id=\"")
        .Append(id).Append("\">").Append(Script(json)).Append("</script>\n");

    private static IEnumerable<string> ScriptsAtEnd(Parts parts)
    {
        if (parts.FramedIn is null)
            yield return Script(PageAssets.Script);
        if (parts.Works || parts.Body.Contains(" data-read=", StringComparison.Ordinal))
            yield return Script(FigureAssets.Reading);
        string own = parts.OwnScript.Length > 0 || !parts.Works ? parts.OwnScript : FigureAssets.Exploring;
        if (own.Length > 0)
            yield return Script(own);
        if (parts.IsEdited)
            yield return Script(LiveAssets.Edit);
    }

    /// <summary>
    /// Nothing may be fetched except what stands beside the page (the shared script, the app's icon), and only the page's own scripts may
    /// run, known by their hashes; a browser enforces it. The calculation assembly starts from blobs, in workers, and WebAssembly needs
    /// 'wasm-unsafe-eval'.
    /// </summary>
    private static string Policy(IEnumerable<string> scripts, bool isLive, bool hasFace)
    {
        IEnumerable<byte[]> hashes = scripts.Select(script => SHA256.HashData(Encoding.UTF8.GetBytes(script)));
        string own = string.Join(' ', hashes.Select(hash => $"'sha256-{Convert.ToBase64String(hash)}'"));
        return $"default-src 'none'; script-src {own} 'self' file:{(isLive ? " blob: 'wasm-unsafe-eval'" : "")}; "
            + $"style-src 'unsafe-inline'; img-src 'self' data: blob:; {(hasFace ? "font-src data:; " : "")}"
            + $"worker-src 'self'{(isLive ? " blob:" : "")}; manifest-src 'self'; base-uri 'none'; form-action 'none'";
    }
}
