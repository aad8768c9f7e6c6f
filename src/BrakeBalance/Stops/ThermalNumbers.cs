namespace BrakeBalance.Stops;

/// <summary>One brake's heat in SI numbers, for the inner loop.</summary>
internal readonly struct ThermalNumbers(ThermalBrake brake)
{
    public readonly FadeCurve Fade = brake.Fade;
    public readonly double RingCapacity = brake.RingMass.Kilograms * brake.SpecificHeat.JoulesPerKilogramKelvin;
    public readonly double HatCapacity = brake.HatMass.Kilograms * brake.SpecificHeat.JoulesPerKilogramKelvin;
    public readonly double HatConductance = brake.HatMass.Kilograms > 0 ? brake.HatConductanceWattsPerKelvin : 0;
    public readonly double CoolingArea = brake.CoolingArea.SquareMeters;
    public readonly double Still = brake.StillConvection.WattsPerSquareMeterKelvin;
    public readonly double PerWind = brake.ConvectionAtTenMetresPerSecond.WattsPerSquareMeterKelvin;
    public readonly double Radiation = brake.Emissivity * brake.CoolingArea.SquareMeters;
    public readonly double RingShare = brake.RingShare;
    public readonly double CaliperCapacity = brake.CaliperHeatCapacityJoulesPerKelvin;
    public readonly double CaliperConductance = brake.CaliperConductanceWattsPerKelvin;
    public readonly double CaliperCooling = brake.CaliperCoolingWattsPerKelvin;

    /// <summary>Heat stored in the brakes of an axle above a temperature, in joules.</summary>
    public double Stored(double ring, double hat, double caliper, double ambient) =>
        2 * (RingCapacity * (ring - ambient) + HatCapacity * (hat - ambient) + CaliperCapacity * (caliper - ambient));
}
