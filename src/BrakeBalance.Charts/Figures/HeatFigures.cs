using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Charts.Figures;

/// <summary>Figures of brake heat: each takes what the calculation assembly answers and draws it.</summary>
public static class HeatFigures
{
    private const double FadeMark = 0.9;

    /// <summary>Temperatures of discs or drums and fluid against stop number, with boiling and fade marked.</summary>
    /// <param name="result">The outcome of a cycle.</param>
    /// <param name="brakes">The brakes that were run, for the temperature at which their torque fades.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure TemperatureByStop(HeatResult result, PerAxle<ThermalBrake> brakes, UnitSystem? units = null,
        string id = "heat-stops")
    {
        var figure = new FigureBuilder(id, units, result.Car.Vehicle);
        double[] numbers = [.. result.Stops.Select(s => (double)s.Number)];
        string boil = Fluid(result, figure.Units);
        figure
            .Title($"{boil}; {Hottest(result, figure.Units)}")
            .Describe(
                $"{Cycle(result, figure.Units)}; {result.Car.Name}. Bulk temperatures at the end of each stop; "
                    + $"boiling points of {result.Fluid.Name} (49 CFR 571.116).{Guessed(result)}",
                $"{boil}. The hottest {Ring(result, Axle.Front)} reaches {figure.Text(Measure.Temperature, result.HottestRing.Front)}, "
                    + $"the rear {figure.Text(Measure.Temperature, result.HottestRing.Rear)}. {Soak(result, figure.Units)}")
            .X("Stop number", "n", Measure.Count, 1, result.Stops.Count)
            .Y("Temperature", "T", Measure.Temperature)
            .Line(Ring(result, Axle.Front), numbers, result.Stops.Select(s => s.RingAtEnd.Front).ToArray(), Tone.Front)
            .Line(Ring(result, Axle.Rear), numbers, result.Stops.Select(s => s.RingAtEnd.Rear).ToArray(), Tone.Rear)
            .Line("front fluid", numbers, result.Stops.Select(s => s.FluidAtEnd.Front).ToArray(), Tone.Front, Dash.Dot)
            .Line("rear fluid", numbers, result.Stops.Select(s => s.FluidAtEnd.Rear).ToArray(), Tone.Rear, Dash.Dot)
            .Level("wet boiling", result.Fluid.WetBoilingPoint.Kelvins, Tone.Other, Dash.Dash)
            .Level("dry boiling", result.Fluid.DryBoilingPoint.Kelvins, Tone.Guide, Dash.DashDot);
        double highest = Math.Max(result.HottestRing.Front.Kelvins, result.HottestRing.Rear.Kelvins);
        AddFade(figure, "front fades 10 %", brakes.Front.Fade, Tone.Front, highest);
        AddFade(figure, "rear fades 10 %", brakes.Rear.Fade, Tone.Rear, highest);
        return figure.Table(StopTables.HeatStops(result, figure.Units)).Build();
    }

    /// <summary>Deceleration and the front brakes' share of the work against stop number.</summary>
    /// <param name="result">The outcome of a cycle.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure Drift(HeatResult result, UnitSystem? units = null, string id = "heat-drift")
    {
        var figure = new FigureBuilder(id, units, result.Car.Vehicle);
        HeatStop[] braked = [.. result.Stops.Where(s => s.FrontShare is not null)];
        (string cold, string hot) = (Percent(braked[0].FrontShare!.Value), Percent(braked[^1].FrontShare!.Value));
        double[] numbers = [.. braked.Select(s => (double)s.Number)];
        double first = braked[0].MeanDeceleration.MetersPerSecondSquared;
        return figure
            .Title(cold == hot ? $"While the brakes heat the front share of the work stays at {cold}"
                : $"While the brakes heat the front share of the work goes from {cold} to {hot}")
            .Describe(
                $"{Cycle(result, figure.Units)}; {result.Car.Name}. Front brakes' share of the work; "
                    + "torque over that at reference friction; deceleration over the first stop's."
                    + (braked.All(s => s.TorqueFactorAtEnd is { Front: 1, Rear: 1 })
                        ? " By the file, friction does not change with temperature." : ""),
                $"The front share is {cold} in the first stop and {hot} in the last; the last stop reaches "
                    + $"{Percent(braked[^1].MeanDeceleration.MetersPerSecondSquared / first)} of the first stop's deceleration.")
            .X("Stop number", "n", Measure.Count, 1, Math.Max(2, result.Stops.Count))
            .Y("Fraction", "", Measure.Percent, 0)
            .Line("front share of the work", numbers, braked.Select(s => s.FrontShare!.Value).ToArray(), Tone.Main, Dash.Solid, 2.5)
            .Line("front torque", numbers, braked.Select(s => s.TorqueFactorAtEnd.Front).ToArray(), Tone.Front, Dash.Dash)
            .Line("rear torque", numbers, braked.Select(s => s.TorqueFactorAtEnd.Rear).ToArray(), Tone.Rear, Dash.DashDot)
            .Line("deceleration", numbers, braked.Select(s => s.MeanDeceleration.MetersPerSecondSquared / first)
                .ToArray(), Tone.Guide, Dash.Dot)
            .Build();
    }

    /// <summary>Temperatures over the time of a cycle.</summary>
    /// <param name="result">The outcome of a cycle with its trace.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    public static Figure OverTime(HeatResult result, UnitSystem? units = null)
    {
        var figure = new FigureBuilder("heat-time", units, result.Car.Vehicle);
        double[] times = [.. result.Trace.Select(s => s.TimeSeconds)];
        double[] Kelvin(Func<HeatSample, double> celsius) => [.. result.Trace.Select(s => celsius(s) + 273.15)];
        string fluid = Fluid(result, figure.Units);
        return figure
            .KeyWhereCrowded()
            .Title($"{fluid}; {Hottest(result, figure.Units)}")
            .Describe(
                $"{Cycle(result, figure.Units)}, then parked; {result.Car.Name}. "
                    + $"Bulk temperatures of disc or drum, hat and fluid.{Guessed(result)}",
                $"{fluid}. {Finding.Capital(Hottest(result, figure.Units))}. {Soak(result, figure.Units)} " +
                $"Disc or drum: front up to {figure.Text(Measure.Temperature, result.HottestRing.Front)}, "
                    + $"rear up to {figure.Text(Measure.Temperature, result.HottestRing.Rear)}; "
                    + $"fluid up to {figure.Text(Measure.Temperature, result.HottestFluid.Front)} front "
                    + $"and {figure.Text(Measure.Temperature, result.HottestFluid.Rear)} rear.")
            .X("Time", "t", Measure.Time, 0)
            .Y("Temperature", "T", Measure.Temperature)
            .Line(Ring(result, Axle.Front), times, Kelvin(s => s.RingCelsius.Front), Tone.Front, Dash.Solid, 1.5)
            .Line(Ring(result, Axle.Rear), times, Kelvin(s => s.RingCelsius.Rear), Tone.Rear, Dash.Solid, 1.5)
            .Line("front hat", times, Kelvin(s => s.HatCelsius.Front), Tone.Front, Dash.Dash, 1.5)
            .Line("front fluid", times, Kelvin(s => s.FluidCelsius.Front), Tone.Front, Dash.Dot)
            .Line("rear fluid", times, Kelvin(s => s.FluidCelsius.Rear), Tone.Rear, Dash.Dot)
            .Level("wet boiling", result.Fluid.WetBoilingPoint.Kelvins, Tone.Other, Dash.Dash)
            .Level("dry boiling", result.Fluid.DryBoilingPoint.Kelvins, Tone.Guide, Dash.DashDot)
            .Table(StopTables.HeatStops(result, figure.Units))
            .Build();
    }

    /// <summary>What the fluid does in a cycle and parked after it, in one sentence without its full stop.</summary>
    /// <param name="result">The outcome of a cycle.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>The sentence, made from the results.</returns>
    public static string Fluid(HeatResult result, UnitSystem units)
    {
        string of = Invariant.Text($" of {result.Stops.Count}");
        string parked = "once the car is parked";
        string dry = result.FirstDryBoilingStop is { } later ? Invariant.Text($", new fluid in stop {later}")
            : result.DryBoilingMargin.Kelvins < 0 ? $", new fluid {parked}" : "";
        return result.FirstBoilingStop is { } stop ? Invariant.Text($"Old fluid boils in stop {stop}") + of + dry
            : result.WetBoilingMargin.Kelvins >= 0
                ? $"The fluid stays {StopTables.Kelvins(result.WetBoilingMargin, units)} below its wet boiling point, also {parked}"
            : BoilsDriving(result) ? "Old fluid boils between two stops" + dry
            : $"Old fluid boils {parked}{dry}";
    }

    /// <summary>How hot the fluid gets once the car is parked, in one sentence.</summary>
    /// <param name="result">The outcome of a cycle.</param>
    /// <param name="units">The system of units.</param>
    public static string Soak(HeatResult result, UnitSystem units)
    {
        string One(string axle, Temperature hottest, Duration after) => after > Duration.Zero
            ? Invariant.Text($"{axle} {Measure.Temperature.Text(hottest.Kelvins, units)} after {after.Minutes:0} min")
            : $"{axle} cools from {Measure.Temperature.Text(hottest.Kelvins, units)}";
        HeatSoak soak = result.Soak;
        return $"Parked at once, no wind, the fluid peaks: {One("front", soak.HottestFluid.Front, soak.HottestAfter.Front)}, "
            + $"{One("rear", soak.HottestFluid.Rear, soak.HottestAfter.Rear)}.";
    }

    internal static string Hottest(HeatResult result, UnitSystem units)
    {
        bool front = result.HottestRing.Front >= result.HottestRing.Rear;
        return $"{(front ? "front" : "rear")} brakes reach "
            + Measure.Temperature.Text(front ? result.HottestRing.Front : result.HottestRing.Rear, units);
    }

    private static string Ring(HeatResult result, Axle axle) => (axle == Axle.Front ? "front " : "rear ")
        + (result.Car.Vehicle?.Brakes[axle] switch { DiscBrake => "disc", DrumBrake => "drum", _ => "disc or drum" });

    private static string Guessed(HeatResult result) =>
        result.Car.Vehicle?.AxleDynamics is { Front.Heat: not null, Rear.Heat: not null } ? ""
        : " Where the file gives no heat entry, mass and cooling are estimated from the brake's size.";

    private static string Cycle(HeatResult result, UnitSystem units) => Finding.Capital(InBoth.Only(result.Cycle, units == UnitSystem.Us));

    private static bool BoilsDriving(HeatResult result) =>
        Math.Max(result.HottestFluidDriving.Front.Kelvins, result.HottestFluidDriving.Rear.Kelvins) > result.Fluid.WetBoilingPoint.Kelvins;

    /// <summary>
    /// The temperature at which torque has fallen to nine tenths, beyond its greatest; null when it does not fall so far.
    /// </summary>
    internal static Temperature? FadeTemperature(FadeCurve fade)
    {
        double hottest = fade.Hottest.DegreesCelsius;
        double greatest = 0;
        for (double celsius = 20; celsius <= hottest; celsius += 5)
        {
            double factor = fade.FactorAt(Temperature.FromDegreesCelsius(celsius));
            greatest = Math.Max(greatest, factor);
            if (factor < FadeMark * greatest)
            {
                return Temperature.FromDegreesCelsius(celsius);
            }
        }

        return null;
    }

    private static void AddFade(FigureBuilder figure, string name, FadeCurve fade, Tone tone, double highestKelvins)
    {
        // A mark far above everything that happens would only press the curves together.
        if (FadeTemperature(fade) is { } at && at.Kelvins < highestKelvins + 150)
        {
            figure.Level(name, at.Kelvins, tone, Dash.LongDash);
        }
    }

    private static string Percent(double value) => Measure.Percent.Text(value, UnitSystem.Si);
}
