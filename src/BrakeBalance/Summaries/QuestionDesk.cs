using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Summaries;

/// <summary>The questions that owners of modified cars ask most, answered from a vehicle file or with the number that lacks.</summary>
/// <remarks>
/// <para>The questions are common practice: a composite of what is asked in workshops and forums, in own words.</para>
/// <para>A number lacks when its entry is not in the file; where it is a range or the class's, the answer names it as vague,
/// and each number that rests on it stands with its band.</para>
/// </remarks>
public static class QuestionDesk
{
    /// <summary>How many questions there are.</summary>
    public const int Count = 27;

    /// <summary>For what the answers hold.</summary>
    public const string Holds = "Answers are as good as the file, and hold in its first load case unless they name another.";

    private static readonly string[] Brakes = ["front.brake", "rear.brake"];
    private static readonly string[] Balance =
        ["wheelbase", "loadCases", "front.tyre", "rear.tyre", "hydraulics", "aerodynamics", .. Brakes];
    private static readonly string[] Heat = ["front.heat", "rear.heat", "fluid"];

    private static readonly string[] Foot = [.. Balance, "pedal", "assist", "masterCylinder"];
    private static readonly string[] Travel = [.. Foot, "fluid"];

    /// <summary>Answers all questions.</summary>
    /// <param name="reading">The car as read.</param>
    /// <param name="units">The system of units of every quantity in the answers.</param>
    /// <returns><see cref="Count"/> answers in order.</returns>
    public static IReadOnlyList<QuestionAnswer> Answer(VehicleReading reading, UnitSystem units = UnitSystem.Si)
    {
        ArgumentNullException.ThrowIfNull(reading);
        var own = new Desk(new DeskCar(reading.Vehicle, units));
        Banded<Desk> desks = Banded.Of(reading.Vehicle,
            car => ReferenceEquals(car, reading.Vehicle) ? own : new Desk(new DeskCar(car, units, own.Car.Known)));
        string[] vague = [.. reading.Ranges.Select(range => range.Path).Concat(reading.FromCarClass).Distinct()];
        List<QuestionAnswer> answers = [];
        void Ask(QuestionTopic topic, string question, Func<Desk, Reply> asked, params string[] rests)
        {
            Reply reply = asked(own);
            answers.Add(new QuestionAnswer(
                Number: answers.Count + 1,
                Topic: topic,
                Question: question,
                Answer: desks.Sentences(desk => ReferenceEquals(desk, own) ? reply.Answer : Banded.Try(() => asked(desk).Answer)),
                Lacking: reply.Lacking,
                Vague: reply.Answer is null ? []
                    : [.. vague.Where(path => rests.Any(start => path.StartsWith(start, StringComparison.Ordinal)))]));
        }

        Ask(QuestionTopic.Effort, "Is there enough vacuum for a vacuum booster with this camshaft?", d => d.Foot.Vacuum(), Foot);
        Ask(QuestionTopic.Effort, "The pedal is solid and the car will not stop without a booster: why?",
            d => d.OfControl(foot => foot.Solid()), Foot);
        Ask(QuestionTopic.Effort, "Can a pump-fed booster be run from this pump?", d => d.Foot.Pump(), Foot);
        Ask(QuestionTopic.Effort, "What does a lower pedal ratio cost?", d => d.OfControl(foot => foot.Ratio()), Foot);
        Ask(QuestionTopic.Effort, "Why is the pedal touchy?", d => d.OfControl(foot => foot.Touchy()), Foot);
        Ask(QuestionTopic.Effort, "Why is the steering heavy while braking?", d => d.Foot.Steering(), Travel);
        Ask(QuestionTopic.Effort, "How many stops are left when the engine stalls?", d => d.OfControl(foot => foot.Reserve()), Travel);
        Ask(QuestionTopic.Effort, "Is the booster too small for the car?", d => d.OfControl(foot => foot.Small()), Foot);
        Ask(QuestionTopic.Pedal, "Which master cylinder bore fits?", d => d.Foot.Bore(), Travel);
        Ask(QuestionTopic.Pedal, "Does a hard push exceed the pressure that calipers and hoses stand?",
            d => d.OfControl(foot => foot.Ceiling()), Foot);
        Ask(QuestionTopic.Pedal, "Two cylinders on a bar: which axle gets the bigger bore?", d => d.Balance.Twin(), Balance);
        Ask(QuestionTopic.Pedal, "Where does a long pedal come from?", d => d.Foot.LongPedal(), Travel);
        Ask(QuestionTopic.Pedal, "Why do the brakes drag after a booster swap?", d => d.Foot.Drag(),
            ["masterCylinder", "assist", .. Brakes]);
        Ask(QuestionTopic.Pedal, "Which pressures should the gauges show?", d => d.OfControl(foot => foot.Gauges()), Foot);
        Ask(QuestionTopic.Balance, "The rear locks after a change of front brakes: what now?", d => d.Balance.RearLocks(), Balance);
        Ask(QuestionTopic.Balance, "The valve is fully out and the rear still locks: what is left?", d => d.Balance.FullyOut(), Balance);
        Ask(QuestionTopic.Balance, "Do the fixed and the adjustable valve go together?", d => d.Balance.Series(),
            "hydraulics", "loadCases");
        Ask(QuestionTopic.Balance, "Is the metering valve for the front needed?", d => d.Balance.Metering(), ["hydraulics", .. Brakes]);
        Ask(QuestionTopic.Balance, "Are residual pressure valves needed, and where?", d => d.OfControl(foot => foot.Residual()),
            ["masterCylinder", .. Brakes]);
        Ask(QuestionTopic.Balance, "Which way is more rear, and how many turns?", d => d.Balance.Turns(), "hydraulics");
        Ask(QuestionTopic.Balance, "Should the rear ever lock first?", d => d.Balance.Ever(), Balance);
        Ask(QuestionTopic.Balance, "Balance bar or valve?", d => d.Balance.BarOrValve(), Balance);
        Ask(QuestionTopic.Road, "What do bigger tyres change?", d => d.Balance.BiggerTyres(), Balance);
        Ask(QuestionTopic.Road, "What do race pads in front only change?", d => d.Balance.Pads(), Balance);
        Ask(QuestionTopic.Road, "Set for the dry: how much for the wet?", d => d.Balance.DryToWet(), Balance);
        Ask(QuestionTopic.Road, "The pedal goes soft on a hot lap: is it the fluid?", d => d.Balance.SoftPedal(), [.. Balance, .. Heat]);
        Ask(QuestionTopic.Road, "The rear grabs in the first damp stop: does it lock first?", d => d.Balance.DampGrab(), Balance);
        return answers;
    }

    private sealed class Desk(DeskCar car)
    {
        public DeskCar Car => car;

        public FootQuestions Foot { get; } = new(car);

        public Reply OfControl(Func<FootQuestions, Reply> question) => car.Foot is null ? Reply.Lacks(Reply.Control) : question(Foot);

        public BalanceQuestions Balance { get; } = new(car);
    }
}
