using Microsoft.Data.Analysis;
using UnitsNet.Units;

namespace BrakeBalance.Charts.Tables;

/// <summary>Answers about a car as data frames, in the display units; <c>DataFrame.SaveCsv</c> writes them to a file.</summary>
public static class BalanceTables
{
    private static readonly Measure Threshold = Measure.Of(
        "threshold pressure", PressureUnit.Pascal, (PressureUnit.Bar, "bar", 0.1), (PressureUnit.PoundForcePerSquareInch, "psi", 1));

    // What was measured on the car stands as it was read, finer than a travel that is worked out.
    private static readonly Measure Size = Measure.Of(
        "size", LengthUnit.Meter, (LengthUnit.Millimeter, "mm", 0.1), (LengthUnit.Inch, "in", 0.01));
    private static readonly Measure Weight = Measure.Of("mass", MassUnit.Kilogram, (MassUnit.Kilogram, "kg", 1), (MassUnit.Pound, "lb", 1));

    /// <summary>The states of load of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each load case.</returns>
    public static DataFrame LoadCases(Vehicle vehicle, UnitSystem? units = null) => OverRanges(vehicle, car =>
    {
        IReadOnlyList<LoadCase> loads = car.LoadCases;
        return new TableBuilder(units)
            .Words("Load case", loads.Select(load => load.Name))
            .Rounded("Mass m", Weight, loads.Select(load => (double?)load.Mass.Kilograms))
            .Rounded("Front axle to centre of gravity a", Size,
                loads.Select(load => (double?)load.FrontAxleToCentreOfGravity.Meters))
            .Rounded("Centre of gravity to rear axle b", Size,
                loads.Select(load => (double?)(car.Wheelbase - load.FrontAxleToCentreOfGravity).Meters))
            .Rounded("Height of the centre of gravity h", Size, loads.Select(load => (double?)load.CentreOfGravityHeight.Meters))
            .Build().Frame;
    });

    /// <summary>The brakes of both axles as the force they give for a pressure.</summary>
    /// <param name="vehicle">The car.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each axle; last the braking force of both wheels for 10 bar, or 100 psi, above the threshold.</returns>
    public static DataFrame Brakes(Vehicle vehicle, UnitSystem? units = null) => OverRanges(vehicle, car =>
    {
        double step = (units ?? Display.Units) == UnitSystem.Us ? Pressure.FromPoundsForcePerSquareInch(100).Pascals : 1e6;
        (Brake Brake, double RadiusMetres)[] axles =
        [
            (car.Brakes.Front, car.Tyres.Front.LoadedRadius.Meters),
            (car.Brakes.Rear, car.Tyres.Rear.LoadedRadius.Meters),
        ];
        return new TableBuilder(units)
            .Words("Axle", "front", "rear")
            .Rounded("Brake factor C*", Measure.Number, axles.Select(axle => (double?)axle.Brake.BrakeFactor))
            .Rounded("Piston area of one brake A", Measure.Area, axles.Select(axle => (double?)axle.Brake.PistonArea.SquareMeters))
            .Rounded("Effective radius r", Size, axles.Select(axle => (double?)axle.Brake.EffectiveRadius.Meters))
            .Rounded("Loaded tyre radius R", Size, axles.Select(axle => (double?)axle.RadiusMetres))
            .Rounded("Threshold pressure", Threshold, axles.Select(axle => (double?)axle.Brake.ThresholdPressure.Pascals))
            .Rounded("Braking force per " + Measure.LinePressure.Text(step, units ?? Display.Units).Replace('\u00a0', ' '),
                Measure.ControlForce,
                axles.Select(axle => (double?)(2 * axle.Brake.TorqueNewtonMetresPerPascal * step / axle.RadiusMetres)))
            .Build().Frame;
    });

    /// <summary>Axle loads and ideal braking forces at a series of decelerations.</summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="brakingRates">Decelerations [–]; not negative.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each rate.</returns>
    public static DataFrame AxleLoads(BalanceModel model, IReadOnlyList<double> brakingRates, UnitSystem? units = null) =>
        OverRanges(model, of =>
    {
        PerAxle<Force>[] loads = [.. brakingRates.Select(of.NormalReactions)];
        PerAxle<Force>[] ideal = [.. brakingRates.Select(of.IdealForces)];
        return new TableBuilder(units)
            .Rounded("Deceleration z", Measure.InG, brakingRates.Select(rate => (double?)rate))
            .Rounded("Front load N₁", Measure.BrakeForce, loads.Select(load => (double?)load.Front.Newtons))
            .Rounded("Rear load N₂", Measure.BrakeForce, loads.Select(load => (double?)load.Rear.Newtons))
            .Rounded("Ideal front force T₁", Measure.BrakeForce, ideal.Select(force => (double?)force.Front.Newtons))
            .Rounded("Ideal rear force T₂", Measure.BrakeForce, ideal.Select(force => (double?)force.Rear.Newtons))
            .Rounded("Ideal rear share", Measure.Percent, ideal.Select(force => Share(force)))
            .Build().Frame;
    });

    /// <summary>The first lock-up on a series of surfaces.</summary>
    /// <param name="model">The car in one load case.</param>
    /// <param name="adhesions">Adhesions [–]; above 0, at most 2.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each surface; empty cells where no axle locks up to the highest pressure.</returns>
    public static DataFrame LockUps(BalanceModel model, IReadOnlyList<double> adhesions, UnitSystem? units = null) =>
        OverRanges(model, of =>
    {
        LockUp?[] lockUps = [.. adhesions.Select(of.FirstLockUp)];
        return new TableBuilder(units)
            .Rounded("Adhesion k", Measure.Number, adhesions.Select(adhesion => (double?)adhesion))
            .Words("Locks first", lockUps.Select(First))
            .Rounded("Deceleration z", Measure.InG, lockUps.Select(lockUp => lockUp?.At.BrakingRate))
            .Rounded("Front line pressure", Measure.LinePressure, lockUps.Select(lockUp => lockUp?.At.LinePressures.Front.Pascals))
            .Rounded("Rear line pressure", Measure.LinePressure, lockUps.Select(lockUp => lockUp?.At.LinePressures.Rear.Pascals))
            .Rounded("Adhesion used, front f₁", Measure.Number, lockUps.Select(lockUp => lockUp?.At.AdhesionUtilisation.Front))
            .Rounded("Adhesion used, rear f₂", Measure.Number, lockUps.Select(lockUp => lockUp?.At.AdhesionUtilisation.Rear))
            .Rounded("Efficiency", Measure.Percent, lockUps.Select(lockUp => lockUp?.Efficiency))
            .Build().Frame;
    });

    /// <summary>Two set-ups side by side: on each surface, in each load case, which axle locks first and what it costs.</summary>
    /// <param name="before">The car as it is.</param>
    /// <param name="after">The car as it might be; with the same load cases.</param>
    /// <param name="adhesions">Adhesions [–]; above 0, at most 2.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each load case and surface.</returns>
    /// <exception cref="ArgumentException">The set-ups have different load cases.</exception>
    public static DataFrame Compare(Vehicle before, Vehicle after, IReadOnlyList<double> adhesions, UnitSystem? units = null)
    {
        Refuse.If(!before.LoadCases.Select(load => load.Name).SequenceEqual(after.LoadCases.Select(load => load.Name)),
            "The two set-ups must have the same load cases to be compared.", nameof(after));

        var cases = before.LoadCases.Zip(after.LoadCases)
            .Select(pair => (Load: pair.First.Name, Before: new BalanceModel(before, pair.First),
                After: new BalanceModel(after, pair.Second)))
            .SelectMany(models => adhesions.Select(adhesion =>
                (models.Load, Adhesion: adhesion, Before: models.Before.FirstLockUp(adhesion), After: models.After.FirstLockUp(adhesion))))
            .ToList();
        return new TableBuilder(units)
            .Words("Load case", cases.Select(row => row.Load))
            .Rounded("Adhesion k", Measure.Number, cases.Select(row => (double?)row.Adhesion))
            .Words("Before: locks first", cases.Select(row => First(row.Before)))
            .Words("After: locks first", cases.Select(row => First(row.After)))
            .Rounded("Before: deceleration z", Measure.InG, cases.Select(row => row.Before?.At.BrakingRate))
            .Rounded("After: deceleration z", Measure.InG, cases.Select(row => row.After?.At.BrakingRate))
            .Rounded("Before: efficiency", Measure.Percent, cases.Select(row => row.Before?.Efficiency))
            .Rounded("After: efficiency", Measure.Percent, cases.Select(row => row.After?.Efficiency))
            .Build().Frame;
    }

    /// <summary>How a series of valve settings does.</summary>
    /// <param name="outcomes">The settings and how they do.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>A row for each setting.</returns>
    public static DataFrame Settings(IReadOnlyList<SettingOutcome> outcomes, UnitSystem? units = null) => new TableBuilder(units)
        .Words($"Knee {Measure.LinePressure.In(units ?? Display.Units).Bracketed}", outcomes.Select(outcome =>
            SettingWords.Number(outcome.Knee, units ?? Display.Units).Split(' ')[0]))
        .Rounded("Slope", Measure.Number, outcomes.Select(outcome => (double?)outcome.Slope))
        .Words("Front first everywhere", outcomes.Select(outcome => outcome.FrontFirstEverywhere ? "yes" : "no"))
        .Column("Cases with the rear first", Measure.Percent, outcomes.Select(outcome => (double?)Math.Round(outcome.RearFirstShare, 3)))
        .Column("Mean efficiency", Measure.Percent, outcomes.Select(outcome => (double?)Math.Round(outcome.MeanEfficiency, 3)))
        .Column("Worst efficiency", Measure.Percent, outcomes.Select(outcome => (double?)Math.Round(outcome.WorstEfficiency, 3)))
        .Build().Frame;

    private static string First(LockUp? lockUp) =>
        lockUp is null ? "neither" : lockUp.First switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "both" };

    /// <summary>A table of a model, each cell with its band where the car's file gives ranges.</summary>
    internal static DataFrame OverRanges(BalanceModel model, Func<BalanceModel, DataFrame> table) => OverRanges(model.Vehicle, car => table(
        ReferenceEquals(car, model.Vehicle) ? model : new BalanceModel(car, car.LoadCase(model.LoadCase.Name), model.Speed)));

    private static DataFrame OverRanges(Vehicle vehicle, Func<Vehicle, DataFrame> table)
    {
        Banded<DataFrame> all = Banded.Of(vehicle, table);
        bool IsLike(DataFrame other) => other.Rows.Count == all.Middle.Rows.Count;
        all = all with { Drawn = [.. all.Drawn.Where(IsLike)], OfClass = [.. all.OfClass.Where(IsLike)] };
        return !all.HasBand ? all.Middle : new NotedFrame(all.Middle.Columns.Select((column, c) => new StringDataFrameColumn(column.Name,
            Enumerable.Range(0, (int)column.Length).Select(row => all.Text(of => FigureTable.Text(of.Columns[c], row))))),
            BandText.LegendOf(vehicle));
    }

    private static double? Share(PerAxle<Force> force) =>
        force.Front.Newtons + force.Rear.Newtons is > 0 and var sum ? force.Rear.Newtons / sum : null;
}
