namespace BrakeBalance.Notebooks.Commands.Measuring;

/// <summary>What each key of the JSON on the next stop means; the keys stay the same from version to version.</summary>
internal static class NextStopKeys
{
    private const string Stop = "next_stops[].";

    /// <summary>Path of each key (<c>[]</c> for the elements of a list) and its meaning; units as for SI.</summary>
    public static readonly IReadOnlyList<(string Path, string Meaning)> All =
    [
        ("car", "name of the car"),
        ("doubts[]", "why the logs cannot be of this car as they are written; no stop is proposed then"),
        ("stops_used", "stops that had a say so far; null in doubt"),
        ("knee_for_equal_lock_up_bar", "knee at which both axles lock together in the condition that holds the setting back, gauge: "
            + "estimate, low and high end of 90 %; null for a balance bar and in doubt"),
        ("front_force_share_for_equal_lock_up", "the same for a balance bar: the front cylinder's share of the rod force"),
        ("highest_chance_of_rear_first", "level of the car's conditions: no stop with a higher predicted chance is listed"),
        ("next_stops[]", "at most ten safe stops, the one to make next first; empty when none is safe enough"),
        (Stop + "load_case", "load case"),
        (Stop + "surface", "surface"),
        (Stop + "turns", "turns of the adjuster in from fully out; null without one"),
        (Stop + "speed_km_h", "speed at which the pedal is applied"),
        (Stop + "front_pressure_bar", "front line pressure to build up to over about a second, gauge"),
        (Stop + "deceleration_g", "deceleration expected: estimate, low and high end of 90 %"),
        (Stop + "lock", "chance that an axle locks"),
        (Stop + "rear_first", "chance that the rear locks first, at the speed of the stop where it is highest"),
        (Stop + "interval_left", "width of the interval of the setting expected after the stop, over its width now"),
        (Stop + "abort_if", "when to break off the stop, or the day"),
        ("left_out[].line", "line of the stop log that was left out"),
        ("left_out[].reason", "why"),
    ];
}
