namespace BrakeBalance.Hydraulics;

/// <summary>
/// The large bore of a quick-take-up master cylinder: it fills the circuits fast until its valve blows off, then the small bore presses
/// alone.
/// </summary>
/// <remarks>
/// <para>
/// Up to the blow-off pressure p_b the rod's travel dx sends A_L dx, because the large piston pushes its surplus past the cup into the
/// pressing chambers: x = (V_f + V_r)/A_L, F = p A_L. Above it the surplus goes to the reservoir against p_b: dx = dV/A,
/// F = p A + p_b (A_L − A). Force and travel belong together: in both parts F dx is p dV plus what the valve throttles, p_b (A_L − A)
/// dx.
/// </para>
/// <para>
/// With one circuit lost the fast filling is left out, because it is lost with the circuit when that is the first piston's, while the
/// force against the valve stays: both on the safe side.
/// </para>
/// <para>Source: continuity and equilibrium; blow-off at about 70 to 100 psi (from memory).</para>
/// </remarks>
public sealed record QuickTakeUp
{
    /// <summary>Diameter of the large bore; 9 mm to 70 mm; must be above the pressing bore.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 9 mm to 70 mm.</exception>
    public required Length LargeBore
    {
        get;
        init => field = Require.Between(value, MasterCylinder.SmallestBore, Length.FromMillimeters(70));
    }

    /// <summary>
    /// Pressure at which the valve lets the large bore's fluid back to the reservoir, gauge; above zero; 6 bar unless said (from memory).
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public Pressure BlowOffPressure { get; init => field = Require.Positive(value); } = Pressure.FromBars(6);
}
