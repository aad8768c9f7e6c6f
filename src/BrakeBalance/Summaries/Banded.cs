using BrakeBalance.Vehicles;

namespace BrakeBalance.Summaries;

/// <summary>Something worked out of a car, and of the cars that the ranges of its file allow.</summary>
/// <remarks>
/// What the file gives as a range has no single value, so no number that rests on it has one either. Every answer that shows such a
/// number works it out through this record and writes it with its band; <see cref="BandText"/> has the form.
/// </remarks>
/// <typeparam name="T">What is worked out.</typeparam>
/// <param name="Middle">With every range at its middle.</param>
/// <param name="Drawn">Of each car drawn from the ranges; empty when the file has none.</param>
/// <param name="OfClass">Of some cars that differ only in what is typical of the class; empty when nothing is.</param>
public sealed record Banded<T>(T Middle, IReadOnlyList<T> Drawn, IReadOnlyList<T> OfClass)
{
    /// <summary>Whether the ranges of the file move anything.</summary>
    public bool HasBand => Drawn.Count > 0;

    /// <summary>The same of each part.</summary>
    /// <typeparam name="TPart">The part.</typeparam>
    /// <param name="part">Takes the part; null where a car has none, which leaves it out.</param>
    /// <returns>The parts; null when the middle has none.</returns>
    public Banded<TPart>? Select<TPart>(Func<T, TPart?> part) where TPart : class =>
        part(Middle) is { } middle ? new(middle, [.. Drawn.Select(part).OfType<TPart>()], [.. OfClass.Select(part).OfType<TPart>()]) : null;

    /// <summary>A short text, its numbers with their bands.</summary>
    /// <param name="say">Writes the text of one car.</param>
    /// <returns>Such as <c>0.62 g (0.58–0.66)</c>.</returns>
    public string Text(Func<T, string> say) => BandText.Of(say(Middle), Drawn.Select(say), OfClass.Select(say));

    /// <summary>Sentences, their numbers with their bands, and what else they could say.</summary>
    /// <param name="say">Writes the sentences of one car; null where it has none to say.</param>
    /// <returns>The sentences; null when the middle has none.</returns>
    public string? Sentences(Func<T, string?> say) => say(Middle) is { } middle
        ? BandText.Sentences(middle, Drawn.Select(say).OfType<string>(), OfClass.Select(say).OfType<string>()) : null;
}

/// <summary>Works something out of a car and of those that its ranges allow.</summary>
public static class Banded
{
    /// <summary>Works it out.</summary>
    /// <typeparam name="T">What is worked out.</typeparam>
    /// <param name="vehicle">The car; its hydraulics may have been set otherwise than in its file.</param>
    /// <param name="work">Works it out of one car.</param>
    /// <returns>The middle and the others; a drawn car that cannot be computed is left out.</returns>
    public static Banded<T> Of<T>(Vehicle vehicle, Func<Vehicle, T> work) where T : class
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(work);
        T[] Each(IReadOnlyList<Vehicle>? cars) => [.. (cars ?? []).Select(car => Try(() => work(car))).OfType<T>()];
        return new(work(vehicle), Each(vehicle.Uncertainty?.CarsOf(vehicle)), Each(vehicle.Uncertainty?.CarsOfClass(vehicle)));
    }

    /// <summary>What is worked out of a drawn car; null where its values do not go together for it.</summary>
    internal static T? Try<T>(Func<T?> work) where T : class
    {
        try
        {
            return work();
        }
        catch (Exception exception) when (exception is ArgumentException or InvalidOperationException)
        {
            return null;
        }
    }
}
