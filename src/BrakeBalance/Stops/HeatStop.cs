namespace BrakeBalance.Stops;

/// <summary>One stop of a heat cycle.</summary>
/// <param name="Number">Number of the stop, from 1.</param>
/// <param name="Start">Time at which it begins.</param>
/// <param name="MeanDeceleration">Mean deceleration of the stop.</param>
/// <param name="LinePressure">Line pressure at the master cylinder at its end, gauge.</param>
/// <param name="RingAtStart">Bulk temperature of the ring of each axle at the start.</param>
/// <param name="RingAtEnd">Bulk temperature of the ring of each axle at the end.</param>
/// <param name="FluidAtEnd">Temperature of the fluid at the brakes of each axle at the end.</param>
/// <param name="Heat">Heat of the stop in the brakes of each axle.</param>
/// <param name="TorqueFactorAtEnd">Torque of each axle at the end over its torque at the reference friction [–].</param>
public sealed record HeatStop(
    int Number, Duration Start, Acceleration MeanDeceleration, Pressure LinePressure, PerAxle<Temperature> RingAtStart,
    PerAxle<Temperature> RingAtEnd, PerAxle<Temperature> FluidAtEnd, PerAxle<Energy> Heat, PerAxle<double> TorqueFactorAtEnd)
{
    /// <summary>The front brakes' share of the heat [–], or null when the brakes took none.</summary>
    public double? FrontShare => (Heat.Front + Heat.Rear).Joules > 0 ? Heat.Front / (Heat.Front + Heat.Rear) : null;
}
