namespace BrakeBalance.Summaries;

/// <summary>The units of one summary: what they are called in a table and at the end of a key.</summary>
internal sealed record SummaryUnits(UnitSystem System)
{
    public bool Us => System == UnitSystem.Us;

    public string Pressure => Us ? "psi" : "bar";

    public string Force => Us ? "lbf" : "N";

    public string Mass => Us ? "lb" : "kg";

    public string Length => Us ? "in" : "m";

    public double Of(Pressure pressure) => Us ? pressure.PoundsForcePerSquareInch : pressure.Bars;

    public double Of(Force force) => Us ? force.PoundsForce : force.Newtons;

    public double Of(Mass mass) => Us ? mass.Pounds : mass.Kilograms;

    public double Of(Length length) => Us ? length.Inches : length.Meters;

    /// <summary>A key with the unit of pressure, force, mass or length at its end.</summary>
    public string Key(string stem, string unit) => $"{stem}_{unit.ToLowerInvariant()}";
}
