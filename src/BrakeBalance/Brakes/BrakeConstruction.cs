namespace BrakeBalance.Brakes;

/// <summary>What presses on what: pads on a disc, or shoes on a drum.</summary>
public enum BrakeConstruction
{
    /// <summary>Pads of a caliper on a disc.</summary>
    Disc,

    /// <summary>Shoes of a wheel cylinder in a drum.</summary>
    Drum,
}
