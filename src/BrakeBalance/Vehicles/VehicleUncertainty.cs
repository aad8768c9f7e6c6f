namespace BrakeBalance.Vehicles;

/// <summary>What a vehicle file leaves uncertain: its ranges, and the cars that they allow.</summary>
public sealed class VehicleUncertainty
{
    private const int Draws = 48;

    private readonly Vehicle _middle;
    private readonly Func<ReadOnlySpan<double>, Vehicle?> _build;
    private readonly Lock _one = new();
    private readonly Lazy<IReadOnlyList<DrawnVehicle>> _drawn;

    // How a car is built from where in each range its value lies is for the reader of its file to say.
    internal VehicleUncertainty(Vehicle middle, IReadOnlyList<ValueRange> ranges, Func<ReadOnlySpan<double>, Vehicle?> build)
    {
        (_middle, Ranges, _build) = (middle, ranges, build);
        _drawn = new(Drawn);
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
        if (fractions.Length != Ranges.Count)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"{Ranges.Count} fractions are needed, one for each range; there are {fractions.Length}."),
                    nameof(fractions));
        }

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
    public IReadOnlyList<DrawnVehicle> DrawsOf(Vehicle vehicle)
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
            : set ? [.. _drawn.Value.Select(draw => draw with { Vehicle = draw.Vehicle with { Hydraulics = vehicle.Hydraulics } })]
            : _drawn.Value;
    }

    // A fixed sequence of low discrepancy, so that the answer depends on no chance: fractional parts of multiples of powers of a root.
    private IReadOnlyList<DrawnVehicle> Drawn()
    {
        double root = 1.5;
        for (int i = 0; i < 60; i++)
        {
            root = Math.Pow(1 + root, 1.0 / (Ranges.Count + 1));
        }

        bool[] friction = [.. Ranges.Select(range => range.Path.EndsWith(".brake.friction", StringComparison.Ordinal))];
        List<DrawnVehicle> drawn = [];
        for (int n = 1; n <= Draws; n++)
        {
            double[] fractions = [.. Ranges.Select((_, i) => friction[i] ? 0.5 : (0.5 + n * Math.Pow(root, -(i + 1))) % 1)];
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
