namespace BrakeBalance.Hydraulics;

/// <summary>Brake fluid at a temperature, with the gas that bleeding has left in it.</summary>
/// <remarks>
/// <para>
/// Compressibility κ: the grade's at 20 °C and at 200 °C, between them on a straight line of ln κ (our own interpolation of two
/// points); for glycol-based fluid 0.0007 and 0.003 /MPa. Trapped gas follows Boyle's law, V p = constant with absolute pressures.
/// </para>
/// <para>Valid for: 0 to 200 °C, below boiling.</para>
/// <para>
/// Source: glycol, A. Day, Braking of Road Vehicles, seen as a second-hand summary; silicone, see <c>data/references/brake-fluids.csv</c>
/// (from memory).
/// </para>
/// </remarks>
public sealed record BrakeFluid
{
    private const double AirPascals = 101_325;
    private const double ColdCelsius = 20;
    private const double HotCelsius = 200;

    /// <summary>Grade by FMVSS 116; DOT 4 unless said.</summary>
    public BrakeFluidGrade Grade { get; init; } = BrakeFluidGrade.Dot4;

    /// <summary>Temperature of the fluid; 0 to 200 °C; 20 °C unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 200 °C.</exception>
    public Temperature Temperature
    {
        get;
        init => field = Require.Between(value, Temperature.FromDegreesCelsius(0), Temperature.FromDegreesCelsius(200));
    } = Temperature.FromDegreesCelsius(20);

    /// <summary>Share of the circuit's volume that is trapped air, at the pressure of the surroundings [–]; 0 to 0.2.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 0 to 0.2.</exception>
    public double TrappedAir { get; init => field = Require.Between(value, 0, 0.2); }

    /// <summary>Compressibility of the fluid itself, without air.</summary>
    public Compressibility Compressibility
    {
        get
        {
            double share = (Temperature.DegreesCelsius - ColdCelsius) / (HotCelsius - ColdCelsius);
            double cold = Grade.ColdCompressibility.InversePascals;
            return Compressibility.FromInversePascals(cold * Math.Pow(Grade.HotCompressibility.InversePascals / cold, share));
        }
    }

    /// <summary>By how much the fluid of a circuit shrinks, air left out.</summary>
    /// <param name="circuit">Volume of fluid in the circuit.</param>
    /// <param name="linePressure">Line pressure, gauge; not negative.</param>
    /// <returns>Loss of volume.</returns>
    public Volume Compression(Volume circuit, Pressure linePressure) =>
        Volume.FromCubicMeters(circuit.CubicMeters * (1 - TrappedAir) * Compressibility.InversePascals * linePressure.Pascals);

    /// <summary>By how much the trapped air of a circuit shrinks.</summary>
    /// <param name="circuit">Volume of fluid and air in the circuit.</param>
    /// <param name="linePressure">Line pressure, gauge; not negative.</param>
    /// <returns>Loss of volume; nearly all of the air at any braking pressure.</returns>
    public Volume AirCompression(Volume circuit, Pressure linePressure) =>
        Volume.FromCubicMeters(circuit.CubicMeters * TrappedAir * linePressure.Pascals / (linePressure.Pascals + AirPascals));

    /// <summary>Tangent bulk modulus of fluid and air together.</summary>
    /// <param name="linePressure">Line pressure, gauge; not negative.</param>
    /// <param name="gasExponent">Polytropic exponent of the gas [–]; 1 slow, 1.4 quick.</param>
    /// <returns>Bulk modulus as a pressure.</returns>
    /// <remarks>
    /// 1/B = 1/B_l + (V_g/V_t)/(n p), p absolute and V_g at that pressure. Source: a KTH thesis (diva2:818797), seen second-hand.
    /// </remarks>
    public Pressure BulkModulus(Pressure linePressure, double gasExponent = 1)
    {
        double absolute = linePressure.Pascals + AirPascals;
        double gasShare = TrappedAir * Math.Pow(AirPascals / absolute, 1 / gasExponent);
        return Pressure.FromPascals(1 / (Compressibility.InversePascals + (gasShare / (gasExponent * absolute))));
    }
}
