using System.Globalization;
using System.Text;

namespace BrakeBalance.Tests.Measurements;

/// <summary>What a log is written by.</summary>
public enum SimulatedLogger
{
    Satellite,
    SatelliteAndPressure,
    SatelliteAndSwitch,
    Diagnostics,
    Wheels,
    PhoneThreeAxes,
    PhoneOneAxis,
    Positions,
    SlowSatellite,
}

/// <summary>A drive with three stops whose truth is known, as one of several loggers with the faults of real ones would write it.</summary>
internal sealed class SimulatedLog
{
    private const double G = 9.80665, Fine = 0.001;
    private readonly Random _random;
    private readonly List<double> _v = [], _a = [], _level = [];

    public SimulatedLog(SimulatedLogger logger, int seed)
    {
        _random = new Random(unchecked(seed * 7919 + (int)logger * 104_729));
        for (int i = 0; i < 3; i++)
        {
            Drive();
        }

        Text = logger switch
        {
            SimulatedLogger.PhoneThreeAxes or SimulatedLogger.PhoneOneAxis => Phone(logger == SimulatedLogger.PhoneThreeAxes),
            SimulatedLogger.Positions => Places(),
            _ => Speeds(logger),
        };
    }

    public string Text { get; }

    /// <summary>
    /// When each stop began (seconds), its speed (m/s), distance from the change of slope and from the pedal (m), and mean fully developed
    /// deceleration (m/s²).
    /// </summary>
    public List<(double Start, double Initial, double Distance, double FromPedal, double Deceleration)> Truth { get; } = [];

    private double Between(double low, double high) => low + (high - low) * _random.NextDouble();

    private double Normal() => Math.Sqrt(-2 * Math.Log(1 - _random.NextDouble())) * Math.Cos(2 * Math.PI * _random.NextDouble());

    // Cruise, lifted throttle in gear, the pedal, a plateau that drifts, the driver easing off at the end, standing, driving off.
    private void Drive()
    {
        double top = Between(16, 36), v = _v.Count == 0 ? top : 0, plateau = Between(3.5, 9.5), rise = Between(0.15, 0.6),
            drift = Between(-0.05, 0.05) * plateau;
        double coast = Between(0.3, 1.2), coasting = Between(0.4, 2.5), ease = _random.Next(2) * Between(0.2, 0.45);
        bool smooth = _random.Next(2) == 0;
        int standing = _v.Count;
        void For(double seconds, Func<double, double> a)
        {
            for (double t = 0; t < seconds; t += Fine)
            {
                Add(a(t));
            }
        }

        void Add(double a, double level = 0)
        {
            _level.Add(level);
            v = Math.Max(0, v + a * Fine);
            _v.Add(v);
            _a.Add(a);
        }

        while (v < top)
        {
            Add(2.5 * Math.Min(1, (_v.Count - standing + 1) * Fine / 0.4) * (top - v > 3 ? 1 : 0.3));
        }

        For(3, _ => 0);
        For(coasting, _ => -coast);
        double start = _v.Count * Fine, initial = v;
        double distance = 0, toChange = 0, s8 = double.NaN, s1 = double.NaN;
        for (double t = 0; v > 0; t += Fine)
        {
            double part = Math.Min(1, t / rise), level = smooth ? part * part * (3 - 2 * part) : part;
            double a = coast + (plateau + drift * t - coast) * level;
            Add(-(v < 2 ? a * (1 - ease * (2 - v) / 2) : a), level);
            distance += v * Fine;
            toChange = t <= rise / 2 ? distance : toChange;
            s8 = double.IsNaN(s8) && v <= 0.8 * initial ? distance : s8;
            s1 = double.IsNaN(s1) && v <= 0.1 * initial ? distance : s1;
        }

        Truth.Add((start, initial, distance - toChange, distance, (0.64 - 0.01) * initial * initial / (2 * (s1 - s8))));
        For(3.5, _ => 0);
    }

    private double At(List<double> of, double time) => of[Math.Clamp((int)(time / Fine), 0, of.Count - 1)];

    // Times of the samples: a clock that jitters, now and then a gap.
    private List<double> Clock(double rate)
    {
        double gapAt = _random.Next(20) == 0 ? Between(0, _v.Count * Fine) : -10, gap = Between(0.3, 0.7), jitter = Between(0, 0.2) / rate;
        List<double> times = [];
        for (double t = 0.3; t < _v.Count * Fine - 0.2; t += 1 / rate)
        {
            double at = t + jitter * (2 * _random.NextDouble() - 1);
            if (at < gapAt || at > gapAt + gap)
            {
                times.Add(at);
            }
        }

        return times;
    }

    private static string N(double value, string form) => value.ToString(form, CultureInfo.InvariantCulture);

    private string Speeds(SimulatedLogger logger)
    {
        bool satellite = logger is SimulatedLogger.Satellite or SimulatedLogger.SatelliteAndPressure or SimulatedLogger.SatelliteAndSwitch;
        double rate = logger switch
        {
            SimulatedLogger.Diagnostics => Between(4, 10),
            SimulatedLogger.Wheels => Between(50, 100),
            SimulatedLogger.SlowSatellite => Between(1, 2),
            _ => _random.Next(3) switch { 0 => 5, 1 => 10, _ => Between(10, 25) },
        };
        double slip = Between(0.0012, 0.0028), late = logger == SimulatedLogger.Wheels ? 0 : Between(0.2, 1), noise = logger switch
        {
            SimulatedLogger.Diagnostics => 0.02,
            SimulatedLogger.Wheels => 0.06,
            _ => Between(0.02, 0.1),
        };
        bool floor = _random.Next(2) == 0;
        var text = new StringBuilder(logger switch
        {
            SimulatedLogger.Diagnostics => "Elapsed (ms),Vehicle speed (km/h)\n",
            SimulatedLogger.Wheels => "time_s;wheel FL [km/h];wheel FR [km/h];wheel RL [km/h];wheel RR [km/h]\n",
            SimulatedLogger.SatelliteAndPressure => "Zeit [s];Sat Geschwindigkeit [km/h];Bremsdruck vorn [bar]\n",
            SimulatedLogger.SatelliteAndSwitch => "t (s),GPS speed (m/s),brake light\n",
            _ => "time [s]\tGPS speed [mph]\n",
        });
        foreach (double t in Clock(rate))
        {
            double v = At(_v, t - late) + noise * Normal();
            text.Append(logger switch
            {
                SimulatedLogger.Diagnostics =>
                    $"{N(1000 * t, "0")},{N(Math.Max(0, floor ? Math.Floor(v * 3.6 + 0.02) : Math.Round(v * 3.6)), "0")}\n",
                SimulatedLogger.Wheels => $"{N(t, "0.000")};{string.Join(';', Enumerable.Range(0, 4).Select(i =>
                    N(3.6 * Math.Max(0, At(_v, t) * (1 + At(_a, t) * (i < 2 ? 1.5 : 1) * slip) + noise * Normal()), "0.00")))}\n",
                SimulatedLogger.SatelliteAndPressure =>
                    $"{N(t, "0.000").Replace('.', ',')};{N(3.6 * v, "0.00").Replace('.', ',')};"
                        + $"{N(60 * At(_level, t) + 0.2 * Normal(), "0.0").Replace('.', ',')}\n",
                SimulatedLogger.SatelliteAndSwitch =>
                    $"{N(t, "0.000")},{N(v, "0.00")},"
                        + $"{(Truth.Any(s => t > s.Start - 0.02 && t < s.Start + 1) || At(_level, t) > 0 ? 1 : 0)}\n",
                _ => $"{N(t, "0.000")}\t{N(v / 0.44704, "0.00")}\n",
            });
        }

        return text.ToString();
    }

    private string Places()
    {
        double rate = Between(5, 10), noise = Between(0.005, 0.02), s = 0;
        double[] way = [.. _v.Select(v => s += v * Fine)];
        var text = new StringBuilder("clock;lat;lon\n");
        foreach (double t in Clock(rate))
        {
            double north = (way[Math.Clamp((int)(t / Fine), 0, way.Length - 1)] + noise * Normal()) / 6_371_000 * 180 / Math.PI;
            text.Append(CultureInfo.InvariantCulture,
                $"{TimeSpan.FromHours(13.5) + TimeSpan.FromSeconds(Math.Round(t, 3)):hh\\:mm\\:ss\\.fff};");
            text.Append(CultureInfo.InvariantCulture, $"{48 + north:0.00000000};{9.123:0.00000000}\n");
        }

        return text.ToString();
    }

    private string Phone(bool three)
    {
        double rate = Between(25, 100), noise = Between(0.1, 0.35), tilt = Between(-20, 20) * Math.PI / 180, turn = Between(0, 2 * Math.PI);
        double roll = Between(-20, 20) * Math.PI / 180, slope = Between(-0.02, 0.02) * G;
        (double At, double Size)[] bumps = [.. Enumerable.Range(0, 30).Select(_ => (Between(0, _v.Count * Fine), Between(-3, 3)))];
        var text = new StringBuilder(three ? "time [s],acc X,acc Y,acc Z\n" : "timestamp (ms);acceleration (g)\n");
        int sign = three || _random.Next(2) == 0 ? 1 : -1;
        foreach (double t in Clock(rate))
        {
            double along = At(_a, t) * (At(_v, t) > 0 ? 1 : 0) + slope + noise * Normal();
            double bump = At(_v, t) > 0 ? bumps.Where(b => t > b.At && t < b.At + 0.06).Sum(b => b.Size) : 0;
            double up = G + bump + noise * Normal(), across = noise * Normal();
            (double x, double z) = (Math.Cos(tilt) * along + Math.Sin(tilt) * up, -Math.Sin(tilt) * along + Math.Cos(tilt) * up);
            (double y, double z2) = (Math.Cos(roll) * across + Math.Sin(roll) * z, -Math.Sin(roll) * across + Math.Cos(roll) * z);
            (double xx, double yy) = (Math.Cos(turn) * x - Math.Sin(turn) * y, Math.Sin(turn) * x + Math.Cos(turn) * y);
            text.Append(three ? $"{N(t, "0.000")},{N(xx, "0.000")},{N(yy, "0.000")},{N(z2, "0.000")}\n"
                : $"{N(t * 1000, "0")};{N(sign * x / G, "0.0000").Replace('.', ',')}\n");
        }

        return text.ToString();
    }
}
