using BrakeBalance.Stops;
using BrakeBalance.Tests.Stops;
using BrakeBalance.Tyres;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Imbalance across an axle: inspection manual for cars of the United Kingdom, 1.2.1 (read): (higher − lower)/higher; fail when
/// one side is below 70 % of the other.</summary>
[Source("MOT inspection manual, cars, 1.2.1", Reading.Read)]
public class InspectionImbalance
{
    [Theory]
    [InlineData(0.30)]
    [InlineData(-0.30)]
    [InlineData(0.50)]
    public void The_entry_is_the_difference_over_the_higher_side(double imbalance)
    {
        SlipCurve tyre = PublishedSlipCurves.DryAsphalt.ScaledToPeak(0.9, Force.FromKilonewtons(4));
        BrakedCar car = Cars.Coupe(tyre, 5000, 0);
        car = car with { Axles = new(car.Axles.Front with { BrakeImbalance = imbalance }, car.Axles.Rear) };
        YawResult stop = YawStop.Run(car, Pressure.FromBars(20), PressureBuildUp.Instant, Speed.FromKilometersPerHour(60),
            new YawDisturbance());
        YawSample at = stop.Trace.First(s => s.TimeSeconds > 0.05);

        // Left and right force back from their sum and their moment ½ t (left − right).
        double sum = -at.LongitudinalForceNewtons.Front;
        double difference = -at.BrakingMomentNewtonMetres / (0.5 * 1.45);
        double right = 0.5 * (sum + difference);
        double left = 0.5 * (sum - difference);
        Assert.Equal(Math.Abs(imbalance), (Math.Max(left, right) - Math.Min(left, right)) / Math.Max(left, right), 0.01);
        Assert.Equal(imbalance > 0, right > left);
        Assert.Equal(5000 / 0.32 * 0.2, sum, 0.02 * sum);
    }

    [Fact]
    public void A_vehicle_file_may_name_it_and_one_without_has_none()
    {
        string text = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"));
        Vehicle even = VehicleFile.TryRead(text).Reading!.Vehicle;
        Vehicle uneven = VehicleFile.TryRead(text.Replace("\"track\": \"1.50 m\",", "\"track\": \"1.50 m\", \"brakeImbalance\": -0.3,",
            StringComparison.Ordinal)).Reading!.Vehicle;
        Assert.Equal((0.0, 0.0), (even.AxleDynamics.Front.BrakeImbalance, even.AxleDynamics.Rear.BrakeImbalance));
        Assert.Equal((-0.3, 0.0), (uneven.AxleDynamics.Front.BrakeImbalance, uneven.AxleDynamics.Rear.BrakeImbalance));
        YawResult Gentle(Vehicle vehicle) =>
            UnevenStop.Of(vehicle, vehicle.LoadCases[0], 0.8, new StopRoad { CrossSlope = Angle.Zero },
            Speed.FromKilometersPerHour(80))[1].Stop;
        Assert.Equal(0, Gentle(even).GreatestBrakingMoment.NewtonMeters, 1e-6);
        Assert.True(Gentle(uneven).GreatestBrakingMoment.NewtonMeters > 500);
        Assert.True(Gentle(uneven).LateralOffset > Gentle(even).LateralOffset);
    }

    [Fact]
    public void An_imbalance_out_of_range_is_named()
    {
        string text = File.ReadAllText(Path.Combine(RepositoryFiles.Root, "data", "vehicles", "coupe-1960s.json"))
            .Replace("\"track\": \"1.50 m\",", "\"track\": \"1.50 m\", \"brakeImbalance\": 1.2,", StringComparison.Ordinal);
        Assert.Contains(VehicleFile.TryRead(text).Problems, problem =>
            problem.ToString().Contains("front.brakeImbalance", StringComparison.Ordinal));
    }
}
