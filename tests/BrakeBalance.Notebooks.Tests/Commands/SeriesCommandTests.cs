using System.Text.Json;
using BrakeBalance.Charts;
using BrakeBalance.Measurements;

namespace BrakeBalance.Notebooks.Tests.Commands;

public class SeriesCommandTests
{
    private static readonly string[] Said = ["--load-case", "driver only", "--surface", "dry", "--locked", "none"];

    private static string Data(string path) => RepositoryRoot.File("data/" + path);

    private static string Export(string number) => Directory.GetFiles(Data("logs"), $"invented-export-{number}-*").Single();

    private static string WithoutUnit { get; } = "time [s];Tempo speed\n" + string.Concat(Enumerable.Range(0, 120)
        .Select(i => FormattableString.Invariant($"{i * 0.1:0.0};{Math.Clamp(80 - Math.Max(0, i - 20) * 2.2, 0, 80):0.0}\n")));

    [Fact]
    public async Task What_each_column_was_taken_for_is_shown_with_the_reason()
    {
        (int code, string output, _) = await Shell.RunAsync("measure", "series", Export("03"));
        Assert.Equal(0, code);
        Assert.Contains("What the columns were taken for", output);
        (_, output, _) = await Shell.RunAsync("measure", "series", Export("01"), "--json");
        JsonElement root = JsonDocument.Parse(output).RootElement;
        Assert.Equal(["time", "speed", "none", "front pressure", "rear pressure"],
            root.GetProperty("columns").EnumerateArray().Select(c => c.GetProperty("meaning").GetString()));
        Assert.All(root.GetProperty("stops").EnumerateArray(), stop =>
        {
            Assert.Equal("front pressure", stop.GetProperty("found_by").GetString());
            Assert.True(stop.GetProperty("trusted").GetBoolean());
            Assert.InRange(stop.GetProperty("distance_within_m").GetDouble(), 0.01, 3);
        });
    }

    [Fact]
    public async Task A_speed_without_a_unit_is_asked_for_by_the_option_that_sets_it()
    {
        using var folder = new TemporaryFolder();
        string path = folder.Write("log.csv", WithoutUnit);
        (int code, string output, string error) = await Shell.RunAsync("measure", "series", path);
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("--column \"speed [km/h]=Tempo speed\", with one of km/h, mph, m/s, ft/s, knots", error);
        (code, output, _) = await Shell.RunAsync("measure", "series", path, "--column", "speed [km/h]=Tempo speed", "--json");
        Assert.Equal(0, code);
        Assert.Equal(80, JsonDocument.Parse(output).RootElement.GetProperty("stops")[0].GetProperty("initial_speed_km_h").GetDouble(), 0.8);
        (code, _, error) = await Shell.RunAsync("measure", "series", path, "--column", "speed [furlong]=x", "--column", "colour=y");
        Assert.Equal(2, code);
        Assert.Contains("speed is not read in 'furlong'", error);
        Assert.Contains("'colour=y' is not understood", error);
    }

    [Fact]
    public async Task Stops_go_into_the_stop_log_once_what_the_logger_cannot_know_is_said()
    {
        using var folder = new TemporaryFolder();
        string target = Path.Combine(folder.Path, "stops.csv");
        (int code, string output, string error) = await Shell.RunAsync("measure", "series", Export("01"), "--into", target);
        Assert.Equal((2, ""), (code, output));
        Assert.All(["--load-case NAME", "--surface NAME", "--locked none, front, rear or together"],
            words => Assert.Contains(words, error));
        Assert.False(File.Exists(target));

        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("01"), "--into", target, .. Said]);
        Assert.Equal(0, code);
        Assert.Contains("2 stops added", error);
        string once = File.ReadAllText(target);
        LogReading<TestStop> read = LogReader.ReadTestStops(new StringReader(once));
        Assert.Empty(read.Problems);
        Assert.Equal(["dry", "dry"], read.Rows.Select(r => r.Surface));
        Assert.All(read.Rows, row => Assert.InRange(row.FrontPressure!.Value.Bars, 44, 46));
        Assert.All(read.Rows.Zip([6.8, 8.2]), pair => Assert.InRange(pair.First.Deceleration!.Value.MetersPerSecondSquared / pair.Second,
            0.97, 1.03));
        Assert.All(read.Rows, row => Assert.Equal(FirstLock.None, row.Locked));

        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("01"), "--into", target, .. Said]);
        Assert.Equal(2, code);
        Assert.Contains("already", error);
        Assert.Equal(once, File.ReadAllText(target));
        (code, _, _) = await Shell.RunAsync(
            "measure", "series", Export("04"), "--into", target, "--load-case", "driver only", "--surface", "dry", "--locked", "none");
        Assert.Equal(0, code);
        Assert.StartsWith(once.TrimEnd('\n'), File.ReadAllText(target), StringComparison.Ordinal);
        using StreamReader written = File.OpenText(target);
        TestStop last = LogReader.ReadTestStops(written).Rows[^1];
        Assert.Equal(FirstLock.Rear, last.Locked); // by the wheel speeds, whatever was said
        Assert.InRange(last.LockPressure!.Value.PoundsForcePerSquareInch, 810, 870);
    }

    [Fact]
    public async Task The_stops_of_a_logger_are_read_as_test_stops_by_the_setting()
    {
        using var folder = new TemporaryFolder();
        string target = Path.Combine(folder.Path, "stops.csv");
        await Shell.RunAsync(["measure", "series", Export("01"), "--into", target, .. Said]);
        (int code, string output, string error) = await Shell.RunAsync(
            "measure", "setting", Data("vehicles/coupe-1960s.json"), "--stops", target, "--draws", "1000", "--json");
        Assert.Equal((0, ""), (code, error));
        Assert.Equal(2, JsonDocument.Parse(output).RootElement.GetProperty("estimate").GetProperty("stops_used").GetInt32());
    }

    [Fact]
    public async Task Rows_are_added_in_the_columns_and_units_of_the_log_that_is_there()
    {
        using var folder = new TemporaryFolder();
        string target = folder.Write("mine.csv",
            "# mine\nspeed [mph];front pressure [psi];deceleration [g];locked first;surface;load case;notes\n"
                + "30,5;410,0;0,47;none;dry;driver only;mine\n");
        (int code, _, string error) = await Shell.RunAsync(["measure", "series", Export("02"), "--into", target, "--front-pressure",
            "30 bar, 500 psi", .. Said]);
        Assert.True(code == 0, error);
        string[] lines = File.ReadAllLines(target);
        Assert.Equal(5, lines.Length);
        Assert.Equal("47,", lines[3][..3]); // 76.2 km/h by the file's own first lines
        Assert.Equal("435,1", lines[3].Split(';')[1]);
        Assert.Equal("500,0", lines[4].Split(';')[1]);
        string narrow = folder.Write("narrow.csv", "speed [mph];deceleration [g];locked first\n");
        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("01"), "--into", narrow, .. Said]);
        Assert.Equal(2, code);
        Assert.Contains("the header names no column for 'surface'", error);
    }

    [Fact]
    public async Task Nothing_that_was_said_is_passed_over_in_silence()
    {
        (int code, string output, string error) = await Shell.RunAsync("measure", "series", Export("01"), "--surface", "dry");
        Assert.Equal((2, ""), (code, output));
        Assert.Contains("--into STOPS", error);
        (code, _, error) = await Shell.RunAsync("measure", "series", Export("01"), "--column", "speed [m/s]=#2", "--column", "speed=#3");
        Assert.Equal(2, code);
        Assert.Contains("speed is set 2 times", error);
        using var folder = new TemporaryFolder();
        string target = Path.Combine(folder.Path, "stops.csv");
        string[] into = ["--into", target, .. Said];
        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("02"), .. into, "--front-pressure", "30"]);
        Assert.Equal(2, code);
        Assert.Contains("--front-pressure: '30' is not understood", error);
        Assert.DoesNotContain("has no line pressure", error);
        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("01"), .. into, "--front-pressure", "30 bar"]);
        Assert.Equal(0, code);
        Assert.Contains("--front-pressure: not used; the log has its own", error);
        Assert.DoesNotContain("--locked: not used", error);
        (code, _, error) = await Shell.RunAsync(["measure", "series", Export("04"), .. into]);
        Assert.Equal(0, code);
        Assert.Contains("--locked: not used where the wheel speeds tell otherwise", error);
    }

    [Fact]
    public async Task A_table_is_rounded_and_json_keeps_the_digits()
    {
        (_, string output, _) = await Shell.RunAsync("measure", "series", Export("01"));
        Assert.Matches(@"Distance[^\n]*\d\d\.\d ± 0\.\d\s", output);
        (_, output, _) = await Shell.RunAsync("measure", "series", Export("01"), "--json");
        Assert.Matches(@"""distance_m"": \d\d\.\d{3,}", output);
        Assert.Matches(@"""distance_within_m"": 0\.\d{4,}", output);
    }

    [Fact]
    public async Task Distances_and_decelerations_of_the_json_follow_the_units_asked_for()
    {
        System.Text.Json.JsonElement First(string output) =>
            System.Text.Json.JsonDocument.Parse(output).RootElement.GetProperty("stops")[0];
        (_, string si, _) = await Shell.RunAsync("measure", "series", Export("01"), "--json");
        (_, string us, _) = await Shell.RunAsync("measure", "series", Export("01"), "--json", "--units", "us");
        foreach (string stem in new[] { "distance_", "distance_from_pedal_within_", "peak_deceleration_" })
        {
            string square = stem.Contains("deceleration", StringComparison.Ordinal) ? "_s2" : "";
            Assert.Equal(1 / 0.3048, First(us).GetProperty(stem + "ft" + square).GetDouble()
                / First(si).GetProperty(stem + "m" + square).GetDouble(), 1e-4);
        }

        Assert.DoesNotMatch(@"_m(_s2)?"":", us);
    }

    [Fact]
    public async Task A_lap_is_read_from_any_export_and_the_guess_is_told()
    {
        (int code, string output, string error) = await Shell.RunAsync("stops", Data("vehicles/coupe-1960s.json"), "--lap", Export("09"),
            "--laps", "1", "--adhesion", "0.9", "--load-case", "driver only");
        Assert.True(code == 0, error);
        Assert.Contains("'Speed over ground (kn)' is speed [knots]", error);
        Assert.Contains("1 laps", output);
    }
}
