namespace BrakeBalance.Bench;

/// <summary>How oil flows in a pipe.</summary>
public enum FlowRegime
{
    /// <summary>Nothing flows.</summary>
    None,

    /// <summary>In layers: the loss grows with the flow. Reynolds number up to 2,300.</summary>
    Laminar,

    /// <summary>Between: no dependable value; the greater one is taken. Reynolds number from 2,300 to 4,000.</summary>
    Critical,

    /// <summary>Turbulent: the loss grows with about the square of the flow.</summary>
    Turbulent,
}

/// <summary>Pressure lost in pipes and hoses.</summary>
/// <remarks>
/// <para>Δp = (f L/D + ΣK) ρ v²/2 with v = 4 Q/(π D²), Re = v D/ν. Laminar: f = 64/Re, which is Δp = 8 η L Q/(π r⁴).
/// Turbulent: 1/√f = −2 lg(K/3.7 + 2.51/(Re √f)), K = roughness over bore.</para>
/// <para>Assumes fully developed flow in a round bore. Valid for: Reynolds numbers to 10⁸, relative roughness to 0.05.</para>
/// <para>Source: Hagen–Poiseuille law as in OpenStax College Physics, section 12.4; Colebrook's equation as in D. Clamond, Ind. Eng.
/// Chem. Res. 48 (2009) 3665, eq. (1). Limits 2,300 and 4,000: textbooks, from memory.</para>
/// </remarks>
public static class PipeFlow
{
    /// <summary>Reynolds number up to which flow in a pipe is laminar [–].</summary>
    public const double LaminarLimit = 2300;

    /// <summary>Reynolds number from which it is turbulent [–].</summary>
    public const double TurbulentLimit = 4000;

    /// <summary>Darcy's friction factor.</summary>
    /// <param name="reynolds">Reynolds number [–]; above 0, to 10⁸.</param>
    /// <param name="relativeRoughness">Roughness over bore [–]; 0 to 0.05.</param>
    /// <returns>f [–]; between the limits of laminar and turbulent flow the greater of both.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static double FrictionFactor(double reynolds, double relativeRoughness)
    {
        Require.PositiveUpTo(reynolds, 1e8, nameof(reynolds));
        Require.Between(relativeRoughness, 0, 0.05, nameof(relativeRoughness));
        double laminar = 64 / reynolds;
        return reynolds <= LaminarLimit ? laminar
            : reynolds < TurbulentLimit ? Math.Max(laminar, Colebrook(reynolds, relativeRoughness))
            : Colebrook(reynolds, relativeRoughness);
    }

    /// <summary>The loss of a line.</summary>
    /// <param name="flow">Flow through it; not negative.</param>
    /// <param name="bore">Inner diameter; above zero.</param>
    /// <param name="length">Length; not negative.</param>
    /// <param name="density">Density of the oil; above zero.</param>
    /// <param name="viscosity">Kinematic viscosity of the oil; above zero.</param>
    /// <param name="lossCoefficient">Sum of the loss coefficients of fittings, bends, entry and exit [–]; not negative.</param>
    /// <param name="roughness">Roughness of the wall; not negative; smooth unless said.</param>
    /// <returns>The loss and how it comes about.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is outside its range.</exception>
    public static PipeLoss Loss(
        VolumeFlow flow, Length bore, Length length, Density density, KinematicViscosity viscosity, double lossCoefficient = 0,
            Length roughness = default)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(flow, VolumeFlow.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(bore, Length.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(length, Length.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(density, Density.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(viscosity, KinematicViscosity.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThan(lossCoefficient, 0);
        ArgumentOutOfRangeException.ThrowIfLessThan(roughness, Length.Zero);
        if (flow <= VolumeFlow.Zero)
        {
            return new(Speed.Zero, 0, FlowRegime.None, null, Pressure.Zero, Pressure.Zero);
        }

        double diameter = bore.Meters;
        double velocity = 4 * flow.CubicMetersPerSecond / (Math.PI * diameter * diameter);
        double reynolds = velocity * diameter / viscosity.SquareMetersPerSecond;
        double factor = FrictionFactor(reynolds, roughness.Meters / diameter);
        double head = density.KilogramsPerCubicMeter * velocity * velocity / 2;
        FlowRegime regime = reynolds <= LaminarLimit
            ? FlowRegime.Laminar : reynolds < TurbulentLimit ? FlowRegime.Critical : FlowRegime.Turbulent;
        return new(
            Speed.FromMetersPerSecond(velocity),
            reynolds,
            regime,
            factor,
            Pressure.FromPascals(factor * length.Meters / diameter * head),
            Pressure.FromPascals(lossCoefficient * head));
    }

    private static double Colebrook(double reynolds, double relativeRoughness)
    {
        // Newton's method on x = 1/√f; the start is Blasius' law, and the equation is nearly straight in x.
        double x = Math.Pow(reynolds, 0.125) / Math.Sqrt(0.3164);
        double rough = relativeRoughness / 3.7, smooth = 2.51 / reynolds;
        for (int i = 0; i < 30; i++)
        {
            double inside = rough + (smooth * x);
            double miss = x + (2 * Math.Log10(inside));
            double next = x - (miss / (1 + (2 * smooth / (inside * Math.Log(10)))));
            bool done = Math.Abs(next - x) < 1e-14 * x;
            x = next;
            if (done)
            {
                break;
            }
        }

        return 1 / (x * x);
    }
}

/// <summary>The loss of one line.</summary>
/// <param name="Velocity">Mean speed of the oil.</param>
/// <param name="Reynolds">Reynolds number [–]; zero without flow.</param>
/// <param name="Regime">Laminar or turbulent.</param>
/// <param name="FrictionFactor">Darcy's friction factor [–]; null without flow.</param>
/// <param name="Friction">Loss by friction along the line.</param>
/// <param name="Fittings">Loss in fittings, bends, entry and exit.</param>
public sealed record PipeLoss(Speed Velocity, double Reynolds, FlowRegime Regime, double? FrictionFactor, Pressure Friction,
    Pressure Fittings)
{
    /// <summary>All of it.</summary>
    public Pressure Total => Friction + Fittings;
}
