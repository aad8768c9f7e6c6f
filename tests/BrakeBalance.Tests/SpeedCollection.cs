namespace BrakeBalance.Tests;

/// <summary>Tests that measure time: they run after the others and one by one, so that these do not count.</summary>
[CollectionDefinition(Name, DisableParallelization = true)]
public class SpeedCollection
{
    public const string Name = "Speed";
}
