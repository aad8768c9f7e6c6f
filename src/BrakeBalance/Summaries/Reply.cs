namespace BrakeBalance.Summaries;

/// <summary>What the desk replies to a question: an answer, or the entries that lack in the file.</summary>
internal sealed record Reply(string? Answer, IReadOnlyList<string> Lacking)
{
    public const string Control =
        "pedal, assist and masterCylinder: tape on the pedal (pivot to pad over pivot to rod), bore cast on the cylinder, kind of booster";

    public const string Fluid = "fluid: clearance and compliance of each axle, hose lengths; or a rule at the pedal under a firm push";

    public static implicit operator Reply(string answer) => new(answer, []);

    public static Reply Lacks(params IReadOnlyList<string> entries) => new(null, entries);
}
