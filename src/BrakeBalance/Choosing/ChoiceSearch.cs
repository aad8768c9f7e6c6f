using System.Collections.Concurrent;
using System.Numerics;
using BrakeBalance.Summaries;
using BrakeBalance.Vehicles;
using BrakeBalance.Vehicles.Files;

namespace BrakeBalance.Choosing;

/// <summary>Tries every combination of parts on a car.</summary>
/// <remarks>
/// <para>
/// Nothing is left out: every combination answers the cheap targets, put together from parts of cars that were read once each (front
/// axle, rear axle, hydraulics, pedal, booster, cylinder). Of the dear targets (the setting with the file's ranges, stored stops, heat,
/// the rules) the pieces say the least that is missed of stored stops and rules; the rest is asked of whole cars, in the order of each
/// question asked, until its answer is proven: the least that a set misses shows whether it can be the answer.
/// </para>
/// </remarks>
internal sealed class ChoiceSearch
{
    /// <summary>Most combinations that are tried.</summary>
    public const double Most = 50e6;

    private const int MissesKept = 256;

    private readonly string _text;
    private readonly Targets _targets;
    private readonly Place[] _places;
    private readonly int[][] _touching;
    private readonly Lazy<Vehicle?>[][] _pieces;
    private readonly long _feet;
    private readonly Vehicle _present;
    private readonly ConcurrentDictionary<long, Proposal?> _known = new();
    private readonly ConcurrentDictionary<long, ChosenCar> _alike = new();

    /// <summary>Prepares a search.</summary>
    /// <param name="text">The vehicle file, without problems; it says what lies between foot and line pressure.</param>
    /// <param name="targets">What is wanted.</param>
    /// <param name="parts">What may be fitted; at most <see cref="Most"/> combinations.</param>
    public ChoiceSearch(string text, Targets targets, PartsList parts)
    {
        (_text, _targets) = (text, targets);
        _present = VehicleFile.Read(text, "the car").Vehicle;
        Place[] places = [.. parts.Places.Select(place => new Place(place.Parts, Touched(place.Parts)))];

        // Places that change the balance come first, so that one balance serves all feet in a row; then cylinder and booster.
        _places = [.. places.OrderBy(place => (place.Pieces & Piece.Balance) == 0).ThenBy(place => (place.Pieces & Piece.Cylinder) == 0)
            .ThenBy(place => (place.Pieces & Piece.Assist) == 0)];
        int balance = _places.Count(place => (place.Pieces & Piece.Balance) != 0);
        Count = _places.Aggregate(1L, (count, place) => count * place.Parts.Length);
        _feet = _places.Skip(balance).Aggregate(1L, (count, place) => count * place.Parts.Length);
        _touching = [.. Pieces.Select(piece => Enumerable.Range(0, _places.Length).Where(i => (_places[i].Pieces & piece) != 0).ToArray())];
        _pieces = [.. _touching.Select(touching => Enumerable
            .Range(0, touching.Aggregate(1, (count, at) => count * _places[at].Parts.Length))
            .Select(key => new Lazy<Vehicle?>(() => Read(Digits(key, touching)))).ToArray())];
    }

    /// <summary>How many combinations there are.</summary>
    public long Count { get; }

    // In the order of their bits.
    private static readonly Piece[] Pieces = [Piece.Front, Piece.Rear, Piece.Hydraulics, Piece.Pedal, Piece.Assist, Piece.Cylinder];

    /// <summary>Tries all combinations, on all cores.</summary>
    /// <param name="progress">Told how many are done, now and then, from several threads; null for nobody.</param>
    /// <param name="cancellation">Stops the search.</param>
    /// <returns>What fits the cheap targets, and what comes nearest to them.</returns>
    public ChoiceField Run(IProgress<int>? progress = null, CancellationToken cancellation = default) =>
        Run(MissesKept, progress, cancellation);

    private ChoiceField Run(int kept, IProgress<int>? progress, CancellationToken cancellation)
    {
        ConcurrentBag<ChoiceField> fields = [];
        long done = 0;
        Parallel.ForEach(Partitioner.Create(0, Count, Math.Clamp(Count / (Environment.ProcessorCount * 8L), 1, 4096)),
            new ParallelOptions { CancellationToken = cancellation },
            () => new ChoiceField(kept, _targets.All.Length),
            (range, _, field) =>
            {
                Try(range.Item1, range.Item2, field);
                progress?.Report((int)Interlocked.Add(ref done, range.Item2 - range.Item1));
                return field;
            },
            fields.Add);
        return ChoiceField.Together(fields, kept, _targets.All.Length);
    }

    /// <summary>Tries some of the combinations, on this thread, for a caller that goes from part to part.</summary>
    /// <param name="from">The first.</param>
    /// <param name="to">The one after the last.</param>
    /// <param name="before">What came of those before them; null for none.</param>
    /// <returns>What came of all so far.</returns>
    public ChoiceField Some(long from, long to, ChoiceField? before = null)
    {
        ChoiceField field = before ?? new ChoiceField(MissesKept, _targets.All.Length);
        Try(from, to, field);
        return field;
    }

    private void Try(long from, long to, ChoiceField field)
    {
        Span<double> values = stackalloc double[_targets.All.Length];
        Span<int> chosen = stackalloc int[_places.Length];
        (long Key, ChosenCar? Car, ChosenCar.Foot? Foot) last = (-1, null, null);
        for (long index = from; index < to; index++)
        {
            Try(index, field, values, chosen, ref last);
        }
    }

    /// <summary>The sets of a field in an order, those alone that meet every target, read back from their own files.</summary>
    /// <param name="sets">The sets in their order.</param>
    /// <param name="cancellation">Stops the search.</param>
    public IEnumerable<Proposal> Fitting(IEnumerable<FoundSet> sets, CancellationToken cancellation = default) =>
        Known(sets.Where(set => BrakesMiss(set.Index) == 0), cancellation)
            .Where(known => known.Proposal is { Miss: 0 }).Select(known => known.Proposal!);

    /// <summary>The sets that no other beats in both of two numbers, in the order of the first; both are to be small.</summary>
    public IEnumerable<Proposal> Front(
        IEnumerable<FoundSet> sets, Func<FoundSet, double> first, Func<FoundSet, double> second, CancellationToken cancellation = default)
    {
        double least = double.PositiveInfinity;
        foreach (FoundSet set in sets.Where(set => !double.IsNaN(first(set)) && !double.IsNaN(second(set)))
            .OrderBy(first).ThenBy(second).ThenBy(set => set.Changes).ThenBy(set => set.Index))
        {
            cancellation.ThrowIfCancellationRequested();
            if (second(set) < least && BrakesMiss(set.Index) == 0 && Of(set.Index) is { Miss: 0 } proposal)
            {
                least = second(set);
                yield return proposal;
            }
        }
    }

    /// <summary>The set that misses least of all targets together; the one with fewest changes among equals.</summary>
    public Proposal? Nearest(ChoiceField field, CancellationToken cancellation = default)
    {
        Proposal? nearest = null;
        foreach ((FoundSet set, Proposal? proposal) in Known(field.Fits.Concat(field.Misses).OrderBy(set => set.Miss)
            .ThenBy(set => set.Changes).ThenBy(set => set.Index)
            .Where(set => nearest is null || set.Miss >= nearest.Miss || set.Miss + BrakesMiss(set.Index) < nearest.Miss), cancellation))
        {
            if (nearest is not null && set.Miss >= nearest.Miss)
            {
                return nearest;
            }

            nearest = proposal is not null && (nearest is null || proposal.Miss < nearest.Miss) ? proposal : nearest;
        }

        // Sets that were not kept may still miss less: all that are kept are looked at again, with more of them.
        return field.KeptAll ? nearest : Nearest(Run(16 * field.Kept, null, cancellation), cancellation);
    }

    /// <summary>A combination as a car of its own, read back from its file; null where its parts do not go together.</summary>
    public Proposal? Of(long index) => _known.GetOrAdd(index, _ =>
    {
        Part[] parts = Chosen(index);
        return Part.Fit(_text, parts) is { } text && VehicleFile.TryRead(text).Reading?.Vehicle is { Control: not null } car
            && Banded.Try(() => ChosenCar.Answers(car, _targets, RatingOf(parts), Alike(index, car))) is { } values
            ? new Proposal(index, parts, text, car, _targets, values) : null;
    });

    /// <summary>Whether a combination was read as a whole car.</summary>
    public bool IsKnown(long index) => _known.ContainsKey(index);

    /// <summary>The number of a combination's brakes, the foot left aside.</summary>
    public long BrakesOf(long index) => index / _feet;

    // What the brakes miss whatever the foot, once one set of them was worked out.
    private double BrakesMiss(long index) => _alike.TryGetValue(BrakesOf(index), out ChosenCar? car) ? car.DearMiss : 0;

    // A range that a new part takes away moves the draws of the others too, so such a car is worked out by itself.
    private ChosenCar Alike(long index, Vehicle car) =>
        car.Uncertainty?.Ranges.Any(range => range.Path.Split('.')[0] is "pedal" or "assist" or "masterCylinder") == true
            ? new(car, _targets) : _alike.GetOrAdd(BrakesOf(index), _ => new(car, _targets));

    /// <summary>The least rating of some parts; null when none says one.</summary>
    internal static Pressure? RatingOf(IEnumerable<Part> parts) => parts.Min(part => part.Rating);

    private IEnumerable<(FoundSet Set, Proposal? Proposal)> Known(IEnumerable<FoundSet> sets, CancellationToken cancellation)
    {
        foreach (FoundSet[] batch in sets.Chunk(Environment.ProcessorCount))
        {
            cancellation.ThrowIfCancellationRequested();
            Parallel.ForEach(batch, new ParallelOptions { CancellationToken = cancellation }, set => Of(set.Index));
            foreach (FoundSet set in batch)
            {
                yield return (set, Of(set.Index));
            }
        }
    }

    private void Try(long index, ChoiceField field, Span<double> values, Span<int> chosen,
        ref (long Key, ChosenCar? Car, ChosenCar.Foot? Foot) last)
    {
        Choose(index, chosen);
        last = last.Key == BrakesOf(index) ? last : (BrakesOf(index), Balanced(chosen), null);
        (Vehicle? pedal, Vehicle? assist, Vehicle? cylinder) =
            (PieceOf(Piece.Pedal, chosen), PieceOf(Piece.Assist, chosen), PieceOf(Piece.Cylinder, chosen));
        if (last.Car is not { Vehicle.Control: { } control } car || pedal is null || assist is null || cylinder is null)
        {
            field.Impossible++;
            return;
        }

        (BrakeControl behind, BrakeControl helped) = (cylinder.Control!, assist.Control!);
        if (last.Foot?.Serves(car, helped.Assist, behind.MasterCylinder, behind.PushRod) != true)
        {
            last.Foot = car.Behind(control with
            {
                Assist = helped.Assist,
                MasterCylinder = behind.MasterCylinder,
                Layout = behind.Layout,
                PushRod = behind.PushRod,
                Residual = behind.Residual,
            });
        }

        (double price, Pressure? rating, int changes) = (0, null, 0);
        for (int i = 0; i < chosen.Length; i++)
        {
            if (_places[i].Parts[chosen[i]] is { } part)
            {
                (price, changes) = (price + part.Price, changes + 1);
                rating = part.Rating is { } own && (rating is null || own < rating) ? own : rating;
            }
        }

        car.Cheap(last.Foot!, pedal.Control!.Pedal, rating, values);
        (double miss, double room) = (0, double.PositiveInfinity);
        foreach (Target target in _targets.All)
        {
            if (!ChosenCar.IsCheap(target.Kind))
            {
                break;
            }

            double left = target.Room(values[(int)target.Kind]);
            field.Met[(int)target.Kind] += left >= 0 || double.IsNaN(left) ? 1 : 0;
            miss += left < 0 ? -left : 0;
            room = left < room && target.Kind != TargetKind.FrontFirst ? left : room;
        }

        field.Cheap += miss == 0 ? 1 : 0;
        miss += field.Keeps(miss) ? last.Foot!.DearMissAtLeast(pedal.Control!.Pedal) : 0;
        field.Add(new(index, miss, room, values[(int)TargetKind.PedalForceFull], values[(int)TargetKind.PedalTravelFull],
            values[(int)TargetKind.RearMargin], values[(int)TargetKind.Efficiency], price, changes));
    }

    private void Choose(long index, Span<int> chosen)
    {
        for (int i = _places.Length - 1; i >= 0; i--)
        {
            (index, long at) = Math.DivRem(index, _places[i].Parts.Length);
            chosen[i] = (int)at;
        }
    }

    private Part[] Chosen(long index)
    {
        int[] chosen = new int[_places.Length];
        Choose(index, chosen);
        return [.. _places.Zip(chosen, (place, at) => place.Parts[at]).OfType<Part>()];
    }

    private Vehicle? PieceOf(Piece piece, ReadOnlySpan<int> chosen)
    {
        (int number, int key) = (BitOperations.TrailingZeroCount((int)piece), 0);
        foreach (int at in _touching[number])
        {
            key = (key * _places[at].Parts.Length) + chosen[at];
        }

        return _pieces[number][key].Value;
    }

    private IEnumerable<Part> Digits(int key, int[] touching)
    {
        foreach (int at in touching.Reverse())
        {
            (key, int digit) = Math.DivRem(key, _places[at].Parts.Length);
            if (_places[at].Parts[digit] is { } part)
            {
                yield return part;
            }
        }
    }

    private Vehicle? Read(IEnumerable<Part> parts) =>
        Part.Fit(_text, parts) is { } text && VehicleFile.TryRead(text).Reading?.Vehicle is { Control: not null } car ? car : null;

    private ChosenCar? Balanced(ReadOnlySpan<int> chosen)
    {
        if (PieceOf(Piece.Front, chosen) is not { } front || PieceOf(Piece.Rear, chosen) is not { } rear
            || PieceOf(Piece.Hydraulics, chosen) is not { } hydraulics)
        {
            return null;
        }

        Vehicle car = front with
        {
            Tyres = new(front.Tyres.Front, rear.Tyres.Rear),
            Brakes = new(front.Brakes.Front, rear.Brakes.Rear),
            AxleDynamics = new(front.AxleDynamics.Front, rear.AxleDynamics.Rear),
            Hydraulics = hydraulics.Hydraulics,
            Conditions = front.Conditions with
            {
                FrictionSpread = new(front.Conditions.FrictionSpread.Front, rear.Conditions.FrictionSpread.Rear),
            },
            Control = front.Control! with
            {
                Circuits = front.Control.Circuits is { } circuits ? new(circuits.Front, rear.Control!.Circuits!.Value.Rear) : null,
            },
            Uncertainty = null,
        };
        return Banded.Try(() => new ChosenCar(car, _targets));
    }

    // Which pieces of the car a place changes; an entry of the whole car changes all of them.
    private Piece Touched(ImmutableArray<Part?> parts)
    {
        Piece touched = Piece.None;
        foreach (Part part in parts.OfType<Part>())
        {
            foreach (ValueOverride set in part.Sets)
            {
                string[] steps = set.Path.Split('.', '[');
                touched |= (steps[0], steps.ElementAtOrDefault(1)) switch
                {
                    ("front", _) or ("fluid", "front") => Piece.Front,
                    ("rear", _) or ("fluid", "rear") => Piece.Rear,
                    ("hydraulics", "split") => Piece.Hydraulics | Piece.Cylinder,
                    ("hydraulics", _) => Piece.Hydraulics,
                    ("pedal", _) => Piece.Pedal,
                    ("assist", _) => Piece.Assist,
                    ("masterCylinder", _) => Piece.Cylinder,
                    _ => Piece.All,
                };
            }

            // Two bores of one cylinder split the pressure too.
            if ((touched & Piece.Cylinder) != 0 && Read([part])?.Hydraulics.Split is { } split && !split.Equals(_present.Hydraulics.Split))
            {
                touched |= Piece.Hydraulics;
            }
        }

        return touched;
    }

    [Flags]
    private enum Piece
    {
        None = 0,
        Front = 1,
        Rear = 2,
        Hydraulics = 4,
        Pedal = 8,
        Assist = 16,
        Cylinder = 32,
        Balance = Front | Rear | Hydraulics,
        All = 63,
    }

    private sealed record Place(ImmutableArray<Part?> Parts, Piece Pieces);
}

/// <summary>One combination that was tried, by the numbers that it is ordered by.</summary>
/// <param name="Index">Its number among all.</param>
/// <param name="Miss">What it misses at least, each target over its limit, together [–]; 0 when it may fit.</param>
/// <param name="Room">What is left to the tightest of the cheap targets over its limit [–].</param>
/// <param name="EffortNewtons">Pedal force at 1.0 g.</param>
/// <param name="TravelMetres">Pedal travel at 1.0 g; not a number where it cannot be told.</param>
/// <param name="Margin">Margin of the rear brakes [–].</param>
/// <param name="Efficiency">Mean braking efficiency [–].</param>
/// <param name="Price">Price of the new parts.</param>
/// <param name="Changes">How many parts change.</param>
internal readonly record struct FoundSet(
    long Index, double Miss, double Room, double EffortNewtons, double TravelMetres, double Margin, double Efficiency, double Price,
    int Changes);

/// <summary>What came of trying combinations.</summary>
internal sealed class ChoiceField(int kept, int targets)
{
    // The worst of those kept is the first to go; of equals the one tried last.
    private readonly PriorityQueue<FoundSet, (double Miss, int Changes, long Index)> _misses =
        new(Comparer<(double, int, long)>.Create((a, b) => b.CompareTo(a)));

    private long _missed;

    /// <summary>How many combinations have parts that do not go together.</summary>
    public long Impossible { get; set; }

    /// <summary>How many combinations meet each target; of the dear ones none is counted.</summary>
    public long[] Met { get; } = new long[targets];

    /// <summary>How many combinations meet the cheap targets.</summary>
    public long Cheap { get; set; }

    /// <summary>Every combination that meets the cheap targets, and is not known to miss a dear one.</summary>
    public List<FoundSet> Fits { get; } = [];

    /// <summary>Those that miss least.</summary>
    public IEnumerable<FoundSet> Misses => _misses.UnorderedItems.Select(item => item.Element);

    public int Kept => kept;

    /// <summary>Whether every combination that misses something is among <see cref="Misses"/>.</summary>
    public bool KeptAll => _missed == _misses.Count;

    /// <summary>Whether a combination that misses so much may be kept.</summary>
    public bool Keeps(double miss) => _misses.Count < kept
        || (_misses.TryPeek(out _, out (double Miss, int Changes, long Index) worst) && miss <= worst.Miss);

    public void Add(FoundSet set)
    {
        if (set.Miss == 0)
        {
            Fits.Add(set);
            return;
        }

        _missed++;
        Keep(set);
    }

    /// <summary>The fields of several threads as one, in an order that does not depend on who tried what.</summary>
    public static ChoiceField Together(IEnumerable<ChoiceField> fields, int kept, int targets)
    {
        var all = new ChoiceField(kept, targets);
        foreach (ChoiceField field in fields)
        {
            all.Impossible += field.Impossible;
            all.Cheap += field.Cheap;
            all._missed += field._missed;
            all.Fits.AddRange(field.Fits);
            foreach (FoundSet set in field.Misses)
            {
                all.Keep(set);
            }

            for (int i = 0; i < targets; i++)
            {
                all.Met[i] += field.Met[i];
            }
        }

        all.Fits.Sort((a, b) => a.Index.CompareTo(b.Index));
        return all;
    }

    private void Keep(FoundSet set)
    {
        if (!Keeps(set.Miss))
        {
            return;
        }

        _misses.Enqueue(set, (set.Miss, set.Changes, set.Index));
        if (_misses.Count > kept)
        {
            _misses.Dequeue();
        }
    }
}

/// <summary>A set of parts on the car.</summary>
/// <param name="Index">Its number among all combinations.</param>
/// <param name="Parts">The new parts.</param>
/// <param name="Text">The vehicle file with them.</param>
/// <param name="Vehicle">The car of that file.</param>
/// <param name="Targets">What was asked.</param>
/// <param name="Values">What it answers to each target, in the measure's SI unit.</param>
public sealed record Proposal(
    long Index, IReadOnlyList<Part> Parts, string Text, Vehicle Vehicle, Targets Targets, IReadOnlyList<double> Values)
{
    /// <summary>Price of the new parts together, in the list's money [–].</summary>
    public double Price => Parts.Sum(part => part.Price);

    /// <summary>What it misses of the targets, each over its limit, together [–]; 0 when it fits.</summary>
    public double Miss { get; } = MissOf(Targets, Values);

    /// <summary>The targets that it breaks, each with what it lacks over the limit [–], the worst first.</summary>
    public IReadOnlyList<(Target Target, double Lacks)> Broken =>
        [.. Targets.All.Select(target => (target, -target.Room(Values[(int)target.Kind]))).Where(pair => pair.Item2 > 0)
            .OrderByDescending(pair => pair.Item2)];

    /// <summary>How many of the cars drawn from the file's ranges meet every target, and of how many; null without ranges.</summary>
    public (int Meet, int Of)? Holds()
    {
        IReadOnlyList<Vehicle> cars = Drawn();
        int meet = 0;
        Parallel.ForEach(cars, car => Interlocked.Add(ref meet, MeetsOn(car) ? 1 : 0));
        return cars.Count == 0 ? null : (meet, cars.Count);
    }

    /// <summary>The cars drawn from the file's ranges; none without ranges.</summary>
    internal IReadOnlyList<Vehicle> Drawn() => Vehicle.Uncertainty?.CarsOf(Vehicle) ?? [];

    /// <summary>Whether one of the drawn cars meets every target.</summary>
    internal bool MeetsOn(Vehicle drawn) =>
        Banded.Try(() => ChosenCar.Answers(drawn, Targets, ChoiceSearch.RatingOf(Parts))) is { } values && MissOf(Targets, values) == 0;

    private static double MissOf(Targets targets, IReadOnlyList<double> values) =>
        targets.All.Select(target => target.Room(values[(int)target.Kind])).Where(room => room < 0).Sum(room => -room);
}
