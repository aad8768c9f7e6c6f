using MathNet.Numerics.Random;

namespace BrakeBalance.Teaching;

/// <summary>A class seed and a student number: together they fix the numbers of a student's sheet, on every machine alike.</summary>
public sealed record ClassNumber
{
    /// <summary>The seed of the class; any whole number.</summary>
    public required int Seed { get; init; }

    /// <summary>The student's number; 1 to 9999. Nothing about the student is stored.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 9999.</exception>
    public required int Student
    {
        get;
        init => field = value is >= 1 and <= 9999
            ? value : throw new ArgumentOutOfRangeException(nameof(Student), value, "Must lie between 1 and 9999.");
    }

    /// <summary>The source of the student's numbers.</summary>
    /// <param name="stream">A number for each independent stream.</param>
    /// <remarks>
    /// Mersenne Twister by Matsumoto and Nishimura, as MathNet.Numerics has it: the same everywhere and in every version.
    /// </remarks>
    internal MersenneTwister Numbers(int stream) =>
        new(unchecked((Seed * 1_000_003) + (Student * 7919) + (stream * 104_729)), threadSafe: false);
}
