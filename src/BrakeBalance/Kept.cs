namespace BrakeBalance;

/// <summary>What is worked out of a record once: no part of what it equals, and worked out anew for a changed copy.</summary>
internal struct Kept<T> : IEquatable<Kept<T>>
{
    private Known? _known;

    public T Of<TOwner>(TOwner owner, Func<TOwner, T> work) where TOwner : class
    {
        Known? known = _known;
        if (known is null || !ReferenceEquals(known.Owner, owner))
        {
            _known = known = new Known(owner, work(owner));
        }

        return known.Value;
    }

    public readonly bool Equals(Kept<T> other) => true;

    public override readonly bool Equals(object? obj) => obj is Kept<T>;

    public override readonly int GetHashCode() => 0;

    private sealed record Known(object Owner, T Value);
}
