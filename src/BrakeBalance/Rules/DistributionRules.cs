using BrakeBalance.Vehicles;

namespace BrakeBalance.Rules;

/// <summary>The rules on the distribution of braking between the axles of a passenger car without an anti-lock system.</summary>
/// <remarks>
/// <para>Three regulations draw three different acceptance lines; each verdict names its own. All states of load of the vehicle file are
/// tried.</para>
/// <para>
/// 49 CFR 571.135 tests the lock sequence on the road first, an axle being locked when its second wheel locks (S7.2.1(e)) and a lock
/// within 0.1 s above 15 km/h counting as simultaneous (S7.2.1(d)). A car whose rear axle locks first, or that locks no axle at 1 kN, is
/// then judged by torque wheels (S7.2.1(h)): for braking ratios 0.15 to 0.80 the rear curve, and only it, lies below z = 0.9 k (S7.4.5).
/// Here both wheels of an axle are alike, and the axle that utilises more adhesion is the one that locks first.
/// </para>
/// <para>Sources: Directive 71/320/EEC as amended, Annex II Appendix, 3.1 (text read at legislation.gov.uk; the line's formula read in
/// Crolla (ed.), Automotive Engineering, 2009, ch. 12.1, p. 362); 49 CFR 571.135 S7.2, S7.4 (read); UN R13-H Annex 5 (from memory).</para>
/// </remarks>
public static class DistributionRules
{
    /// <summary>The line of UN R13 and Directive 71/320/EEC: z ≥ 0.1 + 0.85 (k − 0.2).</summary>
    public static AcceptanceLine UnR13Line { get; } = new(0.85);

    /// <summary>The line of UN R13-H: z ≥ 0.1 + 0.7 (k − 0.2) (from memory).</summary>
    public static AcceptanceLine UnR13HLine { get; } = new(0.7);

    /// <summary>Greatest adhesion the rear axle may utilise at a braking rate under 49 CFR 571.135 S7.4.5: z = 0.9 k (read).</summary>
    /// <param name="brakingRate">z [–].</param>
    /// <returns>k [–].</returns>
    public static double Fmvss135RearLimit(double brakingRate) => brakingRate / 0.9;

    /// <summary>Checks a car against every distribution rule.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>One verdict a rule; informative, no type approval.</returns>
    public static IReadOnlyList<RuleVerdict> Check(Vehicle vehicle)
    {
        IReadOnlyList<UtilisationCurve> curves = UtilisationCurve.Of(vehicle);
        return
        [
            Judge(curves, "un-r13h-order", "front curve above rear curve for braking rates 0.15 to 0.80",
                "UN R13-H Annex 5, category M1 (from memory; the same condition read in 71/320/EEC Annex II Appendix 3.1.1)",
                (0.15, 0.80), point => point.Front - point.Rear, "the rear axle uses more adhesion than the front"),
            Judge(curves, "un-r13h-line", "braking rate at least 0.1 + 0.7 (k − 0.2) for adhesions utilised 0.2 to 0.8",
                "UN R13-H Annex 5 (from memory)",
                (0.10, 1.00), point => LineMargin(UnR13HLine, point), "more adhesion is utilised than the line allows"),
            Judge(curves, "un-r13-order",
                "front curve above rear curve for 0.15 to 0.80; between 0.30 and 0.45 the rear may lead by no more than 0.05 above k = z",
                "Directive 71/320/EEC Annex II Appendix 3.1.1 and UN R13 Annex 10, category M1",
                (0.15, 0.80), OrderWithExceptionMargin, "the rear axle uses more adhesion than the front, beyond the exception"),
            Judge(curves, "un-r13-line", "braking rate at least 0.1 + 0.85 (k − 0.2) for adhesions utilised 0.2 to 0.8",
                "Directive 71/320/EEC Annex II Appendix 3.1.1 and UN R13 Annex 10",
                (0.10, 1.00), point => LineMargin(UnR13Line, point), "more adhesion is utilised than the line allows"),
            Judge(curves, "fmvss135-sequence", "front axle locks first or both together for braking ratios 0.15 to 0.80",
                "49 CFR 571.135 S7.2", (0.15, 0.80), point => point.Front - point.Rear, "the rear axle would lock first",
                "A screening test: the rear line decides (S7.2.1(h))."),
            Judge(curves, "fmvss135-rear-line", "rear adhesion utilised below the line z = 0.9 k for braking ratios 0.15 to 0.80",
                "49 CFR 571.135 S7.4.5", (0.15, 0.80), point => Fmvss135RearLimit(point.BrakingRate) - point.Rear,
                "the rear axle uses more adhesion than the line allows"),
        ];
    }

    private static double OrderWithExceptionMargin(UtilisationPoint point) =>
        point.BrakingRate is >= 0.2999 and <= 0.4501
            ? Math.Max(point.Front - point.Rear, point.BrakingRate + 0.05 - point.Rear)
            : point.Front - point.Rear;

    // Outside 0.2 to 0.8 the line is silent: infinitely far from being broken.
    private static double LineMargin(AcceptanceLine line, UtilisationPoint point)
    {
        double used = Math.Max(point.Front, point.Rear);
        return used is >= AcceptanceLine.LowestAdhesion and <= AcceptanceLine.HighestAdhesion
            ? point.BrakingRate - line.LeastRate(used) : double.PositiveInfinity;
    }

    private static RuleVerdict Judge(IReadOnlyList<UtilisationCurve> curves, string rule, string title, string source,
        (double From, double To) range, Func<UtilisationPoint, double> margin, string fault, string afterFault = "")
    {
        (UtilisationCurve Curve, UtilisationPoint Point, double Margin)? closest = null;
        foreach (UtilisationCurve curve in curves)
        {
            foreach (UtilisationPoint point in curve.Points)
            {
                double left = point.BrakingRate >= range.From - 1e-9 && point.BrakingRate <= range.To + 1e-9 ? margin(point) : double.NaN;
                if (double.IsFinite(left) && !(left >= closest?.Margin))
                {
                    closest = (curve, point, left);
                }
            }
        }

        if (closest is not var (worst, at, least))
        {
            return new(rule, title, source, RuleOutcome.NotApplicable, null, "",
                "The car reaches no braking rate at which the rule speaks.");
        }

        string where = Invariant.Text($"{worst.LoadCase.Name}, braking rate {at.BrakingRate:0.00}");
        string reach = curves.Any(curve => curve.GreatestRate < range.To - 1e-9) && range.To < 0.9
            ? Invariant.Text($" Judged up to a rate of {curves.Min(curve => curve.GreatestRate):0.00}, which the highest pressure reaches.")
            : "";
        return least >= -1e-9
            ? new(rule, title, source, RuleOutcome.Pass, least, where,
                Invariant.Text($"Pass in every load case; closest at {where}, with {least:0.000} to spare.{reach}"))
            : new(rule, title, source, RuleOutcome.Fail, least, where,
                Invariant.Text($"Fail: at {where} {fault} by {-least:0.000}.{reach} {afterFault}").TrimEnd());
    }
}
