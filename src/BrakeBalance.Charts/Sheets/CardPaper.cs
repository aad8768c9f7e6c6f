namespace BrakeBalance.Charts.Sheets;

/// <summary>The sheet a pocket card is printed on.</summary>
/// <param name="Name">Its name on the command line.</param>
/// <param name="WidthMillimetres">Width.</param>
/// <param name="HeightMillimetres">Height.</param>
public sealed record CardPaper(string Name, double WidthMillimetres, double HeightMillimetres)
{
    /// <summary>A5, 148 × 210 mm (ISO 216).</summary>
    public static CardPaper A5 { get; } = new("a5", 148, 210);

    /// <summary>Half a Letter sheet, 5.5 × 8.5 in.</summary>
    public static CardPaper HalfLetter { get; } = new("half-letter", 139.7, 215.9);

    /// <summary>All sheets.</summary>
    public static IReadOnlyList<CardPaper> All { get; } = [A5, HalfLetter];
}
