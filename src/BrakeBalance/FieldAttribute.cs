namespace BrakeBalance;

/// <summary>Describes one entry of a file: the reader, the JSON Schema and the commented starter file are all made from it.</summary>
[AttributeUsage(AttributeTargets.Property)]
internal sealed class FieldAttribute(string description) : Attribute
{
    /// <summary>What the entry means.</summary>
    public string Description { get; } = description;

    /// <summary>The entry's key; empty where it is the property's name.</summary>
    public string Key { get; init; } = "";

    /// <summary>Whether the entry must be there.</summary>
    public bool Required { get; init; }

    /// <summary>Lowest value accepted, with its unit for a quantity; null for none.</summary>
    public string? Low { get; init; }

    /// <summary>Highest value accepted, with its unit for a quantity; null for none.</summary>
    public string? High { get; init; }

    /// <summary>Value shown in the starter file and in messages, as JSON writes it without quotes.</summary>
    public string Example { get; init; } = "";

    /// <summary>Usual range (common practice), as a file would write it; empty for none.</summary>
    /// <remarks>Where a file names its car's class and the class says nothing of its own, this range stands in for the entry.</remarks>
    public string Typical { get; init; } = "";

    /// <summary>
    /// Whether the car's class has a part, word or range of its own for the entry, so that a file with a class may leave it out.
    /// </summary>
    public bool ByClass { get; init; }

    /// <summary>Keys, separated by spaces, of the entries in whose place this one may stand; empty when it replaces none.</summary>
    public string InPlaceOf { get; init; } = "";

    /// <summary>Key of the entry without which this one says nothing; empty when it stands by itself.</summary>
    public string Needs { get; init; } = "";

    /// <summary>The kind of brake, disc or drum, without which the entry may not be given; empty for any.</summary>
    public string OnlyFor { get; init; } = "";

    /// <summary>Whether a number has to be whole.</summary>
    public bool Whole { get; init; }

    /// <summary>Word table of the only words that a text may be; null for any. An enumeration needs none.</summary>
    public Type? Words { get; init; }

    /// <summary>What parts the words of an enumeration's name in the file.</summary>
    public string WordBreak { get; init; } = "-";

    /// <summary>Fewest elements of a list.</summary>
    public int Fewest { get; init; }

    /// <summary>Most elements of a list; no car and no job on the bench has more.</summary>
    public int Most { get; init; } = 50;

    /// <summary>
    /// How the value is found on a car, as a sentence without a full stop; empty for parts with entries of their own and free text.
    /// </summary>
    public string HowToMeasure { get; init; } = "";
}

/// <summary>Names one kind of a part that a file may describe, chosen by its <c>type</c> entry.</summary>
[AttributeUsage(AttributeTargets.Class, AllowMultiple = true, Inherited = false)]
internal sealed class KindAttribute(string name, Type document, string description) : Attribute
{
    /// <summary>The value of <c>type</c>.</summary>
    public string Name { get; } = name;

    public Type Document { get; } = document;

    /// <summary>What that kind is.</summary>
    public string Description { get; } = description;
}
