namespace BrakeBalance.Stops;

/// <summary>What the car does while its brakes heat: braking, speeding up, cruising.</summary>
/// <remarks>Built by the factories; a cycle is a list of pieces with constant acceleration or constant line pressure.</remarks>
public sealed record HeatCycle
{
    private HeatCycle(string name, Speed initialSpeed, IReadOnlyList<HeatPiece> pieces)
    {
        Name = name;
        InitialSpeed = initialSpeed;
        Pieces = pieces;
    }

    /// <summary>Name shown in tables and figures.</summary>
    public string Name { get; }

    /// <summary>Speed at the start.</summary>
    public Speed InitialSpeed { get; }

    /// <summary>How many times the car is braked.</summary>
    public int Stops => Pieces.Count(p => p.StartsStop);

    internal IReadOnlyList<HeatPiece> Pieces { get; }

    /// <summary>Equal stops from one speed to another at equal intervals.</summary>
    /// <param name="stops">How many; 1 to 200.</param>
    /// <param name="from">Speed at which each begins; 1 to 150 m/s.</param>
    /// <param name="to">Speed at which each ends; not negative, below <paramref name="from"/>.</param>
    /// <param name="deceleration">Deceleration of the first stop; above zero.</param>
    /// <param name="interval">Time from the start of one stop to the start of the next.</param>
    /// <param name="samePressure">
    /// True: the pressure of the first stop is held in every stop, so that fade shows as lost deceleration. False: the deceleration is
    /// held.
    /// </param>
    /// <param name="acceleration">Acceleration between stops; above zero, 1.5 m/s² when left out.</param>
    /// <exception cref="ArgumentException">The interval is too short for the stop and the way back to speed.</exception>
    public static HeatCycle Repeated(
        int stops, Speed from, Speed to, Acceleration deceleration, Duration interval, bool samePressure, Acceleration? acceleration = null)
    {
        Require.Between(stops, 1, 200, nameof(stops));
        double high = Require.Between(from.MetersPerSecond, 1, 150, nameof(from));
        double low = Require.Between(to.MetersPerSecond, 0, high - 0.5, nameof(to));
        double slowing = Require.Positive(deceleration, nameof(deceleration)).MetersPerSecondSquared;
        double pulling = Require.Positive(acceleration
            ?? Acceleration.FromMetersPerSecondSquared(1.5), nameof(acceleration)).MetersPerSecondSquared;
        double cycle = interval.Seconds;
        double needed = (high - low) / slowing + (high - low) / pulling;
        Refuse.If(!(cycle >= needed),
            $"The interval of {cycle:0.#} s is shorter than stop and acceleration together ({needed:0.#} s); "
                + $"make it longer or the acceleration greater.", nameof(interval));

        List<HeatPiece> pieces = [];
        for (int i = 0; i < stops; i++)
        {
            pieces.Add(HeatPiece.Stop(low, slowing, samePressure));
            pieces.Add(HeatPiece.SpeedUp(high, pulling));
            pieces.Add(HeatPiece.CruiseTo((i + 1) * cycle));
        }

        return new HeatCycle(
            Invariant.Text($"{stops} stops from {InBoth.Text(from)} to {InBoth.Text(to)} every {cycle:0} s"), from, pieces);
    }

    /// <summary>The repeated-braking fade cycle for passenger cars.</summary>
    /// <param name="maximumSpeed">The car's maximum speed; above zero.</param>
    /// <returns>
    /// 15 stops from 80 % of the maximum speed, at most 120 km/h, to half of that, every 45 s, at the pressure that gives 3 m/s² at first.
    /// </returns>
    /// <remarks>
    /// Source: 71/320/EEC Annex II 1.3 (values seen at legislation.gov.uk), the same numbers in UN R13-H Annex 3 Type-I test (from memory).
    /// 49 CFR 571.135 S7.13 (read) has the same schedule but holds 3.0 m/s² in every snub: <see cref="Repeated"/> with that deceleration
    /// held.
    /// </remarks>
    public static HeatCycle TypeOne(Speed maximumSpeed)
    {
        Speed from = Speed.FromKilometersPerHour(
            Math.Min(120, 0.8 * Require.Positive(maximumSpeed, nameof(maximumSpeed)).KilometersPerHour));
        HeatCycle cycle = Repeated(
            15, from, from / 2, Acceleration.FromMetersPerSecondSquared(3), Duration.FromSeconds(45), samePressure: true);
        return new HeatCycle("Type I: " + cycle.Name, from, cycle.Pieces);
    }

    /// <summary>A recorded or made-up speed trace, driven once or several times.</summary>
    /// <param name="name">Name shown in tables and figures.</param>
    /// <param name="trace">The trace.</param>
    /// <param name="laps">How many times; 1 to 200.</param>
    /// <returns>The cycle; each fall of speed steeper than 1 m/s² begins a stop.</returns>
    /// <exception cref="ArgumentException">The trace has no such fall.</exception>
    public static HeatCycle Lap(string name, SpeedTrace trace, int laps)
    {
        ArgumentNullException.ThrowIfNull(trace);
        Require.Between(laps, 1, 200, nameof(laps));
        List<HeatPiece> pieces = [];
        double start = 0;
        bool braking = false;
        for (int lap = 0; lap < laps; lap++)
        {
            for (int i = 1; i < trace.Seconds.Count; i++)
            {
                double slope = (trace.MetresPerSecond[i] - trace.MetresPerSecond[i - 1]) / (trace.Seconds[i] - trace.Seconds[i - 1]);
                bool stop = slope < -1;
                pieces.Add(HeatPiece.Follow(start + trace.Seconds[i] - trace.Seconds[0], slope, stop, stop && !braking));
                braking = stop;
            }

            start += trace.Seconds[^1] - trace.Seconds[0];
        }

        return pieces.Any(piece => piece.StartsStop)
            ? new HeatCycle(name, Speed.FromMetersPerSecond(trace.MetresPerSecond[0]), pieces)
            : throw new ArgumentException("The speed never falls by more than 1 m/s in a second, so the brakes are never used.",
                nameof(trace));
    }
}

/// <summary>One piece of a heat cycle in SI numbers.</summary>
internal readonly record struct HeatPiece
{
    /// <summary>Speed that ends the piece, or null when time does.</summary>
    public double? UntilSpeed { get; init; }

    /// <summary>Time from the start of the cycle that ends the piece, or null when speed does.</summary>
    public double? UntilTime { get; init; }

    /// <summary>Change of speed per second, negative when slowing.</summary>
    public double Slope { get; init; }

    /// <summary>True when pressure is held: that of the first stop, found from its slope.</summary>
    public bool HoldsPressure { get; init; }

    /// <summary>True for the first piece of a stop.</summary>
    public bool StartsStop { get; init; }

    /// <summary>True for every piece of a stop.</summary>
    public bool Brakes { get; init; }

    public static HeatPiece Stop(double toSpeed, double deceleration, bool holdsPressure) =>
        new() { UntilSpeed = toSpeed, Slope = -deceleration, HoldsPressure = holdsPressure, StartsStop = true, Brakes = true };

    public static HeatPiece SpeedUp(double toSpeed, double acceleration) => new() { UntilSpeed = toSpeed, Slope = acceleration };

    public static HeatPiece CruiseTo(double time) => new() { UntilTime = time };

    public static HeatPiece Follow(double untilTime, double slope, bool brakes, bool startsStop) =>
        new() { UntilTime = untilTime, Slope = slope, Brakes = brakes, StartsStop = startsStop };
}
