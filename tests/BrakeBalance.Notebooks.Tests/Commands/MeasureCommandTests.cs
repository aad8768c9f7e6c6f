using System.Text.Json;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands.Measuring;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class MeasureCommandTests
{
    private static string Data(string path) => RepositoryRoot.File("data/" + path);

    [Fact]
    public async Task Gauges_as_tables_name_the_lines_left_out()
    {
        (int code, string output, _) = await Shell.RunAsync("measure", "gauges", Data("logs/invented-gauges.csv"));
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("the rear pressure is missing", output);
        Assert.Contains("Knee and slope by position of the adjuster", output);
    }

    [Fact]
    public async Task Questions_are_answered_in_the_units_asked_for_as_text_and_as_json()
    {
        string car = Data("vehicles/track-coupe.json");
        (int code, string us, _) = await Shell.RunAsync("measure", "questions", car, "--units", "us", "--number", "14");
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("40\u00a0lbf: ", us);
        Assert.Contains("psi front", us);
        Assert.Contains("Caution", us);
        (_, string si, _) = await Shell.RunAsync("measure", "questions", car, "--number", "14");
        Assert.Contains("200\u00a0N: ", si);
        Assert.DoesNotContain("psi", si);
        (_, string json, _) = await Shell.RunAsync("measure", "questions", car, "--units", "us", "--json");
        JsonElement questions = JsonDocument.Parse(json).RootElement.GetProperty("questions");
        Assert.Equal(27, questions.GetArrayLength());
        Assert.Contains("psi front", questions[13].GetProperty("answer").GetString());
        Assert.Equal("notebook 03", questions[13].GetProperty("more").GetString());
        (code, _, string error) = await Shell.RunAsync("measure", "questions", car, "--number", "28");
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains("1 to 27", error);
    }

    [Fact]
    public async Task Gauges_as_json_have_units_in_their_keys()
    {
        (int code, string output, _) =
            await Shell.RunAsync("measure", "gauges", Data("logs/invented-gauges.csv"), "--json", "--units", "us");
        Assert.Equal(ExitCode.Success, code);
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(5, root.GetProperty("positions").GetArrayLength());
        Assert.InRange(root.GetProperty("adjuster").GetProperty("knee_per_turn_psi").GetProperty("estimate").GetDouble(), 130, 160);
        Assert.Equal(2, root.GetProperty("left_out").GetArrayLength());
    }

    [Fact]
    public async Task Swapped_gauges_are_an_answer_that_says_so()
    {
        using var folder = new TemporaryFolder();
        string path = Path.Combine(folder.Path, "swapped.csv");
        string text = File.ReadAllText(Data("logs/invented-gauges.csv")).Replace("front pressure", "x", StringComparison.Ordinal)
            .Replace("rear pressure", "front pressure", StringComparison.Ordinal)
            .Replace("x [bar]", "rear pressure [bar]", StringComparison.Ordinal);
        File.WriteAllText(path, text);
        (int code, string output, _) = await Shell.RunAsync("measure", "gauges", path);
        Assert.Equal(ExitCode.Success, code); // bad news for the car is an answer; 1 means that a part of the work failed
        Assert.Contains("swapped", output);
    }

    [Fact]
    public async Task The_phones_stops_come_out_with_their_deceleration()
    {
        (int code, string output, _) = await Shell.RunAsync("measure", "series", Data("logs/invented-phone.csv"), "--json");
        Assert.Equal(ExitCode.Success, code);
        JsonElement[] stops = [.. JsonDocument.Parse(output).RootElement.GetProperty("stops").EnumerateArray()];
        Assert.Equal(3, stops.Length);
        Assert.Equal(6.8, stops[1].GetProperty("mean_fully_developed_deceleration_m_s2").GetDouble(), 0.15);
    }

    [Fact]
    public async Task A_setting_comes_with_estimate_next_stops_and_trade_off()
    {
        (int code, string output, _) =
            await Shell.RunAsync("measure", "setting", Data("vehicles/coupe-1960s.json"), "--stops", Data("logs/invented-stops.csv"),
            "--gauges", Data("logs/invented-gauges.csv"), "--draws", "20000", "--json");
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(ExitCode.Success, code);
        Assert.Equal(20, root.GetProperty("estimate").GetProperty("stops_used").GetInt32());
        Assert.Equal(61, root.GetProperty("chance").GetProperty("trade_off").GetArrayLength());
        Assert.Equal("chance", root.GetProperty("setting").GetProperty("rule").GetString());
        Assert.All(root.GetProperty("chance").GetProperty("conditions").EnumerateArray(), one =>
            Assert.InRange(one.GetProperty("rear_first").GetDouble(), 0, 0.02));
        Assert.NotEqual(0, root.GetProperty("next_stops").GetArrayLength());
        Assert.Equal(1, root.GetProperty("left_out").GetArrayLength());
    }

    [Fact]
    public async Task Bands_for_a_car_known_by_its_class_say_what_to_measure_with_which_tool()
    {
        using var folder = new TemporaryFolder();
        string path = Path.Combine(folder.Path, "mine.json");
        File.WriteAllText(path, """{ "name": "mine", "carClass": "pickup" }""");
        (int code, string output, _) = await Shell.RunAsync("measure", "bands", path, "--json");
        Assert.Equal(ExitCode.Success, code);
        JsonElement first = JsonDocument.Parse(output).RootElement.GetProperty("answers")[0].GetProperty("measure_next")[0];
        Assert.NotEqual("", first.GetProperty("how").GetString());
        Assert.True(first.GetProperty("typical_of_class").GetBoolean());
    }

    [Fact]
    public async Task Bands_of_a_file_without_ranges_do_not_say_that_all_is_known()
    {
        string car = Data("vehicles/coupe-1960s.json");
        string output = (await Shell.RunAsync("measure", "bands", car)).Output;
        Assert.Contains("no range in the file moves it", output, StringComparison.Ordinal);
        Assert.Contains("every entry counts as exact", output, StringComparison.Ordinal);
        Assert.DoesNotContain("known", output, StringComparison.Ordinal);
        Assert.Contains("Measure next         friction", (await Shell.RunAsync("summary", car)).Output, StringComparison.Ordinal);
        string ranged = (await Shell.RunAsync("measure", "bands", car, "--set", "wheelbase=2.8 m .. 2.9 m")).Output;
        Assert.DoesNotContain("exact", ranged, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Gauges_tell_the_knee_as_finely_as_a_valve_is_set()
    {
        string output = (await Shell.RunAsync("measure", "gauges", Data("logs/invented-gauges.csv"))).Output;
        string[] turn = output.Split('\n').Single(line => line.TrimStart().StartsWith("knee a turn", StringComparison.Ordinal))
            .Split("  ", StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        Assert.Matches(@"^\d+\.\d bar$", turn[1]);
    }

    [Fact]
    public async Task Bands_are_of_the_dry_road_that_all_answers_mean_unless_another_is_named()
    {
        string file = Data("vehicles/coupe-1960s.json");
        string usual = (await Shell.RunAsync("measure", "bands", file, "--json")).Output;
        Assert.Equal(usual, (await Shell.RunAsync("measure", "bands", file, "--json", "--adhesion",
            Conditions.DryAdhesion.ToString(System.Globalization.CultureInfo.InvariantCulture))).Output);
        Assert.Contains("adhesion 0.9", usual, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Bands_are_told_in_either_system_of_units()
    {
        string file = Data("vehicles/coupe-1960s.json");
        JsonElement[] answers = [.. await Task.WhenAll(new[] { "si", "us" }.Select(async units => JsonDocument.Parse(
            (await Shell.RunAsync("measure", "bands", file, "--json", "--units", units)).Output).RootElement.GetProperty("answers")))];
        (JsonElement bar, JsonElement psi) = (answers[0][1], answers[1][1]);
        Assert.Equal(("knee_for_equal_lock_up_bar", "bar"), (bar.GetProperty("key").GetString(), bar.GetProperty("unit").GetString()));
        Assert.Equal(("knee_for_equal_lock_up_psi", "psi"), (psi.GetProperty("key").GetString(), psi.GetProperty("unit").GetString()));
        Assert.Equal(14.503774, psi.GetProperty("band").GetProperty("estimate").GetDouble()
            / bar.GetProperty("band").GetProperty("estimate").GetDouble(), 1e-4);
        string table = (await Shell.RunAsync("measure", "bands", file, "--units", "us")).Output;
        Assert.Contains("psi", table, StringComparison.Ordinal);
        Assert.DoesNotContain(" bar", table, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_range_to_be_measured_stands_as_the_file_writes_it_or_in_the_units_asked_for()
    {
        string[] call = ["measure", "bands", Data("vehicles/coupe-1960s.json"), "--set", "wheelbase=2.8 m .. 2.9 m", "--units"];
        string metric = (await Shell.RunAsync([.. call, "si"])).Output, customary = (await Shell.RunAsync([.. call, "us"])).Output;
        Assert.Contains("2.8 m .. 2.9 m", metric, StringComparison.Ordinal);
        Assert.Contains("110 in .. 114 in", customary, StringComparison.Ordinal); // 2.8 m and 2.9 m over 25.4 mm
    }

    [Fact]
    public async Task A_plan_is_written_as_a_sheet_to_print_and_as_csv_that_is_read_back()
    {
        using var folder = new TemporaryFolder();
        string csv = Path.Combine(folder.Path, "plan.csv"), sheet = Path.Combine(folder.Path, "plan.html");
        (int code, string output, _) =
            await Shell.RunAsync("measure", "plan", Data("vehicles/coupe-1960s.json"), "--csv", csv, "--sheet", sheet);
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("Closed ground only", output);
        Assert.Contains("Locked first", File.ReadAllText(sheet));
        string filled = File.ReadAllText(csv).Replace("\n1;", "\n#1;", StringComparison.Ordinal);
        filled += "1;30;15;driver only;dry;0;;15.0;9.9;;0.28;none;;\n";
        File.WriteAllText(csv, filled);
        (int again, string answer, _) =
            await Shell.RunAsync("measure", "setting", Data("vehicles/coupe-1960s.json"), "--stops", csv, "--draws", "5000", "--json");
        Assert.Equal(ExitCode.Success, again); // with or without a setting to recommend
        Assert.Equal(1, JsonDocument.Parse(answer).RootElement.GetProperty("estimate").GetProperty("stops_used").GetInt32());
    }

    [Theory]
    [InlineData("measure", "gauges", "no-such.csv")]
    [InlineData("measure", "setting", "no-such.json")]
    public async Task What_cannot_be_opened_is_said_with_what_would_be_accepted(params string[] words)
    {
        (int code, _, string error) = await Shell.RunAsync(words);
        Assert.Equal(ExitCode.BadInput, code);
        Assert.Contains(words[^1], error);
    }

    [Theory]
    [InlineData("gauges", "front pressure [bar],rear pressure [bar]\n")]
    [InlineData("series", "time [s],speed [km/h]\n")]
    public async Task A_log_with_a_header_and_no_rows_is_refused_with_words(string command, string text)
    {
        using var folder = new TemporaryFolder();
        (int code, string output, string error) = await Shell.RunAsync("measure", command, folder.Write("log.csv", text));
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Contains("line 1: the log has a header and no rows", error);
    }

    [Fact]
    public async Task Gauges_that_lose_more_than_one_row_in_fifty_are_refused_unless_it_is_allowed()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("log.csv", File.ReadAllText(Data("logs/invented-gauges.csv")) + "4;x;46.1;apply;\n");
        (int code, string output, string error) = await Shell.RunAsync("measure", "gauges", path);
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Contains("3 of 108 rows cannot be read", error);
        (code, output, _) = await Shell.RunAsync("measure", "gauges", path, "--allow-lost-rows");
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("'x' is not a number", output);
    }

    [Fact]
    public async Task The_setting_shows_what_its_gauge_log_left_out()
    {
        (int code, string output, _) = await Shell.RunAsync(
            "measure", "setting", Data("vehicles/coupe-1960s.json"), "--gauges", Data("logs/invented-gauges.csv"), "--draws", "1000",
                "--json");
        Assert.Equal(ExitCode.Success, code);
        Assert.Equal(2, JsonDocument.Parse(output).RootElement.GetProperty("gauges_left_out").GetArrayLength());
    }

    [Theory]
    [InlineData("gauges", "logs/invented-gauges.csv", "--below-knee", "NaN")]
    [InlineData("gauges", "logs/invented-gauges.csv", "--below-knee", "1e308")]
    [InlineData("series", "logs/invented-phone.csv", "--dive", "NaN")]
    public async Task An_option_that_is_no_number_of_a_car_is_refused(string command, string log, string option, string value)
    {
        (int code, string output, string error) = await Shell.RunAsync("measure", command, Data(log), option, value);
        Assert.Equal((ExitCode.BadInput, ""), (code, output));
        Assert.Contains(option, error);
    }

    [Fact]
    public async Task The_next_stop_comes_with_the_interval_its_chance_and_when_to_abort()
    {
        string[] ask = ["measure", "next", Data("vehicles/coupe-1960s.json"), "--stops", Data("logs/invented-stops.csv"),
            "--gauges", Data("logs/invented-gauges.csv")];
        (int code, string output, _) = await Shell.RunAsync([.. ask, "--json"]);
        Assert.Equal(ExitCode.Success, code);
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(20, root.GetProperty("stops_used").GetInt32());
        JsonElement knee = root.GetProperty("knee_for_equal_lock_up_bar");
        Assert.True(knee.GetProperty("low").GetDouble() < knee.GetProperty("high").GetDouble());
        Assert.NotEqual(0, root.GetProperty("next_stops").GetArrayLength());
        Assert.All(root.GetProperty("next_stops").EnumerateArray(), stop =>
            Assert.InRange(stop.GetProperty("rear_first").GetDouble(), 0, root.GetProperty("highest_chance_of_rear_first").GetDouble()));
        (code, string table, _) = await Shell.RunAsync([.. ask, "--units", "us"]);
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("Next stop: ", table);
        Assert.Contains("psi", table);
        Assert.DoesNotContain(" bar", table);
        Assert.All(table.Split('\n'), line => Assert.InRange(line.TrimEnd().Length, 0, 80));
    }

    [Fact]
    public async Task Before_the_first_stop_the_next_one_leaves_the_adjuster_fully_out()
    {
        (int code, string output, _) =
            await Shell.RunAsync("measure", "next", Data("vehicles/coupe-1960s.json"), "--surfaces", "wet", "--json");
        Assert.Equal(ExitCode.Success, code);
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(0, root.GetProperty("stops_used").GetInt32());
        JsonElement first = root.GetProperty("next_stops")[0];
        Assert.Equal("wet", first.GetProperty("surface").GetString());
        Assert.Equal(0, first.GetProperty("turns").GetDouble());
    }

    [Fact]
    public async Task While_the_log_is_in_doubt_no_next_stop_is_proposed()
    {
        using var folder = new TemporaryFolder();
        string path = Path.Combine(folder.Path, "psi.csv");
        File.WriteAllText(path, File.ReadAllText(Data("logs/invented-stops.csv")).Replace("[bar]", "[psi]", StringComparison.Ordinal));
        (int code, string output, _) = await Shell.RunAsync("measure", "next", Data("vehicles/coupe-1960s.json"), "--stops", path);
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("No stop is proposed", output);
        Assert.DoesNotContain("Next stop", output);
    }

    [Fact]
    public async Task Every_key_of_the_next_stop_is_described_and_every_description_is_of_a_key()
    {
        static IEnumerable<string> Paths(JsonElement node, string at) => node.ValueKind switch
        {
            JsonValueKind.Object => node.EnumerateObject().SelectMany(one =>
                Paths(one.Value, at.Length == 0 ? one.Name : at + "." + one.Name)).Append(at),
            JsonValueKind.Array => node.EnumerateArray().SelectMany(one => Paths(one, at + "[]")).Append(at + "[]"),
            _ => [at],
        };
        (_, string output, _) = await Shell.RunAsync("measure", "next", Data("vehicles/coupe-1960s.json"),
            "--stops", Data("logs/invented-stops.csv"), "--json");
        HashSet<string> described = [.. NextStopKeys.All.Select(key => key.Path)];
        string[] present = [.. Paths(JsonDocument.Parse(output).RootElement, "").Where(path => path.Length > 0
            && !path.EndsWith(".estimate", StringComparison.Ordinal) && !path.EndsWith(".low", StringComparison.Ordinal)
            && !path.EndsWith(".high", StringComparison.Ordinal)).Distinct()];
        Assert.All(present, path => Assert.Contains(path,
            described.Append("left_out[]")));
        Assert.All(described, path => Assert.Contains(path, present));
        (int code, string keys, _) = await Shell.RunAsync("measure", "next", "--keys");
        Assert.Equal(ExitCode.Success, code);
        Assert.Contains("interval_left", keys);
    }
}
