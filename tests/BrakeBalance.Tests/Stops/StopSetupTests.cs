using BrakeBalance.Balance;
using BrakeBalance.Stops;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Stops;

public class StopSetupTests
{
    public static TheoryData<string> Cars => ["coupe-1960s", "track-coupe", "rear-engined-sports-car", "big-cam-saloon"];

    private static string PathOf(string name)
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "Notebooks.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder!, "data", "vehicles", name + ".json");
    }

    private static Vehicle Read(string name) => VehicleFile.Load(PathOf(name)).Vehicle;

    [Theory]
    [MemberData(nameof(Cars))]
    public void Steady_lock_agrees_with_the_balance_at_standstill(string name)
    {
        Vehicle vehicle = Read(name);
        foreach (LoadCase load in vehicle.LoadCases)
        {
            foreach (double adhesion in new[] { 0.2, 0.5, 0.9 })
            {
                LockUp? balance = new BalanceModel(vehicle, load).FirstLockUp(adhesion);
                StopSetup setup = StopSetup.From(vehicle, load, adhesion);
                (Pressure LinePressure, Axle Axle)? steady = LockPressure.Lowest(setup.Car, Speed.Zero);
                Assert.NotNull(balance);
                Assert.NotNull(steady);
                if (balance.First is { } first)
                {
                    Assert.Equal(first, steady.Value.Axle);
                }

                double expected = BalancePressure(vehicle, load, adhesion);
                Assert.Equal(expected, steady.Value.LinePressure.Bars, 0.01 * expected);
            }
        }
    }

    private static double BalancePressure(Vehicle vehicle, LoadCase load, double adhesion)
    {
        Assert.True(new BalanceModel(vehicle, load).TryFirstLockUp(adhesion, out BalanceState state, out _, out _));
        return state.MasterPascals / 1e5;
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_invented_car_stops_on_every_surface_with_its_energy_accounted_for(string name)
    {
        Vehicle vehicle = Read(name);
        foreach (double adhesion in new[] { 0.1, 0.35, 0.7, 1.1 })
        {
            StopSetup setup = StopSetup.From(vehicle, vehicle.LoadCases[^1], adhesion);
            foreach (Driver driver in new Driver[] { setup.Emergency, setup.Antilock, new ThresholdDriver() })
            {
                StopResult stop = StraightStop.Run(setup.Car, driver, setup.BuildUp, Speed.FromKilometersPerHour(120));
                Assert.InRange(stop.Energy.Imbalance, -0.005, 0.005);
            }

            YawResult yaw = YawStop.Run(setup.Car, setup.MaximumPressure, setup.BuildUp, Speed.FromKilometersPerHour(100),
                YawDisturbance.Crown);
            Assert.InRange(yaw.EnergyImbalance, -0.005, 0.005);
        }
    }

    [Theory]
    [MemberData(nameof(Cars))]
    public void Every_invented_car_passes_through_the_fade_cycle(string name)
    {
        Vehicle vehicle = Read(name);
        StopSetup setup = StopSetup.From(vehicle, vehicle.LoadCases[^1], 0.9);
        HeatResult heat = BrakeHeat.Run(
            setup.Car, setup.Heat, HeatCycle.TypeOne(setup.MaximumSpeed), Temperature.FromDegreesCelsius(20), setup.Fluid);
        Assert.Equal(15, heat.Stops.Count);
        Assert.InRange(heat.Imbalance, -0.005, 0.005);
        Assert.InRange(heat.HottestRing.Front.DegreesCelsius, 150, 700);
    }

    [Fact]
    public void Typical_values_that_stand_in_are_named_and_given_ones_are_not()
    {
        Vehicle given = Read("coupe-1960s");
        Assert.Equal(["force of the foot in an emergency stop 500 N (112 lbf)", "front slip curve of the shape \"dry asphalt\"",
            "rear slip curve of the shape \"dry asphalt\"", "front lateral slip stiffness half of the longitudinal",
            "rear lateral slip stiffness half of the longitudinal"],
            StopSetup.From(given, given.LoadCases[0], 0.9).Assumptions.Order().OrderBy(a => a.Contains("lateral")));
        Vehicle bare = given with { Dynamics = null, AxleDynamics = new(new(), new()) };
        IReadOnlyList<string> assumed = StopSetup.From(bare, bare.LoadCases[0], 0.9).Assumptions;
        Assert.Contains(assumed, a => a.StartsWith("front brake of ", StringComparison.Ordinal));
        Assert.Contains("yaw inertia mass times both axle distances", assumed);
        Assert.Contains("maximum speed 160 km/h (99 mph)", assumed);
    }

    [Theory]
    [InlineData("track-coupe", 0)]
    [InlineData("big-cam-saloon", 60)]
    public void Only_a_car_with_assist_is_taken_to_wait_for_it(string name, double milliseconds)
    {
        Vehicle given = Read(name);
        Vehicle silent = given with { Dynamics = given.Dynamics! with { AssistLag = null } };
        StopSetup setup = StopSetup.From(silent, silent.LoadCases[0], 0.9);
        Assert.Equal(milliseconds, setup.BuildUp.AssistLag.Milliseconds, 1e-9);
        Assert.Equal(milliseconds > 0, setup.Assumptions.Contains("assist lag 60 ms"));
    }

    [Fact]
    public void Faults_of_the_new_entries_are_told_together_with_what_is_accepted()
    {
        string text = File.ReadAllText(PathOf("coupe-1960s"))
            .Replace("\"road pad\"", "\"cheese\"", StringComparison.Ordinal)
            .Replace("\"pitchFrequency\": \"1.3 Hz\"", "\"pitchFrequency\": \"1.3\"", StringComparison.Ordinal);
        (_, IReadOnlyList<Problem> early) = VehicleFile.TryRead(text);
        Assert.Contains(early, p => p.Path == "dynamics.pitchFrequency" && p.What.Contains("no unit"));
        (_, IReadOnlyList<Problem> late) = VehicleFile.TryRead(text.Replace("\"1.3\"", "\"1.3 Hz\"", StringComparison.Ordinal));
        Problem material = Assert.Single(late);
        Assert.Equal("front.heat.frictionMaterial", material.Path);
        Assert.Contains("drum lining", material.Accepted);
    }

    [Fact]
    public void A_hot_duo_servo_drum_loses_more_than_its_friction_does()
    {
        Vehicle coupe = Read("coupe-1960s");
        StopSetup setup = StopSetup.From(coupe, coupe.LoadCases[0], 0.9);
        Temperature hot = Temperature.FromDegreesCelsius(300);
        double lining = 0.30 / 0.39;
        Assert.True(setup.Heat.Rear.Fade.FactorAt(hot) < lining * lining, setup.Heat.Rear.Fade.FactorAt(hot).ToString("0.00"));
        Assert.Equal(1, setup.Heat.Rear.Fade.FactorAt(Temperature.FromDegreesCelsius(100)), 0.02);
    }
}
