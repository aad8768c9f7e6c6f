namespace BrakeBalance.Teaching;

/// <summary>A lesson of the course.</summary>
/// <param name="Number">Its place in the course, from 1.</param>
/// <param name="Id">Its short name, such as <c>load-transfer</c>.</param>
/// <param name="Title">Its title.</param>
public sealed record Lesson(int Number, string Id, string Title)
{
    /// <summary>What a learner brings along, as a phrase.</summary>
    public required string Needs { get; init; }

    /// <summary>What learners often believe, each with what is so.</summary>
    public required IReadOnlyList<(string Belief, string Fact)> Misconceptions { get; init; }

    /// <summary>Questions to talk over, without a number as their answer.</summary>
    public required IReadOnlyList<string> Discussion { get; init; }

    /// <summary>The course in its order.</summary>
    public static IReadOnlyList<Lesson> All { get; } =
    [
        new(1, "static-load", "Static axle load")
        {
            Needs = "Moments about a point; weight as mass times g.",
            Misconceptions =
            [
                ("The heavier end is the one nearer the driver.", "Only the place of the centre of gravity between the axles counts."),
                ("A box behind the rear axle loads the rear axle with its own weight.",
                    "With more than that: it also takes load off the front."),
            ],
            Discussion =
            [
                "Which axle of your family's car carries more, and how would you find out without lifting it?",
                "What does a trailer's drawbar do to the front axle?",
            ],
        },
        new(2, "load-transfer", "Load transfer")
        {
            Needs = "Lesson 1; force as mass times acceleration.",
            Misconceptions =
            [
                ("Weight slides forward inside the car.", "Nothing moves but the forces under the wheels; the weight stays where it is."),
                ("Stiffer springs stop the transfer.",
                    "They make the pitch smaller and quicker; height and wheelbase decide how much moves."),
            ],
            Discussion =
            [
                "Why does a motorcycle lift its rear wheel when a car does not?",
                "A van brakes from the same speed empty and with a high load: which axle load differs more, and why?",
            ],
        },
        new(3, "ideal-curve", "The ideal curve")
        {
            Needs = "Lesson 2; friction as a limit: T at most k N.",
            Misconceptions =
            [
                ("Half of the braking at each axle would be fair.", "Fair is what each axle carries at that moment."),
                ("There is one best ratio for a car.", "The best ratio changes with every deceleration and every load."),
            ],
            Discussion =
            [
                "Where on the curve does a car stand that brakes gently on snow, and where in an emergency stop on dry road?",
                "Why do designers stay below the curve and not on it?",
            ],
        },
        new(4, "fixed-ratio", "A fixed ratio")
        {
            Needs = "Lesson 3; pressure as force over area.",
            Misconceptions =
            [
                ("A caliper with pistons on both sides counts them all.", "One side only: the other side gives the reaction."),
                ("Bigger rear brakes make a car stop shorter.", "They make the rear lock first at a lower deceleration."),
            ],
            Discussion =
            [
                "Somebody fits stickier tyres and changes nothing else. What happens to the order of locking?",
                "What would you lose by making the rear brakes so small that they never lock?",
            ],
        },
        new(5, "knee", "The knee of the valve")
        {
            Needs = "Lesson 4; straight lines in a diagram.",
            Misconceptions =
            [
                ("The valve lowers the rear pressure all the time.", "Below the knee both lines have the same pressure."),
                ("The adjuster changes the slope.", "It moves the knee; the slope is made into the valve."),
            ],
            Discussion =
            [
                "A car is driven with one person, then with five and luggage: which knee do you set, and what does it cost?",
                "Why is a valve in the rear line no cure for weak rear brakes?",
            ],
        },
        new(6, "adhesion-utilisation", "Adhesion utilisation")
        {
            Needs = "Lessons 2 and 4.",
            Misconceptions =
            [
                ("The axle that brakes more uses more of the road.", "What counts is the braking force over the load, not the force."),
                ("An efficiency of 100 % is the aim everywhere.", "At the front axle's limit the rear must have something left."),
            ],
            Discussion =
            [
                "On which road is this car's front axle the one that locks first?",
                "Why do rules look at the curves of both axles and not at the stopping distance alone?",
            ],
        },
        new(7, "effort", "Effort at the pedal")
        {
            Needs = "Levers; pressure as force over area.",
            Misconceptions =
            [
                ("A bigger master cylinder brakes harder.", "For the same foot it gives less pressure and a shorter pedal."),
                ("Beyond run-out the brakes stop growing.", "They grow with the foot alone, about as without a booster."),
            ],
            Discussion =
            [
                "What does a driver feel when the booster runs out, and what should the driver do?",
                "Which two ways are there to make a pedal lighter without a booster, and what does each cost?",
            ],
        },
        new(8, "failed-assist", "When the assist fails")
        {
            Needs = "Lessons 5 and 7.",
            Misconceptions =
            [
                ("Without assist there are no brakes.", "There is what the foot gives: push harder, with both feet if need be."),
                ("A light pedal means good brakes.", "It says how strong the assist is, and how much is lost with it."),
            ],
            Discussion =
            [
                "Why does a car laid out for strong assist do badly without it?",
                "Who in your family could push as hard as the rule allows, sitting? How would you test it safely?",
            ],
        },
        new(9, "rear-lock", "Which axle locks first")
        {
            Needs = "Lessons 4 to 6.",
            Misconceptions =
            [
                ("Locked front wheels are worse, for the car cannot be steered.",
                    "It runs straight on; with the rear locked it spins before the driver can react."),
                ("On ice it does not matter which axle locks first.", "The car is unstable there too, only slower."),
            ],
            Discussion =
            [
                "Why does a skidding car with a pulled hand brake turn round?",
                "For which load would you set the valve of a pickup that is sometimes empty and sometimes full?",
            ],
        },
        new(10, "heat", "Where the energy goes")
        {
            Needs = "Lesson 4; kinetic energy and specific heat.",
            Misconceptions =
            [
                ("Braking gently makes less heat.", "The energy of the stop is the same; only the power is less."),
                ("A soft pedal after a descent means worn pads.", "It is boiling fluid; fading pads leave the pedal firm."),
            ],
            Discussion =
            [
                "How should one drive down a long mountain road, and what has the engine to do with it?",
                "Why do race cars need bigger discs and road cars hardly ever?",
            ],
        },
    ];

    /// <summary>The lesson of a short name.</summary>
    /// <param name="id">The short name.</param>
    /// <exception cref="ArgumentException">There is none; the message lists those there are.</exception>
    public static Lesson Of(string id) => All.FirstOrDefault(lesson => lesson.Id == id)
        ?? throw new ArgumentException($"There is no lesson \"{id}\". Accepted: {string.Join(", ", All.Select(lesson => lesson.Id))}.",
            nameof(id));
}
