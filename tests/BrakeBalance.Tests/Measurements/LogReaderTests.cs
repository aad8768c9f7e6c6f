using System.Globalization;
using System.Text;
using BrakeBalance.Measurements;
using BrakeBalance.Stops;

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
            "# origin: invented\n\nfront pressure [bar];rear pressure [bar];phase\n10;10;apply\n"
                + "20;;apply\n30;thirty;apply\n-4;3;apply\n40;40;sideways\n50;50;apply;7\n60;\"60;apply\n70;70;\n");
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
        Assert.False(Gauges("# nothing here is invented\nfront pressure [bar];rear pressure [bar]\n1;1\n").IsInvented);
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

    [Theory]
    [InlineData("deceleration [m]", "has the unit 'm', which is not known")]
    [InlineData("deceleration", "names no unit")]
    [InlineData("deceleration braking", "'deceleration braking' is not known")]
    [InlineData("Mean decel. over distance", "'Mean decel. over distance' is not known")]
    public void Stops_whose_decelerations_cannot_be_read_are_not_answered_from_their_locks_alone(string heading, string said)
    {
        LogReading<TestStop> log = Stops($"turns;front pressure [bar];{heading};locked first\n2;20;3.4;none\n2;30;5.1;front\n");
        Assert.Empty(log.Rows);
        Assert.Equal(2, log.Lost);
        Assert.Contains(log.Problems, problem => problem.Reason.Contains(said, StringComparison.Ordinal));
        Assert.DoesNotContain(log.Problems, problem => problem.Reason.EndsWith(", ", StringComparison.Ordinal));
    }

    [Fact]
    public void Turns_in_a_unit_that_is_none_of_turns_are_not_taken_for_the_files_own_setting()
    {
        LogReading<TestStop> log = Stops("turns [°];front pressure [bar];deceleration [g]\n90;20;0.34\n");
        Assert.Empty(log.Rows);
        Assert.EndsWith("with one of turns", Assert.Single(log.Problems).Reason);
    }

    [Fact]
    public void A_column_without_a_number_may_name_any_unit() =>
        Assert.Single(Stops("front pressure [bar];deceleration [g];temperature [K]\n20;0.34;\n").Rows);

    [Theory]
    [InlineData("decel (g)", 0.5)]
    [InlineData("deceleration m/s²", 4.903325)]
    [InlineData("Deceleration_m_s2", 4.903325)]
    public void A_deceleration_is_known_by_usual_headings(string heading, double number)
    {
        LogReading<TestStop> log = Stops($"front pressure [bar];{heading}\n20;{number.ToString(CultureInfo.InvariantCulture)}\n");
        Assert.Equal(0.5 * 9.80665, Assert.Single(log.Rows).Deceleration!.Value.MetersPerSecondSquared, 6);
    }

    [Fact]
    public void An_empty_log_is_a_problem_and_not_an_error() =>
        Assert.Contains("no header line", Assert.Single(Gauges("# only a remark\n").Problems).Reason);

    [Fact]
    public void Test_stops_read_with_missing_cells()
    {
        LogReading<TestStop> log = Stops(
            "speed [mph];pedal force [lbf];front pressure "
                + "[psi];rear pressure [psi];deceleration [g];locked first;surface;load case;temperature [°F];turns\n" +
            "30;50;500;400;0.55;none;dry;driver only;200;2\n"
                + "40;-;700;n/a;;front;dry;driver only;;2\n40;;;;0.5;none;;;;\n40;60;700;;;;;;;\n");
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
        LogReading<MotionSample> log =
            LogReader.ReadTimeSeries(new StringReader("time [s],speed [km/h]\n0.0,50\n0.1,50\n0.1,49\n0.2,49\n"));
        Assert.Equal(3, log.Rows.Count);
        Assert.Contains("does not come after 0.1 s", Assert.Single(log.Problems).Reason);
    }

    [Fact]
    public void A_row_that_adds_a_position_to_the_time_before_is_no_step_back()
    {
        var text = new StringBuilder("time [s];lat;lon;pedal\n");
        for (int i = 0; i < 40; i++)
        {
            text.Append(CultureInfo.InvariantCulture, $"{i * 0.2:0.0};;;{i}\n{i * 0.2:0.0};{50 + i * 4e-5:0.000000};8.0;\n");
        }

        LogReading<MotionSample> reading = LogReader.ReadTimeSeries(new StringReader(text.ToString()));
        Assert.Empty(reading.Problems);
        Assert.Equal(40, reading.Rows.Count);
        double truth = 4e-5 * 6_371_000 * Math.PI / 180 / 0.2;
        Assert.Equal(38, reading.Rows.Count(row => row.Speed is { } v && Math.Abs(v.MetersPerSecond / truth - 1) < 0.02));
        Assert.All(reading.Rows, row => Assert.NotNull(row.Pedal));
    }

    [Fact]
    public void A_column_called_clock_may_count_seconds()
    {
        string rows = string.Concat(Enumerable.Range(0, 20).Select(i => FormattableString.Invariant($"{i * 0.1:0.0};{i}\n")));
        LogReading<MotionSample> reading = LogReader.ReadTimeSeries(new StringReader("clock;speed [km/h]\n" + rows));
        Assert.Empty(reading.Problems);
        Assert.Equal(1.9, reading.Rows[^1].Time.Seconds, 9);
    }

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

    [Fact]
    public void A_lap_with_semicolons_and_decimal_commas_loses_no_row()
    {
        const string Points = "time_s,speed_km_h\n0.0,60.5\n10.25,180\n14.5,60\n";
        SpeedTrace plain = Lap(Points).Rows.Trace();
        LogReading<MotionSample> commas = Lap(Points.Replace(',', ';').Replace('.', ','));
        Assert.Equal(0, commas.Lost);
        Assert.Empty(commas.Problems);
        Assert.Equal(plain.Seconds, commas.Rows.Trace().Seconds);
        Assert.Equal(plain.MetresPerSecond, commas.Rows.Trace().MetresPerSecond);
        Assert.Equal(plain.MetresPerSecond,
            Lap(Points.Replace("time_s", "time [s]").Replace("speed_km_h", "speed (km/h)")).Rows.Trace().MetresPerSecond);
    }

    [Fact]
    public void Bad_rows_of_a_lap_are_left_out_by_line_and_counted_and_a_missing_column_is_named()
    {
        LogReading<MotionSample> lap = Lap("time_s,speed_mph\n0,40\n1,x\n1,-3\n2,50\n2,60\n3,30\n4,\n");
        Assert.Equal(3, lap.Rows.Trace().Seconds.Count);
        Assert.Equal(4, lap.Lost);
        Assert.Equal([3, 4, 6, 8], lap.Problems.Select(p => p.Line));
        Assert.Equal(["'x' is not a number", "out of range", "does not come after", "speed is missing"],
            lap.Problems.Zip(["'x' is not a number", "out of range", "does not come after", "speed is missing"], (p, words) =>
                p.Reason.Contains(words) ? words : p.Reason));
        Assert.Contains("speed [km/h]", Lap("time_s,v\n0,1\n").Problems[^1].Reason);
        Assert.Throws<ArgumentException>(() => Lap("time_s,speed_km_h\n0,1\n").Rows.Trace());
    }

    [Fact]
    public void Speeds_a_hundred_thousand_times_too_high_are_refused_row_by_row()
    {
        LogReading<MotionSample> lap = Lap("time_s,speed_km_h\n0,6000000\n10,18000000\n");
        Assert.Empty(lap.Rows);
        Assert.Equal(2, lap.Lost);
        Assert.All(lap.Problems, p => Assert.Contains("from 0 to 540 km/h", p.Reason));
    }

    [Theory]
    [InlineData("1e308")]
    [InlineData("-1e308")]
    [InlineData("1e999")]
    [InlineData("４５")]
    [InlineData("Infinity")]
    public void A_cell_that_is_no_number_of_a_car_is_a_fault_of_its_row(string cell)
    {
        LogReading<GaugePair> log = Gauges($"front pressure [psi],rear pressure [bar]\n{cell},9\n10,9\n");
        Assert.Equal((1, 1), (log.Rows.Count, log.Lost));
        Assert.Contains($"front pressure: '{cell}' is not a number", Assert.Single(log.Problems).Reason);
    }

    [Fact]
    public void A_header_without_rows_says_so()
    {
        LogReading<GaugePair> log = Gauges("front pressure [bar],rear pressure [bar]\n");
        Assert.Empty(log.Rows);
        Assert.Contains("a header and no rows", Assert.Single(log.Problems).Reason);
    }

    [Theory]
    [InlineData(49, 1, false)]
    [InlineData(48, 1, true)]
    [InlineData(98, 2, false)]
    [InlineData(0, 3, true)]
    public void More_than_one_row_in_fifty_lost_is_too_much(int good, int bad, bool tooMuch)
    {
        string rows = string.Concat(Enumerable.Repeat("10,9\n", good)) + string.Concat(Enumerable.Repeat("10,?9\n", bad));
        LogReading<GaugePair> log = Gauges("front pressure [bar],rear pressure [bar]\n" + rows);
        Assert.Equal((good, bad), (log.Rows.Count, log.Lost));
        Assert.Equal(tooMuch, log.LosesTooMuch);
    }

    [Fact]
    public void A_planned_stop_that_was_not_made_is_told_but_is_no_lost_row()
    {
        LogReading<TestStop> log = Stops("speed [km/h];front pressure [bar];deceleration [g];notes\n50;20;0.4;\n50;;;rain\n");
        Assert.Equal((1, 0), (log.Rows.Count, log.Lost));
        Assert.Equal(3, Assert.Single(log.Problems).Line);
    }

    [Fact]
    public void Control_characters_in_the_words_of_a_log_are_faults()
    {
        LogReading<TestStop> log = Stops("front pressure [bar];deceleration [g];surface\n20;0.4;dry\u001b[31m\n20;0.4;dry\n");
        Assert.Equal((1, 1), (log.Rows.Count, log.Lost));
        Assert.Contains("cannot be seen", Assert.Single(log.Problems).Reason);
    }

    private static LogReading<MotionSample> Lap(string text) => LogReader.ReadLap(new StringReader(text));
}
