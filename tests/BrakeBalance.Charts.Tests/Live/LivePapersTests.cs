using System.Text.Json;
using System.Text.Json.Nodes;
using BrakeBalance.Bench;
using BrakeBalance.Bench.Files;
using BrakeBalance.Charts.Live;
using BrakeBalance.Charts.Sheets;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Charts.Tests.Live;

public class LivePapersTests
{
    private static readonly string Coupe = File.ReadAllText(RepositoryRoot.File("data/vehicles/coupe-1960s.json"));
    private static readonly string JobFile = RepositoryRoot.File(BenchInput.Default);
    private static readonly string Job = File.ReadAllText(JobFile);
    private readonly LiveDesk _desk = new();

    [Theory]
    [InlineData("a5", "si")]
    [InlineData("half-letter", "us")]
    public void The_pocket_card_is_that_of_the_program_for_the_car_as_its_sliders_have_it(string paper, string units)
    {
        JsonObject reply = Ask(new()
        {
            ["do"] = "card",
            ["text"] = Coupe,
            ["set"] = new JsonArray(new JsonArray("hydraulics.rearValves[0].knee", "12 bar")),
            ["units"] = units,
            ["paper"] = paper,
            ["load"] = "laden",
        });
        Vehicle car = VehicleFile.Read(Coupe, "test", new ValueOverride("hydraulics.rearValves[0].knee", "12 bar")).Vehicle;
        UnitSystem system = Display.Parse(units)!.Value;
        string html = reply["html"]!.ToString();
        Assert.Equal(
            PocketCardPage.Html(PocketCard.Of(car, car.LoadCase("laden"), system), CardPaper.All.Single(one => one.Name == paper)), html);
        Assert.Contains(HtmlRenderer.Escape(SettingWords.Recommended(Setting.Of(car), system)), html, StringComparison.Ordinal);
        Assert.Equal($"invented-1960s-coupe-card-{paper}-{units}.html", reply["name"]!.ToString());
        Assert.Equal(car.LoadCases.Select(load => load.Name), reply["loads"]!.AsArray().Select(load => load!.ToString()));
        Assert.Empty(Ask(new() { ["do"] = "card", ["text"] = "{}" }));
    }

    [Fact]
    public void The_bench_sheet_is_that_of_the_program_and_its_change_of_parts_is_for_the_car_of_the_page()
    {
        JsonObject same = Ask(new() { ["do"] = "bench", ["text"] = Coupe, ["bench"] = Job });
        Assert.Equal(BenchPrintSheet.Html(BenchReport.Of(BenchFile.Load(JobFile)), UnitSystem.Si), same["html"]!.ToString());
        Assert.Contains("Invented 1960s coupe", same["said"]!.ToString(), StringComparison.Ordinal);

        string other = Coupe.Replace("\"ratio\": 4.0", "\"ratio\": 5.0", StringComparison.Ordinal);
        Assert.NotEqual(same["html"]!.ToString(),
            Ask(new() { ["do"] = "bench", ["text"] = other, ["bench"] = Job })["html"]!.ToString());
        var job = (JsonObject)JsonNode.Parse(Job, null, new() { CommentHandling = JsonCommentHandling.Skip, AllowTrailingCommas = true })!;
        job.Remove("change");
        Assert.Equal("", Ask(new() { ["do"] = "bench", ["text"] = "{}", ["bench"] = job.ToJsonString() })["said"]!.ToString());
        Assert.Contains("<h1>Bench sheet: Booster swap",
            Ask(new() { ["do"] = "bench", ["bench"] = Ask(new() { ["do"] = "job" })["text"]!.ToString() })["html"]!.ToString(),
            StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("{")]
    [InlineData("{ \"name\": \"x\" }")]
    [InlineData("{ \"name\": \"x\", \"pushRod\": { \"seatDepth\": [\"28 kg\"] } }")]
    public void What_is_wrong_with_a_bench_file_is_said_in_the_words_of_the_program(string job)
    {
        JsonObject reply = Ask(new() { ["do"] = "bench", ["text"] = Coupe, ["bench"] = job });
        string[] words = [.. Assert.Throws<BenchFileException>(() => BenchFile.Read(job, "x", "")).Problems.Select(one => one.ToString())];
        Assert.Equal(words, reply["problems"]!.AsArray().Select(one => one!.ToString()));
        Assert.Null(reply["html"]);
    }

    [Fact]
    public void Set_ups_side_by_side_are_saved_too_and_an_unknown_figure_is_not()
    {
        var cars = new JsonArray(new JsonObject { ["name"] = "A", ["text"] = Coupe }, new JsonObject { ["name"] = "B", ["text"] = Coupe });
        JsonObject reply = Ask(new() { ["do"] = "save", ["text"] = Coupe, ["name"] = "set-ups", ["cars"] = cars });
        Assert.StartsWith("<svg", reply["svg"]!.ToString(), StringComparison.Ordinal);
        Assert.Equal("invented-1960s-coupe-set-ups-si.csv", reply["numbers"]!.ToString());
        Assert.Empty(Ask(new() { ["do"] = "save", ["text"] = Coupe, ["name"] = "set-ups" }));
        Assert.Empty(Ask(new() { ["do"] = "save", ["text"] = Coupe, ["name"] = "nothing" }));
    }

    private JsonObject Ask(JsonObject request)
    {
        var reply = (JsonObject)JsonNode.Parse(_desk.Answer(request.ToJsonString()))!;
        Assert.Null(reply["fault"]);
        return reply;
    }
}
