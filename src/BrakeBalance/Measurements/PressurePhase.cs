namespace BrakeBalance.Measurements;

/// <summary>Whether the pedal was going down, coming up or held when a gauge was read.</summary>
public enum PressurePhase
{
    /// <summary>Pressure rising.</summary>
    Apply,

    /// <summary>Pressure falling.</summary>
    Release,

    /// <summary>Pedal held still; successive readings show a leak.</summary>
    Hold,
}
