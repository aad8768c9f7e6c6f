using UnitsNet;

namespace BrakeBalance.Hydraulics;

/// <summary>Hold-off (metering) valve in the front line: keeps the front discs waiting until the rear shoes touch.</summary>
/// <remarks>
/// <para>p₂ = 0 up to the opening pressure p_o; then p₂ rises in a straight line to meet p₁ at the blend pressure p_b; p₂ = p₁ above.</para>
/// <para>Assumes quasi-static application. Source: common practice (opening at about 5 to 9 bar).</para>
/// </remarks>
public sealed record HoldOffValve : PressureValve
{
    private readonly double _openingPascals;
    private readonly double _blendPascals;

    /// <summary>Inlet line pressure at which the valve begins to open, gauge; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required Pressure OpeningPressure
    {
        get;
        init
        {
            field = Require.NotNegative(value);
            _openingPascals = value.Pascals;
        }
    }

    /// <summary>Inlet line pressure from which the outlet equals the inlet, gauge; above <see cref="OpeningPressure"/>.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public required Pressure BlendPressure
    {
        get;
        init
        {
            field = Require.Positive(value);
            _blendPascals = value.Pascals;
        }
    }

    /// <inheritdoc/>
    public override double OutletPascals(double inletPascals, double rearAxleLoadNewtons) =>
        inletPascals <= _openingPascals ? 0
        : inletPascals >= _blendPascals ? inletPascals
        : _blendPascals * (inletPascals - _openingPascals) / (_blendPascals - _openingPascals);

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The blend pressure is not above the opening pressure.</exception>
    internal override IEnumerable<double> KinkPascals() => _blendPascals > _openingPascals
        ? [_openingPascals, _blendPascals]
        : throw new ArgumentException(FormattableString.Invariant(
            $"The blend pressure of a hold-off valve must be above its opening pressure: opening {OpeningPressure.Bars:0.##} bar, blend {BlendPressure.Bars:0.##} bar."));
}
