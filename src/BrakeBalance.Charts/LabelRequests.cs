using BrakeBalance.Charts.Rendering;

namespace BrakeBalance.Charts;

/// <summary>Which labels a figure wants, and where each could go.</summary>
internal static class LabelRequests
{
    private const double Clearance = 4;

    /// <summary>The requests of a figure, and a placer that knows what to avoid.</summary>
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
                    var runs = Geometry.Clip(Geometry.Simplify(layout.Drawn(line), 0.7), layout.Plot);
                    runs = runs.Count > 0 ? runs : Geometry.Clip(layout.Drawn(line), layout.Plot.Grown(1));
                    foreach (IReadOnlyList<Dot> run in runs)
                    {
                        placer.Avoid(owner, run);
                    }

                    if (!keyed && line.LabelText.Length > 0 && runs.Count > 0)
                    {
                        IReadOnlyList<Dot> longest = runs.MaxBy(Length)!;
                        IReadOnlyList<(Dot, Dot)> places = Places(longest);
                        requests.Add(Request(owner, line, 2, (w, h) => Beside(places, w, h, line.LabelAt)) with
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
                        IReadOnlyList<(Dot, Dot)> places = Places(across);
                        requests.Add(Request(owner, reference, 3, (w, h) => Beside(places, w, h, null)) with
                        {
                            Mark = [.. Segments(across)],
                        });
                    }

                    break;
                case MarkerLayer markers:
                    requests.AddRange(OfMarkers(layout, placer, owner, markers, keyed));
                    break;
                case BandLayer band when !keyed && band.LabelText.Length > 0:
                    IReadOnlyList<Dot> upper = layout.Path(band.X, band.Upper);
                    IReadOnlyList<(Dot, Dot)> above = Places(upper);
                    IReadOnlyList<(Dot, double)> between = InArea(layout, [.. upper, .. layout.Path(band.X, band.Lower).Reverse()]);
                    requests.Add(Request(owner, band, 4, (w, h) => Beside(above, w, h, null).Concat(between)));
                    break;
                case RegionLayer region when !keyed && region.LabelText.Length > 0:
                    IReadOnlyList<Dot> polygon = Geometry.Simplify([.. region.X.Zip(region.Y, layout.At)], 0.7);
                    IReadOnlyList<(Dot, double)> inside = InArea(layout, polygon);
                    requests.Add(Request(owner, region, 5, (_, _) => inside) with { Within = polygon, Bold = true });
                    break;
                case MapLayer map:
                    requests.AddRange(OfMap(layout, owner, map));
                    break;
                case NoteLayer note when note.LabelText.Length > 0:
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
        IReadOnlyList<Dot> all = [.. markers.X.Zip(markers.Y, layout.At)];
        IReadOnlyList<Dot> dots = [.. all.Where(layout.IsShown)];
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
            foreach ((int i, string label) in labels.Index().Where(l => l.Item.Length > 0 && layout.IsShown(all[l.Index])))
            {
                Dot dot = all[i];
                yield return Request(owner, markers, 0, (w, h) => Around(dot, w, h, radius)) with
                {
                    Text = label,
                    MayBeLeftOut = true,
                    Mark = [(dot, dot)],
                };
            }
        }
        else if (markers.LabelText.Length > 0 && dots.Count > 0)
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

            if (own.Count == 0 || map.Classes[c].Label.Length == 0 || layout.Keyed.Contains((owner, c)))
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

    /// <summary>Points along a path, evenly from end to end, each with the direction of the path there.</summary>
    private static IReadOnlyList<(Dot At, Dot Direction)> Places(IReadOnlyList<Dot> path)
    {
        const int Steps = 24;
        double[] steps = [.. path.Zip(path.Skip(1), Geometry.Distance)];
        double length = steps.Sum(), passed = 0;
        List<(Dot, Dot)> places = [];
        for (int i = 0; i < steps.Length; i++)
        {
            double step = steps[i];
            Dot a = path[i], b = path[i + 1];
            while (step > 0 && places.Count <= Steps && (places.Count * length / Steps <= passed + step || i == steps.Length - 1))
            {
                places.Add((Geometry.Along(a, b, Math.Clamp((places.Count * length / Steps - passed) / step, 0, 1)),
                    new Dot((b.X - a.X) / step, (b.Y - a.Y) / step)));
            }

            passed += step;
        }

        while (places.Count <= Steps)
        {
            places.Add((path[^1], new Dot(1, 0)));
        }

        return places;
    }

    /// <summary>Places beside a path: on either side at many points, and beyond its ends.</summary>
    private static IEnumerable<(Dot Centre, double Cost)> Beside(
        IReadOnlyList<(Dot At, Dot Direction)> places, double width, double height, double? wanted)
    {
        for (int place = 0; place < places.Count; place++)
        {
            (Dot dot, Dot direction) = places[place];
            double at = place / (places.Count - 1.0), cost = wanted is { } w ? 3 * Math.Abs(at - w) : 0.8 * Math.Abs(at - 0.75);
            for (int side = -1; side <= 1; side += 2)
            {
                double nx = -direction.Y * side, ny = direction.X * side;
                double distance = Math.Abs(nx) * width / 2 + Math.Abs(ny) * height / 2 + Clearance;
                yield return (new Dot(dot.X + nx * distance, dot.Y + ny * distance), cost + (ny > 0 ? 0.15 : 0));
                yield return (new Dot(dot.X + nx * (distance + height), dot.Y + ny * (distance + height)), cost + 1.2);
            }

            if (place == 0 || place == places.Count - 1)
            {
                double sign = place == 0 ? -1 : 1, dx = direction.X * sign, dy = direction.Y * sign;
                double distance = Math.Abs(dx) * width / 2 + Math.Abs(dy) * height / 2 + Clearance;
                yield return (new Dot(dot.X + dx * distance, dot.Y + dy * distance), cost);
            }
        }
    }

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
    private static IReadOnlyList<(Dot Centre, double Cost)> InArea(FigureLayout layout, IReadOnlyList<Dot> polygon)
    {
        const int Columns = 28, Rows = 20;
        var outline = new Outline(polygon);
        double[][] crossings = [.. Enumerable.Range(0, Rows).Select(row =>
            outline.CrossingsAt(layout.Plot.Top + layout.Plot.Height * row / Rows))];
        List<(Dot Dot, double Room)> inside = [];
        for (int column = 1; column < Columns; column++)
        {
            for (int row = 1; row < Rows; row++)
            {
                var dot = new Dot(
                    layout.Plot.Left + layout.Plot.Width * column / Columns, layout.Plot.Top + layout.Plot.Height * row / Rows);
                if (crossings[row].Count(x => dot.X < x) % 2 == 1)
                {
                    inside.Add((dot, outline.DistanceToEdge(dot)));
                }
            }
        }

        double most = inside.Count == 0 ? 1 : inside.Max(d => d.Room);
        return [.. inside.Select(d => (d.Dot, 1 - d.Room / most))];
    }

    private static double Length(IReadOnlyList<Dot> path) => path.Zip(path.Skip(1), Geometry.Distance).Sum();
}
