namespace BrakeBalance.Tests;

/// <summary>Tests that measure time: they run after the others and one by one, so that these do not count.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class SpeedCollection
{
    public const string Name = "Speed";

    /// <summary>Processor time of this process, all cores together: what other programs do meanwhile does not count.</summary>
    public static double ProcessorSeconds(Action action)
    {
        using var process = System.Diagnostics.Process.GetCurrentProcess();
        TimeSpan before = process.TotalProcessorTime;
        action();
        process.Refresh();
        return (process.TotalProcessorTime - before).TotalSeconds;
    }
}
