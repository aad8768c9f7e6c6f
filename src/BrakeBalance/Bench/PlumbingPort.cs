namespace BrakeBalance.Bench;

internal enum PortFlow
{
    /// <summary>Into the part.</summary>
    In,

    /// <summary>Out of the part.</summary>
    Out,

    /// <summary>Either way, as it is connected.</summary>
    Either,
}

/// <summary>One port of a part.</summary>
/// <param name="Name">Its name, as it is written behind the point: <c>booster.return</c>.</param>
/// <param name="Flow">Which way oil goes through it.</param>
/// <param name="Needed">Whether it must be connected.</param>
/// <param name="WhenOpen">What happens when it is not.</param>
internal sealed record PlumbingPort(string Name, PortFlow Flow, bool Needed, string WhenOpen)
{
    private const string NoOil = "No oil would get there.";

    /// <summary>The ports of a kind of part.</summary>
    public static ImmutableArray<PlumbingPort> Of(PlumbingPart part) => part switch
    {
        PlumbingPart.Reservoir =>
        [
            new("outlet", PortFlow.Out, true, "The pump would run dry."),
            new("return1", PortFlow.In, true, "The oil would have no way back."),
            new("return2", PortFlow.In, false, ""),
        ],
        PlumbingPart.Pump =>
        [
            new("inlet", PortFlow.In, true, "The pump would run dry."),
            new("outlet", PortFlow.Out, true, "There would be no pressure anywhere."),
        ],
        PlumbingPart.PumpWithReservoir =>
        [
            new("outlet", PortFlow.Out, true, "There would be no pressure anywhere."),
            new("return1", PortFlow.In, true, "The oil would have no way back."),
            new("return2", PortFlow.In, false, ""),
        ],
        PlumbingPart.Booster =>
        [
            new("pressure", PortFlow.In, true, "The booster would give no assist."),
            new("gear", PortFlow.Out, true, "The steering would get no oil, and the pump would stand against its relief valve."),
            new("return", PortFlow.Out, true, "The oil of the power chamber could not leave: the brakes would stay on."),
        ],
        PlumbingPart.SteeringGear =>
        [
            new("pressure", PortFlow.In, true, "The steering would get no oil."),
            new("return", PortFlow.Out, true, "The pump would stand against its relief valve."),
        ],
        PlumbingPart.Cooler or PlumbingPart.Filter =>
        [
            new("inlet", PortFlow.In, true, NoOil),
            new("outlet", PortFlow.Out, true, "The oil would stop there."),
        ],
        _ =>
        [
            new("run1", PortFlow.Either, true, "The tee would leak."),
            new("run2", PortFlow.Either, true, "The tee would leak."),
            new("branch", PortFlow.Either, true, "The tee would leak; use a straight union."),
        ],
    };
}
