namespace BrakeBalance.Brakes;

/// <summary>How the two shoes of a drum brake are pushed and supported, seen in forward rotation.</summary>
/// <remarks>
/// In every arrangement each of two pistons of the wheel-cylinder bore pushes one shoe, and C* is counted on the force of one piston.
/// </remarks>
public enum ShoeArrangement
{
    /// <summary>
    /// One double-ended cylinder, both shoes supported at the other end: one shoe leads, one trails (simplex). C* = C*_leading +
    /// C*_trailing.
    /// </summary>
    LeadingTrailing,

    /// <summary>Two single-ended cylinders, both shoes lead (duplex). C* = 2 C*_leading.</summary>
    TwoLeading,

    /// <summary>A two-leading brake turning backwards, both shoes trail. C* = 2 C*_trailing.</summary>
    TwoTrailing,

    /// <summary>
    /// One double-ended cylinder; the primary shoe drives the secondary through a floating link and the secondary bears on the anchor pin.
    /// </summary>
    DuoServo,
}
