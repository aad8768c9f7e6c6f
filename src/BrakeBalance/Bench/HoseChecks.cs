namespace BrakeBalance.Bench;

/// <summary>Judges a hose assembly: length, orientation, bends, pressure, temperature and clearances.</summary>
internal static class HoseChecks
{
    /// <summary>Straight hose wanted between fitting and bend, in outer diameters [–] (common practice).</summary>
    public const double StraightDiameters = 1;

    /// <summary>Everything that can be said of an assembly from what was measured.</summary>
    /// <returns>The findings, gravest first; what was not measured is not judged.</returns>
    public static ImmutableArray<BenchFinding> Of(HoseAssembly hose, HoseDuty duty)
    {
        List<BenchFinding> findings =
            [.. Lengths(hose), .. Orientation(hose), .. Bends(hose), .. Pressures(hose, duty), .. Clearances(hose)];
        return [.. findings.OrderByDescending(finding => finding.Severity)];
    }

    private static IEnumerable<BenchFinding> Lengths(HoseAssembly hose)
    {
        if (hose.FreeLength <= Length.Zero)
        {
            yield return new(BenchSeverity.Wrong, hose.Name, Invariant.Text(
                $"no hose is left between the fittings: overall {InBoth.Text(hose.OverallLength)}, cut-offs {InBoth.Text(hose.CutOffs)}, "
                    + $"inside the sockets {InBoth.Text(hose.First.Insertion + hose.Second.Insertion)}."),
                "Measure the overall length and the allowances again.");
            yield break;
        }

        if (hose.RouteLength is not { } route)
        {
            yield break;
        }

        if (hose.ShortestUnderPressure < route)
        {
            yield return new(BenchSeverity.Wrong, hose.Name, Invariant.Text(
                $"may become {InBoth.Text(hose.ShortestUnderPressure)} long under pressure, the route takes {InBoth.Text(route)}."),
                Invariant.Text($"It would pull at its crimps; make it at least "
                    + $"{InBoth.Text(Length.FromMillimeters(Math.Ceiling(hose.OverallFor(route).Millimeters)))} overall."));
        }
        else if (hose.ShortestUnderPressure - hose.LengthTolerance < route)
        {
            yield return new(BenchSeverity.Caution, hose.Name, Invariant.Text(
                $"spans its route of {InBoth.Text(route)} only if it is made to length: at its shortest it "
                    + $"is {InBoth.Text(hose.ShortestUnderPressure)}, and {InBoth.Text(hose.LengthTolerance)} less is usual."),
                "Make it longer by that much, or measure the finished hose.");
        }
        else if (hose.OverallLength > 1.25 * route)
        {
            yield return new(BenchSeverity.Caution, hose.Name, Invariant.Text(
                $"is {InBoth.Text(hose.OverallLength)} long on a route of {InBoth.Text(route)}."),
                "A long hose rubs and loops; shorten it or guide it.");
        }
        else
        {
            yield return new(BenchSeverity.Pass, hose.Name, Invariant.Text(
                $"spans its route of {InBoth.Text(route)} even at its shortest, {InBoth.Text(hose.ShortestUnderPressure)}."),
                "Prove it at full droop, lock to lock.");
        }
    }

    private static IEnumerable<BenchFinding> Orientation(HoseAssembly hose)
    {
        bool matters = hose.First.IsBent && hose.Second.IsBent;
        if (matters && hose.Orientation is null)
        {
            yield return new(BenchSeverity.Wrong, hose.Name, "has two bent ends and no angle between them.",
                "Lay it in the car, mark both ends and give the angle; a hose twisted into place works its fittings loose.");
        }
        else if (!matters && hose.Orientation is not null)
        {
            yield return new(BenchSeverity.Caution, hose.Name, "has an angle between its ends, but not two bent ends.",
                "The angle has no meaning unless both ends are bent; check which fitting is meant.");
        }
    }

    private static IEnumerable<BenchFinding> Bends(HoseAssembly hose)
    {
        if (hose.Routing is not { } routing)
        {
            yield break;
        }

        if (hose.Rating.LeastBendRadius is { } least)
        {
            foreach (HoseBend bend in routing.Bends.Where(bend => bend.Radius < least))
            {
                yield return new(BenchSeverity.Wrong, hose.Name, Invariant.Text(
                    $"is bent to {InBoth.Text(bend.Radius)}, the least for {hose.Rating.Name} is {InBoth.Text(least)}."),
                    "It would kink or burst early; take another way or a bent fitting.");
            }
        }
        else if (routing.Bends.Length > 0)
        {
            yield return new(BenchSeverity.Caution, hose.Name, $"is bent, and the table has no least radius for {hose.Rating.Name}.",
                "Take it from the maker's sheet.");
        }

        if (hose.OutsideDiameter is { } diameter && routing.Bends.Length > 0)
        {
            Length wanted = diameter * StraightDiameters;
            foreach ((string end, Length straight) in new[] { ("first", routing.StraightAtFirst), ("second", routing.StraightAtSecond) })
            {
                if (straight < wanted)
                {
                    yield return new(BenchSeverity.Caution, hose.Name, Invariant.Text(
                        $"has {InBoth.Text(straight)} of straight hose at its {end} fitting; "
                            + $"at least {InBoth.Text(wanted)}, one outer diameter, is wanted."),
                        "A bend that starts in the fitting breaks the hose there.");
                }
            }
        }

        if (hose.FreeLength > Length.Zero && routing.FreeLength > hose.FreeLength)
        {
            yield return new(BenchSeverity.Wrong, hose.Name, Invariant.Text(
                $"has {InBoth.Text(hose.FreeLength)} of free hose, its bends and straights take {InBoth.Text(routing.FreeLength)}."),
                "The bends would be tighter than drawn; make it longer.");
        }
    }

    private static IEnumerable<BenchFinding> Pressures(HoseAssembly hose, HoseDuty duty)
    {
        Pressure rated = hose.WorkingPressure;
        string numbers = Invariant.Text($"is good for {InBoth.Text(rated)}, it has to stand {InBoth.Text(duty.Highest)}");
        yield return duty.Side == HoseSide.Pressure && hose.Rating.Side == HoseSide.Return
            ? new(BenchSeverity.Wrong, hose.Name, $"is a return hose ({hose.Rating.Name}) in a pressure line.",
                "It would burst; take a pressure hose.")
            : rated < duty.Highest
            ? new(BenchSeverity.Wrong, hose.Name, numbers
                + ".", "It may burst; take a class with a higher working pressure, or fittings that have it.")
            : rated < duty.Highest * (1 + duty.Margin)
            ? new(BenchSeverity.Caution, hose.Name,
                Invariant.Text($"{numbers}: {Above(rated, duty.Highest):0} % above, {duty.Margin * 100:0} % is wanted."),
                "Pressure peaks beat the relief valve; a higher class gives room.")
            : new(BenchSeverity.Pass, hose.Name, numbers + ".", "Hose, fittings and crimp must come from one maker's chart.");
        if (duty.Hottest is { } hot && hose.Rating.GreatestTemperature is { } greatest && hot > greatest)
        {
            yield return new(BenchSeverity.Wrong, hose.Name, Invariant.Text(
                $"is good to {InBoth.Text(greatest)}, the fluid reaches {InBoth.Text(hot)}."),
                    "It hardens and cracks; take a hot class or cool the fluid.");
        }
    }

    private static double Above(Pressure rated, Pressure highest) => highest > Pressure.Zero ? ((rated / highest) - 1) * 100 : 100;

    private static IEnumerable<BenchFinding> Clearances(HoseAssembly hose) =>
        hose.Clearances.Where(room => !room.Holds).Select(room => new BenchFinding(
        room.Distance <= Length.Zero || room.Kind == ClearanceKind.Moving ? BenchSeverity.Wrong : BenchSeverity.Caution,
        hose.Name,
        Invariant.Text($"is {InBoth.Text(room.Distance)} from {room.From}, {InBoth.Text(room.Least)} is wanted."),
        room.Kind == ClearanceKind.Heat
            ? "Move it, or shield the heat." : "Move it or guide it so that nothing touches it at full bump, droop and lock."));
}
