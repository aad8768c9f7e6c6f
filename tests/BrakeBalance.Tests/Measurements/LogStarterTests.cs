using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Measurements;

/// <summary>The logs to fill in have the columns that the reader knows, and hold no readings.</summary>
public class LogStarterTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void An_empty_gauge_log_has_no_readings_and_its_example_lines_can_be_read_in_its_columns(bool us)
    {
        string text = LogStarter.Text("gauges", us);
        Assert.Empty(LogReader.ReadGaugePairs(new StringReader(text)).Rows);
        LogReading<GaugePair> filled = LogReader.ReadGaugePairs(new StringReader(WithExamples(text)));
        Assert.Empty(filled.Problems);
        Assert.Equal(2, filled.Rows.Count);
        Assert.Equal(40, filled.Rows[1].Front.Bars, 0.2);
        Assert.Equal(19.5, filled.Rows[1].Rear.Bars, 0.2);
        Assert.All(filled.Rows, row => Assert.Equal((0.0, PressurePhase.Apply), (row.Turns, row.Phase)));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void An_empty_stop_log_has_no_stops_and_its_example_lines_can_be_read_in_its_columns(bool us)
    {
        string text = LogStarter.Text("stops", us);
        Assert.Empty(LogReader.ReadTestStops(new StringReader(text)).Rows);
        LogReading<TestStop> filled = LogReader.ReadTestStops(new StringReader(WithExamples(text)));
        Assert.Empty(filled.Problems);
        Assert.Equal(2, filled.Rows.Count);
        Assert.Equal(("driver only", "dry", FirstLock.None), (filled.Rows[0].LoadCase, filled.Rows[0].Surface, filled.Rows[0].Locked));
        Assert.Equal(27, filled.Rows[0].FrontPressure!.Value.Bars, 0.2);
        Assert.Equal(44, filled.Rows[1].LockPressure!.Value.Bars, 0.2);
        Assert.Equal(us ? 48.3 : 50, filled.Rows[1].InitialSpeed!.Value.KilometersPerHour, 0.1);
    }

    [Fact]
    public void An_unknown_kind_of_log_is_refused() => Assert.Throws<ArgumentException>(() => LogStarter.Text("laps"));

    private static string WithExamples(string text) =>
        text + string.Concat(text.Split('\n').Where(line => line.StartsWith("#   ", StringComparison.Ordinal))
            .Select(line => line.TrimStart('#', ' ') + "\n"));
}
