namespace BrakeBalance.Charts.Lessons;

/// <summary>The data of an exercise car as a sheet prints them.</summary>
public static class CarData
{
    /// <summary>The data of a car.</summary>
    /// <param name="car">The car.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Name, symbol and value of each quantity.</returns>
    public static IReadOnlyList<(string Name, string Symbol, string Value)> Of(ExerciseCar car, UnitSystem units)
    {
        var u = new SheetUnits(units == UnitSystem.Us);
        Pressure vacuum = car.Booster.Supply.Vacuum;
        return
        [
            ("Mass with driver", "m", u.Text(car.LoadCase.Mass)),
            ("Wheelbase", "E", u.Text(car.Vehicle.Wheelbase)),
            ("Front axle's share of the weight at rest", "ψ₁", N(car.FrontShare, "0.00")),
            ("Height of the centre of gravity", "h", u.Text(car.LoadCase.CentreOfGravityHeight)),
            ("Loaded tyre radius, all wheels", "R", u.Text(car.Vehicle.Tyres.Front.LoadedRadius)),
            ("Pad friction, front and rear", "μ", N(car.Front.FrictionCoefficient, "0.00")),
            ("Front caliper: one piston on one side, diameter", "d₁", u.Text(car.FrontPiston)),
            ("Front disc: effective radius", "r₁", u.Text(car.Front.EffectiveRadius)),
            ("Rear caliper: one piston on one side, diameter", "d₂", u.Text(car.RearPiston)),
            ("Rear disc: effective radius", "r₂", u.Text(car.Rear.EffectiveRadius)),
            ("Valve in the rear line: knee", "pₖ", u.Text(car.Valve.Knee)),
            ("Valve in the rear line: slope", "s", N(car.Valve.Slope, "0.00")),
            ("Pedal ratio", "iₚ", N(car.Pedal.Lever.RatioAt(Length.Zero), "0.0")),
            ("Bore of the tandem master cylinder", "dₘ", u.Text(car.MasterBore)),
            ("Booster: diaphragm diameter (85 % of its area counts)", "D", u.Text(car.Booster.DiaphragmDiameter)),
            ("Booster: output over input below run-out", "b", N(car.Booster.BoostRatio, "0.0")),
            ("Booster: vacuum", "Δp", u.Us
                ? $"{u.Text(vacuum)} ({N(vacuum.InchesOfMercury, "0.0")} inHg)" : N(vacuum.Kilopascals, "0") + " kPa"),
            ("Acceleration of free fall", "g", u.FreeFall),
        ];
    }

    private static string N(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);
}
