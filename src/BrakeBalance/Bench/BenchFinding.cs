namespace BrakeBalance.Bench;

/// <summary>How grave a finding on the bench is.</summary>
public enum BenchSeverity
{
    /// <summary>Nothing to be done.</summary>
    Pass,

    /// <summary>Look again, or accept it knowingly.</summary>
    Caution,

    /// <summary>Must be put right before anything is fitted or moved.</summary>
    Wrong,
}

/// <summary>One thing found out on the bench: where, what, and what follows from it.</summary>
/// <param name="Severity">How grave it is.</param>
/// <param name="Where">The part, line or measurement it is about.</param>
/// <param name="What">What was found, with its numbers.</param>
/// <param name="Why">Why it matters or what to do, as a sentence.</param>
public sealed record BenchFinding(BenchSeverity Severity, string Where, string What, string Why)
{
    /// <summary>The same with its numbers in one system of units.</summary>
    internal BenchFinding In(UnitSystem units) =>
        this with { What = InBoth.Only(What, units == UnitSystem.Us), Why = InBoth.Only(Why, units == UnitSystem.Us) };

    /// <inheritdoc/>
    public override string ToString() => $"{Where}: {What} {Why}";
}
