namespace BrakeBalance.Bench;

/// <summary>What a row of the change table is about.</summary>
public enum ChangeTopic
{
    /// <summary>How hard the foot pushes.</summary>
    Effort,

    /// <summary>How far it goes.</summary>
    Travel,

    /// <summary>How the axles share the work, and which locks first.</summary>
    Balance,

    /// <summary>The knee that the car needs.</summary>
    Knee,

    /// <summary>How warm the brakes get.</summary>
    Heat,
}

/// <summary>One number of a car before and after a change of parts.</summary>
/// <param name="Topic">What it is about.</param>
/// <param name="Name">What it is.</param>
/// <param name="Before">With the old parts; null when there is no number.</param>
/// <param name="After">With the new parts; null when there is no number.</param>
/// <param name="BeforeWords">What stands in place of a missing number, or the answer itself where it is not a number.</param>
/// <param name="AfterWords">The same with the new parts.</param>
/// <param name="Severity">What the new value calls for.</param>
/// <param name="Meaning">The change in words.</param>
public sealed record ChangeRow(
    ChangeTopic Topic, string Name, IQuantity? Before, IQuantity? After, string BeforeWords, string AfterWords, BenchSeverity Severity,
        string Meaning);
