namespace BrakeBalance.Notebooks.Classroom;

/// <summary>A class's results as CSV: a line an answer, and a line an exercise.</summary>
internal static class ClassReport
{
    public static string Marks(ClassResults results)
    {
        var csv = new StringBuilder("student,exercise,answer,mark,points,of,comment\n");
        foreach (StudentMark mark in results.Marks.OrderBy(mark => mark.Student).ThenBy(mark => mark.Exercise.Lesson.Number)
            .ThenBy(mark => mark.Exercise.Level))
        {
            csv.Append(CultureInfo.InvariantCulture,
                $"{mark.Student},{mark.Exercise.Id},{CsvText.Cell(mark.Text)},{Words(mark.Marked.Mark)},"
                + $"{mark.Marked.Points},{mark.Exercise.Level},{CsvText.Cell(mark.Marked.Comment)}\n");
        }

        return csv.ToString();
    }

    /// <summary>The item analysis.</summary>
    /// <returns>CSV with the columns exercise, answers, facility, discrimination, most frequent comment, its count.</returns>
    public static string Items(ClassResults results)
    {
        var csv = new StringBuilder("exercise,answers,facility,discrimination,most_frequent_comment,count\n");
        foreach (ItemAnalysis item in results.Items)
        {
            (string comment, int count) = item.Comments.Count > 0 ? item.Comments[0] : ("", 0);
            csv.Append(CultureInfo.InvariantCulture,
                $"{item.ExerciseId},{item.Answers},{item.Facility:0.000},{item.Discrimination:0.000},{CsvText.Cell(comment)},{count}\n");
        }

        return csv.ToString();
    }

    /// <summary>An empty answer file for a class.</summary>
    /// <returns>CSV with the columns student, exercise, answer; the last one empty.</returns>
    public static string Blank(ClassPlan plan)
    {
        var csv = new StringBuilder(
            AnswerSheet.ClassLine(plan.Code, ClassPlan.Write(plan.Students), plan.Units == UnitSystem.Us, Lesson.All.Where(plan.Covers))
                + "\n# Write each answer with its unit, such as 4520 N; a fraction without. "
                + "Nothing else about a student belongs here.\nstudent,exercise,answer\n");
        foreach (int student in plan.Students)
        {
            foreach (Exercise exercise in plan.Exercises(ExerciseCar.For(plan.Number(student))))
            {
                csv.Append(CultureInfo.InvariantCulture, $"{student},{exercise.Id},\n");
            }
        }

        return csv.ToString();
    }

    /// <summary>The totals, for a gradebook.</summary>
    /// <returns>CSV with the columns student, points, of, percent, answers, right, blank.</returns>
    public static string Totals(ClassResults results)
    {
        var csv = new StringBuilder("student,points,of,percent,answers,right,blank\n");
        foreach (StudentTotal total in results.Totals)
        {
            csv.Append(CultureInfo.InvariantCulture, $"{total.Student},{total.Points},{total.Of},{100 * total.Points / total.Of:0.0},")
                .Append(CultureInfo.InvariantCulture, $"{total.Answers},{total.Right},{total.Blank}\n");
        }

        return csv.ToString();
    }

    internal static string Words(Mark mark) => mark switch
    {
        Mark.Right => "right",
        Mark.WrongUnit => "wrong unit",
        Mark.UnitMissing => "unit missing",
        Mark.SignError => "sign error",
        Mark.Percent => "percent as fraction",
        Mark.KnownMistake => "known mistake",
        Mark.CarriedForward => "carried forward",
        Mark.Wrong => "wrong",
        Mark.Unreadable => "unreadable",
        _ => "blank",
    };
}
