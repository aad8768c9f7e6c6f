namespace BrakeBalance.Measurements;

/// <summary>The mean fully developed deceleration of a stop.</summary>
public static class FullyDevelopedDeceleration
{
    /// <summary>Mean deceleration between 80 % and 10 % of the initial speed, by distance.</summary>
    /// <param name="atEightTenths">Speed at 0.8 of the initial speed; above <paramref name="atOneTenth"/>.</param>
    /// <param name="atOneTenth">Speed at 0.1 of the initial speed; not negative.</param>
    /// <param name="distance">Distance travelled between the two speeds; above zero.</param>
    /// <returns>Deceleration, positive.</returns>
    /// <remarks>
    /// d_m = (v_b² − v_e²) / (25.92 (s_e − s_b)) with speeds in km/h and distances in metres.
    /// Source: UN R13, definition of mean fully developed deceleration; the formula was read in working paper GRRF-56-3 and in
    /// Directive 71/320/EEC, Annex II, 1.1.2. By distance, not by time: the mean over time is another number when deceleration varies.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The speeds are not in falling order, or the distance is not above zero.</exception>
    public static Acceleration Between(Speed atEightTenths, Speed atOneTenth, Length distance)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(atOneTenth, Speed.Zero);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(atEightTenths, atOneTenth);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(distance, Length.Zero);
        double vb = atEightTenths.KilometersPerHour, ve = atOneTenth.KilometersPerHour;
        return Acceleration.FromMetersPerSecondSquared((vb * vb - ve * ve) / (25.92 * distance.Meters));
    }
}
