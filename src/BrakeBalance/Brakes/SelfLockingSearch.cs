namespace BrakeBalance.Brakes;

/// <summary>Finds the friction at which a shoe begins to lock, where no closed form is at hand.</summary>
internal static class SelfLockingSearch
{
    /// <summary>Friction beyond which nobody asks.</summary>
    public const double Highest = 3;

    private const int Steps = 300;
    private const double Accuracy = 1e-9;

    /// <summary>
    /// The smallest friction at which <paramref name="locks"/> holds, or null when it does not up to <see cref="Highest"/>.
    /// </summary>
    public static double? Smallest(Func<double, bool> locks)
    {
        for (int step = 1; step <= Steps; step++)
        {
            if (locks(Highest * step / Steps))
            {
                (double free, double locked) = (Highest * (step - 1) / Steps, Highest * step / Steps);
                while (locked - free > Accuracy)
                {
                    double middle = (free + locked) / 2;
                    (free, locked) = locks(middle) ? (free, middle) : (middle, locked);
                }

                return locked;
            }
        }

        return null;
    }
}
