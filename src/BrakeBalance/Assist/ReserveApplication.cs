using UnitsNet;

namespace BrakeBalance.Assist;

/// <summary>One application of the brakes out of stored energy, with the engine stopped.</summary>
public sealed record ReserveApplication
{
    /// <summary>Which application after the engine stopped; 1 is the first.</summary>
    public required int Number { get; init; }

    /// <summary>Pressure difference that works on the booster's piston or diaphragm in this application.</summary>
    public required Pressure WorkingPressure { get; init; }

    /// <summary>Most that the booster can add to the driver's force in this application, its return spring not yet taken off.</summary>
    public required Force MaximumAssist { get; init; }

    /// <summary><see cref="MaximumAssist"/> over that of the first application [–]; 0 to 1.</summary>
    public required double ShareOfFirst { get; init; }

    /// <summary>The unit as it stands for this application.</summary>
    public required BrakeAssist Assist { get; init; }
}
