using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Teaching;
using UnitsNet;

namespace BrakeBalance.Tests.Teaching;

/// <summary>What 1,000 students of one class get: numbers of ordinary cars, and decisions that differ between neighbours.</summary>
/// <remarks>
/// Ranges: common practice (assisted road cars). Worked out from the numbers of the sheets and the texts of the questions, by hand
/// formulas; the answers themselves are checked by <see cref="ExerciseTests"/>.
/// </remarks>
public class DrawTests
{
    private const double G = 9.80665;

    private static readonly Drawn[] Class =
        [.. Enumerable.Range(1, 1000).Select(student => Drawn.Of(new ClassNumber { Secret = "a thousand students", Student = student }))];

    public static TheoryData<string, double, double> Ranges => new()
    {
        { "mass [kg]", 900, 1900 },
        { "wheelbase [m]", 2.25, 3.0 },
        { "height of the centre of gravity over wheelbase", 0.15, 0.25 },
        { "front piston [mm]", 42, 66 },
        { "rear piston [mm]", 28, 48 },
        { "rear piston over front piston", 0.5, 1 },
        { "tyre radius over effective radius", 2, 3.2 },
        { "bore [mm]", 20, 27 },
        { "pedal ratio", 2.8, 4.5 },
        { "booster's greatest assist [N]", 1000, 4000 },
        { "deceleration of 100 bar in both lines, no valve [g]", 0.9, 1.6 },
        { "deceleration at the knee [g]", 0.2, 0.7 },
        { "deceleration at the line pressure to work with [g]", 0.1, 1 },
        { "deceleration at 500 N without assist [g]", 0.15, 0.6 },
        { "line pressure with assist [bar]", 15, 120 },
        { "pedal force without assist [N]", 80, 1000 },
        { "deceleration at which both axles use the same [g]", 0.4, 0.85 },
        { "deceleration of load-transfer-3 [g]", 0.3, 1 },
        { "knee of rear-lock-3 [bar]", 8, 60 },
        { "disc temperature rise [K]", 15, 150 },
        { "mean power of the front axle [kW]", 25, 350 },
    };

    public static TheoryData<string> Decisions =>
        [.. Class[0].Decisions.Keys.Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Ranges))]
    public void Every_drawn_number_is_that_of_an_ordinary_car(string name, double low, double high)
    {
        double[] all = [.. Class.Select(one => one.Numbers[name]).Order()];
        Assert.True(all[0] >= low && all[^1] <= high, string.Create(CultureInfo.InvariantCulture,
            $"{name}: {all[0]:0.###} to {all[^1]:0.###}, median {all[500]:0.###}; {all.Count(x => x < low || x > high)} outside."));
    }

    [Theory]
    [MemberData(nameof(Decisions))]
    public void No_decision_is_made_by_construction(string name)
    {
        double share = Class.Average(one => one.Decisions[name] ? 1.0 : 0);
        Assert.True(share is >= 0.25 and <= 0.75, string.Create(CultureInfo.InvariantCulture, $"{name}: {share:0.000} of the class"));
    }

    [Fact]
    public void Two_decisions_of_a_sheet_do_not_settle_one_another()
    {
        string[] names = [.. Class[0].Decisions.Keys];
        List<string> tied = [];
        foreach ((string first, string second) in names.SelectMany((a, i) => names.Skip(i + 1).Select(b => (a, b))))
        {
            double same = Class.Average(one => one.Decisions[first] == one.Decisions[second] ? 1.0 : 0);
            if (same is < 0.15 or > 0.85)
            {
                tied.Add(string.Create(CultureInfo.InvariantCulture, $"{first} and {second}: {same:0.00}"));
            }
        }

        Assert.Empty(tied);
    }

    [Theory]
    [InlineData("adhesion-utilisation-1")]
    [InlineData("adhesion-utilisation-2")]
    [InlineData("rear-lock-1")]
    [InlineData("rear-lock-2")]
    public void The_number_given_in_a_question_is_not_its_answer(string id) => Assert.All(Enumerable.Range(1, 1000), student =>
    {
        Exercise exercise = Exercises.For(new ClassNumber { Secret = "a thousand students", Student = student }).Single(e => e.Id == id);
        string given = Regex.Matches(exercise.Question, @"0\.\d+|\b1\b").Single().Value;
        Assert.Equal(0, Marking.Check(exercise, given).Points);
    });

    [Fact]
    public void No_car_carries_so_nearly_half_its_weight_on_an_axle_that_the_axles_cannot_be_told_apart() =>
        Assert.DoesNotContain(Class, one => Math.Abs(one.FrontShare - 0.5) < 0.0199);

    [Fact]
    public void A_question_gives_away_the_answer_to_no_other() =>
        Assert.InRange(
            Class.GroupBy(one => Math.Round(one.GripOfTheKnee - one.Numbers["deceleration at which both axles use the same [g]"], 2))
                .Max(gap => gap.Count()), 1, 150);

    [Fact]
    public void Mistakes_can_be_told_apart_in_most_sheets()
    {
        List<string> dull = [.. Enumerable.Range(0, 30).Where(i => Class.Count(one => one.Mistakes[i].Known > 0) < 900)
            .Select(i => $"{Class[0].Mistakes[i].Id}: {Class.Count(one => one.Mistakes[i].Known > 0)}")];
        Assert.Empty(dull);
    }

    private sealed record Drawn(
        double FrontShare, double GripOfTheKnee, Dictionary<string, double> Numbers, Dictionary<string, bool> Decisions,
        (string Id, int Known)[] Mistakes)
    {
        public static Drawn Of(ClassNumber number)
        {
            ExerciseCar car = ExerciseCar.For(number);
            Exercise[] exercises = [.. Exercises.For(car)];
            Dictionary<string, Exercise> sheet = exercises.ToDictionary(exercise => exercise.Id);
            double Answer(string id) => sheet[id].Answer.Quantity is { } quantity
                ? quantity.As(quantity.QuantityInfo.BaseUnitInfo.Value) : sheet[id].Answer.Fraction!.Value;
            double Given(string id, string pattern) =>
                double.Parse(Regex.Match(sheet[id].Question, pattern).Groups[1].Value, CultureInfo.InvariantCulture);
            double m = car.LoadCase.Mass.Kilograms, e = car.Vehicle.Wheelbase.Meters, chi = car.LoadCase.CentreOfGravityHeight.Meters / e;
            double radius = car.Vehicle.Tyres.Front.LoadedRadius.Meters, mu = car.Front.FrictionCoefficient;
            double front = Gain(mu, car.FrontPiston.Meters, car.Front.EffectiveRadius.Meters, radius);
            double rear = Gain(mu, car.RearPiston.Meters, car.Rear.EffectiveRadius.Meters, radius);
            double share = rear / (front + rear), knee = car.Valve.Knee.Pascals, psi = car.FrontShare;
            double Rear(double p) => p <= knee ? p : knee + car.Valve.Slope * (p - knee);
            double Rate(double p) => (front * p + rear * Rear(p)) / (m * G);
            double ratio = car.Pedal.Lever.RatioAt(Length.Zero), foot = car.PedalForce.Newtons;
            double bare500 = ratio * 500 / (Math.PI / 4 * Math.Pow(car.MasterBore.Meters, 2));
            double assist = Answer("failed-assist-1");
            bool RearFirst(double k) => k * (1 - psi) / (share + k * chi) < k * psi / (1 - share - k * chi);
            return new(
                psi,
                Given("rear-lock-3", @"adhesion of ([\d.]+?),"),
                new()
                {
                    ["mass [kg]"] = m,
                    ["wheelbase [m]"] = e,
                    ["height of the centre of gravity over wheelbase"] = chi,
                    ["front piston [mm]"] = car.FrontPiston.Millimeters,
                    ["rear piston [mm]"] = car.RearPiston.Millimeters,
                    ["rear piston over front piston"] = car.RearPiston / car.FrontPiston,
                    ["tyre radius over effective radius"] = radius / car.Front.EffectiveRadius.Meters,
                    ["bore [mm]"] = car.MasterBore.Millimeters,
                    ["pedal ratio"] = ratio,
                    ["booster's greatest assist [N]"] = assist,
                    ["deceleration of 100 bar in both lines, no valve [g]"] = (front + rear) * 1e7 / (m * G),
                    ["deceleration at the knee [g]"] = Rate(knee),
                    ["deceleration at the line pressure to work with [g]"] = Rate(car.LinePressure.Pascals),
                    ["deceleration at 500 N without assist [g]"] = Rate(bare500),
                    ["line pressure with assist [bar]"] = Answer("effort-3") / 1e5,
                    ["pedal force without assist [N]"] = Answer("failed-assist-2"),
                    ["deceleration at which both axles use the same [g]"] = (1 - psi - share) / chi,
                    ["deceleration of load-transfer-3 [g]"] = Answer("load-transfer-3"),
                    ["knee of rear-lock-3 [bar]"] = Answer("rear-lock-3") / 1e5,
                    ["disc temperature rise [K]"] = Answer("heat-2"),
                    ["mean power of the front axle [kW]"] = Answer("heat-3") / 1000,
                },
                new()
                {
                    ["static-load: the front axle carries more"] = psi > 0.5,
                    ["knee-1: the pressure lies above the knee"] = car.LinePressure.Pascals > knee,
                    ["adhesion-utilisation-3: the rear axle locks first"] = RearFirst(car.Adhesion),
                    ["effort-3: the booster has run out"] = ratio * foot > assist / (car.Booster.BoostRatio - 1),
                    ["failed-assist-3: 500 N reaches the knee"] = bare500 > knee,
                    ["rear-lock-2: the rear axle locks first"] = RearFirst(Given("rear-lock-2", @"adhesion ([\d.]+):")),
                },
                [.. exercises.Select(exercise => (exercise.Id, exercise.Answer.Mistakes.Count))]);
        }

        private static double Gain(double friction, double pistonMetres, double effectiveMetres, double tyreMetres) =>
            2 * 2 * friction * Math.PI / 4 * pistonMetres * pistonMetres * effectiveMetres / tyreMetres;
    }
}
