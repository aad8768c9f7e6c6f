using BrakeBalance.Measurements;

namespace BrakeBalance.Tests.Measurements;

public class LogReaderTests
{
    private static LogReading<GaugePair> Gauges(string text) => LogReader.ReadGaugePairs(new StringReader(text));

    private static LogReading<TestStop> Stops(string text) => LogReader.ReadTestStops(new StringReader(text));

    [Fact]
    public void Units_come_from_the_header()
    {
        LogReading<GaugePair> log = Gauges("turns,front pressure [psi],rear pressure [bar],phase\n2,1000,50,apply\n");
        GaugePair pair = Assert.Single(log.Rows);
        Assert.Empty(log.Problems);
        Assert.Equal(68.9476, pair.Front.Bars, 4);
        Assert.Equal(50, pair.Rear.Bars, 9);
        Assert.Equal(2, pair.Turns);
        Assert.Equal(PressurePhase.Apply, pair.Phase);
    }

    [Theory]
    [InlineData("front pressure [bar];rear pressure [bar]\n12,5;11,75\n")]
    [InlineData("front pressure [bar],rear pressure [bar]\n\"12,5\",\"11,75\"\n")]
    [InlineData("front pressure (bar)\trear_pressure (bar)\n12.5\t11.75\n")]
    [InlineData("\uFEFFFront Pressure [bar] , Rear Pressure [bar]\r\n12.5 , 11.75\r\n")]
    public void Decimal_comma_and_point_and_every_separator_read_the_same(string text)
    {
        LogReading<GaugePair> log = Gauges(text);
        GaugePair pair = Assert.Single(log.Rows);
        Assert.Empty(log.Problems);
        Assert.Equal(12.5, pair.Front.Bars, 9);
        Assert.Equal(11.75, pair.Rear.Bars, 9);
    }

    [Fact]
    public void Every_line_left_out_is_reported_with_its_number_and_reason()
    {
        LogReading<GaugePair> log = Gauges(
            "# invented\n\nfront pressure [bar];rear pressure [bar];phase\n10;10;apply\n20;;apply\n30;thirty;apply\n-4;3;apply\n40;40;sideways\n50;50;apply;7\n60;\"60;apply\n70;70;\n");
        Assert.Equal([10.0, 70.0], log.Rows.Select(r => r.Front.Bars));
        Assert.Equal([4, 11], log.Rows.Select(r => r.Line));
        Assert.Equal([5, 6, 7, 8, 9, 10], log.Problems.Select(p => p.Line));
        Assert.Contains("rear pressure is missing", log.Problems[0].Reason);
        Assert.Contains("'thirty' is not a number", log.Problems[1].Reason);
        Assert.Contains("from 0 to 300 bar", log.Problems[2].Reason);
        Assert.Contains("write apply, release or hold", log.Problems[3].Reason);
        Assert.Contains("4 cells where the header names 3", log.Problems[4].Reason);
        Assert.Contains("quotation mark", log.Problems[5].Reason);
        Assert.True(log.IsInvented);
    }

    [Fact]
    public void A_row_with_the_other_decimal_mark_is_left_out()
    {
        LogReading<GaugePair> log = Gauges("front pressure [bar];rear pressure [bar]\n10,5;10,4\n20,5;20,4\n30.5;30,4\n");
        Assert.Equal(2, log.Rows.Count);
        Assert.Contains("'30.5' is written with '.'", Assert.Single(log.Problems).Reason);
    }

    [Fact]
    public void Whole_thousands_with_a_comma_are_refused_as_ambiguous()
    {
        LogReading<GaugePair> log = Gauges("front pressure [psi];rear pressure [psi]\n1,200;1,100\n1,000;1,000\n");
        Assert.Empty(log.Rows);
        Assert.Contains(log.Problems, p => p.Reason.Contains("write 1200"));
    }

    [Fact]
    public void A_comma_as_separator_and_as_decimal_mark_is_explained()
    {
        LogReading<GaugePair> log = Gauges("front pressure [bar],rear pressure [bar]\n12,5,11,75\n");
        Assert.Empty(log.Rows);
        Assert.Contains("with decimal commas separate the cells by ';'", Assert.Single(log.Problems).Reason);
    }

    [Fact]
    public void A_missing_or_unknown_unit_and_an_unknown_column_are_said()
    {
        LogReading<GaugePair> log = Gauges("front pressure,rear pressure [torr],colour\n10,10,red\n");
        Assert.Empty(log.Rows);
        Assert.Contains(log.Problems, p => p.Reason.Contains("names no unit") && p.Line == 1);
        Assert.Contains(log.Problems, p => p.Reason.Contains("unit 'torr', which is not known"));
        Assert.Contains(log.Problems, p => p.Reason.Contains("'colour' is not known"));
        Assert.Contains(log.Problems, p => p.Reason.Contains("no column 'front pressure'"));
    }

    [Fact]
    public void An_empty_log_is_a_problem_and_not_an_error() =>
        Assert.Contains("no header line", Assert.Single(Gauges("# only a remark\n").Problems).Reason);

    [Fact]
    public void Test_stops_read_with_missing_cells()
    {
        LogReading<TestStop> log = Stops(
            "speed [mph];pedal force [lbf];front pressure [psi];rear pressure [psi];deceleration [g];locked first;surface;load case;temperature [°F];turns\n" +
            "30;50;500;400;0.55;none;dry;driver only;200;2\n40;-;700;n/a;;front;dry;driver only;;2\n40;;;;0.5;none;;;;\n40;60;700;;;;;;;\n");
        Assert.Equal(2, log.Rows.Count);
        TestStop first = log.Rows[0];
        Assert.Equal(48.28, first.InitialSpeed!.Value.KilometersPerHour, 2);
        Assert.Equal(222.4, first.PedalForce!.Value.Newtons, 1);
        Assert.Equal(0.55 * 9.80665, first.Deceleration!.Value.MetersPerSecondSquared, 6);
        Assert.Equal(93.3, first.InitialTemperature!.Value.DegreesCelsius, 1);
        Assert.Equal(FirstLock.Front, log.Rows[1].Locked);
        Assert.Null(log.Rows[1].RearPressure);
        Assert.Equal([4, 5], log.Problems.Select(p => p.Line));
        Assert.Contains("says nothing about the brakes", log.Problems[0].Reason);
        Assert.Contains("neither a deceleration nor", log.Problems[1].Reason);
    }

    [Fact]
    public void A_time_that_steps_back_is_left_out()
    {
        LogReading<MotionSample> log = LogReader.ReadTimeSeries(new StringReader("time [s],speed [km/h]\n0.0,50\n0.1,50\n0.1,49\n0.2,49\n"));
        Assert.Equal(3, log.Rows.Count);
        Assert.Contains("does not come after 0.1 s", Assert.Single(log.Problems).Reason);
    }

    [Theory]
    [InlineData("time [s],speed [km/h]\n", LogKind.TimeSeries)]
    [InlineData("turns;front pressure [bar];rear pressure [bar]\n", LogKind.GaugePairs)]
    [InlineData("front pressure [bar];deceleration [g];locked first\n", LogKind.TestStops)]
    public void The_header_tells_the_kind(string text, LogKind kind) => Assert.Equal(kind, LogReader.KindOf(new StringReader(text)));

    [Fact]
    public void Reading_does_not_depend_on_the_culture()
    {
        var before = System.Globalization.CultureInfo.CurrentCulture;
        try
        {
            System.Globalization.CultureInfo.CurrentCulture = System.Globalization.CultureInfo.GetCultureInfo("de-DE");
            Assert.Equal(12.5, Assert.Single(Gauges("front pressure [bar],rear pressure [bar]\n12.5,12.5\n").Rows).Front.Bars, 9);
        }
        finally
        {
            System.Globalization.CultureInfo.CurrentCulture = before;
        }
    }
}
