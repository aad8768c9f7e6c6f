using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench.Files;

internal sealed class HoseClassNames : IWordTable
{
    public static IReadOnlyList<string> Words { get; } = [.. HoseRating.All.Select(row => row.Class).Distinct()];
}
