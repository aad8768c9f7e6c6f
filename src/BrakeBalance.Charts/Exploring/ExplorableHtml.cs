using System.Text.Json.Nodes;
using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts.Exploring;

/// <summary>Writes the controls of an explorable, and a state of it.</summary>
internal static class ExplorableHtml
{
    /// <summary>The controls, hidden until the page's script runs.</summary>
    public static string Controls(Explorable explorable)
    {
        var html = new StringBuilder("<form class=\"bb-controls\" hidden autocomplete=\"off\">\n");
        foreach (Control control in explorable.Controls)
        {
            string id = $"{explorable.Id}-{control.Id}", start = HtmlRenderer.Escape(control.Settings[control.Start]);
            html.Append("<div class=\"bb-control\">\n");
            html.Append(CultureInfo.InvariantCulture, $"<label for=\"{id}\">{HtmlRenderer.Escape(control.Label)}</label>\n");
            if (control.IsSlider)
            {
                var settings = new JsonArray([.. control.Settings.Select(one => JsonValue.Create(one))]);
                string texts = HtmlRenderer.Escape(PlainJson.Text(settings));
                html.Append(CultureInfo.InvariantCulture, $"<output id=\"{id}-value\" for=\"{id}\" aria-live=\"polite\">{start}</output>\n"
                    + $"<input type=\"range\" id=\"{id}\" min=\"0\" max=\"{control.Settings.Count - 1}\" step=\"1\" "
                    + $"value=\"{control.Start}\" aria-valuetext=\"{start}\" data-texts=\"{texts}\">\n");
            }
            else
            {
                html.Append(CultureInfo.InvariantCulture, $"<select id=\"{id}\">\n");
                foreach ((int i, string setting) in control.Settings.Index())
                {
                    string selected = i == control.Start ? " selected" : "";
                    html.Append(CultureInfo.InvariantCulture, $"<option value=\"{i}\"{selected}>{HtmlRenderer.Escape(setting)}</option>\n");
                }

                html.Append("</select>\n");
            }

            if (control.FrameMilliseconds is { } milliseconds)
            {
                string itself = control.PlaysItself ? " data-itself" : "";
                html.Append(CultureInfo.InvariantCulture, $"<button type=\"button\" data-play=\"{milliseconds}\"{itself}>Play</button>\n");
            }

            html.Append("</div>\n");
        }

        return html.Append("</form>\n").ToString();
    }

    /// <summary>Why the controls stay hidden in a notebook client, and what to do.</summary>
    public const string InClient =
        "cannot work here. To see another state, change the value in a cell above and run on; in an exported page they move.";

    /// <summary>What to do where the controls stay hidden.</summary>
    public static string Still(Explorable explorable)
    {
        string what = string.Join(", ", explorable.Controls.Select(control => Figure.Small(control.Label)));
        return $"<p class=\"bb-still\">The controls of this figure ({HtmlRenderer.Escape(what)}) {InClient}</p>\n";
    }

    /// <summary>Readouts, verdict and figures of a state.</summary>
    public static string State(Frame frame, string words, FigureSize? size)
    {
        var html = new StringBuilder();
        if (frame.Readouts.Count > 0)
        {
            html.Append("<dl class=\"bb-readouts\">\n");
            bool isMiddle = frame.Figures.Any(figure => figure.Caption.EndsWith(FigureBuilder.Middles, StringComparison.Ordinal));
            foreach (Readout readout in frame.Readouts.Concat(isMiddle ? [new("Ranges of the file", "each at its middle")] : []))
            {
                html.Append(CultureInfo.InvariantCulture,
                    $"<div class=\"bb-readout\"><dt>{HtmlRenderer.Escape(readout.Label)}</dt>"
                        + $"<dd>{HtmlRenderer.Escape(readout.Value)}</dd></div>\n");
            }

            html.Append("</dl>\n");
        }

        if (frame.Verdict is { } verdict)
        {
            string kind = verdict.Kind switch { VerdictKind.Good => "good", VerdictKind.Caution => "caution", _ => "neutral" };
            html.Append(CultureInfo.InvariantCulture,
                $"<p class=\"bb-verdict\" role=\"status\" data-kind=\"{kind}\">{HtmlRenderer.Escape(verdict.Text)}</p>\n");
        }

        foreach (Figure figure in frame.Figures)
        {
            HtmlRenderer.Figure(html, figure, size);
        }

        return html.Append(CultureInfo.InvariantCulture, $"<p class=\"bb-state\">{HtmlRenderer.Escape(words)}</p>\n").ToString();
    }
}
