using System.Text;
using System.Text.Json;
using BrakeBalance.Measurements;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The page of one's own car: the calculation assembly runs in it, so it answers for any car, in one file, without a network.</summary>
public static class LivePage
{
    /// <summary>The page's file name.</summary>
    public const string FileName = "your-car.html";

    /// <summary>The page's title.</summary>
    public const string Title = "Your car";

    private const string Summary =
        "Enter your car, move any value, and see at once which axle locks first and where the valve may stand. Everything is worked out in the page.";

    private static readonly (string Tab, string Label)[] Tabs =
    [
        ("car", "Car"), ("balance", "Balance"), ("pedal", "Pedal"), ("stops", "Stops"), ("heat", "Heat"), ("measure", "Measure"),
        ("compare", "Compare"),
    ];

    /// <summary>Renders the page.</summary>
    /// <param name="text">The vehicle file with which it begins.</param>
    /// <returns>The page; it needs no other file.</returns>
    public static RenderedPage Render(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var body = new StringBuilder();
        body.Append("<style>\n").Append(LiveAssets.Style).Append("\n</style>\n<main id=\"content\" class=\"bb-live-page\" tabindex=\"-1\">\n<h1>")
            .Append(Title).Append("</h1>\n<section id=\"live-bar\" aria-label=\"Answer\" aria-live=\"polite\"><p>The calculation is starting …</p></section>\n")
            .Append("<noscript><p>This page works the numbers out itself and needs scripts for it.</p></noscript>\n<nav id=\"live-tabs\" aria-label=\"Parts of this page\">");
        foreach ((string tab, string label) in Tabs)
        {
            body.Append("<button type=\"button\" data-tab=\"").Append(tab).Append("\" aria-current=\"").Append(tab == "car" ? "true" : "false")
                .Append("\">").Append(label).Append("</button>");
        }

        body.Append("</nav>\n<p id=\"live-status\" role=\"status\" hidden></p>\n<div id=\"live-panels\">\n");
        Car(body);
        foreach ((string tab, string label) in Tabs[1..])
        {
            body.Append("<section id=\"live-").Append(tab).Append("\" aria-label=\"").Append(label).Append("\" hidden>\n");
            switch (tab)
            {
                case "balance":
                    body.Append("<div class=\"bb-pictures\"></div>\n<h2>Behind the answer</h2>\n<div id=\"live-answer\"></div>\n");
                    break;
                case "measure":
                    Measure(body);
                    break;
                case "compare":
                    body.Append("<p>Set-ups are copied beside the answer under Car; rows that differ are shaded.</p>\n<div id=\"live-compared\"></div>\n");
                    break;
                default:
                    body.Append("<div class=\"bb-pictures\"></div>\n");
                    break;
            }

            body.Append("</section>\n");
        }

        body.Append("</div>\n<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> ").Append(HtmlText.Escape(SettingWords.Caution))
            .Append(" A calculation is no approval. Work on brakes and test stops are for competent people, within local law and by the service manual.</p></div>\n"
                + "<section id=\"live-dock\" aria-label=\"Sliders\" hidden></section>\n</main>\n");
        body.Append("<script type=\"application/json\" id=\"live-first\">").Append(JsonSerializer.Serialize(text))
            .Append("</script>\n<script type=\"application/json\" id=\"live-worker\">").Append(HtmlText.ScriptBody(LiveAssets.Worker))
            .Append("</script>\n<script type=\"application/json\" id=\"live-parts\">").Append(LiveAssets.Parts).Append("</script>\n");
        var parts = new PageShell.Parts(Title, body.ToString(), [], IsIndex: false, HasCharts: false, SingleFile: true, HasCode: false)
        {
            IsLive = true,
            OwnScript = LiveAssets.Script,
        };
        return new RenderedPage(FileName, Title, Summary, PageShell.Html(parts), []) { HasCharts = false };
    }

    private static void Car(StringBuilder body) => body.Append(
        """
        <section id="live-car" aria-label="Car">
        <div class="bb-row"><label for="live-begin">Begin with</label><select id="live-begin"><option value="">choose …</option></select>
        <label for="live-open">or open a vehicle file</label><input type="file" id="live-open" accept=".json,application/json">
        <label for="live-units">Units</label><select id="live-units"><option value="si">metric</option><option value="us">US customary</option></select></div>
        <div class="bb-row" id="live-setups" role="group" aria-label="Set-ups"></div>
        <ul id="live-loose" class="bb-wrong"></ul>
        <form id="live-form" autocomplete="off"></form>
        <div class="bb-row"><button type="button" id="live-undo">Undo</button><button type="button" id="live-save">Save the vehicle file</button>
        <button type="button" id="live-link">Copy a link with this car</button><button type="button" id="live-forget">Forget what is kept here</button></div>
        <details class="bb-more"><summary>Paste a vehicle file</summary><label for="live-text">Text of the file</label><textarea id="live-text" spellcheck="false"></textarea>
        <p><button type="button" id="live-paste">Take it</button></p></details>
        <p>The car stays on this device, kept by the browser until it is forgotten. Nothing is sent anywhere.</p>
        </section>

        """);

    private static void Measure(StringBuilder body)
    {
        body.Append("<p>Type or paste what you measured, or open a log. Fitting it narrows the answer to this car.</p>\n");
        foreach ((string kind, string label) in new[] { ("gauges", "Readings of two gauges"), ("stops", "Test stops") })
        {
            body.Append("<div class=\"bb-field\"><label for=\"log-").Append(kind).Append("\">").Append(label)
                .Append(" (comma-separated, first line names columns and units)</label><textarea id=\"log-").Append(kind)
                .Append("\" spellcheck=\"false\"></textarea>\n<div class=\"bb-row\"><button type=\"button\" data-log=\"").Append(kind)
                .Append("\">Begin a form</button><label for=\"file-").Append(kind).Append("\">or open a log</label><input type=\"file\" id=\"file-").Append(kind)
                .Append("\" data-log-file=\"").Append(kind).Append("\" accept=\".csv,text/csv\"></div></div>\n");
        }

        body.Append("<div class=\"bb-row\"><button type=\"button\" id=\"live-fit\">Fit</button><button type=\"button\" id=\"live-cancel\" hidden>Stop fitting</button></div>\n"
            + "<div id=\"live-measured\"></div>\n<div class=\"bb-pictures\"></div>\n");
    }
}
