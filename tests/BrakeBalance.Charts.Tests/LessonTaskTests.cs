using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Teaching;

namespace BrakeBalance.Charts.Tests;

/// <summary>What a lesson asks its reader to find can be found in its figure, whatever the car.</summary>
public class LessonTaskTests
{
    public static TheoryData<int> Students => [.. Enumerable.Range(1, 20)];

    [Theory]
    [MemberData(nameof(Students))]
    public void The_figure_begins_with_the_car_of_the_sheet(int student)
    {
        ExerciseCar car = ExerciseCar.For(new ClassNumber { Seed = 2026, Student = student });
        Dictionary<string, Exercise> sheet = Exercises.For(car).ToDictionary(exercise => exercise.Id);
        Assert.Equal(sheet["fixed-ratio-3"].Answer.Text(us: false), Number(Of("fixed-ratio", student).Start, "Both use the same at"));
        Assert.Equal(sheet["knee-3"].Answer.Text(us: false), Number(Of("knee", student).Start, "Knee reached at"));
        Assert.Equal(sheet["failed-assist-3"].Answer.Text(us: false),
            Number(Of("failed-assist", student).Start, "Deceleration at 500\u00a0N"));
        Assert.Equal(sheet["heat-1"].Answer.Quantity!.As(UnitsNet.Units.EnergyUnit.Kilojoule),
            double.Parse(Number(Of("heat", student).Start, "Energy"), CultureInfo.InvariantCulture), 5.0);
        Assert.Equal(sheet["static-load-1"].Answer.Text(us: false).Split(" (")[0], Value(Of("static-load", student).Start, "Front axle"));
    }

    [Fact]
    public void A_title_in_customary_units_names_the_foot_in_them()
    {
        ExerciseCar car = ExerciseCar.For(new ClassNumber { Seed = 2026, Student = 1 });
        Figure figure = LessonFigures.ToDraw(Lesson.Of("failed-assist"), car, UnitSystem.Us);
        Assert.StartsWith("With 112\u00a0lbf and no assist", figure.Title, StringComparison.Ordinal);
        Assert.DoesNotContain("500 N", figure.LongDescription, StringComparison.Ordinal);
    }

    [Fact]
    public void A_lesson_has_one_system_of_units_in_its_figure_and_in_its_text()
    {
        const string Metric = @"\d[ \u00a0](N|kN|bar|mm|m|km/h|kg|kJ|cm³|°C)(?![\w/])";
        Assert.All(Lesson.All, lesson => Assert.DoesNotMatch(Metric, string.Concat(
            LessonSheet.Of(lesson.Id, 2026, units: UnitSystem.Us).Figure.Start.Figures.Select(figure => figure.ToHtml()))));
        foreach (string path in Directory.GetFiles(RepositoryRoot.File("notebooks/lessons"), "*.ipynb"))
        {
            IEnumerable<string> texts = JsonNode.Parse(File.ReadAllText(path))!["cells"]!.AsArray()
                .Where(cell => (string)cell!["cell_type"]! == "markdown")
                .SelectMany(cell => cell!["source"]!.AsArray().Select(line => (string)line!))
                .Where(line => !line.Contains("Check used in the tests", StringComparison.Ordinal));
            Assert.All(texts, text => Assert.DoesNotMatch(Metric, InBoth.Only(text, customary: true)));
            Assert.All(texts, text => Assert.DoesNotMatch(@"\d (lbf|mph|ft|psi|in³?|lb|°F)\b", InBoth.Only(text, customary: false)));
        }
    }

    /// <summary>Axes tell of a car no more than its mass, marks no more than its knee; all else is the same for everybody.</summary>
    [Theory]
    [InlineData("static-load")]
    [InlineData("load-transfer")]
    [InlineData("ideal-curve")]
    [InlineData("fixed-ratio")]
    [InlineData("knee", "no valve", "knee")]
    [InlineData("adhesion-utilisation", "ideal, f = z")]
    [InlineData("effort")]
    [InlineData("failed-assist", "rule's pedal force", "failed-assist rule")]
    [InlineData("rear-lock")]
    [InlineData("heat")]
    public void What_is_to_be_drawn_into_shows_nothing_that_is_asked_for(string lesson, params string[] given)
    {
        List<string> seen = [];
        foreach (int student in Enumerable.Range(1, 60))
        {
            ExerciseCar car = ExerciseCar.For(new ClassNumber { Seed = 2026, Student = student });
            Figure frame = LessonFigures.ToDrawInto(Lesson.Of(lesson), car, UnitSystem.Si);
            Figure whole = LessonFigures.ToDraw(Lesson.Of(lesson), car, UnitSystem.Si);
            Assert.Equal(given, frame.Layers.Select(layer => layer.Name));
            Assert.True(whole.Layers.Count > frame.Layers.Count, "Something is left to draw.");
            Assert.Equal((whole.XAxis.Quantity, whole.XAxis.Maximum, whole.YAxis.Quantity, whole.YAxis.Maximum),
                (frame.XAxis.Quantity, frame.XAxis.Maximum, frame.YAxis.Quantity, frame.YAxis.Maximum));
            double weight = car.Balance.Weight.Newtons, mass = car.LoadCase.Mass.Kilograms, knee = car.Valve.Knee.Pascals;
            seen.Add(string.Join("; ", new[] { frame.XAxis, frame.YAxis }.Where(axis => axis.Categories is null)
                .Select(axis => Told(axis.Measure == Measure.BrakeForce ? axis.Maximum! / weight
                    : axis.Measure == Measure.Energy ? axis.Maximum! / mass : axis.Maximum!))
                .Concat(frame.Layers.Select(layer => layer is MarkerLayer mark ? Told(mark.X[0] / knee) + Told(mark.Y[0] / knee)
                    : layer is LineLayer line ? string.Join(' ', line.X.Concat(line.Y).Select(value => Told(value))) : layer.ToString()))));
            string svg = LessonSheet.Drawing(Lesson.Of(lesson), car, student, UnitSystem.Si, isWhole: false);
            Assert.DoesNotContain(whole.Title, svg, StringComparison.Ordinal);
            Assert.DoesNotContain(whole.LongDescription, svg, StringComparison.Ordinal);
            Assert.Contains(whole.XAxis.Categories is null ? whole.XAxis.Quantity : "front axle", svg, StringComparison.Ordinal);
        }

        Assert.Single(seen.Distinct());

        static string Told(double? value) => value!.Value.ToString("G9", CultureInfo.InvariantCulture);
    }

    public static TheoryData<string> Lessons => [.. Lesson.All.Select(lesson => lesson.Id)];

    /// <summary>A number that stands in a figure tells of a car if most of the class do not see it.</summary>
    [Theory]
    [MemberData(nameof(Lessons))]
    public void The_picture_for_a_class_code_is_of_the_sheets_car_and_tells_no_number_of_it_that_the_sheet_does_not_give(string lesson)
    {
        const string Secret = "thirty students";
        foreach (UnitSystem units in new[] { UnitSystem.Si, UnitSystem.Us })
        {
            double rounded = units == UnitSystem.Us ? 0.03 : 0.006; // a slider's inches, pounds and inHg against those of the sheet
            List<double[]> shown = [], whole = [], given = [];
            foreach (int student in Enumerable.Range(1, 30))
            {
                ExerciseCar car = ExerciseCar.For(new ClassNumber { Secret = Secret, Student = student });
                Explorable answers = LessonFigures.Of(Lesson.Of(lesson), car, units);
                Explorable asked = LessonSheet.OfClass(lesson, ClassNumber.CodeOf(Secret), student, units);
                Frame frame = asked.Start;
                Assert.Empty(frame.Readouts);
                Assert.StartsWith("The sheet asks for the values", frame.Verdict!.Text, StringComparison.Ordinal);
                Assert.All(frame.Figures, figure => Assert.Empty(figure.Table.Columns));
                Assert.Equal(answers.Start.Figures.Select(Drawn), frame.Figures.Select(Drawn));
                Assert.DoesNotContain("data-read", asked.StateHtml([.. asked.Controls.Select(one => one.Start)], null),
                    StringComparison.Ordinal);
                shown.Add(Numbers(asked));
                whole.Add(Numbers(answers));
                given.Add([.. CarData.Of(car, units).Select(row => row.Value).Concat(Exercises.For(car).Select(one => one.Question))
                    .SelectMany(InWords)]);
            }

            Assert.Empty(OfOne(shown));
            Assert.NotEmpty(OfOne(whole));

            IEnumerable<string> OfOne(List<double[]> all) => all.Zip(given).SelectMany((one, i) => one.First
                .Where(number => all.Count(other => other.Contains(number)) < 15
                    && !one.Second.Any(told => Math.Abs(told - number) <= rounded * number || Math.Abs(told - number / 100) < 1e-9))
                .Select(number => $"student {i + 1}: {number}"));
        }

        // Speed and share of a stop are asked for by the sheet; the energy at every speed is the car's.
        static string Drawn(Figure figure) => string.Join(' ', figure.Layers[0] switch
        {
            LineLayer line when figure.Id != "lesson-heat-stops" => line.X.Concat(line.Y),
            BarLayer bars => bars.Values,
            _ => [],
        });

        static double[] Numbers(Explorable of) => [.. new[] { of.Controls.Select(one => one.Start), of.Controls.Select(_ => 0) }
            .SelectMany(places => InWords(Words(ExplorableHtml.Controls(of) + of.StateHtml([.. places], FigureSize.Page)))).Distinct()];

        // What is written and read out, without the ticks of the axes.
        static string Words(string html)
        {
            string drawn = Regex.Replace(html, "<g id=\"[^\"]*-axis-[xy]\".*?</g>", "", RegexOptions.Singleline);
            IEnumerable<string> said = Regex.Matches(drawn, " (?:aria-label|aria-valuetext|alt|href|data-texts|data-read)=\"([^\"]*)\"")
                .Select(one => Uri.UnescapeDataString(one.Groups[1].Value));
            return string.Join(' ', said.Append(Regex.Replace(drawn, "<[^>]*>", " ")));
        }

        static IEnumerable<double> InWords(string words) => Regex.Matches(words, @"(?<![\w.])[0-9]+(\.[0-9]+)?")
            .Select(one => double.Parse(one.Value, CultureInfo.InvariantCulture));
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void The_axle_loads_shown_add_up_to_the_weight_shown(int student)
    {
        foreach (Frame frame in Of("load-transfer", student).Frames())
        {
            int Shown(string label) => int.Parse(Number(frame, label), CultureInfo.InvariantCulture);
            Assert.InRange(Shown("Front axle") + Shown("Rear axle") - Shown("Both"), -1, 1);
        }
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void The_marker_can_be_put_on_the_crossing(int student)
    {
        Explorable explorable = Of("adhesion-utilisation", student);
        int own = explorable.Controls[0].Start;
        double nearest = Enumerable.Range(0, explorable.Controls[1].Settings.Count).Min(rate =>
        {
            Frame frame = explorable.At([own, rate]);
            return Math.Abs(double.Parse(Value(frame, "Front uses"), CultureInfo.InvariantCulture)
                - double.Parse(Value(frame, "Rear uses"), CultureInfo.InvariantCulture));
        });
        Assert.InRange(nearest, 0, 0.02);
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Some_pairs_of_ratio_and_bore_are_strong_and_short_enough_and_most_are_not(int student)
    {
        IReadOnlyList<Frame> frames = Of("failed-assist", student).Frames();
        double good = frames.Average(frame => frame.Verdict!.Kind == VerdictKind.Good ? 1.0 : 0);
        Assert.InRange(good, 0.02, 0.5);
        Assert.Contains(frames, frame => frame.Verdict!.Text.StartsWith("Strong enough, but", StringComparison.Ordinal));
        Assert.Contains(frames, frame => frame.Verdict!.Text.StartsWith("Short in travel", StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void From_120_it_takes_a_few_stops_until_pads_fade_and_from_60_four_times_as_many(int student)
    {
        Explorable explorable = Of("heat", student);
        int From(string speed) => int.Parse(Value(explorable.At([
            explorable.Controls[0].Settings.Index().First(one => one.Item.StartsWith(speed, StringComparison.Ordinal)).Index,
            explorable.Controls[1].Start]), "Stops until street pads fade").Replace("more than ", "", StringComparison.Ordinal),
            CultureInfo.InvariantCulture);
        int few = From("120"), many = From("60");
        Assert.InRange(few, 2, 12);
        Assert.InRange(many, Math.Min(30, (4 * few) - 4), 4 * few);
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void A_load_on_an_axle_loads_that_axle_alone_and_one_behind_the_rear_lightens_the_front(int student)
    {
        Explorable explorable = Of("static-load", student);
        double At(int box, int place, string axle) => Read(explorable.At([box, place]), axle);
        Assert.True(At(5, 0, "Front axle") > At(0, 0, "Front axle") && At(5, 0, "Rear axle") == At(0, 0, "Rear axle"));
        Assert.True(At(5, 2, "Rear axle") > At(0, 2, "Rear axle") && At(5, 2, "Front axle") == At(0, 2, "Front axle"));
        Assert.True(At(5, 1, "Rear axle") > At(0, 1, "Rear axle") && At(5, 1, "Front axle") > At(0, 1, "Front axle"));
        Assert.True(At(5, 3, "Front axle") < At(0, 3, "Front axle"));
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Along_the_ideal_curve_the_rear_share_falls_and_sooner_with_a_higher_centre_of_gravity(int student)
    {
        Explorable explorable = Of("ideal-curve", student);
        (int height, int share) = (explorable.Controls[1].Start, explorable.Controls[2].Start);
        double[] Shares(int height) => [.. Enumerable.Range(0, explorable.Controls[0].Settings.Count)
            .Select(rate => Read(explorable.At([rate, height, share]), "Rear share"))];
        double[] own = Shares(height), higher = Shares(height + 1);
        Assert.All(own.Zip(own.Skip(1)), pair => Assert.True(pair.First > pair.Second));
        Assert.All(higher.Zip(own), pair => Assert.True(pair.First <= pair.Second));
        Assert.True(higher[^1] < own[^1]);
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void A_smaller_rear_share_moves_the_crossing_up_and_wastes_the_rear_axle_on_a_slippery_road(int student)
    {
        Explorable explorable = Of("fixed-ratio", student);
        Frame own = explorable.Start, less = explorable.At([explorable.Controls[0].Start - 2]);
        double Crossing(Frame frame) => Number(frame, "Both use the same at") is { Length: > 0 } ? Read(frame, "Both use the same at") : 9;
        Assert.True(Crossing(less) > Crossing(own));
        Assert.True(Read(less, "Efficiency at adhesion 0.3") < Read(own, "Efficiency at adhesion 0.3"));
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Some_knee_keeps_the_line_under_the_ideal_curve_and_the_slopes_at_the_ends_are_no_valve_and_a_limiter(int student)
    {
        Explorable explorable = Of("knee", student);
        (int slope, int last) = (explorable.Controls[1].Start, explorable.Controls[1].Settings.Count - 1);
        bool[] isUnder = [.. Enumerable.Range(0, explorable.Controls[0].Settings.Count)
            .Select(knee => Value(explorable.At([knee, slope]), "Rear leads from").StartsWith("no", StringComparison.Ordinal))];
        Assert.Equal(isUnder.OrderDescending(), isUnder);
        Assert.Contains(true, isUnder);
        Assert.Contains(false, isUnder);
        LineLayer Rear(int slope) => explorable.At([0, slope]).Figures[0].Layers.OfType<LineLayer>().Single(line => line.Tone == Tone.Rear);
        Assert.Equal(Rear(last).X, Rear(last).Y);
        Assert.Equal(Rear(0).Y[^2], Rear(0).Y[^1]);
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void With_less_vacuum_the_run_out_comes_down(int student)
    {
        Explorable explorable = Of("effort", student);
        double[] runOuts = [.. Enumerable.Range(0, explorable.Controls[0].Start + 1)
            .Select(vacuum => explorable.At([vacuum, explorable.Controls[1].Start, explorable.Controls[2].Start]).Figures[0].Layers
                .OfType<MarkerLayer>().SingleOrDefault()?.Y[0] ?? double.NaN).Where(pressure => !double.IsNaN(pressure))];
        Assert.True(runOuts.Length >= 2);
        Assert.All(runOuts.Zip(runOuts.Skip(1)), pair => Assert.True(pair.First < pair.Second));
    }

    [Theory]
    [MemberData(nameof(Students))]
    public void Without_a_valve_the_cross_jumps_once_and_with_it_the_rear_locks_first_on_no_road_more(int student)
    {
        Explorable explorable = Of("rear-lock", student);
        string[] First(int valve) => [.. Enumerable.Range(0, explorable.Controls[0].Settings.Count)
            .Select(road => Value(explorable.At([road, valve]), "Locks first"))];
        string[] bare = First(0), valved = First(1);
        Assert.Equal("front axle", bare[0]);
        Assert.Equal(1, bare.Zip(bare.Skip(1)).Count(pair => pair.First != pair.Second));
        Assert.Contains("rear axle", bare);
        Assert.True(valved.Count(axle => axle == "rear axle") <= bare.Count(axle => axle == "rear axle"));
    }

    private static double Read(Frame frame, string label) => double.Parse(Number(frame, label), CultureInfo.InvariantCulture);

    private static Explorable Of(string lesson, int student) => LessonSheet.Of(lesson, 2026, student, UnitSystem.Si).Figure;

    private static string Value(Frame frame, string label) => frame.Readouts.Single(readout => readout.Label == label).Value;

    private static string Number(Frame frame, string label) => Regex.Match(Value(frame, label), @"[\d.]+").Value;
}
