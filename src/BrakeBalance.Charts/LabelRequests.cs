using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Which labels a figure wants, and where each could go.</summary>
internal static class LabelRequests
{
    private const double Clearance = 4;

    /// <summary>The requests of a figure, and a placer that knows what to avoid.</summary>
    /// <param name="layout">Where axes and plot are.</param>
    public static (IReadOnlyList<LabelRequest> Requests, LabelPlacer Placer) Of(FigureLayout layout)
    {
        var placer = new LabelPlacer(layout.Plot, layout.LabelFont);
        List<LabelRequest> requests = [];
        foreach ((int owner, Layer layer) in layout.Figure.Layers.Index())
        {
            bool keyed = layout.Keyed.Contains((owner, 0));
            switch (layer)
            {
                case LineLayer line:
                    (IReadOnlyList<double> x, IReadOnlyList<double> y) = line.Path;
                    var runs = Geometry.Clip(Geometry.Simplify(layout.Path(x, y), 0.7), layout.Plot);
                    foreach (IReadOnlyList<Dot> run in runs)
                    {
                        placer.Avoid(owner, run);
                    }

                    if (!keyed && line.LabelText.Length > 0 && runs.Count > 0)
                    {
                        IReadOnlyList<Dot> longest = runs.MaxBy(Length)!;
                        requests.Add(Request(owner, line, 2, (w, h) => AlongPath(longest, w, h, line.LabelAt)) with
                        {
                            Mark = [.. runs.SelectMany(Segments)],
                        });
                    }

                    break;
                case ReferenceLayer reference:
                    IReadOnlyList<Dot> across = Across(layout, reference);
                    placer.Avoid(owner, across);
                    if (!keyed && reference.LabelText.Length > 0 && layout.Plot.Grown(1).Contains(across[0]))
                    {
                        requests.Add(Request(owner, reference, 3, (w, h) => AlongPath(across, w, h, null)) with
                        {
                            Mark = [.. Segments(across)],
                        });
                    }

                    break;
                case MarkerLayer markers:
                    requests.AddRange(OfMarkers(layout, placer, owner, markers, keyed));
                    break;
                case BandLayer band when !keyed && band.LabelText.Length > 0:
                    IReadOnlyList<Dot> outline = [.. layout.Path(band.X, band.Upper), .. layout.Path(band.X, band.Lower).Reverse()];
                    requests.Add(Request(owner, band, 4, (w, h) =>
                        AlongPath(layout.Path(band.X, band.Upper), w, h, null).Concat(InArea(layout, outline))));
                    break;
                case RegionLayer region when !keyed && region.LabelText.Length > 0:
                    IReadOnlyList<Dot> polygon = Geometry.Simplify([.. region.X.Zip(region.Y, layout.At)], 0.7);
                    requests.Add(Request(owner, region, 5, (_, _) => InArea(layout, polygon)) with { Within = polygon, Bold = true });
                    break;
                case MapLayer map:
                    requests.AddRange(OfMap(layout, owner, map));
                    break;
                case NoteLayer note:
                    Dot at = layout.At(note.X, note.Y);
                    requests.Add(Request(owner, note, 1, (w, h) => Around(at, w, h, 0)) with { Mark = [(at, at)] });
                    break;
            }
        }

        return (requests, placer);
    }

    private static IEnumerable<(Dot A, Dot B)> Segments(IReadOnlyList<Dot> path) => path.Zip(path.Skip(1));

    private static LabelRequest Request(
        int owner, Layer layer, int priority, Func<double, double, IEnumerable<(Dot, double)>> candidates) =>
        new() { Owner = owner, Text = layer.LabelText, Tone = layer.Tone, Priority = priority, Candidates = candidates };

    private static IReadOnlyList<Dot> Across(FigureLayout layout, ReferenceLayer reference) => reference.Vertical
        ? [new Dot(layout.AtX(reference.Value), layout.Plot.Bottom), new Dot(layout.AtX(reference.Value), layout.Plot.Top)]
        : [new Dot(layout.Plot.Left, layout.AtY(reference.Value)), new Dot(layout.Plot.Right, layout.AtY(reference.Value))];

    private static IEnumerable<LabelRequest> OfMarkers(FigureLayout layout, LabelPlacer placer, int owner, MarkerLayer markers, bool keyed)
    {
        double radius = markers.Size / 2;
        IReadOnlyList<Dot> dots = [.. markers.X.Zip(markers.Y, layout.At)];
        foreach (Dot dot in dots)
        {
            placer.Avoid(Box.Around(dot, markers.Size, markers.Size));
        }

        if (keyed)
        {
            yield break;
        }

        if (markers.PointLabels is { } labels)
        {
            foreach ((int i, string label) in labels.Index().Where(l => l.Item.Length > 0))
            {
                Dot dot = dots[i];
                yield return Request(owner, markers, 0, (w, h) => Around(dot, w, h, radius)) with
                {
                    Text = label,
                    MayBeLeftOut = true,
                    Mark = [(dot, dot)],
                };
            }
        }
        else if (markers.LabelText.Length > 0)
        {
            // The label stands beside one of the points, by preference the last.
            yield return Request(owner, markers, 1, (w, h) =>
                dots.Index().Where(d => d.Index % Math.Max(1, dots.Count / 12) == 0 || d.Index == dots.Count - 1)
                .SelectMany(d => Around(d.Item, w, h, radius)
                    .Select(c => (c.Item1, c.Item2 + 0.3 * (dots.Count - 1 - d.Index) / dots.Count)))) with
            {
                Mark = [.. dots.Select(dot => (dot, dot))],
            };
        }
    }

    private static IEnumerable<LabelRequest> OfMap(FigureLayout layout, int owner, MapLayer map)
    {
        double cellWidth = layout.Plot.Width / map.X.Count, cellHeight = layout.Plot.Height / map.Y.Count;
        for (int index = 0; index < map.Classes.Count; index++)
        {
            int c = index;
            List<Dot> own = [], foreign = [];
            for (int row = 0; row < map.Y.Count; row++)
            {
                for (int column = 0; column < map.X.Count; column++)
                {
                    (map.Cells[row][column] == c ? own : foreign).Add(layout.At(map.X[column], map.Y[row]));
                }
            }

            if (own.Count == 0 || layout.Keyed.Contains((owner, c)))
            {
                continue;
            }

            // Only on cells of its own class, near their middle; a class too small for its label stands in the key.
            var middle = new Dot(own.Average(dot => dot.X), own.Average(dot => dot.Y));
            yield return new LabelRequest
            {
                Owner = owner,
                Part = c,
                Text = map.Classes[c].Label,
                Tone = Tone.Main,
                Priority = 4,
                Bold = true,
                Candidates = (w, h) => own
                    .Where(dot => !foreign.Exists(other => Box.Around(other, cellWidth, cellHeight).Overlaps(Box.Around(dot, w, h))))
                    .Select(dot => (dot, Geometry.Distance(dot, middle) / layout.Plot.Width)),
            };
        }
    }

    /// <summary>Places beside a path: on either side at many points, and beyond its end.</summary>
    private static IEnumerable<(Dot Centre, double Cost)> AlongPath(IReadOnlyList<Dot> path, double width, double height, double? wanted)
    {
        double length = Length(path);
        const int Places = 24;
        for (int place = 0; place <= Places; place++)
        {
            double at = place / (double)Places;
            (Dot dot, Dot direction) = At(path, at * length);
            double cost = wanted is { } w ? 3 * Math.Abs(at - w) : 0.8 * Math.Abs(at - 0.75);
            foreach (double side in new[] { -1.0, 1.0 })
            {
                double nx = -direction.Y * side, ny = direction.X * side;
                double distance = Math.Abs(nx) * width / 2 + Math.Abs(ny) * height / 2 + Clearance;
                yield return (new Dot(dot.X + nx * distance, dot.Y + ny * distance), cost + (ny > 0 ? 0.15 : 0));
                yield return (new Dot(dot.X + nx * (distance + height), dot.Y + ny * (distance + height)), cost + 1.2);
            }

            if (place is 0 or Places)
            {
                double sign = place == 0 ? -1 : 1, dx = direction.X * sign, dy = direction.Y * sign;
                double distance = Math.Abs(dx) * width / 2 + Math.Abs(dy) * height / 2 + Clearance;
                yield return (new Dot(dot.X + dx * distance, dot.Y + dy * distance), cost);
            }
        }
    }

    /// <summary>Places around a point.</summary>
    private static IEnumerable<(Dot Centre, double Cost)> Around(Dot at, double width, double height, double radius)
    {
        foreach ((double extra, double more) in new[] { (0.0, 0.0), (10.0, 0.5), (24.0, 1.2), (44.0, 2.2), (80.0, 3.5), (130.0, 5.0) })
        {
            double dx = width / 2 + radius + Clearance + extra, dy = height / 2 + radius + Clearance + extra;
            double diagonalX = width / 2 + radius + extra, diagonalY = height / 2 + radius + extra;
            yield return (new Dot(at.X + dx, at.Y), more);
            yield return (new Dot(at.X + diagonalX, at.Y + diagonalY), more + 0.1);
            yield return (new Dot(at.X + diagonalX, at.Y - diagonalY), more + 0.1);
            yield return (new Dot(at.X - dx, at.Y), more + 0.2);
            yield return (new Dot(at.X, at.Y - dy), more + 0.2);
            yield return (new Dot(at.X, at.Y + dy), more + 0.25);
            yield return (new Dot(at.X - diagonalX, at.Y - diagonalY), more + 0.3);
            yield return (new Dot(at.X - diagonalX, at.Y + diagonalY), more + 0.3);
        }
    }

    /// <summary>Places inside a polygon, the roomiest first.</summary>
    private static IEnumerable<(Dot Centre, double Cost)> InArea(FigureLayout layout, IReadOnlyList<Dot> polygon)
    {
        const int Columns = 28, Rows = 20;
        var inside = new List<(Dot Dot, double Room)>();
        for (int column = 1; column < Columns; column++)
        {
            for (int row = 1; row < Rows; row++)
            {
                var dot = new Dot(
                    layout.Plot.Left + layout.Plot.Width * column / Columns, layout.Plot.Top + layout.Plot.Height * row / Rows);
                if (Geometry.Inside(dot, polygon))
                {
                    double room = polygon.Index().Min(p => Geometry.Distance(dot, p.Item, polygon[(p.Index + 1) % polygon.Count]));
                    inside.Add((dot, room));
                }
            }
        }

        double most = inside.Count == 0 ? 1 : inside.Max(d => d.Room);
        return inside.Select(d => (d.Dot, 1 - d.Room / most));
    }

    private static double Length(IReadOnlyList<Dot> path) =>
        Enumerable.Range(1, path.Count - 1).Sum(i => Geometry.Distance(path[i - 1], path[i]));

    private static (Dot Dot, Dot Direction) At(IReadOnlyList<Dot> path, double distance)
    {
        for (int i = 1; i < path.Count; i++)
        {
            double step = Geometry.Distance(path[i - 1], path[i]);
            if ((distance <= step || i == path.Count - 1) && step > 0)
            {
                return (Geometry.Along(path[i - 1], path[i], Math.Min(1, distance / step)),
                    new Dot((path[i].X - path[i - 1].X) / step, (path[i].Y - path[i - 1].Y) / step));
            }

            distance -= step;
        }

        return (path[^1], new Dot(1, 0));
    }
}
