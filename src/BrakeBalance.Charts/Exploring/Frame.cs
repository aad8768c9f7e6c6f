namespace BrakeBalance.Charts.Exploring;

/// <summary>What an explorable shows for one combination of settings.</summary>
/// <param name="Figures">The figures; the same ids in the same order for every combination.</param>
/// <param name="Readouts">Answers in large type; the same labels in the same order for every combination.</param>
/// <param name="Verdict">The answer in a sentence; null for none.</param>
public sealed record Frame(IReadOnlyList<Figure> Figures, IReadOnlyList<Readout> Readouts, Verdict? Verdict = null);

/// <summary>An answer in large type.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Value">The answer, with unit.</param>
public sealed record Readout(string Label, string Value);

/// <summary>An answer in a sentence.</summary>
/// <param name="Text">The sentence.</param>
/// <param name="Kind">Whether it is good news.</param>
public sealed record Verdict(string Text, VerdictKind Kind = VerdictKind.Neutral);

/// <summary>Whether a verdict is good news; the page also says so in words.</summary>
public enum VerdictKind
{
    /// <summary>Neither.</summary>
    Neutral,

    /// <summary>Good.</summary>
    Good,

    /// <summary>A reason for caution.</summary>
    Caution,
}
