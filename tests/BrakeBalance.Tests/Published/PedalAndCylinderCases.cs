using BrakeBalance.Assist;
using BrakeBalance.Hydraulics;
using BrakeBalance.Pedals;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Small worked items on lever, booster and cylinder; each names its own source.</summary>
[Source("Worked items on lever, booster and cylinder", Reading.Read)]
public sealed class PedalAndCylinderCases
{
    private static Pedal Plain(double ratio) => new() { Lever = new FixedRatioLever { Ratio = ratio }, Efficiency = 1 };

    private static TandemMasterCylinder Lossless(Length bore) =>
        new() { Bore = bore, Stroke = Length.FromMillimeters(35), ReturnSpringForce = Force.Zero };

    /// <summary>CORD applied-physics exercises, unit 15 (cordonline.net b_15): inputs seen, answers recomputed.</summary>
    [Fact]
    public void Fifty_pounds_on_a_10_by_1_25_in_pedal_push_400_pounds() =>
        Assert.Equal(400, Plain(10 / 1.25).InputRodForce(Force.FromPoundsForce(50)).PoundsForce, 9);

    /// <summary>The same exercises: 400 lbf on a 1 in piston push a 3.25 in piston with 4225 lbf.</summary>
    [Fact]
    public void Four_hundred_pounds_on_1_in_become_4225_pounds_on_3_25_in()
    {
        Pressure pressure = Lossless(Length.FromInches(1)).OutletPressures(Force.FromPoundsForce(400)).Front;
        Assert.Equal(4225, (pressure * Area.FromSquareInches(Math.PI / 4 * 3.25 * 3.25)).PoundsForce, 0.5);
    }

    /// <summary>
    /// An automotive exam item (thecartech.com, exam 11): inputs seen, answers recomputed. 1500 N in, 2500 N out, 500 mm², 1200 mm².
    /// </summary>
    [Fact]
    public void Booster_of_1000_N_gives_5_MPa_and_6000_N_at_the_wheel_cylinder()
    {
        var booster = new VacuumBooster
        {
            Supply = VacuumSupply.StockCamshaft,
            DiaphragmDiameter = Length.FromMillimeters(230),
            BoostRatio = 2500.0 / 1500.0,
            CutInForce = Force.Zero,
        };
        Force output = booster.OutputForce(Force.FromNewtons(1500));
        Assert.Equal(1000, (output - Force.FromNewtons(1500)).Newtons, 6);
        Assert.Equal(1.667, output.Newtons / 1500, 0.0005);
        Pressure pressure = Lossless(Length.FromMillimeters(Math.Sqrt(500 * 4 / Math.PI))).OutletPressures(output).Front;
        Assert.Equal(5.0, pressure.Megapascals, 0.05);
        Assert.Equal(6000, (pressure * Area.FromSquareMillimeters(1200)).Newtons, 0.5);
    }

    /// <summary>A truck magazine's article on drum and disc brakes: 25 lb at 5:1 put 125 lb on the cylinder, at 6:1 150 lb.</summary>
    [Theory]
    [InlineData(5, 125)]
    [InlineData(6, 150)]
    public void Twenty_five_pounds_through_the_pedal(double ratio, double pounds) =>
        Assert.Equal(pounds, Plain(ratio).InputRodForce(Force.FromPoundsForce(25)).PoundsForce, 9);

    /// <summary>Arithmetic on a common bore: 22.22 mm has 3.88 cm²; 100 bar need 3.88 kN.</summary>
    [Source("Common practice", Reading.FromMemory)]
    [Fact]
    public void A_22_22_mm_bore_needs_3_88_kN_for_100_bar()
    {
        TandemMasterCylinder master = Lossless(Length.FromMillimeters(22.22));
        Assert.Equal(3.88, master.PistonAreas.Front.SquareCentimeters, 0.005);
        Assert.Equal(3.88, master.RodForce(Axle.Front, Pressure.FromBars(100)).Kilonewtons, 0.005);
    }

    /// <summary>A magazine letter on a hard pedal after a disc swap: from 1-1/8 in to 7/8 in is a large change; +65 % recomputed.</summary>
    [Fact]
    public void Going_from_1_125_to_0_875_in_raises_the_pressure_by_65_percent()
    {
        Force rod = Force.FromNewtons(1000);
        double ratio = Lossless(Length.FromInches(0.875)).OutletPressures(rod).Front / Lossless(Length.FromInches(1.125))
            .OutletPressures(rod).Front;
        Assert.Equal(1.65, ratio, 0.005);
    }

    /// <summary>
    /// An owners' forum's worked question: 75 lb at 5:1 on a 5/8 in cylinder is 1,221 psi with one cylinder; a balance bar halves what
    /// each sees.
    /// </summary>
    [Fact]
    public void A_balance_bar_halves_what_a_5_8_in_cylinder_sees()
    {
        Force rod = Plain(5).InputRodForce(Force.FromPoundsForce(75));
        Length bore = Length.FromInches(0.625);
        Assert.Equal(1221, Lossless(bore).OutletPressures(rod).Front.PoundsForcePerSquareInch, 2.0);
        var twin = new TwinMasterCylinders
        {
            FrontBore = bore,
            RearBore = bore,
            FrontForceShare = 0.5,
            Stroke = Length.FromMillimeters(28),
            ReturnSpringForce = Force.Zero,
        };
        Assert.Equal(611, twin.OutletPressures(rod).Front.PoundsForcePerSquareInch, 1.0);
    }

    /// <summary>
    /// A service text's rule seen in makers' manuals: a gap of 0 to 0.5 mm (0.020 in) is wanted with about 20 inHg on the booster.
    /// </summary>
    [Fact]
    public void Twenty_thousandths_of_an_inch_are_half_a_millimetre_of_push_rod_gap()
    {
        var fit = new PushRodFit
        {
            PistonDepth = Length.FromInches(0.960),
            RodProjection = Length.FromInches(0.940),
            ReadingError = Length.FromInches(0.001),
            GreatestGap = Length.FromMillimeters(0.6),
        };
        Assert.Equal(0.508, fit.Gap.Millimeters, 0.0005);
        Assert.Equal(PushRodVerdict.Good, fit.Verdict);
    }
}
