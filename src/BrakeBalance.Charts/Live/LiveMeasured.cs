using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Charts.Live;

/// <summary>What gauges and test stops typed into a live page say of the car, and what to do next.</summary>
internal static class LiveMeasured
{
    /// <summary>What a phone's or logger's export holds: what each column was taken for, and the stops in it.</summary>
    public static string Series(string log, UnitSystem units)
    {
        List<string> problems = [];
        LogReading<MotionSample>? reading = LogFile.Read("this log", text => LogReader.ReadTimeSeries(text), false, problems,
            _ => new StringReader(log));
        if (reading is not null && StopFinder.WhyTooFew(reading.Rows) is { } few)
        {
            problems.Add(few);
        }

        if (reading is null || problems.Count > 0)
        {
            return string.Concat(problems.Select(problem => $"<p class=\"bb-wrong\">{HtmlRenderer.Escape(problem)}</p>\n"));
        }

        StopSearch search = StopFinder.Find(reading.Rows);
        NamedTable?[] tables =
        [
            MeasurementTables.Stops(search, units), MeasurementTables.Wheels(search, units), MeasurementTables.Columns(reading.Columns),
            reading.Problems.Count > 0 ? MeasurementTables.LeftOut(reading.Problems) : null,
        ];
        return string.Concat(tables.OfType<NamedTable>().Select(table => table.ToHtml()));
    }

    /// <summary>The tables, as the notebook of test stops shows them.</summary>
    public static string Html(LiveCar car, UnitSystem units)
    {
        var html = new StringBuilder();
        foreach (string problem in car.LogProblems)
        {
            html.Append("<p class=\"bb-wrong\">").Append(HtmlRenderer.Escape(problem)).Append("</p>\n");
        }

        if (car.Own is not { } own)
        {
            return html.ToString();
        }

        string[] invented = own.AreInvented ? ["A log says of itself that it is invented."] : [];
        string[] changed = car.IsChanged
            ? ["The car was changed since: what its logs say of friction and height goes with it. Was an entry wrong, fit again."] : [];
        foreach (string words in (string[])[.. own.LeftOut, .. own.Doubts, .. invented, .. changed])
        {
            html.Append("<p class=\"bb-warned\">").Append(HtmlRenderer.Escape(InBoth.Only(words, units == UnitSystem.Us))).Append("</p>\n");
        }

        if (own.Valve is { } valve)
        {
            html.Append(MeasurementTables.Knees(valve, units).ToHtml());
            html.Append(MeasurementTables.Valve(valve, units).ToHtml());
            foreach (string words in valve.Findings.Select(finding => InBoth.Only(finding.Text, units == UnitSystem.Us)))
            {
                html.Append("<p class=\"bb-warned\">").Append(HtmlRenderer.Escape(words)).Append("</p>\n");
            }
        }

        if (own.Estimate is { } estimate)
        {
            html.Append(MeasurementTables.Estimate(estimate, units).ToHtml());
            html.Append(MeasurementTables.Weights(estimate, units).ToHtml());
            foreach (string words in estimate.Identifiability)
            {
                html.Append("<p>").Append(HtmlRenderer.Escape(words)).Append("</p>\n");
            }
        }

        return html.ToString();
    }

    /// <summary>The stop to make next, before the first as well as after some; nothing while the file or its logs are in doubt.</summary>
    public static string Next(LiveCar car, UnitSystem units)
    {
        if (car.Reading is not { } reading || car.LogProblems.Count > 0 || car.Own?.Doubts.Count > 0)
        {
            return "";
        }

        NextStops next = NextTest.Of(OwnMeasurements.EstimateOn(car.Study?.Car ?? reading.Vehicle, []));
        string abort = next.Candidates is [CandidateStop first, ..]
            ? $"<p>Abort when {HtmlRenderer.Escape(NextStopWords.Abort(first, units))}.</p>\n" : "";
        return MeasurementTables.NextStops(next, units).ToHtml() + abort + $"<p>{HtmlRenderer.Escape(SettingWords.Caution)}</p>\n";
    }
}
