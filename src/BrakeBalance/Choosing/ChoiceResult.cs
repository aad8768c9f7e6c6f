using BrakeBalance.Bench;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;

namespace BrakeBalance.Choosing;

/// <summary>What a search has to show: the smallest change that works first, then the best by each view; or the nearest miss.</summary>
/// <param name="Combinations">How many combinations were tried: all.</param>
/// <param name="Impossible">How many have parts that do not go together.</param>
/// <param name="Cheap">How many meet the targets that every combination is asked.</param>
/// <param name="Met">How many meet each target, by kind; of the dear ones none is counted.</param>
/// <param name="Shown">The sets to show, each with what it is shown for; none when nothing fits.</param>
/// <param name="Nearest">The set that misses least when nothing fits; null when something does, or no car can be built.</param>
public sealed record ChoiceResult(
    long Combinations, long Impossible, long Cheap, IReadOnlyList<long> Met,
    IReadOnlyList<(IReadOnlyList<string> For, Proposal Set)> Shown, Proposal? Nearest)
{
    /// <summary>Every combination that may meet the targets, by the numbers that it is ordered by.</summary>
    internal IReadOnlyList<FoundSet> Fits { get; private init; } = [];

    /// <summary>For how many of the cars drawn from the file's ranges each set holds; null when nobody has asked yet.</summary>
    internal IReadOnlyList<(int Meet, int Of)?>? Held { get; init; }

    /// <summary>The sets of which none is lighter and shorter at once, in the order of their pedal forces.</summary>
    public IReadOnlyList<Proposal> EffortFront { get; private init; } = [];

    /// <summary>The sets to show, in the order of their numbers: the nearest miss alone when nothing fits.</summary>
    public IReadOnlyList<Proposal> Sets => Nearest is { } nearest ? [nearest] : [.. Shown.Select(shown => shown.Set)];

    /// <summary>Tries every combination, on all cores.</summary>
    /// <param name="choice">What is asked.</param>
    /// <param name="each">How many sets each view shows at most.</param>
    /// <param name="progress">Told how many combinations are done, now and then, from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <returns>What the search has to show.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static ChoiceResult Of(Choice choice, int each = 3, IProgress<int>? progress = null, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Of(new ChoiceSearch(choice.Text, choice.Targets, choice.Parts), each, progress, cancellation);
    }

    internal static ChoiceResult Of(
        ChoiceSearch search, int each, IProgress<int>? progress = null, CancellationToken cancellation = default) =>
        Of(search, search.Run(progress, cancellation), each, cancellation);

    /// <summary>What a search has to show, once every combination is tried.</summary>
    internal static ChoiceResult Of(ChoiceSearch search, ChoiceField field, int each, CancellationToken cancellation = default)
    {
        List<(List<string> For, Proposal Set)> shown = [];
        void Show(string why, IEnumerable<Proposal> sets)
        {
            foreach (Proposal set in sets)
            {
                int at = shown.FindIndex(one => one.Set.Index == set.Index);
                (at >= 0 ? shown[at].For : Added(set)).Add(why);
            }
        }

        List<string> Added(Proposal set)
        {
            shown.Add(([], set));
            return shown[^1].For;
        }

        // What a set holds best, ties by price and by how little changes.
        IEnumerable<FoundSet> Sorted(Func<FoundSet, (double, double, double)> by) => field.Fits.OrderBy(by).ThenBy(set => set.Index);
        Proposal[] front = [];
        Proposal? smallest = search.Fitting(Sorted(set => (set.Changes, set.Price, -set.Room)), cancellation).FirstOrDefault();
        if (smallest is not null)
        {
            Show("smallest change that works", [smallest]);
            Show("most room to the tightest target",
                search.Fitting(Sorted(set => (-set.Room, set.Price, set.Changes)), cancellation).Take(each));
            front = [.. search.Front(field.Fits, set => set.EffortNewtons, set => set.TravelMetres, cancellation)];
            Show("effort against travel", Spread(front, each));
            Show("margin against efficiency",
                Spread(search.Front(field.Fits, set => -set.Margin, set => -set.Efficiency, cancellation), each));
            Show("price against room", Spread(search.Front(field.Fits, set => set.Price, set => -set.Room, cancellation), each));
        }

        return new(search.Count, field.Impossible, field.Cheap, field.Met,
            [.. shown.Select(one => ((IReadOnlyList<string>)one.For, one.Set))],
            smallest is null ? search.Nearest(field, cancellation) : null)
        {
            Fits = field.Fits,
            EffortFront = front,
        };
    }

    // Both ends of a front, and what lies evenly between.
    private static IEnumerable<Proposal> Spread(IEnumerable<Proposal> front, int each)
    {
        Proposal[] all = [.. front];
        int count = Math.Min(each, all.Length);
        return Enumerable.Range(0, count).Select(i => all[count == 1 ? 0 : i * (all.Length - 1) / (count - 1)]).Distinct();
    }

    /// <summary>Old parts against new, by the figures of the bench.</summary>
    /// <param name="before">The car as it is.</param>
    /// <param name="set">The set chosen.</param>
    public static ChangePlan Change(Vehicle before, Proposal set)
    {
        static PerAxle<Mass?> Rings(Vehicle car) => car.AxleDynamics.Select(axle => axle.Heat?.RingMass);
        return new()
        {
            Before = before,
            After = set.Vehicle,
            Conditions = new()
            {
                LoadCase = set.Targets.LoadCaseOf(before).Name,
                OldRings = Rings(before),
                NewRings = Rings(set.Vehicle),
            },
        };
    }

    /// <summary>The answers of the car as it is and of a set, side by side.</summary>
    /// <param name="before">The car as it is.</param>
    /// <param name="set">The set chosen.</param>
    /// <param name="units">The system of units.</param>
    /// <returns>The comparison, by the load case of the targets.</returns>
    public static SetUpComparison Compare(Vehicle before, Proposal set, UnitSystem units)
    {
        ArgumentNullException.ThrowIfNull(set);
        return SetUpComparison.Of([("present", before), ("new parts", set.Vehicle)], units, Change(before, set).Conditions);
    }

    /// <summary>What the new parts ask for on the bench, beyond their numbers (common practice).</summary>
    /// <param name="set">The set chosen.</param>
    /// <returns>One line a matter.</returns>
    public static IReadOnlyList<string> OnTheBench(Proposal set)
    {
        ArgumentNullException.ThrowIfNull(set);
        bool Sets(params string[] paths) => set.Parts.Any(part => part.Sets.Any(one =>
            paths.Any(path => one.Path.StartsWith(path, StringComparison.Ordinal))));
        bool drums = set.Vehicle.Brakes.Rear is Brakes.DrumBrake;
        List<string> lines = [];
        if (Sets("masterCylinder", "assist"))
        {
            lines.Add("Push rod: measure depth and projection anew and set the gap before the car moves ('bench', pushRod).");
            lines.Add("Threads and seats of every outlet: compare them with the pipes; the thread alone does not say the seat "
                + "('bench --threads').");
            lines.Add("Reservoir: above every caliper and level in the car, hoses the right way round; more volume for bigger pistons.");
        }

        if (Sets("masterCylinder"))
        {
            lines.Add(drums
                ? "Residual pressure valve: drums with cup expanders gone want none, others may; look whether the new cylinder has one."
                : "Residual pressure valve: discs want none at a cylinder above them; take one out that the new cylinder brings along.");
        }

        if (Sets("assist"))
        {
            lines.Add("Booster: vacuum or pump hoses, check valve and mounting; pedal height and free play set anew.");
        }

        if (Sets("front.brake", "rear.brake", "fluid"))
        {
            lines.Add("Hoses: ends and lengths at full droop and both locks ('bench', hoses); bracket, wheel and bleed screw clear.");
            lines.Add("Metering valve: with drums behind, one in the front line still has to open after the shoes touch; with discs "
                + "all round none is usual.");
        }

        if (Sets("front.brake.friction", "rear.brake.friction", "front.brake.effectiveRadius", "rear.brake.effectiveRadius"))
        {
            lines.Add("Pads and discs: bedded before anything is judged; both wheels of an axle alike.");
        }

        if (set.Vehicle.Hydraulics.RearProportioningValve is not null && Sets("hydraulics", "front.brake", "rear.brake"))
        {
            lines.Add("Proportioning valve: gauges in both lines, knee and slope read before the first test stop ('measure gauges').");
        }

        lines.Add("Bleed, look for leaks under a firm push"
            + (set.Vehicle.Control?.Assist is null or Assist.NoAssist ? "." : ", and use up the assist once."));
        return lines;
    }

    /// <summary>What stands beside every choice of parts.</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "No approval: a calculation compares parts. The rating of every part is its maker's to say, for this pressure and this use.",
        "Local law decides which changes of brakes may be made, and who has to approve them, before the car is on the road.",
        "A competent person checks the work before the car moves. A car whose rear axle locks first spins.",
    ];
}
