namespace BrakeBalance.Charts.Tables;

/// <summary>Tables of stops and of heat.</summary>
public static class StopTables
{
    private static readonly Measure PerSecond = Measure.Pure("growth rate", "1/s", 1, 0.01);

    /// <summary>Set-ups side by side: distances, first lock and whether the car turns round.</summary>
    /// <param name="rows">The set-ups.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable SideBySide(IReadOnlyList<StopComparisonRow> rows, UnitSystem? units = null) =>
        new TableBuilder(units, rows[0].Setup.Car.Vehicle)
            .Words("Set-up", rows.Select(r => r.Name))
            .Rounded("Full pressure, wheels locked", Measure.Distance,
                rows.Select(r => (double?)r.Emergency.Distance.Meters))
            .Rounded("Just below lock-up", Measure.Distance,
                rows.Select(r => r.Threshold?.Distance.Meters))
            .Rounded("Anti-lock bound", Measure.Distance, rows.Select(r => (double?)r.Bound.Distance.Meters))
            .Words("Full pressure: locks first", rows.Select(r => First(r.Emergency.FirstLock)))
            .Words("Steady: locks first", rows.Select(r => First(LockPressure.Lowest(r.Setup.Car, Speed.Zero)?.Axle)))
            .Rounded("Largest sideslip, 8 % past lock-up", Measure.Angle,
                rows.Select(r => (double?)r.FirmOnCrown.GreatestSideslip.Radians))
            .Words("Swaps ends", rows.Select(r => r.FirmOnCrown.SwapsEnds ? "yes" : "no"))
            .Build();

    /// <summary>How fast a small turn grows or dies out with one axle locked.</summary>
    /// <param name="car">The car on its surface.</param>
    /// <param name="speeds">The speeds.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable Growth(BrakedCar car, IReadOnlyList<Speed> speeds, UnitSystem? units = null)
    {
        double[] rear = [.. speeds.Select(v => YawStability.GrowthPerSecond(car, Axle.Rear, v))];
        return new TableBuilder(units, car.Vehicle)
            .Rounded("Speed", Measure.Speed, speeds.Select(v => (double?)v.MetersPerSecond))
            .Rounded("Rear locked: growth rate", PerSecond, rear.Select(g => (double?)g))
            .Rounded("Time to double", Measure.Time, rear.Select(g => g > 0 ? Math.Log(2) / g : (double?)null))
            .Rounded("Front locked: growth rate", PerSecond,
                speeds.Select(v => (double?)YawStability.GrowthPerSecond(car, Axle.Front, v)))
            .Build();
    }

    /// <summary>The stops of a heat cycle.</summary>
    /// <param name="result">The outcome of the cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable HeatStops(HeatResult result, UnitSystem? units = null)
    {
        IReadOnlyList<HeatStop> stops = result.Stops;
        return new TableBuilder(units, result.Car.Vehicle)
            .Rounded("Stop", Measure.Count, stops.Select(s => (double?)s.Number))
            .Rounded("Mean deceleration", Measure.Deceleration, stops.Select(s => (double?)s.MeanDeceleration.MetersPerSecondSquared))
            .Rounded("Line pressure", Measure.LinePressure, stops.Select(s => (double?)s.LinePressure.Pascals))
            .Rounded("Front disc or drum", Measure.Temperature, stops.Select(s => (double?)s.RingAtEnd.Front.Kelvins))
            .Rounded("Rear disc or drum", Measure.Temperature, stops.Select(s => (double?)s.RingAtEnd.Rear.Kelvins))
            .Rounded("Front fluid", Measure.Temperature, stops.Select(s => (double?)s.FluidAtEnd.Front.Kelvins))
            .Rounded("Rear fluid", Measure.Temperature, stops.Select(s => (double?)s.FluidAtEnd.Rear.Kelvins))
            .Rounded("Front share of heat", Measure.Percent, stops.Select(s => (double?)s.FrontShare))
            .Build();
    }

    /// <summary>Where the kinetic energy of a stop went.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable WhereTheEnergyWent(StopResult stop, UnitSystem? units = null)
    {
        StopEnergy energy = stop.Energy;
        Energy[] parts = [energy.Brakes.Front, energy.Brakes.Rear, energy.Tyres.Front, energy.Tyres.Rear, energy.Resistances];
        return new TableBuilder(units, stop.Car.Vehicle)
            .Words("Where", "front brakes", "rear brakes", "front tyres", "rear tyres", "air, rolling, slope, engine")
            .Rounded("Energy", Measure.Energy, parts.Select(e => (double?)e.Joules))
            .Rounded("Share", Measure.Percent, parts.Select(e => (double?)(e / energy.Kinetic)))
            .Build();
    }

    /// <summary>Heat and temperature of each axle in one stop.</summary>
    /// <param name="stop">The stop.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="car">The car; null where nothing is said of its ranges.</param>
    public static FigureTable HeatOf(HeatStop stop, UnitSystem? units = null, Vehicle? car = null) =>
        new TableBuilder(units, car)
            .Words("Axle", "front", "rear")
            .Rounded("Heat", Measure.Energy, new[] { stop.Heat.Front, stop.Heat.Rear }.Select(e => (double?)e.Joules))
            .Rounded("Disc or drum before", Measure.Temperature,
                new[] { stop.RingAtStart.Front, stop.RingAtStart.Rear }.Select(t => (double?)t.Kelvins))
            .Rounded("after", Measure.Temperature,
                new[] { stop.RingAtEnd.Front, stop.RingAtEnd.Rear }.Select(t => (double?)t.Kelvins))
            .Build();

    /// <summary>Which axle locks first, and at which pressure, in several states of one car.</summary>
    /// <param name="states">Name and car of each state.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <returns>The table; no pressure where none brings an axle to its limit.</returns>
    public static FigureTable LockOrder(IReadOnlyList<(string Name, BrakedCar Car)> states, UnitSystem? units = null)
    {
        (Pressure LinePressure, Axle Axle)?[] locks = [.. states.Select(s => LockPressure.Lowest(s.Car, Speed.Zero))];
        return new TableBuilder(units, states[0].Car.Vehicle)
            .Words("State", states.Select(s => s.Name))
            .Words("Locks first", locks.Select(l => First(l?.Axle)))
            .Rounded("Line pressure", Measure.LinePressure, locks.Select(l => l?.LinePressure.Pascals))
            .Build();
    }

    /// <summary>What each grade of fluid has left to its wet boiling point in a cycle.</summary>
    /// <param name="result">The outcome of the cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static FigureTable Fluids(HeatResult result, UnitSystem? units = null)
    {
        IReadOnlyList<BrakeFluidGrade> grades = BrakeFluidGrade.All;
        return new TableBuilder(units, result.Car.Vehicle)
            .Words("Fluid", grades.Select(g => g.Name))
            .Rounded("Dry boiling point", Measure.Temperature, grades.Select(g => (double?)g.DryBoilingPoint.Kelvins))
            .Rounded("Wet boiling point", Measure.Temperature, grades.Select(g => (double?)g.WetBoilingPoint.Kelvins))
            .Words("Left to wet boiling", grades.Select(g => Kelvins((result with { Fluid = g }).WetBoilingMargin, units ?? Display.Units)))
            .Build();
    }

    /// <summary>The distances of a study of many stops.</summary>
    /// <param name="study">The study.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="car">The car; null where nothing is said of its ranges.</param>
    public static FigureTable Study(StopStudyResult study, UnitSystem? units = null, Vehicle? car = null)
    {
        double[] shares = [0.05, 0.5, 0.95];
        return new TableBuilder(units, car)
            .Words("Of all stops", "5 % end within", "half end within", "95 % end within")
            .Rounded("Distance", Measure.Distance, shares.Select(s => (double?)study.DistanceQuantile(s).Meters))
            .Build();
    }

    private static string First(Axle? axle) => axle switch { Axle.Front => "front", Axle.Rear => "rear", _ => "none" };

    /// <summary>A difference of temperatures in words.</summary>
    /// <param name="difference">The difference.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>Rounded to whole kelvins or degrees Fahrenheit.</returns>
    public static string Kelvins(TemperatureDelta difference, UnitSystem units) => units == UnitSystem.Us
        ? Invariant.Text($"{difference.DegreesFahrenheit:0;−0} °F")
        : Invariant.Text($"{difference.Kelvins:0;−0} K");
}
