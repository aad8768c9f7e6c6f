namespace BrakeBalance.Vehicles;

/// <summary>Which wheels each of the two circuits of a car serves.</summary>
public enum CircuitLayout
{
    /// <summary>One circuit for the front axle, one for the rear.</summary>
    FrontRear,

    /// <summary>Each circuit serves one front wheel and the rear wheel across from it.</summary>
    Diagonal,

    /// <summary>One circuit for all four wheels.</summary>
    Single,
}
