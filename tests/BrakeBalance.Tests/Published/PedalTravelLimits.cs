using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tests.Control;
using BrakeBalance.Vehicles;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Service limits of the pedal's travel, each read on a page of its service manual: pedal height, play, and the clearance to the floor
/// that must be
/// left, at 147 N (15 kgf) for two of the three; the third gives no force. Height less clearance bounds the travel, clearance and play
/// of the invented cars.
/// </summary>
[Source("Service manuals, brake pedal: height, play and clearance to the floor", Reading.Read)]
public sealed class PedalTravelLimits
{
    /// <summary>Service manuals: sports coupe; compact car; small off-road car (no force given there).</summary>
    private static readonly (double HeightMillimetres, double ClearanceMillimetres, double TravelMillimetres, double LeastPlay,
        double MostPlay)[] Manuals =
    [
        (175, 98.6, 76.4, 2, 5),
        (136, 86, 50, 3, 5),
        (204, 105, 99, 3, 8),
    ];

    [Fact]
    public void Height_less_clearance_bounds_the_travel_at_50_to_99_mm() => Assert.All(
        Manuals, manual => Assert.Equal(manual.TravelMillimetres, manual.HeightMillimetres - manual.ClearanceMillimetres, 0.05));

    [Theory]
    [InlineData("coupe-1960s")]
    [InlineData("track-coupe")]
    [InlineData("rear-engined-sports-car")]
    [InlineData("big-cam-saloon")]
    public void The_invented_cars_stay_inside_the_widest_limit_at_147_N(string name)
    {
        Vehicle car = ControlForceTests.Car(name);
        var force = new ControlForce(new BalanceModel(car, car.LoadCases[0]));
        PedalTravel travel = force.TravelAt(force.At(Force.FromNewtons(147)).Balance.MasterPressure)!;
        Assert.True(travel.Reaches);
        Assert.InRange(travel.Pad!.Value.Millimeters, 10, Manuals.Max(manual => manual.TravelMillimetres));
        Assert.InRange(force.Control.Pedal.FreePlay.Millimeters, Manuals.Min(manual => manual.LeastPlay),
            Manuals.Max(manual => manual.MostPlay));
    }

    /// <summary>
    /// The reserve that the warning asks for is on the side of all three: at least 86 mm are left there, under 147 N where a force is
    /// given.
    /// </summary>
    [Fact]
    public void The_wanted_reserve_of_a_firm_push_lies_below_what_manuals_ask_for_under_a_light_one() =>
        Assert.True(PedalTravel.WantedReserve.Millimeters < Manuals.Min(manual => manual.ClearanceMillimetres));
}
