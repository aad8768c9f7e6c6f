namespace BrakeBalance.Measurements;

/// <summary>The three kinds of log that can be read.</summary>
public enum LogKind
{
    /// <summary>Front and rear line pressure read together on two gauges, for one or more positions of the valve's knob.</summary>
    GaugePairs,

    /// <summary>One line a test stop: pressures, deceleration, which axle locked first.</summary>
    TestStops,

    /// <summary>A time series of speed or acceleration in which the stops have yet to be found.</summary>
    TimeSeries,
}
