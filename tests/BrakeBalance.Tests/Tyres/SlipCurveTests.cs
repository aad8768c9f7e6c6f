using BrakeBalance.Tyres;
using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using UnitsNet;

namespace BrakeBalance.Tests.Tyres;

public class SlipCurveTests
{
    private static readonly Force Load = Force.FromKilonewtons(3.5);

    [Fact]
    public void Scaling_to_a_peak_keeps_the_peak_slip_and_the_ratio_of_locked_to_peak()
    {
        SlipCurve street = PublishedSlipCurves.DryAsphalt;
        SlipCurve scaled = street.ScaledToPeak(0.9, Load);
        Assert.Equal(0.9, scaled.PeakAdhesion(Load), 12);
        Assert.Equal(street.PeakSlip(Load), scaled.PeakSlip(Load), 12);
        Assert.Equal(street.LockedAdhesion(Load) / street.PeakAdhesion(Load), scaled.LockedAdhesion(Load) / 0.9, 12);
    }

    [Fact]
    public void Load_sensitivity_takes_its_loss_at_twice_the_reference_load()
    {
        SlipCurve curve = PublishedSlipCurves.DryAsphalt with
        {
            LoadSensitivity = new LoadSensitivity { ReferenceLoad = Load, LossPerDoubling = 0.1 },
        };
        Assert.Equal(0.9, curve.PeakAdhesion(2 * Load) / curve.PeakAdhesion(Load), 12);
        Assert.Equal(1, curve.PeakAdhesion(Load) / PublishedSlipCurves.DryAsphalt.PeakAdhesion(Load), 12);
    }

    [Property]
    public Property No_slip_gives_more_than_the_peak() => Prop.ForAll(
        Gen.Choose(0, PublishedSlipCurves.All.Count - 1).Zip(Gen.Choose(0, 1000)).Zip(Gen.Choose(1000, 9000)).ToArbitrary(),
        drawn =>
        {
            SlipCurve curve = PublishedSlipCurves.All[drawn.Item1.Item1];
            Force load = Force.FromNewtons(drawn.Item2);
            double slip = drawn.Item1.Item2 / 1000.0;
            double adhesion = curve.AdhesionCoefficient(slip, load);
            return adhesion >= 0 && adhesion <= curve.PeakAdhesion(load) + 1e-9
                && Math.Abs(curve.AdhesionCoefficient(-slip, load) + adhesion) < 1e-12;
        });

    [Property]
    public Property A_locked_wheel_is_pulled_exactly_against_its_velocity() => Prop.ForAll(
        Gen.Choose(-180, 180).Zip(Gen.Choose(1, 60)).ToArbitrary(),
        drawn =>
        {
            double angle = drawn.Item1 * Math.PI / 180;
            Speed x = Speed.FromMetersPerSecond(drawn.Item2 * Math.Cos(angle));
            Speed y = Speed.FromMetersPerSecond(drawn.Item2 * Math.Sin(angle));
            (Force fx, Force fy) = CombinedSlip.Forces(PublishedSlipCurves.DryAsphalt, 0.4, x, y, Speed.Zero, Load);
            double locked = PublishedSlipCurves.DryAsphalt.LockedAdhesion(Load) * Load.Newtons;
            return Math.Abs(fx.Newtons + locked * Math.Cos(angle)) < 1e-6 && Math.Abs(fy.Newtons + locked * Math.Sin(angle)) < 1e-6;
        });

    [Property]
    public Property Combined_slip_stays_inside_the_friction_circle() => Prop.ForAll(
        Gen.Choose(-60, 60).Zip(Gen.Choose(-60, 60)).Zip(Gen.Choose(-60, 60)).ToArbitrary(),
        drawn =>
        {
            (Force fx, Force fy) = CombinedSlip.Forces(
                PublishedSlipCurves.DryAsphalt, 0.5,
                Speed.FromMetersPerSecond(drawn.Item1.Item1), Speed.FromMetersPerSecond(drawn.Item1.Item2),
                    Speed.FromMetersPerSecond(drawn.Item2), Load);
            return Math.Sqrt(fx.Newtons * fx.Newtons
                + fy.Newtons * fy.Newtons) <= PublishedSlipCurves.DryAsphalt.PeakAdhesion(Load) * Load.Newtons + 1e-6;
        });

    [Fact]
    public void Braking_takes_lateral_force_away()
    {
        Speed forwards = Speed.FromMetersPerSecond(25);
        Speed sideways = Speed.FromMetersPerSecond(1);
        double free = Lateral(25);
        double braked = Lateral(22);
        double locked = Lateral(0);
        Assert.True(free < braked && braked < locked && locked < 0, $"{free} {braked} {locked}");

        double Lateral(double circumferential) => CombinedSlip.Forces(
            PublishedSlipCurves.DryAsphalt, 0.5, forwards, sideways, Speed.FromMetersPerSecond(circumferential), Load).Lateral.Newtons;
    }

    [Fact]
    public void Faults_name_the_value_and_what_is_accepted()
    {
        var error = Assert.Throws<ArgumentOutOfRangeException>(() => PublishedSlipCurves.DryAsphalt with { C2 = -1 });
        Assert.Equal("C2", error.ParamName);
        Assert.Contains("greater than zero", error.Message);
        Assert.Throws<ArgumentOutOfRangeException>(() => PublishedSlipCurves.DryAsphalt.AdhesionCoefficient(1.5, Load));
        Assert.Throws<ArgumentException>(() => PublishedSlipCurves.PassengerCarTyre with { Coefficients = [1, 2, 3] });
    }
}
