namespace BrakeBalance.Vehicles;

/// <summary>An entry given as a range instead of one value.</summary>
/// <param name="Path">Path of the entry in the file.</param>
/// <param name="Low">Lower end as text with its unit, as the file's reader accepts it.</param>
/// <param name="High">Upper end as text with its unit.</param>
public sealed record ValueRange(string Path, string Low, string High)
{
    /// <summary>Whether the range is what is typical of the car class (common practice) and not the file's own.</summary>
    public bool IsTypical { get; init; }

    /// <summary>How the value is found on the car; empty when the file's description does not say.</summary>
    public string HowToMeasure { get; init; } = "";

    /// <summary>What the value is, in words.</summary>
    public string Description { get; init; } = "";

    /// <summary>Half the width of the range over its middle [–].</summary>
    internal double RelativeHalfWidth { get; init; }
}
