namespace BrakeBalance.Measurements;

/// <summary>An estimate with the bounds of its 90 % interval.</summary>
/// <typeparam name="T">What is estimated.</typeparam>
/// <param name="Estimate">Best value.</param>
/// <param name="Low">Lower bound: 5 % of the probability lies below.</param>
/// <param name="High">Upper bound: 5 % of the probability lies above.</param>
public readonly record struct Interval<T>(T Estimate, T Low, T High)
{
    /// <summary>Applies the same increasing function to estimate and bounds.</summary>
    /// <typeparam name="TResult">What the function returns.</typeparam>
    /// <param name="function">An increasing function.</param>
    /// <returns>The interval of the function's values.</returns>
    public Interval<TResult> Select<TResult>(Func<T, TResult> function) => new(function(Estimate), function(Low), function(High));
}
