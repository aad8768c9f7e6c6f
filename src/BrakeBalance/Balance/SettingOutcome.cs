using UnitsNet;

namespace BrakeBalance.Balance;

/// <summary>How one knee and slope do over all conditions.</summary>
/// <param name="Knee">The knee, gauge.</param>
/// <param name="Slope">The slope above it [–].</param>
/// <param name="FrontFirstEverywhere">Whether the front locks first, or both together, in every case, friction spread included.</param>
/// <param name="RearFirstShare">Part of all cases in which the rear locks first [–].</param>
/// <param name="MeanEfficiency">Mean braking efficiency over surfaces, loads and speeds at nominal friction [–].</param>
/// <param name="WorstEfficiency">Least braking efficiency over surfaces, loads and speeds at nominal friction [–].</param>
public sealed record SettingOutcome(Pressure Knee, double Slope, bool FrontFirstEverywhere, double RearFirstShare, double MeanEfficiency, double WorstEfficiency);

/// <summary>The greatest setting that keeps the front first.</summary>
/// <param name="Outcome">The setting and how it does; null when no setting keeps the front first.</param>
/// <param name="NominalKnee">The greatest knee if friction had no spread, gauge; null when there is none.</param>
/// <param name="ValveNeeded">Whether the rear would lock first somewhere with no valve at all.</param>
/// <param name="Sentence">The finding in words.</param>
public sealed record SettingAdvice(SettingOutcome? Outcome, Pressure? NominalKnee, bool ValveNeeded, string Sentence)
{
    /// <summary>
    /// The first condition in which the rear would lock first with a little more knee, or with none at all when no knee is safe; null
    /// when nothing binds.
    /// </summary>
    public BindingCondition? Binding { get; init; }

    /// <summary>How far the advised knee stays below the greatest at nominal friction; null when either is missing.</summary>
    public Pressure? Margin => Outcome is null || NominalKnee is null ? null : NominalKnee - Outcome.Knee;
}

/// <summary>A condition in which the rear locks first: what holds a setting back.</summary>
/// <param name="LoadCase">Name of the load case.</param>
/// <param name="Adhesion">Coefficient of adhesion of the surface [–].</param>
/// <param name="Speed">Speed.</param>
/// <param name="FrontFriction">Factor on the front brakes' friction [–].</param>
/// <param name="RearFriction">Factor on the rear brakes' friction [–].</param>
public sealed record BindingCondition(string LoadCase, double Adhesion, Speed Speed, double FrontFriction, double RearFriction)
{
    /// <summary>The condition in words, such as "driver only, adhesion 0.98, 180 km/h, front friction 8 % low and rear 8 % high".</summary>
    public string Words => FormattableString.Invariant($"{LoadCase}, adhesion {Adhesion:0.00}, {SpeedRange.Words(Speed)}")
        + (FrontFriction == RearFriction ? "" : FormattableString.Invariant($", front friction {100 * (1 - FrontFriction):0.#} % low"))
        + (FrontFriction == RearFriction ? "" : FormattableString.Invariant($" and rear {100 * (RearFriction - 1):0.#} % high"));
}
