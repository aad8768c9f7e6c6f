namespace BrakeBalance.Bench;

/// <summary>What stands at a node of the plumbing.</summary>
public enum PlumbingPart
{
    /// <summary>Reservoir with an outlet and two returns.</summary>
    Reservoir,

    /// <summary>Steering pump fed from a reservoir of its own line.</summary>
    Pump,

    /// <summary>Steering pump with the reservoir built on: no suction line.</summary>
    PumpWithReservoir,

    /// <summary>Pump-fed hydraulic brake booster.</summary>
    Booster,

    /// <summary>Steering box or rack.</summary>
    SteeringGear,

    /// <summary>Oil cooler.</summary>
    Cooler,

    /// <summary>Filter.</summary>
    Filter,

    /// <summary>Tee: a straight run and a branch.</summary>
    Tee,
}
