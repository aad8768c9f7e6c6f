using System.Net;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;
using BrakeBalance.Summaries;

namespace BrakeBalance.Notebooks.Tests.Commands;

/// <summary>A number that rests on a range of the file never stands alone.</summary>
public class RangeTests
{
    private const string Class = """
        { "name": "Mine", "carClass": "1960s coupe", "wheelbase": "2.85 m", "pedal": { "ratio": 5 }, "assist": { "type": "none" },
          "masterCylinder": { "type": "tandem", "bore": "25.4 mm" },
          "hydraulics": { "rearValves": [ { "type": "proportioning",
            "adjuster": { "kneeBackedOff": "7 bar", "kneePerTurn": "10 bar", "turns": 6 } } ] } }
        """;

    private static readonly string[] Ranges = ["front.brake.friction=0.34 .. 0.41", "wheelbase=2.80 m .. 2.95 m"];
    private static readonly string[][] Ends =
        [["front.brake.friction=0.34", "wheelbase=2.80 m"], ["front.brake.friction=0.41", "wheelbase=2.95 m"]];

    private static string Coupe => RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    private static async Task<string> Run(params string[] arguments)
    {
        (int code, string output, string error) = await Shell.RunAsync(arguments);
        Assert.True(code == 0, error);
        return output;
    }

    private static string Plain(string text) => Regex.Replace(text, @"\s+", " ");

    private static string[] Set(string[] values) => [.. values.SelectMany(value => new[] { "--set", value })];

    [Theory]
    [InlineData("summary", 200)]
    [InlineData("stops", 60)]
    public async Task Every_number_of_the_json_that_the_ranges_move_has_its_lowest_and_highest_beside_it(string command, int atLeast)
    {
        JsonNode ranged = JsonNode.Parse(await Run([command, Coupe, "--json", .. Set(Ranges)]))!;
        JsonNode[] ends = [.. await Task.WhenAll(Ends.Select(async end =>
            JsonNode.Parse(await Run([command, Coupe, "--json", .. Set(end)]))!))];
        int banded = 0;
        void Walk(JsonNode? middle, JsonNode?[] others, string path)
        {
            switch (middle)
            {
                case JsonObject part:
                    foreach ((string key, JsonNode? value) in part)
                    {
                        JsonNode?[] beside = [.. others.Select(other => (other as JsonObject)?[key])];
                        if (value is JsonValue number && number.TryGetValue(out double here)
                            && beside.All(other => other is JsonValue v && v.TryGetValue(out double _))
                            && (beside[0]!.GetValue<double>() - here) * (beside[1]!.GetValue<double>() - here) < -1e-8 * here * here)
                        {
                            banded++;
                            Assert.True(part.ContainsKey(key + "_low") && part.ContainsKey(key + "_high"), $"{path}.{key}");
                            Assert.InRange(here, part[key + "_low"]!.GetValue<double>(), part[key + "_high"]!.GetValue<double>());
                        }

                        Walk(value, beside, $"{path}.{key}");
                    }

                    break;
                case JsonArray list:
                    for (int i = 0; i < list.Count; i++)
                    {
                        Walk(list[i], [.. others.Select(other => other is JsonArray more && more.Count > i ? more[i] : null)],
                            $"{path}[{i}]");
                    }

                    break;
            }
        }

        // The choices of a cylinder rest on a sweep of their own and are told apart; the setting has its own band.
        ranged["control"]?.AsObject().Remove("choices");
        ranged.AsObject().Remove("setting");
        Walk(ranged, ends, "");
        Assert.True(banded > atLeast, $"{banded}");
        Assert.DoesNotContain("_low\"", await Run(command, Coupe, "--json"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Distances_of_stops_stand_with_their_band_and_the_middle_is_that_of_the_car_without_ranges()
    {
        string plain = await Run("stops", Coupe, "--adhesion", "0.9");
        string ranged = await Run(["stops", Coupe, "--adhesion", "0.9", .. Set(Ranges)]);
        Assert.DoesNotMatch(@"\([\d.]+–[\d.]+\)", plain);
        Assert.Matches(@"Just below lock-up \[m\]\s+\d+(\.\d)? \([\d.]+–[\d.]+\)", ranged);
        Assert.DoesNotMatch(@"can also be:\s*\n\S*\n", ranged);
        Assert.Contains(BandText.Legend, Plain(ranged), StringComparison.Ordinal);
        Assert.All(ranged.Split('\n'), line => Assert.True(line.Length <= 80, line));
    }

    [Theory]
    [InlineData("--units", "si")]
    [InlineData("--units", "us")]
    public async Task Every_first_lock_up_of_the_tables_has_its_band_and_no_line_is_wider_than_80(params string[] units)
    {
        string text = await Run(["summary", Coupe, "--all", .. units, .. Set(Ranges)]);
        Assert.Contains(BandText.Legend, Plain(text), StringComparison.Ordinal);
        Assert.DoesNotContain(BandText.ClassLegend, Plain(text), StringComparison.Ordinal);
        Assert.All(text.Split('\n'), line => Assert.True(line.Length <= 80, line));
        string[] lines = text.Split('\n');
        int[] surfaces = [.. Enumerable.Range(0, lines.Length).Where(i => Regex.IsMatch(lines[i], @"^\s+0\.\d00?\s+(front|REAR|rear)"))];
        Assert.True(surfaces.Length >= 12);
        Assert.All(surfaces, i => Assert.True(Regex.Count(lines[i + 1], @"\([\d.]+–[\d.]+\)") >= 3, lines[i] + "\n" + lines[i + 1]));
        Assert.DoesNotContain(BandText.Legend, Plain(await Run(["summary", Coupe, .. units])), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_the_class_fills_in_is_marked_in_summary_card_and_questions()
    {
        using var folder = new TemporaryFolder();
        string file = folder.Write("mine.json", Class);
        string summary = await Run("summary", file);
        Assert.Contains(BandText.ClassLegend, Plain(summary), StringComparison.Ordinal);
        Assert.Matches(@"driver only\s+\d+ kg \(\d+–\d+\)\*; unbraked", summary);
        Assert.Matches(@"takes \d+ N \(\d+–\d+\)\*", Plain(await Run("measure", "questions", file, "--number", "2")));
        await Run("card", file, "--output", folder.Path);
        string card = WebUtility.HtmlDecode(Regex.Replace(File.ReadAllText(folder.File("mine-card-a5-si.html")), "<[^>]*>", " "));
        Assert.Matches(@"\d g \([\d.]+–[\d.]+\)\*", card);
        Assert.Contains(BandText.ClassLegend, card, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Questions_stand_with_the_band_and_say_what_else_they_could_be()
    {
        string text = await Run(["measure", "questions", Coupe, .. Set(["front.brake.friction=0.30 .. 0.45"])]);
        Assert.Matches(@"deceleration\s+of\s+0\.6\s+g\s+takes\s+\d+\s+N\s+\(\d+–\d+\)", text);
        Assert.Contains(BandText.Legend, Plain(text), StringComparison.Ordinal);
        Assert.DoesNotMatch(@"\d–\d", (await Run("measure", "questions", Coupe)).Replace("1960s", "", StringComparison.Ordinal));
    }
}
