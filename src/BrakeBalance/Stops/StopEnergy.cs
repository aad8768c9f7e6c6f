namespace BrakeBalance.Stops;

/// <summary>Where the kinetic energy of a stop went.</summary>
/// <param name="Kinetic">Kinetic energy of car and wheels at the start.</param>
/// <param name="Brakes">Heat in the brakes of each axle.</param>
/// <param name="Tyres">Heat between tyre and road of each axle.</param>
/// <param name="Resistances">Work against air, rolling resistance, slope and engine.</param>
public sealed record StopEnergy(Energy Kinetic, PerAxle<Energy> Brakes, PerAxle<Energy> Tyres, Energy Resistances)
{
    /// <summary>Part of the kinetic energy that the sums leave unexplained [–]; a measure of numerical error.</summary>
    public double Imbalance => 1 - (Brakes.Front + Brakes.Rear + Tyres.Front + Tyres.Rear + Resistances).Joules / Kinetic.Joules;
}
