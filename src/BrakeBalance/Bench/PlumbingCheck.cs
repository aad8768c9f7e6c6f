using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Bench;

/// <summary>Says which connections of a pump-fed booster's plumbing are wrong, and why.</summary>
/// <remarks>
/// Source: layouts in archived service texts, pump → booster → steering gear with separate returns; tee rule common practice.
/// </remarks>
public static class PlumbingCheck
{
    /// <summary>Everything that is wrong or doubtful.</summary>
    /// <param name="graph">The plumbing.</param>
    /// <returns>The findings, gravest first; one that says it is sound when nothing is wrong.</returns>
    public static ImmutableArray<BenchFinding> Of(PlumbingGraph graph)
    {
        ArgumentNullException.ThrowIfNull(graph);
        List<BenchFinding> findings = [.. Names(graph)];
        if (findings.Count == 0)
        {
            findings = [.. Parts(graph), .. Ports(graph), .. Ways(graph), .. Ratings(graph)];
        }

        if (findings.TrueForAll(finding => finding.Severity != BenchSeverity.Wrong))
        {
            findings.Add(new(BenchSeverity.Pass, "plumbing", "pump, booster, steering gear and returns are connected as they should be.",
                "Check the real hoses against it, one by one, before the engine runs."));
        }

        return [.. findings.Distinct().OrderByDescending(finding => finding.Severity)];
    }

    private static BenchFinding Wrong(string where, string what, string why) => new(BenchSeverity.Wrong, where, what, why);

    private static IEnumerable<BenchFinding> Names(PlumbingGraph graph)
    {
        foreach (IGrouping<string, PlumbingNode> same in graph.Nodes.GroupBy(node => node.Name).Where(group => group.Count() > 1))
        {
            yield return Wrong(same.Key, $"is the name of {same.Count()} parts.", "Give each part a name of its own.");
        }

        foreach (PlumbingLine line in graph.Lines)
        {
            foreach (string end in new[] { line.From, line.To })
            {
                (string name, string port) = PlumbingGraph.Split(end);
                if (graph.Node(name) is not { } node)
                {
                    string near = Nearest.Of(name, graph.Nodes.Select(n => n.Name)) is { } guess ? $" Did you mean \"{guess}\"?" : "";
                    yield return Wrong(line.Name, $"\"{name}\" is no part of this plumbing.{near}",
                        $"The parts are {string.Join(", ", graph.Nodes.Select(n => n.Name))}.");
                }
                else if (PlumbingPort.Of(node.Part).All(known => known.Name != port))
                {
                    string near = Nearest.Of(port, PlumbingPort.Of(node.Part).Select(known => known.Name)) is { } guess
                        ? $" Did you mean \"{guess}\"?" : "";
                    yield return Wrong(line.Name, $"\"{name}\" has no port \"{port}\".{near}",
                        $"Its ports are {string.Join(", ", PlumbingPort.Of(node.Part).Select(known => known.Name))}.");
                }
            }
        }
    }

    private static IEnumerable<BenchFinding> Parts(PlumbingGraph graph)
    {
        int pumps = graph.Nodes.Count(node => node.Part is PlumbingPart.Pump or PlumbingPart.PumpWithReservoir);
        int reservoirs = graph.Nodes.Count(node => node.Part is PlumbingPart.Reservoir or PlumbingPart.PumpWithReservoir);
        int boosters = graph.Nodes.Count(node => node.Part == PlumbingPart.Booster);
        int gears = graph.Nodes.Count(node => node.Part == PlumbingPart.SteeringGear);
        (int Count, string Name, string Why)[] single =
        [
            (pumps, "pump", "One pump feeds booster and steering."),
            (reservoirs, "reservoir", "All returns end in one reservoir."),
            (boosters, "booster", "This sheet is for one booster."),
            (gears, "steering gear", "The booster passes the pump's flow on to the steering."),
        ];
        return single.Where(one => one.Count != 1)
            .Select(one => Wrong("plumbing", one.Count == 0 ? $"has no {one.Name}." : $"has {one.Count} of {one.Name}.", one.Why));
    }

    private static IEnumerable<BenchFinding> Ports(PlumbingGraph graph)
    {
        foreach (PlumbingNode node in graph.Nodes)
        {
            foreach (PlumbingPort port in PlumbingPort.Of(node.Part))
            {
                string name = $"{node.Name}.{port.Name}";
                int leaving = graph.Lines.Count(line => line.From == name);
                int arriving = graph.Lines.Count(line => line.To == name);
                if (leaving + arriving > 1)
                {
                    yield return Wrong(name, $"has {leaving + arriving} lines.", "A port takes one line; join lines with a tee.");
                }
                else if (leaving + arriving == 0 && port.Needed)
                {
                    yield return Wrong(name, "is not connected.", port.WhenOpen);
                }
                else if ((leaving > 0 && port.Flow == PortFlow.In) || (arriving > 0 && port.Flow == PortFlow.Out))
                {
                    yield return Wrong(name,
                        $"is connected backwards: oil flows {(port.Flow == PortFlow.In ? "into" : "out of")} this port.",
                        "Write each line in the direction of flow, and check the ports on the part itself.");
                }
            }
        }
    }

    private static IEnumerable<BenchFinding> Ways(PlumbingGraph graph)
    {
        PlumbingNode? pump = graph.Nodes.FirstOrDefault(node => node.Part is PlumbingPart.Pump or PlumbingPart.PumpWithReservoir);
        PlumbingNode? booster = graph.First(PlumbingPart.Booster);
        PlumbingNode? gear = graph.First(PlumbingPart.SteeringGear);
        BenchFinding[] astray = graph.First(PlumbingPart.Reservoir) is { } reservoir && $"{reservoir.Name}.outlet" is var outlet
            && graph.LineFrom(outlet) is not null && graph.Follow(outlet) is var suction && suction.End?.Part != PlumbingPart.Pump
                ? [Wrong(outlet, $"leads to {EndName(suction)}.", "The reservoir's outlet feeds the pump and nothing else.")] : [];
        if (pump is null || booster is null || gear is null)
        {
            return astray;
        }

        PlumbingPath gearReturn = graph.Follow($"{gear.Name}.return"), boosterReturn = graph.Follow($"{booster.Name}.return");
        return
        [
            .. astray,
            .. Feed(graph, $"{pump.Name}.outlet", booster, "pressure", "The booster comes first behind the pump: "
                + "behind the steering gear it would get no pressure, beside it only what steering leaves."),
            .. Feed(graph, $"{booster.Name}.gear", gear, "pressure",
                "The pump's flow leaves the booster for the steering gear; else steering has no assist."),
            .. Return(graph, $"{gear.Name}.return", gearReturn, "The gear's oil must run back to the reservoir."),
            .. Return(graph, $"{booster.Name}.return", boosterReturn,
                "The power chamber's oil must run back freely, or the brakes stay on."),
            .. BoosterReturn(graph, booster, boosterReturn, gear, gearReturn),
        ];
    }

    private static IEnumerable<BenchFinding> Feed(PlumbingGraph graph, string outlet, PlumbingNode goal, string port, string why)
    {
        if (graph.LineFrom(outlet) is null)
        {
            yield break;
        }

        PlumbingPath path = graph.Follow(outlet);
        if (path.Lines.Select(line => graph.Node(PlumbingGraph.Split(line.To).Node))
            .FirstOrDefault(node => node?.Part == PlumbingPart.Tee) is { } tee)
        {
            yield return Wrong(tee.Name, $"is a tee in the pressure line from {outlet}.", why);
        }
        else if (path.End?.Name != goal.Name || path.EndPort != port)
        {
            yield return Wrong(outlet, $"leads to {EndName(path)}, not to {goal.Name}.{port}.", why);
        }
        else if (path.Lines.Select(line => graph.Node(PlumbingGraph.Split(line.To).Node))
            .FirstOrDefault(node => node?.Part == PlumbingPart.Cooler) is { } cooler)
        {
            yield return Wrong(cooler.Name, "is a cooler in a pressure line.",
                "Coolers are made for return pressure; put it behind the steering gear.");
        }
    }

    private static IEnumerable<BenchFinding> Return(PlumbingGraph graph, string outlet, PlumbingPath path, string why)
    {
        if (graph.LineFrom(outlet) is not null && !path.ReachesReservoir)
        {
            yield return Wrong(outlet, path.IsCircle
                ? "runs in a circle and never reaches the reservoir." : $"leads to {EndName(path)}, not to the reservoir.", why);
        }
    }

    private static IEnumerable<BenchFinding> BoosterReturn(PlumbingGraph graph, PlumbingNode booster, PlumbingPath own, PlumbingNode gear,
        PlumbingPath gears)
    {
        foreach (PlumbingNode node in own.Lines.Select(line => graph.Node(PlumbingGraph.Split(line.To).Node)).OfType<PlumbingNode>())
        {
            if (node.Part is PlumbingPart.Cooler or PlumbingPart.Filter)
            {
                yield return new(BenchSeverity.Caution, node.Name, $"lies in the return of {booster.Name}.",
                    "Its resistance holds back the power chamber's oil: the pedal comes back slowly. Put it in the gear's return.");
            }
            else if (node.Part == PlumbingPart.Tee)
            {
                string entry = PlumbingGraph.Split(own.Lines.First(line => PlumbingGraph.Split(line.To).Node == node.Name).To).Port;
                string? exit = own.Lines.Select(line => PlumbingGraph.Split(line.From)).FirstOrDefault(from => from.Node == node.Name).Port;
                if (entry == "branch" || exit == "branch")
                {
                    yield return Wrong(node.Name, $"has {booster.Name} on its branch.",
                        "The steering's flow would jam the booster's: "
                            + $"put {booster.Name} and the reservoir on the straight run, {gear.Name} on the branch.");
                }
                else if (gears.Passes(node.Name))
                {
                    yield return new(BenchSeverity.Caution, node.Name, $"joins the returns of {booster.Name} and {gear.Name}.",
                        "The shared line's back-pressure pushes on the booster; a return of its own is better.");
                }
                else
                {
                    yield return Wrong(node.Name, $"joins something else than the return of {gear.Name} to the return of {booster.Name}.",
                        "Nothing but the gear's return may share that line.");
                }
            }
        }
    }

    private static IEnumerable<BenchFinding> Ratings(PlumbingGraph graph)
    {
        HashSet<string> pressureLines = [.. graph.Nodes
            .SelectMany(node => node.Part switch
            {
                PlumbingPart.Pump or PlumbingPart.PumpWithReservoir => [$"{node.Name}.outlet"],
                PlumbingPart.Booster => new[] { $"{node.Name}.gear" },
                _ => [],
            })
            .SelectMany(outlet => graph.Follow(outlet).Lines.Select(line => line.Name))];
        foreach (PlumbingLine line in graph.Lines.Where(line => pressureLines.Contains(line.Name)))
        {
            if (line.WorkingPressure is not { } rated)
            {
                yield return new(BenchSeverity.Caution, line.Name, "is a pressure line of unknown rating.",
                    Invariant.Text($"It must stand the relief pressure of {InBoth.Text(graph.ReliefPressure)}."));
            }
            else if (rated < graph.ReliefPressure)
            {
                yield return Wrong(line.Name,
                    Invariant.Text(
                        $"is good for {InBoth.Text(rated)}, the pump relieves at {InBoth.Text(graph.ReliefPressure)}."), "It may burst.");
            }
        }
    }

    private static string EndName(PlumbingPath path) => path.End is null ? "nothing" : $"{path.End.Name}.{path.EndPort}";
}
