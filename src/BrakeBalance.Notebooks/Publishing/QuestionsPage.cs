using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Publishing;

/// <summary>The common questions with their answers for one car: the same that <c>measure questions</c> prints.</summary>
internal static class QuestionsPage
{
    public const string FileName = "questions.html";

    private const string Style =
        """
        .bb-questions { max-width: 60rem; margin: 0 auto; padding: 0 clamp(0.9rem, 3vw, 2rem) 2rem; }
        .bb-questions > * { max-width: 46rem; }
        .bb-questions ol { padding-left: 2.2rem; }
        .bb-questions nav li { padding: 0.15rem 0; }
        .bb-question { margin: 1.6rem 0; padding-top: 0.2rem; border-top: 1px solid var(--line); }
        .bb-question h3 { margin: 0.6rem 0 0.4rem; }
        .bb-question p { margin: 0 0 0.5rem; }
        .bb-question .bb-more { font-size: 0.92rem; color: var(--muted); }
        @media print {
          .bb-questions nav { display: none; }
          .bb-question { break-inside: avoid; margin: 6pt 0; }
          .bb-question h3 { break-after: avoid; }
          .bb-question .bb-more { font-size: inherit; }
        }
        """;

    /// <summary>Renders the page.</summary>
    /// <param name="reading">The car as read.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="notebooks">Names of the notebooks that have a page beside this one.</param>
    /// <param name="facts">Facts for the foot of the page.</param>
    /// <returns>The page; it needs no other file.</returns>
    public static RenderedPage Render(
        VehicleReading reading, UnitSystem units, IReadOnlyCollection<string> notebooks, IEnumerable<KeyValuePair<string, string>> facts)
    {
        IReadOnlyList<QuestionAnswer> answers = QuestionDesk.Answer(reading, units);
        string title = "Common questions: " + reading.Vehicle.Name;
        var body = new StringBuilder();
        body.Append("<style>\n").Append(Style).Append("\n</style>\n<main id=\"content\" class=\"bb-questions\" tabindex=\"-1\">\n<h1>")
            .Append(HtmlText.Escape(title)).Append("</h1>\n<p class=\"bb-lead\">").Append(HtmlText.Escape(Lead(answers))).Append("</p>\n")
            .Append("<div class=\"bb-caution\" role=\"note\"><p><strong>Caution.</strong> ").Append(HtmlText.Escape(SettingWords.Caution))
            .Append($" {QuestionDesk.Holds} ")
            .Append("Work on brakes and test stops are for competent people, within local law and by the service manual.</p></div>\n");
        if (BandText.LegendOf(reading.Vehicle) is { Length: > 0 } legend)
        {
            body.Append("<p>").Append(HtmlText.Escape(legend)).Append("</p>\n");
        }

        Lacking(body, answers);
        body.Append("<nav aria-label=\"Questions\">\n");
        foreach (IGrouping<QuestionTopic, QuestionAnswer> topic in answers.GroupBy(answer => answer.Topic))
        {
            body.Append("<p><strong>").Append(Heading(topic.Key)).Append("</strong></p>\n")
                .Append(CultureInfo.InvariantCulture, $"<ol start=\"{topic.First().Number}\">");
            foreach (QuestionAnswer answer in topic)
            {
                body.Append("<li>").Append(Link(answer, HtmlText.Escape(answer.Question)))
                    .Append(answer.Answer is null ? " (a number lacks)" : "").Append("</li>");
            }

            body.Append("</ol>\n");
        }

        body.Append("</nav>\n");
        foreach (IGrouping<QuestionTopic, QuestionAnswer> topic in answers.GroupBy(answer => answer.Topic))
        {
            body.Append("<h2>").Append(Heading(topic.Key)).Append("</h2>\n");
            foreach (QuestionAnswer answer in topic)
            {
                Question(body, answer, notebooks);
            }
        }

        body.Append("</main>\n");
        string html = PageShell.Html(new PageShell.Parts(title, body.ToString(), facts, IsIndex: false, SingleFile: true, HasCode: false));
        return new RenderedPage(FileName, title, HtmlText.Escape(Lead(answers)), html, [])
        {
            Headings = [.. answers.Select(answer => new PageHeading(2, $"q{answer.Number}", HtmlText.Escape(answer.Question)))],
        };
    }

    private static string Lead(IReadOnlyList<QuestionAnswer> answers)
    {
        int open = answers.Count(answer => answer.Answer is null);
        return Invariant.Text($"{answers.Count} questions that are asked most, answered for this car: ")
            + (open == 0 ? "each from its file."
                : Invariant.Text($"{answers.Count - open} from its file, {open} with the number that lacks."));
    }

    private static void Lacking(StringBuilder body, IReadOnlyList<QuestionAnswer> answers)
    {
        IGrouping<string, QuestionAnswer>[] entries =
            [.. answers.SelectMany(answer => answer.Lacking.Select(entry => (entry, answer)))
                .GroupBy(pair => pair.entry, pair => pair.answer)];
        if (entries.Length == 0)
        {
            return;
        }

        body.Append("<div class=\"bb-note\" role=\"note\"><p><strong>Lacking in the file, and how each is found</strong></p>\n<ul>\n");
        foreach (IGrouping<string, QuestionAnswer> entry in entries)
        {
            string questions = string.Join(", ", entry.Select(answer => Link(answer, $"{answer.Number}")));
            body.Append("<li>").Append(HtmlText.Escape(entry.Key)).Append(" (question ").Append(questions).Append(")</li>\n");
        }

        body.Append("</ul></div>\n");
    }

    private static void Question(StringBuilder body, QuestionAnswer answer, IReadOnlyCollection<string> notebooks)
    {
        body.Append(CultureInfo.InvariantCulture, $"<section class=\"bb-question\" id=\"q{answer.Number}\">\n<h3>{answer.Number}. ")
            .Append(HtmlText.Escape(answer.Question)).Append("</h3>\n<p>")
            .Append(answer.Answer is { } text ? HtmlText.Escape(text)
                : "<strong>Lacking:</strong> " + HtmlText.Escape(string.Join("; ", answer.Lacking)) + ".")
            .Append("</p>\n");
        if (answer.Vague.Count > 0)
        {
            body.Append("<p class=\"bb-more\">Known only as a range or by the class: ")
                .Append(HtmlText.Escape(string.Join(", ", answer.Vague))).Append(".</p>\n");
        }

        QuestionPointers more = QuestionPointers.Of(answer.Number);
        IEnumerable<string> places = more.Notebooks.Select(number =>
            notebooks.FirstOrDefault(name => name.StartsWith(number + "-", StringComparison.Ordinal)) is { } page
                ? $"<a href=\"{HtmlText.Escape(PageNames.FileFor(page))}\">notebook {number}</a>"
                : $"notebook {number}");
        body.Append("<p class=\"bb-more\">More: ")
            .AppendJoin(", ", places.Concat(more.Commands.Select(command => $"command <code>{HtmlText.Escape(command)}</code>")))
            .Append(".</p>\n</section>\n");
    }

    private static string Link(QuestionAnswer answer, string words) => Invariant.Text($"<a href=\"#q{answer.Number}\">{words}</a>");

    private static string Heading(QuestionTopic topic) => topic switch
    {
        QuestionTopic.Effort => "Booster and effort",
        QuestionTopic.Pedal => "Master cylinder and pedal",
        QuestionTopic.Balance => "Valves and balance",
        _ => "Tyres, load, heat and the wet",
    };
}
