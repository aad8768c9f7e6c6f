using BrakeBalance.Brakes;
using BrakeBalance.Hydraulics;
using BrakeBalance.Tyres;

namespace BrakeBalance.Vehicles.Files;

/// <summary>Names of the classes of car.</summary>
internal sealed class CarClassNames : IWordTable
{
    public static IReadOnlyList<string> Words => CarClasses.Names;
}

/// <summary>Names of the grades of brake fluid.</summary>
internal sealed class FluidGradeNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. BrakeFluidGrade.All.Select(grade => grade.Name)];
}

/// <summary>Names of the invented friction materials.</summary>
internal sealed class FrictionMaterialNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. FrictionMaterial.Invented.Select(material => material.Name)];
}

/// <summary>Names of the published slip curves.</summary>
internal sealed class SlipCurveNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. PublishedSlipCurves.All.Select(curve => curve.Name)];
}
