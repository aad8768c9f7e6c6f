using System.Globalization;
using BrakeBalance.Balance;
using BrakeBalance.Charts.Exploring;
using BrakeBalance.Charts.Publishing;
using BrakeBalance.Days;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Tests.Vehicles;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Charts.Tests.Publishing;

/// <summary>
/// Every sentence of every state of the story, taken apart and worked out again: lock-ups by raising the pressure step by step, the curve
/// from weights and heights, the valves from their laws. A sentence that no rule here knows fails.
/// </summary>
public class StoryScreensTests
{
    private static readonly Dictionary<string, Lazy<Vehicle>> Odd = new()
    {
        ["no valve"] = new(() => Car("no valve") with { Hydraulics = new() }),
        ["cannot lock"] = new(() => Car("cannot lock") with
        {
            Hydraulics = Car("").Hydraulics with { MaximumPressure = Pressure.FromBars(12) },
        }),
        ["waits, with discs"] = new(() => Waiting(Car("waits, with discs"), 8, 30)),
        ["waits long"] = new(() => Waiting(Car("waits long"), 25, 60)),
        ["senses load"] = new(() => Car("senses load") with
        {
            Hydraulics = new BrakeHydraulics
            {
                RearValves =
                [
                    new LoadSensingValve
                    {
                        KneeAtReference = Pressure.FromBars(25),
                        ReferenceLoad = Force.FromKilonewtons(5),
                        KneePerKilonewton = Pressure.FromBars(5),
                        Slope = 0.3,
                    },
                ],
            },
        }),
        ["ranges of its class"] = new(() => VehicleFile.Read(
            OrdinaryCar.OfClass(CarClasses.Names[0], valve: true).ToJsonString(), "ordinary.json").Vehicle),
    };

    public static TheoryData<string, UnitSystem> EveryCar
    {
        get
        {
            TheoryData<string, UnitSystem> all = [];
            foreach (string name in Cars.Names.Concat(Odd.Keys).Concat(Enumerable.Range(0, 12).Select(i => $"random {i}"))
                .Concat(Enumerable.Range(0, 8).Select(i => $"ordinary {i}")))
            {
                all.Add(name, UnitSystem.Si);
            }

            foreach (string name in Cars.Names.Append("no valve").Append("waits, with discs"))
            {
                all.Add(name, UnitSystem.Us);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void Every_sentence_is_true_in_every_state(string car, UnitSystem units)
    {
        Vehicle vehicle = Load(car);
        var setting = new Lazy<Setting>(() => Setting.Of(vehicle));
        // A reader's own car may be shown on any screen of a page, so each is asked for each car.
        foreach (string screen in new[] { "stop", "above", "split", "straight", "knee", "metering", "all" })
        {
            Explorable explorable = KneeStory.Of(screen, vehicle, () => setting.Value, units);
            int[] sizes = [.. explorable.Controls.Select(control => control.Settings.Count)];
            int count = sizes.Aggregate(1, (a, b) => a * b), step = count > 200 ? 7 : 1;
            Parallel.For(0, (count + step - 1) / step, index =>
            {
                int rest = index * step;
                int[] at = new int[sizes.Length];
                for (int c = sizes.Length - 1; c >= 0; c--)
                {
                    (rest, at[c]) = Math.DivRem(rest, sizes[c]);
                }

                Frame frame = explorable.At(at);
                var claims = new StoryClaims(vehicle, units, frame);
                try
                {
                    claims.Check(screen, at, explorable, setting);
                }
                catch (Exception e) when (e is not Xunit.Sdk.XunitException)
                {
                    throw new InvalidOperationException($"{car}, {screen}, {explorable.StateText(at)}", e);
                }
                catch (Xunit.Sdk.XunitException e)
                {
                    Assert.Fail($"{car}, {screen}, {explorable.StateText(at)}: {e.Message}");
                }
            });
        }
    }

    [Theory]
    [MemberData(nameof(EveryCar))]
    public void The_best_split_moves_forward_as_the_car_brakes_harder(string car, UnitSystem _)
    {
        var model = new BalanceModel(Load(car), Load(car).LoadCases[0]);
        double[] shares = [.. Enumerable.Range(2, 19).Select(i => i * 0.05).Where(rate => rate < model.RearLiftOffRate)
            .Select(model.IdealForces).Select(forces => forces.Front / (forces.Front + forces.Rear)).Where(double.IsFinite)];
        Assert.True(shares.Length > 5);
        Assert.Equal(shares.Order(), shares);
    }

    private static Vehicle Load(string car) => Odd.TryGetValue(car, out Lazy<Vehicle>? odd) ? odd.Value
        : car.StartsWith("random ", StringComparison.Ordinal) ? RandomCars.Car(new Random(Number(car)), valve: Number(car) % 4 > 0)
        : car.StartsWith("ordinary ", StringComparison.Ordinal)
            ? VehicleFile.Read(OrdinaryCar.Measured(8).ElementAt(Number(car)), "ordinary.json").Vehicle
        : Cars.Load(car);

    private static int Number(string car) => int.Parse(car.Split(' ')[1], CultureInfo.InvariantCulture);

    private static Vehicle Car(string name) => RandomCars.Car(new Random(5)) with { Name = name };

    private static Vehicle Waiting(Vehicle car, double opening, double blend) => car with
    {
        Hydraulics = car.Hydraulics with
        {
            FrontValves =
            [
                new MeteringValve { OpeningPressure = Pressure.FromBars(opening), BlendPressure = Pressure.FromBars(blend) },
            ],
        },
    };
}
