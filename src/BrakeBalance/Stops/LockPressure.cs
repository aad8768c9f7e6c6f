namespace BrakeBalance.Stops;

/// <summary>The line pressure at which a car would use all the adhesion of an axle.</summary>
/// <remarks>
/// <para>At a pressure the brakes ask for T_i = M_i/R_i; the load transfer follows from T₁ + T₂ + R + D, a load-sensing valve from the
/// rear load; the axle is at its limit where T_i = μ_peak(N_i) N_i.</para>
/// <para>Assumes steady braking (no wheel inertia, no pitch), so a real lock comes at this pressure or, with a lagging transfer, before
/// it.</para>
/// <para>Source: adhesion utilisation f_i = T_i/N_i set to the adhesion; Crolla (ed.), Automotive Engineering, 2009, ch. 12.1
/// (read).</para>
/// </remarks>
public static class LockPressure
{
    /// <summary>The lowest line pressure that brings an axle to its limit, and which axle.</summary>
    /// <param name="car">The car on its road.</param>
    /// <param name="speed">Speed at which lift and drag are taken; not negative.</param>
    /// <returns>
    /// Pressure at the master cylinder (gauge) and axle, or null when no pressure up to four times the last point of the torque curves
    /// reaches a limit.
    /// </returns>
    public static (Pressure LinePressure, Axle Axle)? Lowest(BrakedCar car, Speed speed)
    {
        var numbers = new CarNumbers(car);
        (double pascals, Axle axle)? found = Lowest(numbers, speed.MetersPerSecond);
        return found is { } f ? (Pressure.FromPascals(f.pascals), f.axle) : null;
    }

    internal static (double Pascals, Axle Axle)? Lowest(in CarNumbers car, double speed)
    {
        double highest = 4 * Math.Max(car.Front.Brakes.HighestPascals, car.Rear.Brakes.HighestPascals);
        const int scan = 400;
        double low = 0;
        for (int i = 1; i <= scan; i++)
        {
            double high = highest * i / scan;
            if (Reserve(car, speed, high, out _) > 0)
            {
                low = high;
                continue;
            }

            for (int k = 0; k < 50; k++)
            {
                double middle = 0.5 * (low + high);
                if (Reserve(car, speed, middle, out _) > 0)
                {
                    low = middle;
                }
                else
                {
                    high = middle;
                }
            }

            Reserve(car, speed, high, out Axle axle);
            return (0.5 * (low + high), axle);
        }

        return null;
    }

    /// <summary>Smallest of 1 − f_i/μ_i over both axles.</summary>
    private static double Reserve(in CarNumbers car, double speed, double pascals, out Axle axle)
    {
        SteadyBraking at = car.Steady(pascals, speed * speed);
        double atFront = Left(car.Front, at.FrontForce, at.FrontLoad);
        double atRear = Left(car.Rear, at.RearForce, at.RearLoad);
        axle = atFront <= atRear ? Axle.Front : Axle.Rear;
        return Math.Min(atFront, atRear);
    }

    // Wheels that are not braked do not lock, not even in the air.
    private static double Left(in AxleNumbers axle, double force, double load) =>
        force <= 0 ? 1 : load > 0 ? 1 - force / (axle.Ends.PeakMu(0.5 * load) * load) : -1;
}
