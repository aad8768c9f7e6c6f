using System.Globalization;
using System.Text;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests;

/// <summary>A car of a user's own in a folder of its own: the vehicle file, and logs of an invented day whose truth is known.</summary>
internal sealed class OwnCar : IDisposable
{
    public const double TrueFront = 0.94;
    public const double TrueRear = 1.05;
    public const double TrueHeight = 1.02;

    /// <summary>The vehicle file, before its logs are named.</summary>
    public const string Text = """
        {
          // My car. Weighed in May.
          "name": "Green saloon",
          "wheelbase": "2.62 m", // tape measure
          "loadCases": [
            { "name": "driver only", "mass": "1310 kg", "frontShare": 0.56, "centreOfGravityHeight": "0.53 m" },
            { "name": "laden", "mass": "1640 kg", "frontShare": 0.49, "centreOfGravityHeight": "21.5 in" }
          ],
          "front": {
            "tyre": { "loadedRadius": "300 mm" },
            "brake": { "type": "disc", "pistonDiameters": ["54 mm"], "effectiveRadius": "112 mm", "friction": 0.40 }
          },
          "rear": {
            "tyre": { "loadedRadius": "300 mm" },
            /* new pads */
            "brake": {
              "type": "disc", "pistonDiameters": ["33 mm"], "effectiveRadius": "120 mm",
              "friction": 0.40 // maker's word
            }
          },
          "hydraulics": {
            "rearValves": [
              { "type": "proportioning", "knee": "25 bar", "slope": 0.35, "adjuster": { "kneeBackedOff": "5 bar", "kneePerTurn": "8 bar",
                "turns": 6 } }
            ]
          }
        }
        """;

    public OwnCar() => Directory.CreateDirectory(Folder);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "own-car-" + Guid.NewGuid().ToString("N"));

    public string File => Path.Combine(Folder, "saloon.json");

    public static Vehicle Plain => VehicleFile.Read(Text, "saloon.json").Vehicle;

    public string At(string name) => Path.Combine(Folder, name);

    public string Write(string name, string text)
    {
        System.IO.File.WriteAllText(At(name), text);
        return At(name);
    }

    /// <summary>Writes the vehicle file with a section of the logs named.</summary>
    public OwnCar Named(string? gauges = "gauges.csv", string? stops = "stops.csv", string? series = null)
    {
        string[] entries = [.. new[] { ("gauges", gauges), ("stops", stops), ("series", series) }.Where(log => log.Item2 is not null)
            .Select(log => $"\"{log.Item1}\": \"{log.Item2}\"")];
        string section = entries.Length == 0 ? "" : $"  \"measurements\": {{ {string.Join(", ", entries)} }}, // my own\n";
        Write("saloon.json", Text.Replace("{\n  // My car", "{\n" + section + "  // My car", StringComparison.Ordinal));
        return this;
    }

    /// <summary>Makes both logs, rightly or with a slip, and names them.</summary>
    public static OwnCar Measured(int seed = 3, LogSlip slip = LogSlip.None)
    {
        var own = new OwnCar();
        own.Write("gauges.csv", Gauges(seed, slip));
        own.Write("stops.csv", Stops(seed, slip));
        return own.Named();
    }

    public static string Gauges(int seed, LogSlip slip = LogSlip.None)
    {
        var track = new InventedTrack(True(), seed);
        string unit = slip == LogSlip.BarUnderPsi ? "psi" : "bar";
        var csv = new StringBuilder($"turns;front pressure [{unit}];rear pressure [{unit}];phase\n");
        foreach (double turns in (double[])[0, 2, 4])
        {
            foreach (GaugePair pair in track.Gauges(turns, Pressure.FromBars(80), 14))
            {
                (double front, double rear) = slip == LogSlip.SwappedGauges
                    ? (pair.Rear.Bars, pair.Front.Bars) : (pair.Front.Bars, pair.Rear.Bars);
                csv.Append(CultureInfo.InvariantCulture,
                    $"{turns};{front:0.0};{rear:0.0};{(pair.Phase == PressurePhase.Release ? "release" : "apply")}\n");
            }
        }

        return csv.ToString();
    }

    public static string Stops(int seed, LogSlip slip = LogSlip.None, Vehicle? plain = null)
    {
        Vehicle car = True(plain);
        var track = new InventedTrack(car, seed + 100);
        SurfaceCondition dry = SurfaceCondition.Typical("dry"), wet = SurfaceCondition.Typical("wet");
        string unit = slip == LogSlip.BarUnderPsi ? "psi" : "bar";
        var csv = new StringBuilder(
            $"speed [km/h];load case;surface;turns;front pressure [{unit}];rear pressure [{unit}];lock "
                + $"pressure [{unit}];deceleration [{(slip == LogSlip.GUnderMetres ? "m/s2" : "g")}];locked first\n");
        foreach (LoadCase load in car.LoadCases)
        {
            foreach ((SurfaceCondition surface, double bars, double turns) in ((SurfaceCondition, double, double)[])
                [(dry, 18, 0), (dry, 28, 0), (dry, 36, 2), (dry, 44, 4), (wet, 15, 0), (wet, 60, 0), (wet, 60, 2), (dry, 110, 0),
                    (dry, 110, 2), (dry, 50, 0)])
            {
                TestStop stop = track.Stop(load, surface, Pressure.FromBars(bars), Speed.FromKilometersPerHour(50),
                    plain is null ? turns : null, notesLockPressure: true);
                (double front, double rear) = (stop.FrontPressure!.Value.Bars, stop.RearPressure!.Value.Bars);
                (front, rear) = slip == LogSlip.SwappedGauges ? (rear, front) : (front, rear);
                csv.Append(CultureInfo.InvariantCulture,
                    $"50;{load.Name};{surface.Name};{turns:0.#};{front:0.0};{rear:0.0};{stop.LockPressure?.Bars:0.0};");
                csv.Append(CultureInfo.InvariantCulture,
                    $"{stop.Deceleration?.StandardGravity:0.000};{stop.Locked!.Value.ToString().ToLowerInvariant()}\n");
            }
        }

        return csv.ToString();
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    private static Vehicle True(Vehicle? plain = null)
    {
        Vehicle car = (plain ?? Plain).WithFrictionFactors(TrueFront, TrueRear);
        return car with
        {
            LoadCases = [
            .. car.LoadCases.Select(load => load with { CentreOfGravityHeight = load.CentreOfGravityHeight * TrueHeight })]
        };
    }
}

/// <summary>Ways in which a log is written wrongly.</summary>
public enum LogSlip
{
    /// <summary>Rightly.</summary>
    None,

    /// <summary>The readings are in bar, the header says psi.</summary>
    BarUnderPsi,

    /// <summary>The readings are in g, the header says metres per second squared.</summary>
    GUnderMetres,

    /// <summary>The front gauge is written under rear, the rear gauge under front.</summary>
    SwappedGauges,
}
