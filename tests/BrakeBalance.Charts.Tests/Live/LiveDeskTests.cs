using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts.Live;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Charts.Tables;
using BrakeBalance.Measurements;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Charts.Tests.Live;

public class LiveDeskTests
{
    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));
    private readonly LiveDesk _desk = new(new Dictionary<string, string> { ["coupe"] = Coupe });

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

    [Fact]
    public void The_answer_stands_in_the_words_of_every_other_output()
    {
        JsonObject reply = Ask(new() { ["do"] = "car", ["text"] = Coupe, ["units"] = "us" });
        var setting = Setting.Of(VehicleFile.Read(Coupe, "test").Vehicle);
        string words = Plain(reply["bar"]!.ToString() + Ask(new() { ["do"] = "behind", ["text"] = Coupe, ["units"] = "us" })["html"]);
        Assert.All(SettingWords.Lines(setting, UnitSystem.Us), line => Assert.Contains(line.Text, words, StringComparison.Ordinal));
        Assert.Equal(setting.PresentIsBeyond, reply["beyond"]!.GetValue<bool>());
        Assert.Equal(setting.SafeLimit!.Knee!.Value.Pascals, reply["marks"]!["safe"]!["pascals"]!.GetValue<double>(), 1e-6);
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
            Assert.True(reply["html"]!.ToString().Contains("<svg", StringComparison.Ordinal) || reply["needs"] is not null, name);
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
        Assert.NotEmpty(Ask(new()
        {
            ["do"] = "car",
            ["text"] = Coupe,
            ["logs"] = new JsonObject { ["stops"] = "no,log" }
        })["logProblems"]!.AsArray());
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
        foreach (string what in (string[])["car", "behind", "form", "figure", "measured"])
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
        Assert.All(Regex.Matches(form, " (?:for|aria-describedby)=\"([^\"]+)\"").Select(match => match.Groups[1].Value),
            id => Assert.Contains(id, ids));
    }

    private static (string Stops, string Gauges) Logs() => (
        File.ReadAllText(RepositoryRoot.File("data/logs/invented-stops.csv")),
        File.ReadAllText(RepositoryRoot.File("data/logs/invented-gauges.csv")));

    private static string Plain(string html) => System.Net.WebUtility.HtmlDecode(Regex.Replace(html, "<[^>]+>", "\n"));

    private JsonObject Ask(JsonObject request)
    {
        var reply = (JsonObject)JsonNode.Parse(_desk.Answer(request.ToJsonString()))!;
        Assert.Null(reply["fault"]);
        return reply;
    }
}
