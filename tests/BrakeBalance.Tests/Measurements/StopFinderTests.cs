using BrakeBalance.Measurements;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

public class StopFinderTests
{
    private const double G = 9.80665;

    /// <summary>Cruise, a pedal built up over 0.4 s, a plateau to rest, rest; twice.</summary>
    private static List<(double Time, double Speed, double Acceleration)> Drive(double rate, double v0, params double[] plateaus)
    {
        List<(double, double, double)> trace = [];
        double t = 0, step = 1 / rate;
        foreach (double plateau in plateaus)
        {
            double v = v0;
            for (double s = 0; s < 2; s += step, t += step)
            {
                trace.Add((t, v, 0));
            }

            for (double s = 0; v > 0; s += step, t += step)
            {
                double a = -plateau * Math.Min(1, s / 0.4);
                trace.Add((t, v, a));
                // Fine steps inside a sample, so that the truth does not depend on the sample rate.
                for (int k = 0; k < 50; k++)
                {
                    v = Math.Max(0, v - plateau * Math.Min(1, (s + (k + 0.5) * step / 50) / 0.4) * step / 50);
                }
            }

            for (double s = 0; s < 3; s += step, t += step)
            {
                trace.Add((t, 0, 0));
            }
        }

        return trace;
    }

    private static double Normal(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Theory]
    [InlineData(10, 0.08)]
    [InlineData(20, 0.1)]
    [InlineData(100, 0.1)]
    [InlineData(200, 0.1)]
    public void Stops_are_found_in_a_speed_log_and_their_deceleration_is_right_to_two_percent(double rate, double noise)
    {
        var random = new Random(11);
        double[] plateaus = [4.2, 6.43, 8.1];
        var samples = Drive(rate, 27.78, plateaus)
            .Select(d => new MotionSample
            {
                Time = Duration.FromSeconds(d.Time),
                Speed = Speed.FromMetersPerSecond(Math.Max(0, d.Speed + noise * Normal(random)))
            }).ToList();
        StopSearch search = StopFinder.Find(samples);
        Assert.Equal(3, search.Stops.Count);
        Assert.Equal(rate, search.SampleRate.Hertz, 1);
        foreach ((MeasuredStop stop, double plateau) in search.Stops.Zip(plateaus))
        {
            Assert.InRange(stop.Deceleration!.Value.MetersPerSecondSquared / plateau, 0.98, 1.02);
            Assert.InRange(stop.InitialSpeed.KilometersPerHour, 98, 102);
        }
    }

    [Theory]
    [InlineData(0, 0)]
    [InlineData(6, 0.15)]
    [InlineData(-4, -0.3)]
    public void Tilt_and_offset_of_an_accelerometer_are_taken_off(double tiltDegrees, double offset)
    {
        var random = new Random(5);
        double tilt = tiltDegrees * Math.PI / 180;
        double[] plateaus = [5.5, 7.5];
        var samples = Drive(100, 20, plateaus).Select(d => new MotionSample
        {
            Time = Duration.FromSeconds(d.Time),
            Acceleration = Acceleration.FromMetersPerSecondSquared(d.Acceleration * Math.Cos(tilt) + G * Math.Sin(tilt) + offset
                + 0.15 * Normal(random)),
        }).ToList();
        StopSearch search = StopFinder.Find(samples);
        Assert.Equal(2, search.Stops.Count);
        foreach ((MeasuredStop stop, double plateau) in search.Stops.Zip(plateaus))
        {
            Assert.Equal(G * Math.Sin(tilt) + offset, stop.Offset!.Value.MetersPerSecondSquared, 1);
            Assert.InRange(stop.Deceleration!.Value.MetersPerSecondSquared / plateau, 0.97, 1.03);
            Assert.InRange(stop.InitialSpeed.MetersPerSecond, 19.3, 20.7);
        }
    }

    [Fact]
    public void A_phone_in_any_mounting_is_turned_into_the_cars_axis()
    {
        var random = new Random(7);
        // Turned by 35° about the vertical, then by 50° about its own x-axis.
        (double c1, double s1, double c2, double s2) = (Math.Cos(0.61), Math.Sin(0.61), Math.Cos(0.87), Math.Sin(0.87));
        var samples = Drive(50, 22, 6.8, 5.2).Select(d =>
        {
            (double along, double across, double up) =
                (d.Acceleration + 0.1 * Normal(random), 0.1 * Normal(random), G + 0.1 * Normal(random));
            (double x, double y) = (c1 * along + s1 * across, -s1 * along + c1 * across);
            Acceleration A(double a) => Acceleration.FromMetersPerSecondSquared(a);
            return new MotionSample { Time = Duration.FromSeconds(d.Time), Axes = (A(x), A(c2 * y + s2 * up), A(-s2 * y + c2 * up)) };
        }).ToList();
        StopSearch search = StopFinder.Find(samples);
        Assert.Equal(2, search.Stops.Count);
        Assert.InRange(search.Stops[0].Deceleration!.Value.MetersPerSecondSquared, 6.6, 7.0);
        Assert.InRange(search.Stops[1].Deceleration!.Value.MetersPerSecondSquared, 5.05, 5.35);
    }

    [Fact]
    public void A_known_dive_of_the_body_is_taken_out()
    {
        double dive = 1.5 * Math.PI / 180;
        var samples = Drive(100, 20, 7)
            .Select(d => new MotionSample
            {
                Time = Duration.FromSeconds(d.Time),
                Acceleration = Acceleration.FromMetersPerSecondSquared(d.Acceleration * (1 + dive))
            }).ToList();
        double with = StopFinder.Find(samples, Angle.FromDegrees(1.5)).Stops[0].Deceleration!.Value.MetersPerSecondSquared;
        double without = StopFinder.Find(samples).Stops[0].Deceleration!.Value.MetersPerSecondSquared;
        Assert.Equal(7, with, 1);
        Assert.Equal(1 + dive, without / with, 3);
    }

    [Fact]
    public void A_snub_that_ends_above_a_tenth_of_the_speed_has_no_fully_developed_deceleration()
    {
        List<MotionSample> samples = [];
        for (int i = 0; i < 500; i++)
        {
            double t = i * 0.02, v = t < 3 ? 25 : Math.Max(15, 25 - 5 * (t - 3));
            samples.Add(new MotionSample { Time = Duration.FromSeconds(t), Speed = Speed.FromMetersPerSecond(v) });
        }

        MeasuredStop stop = StopFinder.Find(samples).Stops.Single();
        Assert.Null(stop.Deceleration);
        Assert.Contains("above a tenth", stop.Cautions.Single());
    }

    [Fact]
    public void A_log_that_ends_at_once_says_where_its_zero_comes_from()
    {
        var samples = Drive(100, 20, 6).TakeWhile(d => d.Time < 2.1 || d.Speed > 0.5)
            .Select(d => new MotionSample
            {
                Time = Duration.FromSeconds(d.Time),
                Acceleration = Acceleration.FromMetersPerSecondSquared(d.Acceleration + 0.4)
            }).ToList();
        Assert.Contains(StopFinder.Find(samples).Stops.Single().Cautions, c =>
            c.Contains("the zero was taken from the second before braking"));
    }

    [Fact]
    public void A_drive_without_braking_holds_no_stop()
    {
        var samples = Enumerable.Range(0, 400)
            .Select(i => new MotionSample { Time = Duration.FromSeconds(i * 0.05), Speed = Speed.FromMetersPerSecond(20 - 0.01 * i) })
            .ToList();
        StopSearch search = StopFinder.Find(samples);
        Assert.Empty(search.Stops);
        Assert.Contains(search.Remarks, r => r.Contains("No stop was found"));
    }

    [Fact]
    public void The_coast_before_the_pedal_is_not_the_stop()
    {
        // 79 km/h, lifted throttle at 1 m/s² for three seconds, then 8.5 m/s² built up over 0.3 s from 68.2 km/h.
        List<MotionSample> samples = [];
        double v = 79 / 3.6, truth = 0, fromChange = 0, initial = 0;
        for (int i = 0; i < 1100; i++)
        {
            samples.Add(new MotionSample { Time = Duration.FromSeconds(i * 0.01), Speed = Speed.FromMetersPerSecond(v) });
            for (int k = 0; k < 10; k++)
            {
                double t = i * 0.01 + k * 0.001, a = t < 2 ? 0 : t < 5 ? 1 : 1 + 7.5 * Math.Min(1, (t - 5) / 0.3);
                initial = t < 5 ? v : initial;
                truth += t >= 5 ? v * 0.001 : 0;
                fromChange += t >= 5.15 ? v * 0.001 : 0;
                v = Math.Max(0, v - a * 0.001);
            }
        }

        MeasuredStop stop = StopFinder.Find(samples).Stops.Single();
        Assert.Equal(initial * 3.6, stop.InitialSpeed.KilometersPerHour, 1.0);
        Assert.InRange(stop.DistanceFromPedal.Meters / truth, 0.98, 1.02);
        Assert.InRange(Math.Abs(stop.DistanceFromPedal.Meters - truth), 0, stop.DistanceFromPedalWithin.Meters);
        Assert.InRange(stop.Distance.Meters / fromChange, 0.985, 1.015);
        Assert.InRange(Math.Abs(stop.Distance.Meters - fromChange), 0, stop.DistanceWithin.Meters);
        Assert.Equal("change of slope", stop.FoundBy);
        Assert.True(stop.IsTrusted);
    }

    [Fact]
    public void A_speed_that_stands_in_stairs_counts_as_often_as_it_is_renewed()
    {
        var trace = Drive(100, 25, 7, 5);
        var samples = trace.Select((d, i) => new MotionSample
        {
            Time = Duration.FromSeconds(d.Time),
            Speed = Speed.FromMetersPerSecond(Math.Round(trace[i - i % 10].Speed, 2)),
        }).ToList();
        StopSearch search = StopFinder.Find(samples);
        Assert.Equal(10, search.SampleRate.Hertz, 1);
        Assert.Equal(2, search.Stops.Count);
        Assert.All(search.Stops.Zip([7.0, 5.0]), pair =>
            Assert.InRange(pair.First.Deceleration!.Value.MetersPerSecondSquared / pair.Second, 0.98, 1.02));
    }

    [Fact]
    public void A_slow_log_says_what_it_lacks_and_its_peak_is_not_nought()
    {
        StopSearch search = StopFinder.Find([.. Drive(0.8, 30, 6).Select(d => new MotionSample
        {
            Time = Duration.FromSeconds(d.Time),
            Speed = Speed.FromMetersPerSecond(d.Speed),
        })]);
        MeasuredStop stop = search.Stops.Single();
        Assert.InRange(stop.Peak.MetersPerSecondSquared, 3, 7);
        Assert.Contains(search.Remarks, remark => remark.Contains("four are the least for a stop to be trusted"));
        Assert.Contains(stop.Cautions, c => c.Contains("four are the least"));
        Assert.Matches(@"too wide: \d+ % of the distance, \d+ % of the mean deceleration\.", string.Join(' ', stop.Cautions));
    }

    [Fact]
    public void A_log_eight_times_as_long_costs_eight_times_as_much()
    {
        static double Cost(int stops)
        {
            // Each drive pulls away again, or the log as a whole would only ever brake.
            var drive = Drive(200, 20, 7).Select(d => d.Acceleration).Concat(Enumerable.Repeat(2.5, 1600)).ToArray();
            List<MotionSample> samples = [.. Enumerable.Range(0, stops).SelectMany(_ => drive).Select((a, i) => new MotionSample
            {
                Time = Duration.FromSeconds(i / 200.0),
                Acceleration = Acceleration.FromMetersPerSecondSquared(a),
            })];
            long before = GC.GetAllocatedBytesForCurrentThread();
            Assert.Equal(stops, StopFinder.Find(samples).Stops.Count);
            return GC.GetAllocatedBytesForCurrentThread() - before;
        }

        Cost(1); // what is made once
        Assert.InRange(Cost(40) / Cost(5), 6, 10);
    }

    [Fact]
    public void A_deceleration_that_no_tyre_gives_is_not_trusted_and_the_unit_is_named_as_the_likely_slip()
    {
        var samples = Drive(20, 20 * 3.6, 7 * 3.6).Select(d => new MotionSample
        {
            Time = Duration.FromSeconds(d.Time),
            Speed = Speed.FromMetersPerSecond(d.Speed),
        }).ToList();
        MeasuredStop stop = StopFinder.Find(samples).Stops.Single();
        Assert.False(stop.IsTrusted);
        Assert.Contains(stop.Cautions, c => c.Contains("the unit of the column may be another"));
    }

    [Fact]
    public void A_stop_without_a_distance_has_no_share_of_it_that_is_uncertain()
    {
        string rows = string.Concat(Enumerable.Range(0, 30).Select(i => FormattableString.Invariant(
            $"{(i == 13 ? 10.244 : 0.4 * i):0.###},{Math.Clamp(80 - 8.8 * (i - 5), 0, 80):0.0}\n")));
        LogReading<MotionSample> reading = LogReader.ReadTimeSeries(new StringReader("time [s],speed [km/h]\n" + rows));
        StopSearch search = StopFinder.Find(reading.Rows);
        Assert.NotEmpty(search.Stops);
        Assert.All(search.Stops.SelectMany(stop => stop.Cautions), caution =>
            Assert.DoesNotContain("Infinity", caution, StringComparison.Ordinal));
    }
}
