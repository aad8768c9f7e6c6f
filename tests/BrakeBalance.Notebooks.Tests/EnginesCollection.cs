namespace BrakeBalance.Notebooks.Tests;

/// <summary>Tests that run cells share the console and the environment of the process, so they run one after the other.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class EnginesCollection
{
    public const string Name = "Engines";
}
