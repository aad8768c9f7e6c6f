using MathNet.Numerics.Interpolation;

namespace BrakeBalance.Brakes;

/// <summary>Friction coefficient of a pad or lining against its temperature, from cold to fade.</summary>
/// <remarks>
/// <para>Passes through the given points and neither overshoots nor dips between them (monotone piecewise cubic; a straight line for two
/// points).</para>
/// <para>Valid between the first and the last point only: no value is guessed beyond them.</para>
/// <para>Source: monotone cubic Hermite interpolation of the numerics library; the points are the user's.</para>
/// </remarks>
public sealed record FrictionCurve
{
    private readonly double[] _celsius;
    private readonly double[] _friction;
    private IInterpolation? _interpolation;

    private FrictionCurve(double[] celsius, double[] friction)
    {
        _celsius = celsius;
        _friction = friction;
    }

    private IInterpolation Interpolation => _interpolation ??= _celsius.Length < 3
        ? LinearSpline.InterpolateSorted(_celsius, _friction)
        : CubicSpline.InterpolatePchipSorted(_celsius, _friction);

    /// <summary>The lowest temperature the curve covers.</summary>
    public Temperature Coldest => Temperature.FromDegreesCelsius(_celsius[0]);

    /// <summary>The highest temperature the curve covers.</summary>
    public Temperature Hottest => Temperature.FromDegreesCelsius(_celsius[^1]);

    /// <summary>The points the curve was made from, coldest first; friction [–].</summary>
    public IReadOnlyList<(Temperature Temperature, double Friction)> Points =>
        [.. _celsius.Zip(_friction, (t, f) => (Temperature.FromDegreesCelsius(t), f))];

    /// <summary>A curve through points.</summary>
    /// <param name="points">
    /// Temperature of the rubbing surface and friction coefficient [–]; at least two, temperatures rising, friction above 0 and at most
    /// 1.2.
    /// </param>
    /// <exception cref="ArgumentException">
    /// Fewer than two points, or temperatures that do not rise; the message names the points.
    /// </exception>
    /// <exception cref="ArgumentOutOfRangeException">A friction coefficient is outside its range.</exception>
    public static FrictionCurve Through(params IEnumerable<(Temperature Temperature, double Friction)> points)
    {
        (double Celsius, double Friction)[] list = [.. points.Select(p => (p.Temperature.DegreesCelsius, p.Friction))];
        Refuse.If(list.Length < 2, $"A friction curve needs at least two points, cold and hot; {list.Length} given.", nameof(points));

        for (int i = 0; i < list.Length; i++)
        {
            Require.PositiveUpTo(list[i].Friction, Brake.HighestFriction, Invariant.Text($"friction of point {i + 1}"));
            Refuse.If(i > 0 && list[i].Celsius <= list[i - 1].Celsius,
                $"Temperatures must rise from point to point: point {i} is at {list[i - 1].Celsius:0.###} °C and point {i + 1} "
                    + $"at {list[i].Celsius:0.###} °C.", nameof(points));
        }

        return new FrictionCurve([.. list.Select(p => p.Celsius)], [.. list.Select(p => p.Friction)]);
    }

    /// <summary>Friction coefficient at a temperature [–].</summary>
    /// <param name="temperature">Temperature of the rubbing surface; within the curve.</param>
    /// <returns>Friction coefficient [–]; between those of the neighbouring points.</returns>
    /// <remarks><para>Source: as for the type.</para></remarks>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="temperature"/> lies outside the curve.</exception>
    public double At(Temperature temperature)
    {
        double celsius = temperature.DegreesCelsius;
        return celsius >= _celsius[0] && celsius <= _celsius[^1]
            ? Interpolation.Interpolate(celsius)
            : throw new ArgumentOutOfRangeException(nameof(temperature), celsius, Invariant.Text(
                $"The friction curve covers {_celsius[0]:0.###} °C to {_celsius[^1]:0.###} °C; "
                    + $"friction at {celsius:0.###} °C is not known. Add a measured point there."));
    }

    /// <summary>Whether two curves pass through the same points.</summary>
    /// <param name="other">The curve to compare with.</param>
    /// <returns>True when every point agrees.</returns>
    public bool Equals(FrictionCurve? other) =>
        other is not null && _celsius.SequenceEqual(other._celsius) && _friction.SequenceEqual(other._friction);

    /// <summary>A hash of the points.</summary>
    public override int GetHashCode() => _celsius.Concat(_friction).Aggregate(0, HashCode.Combine);
}
