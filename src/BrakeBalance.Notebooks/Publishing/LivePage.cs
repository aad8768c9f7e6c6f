using System.IO.Compression;
using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Charts.Live;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The page of one's own car: the calculation assembly runs in it, so one file answers for any car without a network.</summary>
internal static class LivePage
{
    public const string FileName = "your-car.html";

    public const string Title = "Your car";

    // Longer logs would make a page that no phone opens; it says then that they are not read.
    private const int MostLogs = 1_000_000;

    private const string Summary = "Enter your car, move any value, and see at once which axle locks first and where the valve may stand. "
        + "Everything is worked out in the page.";

    private const string Pictures = "<div class=\"bb-pictures\"></div>\n";

    private const string Whose =
        "<p id=\"live-whose\" hidden><span></span> <button type=\"button\" id=\"live-own\">Enter your own: Car</button></p>\n";

    private const string Head =
        """
        <h1>Your car</h1>
        <section id="live-bar" aria-label="Answer" aria-live="polite"><p id="live-earlier" hidden></p>
        <div id="live-said"><p>The calculation is starting &hellip;</p></div></section>
        <noscript><p>This page works the numbers out itself and needs scripts for it.</p></noscript>
        """;

    private const string Car =
        """
        <div class="bb-row"><label for="live-begin">Begin with</label>
        <select id="live-begin"><option value="">choose &hellip;</option></select>
        <label for="live-open">or open a vehicle file</label>
        <input type="file" id="live-open" accept=".json,application/json">
        <label for="live-units">Units</label>
        <select id="live-units"><option value="si">metric</option><option value="us">US customary</option></select></div>
        <div class="bb-row" id="live-setups" role="group" aria-label="Set-ups"></div>
        <ul id="live-loose" class="bb-wrong"></ul>
        <form id="live-form" autocomplete="off"></form>
        <div class="bb-row"><button type="button" id="live-undo">Undo</button>
        <button type="button" id="live-save">Save the vehicle file</button>
        <button type="button" id="live-link">Copy a link with this car</button>
        <button type="button" id="live-picture" aria-expanded="false" aria-controls="live-scan">Picture to scan</button>
        <button type="button" id="live-forget">Forget what is kept here</button></div>
        <div id="live-scan" role="region" aria-label="Picture to scan" hidden></div>
        <details class="bb-more"><summary>Paste a vehicle file or a car&rsquo;s words</summary>
        <label for="live-text">Text of the file, or what a link or a scanned picture says</label>
        <textarea id="live-text" spellcheck="false" placeholder=" "></textarea>
        <p><button type="button" id="live-paste">Take it</button></p></details>
        <p>The car stays on this device, kept by the browser until it is forgotten. Nothing is sent anywhere.</p>

        """;

    private const string Measure =
        """
        <p>Type or paste what you measured, or open a log. Fitting it narrows the answer to this car.</p>
        <div class="bb-field"><label for="log-gauges">Readings of two gauges (a line each; the first names columns and units)</label>
        <textarea id="log-gauges" spellcheck="false" placeholder=" "></textarea>
        <div class="bb-row"><button type="button" data-log="gauges">Begin a form of readings</button>
        <label for="file-gauges">or open a log</label>
        <input type="file" id="file-gauges" data-log-file="gauges" accept=".csv,text/csv"></div></div>
        <div class="bb-field"><label for="log-stops">Test stops (a line each; the first names columns and units)</label>
        <textarea id="log-stops" spellcheck="false" placeholder=" "></textarea>
        <div class="bb-row"><button type="button" data-log="stops">Begin a form of stops</button>
        <label for="file-stops">or open a log</label>
        <input type="file" id="file-stops" data-log-file="stops" accept=".csv,text/csv"></div></div>
        <div class="bb-field"><label for="file-series">Stops in the log of a phone or logger, whatever its columns</label>
        <input type="file" id="file-series" accept=".csv,.txt,.tsv,.log,text/plain"><div id="live-series"></div></div>
        <div class="bb-row"><button type="button" id="live-fit">Fit</button>
        <button type="button" id="live-cancel" hidden>Stop fitting</button>
        <span id="live-progress" role="timer" hidden></span></div>
        <div id="live-measured"></div>
        <div id="live-next"></div>

        """;

    private const string Paper =
        """
        <h2>Pocket card</h2>
        <div class="bb-row"><span class="bb-pair"><label for="card-paper">Sheet</label>
        <select id="card-paper"><option value="a5">A5</option><option value="half-letter">half a Letter sheet</option></select></span>
        <span class="bb-pair"><label for="card-load">Load</label> <select id="card-load"></select></span>
        <button type="button" data-print="card" disabled>Print the card</button>
        <button type="button" data-keep="card" disabled>Save the card</button></div>
        <iframe id="card-sheet" class="bb-paper" title="Pocket card" hidden></iframe>
        <h2>Bench sheet</h2>
        <p>Hoses, plumbing, push rod and a change of parts, from a bench file with your own readings.</p>
        <div class="bb-field"><label for="bench-text">Text of the bench file</label>
        <textarea id="bench-text" spellcheck="false" placeholder=" "></textarea>
        <div class="bb-row"><label for="bench-open">or open one</label>
        <input type="file" id="bench-open" accept=".json,application/json">
        <button type="button" id="bench-begin">Begin with an invented job to write over</button></div></div>
        <div class="bb-row"><button type="button" id="bench-make">Make the sheet</button>
        <button type="button" data-print="bench" disabled>Print the sheet</button>
        <button type="button" data-keep="bench" disabled>Save the sheet</button>
        <button type="button" id="bench-keep">Save the bench file</button></div>
        <ul id="bench-problems" class="bb-wrong"></ul><p id="bench-said"></p>
        <iframe id="bench-sheet" class="bb-paper" title="Bench sheet" hidden></iframe>

        """;

    private const string Parts =
        """
        <p>Which parts give the pedal and the balance that you want? Every combination of your list is tried on the set-up under Car.</p>
        <div class="bb-field"><label for="parts-text">Parts to choose among (a line each)</label>
        <textarea id="parts-text" spellcheck="false" placeholder=" "></textarea>
        <div class="bb-row"><button type="button" id="parts-begin">Begin with invented parts about this car</button>
        <label for="parts-open">or open a list</label><input type="file" id="parts-open" accept=".csv,text/csv">
        <button type="button" id="parts-keep">Save the list</button></div></div>
        <details class="bb-more" id="parts-more"><summary>Targets: common practice where nothing is filled in</summary>
        <div class="bb-row"><label for="targets-open">Open a file of targets</label>
        <input type="file" id="targets-open" accept=".json,application/json">
        <button type="button" id="targets-keep">Save the targets</button></div>
        <div id="parts-targets"></div></details>
        <div class="bb-row"><button type="button" id="parts-go">Search</button>
        <button type="button" id="parts-stop" hidden>Stop the search</button>
        <progress id="parts-done" aria-label="Combinations tried" max="1" value="0" hidden></progress></div>
        <ul id="parts-problems" class="bb-wrong"></ul>
        <div id="parts-found"></div>

        """;

    private const string Caution = "A calculation is no approval. Work on brakes and test stops are for competent people, within local law "
        + "and by the service manual.";

    private static readonly (string Tab, string Label, string Body)[] Tabs =
    [
        ("car", "Car", Car),
        ("balance", "Balance", Whose + Pictures + "<h2>Behind the answer</h2>\n<div id=\"live-answer\"></div>\n"),
        ("pedal", "Pedal", Pictures),
        ("stops", "Stops", Pictures),
        ("heat", "Heat", Pictures),
        ("measure", "Measure", Measure + Pictures),
        ("compare", "Compare",
            "<p>Copy a set-up under Car, then change it. Rows that differ are shaded.</p>\n<div id=\"live-compared\"></div>\n"),
        ("choose", "Parts", Parts),
        ("paper", "Paper", Paper),
    ];

    /// <summary>Renders the page.</summary>
    /// <param name="text">The vehicle file with which it begins.</param>
    /// <param name="logs">Texts of the logs that it names, by <c>gauges</c> and <c>stops</c>; null for none.</param>
    /// <param name="system">The system of units in which it opens.</param>
    /// <returns>The page; it needs no other file.</returns>
    public static RenderedPage Render(string text, IReadOnlyDictionary<string, string>? logs = null, UnitSystem system = UnitSystem.Si)
    {
        ArgumentNullException.ThrowIfNull(text);
        logs = logs?.Values.Sum(log => log.Length) <= MostLogs ? logs : new Dictionary<string, string>();
        var body = new StringBuilder();
        body.Append("<style>\n").Append(HtmlText.Plain(LiveAssets.Style, "\\00")).Append("\n</style>\n")
            .Append("<main id=\"content\" class=\"bb-live-page\" tabindex=\"-1\">\n").Append(Head)
                .Append("\n<nav id=\"live-tabs\" aria-label=\"Parts of this page\">");
        foreach ((string tab, string label, string _) in Tabs)
        {
            string current = tab == "balance" ? "true" : "false";
            body.Append(CultureInfo.InvariantCulture, $"<button type=\"button\" data-tab=\"{tab}\" "
                + $"aria-current=\"{current}\">{label}</button>");
        }

        body.Append("</nav>\n<p id=\"live-status\" role=\"status\" hidden></p>\n<div id=\"live-panels\">\n");
        foreach ((string tab, string label, string inside) in Tabs)
        {
            body.Append(CultureInfo.InvariantCulture, $"<section id=\"live-{tab}\" "
                + $"aria-label=\"{label}\"{(tab == "balance" ? "" : " hidden")}>\n").Append(inside)
                .Append("</section>\n");
        }

        body.Append("</div>\n<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> ")
            .Append(HtmlText.Escape($"{SettingWords.Caution} {Caution}"))
            .Append("</p></div>\n<section id=\"live-dock\" aria-label=\"Sliders\" hidden></section>\n</main>\n");
        string units = system == UnitSystem.Us ? "us" : "si";
        PageShell.AppendData(body, "live-first", JsonSerializer.Serialize(new { text, logs, units }));
        PageShell.AppendData(body, "live-letters", JsonSerializer.Serialize(Packed(OutlinedText.Letters)));
        PageShell.AppendData(body, "live-known", JsonSerializer.Serialize(Known(text, logs, units)));
        var parts = new PageShell.Parts(Title, body.ToString(), [], IsIndex: false, SingleFile: true, HasCode: false)
        {
            IsLive = true,
            StartsAtOnce = true,
            OwnScript = LiveAssets.Script,
        };
        return new RenderedPage(FileName, Title, Summary, PageShell.Html(parts), []) { IsLive = true };
    }

    // What the page opens with, its form, answer and first figure, packed, so that they stand there before the calculation is ready.
    private static string Known(string text, IReadOnlyDictionary<string, string> logs, string units)
    {
        var desk = new LiveDesk();
        var known = new JsonObject();
        foreach (string what in (string[])["begin", "form", "car", "figure"])
        {
            JsonObject asked = new()
            {
                ["do"] = what,
                ["text"] = text,
                ["units"] = units,
                ["logs"] = JsonSerializer.SerializeToNode(logs),
                ["name"] = known["begin"]?["figures"]?[0]?["names"]?[0]?.ToString(),
            };
            known[what] = JsonNode.Parse(desk.Answer(asked.ToJsonString()));
        }

        return Packed(known.ToJsonString());
    }

    private static string Packed(string text)
    {
        using var packed = new MemoryStream();
        using (var packing = new DeflateStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            packing.Write(Encoding.UTF8.GetBytes(text));
        }

        return Convert.ToBase64String(packed.ToArray());
    }
}
