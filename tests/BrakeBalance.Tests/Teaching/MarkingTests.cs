using System.Globalization;
using BrakeBalance.Teaching;

namespace BrakeBalance.Tests.Teaching;

public class MarkingTests
{
    private static readonly IReadOnlyDictionary<string, Exercise> Sheet =
        Exercises.For(new ClassNumber { Seed = 11, Student = 4 }).ToDictionary(exercise => exercise.Id);

    private static string Newtons(string id, double factor = 1) =>
        (Sheet[id].Answer.Quantity!.As(UnitsNet.Units.ForceUnit.Newton) * factor).ToString("0", CultureInfo.InvariantCulture);

    [Fact]
    public void The_right_number_with_a_wrong_unit_is_told_apart_from_a_wrong_number()
    {
        Assert.Equal(Mark.WrongUnit, Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2") + " lbf").Mark);
        Assert.Equal(Mark.WrongUnit, Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2") + " kN").Mark);
        Assert.Equal(Mark.Wrong, Marking.Check(Sheet["load-transfer-2"], "123456 N").Mark);
    }

    [Fact]
    public void A_missing_unit_costs_half() =>
        Assert.Equal((Mark.UnitMissing, 1.0),
            (Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2")).Mark,
            Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2")).Points));

    [Fact]
    public void A_sign_error_is_named() =>
        Assert.Equal(Mark.SignError, Marking.Check(Sheet["load-transfer-1"], "-" + Newtons("load-transfer-1") + " N").Mark);

    [Fact]
    public void The_static_load_in_place_of_the_dynamic_one_is_named()
    {
        MarkedAnswer marked = Marking.Check(Sheet["load-transfer-2"], Newtons("static-load-1") + " N");
        Assert.Equal((Mark.KnownMistake, "Looks as if the static load was used."), (marked.Mark, marked.Comment));
    }

    [Fact]
    public void A_percentage_in_place_of_a_fraction_is_named_and_with_its_sign_is_right()
    {
        double share = Sheet["ideal-curve-1"].Answer.Fraction!.Value;
        Assert.Equal(Mark.Percent, Marking.Check(Sheet["ideal-curve-1"], (share * 100).ToString("0.0", CultureInfo.InvariantCulture)).Mark);
        Assert.Equal(Mark.Right,
            Marking.Check(Sheet["ideal-curve-1"], (share * 100).ToString("0.0", CultureInfo.InvariantCulture) + " %").Mark);
    }

    [Theory]
    [InlineData("", Mark.Blank)]
    [InlineData(null, Mark.Blank)]
    [InlineData("about four", Mark.Unreadable)]
    [InlineData("12 apples", Mark.Unreadable)]
    public void What_is_no_answer_is_said_to_be_none(string? text, Mark mark) =>
        Assert.Equal(mark, Marking.Check(Sheet["load-transfer-1"], text).Mark);

    [Fact]
    public void A_decimal_comma_is_read() =>
        Assert.Equal(Mark.Right,
            Marking.Check(Sheet["ideal-curve-1"],
            Sheet["ideal-curve-1"].Answer.Fraction!.Value.ToString("0.000", CultureInfo.InvariantCulture).Replace('.', ',')).Mark);

    [Fact]
    public void Bad_lines_are_reported_by_number_and_left_out()
    {
        AnswerSheet sheet = AnswerSheet.Read(
            new StringReader("# a class\nstudent,exercise,answer\n1,knee-1,30 bar\nx,knee-1,30 bar\n1,kne-1,30 bar\n1,knee-1,31 bar\n"));
        Assert.Single(sheet.Answers);
        Assert.Equal(
            ["Line 4: \"x\" is not a student number. Accepted: 1 to 9999.",
                "Line 5: \"kne-1\" is not an exercise. Did you mean \"knee-1\"?",
                "Line 6: student 1 has answered knee-1 already; the first answer counts."],
            sheet.Faults);
    }

    [Fact]
    public void An_answer_cut_by_its_own_decimal_comma_or_with_hidden_characters_is_a_fault_and_no_other_answer()
    {
        AnswerSheet sheet = AnswerSheet.Read(
            new StringReader("student,exercise,answer\n1,knee-1,30,5 bar\n2,knee-1,30\u001b bar\n3,knee-1,\"30,5 bar\"\n"));
        Assert.Equal("30,5 bar", Assert.Single(sheet.Answers).Text);
        Assert.Equal(2, sheet.Faults.Count);
        Assert.StartsWith("Line 2: 4 cells where the header names 3 columns", sheet.Faults[0]);
        Assert.Equal("Line 3: a cell has characters that cannot be seen.", sheet.Faults[1]);
    }

    [Fact]
    public void A_class_is_marked_and_its_items_analysed()
    {
        List<GivenAnswer> answers = [];
        for (int student = 1; student <= 8; student++)
        {
            Exercise exercise = Exercises.For(new ClassNumber { Seed = 11, Student = student }).First(e => e.Id == "knee-1");
            answers.Add(new(student, student, "knee-1", student <= 6 ? exercise.Answer.Text(false).Split(" (")[0] : "1 bar"));
        }

        ClassResults results = ClassResults.Of(11, answers);
        ItemAnalysis item = Assert.Single(results.Items);
        Assert.Equal((8, 0.75, 1.0), (item.Answers, item.Facility, item.Discrimination!.Value));
        Assert.Equal(("Wrong; start again from the sketch.", 2), item.Comments[0]);
    }
}
