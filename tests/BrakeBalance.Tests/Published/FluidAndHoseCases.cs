using BrakeBalance.Hydraulics;
using BrakeBalance.Tests.Hydraulics;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Compressibility, hoses and pipes; each case names its own source.</summary>
[Source("Second-hand notes on fluid and hoses, each named at its case", Reading.SecondHand)]
public sealed class FluidAndHoseCases
{
    /// <summary>
    /// A. Day, Braking of Road Vehicles, seen as a second-hand summary: 0.0007 /MPa at room temperature, 0.003 /MPa at 200 °C. 60 cm³ at
    /// 10 MPa
    /// recomputed: 0.42 cm³ cold, 1.80 cm³ hot.
    /// </summary>
    [Theory]
    [InlineData(20, 0.42)]
    [InlineData(200, 1.80)]
    public void Sixty_cubic_centimetres_at_10_MPa_shrink(double celsius, double cubicCentimetres)
    {
        var fluid = new BrakeFluid { Temperature = Temperature.FromDegreesCelsius(celsius) };
        Volume loss = fluid.Compression(Volume.FromCubicCentimeters(60), Pressure.FromMegapascals(10));
        Assert.Equal(cubicCentimetres, loss.CubicCentimeters, 0.005);
    }

    /// <summary>The same source: 1.4 GPa and 0.33 GPa as bulk moduli.</summary>
    [Theory]
    [InlineData(20, 1.4, 0.05)]
    [InlineData(200, 0.33, 0.005)]
    public void Bulk_modulus_without_air(double celsius, double gigapascals, double tolerance)
    {
        var fluid = new BrakeFluid { Temperature = Temperature.FromDegreesCelsius(celsius) };
        Assert.Equal(gigapascals, fluid.BulkModulus(Pressure.FromBars(50)).Gigapascals, tolerance);
    }

    /// <summary>
    /// The same source, a finite-element prediction: a 57 mm piston's seal takes up less than 2 mm³ over 50 bar, so it needs no line of
    /// its own.
    /// </summary>
    [Fact]
    public void Seal_uptake_is_lost_beside_the_pads_clearance()
    {
        var caliper = new CircuitVolume
        {
            PistonArea = Area.FromSquareMillimeters(Math.PI / 4 * 57 * 57),
            Clearance = Length.FromMillimeters(0.1),
        };
        Assert.True(caliper.Demand(Pressure.FromBars(50)).Clearance.CubicMillimeters > 100 * 2);
    }

    /// <summary>
    /// SAE J1401 limit as given in a second-hand note (citing US patent 7,748,412): a low-expansion 1/8 in hose takes 0.33 cc/ft at
    /// 1,000 psi,
    /// which the note gives as 1.08 cm³/m and 0.43 cm³ for 0.4 m.
    /// </summary>
    [Theory]
    [InlineData(1.0, 1.08)]
    [InlineData(0.4, 0.43)]
    public void Low_expansion_hose_at_69_bar(double metres, double cubicCentimetres)
    {
        var hose = new BrakeHose { Length = Length.FromMeters(metres), LowExpansion = true };
        Assert.Equal(cubicCentimetres, hose.Expansion(Pressure.FromPoundsForcePerSquareInch(1000)).CubicCentimeters, 0.005);
    }

    /// <summary>The same limit at 1,500 psi: 0.42 cc/ft, recomputed 1.378 cm³/m.</summary>
    [Fact]
    public void Low_expansion_hose_at_103_bar()
    {
        var hose = new BrakeHose { Length = Length.FromMeters(1), LowExpansion = true };
        Assert.Equal(1.378, hose.Expansion(Pressure.FromPoundsForcePerSquareInch(1500)).CubicCentimeters, 0.0005);
    }

    /// <summary>49 CFR 571.106 table I, read: cc/ft by bore, grade and test pressure; the whole table.</summary>
    [Source("49 CFR 571.106 S5.3.2, table I", Reading.Read)]
    [Theory]
    [InlineData(HoseBore.EighthInch, false, 1000, 0.66)]
    [InlineData(HoseBore.EighthInch, true, 1000, 0.33)]
    [InlineData(HoseBore.EighthInch, false, 1500, 0.79)]
    [InlineData(HoseBore.EighthInch, true, 1500, 0.42)]
    [InlineData(HoseBore.EighthInch, false, 2900, 1.21)]
    [InlineData(HoseBore.EighthInch, true, 2900, 0.61)]
    [InlineData(HoseBore.ThreeSixteenthsInch, false, 1000, 0.86)]
    [InlineData(HoseBore.ThreeSixteenthsInch, true, 1000, 0.55)]
    [InlineData(HoseBore.ThreeSixteenthsInch, false, 1500, 1.02)]
    [InlineData(HoseBore.ThreeSixteenthsInch, true, 1500, 0.72)]
    [InlineData(HoseBore.ThreeSixteenthsInch, false, 2900, 1.67)]
    [InlineData(HoseBore.ThreeSixteenthsInch, true, 2900, 0.91)]
    [InlineData(HoseBore.QuarterInch, false, 1000, 1.04)]
    [InlineData(HoseBore.QuarterInch, true, 1000, 0.82)]
    [InlineData(HoseBore.QuarterInch, false, 1500, 1.30)]
    [InlineData(HoseBore.QuarterInch, true, 1500, 1.17)]
    public void Largest_expansion_of_free_hose(HoseBore bore, bool low, double psi, double cubicCentimetresPerFoot)
    {
        var hose = new BrakeHose { Length = Length.FromFeet(1), Bore = bore, LowExpansion = low };
        Assert.Equal(cubicCentimetresPerFoot, hose.Expansion(Pressure.FromPoundsForcePerSquareInch(psi)).CubicCentimeters, 0.0005);
    }

    /// <summary>
    /// A KTH thesis (diva2:818797), seen second-hand: 1/B = 1/B_l + (V_g/V_t)/B_g with B_g = γ p. With one per cent of air at the air's
    /// own pressure and γ = 1.4 the air decides: B_g/(V_g/V_t) = 14.2 MPa (recomputed).
    /// </summary>
    [Fact]
    public void One_per_cent_of_air_makes_unpressed_fluid_a_hundred_times_softer()
    {
        var fluid = new BrakeFluid { TrappedAir = 0.01 };
        double expected = 1 / ((0.0007 / 1e6) + (0.01 / (1.4 * 101_325)));
        Assert.Equal(expected, fluid.BulkModulus(Pressure.Zero, 1.4).Pascals, 1.0);
        Assert.True(expected * 90 < new BrakeFluid().BulkModulus(Pressure.Zero).Pascals);
    }

    /// <summary>
    /// DOT 4 of 1045 kg/m³ (a second-hand note) and 1800 cSt at −40 °C (49 CFR 571.116 S5.1, read): 3 m of 3 mm bore resist with
    /// 2.84·10¹² Pa·s/m³
    /// (the note prints 2.8·10¹²; recomputed 2.838·10¹²).
    /// </summary>
    [Fact]
    public void Three_metres_of_3_mm_pipe_at_minus_40()
    {
        var line = new LaminarLine
        {
            Bore = Length.FromMillimeters(3),
            Length = Length.FromMeters(3),
            Viscosity = DynamicViscosity.FromPascalSeconds(1045 * BrakeFluidGrade.Dot4.GreatestColdViscosity.SquareMetersPerSecond),
        };
        Assert.Equal(2.838, line.PressureDrop(VolumeFlow.FromCubicMetersPerSecond(1)).Pascals / 1e12, 0.0005);
    }

    /// <summary>
    /// OpenStax, College Physics, section 12.4, example 12.8: 0.120 cm³/s through a needle need 1.62·10⁴ Pa above a vein at 1.066·10³
    /// Pa.
    /// </summary>
    [Source("OpenStax, College Physics, section 12.4", Reading.Read)]
    [Fact]
    public void Needle_of_example_12_8()
    {
        var needle = new LaminarLine
        {
            Bore = Length.FromMillimeters(0.300),
            Length = Length.FromCentimeters(2.50),
            Viscosity = DynamicViscosity.FromPascalSeconds(1.00e-3),
        };
        double entrance = needle.PressureDrop(VolumeFlow.FromCubicMetersPerSecond(0.120e-6)).Pascals + 1.066e3;
        Assert.Equal(1.62e4, entrance, 50.0);
    }

    /// <summary>The same section, example 12.7: half the flow at the same pressure needs 0.841 of the radius.</summary>
    [Source("OpenStax, College Physics, section 12.4", Reading.Read)]
    [Fact]
    public void Half_the_flow_needs_0_841_of_the_radius()
    {
        LaminarLine Line(double bore) => new()
        {
            Bore = Length.FromMillimeters(bore),
            Length = Length.FromMeters(1),
            Viscosity = DynamicViscosity.FromPascalSeconds(1e-3),
        };
        double whole = Line(1).PressureDrop(VolumeFlow.FromCubicMetersPerSecond(1e-6)).Pascals;
        double half = Line(0.841).PressureDrop(VolumeFlow.FromCubicMetersPerSecond(0.5e-6)).Pascals;
        Assert.Equal(1, half / whole, 0.003);
    }

    /// <summary>
    /// 49 CFR 571.106 table I, read: the last row begins over 3/16 in or 5 mm, so a 5.2 mm hose is of it and a 5 mm hose is not.
    /// </summary>
    [Source("49 CFR 571.106 S5.3.2, table I", Reading.Read)]
    [Theory]
    [InlineData(3.0, HoseBore.EighthInch)]
    [InlineData(4.7625, HoseBore.ThreeSixteenthsInch)]
    [InlineData(5.0, HoseBore.ThreeSixteenthsInch)]
    [InlineData(5.2, HoseBore.QuarterInch)]
    public void Rows_of_the_table_by_bore(double millimetres, HoseBore row) =>
        Assert.Equal(row, BrakeHose.BoreGroup(Length.FromMillimeters(millimetres)));

    /// <summary>
    /// 49 CFR 571.116 S5.1.1 to S5.1.3 (read): boiling points dry and wet, greatest viscosity at −40 °C in mm²/s; a DOT 5.1 is a DOT 5
    /// without silicone (S5.2.2.1).
    /// </summary>
    [Source("49 CFR 571.116 S5.1.1 to S5.1.3", Reading.Read)]
    [Theory]
    [InlineData("DOT 3", 205, 140, 1500)]
    [InlineData("DOT 4", 230, 155, 1800)]
    [InlineData("DOT 5", 260, 180, 900)]
    [InlineData("dot5.1", 260, 180, 900)]
    public void Boiling_points_and_viscosities(string name, double dry, double wet, double viscosity)
    {
        BrakeFluidGrade grade = BrakeFluidGrade.Named(name)!;
        Assert.Equal(dry, grade.DryBoilingPoint.DegreesCelsius, 9);
        Assert.Equal(wet, grade.WetBoilingPoint.DegreesCelsius, 9);
        Assert.Equal(viscosity, grade.GreatestColdViscosity.Centistokes, 9);
    }
}
