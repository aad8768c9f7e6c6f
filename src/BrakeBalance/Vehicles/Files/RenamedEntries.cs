namespace BrakeBalance.Vehicles.Files;

/// <summary>Entries and words of older files that have another name now; the reader refuses the old one and names the new one.</summary>
internal static class RenamedEntries
{
    /// <summary>The new key of each old one.</summary>
    public static IReadOnlyDictionary<string, string> Keys { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["knob"] = "adjuster",
        ["kneeFullyOut"] = "kneeBackedOff",
        ["takeUp"] = "clearance",
        ["give"] = "compliance",
        ["giveAt"] = "complianceAt",
        ["panicForce"] = "emergencyForce",
        ["panicRiseTime"] = "emergencyRiseTime",
        ["brakingRate"] = "deceleration",
    };

    /// <summary>The new word for each old <c>type</c> of a part.</summary>
    public static IReadOnlyDictionary<string, string> Types { get; } = new Dictionary<string, string>(StringComparer.Ordinal)
    {
        ["hold-off"] = "metering",
    };

    /// <summary>What to say of an old name where the new one is known.</summary>
    /// <param name="names">The old names, each with its new one.</param>
    /// <param name="old">The name as written.</param>
    /// <param name="known">The names known at that place.</param>
    /// <returns>A sentence; null when the name is no old one.</returns>
    public static string? Words(IReadOnlyDictionary<string, string> names, string old, IEnumerable<string> known) =>
        names.GetValueOrDefault(old) is { } name && known.Contains(name) ? $"is called \"{name}\" now." : null;

    /// <summary>Whether an entry stands there under its old name.</summary>
    public static bool IsWrittenAsOld(string key, IEnumerable<string> written) => written.Any(old => Keys.GetValueOrDefault(old) == key);
}
