namespace BrakeBalance.Tests.Measurements;

public class LogFuzzTests
{
    private const int Count = 1000;

    [Fact]
    public void A_broken_log_is_read_or_told_and_never_throws()
    {
        string[] sound = [.. Enum.GetValues<SimulatedLogger>().Select(logger => new SimulatedLog(logger, 7).Text).Select(Short),
            .. Directory.EnumerateFiles(Path.Combine(RepositoryFiles.Root, "data", "logs"), "invented-export-*").Order()
                .Select(path => Short(BrakeBalance.Measurements.LogText.Open(path).ReadToEnd()))];
        Assert.Empty(Enumerable.Range(0, Count).AsParallel().Select(seed => (seed, LogFuzz.Broken(seed, sound)))
            .Where(f => f.Item2 is not null));
    }

    [Fact]
    public void A_speed_in_any_unit_is_right_and_one_without_a_unit_is_asked_for() =>
        Assert.Empty(Enumerable.Range(0, Count).Select(seed => (seed, LogFuzz.WrongUnit(seed))).Where(f => f.Item2 is not null));

    // The beginning of a log, with the first stop: a case has to be quick.
    internal static string Short(string text) => string.Join('\n', text.Split('\n').Take(400));
}
