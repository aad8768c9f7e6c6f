using BrakeBalance.Bench;
using UnitsNet;

namespace BrakeBalance.Tests.Published;

/// <summary>Flow in pipes against textbook examples and a reference value; each case names its source.</summary>
[Source("OpenStax, College Physics, section 12.4; tests of the library fluids", Reading.Read)]
public sealed class PipeFlowCases
{
    private static readonly Density Water = Density.FromKilogramsPerCubicMeter(1000);

    private static KinematicViscosity Kinematic(double pascalSeconds, Density density) =>
        KinematicViscosity.FromSquareMetersPerSecond(pascalSeconds / density.KilogramsPerCubicMeter);

    /// <summary>
    /// OpenStax, College Physics, section 12.4, example 12.8 "What Pressure Produces This Flow Rate?": 0.120 cm³/s of saline through a
    /// needle of
    /// radius 0.150 mm and length 2.50 cm, 1.00e-3 Pa s, against 1.066e3 Pa in the vein: 1.62e4 Pa at the entrance, gauge.
    /// </summary>
    [Fact]
    public void Example_12_8_pressure_at_the_entrance_of_a_needle()
    {
        PipeLoss loss = PipeFlow.Loss(
            VolumeFlow.FromCubicMetersPerSecond(1e-6 * 0.120), Length.FromMillimeters(0.300), Length.FromCentimeters(2.50), Water,
                Kinematic(1.00e-3, Water));
        Assert.Equal(FlowRegime.Laminar, loss.Regime);
        Assert.Equal(1.62e4, loss.Friction.Pascals + 1.066e3, 0.005e4);
    }

    /// <summary>
    /// The same section, example 12.7: the flow halves at the same pressure difference when the radius shrinks to 0.841 of what it was.
    /// </summary>
    [Fact]
    public void Example_12_7_half_the_flow_at_the_same_pressure()
    {
        PipeLoss Loss(double flow, double radius) => PipeFlow.Loss(
            VolumeFlow.FromCubicMetersPerSecond(1e-6 * flow), Length.FromMillimeters(2 * radius), Length.FromMeters(1), Water,
                Kinematic(1e-3, Water));
        Assert.Equal(Loss(1, 1).Friction.Pascals, Loss(0.5, 0.841).Friction.Pascals,
            0.0025 * Loss(1, 1).Friction.Pascals); // 0.841 stands for 0.8409: half a digit is 0.24 %
        Assert.Equal(Loss(1, 1).Friction.Pascals, Loss(0.81, 0.95).Friction.Pascals,
            0.0062 * Loss(1, 1).Friction.Pascals); // the text's 0.81, half a digit is 0.62 %
    }

    /// <summary>
    /// Reference value for Colebrook's equation at Re = 1e5 and a relative roughness of 1e-4: 0.018513866077471, as in the tests of the
    /// open-source
    /// Python library <c>fluids</c> (function Colebrook); equation as in D. Clamond, Ind. Eng. Chem. Res. 48 (2009) 3665, eq. (1).
    /// </summary>
    [Fact]
    public void Colebrook_reference_value() => Assert.Equal(0.018513866077471, PipeFlow.FrictionFactor(1e5, 1e-4), 1e-14);

    /// <summary>The same tests: 64/128 in laminar flow.</summary>
    [Fact]
    public void Laminar_friction_factor() => Assert.Equal(0.5, PipeFlow.FrictionFactor(128, 0.01), 1e-15);

    /// <summary>
    /// The same tests: Blasius' law for a smooth wall at Re = 1e4, 0.03164. Blasius and Colebrook differ by up to 3 % where both hold
    /// (textbooks,
    /// from memory), so the comparison is that wide.
    /// </summary>
    [Source("Blasius against Colebrook, textbooks", Reading.FromMemory)]
    [Fact]
    public void Smooth_wall_lies_near_blasius() => Assert.Equal(0.03164, PipeFlow.FrictionFactor(1e4, 0), 0.03 * 0.03164);

    /// <summary>
    /// Recomputed resistance of 3 m of 3 mm bore with DOT 4 fluid of 1045 kg/m³ and 1800 mm²/s: 2.838e12 Pa s/m³ (the second-hand note
    /// whose case it
    /// is prints 2.8e12).
    /// </summary>
    [Source("A note on a pipe with cold fluid", Reading.SecondHand)]
    [Fact]
    public void Brake_line_with_cold_fluid()
    {
        var fluid = Density.FromKilogramsPerCubicMeter(1045);
        var flow = VolumeFlow.FromCubicMetersPerSecond(1e-6 * 1);
        PipeLoss loss = PipeFlow.Loss(flow, Length.FromMillimeters(3), Length.FromMeters(3), fluid,
            KinematicViscosity.FromCentistokes(1800));
        Assert.Equal(2.838e12, loss.Friction.Pascals / flow.CubicMetersPerSecond, 0.0005e12);
    }
}
