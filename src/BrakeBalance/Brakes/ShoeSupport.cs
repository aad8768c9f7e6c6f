namespace BrakeBalance.Brakes;

/// <summary>How the end of a shoe away from the wheel cylinder is held.</summary>
public enum ShoeSupport
{
    /// <summary>Turns about a fixed pin.</summary>
    Pivoted,

    /// <summary>Rests on a flat abutment along which it may slide to centre itself; friction at the abutment is neglected.</summary>
    Sliding,
}
