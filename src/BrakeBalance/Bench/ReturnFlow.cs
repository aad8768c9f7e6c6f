namespace BrakeBalance.Bench;

/// <summary>Back-pressure at the booster's return: what the lines back to the reservoir hold against the oil.</summary>
/// <remarks>
/// Each line carries the booster's return flow; behind a tee it also carries the gear's, which is the pump's. Losses of lines by
/// <see cref="PipeFlow"/>, of coolers and filters in proportion to the flow. The reservoir is open to the air and level with the booster.
/// Source: continuity; see <see cref="PipeFlow"/>.
/// </remarks>
public sealed record ReturnFlow
{
    /// <summary>The plumbing, with nothing wrong in it.</summary>
    public required PlumbingGraph Plumbing { get; init; }

    /// <summary>Flow of the pump, which comes back from the gear; not negative.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is negative.</exception>
    public required VolumeFlow PumpFlow { get; init => field = Require.NotNegative(value); }

    /// <summary>The oil.</summary>
    public HydraulicOil Oil { get; init; } = new();

    /// <summary>Temperature of the oil; −40 to 150 °C.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside −40 to 150 °C.</exception>
    public required Temperature Temperature
    {
        get;
        init => field = Require.Between(value, Temperature.FromDegreesCelsius(-40), Temperature.FromDegreesCelsius(150));
    }

    /// <summary>The lines from the booster's return to the reservoir with their losses.</summary>
    /// <param name="boosterFlow">Flow out of the booster's return; not negative.</param>
    /// <returns>One entry a line, coolers and filters counted with the line that leads into them.</returns>
    /// <exception cref="InvalidOperationException">The booster's return does not reach the reservoir.</exception>
    public ImmutableArray<ReturnLineLoss> Lines(VolumeFlow boosterFlow)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(boosterFlow, VolumeFlow.Zero);
        PlumbingNode booster = Plumbing.First(PlumbingPart.Booster) ?? throw new InvalidOperationException("The plumbing has no booster.");
        PlumbingPath own = Plumbing.Follow($"{booster.Name}.return");
        if (!own.ReachesReservoir)
        {
            throw new InvalidOperationException($"{booster.Name}.return does not reach the reservoir; put the plumbing right first.");
        }

        PlumbingPath? gears = Plumbing.First(PlumbingPart.SteeringGear) is { } gear ? Plumbing.Follow($"{gear.Name}.return") : null;
        KinematicViscosity viscosity = Oil.ViscosityAt(Temperature);
        return [.. own.Lines.Select(line =>
        {
            bool shared = gears is not null && gears.Lines.Contains(line);
            VolumeFlow flow = shared ? boosterFlow + PumpFlow : boosterFlow;
            PlumbingNode? into = Plumbing.Node(PlumbingGraph.Split(line.To).Node);
            Pressure part = into is null ? Pressure.Zero : into.Loss * (flow / into.LossAt);
            return new ReturnLineLoss(line, shared, flow,
                PipeFlow.Loss(flow, line.Bore, line.Length, Oil.Density, viscosity, line.LossCoefficient), part);
        })];
    }

    /// <summary>Back-pressure at the booster's return, gauge.</summary>
    /// <param name="boosterFlow">Flow out of the booster's return; not negative; zero for a standing pedal.</param>
    /// <returns>The sum of all losses on the way.</returns>
    public Pressure BackPressure(VolumeFlow boosterFlow) => Pressure.FromPascals(Lines(boosterFlow).Sum(line => line.Total.Pascals));
}

/// <summary>The loss of one line on the way from the booster's return to the reservoir.</summary>
/// <param name="Line">The line.</param>
/// <param name="Shared">Whether the gear's oil runs through it too.</param>
/// <param name="Flow">Flow through it.</param>
/// <param name="Loss">Its loss.</param>
/// <param name="Part">Loss of the cooler or filter it leads into.</param>
public sealed record ReturnLineLoss(PlumbingLine Line, bool Shared, VolumeFlow Flow, PipeLoss Loss, Pressure Part)
{
    /// <summary>Loss of line and part.</summary>
    public Pressure Total => Loss.Total + Part;
}
