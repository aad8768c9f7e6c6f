using System.Text.RegularExpressions;
using BrakeBalance.Teaching;
using UnitsNet;

namespace BrakeBalance.Tests.Teaching;

/// <summary>
/// Every answer of the course worked out again on an independent path: from the numbers of the sheet, by hand formulas, without the
/// assembly's models.
/// </summary>
/// <remarks>The formulas are those of statics and of the lessons' named sources; g = 9.80665 m/s² as the assembly has it.</remarks>
public class ExerciseTests
{
    private const double G = 9.80665;

    public static TheoryData<int, int> Students()
    {
        var data = new TheoryData<int, int>();
        foreach (int seed in new[] { 1, 2026, -7 })
        {
            for (int student = 1; student <= 12; student++)
            {
                data.Add(seed, student);
            }
        }

        return data;
    }

    [Fact]
    public void All_answers_of_330_students_agree_with_the_hand_formula()
    {
        List<string> off = [];
        foreach (ClassNumber number in Enumerable.Range(1, 330).Select(student => student % 3 == 0
            ? new ClassNumber { Seed = 2026, Student = student } : new ClassNumber { Secret = "three hundred sheets", Student = student }))
        {
            ExerciseCar car = ExerciseCar.For(number);
            Dictionary<string, double> byHand = ByHand(car);
            foreach (Exercise exercise in Exercises.For(car))
            {
                double answer = exercise.Answer.Quantity is { } quantity
                    ? quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value) : exercise.Answer.Fraction!.Value;
                double expected = byHand[exercise.Id];
                if (Math.Abs(answer - expected) > 2e-4 * Math.Abs(expected) + 1e-9)
                {
                    off.Add($"{number}: {exercise.Id}: {answer} against {expected} by hand");
                }
            }
        }

        Assert.Empty(off);
    }

    [Fact]
    public void The_code_on_a_sheet_draws_its_car_and_tells_neither_what_is_asked_nor_an_answer()
    {
        const string Secret = "a code opens nothing";
        string code = ClassNumber.CodeOf(Secret);
        int alike = 0;
        for (int student = 1; student <= 40; student++)
        {
            ExerciseCar sheet = ExerciseCar.For(new ClassNumber { Secret = Secret, Student = student });
            ExerciseCar drawn = ExerciseCar.For(new ClassNumber { Code = code.ToLowerInvariant(), Student = student });
            Assert.Equal(Body(sheet), Body(drawn));
            alike += (sheet.BrakingRate, sheet.LinePressure, sheet.PedalForce).Equals(
                (drawn.BrakingRate, drawn.LinePressure, drawn.PedalForce)) ? 1 : 0;
        }

        Assert.InRange(alike, 0, 1);
        ArgumentException refused = Assert.Throws<ArgumentException>(() => new ClassNumber { Code = "XH6CC4D0", Student = 1 });
        Assert.Contains("is no class code", refused.Message, StringComparison.Ordinal);

        static object[] Body(ExerciseCar car) =>
        [
            car.Vehicle.Wheelbase, car.LoadCase.Mass, car.FrontPiston, car.RearPiston, car.Valve.Knee, car.Valve.Slope, car.MasterBore,
            car.DiscMass, car.Booster.BoostRatio,
        ];
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void The_answer_as_printed_is_marked_right_in_both_systems_of_units(int seed, int student)
    {
        foreach (Exercise exercise in Exercises.For(new ClassNumber { Seed = seed, Student = student }))
        {
            Assert.Equal(Mark.Right, Marking.Check(exercise, exercise.Answer.Text(us: false)).Mark);
            Assert.Equal(Mark.Right, Marking.Check(exercise, exercise.Answer.Text(us: true), us: true).Mark);
        }
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Every_known_mistake_is_named_and_none_is_marked_right(int seed, int student)
    {
        foreach (Exercise exercise in Exercises.For(new ClassNumber { Seed = seed, Student = student }))
        {
            foreach (Mistake mistake in exercise.Answer.Mistakes)
            {
                string text = exercise.Answer.Quantity is null
                    ? mistake.Value.ToString("0.0000", System.Globalization.CultureInfo.InvariantCulture)
                    : exercise.Answer.TextOf(mistake, us: false);
                MarkedAnswer marked = Marking.Check(exercise, text);
                Assert.NotEqual(Mark.Right, marked.Mark);
                Assert.DoesNotContain(exercise.Answer.Text(us: false).Split(' ')[0], marked.Comment, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Steps_give_their_result_from_the_numbers_in_them(int seed, int student)
    {
        foreach (UnitSystem units in Enum.GetValues<UnitSystem>())
        {
            foreach (Exercise exercise in Exercises.For(new ClassNumber { Seed = seed, Student = student }, units).Where(one =>
                one.Id is "static-load-1" or "load-transfer-1" || (one.Id == "heat-1" && units == UnitSystem.Us)))
            {
                string[] sides = exercise.Steps[^1].Split(" = ");
                double product = sides[^2].Split(@" \cdot ").Aggregate(1.0, (sofar, factor) => sofar * Number(factor));
                string shown = sides[^1].Split('\\')[0];
                Assert.Equal(product, Number(shown), 1.5e-3 * product);
                Assert.True(units == UnitSystem.Us || SheetUnits.N(product) == shown, $"{exercise.Steps[^1]}: {product}");
            }

            string[] ratio = Exercises.For(new ClassNumber { Seed = seed, Student = student }, units)
                .Single(one => one.Id == "fixed-ratio-3")
                .Steps[^1].Split(@"\frac{")[^1].Split([" - ", "}{", "} = ", "$"], StringSplitOptions.None);
            Assert.Equal((Number(ratio[0]) - Number(ratio[1])) / Number(ratio[2]), Number(ratio[3]), 6e-4);
        }

        static double Number(string text) => text.StartsWith(@"\frac", StringComparison.Ordinal)
            ? Number(text.Split('{', '}')[1]) / Number(text.Split('{', '}')[3])
            : text.EndsWith("^2", StringComparison.Ordinal) ? Math.Pow(Number(text[..^2]), 2)
            : double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }

    [Theory]
    [InlineData(UnitSystem.Si, @"\b(lbf|psi|in|lb|hp|mph|ft)\b|°F")]
    [InlineData(UnitSystem.Us, @"ft·lb\b|\b(N|bar|mm|kg|kJ|kW|km/h|J|MPa)\b|°C|\bm\b²")]
    public void A_sheet_has_one_system_of_units_in_questions_steps_and_answers(UnitSystem units, string foreign)
    {
        foreach (Exercise exercise in Enumerable.Range(1, 40).SelectMany(student => Exercises.For(
            new ClassNumber { Seed = 7, Student = student }, units)))
        {
            string shown = string.Join('\n', exercise.Steps.Append(exercise.Answer.Text(units == UnitSystem.Us)));
            Assert.All(Regex.Matches(shown, @"\\text\{([^}]*)\}").Select(unit => unit.Groups[1].Value).Append(exercise.Answer.Text(
                units == UnitSystem.Us)), unit => Assert.DoesNotMatch(foreign, unit));
            Assert.DoesNotMatch($@"\d ({foreign})", exercise.Question);
        }
    }

    [Fact]
    public void A_common_wrong_answer_is_one_that_the_units_of_the_sheet_allow()
    {
        string[] Of(UnitSystem units) =>
        [
            .. Exercises.For(new ClassNumber { Seed = 7, Student = 3 }, units)
                .SelectMany(exercise => exercise.Answer.Mistakes.Select(mistake => $"{exercise.Id}: {mistake.Name}")),
        ];
        string[] si = Of(UnitSystem.Si), us = Of(UnitSystem.Us);

        // Pounds weigh as many pounds-force: nothing is lost without g, and a force over pounds is in g already.
        Assert.Equal(
            ["static-load-1: the mass was not multiplied by g", "knee-3: the force was divided by the mass without g",
                "heat-1: the speed was used in km/h"], si.Except(us));
        Assert.Equal(
            ["static-load-1: the pounds were multiplied by g", "knee-3: the force was divided by the mass in slugs",
                "heat-1: the pounds were not divided by g"], us.Except(si));
        Exercise power = Exercises.For(new ClassNumber { Seed = 7, Student = 3 }, UnitSystem.Us).Single(one => one.Id == "heat-3");
        Mistake withoutG = power.Answer.Mistakes.Single(mistake => mistake.Name.EndsWith("by g", StringComparison.Ordinal));
        Assert.Equal(32.174, power.Answer.RightValue / withoutG.Value, 1e-9);
    }

    [Fact]
    public void The_same_numbers_give_the_same_sheet_and_other_numbers_another()
    {
        string Sheet(int seed, int student) =>
            string.Join('\n', Exercises.For(new ClassNumber { Seed = seed, Student = student })
            .Select(e => e.Question + e.Answer.Text(false)));
        Assert.Equal(Sheet(5, 9), Sheet(5, 9));
        Assert.Equal(30, Enumerable.Range(1, 30).Select(student => Sheet(5, student)).Distinct().Count());
        Assert.NotEqual(Sheet(5, 9), Sheet(6, 9));
    }

    [Fact]
    public void Each_lesson_has_three_exercises_from_easy_to_hard()
    {
        IReadOnlyList<Exercise> exercises = Exercises.For(new ClassNumber { Seed = 1, Student = 1 });
        Assert.All(Lesson.All, lesson =>
            Assert.Equal([1, 2, 3], exercises.Where(exercise => exercise.Lesson == lesson).Select(exercise => exercise.Level)));
    }

    // Written from the sheet's data alone; nothing of Balance, Brakes, Hydraulics or Assist is called.
    private static Dictionary<string, double> ByHand(ExerciseCar car)
    {
        double m = car.LoadCase.Mass.Kilograms;
        double e = car.Vehicle.Wheelbase.Meters;
        double psi = car.FrontShare;
        double h = car.LoadCase.CentreOfGravityHeight.Meters;
        double radius = car.Vehicle.Tyres.Front.LoadedRadius.Meters;
        double mu = car.Front.FrictionCoefficient;
        double front = Gain(mu, car.FrontPiston.Meters, car.Front.EffectiveRadius.Meters, radius);
        double rear = Gain(mu, car.RearPiston.Meters, car.Rear.EffectiveRadius.Meters, radius);
        double share = rear / (front + rear);
        double z = car.BrakingRate;
        double k = car.Adhesion;
        double knee = car.Valve.Knee.Pascals;
        double slope = car.Valve.Slope;
        double p = car.LinePressure.Pascals;
        double chi = h / e;
        double psi2 = 1 - psi;
        double Rear(double pressure) => pressure <= knee ? pressure : knee + slope * (pressure - knee);
        double ratio = car.Pedal.Lever.RatioAt(Length.Zero);
        double bore = Math.PI / 4 * Math.Pow(car.MasterBore.Meters, 2);
        double foot = car.PedalForce.Newtons;
        double assist = car.Booster.Supply.Vacuum.Pascals * 0.85 * Math.PI / 4 * Math.Pow(car.Booster.DiaphragmDiameter.Meters, 2);
        double critical = (psi2 - share) / chi;
        double other = car.OtherAdhesion, dry = car.DryAdhesion;
        double FirstLock(double adhesion) => Math.Min(
            adhesion * psi / (1 - share - adhesion * chi), adhesion * psi2 / (share + adhesion * chi));
        double bare500 = ratio * 500 / bore;
        double energy = 0.5 * m * Math.Pow(car.Speed.MetersPerSecond, 2);
        double pressureAtRate = z * m * G / (front + rear);
        if (pressureAtRate > knee)
        {
            pressureAtRate = (z * m * G - rear * knee * (1 - slope)) / (front + rear * slope);
        }

        double frontPart = Math.Round(front * pressureAtRate / (z * m * G), 3); // as the sheet gives it
        return new()
        {
            ["static-load-1"] = psi * m * G,
            ["static-load-2"] = psi2 * e,
            ["static-load-3"] = (m * psi2 * e + 80 * (e + 0.4)) * G / e,
            ["load-transfer-1"] = z * m * G * chi,
            ["load-transfer-2"] = m * G * (psi + z * chi),
            ["load-transfer-3"] = (psi2 - car.LightRearShare) / chi,
            ["ideal-curve-1"] = psi2 - z * chi,
            ["ideal-curve-2"] = z * m * G * (psi + z * chi),
            ["ideal-curve-3"] = m * G * psi2 * psi2 / (4 * chi),
            ["fixed-ratio-1"] = front * p * radius / 2,
            ["fixed-ratio-2"] = share,
            ["fixed-ratio-3"] = critical,
            ["knee-1"] = Rear(p),
            ["knee-2"] = front * knee,
            ["knee-3"] = (front + rear) * knee / (m * G),
            ["adhesion-utilisation-1"] = (1 - share) * z / (psi + z * chi),
            ["adhesion-utilisation-2"] = share * z / (psi2 - z * chi),
            ["adhesion-utilisation-3"] = FirstLock(k) / k,
            ["effort-1"] = ratio * foot,
            ["effort-2"] = ratio * foot / bore,
            ["effort-3"] = Math.Min(car.Booster.BoostRatio * ratio * foot, ratio * foot + assist) / bore,
            ["failed-assist-1"] = assist,
            ["failed-assist-2"] = p * bore / ratio,
            ["failed-assist-3"] = (front * bare500 + rear * Rear(bare500)) / (m * G),
            ["rear-lock-1"] = k * psi2 / (share + k * chi),
            ["rear-lock-2"] = FirstLock(other),
            ["rear-lock-3"] = ((dry * m * G * (psi2 - dry * chi) / rear) - slope * (
                dry * m * G * (psi + dry * chi) / front)) / (1 - slope),
            ["heat-1"] = energy,
            ["heat-2"] = energy * frontPart / 2 / (car.DiscMass.Kilograms * 460),
            ["heat-3"] = energy * frontPart / (car.Speed.MetersPerSecond / (z * G)),
        };
    }

    private static double Gain(double friction, double pistonMetres, double effectiveMetres, double tyreMetres) =>
        2 * 2 * friction * Math.PI / 4 * pistonMetres * pistonMetres * effectiveMetres / tyreMetres;
}
