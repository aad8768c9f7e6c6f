namespace BrakeBalance.Assist;

/// <summary>One application of the brakes out of stored energy, with the engine stopped.</summary>
/// <param name="Number">Which application after the engine stopped; 1 is the first.</param>
/// <param name="WorkingPressure">
/// Pressure difference that works on the booster's piston or diaphragm at the end of this application's stroke, where it is least.
/// </param>
/// <param name="MaximumAssist">
/// Most that the booster can add to the driver's force at the end of this application's stroke, its return spring not yet taken off.
/// </param>
/// <param name="ShareOfFirst">
/// <see cref="MaximumAssist"/> over that of the first application [–]; 0 to 1, zero when the first has none either.
/// </param>
/// <param name="Assist">The unit as it stands at the end of this application's stroke.</param>
public sealed record ReserveApplication(int Number, Pressure WorkingPressure, Force MaximumAssist, double ShareOfFirst, BrakeAssist Assist);
