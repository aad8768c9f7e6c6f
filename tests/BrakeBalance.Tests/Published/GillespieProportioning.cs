using BrakeBalance.Balance;
using BrakeBalance.Hydraulics;
using BrakeBalance.Vehicles;
using UnitsNet;
using UnitsNet.Units;

namespace BrakeBalance.Tests.Published;

/// <summary>
/// Gillespie, Fundamentals of Vehicle Dynamics, chapter 3, table of a proportioning valve: axle loads 2210 and 1864 lbf, wheelbase 108.5
/// in,
/// CG height 20.5 in, tyre radius 12.11 in, 20 and 14 in·lbf per psi for one brake, knee 290 psi, slope 0.30.
/// Inputs from memory; the outputs are recomputed with them and stand for no printed page.
/// </summary>
[Source("Gillespie, Fundamentals of Vehicle Dynamics, ch. 3", Reading.FromMemory)]
public class GillespieProportioning
{
    private const double NewtonsPerPoundForce = 4.4482216152605;

    private static readonly Vehicle Car = Build();

    [Theory]
    [InlineData(100, 100, 330, 231, 0.138, 0.143, 0.132, 96.6)]
    [InlineData(200, 200, 661, 462, 0.276, 0.273, 0.280, 98.5)]
    [InlineData(300, 293, 991, 677, 0.410, 0.392, 0.437, 93.6)]
    [InlineData(400, 323, 1321, 747, 0.508, 0.508, 0.507, 99.9)]
    [InlineData(500, 353, 1652, 816, 0.606, 0.617, 0.584, 98.2)]
    [InlineData(600, 383, 1982, 886, 0.704, 0.720, 0.670, 97.7)]
    [InlineData(700, 413, 2312, 955, 0.802, 0.818, 0.766, 98.1)]
    public void Row(double psi, double rearPsi, double front, double rear, double rate, double frontUtilisation, double rearUtilisation,
        double efficiencyPercent)
    {
        BalanceModel model = Car.Model();
        BalancePoint at = model.At(Pressure.FromPoundsForcePerSquareInch(psi));
        Assert.Equal(rearPsi, at.LinePressures.Rear.PoundsForcePerSquareInch, 0.5);
        Assert.Equal(front, at.BrakingForces.Front.PoundsForce, 0.5);
        Assert.Equal(rear, at.BrakingForces.Rear.PoundsForce, 0.5);
        Assert.Equal(rate, at.BrakingRate, 0.0005);
        Assert.Equal(frontUtilisation, at.AdhesionUtilisation.Front!.Value, 0.0005);
        Assert.Equal(rearUtilisation, at.AdhesionUtilisation.Rear!.Value, 0.0005);

        // On a road of just that adhesion the axle that uses more is the one that locks, at this pressure.
        LockUp lockUp = model.FirstLockUp(Math.Max(at.AdhesionUtilisation.Front.Value, at.AdhesionUtilisation.Rear.Value))!;
        Assert.Equal(psi, lockUp.At.MasterPressure.PoundsForcePerSquareInch, 1e-3);
        Assert.Equal(efficiencyPercent, 100 * lockUp.Efficiency, 0.05);
    }

    [Fact]
    public void Installed_and_ideal_curve_cross_twice_in_one_table()
    {
        double[] crossings = [.. Car.Model().IdealCrossings().Select(point => point.MasterPressure.PoundsForcePerSquareInch)
            .Where(psi => psi <= 700)];
        Assert.Equal(2, crossings.Length);
        Assert.InRange(crossings[0], 100, 200);
        Assert.InRange(crossings[1], 300, 500);
    }

    [Fact]
    public void Knee_lies_at_290_psi() =>
        Assert.Equal(290, Assert.Single(Car.Model().RearKnees()).MasterPressure.PoundsForcePerSquareInch, 0.5);

    private static Vehicle Build()
    {
        const double inchesPerMetre = 1 / 0.0254;
        double barPerPsi = UnitConverter.Convert(1, PressureUnit.PoundForcePerSquareInch, PressureUnit.Bar);
        double radius = 12.11 / inchesPerMetre;
        double NewtonsPerBar(double inchPoundsPerPsi) => 2 * inchPoundsPerPsi / 12.11 * NewtonsPerPoundForce / barPerPsi;
        Vehicle car = TestCars.With(
            NewtonsPerBar(20), NewtonsPerBar(14), 108.5 / inchesPerMetre, 108.5 * 1864 / 4074 / inchesPerMetre, 20.5 / inchesPerMetre,
                4074 * NewtonsPerPoundForce);
        return (car with
        {
            Tyres = car.Tyres.Select(tyre => tyre with { LoadedRadius = Length.FromMeters(radius) }),
            Brakes = new(TestCars.AxleBrake(NewtonsPerBar(20), radius), TestCars.AxleBrake(NewtonsPerBar(14), radius)),
            Hydraulics = new() { MaximumPressure = Pressure.FromPoundsForcePerSquareInch(1000) },
        }).WithRearValves(new ProportioningValve { Knee = Pressure.FromPoundsForcePerSquareInch(290), Slope = 0.30 });
    }
}
