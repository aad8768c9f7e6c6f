namespace BrakeBalance.Teaching;

/// <summary>Numbers of a sheet in its system of units, in questions, data and steps rounded alike.</summary>
internal readonly record struct SheetUnits(bool Us)
{
    /// <summary>What a formula for power divides by beside the time.</summary>
    public string WorkPerPower => Us ? @"550 \cdot " : "";

    /// <summary>Of iron; the customary number is 460 J/(kg K) within 0.01 %.</summary>
    public string SpecificHeat => Us ? "85.5" : "460";

    public string SpecificHeatUnit => Us ? "ft·lbf/(lb °F)" : "J/(kg K)";

    public double G => Us ? 32.174 : Gravity.StandardMetresPerSecondSquared;

    public string FreeFall => Us ? "32.174 ft/s²" : "9.80665 m/s²";

    public static string N(double value) =>
        (Math.Abs(value) >= 1e5 ? Math.Round(value / 100) * 100 : value).ToString(
            Math.Abs(value) switch { >= 1000 => "0", >= 100 => "0.#", >= 10 => "0.##", _ => "0.###" }, CultureInfo.InvariantCulture);

    public string N(IQuantity quantity) => N(quantity.As(ExerciseAnswer.LeadUnit(quantity, Us)));

    public string Text(IQuantity quantity) => $"{N(quantity)} {ExerciseAnswer.Abbreviation(ExerciseAnswer.LeadUnit(quantity, Us))}";

    /// <summary>With its unit, in a formula.</summary>
    public string Tex(IQuantity quantity) => Text(quantity).Replace(" ", @"\ \text{", StringComparison.Ordinal) + "}";

    /// <summary>As a force, in a formula: pounds weigh as many pounds-force.</summary>
    public string Weight(Mass mass) => Us ? N(mass) : $@"{N(mass)} \cdot 9.80665";

    /// <summary>As what a force accelerates.</summary>
    public string Inertia(Mass mass) => Us ? $@"\frac{{{N(mass)}}}{{32.174}}" : N(mass);

    /// <summary>In N/mm² or lbf/in².</summary>
    public string ForceOverArea(Pressure pressure) => N(Us ? pressure.PoundsForcePerSquareInch : pressure.Megapascals);

    /// <summary>In m/s or ft/s.</summary>
    public string PerSecond(Speed speed) => N(Us ? speed.FeetPerSecond : speed.MetersPerSecond);

    /// <summary>In J or ft·lbf.</summary>
    public string Work(Energy energy) => N(Us ? energy.FootPounds : energy.Joules);
}
