using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Puts labels beside their marks so that no two boxes overlap and few lines run through them.</summary>
/// <remarks>
/// Greedy by priority, then a few rounds in which each label looks for a better place while the others stay. No chance is involved.
/// </remarks>
internal sealed class LabelPlacer
{
    private const double Gap = 3;
    private const int Rounds = 3;

    private readonly Box _plot;
    private readonly double _fontSize;
    private readonly List<(int Owner, Dot A, Dot B)> _segments = [];
    private readonly List<Box> _blocks = [];

    /// <summary>Starts with an empty plot.</summary>
    public LabelPlacer(Box plot, double fontSize)
    {
        _plot = plot;
        _fontSize = fontSize;
    }

    /// <summary>Adds a line that labels should not cover.</summary>
    public void Avoid(int owner, IReadOnlyList<Dot> path)
    {
        for (int i = 1; i < path.Count; i++)
        {
            _segments.Add((owner, path[i - 1], path[i]));
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

            Box grown = option.Label.Box.Grown(Gap / 2);
            if (Array.Exists(placed, other => other is not null && other.Box.Grown(Gap / 2).Overlaps(grown)))
            {
                continue;
            }

            option.Clutter ??= request.Within is { } area && !Geometry.Inside(option.Label.Box, area)
                ? double.PositiveInfinity : Clutter(request, option.Label.Box);
            if (option.BaseCost + option.Clutter.Value < least)
            {
                (best, least) = (option, option.BaseCost + option.Clutter.Value);
            }
        }

        return best?.Label;
    }

    /// <summary>The places a label could go, the least possible cost first.</summary>
    private List<Option> Options(LabelRequest request)
    {
        List<Option> options = [];
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
                if (_plot.Grown(-2).Contains(box))
                {
                    options.Add(new Option(new PlacedLabel(request.Owner, lines, request.Tone, request.Bold, box), cost + placeCost));
                }
            }
        }

        return [.. options.OrderBy(option => option.BaseCost)];
    }

    /// <summary>What it costs that a label covers or confuses other marks.</summary>
    private double Clutter(LabelRequest request, Box box)
    {
        double cost = 0;
        Box tight = box.Grown(-1);
        HashSet<int> crossed = [];
        double own = double.MaxValue, other = double.MaxValue;
        foreach ((int owner, Dot a, Dot b) in _segments)
        {
            bool apart = Math.Max(a.X, b.X) < tight.Left || Math.Min(a.X, b.X) > tight.Right || Math.Max(a.Y, b.Y) < tight.Top
                || Math.Min(a.Y, b.Y) > tight.Bottom;
            if (!apart && Geometry.Clip(a, b, tight) is not null && crossed.Add(owner))
            {
                cost += owner == request.Owner ? 4 : 3;
            }

            double distance = Geometry.SquaredDistance(box.Centre, a, b);
            if (owner == request.Owner)
            {
                own = Math.Min(own, distance);
            }
            else
            {
                other = Math.Min(other, distance);
            }
        }

        cost += 5 * _blocks.Count(block => block.Overlaps(tight));
        if (request.Within is null && own < double.MaxValue && other < own)
        {
            cost += 2.5;
        }

        return cost;
    }

    /// <summary>A place a label could go.</summary>
    private sealed class Option(PlacedLabel label, double baseCost)
    {
        public PlacedLabel Label { get; } = label;

        public double BaseCost { get; } = baseCost;

        public double? Clutter { get; set; }
    }
}
