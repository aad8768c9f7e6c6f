namespace BrakeBalance.Vehicles.Files;

/// <summary>A part of a car in a form: an object of the vehicle file, or a list of such.</summary>
internal sealed record FormPart
{
    /// <summary>Path of the part in the file; empty for the car as a whole.</summary>
    public required string Path { get; init; }

    /// <summary>What it is called.</summary>
    public required string Label { get; init; }

    /// <summary>What it means, as a sentence without a full stop; may be empty.</summary>
    public required string Description { get; init; }

    /// <summary>Whether the file says anything of it.</summary>
    public required bool IsGiven { get; init; }

    /// <summary>Whether the car has it, by the file or by its class.</summary>
    public required bool IsThere { get; init; }

    /// <summary>Whether it is a list of parts that may have one more.</summary>
    public bool MayGrow { get; init; }

    /// <summary>Of which kind it is; null when there are no kinds or none is chosen.</summary>
    public string? Kind { get; init; }

    /// <summary>The kinds there are, each with its description; empty when there is only one.</summary>
    public IReadOnlyList<(string Name, string Description)> Kinds { get; init; } = [];

    /// <summary>Its entries.</summary>
    public IReadOnlyList<FormField> Fields { get; init; } = [];

    /// <summary>The parts inside it.</summary>
    public IReadOnlyList<FormPart> Parts { get; init; } = [];
}
