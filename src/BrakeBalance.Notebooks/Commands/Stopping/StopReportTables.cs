using BrakeBalance.Charts.Figures;
using BrakeBalance.Charts.Tables;

namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>A report on stops as lines and tables for a person; each car gives the same parts, some of them empty.</summary>
internal sealed class StopReportTables(ReportUnits units)
{
    private readonly List<object> _parts = [];

    public static IReadOnlyList<object> Of(StopReport report, ReportUnits units)
    {
        var tables = new StopReportTables(units);
        tables.Write(report);
        return tables._parts;
    }

    private void Write(StopReport report)
    {
        Line(report.Vehicle.Name);
        Line(report.Vehicle.Note);
        foreach (LoadReport load in report.Loads)
        {
            Write(load, report);
        }

        if (report.Study is { } study)
        {
            Gap();
            Line(Invariant.Text(
                $"Study of {study.Stops.Count} stops, adhesion {study.Plan.LowestAdhesion:0.##} to {study.Plan.HighestAdhesion:0.##}, "
                    + $"friction within {study.Plan.FrictionSpread:P0}, seed {study.Plan.Seed}:"));
            Line(Invariant.Text($"  rear first in {study.RearFirstShare:P1}, no lock in {study.NoLockShare:P1}; distance 5 / 50 / 95 %: "
                + $"{Text(units.OfDistance(study.DistanceQuantile(0.05)))} / {Text(units.OfDistance(study.DistanceQuantile(0.5)))} "
                + $"/ {Text(units.OfDistance(study.DistanceQuantile(0.95)))} {units.Distance}"));
        }

        Line("Pressures are gauge. The anti-lock bound is no real system. A calculation is no approval: test stops are for competent "
            + "people, off public roads.");
    }

    private void Write(LoadReport load, StopReport report)
    {
        Gap();
        Line($"{load.LoadCase.Name}, from {Text(units.Of(report.InitialSpeed), "0")} {units.Speed}{Slope(report.Ask.Road.Grade)}");
        if (load.NoStop is { } why)
        {
            Line(InBoth.Only(why, units.Us) + " There is no stop to compute.");
            return;
        }

        string distance = $" [{units.Distance}]";
        var stops = new TextTable(
            "Adhesion", "Full pressure, wheels locked" + distance, "Just below lock-up" + distance, "Anti-lock bound" + distance,
            "Locks first", "after [s]", "Deceleration [g]", "Largest sideslip, 8 % past lock-up");
        foreach (StopComparisonRow row in load.Surfaces)
        {
            Axle? first = row.Emergency.FirstLock;
            stops.Row(
                Text(row.Setup.Adhesion, "0.00"), Text(units.OfDistance(row.Emergency.Distance)), row.Threshold is { } t
                    ? Text(units.OfDistance(t.Distance)) : "–",
                Text(units.OfDistance(row.Bound.Distance)), first?.ToString().ToLowerInvariant() ?? "none",
                first is { } axle ? Text(row.Emergency.Locks[axle]!.Time.Seconds, "0.00") : "–",
                first is { } same ? Text(row.Emergency.Locks[same]!.BrakingRate, "0.00") : "–",
                row.FirmOnCrown.SwapsEnds ? "SWAPS ENDS" : $"{Text(row.FirmOnCrown.GreatestSideslip.Degrees, "0")}°");
        }

        _parts.Add(stops);
        var slow = new BalanceModel(report.Vehicle, load.LoadCase);
        foreach (string? line in load.Surfaces.Select(row => Bound(row, units)).Concat(load.Surfaces.Select(row => Easing(row, units)))
            .Concat(load.Surfaces.Select(row => Order(row, slow.FirstLockUp(row.Setup.Adhesion)))))
        {
            Line(line ?? "");
        }

        WriteUneven(load, report.Ask.Road);
        foreach (BendMap map in load.Bends)
        {
            Write(map);
        }

        Write(load.Fade!);
        if (load.Laps is { } laps)
        {
            Write(laps);
        }

        Line(load.Assumptions.Count == 0 ? ""
            : $"Taken as typical (common practice): {InBoth.Only(string.Join("; ", load.Assumptions), units.Us)}.");
    }

    private static string Slope(UnitsNet.Angle grade)
    {
        double percent = 100 * Math.Tan(grade.Radians);
        return percent == 0 ? "" : $", {Text(Math.Abs(percent))} % {(percent > 0 ? "uphill" : "downhill")}";
    }

    // A stamp takes both axles past their limits at once.
    private static string? Order(StopComparisonRow row, LockUp? slow) =>
        slow?.First is not { } first || row.Emergency.FirstLock is not { } stamped || first == stamped ? null
            : $"Adhesion {Text(row.Setup.Adhesion, "0.00")}: stamped on, the {(stamped == Axle.Front ? "front" : "rear")} wheels stand "
                + $"first; as pressure rises slowly the {(first == Axle.Rear ? "REAR" : "front")} axle is the first at its limit.";

    private static string? Bound(StopComparisonRow row, ReportUnits units)
    {
        string pressure = $"{Text(units.Of(row.Emergency.HeldPressure))} {units.Pressure}";
        string adhesion = Text(row.Setup.Adhesion, "0.00");
        return row.Emergency.Bound switch
        {
            StopBound.Foot =>
                $"Adhesion {adhesion}: bound by the foot: "
                    + $"{Text(units.Of(row.Setup.PedalForce!.Value), "0")} {units.Force} on the pedal give {pressure}, "
                + "and no axle locks.",
            StopBound.Travel => $"Adhesion {adhesion}: bound by travel: pedal or master cylinder end at {pressure}, and no axle locks.",
            StopBound.HighestPressure => $"Adhesion {adhesion}: bound by the highest pressure considered, {pressure}; no axle locks.",
            _ => null,
        };
    }

    private static string? Easing(StopComparisonRow row, ReportUnits units)
    {
        if (row.Easing is not { FirstLock: not null } stop)
        {
            return null;
        }

        string Axle(string name, LockEvent? locked, ReleaseEvent? free) => locked is null ? $"{name} never locks"
            : free is null ? $"{name} locks after {Text(locked.Time.Seconds, "0.00")} s and STAYS LOCKED"
            : $"{name} locks after {Text(locked.Time.Seconds, "0.00")} s and turns again after "
                + $"{Text(free.Time.Seconds, "0.00")} s at {Text(units.Of(free.MasterPressure))} {units.Pressure}";
        return $"Adhesion {Text(row.Setup.Adhesion, "0.00")}, foot easing: {Axle("front", stop.Locks.Front, stop.Releases.Front)}; "
            + $"{Axle("rear", stop.Locks.Rear, stop.Releases.Rear)}; {Text(units.OfDistance(stop.Distance))} {units.Distance}.";
    }

    private void WriteUneven(LoadReport load, StopRoad road)
    {
        if (load.Uneven.Count == 0)
        {
            return;
        }

        Line(Invariant.Text(
            $"Uneven road or brakes, steering held still; cross slope {100 * Math.Tan(road.CrossSlope.Radians):0.#} %, grade "
                + $"{100 * Math.Tan(road.Grade.Radians):0.#} %; leftwards positive:"));
        var table = new TextTable(
            "Adhesion left / right", "Pedal", $"Pressure [{units.Pressure}]", $"Distance [{units.Distance}]", $"Moment [{units.Moment}]",
                "Largest heading [°]",
            $"Sideways [{units.Distance}]", "Within ±15°", $"In {Text(units.OfDistance(YawResult.LaneWidth))} {units.Distance} lane");
        foreach (UnevenStop uneven in load.Uneven)
        {
            YawResult stop = uneven.Stop;
            table.Row(
                $"{Text(uneven.LeftAdhesion, "0.00")} / {Text(uneven.RightAdhesion, "0.00")}",
                    uneven.WheelsLock ? "full pressure" : "just below lock-up",
                Text(units.Of(uneven.HeldPressure)), Text(units.OfDistance(stop.Distance)), Text(units.Of(stop.GreatestBrakingMoment), "0"),
                    Text(stop.GreatestHeading.Degrees),
                Text(units.OfDistance(stop.LateralOffset), "0.00"), stop.StaysWithinYawLimit ? "yes" : stop.SwapsEnds ? "NO, SPINS" : "NO",
                    stop.StaysInLane ? "yes" : "NO");
        }

        _parts.Add(table);
    }

    private void Write(BendMap map)
    {
        Line($"Braking in a bend, adhesion {Text(map.Adhesion, "0.00")}; without braking the tyres hold "
            + $"{Text(map.Limit.StandardGravity, "0.00")} g sideways:");
        var table = new TextTable(
            "Sideways [g]", "First wheel", "at [g]", "First axle lost", "at [g]", $"at [{units.Pressure}]",
                $"Rear side force left [{units.Force}]", $"needed [{units.Force}]",
            $"Highest safe knee [{units.Pressure}]");
        foreach (BendPoint point in map.Points)
        {
            TurnCourse course = point.Course;
            table.Row(
                Text(course.LateralAcceleration.StandardGravity, "0.00"), course.FirstWheel is { } wheel ? Wheel(wheel) : "none",
                course.FirstWheel is { } first ? Text(first.BrakingRate, "0.00") : "–",
                course.FirstAxle?.Axle switch { Axle.Front => "front", Axle.Rear => "REAR", _ => "none" },
                course.FirstAxle is { } at ? Text(at.BrakingRate, "0.00") : "–",
                    course.FirstAxle is { } loss ? Text(units.Of(loss.LinePressure)) : "–",
                course.FirstAxle is { } rest ? Text(units.Of(rest.SideForceLeft.Rear), "0") : "–",
                    Text(units.Of(course.SideForceNeeded.Rear), "0"),
                map.Valve is null ? "no valve" : point.SafeKnee is not { } knee ? "none" : map.AnyKnee(point) ? "any"
                    : Text(units.Of(knee)));
        }

        _parts.Add(table);
        Line("Front lost: the car runs wide. Rear lost: it spins. Friction is nominal.");
    }

    internal static string Wheel(TurnLock wheel) =>
        $"{(wheel.Axle == Axle.Front ? "front" : "rear")} {(wheel.Side == BendSide.Inner ? "inner" : "outer")}";

    private void Write(HeatResult heat)
    {
        Line(InBoth.Only(heat.Cycle, units.Us));
        string degrees = $" [{units.Temperature}]";
        var table = new TextTable("Stop", "Front" + degrees, "Rear" + degrees, "Front fluid" + degrees, "Rear fluid"
            + degrees, $"Pressure [{units.Pressure}]", "Front share", "Over first");
        foreach (HeatStop stop in heat.Stops.Where((_, i) => i == 0 || i == heat.Stops.Count - 1 || (i + 1) % 5 == 0))
        {
            table.Row(
                Text(stop.Number, "0"), Text(units.Of(stop.RingAtEnd.Front), "0"), Text(units.Of(stop.RingAtEnd.Rear), "0"),
                Text(units.Of(stop.FluidAtEnd.Front), "0"), Text(units.Of(stop.FluidAtEnd.Rear), "0"),
                    Text(units.Of(stop.LinePressure), "0.0"),
                stop.FrontShare is { } share
                    ? Text(share, "0.00") : "–", Text(stop.MeanDeceleration / heat.Stops[0].MeanDeceleration, "0.00"));
        }

        _parts.Add(table);
        Line(HeatFigures.Soak(heat, units.System));
        Line(heat.WetBoilingMargin.Kelvins < 0
            ? $"CAUTION, {heat.Fluid.Name}: {HeatFigures.Fluid(heat, units.System)}; the pedal would go to the floor."
            : $"{StopTables.Kelvins(heat.WetBoilingMargin, units.System)} left to the wet boiling point "
                + $"of {heat.Fluid.Name} at the fluid's hottest.");
        Line(heat.BeyondFadeCurve.Front || heat.BeyondFadeCurve.Rear
            ? "Notice: a disc or drum went past the last point of its friction data; the last value was held." : "");
    }

    private static string Text(double value, string format = "0.0") => value.ToString(format, CultureInfo.InvariantCulture);

    private void Line(string text) => _parts.Add(text);

    private void Gap() => _parts.Add(BandedParts.Gap);
}
