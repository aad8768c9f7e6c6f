namespace BrakeBalance.Balance;

/// <summary>Braking force that the road allows an axle, K(N) = N (q₁ − q₂ N), and never less than a floor times N.</summary>
internal readonly record struct AxleLimit(double Linear, double Quadratic, double Floor)
{
    /// <summary>Largest braking force at an axle load, in newtons.</summary>
    public double At(double load) => load * Math.Max(Floor, Linear - Quadratic * load);

    /// <summary>Whether the floor holds at an axle load.</summary>
    public bool IsFloored(double load) => Linear - Quadratic * load < Floor;

    /// <summary>Braking force over the largest [–]; at least 1 when the axle locks.</summary>
    public double Share(double force, double load, bool locks)
    {
        double limit = At(load);
        double share = force <= 0 ? 0 : limit > 0 ? force / limit : double.PositiveInfinity;
        return locks ? Math.Max(1, limit > 0 ? share : double.PositiveInfinity) : share;
    }

    /// <summary>
    /// The first x of a range at which a force t₀ + t₁x reaches what the load n₀ + n₁x allows; infinite when it does not. An axle
    /// without a force does not lock.
    /// </summary>
    public double Reached(double t0, double t1, double n0, double n1, double from, double to)
    {
        double force = t0 + t1 * from, load = n0 + n1 * from;
        if (force <= 0 && t1 <= 0)
        {
            return double.PositiveInfinity;
        }

        double reached = Rising(force - load * (Linear - Quadratic * load), t1 - n1 * (Linear - 2 * Quadratic * load), Quadratic * n1 * n1);
        if (Floor > 0)
        {
            reached = Math.Max(reached, Rising(force - Floor * load, t1 - Floor * n1, 0));
        }

        return from + reached <= to ? from + reached : double.PositiveInfinity;
    }

    /// <summary>The x ≥ 0 at which c + bx + ax² becomes positive, a not negative; 0 when it is so from the start.</summary>
    public static double Rising(double c, double b, double a)
    {
        if (c >= 0)
        {
            return 0;
        }

        if (a == 0)
        {
            return b > 0 ? -c / b : double.PositiveInfinity;
        }

        double root = Math.Sqrt(b * b - 4 * a * c);
        return b >= 0 ? -2 * c / (b + root) : (root - b) / (2 * a);
    }
}
