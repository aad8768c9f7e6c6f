using BrakeBalance.Balance;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Rules;

/// <summary>Adhesion utilised by both axles over braking rate in one load case, as the distribution rules look at it.</summary>
/// <remarks>
/// Engine disconnected, no aerodynamics and no rolling resistance, so that z = (T₁ + T₂)/P. Source: Directive 71/320/EEC Annex II
/// Appendix and 49 CFR 571.135 S7.4.4(f) (both read), UN R13-H Annex 5 (from memory).
/// </remarks>
public sealed class UtilisationCurve
{
    private UtilisationCurve(Vehicle vehicle, LoadCase loadCase, IReadOnlyList<UtilisationPoint> points, double greatestRate)
    {
        (Vehicle, LoadCase, Points, GreatestRate) = (vehicle, loadCase, points, greatestRate);
    }

    /// <summary>The car, without what the rules leave aside.</summary>
    public Vehicle Vehicle { get; }

    /// <summary>The state of load.</summary>
    public LoadCase LoadCase { get; }

    /// <summary>Points from a braking rate of 0.10 to 1.00 in steps of 0.01, as far as pressure reaches.</summary>
    public IReadOnlyList<UtilisationPoint> Points { get; }

    /// <summary>The highest rate of <see cref="Points"/> [–]; zero when there is none.</summary>
    public double GreatestRate { get; }

    /// <summary>The curves of a car.</summary>
    /// <param name="vehicle">The car.</param>
    /// <returns>One for each of its load cases.</returns>
    public static IReadOnlyList<UtilisationCurve> Of(Vehicle vehicle)
    {
        Vehicle bare = vehicle with { EngineBraking = null, Aerodynamics = null, RollingResistanceCoefficient = 0 };
        return [.. bare.LoadCases.Select(load => Of(bare, load))];
    }

    private static UtilisationCurve Of(Vehicle bare, LoadCase load)
    {
        var model = new BalanceModel(bare, load);
        List<UtilisationPoint> points = [];
        for (int hundredths = 10; hundredths <= 100; hundredths++)
        {
            double rate = hundredths / 100.0;
            if (model.AtRate(rate) is not { AdhesionUtilisation: { Front: { } front, Rear: { } rear } })
            {
                break;
            }

            points.Add(new(rate, front, rear));
        }

        return new(bare, load, points, points.Count > 0 ? points[^1].BrakingRate : 0);
    }
}

/// <summary>Adhesion utilised by both axles at one braking rate.</summary>
/// <param name="BrakingRate">z [–].</param>
/// <param name="Front">f₁ [–].</param>
/// <param name="Rear">f₂ [–].</param>
public sealed record UtilisationPoint(double BrakingRate, double Front, double Rear);
