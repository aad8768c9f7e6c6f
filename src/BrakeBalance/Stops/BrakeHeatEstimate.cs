using BrakeBalance.Brakes;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Stops;

/// <summary>Heat capacity and cooling of a brake of which only the size is known.</summary>
public static class BrakeHeatEstimate
{
    private const double IronKilogramsPerCubicMetre = 7200;

    /// <summary>An estimate from the effective radius.</summary>
    /// <param name="brake">The brake.</param>
    /// <returns>
    /// An iron ring 0.4 radius wide and 20 mm thick for a disc, a shell 65 mm wide and 12 mm thick for a drum; hat and hub 0.4 times its
    /// mass.
    /// </returns>
    /// <remarks>Source: common practice; weigh the part where it matters.</remarks>
    public static BrakeThermalData Of(Brake brake)
    {
        ArgumentNullException.ThrowIfNull(brake);
        bool drum = brake.Construction == BrakeConstruction.Drum;
        double radius = brake.EffectiveRadius.Meters;
        double area = 2 * Math.PI * radius * (drum ? 0.065 : 0.4 * radius);
        double ring = IronKilogramsPerCubicMetre * area * (drum ? 0.012 : 0.020);
        return new BrakeThermalData
        {
            RingMass = Mass.FromKilograms(ring),
            HatMass = Mass.FromKilograms(0.4 * ring),
            CoolingArea = Area.FromSquareMeters(drum ? 1.3 * area : 3 * area),
        };
    }
}
