using System.Collections.Immutable;
using UnitsNet;

namespace BrakeBalance.Bench;

/// <summary>What stands at a node of the plumbing.</summary>
public enum PlumbingPart
{
    /// <summary>Reservoir with an outlet and two returns.</summary>
    Reservoir,

    /// <summary>Steering pump fed from a reservoir of its own line.</summary>
    Pump,

    /// <summary>Steering pump with the reservoir built on: no suction line.</summary>
    PumpWithReservoir,

    /// <summary>Pump-fed hydraulic brake booster.</summary>
    Booster,

    /// <summary>Steering box or rack.</summary>
    SteeringGear,

    /// <summary>Oil cooler.</summary>
    Cooler,

    /// <summary>Filter.</summary>
    Filter,

    /// <summary>Tee: a straight run and a branch.</summary>
    Tee,
}

/// <summary>Which way oil goes through a port.</summary>
public enum PortFlow
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
public sealed record PlumbingPort(string Name, PortFlow Flow, bool Needed, string WhenOpen)
{
    private const string NoOil = "No oil would get there.";

    /// <summary>The ports of a kind of part.</summary>
    /// <param name="part">The kind of part.</param>
    /// <returns>Its ports.</returns>
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

/// <summary>One part of the plumbing.</summary>
public sealed record PlumbingNode
{
    /// <summary>Its name, unique in the graph.</summary>
    public required string Name { get; init; }

    /// <summary>What it is.</summary>
    public required PlumbingPart Part { get; init; }

    /// <summary>Pressure lost in it at <see cref="LossAt"/>; not negative; for coolers and filters in a return; grows in proportion to the flow.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public Pressure Loss { get; init => field = Require.NotNegative(value); } = Pressure.Zero;

    /// <summary>Flow for which <see cref="Loss"/> holds; above zero; 8 l/min unless said.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is not above zero.</exception>
    public VolumeFlow LossAt { get; init => field = Require.Positive(value); } = VolumeFlow.FromLitersPerMinute(8);
}
