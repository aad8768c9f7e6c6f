namespace BrakeBalance.Stops;

/// <summary>What the wheels of an axle do during a stop.</summary>
public enum WheelState
{
    /// <summary>They turn.</summary>
    Rolling,

    /// <summary>They stand still while the car moves.</summary>
    Locked,

    /// <summary>They are kept at the slip of greatest adhesion.</summary>
    Regulated,
}
