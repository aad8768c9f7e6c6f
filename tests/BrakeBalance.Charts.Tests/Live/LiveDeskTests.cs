using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Live;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Rendering;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Live;

public class LiveDeskTests
{
    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));
    private readonly LiveDesk _desk = new(() => new Dictionary<string, string> { ["coupe"] = Coupe });

    [Theory]
    [InlineData("invented-export-01-decimal-comma.csv")]
    [InlineData("invented-export-04-wheels.csv")]
    public void The_stops_of_a_loggers_export_are_those_of_the_program(string name)
    {
        string log = File.ReadAllText(RepositoryRoot.File("data/logs/" + name));
        string html = Ask(new() { ["do"] = "series", ["log"] = log })["html"]!.ToString();
        StopSearch search = StopFinder.Find(LogReader.ReadTimeSeries(new StringReader(log)).Rows);
        Assert.NotEmpty(search.Stops);
        Assert.Contains(MeasurementTables.Stops(search, UnitSystem.Si).ToHtml(), html, StringComparison.Ordinal);
        Assert.Contains("bb-wrong", Ask(new() { ["do"] = "series", ["log"] = "x" })["html"]!.ToString(), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("0.55", true)]
    [InlineData("0.30", false)]
    public void A_car_without_a_valve_that_needs_one_is_no_good_news(string rearFriction, bool needs)
    {
        JsonNode file = DocumentFile.Parse(StarterFile.Text("vacuum", "disc", "none")).Root!;
        file["rear"]!["brake"]!["friction"] = double.Parse(rearFriction, CultureInfo.InvariantCulture);
        string text = file.ToJsonString();
        var setting = Setting.Of(VehicleFile.Read(text, "test").Vehicle);
        Assert.Equal(needs, setting.IsBuiltBeyond);
        Assert.Equal(needs, Ask(new() { ["do"] = "car", ["text"] = text })["beyond"]!.GetValue<bool>());
        Assert.Equal(needs ? VerdictKind.Caution : VerdictKind.Good, SettingExplorer.Of(setting).Start.Verdict!.Kind);
        Assert.Equal(needs ? "As the car is built the rear can lock first" : "The setting", MeasurementTables.Setting(setting).Title);
    }

    [Fact]
    public void The_answer_stands_in_the_words_of_every_other_output()
    {
        const string Knee = "hydraulics.rearValves[0].knee";
        JsonObject reply = Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe,
            ["units"] = "us",
            ["slides"] = new JsonArray(new JsonArray(Knee, "psi")),
        });
        var setting = Setting.Of(VehicleFile.Read(Coupe, "test").Vehicle);
        string words = Plain(reply["bar"]!.ToString() + Ask(new() { ["do"] = "behind", ["text"] = Coupe, ["units"] = "us" })["html"]);
        Assert.All(SettingWords.Lines(setting, UnitSystem.Us), line => Assert.Contains(line.Text, words, StringComparison.Ordinal));
        string inSight = Plain(reply["bar"]!.ToString());
        Assert.All(["How sure", "Measure next", SettingWords.Gain(setting.Gains[0], UnitSystem.Us)],
            said => Assert.Contains(said, inSight, StringComparison.Ordinal));
        Assert.Equal(setting.PresentIsBeyond, reply["beyond"]!.GetValue<bool>());

        // A mark stands on the slider's track, so it is in the slider's unit: it was in pascals, which the page then divided.
        Assert.Equal(setting.SafeLimit!.Knee!.Value.PoundsForcePerSquareInch, reply["marks"]!["safe"]!["at"]!.GetValue<double>(), 1e-9);
        Assert.Equal(Knee, reply["marks"]!["path"]!.ToString());

        // The track reaches to both ends of the adjuster: half of a high knee is not fully out.
        KneeAdjustment screw = setting.Vehicle.Hydraulics.RearProportioningValve!.Adjustment!;
        Assert.Equal(new[] { screw.KneeAt(0), screw.KneeAt(screw.Turns) }.Select(knee => Math.Round(knee.PoundsForcePerSquareInch, 6)),
            reply["marks"]!["reach"]!.AsArray().Select(end => Math.Round(end!.GetValue<double>(), 6)));
    }

    [Fact]
    public void The_form_says_of_a_list_what_is_typed_and_the_file_what_is_written()
    {
        const string Entry = "front.brake.pistonDiameters";
        string text = VehicleText.Remove(Coupe, Entry);
        JsonNode said = Ask(new() { ["do"] = "car", ["text"] = text })["problems"]!.AsArray().Single(one => $"{one!["path"]}" == Entry)!;
        Assert.StartsWith("is missing. Accepted: values separated by commas, each a length from 10 mm to 120 mm in ",
            said["words"]!.ToString(), StringComparison.Ordinal);
        Assert.EndsWith(", such as 54 mm.", said["words"]!.ToString(), StringComparison.Ordinal);
        Assert.Contains(VehicleFile.TryRead(text).Problems,
            problem => problem.ToString() == Entry + ": is missing. Accepted: a list in square brackets.");
        string form = Ask(new() { ["do"] = "form", ["text"] = text })["html"]!.ToString();
        Assert.Contains("Accepted: values separated by commas, each a length", form, StringComparison.Ordinal);
        Assert.DoesNotContain("square brackets", form, StringComparison.Ordinal);
    }

    [Fact]
    public void A_fitted_file_is_answered_as_on_the_command_line_without_its_logs_at_hand()
    {
        string text = VehicleText.Set(VehicleText.Set(Coupe, "measurements.fitted", "true"), "measurements.safeKnee", "4.2 bar");
        string words = Plain(Ask(new() { ["do"] = "car", ["text"] = text })["bar"]!.ToString());
        Assert.Contains("4.2 bar", words, StringComparison.Ordinal);
        Assert.Contains("by this car's own stops", words, StringComparison.Ordinal);
    }

    [Fact]
    public void A_value_moved_by_a_slider_is_the_value_set_on_the_command_line()
    {
        JsonObject moved = Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe,
            ["set"] = new JsonArray(new JsonArray("hydraulics.rearValves[0].knee", "12 bar")),
        });
        var set = Setting.Of(VehicleFile.Read(Coupe, "test", new ValueOverride("hydraulics.rearValves[0].knee", "12 bar")).Vehicle);
        Assert.Equal(SettingWords.Sentence(set, UnitSystem.Si), moved["sentence"]!.ToString());
    }

    [Fact]
    public void Every_problem_of_a_file_comes_with_the_path_of_its_entry()
    {
        JsonObject reply = Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe.Replace("\"wheelbase\": \"", "\"wheelbase\": \"x", StringComparison.Ordinal),
        });
        Assert.Equal("wheelbase", Assert.Single(reply["problems"]!.AsArray())!["path"]!.ToString());
        Assert.Null(reply["bar"]);
    }

    [Fact]
    public void Each_figure_that_a_tab_names_is_drawn_or_says_what_the_car_lacks()
    {
        HashSet<string> known = [.. FigureCatalogue.All.Select(entry => entry.Name)];
        string[] named = [.. Ask(new() { ["do"] = "begin" })["figures"]!.AsArray()
            .SelectMany(tab => tab!["names"]!.AsArray().Select(name => name!.ToString()))];
        Assert.Equal(named.Length, named.Distinct().Count());
        Assert.All(named, name =>
        {
            Assert.Contains(name, known);
            JsonObject reply = Ask(new() { ["do"] = "figure", ["text"] = Coupe, ["name"] = name, ["width"] = 370 });
            Assert.True(reply["html"]!.ToString().Contains("<svg", StringComparison.Ordinal)
                || reply["needs"]?.ToString().StartsWith("Not drawn, needs ", StringComparison.Ordinal) == true, name);
        });
    }

    [Fact]
    public void Logs_typed_in_are_fitted_as_the_logs_of_a_file_are()
    {
        (string stops, string gauges) = Logs();
        var logs = new JsonObject { ["stops"] = stops, ["gauges"] = gauges };
        JsonObject reply = Ask(new() { ["do"] = "car", ["text"] = Coupe, ["logs"] = logs.DeepClone() });
        Vehicle car = VehicleFile.Read(Coupe, "test").Vehicle;
        (OwnMeasurements? own, IReadOnlyList<string> _) = OwnMeasurements.Read(car, new MeasurementLogs("g", "s", null),
            open: path => new StringReader(path == "s" ? stops : gauges));
        Assert.Equal(SettingWords.Sentence(Setting.Of(own!.Attached()), UnitSystem.Si), reply["sentence"]!.ToString());
        Assert.Contains("<table", Ask(new() { ["do"] = "measured", ["text"] = Coupe, ["logs"] = logs })["html"]!.ToString(),
            StringComparison.Ordinal);
        NextStops next = NextTest.Of(OwnMeasurements.EstimateOn(own!.Attached(), []));
        Assert.Contains(HtmlRenderer.Escape(NextStopWords.Title(next, UnitSystem.Us)), Ask(new()
        {
            ["do"] = "next",
            ["text"] = Coupe,
            ["logs"] = logs.DeepClone(),
            ["units"] = "us",
        })["html"]!.ToString(), StringComparison.Ordinal);
        Assert.NotEmpty(Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe,
            ["logs"] = new JsonObject { ["stops"] = "no,log" }
        })["logProblems"]!.AsArray());
    }

    [Fact]
    public void A_loggers_file_is_read_in_whatever_encoding_it_was_written()
    {
        byte[] bytes = File.ReadAllBytes(RepositoryRoot.File("data/logs/invented-export-09-knots.csv"));
        string text = Ask(new() { ["do"] = "decode", ["bytes"] = Convert.ToBase64String(bytes) })["text"]!.ToString();
        Assert.Contains("<table", Ask(new() { ["do"] = "series", ["log"] = text })["html"]!.ToString(), StringComparison.Ordinal);
    }

    public static TheoryData<string, string, string, bool> Changes => new()
    {
        { "hydraulics.rearValves[0].knee", "22 bar", "", true },
        { "pedal.ratio", "4.2", "", true },
        { "name", "Another", "", true },
        { "assist.boostRatio", "3", "", true },
        // A stop that does not say its turns was made at the knee that the car has.
        { "hydraulics.rearValves[0].knee", "22 bar", "9;40;driver only;dry;;12.7;;;0.230;none;\n", false },
    };

    [Theory]
    [MemberData(nameof(Changes))]
    public void A_fitted_car_whose_knee_pedal_or_assist_is_changed_is_not_fitted_again_and_answers_as_if_it_were(
        string path, string value, string stop, bool isKept)
    {
        (string stops, string gauges) = Logs();
        JsonObject Request(bool typed, params string[][] sets) => new()
        {
            ["text"] = typed ? VehicleText.Set(Coupe, path, value) : Coupe,
            ["logs"] = new JsonObject { ["stops"] = stops.TrimEnd() + "\n" + stop, ["gauges"] = gauges },
            ["set"] = new JsonArray([.. sets.Select(set => new JsonArray(set[0], set[1]))]),
        };
        var cars = new LiveCars();
        LiveCar before = cars.Of(Request(false)), moved = cars.Of(Request(false, [path, value])), typed = cars.Of(Request(true));
        LiveCar fresh = new LiveCars().Of(Request(true));
        string Said(LiveCar car) => new SummaryJson(new ReportUnits(UnitSystem.Si)).Text(BalanceSummary.Of(car.Study!.Car));
        string told = Said(before), asked = Said(fresh);
        Assert.NotEqual(told, asked);
        Assert.Equal(asked, Said(moved));
        Assert.Equal(asked, Said(typed));
        Assert.Equal(LiveMeasured.Html(fresh, UnitSystem.Us), LiveMeasured.Html(moved, UnitSystem.Us));
        Assert.Equal(LiveMeasured.Next(fresh, UnitSystem.Si), LiveMeasured.Next(typed, UnitSystem.Si));
        Assert.Equal(fresh.Study!.Answer.Chance.Present, moved.Study!.Answer.Chance.Present);
        Assert.Equal(isKept, ReferenceEquals(before.Own!.Estimate!.Posterior, moved.Own!.Estimate!.Posterior));
        Assert.Equal(isKept, ReferenceEquals(before.Study!.Answer.Chance.TradeOff, moved.Study!.Answer.Chance.TradeOff));
    }

    // As with --set: fitted to other brakes the stops would make up for the difference.
    [Theory]
    [InlineData("rear.brake.friction", "0.42")]
    [InlineData("loadCases[0].mass", "1300 kg")]
    [InlineData("hydraulics.rearValves[0].slope", "0.5")]
    public void What_is_entered_or_moved_after_the_fit_is_a_change_of_the_car_and_is_not_fitted_away(string path, string value)
    {
        (string stops, string gauges) = Logs();
        JsonObject logs = new() { ["stops"] = stops, ["gauges"] = gauges, ["of"] = Coupe };
        string entered = VehicleText.Set(Coupe, path, value);
        var cars = new LiveCars();
        LiveCar Of(string text, params string[][] sets) => cars.Of(new()
        {
            ["text"] = text,
            ["logs"] = logs.DeepClone(),
            ["set"] = new JsonArray([.. sets.Select(set => new JsonArray(set[0], set[1]))]),
        });
        LiveCar fitted = Of(Coupe), moved = Of(Coupe, [path, value]), typed = Of(entered);
        OwnMeasurements own = OwnMeasurements.Read(VehicleFile.Read(Coupe, "coupe").Vehicle, new("gauges", "stops", null),
            open: log => new StringReader(log == "stops" ? stops : gauges)).Own!;
        var asked = Setting.Of(own.CarriedBy(VehicleFile.Read(Coupe, "coupe", new ValueOverride(path, value)).Vehicle));
        string Said(Setting setting) => string.Join('\n', SettingWords.Lines(setting, UnitSystem.Si));
        Assert.Equal(Said(asked), Said(moved.Study!.Answer));
        Assert.Equal(Said(asked), Said(typed.Study!.Answer));
        Assert.NotEqual(Said(asked), Said(fitted.Study!.Answer));
        Assert.Same(fitted.Own!.Estimate, moved.Own!.Estimate);
        Assert.Equal(path.Contains("slope", StringComparison.Ordinal), !typed.IsChanged);
        Assert.Equal(typed.IsChanged,
            LiveMeasured.Html(typed, UnitSystem.Si).Contains("The car was changed since", StringComparison.Ordinal));

        // A link carries both; a file of the changed car names no logs that are not its own.
        string link = LiveShare.Of(entered, logs, "")["words"]!.ToString();
        (string text, IReadOnlyDictionary<string, string> given) = LiveLink.Opened(link);
        Assert.Equal(Said(asked), Said(cars.Of(new()
        {
            ["text"] = text,
            ["logs"] = new JsonObject(given.Select(log => KeyValuePair.Create(log.Key, (JsonNode?)log.Value))),
        }).Study!.Answer));
        JsonNode saved = LiveShare.Files(entered, logs, typed.IsChanged)["files"]![0]!["text"]!;
        Assert.Equal(typed.IsChanged, DocumentFile.Parse(saved.ToString()).Root!["measurements"] is null);
        Assert.DoesNotContain("of", LiveLink.Opened(LiveShare.Of(Coupe, logs, "")["words"]!.ToString()).Logs.Keys);
    }

    [Fact]
    public void The_answer_says_which_logs_a_file_names_that_are_not_read_here_unless_they_are_given_or_fitted_already()
    {
        (string stops, string gauges) = Logs();
        string Bar(string more, JsonObject? logs) => Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe.Replace("// \"measurements\": {", "\"measurements\": {" + more, StringComparison.Ordinal),
            ["logs"] = logs,
        })["bar"]!.ToString();
        const string Gauges = "../logs/invented-gauges.csv", Stops = "../logs/invented-stops.csv", Words = "not read here";
        Assert.Contains($"The file names {Gauges} and {Stops}: {Words} until opened under Measure and fitted.", Bar("", null),
            StringComparison.Ordinal);
        Assert.Contains($"The file names {Stops}: {Words}", Bar("", new() { ["gauges"] = gauges }), StringComparison.Ordinal);
        Assert.DoesNotContain(Words, Bar("", new() { ["gauges"] = gauges, ["stops"] = stops }), StringComparison.Ordinal);
        Assert.DoesNotContain(Words, Bar("\"fitted\": true,", null), StringComparison.Ordinal);
    }

    [Fact]
    public void Before_the_first_stop_the_next_one_is_easy_and_a_log_in_doubt_has_none()
    {
        Assert.Contains("adjuster fully out", Ask(new() { ["do"] = "next", ["text"] = Coupe })["html"]!.ToString(),
            StringComparison.Ordinal);
        (string stops, _) = Logs();
        var logs = new JsonObject { ["stops"] = stops.Replace("[bar]", "[psi]", StringComparison.Ordinal) };
        Assert.Equal("", Ask(new() { ["do"] = "next", ["text"] = Coupe, ["logs"] = logs })["html"]!.ToString());
    }

    [Fact]
    public void Set_ups_side_by_side_say_what_the_comparison_of_the_program_says()
    {
        string other = Coupe.Replace("\"name\": \"", "\"name\": \"Other ", StringComparison.Ordinal)
            .Replace("\"ratio\": 4.0", "\"ratio\": 5.0", StringComparison.Ordinal);
        Assert.NotEqual(Coupe, other);
        string html = System.Net.WebUtility.HtmlDecode(Ask(new()
        {
            ["do"] = "compare",
            ["cars"] = new JsonArray(
                new JsonObject { ["name"] = "A", ["text"] = Coupe }, new JsonObject { ["name"] = "B", ["text"] = other },
                new JsonObject { ["name"] = "C", ["text"] = "{" }),
        })["html"]!.ToString());
        Assert.Contains("the file has a problem", html, StringComparison.Ordinal);
        foreach (ComparisonRow row in SetUpComparison.Of(
            [("A", VehicleFile.Read(Coupe, "a").Vehicle), ("B", VehicleFile.Read(other, "b").Vehicle)], UnitSystem.Si).Rows)
        {
            string second = row.Differences[1].Length == 0 ? row.Texts[1] : $"{row.Texts[1]}; {row.Differences[1]}";
            Assert.Matches($">{Regex.Escape(row.Label)}</th><td>{Regex.Escape(row.Texts[0])}</td><td>{Regex.Escape(second)}</td>", html);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("[]")]
    [InlineData("{ \"do\": \"nothing\" }")]
    [InlineData("{ \"do\": 5 }")]
    [InlineData("{ \"do\": \"figure\", \"text\": \"{}\", \"name\": 7, \"width\": \"wide\" }")]
    [InlineData("{ \"do\": \"compare\", \"cars\": [ 1, null, { \"text\": \"{\" } ] }")]
    [InlineData("{ \"do\": \"edit\", \"text\": \"{\", \"how\": \"add\", \"path\": \"x\" }")]
    [InlineData("{ \"do\": \"car\", \"text\": \"{ \\\"wheelbase\\\": 1e308 }\", \"set\": [[\"a\", \"b\"], 7] }")]
    public void Whatever_is_asked_is_answered_and_nothing_is_thrown(string request)
    {
        Assert.NotNull(JsonNode.Parse(_desk.Answer(request)));
        Assert.NotNull(JsonNode.Parse(_desk.Answer(new string('[', 100_000))));
    }

    [Fact]
    public void A_hostile_name_is_shown_as_text()
    {
        const string Name = "<script>alert(1)</script><img src=x onerror=alert(2)>";
        string text = Coupe.Replace("\"name\": \"", $"\"name\": \"{Name}", StringComparison.Ordinal);
        foreach (string what in (string[])["car", "behind", "form", "figure", "measured", "next"])
        {
            string reply = Ask(new() { ["do"] = what, ["text"] = text, ["name"] = "brake-forces" })["html"]?.ToString() ?? "";
            Assert.DoesNotContain("<script", reply, StringComparison.OrdinalIgnoreCase);
            Assert.DoesNotContain("<img", reply, StringComparison.OrdinalIgnoreCase);
        }

        string form = Ask(new() { ["do"] = "form", ["text"] = text })["html"]!.ToString();
        Assert.Contains("value=\"&lt;script&gt;", form, StringComparison.Ordinal);
    }

    [Fact]
    public void Ids_of_a_form_are_its_own()
    {
        string form = Ask(new() { ["do"] = "form", ["text"] = Coupe })["html"]!.ToString();
        string[] ids = [.. Regex.Matches(form, " id=\"([^\"]+)\"").Select(match => match.Groups[1].Value)];
        Assert.InRange(ids.Length, 40, 1000);
        Assert.Equal(ids.Length, ids.Distinct().Count());

        // A list of several is as good as one.
        Assert.All(Regex.Matches(form, " (?:for|aria-describedby)=\"([^\"]+)\"").SelectMany(match => match.Groups[1].Value.Split(' ')),
            id => Assert.Contains(id, ids));
    }

    private static (string Stops, string Gauges) Logs() => (
        File.ReadAllText(RepositoryRoot.File("data/logs/invented-stops.csv")),
        File.ReadAllText(RepositoryRoot.File("data/logs/invented-gauges.csv")));

    private static string Plain(string html) => System.Net.WebUtility.HtmlDecode(Regex.Replace(html, "<[^>]+>", "\n"));

    [Theory]
    [InlineData("hydraulics.rearValves[0].knee", "350 psi", "si", "= 24.1 bar")]
    [InlineData("hydraulics.rearValves[0].knee", "350 .. 400 psi", "si", "= 24.1 bar .. 27.6 bar")]
    [InlineData("hydraulics.rearValves[0].knee", "350 psi", "us", "")]
    [InlineData("hydraulics.rearValves[0].knee", "", "si", "= 24.1 bar")]
    [InlineData("hydraulics.rearValves[0].knee", "35x", "si", "")]
    [InlineData("hydraulics.rearValves[0].slope", "0.3", "us", "")]
    [InlineData("front.brake.pistonDiameters", "2.94 in, 1-1/8 in", "si", "= 74.7 mm, 28.6 mm")]
    [InlineData("wheelbase", "2.90 m", "us", "= 114 in")]
    [InlineData("loadCases[0].mass", "1700 kg", "us", "= 3748 lb")]
    [InlineData("assist.vacuum", "60 kPa", "us", "= 17.7 inHg")]
    [InlineData("assist.altitude", "200 m", "us", "= 656 ft")]
    [InlineData("name", "12 mm", "us", "")]
    [InlineData("nonsense", "12 mm", "us", "")]
    public void Beside_an_entry_stands_what_it_is_in_the_other_system_of_units(string path, string value, string units, string said)
    {
        string text = VehicleText.ChangeKind(Coupe, "assist", "vacuum");
        Assert.Equal(said, Ask(new() { ["do"] = "beside", ["text"] = text, ["path"] = path, ["value"] = value, ["units"] = units })["text"]!
            .ToString());
    }

    [Fact]
    public void The_form_tells_every_quantity_of_a_car_in_the_chosen_units_and_slides_in_them()
    {
        string metric = Ask(new() { ["do"] = "form", ["text"] = Coupe, ["units"] = "si" })["html"]!.ToString();
        string customary = Ask(new() { ["do"] = "form", ["text"] = Coupe, ["units"] = "us" })["html"]!.ToString();
        Assert.Contains(">= 24.1 bar</output>", metric, StringComparison.Ordinal);
        Assert.Matches("knee\" data-low=\"12\\.1\" data-high=\"36\\.1\" data-value=\"24\\.13[0-9]*\" data-unit=\"bar\"", metric);
        Assert.DoesNotContain(">= 350", customary, StringComparison.Ordinal);
        Assert.Matches("rearValves\\[0\\]\\.knee\" data-low=\"175\" data-high=\"525\" data-value=\"350\" data-unit=\"psi\"", customary);
    }

    [Theory]
    [InlineData("us", @"\d (mm|cm|m|kg|bar|kPa|N|kN|km/h|m/s|°C|N·m|l|cm³|l/min|m²|cm²|mm²)(?![\w·/²³])")]
    [InlineData("si", @"\d (in|ft|lb|psi|lbf|mph|°F|inHg)(?![\w·/²³])")]
    public void What_the_forms_accept_and_tell_and_begin_with_stands_in_the_units_of_the_page(string units, string others)
    {
        var system = units == "us" ? UnitSystem.Us : UnitSystem.Si;
        string car = OtherUnits.Within(StarterFile.Text("vacuum", "drum", "adjustable"), system);
        car = VehicleText.Set(car, "note", "-");
        string parts = Ask(new() { ["do"] = "parts", ["text"] = car, ["units"] = units })["text"]!.ToString();
        string list = Regex.Replace(string.Join('\n', parts.Split('\n').Where(line => !line.StartsWith('#'))), "inch series[^,]*", "");
        Assert.NotNull(BrakeBalance.Choosing.PartsList.Read(new StringReader(parts), car).Parts);
        Assert.Contains(units == "us" ? "mass [lb],rating [psi]" : "mass [kg],rating [bar]", list, StringComparison.Ordinal);
        JsonNode answer = Ask(new()
        {
            ["do"] = "car",
            ["text"] = VehicleText.Set(VehicleText.Set(car, "wheelbase", "70 x"), "loadCases[0].mass", "much"),
            ["units"] = units,
        });
        string odd = VehicleText.Set(car, "wheelbase", units == "us" ? "4.5 m" : "180 in");
        JsonNode warned = Ask(new() { ["do"] = "car", ["text"] = odd, ["units"] = units })["warnings"]!;
        Assert.Equal(2, answer["problems"]!.AsArray().Count);
        Assert.NotEmpty(warned.AsArray());
        Assert.All(
            [
                Ask(new() { ["do"] = "form", ["text"] = car, ["units"] = units })["html"]!.ToString(),
                Ask(new() { ["do"] = "targets", ["targets"] = "", ["units"] = units })["html"]!.ToString(),
                answer["problems"]!.ToString(), warned.ToString(), list,
            ],
            told => Assert.DoesNotMatch(others, told));
    }

    [Fact]
    public void What_a_slider_writes_the_readers_accept_at_both_ends_in_either_system_and_the_file_keeps_its_unit()
    {
        int count = 0;
        foreach (UnitSystem units in Enum.GetValues<UnitSystem>())
        {
            foreach (FormField field in Fields(CarForm.Of(Coupe, units).Parts).Where(field => field.Slide is { Unit.Length: > 0 }))
            {
                foreach (double end in new[] { field.Slide!.Low, field.Slide.High })
                {
                    string moved = $"{end.ToString("F" + field.Slide.Decimals, CultureInfo.InvariantCulture)} {field.Slide.Unit}".Trim();
                    string kept = VehicleText.Keep(Coupe, field.Path, moved);
                    string Present(string text) => Assert.Single(Fields(CarForm.Of(text).Parts), one => one.Path == field.Path).Value;
                    string Unit(string value) => value[(value.LastIndexOf(' ') + 1)..];
                    Assert.DoesNotContain(VehicleFile.TryRead(kept).Problems, problem =>
                        problem.Path == field.Path && problem.Accepted == DocumentReader.Accepted(field.Entry));
                    Assert.True(field.Value.Length == 0 || Unit(field.Value) == Unit(Present(kept)),
                        $"{field.Path}: {moved}, {Present(kept)}");
                    count++;
                }
            }
        }

        Assert.InRange(count, 100, 1000);
        string set = VehicleText.Keep(Coupe, "hydraulics.rearValves[0].knee", "24 bar");
        Assert.Equal("348.09 psi", Assert.Single(Fields(CarForm.Of(set).Parts),
            field => field.Path == "hydraulics.rearValves[0].knee").Value);
    }

    [Fact]
    public void A_slider_stays_where_it_stands_when_the_units_change()
    {
        JsonObject there = Ask(new()
        {
            ["do"] = "slide",
            ["text"] = Coupe,
            ["path"] = "hydraulics.rearValves[0].knee",
            ["value"] = "20.00 bar",
            ["units"] = "us",
        });
        Assert.Equal("psi", there["unit"]!.ToString());
        Assert.Equal(175, there["low"]!.GetValue<double>());
        Assert.Equal(Pressure.FromBars(20).PoundsForcePerSquareInch, there["value"]!.GetValue<double>(), 1e-9);
    }

    [Theory]
    [InlineData(280)]
    [InlineData(370)]
    [InlineData(1000)]
    public void Names_under_the_bars_stand_clear_of_one_another_at_every_width(int width)
    {
        string html = Ask(new() { ["do"] = "figure", ["text"] = Coupe, ["name"] = "failures", ["width"] = width })["html"]!.ToString();
        string axis = Regex.Match(html, "-axis-x\"[^>]*>(.*?)</g>", RegexOptions.Singleline).Groups[1].Value;
        (double X, double Y, string Text)[] names = [.. Regex.Matches(axis, "<text[^>]* x=\"([^\"]+)\" y=\"([^\"]+)\"[^>]*>([^<]*)<")
            .Select(match => (double.Parse(match.Groups[1].Value, CultureInfo.InvariantCulture),
                double.Parse(match.Groups[2].Value, CultureInfo.InvariantCulture), match.Groups[3].Value))];
        Assert.InRange(names.Length, 9, 40);
        double font = width < 480 ? 12 : 13;
        double Half(string text) => TextMetrics.Width(text, font) / 2;
        foreach ((double X, double Y, string Text)[] row in names.GroupBy(name => name.Y)
            .Select(row => row.OrderBy(name => name.X).ToArray()))
        {
            Assert.All(row.Zip(row.Skip(1)), pair => Assert.True(
                pair.Second.X - pair.First.X > Half(pair.First.Text) + Half(pair.Second.Text),
                $"{pair.First.Text} and {pair.Second.Text} at {width} px"));
        }

        Assert.All(names, name => Assert.InRange(name.X + Half(name.Text), 0, width));
    }

    private static IEnumerable<FormField> Fields(IEnumerable<FormPart> parts) =>
        parts.SelectMany(part => part.Fields.Concat(Fields(part.Parts)));

    private JsonObject Ask(JsonObject request)
    {
        var reply = (JsonObject)JsonNode.Parse(_desk.Answer(request.ToJsonString()))!;
        Assert.Null(reply["fault"]);
        return reply;
    }
}
