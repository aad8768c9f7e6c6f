using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Measurements;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Measurements;

/// <summary>One path for every valve: parts that never act change nothing, and a friction beyond a limit is an answer.</summary>
public class OneSettingTests
{
    private static readonly Vehicle Coupe = CarEstimationTests.Coupe;

    private static SettingQuestion Ask(Vehicle vehicle) => new()
    {
        Vehicle = vehicle,
        Draws = 20_000,
        Spread = new ParameterSpread { FrontFriction = 0.04, RearFriction = 0.04, CentreOfGravityHeight = 0.03 },
    };

    private static Vehicle WithRearValve(PressureValve valve) =>
        Coupe with { Hydraulics = Coupe.Hydraulics with { RearValves = [.. Coupe.Hydraulics.RearValves, valve] } };

    public static TheoryData<string, PressureValve> Inert => new()
    {
        { "limiter above the highest pressure", new LimitingValve { Limit = Pressure.FromBars(299) } },
        { "knee above the highest pressure", new ProportioningValve { Knee = Pressure.FromBars(299), Slope = 0.3 } },
        { "slope of one", new ProportioningValve { Knee = Pressure.FromBars(9), Slope = 1 } },
        { "metering valve that opens at nothing", new MeteringValve { OpeningPressure = Pressure.Zero,
            BlendPressure = Pressure.FromBars(9) } },
    };

    [Theory]
    [MemberData(nameof(Inert))]
    public void An_inert_valve_changes_nothing(string what, PressureValve valve)
    {
        SettingAnswer without = RobustSetting.Find(Ask(Coupe)), with = RobustSetting.Find(Ask(WithRearValve(valve)));
        Assert.NotEmpty(what);
        Assert.Equal(without.Recommended!.Knee!.Value.Bars, with.Recommended!.Knee!.Value.Bars, 1e-9);
        Assert.All(without.TradeOff.Zip(with.TradeOff), pair =>
        {
            Assert.Equal(pair.First.RearFirst, pair.Second.RearFirst, 1e-12);
            Assert.Equal(pair.First.MeanEfficiency, pair.Second.MeanEfficiency, 1e-9);
        });
    }

    // Rear friction 0.28 .. 0.48 about 0.38: an even distribution's standard deviation is a half width of 26 % over the root of three.
    [Fact]
    public void A_wide_range_of_friction_has_an_answer_with_a_limiter_too()
    {
        SettingAnswer answer = RobustSetting.Find(Ask(WithRearValve(new LimitingValve { Limit = Pressure.FromBars(60) })) with
        {
            Spread = new ParameterSpread { RearFriction = 0.26 / Math.Sqrt(3) },
            Draws = 100_000,
        });
        Assert.All(answer.TradeOff, point => Assert.InRange(point.MeanEfficiency, 0.01, 1));
    }

    [Fact]
    public void A_draw_in_which_nothing_locks_counts_what_the_highest_pressure_gives()
    {
        Vehicle weak = Coupe with
        {
            LoadCases = [Coupe.LoadCases[0]],
            Hydraulics = Coupe.Hydraulics with
            {
                MaximumPressure = Pressure.FromBars(15),
                RearValves = [.. Coupe.Hydraulics.RearValves, new LimitingValve { Limit = Pressure.FromBars(100) }],
            },
        };
        SettingAnswer answer = RobustSetting.Find(
            Ask(weak) with { Surfaces = [new SurfaceCondition { Name = "dry", Adhesion = 1.2, Spread = 0 }] });
        var model = new BalanceModel(weak, weak.LoadCases[0]);
        Assert.Null(model.FirstLockUp(1.2));
        double used = model.At(Pressure.FromBars(15)).BrakingRate / model.GreatestRate(1.2);
        Assert.Equal(used, answer.Present.MeanEfficiency, 0.02);
    }

    // The case of the trials: at 180 km/h the rear locked first in 14 of 27 combinations at the knee then advised.
    [Fact]
    public void Advice_for_the_rear_engined_car_holds_at_every_speed_in_every_corner()
    {
        Vehicle car = VehicleFile.Load(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "rear-engined-sports-car.json")).Vehicle;
        Vehicle corner = Setting.Of(car).RecommendedVehicle.WithFrictionFactors(0.92, 1.08);
        foreach (double kilometresPerHour in new[] { 0.0, 60, 100, 140, 180, 209 })
        {
            foreach (LoadCase load in car.LoadCases)
            {
                var model = new BalanceModel(corner, load, Speed.FromKilometersPerHour(kilometresPerHour));
                for (double adhesion = 0.2; adhesion <= 1; adhesion += 0.005)
                {
                    bool frontFirst = model.FirstLockUp(adhesion)?.FrontFirstOrTogether ?? true;
                    Assert.True(frontFirst, $"{kilometresPerHour} km/h, {load.Name}, {adhesion}");
                }
            }
        }
    }
}
