using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using MathNet.Numerics.Random;

namespace BrakeBalance.Teaching;

/// <summary>
/// A class and a student number: together they fix the numbers of a student's sheet, on every machine alike. A lesson's class is a seed
/// that anybody may know; a teacher's is a secret, and whoever has it has the key.
/// </summary>
public sealed record ClassNumber
{
    // No letters that are taken for digits.
    private const int CodeLength = 8;
    private const string Letters = "ABCDEFGHJKMNPQRSTUVWXYZ23456789";

    /// <summary>The seed of a lesson; any whole number. It counts for nothing beside a <see cref="Secret"/>.</summary>
    public int Seed { get; init; }

    /// <summary>The teacher's secret; empty for a lesson. No seed gives the numbers of a secret.</summary>
    public string Secret { get; init; } = "";

    /// <summary>What stands on the sheets of a secret: with it alone the student's car is known, but not what is asked of it.</summary>
    /// <exception cref="ArgumentException">The value is no class code.</exception>
    public string Code
    {
        get => Secret.Length > 0 ? CodeOf(Secret) : field;
        internal init => field = value.ToUpperInvariant() is var code && (code.Length is 0 or CodeLength) && code.All(Letters.Contains)
            ? code : throw new ArgumentException(
                $"\"{value}\" is no class code: eight letters and digits at the top of a sheet, without I, L, O, 0 and 1.", nameof(value));
    } = "";

    /// <summary>The student's number; 1 to 9999. Nothing about the student is stored.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside 1 to 9999.</exception>
    public required int Student { get; init => field = Require.Between(value, 1, 9999); }

    /// <summary>What may stand on a sheet to tell one class from another: from it nobody finds the secret.</summary>
    /// <param name="secret">The teacher's secret.</param>
    /// <returns>Eight letters and digits.</returns>
    public static string CodeOf(string secret) => string.Concat(
        Hash("code", secret, 0, 0).Take(CodeLength).Select(part => Letters[part % Letters.Length]));

    private static byte[] Hash(string use, string secret, int student, int stream) => SHA256.HashData(Encoding.UTF8.GetBytes(
        Invariant.Text($"brake balance class\0{use}\0{secret}\0{student}\0{stream}")));

    /// <summary>The source of the numbers of the student's car, the same for a secret and for its code.</summary>
    internal MersenneTwister OfCar => Code.Length > 0 ? Source("car", Code, 0) : Numbers(0);

    /// <summary>The source of the numbers of what is asked; nobody who has the code alone has it.</summary>
    internal MersenneTwister OfTasks => Code.Length > 0 ? Source("numbers", Secret.Length > 0 ? Secret : Code, 1) : Numbers(1);

    // Mersenne Twister by Matsumoto and Nishimura, as MathNet.Numerics has it: the same everywhere and in every version.
    private MersenneTwister Source(string use, string of, int stream) =>
        new(BinaryPrimitives.ReadInt32LittleEndian(Hash(use, of, Student, stream)), threadSafe: false);

    private MersenneTwister Numbers(int stream) =>
        new(unchecked((Seed * 1_000_003) + (Student * 7919) + (stream * 104_729)), threadSafe: false);
}
