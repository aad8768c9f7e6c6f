namespace BrakeBalance.Bench;

/// <summary>A short list to print and tick off.</summary>
/// <param name="Title">What it is for.</param>
/// <param name="Before">The caution that stands above it.</param>
/// <param name="Steps">The steps in their order.</param>
public sealed record Checklist(string Title, string Before, ImmutableArray<string> Steps)
{
    private const string Manual = "The car's service manual goes before this list.";

    /// <summary>Before a hose is made and after it is fitted.</summary>
    public static Checklist Hoses { get; } = new(
        "Hoses and lines",
        $"{Manual} A burst hose sprays hot oil and takes steering and braking assist with it.",
        [
            "Route found with a string at full bump, full droop and both locks; engine moved on its mounts.",
            "Hose, fittings and crimp from one maker's chart; class, size and date printed on the hose.",
            "No bend tighter than the chart, none that starts in the fitting; the printed line runs straight, so no twist.",
            "Nothing hot or moving within reach; shields and clips in place; high- and low-pressure lines clamped apart.",
            "Seat and flare of one kind: the thread alone does not say so.",
            "New sealing rings and copper washers; tightened to the manual's torque, counter-held.",
        ]);

    /// <summary>Getting the air out.</summary>
    public static Checklist Bleeding { get; } = new(
        "Bleeding",
        $"{Manual} Air in a brake circuit takes the pedal away. Steering fluid and brake fluid never mix.",
        [
            "Master cylinder bled on the bench and kept level until no bubbles come.",
            "Drum shoes adjusted before the pedal is judged.",
            "Wheels in the manual's order; reservoir never empty; fresh fluid of the right grade from a sealed can.",
            "A metering valve held open if the manual says so for pressure bleeding.",
            "Booster side by itself: front wheels off the ground, "
                + "engine off, lock to lock about twenty times, level kept up; then idle a short while.",
            "Level that moves when the wheel is turned, or foam: still air. Wait and repeat.",
            "Stored pressure pumped off with some thirty firm strokes, engine off, before any booster line is opened.",
            "Spilt brake fluid washed off with water at once.",
        ]);

    /// <summary>Looking for leaks before the car moves.</summary>
    public static Checklist LeakCheck { get; } = new(
        "Leak check",
        $"{Manual} Wear eye protection; never feel for a jet of oil with the hand.",
        [
            "Every joint wiped dry, paper laid underneath.",
            "Firm push of about 450 N (100 lbf): not more than five seconds with a pump-fed booster, thirty with vacuum or none.",
            "Pedal neither sinks nor creeps; level of both reservoirs unchanged.",
            "Every joint looked at again under pressure by a second person, engine running, wheels chocked.",
            "Engine off: any assisted strokes counted and written down.",
        ]);

    /// <summary>The first metres.</summary>
    public static Checklist FirstApplication { get; } = new(
        "First application",
        $"{Manual} A calculation is no approval. Closed ground, run-off ahead, nobody in front of the car.",
        [
            "Standing: pedal high and firm; two seconds after release each wheel turns by hand as before.",
            "Walking pace: service brake, then parking brake, each alone.",
            "Engine off, any assist used up, walking pace: the car still stops for its weakest driver.",
            "One circuit open into a bottle, then the other: enough pedal is left each time.",
            "30 km/h (20 mph), then 50 km/h (30 mph): no pull, no noise, no warning light; discs and drums equally warm on both sides.",
            "Valve at its lowest rear pressure until the front has been seen to lock first. A car whose rear axle locks first spins.",
            "Bolts, joints and levels looked at again after the run.",
        ]);

    /// <summary>Running pads and linings in.</summary>
    public static Checklist Bedding { get; } = new(
        "Bedding",
        $"{Manual} The pad maker's routine goes before this one. Fumes are normal, flames are not.",
        [
            "Eight to ten firm slowings from about 90 to 40 km/h (55 to 25 mph), twenty to thirty seconds apart, never to a standstill.",
            "A long cool run after it; no foot on the pedal and no parking brake while hot.",
            "Drum linings: adjusted again when cold.",
            "Race pads by their maker's speed bands, then left to cool for some twenty minutes.",
            "Balance judged only on bedded pads at working temperature.",
        ]);

    /// <summary>All lists, in the order of the work.</summary>
    public static ImmutableArray<Checklist> All { get; } = [Hoses, Bleeding, LeakCheck, FirstApplication, Bedding];
}
