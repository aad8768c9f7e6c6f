namespace BrakeBalance.Charts.Figures;

/// <summary>The force picture of a car that is only partly known: bands in place of lines.</summary>
public static class BandFigures
{
    private const int Draws = 200;
    private const int Points = 41;

    /// <summary>
    /// Rear against front brake force over the weight, ideal and installed, as bands that hold 90 % of the cars within the ranges.
    /// </summary>
    /// <param name="car">The car with its ranges; without any the bands shrink to lines.</param>
    /// <param name="units">The system of units; null for <see cref="Display.Units"/>.</param>
    /// <param name="id">The figure's short name.</param>
    public static Figure BrakeForces(Vehicle car, UnitSystem? units = null, string id = "force-bands")
    {
        BalanceModel middle = Model(car);
        double top = 0.98 * Math.Min(0.7, Front(middle, 1));
        double[] front = [.. Enumerable.Range(1, Points).Select(i => top * i / Points)];
        BalanceModel[] cars = [middle, .. Drawn(car)];
        double[][] ideal = [.. cars.Select(model => front.Select(t => IdealRear(model, t)).ToArray())];
        double[][] installed = [.. cars.Select(model => front.Select(t => InstalledRear(model, t)).ToArray())];
        double[] Bound(double[][] curves, double share) =>
            [.. Enumerable.Range(0, Points)
            .Select(i => curves.Select(c => c[i]).Order().ElementAt((int)Math.Clamp(share * curves.Length, 0, curves.Length - 1)))];
        BandedAnswer margin = MeasuringOrder.Bands(car, samples: 64)[0];
        string next = margin.MeasureNext.Count == 0
            ? "Every number of the file is given, so each band is a line."
            : $"Measure next: {margin.MeasureNext[0].Path}. {margin.MeasureNext[0].How}.";
        int ranges = car.Uncertainty?.Ranges.Count ?? 0;
        bool known = ranges == 0;
        return new FigureBuilder(id, units)
            .Title($"{car.Name}: " + (known ? "every number is given, and the bands have shrunk to lines"
                : $"{ranges} numbers are known as ranges only, and the lines are bands"))
            .Describe(
                $"Rear against front brake force of {car.InText}, both over its weight: "
                    + "ideal and installed distribution for the cars within the ranges; 90 % lie in each band.",
                $"Where the bands overlap, the numbers known so far do not tell which axle locks first. {next}")
            .X("Front brake force over weight", "T₁/G", Measure.Number, 0)
            .Y("Rear brake force over weight", "T₂/G", Measure.Number, 0)
            .Band("ideal distribution", front, Bound(ideal, 0.05), Bound(ideal, 0.95), Tone.Ideal, label: "")
            .Band("installed", front, Bound(installed, 0.05), Bound(installed, 0.95), Tone.Rear, label: "")
            .Line("ideal, middle of the ranges", front, ideal[0], Tone.Ideal, Dash.LongDash, 2.2, label: "ideal", labelAt: 0.95)
            .Line("installed, middle of the ranges", front, installed[0], Tone.Main, Dash.Solid, 2.4, label: "installed", labelAt: 0.85)
            .Table(table => table
                .Column("Front over weight", Measure.Number, Every(front))
                .Column("Ideal rear, low", Measure.Number, Every(Bound(ideal, 0.05)))
                .Column("Ideal rear, high", Measure.Number, Every(Bound(ideal, 0.95)))
                .Column("Installed rear, low", Measure.Number, Every(Bound(installed, 0.05)))
                .Column("Installed rear, high", Measure.Number, Every(Bound(installed, 0.95))))
            .Build();
    }

    private static double[] Every(double[] values) => [.. values.Where((_, i) => i % 5 == 0)];

    private static BalanceModel Model(Vehicle vehicle) => new(vehicle, vehicle.LoadCases[0]);

    private static IEnumerable<BalanceModel> Drawn(Vehicle car)
    {
        var random = new Random(7);
        double[] fractions = new double[car.Uncertainty?.Ranges.Count ?? 0];
        for (int i = 0; i < (car.Uncertainty is null ? 0 : Draws); i++)
        {
            for (int j = 0; j < fractions.Length; j++)
            {
                fractions[j] = random.NextDouble();
            }

            if (car.Uncertainty!.Draw(fractions) is { } vehicle)
            {
                yield return Model(vehicle);
            }
        }
    }

    private static double Front(BalanceModel model, double rate) => model.IdealForces(rate).Front / model.Weight;

    private static double IdealRear(BalanceModel model, double front)
    {
        double low = 0, high = model.RearLiftOffRate;
        for (int i = 0; i < 40; i++)
        {
            double rate = (low + high) / 2;
            (low, high) = Front(model, rate) < front ? (rate, high) : (low, rate);
        }

        return model.IdealForces(high).Rear / model.Weight;
    }

    private static double InstalledRear(BalanceModel model, double front)
    {
        double low = 0, high = 3 * model.MaximumPressure.Pascals;
        for (int i = 0; i < 50; i++)
        {
            double pascals = (low + high) / 2;
            (low, high) = model.StateAt(pascals).FrontForceNewtons < front * model.Weight.Newtons ? (pascals, high) : (low, pascals);
        }

        return model.StateAt(high).RearForceNewtons / model.Weight.Newtons;
    }
}
