namespace BrakeBalance.Charts.Tables;

/// <summary>Tables of stops and of heat.</summary>
public static class StopTables
{
    private static readonly Measure PerSecond = Measure.Pure("growth rate", "1/s", 1, 0.01);

    /// <summary>Set-ups side by side: distances, first lock and whether the car turns round.</summary>
    /// <param name="rows">The set-ups.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable SideBySide(IReadOnlyList<StopComparisonRow> rows, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        return new TableBuilder(shown)
            .Words("Set-up", rows.Select(r => r.Name))
            .Column("Full pressure, wheels locked", Measure.Distance,
                rows.Select(r => Rounded(Measure.Distance, r.Emergency.Distance.Meters, shown)))
            .Column("Just below lock-up", Measure.Distance,
                rows.Select(r => Rounded(Measure.Distance, r.Threshold?.Distance.Meters, shown)))
            .Column("Anti-lock bound", Measure.Distance, rows.Select(r => Rounded(Measure.Distance, r.Bound.Distance.Meters, shown)))
            .Words("Full pressure: locks first", rows.Select(r => First(r.Emergency.FirstLock)))
            .Words("Steady: locks first", rows.Select(r => First(LockPressure.Lowest(r.Setup.Car, Speed.Zero)?.Axle)))
            .Column("Largest sideslip, 8 % past lock-up", Measure.Angle,
                rows.Select(r => Rounded(Measure.Angle, r.FirmOnCrown.GreatestSideslip.Radians, shown)))
            .Words("Swaps ends", rows.Select(r => r.FirmOnCrown.SwapsEnds ? "yes" : "no"))
            .Build();
    }

    /// <summary>How fast a small turn grows or dies out with one axle locked.</summary>
    /// <param name="car">The car on its surface.</param>
    /// <param name="speeds">The speeds.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable Growth(BrakedCar car, IReadOnlyList<Speed> speeds, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        double[] rear = [.. speeds.Select(v => YawStability.GrowthPerSecond(car, Axle.Rear, v))];
        return new TableBuilder(shown)
            .Column("Speed", Measure.Speed, speeds.Select(v => Rounded(Measure.Speed, v.MetersPerSecond, shown)))
            .Column("Rear locked: growth rate", PerSecond, rear.Select(g => Rounded(PerSecond, g, shown)))
            .Column("Time to double", Measure.Time, rear.Select(g => Rounded(Measure.Time, g > 0 ? Math.Log(2) / g : null, shown)))
            .Column("Front locked: growth rate", PerSecond,
                speeds.Select(v => Rounded(PerSecond, YawStability.GrowthPerSecond(car, Axle.Front, v), shown)))
            .Build();
    }

    /// <summary>The stops of a heat cycle.</summary>
    /// <param name="result">The outcome of the cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable HeatStops(HeatResult result, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        IEnumerable<double?> Of(Measure measure, Func<HeatStop, double?> si) => result.Stops.Select(s => Rounded(measure, si(s), shown));
        return new TableBuilder(shown)
            .Column("Stop", Measure.Count, Of(Measure.Count, s => s.Number))
            .Column("Mean deceleration", Measure.Deceleration, Of(Measure.Deceleration, s => s.MeanDeceleration.MetersPerSecondSquared))
            .Column("Line pressure", Measure.LinePressure, Of(Measure.LinePressure, s => s.LinePressure.Pascals))
            .Column("Front disc or drum", Measure.Temperature, Of(Measure.Temperature, s => s.RingAtEnd.Front.Kelvins))
            .Column("Rear disc or drum", Measure.Temperature, Of(Measure.Temperature, s => s.RingAtEnd.Rear.Kelvins))
            .Column("Front fluid", Measure.Temperature, Of(Measure.Temperature, s => s.FluidAtEnd.Front.Kelvins))
            .Column("Rear fluid", Measure.Temperature, Of(Measure.Temperature, s => s.FluidAtEnd.Rear.Kelvins))
            .Column("Front share of heat", Measure.Percent, Of(Measure.Percent, s => s.FrontShare))
            .Build();
    }

    /// <summary>Where the kinetic energy of a stop went.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable WhereTheEnergyWent(StopResult stop, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        StopEnergy energy = stop.Energy;
        Energy[] parts = [energy.Brakes.Front, energy.Brakes.Rear, energy.Tyres.Front, energy.Tyres.Rear, energy.Resistances];
        return new TableBuilder(shown)
            .Words("Where", "front brakes", "rear brakes", "front tyres", "rear tyres", "air, rolling, slope, engine")
            .Column("Energy", Measure.Energy, parts.Select(e => Rounded(Measure.Energy, e.Joules, shown)))
            .Column("Part of all", Measure.Percent, parts.Select(e => Rounded(Measure.Percent, e / energy.Kinetic, shown)))
            .Build();
    }

    /// <summary>Heat and temperature of each axle in one stop.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable HeatOf(HeatStop stop, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        return new TableBuilder(shown)
            .Words("Axle", "front", "rear")
            .Column("Heat", Measure.Energy, new[] { stop.Heat.Front, stop.Heat.Rear }.Select(e => Rounded(Measure.Energy, e.Joules, shown)))
            .Column("Disc or drum before", Measure.Temperature,
                new[] { stop.RingAtStart.Front, stop.RingAtStart.Rear }.Select(t => Rounded(Measure.Temperature, t.Kelvins, shown)))
            .Column("after", Measure.Temperature,
                new[] { stop.RingAtEnd.Front, stop.RingAtEnd.Rear }.Select(t => Rounded(Measure.Temperature, t.Kelvins, shown)))
            .Build();
    }

    /// <summary>Which axle locks first, and at which pressure, in several states of one car.</summary>
    /// <param name="states">Name and car of each state.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; no pressure where none brings an axle to its limit.</returns>
    public static FigureTable LockOrder(IReadOnlyList<(string Name, BrakedCar Car)> states, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        (Pressure LinePressure, Axle Axle)?[] locks = [.. states.Select(s => LockPressure.Lowest(s.Car, Speed.Zero))];
        return new TableBuilder(shown)
            .Words("State", states.Select(s => s.Name))
            .Words("Locks first", locks.Select(l => First(l?.Axle)))
            .Column("Line pressure", Measure.LinePressure, locks.Select(l => Rounded(Measure.LinePressure, l?.LinePressure.Pascals, shown)))
            .Build();
    }

    /// <summary>What each grade of fluid has left to its wet boiling point in a cycle.</summary>
    /// <param name="result">The outcome of the cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable Fluids(HeatResult result, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        IReadOnlyList<BrakeFluidGrade> grades = BrakeFluidGrade.All;
        return new TableBuilder(shown)
            .Words("Fluid", grades.Select(g => g.Name))
            .Column("Boils dry", Measure.Temperature, grades.Select(g => Rounded(Measure.Temperature, g.DryBoilingPoint.Kelvins, shown)))
            .Column("Boils wet", Measure.Temperature, grades.Select(g => Rounded(Measure.Temperature, g.WetBoilingPoint.Kelvins, shown)))
            .Words("Left to wet boiling", grades.Select(g => Kelvins((result with { Fluid = g }).WetBoilingMargin, shown)))
            .Build();
    }

    /// <summary>The distances of a study of many stops.</summary>
    /// <param name="study">The study.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable Study(StopStudyResult study, UnitSystem? units = null)
    {
        UnitSystem shown = units ?? Display.Units;
        double[] shares = [0.05, 0.5, 0.95];
        return new TableBuilder(shown)
            .Words("Of all stops", "5 % end within", "half end within", "95 % end within")
            .Column("Distance", Measure.Distance, shares.Select(s => Rounded(Measure.Distance, study.DistanceQuantile(s).Meters, shown)))
            .Build();
    }

    private static string First(Axle? axle) => axle switch { Axle.Front => "front", Axle.Rear => "rear", _ => "none" };

    /// <summary>An SI number whose display value has no more digits than it is worth.</summary>
    private static double? Rounded(Measure measure, double? si, UnitSystem units)
    {
        DisplayUnit unit = measure.In(units);
        return si is { } value ? unit.ToSi(Math.Round(unit.FromSi(value) / unit.RoundTo) * unit.RoundTo) : null;
    }

    /// <summary>A difference of temperatures in words.</summary>
    /// <param name="difference">The difference.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Rounded to whole kelvins or degrees Fahrenheit.</returns>
    public static string Kelvins(TemperatureDelta difference, UnitSystem units) => units == UnitSystem.Us
        ? Invariant.Text($"{difference.DegreesFahrenheit:0} °F")
        : Invariant.Text($"{difference.Kelvins:0} K");
}
