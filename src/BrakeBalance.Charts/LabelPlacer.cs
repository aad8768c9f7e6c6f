using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Puts labels beside their marks so that no two boxes overlap and few lines run through them.</summary>
/// <remarks>
/// Greedy by priority, then a few rounds in which each label looks for a better place while the others stay. No chance is involved.
/// </remarks>
internal sealed class LabelPlacer(Box plot, double fontSize)
{
    private const double Gap = 3;
    private const int Rounds = 3;
    private const double LongestLeap = 2;

    private readonly Box _plot = plot;
    private readonly double _fontSize = fontSize;
    private readonly List<Segment> _segments = [];
    private readonly List<Box> _blocks = [];

    /// <summary>Adds a line that labels should not cover.</summary>
    public void Avoid(int owner, IReadOnlyList<Dot> path)
    {
        for (int i = 1; i < path.Count; i++)
        {
            _segments.Add(new Segment(owner, path[i - 1], path[i]));
        }
    }

    /// <summary>Adds a box that labels should not cover, such as a marker.</summary>
    public void Avoid(Box box) => _blocks.Add(box);

    /// <summary>Places the labels.</summary>
    /// <returns>For each request its label, or null when there is no room for it.</returns>
    public IReadOnlyList<PlacedLabel?> Place(IReadOnlyList<LabelRequest> requests)
    {
        var options = requests.Select(Options).ToList();
        var placed = new PlacedLabel?[requests.Count];
        int[] order = [.. Enumerable.Range(0, requests.Count).OrderBy(i => requests[i].Priority).ThenBy(i => options[i].Count)
            .ThenBy(i => i)];
        for (int round = 0; round < Rounds; round++)
        {
            bool changed = false;
            foreach (int i in order)
            {
                PlacedLabel? before = placed[i];
                placed[i] = null;
                placed[i] = Best(requests[i], options[i], placed);
                changed |= placed[i]?.Box != before?.Box;
            }

            if (!changed)
            {
                break;
            }
        }

        return placed;
    }

    /// <summary>The cheapest free place; places are in the order of their least possible cost, so that most are never looked at.</summary>
    private PlacedLabel? Best(LabelRequest request, List<Option> options, PlacedLabel?[] placed)
    {
        Option? best = null;
        double least = double.PositiveInfinity;
        foreach (Option option in options)
        {
            if (option.BaseCost >= least)
            {
                break;
            }

            if (Covers(option.Box.Grown(Gap), placed))
            {
                continue;
            }

            option.Clutter ??= request.Within is { } area && !Geometry.Inside(option.Box, area)
                ? double.PositiveInfinity : Clutter(request, option.Box);
            if (option.BaseCost + option.Clutter.Value < least)
            {
                (best, least) = (option, option.BaseCost + option.Clutter.Value);
            }
        }

        return best is null ? null : new PlacedLabel(request.Owner, best.Lines, request.Tone, request.Bold, best.Box)
        {
            Clutter = best.Clutter ?? 0,
        };
    }

    /// <summary>Whether a line other than its own, of those that it may be taken for, lies nearer to a box than that does.</summary>
    public bool IsNearerAnother(int owner, Box box, double own, Func<int, bool> isAlike) => _segments.Exists(segment =>
        segment.Owner != owner && isAlike(segment.Owner) && segment.Meets(box.Grown(own))
        && Geometry.Between(box, [(segment.A, segment.B)]) is var (from, to) && Geometry.Distance(from, to) < own);

    private static bool Covers(Box grown, PlacedLabel?[] placed)
    {
        foreach (PlacedLabel? other in placed)
        {
            if (other is not null && other.Box.Overlaps(grown))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The places a label could go, the least possible cost first.</summary>
    private List<Option> Options(LabelRequest request)
    {
        List<Option> options = [];
        Box room = _plot.Grown(-2);
        double single = TextMetrics.Width(request.Text, _fontSize, request.Bold);
        string? previous = null;
        foreach ((double share, double cost) in new[] { (0.42, 0.0), (0.28, 0.6), (0.18, 1.4) })
        {
            IReadOnlyList<string> lines = TextMetrics.Wrap(
                request.Text, _fontSize, Math.Min(single, Math.Max(_plot.Width * share, _fontSize * 5)) + 0.01, request.Bold);
            string joined = string.Join('\n', lines);
            if (joined == previous)
            {
                continue;
            }

            previous = joined;
            double width = lines.Max(line => TextMetrics.Width(line, _fontSize, request.Bold)),
                height = lines.Count * _fontSize * TextMetrics.LineHeight;
            foreach ((Dot centre, double placeCost) in request.Candidates(width, height))
            {
                Add(centre, placeCost);
            }

            void Add(Dot centre, double placeCost)
            {
                Box box = Box.Around(centre, width, height);
                if (room.Contains(box))
                {
                    // A label that leaps between pictures cannot be read; it follows what it names in small steps.
                    double leap = request.Stood.Count == 0 ? 0 : request.Stood.Min(dot => Geometry.Distance(dot, centre));
                    options.Add(new Option(lines, box, cost + placeCost + Math.Min(LongestLeap, leap / _fontSize)));
                }
            }
        }

        return [.. options.OrderBy(option => option.BaseCost)];
    }

    /// <summary>What it costs that a label covers or confuses other marks.</summary>
    /// <remarks>The innermost loop of all drawing: plain numbers, and most segments are out of the question by their bounds.</remarks>
    private double Clutter(LabelRequest request, Box box)
    {
        double cost = 0;
        Box tight = box.Grown(-1);
        Dot centre = box.Centre;
        double own = double.MaxValue;
        foreach (Segment segment in _segments)
        {
            if (segment.Owner == request.Owner)
            {
                own = Math.Min(own, Geometry.SquaredDistance(centre, segment.A, segment.B));
            }
        }

        bool mayConfuse = request.Within is null && own < double.MaxValue, isConfused = false;
        double reach = mayConfuse ? Math.Sqrt(own) : 0;
        Box near = new(centre.X - reach, centre.Y - reach, centre.X + reach, centre.Y + reach);

        // The segments of one owner stand together.
        int crossed = -1;
        foreach (Segment segment in _segments)
        {
            if (segment.Owner != crossed && segment.Meets(tight) && Geometry.Clip(segment.A, segment.B, tight) is not null)
            {
                crossed = segment.Owner;
                cost += crossed == request.Owner ? 4 : 3;
            }

            isConfused = isConfused || (mayConfuse && segment.Owner != request.Owner && segment.Meets(near)
                && Geometry.SquaredDistance(centre, segment.A, segment.B) < own);
        }

        // Beside another's point a label seems to be that one's, unless a line joins it to its own.
        bool names = request.Mark?.All(part => part.A == part.B) == true && _blocks.Count > 1;
        double beside = names ? request.Mark!.Min(part => Apart(part.A, box)) : 0;
        foreach (Box block in _blocks)
        {
            cost += block.Overlaps(tight) ? 5 : 0;
            isConfused = isConfused || (names && beside <= PlacedLabel.Reach && Apart(block.Centre, box) < beside - 0.5
                && !request.Mark!.Any(part => Geometry.Distance(part.A, block.Centre) < 1));
        }

        return isConfused ? cost + 2.5 : cost;
    }

    private static double Apart(Dot dot, Box box) => double.Hypot(
        Math.Max(0, Math.Max(box.Left - dot.X, dot.X - box.Right)), Math.Max(0, Math.Max(box.Top - dot.Y, dot.Y - box.Bottom)));

    private sealed class Segment(int owner, Dot a, Dot b)
    {
        private readonly double _left = Math.Min(a.X, b.X), _right = Math.Max(a.X, b.X);
        private readonly double _top = Math.Min(a.Y, b.Y), _bottom = Math.Max(a.Y, b.Y);

        public int Owner { get; } = owner;

        public Dot A { get; } = a;

        public Dot B { get; } = b;

        public bool Meets(Box box) => _right >= box.Left && _left <= box.Right && _bottom >= box.Top && _top <= box.Bottom;
    }

    private sealed class Option(IReadOnlyList<string> lines, Box box, double baseCost)
    {
        public IReadOnlyList<string> Lines { get; } = lines;

        public Box Box { get; } = box;

        public double BaseCost { get; } = baseCost;

        public double? Clutter { get; set; }
    }
}
