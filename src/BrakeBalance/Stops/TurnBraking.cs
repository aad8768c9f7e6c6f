using UnitsNet;

namespace BrakeBalance.Stops;

/// <summary>Which side of a car in a bend a wheel is on.</summary>
public enum BendSide
{
    /// <summary>Towards the centre of the bend.</summary>
    Inner,

    /// <summary>Away from the centre of the bend.</summary>
    Outer,
}

/// <summary>The first wheel to reach its limit while braking in a bend.</summary>
/// <param name="Axle">Axle of the wheel.</param>
/// <param name="Side">Side of the wheel.</param>
/// <param name="LinePressure">Line pressure at the master cylinder at that moment, gauge.</param>
/// <param name="BrakingRate">Deceleration along the path in units of g at that moment [–].</param>
/// <param name="InnerUtilisation">Force over peak adhesion force of the inner wheel of each axle at that moment [–].</param>
/// <param name="OuterUtilisation">Force over peak adhesion force of the outer wheel of each axle at that moment [–].</param>
public sealed record TurnLock(
    Axle Axle, BendSide Side, Pressure LinePressure, double BrakingRate, PerAxle<double> InnerUtilisation, PerAxle<double> OuterUtilisation);

/// <summary>Braking in a bend with load transfer along and across the car.</summary>
/// <remarks>
/// <para>Wheel loads N = ½ N_i ± φ_i m a_y h/t_i with φ₁ + φ₂ = 1; axle lateral forces m a_y b/E and m a_y a/E, shared by the two wheels in proportion to their loads (same slip angle); brake forces equal left and right; a wheel is at its limit when √(F_x² + F_y²) = μ_peak(N) N.</para>
/// <para>Assumes steady cornering and braking, no yaw acceleration, roll axis on the ground; a braked wheel that has left the road counts as locked at once (utilisation 2).</para>
/// <para>Source: common practice; friction circle.</para>
/// </remarks>
public static class TurnBraking
{
    /// <summary>Raises line pressure until the first wheel is at its limit.</summary>
    /// <param name="car">The car on its road.</param>
    /// <param name="lateralAcceleration">Lateral acceleration of the bend; not negative.</param>
    /// <param name="frontRollShare">Part of the lateral load transfer that the front axle takes [–]; 0 to 1.</param>
    /// <param name="speed">Speed at which lift is taken; not negative.</param>
    /// <returns>The first wheel at its limit; null when the bend alone is already beyond the tyres, or no pressure reaches a limit.</returns>
    public static TurnLock? FirstLock(BrakedCar car, Acceleration lateralAcceleration, double frontRollShare, Speed speed)
    {
        Require.NotNegative(lateralAcceleration, nameof(lateralAcceleration));
        Require.Between(frontRollShare, 0, 1, nameof(frontRollShare));
        var numbers = new CarNumbers(car);
        double lateral = lateralAcceleration.MetersPerSecondSquared;
        double v = speed.MetersPerSecond;
        Span<double> used = stackalloc double[4];
        if (Utilise(numbers, lateral, frontRollShare, v, 0, used) >= 1)
        {
            return null;
        }

        double low = 0;
        double high = 0;
        double step = Math.Max(numbers.Front.Brakes.HighestPascals, numbers.Rear.Brakes.HighestPascals) / 200;
        do
        {
            low = high;
            high += step;
            if (high > 800 * step)
            {
                return null;
            }
        }
        while (Utilise(numbers, lateral, frontRollShare, v, high, used) < 1);

        for (int i = 0; i < 50; i++)
        {
            double middle = 0.5 * (low + high);
            if (Utilise(numbers, lateral, frontRollShare, v, middle, used) < 1)
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        Utilise(numbers, lateral, frontRollShare, v, high, used);
        int first = 0;
        for (int i = 1; i < 4; i++)
        {
            first = used[i] > used[first] ? i : first;
        }

        SteadyBraking at = numbers.Steady(high, v * v);
        double force = at.FrontForce + at.RearForce;
        return new TurnLock(
            first < 2 ? Axle.Front : Axle.Rear, first % 2 == 0 ? BendSide.Inner : BendSide.Outer, Pressure.FromPascals(high),
            force / (numbers.Mass * Gravity.StandardMetresPerSecondSquared), new(used[0], used[2]), new(used[1], used[3]));
    }

    /// <summary>Fills the utilisation of front inner, front outer, rear inner, rear outer, and returns the greatest.</summary>
    private static double Utilise(in CarNumbers car, double lateral, double frontShare, double speed, double pascals, Span<double> used)
    {
        SteadyBraking at = car.Steady(pascals, speed * speed);
        double front = at.FrontForce;
        double rear = at.RearForce;
        double transfer = car.HeightOverWheelbase * (front + rear + car.External(speed * speed));
        double wheelbase = car.FrontArm + car.RearArm;
        double moment = car.Mass * lateral * car.HeightOverWheelbase * wheelbase;
        Wheels(car.Front, front, car.Mass * lateral * car.RearArm / wheelbase, car.Front.Static - car.Front.Lift * speed * speed + transfer,
            frontShare * moment / car.Front.Track, used[..2]);
        Wheels(car.Rear, rear, car.Mass * lateral * car.FrontArm / wheelbase, car.Rear.Static - car.Rear.Lift * speed * speed - transfer,
            (1 - frontShare) * moment / car.Rear.Track, used[2..]);
        return Math.Max(Math.Max(used[0], used[1]), Math.Max(used[2], used[3]));
    }

    private static void Wheels(in AxleNumbers axle, double braking, double lateral, double reaction, double across, Span<double> used)
    {
        // A wheel that has left the road takes no load, and its partner all of it.
        double inner = Math.Clamp(0.5 * reaction - across, 0, Math.Max(0, reaction));
        double outer = Math.Max(0, reaction) - inner;
        used[0] = Wheel(axle, 0.5 * braking, reaction > 0 ? lateral * inner / reaction : 0, inner);
        used[1] = Wheel(axle, 0.5 * braking, reaction > 0 ? lateral * outer / reaction : 0, outer);
    }

    private static double Wheel(in AxleNumbers axle, double x, double y, double load) =>
        load > 0 ? Math.Sqrt(x * x + y * y) / (axle.Tyre.PeakMu(load) * load) : x > 0 ? 2 : 0;
}
