namespace BrakeBalance.Charts.Publishing;

/// <summary>An axis in plain words.</summary>
/// <param name="Words">What it shows.</param>
/// <param name="Unit">The unit of a number that has no unit of measurement, such as <c>g</c>; null to keep the axis's own unit.</param>
internal sealed record PlainAxis(string Words, string? Unit = null);
