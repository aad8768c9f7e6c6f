namespace BrakeBalance.Measurements;

/// <summary>What a log of gauge pairs says about the valve and the lines.</summary>
public sealed record GaugeAnalysis
{
    /// <summary>One entry a position of the adjuster, in order of turns.</summary>
    public required IReadOnlyList<AdjusterPosition> Positions { get; init; }

    /// <summary>
    /// The slope that all positions share on application, with its 90 % interval [–]; null when no position shows a knee.
    /// </summary>
    public Interval<double>? Slope { get; init; }

    /// <summary>The knee as a line in the turns; null with fewer than two positions that show a knee.</summary>
    public AdjusterCalibration? Calibration { get; init; }

    /// <summary>
    /// How much higher the rear line stands on release than on application at the same front line pressure, above the knee, with its 90 %
    /// interval; null when no position was read both ways.
    /// </summary>
    public Interval<Pressure>? Hysteresis { get; init; }

    /// <summary>Creep and leak-down, from held pedals with times; null without such.</summary>
    public HeldLines? Held { get; init; }

    /// <summary>The valve's numbers beside what is usual.</summary>
    public IReadOnlyList<ValveProperty> Properties => ValveProperty.Of(this);

    /// <summary>What else the gauges show, in words; empty when the valve looks healthy.</summary>
    public required IReadOnlyList<GaugeFinding> Findings { get; init; }

    /// <summary>Inlet of the valve over front line pressure [–]; 1 unless bores or a bar make them differ.</summary>
    public double InletRatio { get; init; } = 1;

    // Knees and slope as the valve has them: they were fitted against the front gauge.
    internal GaugeAnalysis AtInlet(double ratio)
    {
        ValveFit? At(ValveFit? fit) => fit is null ? null
            : fit with { Knee = fit.Knee?.Select(knee => knee * ratio), Slope = fit.Slope?.Select(slope => slope / ratio) };
        return ratio == 1 ? this : this with
        {
            InletRatio = ratio,
            Slope = Slope?.Select(slope => slope / ratio),
            Calibration = Calibration?.Times(ratio),
            Positions = [.. Positions.Select(at => at with { Apply = At(at.Apply), Release = At(at.Release) })],
        };
    }
}
