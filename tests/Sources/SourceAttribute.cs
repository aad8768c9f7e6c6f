namespace BrakeBalance.Tests.Sources;

/// <summary>How the numbers of a source came here.</summary>
public enum Reading
{
    /// <summary>
    /// The text itself was read, whole or in the part cited. Where it prints a formula, a definition or inputs but no answer, the
    /// expected value is
    /// worked by hand from them.
    /// </summary>
    Read,

    /// <summary>Another text that restates, summarises or answers the source was read, not the source.</summary>
    SecondHand,

    /// <summary>Neither was read: the numbers, or what they are compared with, are remembered, and recomputed where they can be.</summary>
    FromMemory,
}

/// <summary>Names the source of a published check; on a method it stands before that of its class.</summary>
/// <remarks>Where a check mixes sources, the least certain one counts.</remarks>
/// <param name="name">Title and section.</param>
/// <param name="reading">How it was read.</param>
[AttributeUsage(AttributeTargets.Class | AttributeTargets.Method)]
public sealed class SourceAttribute(string name, Reading reading) : Attribute
{
    /// <summary>Title and section.</summary>
    public string Name { get; } = name;

    /// <summary>How it was read.</summary>
    public Reading Reading { get; } = reading;
}
