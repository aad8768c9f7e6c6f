namespace BrakeBalance.Notebooks.Commands.Stopping;

/// <summary>What each key of the JSON on stops means; the keys stay the same from version to version.</summary>
/// <remarks>A key that carries a unit ends in it: <c>m</c>, <c>km_h</c>, <c>bar</c>, <c>c</c>, <c>k</c>, <c>m_s2</c>, or <c>ft</c>, <c>mph</c>, <c>psi</c>, <c>f</c>, <c>ft_s2</c>.</remarks>
internal static class StopKeys
{
    private const string Surface = "load_cases[].surfaces[].";
    private const string Fade = "load_cases[].fade.";

    /// <summary>Path of each key (<c>[]</c> for the elements of a list) and its meaning; units as for SI.</summary>
    public static readonly IReadOnlyList<(string Path, string Meaning)> All =
    [
        ("name", "name of the car"),
        ("note", "remark in the vehicle file"),
        ("initial_speed_km_h", "speed when the foot touches the pedal"),
        ("load_cases[].name", "name of the load case"),
        ("load_cases[].assumptions[]", "a typical value that stands in for what the vehicle file leaves out"),
        (Surface + "adhesion", "peak adhesion of the surface"),
        (Surface + "panic", "the highest pressure held whatever the wheels do (see stop)"),
        (Surface + "threshold", "95 % of the pressure of first lock held (see stop); null when no pressure locks an axle"),
        (Surface + "antilock_bound", "each axle held at its best slip, a bound and no real system (see stop)"),
        (Surface + "past_first_lock_on_crown.swaps_ends", "whether the car turns past square to its path at 8 % above the pressure of first lock on a crowned road"),
        (Surface + "past_first_lock_on_crown.sideways_after_s", "time until it stands square to its path; null when it never does"),
        (Surface + "past_first_lock_on_crown.greatest_sideslip_deg", "greatest angle between the car's axis and its path"),
        (Surface + "past_first_lock_on_crown.final_heading_deg", "heading at standstill, leftwards positive"),
        (Surface + "past_first_lock_on_crown.lateral_offset_m", "way across the road at standstill, leftwards positive"),
        ("stop.distance_m", "distance from first touch of the pedal to standstill"),
        ("stop.duration_s", "time of the same"),
        ("stop.mean_fully_developed_deceleration_m_s2", "mean fully developed deceleration, between 80 and 10 % of the speed"),
        ("stop.held_pressure_bar", "pressure held at the master cylinder, gauge"),
        ("stop.first_lock", "front or rear; null when no axle locks"),
        ("stop.front_lock_s", "time of the front axle's first lock; null for none"),
        ("stop.rear_lock_s", "time of the rear axle's first lock; null for none"),
        ("stop.braking_rate_at_first_lock", "deceleration over g at that moment"),
        ("stop.brake_heat_front_share", "front brakes' part of the heat in the brakes"),
        ("stop.energy_imbalance", "part of the kinetic energy that the sums leave unexplained"),
        (Fade + "cycle", "the repeated stops in words"),
        (Fade + "fluid", "grade of the brake fluid"),
        (Fade + "hottest_front_c", "highest bulk temperature of the front discs or drums; the same with rear"),
        (Fade + "hottest_rear_c", "highest bulk temperature of the rear discs or drums"),
        (Fade + "wet_boiling_margin_k", "what is left to the wet boiling point; negative when old fluid boils"),
        (Fade + "dry_boiling_margin_k", "what is left to the dry boiling point"),
        (Fade + "first_boiling_stop", "first stop at whose end old fluid boils; null for none"),
        (Fade + "last_deceleration_over_first", "deceleration of the last stop over the first"),
        (Fade + "beyond_friction_data_front", "true when the front went past its last friction point, where the last value was held"),
        (Fade + "beyond_friction_data_rear", "the same at the rear"),
        (Fade + "energy_imbalance", "part of the heat that the sums leave unexplained"),
        (Fade + "stops[].number", "number of the stop"),
        (Fade + "stops[].mean_deceleration_m_s2", "mean deceleration of the stop"),
        (Fade + "stops[].line_pressure_bar", "pressure at the master cylinder at its end, gauge"),
        (Fade + "stops[].front_c", "bulk temperature of the front discs or drums at its end"),
        (Fade + "stops[].rear_c", "bulk temperature of the rear discs or drums at its end"),
        (Fade + "stops[].front_fluid_c", "temperature of the front fluid at its end"),
        (Fade + "stops[].rear_fluid_c", "temperature of the rear fluid at its end"),
        (Fade + "stops[].front_share", "front brakes' part of the heat of the stop; null when the brakes took none"),
        ("load_cases[].laps", "the laps of --lap (see fade); null when none are given"),
        ("study", "many stops drawn at random; null without --study"),
        ("study.stops", "how many"),
        ("study.seed", "seed of the draws"),
        ("study.lowest_adhesion", "lowest adhesion drawn"),
        ("study.highest_adhesion", "highest adhesion drawn"),
        ("study.friction_spread", "greatest departure of each axle's friction, as a fraction of it"),
        ("study.rise_time_s", "time from first touch to the highest pressure"),
        ("study.rear_first_share", "part of the stops in which the rear axle locked first"),
        ("study.no_lock_share", "part of the stops in which no axle locked"),
        ("study.distance_5_percent_m", "distance that 5 % of the stops stay below"),
        ("study.distance_50_percent_m", "the same for half of them"),
        ("study.distance_95_percent_m", "the same for 95 %"),
    ];
}
