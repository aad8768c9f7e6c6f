using BrakeBalance.Hydraulics;

namespace BrakeBalance.Vehicles;

/// <summary>What a vehicle file leaves uncertain: its ranges, and the cars that they allow.</summary>
public sealed class VehicleUncertainty
{
    private const int Draws = 96;
    private const int DrawsOfNumbers = 12; // readers are told of a dozen (BandText.Legend)
    private const int DrawsOfClass = 4;

    private readonly Vehicle _middle;
    private readonly Func<ReadOnlySpan<double>, Vehicle?> _build;
    private readonly Lock _one = new();
    private readonly Lazy<IReadOnlyList<DrawnVehicle>> _drawn;
    private readonly Lazy<IReadOnlyList<DrawnVehicle>> _any;
    private readonly Lazy<IReadOnlyList<DrawnVehicle>> _class;

    // How a car is built from where in each range its value lies is for the reader of its file to say.
    internal VehicleUncertainty(Vehicle middle, IReadOnlyList<ValueRange> ranges, Func<ReadOnlySpan<double>, Vehicle?> build)
    {
        (_middle, Ranges, _build) = (middle, ranges, build);
        bool[] friction = [.. Ranges.Select(range => range.Path.EndsWith(".brake.friction", StringComparison.Ordinal))];
        _drawn = new(() => Drawn(i => friction[i], Draws));
        _any = new(() => Drawn(_ => false, DrawsOfNumbers));
        _class = new(() => OfClass == 0 ? [] : Drawn(i => !Ranges[i].IsTypical, DrawsOfClass));
    }

    /// <summary>
    /// The entries given as ranges, or filled with those of the car's class, in the order in which <see cref="Draw"/> takes them.
    /// </summary>
    public IReadOnlyList<ValueRange> Ranges { get; }

    /// <summary>How many of the entries are not this car's but typical of its class.</summary>
    public int OfClass => Ranges.Count(range => range.IsTypical);

    /// <summary>The car for a choice of values.</summary>
    /// <param name="fractions">For each range where in it the value lies [–]: 0 for the lower end, 1 for the upper.</param>
    /// <returns>The car; null when these values do not go together, such as a friction at which a shoe locks by itself.</returns>
    /// <exception cref="ArgumentException">There are not as many fractions as ranges.</exception>
    public Vehicle? Draw(ReadOnlySpan<double> fractions)
    {
        Refuse.If(fractions.Length != Ranges.Count,
            $"{Ranges.Count} fractions are needed, one for each range; there are {fractions.Length}.", nameof(fractions));

        lock (_one)
        {
            return _build(fractions);
        }
    }

    /// <summary>
    /// Cars drawn evenly from the ranges, the friction of the brakes at its middle: its spread is one of the <see cref="Conditions"/>.
    /// </summary>
    /// <param name="vehicle">The car of the file; its hydraulics may have been set otherwise since.</param>
    /// <returns>
    /// The cars, with that car's hydraulics; none when the car was changed in anything else, as the ranges are then not its own.
    /// </returns>
    public IReadOnlyList<DrawnVehicle> DrawsOf(Vehicle vehicle) => Of(vehicle, _drawn);

    /// <summary>Cars drawn evenly from all ranges, the friction of the brakes included: what a number of the car can come to.</summary>
    /// <param name="vehicle">The car of the file; its hydraulics may have been set otherwise since.</param>
    /// <returns>The cars, with that car's hydraulics; none when the car was changed in anything else.</returns>
    public IReadOnlyList<Vehicle> CarsOf(Vehicle vehicle) => [.. Of(vehicle, _any).Select(draw => draw.Vehicle)];

    /// <summary>Some cars that differ only in what is typical of the class: a number that differs among them rests on the class.</summary>
    /// <param name="vehicle">The car of the file; its hydraulics may have been set otherwise since.</param>
    /// <returns>The cars, with that car's hydraulics; none when nothing is the class's or the car was changed in anything else.</returns>
    public IReadOnlyList<Vehicle> CarsOfClass(Vehicle vehicle) => [.. Of(vehicle, _class).Select(draw => draw.Vehicle)];

    /// <summary>The same ranges of a modified copy of the car.</summary>
    internal VehicleUncertainty After(Func<Vehicle, Vehicle> change) =>
        new(change(_middle), Ranges, fractions => Draw(fractions) is { } vehicle ? change(vehicle) : null);

    private IReadOnlyList<DrawnVehicle> Of(Vehicle vehicle, Lazy<IReadOnlyList<DrawnVehicle>> drawn)
    {
        bool set = !ReferenceEquals(vehicle.Hydraulics, _middle.Hydraulics);
        Vehicle like = vehicle with
        {
            Hydraulics = _middle.Hydraulics,
            Uncertainty = null,
            Measured = null,
            Conditions = _middle.Conditions,
        };
        return like != _middle ? []
            : !set ? drawn.Value
            : [.. drawn.Value.Select(draw => draw with
            {
                Vehicle = draw.Vehicle with { Hydraulics = Set(draw.Vehicle.Hydraulics, vehicle.Hydraulics) },
            })];
    }

    // Only what was set is set on a drawn car: what its ranges say of bores, slope and other valves stays its own.
    private BrakeHydraulics Set(BrakeHydraulics drawn, BrakeHydraulics set)
    {
        BrakeHydraulics middle = _middle.Hydraulics;
        return Like(middle).DiffersInKneeOnly(set) ? Like(drawn) : set;

        BrakeHydraulics Like(BrakeHydraulics own)
        {
            var bars = (own.Split as BalanceBarSplit, middle.Split as BalanceBarSplit, set.Split as BalanceBarSplit);
            BrakeHydraulics like = bars is ({ } bar, { } before, { } after) && before.FrontForceShare != after.FrontForceShare
                ? own with { Split = bar with { FrontForceShare = after.FrontForceShare } } : own;
            ProportioningValve? valve = set.RearProportioningValve, was = middle.RearProportioningValve;
            return valve is null ? like : like.WithRearKnee(
                own.RearProportioningValve is { } its && valve.Knee.Pascals == was?.Knee.Pascals ? its.Knee : valve.Knee,
                valve.Slope == was?.Slope ? null : valve.Slope);
        }
    }

    // Each value takes every step of its range once, in an order of its own with a fixed seed: so few cars reach all parts of each range.
    private IReadOnlyList<DrawnVehicle> Drawn(Func<int, bool> held, int draws)
    {
        double[][] rows = [.. Ranges.Select((_, i) =>
        {
            var random = RandomNumbers.Stream(draws, i);
            return Enumerable.Range(0, draws).OrderBy(_ => random.NextDouble())
                .Select(step => held(i) ? 0.5 : (step + 0.5) / draws).ToArray();
        })];
        List<DrawnVehicle> drawn = [];
        for (int n = 0; n < draws; n++)
        {
            double[] fractions = [.. rows.Select(row => row[n])];
            if (Draw(fractions) is { } vehicle)
            {
                drawn.Add(new(fractions, vehicle));
            }
        }

        return drawn;
    }
}

/// <summary>A car drawn from the ranges of a vehicle file.</summary>
/// <param name="Fractions">Where in each range its value lies [–].</param>
/// <param name="Vehicle">The car.</param>
public sealed record DrawnVehicle(double[] Fractions, Vehicle Vehicle);
