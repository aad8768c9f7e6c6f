namespace BrakeBalance.Vehicles.Files;

/// <summary>Describes one entry of a file: the reader, the JSON Schema and the commented starter file are all made from it.</summary>
/// <param name="description">What the entry means, as a sentence without a full stop.</param>
[AttributeUsage(AttributeTargets.Property)]
public sealed class FieldAttribute(string description) : Attribute
{
    /// <summary>What the entry means.</summary>
    public string Description { get; } = description;

    /// <summary>Whether the entry must be there.</summary>
    public bool Required { get; init; }

    /// <summary>Lowest value accepted, with its unit for a quantity; null for none.</summary>
    public string? Low { get; init; }

    /// <summary>Highest value accepted, with its unit for a quantity; null for none.</summary>
    public string? High { get; init; }

    /// <summary>Value shown in the starter file and in messages, as JSON writes it without quotes.</summary>
    public string Example { get; init; } = "";

    /// <summary>The same for a part of the rear axle, where it has to differ for a sound car; empty when it need not.</summary>
    public string RearExample { get; init; } = "";

    /// <summary>Fewest elements of a list.</summary>
    public int Fewest { get; init; }

    /// <summary>Most elements of a list; no car and no job on the bench has more.</summary>
    public int Most { get; init; } = 50;

    /// <summary>How the value is found on a car, as a sentence without a full stop; empty when it is chosen, not measured.</summary>
    public string HowToMeasure { get; init; } = "";
}

/// <summary>Names one kind of a part that a file may describe, chosen by its <c>type</c> entry.</summary>
/// <param name="name">The value of <c>type</c>.</param>
/// <param name="document">The document type that describes that kind.</param>
/// <param name="description">What that kind is, as a phrase.</param>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
public sealed class KindAttribute(string name, Type document, string description) : Attribute
{
    /// <summary>The value of <c>type</c>.</summary>
    public string Name { get; } = name;

    /// <summary>The document type.</summary>
    public Type Document { get; } = document;

    /// <summary>What that kind is.</summary>
    public string Description { get; } = description;
}
