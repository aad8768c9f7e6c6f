using BrakeBalance.Assist;
using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Worked examples of sizing: bore against pressure, pedal ratio, pistons, booster; each names its own source.</summary>
[Source("Worked examples of sizing", Reading.Read)]
public sealed class SizingExamples
{
    private static Pedal Plain(double ratio) => new() { Lever = new FixedRatioLever { Ratio = ratio }, Efficiency = 1 };

    private static TandemMasterCylinder Lossless(Length bore) =>
        new() { Bore = bore, Stroke = Length.FromMillimeters(35), ReturnSpringForce = Force.Zero };

    /// <summary>
    /// A trade page on master cylinders (hotrodheaven.com, brakes4, read): 100 lbf on the pedal at 6 : 1, pressure by bore. The page
    /// rounds areas first (13/16 in: 600 / 0.518), so the tolerance is one unit of its last digit.
    /// </summary>
    [Theory]
    [InlineData(0.75, 1359)]
    [InlineData(0.8125, 1158)]
    [InlineData(0.875, 998)]
    [InlineData(0.9375, 870)]
    [InlineData(1, 764)]
    [InlineData(1.125, 603)]
    public void A_hundred_pounds_at_6_to_1_by_bore(double inches, double psi)
    {
        Force rod = Plain(6).InputRodForce(Force.FromPoundsForce(100));
        Assert.Equal(psi, Lossless(Length.FromInches(inches)).OutletPressures(rod).Front.PoundsForcePerSquareInch, 1.0);

        // The other way: the bore that this pressure asks for, as exactly as the page's pressure.
        double area = rod.PoundsForce / psi;
        Assert.Equal(inches, Math.Sqrt(4 * area / Math.PI), inches / (2 * psi));
    }

    /// <summary>CORD, brake work example 21 (cordonline.net, b_21, read with its solutions): 75 lb on 1 in², and 125 lb.</summary>
    [Theory]
    [InlineData(75, 75, 0.5, 37.5)]
    [InlineData(125, 125, 7, 875)]
    [InlineData(125, 125, 0.75, 93.75)]
    public void Pounds_on_one_square_inch_by_output_piston(double input, double psi, double outputSquareInches, double output)
    {
        static Length Bore(double squareInches) => Length.FromInches(Math.Sqrt(4 * squareInches / Math.PI));
        Pressure pressure = Lossless(Bore(1)).OutletPressures(Force.FromPoundsForce(input)).Front;
        Assert.Equal(psi, pressure.PoundsForcePerSquareInch, 1e-9 * psi);
        Assert.Equal(output, (pressure * PistonSet.OneSide(Bore(outputSquareInches)).Area).PoundsForce, 1e-9 * output);
    }

    /// <summary>
    /// OpenStax, College Physics (AP edition page 459; University Physics, section 14.3), the example on hydraulic brakes, read: 100 N on
    /// the pedal put 500 N on a master cylinder of 0.500 cm; each wheel cylinder of 2.50 cm then pushes with 1.25·10⁴ N.
    /// </summary>
    [Fact]
    public void A_lever_of_five_and_wheel_cylinders_of_five_times_the_bore()
    {
        Force master = Plain(5).InputRodForce(Force.FromNewtons(100));
        Assert.Equal(500, master.Newtons, 1e-9);
        double gain = PistonSet.OneSide(Length.FromCentimeters(2.50)).Area / PistonSet.OneSide(Length.FromCentimeters(0.500)).Area;
        Assert.Equal(1.25e4, master.Newtons * gain, 50.0);
    }

    /// <summary>
    /// OpenStax, College Physics, chapter 11, exercise 24, by its published solution (collegephysicsanswers.com, read): those 500 N on
    /// 0.500 cm are 2.5·10⁷ Pa.
    /// </summary>
    [Fact]
    public void Five_hundred_newtons_on_half_a_centimetre() =>
        Assert.Equal(2.5e7, (Force.FromNewtons(500) / PistonSet.OneSide(Length.FromCentimeters(0.500)).Area).Pascals, 0.05e7);

    /// <summary>
    /// TM 1-1500-204-23-2, paragraph on mechanical advantage, figure 2-5 (US Army manual, read): to raise 800 lb with 40 lb on a piston
    /// of 4 in², the large piston has to have 80 in², and 10 in of its travel take 200 in of the small one.
    /// </summary>
    [Fact]
    public void Eight_hundred_pounds_from_forty_need_twenty_times_the_area_and_the_travel()
    {
        static PistonSet Of(double squareInches) => PistonSet.OneSide(Length.FromInches(Math.Sqrt(4 * squareInches / Math.PI)));
        Pressure pressure = Force.FromPoundsForce(40) / Of(4).Area;
        Assert.Equal(800, (pressure * Of(80).Area).PoundsForce, 1e-6);
        Assert.Equal(200, (Of(80).Area * Length.FromInches(10) / Of(4).Area).Inches, 1e-9);
    }

    /// <summary>
    /// TM 5-4220-209-12P, section VII, 8-1 (US Army manual, read): a power cluster of air cylinder and master cylinder has a ratio of
    /// 15 : 1, so that about 100 psi of air give at most 1500 psi. The size of its power piston follows from the bore.
    /// </summary>
    [Theory]
    [InlineData(0.75)]
    [InlineData(0.8125)]
    public void A_power_piston_of_fifteen_times_the_area_gives_1500_psi_from_100(double boreInches)
    {
        var cluster = new HydraulicBooster
        {
            ReliefPressure = Pressure.FromPoundsForcePerSquareInch(100),
            PumpFlow = VolumeFlow.FromLitersPerMinute(10),
            PowerPistonDiameter = Length.FromInches(boreInches * Math.Sqrt(15)),
            BoostRatio = 15,
            CutInForce = Force.Zero,
            JumpIn = Force.Zero,
            ReturnSpringForce = Force.Zero,
        };
        Pressure pressure = Lossless(Length.FromInches(boreInches)).OutletPressures(cluster.MaximumAssist).Front;
        Assert.Equal(1500, pressure.PoundsForcePerSquareInch, 0.5);
    }
}
