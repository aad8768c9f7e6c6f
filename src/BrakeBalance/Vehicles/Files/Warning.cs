namespace BrakeBalance.Vehicles.Files;

/// <summary>One thing in a file that can be, but hardly is: where, what, what is usual and which slip it most likely is.</summary>
/// <param name="Path">Path of the entry in the file, such as <c>rear.brake.friction</c>.</param>
/// <param name="What">What is unusual, naming the value found.</param>
/// <param name="Usual">What is usual (common practice).</param>
/// <param name="Slip">The likely slip, as a phrase; empty when there is no likely one.</param>
public sealed record Warning(string Path, string What, string Usual, string Slip = "")
{
    /// <inheritdoc/>
    public override string ToString() => $"{Path}: {What} Usual: {Usual}." + (Slip.Length > 0 ? $" Likely slip: {Slip}." : "");
}
