namespace BrakeBalance.Assist;

/// <summary>The vacuum an engine offers to the booster, as read on a gauge at the booster's hose, and the air around it.</summary>
/// <remarks>
/// <para>Depression below the surrounding air throughout (a gauge's reading without its sign), never an absolute pressure unless
/// said.</para>
/// <para>
/// Taking the car up a hill keeps the manifold's absolute pressure and lowers the air's, so the depression shrinks by the fall of the
/// surrounding pressure: about 35 mbar for the first 300 m (a training page says 33).
/// </para>
/// <para>Source: ISO 2533 standard atmosphere for the pressure of the air; the constants read in texts that restate it.</para>
/// </remarks>
public sealed record VacuumSupply
{
    private const double SeaLevelPascals = 101_325;

    /// <summary>Depression at the booster, engine hot and idling in gear; 0 to 1.01 bar (0 to 29.9 inHg).</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 1.01 bar.</exception>
    public required Pressure Vacuum { get; init => field = Require.Between(value, Pressure.Zero, Pressure.FromPascals(SeaLevelPascals)); }

    /// <summary>Altitude at which <see cref="Vacuum"/> holds; −400 m to 5000 m; sea level unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −400 m to 5000 m.</exception>
    public Length Altitude { get; init => field = Require.Between(value, Length.FromMeters(-400), Length.FromMeters(5000)); } = Length.Zero;

    /// <summary>An engine with its maker's camshaft: 18 inHg at idle.</summary>
    /// <remarks>Source: common practice; 16 to 18 inHg is called wanted at idle in an article on booster vacuum.</remarks>
    public static VacuumSupply StockCamshaft { get; } = new() { Vacuum = Pressure.FromInchesOfMercury(18) };

    /// <summary>An engine with a long-duration camshaft: 10 inHg at idle.</summary>
    /// <remarks>
    /// Source: common practice; below about 14 inHg a reservoir or pump, below about 10 another kind of booster is thought of.
    /// </remarks>
    public static VacuumSupply LongDurationCamshaft { get; } = new() { Vacuum = Pressure.FromInchesOfMercury(10) };

    /// <summary>Absolute pressure of the surrounding air.</summary>
    public Pressure AirPressure => Pressure.FromPascals(AirPascals(Altitude));

    /// <summary>Absolute pressure in the evacuated chamber; not negative.</summary>
    public Pressure ChamberPressure => Pressure.FromPascals(Math.Max(0, AirPascals(Altitude) - Vacuum.Pascals));

    /// <summary>The same engine at another altitude.</summary>
    /// <param name="altitude">Altitude above sea level; −400 m to 5000 m.</param>
    /// <returns>
    /// A supply with the same absolute manifold pressure and the depression it makes there; zero when the air is thinner than that.
    /// </returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="altitude"/> lies outside −400 m to 5000 m.</exception>
    public VacuumSupply MovedTo(Length altitude) => this with
    {
        Altitude = altitude,
        Vacuum = Pressure.FromPascals(Math.Clamp(AirPascals(altitude) - ChamberPressure.Pascals, 0, SeaLevelPascals)),
    };

    private static double AirPascals(Length altitude) => SeaLevelPascals * Math.Pow(1 - (2.25577e-5 * altitude.Meters), 5.25588);
}
