namespace BrakeBalance.Hydraulics;

/// <summary>Metering valve in the front line: keeps the front discs waiting until the rear shoes touch.</summary>
/// <remarks>
/// <para>p₂ = 0 up to the opening pressure p_o; then p₂ rises in a straight line to meet p₁ at the blend pressure p_b; p₂ = p₁
/// above.</para>
/// <para>Assumes quasi-static application. Source: common practice (opening at about 5 to 9 bar).</para>
/// </remarks>
public sealed record MeteringValve : PressureValve
{
    /// <summary>Inlet line pressure at which the valve begins to open, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    [Field("Inlet pressure at which the valve begins to open", Required = true, Low = "0 bar", High = "30 bar", Example = "7 bar",
        HowToMeasure = "Two gauges: inlet pressure at which the outlet begins to rise")]
    [Usual("1 bar", "15 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure OpeningPressure { get; init => field = Require.NotNegative(value); }

    /// <summary>Inlet line pressure from which the outlet equals the inlet, gauge; above <see cref="OpeningPressure"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Inlet pressure from which outlet and inlet are equal; above openingPressure", Required = true, Low = "0.5 bar", High = "60 bar",
        Example = "20 bar", HowToMeasure = "Two gauges: inlet pressure at which they meet")]
    [Usual("5 bar", "50 bar", Above = "bar given for psi", Below = "psi given for bar")]
    public required Pressure BlendPressure { get; init => field = Require.Positive(value); }

    /// <exception cref="ArgumentException">The blend pressure is not above the opening pressure.</exception>
    private protected override ValveLaw Lines
    {
        get
        {
            double opening = OpeningPressure.Pascals, blend = BlendPressure.Pascals, gradient = blend / (blend - opening);
            return blend > opening
                ? new(0, 0, -gradient * opening, gradient, 0)
                : throw new ArgumentException("The blend pressure of a metering valve must be above its opening pressure: "
                    + Invariant.Text($"opening {OpeningPressure.Bars:0.##} bar, blend {BlendPressure.Bars:0.##} bar."));
        }
    }
}
