namespace BrakeBalance.Measurements;

/// <summary>Which axle was seen to lock first in a test stop.</summary>
public enum FirstLock
{
    /// <summary>No wheel locked.</summary>
    None,

    /// <summary>The front axle locked first, or alone.</summary>
    Front,

    /// <summary>The rear axle locked first, or alone.</summary>
    Rear,

    /// <summary>Both locked and the spotters could not say which came first.</summary>
    Together,
}
