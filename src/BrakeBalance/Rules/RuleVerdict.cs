namespace BrakeBalance.Rules;

/// <summary>How a car stands against one rule.</summary>
public enum RuleOutcome
{
    /// <summary>The computed car keeps the rule.</summary>
    Pass,

    /// <summary>The computed car does not keep the rule.</summary>
    Fail,

    /// <summary>The rule says nothing about this car, or what it needs is not known.</summary>
    NotApplicable,
}

/// <summary>The verdict of one rule on one car: informative, never a type approval.</summary>
/// <param name="Rule">The rule's short name, stable for scripts.</param>
/// <param name="Title">What the rule asks, in a phrase.</param>
/// <param name="Source">Regulation, edition and section.</param>
/// <param name="Outcome">Pass, fail or not applicable.</param>
/// <param name="Margin">
/// Least distance to the rule's limit in its own measure [–]; negative when it is broken; null when not applicable.
/// </param>
/// <param name="At">Where the margin is least, in words: load case and braking rate.</param>
/// <param name="Explanation">The finding as a sentence.</param>
public sealed record RuleVerdict(string Rule, string Title, string Source, RuleOutcome Outcome, double? Margin, string At,
    string Explanation)
{
    /// <summary>The same with title and explanation in one system of units.</summary>
    /// <param name="units">The system of units.</param>
    public RuleVerdict In(UnitSystem units) => this with
    {
        Title = InBoth.Only(Title, units == UnitSystem.Us),
        Explanation = InBoth.Only(Explanation, units == UnitSystem.Us),
    };
}
