using System.Text.Json.Nodes;

namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>A report on stops as JSON for scripts; <see cref="StopKeys"/> says what each key means.</summary>
/// <param name="units">Units of the values, named at the end of the keys.</param>
internal sealed class StopJson(ReportUnits units)
{
    public JsonObject Of(Banded<StopReport> reports) => JsonBands.With(Of(reports.Middle), [.. reports.Drawn.Select(Of)]);

    private JsonObject Of(StopReport report) => new()
    {
        ["name"] = report.Vehicle.Name,
        ["note"] = report.Vehicle.Note,
        ["grade_percent"] = Number(100 * Math.Tan(report.Ask.Road.Grade.Radians)),
        ["cross_slope_percent"] = Number(100 * Math.Tan(report.Ask.Road.CrossSlope.Radians)),
        [units.Key("initial_speed", units.Speed)] = Number(units.Of(report.InitialSpeed)),
        ["load_cases"] = new JsonArray([.. report.Loads.Select(Load)]),
        ["study"] = report.Study is { } study ? Study(study) : null,
    };

    private JsonObject Load(LoadReport load) => new()
    {
        ["name"] = load.LoadCase.Name,
        ["assumptions"] = SummaryJson.Words(load.Assumptions),
        ["surfaces"] = new JsonArray([.. load.Surfaces.Select(Surface)]),
        ["uneven_road"] = new JsonArray([.. load.Uneven.Select(Uneven)]),
        ["bends"] = new JsonArray([.. load.Bends.Select(Bends)]),
        ["no_stop"] = load.NoStop is { } why ? InBoth.Only(why, units.Us) : null,
        ["fade"] = load.Fade is { } fade ? Heat(fade) : null,
        ["laps"] = load.Laps is { } laps ? Heat(laps) : null,
    };

    private JsonObject Surface(StopComparisonRow row) => new()
    {
        ["adhesion"] = Number(row.Setup.Adhesion),
        ["full_pressure"] = Stop(row.Emergency),
        ["below_lock_up"] = row.Threshold is { } threshold ? Stop(threshold) : null,
        ["antilock_bound"] = Stop(row.Bound),
        ["easing"] = row.Easing is { } easing ? Stop(easing) : null,
        ["past_first_lock_on_crown"] = new JsonObject
        {
            ["swaps_ends"] = row.FirmOnCrown.SwapsEnds,
            ["sideways_after_s"] = Number(row.FirmOnCrown.SidewaysAt?.Seconds),
            ["square_to_road_after_s"] = Number(row.FirmOnCrown.SquareToRoadAt?.Seconds),
            ["greatest_sideslip_deg"] = Number(row.FirmOnCrown.GreatestSideslip.Degrees),
            ["final_heading_deg"] = Number(row.FirmOnCrown.FinalHeading.Degrees),
            [units.Key("lateral_offset", units.Distance)] = Number(units.OfDistance(row.FirmOnCrown.LateralOffset)),
        },
    };

    private JsonObject Uneven(UnevenStop uneven) => new()
    {
        ["adhesion_left"] = Number(uneven.LeftAdhesion),
        ["adhesion_right"] = Number(uneven.RightAdhesion),
        ["wheels_lock"] = uneven.WheelsLock,
        [units.Key("held_pressure", units.Pressure)] = Number(units.Of(uneven.HeldPressure)),
        [units.Key("distance", units.Distance)] = Number(units.OfDistance(uneven.Stop.Distance)),
        ["front_lock_s"] = Number(uneven.Stop.LockTimes.Front?.Seconds),
        ["rear_lock_s"] = Number(uneven.Stop.LockTimes.Rear?.Seconds),
        [units.Key("largest_braking_moment", units.Moment)] = Number(units.Of(uneven.Stop.GreatestBrakingMoment)),
        ["largest_heading_deg"] = Number(uneven.Stop.GreatestHeading.Degrees),
        ["final_heading_deg"] = Number(uneven.Stop.FinalHeading.Degrees),
        [units.Key("lateral_offset", units.Distance)] = Number(units.OfDistance(uneven.Stop.LateralOffset)),
        [units.Key("widest_wheel", units.Distance)] = Number(units.OfDistance(uneven.Stop.WidestWheel)),
        ["within_15_deg"] = uneven.Stop.StaysWithinYawLimit,
        ["within_lane"] = uneven.Stop.StaysInLane,
        ["swaps_ends"] = uneven.Stop.SwapsEnds,
    };

    private JsonObject Bends(BendMap map) => new()
    {
        ["adhesion"] = Number(map.Adhesion),
        ["front_roll_share"] = Number(map.FrontRollShare),
        ["unbraked_limit_g"] = Number(map.Limit.StandardGravity),
        [units.Key("present_knee", units.Pressure)] = Number(units.Of(map.Valve?.Knee)),
        [units.Key("safe_knee_in_every_bend", units.Pressure)] = Number(units.Of(map.SafeKneeEverywhere)),
        ["points"] = new JsonArray([.. map.Points.Select(point => new JsonObject
        {
            ["lateral_g"] = Number(point.Course.LateralAcceleration.StandardGravity),
            ["first_wheel"] = point.Course.FirstWheel is { } wheel ? StopReportTables.Wheel(wheel) : null,
            [units.Key("first_wheel_pressure", units.Pressure)] = Number(units.Of(point.Course.FirstWheel?.LinePressure)),
            ["first_wheel_deceleration_g"] = Number(point.Course.FirstWheel?.BrakingRate),
            [units.Key("first_wheel_rear_side_force", units.Force)] = Number(
                units.Of(point.Course.FirstWheel?.SideForceLeft.Rear)),
            ["first_axle_lost"] = point.Course.FirstAxle?.Axle.ToString().ToLowerInvariant(),
            [units.Key("first_axle_pressure", units.Pressure)] = Number(units.Of(point.Course.FirstAxle?.LinePressure)),
            ["first_axle_deceleration_g"] = Number(point.Course.FirstAxle?.BrakingRate),
            [units.Key("first_axle_rear_side_force", units.Force)] = Number(
                units.Of(point.Course.FirstAxle?.SideForceLeft.Rear)),
            [units.Key("rear_side_force_needed", units.Force)] = Number(units.Of(point.Course.SideForceNeeded.Rear)),
            [units.Key("safe_knee", units.Pressure)] = Number(units.Of(point.SafeKnee)),
            ["any_knee"] = map.Valve is null ? null : map.AnyKnee(point),
        })]),
    };

    private JsonObject Stop(StopResult stop) => new()
    {
        [units.Key("distance", units.Distance)] = Number(units.OfDistance(stop.Distance)),
        ["duration_s"] = Number(stop.Duration.Seconds),
        [units.DecelerationKey("mean_fully_developed_deceleration")] = Number(units.Of(stop.MeanFullyDevelopedDeceleration)),
        [units.Key("held_pressure", units.Pressure)] = Number(units.Of(stop.HeldPressure)),
        ["bound"] = Bound(stop.Bound),
        ["first_lock"] = stop.FirstLock?.ToString().ToLowerInvariant(),
        ["front_lock_s"] = Number(stop.Locks.Front?.Time.Seconds),
        ["rear_lock_s"] = Number(stop.Locks.Rear?.Time.Seconds),
        ["deceleration_g_at_first_lock"] = Number(stop.FirstLock is { } axle ? stop.Locks[axle]!.BrakingRate : null),
        ["front_free_s"] = Number(stop.Releases.Front?.Time.Seconds),
        ["rear_free_s"] = Number(stop.Releases.Rear?.Time.Seconds),
        [units.Key("front_free_pressure", units.Pressure)] = Number(units.Of(stop.Releases.Front?.MasterPressure)),
        [units.Key("rear_free_pressure", units.Pressure)] = Number(units.Of(stop.Releases.Rear?.MasterPressure)),
        ["brake_heat_front_share"] = Number(Share(stop.Energy)),
        ["energy_imbalance"] = Number(stop.Energy.Imbalance),
    };

    private static string Bound(StopBound bound) => bound switch
    {
        StopBound.Road => "road",
        StopBound.Foot => "foot",
        StopBound.Travel => "travel",
        StopBound.HighestPressure => "highest pressure",
        _ => "chosen",
    };

    private JsonObject Heat(HeatResult heat) => new()
    {
        ["cycle"] = heat.Cycle,
        ["fluid"] = heat.Fluid.Name,
        [units.Key("hottest_front", units.Temperature)] = Number(units.Of(heat.HottestRing.Front)),
        [units.Key("hottest_rear", units.Temperature)] = Number(units.Of(heat.HottestRing.Rear)),
        [units.Key("hottest_front_fluid", units.Temperature)] = Number(units.Of(heat.HottestFluid.Front)),
        [units.Key("hottest_rear_fluid", units.Temperature)] = Number(units.Of(heat.HottestFluid.Rear)),
        [units.Key("parked_front_fluid", units.Temperature)] = Number(units.Of(heat.Soak.HottestFluid.Front)),
        [units.Key("parked_rear_fluid", units.Temperature)] = Number(units.Of(heat.Soak.HottestFluid.Rear)),
        ["parked_front_fluid_hottest_after_s"] = Number(heat.Soak.HottestAfter.Front.Seconds),
        ["parked_rear_fluid_hottest_after_s"] = Number(heat.Soak.HottestAfter.Rear.Seconds),
        [units.DifferenceKey("wet_boiling_margin")] = Number(units.Of(heat.WetBoilingMargin)),
        [units.DifferenceKey("dry_boiling_margin")] = Number(units.Of(heat.DryBoilingMargin)),
        ["first_boiling_stop"] = heat.FirstBoilingStop,
        ["first_dry_boiling_stop"] = heat.FirstDryBoilingStop,
        ["last_deceleration_over_first"] = Number(heat.HotOverCold),
        ["beyond_friction_data_front"] = heat.BeyondFadeCurve.Front,
        ["beyond_friction_data_rear"] = heat.BeyondFadeCurve.Rear,
        ["energy_imbalance"] = Number(heat.Imbalance),
        ["stops"] = new JsonArray([.. heat.Stops.Select(stop => new JsonObject
        {
            ["number"] = stop.Number,
            [units.DecelerationKey("mean_deceleration")] = Number(units.Of(stop.MeanDeceleration)),
            [units.Key("line_pressure", units.Pressure)] = Number(units.Of(stop.LinePressure)),
            [units.Key("front", units.Temperature)] = Number(units.Of(stop.RingAtEnd.Front)),
            [units.Key("rear", units.Temperature)] = Number(units.Of(stop.RingAtEnd.Rear)),
            [units.Key("front_fluid", units.Temperature)] = Number(units.Of(stop.FluidAtEnd.Front)),
            [units.Key("rear_fluid", units.Temperature)] = Number(units.Of(stop.FluidAtEnd.Rear)),
            ["front_share"] = Number(stop.FrontShare),
        })]),
    };

    private JsonObject Study(StopStudyResult study) => new()
    {
        ["stops"] = study.Stops.Count,
        ["seed"] = study.Plan.Seed,
        ["lowest_adhesion"] = Number(study.Plan.LowestAdhesion),
        ["highest_adhesion"] = Number(study.Plan.HighestAdhesion),
        ["friction_spread"] = Number(study.Plan.FrictionSpread),
        ["rise_time_s"] = Number(study.Plan.RiseTime.Seconds),
        ["rear_first_share"] = Number(study.RearFirstShare),
        ["no_lock_share"] = Number(study.NoLockShare),
        [units.Key("distance_5_percent", units.Distance)] = Number(units.OfDistance(study.DistanceQuantile(0.05))),
        [units.Key("distance_50_percent", units.Distance)] = Number(units.OfDistance(study.DistanceQuantile(0.5))),
        [units.Key("distance_95_percent", units.Distance)] = Number(units.OfDistance(study.DistanceQuantile(0.95))),
    };

    internal static double? Share(StopEnergy energy)
    {
        double sum = (energy.Brakes.Front + energy.Brakes.Rear).Joules;
        return sum > 0 ? energy.Brakes.Front.Joules / sum : null;
    }

    private static JsonValue? Number(double? value) => SummaryJson.Number(value);
}
