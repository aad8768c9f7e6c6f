namespace BrakeBalance.Charts.Lessons;

/// <summary>The data of an exercise car as a sheet prints them: both systems of units, the leading one first.</summary>
public static class CarData
{
    /// <summary>The data of a car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="units">The leading system of units.</param>
    /// <returns>Name, symbol and value of each quantity.</returns>
    public static IReadOnlyList<(string Name, string Symbol, string Value)> Of(ExerciseCar car, UnitSystem units)
    {
        bool us = units == UnitSystem.Us;
        string Lengths(Length value) => Both(us, $"{N(value.Millimeters, "0.#")} mm", $"{N(value.Inches, "0.00")} in");
        return
        [
            ("Mass with driver", "m", Both(us, $"{N(car.LoadCase.Mass.Kilograms, "0")} kg", $"{N(car.LoadCase.Mass.Pounds, "0")} lb")),
            ("Wheelbase", "E", Lengths(car.Vehicle.Wheelbase)),
            ("Front axle's share of the weight at rest", "ψ₁", N(car.FrontShare, "0.00")),
            ("Height of the centre of gravity", "h", Lengths(car.LoadCase.CentreOfGravityHeight)),
            ("Loaded tyre radius, all wheels", "R", Lengths(car.Vehicle.Tyres.Front.LoadedRadius)),
            ("Pad friction, front and rear", "μ", N(car.Front.FrictionCoefficient, "0.00")),
            ("Front caliper: one piston on one side, diameter", "d₁", Lengths(car.FrontPiston)),
            ("Front disc: effective radius", "r₁", Lengths(car.Front.EffectiveRadius)),
            ("Rear caliper: one piston on one side, diameter", "d₂", Lengths(car.RearPiston)),
            ("Rear disc: effective radius", "r₂", Lengths(car.Rear.EffectiveRadius)),
            ("Valve in the rear line: knee", "pₖ",
                Both(us, $"{N(car.Valve.Knee.Bars, "0.#")} bar", $"{N(car.Valve.Knee.PoundsForcePerSquareInch, "0")} psi")),
            ("Valve in the rear line: slope", "s", N(car.Valve.Slope, "0.00")),
            ("Pedal ratio", "iₚ", N(car.Pedal.Lever.RatioAt(Length.Zero), "0.0")),
            ("Bore of the tandem master cylinder", "dₘ", Lengths(car.MasterBore)),
            ("Booster: diaphragm diameter (85 % of its area counts)", "D", Lengths(car.Booster.DiaphragmDiameter)),
            ("Booster: output over input below run-out", "b", N(car.Booster.BoostRatio, "0.0")),
            ("Booster: vacuum", "Δp",
                Both(us, $"{N(car.Booster.Supply.Vacuum.Kilopascals, "0")} kPa",
                $"{N(car.Booster.Supply.Vacuum.InchesOfMercury, "0.0")} inHg")),
            ("Acceleration of free fall", "g", "9.81 m/s² (32.2 ft/s²)"),
        ];
    }

    private static string Both(bool us, string metric, string customary) => us ? $"{customary} ({metric})" : $"{metric} ({customary})";

    private static string N(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
