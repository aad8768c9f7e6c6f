namespace BrakeBalance.Rules;

/// <summary>A straight line that bounds the adhesion utilised at a braking rate: z ≥ 0.1 + c (k − 0.2) for 0.2 ≤ k ≤ 0.8.</summary>
/// <param name="Slope">The factor c [–].</param>
public sealed record AcceptanceLine(double Slope)
{
    /// <summary>Lowest adhesion utilised at which the line holds [–].</summary>
    public const double LowestAdhesion = 0.2;

    /// <summary>Highest adhesion utilised at which the line holds [–].</summary>
    public const double HighestAdhesion = 0.8;

    /// <summary>Least braking rate that the line asks for when an adhesion is utilised.</summary>
    /// <param name="adhesionUtilised">Adhesion utilised [–]; 0.2 to 0.8.</param>
    /// <returns>Braking rate [–].</returns>
    public double LeastRate(double adhesionUtilised) => 0.1 + Slope * (adhesionUtilised - LowestAdhesion);

    /// <summary>Greatest adhesion that may be utilised at a braking rate.</summary>
    /// <param name="brakingRate">Braking rate [–]; 0.1 and above.</param>
    /// <returns>Adhesion utilised [–].</returns>
    public double GreatestAdhesion(double brakingRate) => LowestAdhesion + (brakingRate - 0.1) / Slope;
}
