using BrakeBalance.Measurements;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// UN R13, mean fully developed deceleration d_m = (v_b² − v_e²) / (25.92 (s_e − s_b)), v_b = 0.8 v₀, v_e = 0.1 v₀.
/// The formula was read in working paper GRRF-56-3 and in Directive 71/320/EEC, Annex II, 1.1.2; the cases are worked by hand.
/// </summary>
[Source("UN R13 in GRRF-56-3; Directive 71/320/EEC Annex II 1.1.2", Reading.Read)]
public class UnR13MeanFullyDevelopedDeceleration
{
    [Fact]
    public void A_constant_deceleration_from_100_km_h_covers_37_80_m_and_comes_back()
    {
        // 6300 / (25.92 · 6.43) = 37.80 m between 80 and 10 km/h.
        double mean = FullyDevelopedDeceleration.Between(Speed.FromKilometersPerHour(80), Speed.FromKilometersPerHour(10),
            Length.FromMeters(37.80)).MetersPerSecondSquared;
        Assert.Equal(6.43, mean, 0.005);
    }

    [Fact]
    public void Five_then_eight_metres_per_second_squared_gives_the_mean_by_distance()
    {
        // By hand, from 100 km/h: 80 to 50 km/h at 5 m/s² takes (22.222² − 13.889²)/10 = 30.093 m, 50 to 10 km/h at 8 m/s²
        // (13.889² − 2.778²)/16 = 11.574 m; together 41.667 m, so d_m = 6300/(25.92 · 41.667) = 5.833 m/s².
        List<MotionSample> samples = [];
        double v = 100 / 3.6;
        for (int i = 0; i < 4000; i++)
        {
            double t = i * 0.005;
            samples.Add(new MotionSample { Time = Duration.FromSeconds(t), Speed = Speed.FromMetersPerSecond(v) });
            for (int k = 0; k < 20 && t >= 2; k++)
            {
                v = Math.Max(0, v - (v > 50 / 3.6 ? 5.0 : 8.0) * 0.00025);
            }
        }

        MeasuredStop stop = StopFinder.Find(samples).Stops.Single();
        Assert.Equal(5.833, stop.Deceleration!.Value.MetersPerSecondSquared, 0.03);
    }
}
