namespace BrakeBalance;

/// <summary>One value for the front axle and one for the rear axle.</summary>
/// <typeparam name="T">What is held for each axle.</typeparam>
/// <param name="Front">The front axle's value.</param>
/// <param name="Rear">The rear axle's value.</param>
public readonly record struct PerAxle<T>(T Front, T Rear)
{
    /// <summary>The value of one axle.</summary>
    /// <param name="axle">Which axle.</param>
    public T this[Axle axle] => axle == Axle.Front ? Front : Rear;

    /// <summary>Applies the same function to both axles.</summary>
    /// <typeparam name="TResult">What the function returns.</typeparam>
    /// <param name="function">Called with the front value, then with the rear value.</param>
    public PerAxle<TResult> Select<TResult>(Func<T, TResult> function) => new(function(Front), function(Rear));
}

/// <summary>One of the two axles of a car.</summary>
public enum Axle
{
    /// <summary>The axle at the front.</summary>
    Front,

    /// <summary>The axle at the rear.</summary>
    Rear,
}
