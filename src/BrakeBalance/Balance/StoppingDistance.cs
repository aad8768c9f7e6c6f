namespace BrakeBalance.Balance;

/// <summary>Distance of a stop in three parts: reaction, build-up and steady braking.</summary>
/// <remarks>
/// <para>s = v t_r + (v t_b − J t_b²/6) + (v − J t_b/2)²/(2 J), the deceleration rising evenly to J = z g over the build-up time
/// t_b.</para>
/// <para>
/// The distance formulas of UN R13-H and FMVSS 135 have the same shape: their 0.1 V stands for 0.36 s at full speed before braking, and
/// V²/(25.92 d_m) for the rest; they leave the driver's reaction out.
/// </para>
/// <para>Source: kinematics of constant deceleration.</para>
/// </remarks>
/// <param name="Reaction">Distance while the driver reacts.</param>
/// <param name="BuildUp">Distance while the brakes come on.</param>
/// <param name="Braking">Distance at full braking.</param>
public sealed record StoppingDistance(Length Reaction, Length BuildUp, Length Braking)
{
    /// <summary>Driver's reaction taken unless said: 1 s (common practice).</summary>
    public static Duration UsualReaction { get; } = Duration.FromSeconds(1);

    /// <summary>Time in which the brakes come on, taken unless said: 0.3 s (common practice).</summary>
    public static Duration UsualBuildUp { get; } = Duration.FromSeconds(0.3);

    /// <summary>From the foot's first touch to standstill, the driver's reaction left out: what rules and test tracks count.</summary>
    public Length FromFirstTouch => BuildUp + Braking;

    /// <summary>From the moment the driver sees the danger.</summary>
    public Length Whole => Reaction + BuildUp + Braking;

    /// <summary>The distance of a stop.</summary>
    /// <param name="speed">Speed at the start; above zero.</param>
    /// <param name="brakingRate">Full deceleration over g [–]; above zero.</param>
    /// <param name="buildUp">Time in which the deceleration rises to it; not negative; null for <see cref="UsualBuildUp"/>.</param>
    /// <param name="reaction">The driver's reaction; not negative; null for <see cref="UsualReaction"/>.</param>
    /// <returns>The parts; where the car stands before the brakes are fully on, all of it is build-up.</returns>
    /// <exception cref="ArgumentOutOfRangeException">An argument is out of its range.</exception>
    public static StoppingDistance From(Speed speed, double brakingRate, Duration? buildUp = null, Duration? reaction = null)
    {
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(speed, Speed.Zero);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(brakingRate);
        double v = speed.MetersPerSecond;
        double rising = (buildUp ?? UsualBuildUp).Seconds;
        double reacting = (reaction ?? UsualReaction).Seconds;
        ArgumentOutOfRangeException.ThrowIfNegative(rising, nameof(buildUp));
        ArgumentOutOfRangeException.ThrowIfNegative(reacting, nameof(reaction));
        double deceleration = brakingRate * Gravity.StandardMetresPerSecondSquared;
        double left = v - (deceleration * rising / 2);
        if (left <= 0)
        {
            // Standstill during the rise: v = J t²/(2 t_b) at t, and the distance is two thirds of v t.
            double time = Math.Sqrt(2 * v * rising / deceleration);
            return new(Length.FromMeters(v * reacting), Length.FromMeters(2 * v * time / 3), Length.Zero);
        }

        return new(
            Length.FromMeters(v * reacting),
            Length.FromMeters((v * rising) - (deceleration * rising * rising / 6)),
            Length.FromMeters(left * left / (2 * deceleration)));
    }

    /// <summary>The deceleration that stops within a distance from the first touch, after the usual rise.</summary>
    /// <remarks>S = v t/2 + v²/(2 d) − d t²/24 for a rise of t, solved for d; the car is still moving when the rise is over.</remarks>
    /// <param name="speed">Speed at the start; above zero.</param>
    /// <param name="fromFirstTouch">The distance; longer than what the rise alone takes.</param>
    /// <returns>The deceleration over g [–].</returns>
    internal static double RateFor(Speed speed, Length fromFirstTouch)
    {
        (double v, double rise) = (speed.MetersPerSecond, UsualBuildUp.Seconds);
        (double braking, double square) = (fromFirstTouch.Meters - (v * rise / 2), rise * rise / 12);
        return v * v / (braking + Math.Sqrt((braking * braking) + (square * v * v))) / Gravity.StandardMetresPerSecondSquared;
    }
}
