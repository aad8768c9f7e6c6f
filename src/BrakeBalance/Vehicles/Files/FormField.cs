namespace BrakeBalance.Vehicles.Files;

/// <summary>How an entry is filled in.</summary>
internal enum FormShape
{
    /// <summary>Any text.</summary>
    Text,

    /// <summary>A number or a quantity with its unit, or a range of it.</summary>
    Number,

    /// <summary>One of a closed list of words.</summary>
    Choice,

    /// <summary>Yes or no.</summary>
    Flag,
}

/// <summary>An entry of a form.</summary>
internal sealed record FormField
{
    /// <summary>Path of the entry in the file.</summary>
    public required string Path { get; init; }

    /// <summary>What it is called.</summary>
    public required string Label { get; init; }

    /// <summary>What it means, as a sentence without a full stop.</summary>
    public required string Description { get; init; }

    /// <summary>How it is found on a car; may be empty.</summary>
    public required string HowToMeasure { get; init; }

    /// <summary>Usual range (common practice); may be empty.</summary>
    public required string Usual { get; init; }

    /// <summary>What may be filled in.</summary>
    public required string Accepted { get; init; }

    /// <summary>How it is filled in.</summary>
    public required FormShape Shape { get; init; }

    /// <summary>What the file says, a list parted by commas; empty when it says nothing.</summary>
    public required string Value { get; init; }

    /// <summary>What the value, or the class's in its place, is in the chosen system of units; empty where it is in them.</summary>
    public required string Beside { get; init; }

    /// <summary>What the car's class says in its place; empty for nothing.</summary>
    public required string FromClass { get; init; }

    /// <summary>Whether a file must have it (or, where the class knows it, the class).</summary>
    public required bool IsRequired { get; init; }

    /// <summary>Keys of the entries in whose place it may stand, parted by spaces; may be empty.</summary>
    public required string Replaces { get; init; }

    /// <summary>The words of a closed list.</summary>
    public required IReadOnlyList<string> Choices { get; init; }

    /// <summary>How far the value can be moved; null when it is no single number.</summary>
    public required Slide? Slide { get; init; }
}
