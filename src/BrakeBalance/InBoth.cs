using System.Text.RegularExpressions;

namespace BrakeBalance;

/// <summary>Quantities in metric and United States customary units side by side, for sentences that every reader gets alike.</summary>
internal static partial class InBoth
{
    /// <summary>Such as <c>732 mm (28.8 in)</c>.</summary>
    public static string Text(Length length) => Invariant.Text($"{length.Millimeters:0.#} mm ({length.Inches:0.##} in)");

    /// <summary>Such as <c>180 bar (2611 psi)</c>; below 10 bar with decimals.</summary>
    public static string Text(Pressure pressure) => pressure.Bars < 10
        ? Invariant.Text($"{pressure.Bars:0.##} bar ({pressure.PoundsForcePerSquareInch:0.#} psi)")
        : Invariant.Text($"{pressure.Bars:0} bar ({pressure.PoundsForcePerSquareInch:0} psi)");

    /// <summary>Such as <c>4.9 bar (71 psi)</c>, for a pressure that a gauge shows.</summary>
    public static string Bars(double bars) => Invariant.Text($"{bars:0.#} bar ({Pressure.FromBars(bars).PoundsForcePerSquareInch:0} psi)");

    /// <summary>Such as <c>60.6 m (199 ft)</c>, for a way along the road or across it.</summary>
    public static string Way(Length way) => Invariant.Text($"{way.Meters:0.0} m ({way.Feet:0.#} ft)");

    /// <summary>Such as <c>500 N (112 lbf)</c>.</summary>
    public static string Text(Force force) => Invariant.Text($"{force.Newtons:0} N ({force.PoundsForce:0} lbf)");

    /// <summary>Such as <c>5.7 kg (12.6 lb)</c>.</summary>
    public static string Text(Mass mass) => Invariant.Text($"{mass.Kilograms:0.0} kg ({mass.Pounds:0.0} lb)");

    /// <summary>Such as <c>95 °C (203 °F)</c>.</summary>
    public static string Text(Temperature temperature) =>
        Invariant.Text($"{temperature.DegreesCelsius:0} °C ({temperature.DegreesFahrenheit:0} °F)");

    /// <summary>Such as <c>100 km/h (62.1 mph)</c>.</summary>
    public static string Text(Speed speed) => Invariant.Text($"{speed.KilometersPerHour:0.#} km/h ({speed.MilesPerHour:0.#} mph)");

    /// <summary>A sentence made with these, with the numbers of one system of units left.</summary>
    public static string Only(string sentence, bool customary) => Pair().Replace(sentence, customary ? "$2" : "$1");

    [GeneratedRegex(@"(\d[\d.]*(?: (?:±|to) \d[\d.]*)? (?:mm|cm³|m²?|m?bar|N|kg(?:·m²)?|°C|km/h)) "
        + @"\((-?\d[\d.,]*(?: (?:±|to) \d[\d.]*)? (?:in³?|inHg|ft²?|psi|lbf|lb(?:·ft²)?|°F|mph))\)", RegexOptions.CultureInvariant)]
    private static partial Regex Pair();
}
