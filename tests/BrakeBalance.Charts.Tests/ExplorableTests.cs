using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Lessons;
using BrakeBalance.Charts.Live;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Rendering;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Charts.Tests;

public partial class ExplorableTests
{
    public static TheoryData<string> EveryCar => [.. Cars.Names];

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void A_page_shows_at_its_start_and_everywhere_else_what_the_explorable_shows(string car)
    {
        Explorable explorable = BalanceExplorables.SettingAndLoad(Setting.Of(Cars.Load(car)), units: UnitSystem.Si);
        var request = (JsonObject)JsonNode.Parse(Data().Match(explorable.ToHtml()).Groups[1].Value)!;
        var desk = new LiveDesk();
        JsonNode first = Ask(desk, request);
        Assert.Contains(first["controls"]!.ToString(), explorable.ToHtml(), StringComparison.Ordinal);
        int[] start = [.. explorable.Controls.Select(control => control.Start)];
        Assert.Contains(explorable.StateText(start), first["html"]!.ToString(), StringComparison.Ordinal);
        var random = new Random(7);
        for (int state = 0; state < 10; state++)
        {
            int[] places = [.. explorable.Controls.Select(control => random.Next(control.Settings.Count))];
            Frame frame = explorable.At(places);
            request["at"] = new JsonArray([.. places.Select(place => (JsonNode)place)]);
            request["width"] = 720;
            string html = Ask(desk, request)["html"]!.ToString();
            Assert.All(frame.Figures, figure =>
            {
                Assert.Contains($"<figcaption class=\"bb-title\">{HtmlRenderer.Escape(TextMetrics.Bound(figure.Title))}</figcaption>", html,
                    StringComparison.Ordinal);
                Assert.Contains(HtmlRenderer.Escape(figure.Table.Row(2)[1]), html, StringComparison.Ordinal);
            });
            Assert.All(frame.Readouts, readout => Assert.Contains($"<dd>{readout.Value}</dd>", html, StringComparison.Ordinal));
            Assert.Contains(HtmlRenderer.Escape(frame.Verdict!.Text), html, StringComparison.Ordinal);
            Assert.Contains(HtmlRenderer.Escape(explorable.StateText(places)), html, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Every_screen_of_the_story_is_made_again_in_the_page_for_its_car_and_for_a_readers_own(string car)
    {
        Vehicle vehicle = Cars.Load(car);
        var desk = new LiveDesk();
        string[] screens = [.. KneeStory.Screens(vehicle)], ids = [.. screens.Select(screen => Made(vehicle, screen).Id)];
        Assert.Equal(car == "coupe-1960s", screens.Contains("metering"));
        Assert.Equal(ids.Distinct(), ids);
        foreach (string screen in screens)
        {
            Explorable explorable = Made(vehicle, screen);
            var request = (JsonObject)JsonNode.Parse(Data().Match(explorable.ToHtml()).Groups[1].Value)!;
            var own = (JsonObject)request.DeepClone();
            foreach (int end in new[] { 0, 1000 })
            {
                request["at"] = new JsonArray([.. explorable.Controls.Select(_ => (JsonNode)end)]);
                Frame frame = explorable.At([.. explorable.Controls.Select(control => Math.Min(end, control.Settings.Count - 1))]);
                string html = Ask(desk, request)["html"]!.ToString();
                Assert.All(frame.Figures, figure => Assert.Contains(HtmlRenderer.Escape(figure.Title), html, StringComparison.Ordinal));
                Assert.Contains(HtmlRenderer.Escape(frame.Verdict!.Text), html, StringComparison.Ordinal);
            }

            own["text"] = BrakeBalance.Tests.OwnCar.Text;
            JsonNode answer = Ask(desk, own);
            Assert.Null(answer["fault"]);
            Assert.Contains("Green saloon", answer["html"]!.ToString(), StringComparison.Ordinal);
            Assert.Contains("bb-controls", answer["controls"]!.ToString(), StringComparison.Ordinal);
        }

        static Explorable Made(Vehicle vehicle, string screen) => KneeStory.Of(screen, vehicle, () => Setting.Of(vehicle), UnitSystem.Si);
    }

    [Fact]
    public void A_car_changed_in_a_cell_stays_as_it_was_drawn_for_a_page_could_not_make_it_again()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        Assert.Contains("bb-ask", FootExplorables.Travel(car, UnitSystem.Si).ToHtml(), StringComparison.Ordinal);
        Assert.DoesNotContain("bb-ask", FootExplorables.Travel(car with { Name = "Another" }, UnitSystem.Si).ToHtml(),
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_client_is_told_of_the_cell_above_and_an_exported_page_that_its_controls_need_scripts()
    {
        string client = Cars.Explorable("coupe-1960s", UnitSystem.Si).ToHtml(), page = Explorable.Exported(client);
        Assert.Contains("cannot work here. To see another state, change the value in a cell above", client, StringComparison.Ordinal);
        Assert.Contains(") need scripts, which are off in this browser.</p>", page, StringComparison.Ordinal);
        Assert.DoesNotContain("cell above", page, StringComparison.Ordinal);
    }

    [Fact]
    public void A_setting_may_hold_any_letter()
    {
        var slider = Control.Slider("load", "Load", ["driver | fuel", "\"both\" <full>"], 0);
        string html = Explorable.Of("odd", [slider], _ => new Frame([], [])).ToHtml();
        string texts = System.Net.WebUtility.HtmlDecode(html.Split("data-texts=\"")[1].Split('"')[0]);
        Assert.Equal(["driver | fuel", "\"both\" <full>"], JsonNode.Parse(texts)!.AsArray().Select(text => text!.GetValue<string>()));
    }

    [Fact]
    public void Places_beyond_a_control_are_drawn_at_its_end_and_strange_questions_get_words()
    {
        Explorable explorable = LessonSheet.Of("knee", units: UnitSystem.Si).Figure;
        var request = (JsonObject)JsonNode.Parse(Data().Match(explorable.ToHtml()).Groups[1].Value)!;
        var desk = new LiveDesk();
        request["at"] = new JsonArray([.. explorable.Controls.Select(_ => (JsonNode)1000)]);
        int[] last = [.. explorable.Controls.Select(control => control.Settings.Count - 1)];
        Assert.Contains(HtmlRenderer.Escape(explorable.StateText(last)), Ask(desk, request)["html"]!.ToString(), StringComparison.Ordinal);
        request["lesson"] = "none";
        Assert.NotEmpty(Ask(desk, request)["fault"]!.ToString());
        request["name"] = "none";
        Assert.NotEmpty(Ask(desk, request)["fault"]!.ToString());
        request["name"] = "travel";
        Assert.NotEmpty(Ask(desk, request)["fault"]!.ToString());
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
        Frame[] rear = [.. explorable.Frames().Where(frame => frame.Readouts[0].Value == "rear axle")];
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
        string html = BalanceExplorables.SettingAndLoad(Cars.Answer(car)).ToHtml();
        Assert.InRange(html.Length, 20_000, 120_000);
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
    public void A_clock_can_be_played()
    {
        Figure Car(double x) => new FigureBuilder("plan", UnitSystem.Si)
            .Title("A point moves along the road")
                .Describe("A moving point.", "The point moves to the right with time.")
            .X("Distance", "x", Measure.Distance, 0, 10).Y("Offset", "y", Measure.Distance, -1, 1).Points("car", [x], [0.0]).Build();
        Explorable explorable = Explorable.Of("run", [Control.Clock("time", new double[] { 0, 0.5, 1 }, 80)], state =>
            new Frame([Car(state["time"])], []));
        Assert.Contains("<button type=\"button\" data-play=\"80\">Play</button>", explorable.ToHtml(), StringComparison.Ordinal);
        Assert.Equal([0.0, 1, 2], explorable.Frames().Select(frame => ((MarkerLayer)frame.Figures[0].Layers[0]).X[0]));
    }

    private static JsonNode Ask(LiveDesk desk, JsonObject request) => JsonNode.Parse(desk.Answer(request.ToJsonString()))!;

    [GeneratedRegex("<script type=\"application/json\" class=\"bb-ask\">(.*?)</script>", RegexOptions.Singleline)]
    private static partial Regex Data();

    [Fact]
    public void A_span_of_one_adhesion_is_one_adhesion()
    {
        static string On(params double[] held) => Finding.Adhesions([0.3, 0.4, 0.5, 1.17, 1.18, 1.2], k => k, held.Contains);
        Assert.Equal("an adhesion of 1.20", On(1.2));
        Assert.Equal("adhesions from 1.17 to 1.20", On(1.17, 1.18, 1.2));
        Assert.Equal("adhesions from 0.30 to 0.40 and from 1.17 to 1.20", On(0.3, 0.4, 1.17, 1.18, 1.2));
        Assert.Equal("adhesions of 0.40 and from 1.17 to 1.18", On(0.4, 1.17, 1.18));
    }

    [Fact]
    public void A_car_on_track_tyres_is_shown_on_the_best_road_of_its_conditions()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        var setting = Setting.Of(car with { Conditions = car.Conditions with { HighestAdhesion = 1.4 } });
        Control road = BalanceExplorables.SettingAndLoad(setting, settings: 3, units: UnitSystem.Si).Controls
            .Single(control => control.Id == "surface");
        Assert.Equal("1.4 dry, track tyres", road.Settings[^1]);
        Figure map = SettingExplorer.Of(setting, units: UnitSystem.Si).Start.Figures[0];
        Assert.Equal(1.4, map.XAxis.Maximum!.Value, 1e-9);
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("track-coupe")]
    public void A_setting_beyond_the_safe_limit_is_never_good_news_whatever_locks_first_on_the_road_chosen(string name)
    {
        var setting = Setting.Of(Cars.Load(name));
        Explorable explorable = BalanceExplorables.SettingAndLoad(setting, settings: 13, units: UnitSystem.Si);
        bool seen = false;
        for (int i = 0; i < explorable.Controls[0].Settings.Count; i++)
        {
            Verdict verdict = explorable.At([i, 0, 1]).Verdict!;
            string text = explorable.Controls[0].Settings[i].Split('\u00a0')[0];
            double at = double.Parse(text, CultureInfo.InvariantCulture);
            bool beyond = setting.SafeLimit!.FrontForceShare is { } share ? at < 100 * share - 0.05
                : at > setting.SafeLimit.Knee!.Value.Bars + 0.05;
            seen |= beyond && verdict.Text.Contains("front axle locks first", StringComparison.Ordinal);
            Assert.True(!beyond || verdict.Kind == VerdictKind.Caution, verdict.Text);
            Assert.Equal(beyond && verdict.Text.StartsWith("The front", StringComparison.Ordinal),
                verdict.Text.Contains("beyond the safe limit", StringComparison.Ordinal));
        }

        Assert.True(seen);
    }

    [Fact]
    public void One_like_another_on_its_page_asks_for_the_same_with_less()
    {
        Vehicle car = Cars.Load("coupe-1960s");
        Explorable first = KneeStory.Of("stop", car, () => Cars.Answer("coupe-1960s"), UnitSystem.Si);
        Explorable second = KneeStory.Of("knee", car, () => Cars.Answer("coupe-1960s"), UnitSystem.Si);
        JsonObject Asked(string html) => JsonNode.Parse(Data().Match(html).Groups[1].Value)!.AsObject();
        JsonObject whole = Asked(second.ToHtml()), less = Asked(second.ToHtml(first)), above = Asked(first.ToHtml());
        Assert.Equal(first.Id, less["like"]!.ToString());
        Assert.True(less.ToJsonString().Length < 200, less.ToJsonString());
        less.Remove("like");
        foreach ((string key, JsonNode? value) in less)
        {
            above[key] = value?.DeepClone();
        }

        Assert.True(JsonNode.DeepEquals(whole, above));
    }
}
