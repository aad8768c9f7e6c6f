using System.Text;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Measurements;

/// <summary>
/// The invented logs that come with the notebooks: written from a car whose truth is known, so that anyone can see whether it is found
/// again.
/// </summary>
public static class InventedLogs
{
    /// <summary>True front friction over the vehicle file's [–].</summary>
    public const double TrueFrontFriction = 0.93;

    /// <summary>True rear friction over the vehicle file's [–].</summary>
    public const double TrueRearFriction = 1.04;

    /// <summary>True height of the centre of gravity over the vehicle file's [–].</summary>
    public const double TrueHeight = 1.03;

    /// <summary>True adhesion of the surface called dry [–].</summary>
    public const double TrueDryAdhesion = 0.91;

    /// <summary>True adhesion of the surface called wet [–].</summary>
    public const double TrueWetAdhesion = 0.46;

    /// <summary>True deceleration of the three stops in the phone's log, in m/s².</summary>
    public static IReadOnlyList<Acceleration> TrueDecelerations { get; } =
        [Acceleration.FromMetersPerSecondSquared(4.6), Acceleration.FromMetersPerSecondSquared(6.8),
            Acceleration.FromMetersPerSecondSquared(7.6)];

    /// <summary>The car as it truly is, when the vehicle file says otherwise.</summary>
    /// <param name="file">The car of the vehicle file.</param>
    public static Vehicle TrueCar(Vehicle file) => file.WithFrictionFactors(TrueFrontFriction, TrueRearFriction) with
    {
        LoadCases = [.. file.LoadCases.Select(l => l with { CentreOfGravityHeight = l.CentreOfGravityHeight * TrueHeight })],
    };

    /// <summary>All logs.</summary>
    /// <param name="file">The car of the vehicle file; it needs an adjustable proportioning valve.</param>
    /// <param name="seed">Seed of the random numbers: the same seed gives the same bytes.</param>
    /// <returns>File name and text of each log.</returns>
    /// <exception cref="ArgumentException">The car has no adjustable proportioning valve.</exception>
    public static IReadOnlyList<(string Name, string Text)> Of(Vehicle file, int seed = 1)
    {
        Refuse.If(file.Hydraulics.RearProportioningValve?.Adjustment is null,
            "The invented logs turn an adjuster, so the car needs a proportioning valve with an adjuster.", nameof(file));

        return [("invented-gauges.csv", Gauges(file, seed)), ("invented-stops.csv", Stops(file, seed)),
            ("invented-phone.csv", Phone(file, seed))];
    }

    private static string Gauges(Vehicle file, int seed)
    {
        var track = new InventedTrack(TrueCar(file), seed) { Outliers = 0.03 };
        var csv = new StringBuilder(
            "# origin: invented. Gauge readings that nobody measured; they belong to no real car.\n# Written by the command 'measure "
                + $"invent' for {file.InText}.\n# Two gauges, the pedal pressed and eased "
                + "slowly, the adjuster turned by whole turns.\nturns;front pressure [bar];rear pressure [bar];phase;note\n");
        foreach (double turns in (double[])[0, 1, 2, 3, 4])
        {
            foreach (GaugePair pair in track.Gauges(turns, Pressure.FromBars(80), 14))
            {
                csv.Append(CultureInfo.InvariantCulture,
                    $"{turns};{pair.Front.Bars:0.0};{pair.Rear.Bars:0.0};{(pair.Phase == PressurePhase.Release ? "release" : "apply")};\n");
            }
        }

        csv.Append("4;55.0;;apply;rear gauge not read\n4;6O.0;46.1;apply;a letter for a nought\n");
        return csv.ToString();
    }

    private static string Stops(Vehicle file, int seed)
    {
        Vehicle car = TrueCar(file);
        var track = new InventedTrack(car, seed + 1);
        SurfaceCondition dry = SurfaceCondition.Typical("dry") with { Adhesion = TrueDryAdhesion },
            wet = SurfaceCondition.Typical("wet") with
            {
                Adhesion = TrueWetAdhesion,
            };
        var csv = new StringBuilder(
            "# origin: invented. Test stops that nobody made; they belong to no real car.\n"
                + $"# Written by the command 'measure invent' for {file.InText}.\n");
        csv.Append(CultureInfo.InvariantCulture,
            $"# The truth they were made from: front friction {TrueFrontFriction * file.Brakes.Front.FrictionCoefficient:0.000}, "
                + $"rear friction {TrueRearFriction * file.Brakes.Rear.FrictionCoefficient:0.000}, "
                + $"height of the centre of gravity {TrueHeight * file.LoadCases[0].CentreOfGravityHeight.Meters:0.000} m, "
                + $"adhesion dry {TrueDryAdhesion:0.00}, wet {TrueWetAdhesion:0.00}.\n");
        csv.Append("stop;speed [km/h];load case;surface;turns;front "
            + "pressure [bar];rear pressure [bar];lock pressure [bar];deceleration [g];locked first;notes\n");
        int number = 0;
        foreach (LoadCase load in (LoadCase[])[car.LoadCases[0], car.LoadCases[^1]])
        {
            foreach ((SurfaceCondition surface, double bars, double speed, double turns, bool notes) in (
                (SurfaceCondition, double, double, double, bool)[])
                [(dry, 15, 40, 0, false), (dry, 28, 50, 0, false), (dry, 40, 50, 1, false), (wet, 14, 40, 0, false), (wet, 45, 40, 0, true),
                    (wet, 45, 40, 1, false), (dry, 95, 50, 0, true), (dry, 95, 50, 1, true), (dry, 95, 50, 1, false),
                    (dry, 55, 50, 0, false)])
            {
                TestStop stop = track.Stop(load, surface, Pressure.FromBars(bars), Speed.FromKilometersPerHour(speed), turns, notes);
                string locked = stop.Locked!.Value.ToString().ToLowerInvariant();
                string atLock = stop.LockPressure is { } p ? p.Bars.ToString("0.0", CultureInfo.InvariantCulture) : "";
                string rate = stop.Deceleration is { } d
                    ? (d.MetersPerSecondSquared / Gravity.StandardMetresPerSecondSquared).ToString("0.000", CultureInfo.InvariantCulture)
                    : "";
                csv.Append(CultureInfo.InvariantCulture,
                    $"{++number};{speed:0};{load.Name};{surface.Name};{turns:0.#};"
                        + $"{stop.FrontPressure!.Value.Bars:0.0};{stop.RearPressure!.Value.Bars:0.0};{atLock};{rate};{locked};\n");
            }
        }

        csv.Append(CultureInfo.InvariantCulture, $"{++number};50;{car.LoadCases[0].Name};dry;1;;;;;;not made: rain\n");
        return csv.ToString();
    }

    private static string Phone(Vehicle file, int seed)
    {
        var track = new InventedTrack(file, seed + 2);
        (Speed, Acceleration)[] stops = [.. TrueDecelerations.Select((a, i) => (Speed.FromKilometersPerHour(45 + 5 * i), a))];
        IReadOnlyList<MotionSample> samples =
            track.Phone(stops, Frequency.FromHertz(25), Angle.FromDegrees(3), Acceleration.FromMetersPerSecondSquared(0.12));
        var csv = new StringBuilder(
            "# origin: invented. Readings of a phone in a mount that nobody drove.\n# Written by the command 'measure invent'. Tilted by "
                + "3 degrees, with a zero error; the truth: three stops of 4.6, 6.8 and 7.6 m/s².\ntime [s];acceleration [m/s2]\n");
        foreach (MotionSample sample in samples)
        {
            csv.Append(CultureInfo.InvariantCulture,
                $"{sample.Time.Seconds:0.00};{sample.Acceleration!.Value.MetersPerSecondSquared:0.00}\n");
        }

        return csv.ToString();
    }
}
