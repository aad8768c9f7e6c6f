using System.Text.Json.Nodes;
using BrakeBalance.Balance;
using BrakeBalance.Charts;
using BrakeBalance.Notebooks.Commands.Stopping;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class StopsCommandTests
{
    private static readonly string Coupe = RepositoryRoot.File("data/vehicles/coupe-1960s.json");
    private static readonly string Lap = RepositoryRoot.File("data/cycles/invented-lap.csv");

    private static async Task<JsonNode> JsonAsync(params string[] more)
    {
        (int code, string output, string _) = await Shell.RunAsync(["stops", Coupe, "--json", "--load-case", "driver only", .. more]);
        Assert.Equal(0, code);
        return JsonNode.Parse(output)!;
    }

    [Fact]
    public async Task The_tables_tell_distances_lock_order_heat_and_caution()
    {
        (int code, string output, string error) = await Shell.RunAsync("stops", Coupe, "--lap", Lap, "--laps", "6");
        Assert.Equal((0, ""), (code, error));
        Assert.Matches(@"Anti-lock\s[^─]*bound \[m\]", output); // two lines of one heading at 80 columns
        Assert.Contains("Type I: 15 stops from 120 km/h to 60 km/h every 45 s", output);
        Assert.Contains("6 laps", output);
        Assert.Contains("boils in stop", output);
        Assert.Contains("Taken as typical", output);
        Assert.Matches(@"A calculation\s+is\s+no\s+approval", output);
    }

    [Fact]
    public async Task With_its_knee_too_high_the_coupe_swaps_ends_and_the_tables_say_so()
    {
        (int _, string output, string _) =
            await Shell.RunAsync("stops", Coupe, "--adhesion", "0.9", "--set", "hydraulics.rearValves[0].knee=66 bar", "--load-case",
            "driver only");
        Assert.Contains("SWAPS ENDS", output);
    }

    /// <summary>A stamp may stand the front wheels first where the rear axle is the first at its limit as pressure rises slowly.</summary>
    [Fact]
    public async Task Where_a_stamp_and_a_slow_press_lock_another_axle_first_the_tables_say_so()
    {
        string saloon = RepositoryRoot.File("data/vehicles/big-cam-saloon.json");
        (int _, string output, string _) = await Shell.RunAsync(
            "stops", saloon, "--adhesion", "0.3,0.9", "--set", "hydraulics.rearValves[0].knee=60 bar", "--load-case", "driver only");
        Vehicle car = VehicleFile.Load(saloon, new ValueOverride("hydraulics.rearValves[0].knee", "60 bar")).Vehicle;
        var slowly = new BalanceModel(car, car.LoadCases[0]);
        Assert.Equal((Axle.Front, Axle.Rear), (slowly.FirstLockUp(0.3)!.First, slowly.FirstLockUp(0.9)!.First));
        Assert.Matches(@"\n +0\.90 .* front ", output);
        Assert.Matches(@"Adhesion 0\.90: stamped on, the front wheels stand\s+first; as pressure rises\s+slowly the REAR axle", output);
        Assert.DoesNotContain("Adhesion 0.30: stamped", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_taken_as_typical_and_the_repeated_stops_are_told_in_one_system_of_units()
    {
        (int code, string output, string _) = await Shell.RunAsync("stops", Coupe, "--units", "us");
        Assert.Equal(0, code);
        Assert.DoesNotContain("km/h", output, StringComparison.Ordinal);
        Assert.DoesNotContain("m²", output, StringComparison.Ordinal);
        Assert.DoesNotContain(")²", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_key_is_described_and_every_described_key_is_there()
    {
        JsonNode json = await JsonAsync("--study", "50", "--lap", Lap, "--laps", "1", "--adhesion", "0.5", "--release", "100 bar/s",
            "--split-adhesion", "0.3/0.8", "--bend-map");
        HashSet<string> described = [.. StopKeys.All.Select(key => key.Path).Where(path => !path.StartsWith('…'))];
        HashSet<string> written = [.. Paths(json, "")];
        Assert.Empty(written.Except(described));
        Assert.Empty(described.Except(written));
    }

    [Fact]
    public async Task Other_units_are_the_same_quantities()
    {
        JsonNode si = await JsonAsync("--adhesion", "0.9"), us = await JsonAsync("--adhesion", "0.9", "--units", "us");
        JsonNode Emergency(JsonNode report) => report["load_cases"]![0]!["surfaces"]![0]!["full_pressure"]!;
        Assert.Equal((double)Emergency(si)["distance_m"]! / 0.3048, (double)Emergency(us)["distance_ft"]!, 0.01);
        JsonNode Fade(JsonNode report) => report["load_cases"]![0]!["fade"]!;
        Assert.Equal((double)Fade(si)["hottest_front_c"]! * 1.8 + 32, (double)Fade(us)["hottest_front_f"]!, 0.01);
        Assert.Equal((double)Fade(si)["wet_boiling_margin_k"]! * 1.8, (double)Fade(us)["wet_boiling_margin_f"]!, 0.01);
    }

    [Fact]
    public async Task Split_adhesion_says_what_the_steering_has_to_answer_and_whether_the_car_stays_in_its_lane()
    {
        JsonNode json = await JsonAsync("--adhesion", "0.6", "--split-adhesion", "0.3/0.8", "--cross-slope", "0 %");
        JsonNode full = json["load_cases"]![0]!["uneven_road"]![0]!, below = json["load_cases"]![0]!["uneven_road"]![1]!;
        Assert.Equal((true, false), ((bool)full["wheels_lock"]!, (bool)below["wheels_lock"]!));
        Assert.Equal((0.3, 0.8), ((double)full["adhesion_left"]!, (double)full["adhesion_right"]!));
        Assert.True((double)full["largest_braking_moment_n_m"]! < -1000);
        Assert.False((bool)full["within_lane"]!);
        Assert.True((bool)below["within_lane"]! && (bool)below["within_15_deg"]!);
        (int _, string output, string _) = await Shell.RunAsync("stops", Coupe, "--load-case", "driver only", "--split-adhesion",
            "0.3/0.8", "--units", "us");
        Assert.Contains("0.30 / 0.80", output);
        Assert.Contains("[ft·lbf]", output);
    }

    [Fact]
    public async Task A_cross_slope_and_a_grade_reach_the_stops()
    {
        JsonNode flat = await JsonAsync("--adhesion", "0.6", "--cross-slope", "0 %"),
            slope = await JsonAsync("--adhesion", "0.6", "--cross-slope", "4 %", "--grade", "-5 %");
        JsonNode Row(JsonNode report) => report["load_cases"]![0]!["surfaces"]![0]!;
        Assert.Equal(4, (double)slope["cross_slope_percent"]!, 1e-6);
        Assert.Equal(0, (double)Row(flat)["past_first_lock_on_crown"]!["lateral_offset_m"]!, 1e-6);
        Assert.NotEqual(0, (double)Row(slope)["past_first_lock_on_crown"]!["lateral_offset_m"]!, 0.01);
        Assert.True((double)Row(slope)["full_pressure"]!["distance_m"]! > 1.05 * (double)Row(flat)["full_pressure"]!["distance_m"]!);
        Assert.Equal(2, slope["load_cases"]![0]!["uneven_road"]!.AsArray().Count);
        Assert.Empty((await JsonAsync("--adhesion", "0.6"))["load_cases"]![0]!["uneven_road"]!.AsArray());
    }

    [Fact]
    public async Task Brakes_that_differ_left_and_right_are_told_without_an_option()
    {
        JsonNode json = await JsonAsync("--adhesion", "0.6", "--set", "front.brakeImbalance=0.3");
        Assert.True((double)json["load_cases"]![0]!["uneven_road"]![1]!["largest_braking_moment_n_m"]! < -100);
    }

    [Fact]
    public async Task The_bend_map_names_what_lets_go_and_the_safe_knee_and_a_car_without_a_valve_says_so()
    {
        JsonNode map = (await JsonAsync("--adhesion", "0.9", "--bend-map"))["load_cases"]![0]!["bends"]![0]!;
        JsonArray points = map["points"]!.AsArray();
        Assert.True(points.Count > 10);
        foreach (JsonNode? point in points.Where(point =>
            point!["any_knee"]!.GetValue<bool>() is false && point["safe_knee_bar"] is not null))
        {
            bool rear = (string?)point!["first_axle_lost"] == "rear";
            Assert.Equal((double)map["present_knee_bar"]! > (double)point["safe_knee_bar"]!, rear);
        }

        (int _, string output, string _) = await Shell.RunAsync("stops", RepositoryRoot.File("data/vehicles/track-coupe.json"),
            "--adhesion", "0.9", "--bend-map");
        Assert.Contains("no valve", output);
        Assert.Matches(@"First\s[^─]*axle\s[^─]*lost", output); // a heading on three lines at 80 columns
    }

    [Fact]
    public async Task All_problems_are_listed_at_once()
    {
        (int code, string output, string error) = await Shell.RunAsync(
            "stops", Coupe, "--adhesion", "3,x", "--speed", "fast", "--load-case", "nobody", "--laps", "0", "--study", "0", "--lap",
                "missing.csv", "--set", "nonsense",
            "--split-adhesion", "0.3", "--cross-slope", "steep", "--grade", "steep", "--pedal-force", "5 N", "--release", "fast");
        Assert.Equal((2, ""), (code, output));
        foreach (string part in new[] { "--split-adhesion: '0.3'", "--cross-slope: 'steep'", "--adhesion: '3'", "--adhesion: 'x'",
            "--speed: 'fast'", "nobody", "--laps", "--study", "missing.csv", "--set nonsense", "--grade: 'steep'",
            "--pedal-force: '5 N'", "--release: 'fast'" })
        {
            Assert.Contains(part, error);
        }
    }

    private static JsonNode Surface(JsonNode report) => report["load_cases"]![0]!["surfaces"]![0]!;

    // Wheels locked all the way on ice: the slope adds its sine to the sliding adhesion, uphill and downhill.
    [Fact]
    public async Task Uphill_shortens_and_downhill_lengthens_the_stop_by_the_sine_of_the_slope()
    {
        async Task<double> Deceleration(string grade) =>
            (double)Surface(await JsonAsync("--adhesion", "0.2", "--speed", "60 km/h", "--grade",
                grade))["full_pressure"]!["mean_fully_developed_deceleration_m_s2"]!;
        double level = await Deceleration("0 %"), up = await Deceleration("3.5 °"), down = await Deceleration("-4 %");
        Assert.Equal(9.80665 * Math.Sin(3.5 * Math.PI / 180), up - level, 0.05);
        Assert.Equal(9.80665 * Math.Sin(Math.Atan(0.04)), level - down, 0.05);
    }

    [Fact]
    public async Task A_slope_steeper_than_the_brakes_is_said_and_not_computed()
    {
        (int code, string _, string error) = await Shell.RunAsync("stops", Coupe, "--adhesion", "0.1", "--grade", "-20 %");
        Assert.Equal(2, code);
        Assert.Contains("still moves", error);
    }

    [Fact]
    public async Task A_weak_foot_bounds_the_stop_and_the_tables_say_so()
    {
        JsonNode weak = Surface(await JsonAsync("--adhesion", "0.9", "--pedal-force", "200 N"));
        Assert.Equal(("foot", "foot"), ((string)weak["full_pressure"]!["bound"]!, (string)weak["below_lock_up"]!["bound"]!));
        Assert.True((double)weak["full_pressure"]!["held_pressure_bar"]! < 35);
        Assert.Equal("road", (string)Surface(await JsonAsync("--adhesion", "0.9", "--pedal-force", "1500 N"))["full_pressure"]!["bound"]!);
        (int _, string output, string _) = await Shell.RunAsync("stops", Coupe, "--adhesion", "0.9", "--pedal-force", "200 N",
            "--load-case", "driver only");
        Assert.Contains("bound by the foot: 200 N on the pedal give", output);
    }

    [Fact]
    public async Task A_car_whose_pedal_ends_before_any_pressure_is_answered_with_that()
    {
        string[] far = ["--set", "fluid.front.clearance=10 mm", "--set", "fluid.rear.clearance=10 mm", "--study", "20"];
        JsonNode json = await JsonAsync(far);
        Assert.Contains("brings no pressure", (string)json["load_cases"]![0]!["no_stop"]!);
        Assert.Empty(json["load_cases"]![0]!["surfaces"]!.AsArray());
        Assert.Null(json["study"]);
        (int code, string output, string error) = await Shell.RunAsync(["stops", Coupe, .. far]);
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(3, output.Split("A foot of 500 N brings no pressure to the brakes").Length - 1);
        Assert.Contains("A foot of 112 lbf brings no pressure", (await Shell.RunAsync(["stops", Coupe, .. far, "--units", "us"])).Output,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_easing_foot_frees_the_rear_later_when_its_valve_has_hysteresis()
    {
        async Task<JsonNode> Easing(string hysteresis) => Surface(await JsonAsync(
            "--adhesion", "0.7", "--release", "40 bar/s", "--pedal-force", "1500 N", "--set",
                $"hydraulics.rearValves[0].hysteresis={hysteresis}"))["easing"]!;
        JsonNode plain = await Easing("0 bar"), late = await Easing("8 bar");
        Assert.NotNull(plain["rear_free_s"]);
        Assert.True((double)late["rear_free_s"]! > (double)plain["rear_free_s"]!);
        Assert.True((double)late["rear_free_pressure_bar"]! < (double)plain["rear_free_pressure_bar"]!);
        (int _, string output, string _) = await Shell.RunAsync(
            "stops", Coupe, "--adhesion", "0.7", "--release", "40 bar/s", "--pedal-force", "1500 N", "--load-case", "driver only");
        Assert.Contains("foot easing: front locks after", output);
        Assert.Null(Surface(await JsonAsync("--adhesion", "0.5"))["easing"]);
    }

    [Fact]
    public async Task The_keys_can_be_listed_without_a_file()
    {
        (int code, string output, string _) = await Shell.RunAsync("stops", "--keys");
        Assert.Equal(0, code);
        Assert.Contains("stop.mean_fully_developed_deceleration_m_s2", output);
        (int missing, string _, string error) = await Shell.RunAsync("stops");
        Assert.Equal(2, missing);
        Assert.Contains("starter", error);
    }

    // Stops and laps are described once: every place that holds one leads to the same keys.
    private static IEnumerable<string> Paths(JsonNode? node, string path)
    {
        switch (node)
        {
            case JsonObject json:
                foreach ((string key, JsonNode? value) in json)
                {
                    string at = path.Length == 0 ? key : $"{path}.{key}";
                    bool isStop = key is "full_pressure" or "below_lock_up" or "antilock_bound" or "easing";
                    if (isStop || (key == "laps" && path == "load_cases[]"))
                    {
                        yield return at;
                    }

                    if (value is JsonObject && key == "study")
                    {
                        yield return key;
                    }

                    foreach (string inner in Paths(value, isStop ? "stop" : key == "laps" ? "load_cases[].fade" : at))
                    {
                        yield return inner;
                    }
                }

                break;
            case JsonArray array:
                foreach (string inner in array.SelectMany(item => Paths(item, path + "[]")))
                {
                    yield return inner;
                }

                break;
            default:
                yield return path;
                break;
        }
    }

    [Fact]
    public async Task A_lap_with_semicolons_and_decimal_commas_heats_the_brakes_as_the_same_lap_with_points()
    {
        using var folder = new TemporaryFolder();
        string commas = folder.Write("lap.csv",
            string.Join('\n', File.ReadAllLines(Lap)
            .Select(line => line.StartsWith('#') ? line : line.Replace(',', ';').Replace('.', ','))));
        string[] words = ["stops", Coupe, "--json", "--load-case", "driver only", "--adhesion", "0.9", "--laps", "2", "--lap"];
        (int code, string output, string error) = await Shell.RunAsync([.. words, commas]);
        Assert.Equal((0, ""), (code, error));
        Assert.Equal((await Shell.RunAsync([.. words, Lap])).Output, output);
    }

    [Fact]
    public async Task A_lap_that_loses_rows_is_refused_with_the_reasons_unless_it_is_allowed_and_then_says_so()
    {
        using var folder = new TemporaryFolder();
        string[] lines = File.ReadAllLines(Lap);
        lines[8] = "19.2,fast";
        string path = folder.Write("lap.csv", string.Join('\n', lines));
        string[] words = ["stops", Coupe, "--load-case", "driver only", "--adhesion", "0.9", "--laps", "1", "--lap", path];
        (int code, string output, string error) = await Shell.RunAsync(words);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("line 9: speed: 'fast' is not a number", error);
        Assert.Contains("more than 2 %", error);
        (code, output, error) = await Shell.RunAsync([.. words, "--allow-lost-rows"]);
        Assert.Equal(0, code);
        Assert.Contains("1 laps", output);
        Assert.Contains("1 of 28 rows left out; line 9", error);
    }

    [Fact]
    public async Task A_lap_a_hundred_thousand_times_too_fast_or_without_braking_is_refused()
    {
        using var folder = new TemporaryFolder();
        string fast = folder.Write("fast.csv", "time_s,speed_km_h\n0,11200000\n4,13000000\n");
        string steady = folder.Write("steady.csv", "time_s,speed_km_h\n0,112\n4,113\n9,112\n");
        (int code, string _, string error) = await Shell.RunAsync("stops", Coupe, "--lap", fast);
        Assert.Equal(2, code);
        Assert.Contains("a speed lies from 0 to 540 km/h", error);
        (code, _, error) = await Shell.RunAsync("stops", Coupe, "--lap", steady, "--adhesion", "0.9");
        Assert.Equal(2, code);
        Assert.Contains("the brakes are never used", error);
    }

    [Theory]
    [InlineData("NaN km/h")]
    [InlineData("1e308 km/h")]
    [InlineData("１００ km/h")]
    [InlineData("80 .. 100 km/h")]
    [InlineData("100")]
    public async Task A_speed_that_is_no_finite_number_with_its_unit_is_refused_alike_by_both_commands(string speed)
    {
        foreach (string command in (string[])["stops", "summary"])
        {
            (int code, string output, string error) = await Shell.RunAsync(command, Coupe, "--speed", speed);
            Assert.Equal((2, ""), (code, output));
            Assert.Contains($"--speed: '{speed}' is not a speed from", error);
        }
    }
}
