namespace BrakeBalance.Measurements;

/// <summary>How a setting does in one load case, on one surface, in one state of the brakes.</summary>
/// <param name="LoadCase">Name of the load case.</param>
/// <param name="Surface">Name of the surface.</param>
/// <param name="State">Name of the state of the brakes.</param>
/// <param name="RearFirst">Probability that the rear locks first [–], at the speed where it is highest.</param>
/// <param name="MeanEfficiency">Mean braking efficiency at first lock-up over the speeds [–].</param>
/// <param name="Speed">The speed at which the rear locks first most often.</param>
public sealed record ConditionOutcome(string LoadCase, string Surface, string State, double RearFirst, double MeanEfficiency, Speed Speed);
