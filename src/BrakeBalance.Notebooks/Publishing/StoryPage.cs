using BrakeBalance.Charts.Publishing;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The story "What the knee does": one page for readers who do not know the trade, with figures to move.</summary>
/// <remarks>Every number in its text comes from the calculation assembly, in the page too.</remarks>
internal static class StoryPage
{
    /// <summary>The page's file name.</summary>
    public const string FileName = "what-the-knee-does.html";

    /// <summary>The page's title.</summary>
    public const string Title = "What the knee does";

    private const string Summary =
        "A small valve keeps the rear wheels from locking. "
            + "Move the bend in its behaviour and watch which wheels let go first. For readers who do not know the trade.";

    private const string Style =
        """
        .bb-story { max-width: 78rem; margin: 0 auto; padding: 0 clamp(0.9rem, 3vw, 2rem) 2rem; }
        .bb-story > :is(h1, h2, p, ol, .bb-caution) { max-width: 42rem; }
        .bb-story .bb-lead { font-size: 1.2rem; }
        .bb-story .bb-explorable { max-width: none; }
        .bb-story .bb-explorable > * { min-width: 0; max-width: none; }
        .bb-story .bb-control { grid-template-columns: 1fr auto; }
        @media screen and (max-width: 67.99rem) {
          .bb-story .bb-controls { grid-template-columns: repeat(2, minmax(0, 1fr)); gap: 0 1rem; padding: 0.3rem 0.8rem;
            max-height: 11rem; }
          .bb-story .bb-controls :is(output, label) { font-size: 0.95rem; line-height: 1.2; }
        }
        @media screen and (min-width: 68rem) {
          .bb-story .bb-explorable { display: grid; grid-template-columns: 1fr 1fr; gap: 0 2rem; }
          .bb-story .bb-explorable > :is(form, dl, p) { grid-column: 1 / -1; }
          .bb-story .bb-controls { grid-template-columns: repeat(4, 1fr); align-items: end; position: sticky; top: 4rem; z-index: 1; }
        }
        @media print { .bb-story .bb-figure { break-inside: avoid; } }
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
        body.Append("<style>\n").Append(Style).Append("\n</style>\n<main id=\"content\" class=\"bb-story\" tabindex=\"-1\">\n");
        Opening(body, vehicle, units);
        Settings(body, setting, units);
        body.Append("<h2 id=\"try\">Move it</h2>\n<p>Four controls, three pictures. The first control is the pressure at the knee, the "
            + "second the share that the valve passes on above it. The ring shows the moment at which the first wheels lock.</p>\n")
            .Append(KneeStory.Of(setting, units).ToHtml())
            .Append("<p><small>The page itself works out every position of the controls, with the same calculation as everything else "
                + "here.</small></p>\n");
        Trials(body, new BalanceTrials(setting, units));
        body.Append("<h2>How this was computed</h2>\n<p>").Append(HtmlText.Escape(FigureText.Method)).Append(' ')
            .Append(HtmlText.Escape(FigureText.Car(vehicle)))
            .Append(" Air and the sway of the body are left out. ").Append(HtmlText.Escape(FigureText.Licence)).Append(".</p>\n</main>\n");
        KeyValuePair<string, string>[] foot = [.. facts];
        string html = PageShell.Html(
            new PageShell.Parts(Title, body.ToString(), foot, IsIndex: false, SingleFile: true, HasCode: false) { IsLive = true });
        return new RenderedPage(FileName, Title, Summary, html, []) { IsLive = true };
    }

    private static void Opening(StringBuilder body, Vehicle vehicle, UnitSystem units)
    {
        var model = new BalanceModel(vehicle, vehicle.LoadCases[0]);
        PerAxle<Force> rest = model.StaticAxleLoads, hard = model.NormalReactions(0.8);
        string Share(Force part, PerAxle<Force> of) => Measure.Percent.Text(part.Newtons / (of.Front.Newtons + of.Rear.Newtons), units);
        body.Append("<h1>").Append(Title)
            .Append("</h1>\n<p class=\"bb-lead\">Stand on the brake, and a car leans on its front wheels. "
                + "The rear wheels go light just when you ask most of them. "
                + "A small valve keeps them from letting go. "
                + "It has a bend in its behaviour, called the knee, and here you can move it.</p>\n")
            .Append("<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> A story, not a setting. "
                + "Brakes can kill: work on them and test stops are for competent people, "
                + "off public roads, within local law and by the service manual.</p></div>\n")
            .Append("<h2>Weight moves forward</h2>\n<p>")
            .Append(HtmlText.Escape(
                $"Standing still, the {vehicle.Name} rests {Share(rest.Front, rest)} of its weight on the front wheels. "
                    + $"Braking at 0.8 g, as in a hard stop on a dry road, it rests {Share(hard.Front, hard)} there. The rear wheels "
                    + $"have lost {Measure.Percent.Text(1 - hard.Rear / rest.Rear, units)} of their load, and as much of their grip."))
            .Append(" (A car brakes at 1 g when it loses speed as fast as a dropped stone gains it.)</p>\n")
            .Append("<h2>Why the rear must not go first</h2>\n<p>A wheel that locks stops turning and slides. A sliding wheel cannot "
                + "be steered and cannot hold the car sideways. If the front wheels lock, the car goes straight on; let up, and it "
                + "steers again. "
                + "If the rear wheels lock, the tail comes round, faster than most drivers can catch it. So the front wheels should "
                + "always lock first, and only just.</p>\n")
            .Append("<h2>A valve with a bend</h2>\n<p>Front and rear brakes are worked by the same fluid. Up to a certain pressure at "
                + "the rear, the knee, the valve lets everything through. "
                + "Above it the rear gets only a share of any further pressure. " + KneeStory.MeteringOf(vehicle) + " "
                + "The line in the picture bends, and with it the car follows, "
                + "roughly, the curve on which all four wheels would lock together.</p>\n");
    }

    private static void Settings(StringBuilder body, Setting setting, UnitSystem units)
    {
        string what = setting.Variable == SettingVariable.BalanceBar ? "the bar between its two brake cylinders" : "the knee";
        body.Append("<h2 id=\"setting\">Where it may stand</h2>\n<p>")
            .Append(HtmlText.Escape($"On the {setting.Vehicle.Name} {what} is what can be set. "
                + "The front must go first on slippery roads and on dry ones, "
                + "slow and fast, with every load, and with pads that bite better or worse than promised. "))
            .Append("</p>\n<dl>");
        foreach ((string label, string text) in new[]
        {
            ("Present setting", SettingWords.Present(setting, units) + (setting.PresentIsBeyond ? ": beyond the safe limit" : "")),
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
        body.Append("<h2>Four things to try</h2>\n<ol>\n");
        foreach ((string task, string answer) in trials.All)
        {
            body.Append("<li><strong>").Append(HtmlText.Escape(task)).Append("</strong> ").Append(HtmlText.Escape(answer))
                .Append("</li>\n");
        }

        body.Append("</ol>\n<p>No one setting is right for every road and every load. "
            + "The knee is a bargain: low enough that the rear never goes first, and no lower than that.</p>\n");
    }
}
