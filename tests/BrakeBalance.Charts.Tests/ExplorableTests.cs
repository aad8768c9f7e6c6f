using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Charts.Tests;

public partial class ExplorableTests
{
    public static TheoryData<string> EveryCar => [.. Cars.Names];

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Every_state_comes_back_from_the_store_as_it_was_put_in(string car)
    {
        Explorable explorable = Cars.Explorable(car, UnitSystem.Si);
        JsonNode json = Stored(explorable);
        int[] sizes = [.. explorable.Controls.Select(control => control.Settings.Count)];
        for (int index = 0; index < explorable.Frames.Count; index++)
        {
            JsonNode state = At(json, sizes, index);
            Frame frame = explorable.Frames[index];
            for (int f = 0; f < frame.Figures.Count; f++)
            {
                JsonNode shown = state["figures"]![f]!;
                Assert.Equal(frame.Figures[f].Title, shown["title"]!.GetValue<string>());
                Assert.Equal(frame.Figures[f].LongDescription, shown["long"]!.GetValue<string>());
                Assert.Equal(
                    frame.Figures[f].Table.ToCsv().Split('\n').Length - 2, shown["table"]!["rows"]![0]!.AsArray().Count);
                Assert.Equal(frame.Figures[f].Table.Row(2)[1], shown["table"]!["rows"]![1]![2]!.GetValue<string>());

                // Traces by name, nulls left out: the same layers in the same order, ending where the figure's lines end.
                JsonNode[] traces = [.. shown["data"]!.AsArray().OfType<JsonNode>()];
                Assert.Equal(frame.Figures[f].Layers.Select(layer => layer.Name),
                    traces.Select(trace => trace["name"]!.GetValue<string>()));
                var line = (LineLayer)frame.Figures[f].Layers.Last(layer => layer is LineLayer);
                double last = frame.Figures[f].YAxis.Measure.In(UnitSystem.Si).FromSi(line.Y[^1]);
                JsonNode drawn = traces.Last(trace => trace["name"]!.GetValue<string>() == line.Name);
                Assert.Equal(last, drawn["y"]!.AsArray()[^1]!.GetValue<double>(), Math.Max(1e-9, Math.Abs(last) * 1e-4));
            }

            Assert.Equal(frame.Readouts.Select(readout => readout.Value), state["readouts"]!.AsArray()
                .Select(value => value!.GetValue<string>()));
            Assert.Equal(frame.Verdict!.Text, state["verdict"]!.GetValue<string>());
        }
    }

    [Fact]
    public void Readouts_say_what_the_assembly_says()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        Explorable explorable = Cars.Explorable("coupe-1960s", UnitSystem.Si);
        LockUp lockUp = Cars.Model(car).FirstLockUp(Conditions.DryAdhesion)!;
        Assert.Equal("front axle", explorable.Start.Readouts[0].Value);
        Assert.Equal(Measure.Number.Text(lockUp.At.BrakingRate, UnitSystem.Si) + " g", explorable.Start.Readouts[1].Value);
        Assert.Equal(Measure.LinePressure.Text(lockUp.At.LinePressures.Rear, UnitSystem.Si), explorable.Start.Readouts[4].Value);
        Assert.Contains("24", explorable.Controls[0].Settings[explorable.Controls[0].Start], StringComparison.Ordinal);
    }

    [Fact]
    public void A_rear_first_setting_is_a_caution_in_words()
    {
        Explorable explorable = Cars.Explorable("coupe-1960s", UnitSystem.Si);
        Frame[] rear = [.. explorable.Frames.Where(frame => frame.Readouts[0].Value == "rear axle")];
        Assert.NotEmpty(rear);
        Assert.All(rear, frame =>
        {
            Assert.Equal(VerdictKind.Caution, frame.Verdict!.Kind);
            Assert.Contains("rear axle locks first", frame.Verdict.Text, StringComparison.Ordinal);
        });
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_full_explorable_stays_small(string car)
    {
        Explorable explorable = Figures.BalanceExplorables.SettingAndLoad(Cars.Answer(car));
        Assert.True(explorable.Frames.Count >= 100);
        string html = explorable.ToHtml();
        Assert.InRange(html.Length, 50_000, 400_000);
        Assert.DoesNotContain("http", html.Replace("http://www.w3.org/2000/svg", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Controls_are_native_labelled_and_spoken_with_their_unit()
    {
        string html = Cars.Explorable("coupe-1960s", UnitSystem.Us).ToHtml();
        Assert.Matches("<label for=\"explore-setting\">Knee pressure of the valve</label>", html);
        Assert.Matches("<input type=\"range\" id=\"explore-setting\"[^>]*aria-valuetext=\"350\u00a0psi\"", html);
        Assert.Matches("<output id=\"explore-setting-value\" for=\"explore-setting\" aria-live=\"polite\">350\u00a0psi</output>", html);
        Assert.Contains("<select id=\"explore-surface\">", html, StringComparison.Ordinal);
    }

    [Fact]
    public void States_with_other_figures_are_refused()
    {
        Figure figure = Cars.Figures("coupe-1960s", UnitSystem.Si)[0];
        ArgumentException fault = Assert.Throws<ArgumentException>(() => Explorable.Of(
            "odd", [Control.Choice("which", "Which", ["one", "two"])], state =>
                new Frame([figure with { Id = state["which"] == 0 ? "a" : "b" }], [])));
        Assert.Contains("which two", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_clock_can_be_played()
    {
        Figure Car(double x) => new FigureBuilder("plan", UnitSystem.Si)
            .Title("A point moves along the road")
                .Describe("A moving point.", "A point on a line moving right.", "The point moves to the right with time.")
            .X("Distance", "x", Measure.Distance, 0, 10).Y("Offset", "y", Measure.Distance, -1, 1).Points("car", [x], [0.0]).Build();
        Explorable explorable = Explorable.Of("run", [Control.Clock("time", "Time", Measure.Time, new double[] { 0, 0.5, 1 }, 80)], state =>
            new Frame([Car(state["time"])], []));
        JsonNode json = Stored(explorable);
        Assert.Equal(80, json["controls"]![0]!["play"]!.GetValue<int>());
        Assert.Contains("<button type=\"button\" id=\"run-time-play\">", explorable.ToHtml(), StringComparison.Ordinal);
        Assert.Equal(2, At(json, [3], 2)["figures"]![0]!["data"]![0]!["x"]![0]!.GetValue<double>());
    }

    private static JsonNode Stored(Explorable explorable) => JsonNode.Parse(Data().Match(explorable.ToHtml()).Groups[1].Value)!;

    /// <summary>A state put together the way the page's script does it.</summary>
    private static JsonNode At(JsonNode json, int[] sizes, int index)
    {
        int[] settings = new int[sizes.Length];
        for (int c = sizes.Length - 1; c >= 0; c--)
        {
            (index, settings[c]) = Math.DivRem(index, sizes[c]);
        }

        JsonNode state = json["frame"]!.DeepClone();
        foreach (JsonNode? path in json["paths"]!.AsArray())
        {
            int at = path!["c"]!.AsArray().Aggregate(0, (sum, c) => sum * sizes[c!.GetValue<int>()] + settings[c.GetValue<int>()]);
            JsonNode? value = json["pool"]![path["v"]![at]!.GetValue<int>()]?.DeepClone();
            JsonArray steps = path["p"]!.AsArray();
            JsonNode target = state;
            for (int i = 0; i < steps.Count - 1; i++)
            {
                target = steps[i]!.GetValueKind() == System.Text.Json.JsonValueKind.String
                    ? target[steps[i]!.GetValue<string>()]! : target[steps[i]!.GetValue<int>()]!;
            }

            if (steps[^1]!.GetValueKind() == System.Text.Json.JsonValueKind.String)
            {
                target[steps[^1]!.GetValue<string>()] = value;
            }
            else
            {
                target[steps[^1]!.GetValue<int>()] = value;
            }
        }

        return state;
    }

    [GeneratedRegex("<script type=\"application/json\"[^>]*>(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Data();
}
