using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The story "What the knee does": a page for readers who do not know the trade, with one idea to move a screen.</summary>
/// <remarks>Every number in its text comes from the calculation assembly, in the page too.</remarks>
internal static class StoryPage
{
    public const string FileName = "what-the-knee-does.html";

    public const string Title = "What the knee does";

    private const string Summary =
        "A small valve keeps the rear wheels from locking. "
            + "Move the bend in its behaviour and watch which wheels let go first. For readers who do not know the trade.";

    private const string Style =
        """
        .bb-story { max-width: calc(var(--wide) + 2 * clamp(0.9rem, 3vw, 2rem)); margin: 0 auto; padding: 0 clamp(0.9rem, 3vw, 2rem) 2rem; }
        .bb-story > section > p { max-width: var(--text); }
        .bb-story .bb-control:has(button) input { grid-column: 1; }
        .bb-story .bb-control button { grid-column: 2; min-width: 6rem; }
        @media screen and (max-width: 67.99rem) {
          .bb-story .bb-explorable .bb-controls { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0 1rem; padding: 0.3rem 0.8rem;
            max-height: 13rem; }
          .bb-story .bb-control:only-child, .bb-story .bb-control:has(button) { grid-column: 1 / -1; }
          .bb-story .bb-controls :is(output, label) { font-size: 0.95rem; line-height: 1.2; }
          .bb-story .bb-explorable .bb-verdict { order: 0; }
        }
        @media print {
          .bb-story .bb-lead { font-size: inherit; }
          .bb-story section:not(.bb-long) { break-inside: avoid; }
          .bb-story section > h2 { margin-top: 0; }
          .bb-story section > p { break-inside: avoid; break-after: avoid; }
          .bb-story .bb-explorable { display: grid; grid: auto-flow dense / 3fr 2fr; gap: 0 5mm; margin: 0; }
          .bb-story :is(.bb-verdict, .bb-readouts) { grid-column: 2; align-self: start; margin-top: 0; }
          .bb-story .bb-readouts { grid-template-columns: 1fr; }
          .bb-story .bb-figure { grid-column: 1; order: -1; margin: 0 0 4mm; }
          .bb-story .bb-figure .bb-caption { margin-top: 1mm; font-size: 9pt; line-height: 1.35; }
          .bb-story .bb-static svg { max-height: 44mm; }
          .bb-story .bb-state { display: none; }
        }
        """;

    /// <summary>Renders the page.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="facts">Facts for the foot of the page.</param>
    /// <returns>The page; it carries all its scripts.</returns>
    public static RenderedPage Render(Vehicle vehicle, UnitSystem units, IEnumerable<KeyValuePair<string, string>> facts)
    {
        var setting = Setting.Of(vehicle);
        var body = new StringBuilder();
        body.Append("<style>\n").Append(Style).Append("\n</style>\n<main id=\"content\" class=\"bb-story\" tabindex=\"-1\">\n<h1>")
            .Append(Title).Append("</h1>\n");
        Explorable? first = null;
        foreach (string screen in KneeStory.Screens(vehicle))
        {
            Explorable explorable = KneeStory.Of(screen, vehicle, () => setting, units);
            (string heading, string words) = Words(screen);
            body.Append(screen == "all" ? "<section class=\"bb-long\">\n" : "<section>\n")
                .Append(heading.Length > 0 ? $"<h2 id=\"{screen}\">{heading}</h2>\n" : "")
                .Append(heading.Length > 0 ? "<p>" : "<p class=\"bb-lead\">").Append(HtmlText.Escape(words)).Append("</p>\n")
                .Append(explorable.ToHtml(first)).Append("</section>\n");
            first ??= explorable;
            if (heading.Length == 0)
            {
                body.Append("<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> A story, not a setting. "
                    + "Brakes can kill: work on them and test stops are for competent people, "
                    + "off public roads, within local law and by the service manual.</p></div>\n");
            }
        }

        body.Append("<p><small>The page itself works out every position of the controls, with the same calculation as everything else "
            + "here.</small></p>\n");
        Settings(body, setting, units);
        Trials(body, new BalanceTrials(setting, units));
        body.Append("<h2>How this was computed</h2>\n<p>").Append(HtmlText.Escape(FigureText.Method)).Append(' ')
            .Append(HtmlText.Escape(FigureText.Car(vehicle)))
            .Append(" Air and the sway of the body are left out. ").Append(HtmlText.Escape(FigureText.Licence)).Append(".</p>\n</main>\n");
        KeyValuePair<string, string>[] foot = [.. facts];
        string html = PageShell.Html(
            new PageShell.Parts(Title, body.ToString(), foot, IsIndex: false, SingleFile: true, HasCode: false)
            {
                IsLive = true,
                Face = OutlinedText.Face,
            });
        return new RenderedPage(FileName, Title, Summary, html, []) { IsLive = true };
    }

    /// <summary>What stands above a screen's figure; what depends on its controls, or on the car, is said in the figure.</summary>
    private static (string Heading, string Words) Words(string screen) => screen switch
    {
        "stop" => ("", "Stand on the brake, and a car leans on its front wheels. The rear wheels go light. How hard it brakes is counted "
            + "in g: at 1 g a car loses speed as fast as a dropped stone gains it."),
        "above" => ("Why the rear must not go first", "A wheel that locks stops turning and slides. A sliding wheel cannot be steered and "
            + "cannot hold the car sideways. Choose which wheels lock, and let time run. "
            + "The front wheels should always lock first, and only just."),
        "split" => ("Front and rear share the work", "Wheels that carry more can brake more. So the best split between front and rear "
            + "moves forward as the car brakes harder."),
        "straight" => ("A straight line", "Front and rear brakes are worked by the same push of the foot. Once both have taken hold, each "
            + "gets a fixed part of it: a straight line. Where the line is below the curve the front wheels lock first, where it is above "
            + "the rear wheels. How far along the line the car gets depends on the road."),
        "knee" => ("The knee", "A small valve in the pipe to the rear brakes can bend the line. Up to a certain pressure, the knee, it "
            + "lets everything through; of any further pressure it passes on only a share, or nothing. Move the knee."),
        "metering" => ("A valve that waits", "Some cars have a second valve, in the pipe to the front brakes: the metering valve. Rear "
            + "brakes with drums need some pressure before their shoes touch, and the metering valve keeps the front brakes waiting "
            + $"meanwhile. This car has one. The pictures above leave it out; from here on it is drawn."),
        _ => ("Your turn", "Everything together: the knee, the share that the valve passes on above it, the load and the road. Find a "
            + "setting that keeps the front first on every road, and uses as much grip as it can."),
    };

    private static void Settings(StringBuilder body, Setting setting, UnitSystem units)
    {
        string name = setting.Vehicle.InText, what = setting.Variable switch
        {
            SettingVariable.AddedKnee => "This car has no valve whose knee can be set. ",
            SettingVariable.BalanceBar => $"On {name} the bar between its two brake cylinders is what can be set. ",
            _ => $"On {name} the knee is what can be set. ",
        };
        body.Append("<h2 id=\"setting\">Where it may stand</h2>\n<p>")
            .Append(HtmlText.Escape(what + "The front must go first on slippery roads and on dry ones, "
                + "slow and fast, with every load, and with pads that bite better or worse than promised."))
            .Append("</p>\n<dl>");
        foreach ((string label, string text) in new[]
        {
            ("Present setting", SettingWords.Present(setting, units) + (setting.PresentIsBeyond ? ": beyond the safe limit"
                : setting.IsBuiltBeyond ? ": as built the rear can lock first" : "")),
            ("Safe limit", SettingWords.SafeLimit(setting, units)),
            ("Recommended setting", SettingWords.Recommended(setting, units)),
        })
        {
            body.Append("<dt>").Append(label).Append("</dt><dd>").Append(HtmlText.Escape(text)).Append("</dd>");
        }

        body.Append("</dl>\n");
    }

    private static void Trials(StringBuilder body, BalanceTrials trials)
    {
        body.Append("<h2>Things to try</h2>\n<ol>\n");
        foreach ((string task, string answer) in trials.All)
        {
            body.Append("<li><strong>").Append(HtmlText.Escape(task)).Append("</strong> ").Append(HtmlText.Escape(answer))
                .Append("</li>\n");
        }

        body.Append("</ol>\n<p>No one setting is right for every road and every load. "
            + "The knee is a bargain: low enough that the rear never goes first, and no lower than that.</p>\n");
    }
}
