using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using BrakeBalance.Charts;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class SummaryCommandTests
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");

    [Fact]
    public async Task The_tables_name_what_they_show_with_units()
    {
        (int code, string output, string error) = await Shell.RunAsync("summary", Coupe, "--load-case", "laden");
        Assert.Equal((0, ""), (code, error));
        Assert.Contains("[bar]", output);
        Assert.Contains("laden                2080 kg", output);
        Assert.DoesNotContain("two up ", output);
        Assert.Contains("no type approval", output);
        Assert.DoesNotContain('\u001b', output);
    }

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("big-cam-saloon")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("track-coupe")]
    public async Task It_begins_with_the_answer_in_a_dozen_lines_of_eighty_columns(string car)
    {
        foreach (string units in new[] { "si", "us" })
        {
            (int code, string output, _) =
                await Shell.RunAsync("summary", RepositoryRoot.File($"data/vehicles/{car}.json"), "--units", units);
            Assert.Equal(0, code);
            string[] lines = output.Split('\n');
            Assert.All(lines, line => Assert.InRange(line.TrimEnd().Length, 0, 80));
            int end = Array.FindIndex(lines, line => line.Length == 0);
            Assert.InRange(end, 6, 12);
            foreach (string label in new[] { "Locks first", "Present setting", "Safe limit", "Recommended setting", "Why", "How sure",
                "Caution" })
            {
                Assert.Contains(lines[..end], line => line.StartsWith(label, StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public async Task All_shows_more_tables()
    {
        string some = (await Shell.RunAsync("summary", Coupe)).Output, all = (await Shell.RunAsync("summary", Coupe, "--all")).Output;
        Assert.DoesNotContain("Adhesion used front", some);
        Assert.Contains("Adhesion used front", all);
        Assert.Contains("--all", some);
    }

    [Fact]
    public async Task Travel_that_the_cylinder_does_not_have_is_not_promised()
    {
        string[] small = ["summary", Coupe, "--set", "masterCylinder.bore=0.8125 in", "--set", "masterCylinder.stroke=26 mm"];
        (int code, string output, _) = await Shell.RunAsync(small);
        Assert.Equal(0, code);
        Assert.Matches(@"At 0\.80 g\s+The master cylinder is at the end of its stroke", output);
        Assert.Matches(@"\n\s+0\.80 .*\snone\s+none\s*\n", output);
        JsonNode json = JsonNode.Parse((await Shell.RunAsync([.. small, "--json"])).Output)!;
        JsonNode hard = json["control"]!["load_cases"]![0]!["decelerations"]![3]!;
        Assert.False((bool)hard["travel"]!["reaches"]!);
        Assert.True((double)hard["travel"]!["stroke_left_mm"]! < 0);
    }

    [Fact]
    public async Task Hot_drums_leave_less_pedal()
    {
        JsonNode rate = (await JsonAsync())["control"]!["load_cases"]![0]!["decelerations"]![3]!;
        Assert.True((double)rate["travel_drums_hot"]!["pad_left_mm"]! < (double)rate["travel"]!["pad_left_mm"]! - 5);
    }

    [Fact]
    public async Task Axle_loads_add_up_to_the_weight()
    {
        JsonNode load = (await JsonAsync("--load-case", "laden"))["load_cases"]![0]!;
        Assert.Equal(2080 * 9.80665, (double)load["static_axle_load_front_n"]! + (double)load["static_axle_load_rear_n"]!, 0.1);
    }

    [Fact]
    public async Task Downforce_at_speed_loads_both_axles_of_the_track_car()
    {
        string car = RepositoryRoot.File("data/vehicles/track-coupe.json");
        JsonNode still = JsonNode.Parse((await Shell.RunAsync("summary", car, "--json")).Output)!;
        JsonNode fast = JsonNode.Parse((await Shell.RunAsync("summary", car, "--json", "--speed", "180 km/h")).Output)!;
        Assert.Equal(180.0, (double)fast["speed_km_h"]!, 1e-6);

        // 0.5 · 1.225 kg/m³ · (50 m/s)² · 0.15 m² in front, 0.30 m² at the rear.
        Assert.Equal(229.7, (double)fast["load_cases"]![0]!["static_axle_load_front_n"]! - (double)still["load_cases"]![0]![
            "static_axle_load_front_n"]!, 0.1);
        Assert.Equal(459.4, (double)fast["load_cases"]![0]!["static_axle_load_rear_n"]! - (double)still["load_cases"]![0]![
            "static_axle_load_rear_n"]!, 0.1);
    }

    [Theory]
    [InlineData("fast")]
    [InlineData("120")]
    [InlineData("-5 km/h")]
    public async Task A_speed_that_is_none_is_refused_with_what_is_accepted(string speed)
    {
        (int code, string output, string error) = await Shell.RunAsync("summary", Coupe, "--speed", speed);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains($"--speed: '{speed}'", error);
        Assert.Contains("km/h", error);
    }

    [Fact]
    public async Task Other_units_are_the_same_quantities()
    {
        JsonNode si = (await JsonAsync("--adhesion", "0.8"))["load_cases"]![0]!["adhesions"]![0]!["at_lock_up"]!;
        JsonNode us = (await JsonAsync("--adhesion", "0.8", "--units", "us"))["load_cases"]![0]!["adhesions"]![0]!["at_lock_up"]!;
        Assert.Equal((double)si["line_pressure_front_bar"]! * 14.5038, (double)us["line_pressure_front_psi"]!, 0.01);
        Assert.Equal((double)si["braking_force_rear_n"]! * 0.224809, (double)us["braking_force_rear_lbf"]!, 0.01);
    }

    [Fact]
    public async Task An_override_changes_the_knee()
    {
        JsonNode summary = await JsonAsync("--set", "hydraulics.rearValves[0].knee=40 bar");
        Assert.Contains(summary["load_cases"]![0]!["knees"]!.AsArray(), knee =>
            Math.Abs((double)knee!["line_pressure_rear_bar"]! - 40) < 0.01);
    }

    [Fact]
    public async Task Every_key_written_is_explained_and_every_key_explained_is_written()
    {
        (int _, string listed, string _) = await Shell.RunAsync("summary", "--keys");
        string[] explained = [.. listed.Split('\n', StringSplitOptions.RemoveEmptyEntries).Where(line => line[0] != ' ')];
        HashSet<string> written = [];
        Collect(await JsonAsync("--braking-rate", "0.4"), "", written);

        string[] leaves = [.. explained.Where(path =>
            path is not ("notices[]" or "control" or "setting.out_of_reach[]") && path[0] != '…'
            && !Regex.IsMatch(path, "^setting\\.(present|safe_limit|recommended|binding|band\\..*|"
                + "other_rule|middle|costs\\[\\]\\.limit_without|findings\\[\\]\\.limit)$|^setting_point.rear_first_in$")
            && !Regex.IsMatch(path, "installed$|at_lock_up$|crossings\\[\\]$|knees\\[\\]$|run_out$|"
                + "decelerations\\[\\].at$|decelerations\\[\\].travel(_drums_hot)?$|gauge_table\\[\\]$|control.rule_checks\\[\\]$"))];
        written.RemoveWhere(path =>
            path is "setting.band" or "setting_point.rear_first_in" or "setting.binding" or "setting.findings[].limit");
        Assert.Equal(leaves.Order(), written.Order());
    }

    [Fact]
    public async Task Pedal_forces_gauge_readings_and_failures_are_there()
    {
        JsonNode control = (await JsonAsync("--load-case", "laden"))["control"]!;
        JsonNode load = Assert.Single(control["load_cases"]!.AsArray())!;
        JsonNode rate = load["decelerations"]!.AsArray().Single(entry => (double)entry!["deceleration_g"]! == 0.6)!;
        Assert.True((double)rate["at"]!["pedal_force_n"]! < (double)rate["pedal_force_without_assist_n"]!);
        Assert.Equal(6, load["gauge_table"]!.AsArray().Count);
        Assert.Equal("sound", (string)load["failures"]![0]!["case"]!);
        Assert.Contains(control["rule_checks"]!.AsArray(), rule => (string)rule!["rule"]! == "fmvss135-assist-inoperative");
        Assert.Contains("Gap of 0.40", (string)control["notices"]![0]!);
    }

    [Fact]
    public async Task All_problems_are_listed_at_once()
    {
        (int code, string output, string error) = await Shell.RunAsync(
            "summary", Coupe, "--adhesion", "0.5,wet", "--braking-rate", "3", "--set", "wheelbase=2.9", "--set", "what");
        Assert.Equal((2, ""), (code, output));
        foreach (string expected in new[] { "--adhesion: 'wet'", "--braking-rate: '3'", "wheelbase: ", "--set what" })
        {
            Assert.Contains(expected, error);
        }
    }

    [Fact]
    public async Task An_unknown_load_case_lists_those_there_are()
    {
        (int code, string _, string error) = await Shell.RunAsync("summary", Coupe, "--load-case", "empty");
        Assert.Equal(2, code);
        Assert.Contains("\"driver only\", \"two up\", \"laden\"", error);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("card")]
    [InlineData("summary")]
    public async Task A_load_case_with_a_comma_in_its_name_is_named_as_one(string command)
    {
        string car = RepositoryRoot.File("data/vehicles/track-coupe.json");
        string[] load = command == "check" ? [] : ["--load-case", "no"];
        (_, string output, string error) = await Shell.RunAsync([command, car, .. load]);
        Assert.Contains("\"driver only\", \"full tank\", \"two up, full tank\".", output + error);
    }

    [Fact]
    public async Task A_label_that_fills_its_column_stands_on_a_line_of_its_own()
    {
        (_, string output, _) = await Shell.RunAsync("summary", Coupe, "--set", "loadCases[laden].name=two up, luggage in front");
        Assert.Matches(@"\ntwo up, luggage in front\n {21}2,?080 kg; unbraked", output);
    }

    [Fact]
    public async Task Without_a_file_it_says_what_to_do()
    {
        (int code, string _, string error) = await Shell.RunAsync("summary");
        Assert.Equal(2, code);
        Assert.Contains("starter", error);
    }

    private static async Task<JsonNode> JsonAsync(params string[] more)
    {
        (int code, string output, string error) = await Shell.RunAsync(["summary", Coupe, "--json", .. more]);
        Assert.Equal((0, ""), (code, error));
        return JsonNode.Parse(output)!;
    }

    /// <summary>Paths of all values; the points of a summary are gathered under the name 'point'.</summary>
    private static void Collect(JsonNode? node, string path, HashSet<string> paths)
    {
        switch (node)
        {
            case JsonObject point when point.Any(pair => pair.Key.StartsWith("master_pressure", StringComparison.Ordinal))
                && path != "point":
                Collect(point, "point", paths);
                break;
            case JsonObject point when point.Any(pair => pair.Key.StartsWith("outlet_pressure", StringComparison.Ordinal))
                && path != "control_point":
                Collect(point, "control_point", paths);
                break;
            case JsonObject travel when travel.Any(pair => pair.Key.StartsWith("stroke_left", StringComparison.Ordinal))
                && path != "travel":
                Collect(travel, "travel", paths);
                break;
            case JsonObject point when point.ContainsKey("friction_margin") && path != "setting_point":
                Collect(point, "setting_point", paths);
                break;
            case JsonObject limit when limit.ContainsKey("shown") && !limit.ContainsKey("friction_margin") && path != "setting_limit":
                Collect(limit, "setting_limit", paths);
                break;
            case JsonObject condition when condition.ContainsKey("brakes") && path != "setting_condition":
                Collect(condition, "setting_condition", paths);
                break;
            case JsonArray rules when path == "control.rule_checks":
                Collect(rules, "rule_checks", paths);
                break;
            case JsonObject members:
                foreach ((string key, JsonNode? value) in members)
                {
                    Collect(value, path.Length == 0 ? key : $"{path}.{key}", paths);
                }

                break;
            case JsonArray items:
                foreach (JsonNode? item in items)
                {
                    Collect(item, path + "[]", paths);
                }

                break;
            default:
                if (path != "notices[]")
                {
                    paths.Add(path);
                }

                break;
        }
    }

    [Fact]
    public async Task A_car_without_assist_has_no_store_to_spend()
    {
        string output = (await Shell.RunAsync("summary", RepositoryRoot.File("data/vehicles/track-coupe.json"), "--all")).Output;
        Assert.DoesNotContain("store spent", output);
        Assert.DoesNotContain("Run-out", output);
        Assert.Contains("No assist: nothing runs out", output);
    }

    [Fact]
    public async Task A_booster_is_not_denied_where_no_deceleration_asked_for_is_reached()
    {
        string output = (await Shell.RunAsync(
            "summary", RepositoryRoot.File("data/vehicles/coupe-1960s.json"), "--all", "--set", "hydraulics.maximumPressure=20 bar",
            "--set", "front.brake.friction=0.2", "--set", "rear.brake.friction=0.15")).Output;
        Assert.Contains("At 0.20 g            the highest pressure considered does not give that", output);
        Assert.DoesNotContain("No assist: nothing runs out", output);
        Assert.Contains("Run-out of the assist", output);
        Assert.Contains("Engine off", output);
    }
}
