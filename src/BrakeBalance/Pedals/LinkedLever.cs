using MathNet.Numerics.RootFinding;

namespace BrakeBalance.Pedals;

/// <summary>
/// Hanging pedal lever that pushes the booster's or master cylinder's rod through a link, so that its ratio changes over the travel.
/// </summary>
/// <remarks>
/// <para>
/// With the pin at radius a and angle φ forward of the vertical, the rod's axis at depth d below the pivot and the link of length l,
/// the rod stands at x(φ) = a sin φ + √(l² − (d − a cos φ)²). The pad at radius b travels b Δφ along its arc, so the ratio is
/// b / (dx/dφ).
/// </para>
/// <para>Assumes a plane linkage without play. Force and travel ratio are the same number (no friction here; see
/// <see cref="Pedal.Efficiency"/>).</para>
/// <para>Source: geometry of the slider-crank.</para>
/// </remarks>
public sealed record LinkedLever : PedalLever
{
    private Kept<double> _lastUsableAngle;

    /// <summary>Distance from the pivot to the middle of the pedal pad; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Distance from the pivot to the middle of the pad", Required = true, Low = "100 mm", High = "600 mm", Example = "320 mm",
        HowToMeasure = "Tape in the car: pivot to the middle of the pad")]
    public required Length PivotToPad { get; init => field = Require.Positive(value); }

    /// <summary>Distance from the pivot to the rod's pin; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Distance from the pivot to the rod pin", Required = true, Low = "20 mm", High = "200 mm", Example = "80 mm",
        HowToMeasure = "Caliper or tape: pivot to the centre of the rod pin")]
    public required Length PivotToPin { get; init => field = Require.Positive(value); }

    /// <summary>Length of the link between the pin and the end that slides along the rod's axis; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Length of the link from the pin to the end that slides straight", Required = true, Low = "20 mm", High = "600 mm",
        Example = "120 mm", HowToMeasure = "Caliper or tape: pin to the end that slides straight")]
    public required Length LinkLength { get; init => field = Require.Positive(value); }

    /// <summary>Depth of the rod's axis below the pivot; above zero.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    [Field("Depth of the rod's axis below the pivot", Required = true, Low = "10 mm", High = "300 mm", Example = "80 mm",
        HowToMeasure = "Rule and spirit level: height of the pivot over the booster's or cylinder's axis")]
    public required Length RodAxisDepth { get; init => field = Require.Positive(value); }

    /// <summary>
    /// Angle of the pin forward of the vertical through the pivot, pedal at rest; −60° to 60°, negative when the pin stands behind.
    /// </summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −60° to 60°.</exception>
    [Field("Angle of the pin forward of the vertical through the pivot at rest; negative behind", Required = true, Low = "-60 °",
        High = "60 °", Example = "-10 °", HowToMeasure = "Angle gauge on the line from pivot to pin, pedal released")]
    public required Angle PinAngleAtRest { get; init => field = Require.Between(value, Angle.FromDegrees(-60), Angle.FromDegrees(60)); }

    /// <summary>Travel of the pad at which the lever stops pushing the rod forward.</summary>
    /// <exception cref="ArgumentException">The link does not reach, or pushes backwards, with the pedal at rest.</exception>
    public Length GreatestPadTravel => PivotToPad * (LastUsableAngle() - PinAngleAtRest.Radians);

    /// <inheritdoc/>
    public override double RatioAt(Length padTravel)
    {
        double angle = AngleAt(padTravel);
        return PivotToPad.Meters / RodMetresPerRadian(angle);
    }

    /// <inheritdoc/>
    public override Length RodTravel(Length padTravel) =>
        Length.FromMeters(RodPositionMetres(AngleAt(padTravel)) - RodPositionMetres(PinAngleAtRest.Radians));

    /// <inheritdoc/>
    public override Length? PadTravel(Length rodTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rodTravel, Length.Zero);
        double rest = PinAngleAtRest.Radians;
        double target = RodPositionMetres(rest) + rodTravel.Meters;
        double end = LastUsableAngle();
        if (RodPositionMetres(end) < target)
        {
            return null;
        }

        double angle = rodTravel.Meters == 0 ? rest : Brent.FindRoot(a => RodPositionMetres(a) - target, rest, end, 1e-12, 200);
        return Length.FromMeters((angle - rest) * PivotToPad.Meters);
    }

    private double AngleAt(Length padTravel)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(padTravel, Length.Zero);
        double rest = PinAngleAtRest.Radians;
        double angle = rest + (padTravel / PivotToPad);
        const double roundingRadians = 1e-9;
        double last = LastUsableAngle();
        return angle <= last + roundingRadians
            ? Math.Min(angle, last)
            : throw new ArgumentOutOfRangeException(nameof(padTravel), Invariant.Text($"{padTravel.Millimeters:0.#} mm"),
                "The lever stops pushing the rod before this travel; check pin angle, rod axis and link length.");
    }

    /// <inheritdoc/>
    public bool Equals(LinkedLever? other) => base.Equals(other) && Geometry.Equals(other.Geometry);

    /// <inheritdoc/>
    public override int GetHashCode() => Geometry.GetHashCode();

    private (double, double, double, double, double) Geometry =>
        (PivotToPad.Meters, PivotToPin.Meters, LinkLength.Meters, RodAxisDepth.Meters, PinAngleAtRest.Radians);

    private double LastUsableAngle() => _lastUsableAngle.Of(this, static lever => lever.FindLastUsableAngle(lever.PinAngleAtRest.Radians));

    // The lever pushes as long as the rod still moves forward; beyond about 90° forward no pedal is used.
    private double FindLastUsableAngle(double rest)
    {
        const double stepRadians = 0.01;
        Refuse.If(RodMetresPerRadian(rest) is not > 0,
            "The link does not reach from the pin to the rod's axis, or pushes it backwards, with the pedal at rest; "
                + "check pin distance, link length and rod axis depth.");

        double angle = rest;
        while (angle + stepRadians < 1.5 && RodMetresPerRadian(angle + stepRadians) > 1e-3 * PivotToPin.Meters)
        {
            angle += stepRadians;
        }

        return angle;
    }

    private double RodPositionMetres(double angle)
    {
        double drop = RodAxisDepth.Meters - (PivotToPin.Meters * Math.Cos(angle));
        double link = LinkLength.Meters;
        return (PivotToPin.Meters * Math.Sin(angle)) + Math.Sqrt((link * link) - (drop * drop));
    }

    private double RodMetresPerRadian(double angle)
    {
        double a = PivotToPin.Meters;
        double drop = RodAxisDepth.Meters - (a * Math.Cos(angle));
        double link = LinkLength.Meters;
        return (a * Math.Cos(angle)) - (drop * a * Math.Sin(angle) / Math.Sqrt((link * link) - (drop * drop)));
    }
}
