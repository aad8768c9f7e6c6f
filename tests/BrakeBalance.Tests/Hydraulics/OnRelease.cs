using System.Collections.Immutable;
using BrakeBalance.Hydraulics;
using UnitsNet;

namespace BrakeBalance.Tests.Hydraulics;

/// <summary>Valves whose inlet falls from a pressure reached before, asked as gauges would be.</summary>
internal static class OnRelease
{
    public static Pressure OutletPressureOnRelease(
        this PressureValve valve, Pressure inlet, Pressure highestOutlet, Force rearAxleLoad = default) =>
        Pressure.FromPascals(valve.OutletPascals(inlet.Pascals, rearAxleLoad.Newtons, highestOutlet.Pascals));

    public static PerAxle<Pressure> LinePressuresOnRelease(this BrakeHydraulics hydraulics, Pressure master, Pressure highestMaster)
    {
        Pressure Line(ImmutableArray<PressureValve> valves, double ratio)
        {
            double[] highest = new double[valves.Length];
            BrakeHydraulics.Remember(valves, highestMaster.Pascals * ratio, 0, highest);
            return Pressure.FromPascals(BrakeHydraulics.Through(valves, master.Pascals * ratio, 0, highest));
        }

        return new(Line(hydraulics.FrontValves, 1), Line(hydraulics.RearValves, hydraulics.Split.RearToFrontPressureRatio));
    }
}
