using BrakeBalance.Charts;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Notebooks.Pages;

namespace BrakeBalance.Notebooks.Classroom;

/// <summary>The printed papers of a class: one file with every student's sheet, another with the teacher's key.</summary>
/// <remarks>The sheets hold no answer, no tolerance and no step, neither in their text nor in their source.</remarks>
internal static class ClassSheets
{
    private const string KeyTitle = "Teacher's key";

    private const string Print =
        """
        .bb-paper {
          break-after: page; page-break-after: always;
          border-bottom: 1px solid var(--line); margin-bottom: 2rem; padding-bottom: 1.5rem;
        }
        .bb-paper:last-of-type { break-after: auto; page-break-after: auto; border: 0; }
        .bb-paper h2 { margin-top: 0; }
        .bb-paper table { border-collapse: collapse; font-size: 0.92em; width: 100%; }
        .bb-paper th, .bb-paper td { text-align: left; padding: 0.15em 0.5em; border-bottom: 1px solid var(--line); vertical-align: top; }
        .bb-answer { display: block; min-width: 12em; max-width: 26em; border-bottom: 1.5px solid currentColor; height: 1.9em; }
        .bb-answer span { font-size: 0.8em; color: var(--muted); }
        .bb-paper li { margin: 0.35em 0 0.8em; break-inside: avoid; }
        .bb-wrong { font-size: 0.9em; color: var(--muted); }
        .bb-scroll-x { overflow-x: auto; overflow-y: hidden; }
        .bb-car { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 20rem), 1fr)); gap: 0 1.5rem; }
        .bb-car { align-items: start; }
        .bb-part { display: grid; grid-template-columns: repeat(auto-fit, minmax(min(100%, 18rem), 1fr)); gap: 0 1.5rem; }
        .bb-part { align-items: start; break-inside: avoid; } .bb-part > ol { margin: 0; } .bb-part > div { max-width: 34rem; }
        .bb-running > p { display: flex; flex-wrap: wrap; gap: 0 1.5em; margin: 0 0 0.6em; }
        .bb-name { flex: 1; min-width: 12em; border-bottom: 1px solid currentColor; }
        @media print {
          .bb-scroll-x { overflow: visible; } body { font-size: 10pt; } h1 { display: none; }
          .bb-paper { display: table; width: 100%; margin: 0; padding: 0; border: 0; } .bb-wrong { color: #333; }
          .bb-car { grid-template-columns: 2.2fr 1fr; } .bb-paper li { margin: 0.2em 0 0.4em; }
          .bb-paper .bb-car :is(th, td) { font-size: 0.85em; font-weight: normal; padding: 0.05em 0.5em; line-height: 1.25; }
          .bb-paper .bb-car td { white-space: nowrap; } .bb-part { grid-template-columns: minmax(0, 1fr) 62mm; }
          .bb-paper .bb-table td, .bb-paper .bb-table th { padding: 0 0.5em; line-height: 1.2; } .bb-paper .bb-csv { display: none; }
          /* The head of a table stands on each of its pages. */
          .bb-running { display: table-header-group; break-inside: avoid; } .bb-running + div { display: table-row-group; }
        }
        """;

    private const string SlidePrint =
        """
        @page { size: 297mm 167mm; margin: 8mm; }
        html { scroll-snap-type: y proximity; }
        .bb-slide { min-height: 92vh; scroll-snap-align: start; break-after: page; box-sizing: border-box; padding: 1rem 0; }
        .bb-slide:last-of-type { break-after: auto; }
        .bb-slide svg { display: block; width: 100%; height: auto; max-height: 80vh; background: #fff; }
        .bb-slide :is(li, h3) { font-size: 1.5rem; margin: 0.6rem 0; }
        .bb-layout:has(.bb-slide) { display: block; max-width: none; }
        .bb-layout:has(.bb-slide) main { max-width: none; }
        @media print {
          .bb-slide { min-height: 0; padding: 0; } .bb-slide h2 { margin: 0 0 2mm; } .bb-slide svg { max-height: 132mm; }
          main > h1, .bb-layout:has(.bb-slide) + footer { display: none; }
        }
        """;

    /// <summary>The students' sheets in one page, each on paper of its own.</summary>
    /// <param name="plan">Which lessons, for whom.</param>
    /// <param name="failed">Told of each student whose paper cannot be made; without it, the first ends the work.</param>
    /// <param name="begun">Told of each student whose paper is begun.</param>
    /// <returns>HTML without any answer.</returns>
    public static string Students(ClassPlan plan, Action<int, Exception>? failed = null, Action? begun = null) =>
        Page(plan, "Exercise sheets", failed, begun, (html, student) =>
    {
        ExerciseCar car = ExerciseCar.For(plan.Number(student));
        Head(html, plan, student, "Exercise sheet", car);
        Parts(html, plan, student, car, isWhole: false, exercise =>
        {
            string unit = exercise.Answer.Unit(plan.Units == UnitSystem.Us);
            html.Append("<span class=\"bb-answer\"><span>")
                .Append(unit.Length > 0 ? $"Answer with unit, for example “{HtmlText.Escape(unit)}”" : "Answer, a plain number")
                .Append("</span></span>");
        });
    });

    /// <summary>The teacher's key: every answer with its tolerance, its steps and the wrong answers that tell what went wrong.</summary>
    public static string Key(ClassPlan plan, Action<int, Exception>? failed = null, Action? begun = null) =>
        Page(plan, KeyTitle, failed, begun, (html, student) =>
    {
        ExerciseCar car = ExerciseCar.For(plan.Number(student));
        Head(html, plan, student, KeyTitle, car);
        bool us = plan.Units == UnitSystem.Us;
        Parts(html, plan, student, car, isWhole: true, exercise =>
        {
            string tolerance = exercise.Answer.Quantity is null
                ? Invariant.Text($"± {exercise.Answer.Tolerance:0.###}")
                : Invariant.Text($"± {exercise.Answer.Tolerance * 100:0} %");
            html.Append(CultureInfo.InvariantCulture, $"<br><strong>{HtmlText.Escape(exercise.Answer.Text(us))}</strong> {tolerance}");
            foreach (string step in exercise.Steps)
            {
                html.Append("<div class=\"bb-scroll-x\">").Append(Prose(step)).Append("</div>");
            }

            if (exercise.Answer.Mistakes.Count > 0)
            {
                html.Append("<div class=\"bb-wrong\">Common wrong answers: ")
                    .AppendJoin("; ", exercise.Answer.Mistakes.GroupBy(mistake => exercise.Answer.TextOf(mistake, us), one => one.Name)
                    .Select(same => HtmlText.Escape($"{same.Key} ({string.Join(", or ", same)})"))).Append("</div>");
            }
        });
    });

    /// <summary>The teacher's booklet: for each lesson a plan of ninety minutes, its figure, and all answers of the class.</summary>
    public static string Booklet(ClassPlan plan)
    {
        Exercise[][] sheets = [.. plan.Students.Select(student => plan.Exercises(ExerciseCar.For(plan.Number(student))).ToArray())];
        var papers = new StringBuilder();
        foreach (Lesson lesson in Lesson.All.Where(plan.Covers))
        {
            papers.Append(CultureInfo.InvariantCulture,
                $"<section class=\"bb-paper\">\n<div class=\"bb-running\"><p>Class {plan.Code}, teacher's booklet, lesson {lesson.Number}"
                    + $"</p></div>\n<div>\n<h2>Lesson {lesson.Number}: {HtmlText.Escape(lesson.Title)}</h2>\n")
                .Append("<p><strong>They need:</strong> ").Append(HtmlText.Escape(lesson.Needs)).Append("</p>\n");
            Rows(papers, "Ninety minutes", ["Minutes", "What"], Plan.Select(part => new[]
            {
                part.Minutes.ToString(CultureInfo.InvariantCulture), part.What,
            }));
            if (lesson.Id == "load-transfer")
            {
                papers.Append("<p><strong>Before lesson 3</strong> show the end of this lesson: why the rear must not lock first.</p>\n");
            }

            Rows(papers, "Often believed", ["Belief", "What is so"], lesson.Misconceptions.Select(one => new[] { one.Belief, one.Fact }));
            papers.Append("<h3>To talk over</h3>\n<ul>\n").AppendJoin("", lesson.Discussion.Select(question =>
                $"<li>{HtmlText.Escape(question)}</li>\n")).Append("</ul>\n<h3>To show</h3>\n")
                .Append(LessonSheet.Of(lesson.Id, 2026, units: plan.Units).Figure.Start.Figures[0].ToHtml());
            Rows(papers, "Answers", ["Student", "1 mark", "2 marks", "3 marks"], sheets.Index().Select(sheet => sheet.Item
                .Where(exercise => exercise.Lesson == lesson).Select(exercise => exercise.Answer.Text(plan.Units == UnitSystem.Us))
                .Prepend(plan.Students[sheet.Index].ToString(CultureInfo.InvariantCulture)).ToArray()));
            papers.Append("</div>\n</section>\n");
        }

        papers.Append("<section class=\"bb-paper\">\n");
        Rows(papers, "Marks for the way, beside those for the answer", ["What is looked at", "2 points", "1 point", "0 points"], Rubric);
        papers.Append("</section>\n");
        return Shell("Teacher's booklet", papers);
    }

    /// <summary>Slides for a class: of each lesson its figures with the car that is nobody's, and what to talk over.</summary>
    public static string Slides(ClassPlan plan)
    {
        var slides = new StringBuilder("<style>\n" + SlidePrint + "\n</style>\n");
        foreach (Lesson lesson in Lesson.All.Where(plan.Covers))
        {
            string title = HtmlText.Escape($"Lesson {lesson.Number}: {lesson.Title}");
            foreach (Figure figure in LessonSheet.Of(lesson.Id, 2026, units: plan.Units).Figure.Start.Figures)
            {
                slides.Append(CultureInfo.InvariantCulture, $"<section class=\"bb-slide\">\n<h2>{title}</h2>\n")
                    .Append((figure with { Id = $"{lesson.Id}-{figure.Id}" }).ToSvg(FigureSize.Slide)).Append("</section>\n");
            }

            slides.Append(CultureInfo.InvariantCulture, $"<section class=\"bb-slide\">\n<h2>{title}</h2>\n<h3>True or not?</h3>\n<ul>\n")
                .AppendJoin("", lesson.Misconceptions.Select(one => $"<li>{HtmlText.Escape(one.Belief)}</li>\n"))
                .Append("</ul>\n<h3>To talk over</h3>\n<ul>\n")
                .AppendJoin("", lesson.Discussion.Select(question => $"<li>{HtmlText.Escape(question)}</li>\n"))
                .Append("</ul>\n<p><small>The car is invented. A calculation is no approval of a brake; rear-first lock-up can spin a "
                    + "car.</small></p>\n</section>\n");
        }

        return Shell("Slides", slides);
    }

    // Common practice.
    private static readonly string[][] Rubric =
    [
        ["A sketch or the right equation", "complete, with symbols of the course", "begun, or one part missing", "none"],
        ["Numbers put in, with units", "every number with its unit, converted rightly", "one slip", "numbers without units"],
        ["The answer", "with unit, and as many figures as the numbers bear", "right, but without unit or with too many figures", "none"],
        ["Does it make sense?", "said why the answer is likely, such as a limit it keeps", "said that it is likely", "nothing said"],
        ["What it means for the car", "which axle locks first, or what the driver feels", "named, without a reason", "nothing said"],
    ];

    // Common practice.
    private static readonly (int Minutes, string What)[] Plan =
    [
        (5, "Ask the lesson's question; collect guesses and leave them on the board."),
        (15, "Derive the equations with the figure in view."),
        (15, "Move the figure: what the lesson asks to see, in pairs."),
        (10, "The worked example, each step by another student."),
        (30, "The sheet, alone: 6 marks, each answer with its unit."),
        (10, "What is often believed; the questions to talk over."),
        (5, "Back to the guesses on the board."),
    ];

    private static void Rows(StringBuilder html, string title, string[] head, IEnumerable<string[]> rows)
    {
        html.Append(CultureInfo.InvariantCulture, $"<h3>{title}</h3>\n<div class=\"bb-scroll-x bb-table\"><table>\n<thead><tr>")
            .AppendJoin("", head.Select(cell => $"<th scope=\"col\">{cell}</th>")).Append("</tr></thead>\n<tbody>\n");
        foreach (string[] row in rows)
        {
            html.Append("<tr>").AppendJoin("", row.Select(cell => $"<td>{HtmlText.Escape(cell)}</td>")).Append("</tr>\n");
        }

        html.Append("</tbody>\n</table></div>\n");
    }

    /// <summary>The questions lesson by lesson, each lesson beside its figure.</summary>
    private static void Parts(
        StringBuilder html, ClassPlan plan, int student, ExerciseCar car, bool isWhole, Action<Exercise> below)
    {
        foreach (var lesson in plan.Exercises(car).Index().GroupBy(one => one.Item.Lesson))
        {
            html.Append("<div class=\"bb-part\">\n<ol>\n");
            foreach ((int index, Exercise exercise) in lesson)
            {
                html.Append(CultureInfo.InvariantCulture, $"<li value=\"{index + 1}\">{Prose(exercise.Question)} <small>({exercise.Id}, ")
                    .Append(CultureInfo.InvariantCulture, $"{exercise.Level} {(exercise.Level == 1 ? "mark" : "marks")})</small>");
                below(exercise);
                html.Append("</li>\n");
            }

            html.Append("</ol>\n<div>").Append(LessonSheet.Drawing(lesson.Key, car, student, plan.Units, isWhole))
                .Append("</div>\n</div>\n");
        }
    }

    private static string Page(ClassPlan plan, string title, Action<int, Exception>? failed, Action? begun,
        Action<StringBuilder, int> paper)
    {
        var body = new StringBuilder();
        foreach (int student in plan.Students)
        {
            var sheet = new StringBuilder();
            begun?.Invoke();
            try
            {
                paper(sheet, student);
            }
            catch (Exception exception) when (failed is not null)
            {
                failed(student, exception);
                continue;
            }

            body.Append("<section class=\"bb-paper\">\n").Append(sheet).Append("</div>\n</section>\n");
        }

        body.Append("<section class=\"bb-paper\">\n").Append(LessonSheet.Symbols.ToHtml()).Append("</section>\n");
        return Shell(title, body);
    }

    private static string Shell(string title, StringBuilder papers)
    {
        string body = $"<style>\n{Print}\n</style>\n<div class=\"bb-layout\">\n<main id=\"content\" tabindex=\"-1\">\n<h1>{title}</h1>\n"
            + $"{papers}</main>\n</div>\n";
        KeyValuePair<string, string>[] facts = [new("Cars", "invented, drawn by the teacher's secret and a student number")];
        return PageShell.Html(new PageShell.Parts(title, body, facts, IsIndex: false, SingleFile: false, HasCode: false));
    }

    private static void Head(StringBuilder html, ClassPlan plan, int student, string title, ExerciseCar car)
    {
        string right = title == KeyTitle ? title : "<span class=\"bb-name\">Name</span>";
        html.Append(CultureInfo.InvariantCulture,
            $"<div class=\"bb-running\"><p>Class {plan.Code}, student number {student}. {right}</p></div>\n"
                + $"<div>\n<h2>{title} {student}</h2>\n")
            .Append("<p>The car is invented. A calculation is no approval of a brake; rear-first lock-up can spin a car. "
                + "The pages of the lessons draw it: class code and student number are asked for below their figure.")
            .Append(title == KeyTitle ? "" : " Here the axes of each lesson's figure stand beside its questions, to draw into.")
            .Append("</p>\n<div class=\"bb-car\"><div class=\"bb-scroll-x\"><table>\n<tbody>\n");
        foreach ((string name, string symbol, string value) in CarData.Of(car, plan.Units))
        {
            html.Append("<tr><th scope=\"row\">").Append(HtmlText.Escape(name)).Append("</th><td>").Append(HtmlText.Escape(symbol))
                .Append("</td><td>").Append(HtmlText.Escape(value)).Append("</td></tr>\n");
        }

        html.Append("</tbody>\n</table></div>\n")
            .Append(title == KeyTitle ? "" : $"<div>{LessonSheet.Sketch(car, student, plan.Units)}</div>").Append("</div>\n");
    }

    private static string Prose(string markdown)
    {
        var prose = new ProseRenderer("sheet");
        string html = prose.Render("exercise", markdown).Trim();
        return prose.Problems.Count > 0
            ? throw new InvalidOperationException(prose.Problems[0].ToString())
            : html.StartsWith("<p>", StringComparison.Ordinal) && html.EndsWith("</p>", StringComparison.Ordinal) ? html[3..^4] : html;
    }
}
