using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles.Files;

internal sealed class CarClassNames : IWordTable
{
    public static IReadOnlyList<string> Words => CarClasses.Names;
}

internal sealed class FluidGradeNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. BrakeFluidGrade.All.Select(grade => grade.Name)];
}

internal sealed class FrictionMaterialNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. FrictionMaterial.Invented.Select(material => material.Name)];
}

internal sealed class SlipCurveNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. PublishedSlipCurves.All.Select(curve => curve.Name)];
}
