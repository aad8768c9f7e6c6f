using BrakeBalance.Hydraulics;

namespace BrakeBalance.Bench;

/// <summary>The measurement sheet of the push rod between booster and master cylinder.</summary>
/// <remarks>
/// Depth of the piston's seat = reading across the cylinder's spigot − height of the spigot. Projection of the rod = read directly, or
/// length of the rod − depth of its seat in the booster. The fit itself, its tolerance and what to do: <see cref="PushRodFit"/>.
/// </remarks>
public sealed record PushRodSheet
{
    /// <summary>Most that repeated readings may differ before they are refused: 1 mm.</summary>
    public static Length GreatestSpread { get; } = Length.FromMillimeters(1);

    /// <summary>Depth from the cylinder's outermost face (spigot or flange) to the piston's seat.</summary>
    public required RepeatedReading SeatDepth { get; init; }

    /// <summary>How far the spigot stands out of the mounting face; null when the depth was read from the mounting face itself.</summary>
    public RepeatedReading? SpigotHeight { get; init; }

    /// <summary>How far the rod stands out of the booster's face; null when rod and seat were measured apart.</summary>
    public RepeatedReading? RodProjection { get; init; }

    /// <summary>Length of the loose rod; null when the projection was read directly.</summary>
    public RepeatedReading? RodLength { get; init; }

    /// <summary>Depth of the rod's seat below the booster's face; null when the projection was read directly.</summary>
    public RepeatedReading? RodSeatDepth { get; init; }

    /// <summary>Thickness of the gasket.</summary>
    public Length Gasket { get; init; } = Length.Zero;

    /// <summary>The gauge's own error, plus or minus; not negative; 0.1 mm unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Length GaugeError { get; init => field = Require.NotNegative(value); } = Length.FromMillimeters(0.1);

    /// <summary>Least gap wanted.</summary>
    public Length LeastGap { get; init; } = Length.Zero;

    /// <summary>Greatest gap wanted; 0.75 mm unless said (common practice).</summary>
    public Length GreatestGap { get; init; } = Length.FromMillimeters(0.75);

    /// <summary>The readings that were taken.</summary>
    public IEnumerable<RepeatedReading> Readings =>
        new[] { SeatDepth, SpigotHeight, RodProjection, RodLength, RodSeatDepth }.OfType<RepeatedReading>();

    /// <summary>Depth of the piston's seat below the mounting face.</summary>
    public Length PistonDepth => SeatDepth.Mean - (SpigotHeight?.Mean ?? Length.Zero);

    /// <summary>How far the rod stands out of the booster's face.</summary>
    /// <exception cref="InvalidOperationException">Neither the projection nor rod and seat were measured.</exception>
    public Length Projection => RodProjection?.Mean
        ?? (RodLength is { } rod && RodSeatDepth is { } seat
            ? rod.Mean - seat.Mean : throw new InvalidOperationException("The sheet needs rodProjection, or rodLength and rodSeatDepth."));

    /// <summary>Possible error of the gap, plus or minus: that of every reading added, the worst case.</summary>
    public Length GapError =>
        Length.FromMeters(Readings.Sum(reading => reading.Error(GaugeError).Meters) + (Gasket > Length.Zero ? GaugeError.Meters : 0));

    /// <summary>What is wrong with the readings themselves.</summary>
    /// <returns>One sentence a fault; empty when they can be used.</returns>
    public ImmutableArray<string> Faults()
    {
        List<string> faults = [.. Readings.Where(reading => reading.Spread > GreatestSpread)
            .Select(reading => Invariant.Text($"{reading.Name}: readings differ by {reading.Spread.Millimeters:0.00} mm, "
                + $"from {reading.Readings.Min(r => r.Millimeters):0.00} to {reading.Readings.Max(r => r.Millimeters):0.00} mm; "
                + $"up to {GreatestSpread.Millimeters:0} mm is accepted. Clean the faces and read again."))];
        if (PistonDepth < Length.Zero)
        {
            faults.Add(Invariant.Text($"spigotHeight: the spigot ({SpigotHeight!.Mean.Millimeters:0.00} "
                + $"mm) is higher than the seat is deep ({SeatDepth.Mean.Millimeters:0.00} mm)."));
        }

        if (RodProjection is null && RodLength is { } rod && RodSeatDepth is { } seat && rod.Mean < seat.Mean)
        {
            faults.Add(Invariant.Text($"rodLength: the rod ({rod.Mean.Millimeters:0.00} "
                + $"mm) is shorter than its seat is deep ({seat.Mean.Millimeters:0.00} mm)."));
        }

        return [.. faults];
    }

    /// <summary>The fit, its error spread over the readings that <see cref="PushRodFit"/> knows.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A depth, projection or gasket is outside what is sensible.</exception>
    public PushRodFit Fit() => new()
    {
        PistonDepth = PistonDepth,
        RodProjection = Projection,
        Gasket = Gasket,
        ReadingError = GapError / (Gasket > Length.Zero ? 3 : 2),
        LeastGap = LeastGap,
        GreatestGap = GreatestGap,
    };

    /// <summary>The fit as a finding.</summary>
    public BenchFinding Finding()
    {
        PushRodFit fit = Fit();
        string[] sentences = fit.Describe().Split(": ", 2);
        BenchSeverity severity = fit.Verdict switch
        {
            PushRodVerdict.Good => BenchSeverity.Pass,
            PushRodVerdict.Preload => BenchSeverity.Wrong,
            _ => BenchSeverity.Caution,
        };
        return new(severity, "push rod", char.ToLowerInvariant(sentences[0][0]) + sentences[0][1..]
            + ".", Invariant.Capital(sentences[^1]));
    }
}
