namespace BrakeBalance.Answers;

/// <summary>The system of units in which figures, tables and readouts show their numbers.</summary>
public enum UnitSystem
{
    /// <summary>Metric display units: bar, kN, N, mm, km/h, °C.</summary>
    Si,

    /// <summary>United States customary display units: psi, lbf, in, mph, °F.</summary>
    Us,
}
