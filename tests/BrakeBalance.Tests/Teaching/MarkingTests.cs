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
        Assert.Equal(Mark.WrongUnit, Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2") + " N m").Mark);
        Assert.Equal(Mark.WrongUnit, Marking.Check(Sheet["load-transfer-2"], Newtons("load-transfer-2") + " N metres").Mark);
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
    public void Mistakes_with_one_result_are_all_named()
    {
        Exercise exercise = Sheet["ideal-curve-1"];
        ExerciseAnswer answer = ExerciseAnswer.Of(0.4, ("one was made", 0.3), ("another was made", 0.303), ("a third was made", 0.6));
        Assert.Equal("Looks as if one was made, or another was made.",
            Marking.Check(exercise with { Answer = answer }, "0.301").Comment);
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
    [InlineData("12 apples downwards", Mark.Unreadable)]
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
            Assert.Equal(14, carried.Length);
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
    [InlineData("load-transfer-2", 1, "N", "ideal-curve-2")]
    [InlineData("fixed-ratio-2", 0, "", "adhesion-utilisation-1")]
    [InlineData("fixed-ratio-2", 0, "", "adhesion-utilisation-2")]
    [InlineData("fixed-ratio-2", 0, "", "rear-lock-1")]
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
            "ideal-curve-2" => car.BrakingRate * earlier,
            "adhesion-utilisation-1" => (1 - earlier) * car.BrakingRate / (car.FrontShare + car.BrakingRate * Height(car)),
            "adhesion-utilisation-2" => earlier * car.BrakingRate / (1 - car.FrontShare - car.BrakingRate * Height(car)),
            "rear-lock-1" => car.Adhesion * (1 - car.FrontShare) / (earlier + car.Adhesion * Height(car)),
            "fixed-ratio-3" => (1 - car.FrontShare - earlier) / (car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase),
            _ => earlier * FrontShareAtWork(car) / (car.Speed.MetersPerSecond / (car.BrakingRate * 9.80665)),
        };
    }

    private static double Height(ExerciseCar car) => car.LoadCase.CentreOfGravityHeight / car.Vehicle.Wheelbase;

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

    // Each as somebody wrote it; # stands for the right number, with the number's own scale after the bar where there is one.
    [Theory]
    [InlineData("load-transfer-2", "# N (approx.)|# [N]|# (N)|around # N|appr. # N|∼ # N|⇒ # N|delta N = # N|T1 front = # N")]
    [InlineData("load-transfer-2", "N₁′ = # N|# N approx.|abt. # N|N1 = #N|# N (1234 lbf)|# N = 9.99 kN|# N / 225 lbf")]
    [InlineData("load-transfer-2", "# N each|# N downwards|# N on the front axle|# N,|# N!")]
    [InlineData("load-transfer-2", "#×10³ N|#·10^3 N|#X10^3 N|# * 10^3 N|#e3 N", 1e-3)]
    [InlineData("static-load-2", "# ins|# inches|#''|#\"|# in.|# in", 1 / 25.4)]
    [InlineData("static-load-2", "# m|# metres", 1e-3)]
    [InlineData("effort-2", "# barg|# bar g|# bar (g)|# bar (464 psi)|# bar gauge")]
    [InlineData("effort-2", "# lbf/in^2|# lb/sq in|# lbs per square inch|# pounds/in²|# lb per sq in|# psi|# psig", 14.503774)]
    [InlineData("effort-2", "# kN/m2|# kN/m²|# kPa", 100)]
    [InlineData("effort-2", "# N per mm²|# N/mm2|# MPa", 0.1)]
    [InlineData("effort-2", "# N/cm2|# N/cm²", 10)]
    [InlineData("effort-2", "# kg/cm²|# kp/cm2", 1.0197162)]
    [InlineData("effort-2", "# atmospheres|# atm", 0.98692327)]
    [InlineData("effort-2", "# millibar|# mbar", 1000)]
    [InlineData("heat-2", "# ºC|# ℃|# ˚C|# deg K|# degrees Kelvin|by # K")]
    [InlineData("heat-2", "# ℉|# deg F", 1.8)]
    [InlineData("fixed-ratio-1", "# N x m|# Newtons metres|# N m|# N.m|# N·m")]
    [InlineData("fixed-ratio-1", "# pounds feet|# foot-lbs|# ft-pounds|# lb ft|# lb-ft", 0.73756215)]
    [InlineData("fixed-ratio-1", "# N mm", 1000)]
    [InlineData("heat-1", "# kNm|# kJ", 1e-3)]
    [InlineData("heat-1", "#×10⁵ J|#*10^5 J", 1e-5)]
    [InlineData("heat-3", "# PS", 1 / 735.49875)]
    [InlineData("heat-3", "# Nm/s|# J/s")]
    [InlineData("load-transfer-3", "# g.|# (g)|# × g|# of g|z = # g|z/k = #|T2/T = #")]
    [InlineData("fixed-ratio-2", "# % rear|# per cent|# %", 100)]
    [InlineData("fixed-ratio-2", "#·10⁻¹|# x 10^-1", 10)]
    [InlineData("fixed-ratio-2", "# (47.8 %)")]
    public void What_somebody_wrote_is_read_as_it_was_meant(string id, string spellings, double scale = 1)
    {
        Exercise exercise = Sheet[id];
        double value = exercise.Answer.Quantity is { } quantity
            ? quantity.As(id switch
            {
                "static-load-2" => UnitsNet.Units.LengthUnit.Millimeter,
                "effort-2" => UnitsNet.Units.PressureUnit.Bar,
                "heat-2" => UnitsNet.Units.TemperatureDeltaUnit.DegreeCelsius,
                _ => quantity.QuantityInfo.BaseUnitInfo.Value,
            })
            : exercise.Answer.Fraction!.Value;
        string number = (value * scale).ToString("0.0000", CultureInfo.InvariantCulture);
        Assert.All(spellings.Split('|'), spelling =>
            Assert.Equal((spelling, Mark.Right),
                (spelling, Marking.Check(exercise, spelling.Replace("#", number, StringComparison.Ordinal)).Mark)));
    }

    [Fact]
    public void Fractions_of_an_inch_and_feet_with_inches_are_read()
    {
        Exercise exercise = Sheet["static-load-2"];
        double inches = exercise.Answer.Quantity!.As(UnitsNet.Units.LengthUnit.Inch);
        int whole = (int)inches, feet = whole / 12;
        string rest = (inches - (12 * feet)).ToString("0.0", CultureInfo.InvariantCulture);
        Assert.All((string[])[$"{whole}½ in", $"{whole} 1/2 in", $"{whole}-1/2\"", $"{feet} ft {rest} in", $"{feet}' {rest}\"",
            $"{feet} feet {rest} inches"], text => Assert.Equal((text, Mark.Right), (text, Marking.Check(exercise, text).Mark)));
    }

    // Mass in place of weight, calories of another kind: wrong by value, whatever rare unit the number would fit.
    [Theory]
    [InlineData("load-transfer-1", 1 / 9.80665, " N")]
    [InlineData("load-transfer-2", 1 / 9.80665, " N")]
    [InlineData("ideal-curve-2", 1 / 9.80665, " N")]
    [InlineData("heat-1", 1 / 1055.06, " kJ")]
    public void A_wrong_value_that_would_be_right_in_a_rare_unit_is_no_slip_of_the_unit(string id, double scale, string unit)
    {
        IQuantity right = Sheet[id].Answer.Quantity!;
        string text = (scale * right.As(right.QuantityInfo.BaseUnitInfo.Value)).ToString("0.0", CultureInfo.InvariantCulture) + unit;
        Assert.Equal(0, Marking.Check(Sheet[id], text).Points);
    }

    [Fact]
    public void Metres_per_second_squared_for_g_and_a_number_without_the_unit_it_is_in_earn_half()
    {
        Exercise rate = Sheet["load-transfer-3"], force = Sheet["load-transfer-2"];
        string metres = (9.80665 * rate.Answer.Fraction!.Value).ToString("0.00", CultureInfo.InvariantCulture);
        Assert.Equal((Mark.WrongUnit, 1.5, "Right in m/s²; it was to be in g."),
            (Marking.Check(rate, metres + " m/s²").Mark, Marking.Check(rate, metres + " m/s2").Points,
                Marking.Check(rate, metres + " m/s^2").Comment));
        string kilonewtons = force.Answer.Quantity!.As(UnitsNet.Units.ForceUnit.Kilonewton).ToString("0.00", CultureInfo.InvariantCulture);
        Assert.Equal((Mark.UnitMissing, 1.0), (Marking.Check(force, kilonewtons).Mark, Marking.Check(force, kilonewtons).Points));
    }

    [Fact]
    public void A_point_before_three_figures_parts_decimals_for_who_parts_them_so_elsewhere()
    {
        string Own(int student, string id, string text) => string.Create(CultureInfo.InvariantCulture, $"{student},{id},\"{text}\"\n");
        double newtons = Sheet["load-transfer-2"].Answer.Quantity!.As(UnitsNet.Units.ForceUnit.Newton);
        string grouped = newtons.ToString("#,0", CultureInfo.InvariantCulture);
        double share = Sheet["fixed-ratio-2"].Answer.Fraction!.Value;
        string point = share.ToString("0.000", CultureInfo.InvariantCulture);
        MarkedAnswer Marked(string elsewhere, string text)
        {
            AnswerSheet sheet = AnswerSheet.Read(new StringReader("student,exercise,answer\n" + Own(4, "fixed-ratio-2", elsewhere)
                + Own(4, "load-transfer-2", text)));
            return ClassResults.Of(student => new ClassNumber { Seed = 11, Student = student }, sheet.Answers).Marks[1].Marked;
        }

        string german = grouped.Replace(',', '.');
        Assert.Equal(Mark.Right, Marked(point, grouped + " N").Mark);
        Assert.Equal(Mark.Right, Marked(point.Replace('.', ','), german + " N").Mark);
        Assert.Equal(Mark.WrongUnit, Marked(point, german + " N").Mark);
        Assert.Equal(Mark.WrongUnit, Marked(point.Replace('.', ','), grouped + " N").Mark);
        Assert.Equal(Mark.Right, Marked("no answer", german + " N").Mark);
    }

    [Fact]
    public void Inches_by_their_sign_need_no_quoting()
    {
        AnswerSheet sheet = AnswerSheet.Read(new StringReader(
            "student,exercise,answer\n1,static-load-2,44.6\"\n2,static-load-2,\"44.6\"\"\"\n3,static-load-2,61 5/8\"\n"
                + "4,knee-1,\"30,5 bar\"\n"));
        Assert.Empty(sheet.Faults);
        Assert.Equal(["44.6\"", "44.6\"", "61 5/8\"", "30,5 bar"], sheet.Answers.Select(answer => answer.Text));
    }

    [Fact]
    public void Totals_have_a_line_for_every_student_of_the_class_and_count_every_exercise_and_others_count_in_no_item()
    {
        var answers = (List<GivenAnswer>)[new(1, 1, "knee-1", "1 bar"), new(2, 2, "knee-1", ""), new(3, 9, "knee-1", "1 bar")];
        ClassResults results = ClassResults.Of(student => new ClassNumber { Seed = 11, Student = student }, answers, roster: [1, 2, 3],
            exercises: ["knee-1", "knee-2", "knee-3"]);
        Assert.Equal([(1, 6, 1), (2, 6, 1), (3, 6, 0), (9, 6, 1)],
            results.Totals.Select(total => (total.Student, total.Of, total.Answers)));
        Assert.Equal(2, Assert.Single(results.Items).Answers);
        AnswerSheet sheet = AnswerSheet.Read(new StringReader(AnswerSheet.ClassLine("ABCDEFGH", "1-2", us: true, [Lesson.Of("knee")])
            + "\nstudent,exercise,answer\n1,knee-1,30 bar\n"));
        Assert.Equal(("ABCDEFGH", "1-2", true), (sheet.Code, sheet.Students, sheet.Us));
        Assert.Equal(["knee-2", "knee-3"], sheet.Against([1]).Missing.Single().Exercises);
    }
}
