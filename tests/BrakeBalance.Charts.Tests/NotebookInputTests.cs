using BrakeBalance.Measurements;
using BrakeBalance.Tests;

namespace BrakeBalance.Charts.Tests;

/// <summary>Whose tests a page shows.</summary>
public class NotebookInputTests
{
    [Fact]
    public void Without_logs_of_its_own_the_tests_are_those_of_the_example_under_its_own_name()
    {
        using var own = new OwnCar();
        own.Named(null, null);
        (OwnMeasurements tests, string whose) = new NotebookInput(own.File, []).Tests();
        Assert.Equal("Invented 1960s coupe", tests.File.Name);
        Assert.StartsWith("Example: Invented 1960s coupe", whose, StringComparison.Ordinal);
        Assert.Contains("of it this page says only which number to measure next", whose, StringComparison.Ordinal);
    }

    [Fact]
    public void Logs_of_its_own_are_the_cars()
    {
        using OwnCar own = OwnCar.Measured();
        (OwnMeasurements tests, string whose) = new NotebookInput(own.File, []).Tests();
        Assert.Equal("Green saloon", tests.File.Name);
        Assert.Contains("These are the tests of the Green saloon", whose, StringComparison.Ordinal);
        Assert.False(tests.Stops!.IsInvented);
        Assert.DoesNotContain("without the changes", whose, StringComparison.Ordinal);
        (OwnMeasurements same, whose) = new NotebookInput(own.File, ["rear.brake.friction=0.45"]).Tests();
        Assert.Equal(tests.File.Brakes, same.File.Brakes);
        Assert.EndsWith("as its file has it, without the changes asked for.", whose.Split(" The phone's")[0], StringComparison.Ordinal);
    }

    [Fact]
    public void Of_the_example_itself_nothing_needs_to_be_said()
    {
        string whose = new NotebookInput(RepositoryRoot.File(NotebookInput.DefaultVehicle), []).Tests().Whose;
        Assert.DoesNotContain("this page says", whose, StringComparison.Ordinal);
    }
}
