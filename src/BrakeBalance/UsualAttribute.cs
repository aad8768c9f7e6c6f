namespace BrakeBalance;

/// <summary>Where an entry of an ordinary road or track car lies, and the slip that a value outside most likely is.</summary>
/// <remarks>Source of every range: common practice. Values outside are accepted; <c>check</c> warns of them.</remarks>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class UsualAttribute(string low, string high) : Attribute
{
    /// <summary>Lower end.</summary>
    public string Low { get; } = low;

    /// <summary>Upper end.</summary>
    public string High { get; } = high;

    /// <summary>The likely slip when the value lies below, as a phrase; empty when there is no likely one.</summary>
    public string Below { get; init; } = "";

    /// <summary>The likely slip when the value lies above, as a phrase; empty when there is no likely one.</summary>
    public string Above { get; init; } = "";
}
