namespace BrakeBalance.Stops;

/// <summary>One stop of a heat cycle.</summary>
public sealed record HeatStop
{
    /// <summary>Number of the stop, from 1.</summary>
    public required int Number { get; init; }

    /// <summary>Time at which it begins.</summary>
    public required Duration Start { get; init; }

    /// <summary>Mean deceleration of the stop.</summary>
    public required Acceleration MeanDeceleration { get; init; }

    /// <summary>Line pressure at the master cylinder at its end, gauge.</summary>
    public required Pressure LinePressure { get; init; }

    /// <summary>Bulk temperature of the ring of each axle at the start.</summary>
    public required PerAxle<Temperature> RingAtStart { get; init; }

    /// <summary>Bulk temperature of the ring of each axle at the end.</summary>
    public required PerAxle<Temperature> RingAtEnd { get; init; }

    /// <summary>Temperature of the fluid at the brakes of each axle at the end.</summary>
    public required PerAxle<Temperature> FluidAtEnd { get; init; }

    /// <summary>Heat of the stop in the brakes of each axle.</summary>
    public required PerAxle<Energy> Heat { get; init; }

    /// <summary>Torque of each axle at the end over its torque at the reference friction [–].</summary>
    public required PerAxle<double> TorqueFactorAtEnd { get; init; }

    /// <summary>The front brakes' share of the heat [–], or null when the brakes took none.</summary>
    public double? FrontShare => (Heat.Front + Heat.Rear).Joules > 0 ? Heat.Front / (Heat.Front + Heat.Rear) : null;
}
