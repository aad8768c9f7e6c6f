namespace BrakeBalance;

/// <summary>The acceleration in which decelerations z are given.</summary>
public static class Gravity
{
    /// <summary>Standard acceleration of free fall in metres per second squared.</summary>
    /// <remarks>Source: ISO 80000-3, exact by convention (3rd CGPM, 1901).</remarks>
    public const double StandardMetresPerSecondSquared = 9.80665;
}
