using UnitsNet.Units;

namespace BrakeBalance.Charts.Figures;

/// <summary>Measures of the bench, finer than those of the road.</summary>
internal static class BenchMeasures
{
    /// <summary>A length to cut by: mm or in; the SI unit is the metre.</summary>
    public static Measure Cut { get; } =
        Measure.Of("cut length", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.1), (LengthUnit.Inch, "in", 0.01));

    /// <summary>A length of stock: m or ft; the SI unit is the metre.</summary>
    public static Measure Stock { get; } =
        Measure.Of("length of stock", LengthUnit.Meter, (LengthUnit.Meter, "m", 0.01), (LengthUnit.Foot, "ft", 0.01));

    /// <summary>A gap: mm or in; the SI unit is the metre.</summary>
    public static Measure Gap { get; } =
        Measure.Of("gap", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.01), (LengthUnit.Inch, "in", 0.001));

    /// <summary>A flow of oil: l/min or gal/min; the SI unit is the cubic metre per second.</summary>
    public static Measure Flow { get; } = Measure.Of(
        "flow", VolumeFlowUnit.CubicMeterPerSecond, (VolumeFlowUnit.LiterPerMinute, "l/min", 0.1),
            (VolumeFlowUnit.UsGallonPerMinute, "gal/min", 0.02));

    /// <summary>A low pressure, gauge: bar or psi; the SI unit is the pascal.</summary>
    public static Measure BackPressure { get; } = Measure.Of(
        "back-pressure", PressureUnit.Pascal, (PressureUnit.Bar, "bar", 0.01), (PressureUnit.PoundForcePerSquareInch, "psi", 0.1));
}
