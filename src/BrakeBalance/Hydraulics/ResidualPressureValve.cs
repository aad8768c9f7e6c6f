namespace BrakeBalance.Hydraulics;

/// <summary>Residual pressure valve: keeps a little pressure in the line after the pedal is released.</summary>
/// <remarks>
/// About 10 psi for drums, whose cups it keeps tight; 2 psi for discs, only where the reservoir lies below the calipers (common practice).
/// Ten psi left in a disc circuit makes the pads drag.
/// </remarks>
public sealed record ResidualPressureValve
{
    /// <summary>Pressure held, gauge; above zero, to 2 bar.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero, or above 2 bar.</exception>
    public required Pressure Held { get; init => field = Require.Between(Require.Positive(value), Pressure.Zero, Pressure.FromBars(2)); }
}
