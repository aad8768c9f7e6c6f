namespace BrakeBalance.Notebooks.Commands.Summaries;

/// <summary>What each key of the summary's JSON means; the keys stay the same from version to version.</summary>
/// <remarks>A key that carries a unit ends in it: <c>bar</c>, <c>n</c>, <c>kg</c>, <c>m</c>, or <c>psi</c>, <c>lbf</c>, <c>lb</c>, <c>in</c>.</remarks>
internal static class SummaryKeys
{
    /// <summary>Path of each key (<c>[]</c> for the elements of a list) and its meaning; units as for SI.</summary>
    public static readonly IReadOnlyList<(string Path, string Meaning)> All =
    [
        ("name", "name of the car"),
        ("note", "remark in the vehicle file"),
        ("load_cases[].name", "name of the load case"),
        ("load_cases[].mass_kg", "mass"),
        ("load_cases[].centre_of_gravity_behind_front_axle_m", "distance from the front axle back to the centre of gravity"),
        ("load_cases[].centre_of_gravity_height_m", "height of the centre of gravity above the road"),
        ("load_cases[].static_axle_load_front_n", "load of the front axle (both wheels) at rest"),
        ("load_cases[].static_axle_load_rear_n", "load of the rear axle (both wheels) at rest"),
        ("load_cases[].rear_lift_off_braking_rate", "braking rate at which the rear wheels leave the road; null when they never do"),
        ("load_cases[].braking_rates[].braking_rate", "deceleration over g, as asked for"),
        ("load_cases[].braking_rates[].axle_load_front_n", "dynamic load of the front axle"),
        ("load_cases[].braking_rates[].axle_load_rear_n", "dynamic load of the rear axle"),
        ("load_cases[].braking_rates[].ideal_force_front_n", "ideal braking force of the front axle"),
        ("load_cases[].braking_rates[].ideal_force_rear_n", "ideal braking force of the rear axle"),
        ("load_cases[].braking_rates[].installed", "the installed brakes at that rate (see point); null when the highest pressure does not reach it"),
        ("load_cases[].adhesions[].adhesion", "coefficient of adhesion of the surface, as asked for"),
        ("load_cases[].adhesions[].locks_first", "front, rear, or both together; null when no axle locks up to the highest pressure"),
        ("load_cases[].adhesions[].braking_efficiency", "braking force at first lock-up over what both axles at their limit would give, 0 to 1"),
        ("load_cases[].adhesions[].at_lock_up", "the car at that moment (see point)"),
        ("load_cases[].ideal_crossings[]", "where installed and ideal distribution agree (see point)"),
        ("load_cases[].knees[]", "where a valve in the rear line begins to hold pressure back (see point)"),
        ("point.master_pressure_bar", "pressure of the front master cylinder, gauge"),
        ("point.line_pressure_front_bar", "line pressure at the front brakes, gauge"),
        ("point.line_pressure_rear_bar", "line pressure at the rear brakes, gauge"),
        ("point.braking_force_front_n", "braking force of the front axle (both wheels)"),
        ("point.braking_force_rear_n", "braking force of the rear axle (both wheels)"),
        ("point.axle_load_front_n", "dynamic load of the front axle"),
        ("point.axle_load_rear_n", "dynamic load of the rear axle"),
        ("point.braking_rate", "deceleration over g"),
        ("point.adhesion_utilised_front", "braking force over axle load at the front"),
        ("point.adhesion_utilised_rear", "braking force over axle load at the rear; null with the wheels in the air"),
        ("rule_checks[].rule", "the rule's short name"),
        ("rule_checks[].title", "what the rule asks"),
        ("rule_checks[].source", "regulation, edition and section"),
        ("rule_checks[].outcome", "pass, fail or not_applicable; informative, no type approval"),
        ("rule_checks[].margin", "least distance to the limit in the rule's own measure; negative when broken; null when not applicable"),
        ("rule_checks[].at", "where the margin is least"),
        ("rule_checks[].explanation", "the finding as a sentence"),
        ("advice", "the greatest safe knee; null when the car has no proportioning valve in the rear line"),
        ("advice.knee_bar", "the greatest knee that keeps the front first in all conditions, gauge; null when there is none"),
        ("advice.knee_without_friction_spread_bar", "the same if friction had no spread, gauge; null when there is none"),
        ("advice.margin_bar", "difference of the two"),
        ("advice.valve_needed", "whether the rear would lock first somewhere with no valve"),
        ("advice.sentence", "the finding as a sentence"),
        ("notices[]", "what should be said in words"),
    ];
}
