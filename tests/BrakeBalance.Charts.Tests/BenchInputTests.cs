using BrakeBalance.Tests;

namespace BrakeBalance.Charts.Tests;

/// <summary>Whose job a page of the bench shows.</summary>
[Collection(nameof(BenchInputTests))]
[CollectionDefinition(nameof(BenchInputTests), DisableParallelization = true)]
public sealed class BenchInputTests : IDisposable
{
    private readonly string? _vehicle = Environment.GetEnvironmentVariable(NotebookInput.VehicleVariable);
    private readonly string? _bench = Environment.GetEnvironmentVariable(BenchInput.Variable);

    public void Dispose()
    {
        Environment.SetEnvironmentVariable(NotebookInput.VehicleVariable, _vehicle);
        Environment.SetEnvironmentVariable(BenchInput.Variable, _bench);
    }

    [Fact]
    public void Without_a_bench_file_the_job_is_the_example_under_its_own_name_and_says_nothing_of_the_car()
    {
        using var own = new OwnCar();
        Environment.SetEnvironmentVariable(NotebookInput.VehicleVariable, own.Named(null, null).File);
        Environment.SetEnvironmentVariable(BenchInput.Variable, null);
        Assert.False(BenchInput.IsOwn);
        Assert.StartsWith("Example: \"Pump-fed booster in the invented coupe\"", BenchInput.Whose, StringComparison.Ordinal);
        Assert.Contains("nothing on this page is said of the Green saloon", BenchInput.Whose, StringComparison.Ordinal);
        Environment.SetEnvironmentVariable(NotebookInput.VehicleVariable, null);
        Assert.DoesNotContain("nothing on this page", BenchInput.Whose, StringComparison.Ordinal);
    }

    [Fact]
    public void A_job_of_one_s_own_is_named_with_the_parts_that_are_the_example_s()
    {
        using var own = new OwnCar();
        Environment.SetEnvironmentVariable(BenchInput.Variable, own.Write("job.json", """
            { "name": "My rod", "pushRod": { "seatDepth": ["9.9 mm", "10.1 mm"], "rodProjection": ["9.4 mm", "9.6 mm"] } }
            """));
        Assert.True(BenchInput.IsOwn);
        Assert.Equal("My rod", BenchInput.Current.Name);
        Assert.Contains("This is the job \"My rod\"", BenchInput.Whose, StringComparison.Ordinal);
        Assert.Contains("no hoses, no plumbing, no change of parts", BenchInput.Whose, StringComparison.Ordinal);
        Assert.Contains("the example \"Pump-fed booster in the invented coupe\"", BenchInput.Whose, StringComparison.Ordinal);
    }
}
