using System.Globalization;
using BrakeBalance.Teaching;
using UnitsNet;

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
    public void An_answer_parted_by_its_own_comma_is_joined_and_one_with_hidden_characters_or_a_remark_is_a_fault()
    {
        AnswerSheet sheet = AnswerSheet.Read(
            new StringReader("student,exercise,answer\n1,knee-1,30,5 bar\n2,knee-1,30\u001b bar\n3,knee-1,\"30,5 bar\"\n"
                + "4,knee-2,5,933 N\n5,knee-1,30 bar,said he\n"));
        // A comma between digits of the last column is the answer's own, quoted or not; before that it was a fault.
        Assert.Equal([(1, "30,5 bar"), (3, "30,5 bar"), (4, "5,933 N")], sheet.Answers.Select(answer => (answer.Student, answer.Text)));
        Assert.Equal(2, sheet.Faults.Count);
        Assert.Equal("Line 3: a cell has characters that cannot be seen.", sheet.Faults[0]);
        Assert.StartsWith("Line 6: 4 cells where the header names 3 columns", sheet.Faults[1]);
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

        ClassResults results = ClassResults.Of(student => new ClassNumber { Seed = 11, Student = student }, answers);
        ItemAnalysis item = Assert.Single(results.Items);
        Assert.Equal((8, 0.75, 1.0), (item.Answers, item.Facility, item.Discrimination!.Value));
        Assert.Equal(("Wrong; start again from the sketch.", 2), item.Comments[0]);
    }

    [Fact]
    public void Five_hundred_spellings_of_the_right_answer_are_all_right()
    {
        var random = new Random(20261126);
        string Of(params string[] words) => words[random.Next(words.Length)];
        List<string> missed = [];
        Exercise[] all = [.. Enumerable.Range(1, 20).SelectMany(student => Exercises.For(new ClassNumber { Seed = 5, Student = student }))];
        for (int i = 0; i < 500; i++)
        {
            Exercise exercise = all[i % all.Length];
            (double value, string unit) = Spelled(exercise.Answer, Of);
            string number = Number(value, Of), spelling = Of("", "", "≈ ", "= ", "x = ", "F1 = ", "about ", "~") + number
                + (unit.Length > 0 ? Of(" ", "", "\u00A0", "\u202F") + unit : "");
            if (Marking.Check(exercise, spelling).Mark != Mark.Right)
            {
                missed.Add($"{exercise.Id}: {spelling} for {exercise.Answer.Text(us: false)}");
            }
        }

        Assert.Empty(missed);
    }

    // The right value in a unit that somebody may have chosen, and that unit as somebody may write it.
    private static (double Value, string Unit) Spelled(ExerciseAnswer answer, Func<string[], string> of)
    {
        if (answer.Quantity is not { } quantity)
        {
            return of(["", "g", "%"]) is "%" ? (100 * answer.Fraction!.Value, of(["%", "percent", "per cent"]))
                : (answer.Fraction!.Value, of(["", "", "g"]));
        }

        (Enum unit, string words) = quantity switch
        {
            Force => of(["N", "kN", "lbf"]) switch
            {
                "N" => ((Enum)UnitsNet.Units.ForceUnit.Newton, "N|Newton|newtons|n"),
                "kN" => (UnitsNet.Units.ForceUnit.Kilonewton, "kN|KN|kilonewtons"),
                _ => (UnitsNet.Units.ForceUnit.PoundForce, "lbf|lbs|lb|pounds|lb."),
            },
            Pressure => of(["bar", "MPa", "psi"]) switch
            {
                "bar" => (UnitsNet.Units.PressureUnit.Bar, "bar|bars|Bar|BAR"),
                "MPa" => (UnitsNet.Units.PressureUnit.Megapascal, "MPa|N/mm²|N/mm2|megapascals"),
                _ => (UnitsNet.Units.PressureUnit.PoundForcePerSquareInch, "psi|PSI|lb/in²|lbf/in2|lbs/in2"),
            },
            Length => of(["mm", "in", "m"]) switch
            {
                "mm" => (UnitsNet.Units.LengthUnit.Millimeter, "mm|millimetres|millimeters|mm."),
                "in" => (UnitsNet.Units.LengthUnit.Inch, "in|inches|inch|in.|\""),
                _ => (UnitsNet.Units.LengthUnit.Meter, "m|metres|meters"),
            },
            Torque => of(["Nm", "kNm", "lbft"]) switch
            {
                "Nm" => (UnitsNet.Units.TorqueUnit.NewtonMeter, "Nm|N m|N·m|N*m|N-m|N.m|N⋅m|newton metres"),
                "kNm" => (UnitsNet.Units.TorqueUnit.KilonewtonMeter, "kNm|kN m|kN·m"),
                _ => (UnitsNet.Units.TorqueUnit.PoundForceFoot, "lb-ft|ft·lbf|ft-lb|lbf·ft|lbf ft|ft lbs|foot-pounds|lb·ft"),
            },
            Energy => of(["kJ", "J"]) switch
            {
                "kJ" => (UnitsNet.Units.EnergyUnit.Kilojoule, "kJ|KJ|kilojoules"),
                _ => (UnitsNet.Units.EnergyUnit.Joule, "J|joules|Joule"),
            },
            Power => of(["kW", "W", "hp"]) switch
            {
                "kW" => (UnitsNet.Units.PowerUnit.Kilowatt, "kW|KW|kilowatts|kw"),
                "W" => (UnitsNet.Units.PowerUnit.Watt, "W|watts"),
                _ => (UnitsNet.Units.PowerUnit.MechanicalHorsepower, "hp|HP|horsepower|bhp"),
            },
            _ => of(["K", "F"]) switch
            {
                "K" => (UnitsNet.Units.TemperatureDeltaUnit.DegreeCelsius, "K|Kelvin|kelvins|°C|deg C|degrees Celsius|C"),
                _ => (UnitsNet.Units.TemperatureDeltaUnit.DegreeFahrenheit, "°F|F|deg F|Fahrenheit|degrees F"),
            },
        };
        return (quantity.As(unit), of(words.Split('|')));
    }

    // Four figures, with thousands parted or not, a point or a comma, a true minus, a power of ten.
    private static string Number(double value, Func<string[], string> of)
    {
        string sign = value < 0 ? of(["-", "−", "–"]) : "";
        double plain = Math.Abs(value);
        string fixedPoint = plain.ToString(plain >= 1000 ? "0" : plain >= 10 ? "0.00" : "0.00000", CultureInfo.InvariantCulture);
        int power = (int)Math.Floor(Math.Log10(plain));
        string scaled = (plain / Math.Pow(10, power)).ToString("0.0000", CultureInfo.InvariantCulture);
        string body = of(["plain", "plain", "comma", "parted", "power"]) switch
        {
            "comma" => fixedPoint.Replace('.', ','),
            "parted" when plain >= 1000 => ((long)Math.Round(plain)).ToString("#,0", CultureInfo.InvariantCulture)
                .Replace(",", of([",", " ", "\u2009", "'", "."]), StringComparison.Ordinal),
            "power" => $"{scaled}{of(["e", "E", "·10^", " × 10^", "*10^", " x 10^"])}{power.ToString(CultureInfo.InvariantCulture)}",
            _ => fixedPoint,
        };
        return sign + body;
    }

    [Fact]
    public void What_is_carried_from_a_right_answer_is_the_right_answer()
    {
        foreach (int student in Enumerable.Range(1, 40))
        {
            Dictionary<string, Exercise> sheet =
                Exercises.For(new ClassNumber { Seed = 3, Student = student }).ToDictionary(exercise => exercise.Id);
            Exercise[] carried = [.. sheet.Values.Where(exercise => exercise.StartsFrom is not null)];
            Assert.Equal(8, carried.Length);
            Assert.All(carried, exercise => Assert.Equal(
                exercise.Answer.RightValue, exercise.Carried!(sheet[exercise.StartsFrom!].Answer.RightValue),
                1e-9 * Math.Abs(exercise.Answer.RightValue)));
        }
    }

    [Theory]
    [InlineData("%", 100)]
    [InlineData("percent", 100)]
    [InlineData("", 1)]
    public void A_wrong_share_is_carried_forward_in_any_spelling(string unit, double scale)
    {
        ExerciseCar car = ExerciseCar.For(new ClassNumber { Seed = 11, Student = 4 });
        double share = Math.Round(Sheet["fixed-ratio-2"].Answer.Fraction!.Value - 0.08, 2);
        double step = (1 - car.FrontShare - share) / (car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase);
        Assert.Equal(Mark.CarriedForward, Marking.Check(Sheet["fixed-ratio-3"], step.ToString("R", CultureInfo.InvariantCulture),
            earlier: (Sheet["fixed-ratio-2"], string.Create(CultureInfo.InvariantCulture, $"{share * scale:0.##} {unit}"))).Mark);
    }

    [Theory]
    [InlineData("load-transfer-1", 1, "N", "load-transfer-2")]
    [InlineData("effort-1", 1, "N", "effort-2")]
    [InlineData("heat-1", 1, "J", "heat-3")]
    [InlineData("fixed-ratio-2", 0, "", "fixed-ratio-3")]
    public void A_right_step_on_a_wrong_earlier_answer_earns_its_marks_and_the_same_number_without_it_none(
        string before, int isQuantity, string unit, string after)
    {
        Exercise first = Sheet[before], second = Sheet[after];
        double wrong = isQuantity == 1 ? 1.3 * first.Answer.Quantity!.As(first.Answer.Quantity.QuantityInfo.BaseUnitInfo.Value)
            : first.Answer.Fraction!.Value + 0.06;
        double step = Step(after, wrong);
        string text = second.Answer.Quantity is null ? step.ToString("R", CultureInfo.InvariantCulture)
            : step.ToString("R", CultureInfo.InvariantCulture) + (after switch { "effort-2" => " Pa", "heat-3" => " W", _ => " N" });
        string earlier = wrong.ToString("R", CultureInfo.InvariantCulture) + " " + unit;
        MarkedAnswer carried = Marking.Check(second, text, earlier: (first, earlier));
        Assert.Equal((Mark.CarriedForward, (double)second.Level), (carried.Mark, carried.Points));
        Assert.Contains(before, carried.Comment, StringComparison.Ordinal);
        Assert.Equal(0, Marking.Check(second, text).Points);
        string right = first.Answer.Text(us: false).Split(" (")[0];
        Assert.NotEqual(Mark.CarriedForward, Marking.Check(second, text, earlier: (first, right)).Mark);
    }

    // The step by hand, from the student's own numbers.
    private static double Step(string exercise, double earlier)
    {
        ExerciseCar car = ExerciseCar.For(new ClassNumber { Seed = 11, Student = 4 });
        double weight = car.LoadCase.Mass.Kilograms * 9.80665, bore = Math.PI / 4 * Math.Pow(car.MasterBore.Meters, 2);
        return exercise switch
        {
            "load-transfer-2" => (car.FrontShare * weight) + earlier,
            "effort-2" => earlier / bore,
            "fixed-ratio-3" => (1 - car.FrontShare - earlier) / (car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase),
            _ => earlier * FrontShareAtWork(car) / (car.Speed.MetersPerSecond / (car.BrakingRate * 9.80665)),
        };
    }

    private static double FrontShareAtWork(ExerciseCar car)
    {
        var forces = car.Balance.AtRate(car.BrakingRate)!.BrakingForces;
        return forces.Front / (forces.Front + forces.Rear);
    }

    [Theory]
    [InlineData("0.001 lbf", Mark.Wrong)]
    [InlineData("5933 lbf", Mark.WrongUnit)]
    public void Only_a_unit_that_people_write_makes_a_slip_of_the_unit(string text, Mark mark)
    {
        Exercise exercise = Sheet["load-transfer-2"];
        double newtons = exercise.Answer.Quantity!.As(UnitsNet.Units.ForceUnit.Newton);
        string written = text.Replace("5933", newtons.ToString("0", CultureInfo.InvariantCulture), StringComparison.Ordinal)
            .Replace("0.001", (newtons / 9806.65).ToString("0.0000", CultureInfo.InvariantCulture), StringComparison.Ordinal);
        Assert.Equal(mark, Marking.Check(exercise, written).Mark);
    }
}
