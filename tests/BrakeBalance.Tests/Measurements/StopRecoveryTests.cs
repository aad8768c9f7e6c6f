using BrakeBalance.Measurements;
using Xunit.Abstractions;

namespace BrakeBalance.Tests.Measurements;

/// <summary>
/// Simulated logs against the truth they were made from. What each class of logger can give is written down as it was measured. The
/// distance counts from the change of slope; from the pedal it is known less sharply, as a slow or coarse log hides how long the rise took.
/// </summary>
public class StopRecoveryTests(ITestOutputHelper output)
{
    // Logs of three stops each; 1,002 stops in all.
    private const int Logs = 334;

    private static readonly SimulatedLogger[] Kinds = [.. Enum.GetValues<SimulatedLogger>().Where(k => k != SimulatedLogger.SlowSatellite)];

    private static readonly Lazy<List<Recovered>> All = new(() => [.. Enumerable.Range(0, Logs).AsParallel().AsOrdered()
        .SelectMany(i => Of(Kinds[i % Kinds.Length], i))]);

    private sealed record Recovered(SimulatedLogger Logger, MeasuredStop? Stop, double Distance, double Deceleration, bool Covered,
        bool SpeedCovered, int Extra, double FromPedal = 9, bool PedalCovered = false);

    private static IEnumerable<Recovered> Of(SimulatedLogger logger, int seed)
    {
        var log = new SimulatedLog(logger, seed);
        LogReading<MotionSample> reading = LogReader.ReadTimeSeries(new StringReader(log.Text));
        Assert.False(reading.LosesTooMuch, string.Join('\n', reading.Problems));
        List<MeasuredStop> stops = [.. StopFinder.Find(reading.Rows).Stops];
        foreach ((double start, double initial, double distance, double fromPedal, double deceleration) in log.Truth)
        {
            MeasuredStop? stop = stops.Find(s => Math.Abs(s.Start.Seconds - start) < 1.6);
            stops.Remove(stop!);
            yield return new Recovered(logger, stop, stop?.Distance.Meters / distance - 1 ?? 9,
                stop?.Deceleration?.MetersPerSecondSquared / deceleration - 1 ?? 9,
                stop is not null && Math.Abs(stop.Distance.Meters - distance) <= stop.DistanceWithin.Meters,
                stop is not null
                    && Math.Abs(stop.InitialSpeed.MetersPerSecond - initial) <= stop.InitialSpeedWithin.MetersPerSecond, 0,
                stop?.DistanceFromPedal.Meters / fromPedal - 1 ?? 9,
                stop is not null && Math.Abs(stop.DistanceFromPedal.Meters - fromPedal) <= stop.DistanceFromPedalWithin.Meters);
        }

        if (stops.Count > 0)
        {
            yield return new Recovered(logger, null, 9, 9, false, false, stops.Count);
        }
    }

    private static double Share(IEnumerable<Recovered> of, Func<Recovered, bool> holds) => of.Select(r => holds(r) ? 1.0 : 0).Average();

    [Fact]
    public void Of_a_thousand_stops_with_the_faults_of_real_logs_nearly_all_are_found_and_hardly_any_beside_them()
    {
        Assert.Equal(3 * Logs, All.Value.Count(r => r.Extra == 0));
        Assert.InRange(Share(All.Value.Where(r => r.Extra == 0), r => r.Stop is not null), 0.985, 1);
        Assert.InRange(All.Value.Sum(r => r.Extra), 0, 10);
    }

    [Fact]
    public void The_mean_fully_developed_deceleration_of_a_trusted_stop_is_right_to_two_per_cent()
    {
        Recovered[] trusted = [.. All.Value.Where(r => r.Stop?.IsTrusted == true)];
        Assert.InRange(Share(trusted, r => Math.Abs(r.Deceleration) <= 0.02), 0.98, 1);
        Assert.InRange(Math.Sqrt(trusted.Average(r => r.Deceleration * r.Deceleration)), 0, 0.01);
    }

    [Theory]
    [InlineData(SimulatedLogger.SatelliteAndPressure, 0.97)]
    [InlineData(SimulatedLogger.SatelliteAndSwitch, 0.97)]
    [InlineData(SimulatedLogger.PhoneThreeAxes, 0.97)]
    [InlineData(SimulatedLogger.PhoneOneAxis, 0.97)]
    [InlineData(SimulatedLogger.Wheels, 0.97)]
    [InlineData(SimulatedLogger.Satellite, 0.96)]
    [InlineData(SimulatedLogger.Diagnostics, 0.92)]
    [InlineData(SimulatedLogger.Positions, 0.87)]
    public void The_distance_of_a_trusted_stop_is_right_to_three_per_cent(SimulatedLogger logger, double share)
    {
        Recovered[] trusted = [.. All.Value.Where(r => r.Logger == logger && r.Stop?.IsTrusted == true)];
        Assert.InRange(Share(trusted, r => Math.Abs(r.Distance) <= 0.03), share, 1);
        Assert.InRange(Math.Abs(trusted.Average(r => r.Distance)), 0, 0.01);
    }

    [Fact]
    public void Of_a_thousand_stops_ninety_seven_in_a_hundred_have_their_distance_right_to_three_per_cent() =>
        Assert.InRange(Share(All.Value.Where(r => r.Stop?.IsTrusted == true), r => Math.Abs(r.Distance) <= 0.03), 0.97, 1);

    [Fact]
    public void The_uncertainty_of_the_distance_from_the_pedal_covers_the_truth_in_nine_stops_of_ten() =>
        Assert.InRange(Share(All.Value.Where(r => r.Stop is not null), r => r.PedalCovered), 0.88, 0.99);

    [Fact]
    public void The_uncertainty_of_the_distance_covers_the_truth_in_nine_stops_of_ten() =>
        Assert.InRange(Share(All.Value.Where(r => r.Stop is not null), r => r.Covered), 0.88, 0.99);

    [Fact]
    public void A_log_of_one_or_two_samples_a_second_is_not_trusted_and_its_uncertainty_covers_the_truth()
    {
        Recovered[] slow = [.. Enumerable.Range(0, 30).SelectMany(i => Of(SimulatedLogger.SlowSatellite, i))
            .Where(r => r.Stop is not null)];
        Assert.True(slow.Length > 80);
        Assert.All(slow, r => Assert.False(r.Stop!.IsTrusted));
        Assert.All(slow, r => Assert.NotEmpty(r.Stop!.Cautions));
        Assert.InRange(Share(slow, r => r.Covered), 0.85, 1);
    }

    [Fact]
    public void A_distance_that_is_trusted_is_right_to_three_per_cent_whatever_the_logger()
    {
        Recovered[] trusted = [.. All.Value.Where(r => r.Stop?.IsDistanceTrusted == true)];
        foreach (IGrouping<SimulatedLogger, Recovered> kind in All.Value.Where(r => r.Stop?.IsTrusted == true).GroupBy(r => r.Logger))
        {
            Recovered[] sharp = [.. kind.Where(r => r.Stop!.IsDistanceTrusted)];
            output.WriteLine($"{kind.Key,-22} trusted {kind.Count(),4}, distance {sharp.Length,4}, of these within 3 % "
                + $"{(sharp.Length == 0 ? 1 : Share(sharp, r => Math.Abs(r.Distance) <= 0.03)):0.000}; initial speed covered "
                + $"{Share(kind, r => r.SpeedCovered):0.000}, distance covered {Share(kind, r => r.Covered):0.000}"
                + $"; of all trusted within 3 % {Share(kind, r => Math.Abs(r.Distance) <= 0.03):0.000}, mean error "
                + $"{kind.Average(r => r.Distance):0.0000}; from the pedal within 3 % "
                + $"{Share(kind, r => Math.Abs(r.FromPedal) <= 0.03):0.000}, covered {Share(kind, r => r.PedalCovered):0.000}");
        }

        output.WriteLine($"all: {trusted.Length}, within 3 % {Share(trusted, r => Math.Abs(r.Distance) <= 0.03):0.000}; all found "
            + $"{Share(All.Value.Where(r => r.Stop is not null), r => Math.Abs(r.Distance) <= 0.03):0.000}, deceleration within 2 % "
            + $"{Share(All.Value.Where(r => r.Stop is not null), r => Math.Abs(r.Deceleration) <= 0.02):0.000}");
        Assert.InRange(trusted.Length, 500, All.Value.Count);
        Assert.InRange(Share(trusted, r => Math.Abs(r.Distance) <= 0.03), 0.95, 1);
    }

    [Fact]
    public void The_uncertainty_of_the_initial_speed_covers_the_truth_at_one_or_two_samples_a_second_too()
    {
        Recovered[] slow = [.. Enumerable.Range(0, 60).SelectMany(i => Of(SimulatedLogger.SlowSatellite, i))
            .Where(r => r.Stop is not null)];
        output.WriteLine($"slow: {Share(slow, r => r.SpeedCovered):0.000}");
        Assert.InRange(Share(slow, r => r.SpeedCovered), 0.85, 1);
        Assert.InRange(Share(All.Value.Where(r => r.Stop is not null), r => r.SpeedCovered), 0.85, 1);
    }
}
