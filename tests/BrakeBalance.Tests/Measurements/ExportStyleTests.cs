using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Measurements;

/// <summary>Ten invented ways to export a drive, each with the truth in its first lines.</summary>
public class ExportStyleTests
{
    private static readonly string[] Names =
        [.. Directory.EnumerateFiles(Path.Combine(RepositoryFiles.Root, "data", "logs"), "invented-export-*")
            .Select(path => Path.GetFileName(path)).Order()];

    public static TheoryData<string> Files => [.. Names];

    private static (LogReading<MotionSample> Reading, string Text) Read(string file)
    {
        string path = Path.Combine(RepositoryFiles.Root, "data", "logs", file);
        List<string> problems = [];
        LogReading<MotionSample>? reading = LogFile.Read(path, text => LogReader.ReadTimeSeries(text), allowLost: false, problems);
        Assert.True(reading is not null, string.Join('\n', problems));
        return (reading, LogText.Open(path).ReadToEnd());
    }

    [Fact]
    public void There_are_ten() => Assert.Equal(10, Names.Length);

    [Theory]
    [MemberData(nameof(Files))]
    public void Every_style_of_export_gives_its_stops_back(string file)
    {
        (LogReading<MotionSample> reading, string text) = Read(file);
        Assert.Contains("invented", text[..200], StringComparison.Ordinal);
        StopSearch search = StopFinder.Find(reading.Rows);
        MatchCollection truths = Regex.Matches(text, @"at ([\d.]+) s from ([\d.]+) km/h in ([\d.]+) m at ([\d.]+) m/s2");
        Assert.Equal(2, truths.Count);
        Assert.Equal(2, search.Stops.Count);
        foreach ((Match truth, MeasuredStop stop) in truths.Zip(search.Stops))
        {
            double Truth(int group) => double.Parse(truth.Groups[group].Value, CultureInfo.InvariantCulture);
            Assert.InRange(stop.InitialSpeed.KilometersPerHour / Truth(2), 0.98, 1.02);
            Assert.InRange(stop.Deceleration!.Value.MetersPerSecondSquared / Truth(4), 0.975, 1.025);
            Assert.InRange(Math.Abs(stop.DistanceFromPedal.Meters - Truth(3)), 0, 1.6 * stop.DistanceFromPedalWithin.Meters);
            Assert.InRange(stop.DistanceFromPedal.Meters / Truth(3), 0.94, 1.06);
        }
    }

    [Theory]
    [InlineData("01", "speed=Geschwindigkeit Satellit [km/h]|front pressure=Bremsdruck vorn [bar]|rear pressure=Bremsdruck hinten [bar]")]
    [InlineData("02", "time=Elapsed ms|speed=Vehicle mph|brake switch=Brake light")]
    [InlineData("03", "time=Clock|speed=Dash speed (km/h)")]
    [InlineData("04", "speed=Ground speed|wheel front left=Wheel FL|wheel rear right=Wheel RR|front pressure=Brake press front")]
    [InlineData("05", "time=timestamp|acceleration x=accX|acceleration z=accZ")]
    [InlineData("06", "time=seconds elapsed|acceleration=acceleration along (g)")]
    [InlineData("07", "time=Moment|latitude=Latitude|longitude=Longitude")]
    [InlineData("08", "speed=GPS speed (kph)|acceleration=Long acc (m/s^2)")]
    [InlineData("09", "time=UTC|speed=Speed over ground (kn)")]
    [InlineData("10", "time=t [s]|speed=velocity [m/s]|pedal=brake pedal [N]")]
    public void What_a_column_means_is_guessed_with_a_reason(string number, string meanings)
    {
        (LogReading<MotionSample> reading, _) = Read(Names.Single(f => f.StartsWith($"invented-export-{number}",
            StringComparison.Ordinal)));
        foreach (string meaning in meanings.Split('|'))
        {
            (string words, string name) = (meaning.Split('=')[0], meaning.Split('=')[1]);
            LogColumn column = reading.Columns.Single(c => c.Words == words);
            Assert.Equal(name, column.Name);
            Assert.NotEqual("", column.Reason);
        }
    }

    [Fact]
    public void Negative_speeds_at_rest_and_times_that_repeat_or_step_back_are_counted_in_one_line()
    {
        (LogReading<MotionSample> reading, _) = Read("invented-export-10-noise.csv");
        LogProblem noise = Assert.Single(reading.Problems);
        Assert.Equal(0, reading.Lost);
        Assert.Matches(
            @"^noise: \d+ rows whose time does not come after the one before were passed over .*; \d+ slightly negative speeds",
            noise.Reason);
    }

    [Fact]
    public void The_rear_wheels_that_lock_are_found_with_the_pressure_at_lock()
    {
        (LogReading<MotionSample> reading, _) = Read("invented-export-04-wheels.csv");
        MeasuredStop[] stops = [.. StopFinder.Find(reading.Rows).Stops];
        Assert.Equal([FirstLock.None, FirstLock.Rear], stops.Select(s => s.Locked));
        Assert.Null(stops[0].LockPressure);
        Assert.InRange(stops[1].LockPressure!.Value.PoundsForcePerSquareInch, 820, 860);
        Assert.InRange(stops[1].RearLockedAt!.Value.Seconds - stops[1].Start.Seconds, 0.5, 0.85);
        Assert.InRange(stops[0].FrontSlip!.Value, 0.01, 0.03);
        Assert.InRange(stops[0].FrontPressure!.Value.PoundsForcePerSquareInch, 690, 710);
    }
}
