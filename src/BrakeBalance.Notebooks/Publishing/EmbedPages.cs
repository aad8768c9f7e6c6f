using BrakeBalance.Charts;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>One figure for somebody else's page: a piece of HTML to paste, and a page of its own to frame.</summary>
internal static class EmbedPages
{
    private const string Caution = "A calculation is no approval of any brake. A car whose rear axle locks first spins.";

    /// <summary>The drawing of a pasted piece: its words stand below it, in the page's own type.</summary>
    private static readonly FigureSize Pasted =
        new() { Name = "embed", Width = 500, Height = 370, ShowTitle = false, ShowCredit = false, ShownWidth = "100%" };

    private const string Style =
        """
        .bb-frame { max-width: 75rem; margin: 0 auto; padding: 0.5rem 0.6rem; font-size: 1rem; }
        .bb-frame :is(.bb-figure, .bb-explorable) { margin: 0; }
        .bb-frame .bb-explorable { max-width: none; }
        .bb-frame .bb-controls { margin: 0 0 0.5rem; padding: 0.4rem 0.7rem; gap: 0.5rem 1.5rem; }
        .bb-frame .bb-controls[hidden] { display: grid; visibility: hidden; }
        .bb-frame .bb-control { display: flex; flex-wrap: wrap; gap: 0 0.6rem; align-items: baseline; justify-content: space-between; }
        .bb-frame .bb-control output { font-size: 1rem; }
        .bb-frame .bb-control > :is(input, select) { flex: 0 0 100%; min-width: 0; }
        .bb-frame .bb-control button { margin-top: 0.4rem; }
        .bb-frame :is(.bb-title, .bb-caption) { max-width: none; }
        .bb-frame .bb-credit { opacity: 1; }
        .bb-frame > .bb-figure { max-width: 48rem; }
        .bb-frame > h1 { position: absolute; width: 1px; height: 1px; margin: 0; overflow: hidden; clip-path: inset(50%); }
        .bb-frame .bb-state { display: none; }
        .bb-frame > .bb-small { margin: 0.2rem 0 0; max-width: none; font-size: 0.85rem; color: var(--muted); }
        @media screen and (min-width: 60rem) {
          .bb-frame .bb-explorable { display: grid; grid-template-columns: minmax(0, 1fr) 19rem; gap: 0 1.5rem; }
          .bb-frame .bb-controls { order: 1; grid-template-columns: minmax(0, 1fr); }
          .bb-frame .bb-own { order: 2; }
          .bb-frame .bb-figure { grid-row: 1 / 9; }
        }
        """;

    /// <summary>The piece to paste: a figure without script, style sheet or anything from elsewhere.</summary>
    public static string Snippet(Figure shown, Theme theme, Vehicle vehicle, FigurePlan plan)
    {
        string svg = plan.Drawn(FigureText.Named(shown, theme, vehicle).ToSvg(Pasted, theme))
            .Replace(" xmlns=\"http://www.w3.org/2000/svg\"", "", StringComparison.Ordinal);
        shown = plan.Style?.Of(shown) ?? shown;
        string title = plan.Style?.Of(FigureSize.Column).ShowTitle == false ? "" : $"<strong>{HtmlText.Escape(shown.Title)}.</strong> ";
        return $"<figure style=\"margin:1em 0;max-width:40rem\">\n{svg}<figcaption>{title}{HtmlText.Escape(shown.Caption)}\n"
            + $"<small>{HtmlText.Escape(Below(shown))}</small></figcaption>\n</figure>\n";
    }

    /// <summary>The page to frame.</summary>
    /// <param name="shown">The figure, credited.</param>
    /// <param name="moving">The figure with its controls; null where nothing moves it.</param>
    /// <param name="theme">The colours.</param>
    /// <param name="vehicle">The car.</param>
    /// <param name="plan">How figures are published.</param>
    /// <param name="at">The addresses, absolute or relative, of the page and of a shared link's picture; null when there is none.</param>
    public static string Live(
        Figure shown, IHtmlOutput? moving, Theme theme, Vehicle vehicle, FigurePlan plan, (string Page, string? Image) at)
    {
        string piece = moving?.ToHtml() ?? plan.Numbered(shown.ToHtml());
        shown = plan.Style?.Of(shown) ?? shown;
        string body = $"<style>\n{FigureAssets.Only(theme)}{Style}\n</style>\n<main class=\"bb-frame\">\n<h1>"
            + HtmlText.Escape($"Figure of {vehicle.InText}") + "</h1>\n"
            + piece + $"<p class=\"bb-small\">{Caution} {FigureText.Licence}.</p>\n</main>\n";
        (string Name, string? Value)[] meta =
        [
            ("og:type", "article"), ("og:title", shown.Title), ("og:description", shown.Caption),
            ("og:url", at.Page), ("og:image", at.Image),
            ("og:image:width", at.Image is null ? null : "1200"), ("og:image:height", at.Image is null ? null : "630"),
            ("og:image:alt", at.Image is null ? null : shown.AltText),
        ];
        return PageShell.Html(new PageShell.Parts(shown.Title, body, [], IsIndex: true, SingleFile: false, HasCode: false)
        {
            IsLive = moving is not null,
            Face = OutlinedText.Face,
            FramedIn = theme.Name == Theme.Dark.Name ? "dark" : "light",
            Head = $"<meta name=\"description\" content=\"{HtmlText.Escape(shown.Caption)}\">\n" + string.Concat(
                meta.Where(one => one.Value is not null)
                    .Select(one => $"<meta property=\"{one.Name}\" content=\"{HtmlText.Escape(one.Value!)}\">\n")),
        });
    }

    /// <summary>The line that frames the page in another.</summary>
    /// <param name="shown">The figure.</param>
    /// <param name="moves">How many controls the page has.</param>
    /// <param name="page">The page's address.</param>
    public static string Frame(Figure shown, int moves, string page)
    {
        // As high as the page is on a phone, where it is highest: drawing, controls, and words of about 40 letters a line.
        // Where it is wide there are fewer lines of words.
        double drawing = Math.Max(FigureSize.Phone.For(shown).Height, FigureSize.Page.For(shown).Height - 100);
        int words = (int)Math.Ceiling((shown.Title.Length * 1.15 + shown.Caption.Length + Caution.Length + Below(shown).Length) / 40.0);
        return Invariant.Text($"<iframe src=\"{HtmlText.Escape(page)}\" title=\"{HtmlText.Escape(shown.AltText)}\" width=\"100%\" "
            + $"height=\"{110 + drawing + (100 * moves) + (26 * words)}\" style=\"border:0\" loading=\"lazy\"></iframe>");
    }

    private static string Below(Figure shown) => $"{shown.Credit} {FigureText.Licence}.".TrimStart();
}
