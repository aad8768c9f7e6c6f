using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>How one knee and slope do over all conditions.</summary>
/// <param name="Knee">The knee, gauge.</param>
/// <param name="Slope">The slope above it [–].</param>
/// <param name="FrontFirstEverywhere">Whether the front locks first, or both together, in every case, friction spread included.</param>
/// <param name="RearFirstShare">Part of all cases in which the rear locks first [–].</param>
/// <param name="MeanEfficiency">Mean braking efficiency over surfaces and loads at nominal friction [–].</param>
/// <param name="WorstEfficiency">Least braking efficiency over surfaces and loads at nominal friction [–].</param>
public sealed record SettingOutcome(Pressure Knee, double Slope, bool FrontFirstEverywhere, double RearFirstShare, double MeanEfficiency, double WorstEfficiency);

/// <summary>The greatest setting that keeps the front first.</summary>
/// <param name="Outcome">The setting and how it does; null when no setting keeps the front first.</param>
/// <param name="NominalKnee">The greatest knee if friction had no spread, gauge; null when there is none.</param>
/// <param name="ValveNeeded">Whether the rear would lock first somewhere with no valve at all.</param>
/// <param name="Sentence">The finding in words.</param>
public sealed record SettingAdvice(SettingOutcome? Outcome, Pressure? NominalKnee, bool ValveNeeded, string Sentence)
{
    /// <summary>How far the advised knee stays below the greatest at nominal friction; null when either is missing.</summary>
    public Pressure? Margin => Outcome is null || NominalKnee is null ? null : NominalKnee - Outcome.Knee;
}
