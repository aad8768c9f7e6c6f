using System.Globalization;
using System.Text.RegularExpressions;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Hydraulics;
using BrakeBalance.Rules;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Publishing;

/// <summary>
/// The findings that stand over figures, held against the cars themselves: 300 random ones and those of all starter files, each worked out
/// here anew.
/// </summary>
public partial class TitleTests
{
    private const int Number = 300;
    private const double Step = 0.01;

    /// <summary>Demo cars with other pads, loads, heights, valves: front first, rear first, both, and none.</summary>
    private static readonly Vehicle[] Random = [.. Enumerable.Range(1, Number).Select(Car)];

    private static Vehicle Car(int seed)
    {
        var random = new Random(seed);
        double Between(double low, double high) => low + (high - low) * random.NextDouble();
        Vehicle car = Cars.Load(Cars.Names[seed % Cars.Names.Count]);
        double height = Between(0.8, 1.25), mass = Between(0.85, 1.2);
        car = car.WithFrictionFactors(Between(0.6, 1.5), Between(0.5, 1.9)) with
        {
            LoadCases = [.. car.LoadCases.Select(load => load with
            {
                Mass = load.Mass * mass,
                CentreOfGravityHeight = load.CentreOfGravityHeight * height,
            })],
        };
        return car.Hydraulics.RearProportioningValve is null ? car
            : random.Next(4) == 0 ? car with { Hydraulics = car.Hydraulics.WithoutRearProportioning() }
            : car.WithRearKnee(Pressure.FromBars(Math.Round(Between(5, 60))), Math.Round(Between(0, 0.9), 2));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Which_axle_locks_first_is_so_at_every_deceleration_named(bool plain)
    {
        HashSet<string> kinds = [];
        Each("brake-forces", plain, (car, figure) => kinds.Add(Order(new BalanceModel(car, car.LoadCases[0]), figure.Title, 1.2)));
        Each("brake-forces-laden", plain, (car, figure) => kinds.Add(Order(new BalanceModel(car, car.LoadCases[^1]), figure.Title, 1.2)));
        Assert.True(kinds.Count >= 4, string.Join(", ", kinds)); // all ways in which such a sentence can end
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Which_axle_needs_more_adhesion_is_so_over_the_whole_range_named(bool plain) => Each("adhesion-utilisation", plain,
        (car, figure) =>
        {
            string title = figure.Title;
            UtilisationPoint[] points = [.. UtilisationCurve.Of(car)[0].Points.Where(p => p.BrakingRate is >= 0.1499 and <= 0.8001)];
            double[] numbers = Numbers(title);
            bool rear = RearAxle().IsMatch(title[(title.IndexOf(": ", StringComparison.Ordinal) + 1)..]);
            (double From, double To)[] ranges = [.. numbers.Chunk(2).Select(pair => (pair[0], pair[1]))];
            Assert.All(points, point => Assert.Equal(
                ranges.Any(range => point.BrakingRate >= range.From - 0.001 && point.BrakingRate <= range.To + 0.001) == rear,
                point.Rear > point.Front));
        });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_share_of_the_rear_pressure_is_that_of_every_point_drawn(bool plain) => Each("line-pressures", plain, (car, figure) =>
    {
        var model = new BalanceModel(car, car.LoadCases[0]);
        LineLayer line = figure.Layers.OfType<LineLayer>().Single(layer => layer.Name is "installed" or "this car");
        BalancePoint[] points = [.. Enumerable.Range(1, 400).Select(i => model.At(model.MaximumPressure * i / 400))
            .Where(p => p.LinePressures.Front.Pascals <= line.X[^1] && p.LinePressures.Rear.Pascals <= line.Y[^1])];
        double number = Numbers(figure.Title)[0];
        if (figure.Title.Contains('%', StringComparison.Ordinal))
        {
            Assert.InRange(100 * line.Y[^1] / line.X[^1], number - 0.51, number + 0.51);
            double[] away = [.. points.Select(p => Math.Abs(p.LinePressures.Rear.Pascals - number / 100 * p.LinePressures.Front.Pascals))];
            Assert.Equal(away.Max() < 0.01 * Math.Max(line.X[^1], line.Y[^1]),
                figure.Title.Contains("all the way", StringComparison.Ordinal));
        }
        else
        {
            BalancePoint[] above = [.. points.Where(p => p.LinePressures.Rear.Bars > number + 1)];
            Assert.All(above.Zip(above.Skip(1)), pair => Assert.True(pair.Second.LinePressures.Rear - pair.First.LinePressures.Rear
                < pair.Second.LinePressures.Front - pair.First.LinePressures.Front, figure.Title));
        }
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_least_efficiency_is_that_of_the_surfaces_shown(bool plain) => Each("braking-efficiency", plain, (car, figure) =>
    {
        string title = figure.Title;
        var model = new BalanceModel(car, car.LoadCases[0]);
        double[] efficiencies = [.. Enumerable.Range(0, 111).Select(i => model.FirstLockUp(0.1 + 0.01 * i)?.Efficiency).OfType<double>()];
        Assert.InRange(Numbers(title)[0], 100 * efficiencies.Min() - 0.51, 100 * efficiencies.Min() + 0.51);
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void What_a_load_changes_is_so_on_the_surface_named(bool plain) => Each("load-cases", plain, (car, figure) =>
    {
        string title = figure.Title;
        LockUp?[] locks =
            [.. new[] { car.LoadCases[0], car.LoadCases[^1] }.Select(load => new BalanceModel(car, load).FirstLockUp(CarStudy.Dry))];
        Assert.Equal(locks.OfType<LockUp>().Select(one => (one.At.BrakingForces.Front.Newtons, one.At.BrakingForces.Rear.Newtons)),
            figure.Layers.OfType<MarkerLayer>().Where(layer => layer.Name.Contains("lock", StringComparison.Ordinal))
                .Select(mark => (mark.X[0], mark.Y[0])));
        foreach (LockUp? one in locks)
        {
            Assert.True(one is null || !plain || title.Contains(one.At.BrakingRate.ToString("0.00", CultureInfo.InvariantCulture) + " g",
                StringComparison.Ordinal), title);
            Assert.True(one?.First is not { } first
                || title.Contains(first == Axle.Front ? "front" : "rear", StringComparison.Ordinal), title);
        }

        Assert.Equal(locks.Any(one => one?.First == Axle.Rear), title.Contains("rear", StringComparison.Ordinal));
    });

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Foot_and_pedal_do_what_the_titles_of_their_figures_say(bool plain)
    {
        Each("effort", plain, (car, figure) =>
        {
            string title = figure.Title;
            var control = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
            double? newtons = control.AtRate(0.8)?.PedalForce.Newtons;
            double[] numbers = Numbers(title);
            Assert.True(newtons is null ? title.Contains("not", StringComparison.Ordinal)
                : Math.Abs(numbers[^1] - newtons.Value) <= 5.1, title);
            Assert.Equal(control.RunOut()?.Balance.BrakingRate < 0.8, title.StartsWith("The ", StringComparison.Ordinal)
                && title.Contains(';', StringComparison.Ordinal));
        });
        Each("travel", plain, (car, figure) =>
        {
            string title = figure.Title;
            var control = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
            PedalTravel[] travels = [.. new[] { 0.3, 0.5, 0.7 }.Select(rate => control.AtRate(rate)).OfType<ControlForcePoint>()
                .Select(at => control.TravelAt(at.Balance.MasterPressure)).OfType<PedalTravel>()];
            Assert.True(travels.All(travel => travel.LeftToFloor is not null)
                ? Math.Abs(Numbers(title)[plain ? 1 : 0] - travels.Min(travel => travel.LeftToFloor!.Value.Millimeters)) <= 0.51
                : title.Contains("at its end", StringComparison.Ordinal), title);
        });
        Each("failures", plain, (car, figure) =>
        {
            string title = figure.Title;
            FailureOutcome[] all = [.. FailureAnalysis.Of(car, car.LoadCases[0])];
            double worst = all.Max(one => one.Distance?.Whole.Meters ?? 0);
            Assert.True(all[0].Distance is not { } sound || Numbers(title).Any(n => Math.Abs(n - worst) < 0.51)
                && Math.Abs(Numbers(title).Min() - worst / sound.Whole.Meters) < 0.06, title);
        });
    }

    /// <summary>Titles of stops, bends and settings cost a run each, so fewer cars are tried.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Stops_bends_and_settings_are_as_their_titles_say(bool plain)
    {
        Each("stop-speed", plain, (car, figure) => Assert.Contains(
            Numbers(figure.Title), n => Math.Abs(n - Emergency(car).Distance.Meters) < 0.51), 40);
        Each("force-course", plain, (car, figure) =>
        {
            StopResult stop = Emergency(car);
            Assert.Contains(stop.FirstLock switch { Axle.Front => "front", Axle.Rear => "rear", _ => "No " }, figure.Title,
                StringComparison.OrdinalIgnoreCase);
            if (stop.FirstLock is not { } first)
            {
                return;
            }

            // The mark is where the wheels first stand, and the sentence names that instant; a step of the trace is up to 0.02 g.
            StopSample locked = stop.Trace.First(s => s.Slip[first] > 1 - 1e-6);
            MarkerLayer mark = figure.Layers.OfType<MarkerLayer>().First(layer =>
                layer.Name.StartsWith(first == Axle.Front ? "front" : "rear", StringComparison.Ordinal));
            double most = stop.Trace.Max(s => s.BrakingForceNewtons.Front + s.BrakingForceNewtons.Rear);
            Assert.True(Math.Abs(mark.X[0] - locked.BrakingForceNewtons.Front) + Math.Abs(mark.Y[0] - locked.BrakingForceNewtons.Rear)
                < 0.02 * most, $"{figure.Title}: {mark.X[0]:0} {mark.Y[0]:0}");
            double[] numbers = Numbers(figure.Title);
            Assert.InRange(numbers[^1] - (plain ? locked.TimeSeconds : Rate(locked)), -0.02, 0.02);
            if (plain)
            {
                return;
            }

            // Up to the deceleration named, the stop is on the line drawn as installed; where the wheels lock, the axle brakes less.
            LineLayer line = figure.Layers.OfType<LineLayer>().Single(layer => layer.Name == "installed");
            double Off(StopSample s) => line.X.Zip(line.Y).Min(at => double.Hypot(
                at.First - s.BrakingForceNewtons.Front, at.Second - s.BrakingForceNewtons.Rear)) / most;
            StopSample[] until = [.. stop.Trace.TakeWhile(s => Rate(s) < numbers[0] - 0.006)];
            Assert.True(until.Max(Off) < 0.09, $"{car.Name} {figure.Title}: {until.Max(Off)}");
            PerAxle<Force> asInstalled = new BalanceModel(car, car.LoadCases[0]).At(Pressure.FromPascals(locked.LinePressurePascals))
                .BrakingForces;
            Assert.True(asInstalled[first].Newtons > 1.1 * locked.BrakingForceNewtons[first], figure.Title);

            static double Rate(StopSample s) => s.DecelerationMetresPerSecondSquared / 9.80665;
        }, 40);
        Each("bend", plain, (car, figure) =>
        {
            string title = figure.Title;
            BendPoint[] lost = [.. TrailBraking.Map(car, car.LoadCases[0], CarStudy.Dry, Speed.FromKilometersPerHour(100)).Points
                .Where(point => point.Course.FirstAxle is not null)];
            (double From, double To)[] led = title.StartsWith("At ", StringComparison.Ordinal)
                ? [.. Ranges().Matches(title[..title.IndexOf(" g", StringComparison.Ordinal)]).Select(match =>
                    (Number(match.Groups[1]), Number(match.Groups[match.Groups[2].Success ? 2 : 1])))] : [];
            Assert.All(lost, point => Assert.Equal(led.Any(run => point.Course.LateralAcceleration.StandardGravity >= run.From - 0.006
                && point.Course.LateralAcceleration.StandardGravity <= run.To + 0.006), point.RearLetsGo));

            static double Number(Capture text) => double.Parse(text.Value, CultureInfo.InvariantCulture);
        }, 40);
        Each("knee-setting", plain, (car, figure) =>
        {
            string title = figure.Title;
            SettingLimit found = SettingSearch.Limit(car, car.Conditions, car.Hydraulics.RearProportioningValve!.Slope);
            SettingLimit? limit = found.Exists ? found : null;
            Assert.True(limit is null ? title.StartsWith("No ", StringComparison.Ordinal)
                : title.StartsWith("Every ", StringComparison.Ordinal)
                    || Math.Abs(Numbers(title)[0] - limit.Knee!.Value.Bars) < 0.6, title);
        }, 40);
    }

    /// <summary>Two averages that differ because one is of a load and one of all: each says of what it is.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Averages_name_the_loads_and_the_roads_that_they_are_of(bool plain)
    {
        Each("before-after", plain, (car, figure) =>
        {
            var study = new CarStudy(car);
            (double Road, LockUp Before, LockUp After)[] both = [.. Enumerable.Range(1, 12).Select(i => 0.1 * i)
                .Select(k => (k, new BalanceModel(car, car.LoadCases[0]).FirstLockUp(k), study.AtAdvice!.FirstLockUp(k)))
                .Where(one => one.Item2 is not null && one.Item3 is not null).Select(one => (one.k, one.Item2!, one.Item3!))];
            string load = plain ? PlainText.Load(car.LoadCases[0].Name) : car.LoadCases[0].Name;
            Assert.Contains(load, figure.Title, StringComparison.OrdinalIgnoreCase);
            Assert.Contains(FormattableString.Invariant($"{both[0].Road:0.00} to {both[^1].Road:0.00}"), figure.Title,
                StringComparison.Ordinal);
            Assert.All(new[] { both.Average(one => one.Before.Efficiency), both.Average(one => one.After.Efficiency) }, mean =>
                Assert.Contains(Numbers(figure.Title), number => Math.Abs(number - (100 * mean)) < 0.51));
        }, 8);
        Each("setting-efficiency", plain, (car, figure) =>
        {
            string roads = FormattableString.Invariant($"{car.Conditions.LowestAdhesion:0.00} to {car.Conditions.HighestAdhesion:0.00}");
            Assert.True(figure.Title.StartsWith("No", StringComparison.Ordinal)
                || (figure.Title.Contains("all load", StringComparison.OrdinalIgnoreCase)
                    && figure.Title.Contains(roads, StringComparison.Ordinal)), figure.Title);
        }, 8);
    }

    private static StopResult Emergency(Vehicle car)
    {
        var setup = StopSetup.From(car, car.LoadCases[0], CarStudy.Dry);
        return StraightStop.Run(setup.Car, setup.Emergency, setup.BuildUp, Speed.FromKilometersPerHour(100));
    }

    private static string Order(BalanceModel model, string title, double adhesion)
    {
        double top = Math.Min(model.GreatestRate(adhesion), model.At(model.MaximumPressure).BrakingRate);
        string said = title[(title.IndexOf(": ", StringComparison.Ordinal) is var i and >= 0 && title[..i].Length < 25 ? i + 2 : 0)..];
        double[] n = Numbers(said);
        bool rear = RearAxle().IsMatch(said);
        string kind = Digits().Replace(said, "#");
        (double From, double To)[] led = (rear, n.Length, said) switch
        {
            (true, 0, _) => [(0, 9)],
            (true, 1, _) => [(0, n[0])], // up to, or the hardest braking tried
            (false, 1, _) => said.Contains("above", StringComparison.Ordinal) || said.Contains("harder braking", StringComparison.Ordinal)
                ? [(n[0], 9)] : [],
            (false, _, _) => [],
            _ => [.. n.Chunk(2).Select(pair => (pair[0], pair[1]))],
        };
        if (rear && n.Length == 1 && said.Contains("tried", StringComparison.Ordinal))
        {
            led = [(0, 9)];
        }

        for (double k = 0.05; k < 2; k += Step)
        {
            if (model.FirstLockUp(k) is { First: { } first, At.BrakingRate: > 0.11 and var rate } && rate < top - Step
                && rate < model.RearLiftOffRate - Step
                && !led.Any(part => Math.Abs(part.From - rate) < 0.012 || Math.Abs(part.To - rate) < 0.012))
            {
                Assert.True(first == Axle.Rear == led.Any(part => rate > part.From && rate < part.To),
                    string.Create(CultureInfo.InvariantCulture, $"{title}: at {rate:0.000} the {first} locks first"));
            }
        }

        return kind;
    }

    private static void Each(string name, bool plain, Action<Vehicle, Figure> holds, int cars = Number)
    {
        int made = 0;
        Parallel.ForEach(Random.Take(cars).Concat(Cars.Starters), car =>
        {
            if (Shown(name, plain, new CarStudy(car)) is { } shown)
            {
                lock (Random)
                {
                    holds(car, shown);
                    made++;
                }
            }
        });
        Assert.True(made > cars / 4, $"{name}: {made} of {cars}");
    }

    private static double[] Numbers(string title) =>
        [.. Digits().Matches(title).Select(match => double.Parse(match.Value, CultureInfo.InvariantCulture))];

    [GeneratedRegex(@"(?<![A-Za-z\d.])\d+(\.\d+)?")]
    private static partial Regex Digits();

    [GeneratedRegex(@"(\d\.\d+)(?: to (\d\.\d+))?")]
    private static partial Regex Ranges();

    [GeneratedRegex("^ ?[Tt]he rear (axle|wheels)")]
    private static partial Regex RearAxle();
}
