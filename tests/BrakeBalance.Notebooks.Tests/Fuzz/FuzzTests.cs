using System.Globalization;
using BrakeBalance.Fuzz;
using BrakeBalance.Vehicles.Files;
using Xunit.Abstractions;

namespace BrakeBalance.Notebooks.Tests.Fuzz;

/// <summary>The fuzz measures processor time, so it runs by itself, after the others.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class FuzzCollection
{
    public const string Name = "Fuzz";
}

[Collection(FuzzCollection.Name)]
public class FuzzTests(ITestOutputHelper output)
{
    private const int Cases = 2000;
    private const int QuickEvery = 40;
    private const int EveryCommandEvery = 400;

    /// <remarks>
    /// Vehicle, bench, log, lap and answer files; there is no other kind of file. All are read; of those accepted every 40th is asked a
    /// quick question, every 400th goes through every command and figure. The benchmarks project does the same at any scale: <c>fuzz
    /// COUNT SEED</c>.
    /// </remarks>
    [Fact]
    public async Task No_file_stops_the_program_and_what_check_accepts_every_command_answers_in_finite_numbers()
    {
        int seed = int.Parse(Environment.GetEnvironmentVariable("BRAKE_BALANCE_FUZZ_SEED") ?? "1", CultureInfo.InvariantCulture);
        output.WriteLine(FormattableString.Invariant($"{Cases} cases from seed {seed}"));
        await RestAsync();
        FuzzReport report = await FuzzReport.RunAsync(
            seed,
            Enumerable.Range(0, Cases),
            (_, accepted) => accepted % EveryCommandEvery == 0
                ? FuzzDepth.Every : accepted % QuickEvery == 0 ? FuzzDepth.Quick : FuzzDepth.Read);
        output.WriteLine(report.ToString());
        Assert.True(report.Findings.Count == 0, report.ToString());
        foreach (string kind in (string[])["vehicle", "bench", "gauges", "stops", "series", "lap", "answers"])
        {
            Assert.True(report.Accepted(kind) >= 10, $"Too few files of the kind {kind} got past the reader to try anything:\n{report}");
        }
    }

    // A command that another test left behind may still run.
    private static async Task RestAsync()
    {
        for (int second = 0; second < 120; second++)
        {
            TimeSpan before = Environment.CpuUsage.TotalTime;
            await Task.Delay(TimeSpan.FromSeconds(1));
            if ((Environment.CpuUsage.TotalTime - before).TotalSeconds < 0.2)
            {
                return;
            }
        }
    }

    [Fact]
    public void The_files_that_are_changed_are_sound() =>
        Assert.All(FuzzCase.Cars, text => Assert.Equal("", string.Join('\n', VehicleFile.TryRead(text).Problems)));

    [Fact]
    public void The_same_seed_and_number_give_the_same_file()
    {
        Assert.Equal(Enumerable.Range(0, 40).Select(i => FuzzCase.Of(5, i)), Enumerable.Range(0, 40).Select(i => FuzzCase.Of(5, i)));
        Assert.NotEqual(FuzzCase.Of(5, 1).Text, FuzzCase.Of(6, 1).Text);
    }
}
