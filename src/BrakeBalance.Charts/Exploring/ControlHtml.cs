namespace BrakeBalance.Charts.Exploring;

/// <summary>Writes the controls and answers of an explorable.</summary>
internal static class ControlHtml
{
    /// <summary>The controls, hidden until the page's script runs.</summary>
    public static void Controls(StringBuilder html, Explorable explorable)
    {
        html.Append("<form class=\"bb-controls\" hidden autocomplete=\"off\">\n");
        foreach (Control control in explorable.Controls)
        {
            string id = $"{explorable.Id}-{control.Id}", start = control.Settings[control.Start];
            html.Append("<div class=\"bb-control\">\n");
            html.Append(CultureInfo.InvariantCulture, $"<label for=\"{id}\">{HtmlRenderer.Escape(control.Label)}</label>\n");
            html.Append(CultureInfo.InvariantCulture,
                $"<output id=\"{id}-value\" for=\"{id}\" aria-live=\"polite\">{HtmlRenderer.Escape(start)}</output>\n");
            if (control.IsSlider)
            {
                html.Append(CultureInfo.InvariantCulture,
                    $"<input type=\"range\" id=\"{id}\" min=\"0\" max=\"{control.Settings.Count - 1}\" "
                        + $"step=\"1\" value=\"{control.Start}\" aria-valuetext=\"{HtmlRenderer.Escape(start)}\">\n");
            }
            else
            {
                html.Append(CultureInfo.InvariantCulture, $"<select id=\"{id}\">\n");
                foreach ((int i, string setting) in control.Settings.Index())
                {
                    html.Append(CultureInfo.InvariantCulture,
                        $"<option value=\"{i}\"{(i == control.Start ? " selected" : "")}>{HtmlRenderer.Escape(setting)}</option>\n");
                }

                html.Append("</select>\n");
            }

            if (control.FrameMilliseconds is not null)
            {
                html.Append(CultureInfo.InvariantCulture, $"<button type=\"button\" id=\"{id}-play\">Play</button>\n");
            }

            html.Append("</div>\n");
        }

        html.Append("</form>\n");
    }

    /// <summary>Readouts and verdict.</summary>
    public static void Answers(StringBuilder html, Frame frame)
    {
        if (frame.Readouts.Count > 0)
        {
            html.Append("<dl class=\"bb-readouts\">\n");
            foreach (Readout readout in frame.Readouts)
            {
                html.Append(CultureInfo.InvariantCulture,
                    $"<div class=\"bb-readout\"><dt>{HtmlRenderer.Escape(readout.Label)}</dt>"
                        + $"<dd>{HtmlRenderer.Escape(readout.Value)}</dd></div>\n");
            }

            html.Append("</dl>\n");
        }

        if (frame.Verdict is { } verdict)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<p class=\"bb-verdict\" role=\"status\" data-kind=\"{Kind(verdict)}\">{HtmlRenderer.Escape(verdict.Text)}</p>\n");
        }
    }

    /// <summary>The name of a verdict's kind in the page.</summary>
    public static string Kind(Verdict verdict) => verdict.Kind switch
    {
        VerdictKind.Good => "good",
        VerdictKind.Caution => "caution",
        _ => "neutral",
    };
}
