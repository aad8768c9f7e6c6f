namespace BrakeBalance.Stops;

/// <summary>Whether a small turn of a car with a locked axle grows or dies out.</summary>
/// <remarks>
/// <para>Single-track car at small angles: β′ = −((C₁ + C₂)/(m v) − a_x/v) β − (1 + (a C₁ − b C₂)/(m v²)) r; r′ =
/// −(a C₁ − b C₂)/I β − (a² C₁ + b² C₂)/(I v) r, with a_x the deceleration. A rolling axle has its slip stiffness C; a
/// locked one is pulled against its velocity, so that C = μ_locked N.</para>
/// <para>Without the front's grip (locked front) a C₁ &lt; b C₂: the rear pulls the car straight. Without the rear's (locked rear) a
/// C₁ &gt; b C₂: any turn grows.</para>
/// <para>Source: linear single-track model of textbooks (Mitschke and Wallentowitz, Dynamik der Kraftfahrzeuge; Wong, Theory of Ground
/// Vehicles, ch. 5; both from memory). That a locked wheel only pulls against its motion, so that the rolling axle decides: "Braking
/// Dynamics", sec. 5.1 Braking Stability (thesis chapter, html.pdfcookie.com, read).</para>
/// </remarks>
public static class YawStability
{
    /// <summary>Rate at which a small turn grows.</summary>
    /// <param name="car">The car on its surface.</param>
    /// <param name="locked">The locked axle, or null for none; the other rolls unbraked.</param>
    /// <param name="speed">Speed; above 1 m/s.</param>
    /// <returns>Real part of the fastest growing solution, in 1/s: positive when the turn grows, negative when it dies out.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The speed is outside its range.</exception>
    public static double GrowthPerSecond(BrakedCar car, Axle? locked, Speed speed)
    {
        double v = Require.Between(speed.MetersPerSecond, 1, 200, nameof(speed));
        var numbers = new CarNumbers(car);
        double frontLocked = locked == Axle.Front ? numbers.Front.Mu(1, numbers.Front.Static) : 0;
        double rearLocked = locked == Axle.Rear ? numbers.Rear.Mu(1, numbers.Rear.Static) : 0;
        double transfer = numbers.StaticTransfer(frontLocked, rearLocked, numbers.Front.Static, numbers.Rear.Static, v * v);
        double front = Stiffness(numbers.Front, numbers.Front.Static + transfer, locked == Axle.Front);
        double rear = Stiffness(numbers.Rear, numbers.Rear.Static - transfer, locked == Axle.Rear);
        double a = numbers.FrontArm;
        double b = numbers.RearArm;
        double deceleration = (frontLocked * (numbers.Front.Static + transfer)
            + rearLocked * (numbers.Rear.Static - transfer)) / numbers.Mass;
        double turning = a * front - b * rear;
        double m11 = -(front + rear) / (numbers.Mass * v) + deceleration / v;
        double m12 = -1 - turning / (numbers.Mass * v * v);
        double m21 = -turning / numbers.YawInertia;
        double m22 = -(a * a * front + b * b * rear) / (numbers.YawInertia * v);
        double half = 0.5 * (m11 + m22);
        double discriminant = half * half - (m11 * m22 - m12 * m21);
        return discriminant > 0 ? half + Math.Sqrt(discriminant) : half;
    }

    private static double Stiffness(in AxleNumbers axle, double newtons, bool locked)
    {
        if (locked)
        {
            return axle.Mu(1, newtons) * newtons;
        }

        const double small = 1e-5;
        return axle.LateralWeight * axle.Mu(small, newtons) / small * newtons;
    }
}
