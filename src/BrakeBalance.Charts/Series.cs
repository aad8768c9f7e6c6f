using System.Collections;
using System.Runtime.CompilerServices;
using UnitsNet.Units;

namespace BrakeBalance.Charts;

/// <summary>A row of numbers for a layer or a column, in SI units.</summary>
/// <remarks>
/// Made implicitly from an array of <c>double</c> (taken as SI: pascals, newtons, metres, seconds, kelvins, fractions) or
/// from an array of UnitsNet quantities; a collection expression of SI numbers works as well.
/// </remarks>
[CollectionBuilder(typeof(Series), nameof(Create))]
public readonly struct Series : IEnumerable<double>
{
    private readonly double[]? _values;

    /// <summary>Takes numbers that are in SI units already.</summary>
    /// <param name="si">The numbers; finite.</param>
    /// <exception cref="ArgumentException">A number is not finite.</exception>
    public Series(IEnumerable<double> si)
    {
        _values = [.. si];
        int bad = Array.FindIndex(_values, value => !double.IsFinite(value));
        Refuse.If(bad >= 0, $"A figure shows finite numbers only; number {bad} of {_values.Length} is {_values[bad]}.", nameof(si));
    }

    /// <summary>The numbers in SI units.</summary>
    public IReadOnlyList<double> Values => _values ?? [];

    /// <summary>How many numbers there are.</summary>
    public int Count => Values.Count;

    /// <summary>Numbers in SI units.</summary>
    /// <param name="values">The numbers.</param>
    public static implicit operator Series(double[] values) => new(values);

    /// <summary>Pressures.</summary>
    /// <param name="values">The pressures.</param>
    public static implicit operator Series(Pressure[] values) => Of(values, PressureUnit.Pascal);

    /// <summary>Forces.</summary>
    /// <param name="values">The forces.</param>
    public static implicit operator Series(Force[] values) => Of(values, ForceUnit.Newton);

    /// <summary>Lengths.</summary>
    /// <param name="values">The lengths.</param>
    public static implicit operator Series(Length[] values) => Of(values, LengthUnit.Meter);

    /// <summary>Speeds.</summary>
    /// <param name="values">The speeds.</param>
    public static implicit operator Series(Speed[] values) => Of(values, SpeedUnit.MeterPerSecond);

    /// <summary>Accelerations.</summary>
    /// <param name="values">The accelerations.</param>
    public static implicit operator Series(Acceleration[] values) => Of(values, AccelerationUnit.MeterPerSecondSquared);

    /// <summary>Temperatures.</summary>
    /// <param name="values">The temperatures.</param>
    public static implicit operator Series(Temperature[] values) => Of(values, TemperatureUnit.Kelvin);

    /// <summary>Durations.</summary>
    /// <param name="values">The durations.</param>
    public static implicit operator Series(Duration[] values) => Of(values, DurationUnit.Second);

    /// <summary>Takes numbers that are in SI units already.</summary>
    /// <param name="si">The numbers; finite.</param>
    public static Series Create(ReadOnlySpan<double> si) => new(si.ToArray());

    /// <summary>Quantities of any kind, brought to one SI unit.</summary>
    /// <typeparam name="T">The kind of quantity.</typeparam>
    /// <param name="quantities">The quantities.</param>
    /// <param name="siUnit">The SI unit of the measure they are shown by.</param>
    public static Series Of<T>(IEnumerable<T> quantities, Enum siUnit)
        where T : IQuantity =>
        new(quantities.Select(quantity => quantity.As(siUnit)));

    /// <inheritdoc/>
    public IEnumerator<double> GetEnumerator() => Values.GetEnumerator();

    /// <inheritdoc/>
    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();
}
