using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

public class ValveHysteresisTests
{
    private static readonly ProportioningValve Proportioning = new() { Knee = Bar(30), Slope = 0.4, Hysteresis = Bar(6) };

    private static Pressure Bar(double bars) => Pressure.FromBars(bars);

    // Knee 30, slope 0.4, hysteresis 6: from 80 bar the outlet has reached 50. It stands there down to 65 bar (44 + 6), follows 6 bar above
    // the line of
    // application to 40 bar (34 + 6 = 40), and equals the inlet below.
    [Theory]
    [InlineData(80, 50)]
    [InlineData(70, 50)]
    [InlineData(65, 50)]
    [InlineData(55, 46)]
    [InlineData(40, 40)]
    [InlineData(35, 35)]
    [InlineData(0, 0)]
    public void A_falling_outlet_stands_still_then_follows_above_the_line_of_application_then_equals_the_inlet(double inlet,
        double outlet) =>
        Assert.Equal(outlet, Proportioning.OutletPressureOnRelease(Bar(inlet), Bar(50)).Bars, 1e-9);

    [Fact]
    public void Above_the_knee_the_outlets_of_release_and_application_are_the_hysteresis_apart_as_gauges_measure_it()
    {
        foreach (double inlet in new[] { 45.0, 50, 60 })
        {
            Assert.Equal(6, (Proportioning.OutletPressureOnRelease(Bar(inlet), Bar(50)) - Proportioning.OutletPressure(Bar(inlet))).Bars,
                1e-9);
        }
    }

    [Fact]
    public void Without_hysteresis_the_outlet_is_the_same_rising_and_falling_and_a_rising_one_never_sees_it()
    {
        var plain = Proportioning with { Hysteresis = Pressure.Zero };
        for (int bars = 0; bars <= 80; bars += 5)
        {
            Assert.Equal(plain.OutletPressure(Bar(bars)), plain.OutletPressureOnRelease(Bar(bars), Bar(50)));
            double rising = Proportioning.OutletPascals(bars * 1e5, 0);
            Assert.Equal(rising, Proportioning.OutletPascals(bars * 1e5, 0, rising));
        }
    }

    [Fact]
    public void A_limiter_lets_go_when_the_inlet_has_fallen_to_its_limit()
    {
        var limiter = new LimitingValve { Limit = Bar(45), Hysteresis = Bar(5) };
        Assert.Equal(45, limiter.OutletPressureOnRelease(Bar(70), Bar(45)).Bars, 1e-9);
        Assert.Equal(45, limiter.OutletPressureOnRelease(Bar(46), Bar(45)).Bars, 1e-9);
        Assert.Equal(40, limiter.OutletPressureOnRelease(Bar(40), Bar(45)).Bars, 1e-9);
    }

    [Fact]
    public void A_line_of_two_valves_remembers_what_each_has_reached()
    {
        var hydraulics = new BrakeHydraulics { RearValves = [Proportioning, new LimitingValve { Limit = Bar(48) }] };
        Assert.Equal(48, hydraulics.LinePressuresOnRelease(Bar(80), Bar(80)).Rear.Bars, 1e-9);
        Assert.Equal(46, hydraulics.LinePressuresOnRelease(Bar(55), Bar(80)).Rear.Bars, 1e-9);
        Assert.Equal(40, hydraulics.LinePressures(Bar(55)).Rear.Bars, 1e-9);
    }

    [Fact]
    public void A_load_sensing_valve_lets_go_about_the_knee_of_its_moment()
    {
        var sensing = new LoadSensingValve
        {
            KneeAtReference = Bar(30),
            ReferenceLoad = Force.FromKilonewtons(6),
            KneePerKilonewton = Bar(10),
            Slope = 0.5,
            Hysteresis = Bar(4),
        };
        Assert.Equal(45 + 4, sensing.OutletPressureOnRelease(Bar(60), Bar(60), Force.FromKilonewtons(6)).Bars, 1e-9);
        Assert.Equal(40 + 4, sensing.OutletPressureOnRelease(Bar(60), Bar(60), Force.FromKilonewtons(5)).Bars, 1e-9);
    }

    [Fact]
    public void Negative_hysteresis_and_lag_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Proportioning with { Hysteresis = Bar(-1) });
        Assert.Throws<ArgumentOutOfRangeException>(() => new LoadSensingValve
        {
            KneeAtReference = Bar(30),
            ReferenceLoad = Force.FromKilonewtons(6),
            KneePerKilonewton = Bar(10),
            Slope = 0.5,
            Lag = Duration.FromSeconds(-1),
        });
    }

    [Fact]
    public void The_file_gives_hysteresis_lag_panic_force_and_anti_dive()
    {
        string text = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"))
            .Replace("\"slope\": 0.30,", "\"slope\": 0.30, \"hysteresis\": \"4 bar\",", StringComparison.Ordinal)
            .Replace("\"freePlay\": \"4 mm\",", "\"freePlay\": \"4 mm\", \"emergencyForce\": \"700 N\",", StringComparison.Ordinal)
            .Replace("\"pitchDamping\": 0.3,", "\"pitchDamping\": 0.3, \"antiDive\": 0.2,", StringComparison.Ordinal);
        (VehicleReading? loaded, IReadOnlyList<Problem> problems) = VehicleFile.TryRead(text);
        Assert.Empty(problems);
        Assert.Equal(4, loaded!.Vehicle.Hydraulics.RearProportioningValve!.Hysteresis.Bars, 1e-9);
        Assert.Equal(700, loaded.Vehicle.Control!.Foot.Emergency!.Value.Newtons, 1e-9);
        Assert.Equal(0.2, loaded.Vehicle.Dynamics!.AntiDive);

        int from = text.IndexOf("\"type\": \"proportioning\"", StringComparison.Ordinal);
        int to = text.IndexOf("\"turns\": 6 }", from, StringComparison.Ordinal) + "\"turns\": 6 }".Length;
        (VehicleReading? sensing, IReadOnlyList<Problem> more) = VehicleFile.TryRead(text[..from]
            + "\"type\": \"load-sensing\", \"kneeAtReference\": "
            + "\"30 bar\", \"referenceLoad\": \"6 kN\", \"kneePerKilonewton\": \"8 bar\", \"slope\": 0.3, "
            + "\"lag\": \"80 ms\", \"hysteresis\": \"2 bar\"" + text[to..]);
        Assert.Empty(more);
        var valve = Assert.IsType<LoadSensingValve>(Assert.Single(sensing!.Vehicle.Hydraulics.RearValves));
        Assert.Equal((0.08, 2.0), (Math.Round(valve.Lag.Seconds, 9), Math.Round(valve.Hysteresis.Bars, 9)));
    }
}
