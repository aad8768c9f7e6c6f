namespace BrakeBalance.Assist;

/// <summary>The point at which a booster gives all it can; from there on every further newton is the driver's own.</summary>
/// <param name="InputForce">Force on the input rod.</param>
/// <param name="OutputForce">Force on the output rod.</param>
public readonly record struct RunOut(Force InputForce, Force OutputForce);
