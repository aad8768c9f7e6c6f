namespace BrakeBalance.Charts.Publishing;

/// <summary>What a figure says to readers who do not know the trade.</summary>
/// <param name="Caption">The caption; at most 40 words.</param>
/// <param name="Alt">The alternative text; at most <see cref="Figure.AltTextLimit"/> characters.</param>
/// <param name="X">The axis from left to right.</param>
/// <param name="Y">The axis from bottom to top.</param>
public sealed record PlainText(string Caption, string Alt, PlainAxis X, PlainAxis Y);
