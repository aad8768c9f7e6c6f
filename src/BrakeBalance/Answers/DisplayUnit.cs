namespace BrakeBalance.Answers;

/// <summary>A unit in which a number is shown, and how the shown number follows from the SI value.</summary>
/// <param name="Symbol">The unit's symbol, such as <c>bar</c>; empty for a pure number.</param>
/// <param name="Scale">Display units per SI unit.</param>
/// <param name="Offset">Display value of the SI value zero; not zero for temperatures only.</param>
/// <param name="RoundTo">The step to which a number in running text is rounded, in display units.</param>
public sealed record DisplayUnit(string Symbol, double Scale, double Offset, double RoundTo)
{
    /// <summary>The symbol as it stands in a title's brackets: <c>–</c> for a pure number.</summary>
    public string Bracketed => Symbol.Length == 0 ? "[–]" : $"[{Symbol}]";

    /// <summary>Whether shown numbers keep their last zeros, as those do that are read against one another (0.80, 73.0 m).</summary>
    internal bool KeepsZeros { get; init; } = Symbol.Length == 0;

    /// <summary>Digits behind the point of a rounded number, at most 6.</summary>
    internal int Decimals => Enumerable.Range(0, 6).FirstOrDefault(digits => Math.Abs(Math.Round(RoundTo, digits) - RoundTo) <= 1e-9, 6);

    /// <summary>The display value of an SI value.</summary>
    /// <param name="si">The value in the measure's SI unit.</param>
    /// <returns>The value in display units, not rounded.</returns>
    public double FromSi(double si) => si * Scale + Offset;

    /// <summary>The SI value of a display value.</summary>
    /// <param name="shown">The value in display units.</param>
    /// <returns>The value in the measure's SI unit.</returns>
    public double ToSi(double shown) => (shown - Offset) / Scale;

    /// <summary>An SI value rounded for running text, with the unit's symbol.</summary>
    /// <param name="si">The value in the measure's SI unit.</param>
    /// <returns>Such as <c>38.5 bar</c>; a no-break space stands before the symbol.</returns>
    public string Text(double si) => Symbol.Length == 0 ? Number(si) : $"{Number(si)}\u00a0{Symbol}";

    /// <summary>An SI value rounded for running text, without the symbol.</summary>
    /// <param name="si">The value in the measure's SI unit.</param>
    /// <returns>Such as <c>38.5</c>.</returns>
    public string Number(double si)
    {
        double rounded = Math.Round(FromSi(si) / RoundTo, MidpointRounding.AwayFromZero) * RoundTo;
        string format = KeepsZeros ? "F" + Decimals.ToString(CultureInfo.InvariantCulture) : "0." + new string('#', Decimals);
        string text = rounded.ToString(format, CultureInfo.InvariantCulture);
        return text.StartsWith('-') ? (text.Trim('-', '0', '.').Length == 0 ? text[1..] : "−" + text[1..]) : text;
    }
}
