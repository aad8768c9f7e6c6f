using System.Text.Json.Nodes;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Charts.Figures;

/// <summary>Stops to play and to explore.</summary>
public static class StopExplorables
{
    /// <summary>An emergency stop second by second: traces and the course on the force picture, all at the same moment.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="load">Its load case.</param>
    /// <param name="adhesion">Adhesion of the surface [–].</param>
    /// <param name="speed">Speed from which it stops.</param>
    /// <param name="pedalForce">Greatest force on the pedal; null for what the file says.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The foot brings no pressure to the brakes.</exception>
    public static Explorable SecondBySecond(
        Vehicle vehicle, LoadCase load, double adhesion, Speed speed, Force? pedalForce = null, UnitSystem? units = null)
    {
        StopSetup setup = Setup(vehicle, load, adhesion, pedalForce);
        StopResult stop = StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, speed);
        return SecondBySecond(new BalanceModel(vehicle, load), stop, adhesion, 61, units)
            .AgainFrom(vehicle, "second-by-second", units ?? Display.Units, Stop(load, adhesion, speed, pedalForce));
    }

    /// <summary>The car seen from above, to play: one lane with each axle locked, and one with none.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="load">Its load case.</param>
    /// <param name="adhesion">Adhesion of the surface [–].</param>
    /// <param name="speed">Speed from which it stops.</param>
    /// <param name="pedalForce">Greatest force on the pedal; null for what the file says.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <exception cref="ArgumentException">The foot brings no pressure to the brakes.</exception>
    public static Explorable FromAbove(
        Vehicle vehicle, LoadCase load, double adhesion, Speed speed, Force? pedalForce = null, UnitSystem? units = null) =>
        FromAbove(YawStop.EachAxleLocked(Setup(vehicle, load, adhesion, pedalForce), speed), vehicle.Wheelbase, 81, units)
            .AgainFrom(vehicle, "from-above", units ?? Display.Units, Stop(load, adhesion, speed, pedalForce));

    private static StopSetup Setup(Vehicle vehicle, LoadCase load, double adhesion, Force? pedalForce) =>
        StopSetup.From(vehicle, load, adhesion, conditions: new StopConditions { PedalForce = pedalForce });

    private static (string, JsonNode?)[] Stop(LoadCase load, double adhesion, Speed speed, Force? pedalForce) =>
        [("load", load.Name), ("adhesion", adhesion), ("speed", speed.MetersPerSecond), ("force", pedalForce?.Newtons)];

    /// <summary>A stop second by second: traces and the course on the force picture, all at the same moment.</summary>
    /// <param name="model">The car in its load case.</param>
    /// <param name="stop">A stop of that car with its trace.</param>
    /// <param name="adhesion">Adhesion of the surface [–].</param>
    /// <param name="moments">How many moments; at least 2.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Explorable SecondBySecond(
        BalanceModel model, StopResult stop, double adhesion, int moments = 25, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        double[] times = Moments(stop.Duration.Seconds, moments);
        return Explorable.Of("second",
            [Control.Clock("time", times, 120, shown) with { Start = FirstMomentAfterLock(stop, times) }], state =>
        {
            double now = times[state["time"]];
            StopSample sample = StopFigures.At(stop, now);
            return new Frame(
                [
                    StopFigures.SpeedOverTime(stop, now, shown, "second-speed"),
                    StopFigures.DecelerationOverTime(stop, now, shown, "second-deceleration"),
                    StopFigures.LoadsOverTime(stop, now, shown, "second-loads"),
                    StopFigures.ForceCourse(model, stop, adhesion, now, shown, "second-course"),
                ],
                [
                    new Readout("Speed", Measure.Speed.Text(sample.SpeedMetresPerSecond, shown)),
                    new Readout("Way", Measure.Distance.Text(sample.DistanceMetres, shown)),
                    new Readout("Deceleration",
                        StopFigures.Number(sample.DecelerationMetresPerSecondSquared / Gravity.StandardMetresPerSecondSquared) + " g"),
                    new Readout("Wheels", Wheels(sample.Wheels)),
                ],
                new Verdict(StopFigures.LockWords(stop), stop.FirstLock == Axle.Rear ? VerdictKind.Caution : VerdictKind.Neutral));
        });
    }

    /// <summary>
    /// The cars seen from above, to play: one lane a case. It opens, and prints, at the moment at which a car stands across the road.
    /// </summary>
    /// <param name="stops">Name and outcome of each case, top lane first; at most four, all with traces.</param>
    /// <param name="wheelbase">Wheelbase of the cars.</param>
    /// <param name="moments">How many moments; at least 2.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Explorable FromAbove(
        IReadOnlyList<(string Name, YawResult Stop)> stops, Length wheelbase, int moments = 41, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        double[] times = Moments(stops.Max(s => s.Stop.Duration.Seconds), moments);
        return Explorable.Of("above",
            [Control.Clock("time", times, 100, shown) with { Start = MostTelling(stops, times) }], state =>
        {
            double now = times[state["time"]];
            return new Frame(
                [StopFigures.PlanView(stops, wheelbase, now, shown, "above-plan")],
                [.. stops.Select(s => new Readout($"{Finding.Capital(s.Name)}: speed, heading", Now(StopFigures.At(s.Stop, now), shown)))]);
        });
    }

    /// <summary>The fade cycle with choices of pad and lining for each axle.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="loadCase">Name of the load case.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The explorable's short name.</param>
    public static Explorable PadsAndHeat(Vehicle vehicle, string loadCase, UnitSystem? units = null, string id = "pads")
    {
        UnitSystem shown = units ?? Display.Units;
        string[] names = ["as in the vehicle file", .. FrictionMaterial.Invented.Select(m => m.Name)];
        int[] held = [3, 5, 7];
        Control[] controls =
        [
            Control.Choice("front", "Front pads", names),
            Control.Choice("rear", "Rear pads or linings", names),
            Control.Choice("hard", "Deceleration of the first stop", held.Select(a => Measure.Deceleration.Text(a, shown))),
        ];
        return Explorable.Of(id, controls, state =>
        {
            Vehicle car = With(With(vehicle, Axle.Front, names[state["front"]]), Axle.Rear, names[state["rear"]]);
            StopSetup setup = StopSetup.From(car, car.LoadCase(loadCase), 0.9);
            double top = Math.Min(120, 0.8 * setup.MaximumSpeed.KilometersPerHour);
            HeatCycle cycle = HeatCycle.Repeated(
                15, Speed.FromKilometersPerHour(top), Speed.FromKilometersPerHour(top / 2),
                    Acceleration.FromMetersPerSecondSquared(held[state["hard"]]),
                Duration.FromSeconds(45), samePressure: true);
            HeatResult heat = BrakeHeat.Run(setup.Car, setup.Heat, cycle, Temperature.FromDegreesCelsius(20), setup.Fluid,
                withTrace: false);
            string share = Measure.Percent.Text(heat.Stops[^1].FrontShare ?? 0, shown);
            return new Frame(
                [HeatFigures.TemperatureByStop(heat, setup.Heat, shown, $"{id}-temperature"),
                    HeatFigures.Drift(heat, shown, $"{id}-drift")],
                [
                    new Readout("Hottest disc or drum", Measure.Temperature.Text(
                        Math.Max(heat.HottestRing.Front.Kelvins, heat.HottestRing.Rear.Kelvins), shown)),
                    new Readout("Left to wet boiling", StopTables.Kelvins(heat.WetBoilingMargin, shown)),
                    new Readout("Last stop over first", Measure.Percent.Text(heat.HotOverCold, shown)),
                    new Readout("Front share, last stop", share),
                ],
                heat.WetBoilingMargin.Kelvins < 0
                    ? new Verdict($"{HeatFigures.Fluid(heat, shown)}: the pedal would go to the floor.", VerdictKind.Caution)
                    : new Verdict("The fluid does not boil in this cycle, nor parked after it."));
        }).AgainFrom(vehicle, "pads", shown, ("load", loadCase));
    }

    private static Vehicle With(Vehicle vehicle, Axle axle, string material)
    {
        if (FrictionMaterial.Invented.FirstOrDefault(m => m.Name == material) is not { } chosen)
        {
            return vehicle;
        }

        // Without data of its own the brake's heat is estimated from its size; only the friction is chosen here.
        AxleDynamics given = vehicle.AxleDynamics[axle];
        AxleDynamics changed = given with
        {
            Heat = (given.Heat ?? BrakeHeatEstimate.Of(vehicle.Brakes[axle])) with
            {
                Friction = chosen.Friction,
                FrictionIsMeasured = false,
            },
        };
        return vehicle with
        {
            AxleDynamics = axle == Axle.Front
            ? vehicle.AxleDynamics with { Front = changed } : vehicle.AxleDynamics with { Rear = changed }
        };
    }

    private static double[] Moments(double seconds, int count) =>
        [.. Enumerable.Range(0, count).Select(i => Math.Round(seconds * i / (count - 1), 3))];

    private static int MostTelling(IReadOnlyList<(string Name, YawResult Stop)> stops, double[] times)
    {
        double moment = stops.Min(s => s.Stop.SquareToRoadAt?.Seconds ?? double.PositiveInfinity);
        int found = Array.FindIndex(times, t => t >= moment);
        return found > 0 && found < times.Length - 1 ? found : times.Length / 2;
    }

    private static int FirstMomentAfterLock(StopResult stop, double[] times)
    {
        double lockTime = stop.FirstLock is { } axle ? stop.Locks[axle]!.Time.Seconds : 0;
        return Math.Max(0, Array.FindIndex(times, t => t > lockTime));
    }

    private static string Wheels(PerAxle<WheelState> wheels) => (wheels.Front, wheels.Rear) switch
    {
        (WheelState.Locked, WheelState.Locked) => "all locked",
        (WheelState.Locked, _) => "front locked",
        (_, WheelState.Locked) => "rear locked",
        (WheelState.Regulated, _) or (_, WheelState.Regulated) => "held at best slip",
        _ => "rolling",
    };

    private static string Now(YawSample now, UnitSystem units) =>
        $"{Measure.Speed.Text(now.SpeedMetresPerSecond, units)}, {StopFigures.Degrees(Angle.FromRadians(now.HeadingRadians))}";
}
