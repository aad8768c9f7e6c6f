using System.Runtime.CompilerServices;

namespace BrakeBalance.Vehicles.Files;

/// <summary>What something was read from, so that a page can read it again. A changed copy has none: its source would be another.</summary>
internal sealed record SourceText(string Text, IReadOnlyList<ValueOverride> Set)
{
    private static readonly ConditionalWeakTable<object, SourceText> All = [];

    /// <summary>Texts of the logs that belong to it, by kind.</summary>
    public IReadOnlyDictionary<string, string> Logs { get; init; } = new Dictionary<string, string>();

    public static SourceText? Of(object read) => All.TryGetValue(read, out SourceText? source) ? source : null;

    public static T Remember<T>(T read, SourceText? source)
        where T : class
    {
        if (source is not null)
        {
            All.AddOrUpdate(read, source);
        }

        return read;
    }
}
