namespace BrakeBalance.Tests.Measurements;

public class LogFuzzTests
{
    // BRAKE_LOGS=20000 dotnet test tests/BrakeBalance.Tests --filter FullyQualifiedName~LogFuzz
    private static readonly int Count = int.TryParse(Environment.GetEnvironmentVariable("BRAKE_LOGS"), out int asked) ? asked : 1000;

    [Fact]
    public void A_broken_log_is_read_or_told_and_never_throws()
    {
        string[] sound = [.. Enum.GetValues<SimulatedLogger>().Select(logger => new SimulatedLog(logger, 7).Text).Select(Short),
            .. Directory.EnumerateFiles(Path.Combine(RepositoryFiles.Root, "data", "logs"), "invented-export-*").Order()
                .Select(path => Short(BrakeBalance.Measurements.LogText.Open(path).ReadToEnd()))];
        string?[] faults = [.. Enumerable.Range(0, Count).AsParallel().Select(seed => LogFuzz.Broken(seed, sound) is { } fault
            ? $"seed {seed}: {fault}" : null)];
        Assert.Equal([], faults.OfType<string>());
    }

    [Fact]
    public void A_speed_in_any_unit_is_right_and_one_without_a_unit_is_asked_for() =>
        Assert.Equal([], Enumerable.Range(0, Count).Select(seed => LogFuzz.WrongUnit(seed) is { } fault ? $"seed {seed}: {fault}" : null)
            .OfType<string>());

    // The beginning of a log, with the first stop: a case has to be quick.
    internal static string Short(string text) => string.Join('\n', text.Split('\n').Take(400));
}
