namespace BrakeBalance.Assist;

/// <summary>One application of the brakes out of stored energy, with the engine stopped.</summary>
public sealed record ReserveApplication
{
    /// <summary>Which application after the engine stopped; 1 is the first.</summary>
    public required int Number { get; init; }

    /// <summary>
    /// Pressure difference that works on the booster's piston or diaphragm at the end of this application's stroke, where it is least.
    /// </summary>
    public required Pressure WorkingPressure { get; init; }

    /// <summary>
    /// Most that the booster can add to the driver's force at the end of this application's stroke, its return spring not yet taken off.
    /// </summary>
    public required Force MaximumAssist { get; init; }

    /// <summary>
    /// <see cref="MaximumAssist"/> over that of the first application [–]; 0 to 1, zero when the first has none either.
    /// </summary>
    public required double ShareOfFirst { get; init; }

    /// <summary>The unit as it stands at the end of this application's stroke.</summary>
    public required BrakeAssist Assist { get; init; }
}
