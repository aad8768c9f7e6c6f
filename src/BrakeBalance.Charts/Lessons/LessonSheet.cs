using System.Net;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Outputs;

namespace BrakeBalance.Charts.Lessons;

/// <summary>One lesson's exercises for one student: the car's data and the questions, never the answers.</summary>
public sealed partial class LessonSheet : IHtmlOutput
{
    private readonly IReadOnlyList<Exercise> _exercises;
    private readonly UnitSystem _units;

    private readonly ClassNumber _number;

    private LessonSheet(Lesson lesson, ClassNumber number, UnitSystem units)
    {
        (Lesson, _number, _units) = (lesson, number, units);
        Car = ExerciseCar.For(number);
        _exercises = [.. Exercises.For(Car, units).Where(exercise => exercise.Lesson == lesson)];
    }

    /// <summary>The lesson.</summary>
    public Lesson Lesson { get; }

    /// <summary>The student's invented car.</summary>
    public ExerciseCar Car { get; }

    /// <summary>The symbols of the course: one letter, one meaning.</summary>
    public static NamedTable Symbols { get; } = new()
    {
        Id = "symbol-table",
        Title = "Symbols of the course",
        Caption = "One meaning each. Index 1 is the front axle, 2 the rear; i is either.",
        Table = new TableBuilder(UnitSystem.Si).Words("Symbol", CourseSymbol.All.Select(symbol => symbol.Text))
            .Words("Meaning", CourseSymbol.All.Select(symbol => symbol.Meaning))
            .Words("SI unit", CourseSymbol.All.Select(symbol => symbol.Unit))
            .Build(),
    };

    /// <summary>The middling exercise of another student, worked out.</summary>
    public Markdown Worked
    {
        get
        {
            Exercise[] others = [.. Exercises.For(_number with { Student = (_number.Student % 9999) + 1 }, _units)];
            Exercise worked = others.Single(exercise => exercise.Lesson == Lesson && exercise.Level == 2);
            IEnumerable<string> before = others.Where(exercise => exercise.Id == worked.StartsFrom).SelectMany(exercise => exercise.Steps);
            // A formula breaks before its equals signs, so that it fits a phone.
            return new Markdown([worked.Question, .. before.Concat(worked.Steps).Select(step =>
                    Formula().Replace(step, formula => formula.Value.Replace(" = ", "$ $= ", StringComparison.Ordinal))),
                $"So the answer is **{worked.Answer.Text(_units == UnitSystem.Us)}**."]);
        }
    }

    /// <summary>What a class talks over: what learners often believe, and questions without a number as their answer.</summary>
    public Markdown InClass => new([
        .. Lesson.Misconceptions.Select(one => $"*Often believed:* {one.Belief} **{one.Fact}**"),
        "To talk over:\n\n" + string.Join('\n', Lesson.Discussion.Select(question => "- " + question))]);

    /// <summary>The figure to explore.</summary>
    public Explorable Figure => LessonFigures.Of(Lesson, Car, _units)
        .Again("lesson", _units, ("lesson", Lesson.Id), ("seed", _number.Seed), ("student", _number.Student));

    /// <summary>The sheet of a lesson.</summary>
    /// <param name="lesson">The lesson's short name, such as <c>load-transfer</c>.</param>
    /// <param name="seed">The class seed.</param>
    /// <param name="student">The student's number; 1 to 9999.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">There is no such lesson.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The student's number is out of its range.</exception>
    public static LessonSheet Of(string lesson, int seed = 1, int student = 1, UnitSystem? units = null) =>
        new(Lesson.Of(lesson), new ClassNumber { Seed = seed, Student = student }, units ?? Display.Units);

    /// <summary>A drawing of a sheet's car to scale, without a number that is asked for.</summary>
    /// <param name="car">The car.</param>
    /// <param name="student">The student's number, for the names of its parts.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>SVG.</returns>
    public static string Sketch(ExerciseCar car, int student, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(car);
        return Drawn(LessonFigures.Sketch(car.Balance, units), student, FigureSize.Phone with { Name = "sketch", Height = 250 });
    }

    /// <summary>The figure of a lesson with a sheet's car.</summary>
    /// <param name="lesson">The lesson.</param>
    /// <param name="car">The car.</param>
    /// <param name="student">The student's number, for the names of its parts.</param>
    /// <param name="units">The system of units.</param>
    /// <param name="isWhole">Whether it is whole; else it has only its axes and what is given, to draw into.</param>
    /// <returns>SVG.</returns>
    public static string Drawing(Lesson lesson, ExerciseCar car, int student, UnitSystem units, bool isWhole)
    {
        ArgumentNullException.ThrowIfNull(lesson);
        ArgumentNullException.ThrowIfNull(car);
        return isWhole
            ? Drawn(LessonFigures.ToDraw(lesson, car, units), student, FigureSize.PrintSingle)
            : Drawn(LessonFigures.ToDrawInto(lesson, car, units), student,
                FigureSize.Phone with { Name = "frame", Width = 280, Height = 225, FontSize = 11 });
    }

    private static string Drawn(Figure figure, int student, FigureSize size) =>
        (figure with { Id = Invariant.Text($"{figure.Id}-{student}") }).ToSvg(size with { ShownWidth = "100%" });

    /// <summary>The figure of a lesson with the car of a class's sheet: the code tells neither its tasks nor their answers.</summary>
    internal static Explorable OfClass(string lesson, string code, int student, UnitSystem units) => LessonFigures.ToCheckWith(
        Lesson.Of(lesson), ExerciseCar.For(new ClassNumber { Code = code, Student = student }), units);

    /// <summary>Says what is off with answers, without giving the right ones.</summary>
    /// <param name="answers">
    /// The answers to exercise 1, 2 and 3: text with a unit, such as "4520 N" or "0.29", or a computed quantity or number [–].
    /// </param>
    /// <returns>A sentence for each.</returns>
    /// <exception cref="ArgumentException">There are more answers than exercises.</exception>
    public string Check(params IReadOnlyList<object> answers) => answers.Count > _exercises.Count
        ? throw new ArgumentException($"There are {_exercises.Count} exercises, and {answers.Count} answers.", nameof(answers))
        : string.Join('\n', _exercises.OrderBy(exercise => exercise.Level).Zip(answers, Check));

    private string Check(Exercise exercise, object answer)
    {
        MarkedAnswer marked = Marking.Check(exercise, ValueText.Of(answer), _units == UnitSystem.Us);
        return marked.Mark == Mark.Right ? $"Exercise {exercise.Level}: right." : $"Exercise {exercise.Level}: {marked.Comment}";
    }

    /// <summary>The car's data as rows of name and value.</summary>
    /// <returns>Name, symbol and value.</returns>
    public IReadOnlyList<(string Name, string Symbol, string Value)> Data() => CarData.Of(Car, _units);

    /// <inheritdoc/>
    public string ToHtml()
    {
        var html = new StringBuilder();
        html.Append("<section class=\"bb-exercises\">\n<table class=\"bb-table\">\n<caption>Your invented car</caption>\n<thead>"
            + "<tr><th scope=\"col\">Quantity</th><th scope=\"col\">Symbol</th><th scope=\"col\">Value</th></tr></thead>\n<tbody>\n");
        foreach ((string name, string symbol, string value) in Data())
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<tr><th scope=\"row\">{WebUtility.HtmlEncode(name)}</th>"
                    + $"<td>{WebUtility.HtmlEncode(symbol)}</td><td>{WebUtility.HtmlEncode(value)}</td></tr>\n");
        }

        html.Append("</tbody>\n</table>\n<ol>\n");
        foreach (Exercise exercise in _exercises)
        {
            html.Append(CultureInfo.InvariantCulture,
                $"<li>{Bold().Replace(WebUtility.HtmlEncode(exercise.Question), "<strong>$1</strong>")} "
                    + $"<small>({exercise.Level} {(exercise.Level == 1 ? "mark" : "marks")}{Unit(exercise)})</small></li>\n");
        }

        return html.Append("</ol>\n</section>\n").ToString();
    }

    /// <inheritdoc/>
    public string ToPlainText()
    {
        var text = new StringBuilder();
        foreach ((string name, string symbol, string value) in Data())
        {
            text.Append(CultureInfo.InvariantCulture, $"{name} {symbol}: {value}\n");
        }

        foreach (Exercise exercise in _exercises)
        {
            text.Append(CultureInfo.InvariantCulture,
                $"{exercise.Level}. {exercise.Question.Replace("**", "", StringComparison.Ordinal)}\n");
        }

        return text.ToString();
    }

    private string Unit(Exercise exercise) =>
        exercise.Answer.Unit(_units == UnitSystem.Us) is { Length: > 0 } unit
            ? $", answer in {unit} or another unit of your choice" : ", a plain number";

    [GeneratedRegex(@"\$[^$]+\$")]
    private static partial Regex Formula();

    [GeneratedRegex(@"\*\*(.+?)\*\*")]
    private static partial Regex Bold();
}
