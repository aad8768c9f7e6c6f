using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>Heat capacity, cooling and fade of a vehicle's brake, estimated from its size where the file is silent.</summary>
internal static class ThermalFigures
{
    private const double ReferenceCelsius = 100;

    public static ThermalBrake Of(Brake brake, BrakeThermalData? data, string axle, List<string> assumed)
    {
        BrakeThermalData given = data ?? BrakeHeatEstimate.Of(brake);
        if (data is null)
        {
            assumed.Add(Invariant.Text($"{axle} brake of {InBoth.Text(given.RingMass)} ring and {given.CoolingArea.SquareMeters:0.000} "
                + $"m² ({given.CoolingArea.SquareFeet:0.00} ft²) cooled surface, estimated from its radius"));
        }

        if (data?.Friction is null)
        {
            assumed.Add($"{axle} friction that does not change with temperature");
        }

        bool drum = brake.Construction == BrakeConstruction.Drum;
        var made = new ThermalBrake
        {
            RingMass = given.RingMass,
            HatMass = given.HatMass,
            CoolingArea = given.CoolingArea,
            CaliperConductanceWattsPerKelvin = drum ? 0.8 : 2,
            CaliperHeatCapacityJoulesPerKelvin = drum ? 1500 : 2500,
            Fade = given.Friction is { } friction ? Fade(brake, friction, given.FrictionIsMeasured) : FadeCurve.None,
        };
        return given.ConvectionAtTenMetresPerSecond is { } convection ? made with { ConvectionAtTenMetresPerSecond = convection } : made;
    }

    private static FadeCurve Fade(Brake brake, FrictionCurve friction, bool measured)
    {
        double coldest = friction.Coldest.DegreesCelsius;
        double hottest = friction.Hottest.DegreesCelsius;
        double height = measured
            ? 1 : brake.FrictionCoefficient / friction.At(Temperature.FromDegreesCelsius(Math.Clamp(ReferenceCelsius, coldest, hottest)));
        double reference = brake.BrakeFactor;
        return FadeCurve.Through(Enumerable.Range(0, 101)
            .Select(i => Temperature.FromDegreesCelsius(coldest + (hottest - coldest) * i / 100))
            .Select(t => (t, brake.BrakeFactorNear(height * friction.At(t)) / reference)));
    }
}
