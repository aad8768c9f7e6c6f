namespace BrakeBalance.Stops;

/// <summary>Braking torque at a temperature over the torque at the reference friction, as straight pieces.</summary>
/// <remarks>
/// <para>The ends are held: below the first and above the last temperature the end value stands, and a run says when it went beyond.</para>
/// <para>Source: ratio of brake factors C*(μ(T))/C*(μ_ref); a disc's factor is in proportion to friction, a duo-servo drum's changes
/// about three times as much.</para>
/// </remarks>
public sealed class FadeCurve
{
    private readonly double[] _celsius;
    private readonly double[] _factor;

    private FadeCurve(double[] celsius, double[] factor)
    {
        _celsius = celsius;
        _factor = factor;
    }

    /// <summary>Torque that does not change with temperature.</summary>
    public static FadeCurve None { get; } = new([-50, 2000], [1, 1]);

    /// <summary>A curve through points.</summary>
    /// <param name="points">
    /// Temperature of the ring, and torque over the reference torque [–]; at least two points, temperatures rising, factors not negative.
    /// </param>
    /// <exception cref="ArgumentException">
    /// There are fewer than two points, a temperature does not rise, or a factor is negative.
    /// </exception>
    public static FadeCurve Through(IEnumerable<(Temperature Temperature, double Factor)> points)
    {
        ArgumentNullException.ThrowIfNull(points);
        double[][] columns = [.. points.Select(p => new[] { p.Temperature.DegreesCelsius, p.Factor })];
        for (int i = 0; i < columns.Length; i++)
        {
            Refuse.If(!(columns[i][1] >= 0) || (i > 0 && !(columns[i][0] > columns[i - 1][0])),
                $"Temperatures must rise and factors must not be negative; point {i + 1} is {columns[i][0]} °C, {columns[i][1]}.",
                nameof(points));
        }

        return columns.Length >= 2
            ? new FadeCurve([.. columns.Select(c => c[0])], [.. columns.Select(c => c[1])])
            : throw new ArgumentException("Must hold at least two points.", nameof(points));
    }

    /// <summary>Highest temperature of the points.</summary>
    public Temperature Hottest => Temperature.FromDegreesCelsius(_celsius[^1]);

    /// <summary>Torque over the reference torque at a temperature.</summary>
    /// <param name="temperature">Temperature of the ring.</param>
    /// <returns>Factor [–].</returns>
    public double FactorAt(Temperature temperature) => At(temperature.DegreesCelsius);

    internal double HottestCelsius => _celsius[^1];

    /// <summary>The factor at a temperature in degrees Celsius.</summary>
    internal double At(double celsius) =>
        celsius <= _celsius[0] ? _factor[0]
        : celsius >= _celsius[^1] ? _factor[^1]
        : StraightPieces.At(_celsius, _factor, celsius);
}
